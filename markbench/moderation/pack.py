"""What a moderation pack is, apart from files: manifest, digests, numbers for names.

The manifest lists every member with its SHA-256; the digest of the manifest vouches for
the whole pack and is remembered in the class's journal. Digests are no signature: someone
who rewrites a pack and all its digests makes a pack that opens. What such a pack cannot
do is bring marks back, as its manifest is not the one the journal remembers.
"""

from __future__ import annotations

import hashlib
import json
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from markbench.model import joined, say

PACK_FORMAT = "markbench-pack"
REPLY_FORMAT = "markbench-reply"
VERSION = 1
MANIFEST = "manifest.json"
_NAMED = 3  # more pieces left out for one reason are counted
SHIPPED = (
    say("Readings as a recomputed table, with the cell each value was read from."),
    say(
        "Findings, first marks and their reasons, with names replaced. A name that is also a word "
        "(Mark, Will) is replaced where it is written as a name."
    ),
    say("Photos and videos without place, device or other tags; videos without sound."),
    say("Written reports, where the brief allows them, as their words alone with names replaced."),
)
LEFT_OUT = (
    say("Names, ids and the class list."),
    say("The learners' own table files, in which names may stand."),
    say("Private notes and the journal."),
)


@dataclass(frozen=True, slots=True)
class Manifest:
    """The first page of a pack. ``members``: name → SHA-256; ``learners``: their numbers.

    ``shipped`` and ``left_out`` say in sentences what the pack holds and what it does not.
    """

    title: str
    made: str
    learners: tuple[str, ...]
    members: Mapping[str, str]
    shipped: tuple[str, ...] = ()
    left_out: tuple[str, ...] = ()
    format: str = PACK_FORMAT
    version: int = VERSION


@dataclass(frozen=True, slots=True)
class FirstMark:
    """A first mark as it travels, with what it rested on."""

    criterion: str
    level: str
    marks: float
    feedback: str
    by: str
    why: str = ""
    drafted: str | None = None
    reasons: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class LeftOut:
    """A piece that did not go into the pack, and why."""

    number: str
    what: str
    why: str

    def __str__(self) -> str:
        told = say("Learner {number}: {what} left out:", number=self.number, what=self.what)
        return joined((told, _ended(self.why)))


def summed_up(left_out: Sequence[LeftOut]) -> tuple[str, ...]:
    """What stayed behind, a line for each reason: many pieces are counted, a few are named."""
    reasons: dict[str, list[LeftOut]] = {}
    for one in left_out:
        reasons.setdefault(one.why, []).append(one)
    lines = []
    for why, pieces in sorted(reasons.items(), key=lambda pair: -len(pair[1])):
        by_piece: dict[str, list[str]] = {}
        for one in pieces:
            by_piece.setdefault(one.what, []).append(one.number)
        told = joined((_counted(what, numbers) for what, numbers in by_piece.items()), "; ")
        lines.append(say("{told}: {why}", told=told, why=_ended(why)))
    return tuple(lines)


def _counted(what: str, numbers: Sequence[str]) -> str:
    if len(numbers) > _NAMED:
        return say("{n} × {what}", n=len(numbers), what=what)
    return say(
        "{what} of learner {numbers}" if len(numbers) == 1 else "{what} of learners {numbers}",
        what=what,
        numbers=", ".join(numbers),
    )


def _ended(why: str) -> str:
    return why if why.endswith(".") else say("{why}.", why=why)


def canonical(value: Any) -> bytes:
    """JSON that is the same bytes on every machine."""
    text = json.dumps(value, sort_keys=True, separators=(",", ":"), allow_nan=False)
    return text.encode("ascii")


def digest_of(data: bytes) -> str:
    """SHA-256 in hexadecimal."""
    return hashlib.sha256(data).hexdigest()


def check_code(digest: str) -> str:
    """A digest short enough to read out over the telephone."""
    return f"{digest[:4]} {digest[4:8]} {digest[8:12]}".upper()


def numbers_for(learners: Iterable[str], seed: int) -> dict[str, str]:
    """Learner id → number, ``01`` on, in an order that tells nothing of the class list."""
    ids = sorted(learners, key=lambda one: digest_of(f"number:{seed}:{one}".encode()))
    width = max(2, len(str(len(ids))))
    return {one: f"{place:0{width}}" for place, one in enumerate(ids, 1)}
