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
from markbench.export.feedback.wording import EN, SheetWords, sheet_words
from markbench.export.moderated import steps_to_total
from markbench.export.plain_text import printable
from markbench.export.report import ClassReport, LearnerReport
from markbench.model import Criterion, Reading, Row, Rubric
from markbench.physics.reporting import with_uncertainty

_MOST_STEPS = 3
_APART = 2.0  # standard uncertainties between two values that a reader takes for the same

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

    ``results_note`` says how to read them. ``language`` is that of the feedback texts, ``words``
    the fixed words of the sheet in it or, where there are none, in English. ``steps`` are
    sentences on what lies between the marks and the total; ``grade`` is empty without one.
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
    results_note: str = EN.results_note
    language: str = "en"
    grade: str = ""
    steps: tuple[str, ...] = ()
    words: SheetWords = EN

    @property
    def caption(self) -> str:
        """What the graph shows."""
        has_line = self.graph is not None and self.graph.has_line
        return self.words.caption if has_line else self.words.caption_no_line


def feedback_sheet(report: ClassReport, one: LearnerReport) -> FeedbackSheet:
    """The sheet of one learner; a criterion without a mark reads “not yet marked”."""
    learner = one.portfolio.learner
    rubric = report.rubric
    total = one.total(rubric)
    words = sheet_words(report.brief.feedback_language)
    return FeedbackSheet(
        title=_line(report.brief.title),
        learner_id=_line(learner.id),
        name=_line(learner.name),
        group=_line(learner.group),
        date=report.date,
        total=(
            words.figures(words.of.format(n=total, most=rubric.most))
            if total is not None
            else words.so_far.format(n=one.marked(rubric), of=len(rubric.criteria))
        ),
        criteria=tuple(_criterion_line(one, criterion, words) for criterion in rubric.criteria),
        next_steps=_next_steps(one, rubric, words),
        table=_table(one, words),
        results=_results(one, words),
        graph=graph(one.analysis, words),
        results_note=_results_note(one, words),
        language=_language(report.brief.feedback_language),
        grade=_line(one.grade),
        steps=tuple(map(words.figures, steps_to_total(one, words.steps))),
        words=words,
    )


def _criterion_line(one: LearnerReport, criterion: Criterion, words: SheetWords) -> CriterionLine:
    mark = one.marks.get(criterion.id)
    title = _line(criterion.title)
    if mark is None:
        return CriterionLine(title, "", words.not_yet, "")
    marks = words.figures(words.of.format(n=mark.marks, most=criterion.most))
    level = next((one.shown for one in criterion.levels if one.name == mark.level), mark.level)
    return CriterionLine(
        title, _line(level), marks, _UNIT.sub("\u00a0", printable(mark.feedback).strip())
    )


def _next_steps(one: LearnerReport, rubric: Rubric, words: SheetWords) -> tuple[NextStep, ...]:
    """For the criteria with most to gain, what the best level asks for.

    The level just above can be one with a slip in it, which is nothing to aim at.
    """
    steps: list[tuple[float, NextStep]] = []
    for criterion in rubric.criteria:
        mark = one.marks.get(criterion.id)
        if mark is None or mark.marks >= criterion.most:
            continue
        level = max(criterion.levels, key=lambda level: level.marks)
        asked = words.best_level.format(level=_line(level.shown), marks=level.marks)
        if level.descriptor:
            text = words.asks_for.format(level=asked, what=_line(level.descriptor))
        else:
            text = asked
        steps.append((criterion.most - mark.marks, NextStep(_line(criterion.title), text)))
    if not steps and one.total(rubric) is not None:
        return (NextStep("", words.go_further),)
    steps.sort(key=lambda step: -step[0])
    return tuple(step for _, step in steps[:_MOST_STEPS])


def _table(one: LearnerReport, words: SheetWords) -> tuple[tuple[str, ...], ...]:
    table, analysis = one.portfolio.table, one.analysis
    if table is None or analysis is None or len(analysis.rows) != len(table.readings):
        return ()
    if not table.readings:
        return ()
    pairs = zip(table.readings, analysis.rows, strict=True)
    return (words.table, *(_row(*pair, words) for pair in pairs))


def _row(reading: Reading, row: Row, words: SheetWords) -> tuple[str, ...]:
    """Decimals of the recomputed values as in the workbook."""
    times = ("; " if words.comma else ", ").join(
        f"{timing.time_s:g}" if timing.decimals is None else f"{timing.time_s:.{timing.decimals}f}"
        for timing in reading.timings
    )
    cells = (
        f"{reading.length_m:.{_length_decimals(reading)}f}",
        str(reading.swings),
        times or "–",
        _number(row.mean_time_s, 3),
        _number(row.period_s, 4),
        _number(row.period_squared_s2, 4),
        _number(row.g, 2),
    )
    return tuple(map(words.figures, cells))


def _results(one: LearnerReport, words: SheetWords) -> tuple[tuple[str, str], ...]:
    found: list[tuple[str, str]] = []
    line = one.analysis.line if one.analysis is not None else None
    if line is not None:
        found += [
            (words.results[0], with_uncertainty(line.slope_s2_per_m, line.u_slope, "s²/m")),
            (words.results[1], with_uncertainty(line.intercept_s2, line.u_intercept, "s²")),
            (words.results[2], with_uncertainty(line.g, line.u_g, "m/s²")),
        ]
    best = one.diagnosis.best if one.diagnosis is not None else None
    if best is not None:
        value = with_uncertainty(best.g, best.u_g, "m/s²")
        found.append((words.results[3], value))
    if found and one.analysis is not None:
        local = one.analysis.local
        found.append((words.results[4], with_uncertainty(local.g, local.u_g, "m/s²")))
    return tuple((name, words.figures(value)) for name, value in found)


def _results_note(one: LearnerReport, words: SheetWords) -> str:
    """How to read the results; where two values of g disagree, why they may."""
    line = one.analysis.line if one.analysis is not None else None
    best = one.diagnosis.best if one.diagnosis is not None else None
    if line is None or best is None:
        return words.results_note
    apart = abs(line.g - best.g) > _APART * math.hypot(line.u_g, best.u_g)  # false for nan
    return f"{words.results_note} {words.two_g}" if apart else words.results_note


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
