"""From marks to a result: which mark holds, adjustment, lateness, grade, each with its why.

The order is fixed. The teacher's final word on a criterion holds before a moderator's
adjustment, and that before the first mark. Where moderators adjusted to different marks
nothing is chosen for them: the first mark stays and the clash is named. A class-wide
adjustment moves only totals that no moderator has been through. Lateness comes last, so
that nobody's penalty is moved by an adjustment.
"""

from __future__ import annotations

import datetime as dt
from collections.abc import Mapping
from dataclasses import dataclass, replace

from markbench.model import Brief, Mark, Rubric, State, joined, say
from markbench.moderation.grades import LateDeduction, grade_of, late_deduction, shifted
from markbench.moderation.records import (
    ClassAdjustment,
    Moderated,
    Settled,
    class_adjustment,
    moderations,
    second_marks,
    settled_mark,
)


@dataclass(frozen=True, slots=True)
class CriterionOutcome:
    """One criterion: every mark given, the one that holds, and why it does.

    ``open`` names what still needs the teacher: a question asked, a clash; else empty.
    """

    criterion: str
    first: Mark | None
    seconds: tuple[Mark, ...]
    moderated: tuple[Moderated, ...]
    settled: Settled | None
    marks: float | None
    level: str | None
    why: str
    open: str = ""

    @property
    def held(self) -> Mark | None:
        """The mark that holds, signed by whoever gave it, with the first mark's text."""
        if self.marks is None or self.level is None:
            return None
        first = self.first
        if first is not None and (self.marks, self.level) == (first.marks, first.level):
            return first
        if self.settled is not None:
            by, at = self.settled.by, self.settled.at
        else:
            last = [one for one in self.moderated if one.action == "adjust"][-1]
            by, at = last.by, last.at
        if first is None:
            return Mark(self.criterion, self.level, self.marks, "", by, at)
        return replace(first, level=self.level, marks=self.marks, by=by, at=at)


@dataclass(frozen=True, slots=True)
class Outcome:
    """One learner's result. Totals are ``None`` until every criterion has a mark.

    ``first_total`` adds the first marks, ``moderated_total`` those that hold,
    ``adjusted_total`` is after the class's adjustment; ``total`` is after lateness too, and
    the one that ``grade`` is read from.
    """

    learner: str
    criteria: tuple[CriterionOutcome, ...]
    first_total: float | None
    moderated_total: float | None
    adjustment: ClassAdjustment | None
    late: LateDeduction | None
    total: float | None
    grade: str
    adjusted_total: float | None = None

    @property
    def shift(self) -> float:
        """Marks the class's adjustment did move this total by: at its ends less than asked."""
        if self.adjusted_total is None or self.moderated_total is None:
            return 0.0
        return self.adjusted_total - self.moderated_total

    def of(self, criterion: str) -> CriterionOutcome:
        """The outcome of one criterion."""
        return next(one for one in self.criteria if one.criterion == criterion)

    @property
    def held(self) -> dict[str, Mark]:
        """The mark that holds on each criterion that has one."""
        found = {one.criterion: one.held for one in self.criteria}
        return {criterion: mark for criterion, mark in found.items() if mark is not None}

    @property
    def looked_at(self) -> bool:
        """Whether a second person or the teacher's final word went through any criterion."""
        return any(one.moderated or one.settled for one in self.criteria)

    @property
    def second_total(self) -> float | None:
        """Sum of the earliest second marks, ``None`` unless every criterion has one."""
        if not self.criteria or any(not one.seconds for one in self.criteria):
            return None
        return sum(one.seconds[0].marks for one in self.criteria)

    @property
    def open(self) -> tuple[str, ...]:
        """What still needs the teacher, criterion by criterion."""
        return tuple(one.open for one in self.criteria if one.open)


def outcomes(
    state: State,
    rubric: Rubric,
    brief: Brief,
    firsts: Mapping[str, Mapping[str, Mark]],
    handed_in: Mapping[str, dt.datetime | None],
    extensions: Mapping[str, dt.date],
) -> dict[str, Outcome]:
    """The result of every learner of ``firsts`` (learner → criterion → first mark)."""
    seconds, moderated = second_marks(state), moderations(state)
    adjustment = class_adjustment(state)
    found = {}
    for learner, marks in firsts.items():
        rows = tuple(
            _criterion(
                criterion.id,
                marks.get(criterion.id),
                seconds.get(learner, {}).get(criterion.id, ()),
                moderated.get(learner, {}).get(criterion.id, ()),
                settled_mark(state, learner, criterion.id),
            )
            for criterion in rubric.criteria
        )
        late = late_deduction(
            brief.late, extensions.get(learner) or brief.closes, handed_in.get(learner)
        )
        found[learner] = _outcome(learner, rows, adjustment, late, rubric.most, brief)
    return found


def _criterion(
    criterion: str,
    first: Mark | None,
    seconds: tuple[Mark, ...],
    moderated: tuple[Moderated, ...],
    settled: Settled | None,
) -> CriterionOutcome:
    marks, level, why = (
        (first.marks, first.level, f"first mark, {first.by}")
        if first is not None
        else (None, None, "not marked yet")
    )
    still_open = ""
    adjusted = [one for one in moderated if one.action == "adjust" and one.marks is not None]
    asked = [one for one in moderated if one.action == "ask"]
    if settled is not None:
        marks, level = settled.marks, settled.level
        why = f"settled by {settled.by}: {settled.why}"
    elif len({one.marks for one in adjusted}) > 1:
        to = (say("{by} to {marks:g}", by=one.by, marks=one.marks) for one in adjusted)
        still_open = say("adjusted to different marks ({words})", words=joined(to, ", "))
    elif adjusted:
        last = adjusted[-1]
        marks, level, why = last.marks, last.level, f"adjusted by {last.by}: {last.why}"
    if settled is None and not still_open and asked:
        still_open = joined(
            (say("{by} asks: {why}", by=one.by, why=one.why) for one in asked), "; "
        )
    elif settled is None and not still_open and not moderated:
        apart = [one for one in seconds if first is not None and one.marks != first.marks]
        if first is not None and apart:
            gave = (
                say("{by} gave {marks:g}", by=one.by, marks=one.marks) for one in (first, *apart)
            )
            still_open = joined(gave, ", ")
    if still_open:
        still_open = say("{criterion}: {words}", criterion=criterion, words=still_open)
    return CriterionOutcome(
        criterion, first, seconds, moderated, settled, marks, level, why, still_open
    )


def _outcome(
    learner: str,
    rows: tuple[CriterionOutcome, ...],
    adjustment: ClassAdjustment | None,
    late: LateDeduction | None,
    most: float,
    brief: Brief,
) -> Outcome:
    first = _sum([row.first.marks if row.first is not None else None for row in rows])
    moderated = _sum([row.marks for row in rows])
    looked_at = any(row.moderated or row.settled for row in rows)
    applied = None if looked_at or adjustment is None or not adjustment.shift else adjustment
    adjusted = moderated
    if adjusted is not None and applied is not None:
        adjusted = shifted(adjusted, applied.shift, most)
    total = adjusted
    if total is not None and late is not None:
        total = max(total - late.marks_off, 0.0)
    grade = grade_of(total, brief.grade_boundaries)
    return Outcome(learner, rows, first, moderated, applied, late, total, grade, adjusted)


def _sum(marks: list[float | None]) -> float | None:
    given = [mark for mark in marks if mark is not None]
    return sum(given) if given and len(given) == len(marks) else None
