"""What was taken back or done again, in words: undo reaches over pages that are not in sight."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from PySide6.QtCore import QCoreApplication

from markbench.model import Decision

if TYPE_CHECKING:
    from markbench.session import Session


def turned(step: Sequence[Decision], session: Session, *, again: bool) -> str:
    """“Taken back: mark, Ada Invented”; several of a kind are counted."""
    kinds = {d.kind for d in step}
    what = ", ".join(dict.fromkeys(_words(d.kind) for d in step))
    if len(step) > 1 and len(kinds) == 1:
        what += f" × {len(step)}"
    who = {d.learner for d in step if d.learner}
    if len(who) == 1:
        portfolio = session.portfolio(next(iter(who)))
        what += f", {portfolio.learner.name or portfolio.learner.id}"
    form = _tr("Done again: {what}") if again else _tr("Taken back: {what}")
    return form.format(what=what)


def _words(kind: str) -> str:
    return {
        "mark": _tr("mark"),
        "feedback": _tr("text to the learner"),
        "note": _tr("note"),
        "correction": _tr("reading corrected"),
        "typed": _tr("readings typed"),
        "hints": _tr("columns of a table"),
        "agreed_slip": _tr("agreement with an explanation"),
        "piece_kind": _tr("what a picture shows"),
        "piece_status": _tr("what becomes of a piece"),
        "swing_count": _tr("count of swings"),
        "owner": _tr("whose a file is"),
        "extension": _tr("more time"),
        "order": _tr("order of marking"),
        "blind": _tr("names shown or hidden"),
        "phrase": _tr("phrase"),
        "sample": _tr("sample"),
        "moderated": _tr("settled mark"),
        "adjustment": _tr("adjustment"),
        "file": _tr("file saved"),
    }.get(kind, _tr("last step"))


def _tr(text: str) -> str:
    return QCoreApplication.translate("Turned", text)
