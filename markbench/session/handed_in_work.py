"""What a mark rests on: the readings and pieces as they were handed in when it was given.

A mark carries a short key; under the key the journal keeps the work itself, once for each
state of it. What counts is content: the numbers as the learner wrote them, and of each piece
its kind, size and digest. Names of files are not kept: a file that was only renamed or
touched is the same, and a name may be the learner's own. Rejected: the times of files (a copy
or an unpacked zip file has new ones, an overwritten file may keep its old one) and the
readings as corrected by the teacher (her hand is no new hand-in).
"""

from __future__ import annotations

import hashlib
import json
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from typing import Any, Literal

from markbench.model import Piece, PieceKind, Portfolio, Reading, ReadingsTable, Source, Timing
from markbench.moderation.plain import from_plain, to_plain

WORK = "work"
"""Kind of the journal's entry; its subject is the key. Undo leaves it: it decides nothing."""

_KEY_LETTERS = 16


@dataclass(frozen=True, slots=True)
class Row:
    """One length as the learner wrote it; ``decimals`` of the times as written, at the most."""

    length_m: float
    swings: int
    times_s: tuple[float, ...]
    decimals: int | None = None

    @classmethod
    def of(cls, reading: Reading) -> Row:
        """The numbers of a reading, without its cells."""
        times = tuple(timing.time_s for timing in reading.timings)
        decimals = [t.decimals for t in reading.timings if t.decimals is not None]
        return cls(reading.length_m, reading.swings, times, max(decimals, default=None))

    @property
    def reading(self) -> Reading:
        """As a reading of no file."""
        nowhere = Source("")
        timings = tuple(Timing(time, nowhere, self.decimals) for time in self.times_s)
        return Reading(self.length_m, self.swings, timings, nowhere)


@dataclass(frozen=True, slots=True)
class Content:
    """What one piece held. ``digest`` is empty where it was not computed."""

    kind: PieceKind
    size_bytes: int
    digest: str = ""

    @classmethod
    def of(cls, piece: Piece, table: ReadingsTable | None) -> Content:
        """The content of a piece; ``table`` is the learner's, as written.

        A table without a digest of its own is a row of a sheet for the whole class, which
        changes whenever anybody's row does: only the learner's numbers count.
        """
        if piece.kind == "readings" and not piece.digest and table is not None and table.readings:
            own = [[v.quantity, v.value, v.reading, v.timing] for v in table.own_values]
            return cls(piece.kind, 0, _digest([to_plain(_rows(table)), own]))
        return cls(piece.kind, piece.size_bytes, piece.digest)

    def same(self, other: Content) -> bool:
        """Whether both held the same: by their digests where both are known, else by size.

        Two photos or films of the very same number of bytes are the same one: digests are
        computed wherever two files of a class have one size.
        """
        if self.digest and other.digest:
            return self.digest == other.digest
        return self.size_bytes == other.size_bytes


@dataclass(frozen=True, slots=True)
class Work:
    """The work of one learner at one time. ``earlier``: pieces that a later one replaced."""

    rows: tuple[Row, ...] = ()
    pieces: tuple[Content, ...] = ()
    earlier: tuple[Content, ...] = ()

    @property
    def key(self) -> str:
        """Short name of this very state."""
        # Asked of everybody whenever the class is shown: fields by hand, as it is much quicker.
        rows = [(one.length_m, one.swings, one.times_s, one.decimals) for one in self.rows]
        parts = (self.pieces, self.earlier)
        pieces = [[(one.kind, one.size_bytes, one.digest) for one in part] for part in parts]
        return _digest([rows, pieces])[:_KEY_LETTERS]

    @property
    def plain(self) -> Mapping[str, Any]:
        """As the journal keeps it."""
        plain: Mapping[str, Any] = to_plain(self)
        return plain


@dataclass(frozen=True, slots=True)
class PieceChange:
    """A piece that was ``added``, ``replaced`` or ``removed``; ``now`` its present content."""

    kind: PieceKind
    what: Literal["added", "replaced", "removed"]
    now: Content | None = None


def work_of(portfolio: Portfolio) -> Work:
    """The work as it is handed in now."""
    table = portfolio.as_written
    return Work(
        () if table is None else _rows(table),
        _contents(portfolio.pieces, table),
        _contents(portfolio.earlier, None),
    )


def read_work(plain: Any) -> Work:
    """What :attr:`Work.plain` gave. ``ValueError`` where it is none."""
    return from_plain(Work, plain)


def changes(then: Work, now: Work) -> tuple[PieceChange, ...]:
    """Every piece whose content is another; empty where the work is the same.

    A piece that is the same under another kind or name is the same, and so is one that was
    there and counts now in place of another: whoever chose it was the teacher.
    """
    gone, _ = _apart(then.pieces, now.pieces)
    fresh, _ = _apart(now.pieces, then.pieces)
    _, chosen = _apart(fresh, then.earlier)
    fresh = [one for one in fresh if one not in chosen]
    found: list[PieceChange] = []
    for one in fresh:
        before = next((piece for piece in gone if piece.kind == one.kind), None)
        if before is not None:
            gone.remove(before)
        found.append(PieceChange(one.kind, "replaced" if before else "added", one))
    still, _ = _apart(gone, now.earlier)
    return (*found, *(PieceChange(one.kind, "removed") for one in still))


def _apart(ours: Iterable[Content], theirs: Iterable[Content]) -> tuple[list[Content], ...]:
    """Of ``ours``, those not among ``theirs``, and those that are, each matched once."""
    left, alone, both = list(theirs), [], []
    for one in ours:
        match = next((other for other in left if one.same(other)), None)
        if match is None:
            alone.append(one)
        else:
            left.remove(match)
            both.append(one)
    return alone, both


def _rows(table: ReadingsTable) -> tuple[Row, ...]:
    return tuple(Row.of(reading) for reading in table.readings)


def _contents(pieces: Iterable[Piece], table: ReadingsTable | None) -> tuple[Content, ...]:
    found = (Content.of(piece, table) for piece in pieces)
    return tuple(sorted(found, key=lambda one: (one.kind, one.size_bytes, one.digest)))


def _digest(plain: Any) -> str:
    return hashlib.sha256(json.dumps(plain, sort_keys=True).encode("ascii")).hexdigest()
