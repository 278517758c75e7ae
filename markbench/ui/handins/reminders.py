"""Reminders as plain text, addressed to learners in neutral words. No widget here."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterable, Sequence

from PySide6.QtCore import QCoreApplication

from markbench.checks.wording import listed
from markbench.session.hand_ins import HandIn
from markbench.ui.handins.letter_words import LetterWords, letter_words

# A line by itself, so that nobody sends two letters as one.
_BETWEEN = f"\n\n{'—' * 12}\n\n"

EVERYTHING, AGAIN, NAMES = "everything", "again", "names"


def named(kind: str) -> str:
    """A piece as the teacher calls it, in her language."""
    return {
        "readings": _tr("table of readings"),
        "setup_photo": _tr("set-up photo"),
        "selfie": _tr("selfie"),
        "photo": _tr("photo"),
        "swing_video": _tr("video"),
        "report": _tr("report"),
    }.get(kind, _tr("file"))


def concerns(row: HandIn, about: str) -> tuple[str, ...]:
    """Pieces a reminder ``about`` something asks this learner for; empty: none is due."""
    if about == AGAIN:
        return row.again
    wanted = tuple(dict.fromkeys((*row.missing, *row.again)))
    if about in (EVERYTHING, NAMES):
        return wanted
    return (about,) if about in wanted else ()


def reminders(
    rows: Iterable[tuple[str, HandIn]],
    about: str,
    title: str,
    today: dt.date,
    language: str = "en",
) -> str:
    """One letter for each (name, hand-in) that a piece is wanted from.

    ``about``: a kind of piece, :data:`EVERYTHING`, :data:`AGAIN` (what could not be used) or
    :data:`NAMES` (no letters, a list of names with what is wanted). Letters are in
    ``language``, that of the feedback; the list is the teacher's own.
    """
    due = [(name, row, concerns(row, about)) for name, row in rows]
    due = [one for one in due if one[2]]
    if about == NAMES:
        return "\n".join(f"{name}: {', '.join(map(named, wanted))}" for name, _, wanted in due)
    words = letter_words(language)
    return _BETWEEN.join(_letter(words, *one, title, today) for one in due)


def _letter(
    words: LetterWords,
    name: str,
    row: HandIn,
    wanted: tuple[str, ...],
    title: str,
    today: dt.date,
) -> str:
    unusable = [kind for kind in wanted if kind in row.again and kind not in row.missing]
    absent = [kind for kind in wanted if kind not in unusable]
    closed = [file for kind, file in row.unopened if kind in unusable]
    unusable = [kind for kind in unusable if kind not in dict(row.unopened)]
    by = (
        ""
        if row.due is None or row.due < today
        else words.by.format(day=words.dates.said_day(row.due))
    )

    def asked(forms: tuple[str, str], pieces: Sequence[str]) -> str:
        return forms[len(pieces) > 1].format(pieces=listed(pieces, words.last_of_a_list), by=by)

    lines = [
        words.dear.format(name=name),
        "",
        (words.nothing_yet if row.nothing else words.thanks).format(title=title),
    ]
    if absent:
        lines.append(asked(words.not_found, [words.pieces.get(k, words.file) for k in absent]))
    if closed:
        lines.append(asked(words.not_opened, closed))
    if unusable:
        lines.append(asked(words.not_usable, [words.pieces.get(k, words.file) for k in unusable]))
    return "\n".join((*lines, words.sent_already[len(wanted) > 1]))


def _tr(text: str) -> str:
    return QCoreApplication.translate("Reminders", text)
