"""What is written out about a class, as plain data; whoever writes it out decides nothing.

Private notes and the journal have no place here, so that no export can leak them.
"""

from __future__ import annotations

import datetime as dt
from collections.abc import Mapping
from dataclasses import dataclass, field
from pathlib import Path

from markbench.model import (
    Analysis,
    Brief,
    Diagnosis,
    Draft,
    Finding,
    Mark,
    Piece,
    Portfolio,
    Rubric,
    say,
)
from markbench.moderation.outcome import Outcome
from markbench.moderation.records import SignOff
from markbench.rubric.pieces import still_open


@dataclass(frozen=True, slots=True)
class LearnerReport:
    """All that goes out about one learner.

    ``marks`` are those that hold, by criterion id. ``outcome`` tells first and second marks,
    adjustment, lateness and grade; without it there was no moderation.
    """

    portfolio: Portfolio
    findings: tuple[Finding, ...] = ()
    analysis: Analysis | None = None
    diagnosis: Diagnosis | None = None
    drafts: tuple[Draft, ...] = ()
    marks: Mapping[str, Mark] = field(default_factory=dict)
    outcome: Outcome | None = None

    def draft_for(self, criterion: str) -> Draft | None:
        """The draft of one criterion, if there is one."""
        return next((draft for draft in self.drafts if draft.criterion == criterion), None)

    def total(self, rubric: Rubric) -> float | None:
        """The total that counts; ``None`` until every criterion has a mark.

        The sum of the marks, after the class's adjustment and lateness.
        """
        if self.outcome is not None:
            return self.outcome.total
        return self.sum(rubric)

    def sum(self, rubric: Rubric) -> float | None:
        """The sum of the marks that hold; ``None`` until every criterion has one."""
        if any(criterion.id not in self.marks for criterion in rubric.criteria):
            return None
        return sum(self.marks[criterion.id].marks for criterion in rubric.criteria)

    @property
    def grade(self) -> str:
        """The grade that the total reaches; empty without one."""
        return self.outcome.grade if self.outcome is not None else ""

    def unfilled(self, rubric: Rubric) -> tuple[str, ...]:
        """A sentence for each text with a place nobody has filled: it is not sent as it stands."""
        return tuple(
            say("“{criterion}”: {words}", criterion=criterion.title, words=words)
            for criterion in rubric.criteria
            if criterion.id in self.marks
            and (words := still_open(self.marks[criterion.id].feedback))
        )

    def marked(self, rubric: Rubric) -> int:
        """How many criteria have a mark."""
        return sum(criterion.id in self.marks for criterion in rubric.criteria)


@dataclass(frozen=True, slots=True)
class ClassReport:
    """A class on one day, in the order of its class list.

    ``folder`` is the class folder, where it is known: it is never written out, and keeps
    an export from being written over a file that was handed in. ``unowned`` files are still
    open, those ``set_aside`` the teacher called nobody's. ``signed`` is the sign-off in force.
    """

    brief: Brief
    rubric: Rubric
    program_version: str
    date: dt.date
    learners: tuple[LearnerReport, ...]
    unowned: tuple[Piece, ...] = ()
    set_aside: tuple[Piece, ...] = ()
    problems: tuple[Finding, ...] = ()
    folder: Path | None = None
    signed: SignOff | None = None

    def not_sent(self) -> tuple[str, ...]:
        """Each text that is kept back for a place unfilled: learner, criterion and place."""
        return tuple(
            say("{id} {name}, {words}.", id=who.id, name=who.name, words=words)
            for one in self.learners
            for who in (one.portfolio.learner,)
            for words in one.unfilled(self.rubric)
        )
