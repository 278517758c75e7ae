"""Files whose owner is in doubt, settled before the class is begun."""

from __future__ import annotations

from typing import cast

from PySide6.QtCore import QObject, Signal

from markbench.session.newclass import NewClass
from markbench.ui.background import in_background
from markbench.ui.bench.settle import SettlePanel
from markbench.ui.desk import Command, Desk
from markbench.ui.look.theme import Theme


class LooseDesk(QObject):
    """Stands where a :class:`Desk` would, for a class that has no journal yet.

    It knows the part that the slips of paper need: what is open, and how to settle it.
    """

    changed = Signal(str)
    trouble = Signal(str)

    def __init__(self, new: NewClass, parent: QObject) -> None:
        super().__init__(parent)
        self.session = new
        self.busy = False

    def do(self, command: Command) -> None:
        """Settle one file; the folder is read again behind the window."""
        if self.busy:
            return
        self.busy = True
        in_background(
            self,
            lambda _progress, _stop: command(self.session),  # type: ignore[arg-type]
            done=lambda _none: self._done(""),
            failed=lambda error: self._done(str(error)),
        )

    def _done(self, trouble: str) -> None:
        self.busy = False
        if trouble:
            self.trouble.emit(trouble)
        self.changed.emit("")


class WhosePanel(SettlePanel):
    """The class page's slips, as wide as the page."""

    def __init__(self, desk: LooseDesk, theme: Theme) -> None:
        super().__init__(cast(Desk, desk), theme)

    def _size(self) -> None:
        self.setMaximumWidth(self._theme.px(640))
