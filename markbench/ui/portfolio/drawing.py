"""Draws the learner's graph: readings, lines and ghost above, residuals below.

Plain painting into a box, on the screen and in a saved file alike. Rejected: a plotting
library's scene of items, which took longer to show a learner than all else on the sheet
together, for a graph of five points that is neither zoomed nor dragged.
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass

from PySide6.QtCore import QCoreApplication, QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QPainter, QPolygonF

from markbench.ui.look.marks import LINE_STYLES, pen
from markbench.ui.overview.figure import Look, ticks, words, x_axis, x_ticks, y_axis
from markbench.ui.portfolio.curves import Curves, Points

_HEADROOM = 1.15  # residuals do not touch the edge
_UPPER = 0.72  # of the height both panels share


@dataclass(frozen=True, slots=True)
class Panel:
    """A box with its two ranges, the lower end of the lengths being nought."""

    area: QRectF
    longest: float
    low: float
    high: float

    def spot(self, x: float, y: float) -> QPointF:
        """Where a point of the graph lies in the box."""
        part = (y - self.low) / (self.high - self.low)
        return QPointF(
            self.area.left() + self.area.width() * x / self.longest,
            self.area.bottom() - self.area.height() * part,
        )

    def spots(self, points: Points) -> Iterator[QPointF]:
        """The same for all that can be drawn."""
        for x, y in zip(*points, strict=True):
            if math.isfinite(x) and math.isfinite(y):
                yield self.spot(x, y)

    def line(
        self,
        painter: QPainter,
        points: Points,
        colour: str,
        style: Qt.PenStyle = Qt.PenStyle.SolidLine,
        width: float = 1.8,
    ) -> None:
        """A line through points; what lies outside the box is cut off."""
        run = list(self.spots(points))
        if len(run) == 2 and len(set(points[0])) == 2:
            run = self._within(points)
        if len(run) > 1:
            painter.setPen(pen(colour, width, style))
            painter.drawPolyline(run)

    def _within(self, points: Points) -> list[QPointF]:
        """A straight line between the heights of the box: not every SVG keeps a clip."""
        (x0, x1), (y0, y1) = points
        slope = (y1 - y0) / (x1 - x0)
        ends = [x0, x1]
        if slope:
            at = sorted(x0 + (edge - y0) / slope for edge in (self.low, self.high))
            ends = [max(x0, at[0]), min(x1, at[1])]
        if ends[0] >= ends[1]:
            return []
        return [self.spot(x, y0 + slope * (x - x0)) for x in ends]

    def dots(self, painter: QPainter, points: Points, colour: str, edge: str, size: float) -> None:
        """Filled circles, parted from one another by their edge."""
        painter.setPen(pen(edge, 1.0))
        painter.setBrush(QColor(colour))
        for spot in self.spots(points):
            painter.drawEllipse(spot, size, size)
        painter.setBrush(Qt.BrushStyle.NoBrush)

    def diamonds(self, painter: QPainter, points: Points, colour: str, ground: str) -> None:
        """Hollow diamonds."""
        painter.setPen(pen(colour, 1.6))
        painter.setBrush(QColor(ground))
        for at in self.spots(points):
            painter.drawPolygon(QPolygonF([
                at + QPointF(0, -6), at + QPointF(6, 0), at + QPointF(0, 6), at + QPointF(-6, 0),
            ]))  # fmt: skip
        painter.setBrush(Qt.BrushStyle.NoBrush)

    def ring(self, painter: QPainter, at: QPointF, colour: str) -> None:
        """A square around a point."""
        painter.setPen(pen(colour, 2.0))
        painter.setBrush(Qt.BrushStyle.NoBrush)
        painter.drawRect(QRectF(at.x() - 8, at.y() - 8, 16, 16))


def upper_panel(box: QRectF, curves: Curves, look: Look) -> Panel:
    """Where T² is drawn against L within ``box``."""
    line = look.line()
    left = box.left() + 66 * look.scale
    room = max(box.height() - 6 * line, 4.0)
    area = QRectF(left, box.top() + line + 4, max(box.right() - left - 8, 4.0), room * _UPPER)
    return Panel(area, curves.longest_m, 0.0, curves.largest_s2)


def lower_panel(box: QRectF, curves: Curves, look: Look) -> Panel:
    """Where the residuals are drawn, below the other and on its lengths."""
    upper, line = upper_panel(box, curves, look).area, look.line()
    high = upper.height() / _UPPER * (1 - _UPPER)
    area = QRectF(upper.left(), upper.bottom() + 2 * line, upper.width(), high)
    reach = _HEADROOM * curves.largest_residual
    return Panel(area, curves.longest_m, -reach, reach)


def draw_graph(
    painter: QPainter, box: QRectF, curves: Curves, look: Look, chosen: int | None = None
) -> None:
    """Both panels on one length axis; questioned readings and the ``chosen`` one are ringed."""
    colours, line = look.palette, look.line()
    upper, lower = upper_panel(box, curves, look), lower_panel(box, curves, look)
    painter.setFont(look.font())
    words(painter, QRectF(box.left(), box.top(), 200, line), "T² / s²", colours.pencil)
    above = QRectF(box.left(), lower.area.top() - 1.4 * line, 240, line)
    words(painter, above, _tr("residual / s²"), colours.pencil)
    y_axis(painter, upper.area, upper.low, upper.high, look)
    y_axis(painter, lower.area, lower.low, lower.high, look, close=18)
    x_axis(painter, lower.area, 0.0, curves.longest_m, "L / m", look)
    for length in ticks(0.0, curves.longest_m, x_ticks(lower.area, look)):
        upright = ([length, length], [0.0, curves.largest_s2])
        upper.line(painter, upright, colours.rule, width=1.0)
    upper.line(painter, curves.law, colours.law, LINE_STYLES["law"])
    upper.line(painter, curves.fitted, colours.data, LINE_STYLES["data"])
    upper.line(painter, curves.ghost_line, colours.ghost, LINE_STYLES["ghost"])
    upper.diamonds(painter, curves.ghost, colours.ghost, colours.paper)
    upper.dots(painter, curves.points, colours.data, colours.paper, 4.5)
    for reading in dict.fromkeys((*curves.questioned, chosen)):
        if reading is not None and 0 <= reading < len(curves.points[0]):
            x, y = curves.points[0][reading], curves.points[1][reading]
            if math.isfinite(x) and math.isfinite(y):
                ink = colours.deed if reading == chosen else colours.look
                upper.ring(painter, upper.spot(x, y), ink)
    lower.line(painter, ([0.0, curves.longest_m], [0.0, 0.0]), colours.edge, width=1.0)
    for i in range(0, len(curves.stems[0]), 2):
        stem = (curves.stems[0][i : i + 2], curves.stems[1][i : i + 2])
        lower.line(painter, stem, colours.data)
    lower.dots(painter, curves.residuals, colours.data, colours.paper, 3.5)


def _tr(text: str) -> str:
    return QCoreApplication.translate("GraphFigure", text)
