"""What a figure is: plain painting into a box, the same on the screen and in a saved file.

Everything is drawn as shapes and lines: hatching and wedges are painted, not left to
brushes and clips, because not every writer of SVG keeps those.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Protocol

from PySide6.QtCore import QCoreApplication, QLineF, QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QFont, QFontMetricsF, QPainter, QPolygonF

from markbench.ui.look.marks import pen
from markbench.ui.look.said import figures
from markbench.ui.look.theme import Theme
from markbench.ui.look.tokens import LIGHT, PLAIN, TYPE, Palette


@dataclass(frozen=True, slots=True)
class Look:
    """Colours and text size a figure is painted with."""

    palette: Palette = LIGHT
    scale: float = 1.0

    @classmethod
    def of(cls, theme: Theme) -> Look:
        """As the window looks now."""
        return cls(theme.palette, theme.scale)

    def font(self, size: str = "small", *, bold: bool = False) -> QFont:
        """A font of the type scale."""
        made = QFont()
        made.setFamilies(list(PLAIN))
        made.setPixelSize(round(TYPE[size] * self.scale))
        if bold:
            made.setWeight(QFont.Weight.DemiBold)
        return made

    def metrics(self, size: str = "small") -> QFontMetricsF:
        """Measures of that font."""
        return QFontMetricsF(self.font(size))

    def line(self, size: str = "small") -> float:
        """Height of a line of text."""
        return self.metrics(size).height()


@dataclass(frozen=True, slots=True)
class Spot:
    """A place in a figure that can be pointed at: its words and the learners behind it."""

    box: QRectF
    words: str
    learners: tuple[str, ...]


class Figure(Protocol):
    """``key`` names the file it is saved in; ``caption`` states n and what is shown."""

    @property
    def key(self) -> str:
        """Name of the file, without its ending."""

    @property
    def title(self) -> str:
        """What it shows."""

    @property
    def caption(self) -> str:
        """n, and how to read it."""

    @property
    def empty(self) -> str:
        """Why there is nothing to show; empty where there is something."""

    def height(self, look: Look) -> float:
        """The height below which it cannot be read."""

    def paint(self, painter: QPainter, box: QRectF, look: Look) -> list[Spot]:
        """Paint into ``box``; returns what can be pointed at."""


def ticks(low: float, high: float, about: int = 5) -> list[float]:
    """Round numbers between ``low`` and ``high``, one to ``about`` + 2 of them."""
    if not (math.isfinite(low) and math.isfinite(high)) or high <= low:
        return []
    rough = (high - low) / max(about, 1)
    power = 10.0 ** math.floor(math.log10(rough))
    step = next(m * power for m in (1, 2, 5, 10) if m * power >= rough * 0.999)
    first = math.ceil(low / step - 1e-9)
    last = math.floor(high / step + 1e-9)
    return [round(i * step, 10) for i in range(first, last + 1)]


def words(
    painter: QPainter,
    box: QRectF,
    text: str,
    colour: str,
    align: Qt.AlignmentFlag = Qt.AlignmentFlag.AlignLeft,
) -> None:
    """One line of text, elided to its box, in the painter's font."""
    metrics = QFontMetricsF(painter.font())
    shown = metrics.elidedText(text, Qt.TextElideMode.ElideRight, box.width())
    painter.setPen(QColor(colour))
    painter.drawText(box, align | Qt.AlignmentFlag.AlignVCenter, shown)


def learners_told(n: int) -> str:
    """Of how many learners a figure is."""
    return tr("n = 1 learner") if n == 1 else tr("n = {n} learners").format(n=n)


def hatch(painter: QPainter, box: QRectF, colour: str, step: float = 5.0) -> None:
    """Slanting lines that fill a box, and its outline."""
    painter.setPen(pen(colour, 1.0))
    wide, high = box.width(), box.height()
    lines = []
    c = step
    while c < wide + high:
        start = QPointF(box.left() + max(0.0, c - high), box.top() + min(c, high))
        end = QPointF(box.left() + min(c, wide), box.top() + max(0.0, c - wide))
        lines.append(QLineF(start, end))
        c += step
    painter.drawLines(lines)
    painter.setBrush(Qt.BrushStyle.NoBrush)
    painter.drawRect(box)


