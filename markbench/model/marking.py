"""Rubric as data, drafts, and the decisions that make marks."""

from __future__ import annotations

import datetime as dt
from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from markbench.model.source import Source


@dataclass(frozen=True, slots=True)
class Reason:
    """What a draft rests on: the rule, the fact or finding under it, and its cells."""

    text: str
    fact: str = ""
    check: str = ""
    sources: tuple[Source, ...] = ()


@dataclass(frozen=True, slots=True)
class Draft:
    """The program's proposal for one criterion. A draft is never a mark.

    ``level`` and ``marks`` are ``None`` where the criterion is for the teacher's eye.
    ``sentences`` are addressed to the learner, each a movable piece; ``pieces`` are the same
    with their places still in braces, so that the numbers can follow a correction.
    """

    criterion: str
    level: str | None
    marks: float | None
    sentences: tuple[str, ...]
    reasons: tuple[Reason, ...] = ()
    pieces: tuple[str, ...] = ()

    @property
    def feedback(self) -> str:
        """The sentences as one paragraph."""
        return " ".join(self.sentences)


@dataclass(frozen=True, slots=True)
class Mark:
    """A person's mark for one criterion, folded from the journal."""

    criterion: str
    level: str
    marks: float
    feedback: str
    by: str
    at: dt.datetime


@dataclass(frozen=True, slots=True)
class Decision:
    """One entry of the journal: who decided what, when, what it was and became, and why.

    The present is a fold: for each (kind, learner, subject) the last decision holds.
    ``value`` and ``before`` are JSON values; ``None`` clears. ``undoes`` is the number of
    the entry that this one takes back. ``number`` is 0 until the store has assigned it.
    """

    kind: str
    learner: str
    subject: str
    value: Any
    before: Any = None
    who: str = ""
    at: dt.datetime | None = None
    why: str = ""
    undoes: int | None = None
    number: int = 0

    @property
    def key(self) -> tuple[str, str, str]:
        """What the decision is about."""
        return (self.kind, self.learner, self.subject)


State = Mapping[tuple[str, str, str], Decision]
