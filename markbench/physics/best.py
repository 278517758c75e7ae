"""The best estimate of g from the whole model of honest work, robust to one bad timing.

Local g takes no part: g is what is measured. The scale of the periods is left free, the
offset of the lengths keeps its prior, and the answer is the mixture over the scatter of
the hand and over which timing, if any, went wrong. The interval is read off that mixture.
"""

from __future__ import annotations

import numpy as np
from scipy.special import logsumexp, ndtr

from markbench.model import Gravity, LocalGravity
from markbench.physics.honest import (
    AMPLITUDE_FACTOR,
    AMPLITUDE_FACTOR_SD,
    OFFSET_SD_M,
    SCATTER_GRID_S,
    SCATTER_LOG_PRIOR,
    Array,
    Rows,
    Terms,
    boil_down,
    expected_time_s,
    length_reading_sd_m,
    log_marginal,
    posterior,
    row_terms,
)
from markbench.physics.pendulum import FOUR_PI_SQUARED
from markbench.physics.stack import Stack

METHOD = (
    "whole model: offset and amplitude with their priors, pooled scatter, one timing may be bad"
)

# A prior so wide that it says nothing: ±100 % of the period, a factor of nine in g.
_FREE_SCALE_SD = 1.0
# One timing in a hundred goes wrong for some reason of its own, by about 0.3 s.
BAD_TIMING_RATE = 0.01
BAD_TIMING_SD_S = 0.3


def best_gravity(stack: Stack, local: LocalGravity) -> list[Gravity | None]:
    """g and its 95 % interval for each learner; ``None`` where no row has length and time.

    ``local`` is taken for uniformity with the other analyses and not used: a measured g
    that leans on the known one would measure nothing.
    """
    del local
    g, u_g, low, high = estimate_gravity(stack)
    return [
        None
        if not np.isfinite(g[i])
        else Gravity(float(g[i]), float(u_g[i]), float(low[i]), float(high[i]), METHOD)
        for i in range(len(stack))
    ]


def estimate_gravity(
    stack: Stack,
    offset_sd_m: Array | float = OFFSET_SD_M,
    factor: Array | float = AMPLITUDE_FACTOR,
    factor_sd: Array | float = AMPLITUDE_FACTOR_SD,
) -> tuple[Array, Array, Array, Array]:
    """g, its standard uncertainty and the ends of its 95 % interval, each (n,), in m/s².

    ``offset_sd_m`` and ``factor`` (T/T₀ by amplitude) ± ``factor_sd`` may be given per
    learner, for readings whose lengths or amplitude are known less well than usual.
    """
    n = len(stack)
    if n == 0 or stack.times_s.size == 0:
        empty = np.full(n, np.nan)
        return empty, empty, empty, empty
    rows = boil_down(stack.length_m, stack.swings, stack.times_s)
    offset_sd = np.broadcast_to(np.asarray(offset_sd_m, float), (n,))
    length_var = length_reading_sd_m(stack.length_m, stack.length_step_m) ** 2
    known = (rows.count > 0).any(axis=1)
    with np.errstate(divide="ignore", invalid="ignore"):
        log_g = np.log(FOUR_PI_SQUARED * rows.length_m * (rows.swings / rows.mean_s) ** 2)
    # The middle row's own g is near enough to start from, and not led astray by one row.
    ordered = np.sort(np.where(rows.count > 0, log_g, np.inf), axis=1)
    middle = np.maximum((rows.count > 0).sum(axis=1) - 1, 0) // 2
    log_g = np.where(known, np.take_along_axis(ordered, middle[:, None], axis=1)[:, 0], 0.0)
    for _ in range(2):  # the second pass starts so near that the linear form is exact enough
        mean, var, weight = _mixture(stack, rows, np.exp(log_g), offset_sd, length_var)
        log_g = log_g - 2.0 * (weight * mean).sum(axis=1)
    centre = -2.0 * (mean - (weight * mean).sum(axis=1, keepdims=True))
    spread = np.sqrt(4.0 * var)
    amplitude = np.broadcast_to(np.asarray(factor, float), (n,))
    spread = np.hypot(spread, 2.0 * np.reshape(np.asarray(factor_sd, float) / amplitude, (-1, 1)))
    log_g = log_g + 2.0 * np.log(amplitude)
    sd = np.sqrt((weight * (spread**2 + centre**2)).sum(axis=1))
    low, high = (_quantile(centre, spread, weight, sd, p) for p in (0.025, 0.975))
    g = np.where(known, np.exp(log_g), np.nan)
    return g, g * sd, g * np.exp(low), g * np.exp(high)


