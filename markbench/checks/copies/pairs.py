"""The likelihood ratio of a pair of tables: one copied from the other, against independence.

Given independence, a likelihood ratio exceeds x in at most one pair of x (Markov's
inequality: its mean is one). So log(number of pairs × 100) as a threshold keeps the
expected number of false pairs below one in a hundred classes, whatever the class.
"""

from __future__ import annotations

from dataclasses import dataclass, replace

import numpy as np
from numpy.typing import NDArray
from scipy.special import logsumexp

from markbench.checks.copies.tables import Floats, Tables

Ints = NDArray[np.int64]

# How a copied table may differ, as shares of readings left alone, moved by up to 0.05 s
# (one step where written to tenths), and rewritten: from a plain copy to a half-altered
# one. A priori equally likely; no data stand behind these, only what copies are seen to be.
_WAYS = np.array([[0.97, 0.02, 0.01], [0.70, 0.28, 0.02], [0.48, 0.48, 0.04], [0.55, 0.10, 0.35]])
_NEAR_S = 0.05
# A constant shift of all timings is sought within ±1 s. Prior shares of copies that are
# shifted, and that have the timings of a row in another order.
_SHIFT_SPAN_S = 2.0
_SHIFTED, _RESORTED = 0.15, 0.15
_BATCH = 20_000


@dataclass(frozen=True, slots=True, eq=False)
class Scores:
    """Log likelihood ratios (P,), with the counts behind each: readings compared, equal to
    the last digit, within 0.05 s; and the constant shift in seconds, if one fits better."""

    log_ratio: Floats
    compared: Ints
    equal: Ints
    near: Ints
    shift_s: Floats


def score(tables: Tables, first: Ints, second: Ints) -> Scores:
    """Score the pairs (first[p], second[p])."""
    parts = [
        _score_batch(tables, first[start : start + _BATCH], second[start : start + _BATCH])
        for start in range(0, len(first), _BATCH)
    ]
    if not parts:
        empty = np.zeros(0)
        none = np.zeros(0, dtype=np.int64)
        return Scores(empty, none, none, none, empty)
    return Scores(*(np.concatenate([getattr(p, name) for p in parts]) for name in Scores.__slots__))


def _score_batch(tables: Tables, first: Ints, second: Ints) -> Scores:
    """Best over the alignments of rows (tables may differ by a row or two)."""
    gap = tables.rows[second] - tables.rows[first]
    best: Scores | None = None
    for offset in range(3):
        usable = offset <= np.abs(gap)
        if not usable.any():
            break
        # The table with more rows is the one to skip in; a choice of offsets costs its log.
        skip_second = np.where(gap > 0, offset, 0)
        skip_first = np.where(gap < 0, offset, 0)
        one = _score_aligned(tables, first, second, skip_first, skip_second)
        penalty = np.log(np.minimum(np.abs(gap), 2) + 1.0)
        one = replace(one, log_ratio=np.where(usable, one.log_ratio - penalty, -np.inf))
        best = one if best is None else _better(best, one)
    assert best is not None
    return best


def _score_aligned(
    tables: Tables, first: Ints, second: Ints, skip_first: Ints, skip_second: Ints
) -> Scores:
    step = np.maximum(tables.step_s[first], tables.step_s[second])
    a, log_a = _rows_from(tables, first, skip_first)
    b, log_b = _rows_from(tables, second, skip_second)
    ways = []
    for by_size in (False, True):
        if by_size:  # timings of a row may have been written in another order
            if a.shape[2] < 2:
                continue
            a, log_a = _sorted_within_rows(a, log_a)
            b, log_b = _sorted_within_rows(b, log_b)
        difference = _steps(b, step) - _steps(a, step)
        difference = difference.reshape(len(first), -1)
        mass_a = (log_a + np.log(step)[:, None, None]).reshape(difference.shape)
        mass_b = (log_b + np.log(step)[:, None, None]).reshape(difference.shape)
        shift = _commonest(difference)
        plain = _ratio(difference, mass_a, mass_b, step, np.zeros(len(first)))
        shifted = _ratio(difference - shift[:, None], mass_a, mass_b, step, shift * step)
        here = _RESORTED if by_size else 1.0 - _RESORTED
        ways += [
            _weighed(plain, np.log(here * (1.0 - _SHIFTED))),
            _weighed(shifted, np.log(here * _SHIFTED * step / _SHIFT_SPAN_S)),
        ]
    best = ways[0]
    for way in ways[1:]:
        best = _better(best, way)
    return best


