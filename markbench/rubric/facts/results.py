"""Facts recomputed from the readings: the straight line, g, and what departs from them."""

from __future__ import annotations

import math
from collections.abc import Iterable

import numpy as np

from markbench.checks.numbers import PRIOR_FREEDOM, U_LENGTH_M, sum_of_squares, t_quantile
from markbench.model import Row, Source, StraightLine
from markbench.physics.lines import fit_lines
from markbench.physics.reporting import with_uncertainty
from markbench.rubric.facts.registry import (
    Show,
    Value,
    Work,
    centimetres,
    count,
    metres_per_second_squared,
    milliseconds_wise,
    number,
    of_two_ends,
    percent,
    seconds,
    seconds_apart,
    yes_no,
)

_G = ("g_implausible",)
_LINE = ("off_the_line",)


def _line(work: Work) -> StraightLine | None:
    return work.analysis.line if work.analysis is not None else None


def _finite(value: float | None) -> float | None:
    return value if value is not None and math.isfinite(value) else None


def _line_value(uncertainty: str, unit: str) -> Show:
    """Show a value of the line to the figures that its uncertainty allows."""

    def show(value: Value, work: Work | None) -> str:
        line = _line(work) if work is not None else None
        return with_uncertainty(float(value or 0.0), getattr(line, uncertainty, math.nan), unit)

    return show


def _best(value: Value, work: Work | None) -> str:
    best = work.diagnosis.best if work is not None and work.diagnosis is not None else None
    u = best.u_g if best is not None else math.nan
    return with_uncertainty(float(value or 0.0), u, "m/s²")


def _local(value: Value, work: Work | None) -> str:
    # Without a place, 9.76 to 9.83 m/s² is all that is known: one decimal, and "about".
    if work is None or work.brief.place.latitude_deg is not None:
        return f"{value:.2f} m/s²"
    about = "etwa" if work.brief.feedback_language == "de" else "about"
    return f"{about} {value:.1f} m/s²"


def _squared_seconds(value: Value, work: Work | None) -> str:
    return f"{value:.3f} s²"


def _three_nines(value: Value, work: Work | None) -> str:
    return f"{value:.4f}"


@count("results", "points on the graph")
def points(work: Work) -> int:
    """How many points of T² against L the line is drawn through."""
    line = _line(work)
    return line.points if line is not None else 0


@number("results", "g from the straight line", _line_value("u_g", "m/s²"), "m/s²", _G)
def g(work: Work) -> float | None:
    """g = 4π²/slope from the straight line T² against L that the learner would draw."""
    line = _line(work)
    return _finite(line.g) if line is not None else None


@number("results", "standard uncertainty of g", metres_per_second_squared, "m/s²")
def u_g(work: Work) -> float | None:
    """Standard uncertainty of the line's g (unknown for two points)."""
    line = _line(work)
    return _finite(line.u_g) if line is not None else None


@number("results", "local g", _local, "m/s²")
def g_local(work: Work) -> float | None:
    """Gravity where the class measured, from the brief's place."""
    return work.analysis.local.g if work.analysis is not None else None


@number("results", "difference of g from local g", percent, "", _G)
def g_difference_fraction(work: Work) -> float | None:
    """|g − local g| / local g, for the straight line's g."""
    line = _line(work)
    if line is None or work.analysis is None or not math.isfinite(line.g):
        return None
    return abs(line.g - work.analysis.local.g) / work.analysis.local.g


@yes_no("results", "g within the tolerance of local g", _G)
def g_within_tolerance(work: Work) -> bool | None:
    """Whether g lies within the brief's tolerance of local g."""
    difference = g_difference_fraction(work)
    if difference is None:
        return None
    return float(difference) <= work.brief.tolerances.g_fraction


@yes_no("results", "g above local g", _G)
def g_above_local(work: Work) -> bool | None:
    """Whether the line's g is larger than local g."""
    line = _line(work)
    if line is None or work.analysis is None or not math.isfinite(line.g):
        return None
    return line.g > work.analysis.local.g


