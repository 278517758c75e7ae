"""The learner's graph: readings, fitted line, local law, the ghost of an explanation, residuals.

What is drawn is decided in :mod:`markbench.ui.portfolio.curves`; this only draws it.
"""

from __future__ import annotations

import pyqtgraph as pg
from PySide6.QtCore import QPointF, QSize, Qt, Signal
from PySide6.QtGui import QColor, QPainter, QPaintEvent
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from markbench.ui.flow import FlowLayout
from markbench.ui.look.marks import LINE_STYLES, SYMBOLS, pen
from markbench.ui.look.theme import Theme
from markbench.ui.parts import button, label
from markbench.ui.portfolio.curves import Curves


class _Sample(QWidget):
    """A bit of a line with its symbol, for the key."""

    def __init__(self, theme: Theme, what: str) -> None:
        super().__init__()
        self._theme, self._what = theme, what
        self.setFixedSize(QSize(26, 14))

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Draw the line as the graph draws it."""
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        colour = getattr(self._theme.palette, self._what)
        y = self.height() / 2
        painter.setPen(pen(colour, 1.8, LINE_STYLES[self._what]))
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


class _Area(pg.GraphicsLayoutWidget):  # type: ignore[misc]
    """Takes the room there is; pyqtgraph asks for more than a small screen has."""

    def sizeHint(self) -> QSize:
        return QSize(260, 230)

    def minimumSizeHint(self) -> QSize:
        return QSize(180, 180)


class _Axis(pg.AxisItem):  # type: ignore[misc]
    """An axis that never changes its unit: lengths stay in metres."""

    def updateAutoSIPrefix(self) -> None:
        self.autoSIPrefixScale = 1.0
        self.picture = None  # a change of range comes by this way alone: draw afresh
        self.update()


def _axes() -> dict[str, pg.AxisItem]:
    return {side: _Axis(side) for side in ("left", "bottom")}


class GraphPanel(QWidget):
    """T² against L above, residuals below, on one length axis."""

    reading_clicked = Signal(int)
    save_wanted = Signal()

    def __init__(self, theme: Theme) -> None:
        super().__init__()
        self._theme = theme
        self._curves: Curves | None = None
        self._chosen: int | None = None
        self.setAccessibleName(self.tr("Graph of T² against L with residuals"))
        self._area = _Area()
        self._area.ci.setContentsMargins(0, 4, 8, 0)
        self._area.ci.setSpacing(2)
        self._area.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self._main: pg.PlotItem = self._area.addPlot(row=0, col=0, axisItems=_axes())
        self._rest: pg.PlotItem = self._area.addPlot(row=1, col=0, axisItems=_axes())
        self._area.ci.layout.setRowStretchFactor(0, 3)
        self._area.ci.layout.setRowStretchFactor(1, 1)
        self._rest.setXLink(self._main)
        for plot in (self._main, self._rest):
            plot.setMenuEnabled(False)
            plot.hideButtons()
            plot.setMouseEnabled(x=False, y=False)
        self._make_items()
        self._names = {what: label(kind="small") for what in ("data", "law", "ghost")}
        key = FlowLayout(spacing=8)
        key.setContentsMargins(6, 4, 6, 0)
        self._keys = {what: self._key(what) for what in self._names}
        for part in self._keys.values():
            key.addWidget(part)
        self.save = button(self.tr("Save…"), "quiet", self.save_wanted.emit)
        self.save.setAccessibleName(self.tr("Save the graph as a picture"))
        head = QHBoxLayout()
        head.addLayout(key, 1)
        head.addWidget(self.save, 0, Qt.AlignmentFlag.AlignTop)
        column = QVBoxLayout(self)
        column.setContentsMargins(1, 1, 1, 1)
        column.setSpacing(0)
        column.addLayout(head)
        column.addWidget(self._area, 1)
        theme.changed.connect(self._restyle)
        self._restyle()

    def _key(self, what: str) -> QWidget:
        part = QWidget()
        row = QHBoxLayout(part)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(5)
        row.addWidget(_Sample(self._theme, what))
        row.addWidget(self._names[what])
        return part

    def _make_items(self) -> None:
        self._law = self._main.plot()
        self._line = self._main.plot()
        self._ghost_line = self._main.plot()
        self._ghost = pg.ScatterPlotItem()
        self._asked = pg.ScatterPlotItem()
        self._points = pg.ScatterPlotItem(hoverable=True, tip=None)
        self._points.sigClicked.connect(self._clicked)
        for item in (self._ghost, self._asked, self._points):
            self._main.addItem(item)
        self._zero = pg.InfiniteLine(0, angle=0)
        self._stems = self._rest.plot()
        self._residuals = pg.ScatterPlotItem()
        for item in (self._zero, self._residuals):
            self._rest.addItem(item)

    def show_curves(self, curves: Curves) -> None:
        """Draw what was computed; keeps the chosen reading."""
        self._curves = curves
        self._draw()

    def choose(self, reading: int | None) -> None:
        """Ring one reading."""
        if reading != self._chosen:
            self._chosen = reading
            self._draw_points()

    def _draw(self) -> None:
        curves = self._curves
        if curves is None:
            return
        self._line.setData(*curves.fitted)
        self._law.setData(*curves.law)
        self._ghost_line.setData(*curves.ghost_line)
        self._ghost.setData(*curves.ghost)
        self._residuals.setData(*curves.residuals)
        self._stems.setData(*curves.stems, connect="pairs")
        self._names["data"].setText(curves.line_words)
        self._names["law"].setText(curves.law_words)
        self._names["ghost"].setText(curves.ghost_words)
        self._keys["ghost"].setVisible(bool(curves.ghost_words))
        self._draw_points()
        self._main.setXRange(0, curves.longest_m, padding=0)
        self._main.setYRange(0, curves.largest_s2, padding=0)
        self._rest.setYRange(-curves.largest_residual, curves.largest_residual, padding=0.15)

    def _draw_points(self) -> None:
        if self._curves is None:
            return
        palette = self._theme.palette
        lengths, squares = self._curves.points
        self._points.setData(lengths, squares, data=list(range(len(lengths))))
        asked = [i for i in self._curves.questioned if i < len(lengths)]
        rings = asked if self._chosen is None else [*asked, self._chosen]
        rings = [i for i in dict.fromkeys(rings) if 0 <= i < len(lengths)]
        self._asked.setData(
            [lengths[i] for i in rings],
            [squares[i] for i in rings],
            pen=[
                pg.mkPen(palette.deed if i == self._chosen else palette.look, width=2)
                for i in rings
            ],
        )

    def _clicked(self, _item: object, spots: list[pg.SpotItem]) -> None:
        if spots:
            self.reading_clicked.emit(int(spots[0].data()))

    def _restyle(self) -> None:
        palette, theme = self._theme.palette, self._theme
        self._area.setBackground(palette.paper)
        for plot in (self._main, self._rest):
            plot.showGrid(x=True, y=True, alpha=0.13)
            for side in ("left", "bottom"):
                axis = plot.getAxis(side)
                axis.setPen(pg.mkPen(palette.edge))
                axis.setTextPen(pg.mkPen(palette.pencil))
                axis.setTickFont(theme.font("small"))
                axis.setStyle(maxTickLevel=1)
                axis.label.setFont(theme.font("small"))
                plot.getAxis("left").setWidth(theme.px(58))
        self._main.getAxis("bottom").setStyle(showValues=False)
        style = {"color": palette.pencil, "font-size": f"{theme.px(12)}px"}
        self._main.setLabel("left", "T² / s²", **style)
        self._rest.setLabel("left", self.tr("residual / s²"), **style)
        self._rest.setLabel("bottom", "L / m", **style)
        lines = ((self._line, "data", 1.8), (self._law, "law", 1.8), (self._ghost_line, "ghost", 2))
        for item, what, width in lines:
            item.setPen(pg.mkPen(getattr(palette, what), width=width, style=LINE_STYLES[what]))
        self._points.setBrush(pg.mkBrush(palette.data))
        self._points.setPen(pg.mkPen(palette.paper, width=1))
        self._points.setSize(9)
        self._points.setSymbol(SYMBOLS["data"])
        self._ghost.setSymbol(SYMBOLS["ghost"])
        self._ghost.setSize(11)
        self._ghost.setBrush(pg.mkBrush(palette.paper))
        self._ghost.setPen(pg.mkPen(palette.ghost, width=1.6))
        self._asked.setSymbol(SYMBOLS["questioned"])
        self._asked.setSize(17)
        self._asked.setBrush(None)
        self._zero.setPen(pg.mkPen(palette.edge))
        self._stems.setPen(pg.mkPen(palette.data, width=1.6))
        self._residuals.setBrush(pg.mkBrush(palette.data))
        self._residuals.setPen(pg.mkPen(palette.paper))
        self._residuals.setSize(7)
        self._draw()
