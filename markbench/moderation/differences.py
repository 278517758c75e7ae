"""How far the second marks lie from the first: mean difference, limits of agreement, Lin.

Differences are second − first, in marks. The limits are mean ± 1.96 standard deviations
(some print ± 2); 95 % of differences would lie between them if they were normal, which
whole marks are only roughly. Their intervals are exact for normal differences, by the
noncentral t distribution (Carkeet 2015); the printed examples of Bland and Altman use the
approximate ones, which are too narrow in small samples and are kept for comparison.

References: Bland & Altman (1986) Lancet i, 307; Carkeet (2015) Optometry and Vision
Science 92, e71; Lin (1989) Biometrics 45, 255.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from math import atanh, sqrt, tanh

import numpy as np
from scipy.stats import nct
from scipy.stats import t as t_distribution

from markbench.model import say

Interval = tuple[float, float]


@dataclass(frozen=True, slots=True)
class Limits:
    """Mean difference and limits of agreement, each with a 95 % interval, in marks.

    ``mean`` and the rest are ``None`` where too few pairs leave them undefined. ``points``
    gives (mean of the pair, difference) per learner for the plot.
    """

    first: tuple[float, ...]
    second: tuple[float, ...]
    multiplier: float
    method: str
    mean: float | None = None
    sd: float | None = None
    mean95: Interval | None = None
    lower: float | None = None
    upper: float | None = None
    lower95: Interval | None = None
    upper95: Interval | None = None
    undefined: str = ""

    @property
    def points(self) -> tuple[tuple[float, float], ...]:
        """(mean, second − first) of each pair."""
        pairs = zip(self.first, self.second, strict=True)
        return tuple(((a + b) / 2, b - a) for a, b in pairs)

    def __str__(self) -> str:
        if self.mean is None:
            return say("mean difference: undefined, {why}", why=self.undefined)
        if self.mean95 is None or self.lower95 is None or self.upper95 is None:
            return say(
                "mean difference {mean:+.2f}; limits of agreement: undefined, {why}",
                mean=self.mean,
                why=self.undefined,
            )
        return say(
            "mean difference {mean:+.2f} (95 % interval {around}); limits of agreement, mean ± "
            "{multiplier:g} sd: {lower:+.2f} ({around_lower}) to {upper:+.2f} ({around_upper}), "
            "n = {n}",
            mean=self.mean,
            around=_span(self.mean95),
            multiplier=self.multiplier,
            lower=self.lower,
            around_lower=_span(self.lower95),
            upper=self.upper,
            around_upper=_span(self.upper95),
            n=len(self.first),
        )


def limits_of_agreement(
    first: Sequence[float],
    second: Sequence[float],
    *,
    multiplier: float = 1.96,
    exact: bool = True,
) -> Limits:
    """Limits of agreement of paired marks. ``exact`` chooses how their intervals are made."""
    one, two = _pairs(first, second)
    method = (
        "intervals exact for normal differences (noncentral t)"
        if exact
        else "intervals by the approximate standard error of Bland and Altman (1986)"
    )
    inputs = (tuple(one.tolist()), tuple(two.tolist()), multiplier, method)
    n = len(one)
    if n == 0:
        return Limits(*inputs, undefined=say("nobody was marked twice"))
    differences = two - one
    mean = float(differences.mean())
    if n == 1:
        return Limits(*inputs, mean=mean, undefined=say("one pair shows no spread"))
    sd = float(differences.std(ddof=1))
    t = float(t_distribution.ppf(0.975, n - 1))
    half = t * sd / sqrt(n)
    lower, upper = mean - multiplier * sd, mean + multiplier * sd
    if exact:
        near, far = _exact_factors(n, multiplier)
        lower95 = (mean - far * sd, mean - near * sd)
        upper95 = (mean + near * sd, mean + far * sd)
    else:
        around = t * sqrt(3 * sd * sd / n)
        lower95 = (lower - around, lower + around)
        upper95 = (upper - around, upper + around)
    return Limits(*inputs, mean, sd, (mean - half, mean + half), lower, upper, lower95, upper95)


def _exact_factors(n: int, multiplier: float) -> Interval:
    """How many standard deviations the 2.5 % and 97.5 % bounds of a limit lie from the mean.

    (mean + multiplier·σ − sample mean)/(s/√n) follows a noncentral t distribution with
    noncentrality multiplier·√n.
    """
    shift = multiplier * sqrt(n)
    near, far = (float(nct.ppf(p, n - 1, shift)) / sqrt(n) for p in (0.025, 0.975))
    return near, far


@dataclass(frozen=True, slots=True)
class Concordance:
    """Lin's concordance: correlation with the line of equal marks. ``None``: undefined."""

    value: float | None
    low95: float | None
    high95: float | None
    count: int
    undefined: str = ""

    def __str__(self) -> str:
        if self.value is None:
            return f"concordance: undefined, {self.undefined}"
        if self.low95 is None or self.high95 is None:
            return f"concordance {self.value:.2f} (n = {self.count}, no interval)"
        return (
            f"concordance {self.value:.2f} (95 % interval {self.low95:.2f} to "
            f"{self.high95:.2f}, n = {self.count})"
        )


def concordance(first: Sequence[float], second: Sequence[float]) -> Concordance:
    """Lin's concordance coefficient, with its interval by Fisher's z (Lin 1989, eq. 4–6)."""
    one, two = _pairs(first, second)
    n = len(one)
    if n < 2:
        return Concordance(None, None, None, n, "fewer than two pairs")
    v1, v2 = float(one.var()), float(two.var())
    covariance = float(((one - one.mean()) * (two - two.mean())).mean())
    gap = float(one.mean() - two.mean())
    below = v1 + v2 + gap * gap
    if below == 0:
        return Concordance(None, None, None, n, "all marks are the same")
    value = 2 * covariance / below
    if n < 4 or v1 == 0 or v2 == 0 or covariance == 0 or abs(value) >= 1 - 1e-12:
        return Concordance(value, None, None, n)
    r = covariance / sqrt(v1 * v2)
    u2 = gap * gap / sqrt(v1 * v2)
    c = value
    variance = (
        (1 - r * r) * c * c / ((1 - c * c) * r * r)
        + 2 * c**3 * (1 - c) * u2 / (r * (1 - c * c) ** 2)
        - c**4 * u2**2 / (2 * r * r * (1 - c * c) ** 2)
    ) / (n - 2)
    half = 1.959963984540054 * sqrt(max(variance, 0.0))
    return Concordance(value, tanh(atanh(c) - half), tanh(atanh(c) + half), n)


def _pairs(
    first: Sequence[float], second: Sequence[float]
) -> tuple[
    np.ndarray[tuple[int], np.dtype[np.float64]], np.ndarray[tuple[int], np.dtype[np.float64]]
]:
    one, two = np.asarray(first, dtype=float), np.asarray(second, dtype=float)
    if one.shape != two.shape or one.ndim != 1:
        raise ValueError("both markers must have marked the same learners")
    return one, two


def _span(interval: Interval) -> str:
    return say("{low:+.2f} to {high:+.2f}", low=interval[0], high=interval[1])