def _mixture(
    stack: Stack, rows: Rows, g: Array, offset_sd: Array, length_var: Array
) -> tuple[Array, Array, Array]:
    """Mean and variance of the log period scale and weight of each part, (n, parts).

    Parts: each scatter of the grid with every timing good, then with each timing left out.
    """
    n, row_count, timing_count = stack.times_s.shape
    expected = expected_time_s(rows.length_m, rows.swings, g[:, None], 1.0)
    per_metre = expected / (2.0 * rows.length_m)
    d = (per_metre * offset_sd[:, None])[..., None]
    s = (expected * _FREE_SCALE_SD)[..., None]
    extra = (per_metre**2 * length_var[:, None])[..., None]
    variance = SCATTER_GRID_S**2 + stack.time_step_s[:, None] ** 2 / 12.0
    count, within = rows.count[..., None], rows.within[..., None]
    y = (rows.mean_s - expected)[..., None]
    each = row_terms(y, d, s, count, within, variance[:, None, :], extra)
    total = each.total(1)
    all_good = log_marginal(total)
    _, _, mean, var = posterior(total)
    # Leave out each timing in turn: only its own row changes.
    there = np.isfinite(stack.times_s) & (stack.times_s > 0) & (rows.count > 0)[..., None]
    times = np.where(there, stack.times_s, 0.0)
    left = rows.count[..., None] - 1.0
    mean_left = (count * rows.mean_s[..., None] - times) / np.maximum(left, 1.0)
    jump = times - rows.mean_s[..., None]
    within_left = np.maximum(within - jump**2 * count / np.maximum(left, 1.0), 0.0)
    less = row_terms(
        (mean_left - expected[..., None])[..., None],
        d[..., None],
        s[..., None],
        left[..., None],
        np.where(left > 0, within_left, 0.0)[..., None],
        variance[:, None, None, :],
        extra[..., None],
    )
    without = (
        Terms(*(p[:, None, None] for p in total.parts()))
        - Terms(*(p[:, :, None] for p in each.parts()))
        + less
    )
    _, _, mean_without, var_without = posterior(without)
    away = np.where(left > 0, times - mean_left, times - expected[..., None])
    # Cauchy's tails: however far out it lies, it is this timing that went wrong.
    bad = -np.log(BAD_TIMING_SD_S * np.sqrt(np.pi / 2)) - np.log1p((away / BAD_TIMING_SD_S) ** 2)
    one_bad = log_marginal(without) + (np.log(BAD_TIMING_RATE) + bad)[..., None]
    one_bad = np.where(there[..., None], one_bad, -np.inf)
    log_weight = np.concatenate(
        [all_good[:, None, :], one_bad.reshape(n, row_count * timing_count, -1)], axis=1
    )
    log_weight = (log_weight + SCATTER_LOG_PRIOR).reshape(n, -1)
    weight = np.exp(log_weight - logsumexp(log_weight, axis=1, keepdims=True))

    def side(first: Array, rest: Array) -> Array:
        rest = np.broadcast_to(rest, one_bad.shape)
        return np.concatenate([first, rest.reshape(n, -1)], axis=1)

    return (
        side(mean, mean_without) * _FREE_SCALE_SD,
        side(var, var_without) * _FREE_SCALE_SD**2,
        weight,
    )


def _quantile(centre: Array, spread: Array, weight: Array, sd: Array, p: float) -> Array:
    """The ``p`` quantile of each learner's mixture of normals, by bisection."""
    low, high = -8.0 * sd, 8.0 * sd
    for _ in range(13):  # to a thousandth of the uncertainty
        middle = 0.5 * (low + high)
        below = (weight * ndtr((middle[:, None] - centre) / spread)).sum(axis=1) < p
        low, high = np.where(below, middle, low), np.where(below, high, middle)
    return np.asarray(0.5 * (low + high))
