"""What was taken back or done again, in words: undo reaches over pages that are not in sight."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from PySide6.QtCore import QCoreApplication

from markbench.model import Decision
from markbench.ui.look.decisions import decision_words

if TYPE_CHECKING:
    from markbench.session import Session


def turned(step: Sequence[Decision], session: Session, *, again: bool) -> str:
    """“Taken back: mark, Ada Invented”; several of a kind are counted."""
    kinds = {d.kind for d in step}
    what = ", ".join(dict.fromkeys(decision_words(d.kind, _tr("last step")) for d in step))
    if len(step) > 1 and len(kinds) == 1:
        what += f" × {len(step)}"
    who = {d.learner for d in step if d.learner}
    if len(who) == 1:
        portfolio = session.portfolio(next(iter(who)))
        what += f", {portfolio.learner.name or portfolio.learner.id}"
    form = _tr("Done again: {what}") if again else _tr("Taken back: {what}")
    return form.format(what=what)


def _tr(text: str) -> str:
    return QCoreApplication.translate("Turned", text)
