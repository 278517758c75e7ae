"""Which of several hand-ins of the same piece is the current one.

A later hand-in says so in its name or folder (``v2``, ``final``, ``resubmitted``) or was
modified later. Names win over clocks, because copying and unpacking reset clocks. Nothing is
thrown away: what a later hand-in replaces is kept among the earlier ones.
"""

from __future__ import annotations

import datetime as dt
from collections import defaultdict
from collections.abc import Sequence
from dataclasses import dataclass, field

from markbench.intake.kinds import Version, base_name, version_of
from markbench.model import Concern, Finding, Piece, PieceKind, ReadingsTable, Source, say

# Pictures and videos made within an hour belong to one hand-in (two views of one set-up),
# unless their names say otherwise. Common sense, no source.
_ONE_SITTING = dt.timedelta(hours=1)
# Files that are copied or unpacked together get times a few seconds apart, in any order, and
# a zip file counts in steps of two: within a minute the clock decides nothing.
_SAME_TIME = dt.timedelta(minutes=1)

_SINGLE: tuple[PieceKind, ...] = ("readings", "setup_photo", "selfie", "swing_video")
KIND_WORDS: dict[PieceKind, str] = {
    "readings": say("readings table"),
    "setup_photo": say("photo of the set-up"),
    "selfie": say("photo of the learner with the set-up"),
    "photo": say("photo"),
    "swing_video": say("swing video"),
    "report": say("report"),
    "unknown": say("file"),
}


@dataclass(slots=True)
class Sorted:
    """Current pieces, the ones they replaced, and a finding for each replacement."""

    current: list[Piece] = field(default_factory=list)
    earlier: list[Piece] = field(default_factory=list)
    findings: list[Finding] = field(default_factory=list)


def _name_and_folders(piece: Piece) -> tuple[str, tuple[str, ...]]:
    parts = piece.file.replace("!/", "/").split("/")
    return parts[-1], tuple(parts[:-1])


@dataclass(frozen=True, slots=True)
class _Rank:
    version: Version
    modified: dt.datetime
    base: str

    @property
    def key(self) -> tuple[Version, dt.datetime]:
        return (self.version, self.modified)


def _rank(piece: Piece, owner_name: str) -> _Rank:
    name, folders = _name_and_folders(piece)
    modified = piece.modified or dt.datetime.min
    return _Rank(version_of(name, folders, owner_name), modified, base_name(name))


def _replaces(kind: PieceKind, later: _Rank, earlier: _Rank) -> bool:
    """Whether one piece is a later hand-in of the other, ranks being in order."""
    if kind not in _SINGLE and later.base != earlier.base:
        return False
    if later.version > earlier.version:
        return True
    if kind == "readings":
        return True
    wait = later.modified - earlier.modified
    same_name = later.base == earlier.base and wait > dt.timedelta(0)
    return wait >= _ONE_SITTING or (same_name and wait > _SAME_TIME)


def sort_hand_ins(learner: str, owner_name: str, pieces: Sequence[Piece]) -> Sorted:
    """Sort one learner's pieces other than tables into current and earlier."""
    result = Sorted()
    by_kind: dict[PieceKind, list[Piece]] = defaultdict(list)
    for piece in pieces:
        by_kind[piece.kind].append(piece)
    for kind, alike in by_kind.items():
        if len(alike) == 1:
            result.current += alike
            continue
        ranks = {piece.file: _rank(piece, owner_name) for piece in alike}
        newest_first = sorted(alike, key=lambda p: (ranks[p.file].key, p.file), reverse=True)
        kept: list[Piece] = []
        for piece in newest_first:
            same = next((k for k in kept if k.digest and k.digest == piece.digest), None)
            later = same or next(
                (k for k in kept if _replaces(kind, ranks[k.file], ranks[piece.file])), None
            )
            # An empty file replaces nothing: the good one it followed stays.
            if later is None or (later.size_bytes == 0 < piece.size_bytes):
                kept.append(piece)
                continue
            result.earlier.append(piece)
            result.findings.append(_later(learner, later, piece, duplicate=same is not None))
        result.current += kept
    return result


def sort_tables(
    learner: str, owner_name: str, tables: Sequence[tuple[Piece, ReadingsTable | None]]
) -> tuple[Sorted, Piece | None]:
    """Sort one learner's tables; also the piece whose readings count.

    The latest table that yields readings counts. Tables that yield none are no rivals of
    one that does; they stay among the current pieces as files of unknown use.
    """
    if len(tables) == 1:
        only, _ = tables[0]
        return Sorted([only]), only
    result = Sorted()
    ranks = {piece.file: _rank(piece, owner_name) for piece, _ in tables}
    counts = {piece.file: _timings(table) for piece, table in tables}
    order = sorted(tables, key=lambda pair: (ranks[pair[0].file].key, pair[0].file), reverse=True)
    with_readings = [piece for piece, _ in order if counts[piece.file]]
    silent = [piece for piece, _ in order if not counts[piece.file]]
    if not with_readings:
        result.current += silent
        return result, silent[0] if silent else None
    # Where neither name nor clock tells, the fuller table is taken, and the teacher asked.
    newest = ranks[with_readings[0].file]
    level = [
        piece
        for piece in with_readings
        if ranks[piece.file].version == newest.version
        and newest.modified - ranks[piece.file].modified <= _SAME_TIME
    ]
    chosen = max(level, key=lambda piece: (counts[piece.file], ranks[piece.file].key, piece.file))
    rivals = [p for p in level if p is not chosen and not (p.digest and p.digest == chosen.digest)]
    result.current.append(chosen)
    for piece in with_readings:
        if piece is chosen:
            continue
        result.earlier.append(piece)
        if piece in rivals:
            text = say(
                "{one} and {other} both hold readings, and nothing tells which is the later; {one} "
                "is used.",
                one=_short(chosen),
                other=_short(piece),
            )
            result.findings.append(
                Finding(
                    "several_tables", learner, text, Concern.LOOK,
                    sources=(Source(chosen.file), Source(piece.file)),
                    ask=say("Which of your two tables should count?"),
                )
            )  # fmt: skip
        else:
            duplicate = bool(piece.digest) and piece.digest == chosen.digest
            result.findings.append(_later(learner, chosen, piece, duplicate=duplicate))
    result.current += silent
    return result, chosen


def _timings(table: ReadingsTable | None) -> int:
    return 0 if table is None else sum(1 + len(reading.timings) for reading in table.readings)


def _short(piece: Piece) -> str:
    return piece.file.replace("!/", "/").rpartition("/")[2]


def _when(piece: Piece, other: Piece) -> str:
    """A file with its time, where that differs from the other's."""
    if piece.modified is None or other.modified is None:
        return piece.file
    if abs(piece.modified - other.modified) <= _SAME_TIME:
        return piece.file
    return say("{file} ({when:%d %B %Y, %H:%M})", file=piece.file, when=piece.modified)


def _later(learner: str, later: Piece, earlier: Piece, *, duplicate: bool) -> Finding:
    what = KIND_WORDS[later.kind]
    if duplicate:
        text = say(
            "The same {what} was handed in twice, as {earlier} and {later}.",
            what=what,
            earlier=earlier.file,
            later=later.file,
        )
    else:
        text = say(
            "A later {what} was handed in: {later} is used in place of {earlier}, which is kept.",
            what=what,
            later=_when(later, earlier),
            earlier=_when(earlier, later),
        )
    return Finding(
        "later_hand_in",
        learner,
        text,
        Concern.NOTE,
        numbers={"piece": later.kind},
        sources=(Source(later.file), Source(earlier.file)),
    )
