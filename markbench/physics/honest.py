"""Honest work as a probability of its readings: the model under `best` and the slips.

A timing is t = N·T(L + offset, amplitude) + scatter. About its expected value this is
linear in two nuisances, the common offset of the lengths and the common scale of the
periods (local g and amplitude together); both are integrated in closed form, and the
scatter of the hand over a grid. Nothing is sampled or searched, so a whole class runs as
arrays. Rejected: a fit per learner (slow, and a best fit forgets how much freedom it had)
and the straight line of T² on L (its free intercept gives away most of what is known
about g). The priors and their reasons: `DECISION-best-g.md`.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray
from scipy.special import logsumexp

from markbench.physics.pendulum import FOUR_PI_SQUARED

Array = NDArray[np.float64]

# Scatter of one hand timing (start and stop): N(0, 0.10² s²), Faux & Godolphin,
# Am. J. Phys. 87 (2019) 110, for practised timekeepers; learners spread about that.
SCATTER_CENTRE_S = 0.1
SCATTER_LOG_SD = 0.5
SCATTER_GRID_S = np.geomspace(0.045, 0.32, 8)
LENGTH_READING_SD_M = 0.0015
OFFSET_SD_M = 0.0022
# Amplitudes of 3° to 15°: mean and spread of T/T₀ − 1 ≈ θ²/16.
AMPLITUDE_FACTOR = 1.0018
AMPLITUDE_FACTOR_SD = 0.0013


def scatter_log_prior(scatter_s: Array) -> Array:
    """Log of the prior weight of each value of a log-spaced grid; sums to one."""
    weight = -0.5 * (np.log(scatter_s / SCATTER_CENTRE_S) / SCATTER_LOG_SD) ** 2
    return np.asarray(weight - logsumexp(weight))


SCATTER_LOG_PRIOR = scatter_log_prior(SCATTER_GRID_S)


@dataclass(frozen=True, slots=True, eq=False)
class Rows:
    """Each row boiled down: all (n, R); absent rows have ``count`` 0 and harmless fillers.

    ``within`` is the sum of squared deviations of a row's timings from their mean (s²).
    """

    length_m: Array
    swings: Array
    count: Array
    mean_s: Array
    within: Array


def boil_down(length_m: Array, swings: Array, times_s: Array) -> Rows:
    """Rows of (n, R) lengths and swings and (n, R, K) times; nan, zero and below are absent."""
    usable = np.isfinite(length_m) & (length_m > 0) & np.isfinite(swings) & (swings > 0)
    there = np.isfinite(times_s) & (times_s > 0) & usable[..., None]
    count = there.sum(axis=-1).astype(float)
    mean = np.where(there, times_s, 0.0).sum(axis=-1) / np.maximum(count, 1.0)
    deviation = np.where(there, times_s - mean[..., None], 0.0)
    usable &= count > 0
    return Rows(
        np.where(usable, length_m, 1.0),
        np.where(usable, swings, 1.0),
        count,
        mean,
        (deviation**2).sum(axis=-1),
    )


@dataclass(frozen=True, slots=True, eq=False)
class Terms:
    """What one row (or a sum over rows) gives to the closed form, on the grid of scatter.

    With residual y, slope d of the time against the offset (in units of the offset's
    prior sd), slope s against the scale (in units of its prior sd) and weight w:
    ``log_var`` Σ log variance (with the within-row part folded in), ``yy`` Σ w·y² (with
    the within-row squares), ``dy``, ``sy``, ``dd``, ``ds``, ``ss`` likewise.
    """

    log_var: Array
    yy: Array
    dy: Array
    sy: Array
    dd: Array
    ds: Array
    ss: Array

    def __add__(self, other: Terms) -> Terms:
        return Terms(*(a + b for a, b in zip(self.parts(), other.parts(), strict=True)))

    def __sub__(self, other: Terms) -> Terms:
        return Terms(*(a - b for a, b in zip(self.parts(), other.parts(), strict=True)))

    def parts(self) -> tuple[Array, ...]:
        """The seven arrays in order."""
        return (self.log_var, self.yy, self.dy, self.sy, self.dd, self.ds, self.ss)

    def total(self, axis: int) -> Terms:
        """Summed over the rows."""
        return Terms(*(part.sum(axis=axis) for part in self.parts()))

    def take(self, index: tuple[object, ...]) -> Terms:
        """Indexed likewise in every part."""
        return Terms(*(part[index] for part in self.parts()))  # type: ignore[index]


def row_terms(
    residual_s: Array,
    offset_slope: Array,
    scale_slope: Array,
    count: Array,
    within: Array,
    variance: Array,
    extra: Array,
) -> Terms:
    """Terms of rows; all broadcast together, rows with ``count`` 0 give nothing.

    ``variance`` of one timing (s²), ``extra`` variance shared by a row's timings (s²).
    """
    safe = np.maximum(count, 1.0)
    present = (count > 0).astype(float)
    row_variance = variance / safe + extra
    weight = present / row_variance
    # The mean and the deviations within a row are independent; √count is the Jacobian.
    log_var = present * np.log(row_variance * safe) + np.maximum(count - 1.0, 0.0) * np.log(
        variance
    )
    wd = weight * offset_slope
    ws = weight * scale_slope
    return Terms(
        log_var,
        weight * residual_s**2 + within / variance,
        wd * residual_s,
        ws * residual_s,
        wd * offset_slope,
        wd * scale_slope,
        ws * scale_slope,
    )


def log_marginal(terms: Terms) -> Array:
    """Log probability density (less ½·log 2π per timing), both nuisances integrated out."""
    a, c, e = 1.0 + terms.dd, 1.0 + terms.ss, terms.ds
    determinant = a * c - e * e
    explained = (terms.dy**2 * c - 2.0 * terms.dy * terms.sy * e + terms.sy**2 * a) / determinant
    return np.asarray(-0.5 * (terms.log_var + terms.yy - explained + np.log(determinant)))


def posterior(terms: Terms) -> tuple[Array, Array, Array, Array]:
    """Mean and variance of offset, then of scale, in units of their prior sd."""
    a, c, e = 1.0 + terms.dd, 1.0 + terms.ss, terms.ds
    determinant = a * c - e * e
    return (
        (terms.dy * c - terms.sy * e) / determinant,
        c / determinant,
        (terms.sy * a - terms.dy * e) / determinant,
        a / determinant,
    )


def length_reading_sd_m(length_m: Array, length_step_m: Array) -> Array:
    """Standard uncertainty (n,) of one length of (n, R), read to steps of ``length_step_m``.

    Whole centimetres that are all multiples of five were set, not rounded: their step says
    nothing about their error.
    """
    fives = np.where(np.isfinite(length_m), length_m / 0.05, 0.0)
    was_set = (np.abs(fives - np.round(fives)) < 1e-6).all(axis=1)
    rounding = np.where(was_set & (length_step_m < 0.02), 0.0, length_step_m) / 12**0.5
    return np.asarray(np.hypot(LENGTH_READING_SD_M, rounding))


def expected_time_s(length_m: Array, swings: Array, g: Array | float, factor: float) -> Array:
    """N·T of honest work at ``factor`` = T/T₀; nan where the length is not positive."""
    with np.errstate(invalid="ignore"):
        return np.asarray(swings * factor * np.sqrt(FOUR_PI_SQUARED * length_m / g))
