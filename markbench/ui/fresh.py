"""When a page that gathers from the whole class is drawn again: as rarely as will do."""

from __future__ import annotations

from collections.abc import Callable

from PySide6.QtCore import QObject, QTimer
from PySide6.QtWidgets import QWidget

from markbench.ui.desk import Desk

_PAUSE_MS = 200  # several decisions of one gesture are drawn once


class Fresh(QObject):
    """Draws ``page`` again when it is come to after a change, or soon after one it is seen in."""

    def __init__(self, page: QWidget, desk: Desk, draw: Callable[[], None]) -> None:
        super().__init__(page)
        self._page, self._draw, self._stale = page, draw, True
        self._soon = QTimer(self, singleShot=True, interval=_PAUSE_MS)
        self._soon.timeout.connect(self.make)
        desk.changed.connect(self._on_changed)

    def make(self) -> None:
        """Draw the page if anything has changed since it was last drawn."""
        if self._stale:
            self._stale = False
            self._draw()

    def _on_changed(self, _learner: str) -> None:
        self._stale = True
        if self._page.isVisible():
            self._soon.start()
