"""The pendulum's law as evidence for what a number without a unit must mean.

A stated unit or count is never overruled here: wrong ones are for the diagnosis. What is
not stated is taken as whatever makes 4π²L/T² come nearest to g, within what the brief calls
sensible lengths.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence
from statistics import median

from markbench.intake.tables.units import size
from markbench.model import Brief

_FOUR_PI_SQUARED = 4 * math.pi**2
# Gravity anywhere people live is 9.76–9.83 m/s²; one figure does for telling units apart.
_G = 9.8
# Lengths short or long by a few centimetres bend the law by less, other columns by more.
_ABOUT = 0.15
# What learners write lengths in without saying so; millimetres are rarer (common practice,
# no source), so they must fit better by a factor of two in g.
_UNITS: tuple[tuple[str, float], ...] = (("cm", 0.0), ("m", 0.0), ("mm", 0.3))


def misfit(pairs: Iterable[tuple[float, float]]) -> float:
    """|log₁₀(4π²L/(T²·g))|, the median over (L in m, T in s); 9 where there are none."""
    logs = [
        math.log10(_FOUR_PI_SQUARED * length / (period * period * _G))
        for length, period in pairs
        if length > 0 and period > 0
    ]
    return abs(median(logs)) if logs else 9.0


def apparent_swings(pairs: Iterable[tuple[float, float]]) -> float:
    """Median of t/T for (L in m, t in s): how many swings a time would be of; nan for none."""
    ratios = [
        time * math.sqrt(_G / length) / (2 * math.pi)
        for length, time in pairs
        if length > 0 and time > 0
    ]
    return median(ratios) if ratios else math.nan


def rises_as_root(pairs: Sequence[tuple[float, float]]) -> bool:
    """Whether times grow with their lengths about as √L, whatever the units and counts.

    All but one in five may stray: a slip of the learner's must not hide a column of times. But
    no timings are alike at every length, as an angle or a mass may be.
    """
    good = [(length, time) for length, time in pairs if length > 0 and time > 0]
    if not good or len({time for _, time in good}) == 1 < len({length for length, _ in good}):
        return False
    shares = [time / math.sqrt(length) for length, time in good]
    middle = median(shares)
    astray = sum(abs(share / middle - 1) > _ABOUT for share in shares)
    return astray <= (max(1, len(good) // 5) if len(good) > 3 else 0)


def guess_length_unit(
    lengths: Sequence[float],
    timings: Sequence[tuple[int, float, int | None]],
    brief: Brief,
) -> tuple[str, float]:
    """Unit of lengths written without one, and the misfit it leaves.

    ``timings`` are (index into ``lengths``, seconds, swings or ``None``); for ``None`` the
    brief's counts are tried.
    """
    best = ("cm", math.inf)
    for unit, rarity in _UNITS:
        scale = size(unit)
        inside = sum(brief.shortest_m / 2 <= n * scale <= brief.longest_m * 2 for n in lengths)
        outside = 1 - inside / max(1, len(lengths))
        fit = count_misfit([(lengths[i] * scale, t, n) for i, t, n in timings], brief)
        score = fit + rarity + outside * 0.5
        if score < best[1] - 1e-9:
            best = (unit, score)
    return best


def count_misfit(timings: Sequence[tuple[float, float, int | None]], brief: Brief) -> float:
    """Least misfit of (L in m, t in s, swings or ``None``) over the brief's counts."""
    if not timings:
        return 0.0
    if all(n is not None for _, _, n in timings):
        return misfit((length, time / n) for length, time, n in timings if n)
    counts = {brief.swings_per_timing, *brief.swings_allowed}
    return min(
        misfit((length, time / (n or count)) for length, time, n in timings)
        for count in counts
        if count > 0
    )
