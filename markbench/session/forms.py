"""Whether a decision says something in the form this program writes it.

A journal may come from a newer Markbench, a colleague or a stranger, and its chain of
digests vouches for the letters alone. What is of no known form is kept in the journal like
all else and not used, so that one odd entry does not keep a teacher out of her class; from a
colleague's journal it is not taken over at all, since an entry can never be taken out again.
Kinds not listed here are for others to judge.
"""

from __future__ import annotations

import datetime as dt
from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass, replace
from typing import Any, Literal, get_args

from markbench.intake.corrections import typed_rows
from markbench.intake.tables import ColumnHints
from markbench.model import (
    ClassWork,
    Concern,
    Decision,
    Finding,
    PieceKind,
    Source,
    joined,
    say,
)
from markbench.moderation.plain import from_plain, to_plain
from markbench.session.handed_in_work import WORK, read_work

_MOST_TOLD = 5
_MOST_MARKS = 1e6  # far above any rubric's; keeps sums and their display finite


@dataclass(frozen=True, slots=True)
class _Graded:
    level: str
    marks: float


@dataclass(frozen=True, slots=True)
class _Marked(_Graded):
    feedback: str
    drafted: str | None = None


@dataclass(frozen=True, slots=True)
class _Worded:
    text: str
    pieces: tuple[str, ...]
    out: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class _Moderated:
    action: Literal["agree", "adjust", "ask"]
    level: str | None = None
    marks: float | None = None
    first_seen: float | None = None


@dataclass(frozen=True, slots=True)
class _ClassAdjusted:
    choice: Literal["adjust", "remark", "leave"]
    shift: float


@dataclass(frozen=True, slots=True)
class _Signed:
    total: float | None
    grade: str


@dataclass(frozen=True, slots=True)
class _SignedOff:
    results: Mapping[str, _Signed]


@dataclass(frozen=True, slots=True)
class _Packed:
    numbers: Mapping[str, str]


@dataclass(frozen=True, slots=True)
class _Why:
    reasons: tuple[str, ...]
    outlier: bool


@dataclass(frozen=True, slots=True)
class _Sampled:
    learners: Mapping[str, _Why]
    order: tuple[str, ...]
    seed: int
    size: int
    class_size: int
    rule: str
    unmarked: tuple[str, ...]


def _as(*kinds: Any) -> Callable[[Any], None]:
    def fits(value: Any) -> None:
        for place, kind in enumerate(kinds, 1):
            try:
                _finite(from_plain(kind, value))
            except ValueError:
                if place == len(kinds):
                    raise
            else:
                return

    return fits


def _finite(value: Any) -> None:
    for name in ("marks", "shift", "total", "first_seen"):
        number = getattr(value, name, None)
        if number is not None and not abs(number) < _MOST_MARKS:  # also nan
            raise ValueError(f"{name} is {number:.3g}")


def _one_of(*allowed: object) -> Callable[[Any], None]:
    return lambda value: _must(value in allowed)


def _must(holds: bool) -> None:
    if not holds:
        raise ValueError("it is none of those known")


def _sample(value: Any) -> None:
    sample = from_plain(_Sampled, value)
    _must(set(sample.order) <= set(sample.learners))


def _count(value: Any) -> None:
    _must(type(value) is int and 0 < value < 10_000)


_FORMS: Mapping[str, Callable[[Any], object]] = {
    "mark": _as(_Marked),
    "second_mark": _as(_Graded),
    "moderated": _as(_Moderated),
    "adjustment": _as(_ClassAdjusted, _Graded),
    "sign_off": _as(_SignedOff),
    "sample": _sample,
    "pack": _as(_Packed, bool),
    "note": _as(str),
    "feedback": _as(str, _Worded),
    "owner": _as(str),
    "file": _as(str),
    "not_owner": _one_of(True),
    "correction": _as(str),
    "agreed_slip": _as(str),
    "extension": _as(dt.date),
    "piece_kind": _one_of(*get_args(PieceKind)),
    "piece_status": _one_of("accepted", "unreadable", "again"),
    "swing_count": _count,
    "hints": ColumnHints.from_json,
    "typed": typed_rows,
    WORK: read_work,
    "mark_stands": _as(str),
}


def trouble_with(decision: Decision) -> str:
    """Why a decision cannot be used; empty where it can, or is of a kind not known here."""
    fits = _FORMS.get(decision.kind)
    if fits is None or decision.value is None:
        return ""
    try:
        fits(decision.value)
    except (ValueError, TypeError, KeyError, AttributeError, OverflowError) as error:
        return str(error) or type(error).__name__
    return ""


def refuse_odd(decisions: Iterable[Decision]) -> None:
    """Refuse what could not be used when it is read back: it would be lost without a word.

    Raises ``ValueError`` naming kind and trouble.
    """
    for decision in decisions:
        # As the journal will hold it.
        trouble = trouble_with(replace(decision, value=to_plain(decision.value)))
        if trouble:
            raise ValueError(f"a decision of kind {decision.kind} is of no known form: {trouble}")


def usable(decisions: Iterable[Decision]) -> list[Decision]:
    """The decisions that can be used, in their order."""
    return [decision for decision in decisions if not trouble_with(decision)]


def with_odd(work: ClassWork, name: str, decisions: Iterable[Decision]) -> ClassWork:
    """The class with a finding on the entries of the journal ``name`` that are not used."""
    odd = [d for d in decisions if trouble_with(d)]
    if not odd:
        return work
    # What the entry says is not told: it may be words meant for one learner.
    entries = (say("entry {n}, {kind}", n=d.number, kind=d.kind) for d in odd[:_MOST_TOLD])
    told = joined(entries, "; ")
    if len(odd) > _MOST_TOLD:
        told = say("{told} and {n} more", told=told, n=len(odd) - _MOST_TOLD)
    text = say(
        "{name} holds what this Markbench cannot use; it is kept, not used ({told}).",
        name=name,
        told=told,
    )
    finding = Finding("folder_problem", "", text, Concern.LOOK, sources=(Source(name),))
    return replace(work, problems=(*work.problems, finding))
