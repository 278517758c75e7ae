"""What a moderation pack is, apart from files: manifest, digests, numbers for names.

The manifest lists every member with its SHA-256; the digest of the manifest vouches for
the whole pack and is remembered in the class's journal. Digests are no signature: someone
who rewrites a pack and all its digests makes a pack that opens. What such a pack cannot
do is bring marks back, as its manifest is not the one the journal remembers.
"""

from __future__ import annotations

import hashlib
import json
import re
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from typing import Any

from markbench.model import Learner

PACK_FORMAT = "markbench-pack"
REPLY_FORMAT = "markbench-reply"
VERSION = 1
MANIFEST = "manifest.json"


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
        return f"Learner {self.number}: {self.what} left out: {self.why}."


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


@dataclass(frozen=True, slots=True)
class Scrubber:
    """Takes names and ids of learners out of texts.

    Whole names go first, then the parts of names of three letters or more, then ids that
    have a letter or five characters (a shorter number names nobody, and is a reading).
    A name that is also a word is taken out as well: better a gap than a name.
    """

    pattern: re.Pattern[str] | None
    numbers: Mapping[str, str] = field(repr=False)

    @classmethod
    def of(cls, learners: Iterable[Learner], numbers: Mapping[str, str]) -> Scrubber:
        """A scrubber for a class; ``numbers`` as from :func:`numbers_for`."""
        stands_for: dict[str, set[str]] = {}
        for learner in learners:
            parts = [learner.name, *re.findall(r"[^\W\d_]{3,}", learner.name)]
            if len(learner.id) >= 5 or re.search(r"[^\W\d_]", learner.id):
                parts.append(learner.id)
            for part in filter(None, (p.strip().casefold() for p in parts)):
                stands_for.setdefault(part, set()).add(numbers.get(learner.id, ""))
        words = {
            part: f"learner {one}" if len(found) == 1 and (one := next(iter(found))) else _OTHER
            for part, found in stands_for.items()
        }
        if not words:
            return cls(None, {})
        longest_first = sorted(words, key=len, reverse=True)
        together = "|".join(re.escape(part) for part in longest_first)
        # Letters and digits end a name; an underscore or a dot, as in file names, does not.
        pattern = re.compile(rf"(?<![^\W_])(?:{together})(?![^\W_])", re.IGNORECASE)
        return cls(pattern, words)

    def text(self, text: str) -> str:
        """The text without names."""
        if self.pattern is None:
            return text
        return self.pattern.sub(lambda m: self.numbers.get(m[0].casefold(), _OTHER), text)

    def tree(self, value: Any) -> Any:
        """Every text in a tree of plain JSON without names; keys stay."""
        if isinstance(value, str):
            return self.text(value)
        if isinstance(value, dict):
            return {key: self.tree(inner) for key, inner in value.items()}
        if isinstance(value, list):
            return [self.tree(inner) for inner in value]
        return value


_OTHER = "another learner"
