"""Writes what goes out, and says what was written."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QCoreApplication

from markbench.ui.moderation.words import moved_words, unmarked_words

if TYPE_CHECKING:
    from markbench.session import Session


def write_workbooks(session: Session) -> str:
    """Write what goes out; says what was written and how many are not fully marked."""
    from markbench.session.going_out import write_out

    went = write_out(session)
    if went.not_sent:
        words = QCoreApplication.translate(
            "Window", "✓ written to {folder}; {n} texts not sent: {first}"
        )
        return words.format(folder=went.folder.name, n=len(went.not_sent), first=went.not_sent[0])
    words = QCoreApplication.translate("Window", "✓ written to {folder}")
    told = [words.format(folder=went.folder.name)]
    told += [unmarked_words(went.unmarked)] if went.unmarked else []
    told += [moved_words(went.moved)] if went.moved else []
    return "; ".join(told)
