"""What stands on a learner's sheet, before anyone decides how it looks.

Taken only from the learner's readings and from marks that a person gave. Findings, drafts,
explanations nobody agreed to, files and other learners have no place in it, so that no
sheet can show them.
"""

from __future__ import annotations

import datetime as dt
import math
import re
from dataclasses import dataclass

from markbench.export.feedback.graph import Graph, graph
from markbench.export.moderated import steps_to_total
from markbench.export.plain_text import printable
from markbench.export.report import ClassReport, LearnerReport
from markbench.model import Criterion, Reading, Row, Rubric
from markbench.physics.reporting import with_uncertainty

NOT_YET = "not yet marked"

# Common practice of school laboratories, no source.
CAUTIONS = (
    "Keep people, pets, glass, screens and furniture well out of the way of the swinging "
    "weight, and take a bob that would do no harm if it came loose.",
    "Hang the string from something that can neither tip nor fall, and try it by hand first. "
    "A small swing is enough; it is also the better physics.",
    "Do not climb on chairs, tables or window sills. Ask an adult to fix a high support, or "
    "take a shorter string.",
    "The rules of your school come first. If they say otherwise, or you are not sure, ask "
    "your teacher before you begin.",
)

_GO_FURTHER = (
    "Every criterion is at its best level. To go further, add a length beyond those you have, "
    "or count twenty swings where you counted ten, and see whether g stays within its "
    "uncertainty."
)
_MOST_STEPS = 3

# A number stays on one line with its unit or its uncertainty.
_UNIT = re.compile(r"(?<=\d) (?=(?:mm|cm|m|s|m/s²|s²|s²/m|%|°)(?!\w)|± )|(?<=±) (?=\d)")


@dataclass(frozen=True, slots=True)
class CriterionLine:
    """One criterion as marked: ``marks`` reads “4 of 5”."""

    title: str
    level: str
    marks: str
    feedback: str


@dataclass(frozen=True, slots=True)
class NextStep:
    """What a better level of a criterion asks for."""

    title: str
    text: str


@dataclass(frozen=True, slots=True)
class FeedbackSheet:
    """A learner's sheet. ``table`` begins with its headings; ``results`` are (name, value).

    ``language`` is that of the feedback texts; all else is English. ``steps`` are sentences
    on what lies between the marks and the total; ``grade`` is empty without one.
    """

    title: str
    learner_id: str
    name: str
    group: str
    date: dt.date
    total: str
    criteria: tuple[CriterionLine, ...]
    next_steps: tuple[NextStep, ...]
    table: tuple[tuple[str, ...], ...]
    results: tuple[tuple[str, str], ...]
    graph: Graph | None
    language: str = "en"
    grade: str = ""
    steps: tuple[str, ...] = ()


def feedback_sheet(report: ClassReport, one: LearnerReport) -> FeedbackSheet:
    """The sheet of one learner; a criterion without a mark reads “not yet marked”."""
    learner = one.portfolio.learner
    rubric = report.rubric
    total = one.total(rubric)
    return FeedbackSheet(
        title=_line(report.brief.title),
        learner_id=_line(learner.id),
        name=_line(learner.name),
        group=_line(learner.group),
        date=report.date,
        total=(
            f"{total:g} of {rubric.most:g}"
            if total is not None
            else f"{one.marked(rubric)} of {len(rubric.criteria)} criteria marked so far"
        ),
        criteria=tuple(_criterion_line(one, criterion) for criterion in rubric.criteria),
        next_steps=_next_steps(one, rubric),
        table=_table(one),
        results=_results(one),
        graph=graph(one.analysis),
        language=_language(report.brief.feedback_language),
        grade=_line(one.grade),
        steps=steps_to_total(one),
    )


def _criterion_line(one: LearnerReport, criterion: Criterion) -> CriterionLine:
    mark = one.marks.get(criterion.id)
    title = _line(criterion.title)
    if mark is None:
        return CriterionLine(title, "", NOT_YET, "")
    marks = f"{mark.marks:g} of {criterion.most:g}"
    return CriterionLine(
        title, _line(mark.level), marks, _UNIT.sub("\u00a0", printable(mark.feedback).strip())
    )


