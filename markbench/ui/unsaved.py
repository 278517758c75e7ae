"""What was said and could not be saved: asked about before the window lets go of it."""

from __future__ import annotations

from pathlib import Path

from PySide6.QtCore import QCoreApplication
from PySide6.QtWidgets import QFileDialog, QMessageBox, QWidget

from markbench.ui.desk import Desk


def _tr(text: str) -> str:
    return QCoreApplication.translate("Unsaved", text)


def may_let_go(owner: QWidget, desk: Desk) -> bool:
    """Whether everything is saved, perhaps elsewhere, or the person lets go of it."""
    desk.finish()
    if desk.unsaved:
        desk.try_again()
        desk.finish()
    while desk.unsaved:
        answer = _ask(owner, desk)
        if answer == QMessageBox.StandardButton.Discard:
            return True
        if answer == QMessageBox.StandardButton.Save:
            to = _elsewhere(owner, desk)
            if to is not None:
                desk.keep_elsewhere(to)
        elif answer == QMessageBox.StandardButton.Retry:
            desk.try_again()
        else:
            return False
        desk.finish()
    return True


def _ask(owner: QWidget, desk: Desk) -> QMessageBox.StandardButton:
    box = QMessageBox(owner)
    box.setIcon(QMessageBox.Icon.NoIcon)
    words = _tr("{n} changes are not saved: the class folder cannot be written to.")
    if desk.unsaved == 1:
        words = _tr("1 change is not saved: the class folder cannot be written to.")
    box.setText(words.format(n=desk.unsaved))
    box.setInformativeText(
        _tr(
            "Saved elsewhere, they can be merged into the class later, with all that was said "
            "before."
        )
    )
    buttons = QMessageBox.StandardButton
    box.setStandardButtons(buttons.Save | buttons.Retry | buttons.Discard | buttons.Cancel)
    box.setDefaultButton(buttons.Save)
    for button, words in (
        (buttons.Save, _tr("Save elsewhere…")),
        (buttons.Retry, _tr("Try again")),
        (buttons.Discard, _tr("Close without saving")),
        (buttons.Cancel, _tr("Keep open")),
    ):
        box.button(button).setText(words)
    return QMessageBox.StandardButton(box.exec())


def may_lose(owner: QWidget, question: str, more: str, *, lose: str, keep: str) -> bool:
    """Whether what was said on a page may be lost; whoever escapes keeps it."""
    box = QMessageBox(owner)
    box.setIcon(QMessageBox.Icon.NoIcon)
    box.setText(question)
    box.setInformativeText(more)
    buttons = QMessageBox.StandardButton
    box.setStandardButtons(buttons.Discard | buttons.Cancel)
    box.setDefaultButton(buttons.Cancel)
    box.button(buttons.Discard).setText(lose)
    box.button(buttons.Cancel).setText(keep)
    return QMessageBox.StandardButton(box.exec()) == buttons.Discard


def _elsewhere(owner: QWidget, desk: Desk) -> Path | None:
    start = Path.home() / f"{desk.held.folder.name}.markbench"
    chosen, _ = QFileDialog.getSaveFileName(
        owner, _tr("Save elsewhere"), str(start), "Markbench (*.markbench)"
    )
    return Path(chosen) if chosen else None