def solid(painter: QPainter, box: QRectF, colour: str) -> None:
    """A filled box."""
    painter.setPen(pen(colour, 1.0))
    painter.setBrush(QColor(colour))
    painter.drawRect(box)
    painter.setBrush(Qt.BrushStyle.NoBrush)


def wedge(painter: QPainter, tip: QPointF, towards: int, colour: str) -> None:
    """A wedge at an edge: what lies beyond it to the left (−1) or right (+1)."""
    back = tip.x() - towards * 7
    painter.setPen(pen(colour, 1.0))
    painter.setBrush(QColor(colour))
    painter.drawPolygon(QPolygonF([tip, QPointF(back, tip.y() - 4), QPointF(back, tip.y() + 4)]))
    painter.setBrush(Qt.BrushStyle.NoBrush)


def x_ticks(area: QRectF, look: Look) -> int:
    """About how many numbers have room along the bottom of ``area``."""
    return max(int(area.width() / (70 * look.scale)), 2)


def x_axis(
    painter: QPainter, area: QRectF, low: float, high: float, title: str, look: Look
) -> None:
    """Axis, ticks and faint rules for a range along the bottom of ``area``."""
    colours, line = look.palette, look.line()
    painter.setFont(look.font())
    for value in ticks(low, high, x_ticks(area, look)):
        x = area.left() + area.width() * (value - low) / (high - low)
        painter.setPen(pen(colours.rule, 1.0))
        painter.drawLine(QPointF(x, area.top()), QPointF(x, area.bottom() + 4))
        place = QRectF(x - 40 * look.scale, area.bottom() + 5, 80 * look.scale, line)
        words(painter, place, _number(value), colours.pencil, Qt.AlignmentFlag.AlignHCenter)
    painter.setPen(pen(colours.edge, 1.0))
    painter.drawLine(area.bottomLeft(), area.bottomRight())
    foot = QRectF(area.left(), area.bottom() + 5 + line, area.width(), line)
    over = painter.fontMetrics().horizontalAdvance(title) + 4 - foot.width()
    if over > 0:  # into the room before the axis, where only its numbers stand
        foot.setLeft(foot.left() - min(over, 44 * look.scale))
    words(painter, foot, title, colours.pencil, Qt.AlignmentFlag.AlignHCenter)


def y_axis(
    painter: QPainter, area: QRectF, low: float, high: float, look: Look, close: float = 34
) -> None:
    """Axis, ticks and faint rules for a range up the left of ``area``, ``close`` px apart."""
    colours, line = look.palette, look.line()
    painter.setFont(look.font())
    for value in ticks(low, high, max(int(area.height() / (close * look.scale)), 2)):
        y = area.bottom() - area.height() * (value - low) / (high - low)
        painter.setPen(pen(colours.rule, 1.0))
        painter.drawLine(QPointF(area.left() - 4, y), QPointF(area.right(), y))
        place = QRectF(area.left() - 56 * look.scale, y - line / 2, 50 * look.scale, line)
        words(painter, place, _number(value), colours.pencil, Qt.AlignmentFlag.AlignRight)
    painter.setPen(pen(colours.edge, 1.0))
    painter.drawLine(area.bottomLeft(), area.topLeft())


def _number(value: float) -> str:
    return figures(f"{value:g}".replace("-", "−"))


def say_empty(painter: QPainter, box: QRectF, text: str, look: Look) -> list[Spot]:
    """What a figure shows where there is nothing to show yet."""
    painter.setFont(look.font("body"))
    painter.setPen(QColor(look.palette.pencil))
    inner = box.adjusted(12, 0, -12, 0)
    painter.drawText(inner, Qt.AlignmentFlag.AlignCenter | Qt.TextFlag.TextWordWrap, text)
    return []


def tr(text: str) -> str:
    """Words of the figures, in the window's language."""
    return QCoreApplication.translate("Figures", text)
