"""What the journal says about moderation, read from its state.

The decisions and their values are listed in DECISION-moderation.md beside this file. A
second mark belongs to its marker as well as its criterion, so that two second markers
never write over each other: the subject is ``criterion|marker``.
"""

from __future__ import annotations

import datetime as dt
from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any, Literal, TypeVar, cast, get_args

from markbench.model import Decision, Mark, State

Action = Literal["agree", "adjust", "ask"]
ACTIONS: tuple[Action, ...] = get_args(Action)
FROZEN = frozenset(
    {"mark", "feedback", "second_mark", "moderated", "adjustment", "extension", "sample"}
)
"""Kinds of decision that sign-off freezes: all that a result depends on."""

_Item = TypeVar("_Item", Mark, "Moderated")
_NEVER = dt.datetime(1970, 1, 1, tzinfo=dt.UTC)


@dataclass(frozen=True, slots=True)
class Moderated:
    """What a moderator decided on one criterion after seeing the first mark.

    ``level`` and ``marks`` are her final word where ``action`` is ``adjust``.
    ``first_seen`` is the first mark she was shown.
    """

    criterion: str
    by: str
    at: dt.datetime
    action: Action
    why: str
    level: str | None = None
    marks: float | None = None
    first_seen: float | None = None


@dataclass(frozen=True, slots=True)
class Settled:
    """The teacher's final word on one criterion, where markers differ."""

    criterion: str
    level: str
    marks: float
    by: str
    at: dt.datetime
    why: str


@dataclass(frozen=True, slots=True)
class ClassAdjustment:
    """What was decided about the first marker's severity: ``choice`` and the shift, if any."""

    choice: Literal["adjust", "remark", "leave"]
    shift: float
    by: str
    at: dt.datetime
    why: str


@dataclass(frozen=True, slots=True)
class SignOff:
    """The signature under the marks: who, when, and the totals and grades signed for."""

    by: str
    at: dt.datetime
    note: str
    results: Mapping[str, tuple[float | None, str]]
    number: int


def subject_of(criterion: str, marker: str) -> str:
    """The subject of a second mark or a moderator's decision."""
    return f"{criterion}|{marker}"


def second_mark_of(decision: Decision) -> Mark:
    """The mark in a ``second_mark`` decision."""
    criterion, _, marker = decision.subject.partition("|")
    return Mark(
        criterion=criterion,
        level=decision.value["level"],
        marks=decision.value["marks"],
        feedback=decision.value.get("feedback", ""),
        by=marker,
        at=decision.at or _NEVER,
    )


def second_marks(state: State) -> dict[str, dict[str, tuple[Mark, ...]]]:
    """Learner → criterion → second marks, earliest first."""
    found: dict[str, dict[str, list[Mark]]] = {}
    for (kind, learner, _), decision in state.items():
        if kind == "second_mark":
            mark = second_mark_of(decision)
            found.setdefault(learner, {}).setdefault(mark.criterion, []).append(mark)
    return _in_order(found)


def moderations(state: State) -> dict[str, dict[str, tuple[Moderated, ...]]]:
    """Learner → criterion → moderators' decisions, earliest first."""
    found: dict[str, dict[str, list[Moderated]]] = {}
    for (kind, learner, subject), decision in state.items():
        if kind == "moderated":
            criterion, _, marker = subject.partition("|")
            value: Mapping[str, Any] = decision.value
            one = Moderated(
                criterion,
                marker,
                decision.at or _NEVER,
                cast(Action, value["action"]),
                decision.why,
                value.get("level"),
                value.get("marks"),
                value.get("first_seen"),
            )
            found.setdefault(learner, {}).setdefault(criterion, []).append(one)
    return _in_order(found)


def settled_mark(state: State, learner: str, criterion: str) -> Settled | None:
    """The teacher's final word on one criterion, if it was needed."""
    decision = state.get(("adjustment", learner, criterion))
    if decision is None:
        return None
    value = decision.value
    at = decision.at or _NEVER
    return Settled(criterion, value["level"], value["marks"], decision.who, at, decision.why)


def class_adjustment(state: State) -> ClassAdjustment | None:
    """What was decided about severity or leniency for the whole class."""
    decision = state.get(("adjustment", "", ""))
    if decision is None:
        return None
    value = decision.value
    shift = float(value["shift"]) if value["choice"] == "adjust" else 0.0
    at = decision.at or _NEVER
    return ClassAdjustment(value["choice"], shift, decision.who, at, decision.why)


def sign_off_of(state: State) -> SignOff | None:
    """The sign-off in force; ``None`` before it, and after a reopening."""
    decision = state.get(("sign_off", "", ""))
    return None if decision is None else _sign_off(decision)


def _sign_off(decision: Decision) -> SignOff:
    results = {
        learner: (one["total"], one["grade"]) for learner, one in decision.value["results"].items()
    }
    at = decision.at or _NEVER
    return SignOff(decision.who, at, decision.why, results, decision.number)


def _in_order(
    found: dict[str, dict[str, list[_Item]]],
) -> dict[str, dict[str, tuple[_Item, ...]]]:
    return {
        learner: {
            criterion: tuple(sorted(items, key=lambda item: (item.at, item.by)))
            for criterion, items in by_criterion.items()
        }
        for learner, by_criterion in found.items()
    }
