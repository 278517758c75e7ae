"""The learner's graph: readings, fitted line, local law, the ghost of an explanation, residuals.

What is drawn is decided in :mod:`markbench.ui.portfolio.curves` and drawn by
:mod:`markbench.ui.portfolio.drawing`; this shows it with its key, and tells of clicks.
"""

from __future__ import annotations

from PySide6.QtCore import QPointF, QRectF, QSize, Qt, Signal
from PySide6.QtGui import QColor, QMouseEvent, QPainter, QPaintEvent
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from markbench.ui.flow import FlowLayout
from markbench.ui.look.marks import LINE_STYLES, pen
from markbench.ui.look.theme import Theme
from markbench.ui.overview.figure import Look
from markbench.ui.parts import button, label
from markbench.ui.portfolio.curves import Curves
from markbench.ui.portfolio.drawing import draw_graph, upper_panel

_NEAR_PX = 11.0  # a point is hit by a hand, not by a pixel


class _Sample(QWidget):
    """A bit of a line with its symbol, for the key."""

    def __init__(self, theme: Theme, what: str) -> None:
        super().__init__()
        self._theme, self._what = theme, what
        self.has_line = True
        self.setFixedSize(QSize(26, 14))

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Draw the line as the graph draws it."""
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        colour = getattr(self._theme.palette, self._what)
        y = self.height() / 2
        painter.setPen(pen(colour, 1.8, LINE_STYLES[self._what]))
        if self.has_line:
            painter.drawLine(QPointF(1, y), QPointF(25, y))
        if self._what == "data":
            painter.setBrush(QColor(colour))
            painter.drawEllipse(QPointF(13, y), 3, 3)
        elif self._what == "ghost":
            painter.setPen(pen(colour, 1.4))
            painter.setBrush(QColor(self._theme.palette.paper))
            painter.drawPolygon(
                [QPointF(13, y - 4), QPointF(17, y), QPointF(13, y + 4), QPointF(9, y)]
            )


class _Plot(QWidget):
    """The graph itself. ``clicked`` carries the number of a reading."""

    clicked = Signal(int)

    def __init__(self, theme: Theme) -> None:
        super().__init__()
        self._theme = theme
        self.curves: Curves | None = None
        self.chosen: int | None = None
        self.setMouseTracking(True)

    def sizeHint(self) -> QSize:
        return QSize(self._theme.px(260), self._theme.px(230))

    def minimumSizeHint(self) -> QSize:
        return QSize(self._theme.px(180), self._theme.px(190))

    def place(self, x: float, y: float) -> QPointF:
        """Where a length in m and a squared period in s² lie in this widget."""
        assert self.curves is not None
        return upper_panel(self._box(), self.curves, Look.of(self._theme)).spot(x, y)

    def reading_at(self, at: QPointF) -> int | None:
        """The reading a hand means by a place; ``None`` where none is near."""
        if self.curves is None:
            return None
        panel = upper_panel(self._box(), self.curves, Look.of(self._theme))
        near: tuple[float, int | None] = (_NEAR_PX, None)
        for number, (x, y) in enumerate(zip(*self.curves.points, strict=True)):
            off = panel.spot(x, y) - at
            far = (off.x() ** 2 + off.y() ** 2) ** 0.5
            if far < near[0]:
                near = (far, number)
        return near[1]

    def _box(self) -> QRectF:
        return QRectF(self.rect()).adjusted(8, 2, -4, 0)

    def paintEvent(self, _event: QPaintEvent) -> None:
        if self.curves is not None:
            painter = QPainter(self)
            painter.setRenderHint(QPainter.RenderHint.Antialiasing)
            draw_graph(painter, self._box(), self.curves, Look.of(self._theme), self.chosen)

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        over = self.reading_at(event.position()) is not None
        self.setCursor(Qt.CursorShape.PointingHandCursor if over else Qt.CursorShape.ArrowCursor)

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        reading = self.reading_at(event.position())
        if reading is not None and event.button() == Qt.MouseButton.LeftButton:
            self.clicked.emit(reading)


class GraphPanel(QWidget):
    """T² against L above, residuals below, on one length axis."""

    reading_clicked = Signal(int)
    save_wanted = Signal()

    def __init__(self, theme: Theme) -> None:
        super().__init__()
        self._theme = theme
        #: Whether it may be saved as a picture.
        self.can_save = True
        self.setAccessibleName(self.tr("Graph of T² against L with residuals"))
        self.plot = _Plot(theme)
        self.plot.clicked.connect(self.reading_clicked)
        self._names = {what: label(kind="small") for what in ("data", "law", "ghost")}
        key = FlowLayout(spacing=8)
        key.setContentsMargins(6, 4, 6, 0)
        self._samples: dict[str, _Sample] = {}
        self._keys = {what: self._key(what) for what in self._names}
        for part in self._keys.values():
            key.addWidget(part)
        self.save = button(self.tr("Save…"), "quiet", self.save_wanted.emit)
        self.save.setAccessibleName(self.tr("Save the graph as a picture"))
        head = QHBoxLayout()
        head.addLayout(key, 1)
        head.addWidget(self.save, 0, Qt.AlignmentFlag.AlignTop)
        self._none = label(self.tr("There are no readings to draw."), "quiet")
        self._none.setContentsMargins(12, 8, 12, 8)
        self._none.hide()
        column = QVBoxLayout(self)
        column.setContentsMargins(1, 1, 1, 1)
        column.setSpacing(0)
        column.addWidget(self._none)
        column.addLayout(head)
        column.addWidget(self.plot, 1)
        theme.changed.connect(self.plot.updateGeometry)

    def _key(self, what: str) -> QWidget:
        part = QWidget()
        row = QHBoxLayout(part)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(5)
        self._samples[what] = _Sample(self._theme, what)
        row.addWidget(self._samples[what])
        row.addWidget(self._names[what])
        return part

    @property
    def curves(self) -> Curves | None:
        """What is drawn now."""
        return self.plot.curves

    @property
    def empty(self) -> bool:
        """Whether there is no reading to draw."""
        return self.plot.curves is None or not self.plot.curves.points[0]

    def show_curves(self, curves: Curves) -> None:
        """Draw what was computed, or say that there is nothing; keeps the chosen reading."""
        self.plot.curves = curves
        self._none.setVisible(self.empty)
        for part in (self.plot, self._keys["data"], self._keys["law"]):
            part.setHidden(self.empty)
        self.save.setVisible(self.can_save and not self.empty)
        self._names["data"].setText(curves.line_words)
        self._samples["data"].has_line = bool(curves.fitted[0])
        self._names["law"].setText(curves.law_words)
        self._names["ghost"].setText(curves.ghost_words)
        self._keys["ghost"].setVisible(bool(curves.ghost_words))
        self.plot.update()

    def choose(self, reading: int | None) -> None:
        """Ring one reading."""
        if reading != self.plot.chosen:
            self.plot.chosen = reading
            self.plot.update()
