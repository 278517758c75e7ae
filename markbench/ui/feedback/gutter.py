"""The strip beside the text by which a piece is taken hold of and moved."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QEvent, QObject, QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QMouseEvent, QPainter, QPaintEvent, QPolygonF, QTextCursor
from PySide6.QtWidgets import QWidget

from markbench.ui.look.theme import Theme

if TYPE_CHECKING:
    from markbench.ui.feedback.field import PieceField


class PieceGutter(QWidget):
    """A bar beside each piece; dragged, the piece goes with it. Alt+↑ and Alt+↓ do the same."""

    def __init__(self, field: PieceField, theme: Theme) -> None:
        super().__init__(field)
        self._field, self._theme = field, theme
        self._dragged: int | None = None
        self._goal: int | None = None
        self.setCursor(Qt.CursorShape.OpenHandCursor)
        self.setToolTip(self.tr("Drag to move this sentence (Alt+↑, Alt+↓)"))
        field.viewport().installEventFilter(self)
        field.cursorPositionChanged.connect(self.update)
        field.document().documentLayout().documentSizeChanged.connect(lambda _s: self.place())

    def place(self) -> None:
        """Stand beside the text."""
        viewport = self._field.viewport().geometry()
        wide = self._theme.px(14)
        self.setGeometry(viewport.left() - wide, viewport.top(), wide, viewport.height())
        self.update()

    def eventFilter(self, _watched: QObject, event: QEvent) -> bool:
        """Follow the text's own size."""
        if event.type() in (QEvent.Type.Resize, QEvent.Type.Move):
            self.place()
        return False

    def span(self, number: int) -> tuple[float, float]:
        """Top and bottom of a piece, in this strip's pixels."""
        field = self._field
        block = field.document().findBlockByNumber(number)
        box = field.document().documentLayout().blockBoundingRect(block)
        up = field.verticalScrollBar().value()
        return box.top() - up, box.bottom() - up

    def paintEvent(self, _event: QPaintEvent) -> None:
        """A bar for each piece; the one in hand stands out, with a mark where it would go."""
        painter, colours = QPainter(self), self._theme.palette
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.setPen(Qt.PenStyle.NoPen)
        field, middle = self._field, self.width() / 2
        lines, current = field.count(), field.current() if field.hasFocus() else -1
        for number in range(lines):
            if not field.document().findBlockByNumber(number).text().strip():
                continue
            top, bottom = self.span(number)
            held = number in (self._dragged, current)
            wide = 4.0 if held else 2.0
            painter.setBrush(QColor(colours.deed if held else colours.edge))
            gap = self._theme.px(4)
            bar = QRectF(middle - wide / 2, top + 3, wide, bottom - top - gap - 4)
            painter.drawRoundedRect(bar, wide / 2, wide / 2)
        if self._dragged is not None and self._goal is not None and self._goal != self._dragged:
            top, bottom = self.span(self._goal)
            y = bottom - 2 if self._goal > self._dragged else top + 1
            painter.setBrush(QColor(colours.look))
            side, right = self.width() * 0.4, float(self.width())
            painter.drawPolygon(
                QPolygonF([QPointF(right, y), QPointF(right - side * 1.6, y - side),
                           QPointF(right - side * 1.6, y + side)])
            )  # fmt: skip

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """Take hold."""
        if event.button() == Qt.MouseButton.LeftButton and not self._field.isReadOnly():
            self._dragged = self._goal = self._at(event.position().y())
            block = self._field.document().findBlockByNumber(self._dragged)
            self._field.setFocus()
            self._field.setTextCursor(QTextCursor(block))
            self.setCursor(Qt.CursorShape.ClosedHandCursor)
            self.update()

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        """Carry."""
        if self._dragged is not None:
            self._goal = self._at(event.position().y())
            self.update()

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        """Let go."""
        if self._dragged is None:
            return
        at, to = self._dragged, self._at(event.position().y())
        self._dragged = self._goal = None
        self.setCursor(Qt.CursorShape.OpenHandCursor)
        self.update()
        self._field.carry(at, to)

    def _at(self, y: float) -> int:
        for number in range(self._field.count()):
            if y <= self.span(number)[1]:
                return number
        return self._field.count() - 1