@yes_no("results", "agreement of g with local g within its own scatter", _G)
def g_agrees(work: Work) -> bool | None:
    """Whether local g lies within twice the combined standard uncertainty of the line's g."""
    line = _line(work)
    if line is None or work.analysis is None or not math.isfinite(line.u_g):
        return None
    local = work.analysis.local
    return abs(line.g - local.g) <= 2.0 * math.hypot(line.u_g, local.u_g)


@number("results", "best estimate of g", _best, "m/s²")
def best_g(work: Work) -> float | None:
    """The best estimate of g from the whole model of honest work."""
    best = work.diagnosis.best if work.diagnosis is not None else None
    return _finite(best.g) if best is not None else None


@number("results", "standard uncertainty of the best g", metres_per_second_squared, "m/s²")
def best_u_g(work: Work) -> float | None:
    """Standard uncertainty of the best estimate of g."""
    best = work.diagnosis.best if work.diagnosis is not None else None
    return _finite(best.u_g) if best is not None else None


@number("results", "smallest g of a single length", metres_per_second_squared, "m/s²")
def g_lowest(work: Work) -> float | None:
    """The smallest g = 4π²L/T² that a single length gives."""
    return _finite(min((row.g for row in work.rows), default=None))


@number("results", "largest g of a single length", metres_per_second_squared, "m/s²")
def g_highest(work: Work) -> float | None:
    """The largest g = 4π²L/T² that a single length gives."""
    return _finite(max((row.g for row in work.rows), default=None))


@number(
    "results",
    "slope of T² against L",
    _line_value("u_slope", "s²/m"),
    "s²/m",
    _G,
)
def slope(work: Work) -> float | None:
    """Slope of the straight line T² against L."""
    line = _line(work)
    return _finite(line.slope_s2_per_m) if line is not None else None


@number(
    "results",
    "intercept of T² against L",
    _line_value("u_intercept", "s²"),
    "s²",
    ("intercept",),
)
def intercept(work: Work) -> float | None:
    """Where the straight line meets the T² axis."""
    line = _line(work)
    return _finite(line.intercept_s2) if line is not None else None


@yes_no("results", "an intercept larger than scatter explains", ("intercept",))
def intercept_significant(work: Work) -> bool | None:
    """Whether the line misses the origin by more than scatter explains (a finding says so)."""
    return "intercept" in work.by_check if _line(work) is not None else None


@number("results", "R² of the line", _three_nines)
def r_squared(work: Work) -> float | None:
    """Share of the variation of T² that the straight line accounts for; needs three points."""
    line = _line(work)
    if line is None or line.points < 3:
        return None
    values = [row.period_squared_s2 for row in work.rows]
    mean = sum(values) / len(values)
    total = sum((value - mean) ** 2 for value in values)
    left = sum(r * r for r in line.residuals_s2 if math.isfinite(r))
    return 1.0 - left / total if total > 0 else None


def _far_off(work: Work) -> tuple[Row, ...]:
    """Points that hand timing and the reading of a length do not put so far off the line.

    A point that departs much widens the very scatter it would be held against, and so the
    check of the line may let it pass: here it is held against what hands and rulers do. The
    farthest is taken out first and the line drawn anew through the rest.
    """
    found = [
        work.analysis.rows[row]
        for finding in work.by_check.get("off_the_line", ())
        for row in {row for row, _ in finding.cells}
        if work.analysis is not None and row < len(work.analysis.rows)
    ]
    rows = [row for row in work.rows if row not in found]
    while len(rows) >= 3:
        lines = fit_lines(
            np.array([row.length_m for row in rows]),
            np.array([row.period_squared_s2 for row in rows]),
        )
        worst = _farthest(rows, float(lines.slope[0]), float(lines.intercept[0]))
        if worst is None or abs(worst[1]) <= _as_hands_go_s(worst[0], work):
            break
        found.append(worst[0])
        rows.remove(worst[0])
    return tuple(found)