def _ratio(
    difference: Floats, mass_a: Floats, mass_b: Floats, step: Floats, shift: Floats
) -> Scores:
    """Log ratio from differences in steps (P, M) and log probabilities of each timing."""
    there = np.isfinite(difference)
    size = np.abs(np.where(there, difference, np.inf))
    reach = np.maximum(np.round(_NEAR_S / step), 1.0)[:, None]
    equal = size == 0
    near = (size > 0) & (size <= reach)
    far = there & (size > reach)
    n_equal, n_near, n_far = equal.sum(axis=1), near.sum(axis=1), far.sum(axis=1)
    with np.errstate(divide="ignore"):
        likelihood = logsumexp(
            n_equal[:, None] * np.log(_WAYS[:, 0])
            + n_near[:, None] * np.log(_WAYS[:, 1] / (2 * reach))
            + n_far[:, None] * np.log(_WAYS[:, 2]),
            axis=1,
        ) - np.log(len(_WAYS))
    matched = equal | near
    independent_a = np.where(matched, np.minimum(mass_a, 0.0), 0.0).sum(axis=1)
    independent_b = np.where(matched, np.minimum(mass_b, 0.0), 0.0).sum(axis=1)
    # Either may be the original: the mean of both ratios is a ratio again.
    log_ratio = likelihood + np.logaddexp(-independent_a, -independent_b) - np.log(2.0)
    return Scores(log_ratio, there.sum(axis=1), n_equal, n_near, shift)


def _weighed(scores: Scores, log_weight: float | Floats) -> Scores:
    """The same with the prior weight of its way of copying."""
    return replace(scores, log_ratio=scores.log_ratio + log_weight)


def _better(one: Scores, other: Scores) -> Scores:
    take = other.log_ratio > one.log_ratio
    return Scores(*(np.where(take, getattr(other, s), getattr(one, s)) for s in Scores.__slots__))


def _rows_from(tables: Tables, which: Ints, skip: Ints) -> tuple[Floats, Floats]:
    times, density = tables.times_s[which], tables.log_density[which]
    if not skip.any():
        return times, density
    rows = np.arange(times.shape[1])[None, :] + skip[:, None]
    inside = (rows < times.shape[1])[:, :, None]
    rows = np.minimum(rows, times.shape[1] - 1)[:, :, None]
    return (
        np.where(inside, np.take_along_axis(times, rows, 1), np.nan),
        np.where(inside, np.take_along_axis(density, rows, 1), np.nan),
    )


def _sorted_within_rows(times: Floats, density: Floats) -> tuple[Floats, Floats]:
    order = np.argsort(times, axis=2)  # nan last
    return np.take_along_axis(times, order, 2), np.take_along_axis(density, order, 2)


def _steps(times: Floats, step: Floats) -> Floats:
    """Times in whole steps; half a step rounds up, as a hand would."""
    return np.asarray(np.floor(times / step[:, None, None] + 0.5 + 1e-6))


def _commonest(difference: Floats) -> Floats:
    """The commonest difference of each row, ties to the first; 0 where nothing is compared."""
    same = difference[:, :, None] == difference[:, None, :]
    at = same.sum(axis=2).argmax(axis=1)
    chosen = difference[np.arange(len(difference)), at]
    return np.where(np.isfinite(chosen), chosen, 0.0)
