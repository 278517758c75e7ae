"""Figure: every learner's g with its interval, against local g."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from statistics import median

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QPainter

from markbench.physics.reporting import with_uncertainty
from markbench.session.overview import OneG, SpreadOfG
from markbench.ui.look.marks import pen
from markbench.ui.look.said import figures, said
from markbench.ui.look.tokens import Palette
from markbench.ui.overview.figure import (
    Look,
    Spot,
    learners_told,
    say_empty,
    tr,
    wedge,
    words,
    x_axis,
)

_WIDEST = 3.0  # m/s² on either side of local g; what lies beyond is shown as a wedge
_Z95 = 1.959964  # standard normal, 97.5 %


@dataclass(frozen=True, slots=True)
class _Scale:
    """Where a g lies across the area; what lies beyond stands at its edge."""

    area: QRectF
    low: float
    high: float

    def x(self, g: float) -> float:
        held = min(max(g, self.low), self.high)
        return self.area.left() + self.area.width() * (held - self.low) / (self.high - self.low)


@dataclass(frozen=True, slots=True)
class SpreadFigure:
    """A row for each learner, smallest g at the bottom; ``names`` by learner id."""

    spread: SpreadOfG
    names: Mapping[str, str] = field(default_factory=dict)
    key: str = "spread-of-g"

    @property
    def title(self) -> str:
        """What it shows."""
        return tr("Spread of g")

    @property
    def empty(self) -> str:
        """Why there is nothing to show."""
        return "" if self.spread.estimates else tr("No readings yet that give a g.")

    @property
    def caption(self) -> str:
        """n, and what is shown."""
        spread = self.spread
        parts = [tr("{n_learners}, best estimate of g with its 95 % interval").format(
            n_learners=learners_told(len(spread.estimates)))]  # fmt: skip
        if spread.local is not None and spread.estimates:
            local = with_uncertainty(spread.local.g, spread.local.u_g, "m/s²")
            parts.append(tr("dashed: local g = {g}").format(g=local))
            hold = tr("1 interval holds it (○ where not)") if spread.holding == 1 else tr(
                "{n} intervals hold it (○ where not)")  # fmt: skip
            parts.append(hold.format(n=spread.holding))
            parts.append(tr("median {g:.2f} m/s²").format(g=spread.middle))
            low, high = self.limits
            beyond = sum(not low <= one.g <= high for one in spread.estimates)
            if beyond:
                parts.append(tr("{n} beyond the axis (wedges)").format(n=beyond))
        if spread.without:
            parts.append(tr("{n} without readings that give one").format(n=len(spread.without)))
        return figures("; ".join(parts) + ".")

    @property
    def limits(self) -> tuple[float, float]:
        """Ends of the axis: wide enough for nine in ten, and no wider than ±3 m/s²."""
        local = self.spread.local.g if self.spread.local is not None else self.spread.middle
        away = sorted(abs(one.g - local) for one in self.spread.estimates)
        halves = [(one.high95 - one.low95) / 2 for one in self.spread.estimates]
        most = away[int(0.9 * (len(away) - 1))] if away else 1.0
        reach = min(max(1.15 * (most + (median(halves) if halves else 0.0)), 0.5), _WIDEST)
        return local - reach, local + reach

    def height(self, look: Look) -> float:
        """Enough to tell thirty rows apart."""
        return 190 * look.scale

    def paint(self, painter: QPainter, box: QRectF, look: Look) -> list[Spot]:
        """Rows, local g, axis."""
        if self.empty:
            return say_empty(painter, box, self.empty, look)
        colours, line = look.palette, look.line()
        area = box.adjusted(10, line + 2, -10, -2 * line - 8)
        scale = _Scale(area, *self.limits)
        x_axis(painter, area, scale.low, scale.high, "g / (m/s²)", look)
        local = self.spread.local
        if local is not None:
            x = scale.x(local.g)
            painter.setPen(pen(colours.law, 1.8, Qt.PenStyle.DashLine))
            painter.drawLine(QPointF(x, area.top() - 2), QPointF(x, area.bottom()))
            painter.setFont(look.font())
            place = QRectF(x - 90 * look.scale, box.top(), 180 * look.scale, line)
            words(painter, place, tr("local g"), colours.law, Qt.AlignmentFlag.AlignHCenter)
        row = area.height() / len(self.spread.estimates)
        size = min(max(row * 0.36, 1.4), 4.0)
        spots = []
        for number, one in enumerate(self.spread.estimates):
            y = area.bottom() - (number + 0.5) * row
            self._paint_one(painter, one, scale, y, size, colours)
            place = QRectF(area.left() - 8, y - row / 2, area.width() + 16, row)
            spots.append(Spot(place, self._words(one), (one.learner,)))
        return spots

    def _paint_one(
        self,
        painter: QPainter,
        one: OneG,
        scale: _Scale,
        y: float,
        size: float,
        colours: Palette,
    ) -> None:
        at = scale.x(one.g)
        if not scale.low <= one.g <= scale.high:
            towards = 1 if one.g > scale.high else -1
            wedge(painter, QPointF(at + towards * 4, y), towards, colours.look)
            return
        painter.setPen(pen(colours.data, 1.0 if size < 2 else 1.5))
        painter.drawLine(QPointF(scale.x(one.low95), y), QPointF(scale.x(one.high95), y))
        holds = self.spread.local is None or one.holds(self.spread.local.g)
        painter.setPen(pen(colours.data, 1.3))
        painter.setBrush(QColor(colours.data if holds else colours.paper))
        painter.drawEllipse(QPointF(at, y), size, size)
        painter.setBrush(Qt.BrushStyle.NoBrush)

    def _words(self, one: OneG) -> str:
        value = with_uncertainty(one.g, (one.high95 - one.low95) / 2 / _Z95, "m/s²")
        name = self.names.get(one.learner, one.learner)
        return tr("{name}: g = {value}, 95 % interval {low:.2f} to {high:.2f} m/s²").format(
            name=name, value=said(value), low=one.low95, high=one.high95
        )
