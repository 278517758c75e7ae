"""Marks whose draft has changed since they were given: a person looks again, nobody else.

A mark keeps the level that was drafted when it was given (``drafted`` in its value). A reading
corrected later, an explanation agreed with or a film measured since may move the draft; the
mark stands until a person takes the new draft or keeps her mark, and the learner is not
finished until then. Marks of journals written before this was kept say nothing, and stand.

Rejected: moving the mark with the draft (a mark is a person's), and comparing readings instead
of drafts (most corrections change nothing that a mark rests on).
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Literal

from markbench.model import Draft

if TYPE_CHECKING:
    from markbench.session.known import Known

DRAFTED = "drafted"
STANDS = "mark_stands"
"""Kind of the decision that a learner's marks stand as they are; a work's key is its value."""
Why = Literal["readings", "agreed", "other"]

# What a person decides that reads the learner's numbers anew.
_ON_READINGS = frozenset({"correction", "typed", "hints"})


@dataclass(frozen=True, slots=True)
class Moved:
    """The draft as it is now; ``was`` is the level drafted for the mark, ``why`` what came since.

    ``level`` and ``marks`` are what would be taken.
    """

    draft: Draft
    was: str | None
    why: Why

    @property
    def level(self) -> str:
        """The level drafted now."""
        assert self.draft.level is not None
        return self.draft.level

    @property
    def marks(self) -> float:
        """Its marks."""
        return self.draft.marks or 0.0


def moved_draft(known: Known, learner: str, criterion: str) -> Moved | None:
    """As :meth:`Known.moved_draft`."""
    decision = known.state.get(("mark", learner, criterion))
    if decision is None or DRAFTED not in decision.value:
        return None
    draft, was = known.draft(learner, criterion), decision.value[DRAFTED]
    if draft.level is None or draft.level in (was, decision.value["level"]):
        return None
    if known.value("sign_off") is not None:
        return None  # signed marks stand
    stands = known.state.get((STANDS, learner, ""))
    number = decision.number if stands is None else max(decision.number, stands.number)
    why = _why(known, learner, number)
    if number != decision.number and why == "other":
        return None  # she let her marks stand, and decided nothing about the numbers since
    return Moved(draft, was, why)


def _why(known: Known, learner: str, after: int) -> Why:
    """What was decided about this learner's numbers since; the readings before all else."""
    files = {piece.file for piece in known.portfolio(learner).pieces}
    since: set[str] = set()
    for decision in reversed(known.history()):
        if decision.number <= after:
            break
        if decision.learner == learner or decision.subject.partition("|")[0] in files:
            since.add(decision.kind)
    if since & _ON_READINGS:
        return "readings"
    return "agreed" if "agreed_slip" in since else "other"
