"""The plot of difference against mean: does the second marker drift with the mark?"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import TYPE_CHECKING

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QPainter, QPolygonF

from markbench.checks.wording import true_minus
from markbench.ui.look.marks import pen
from markbench.ui.overview.figure import (
    Look,
    Spot,
    hatch,
    learners_told,
    say_empty,
    tr,
    words,
    x_axis,
    y_axis,
)

if TYPE_CHECKING:
    from markbench.moderation.differences import Limits


@dataclass(frozen=True, slots=True)
class DifferenceFigure:
    """Second − first against the mean of both; ``learners`` in the order of the points.

    ``limits`` is ``None`` while they are being worked out.
    """

    limits: Limits | None
    learners: tuple[str, ...]
    names: Mapping[str, str] = field(default_factory=dict)
    key: str = "difference-against-mean"

    @property
    def title(self) -> str:
        """What it shows."""
        return tr("Difference against mean")

    @property
    def empty(self) -> str:
        """Why there is nothing to show."""
        if self.limits is None:
            return tr("The figures are being worked out…")
        return "" if self.limits.points else tr("No learner has both totals yet.")

    @property
    def caption(self) -> str:
        """n, shapes and lines."""
        if self.limits is None:
            return ""
        parts = [learners_told(len(self.learners)),
                 tr("▲ second higher, ▼ second lower, ● the same")]  # fmt: skip
        if len(set(self.limits.points)) < len(self.limits.points):
            parts.append(tr("larger where several learners stand at one point"))
        if self.limits.mean is not None:
            parts.append(tr("solid: mean {m:+.2f} marks").format(m=self.limits.mean))
        if self.limits.lower is not None and self.limits.upper is not None:
            parts.append(
                tr("dashed: limits of agreement {low:+.2f} and {high:+.2f}, hatched: their 95 % "
                   "intervals").format(low=self.limits.lower, high=self.limits.upper)
            )  # fmt: skip
        return true_minus("; ".join(parts) + ".")

    def height(self, look: Look) -> float:
        """Enough for the lines and their intervals."""
        return 240 * look.scale

    def paint(self, painter: QPainter, box: QRectF, look: Look) -> list[Spot]:
        """Axes, lines, and a shape for each learner."""
        if self.limits is None or self.empty:
            return say_empty(painter, box, self.empty, look)
        limits, colours, line = self.limits, look.palette, look.line()
        area = box.adjusted(64 * look.scale, line + 4, -12, -2 * line - 8)
        ends = [y for _, y in limits.points] + [0.0]
        for pair in (limits.lower95, limits.upper95, limits.mean95):
            ends += pair or ()
        low, high = min(ends) - 0.5, max(ends) + 0.5
        left, right = min(x for x, _ in limits.points) - 1, max(x for x, _ in limits.points) + 1
        x_axis(painter, area, left, right, tr("mean of both totals / marks"), look)
        y_axis(painter, area, low, high, look)
        head = QRectF(box.left(), box.top(), box.width(), line)
        words(painter, head, tr("second − first / marks"), colours.pencil)

        def y_of(value: float) -> float:
            return area.bottom() - area.height() * (value - low) / (high - low)

        for pair in (limits.lower95, limits.upper95):
            if pair is not None:
                top, bottom = y_of(pair[1]), y_of(pair[0])
                hatch(painter, QRectF(area.left(), top, area.width(), bottom - top), colours.rule)
        styles = Qt.PenStyle
        for value, colour, style in (
            (0.0, colours.edge, styles.DotLine),
            (limits.mean, colours.data, styles.SolidLine),
            (limits.lower, colours.law, styles.DashLine),
            (limits.upper, colours.law, styles.DashLine),
        ):
            if value is not None:
                painter.setPen(pen(colour, 1.6, style))
                painter.drawLine(
                    QPointF(area.left(), y_of(value)), QPointF(area.right(), y_of(value))
                )
        spots, held = [], dict[tuple[float, float], list[str]]()
        for learner, point in zip(self.learners, limits.points, strict=True):
            held.setdefault(point, []).append(learner)
        painter.setPen(pen(colours.paper, 0.8))
        painter.setBrush(QColor(colours.data))
        for (x, y), learners in held.items():
            at = QPointF(area.left() + area.width() * (x - left) / (right - left), y_of(y))
            size = (4.5 + min(len(learners) - 1, 4)) * look.scale
            _shape(painter, at, y, size)
            reach = size + 4
            place = QRectF(at.x() - reach, at.y() - reach, 2 * reach, 2 * reach)
            spots.append(Spot(place, self._words(x, y, learners), tuple(learners)))
        painter.setBrush(Qt.BrushStyle.NoBrush)
        return spots

    def _words(self, mean: float, difference: float, learners: list[str]) -> str:
        who = ", ".join(self.names.get(one, one) for one in learners)
        told = tr("{who}: second − first {d:+g} marks, mean {m:g}")
        return true_minus(told.format(who=who, d=difference, m=mean))


def _shape(painter: QPainter, at: QPointF, difference: float, size: float) -> None:
    """Up, down or round, so that no colour is needed."""
    if difference == 0:
        painter.drawEllipse(at, size, size)
        return
    up = -size if difference > 0 else size
    corners = [QPointF(0, up), QPointF(size, -up * 0.8), QPointF(-size, -up * 0.8)]
    painter.drawPolygon(QPolygonF([at + corner for corner in corners]))
