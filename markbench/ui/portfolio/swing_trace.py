"""The swing as it was measured, drawn against the film's own clock."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

from PySide6.QtCore import QPointF, QRectF, QSize, Qt, Signal
from PySide6.QtGui import (
    QColor,
    QFontMetricsF,
    QMouseEvent,
    QPainter,
    QPaintEvent,
    QPixmap,
    QPolygonF,
    QResizeEvent,
)
from PySide6.QtWidgets import QSizePolicy, QWidget

from markbench.ui.look.marks import pen
from markbench.ui.look.said import figures
from markbench.ui.look.theme import Theme

if TYPE_CHECKING:
    from markbench.evidence.video.judge import SwingMeasurement

_STEPS_S = (0.5, 1, 2, 5, 10, 20, 60, 120)


class SwingTrace(QWidget):
    """``wanted`` carries a time on the film's clock, in seconds, that was pointed at.

    The drawing is kept as a picture; while the film plays, only the playhead moves.
    """

    wanted = Signal(float)

    def __init__(self, theme: Theme) -> None:
        super().__init__()
        self._theme = theme
        self._measured: SwingMeasurement | None = None
        self._first_s, self._last_s, self._now_s = 0.0, 1.0, 0.0
        self._drawn = QPixmap()
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        self.setCursor(Qt.CursorShape.PointingHandCursor)
        self.setToolTip(
            self.tr("The bob's displacement as measured; a number where each swing ends")
        )
        theme.changed.connect(self._redraw)
        self.hide()

    def show_swing(self, measured: SwingMeasurement | None) -> None:
        """Show what was measured; nothing is drawn where nothing was."""
        self._measured = measured if measured is not None and measured.accepted else None
        if self._measured is not None:
            words = self.tr("Trace of the swing, {n} swings marked")
            self.setAccessibleName(words.format(n=len(self._measured.swing_marks_s)))
        self.setVisible(self._measured is not None)
        self._redraw()

    def show_span(self, first_s: float, last_s: float) -> None:
        """The film's first and last frame on its own clock."""
        self._first_s, self._last_s = first_s, max(last_s, first_s + 1e-3)
        self._redraw()

    def show_now(self, now_s: float) -> None:
        """Move the playhead."""
        self._now_s = now_s
        self.update()

    def place_of(self, time_s: float) -> float:
        """Where a time stands across the widget, in pixels."""
        field = self._field()
        part = (time_s - self._first_s) / (self._last_s - self._first_s)
        return field.left() + field.width() * part

    def sizeHint(self) -> QSize:
        """A band under the film; with larger text the curve stays as it is, and the film large."""
        return QSize(200, round(2 * self._theme.line_height("small")) + 58)

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """Go where it was pressed."""
        self._point(event)

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        """Follow the hand."""
        if event.buttons() & Qt.MouseButton.LeftButton:
            self._point(event)

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Draw afresh."""
        super().resizeEvent(event)
        self._redraw()

    def paintEvent(self, _event: QPaintEvent) -> None:
        """The drawing and the playhead on it."""
        if self._measured is None:
            return
        if self._drawn.isNull():
            self._drawn = self._draw(self._measured)
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.drawPixmap(0, 0, self._drawn)
        field, x = self._field(), self.place_of(self._now_s)
        colours = self._theme.palette
        painter.setPen(pen(colours.look, 2.0))
        painter.drawLine(QPointF(x, field.top()), QPointF(x, field.bottom()))
        painter.setBrush(QColor(colours.look))
        painter.drawPolygon(QPolygonF([QPointF(x - 5, field.bottom() + 6),
                                       QPointF(x + 5, field.bottom() + 6),
                                       QPointF(x, field.bottom() - 2)]))  # fmt: skip

    # --- inside --------------------------------------------------------------------

    def _point(self, event: QMouseEvent) -> None:
        field = self._field()
        part = (event.position().x() - field.left()) / max(field.width(), 1.0)
        span = self._last_s - self._first_s
        self.wanted.emit(self._first_s + span * min(max(part, 0.0), 1.0))

    def _redraw(self) -> None:
        self._drawn = QPixmap()
        self.setFixedHeight(self.sizeHint().height())
        self.update()

    def _field(self) -> QRectF:
        line = self._theme.line_height("small")
        return QRectF(self.rect()).adjusted(8, line + 2, -8, -line - 2)

    def _draw(self, measured: SwingMeasurement) -> QPixmap:
        ratio = self.devicePixelRatioF()
        pixmap = QPixmap(self.size() * ratio)
        pixmap.setDevicePixelRatio(ratio)
        pixmap.fill(Qt.GlobalColor.transparent)
        painter = QPainter(pixmap)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.setFont(self._theme.font("small"))
        colours, field = self._theme.palette, self._field()
        painter.fillRect(field, QColor(colours.shade))
        begin, end = self.place_of(measured.start_s), self.place_of(measured.end_s)
        swung = QRectF(begin, field.top(), end - begin, field.height()).intersected(field)
        painter.fillRect(swung, QColor(colours.field))
        painter.setPen(pen(colours.rule, 1.0))
        painter.drawRect(field)
        painter.drawLine(QPointF(field.left(), field.center().y()),
                         QPointF(field.right(), field.center().y()))  # fmt: skip
        self._draw_clock(painter, field)
        self._draw_marks(painter, field, measured.swing_marks_s)
        self._draw_curve(painter, field, measured)
        painter.end()
        return pixmap

    def _draw_clock(self, painter: QPainter, field: QRectF) -> None:
        metrics, span = QFontMetricsF(painter.font()), self._last_s - self._first_s
        room = metrics.horizontalAdvance("888 s") * 2
        most = max(field.width() / room, 1)
        step = next((s for s in _STEPS_S if span / s <= most), _STEPS_S[-1])
        painter.setPen(QColor(self._theme.palette.pencil))
        for number in range(math.floor(span / step) + 1):
            x = self.place_of(self._first_s + number * step)
            words = figures(f"{number * step:g} s")
            left = min(max(x - metrics.horizontalAdvance(words) / 2, 0.0),
                       self.width() - metrics.horizontalAdvance(words))  # fmt: skip
            painter.drawText(QPointF(left, self.height() - metrics.descent()), words)

    def _draw_marks(self, painter: QPainter, field: QRectF, marks_s: tuple[float, ...]) -> None:
        metrics, colours = QFontMetricsF(painter.font()), self._theme.palette
        last = -math.inf
        for number, mark in enumerate(marks_s, 1):
            x = self.place_of(mark)
            painter.setPen(pen(colours.deed, 1.2))
            painter.drawLine(QPointF(x, field.top() - 3), QPointF(x, field.bottom()))
            words = str(number)
            wide = metrics.horizontalAdvance(words)
            if x - wide / 2 > last + 3:
                painter.setPen(QColor(colours.deed))
                painter.drawText(QPointF(x - wide / 2, field.top() - 5), words)
                last = x + wide / 2

    def _draw_curve(self, painter: QPainter, field: QRectF, measured: SwingMeasurement) -> None:
        sizes = [abs(d) for d in measured.displacement_px if math.isfinite(d)]
        most = max(sizes, default=0.0) or 1.0
        half = field.height() / 2 * 0.88
        painter.setPen(pen(self._theme.palette.data, 1.4))
        run: list[QPointF] = []
        for time_s, displacement in zip(measured.times_s, measured.displacement_px, strict=True):
            if math.isfinite(displacement):
                y = field.center().y() - half * displacement / most
                run.append(QPointF(self.place_of(time_s), y))
            elif run:
                painter.drawPolyline(run)
                run = []
        if run:
            painter.drawPolyline(run)
