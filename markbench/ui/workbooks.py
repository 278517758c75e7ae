"""Writes what goes out, and says what was written."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QCoreApplication

if TYPE_CHECKING:
    from markbench.session import Session


def write_workbooks(session: Session) -> str:
    """Write what goes out; says what was written and how many still carry drafts."""
    from markbench.session.going_out import write_out

    went = write_out(session)
    if went.not_sent:
        words = QCoreApplication.translate(
            "Window", "✓ written to {folder}; {n} texts not sent: {first}"
        )
        return words.format(folder=went.folder.name, n=len(went.not_sent), first=went.not_sent[0])
    words = QCoreApplication.translate("Window", "✓ written to {folder}")
    if went.unfinished:
        words = QCoreApplication.translate(
            "Window", "✓ written to {folder}; {n} learners still carry drafts"
        )
    return words.format(folder=went.folder.name, n=went.unfinished)
