"""Slips that touch one cell or two rows: one row's terms are exchanged in the sums.

The sums over the rows are kept, so that trying every cell costs little more than trying
one: the row's own terms are taken out and those of the mended row put in.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from markbench.checks.diagnosis.likelihood import Fitted, log_evidence
from markbench.model import LocalGravity
from markbench.physics.best import BAD_TIMING_RATE, BAD_TIMING_SD_S
from markbench.physics.honest import Array, Terms, expected_time_s, row_terms

# Ways a number is mistyped: neighbouring digits changed over (at most the first four), and
# the point one place to the right or left.
SWAPS = 3
FORMS = ("swapped", "swapped", "swapped", "point", "point")


@dataclass(frozen=True, slots=True, eq=False)
class CellEvidence:
    """Log evidence of one cell having gone wrong, prior within the slip included.

    ``bad`` (n, R, K): one timing out for no named reason, which is still honest work.
    ``miscounted`` (n, R, K, 2): one swing too few, too many. ``mistyped_time``
    (n, R, K, 5) and ``mistyped_length`` (n, R, 5) with the values meant beside them.
    ``swapped`` (n, R, R): upper triangle.
    """

    bad: Array
    miscounted: Array
    mistyped_time: Array
    meant_time_s: Array
    mistyped_length: Array
    meant_length_m: Array
    swapped: Array


def meant_values(typed: Array, step: Array) -> Array:
    """What each typed number may have been meant to be, (..., 5); nan where there is nothing.

    ``step`` broadcasts against ``typed``. The first three exchange neighbouring digits,
    counted from the last; then ten times less and ten times more.
    """
    with np.errstate(invalid="ignore"):
        units = np.round(typed / step)
        forms = []
        for place in range(SWAPS):
            low = 10.0**place
            right = np.floor(units / low) % 10
            left = np.floor(units / (10 * low)) % 10
            swapped = units + (right - left) * 9 * low
            # The first digit may have changed places with a nought that does not show: 10.91
            # typed as 01.91 is kept as 1.91. A round 40 would be the point one place off again.
            hidden = (units >= low) & (units > right * low)
            shows = (units >= 10 * low) | hidden
            swapped = np.where((right != left) & shows, swapped, np.nan)
            forms.append(swapped * step)
        forms += [typed / 10, typed * 10]
    return np.stack(forms, axis=-1)


def weigh_cells(
    times_s: Array,
    length_m: Array,
    length_step_m: Array,
    step_s: Array,
    fitted: Fitted,
    view: int,
    local: LocalGravity,
    factor: float,
) -> CellEvidence:
    """Evidence for each single cell and each pair of rows under one ``view`` of the tables."""
    rows, each = fitted.rows, fitted.each.take((slice(None), view))
    total = fitted.total.take((slice(None), view))
    variance = fitted.variance_s2[:, view]
    count, mean, within, expected, d, s, extra = (
        a[:, view] for a in (rows.count, rows.mean_s, rows.within, fitted.expected_s, fitted.d,
                             fitted.s, fitted.extra_s2)
    )  # fmt: skip
    swings = rows.swings[:, view]
    there = np.isfinite(times_s) & (times_s > 0) & (count > 0)[..., None]
    times = np.where(there, times_s, 0.0)
    timings = np.maximum(there.sum(axis=(1, 2)), 1).astype(float)
    row_count = np.maximum((count > 0).sum(axis=1), 1).astype(float)

    def widened(terms: Terms, *axes: int) -> Terms:
        return Terms(*(np.expand_dims(part, axes) for part in terms.parts()))

    def retimed(new: Array) -> Array:
        """Evidence with each timing replaced by ``new`` (n, R, K, C), −inf where nan."""
        usable = np.isfinite(new) & there[..., None]
        change = np.where(usable, new - times[..., None], 0.0)
        k = np.maximum(count, 1.0)[..., None, None]
        old_mean = mean[..., None, None]
        new_mean = old_mean + change / k
        squares = change * (times[..., None] - old_mean + times[..., None] + change - new_mean)
        before, after = old_mean - expected[..., None, None], new_mean - expected[..., None, None]
        # Weights do not change, so neither do the sums of slopes: only those with y.
        row_variance = variance[:, None, :] / k[..., 0] + extra[..., None]
        weight = np.where(count[..., None] > 0, 1.0 / row_variance, 0.0)[:, :, None, None, :]
        wd = weight * d[..., None, None, None]
        ws = weight * s[..., None, None, None]
        moved = (after - before)[..., None]
        base = widened(total, 1, 2, 3)
        squared = (after**2 - before**2)[..., None]
        yy = base.yy + weight * squared + squares[..., None] / variance[:, None, None, None, :]
        terms = Terms(
            base.log_var, yy, base.dy + wd * moved, base.sy + ws * moved, base.dd, base.ds, base.ss
        )
        return np.where(usable, log_evidence(terms), -np.inf)

    # One timing out by about half a second, cause unknown.
    left = count[..., None] - 1.0
    mean_left = (count[..., None] * mean[..., None] - times) / np.maximum(left, 1.0)
    jump = times - mean[..., None]
    within_left = within[..., None] - jump**2 * count[..., None] / np.maximum(left, 1.0)
    less = row_terms(
        (mean_left - expected[..., None])[..., None],
        d[..., None, None],
        s[..., None, None],
        left[..., None],
        np.where(left > 0, np.maximum(within_left, 0.0), 0.0)[..., None],
        variance[:, None, None, :],
        extra[..., None, None],
    )
    away = np.where(left > 0, times - mean_left, times - expected[..., None])
    density = -np.log(BAD_TIMING_SD_S) - 0.5 * (away / BAD_TIMING_SD_S) ** 2
    bad = log_evidence(widened(total, 1, 2) - widened(each, 2) + less)
    bad = np.where(there, bad + density + np.log(BAD_TIMING_RATE), -np.inf)

    one = (expected / np.maximum(swings, 1.0))[..., None]
    one_less = np.where((swings > 1)[..., None], times + one, np.nan)
    miscounted = retimed(np.stack([one_less, times - one], axis=-1))
    miscounted = miscounted - np.log(2 * timings)[:, None, None, None]
    meant = meant_values(times_s, step_s[:, None, None])
    forms = np.log(np.array([1, 1, 1, 1, 1]) / 5.0)
    mistyped = retimed(meant) + forms + np.log(0.8 / timings)[:, None, None, None]

    meant_length = meant_values(length_m, length_step_m[:, None])
    mistyped_length = _relengthened(
        meant_length, fitted, view, local, factor, widened(total, 1, 2) - widened(each, 2)
    )
    mistyped_length = mistyped_length + forms + np.log(0.2 / row_count)[:, None, None]

    # Row i's times with row j's length, and the other way about.
    ratio = np.sqrt(
        rows.length_m[:, view, None, :] / rows.length_m[:, view, :, None]
    )  # [i, j]: period at length j over that at length i
    other_expected = expected[:, :, None] * ratio
    crossed = row_terms(
        (mean[:, :, None] - other_expected)[..., None],
        (d[:, :, None] / ratio)[..., None],
        (s[:, :, None] * ratio)[..., None],
        count[:, :, None, None],
        within[:, :, None, None],
        variance[:, None, None, :],
        (extra[:, :, None] / ratio**2)[..., None],
    )
    back = Terms(*(np.swapaxes(p, 1, 2) for p in crossed.parts()))
    swapped = log_evidence(
        widened(total, 1, 2) - widened(each, 2) - widened(each, 1) + crossed + back
    )
    both = (count[:, :, None] > 0) & (count[:, None, :] > 0)
    upper = np.triu(np.ones(both.shape[1:], dtype=bool), 1)
    pairs = np.maximum(row_count * (row_count - 1) / 2, 1.0)
    swapped = np.where(both & upper, swapped - np.log(pairs)[:, None, None], -np.inf)
    return CellEvidence(bad, miscounted, mistyped, meant, mistyped_length, meant_length, swapped)


def _relengthened(
    meant_m: Array, fitted: Fitted, view: int, local: LocalGravity, factor: float, rest: Terms
) -> Array:
    """Evidence with each length replaced by ``meant_m`` (n, R, C); ``rest`` lacks that row."""
    rows = fitted.rows
    usable = np.isfinite(meant_m) & (meant_m > 0) & (rows.count[:, view] > 0)[..., None]
    length = np.where(usable, meant_m, 1.0)
    expected = expected_time_s(length, rows.swings[:, view, :, None], local.g, 1.0) * factor
    was, old = rows.length_m[:, view, :, None], fitted.expected_s[:, view, :, None]
    steeper = (expected / length) / (old / was)
    terms = row_terms(
        (rows.mean_s[:, view, :, None] - expected)[..., None],
        (fitted.d[:, view, :, None] * steeper)[..., None],
        (fitted.s[:, view, :, None] * expected / old)[..., None],
        rows.count[:, view, :, None, None],
        rows.within[:, view, :, None, None],
        fitted.variance_s2[:, view, None, None, :],
        (fitted.extra_s2[:, view, :, None] * steeper**2)[..., None],
    )
    return np.where(usable, log_evidence(rest + terms), -np.inf)
