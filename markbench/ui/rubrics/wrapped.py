"""A field for words of any length: it wraps and grows, so that nothing of them is cut."""

from __future__ import annotations

from PySide6.QtCore import QEvent, QMimeData, Qt
from PySide6.QtGui import QKeyEvent, QResizeEvent
from PySide6.QtWidgets import QPlainTextEdit

from markbench.ui.look.theme import Theme

_MOST_LINES = 12
_MARGIN_PX = 1


class Wrapped(QPlainTextEdit):
    """Plain text; one paragraph of it unless ``paragraphs``, when Enter begins another."""

    def __init__(self, text: str, theme: Theme, *, paragraphs: bool = False) -> None:
        super().__init__(text)
        self._theme, self._paragraphs = theme, paragraphs
        self._least_lines = 2 if paragraphs else 1
        self.document().setDocumentMargin(_MARGIN_PX)
        self.setTabChangesFocus(True)
        self.document().documentLayout().documentSizeChanged.connect(lambda _size: self._size())
        theme.changed.connect(self._size)
        self._size()

    def text(self) -> str:
        """What is written."""
        return self.toPlainText()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Enter belongs to the page where there is but one paragraph."""
        if event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter) and not self._paragraphs:
            event.ignore()
            return
        super().keyPressEvent(event)

    def insertFromMimeData(self, source: QMimeData) -> None:
        """What is pasted is made one paragraph, too."""
        text = source.text() if self._paragraphs else " ".join(source.text().split())
        self.insertPlainText(text)

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Another width wraps otherwise."""
        super().resizeEvent(event)
        self._size()

    def changeEvent(self, event: QEvent) -> None:
        """A new font needs a new height."""
        super().changeEvent(event)
        if event.type() == QEvent.Type.FontChange:
            self._size()

    def _size(self) -> None:
        needed = self.document().size().height()
        policies = Qt.ScrollBarPolicy
        self.setVerticalScrollBarPolicy(  # one that comes and goes would wrap the text anew
            policies.ScrollBarAsNeeded if needed > _MOST_LINES else policies.ScrollBarAlwaysOff
        )
        lines = min(max(needed, self._least_lines), _MOST_LINES)
        frame = 2 * (round(4 * self._theme.scale) + 1 + _MARGIN_PX)  # as the style sheet pads
        high = round(lines * self.fontMetrics().lineSpacing()) + frame + 2
        if high != self.height():
            self.setFixedHeight(high)
