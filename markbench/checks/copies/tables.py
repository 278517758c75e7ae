"""What a learner's timings would look like from independent hands, for whole years at once."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray
from scipy.special import gammaln

from markbench.physics.stack import Stack

Floats = NDArray[np.float64]

# Usual scatter of a hand timing, s, and its weight in degrees of freedom: Faux & Godolphin
# (2019), Am. J. Phys. 87, 110, give 0.10 s for a start–stop interval.
_HAND_S, _HAND_FREEDOM = 0.10, 4.0
# No hand and no formula repeats better than the last digit of a stopwatch.
_FINEST_S = 0.005
# One cell gone astray can spoil a learner's line and make every reading look surprising: no
# density is taken below that of a usual hand a good standard deviation off, in 1/s.
_LEAST_DENSITY = 2.0


@dataclass(frozen=True, slots=True, eq=False)
class Tables:
    """Timings of n learners with rows put in order of time, so that neither the order of
    rows nor the lengths written beside them matter.

    ``times_s`` (n, R, K), nan-padded; ``log_density`` (n, R, K): log of the density (1/s)
    of each timing under independence, predicted from the same learner's own straight line
    and own repeats; ``step_s`` (n,) the rounding step; ``rows`` (n,) rows with a timing.
    """

    times_s: Floats
    log_density: Floats
    step_s: Floats
    rows: NDArray[np.int64]

    def __len__(self) -> int:
        return int(self.times_s.shape[0])


def tables_of(stack: Stack) -> Tables:
    """Prepare a stack of readings for comparison."""
    log_density = _independent_log_density(stack)
    with np.errstate(invalid="ignore"):
        count = np.isfinite(stack.times_s).sum(axis=2)
        mean = np.nansum(stack.times_s, axis=2) / np.where(count > 0, count, np.nan)
    order = np.argsort(np.where(np.isfinite(mean), mean, np.inf), axis=1, kind="stable")
    return Tables(
        times_s=np.take_along_axis(stack.times_s, order[:, :, None], axis=1),
        log_density=np.take_along_axis(log_density, order[:, :, None], axis=1),
        step_s=np.maximum(stack.time_step_s, 0.01),
        rows=np.asarray((count > 0).sum(axis=1)),
    )


def _independent_log_density(stack: Stack) -> Floats:
    """Log density of every timing given the learner's own other habits.

    The largest, and so the most cautious, of three predictions: scatter about the learner's
    line of t on N√L shrunk towards a usual hand; the same without shrinking (numbers made
    from a formula scatter little, and two of them may agree by that alone); and scatter
    about the earlier timings of the same row (repeats may be closer than the line).
    """
    times = stack.times_s
    there = np.isfinite(times) & np.isfinite(stack.length_m)[:, :, None]
    x = stack.swings * np.sqrt(np.maximum(stack.length_m, 0.0))
    x = np.broadcast_to(x[:, :, None], times.shape)
    n = len(stack)
    flat_x = np.where(there, x, 0.0).reshape(n, -1)
    flat_t = np.where(there, times, 0.0).reshape(n, -1)
    mask = there.reshape(n, -1)
    count = np.maximum(mask.sum(axis=1), 1)
    mean_x, mean_t = flat_x.sum(axis=1) / count, flat_t.sum(axis=1) / count
    dx = np.where(mask, flat_x - mean_x[:, None], 0.0)
    dt = np.where(mask, flat_t - mean_t[:, None], 0.0)
    sxx = (dx * dx).sum(axis=1)
    slope = (dx * dt).sum(axis=1) / np.where(sxx > 0, sxx, np.inf)
    residual = (dt - slope[:, None] * dx).reshape(times.shape)
    squares = np.where(there, residual**2, 0.0).sum(axis=(1, 2))
    freedom = np.maximum(count - 2.0, 1.0)
    # Rounding to a step adds its own spread, a twelfth of the step squared.
    finest = np.maximum(_FINEST_S**2, stack.time_step_s**2 / 12)
    shrunk = (_HAND_FREEDOM * _HAND_S**2 + squares) / (_HAND_FREEDOM + freedom)
    own = squares / freedom + finest
    best = np.maximum(
        _log_t(residual, shrunk[:, None, None], (_HAND_FREEDOM + freedom)[:, None, None]),
        _log_t(residual, own[:, None, None], freedom[:, None, None]),
    )
    best = np.maximum(best, _within_rows(times, there, finest))
    return np.where(there, np.maximum(best, np.log(_LEAST_DENSITY)), np.nan)


def _within_rows(times: Floats, there: NDArray[np.bool_], finest: Floats) -> Floats:
    """Log density of the second and later timings of a row about the mean of the earlier."""
    result = np.full(times.shape, -np.inf)
    kept = np.where(there, times, 0.0)
    counts = there.sum(axis=2)
    means = kept.sum(axis=2) / np.maximum(counts, 1)
    squares = np.where(there, (times - means[:, :, None]) ** 2, 0.0).sum(axis=(1, 2))
    freedom = np.maximum(np.maximum(counts - 1, 0).sum(axis=1), 1).astype(float)
    variance = (squares / freedom + finest)[:, None]
    for k in range(1, times.shape[2]):
        before = there[:, :, :k].sum(axis=2)
        earlier = kept[:, :, :k].sum(axis=2) / np.maximum(before, 1)
        spread = variance * (1.0 + 1.0 / np.maximum(before, 1))
        density = _log_t(times[:, :, k] - earlier, spread, freedom[:, None])
        result[:, :, k] = np.where(there[:, :, k] & (before > 0), density, -np.inf)
    return result


def _log_t(difference: Floats, variance: Floats, freedom: Floats) -> Floats:
    """Log density of Student's t with scale √variance."""
    return np.asarray(
        gammaln((freedom + 1) / 2)
        - gammaln(freedom / 2)
        - 0.5 * np.log(freedom * np.pi * variance)
        - (freedom + 1) / 2 * np.log1p(difference**2 / (freedom * variance))
    )
