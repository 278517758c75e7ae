"""What the class at hand would get from a rubric that is not in use yet."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from markbench.model import Rubric
from markbench.rubric import draft
from markbench.session.session import Session


@dataclass(frozen=True, slots=True)
class Shift:
    """A learner's draft in one criterion as it is and as it would be; empty: no level drafted."""

    learner: str
    before: str
    after: str
    sentences: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Preview:
    """The class under another rubric. ``shifts``: criterion id → one per learner, in order.

    Means are of drafted marks, over the learners.
    """

    shifts: Mapping[str, tuple[Shift, ...]]
    mean_before: float
    mean_after: float
    most_before: float
    most_after: float


def preview(session: Session, rubric: Rubric) -> Preview:
    """Draft every learner again with ``rubric``; nothing is kept."""
    shifts: dict[str, list[Shift]] = {row.id: [] for row in rubric.criteria}
    before_marks = after_marks = 0.0
    for learner in session.learners:
        before = {one.criterion: one for one in session.drafts(learner.id)}
        before_marks += sum(one.marks or 0.0 for one in before.values())
        for one in draft(rubric, session.facts(learner.id), session.findings(learner.id)):
            after_marks += one.marks or 0.0
            old = before.get(one.criterion)
            was = old.level or "" if old is not None else ""
            shifts[one.criterion].append(Shift(learner.name, was, one.level or "", one.sentences))
    count = max(len(session.learners), 1)
    return Preview(
        {row: tuple(found) for row, found in shifts.items()},
        before_marks / count,
        after_marks / count,
        session.rubric.most,
        rubric.most,
    )
