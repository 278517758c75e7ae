"""A field for plain text that saves itself."""

from __future__ import annotations

from PySide6.QtCore import Qt, QTimer, Signal
from PySide6.QtGui import QFocusEvent
from PySide6.QtWidgets import QSizePolicy, QTextEdit

_IDLE_MS = 500  # a pause in typing this long saves


class TextField(QTextEdit):
    """Plain text that grows with what is written; ``settled`` when a pause or leaving saves it."""

    settled = Signal(str)

    def __init__(self, name: str) -> None:
        super().__init__()
        self.setAcceptRichText(False)
        self.setTabChangesFocus(True)
        self.setAccessibleName(name)
        self.setVerticalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        self._kept = ""
        self._idle = QTimer(self, singleShot=True, interval=_IDLE_MS)
        self._idle.timeout.connect(self.settle)
        self.textChanged.connect(self._idle.start)
        self.document().documentLayout().documentSizeChanged.connect(self._grow)

    @property
    def unsettled(self) -> bool:
        """Whether something typed has not been passed on."""
        return self.toPlainText() != self._kept

    def show_text(self, text: str) -> None:
        """Show text from the session, unless the person is in the middle of changing it."""
        if self.hasFocus() and self.unsettled:
            return
        self._kept = text
        if text != self.toPlainText():
            self.setPlainText(text)
        self._idle.stop()

    def settle(self) -> None:
        """Pass on what was typed."""
        self._idle.stop()
        if self.unsettled:
            self._kept = self.toPlainText()
            self.settled.emit(self._kept)

    def focusOutEvent(self, event: QFocusEvent) -> None:
        """Leaving saves."""
        super().focusOutEvent(event)
        self.settle()

    def _grow(self) -> None:
        margins = self.height() - self.viewport().height()
        self.setFixedHeight(round(self.document().size().height()) + max(margins, 8))