def _next_steps(one: LearnerReport, rubric: Rubric) -> tuple[NextStep, ...]:
    """For the criteria with most to gain, what the best level asks for.

    The level just above can be one with a slip in it, which is nothing to aim at.
    """
    steps: list[tuple[float, NextStep]] = []
    for criterion in rubric.criteria:
        mark = one.marks.get(criterion.id)
        if mark is None or mark.marks >= criterion.most:
            continue
        level = max(criterion.levels, key=lambda level: level.marks)
        asked = f"“{_line(level.name)}” ({level.marks:g} marks)"
        text = f"{asked} asks for: {_line(level.descriptor)}" if level.descriptor else asked
        steps.append((criterion.most - mark.marks, NextStep(_line(criterion.title), text)))
    if not steps and one.total(rubric) is not None:
        return (NextStep("", _GO_FURTHER),)
    steps.sort(key=lambda step: -step[0])
    return tuple(step for _, step in steps[:_MOST_STEPS])


def _table(one: LearnerReport) -> tuple[tuple[str, ...], ...]:
    table, analysis = one.portfolio.table, one.analysis
    if table is None or analysis is None or len(analysis.rows) != len(table.readings):
        return ()
    if not table.readings:
        return ()
    headings = ("L / m", "swings N", "times t / s", "mean t / s", "T / s", "T² / s²", "g / (m/s²)")
    rows = (_row(*pair) for pair in zip(table.readings, analysis.rows, strict=True))
    return (headings, *rows)


def _row(reading: Reading, row: Row) -> tuple[str, ...]:
    """Decimals of the recomputed values as in the workbook."""
    times = ", ".join(
        f"{timing.time_s:g}" if timing.decimals is None else f"{timing.time_s:.{timing.decimals}f}"
        for timing in reading.timings
    )
    return (
        f"{reading.length_m:.{_length_decimals(reading)}f}",
        str(reading.swings),
        times or "–",
        _number(row.mean_time_s, 3),
        _number(row.period_s, 4),
        _number(row.period_squared_s2, 4),
        _number(row.g, 2),
    )


def _results(one: LearnerReport) -> tuple[tuple[str, str], ...]:
    found: list[tuple[str, str]] = []
    line = one.analysis.line if one.analysis is not None else None
    if line is not None:
        found += [
            ("Slope of your line", with_uncertainty(line.slope_s2_per_m, line.u_slope, "s²/m")),
            ("Its intercept at L = 0", with_uncertainty(line.intercept_s2, line.u_intercept, "s²")),
            ("g from your line, 4π²/slope", with_uncertainty(line.g, line.u_g, "m/s²")),
        ]
    best = one.diagnosis.best if one.diagnosis is not None else None
    if best is not None:
        value = with_uncertainty(best.g, best.u_g, "m/s²")
        found.append(("g from all your readings at once, best estimate", value))
    if found and one.analysis is not None:
        local = one.analysis.local
        found.append(
            ("g expected where you measured", with_uncertainty(local.g, local.u_g, "m/s²"))
        )
    return tuple(found)


def _number(value: float, decimals: int) -> str:
    return f"{value:.{decimals}f}" if math.isfinite(value) else "–"


def _length_decimals(reading: Reading) -> int:
    """Decimals in metres that the learner's own amount to (20.5 cm: 3); millimetres else."""
    if reading.length_raw_decimals is None or reading.length_unit_m <= 0:
        return 3
    return max(reading.length_raw_decimals - round(math.log10(reading.length_unit_m)), 0)


def _line(text: str) -> str:
    return " ".join(printable(text).split())


def _language(tag: str) -> str:
    """The tag if it looks like one of BCP 47, so that nothing else gets into a page."""
    return tag if re.fullmatch(r"[A-Za-z]{2,3}(-[A-Za-z0-9]{2,8})*", tag) else "en"
