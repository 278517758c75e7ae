"""Learners, the pieces they handed in, and how each piece was matched to its owner."""

from __future__ import annotations

import datetime as dt
from collections.abc import Container, Iterable, Mapping
from dataclasses import dataclass, field
from typing import Literal

from markbench.model.brief import Brief
from markbench.model.finding import Finding
from markbench.model.readings import ReadingsTable

# "photo": a picture not yet told apart into set-up and selfie.
PieceKind = Literal[
    "readings", "setup_photo", "selfie", "photo", "swing_video", "report", "unknown"
]
PieceState = Literal["there", "untold", "missing"]
MatchedBy = Literal["id", "name", "folder", "row", "teacher"]


@dataclass(frozen=True, slots=True)
class Learner:
    """One line of the class list. ``surname`` where the list tells it from the first name."""

    id: str
    name: str
    group: str = ""
    partner: str = ""
    surname: str = ""


@dataclass(frozen=True, slots=True)
class Match:
    """Why a piece is taken for a learner's: ``score`` 0–100, ``why`` in plain words."""

    learner: str
    by: MatchedBy
    score: float
    why: str


@dataclass(frozen=True, slots=True)
class Piece:
    """One file that was handed in (or one member of a zip file, or one row of a sheet).

    ``file`` as in :class:`Source`; ``modified`` the local time of the file or zip member;
    ``kind_from`` says what told the kind (``name``, ``type``, ``content`` or ``teacher``).
    ``digest`` is the SHA-256 of the bytes in hexadecimal, empty where not computed. ``gone``:
    the file was removed after sign-off, and what was known of it is kept.
    """

    file: str
    kind: PieceKind
    kind_from: str = "name"
    size_bytes: int = 0
    modified: dt.datetime | None = None
    match: Match | None = None
    digest: str = ""
    gone: bool = False


@dataclass(frozen=True, slots=True)
class Doubt:
    """A piece whose owner the teacher must settle; candidates best first."""

    piece: Piece
    candidates: tuple[Match, ...]
    why: str


@dataclass(frozen=True, slots=True)
class Portfolio:
    """All that one learner handed in.

    ``pieces`` are current; ``earlier`` the ones a later hand-in replaced, kept.
    ``table`` is ``None`` when no readings could be understood (a finding says why).
    ``written`` is the learner's own table where the teacher's hand changed it: rows she
    typed, cells she corrected.
    """

    learner: Learner
    pieces: tuple[Piece, ...] = ()
    earlier: tuple[Piece, ...] = ()
    table: ReadingsTable | None = None
    findings: tuple[Finding, ...] = ()
    written: ReadingsTable | None = None

    @property
    def as_written(self) -> ReadingsTable | None:
        """The table as the learner handed it in, without the teacher's hand."""
        return self.table if self.written is None else self.written

    @property
    def handed_in(self) -> dt.datetime | None:
        """Time of the latest current piece."""
        times = [piece.modified for piece in self.pieces if piece.modified is not None]
        return max(times, default=None)

    def of_kind(self, kind: PieceKind) -> tuple[Piece, ...]:
        """Current pieces of one kind."""
        return tuple(piece for piece in self.pieces if piece.kind == kind)


def piece_states(
    portfolio: Portfolio, wanted: Iterable[PieceKind], useless: Container[str] = ()
) -> dict[PieceKind, PieceState]:
    """How each of the ``wanted`` kinds stands: the one rule for every page and every export.

    ``untold``: it is not named, but a photo that nobody has told apart yet could be it; each
    such photo stands in for one. Empty files, and those called ``useless``, are as good as
    not there, and a table counts when readings could be read from it.
    """
    held = [one for one in portfolio.pieces if one.size_bytes > 0 and one.file not in useless]
    kinds = {piece.kind for piece in held} - {"readings"}
    if portfolio.table is not None and portfolio.table.readings:
        kinds.add("readings")
    spare = sum(piece.kind == "photo" for piece in held)
    states: dict[PieceKind, PieceState] = {}
    for kind in wanted:
        states[kind] = "there" if kind in kinds else "missing"
        if kind not in kinds and kind in ("setup_photo", "selfie") and spare:
            spare -= 1
            states[kind] = "untold"
    return states


@dataclass(frozen=True, slots=True)
class ClassWork:
    """A class folder as read: everything known before any physics.

    ``portfolios`` is keyed by learner id and holds every learner of the class list, in
    its order. ``doubts`` and ``unowned`` wait for the teacher; ``set_aside`` she called
    nobody's. ``problems`` are findings about the class folder itself (brief, list).
    """

    brief: Brief
    learners: tuple[Learner, ...]
    portfolios: Mapping[str, Portfolio]
    doubts: tuple[Doubt, ...] = ()
    unowned: tuple[Piece, ...] = ()
    set_aside: tuple[Piece, ...] = ()
    problems: tuple[Finding, ...] = field(default=())
