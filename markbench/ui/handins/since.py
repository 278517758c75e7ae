"""What changed since work was marked, in words for the sheet, the list and the comparison."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from PySide6.QtCore import QCoreApplication

from markbench.model import Piece, PieceKind, Portfolio
from markbench.session.handed_in_work import Content, PieceChange
from markbench.session.since_marked import RowChange, SinceMarked
from markbench.ui.look.dates import short_day_and_time


def short_word(kind: PieceKind | str) -> str:
    """A piece in a word."""
    return {
        "readings": QCoreApplication.translate("HandInModel", "readings"),
        "setup_photo": QCoreApplication.translate("HandInModel", "set-up"),
        "selfie": QCoreApplication.translate("HandInModel", "selfie"),
        "photo": QCoreApplication.translate("HandInModel", "photo"),
        "swing_video": QCoreApplication.translate("HandInModel", "video"),
        "report": QCoreApplication.translate("HandInModel", "report"),
    }.get(kind, QCoreApplication.translate("HandInModel", "file"))


def since_words(changed: SinceMarked) -> str:
    """One line: since when, and what, as “Changed since it was marked on 10 Mar, 20:27: …”."""
    when = short_day_and_time(changed.at.astimezone())
    if changed.by_date:
        words = _tr("A file is newer than the mark of {when}. What was marked is not known.")
        return words.format(when=when)
    parts = "; ".join(_in_brief(changed))
    words = _tr("Changed since it was marked on {when}: {parts}.")
    return words.format(when=when, parts=parts)


def _in_brief(changed: SinceMarked) -> Iterator[str]:
    for piece in changed.pieces:
        if piece.kind == "readings" and changed.rows:
            yield lengths_words(changed.rows)
        else:
            yield f"{short_word(piece.kind)} {_what(piece)}"


def lengths_words(rows: Sequence[RowChange]) -> str:
    """How many lengths of the table differ."""
    differ = sum(row.changed for row in rows)
    if not differ:
        return _tr("another table with the same readings")
    if all(row.earlier is None for row in rows):
        return _tr("readings, where none could be read before")
    if all(row.now is None for row in rows):
        return _tr("no readings any more")
    if len(rows) == 1:
        return _tr("the only length differs")
    words = _tr("1 of {of} lengths differs") if differ == 1 else _tr("{n} of {of} lengths differ")
    return words.format(n=differ, of=len(rows))


def piece_lines(changed: SinceMarked, portfolio: Portfolio) -> list[str]:
    """A line for each piece that changed, with the file that is there now."""
    lines = []
    for change in changed.pieces:
        line = f"{short_word(change.kind)}: {_what(change)}"
        now = _piece(portfolio, change.now)
        lines.append(line if now is None else f"{line}, {file_and_time(now)}")
    return lines


def file_and_time(piece: Piece) -> str:
    """A file with its time, where that is known."""
    if piece.modified is None:
        return piece.file
    return f"{piece.file} ({short_day_and_time(piece.modified)})"


def _piece(portfolio: Portfolio, content: Content | None) -> Piece | None:
    table = portfolio.as_written
    held = (piece for piece in portfolio.pieces if Content.of(piece, table) == content)
    return next(held, None)


def _what(change: PieceChange) -> str:
    return {
        "added": _tr("added"),
        "replaced": _tr("replaced"),
        "removed": _tr("removed"),
    }[change.what]


def _tr(text: str) -> str:
    return QCoreApplication.translate("SinceMarked", text)
