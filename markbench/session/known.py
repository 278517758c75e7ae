"""What is known of a class at work: the work as read, what follows from it, what was decided."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from typing import TYPE_CHECKING, Any

from markbench.model import (
    Analysis,
    Brief,
    ClassWork,
    Decision,
    Diagnosis,
    Draft,
    Finding,
    Learner,
    Mark,
    Portfolio,
    Rubric,
    State,
)
from markbench.rubric import Facts, no_longer_true
from markbench.rubric.pieces import said
from markbench.session import present, texts
from markbench.session.evidence import Seen, counted
from markbench.session.judging import Judging
from markbench.session.moved import Moved, moved_draft
from markbench.session.texts import Text

if TYPE_CHECKING:
    from markbench.evidence.photos import PhotoLook
    from markbench.evidence.video.judge import SwingMeasurement


class Known:
    """All that can be asked of a class; nothing here changes anything."""

    def __init__(
        self,
        judging: Judging,
        decisions: list[Decision],
        state: dict[Any, Decision],
    ) -> None:
        self._judging = judging
        self._decisions = decisions
        self._state = state
        self._said: dict[tuple[str, str], tuple[Any, Facts, str]] = {}

    @property
    def brief(self) -> Brief:
        """What the class was asked to do."""
        return self._judging.work.brief

    @property
    def rubric(self) -> Rubric:
        """What the class is marked by."""
        return self._judging.rubric

    @property
    def work(self) -> ClassWork:
        """The class folder as read, with doubts, unowned files and problems."""
        return self._judging.work

    @property
    def learners(self) -> tuple[Learner, ...]:
        """Every learner, in the order of the class list."""
        return self._judging.work.learners

    def portfolio(self, learner: str) -> Portfolio:
        """What one learner handed in."""
        return self._judging.work.portfolios[learner]

    def analysis(self, learner: str) -> Analysis:
        """The learner's readings recomputed."""
        return self._judging.judged[learner].analysis

    def diagnosis(self, learner: str) -> Diagnosis | None:
        """Explanations weighed; ``None`` where the readings do not allow it."""
        return self._judging.judged[learner].diagnosis

    def findings(self, learner: str) -> tuple[Finding, ...]:
        """Every finding on one learner, most concerning first."""
        return self._judging.judged[learner].findings

    def facts(self, learner: str) -> Facts:
        """Named facts that the rubric's conditions rest on."""
        return self._judging.judged[learner].facts

    def drafts(self, learner: str) -> tuple[Draft, ...]:
        """One draft per criterion, in the rubric's order."""
        return self._judging.judged[learner].drafts

    def draft_all(self, stop: Callable[[], bool] = lambda: False) -> None:
        """Draft for everybody now, on a thread where nobody waits, instead of when asked."""
        for judged in self._judging.judged.values():
            if stop():
                return
            _ = judged.drafts

    def draft(self, learner: str, criterion: str) -> Draft:
        """The draft for one criterion."""
        return next(d for d in self.drafts(learner) if d.criterion == criterion)

    def mark(self, learner: str, criterion: str) -> Mark | None:
        """A person's mark, or ``None`` while there is only a draft.

        Its text quotes the learner's numbers as they are now.
        """
        mark = present.mark_of(self._state, learner, criterion)
        if mark is None:
            return None
        words = self.feedback(learner, criterion)
        return mark if words == mark.feedback else replace(mark, feedback=words)

    def marks(self, learner: str) -> dict[str, Mark]:
        """The learner's marks by criterion; criteria not yet marked are absent."""
        found = {c.id: self.mark(learner, c.id) for c in self.rubric.criteria}
        return {criterion: mark for criterion, mark in found.items() if mark is not None}

    def moved_draft(self, learner: str, criterion: str) -> Moved | None:
        """The draft where it has changed since the mark was given, and does not bear it out.

        ``None`` where there is no mark, or its draft is as it was, or asks for the mark's level.
        """
        return moved_draft(self, learner, criterion)

    def progress(self, learner: str) -> tuple[int, int]:
        """Criteria marked for good, criteria in all; a mark whose draft moved is to be seen."""
        settled = sum(self.is_settled(learner, one.id) for one in self.rubric.criteria)
        return settled, len(self.rubric.criteria)

    def is_settled(self, learner: str, criterion: str) -> bool:
        """Whether there is a mark, and its draft has not changed since."""
        marked = ("mark", learner, criterion) in self._state
        return marked and self.moved_draft(learner, criterion) is None

    def has_moved(self, learner: str) -> bool:
        """Whether a mark of this learner is to be looked at again."""
        return any(self.moved_draft(learner, one.id) is not None for one in self.rubric.criteria)

    def total(self, learner: str) -> float | None:
        """Sum of the marks, or ``None`` until every criterion is marked."""
        marks = self.marks(learner)
        if len(marks) < len(self.rubric.criteria):
            return None
        return sum(mark.marks for mark in marks.values())

    def feedback(self, learner: str, criterion: str) -> str:
        """Text to the learner as it stands: edited, else as marked, else as drafted.

        Sentences of the rubric that are no longer true of the readings are not said.
        """
        value = texts.kept(self._state, learner, criterion)
        if value is None:
            return self.draft(learner, criterion).feedback
        facts = self.facts(learner)
        held = self._said.get((learner, criterion))
        if held is None or held[0] is not value or held[1] is not facts:
            text = texts.read(value)
            true = text.holding(no_longer_true(self.rubric, criterion, text.pieces, facts))
            held = (value, facts, said(true.pieces, facts))
            self._said[learner, criterion] = held
        return held[2]

    def text(self, learner: str, criterion: str) -> Text:
        """The same text as pieces that can be moved, their places still in braces."""
        value = texts.kept(self._state, learner, criterion)
        if value is None:
            return texts.drafted(self.draft(learner, criterion))
        return texts.read(value)

    def struck(self, learner: str, criterion: str) -> frozenset[str]:
        """The pieces, in the text or left out of it, that are no longer true of the readings."""
        text = self.text(learner, criterion)
        every = (*text.pieces, *text.out)
        return no_longer_true(self.rubric, criterion, every, self.facts(learner))

    def value(self, kind: str, learner: str = "", subject: str = "") -> Any:
        """The decision in force for a key (``note``, ``agreed_slip``, …), or ``None``."""
        decision = self._state.get((kind, learner, subject))
        return None if decision is None else decision.value

    @property
    def state(self) -> State:
        """Every decision in force, by (kind, learner, subject)."""
        return self._state

    def history(self, learner: str | None = None) -> list[Decision]:
        """The journal, oldest first; of one learner if asked."""
        return [d for d in self._decisions if learner is None or d.learner == learner]

    @property
    def seen(self) -> Seen:
        """What was seen in photos and films so far, as measured."""
        return self._judging.seen

    def repeats_of(self, learner: str) -> tuple[Finding, ...]:
        """Questions about a learner's photos beside everybody's."""
        return self._judging.repeats.get(learner, ())

    def film(self, file: str) -> SwingMeasurement | None:
        """What was measured in a film, with the teacher's own count if she made one."""
        return counted(self._judging.seen, self._state).films.get(file)

    def photo(self, file: str) -> PhotoLook | None:
        """What was seen in a photo."""
        return self._judging.seen.photos.get(file)