def _as_hands_go_s(row: Row, work: Work) -> float:
    """How far off timing and length reading put a mean time, going by the repeats of the others."""
    if not row.length_m > 0:
        return math.inf
    others = [other for other in work.rows if other is not row]
    freedom = PRIOR_FREEDOM + sum(len(other.timings_s) - 1 for other in others)
    usual_s = work.brief.tolerances.timing_scatter_s
    squares = PRIOR_FREEDOM * usual_s**2 + sum(sum_of_squares(o.timings_s) for o in others)
    scatter_s = math.sqrt(squares / freedom / len(row.timings_s))
    by_length_s = row.mean_time_s / (2 * row.length_m) * U_LENGTH_M  # dt/dL = t/2L
    chance = work.brief.tolerances.false_alarm / len(work.rows)
    return t_quantile(chance, freedom) * math.hypot(scatter_s, by_length_s)


def _far_off_cells(work: Work) -> tuple[Source, ...]:
    if work.analysis is None or work.portfolio.table is None:
        return ()
    far = _far_off(work)
    pairs = zip(work.analysis.rows, work.portfolio.table.readings, strict=False)
    return tuple(
        source
        for row, reading in pairs
        if row in far
        for source in (reading.source, *(timing.source for timing in reading.timings))
    )


@count("results", "points far off the line", _LINE, _far_off_cells)
def outliers(work: Work) -> int | None:
    """How many points lie farther off the line than hand timing and length reading explain."""
    if _line(work) is None:
        return None
    return max(len(_far_off(work)), len(work.by_check.get("off_the_line", ())))


def _worst(work: Work) -> tuple[Row, float] | None:
    """The row farthest from the line, and its timing minus the line's, in seconds."""
    line = _line(work)
    if line is None or line.points < 3:
        return None
    return _farthest(work.rows, line.slope_s2_per_m, line.intercept_s2)


def _farthest(rows: Iterable[Row], slope: float, intercept_s2: float) -> tuple[Row, float] | None:
    worst = None
    for row in rows:
        on_line = intercept_s2 + slope * row.length_m
        if not on_line > 0:
            continue
        departure = row.mean_time_s - row.swings * math.sqrt(on_line)
        if worst is None or abs(departure) > abs(worst[1]):
            worst = (row, departure)
    return worst


@number("results", "length farthest from the line", centimetres, "m", _LINE)
def worst_length_m(work: Work) -> float | None:
    """The length whose mean time lies farthest from the line's; needs three points."""
    worst = _worst(work)
    return worst[0].length_m if worst is not None else None


@number("results", "mean time at the length farthest from the line", seconds, "s", _LINE)
def worst_time_s(work: Work) -> float | None:
    """The mean time at the length farthest from the line."""
    worst = _worst(work)
    return worst[0].mean_time_s if worst is not None else None


@number("results", "largest departure of a mean time from the line", seconds_apart, "s", _LINE)
def largest_departure_s(work: Work) -> float | None:
    """How far the mean time at the worst length lies from the line's, in seconds of timing."""
    worst = _worst(work)
    return abs(worst[1]) if worst is not None else None


@yes_no("results", "a worst length that is slow rather than quick", _LINE)
def worst_is_slow(work: Work) -> bool | None:
    """Whether the time at the worst length is longer than the line's."""
    worst = _worst(work)
    return worst[1] > 0 if worst is not None else None


@number("results", "period at the shortest length", of_two_ends(milliseconds_wise), "s")
def shortest_period_s(work: Work) -> float | None:
    """T = t/N at the shortest length."""
    return work.rows[0].period_s if work.rows else None


@number("results", "period at the longest length", milliseconds_wise, "s")
def longest_period_s(work: Work) -> float | None:
    """T = t/N at the longest length."""
    return work.rows[-1].period_s if work.rows else None


@number("results", "T² at the longest length", _squared_seconds, "s²")
def longest_period_squared(work: Work) -> float | None:
    """T² at the longest length."""
    return work.rows[-1].period_squared_s2 if work.rows else None


@number("results", "T² at the shortest length", of_two_ends(_squared_seconds), "s²")
def shortest_period_squared(work: Work) -> float | None:
    """T² at the shortest length."""
    return work.rows[0].period_squared_s2 if work.rows else None
