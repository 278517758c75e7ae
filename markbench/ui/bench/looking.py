"""Photos and films are looked at while the class is already on the screen; it can be stopped."""

from __future__ import annotations

import threading
from typing import TYPE_CHECKING

from PySide6.QtCore import QTimer
from PySide6.QtWidgets import QHBoxLayout, QWidget

from markbench.ui.background import Progress, Stop, in_background
from markbench.ui.desk import Desk
from markbench.ui.mishaps import plainly
from markbench.ui.opening import set_apart
from markbench.ui.parts import button, label

if TYPE_CHECKING:
    from markbench.session import Session
    from markbench.session.evidence import Seen

_AFTER_MS = 400  # the class is drawn first


class EvidenceLook(QWidget):
    """Says how far the looking is. What was seen goes to the session as one command."""

    def __init__(self, desk: Desk) -> None:
        super().__init__()
        self._desk = desk
        self._enough = threading.Event()
        self.words = label(kind="small")
        self.stop_button = button(self.tr("Stop"), "plain", self.stop)
        self.stop_button.setAccessibleName(self.tr("Stop looking at photos and videos"))
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(4)
        row.addWidget(self.words)
        row.addWidget(self.stop_button)
        self.hide()
        desk.closing.connect(self.stop)
        QTimer.singleShot(_AFTER_MS, self, self.start)

    def start(self) -> None:
        """Look at everything; what was measured before is remembered and costs nothing."""
        session = self._desk.held
        work, folder = session.work, session.folder

        enough = self._enough

        def see(progress: Progress, _stop: Stop) -> Seen:
            from markbench.session.evidence import look

            return look(work, folder, progress, enough.is_set)

        in_background(self, see, done=self._seen, failed=self._failed, progress=self._moved)

    def stop(self) -> None:
        """Leave the rest unlooked at; what was seen so far still counts."""
        self._enough.set()
        self.hide()

    def _moved(self, at: int, of: int, _file: str) -> None:
        # The words first: what is shown is placed by the room that they need.
        words = self.tr("Looking at photos and videos: {n} of {of}").format(n=at, of=of)
        self.words.setText(f"·  {words}")
        self.setVisible(at < of and not self._enough.is_set())
        self.updateGeometry()

    def _seen(self, seen: Seen) -> None:
        self.hide()

        def take_in(session: Session) -> None:
            session.see(seen)
            set_apart()  # everybody was judged anew

        if self._desk.open:
            self._desk.do(take_in)

    def _failed(self, error: Exception) -> None:
        self.hide()
        self._desk.trouble.emit(plainly(error))
