"""Who handed in what and when: late, missing, handed in again, given more time."""

from __future__ import annotations

import datetime as dt
from dataclasses import dataclass
from typing import Literal, cast

from markbench.checks.pieces import certainly_missing, unopened
from markbench.intake.folder import open_piece
from markbench.intake.tables import read_readings
from markbench.model import Piece, PieceKind, Portfolio, ReadingsTable
from markbench.session.session import Session
from markbench.session.since_marked import since_marked

_MOST_BYTES = 30_000_000
_A_WEEK = dt.timedelta(days=7)


@dataclass(frozen=True, slots=True)
class HandIn:
    """How one learner's hand-in stands. Dates are local.

    ``missing`` holds the pieces asked for and not there (every one of them where nothing
    was handed in); ``again`` those handed in so that they are of no use, and those the
    teacher found unreadable or wants again; ``unopened`` the kinds of these whose file does
    not open, each with the file's name; ``replaced`` how many pieces a later hand-in
    replaced; ``since_marked`` whether the work changed after it was marked: ``perhaps``
    where what was marked is not known and a piece carries a later time than the mark.
    """

    learner: str
    handed_in: dt.datetime | None
    due: dt.date | None
    days_late: int
    extended_to: dt.date | None
    missing: tuple[PieceKind, ...]
    again: tuple[PieceKind, ...]
    replaced: int
    since_marked: Literal["", "changed", "perhaps"]
    unopened: tuple[tuple[PieceKind, str], ...] = ()

    @property
    def nothing(self) -> bool:
        """Whether nothing at all was handed in."""
        return self.handed_in is None and bool(self.missing) and not self.replaced


def hand_ins(session: Session) -> tuple[HandIn, ...]:
    """Every learner, in the session's order."""
    return tuple(hand_in(session, one.id) for one in session.learners)


def hand_in(session: Session, learner: str) -> HandIn:
    """One learner's hand-in."""
    portfolio = session.portfolio(learner)
    extension = session.value("extension", learner)
    extended_to = dt.date.fromisoformat(extension) if extension else None
    due = extended_to or session.brief.closes
    when = portfolio.handed_in
    late = (when.date() - due).days if when is not None and due is not None else 0
    wanted_again = {
        piece.kind: None
        for piece in portfolio.pieces
        if session.value("piece_status", learner, piece.file) in ("again", "unreadable")
    }
    changed = since_marked(session, learner)
    since = "" if changed is None else "perhaps" if changed.by_date else "changed"
    missing = _missing(session, learner, portfolio)
    useless, closed = _useless(session, learner, portfolio, missing)
    return HandIn(
        learner=learner,
        handed_in=when,
        due=due,
        days_late=max(late, 0),
        extended_to=extended_to,
        missing=tuple(kind for kind in missing if kind not in useless),
        again=tuple(dict.fromkeys((*useless, *wanted_again))),
        unopened=closed,
        replaced=len(portfolio.earlier),
        since_marked=cast(Literal["", "changed", "perhaps"], since),
    )


def _missing(session: Session, learner: str, portfolio: Portfolio) -> tuple[PieceKind, ...]:
    """As the check of pieces says, so that every page tells the same."""
    found = cast(list[PieceKind], certainly_missing(session.findings(learner)))
    order = ("readings", *session.brief.evidence)
    return tuple(sorted(set(found), key=lambda kind: order.index(kind) if kind in order else 99))


def _useless(
    session: Session, learner: str, portfolio: Portfolio, missing: tuple[PieceKind, ...]
) -> tuple[tuple[PieceKind, ...], tuple[tuple[PieceKind, str], ...]]:
    """Kinds asked for that came only in files of no use, and which of these do not open."""
    closed = unopened(session.findings(learner)) - {
        piece.file
        for piece in portfolio.pieces
        if session.value("piece_status", learner, piece.file) == "accepted"
    }
    kinds: list[PieceKind] = []
    files: list[tuple[PieceKind, str]] = []
    for kind in cast(tuple[PieceKind, ...], ("readings", *session.brief.evidence)):
        pieces = portfolio.of_kind(kind)
        shut = [piece.file for piece in pieces if piece.file in closed]
        # A table that opens, with no readings in it that are understood, is of no use either.
        if pieces and (len(shut) == len(pieces) or (kind == "readings" and kind in missing)):
            kinds.append(kind)
            files += [(kind, file.rpartition("/")[2]) for file in shut]
    # What lies in a zip file that does not open is not known: it is asked for as a file.
    damaged = unopened(session.work.problems)
    for piece in portfolio.of_kind("unknown"):
        if piece.file in damaged:
            kinds.append(piece.kind)
            files.append((piece.kind, piece.file.rpartition("/")[2]))
    return tuple(dict.fromkeys(kinds)), tuple(files)


def day_to_offer(closes: dt.date | None, today: dt.date) -> dt.date:
    """The new last day offered to whoever needs more time: a week more, and still to come."""
    return max(closes or today, today) + _A_WEEK


@dataclass(frozen=True, slots=True)
class Replaced:
    """A piece that a later hand-in replaced, and the one in use now, if there is one."""

    kind: PieceKind
    earlier: Piece
    now: Piece | None


def replaced_pieces(portfolio: Portfolio) -> tuple[Replaced, ...]:
    """Each earlier piece with its successor."""
    return tuple(
        Replaced(one.kind, one, next(iter(portfolio.of_kind(one.kind)), None))
        for one in portfolio.earlier
    )


def earlier_table(session: Session, learner: str) -> ReadingsTable | None:
    """The latest table that was replaced, read again; ``None`` where there is none to read.

    Reads a file: call it off the main thread. Raises nothing for a file that has gone bad.
    """
    tables = [piece for piece in session.portfolio(learner).earlier if piece.kind == "readings"]
    tables.sort(key=lambda piece: piece.modified or dt.datetime.min, reverse=True)
    for piece in tables:
        try:
            data = open_piece(session.folder, piece.file, _MOST_BYTES)
            outcome = read_readings(piece.file, data, session.brief, learner)
        except (OSError, ValueError):
            continue
        if outcome.table is not None and outcome.table.readings:
            return outcome.table
    return None
