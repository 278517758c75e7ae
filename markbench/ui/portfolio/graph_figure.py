"""The learner's graph as a figure of its own, to be saved for a slide, a page or the learner."""

from __future__ import annotations

from dataclasses import dataclass

from PySide6.QtCore import QCoreApplication, QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QPainter, QPolygonF

from markbench.ui.look.marks import LINE_STYLES, pen
from markbench.ui.overview.figure import Look, Spot, say_empty, ticks, words, x_axis, y_axis
from markbench.ui.portfolio.curves import Curves, Points


@dataclass(frozen=True, slots=True)
class GraphFigure:
    """T² against L with the lines that are shown, and the residuals below.

    ``name`` is how the learner is called now: by number while names are hidden.
    """

    name: str
    curves: Curves
    key: str = "graph"

    @property
    def title(self) -> str:
        """What it shows, and whose it is."""
        return _tr("T² against L: {name}").format(name=self.name)

    @property
    def caption(self) -> str:
        """How many readings, and what each line is."""
        parts = [_tr("{n} readings").format(n=len(self.curves.points[0]))]
        parts.append(_tr("solid: {words}").format(words=self.curves.line_words))
        parts.append(_tr("dashed: {words}").format(words=self.curves.law_words))
        if self.curves.ghost_words:
            parts.append(_tr("dotted, hollow: {words}").format(words=self.curves.ghost_words))
        return "; ".join(parts) + ". " + _tr("Below: residuals from the solid line.")

    @property
    def empty(self) -> str:
        """Nothing to draw without readings."""
        return "" if self.curves.points[0] else _tr("No readings were found.")

    def height(self, look: Look) -> float:
        """Room for both panels."""
        return 460 * look.scale

    def paint(self, painter: QPainter, box: QRectF, look: Look) -> list[Spot]:
        """Both panels on one length axis."""
        if self.empty:
            return say_empty(painter, box, self.empty, look)
        colours, curves, line = look.palette, self.curves, look.line()
        left = box.left() + 66 * look.scale
        high = box.height() - 6 * line
        main = QRectF(left, box.top() + line + 4, box.right() - left - 8, high * 0.72)
        rest = QRectF(left, main.bottom() + 2 * line, main.width(), high * 0.28)
        reach = 1.15 * curves.largest_residual
        painter.setFont(look.font())
        words(painter, QRectF(box.left(), box.top(), 200, line), "T² / s²", colours.pencil)
        above = QRectF(box.left(), rest.top() - 1.4 * line, 240, line)
        words(painter, above, _tr("residual / s²"), colours.pencil)
        y_axis(painter, main, 0.0, curves.largest_s2, look)
        y_axis(painter, rest, -reach, reach, look)
        x_axis(painter, rest, 0.0, curves.longest_m, "L / m", look)
        upper = _Panel(painter, main, curves.longest_m, 0.0, curves.largest_s2)
        for length in ticks(0.0, curves.longest_m):
            upright = ([length, length], [0.0, curves.largest_s2])
            upper.line(upright, colours.rule, Qt.PenStyle.SolidLine, 1.0)
        upper.line(curves.law, colours.law, LINE_STYLES["law"])
        upper.line(curves.fitted, colours.data, LINE_STYLES["data"])
        upper.line(curves.ghost_line, colours.ghost, LINE_STYLES["ghost"])
        upper.diamonds(curves.ghost, colours.ghost, colours.paper)
        upper.dots(curves.points, colours.data)
        lower = _Panel(painter, rest, curves.longest_m, -reach, reach)
        lower.line(([0.0, curves.longest_m], [0.0, 0.0]), colours.edge, Qt.PenStyle.SolidLine, 1.0)
        for i in range(0, len(curves.stems[0]), 2):
            stem = (curves.stems[0][i : i + 2], curves.stems[1][i : i + 2])
            lower.line(stem, colours.data, Qt.PenStyle.SolidLine)
        lower.dots(curves.residuals, colours.data)
        return []


@dataclass(frozen=True, slots=True)
class _Panel:
    """A box with its two ranges, the lower end of the lengths being nought."""

    painter: QPainter
    area: QRectF
    longest: float
    low: float
    high: float

    def spot(self, x: float, y: float) -> QPointF:
        part = (y - self.low) / (self.high - self.low)
        return QPointF(
            self.area.left() + self.area.width() * x / self.longest,
            self.area.bottom() - self.area.height() * part,
        )

    def line(self, points: Points, colour: str, style: Qt.PenStyle, width: float = 1.8) -> None:
        """A line through points; what lies outside the box is cut off."""
        run = [self.spot(x, y) for x, y in zip(*points, strict=True)]
        if len(run) == 2 and len(set(points[0])) == 2:
            run = self._within(points)
        if len(run) > 1:
            self.painter.setPen(pen(colour, width, style))
            self.painter.drawPolyline(run)

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

    def dots(self, points: Points, colour: str) -> None:
        """Filled circles."""
        self.painter.setPen(pen(colour, 1.0))
        self.painter.setBrush(QColor(colour))
        for x, y in zip(*points, strict=True):
            self.painter.drawEllipse(self.spot(x, y), 4.0, 4.0)
        self.painter.setBrush(Qt.BrushStyle.NoBrush)

    def diamonds(self, points: Points, colour: str, ground: str) -> None:
        """Hollow diamonds."""
        self.painter.setPen(pen(colour, 1.6))
        self.painter.setBrush(QColor(ground))
        for x, y in zip(*points, strict=True):
            at = self.spot(x, y)
            self.painter.drawPolygon(QPolygonF([
                at + QPointF(0, -6), at + QPointF(6, 0), at + QPointF(0, 6), at + QPointF(-6, 0),
            ]))  # fmt: skip
        self.painter.setBrush(Qt.BrushStyle.NoBrush)


def _tr(text: str) -> str:
    return QCoreApplication.translate("GraphFigure", text)
