"""Times that no hand took: nearer to a formula, or to each other, than a hand can time.

Such times are so close to what they were made from that the rounding of the table matters:
here a time is the probability of its rounded value, not a density at it.
"""

from __future__ import annotations

import numpy as np
from scipy.special import log_ndtr, logsumexp

from markbench.checks.diagnosis import priors
from markbench.checks.diagnosis.likelihood import Fitted, log_evidence
from markbench.physics.honest import Array, expected_time_s, row_terms
from markbench.physics.stack import Stack

_LOG_ROOT_TWO_PI = 0.5 * np.log(2 * np.pi)


def formula_log_evidence(stack: Stack) -> Array:
    """Log evidence (n, 2·G) that times were worked out with each g of ``FORMULA_G``.

    No offset, no amplitude, no reading error: the formula knows the typed length alone. In
    the second G the period was rounded to a hundredth before it was multiplied up.
    """
    g = np.array(priors.FORMULA_G)
    exact = np.stack(
        [expected_time_s(stack.length_m, stack.swings, value, 1.0) for value in g], axis=1
    )
    swings = stack.swings[:, None]
    with np.errstate(invalid="ignore", divide="ignore"):
        rounded = np.round(exact / swings, 2) * swings
    made = np.concatenate([exact, rounded], axis=1)
    away = np.abs(stack.times_s[:, None] - made[..., None])[..., None]
    there = np.isfinite(away)
    away = np.where(there, away, 0.0)
    step = stack.time_step_s.reshape(-1, 1, 1, 1, 1)
    jitter = priors.FORMULA_JITTER_S
    # The difference of two tails, both on the left where small numbers keep their digits.
    near, far = -(away - step / 2) / jitter, -(away + step / 2) / jitter
    with np.errstate(divide="ignore"):
        log_near = log_ndtr(near)
        probability = log_near + np.log1p(-np.exp(np.minimum(log_ndtr(far) - log_near, -1e-12)))
    log_density = np.where(there, probability - np.log(step) + _LOG_ROOT_TWO_PI, 0.0)
    by_g = logsumexp(log_density.sum(axis=(2, 3)), axis=-1) - np.log(len(jitter))
    # One in five rounds the period first.
    weight = np.repeat(np.log([0.8 / len(g), 0.2 / len(g)]), len(g))
    any_time = there.any(axis=(1, 2, 3, 4))[:, None]
    return np.where(any_time, by_g + weight, -np.inf)


def by_hand_log_evidence(stack: Stack, fitted: Fitted) -> Array:
    """Log evidence (n,) that first times were taken and their repeats written beside them.

    A row shares the error of its first timing; the repeats depart from it by hundredths.
    Tables without a repeat cannot show it: −inf.
    """
    rows = fitted.rows
    count, mean, within, expected, d, s, extra = (
        a[:, 0]
        for a in (
            rows.count,
            rows.mean_s,
            rows.within,
            fitted.expected_s,
            fitted.d,
            fitted.s,
            fitted.extra_s2,
        )
    )
    step = stack.time_step_s[:, None]
    slopes = d[..., None], s[..., None]
    # Repeats in a bell about the shared error.
    first, repeat = (
        a.ravel() for a in np.meshgrid(priors.HAND_FIRST_S, priors.HAND_REPEAT_S, indexing="ij")
    )
    each = len(priors.HAND_REPEAT_S)
    bell = row_terms(
        (mean - expected)[..., None],
        *slopes,
        count[..., None],
        within[..., None],
        (repeat**2 + step**2 / 12)[:, None, :],
        extra[..., None] + first**2,
    )
    log_first = np.log(priors.HAND_FIRST_WEIGHT)
    in_bell = log_evidence(bell.total(1), np.repeat(log_first, each) - np.log(each))
    # Repeats evenly within some hundredths of the first time.
    times = np.where(rows.count[:, 0, :, None] > 0, stack.times_s, np.nan)
    there = np.isfinite(times)
    where = there.argmax(axis=2)[..., None]
    lead = np.take_along_axis(times, where, axis=2)
    apart = np.abs(times - lead)
    np.put_along_axis(apart, where, np.nan, axis=2)
    repeats = _even_log_density(apart, step[..., None], priors.HAND_WITHIN_S).sum(axis=(1, 2))
    alone = row_terms(
        (np.where(count > 0, lead[..., 0], 0.0) - expected)[..., None],
        *slopes,
        np.minimum(count, 1.0)[..., None],
        np.zeros_like(within)[..., None],
        (priors.HAND_FIRST_S**2 + step**2 / 12)[:, None, :],
        extra[..., None],
    )
    evenly = log_evidence(alone.total(1), log_first) + logsumexp(repeats, axis=1)
    share = priors.HAND_BELL_SHARE
    both = np.logaddexp(
        in_bell + np.log(share), evenly + np.log((1 - share) / len(priors.HAND_WITHIN_S))
    )
    return np.where((count > 1).any(axis=1), both, -np.inf)


def _even_log_density(apart_s: Array, step_s: Array, within_s: Array) -> Array:
    """Log density of two rounded times ``apart_s`` whose true difference is even on ±within.

    Rounding both adds a triangle of ± one step. 0 where nan; (…, W). A hundredth of the
    weight is left for a repeat that strays, within a tenth of a second.
    """
    there = np.isfinite(apart_s)
    x = np.where(there, apart_s, 0.0)[..., None] / step_s[..., None]
    h = within_s / step_s[..., None]

    def triangle(u: Array) -> Array:
        """The integral of a unit triangle on ±1 up to ``u``."""
        u = np.clip(u, -1.0, 1.0)
        return np.where(u < 0, 0.5 * (1 + u) ** 2, 1 - 0.5 * (1 - u) ** 2)

    density = (triangle(x + h) - triangle(x - h)) / (2 * within_s)
    strayed = np.exp(-0.5 * (apart_s[..., None] / 0.1) ** 2) / (0.1 * 2.5066)
    density = 0.99 * density + 0.01 * np.where(there[..., None], strayed, 0.0) + 1e-300
    return np.where(there[..., None], np.log(density) + _LOG_ROOT_TWO_PI, 0.0)
