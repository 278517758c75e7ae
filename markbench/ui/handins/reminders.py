"""Reminders as plain text, addressed to learners in neutral words. No widget here."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterable, Sequence

from PySide6.QtCore import QCoreApplication

from markbench.checks.wording import listed
from markbench.session.hand_ins import HandIn
from markbench.ui.look.dates import day

EVERYTHING, AGAIN, NAMES = "everything", "again", "names"


def piece_words(kind: str) -> str:
    """A piece as one speaks of it to its owner."""
    return {
        "readings": _tr("your table of readings"),
        "setup_photo": _tr("the photo of your set-up"),
        "selfie": _tr("the photo of you with your set-up"),
        "swing_video": _tr("the video of the swings"),
        "report": _tr("your report"),
    }.get(kind, _tr("a file"))


def _listed(kinds: Sequence[str]) -> str:
    return listed([piece_words(kind) for kind in kinds], _tr("{most} and {last}"))


def concerns(row: HandIn, about: str) -> tuple[str, ...]:
    """Pieces a reminder ``about`` something asks this learner for; empty: none is due."""
    if about == AGAIN:
        return row.again
    wanted = tuple(dict.fromkeys((*row.missing, *row.again)))
    if about in (EVERYTHING, NAMES):
        return wanted
    return (about,) if about in wanted else ()


def reminders(rows: Iterable[tuple[str, HandIn]], about: str, title: str, today: dt.date) -> str:
    """One letter for each (name, hand-in) that a piece is wanted from.

    ``about``: a kind of piece, :data:`EVERYTHING`, :data:`AGAIN` (what could not be used) or
    :data:`NAMES` (no letters, a list of names with what is wanted).
    """
    due = [(name, row, concerns(row, about)) for name, row in rows]
    due = [one for one in due if one[2]]
    if about == NAMES:
        return "\n".join(
            f"{name}: {', '.join(piece_words(kind) for kind in wanted)}" for name, _, wanted in due
        )
    return "\n\n\n".join(_letter(name, row, wanted, title, today) for name, row, wanted in due)


def _letter(name: str, row: HandIn, wanted: tuple[str, ...], title: str, today: dt.date) -> str:
    lines = [_tr("Dear {name},").format(name=name), ""]
    unusable = [kind for kind in wanted if kind in row.again and kind not in row.missing]
    absent = [kind for kind in wanted if kind not in unusable]
    closed = [file for kind, file in row.unopened if kind in unusable]
    unusable = [kind for kind in unusable if kind not in dict(row.unopened)]
    if row.nothing:
        lines.append(_tr("nothing has reached me yet for “{title}”.").format(title=title))
    else:
        lines.append(_tr("thank you for your work on “{title}”.").format(title=title))
    if absent:
        asked = _tr("I have not found {pieces}. Could you hand it in{by}?")
        if len(absent) > 1:
            asked = _tr("I have not found {pieces}. Could you hand them in{by}?")
        pieces = _listed(absent)
        lines.append(asked.format(pieces=pieces, by=_by(row, today)))
    if closed:
        asked = _tr("I could not open {files}. Could you hand it in again{by}?")
        if len(closed) > 1:
            asked = _tr("I could not open {files}. Could you hand them in again{by}?")
        files = listed(closed, _tr("{most} and {last}"))
        lines.append(asked.format(files=files, by=_by(row, today)))
    if unusable:
        pieces = _listed(unusable)
        asked = _tr("I could not make use of {pieces}. Could you hand it in again{by}?")
        if len(unusable) > 1:
            asked = _tr("I could not make use of {pieces}. Could you hand them in again{by}?")
        lines.append(asked.format(pieces=pieces, by=_by(row, today)))
    lines.append(
        _tr("If you have sent it already, tell me the name of the file and when you sent it.")
    )
    return "\n".join(lines)


def _by(row: HandIn, today: dt.date) -> str:
    if row.due is None or row.due < today:
        return ""
    return _tr(" by {day}").format(day=day(row.due))


def _tr(text: str) -> str:
    return QCoreApplication.translate("Reminders", text)
