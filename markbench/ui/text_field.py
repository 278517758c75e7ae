"""A field for plain text that saves itself."""

from __future__ import annotations

from PySide6.QtCore import QEvent, QMetaMethod, Qt, QTimer, Signal
from PySide6.QtGui import QFocusEvent, QKeyEvent
from PySide6.QtWidgets import QSizePolicy, QTextEdit

_IDLE_MS = 500  # a pause in typing this long saves


class TextField(QTextEdit):
    """Plain text that grows with what is written; ``settled`` when a pause or leaving saves it.

    ``left_by_key``: Escape was pressed, where somebody listens; else the key is the page's.
    """

    settled = Signal(str)
    left_by_key = Signal()

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

    def event(self, event: QEvent) -> bool:
        """Escape leaves the text before it leaves the page."""
        kinds = (QEvent.Type.ShortcutOverride, QEvent.Type.KeyPress)
        if (
            event.type() in kinds
            and isinstance(event, QKeyEvent)
            and event.key() == Qt.Key.Key_Escape
            and self.isSignalConnected(QMetaMethod.fromSignal(self.left_by_key))
        ):
            event.accept()
            if event.type() == QEvent.Type.KeyPress:
                self.settle()
                self.left_by_key.emit()
            return True
        return super().event(event)

    def focusOutEvent(self, event: QFocusEvent) -> None:
        """Leaving saves."""
        super().focusOutEvent(event)
        self.settle()

    def _grow(self) -> None:
        margins = self.height() - self.viewport().height()
        self.setFixedHeight(round(self.document().size().height()) + max(margins, 8))
