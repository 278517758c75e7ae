"""What was typed on a page about the class and not saved: kept while the class is open.

A page of this kind may be left for any other, with nothing asked and nothing lost: the bar
says what is unfinished and leads back to it. Only where the class itself is let go, one is
asked, with the page in sight.
"""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING, Protocol, runtime_checkable

from PySide6.QtCore import QCoreApplication, QObject
from PySide6.QtWidgets import (
    QAbstractSpinBox,
    QApplication,
    QLineEdit,
    QMessageBox,
    QPlainTextEdit,
    QTextEdit,
    QWidget,
)
from shiboken6 import isValid

from markbench.ui.mishaps import plainly
from markbench.ui.parts import button

if TYPE_CHECKING:
    from markbench.ui.background import Work
    from markbench.ui.desk import Desk
    from markbench.ui.window import Window

_FIELDS = (QLineEdit, QPlainTextEdit, QTextEdit, QAbstractSpinBox)


@runtime_checkable
class Unfinished(Protocol):
    """A page that can be left in the middle. Pages are made anew with what was typed."""

    NAME: str

    def typed(self) -> object | None:
        """What was typed and is not saved, for the page to be made with again."""

    def save_now(self) -> bool:
        """Save it before this returns; false where it could not be, which the page then says."""


class Pending(QObject):
    """Holds what is unfinished, by the name of its page, and says so in the bar."""

    def __init__(self, window: Window) -> None:
        super().__init__(window)
        self._window = window
        self._held: dict[str, object] = {}
        self._ways: dict[str, Callable[[], None]] = {
            "brief": lambda: window.doors.open_brief(),
            "rubric": lambda: window.doors.open_rubric(),
        }
        words = {"brief": self.tr("● Brief not saved"), "rubric": self.tr("● Rubric not saved")}
        tip = self.tr("What you typed is kept while the class is open. Go back to it.")
        self.buttons = {
            name: button(words[name], "quiet", way, tip=tip) for name, way in self._ways.items()
        }
        for one in self.buttons.values():
            one.hide()

    def of(self, name: str) -> object | None:
        """What was typed on a page and is not saved."""
        return self._held.get(name)

    def keep(self, page: QWidget | None) -> None:
        """Keep what stands unsaved on a page that is being left."""
        if isinstance(page, Unfinished):
            typed = page.typed()
            if typed is None:
                self._held.pop(page.NAME, None)
            else:
                self._held[page.NAME] = typed
            self._show()

    def save(
        self,
        page: Unfinished,
        desk: Desk,
        work: Work,
        done: Callable[[], object],
        failed: Callable[[Exception], object],
    ) -> None:
        """Save what a page holds, in the desk's turn. The page may be left meanwhile: what was
        typed counts as unsaved until it is saved, and a refusal is told in the bar then.
        """

        def saved(_result: object) -> None:
            self._held.pop(page.NAME, None)
            self._show()
            if isValid(page):
                done()

        def refused(error: Exception) -> None:
            if isValid(page):
                failed(error)
            else:
                self._window._say_trouble(plainly(error))

        desk.do_long(self, work, saved, refused)

    def forget(self) -> None:
        """The class is closed."""
        self._held.clear()
        self._show()

    def may_let_go(self) -> bool:
        """Whether everything is saved, or the person lets go of it; false to stay."""
        doors = self._window.doors
        self.keep(doors.page)
        for name in list(self._held):
            self._ways[name]()
            page = doors.page
            if not isinstance(page, Unfinished):
                return False  # the page cannot be shown, and has said why
            answer = _ask(self._window, name)
            if answer == QMessageBox.StandardButton.Cancel:
                return False
            if answer == QMessageBox.StandardButton.Save and not page.save_now():
                return False
            self._held.pop(name, None)
        return True

    def _show(self) -> None:
        for name, one in self.buttons.items():
            one.setVisible(name in self._held)
        self._window.bar.renew()


def leave_field(page: QWidget | None) -> bool:
    """Escape within a field of a page leaves the field; its row has the keyboard then, and Tab
    goes on from there. False where no field has it.
    """
    field = QApplication.focusWidget()
    if page is None or not isinstance(field, _FIELDS) or not page.isAncestorOf(field):
        return False
    row = field.parentWidget()
    while row is not None and row is not page and row.property("kind") != "stop":
        row = row.parentWidget()
    (row or page).setFocus()
    return True


def _ask(owner: Window, name: str) -> QMessageBox.StandardButton:
    box = QMessageBox(owner)
    box.setIcon(QMessageBox.Icon.NoIcon)
    words = {
        "brief": _tr("The settings you changed are not saved."),
        "rubric": _tr("What you changed in the rubric is not saved."),
    }
    box.setText(words[name])
    buttons = QMessageBox.StandardButton
    box.setStandardButtons(buttons.Save | buttons.Discard | buttons.Cancel)
    box.setDefaultButton(buttons.Save)
    for one, said in (
        (buttons.Save, _tr("Save")),
        (buttons.Discard, _tr("Discard")),
        (buttons.Cancel, _tr("Stay")),
    ):
        box.button(one).setText(said)
    return QMessageBox.StandardButton(box.exec())


def _tr(text: str) -> str:
    return QCoreApplication.translate("Unfinished", text)
