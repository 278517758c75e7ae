"""What was taken back or done again, in words: undo reaches over pages that are not in sight."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import TYPE_CHECKING

from PySide6.QtCore import QCoreApplication, Qt
from PySide6.QtWidgets import QMessageBox, QWidget

from markbench.model import Decision
from markbench.ui.look.decisions import decision_words

if TYPE_CHECKING:
    from markbench.session import Session

_QUESTION = "signature"


def turned(step: Sequence[Decision], session: Session, *, again: bool) -> str:
    """“Taken back: mark, Ada Invented”; several of a kind are counted."""
    kinds = {_kind(d) for d in step}
    if "reopen" in kinds:
        kinds.discard("sign_off")  # which is what was lifted
    told = [kind for d in step if (kind := _kind(d)) in kinds]
    what = ", ".join(dict.fromkeys(decision_words(kind, _tr("last step")) for kind in told))
    if len(told) > 1 and len(kinds) == 1:
        what += f" × {len(told)}"
    who = {d.learner for d in step if d.learner}
    if len(who) == 1:
        portfolio = session.portfolio(next(iter(who)))
        what += f", {portfolio.learner.name or portfolio.learner.id}"
    form = _tr("Done again: {what}") if again else _tr("Taken back: {what}")
    return form.format(what=what)


def _kind(decision: Decision) -> str:
    """Its kind; the last word on one learner is kept as an adjustment of that learner's."""
    return "moderated" if decision.kind == "adjustment" and decision.learner else decision.kind


def ask_about_signature(owner: QWidget, signed: bool, go_on: Callable[[], None]) -> None:
    """Ask before a signature is taken back or given again by Undo or Redo, then ``go_on``.

    ``signed``: the marks are signed off now, and would be open.
    """
    if owner.findChild(QMessageBox, _QUESTION) is not None:
        return  # the key was pressed twice
    box = QMessageBox(owner)
    box.setObjectName(_QUESTION)
    box.setIcon(QMessageBox.Icon.NoIcon)
    if signed:
        words = _tr("The marks are signed off. Reopen them?")
        more = _tr("The journal keeps that they were signed off, and that it was taken back.")
        yes, no = _tr("Reopen them"), _tr("Leave them signed off")
    else:
        words = _tr("The marks were signed off before. Sign them off again?")
        more = _tr("They cannot be changed then until they are reopened.")
        yes, no = _tr("Sign them off"), _tr("Leave them open")
    box.setText(words)
    box.setInformativeText(more)
    goes = box.addButton(yes, QMessageBox.ButtonRole.AcceptRole)
    stays = box.addButton(no, QMessageBox.ButtonRole.RejectRole)
    box.setDefaultButton(stays)  # a key held down too long must not decide this
    box.setEscapeButton(stays)
    box.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)

    def answered(_result: int) -> None:
        owner.activateWindow()  # for whoever goes on by key
        if box.clickedButton() is goes:
            go_on()

    box.finished.connect(answered)
    box.open()


def _tr(text: str) -> str:
    return QCoreApplication.translate("Turned", text)
