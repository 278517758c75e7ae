"""Files whose owner is in doubt, settled before the class is begun."""

from __future__ import annotations

from collections import deque
from typing import cast

from PySide6.QtCore import QObject, Signal

from markbench.session.newclass import NewClass
from markbench.ui.background import in_background
from markbench.ui.bench.settle import SettlePanel
from markbench.ui.desk import Command, Desk
from markbench.ui.look.theme import Theme
from markbench.ui.mishaps import plainly


class LooseDesk(QObject):
    """Stands where a :class:`Desk` would, for a class that has no journal yet.

    It knows the part that the slips of paper need: what is open, and how to settle it.
    """

    changed = Signal(str)
    trouble = Signal(str)
    blind = False

    def __init__(self, new: NewClass, parent: QObject) -> None:
        super().__init__(parent)
        self.session = self.held = new
        self._given: deque[Command] = deque()

    def do(self, command: Command) -> None:
        """Settle one file after those before; the folder is read again behind the window."""
        self._given.append(command)
        if len(self._given) == 1:
            self._carry_out()

    def refuse(self, file: str, learner: str) -> None:
        """Say that a file is not from a learner."""
        self.do(lambda _session: self.session.refuse_owner(file, learner))

    def undo(self) -> None:
        """Take the last step back."""
        self.do(lambda session: session.undo())

    def redo(self) -> None:
        """Do it again."""
        self.do(lambda session: session.redo())

    def _carry_out(self) -> None:
        command = self._given[0]
        in_background(
            self,
            lambda _progress, _stop: command(self.session),  # type: ignore[arg-type]
            done=lambda _none: self._done(""),
            failed=lambda error: self._done(plainly(error)),
        )

    def _done(self, trouble: str) -> None:
        self._given.popleft()
        self.changed.emit("")
        if trouble:
            self.trouble.emit(trouble)
        if self._given:
            self._carry_out()


class WhosePanel(SettlePanel):
    """The class page's slips, as wide as the page."""

    def __init__(self, desk: LooseDesk, theme: Theme) -> None:
        super().__init__(cast(Desk, desk), theme)

    def _nothing(self) -> str:
        return ""  # the page says so

    def _size(self) -> None:
        self.setMaximumWidth(self._theme.px(640))
