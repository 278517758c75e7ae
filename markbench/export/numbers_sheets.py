"""The sheets about numbers: readings as handed in, and g recomputed from them."""

from __future__ import annotations

import math
from collections.abc import Iterator

from markbench.export.report import ClassReport, LearnerReport
from markbench.export.sheet import ID, NAME, Cell, Column, Number, Sheet
from markbench.model import Explanation, Reading, Row
from markbench.physics.reporting import round_pair, with_uncertainty


def readings(report: ClassReport) -> Sheet:
    """One row per length: raw readings with their place, then what follows from them."""
    most = max((len(r.timings) for one in report.learners for r in _readings_of(one)), default=2)
    columns = (
        ID,
        NAME,
        Column("Length / m", 9, "As read from the learner's table, in metres.", "right"),
        Column("Swings", 8, "Complete swings to a timing, N.", "right"),
        *(
            Column(f"Time {k} / s", 9, "Stopwatch time for N swings, in seconds.", "right")
            for k in range(1, most + 1)
        ),
        Column("Mean time / s", 9, "Mean of the timings, recomputed.", "right"),
        Column("Spread / s", 9, "Sample standard deviation of the timings.", "right"),
        Column("T / s", 9, "Period: mean time over N.", "right"),
        Column("T² / s²", 9, "Period squared.", "right"),
        Column("g / (m/s²)", 9, "4π² times length over T², from this length alone.", "right"),
        Column("Length as typed", 11, "The text of the length's cell, as the learner typed it."),
        Column("Where", 44, "File, sheet and cell the length was read from."),
    )
    rows = (
        _reading_row(one, reading, row, most)
        for one in report.learners
        for reading, row in _with_rows(one)
    )
    return Sheet("Readings", "One row per length that was handed in.", columns, rows)


def gravity(report: ClassReport) -> Sheet:
    """One row per learner: the straight line, the best estimate, and what may explain it."""
    columns = (
        ID,
        NAME,
        Column("Lengths", 8, "Number of lengths read.", "right"),
        Column(
            "Slope / (s²/m)",
            11,
            "Slope of the straight line T² against length, intercept free.",
            "right",
        ),
        Column("u(slope) / (s²/m)", 11, "Its standard uncertainty.", "right"),
        Column("Intercept / s²", 10, "Intercept of that line.", "right"),
        Column("u(intercept) / s²", 11, "Its standard uncertainty.", "right"),
        Column("g of the line / (m/s²)", 17, "4π² over slope ± standard uncertainty.", "right"),
        Column(
            "Best g / (m/s²)",
            17,
            "Best estimate from all readings ± standard uncertainty.",
            "right",
        ),
        Column("95 % from", 11, "Lower end of the best estimate's 95 % interval.", "right"),
        Column("95 % to", 10, "Upper end of that interval.", "right"),
        Column(
            "Worth asking about",
            40,
            "The explanation that fits better than honest work with "
            "ordinary scatter, where there is one. A question to the learner, not a verdict.",
        ),
        Column("Probability", 11, "Of that explanation among those weighed.", "right"),
        Column("g if mended / (m/s²)", 17, "g as it would be without that slip.", "right"),
    )
    return Sheet(
        "g recomputed",
        "One row per learner.",
        columns,
        (_gravity_row(one) for one in report.learners),
    )


def _readings_of(one: LearnerReport) -> tuple[Reading, ...]:
    return one.portfolio.table.readings if one.portfolio.table is not None else ()


def _with_rows(one: LearnerReport) -> Iterator[tuple[Reading, Row | None]]:
    """Readings with what was recomputed of each, where it was."""
    all_readings = _readings_of(one)
    rows: tuple[Row | None, ...] = one.analysis.rows if one.analysis is not None else ()
    if len(rows) != len(all_readings):
        rows = (None,) * len(all_readings)
    return zip(all_readings, rows, strict=True)


def _reading_row(
    one: LearnerReport, reading: Reading, row: Row | None, most: int
) -> tuple[Cell, ...]:
    learner = one.portfolio.learner
    times = [Number(timing.time_s, timing.decimals) for timing in reading.timings]
    recomputed: list[Cell] = [None] * 5
    if row is not None:
        recomputed = [
            _number(row.mean_time_s, 3),
            _number(row.spread_s, 3),
            _number(row.period_s, 4),
            _number(row.period_squared_s2, 4),
            _number(row.g, 2),
        ]
    return (
        learner.id,
        learner.name,
        Number(reading.length_m, _length_decimals(reading)),
        Number(reading.swings),
        *times,
        *[None] * (most - len(times)),
        *recomputed,
        reading.source.raw,
        str(reading.source),
    )


def _gravity_row(one: LearnerReport) -> tuple[Cell, ...]:
    learner = one.portfolio.learner
    line = one.analysis.line if one.analysis is not None else None
    best = one.diagnosis.best if one.diagnosis is not None else None
    cells: list[Cell] = [learner.id, learner.name, Number(len(_readings_of(one)))]
    if line is None:
        cells += [None] * 5
    else:
        cells += _pair(line.slope_s2_per_m, line.u_slope)
        cells += _pair(line.intercept_s2, line.u_intercept)
        cells.append(with_uncertainty(line.g, line.u_g))
    if best is None:
        cells += [None] * 3
    else:
        decimals = max(round_pair(best.g, best.u_g)[2], 0)
        cells.append(with_uncertainty(best.g, best.u_g))
        cells += [_number(best.low95, decimals), _number(best.high95, decimals)]
    cells += _explained(_flagged(one))
    return tuple(cells)


def _flagged(one: LearnerReport) -> Explanation | None:
    """The leading explanation, where it beats honest work."""
    if one.diagnosis is None or not one.diagnosis.flagged:
        return None
    leading = one.diagnosis.explanations[:1]
    return next((one for one in leading if one.slip != "honest"), None)


def _explained(explanation: Explanation | None) -> list[Cell]:
    if explanation is None:
        return [None, None, None]
    mended = explanation.g_if_mended
    u_mended = explanation.u_g_if_mended
    return [
        explanation.sentence,
        Number(explanation.probability, 2),
        None
        if mended is None
        else with_uncertainty(mended, u_mended if u_mended is not None else math.nan),
    ]


def _number(value: float, decimals: int) -> Cell:
    return Number(value, decimals) if math.isfinite(value) else None


def _pair(value: float, uncertainty: float) -> list[Cell]:
    """Value and uncertainty in two cells, rounded as the pair is everywhere else."""
    if not math.isfinite(value):
        return [None, None]
    if not math.isfinite(uncertainty) or uncertainty <= 0:
        return [Number(float(f"{value:.4g}")), None]
    rounded, u_rounded, decimals = round_pair(value, uncertainty)
    return [Number(rounded, max(decimals, 0)), Number(u_rounded, max(decimals, 0))]


def _length_decimals(reading: Reading) -> int | None:
    """Decimals in metres that the learner's own decimals amount to (20.5 cm: 3)."""
    if reading.length_raw_decimals is None or reading.length_unit_m <= 0:
        return None
    return max(reading.length_raw_decimals - round(math.log10(reading.length_unit_m)), 0)
