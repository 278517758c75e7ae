"""The columns that tell how a total came about: first and second mark, adjustment, lateness.

A column stands only where it has something to say in this class: a mark sheet that nobody
moderated, of a class without grades, stays as narrow as it was.
"""

from __future__ import annotations

import datetime as dt
from collections.abc import Callable, Iterator
from dataclasses import dataclass

from markbench.checks.wording import signed
from markbench.export.report import ClassReport, LearnerReport
from markbench.export.sheet import Cell, Column, Number
from markbench.model import Mark
from markbench.moderation.outcome import CriterionOutcome, Outcome


@dataclass(frozen=True, slots=True)
class Told:
    """A column of the mark sheet, and what stands in it for a learner."""

    column: Column
    of: Callable[[Outcome], Cell]

    def cell(self, one: LearnerReport) -> Cell:
        """The learner's cell; empty where nothing is known of an outcome."""
        return None if one.outcome is None else self.of(one.outcome)


_FIRST = Told(
    Column("First mark", 9, "The sum of the first marks, before anybody looked again.", "right"),
    lambda outcome: _number(outcome.first_total),
)
_SECOND = Told(
    Column(
        "Second mark",
        9,
        "The sum of the second marks, given blind, where every criterion has one. It stands "
        "beside the first and changes nothing by itself.",
        "right",
    ),
    lambda outcome: _number(outcome.second_total),
)
_MODERATED = Told(
    Column(
        "After moderation",
        12,
        "The sum of the marks that hold: the teacher's final word, else a moderator's "
        "adjustment, else the first mark.",
        "right",
    ),
    lambda outcome: _number(outcome.moderated_total),
)
_ADJUSTMENT = Told(
    Column(
        "Adjustment",
        12,
        "What the decision about the whole class moved this total by. Totals that a moderator "
        "went through are not moved, and none leaves the range of the marks.",
        "right",
    ),
    lambda outcome: _number(outcome.shift or None),
)
_LATE = Told(
    Column("Late", 8, "Marks taken off for handing in late, by the rule of the brief.", "right"),
    lambda outcome: _number(None if outcome.late is None else -outcome.late.marks_off),
)
_GRADE = Told(
    Column("Grade", 8, "The highest grade of the brief whose least marks the total reaches."),
    lambda outcome: outcome.grade or None,
)

BESIDE = (
    Column("First mark", 20, "The first mark: level, marks, and who gave it."),
    Column("Second mark", 20, "Second marks, given blind: level, marks, and who gave them."),
)
"""Columns of the sheet of levels, where anything was marked twice or decided again."""


def was_moderated(report: ClassReport) -> bool:
    """Whether anybody marked a second time, or decided on a first mark."""
    return any(_looked_again(row) for one in _outcomes(report) for row in one.criteria)


def on_the_way_to_the_total(report: ClassReport) -> tuple[Told, ...]:
    """What stands between the marks and the total."""
    moderated = was_moderated(report)
    adjusted = any(one.adjustment is not None for one in _outcomes(report))
    late = any(one.late is not None for one in _outcomes(report))
    return (
        *((_FIRST,) if moderated or adjusted or late else ()),
        *((_SECOND, _MODERATED) if moderated else ()),
        *((_ADJUSTMENT,) if adjusted else ()),
        *((_LATE,) if late else ()),
    )


def grades(report: ClassReport) -> tuple[Told, ...]:
    """The grade, where the brief names any."""
    return (_GRADE,) if report.brief.grade_boundaries else ()


def beside(one: LearnerReport, criterion: str) -> tuple[Cell, Cell]:
    """First and second marks of one criterion in words, where there is more than a first."""
    rows = one.outcome.criteria if one.outcome is not None else ()
    row = next((row for row in rows if row.criterion == criterion), None)
    if row is None or not _looked_again(row):
        return (None, None)
    first = None if row.first is None else _in_words(row.first)
    return (first, "; ".join(map(_in_words, row.seconds)) or None)


@dataclass(frozen=True, slots=True)
class StepWords:
    """How one language says what lies between the marks and the total."""

    moved: str
    late: str
    capped: str
    marks: tuple[str, str]  # one, and any other number of them
    days: tuple[str, str]
    day: str
    months: tuple[str, ...]

    def said(self, forms: tuple[str, str], number: float, form: str = "g") -> str:
        """A number with its noun."""
        return forms[abs(number) != 1].format(n=signed(number, form))

    def said_day(self, day: dt.date) -> str:
        """A date with its month as a word: never the system's language, only the sheet's."""
        return self.day.format(d=day.day, month=self.months[day.month - 1], y=day.year)


STEPS = StepWords(
    moved="The total was moved by {marks}, as for the whole class.",
    late="Handed in {days} after {day}{capped}: {marks} off at {each} a day.",
    capped=", of which {n} count",
    marks=("{n} mark", "{n} marks"),
    days=("{n} day", "{n} days"),
    day="{d} {month} {y}",
    months=("January", "February", "March", "April", "May", "June", "July", "August",
            "September", "October", "November", "December"),
)  # fmt: skip


STEPS_DE = StepWords(
    moved="Die Summe wurde um {marks} verschoben, wie für die ganze Klasse.",
    late="{days} nach dem {day} abgegeben{capped}: {marks} Abzug, {each} für jeden Tag.",
    capped=", davon zählen {n}",
    marks=("{n} Punkt", "{n} Punkte"),
    days=("{n} Tag", "{n} Tage"),
    day="{d}. {month} {y}",
    months=("Januar", "Februar", "März", "April", "Mai", "Juni", "Juli", "August",
            "September", "Oktober", "November", "Dezember"),
)  # fmt: skip


def steps_to_total(one: LearnerReport, words: StepWords = STEPS) -> tuple[str, ...]:
    """In sentences to the learner, what lies between the marks and the total."""
    outcome = one.outcome
    if outcome is None or outcome.total is None:
        return ()
    steps = []
    if outcome.shift:
        steps.append(words.moved.format(marks=words.said(words.marks, outcome.shift, "+g")))
    late = outcome.late
    if late is not None:
        capped = words.capped.format(n=late.counted) if late.counted < late.days else ""
        steps.append(
            words.late.format(
                days=words.said(words.days, late.days),
                day=words.said_day(late.last_day),
                capped=capped,
                marks=words.said(words.marks, late.marks_off),
                each=f"{late.marks_per_day:g}",
            )
        )
    return tuple(steps)


def _outcomes(report: ClassReport) -> Iterator[Outcome]:
    return (one.outcome for one in report.learners if one.outcome is not None)


def _looked_again(row: CriterionOutcome) -> bool:
    return bool(row.seconds or row.moderated or row.settled)


def _in_words(mark: Mark) -> str:
    return f"{mark.level} ({mark.marks:g}), {mark.by}"


def _number(value: float | None) -> Cell:
    return None if value is None else Number(value)
