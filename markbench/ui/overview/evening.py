"""Figures on the marking itself: its drift against the drafts, and the time it takes."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from itertools import pairwise
from statistics import fmean, median

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QPainter

from markbench.checks.wording import signed
from markbench.session.overview import BREAK, RUN, OneMark, Pace, running_mean
from markbench.ui.look.dates import short_day_and_time
from markbench.ui.look.marks import pen
from markbench.ui.look.said import figures
from markbench.ui.overview.figure import Look, Spot, say_empty, solid, tr, words, x_axis, y_axis

_MINUTES = round(BREAK.total_seconds() / 60)
_MOST_TOLD = 4  # breaks whose length the caption tells


def _lasting(gap: dt.timedelta) -> str:
    """A break in the largest unit that tells it, as “13 h”."""
    minutes = gap.total_seconds() / 60
    if minutes < 60:
        return tr("{n} min").format(n=round(minutes))
    if minutes < 48 * 60:
        return tr("{n} h").format(n=round(minutes / 60))
    return tr("{n} days").format(n=round(minutes / 60 / 24))


def _breaks_words(gaps: Sequence[dt.timedelta]) -> str:
    """How long the breaks were that are drawn."""
    listed = ", ".join(_lasting(gap) for gap in gaps[:_MOST_TOLD])
    if len(gaps) > _MOST_TOLD:
        listed += ", …"
    return tr("Dotted upright: a break longer than {m} minutes ({lengths}).").format(
        m=_MINUTES, lengths=listed
    )


def _head(painter: QPainter, box: QRectF, text: str, look: Look) -> float:
    """What the upright axis counts, in the line over it; returns where the words end."""
    painter.setFont(look.font())
    wide = min(look.metrics().horizontalAdvance(text) + 4, box.width())
    words(painter, QRectF(box.left(), box.top(), wide, look.line()), text, look.palette.pencil)
    return box.left() + wide


def _paint_breaks(
    painter: QPainter,
    area: QRectF,
    breaks: Sequence[tuple[float, dt.timedelta]],
    free_from: float,
    look: Look,
) -> None:
    """A dotted line at each x, and over it how long the break was, where there is room."""
    line = look.line()
    for x, gap in breaks:
        painter.setPen(pen(look.palette.pencil, 1.2, Qt.PenStyle.DotLine))
        painter.drawLine(QPointF(x, area.top()), QPointF(x, area.bottom()))
        text = _lasting(gap)
        wide = look.metrics().horizontalAdvance(text) + 4
        left = min(x - wide / 2, area.right() - wide)
        if left > free_from:
            over = QRectF(left, area.top() - line - 6, wide, line)
            words(painter, over, text, look.palette.pencil, Qt.AlignmentFlag.AlignHCenter)
            free_from = over.right() + 4


def _departure(marks: float) -> str:
    told = signed(marks).removesuffix(".00")
    return figures("0" if told in ("+0", "\u22120") else told)


@dataclass(frozen=True, slots=True)
class DriftFigure:
    """Every mark's departure from its draft, in the order of marking."""

    marks: tuple[OneMark, ...]
    names: Mapping[str, str] = field(default_factory=dict)
    titles: Mapping[str, str] = field(default_factory=dict)
    key: str = "drift-of-marking"

    @property
    def title(self) -> str:
        """What it shows."""
        return tr("Drift of marking")

    @property
    def empty(self) -> str:
        """Why there is nothing to show."""
        return "" if self.marks else tr("Nothing is marked yet.")

    @property
    def caption(self) -> str:
        """n, and what is shown."""
        n = len(self.marks)
        count = tr("n = 1 mark with a draft") if n == 1 else tr("n = {n} marks with a draft")
        how = tr("mark minus draft, in the order of marking")
        text = f"{count.format(n=n)}; {how}."
        if n >= RUN:
            text += " " + tr("Line: mean of {run} neighbours.").format(run=RUN)
        if n >= 4:
            values = [one.difference for one in self.marks]
            halves = (fmean(values[: n // 2]), fmean(values[n // 2 :]))
            halves_words = tr("First half {a}, second half {b} marks on average.")
            text += " " + halves_words.format(a=_departure(halves[0]), b=_departure(halves[1]))
        gaps = [gap for _, gap in self._breaks()]
        return f"{text} {_breaks_words(gaps)}" if gaps else text

    def _breaks(self) -> Iterator[tuple[int, dt.timedelta]]:
        """Before which mark, counted from 1, and how long."""
        for number, (before, one) in enumerate(pairwise(self.marks), 2):
            if one.sitting != before.sitting:
                yield number, one.at - before.at

    def height(self, look: Look) -> float:
        """Enough for a few marks up and down."""
        return 140 * look.scale

    def paint(self, painter: QPainter, box: QRectF, look: Look) -> list[Spot]:
        """Dots, the running mean, breaks."""
        if self.empty:
            return say_empty(painter, box, self.empty, look)
        colours, line, n = look.palette, look.line(), len(self.marks)
        area = box.adjusted(44 * look.scale, line + 6, -8, -2 * line - 8)
        reach = max(1.0, *(abs(one.difference) for one in self.marks)) * 1.15

        def at(number: float, value: float) -> QPointF:
            x = area.left() + area.width() * number / (n + 1)
            return QPointF(x, area.center().y() - area.height() / 2 * value / reach)

        y_axis(painter, area, -reach, reach, look)
        x_axis(painter, area, 0, n + 1, tr("marks in the order in which they were given"), look)
        free = _head(painter, box, tr("mark − draft / marks"), look)
        breaks = [(at(number - 0.5, 0).x(), gap) for number, gap in self._breaks()]
        _paint_breaks(painter, area, breaks, free, look)
        painter.setPen(pen(colours.edge, 1.2))
        painter.drawLine(at(0, 0), at(n + 1, 0))
        spots = []
        size = 3.2 if n < 200 else 2.0
        for number, one in enumerate(self.marks, 1):
            spot = at(number, one.difference)
            painter.setPen(pen(colours.paper, 0.6))
            painter.setBrush(QColor(colours.data))
            painter.drawEllipse(spot, size, size)
            painter.setBrush(Qt.BrushStyle.NoBrush)
            place = QRectF(0, 0, max(area.width() / (n + 1), 8), 14)
            place.moveCenter(spot)
            spots.append(Spot(place, self._words(one), (one.learner,)))
        path = running_mean([one.difference for one in self.marks])
        painter.setPen(pen(colours.law, 2.0))
        painter.drawPolyline([at(x, y) for x, y in path])
        return spots

    def _words(self, one: OneMark) -> str:
        return tr("{name}, {criterion}: {d} against the draft, {t}").format(
            name=self.names.get(one.learner, one.learner),
            criterion=self.titles.get(one.criterion, one.criterion),
            d=_departure(one.difference),
            t=short_day_and_time(one.at.astimezone()),
        )


@dataclass(frozen=True, slots=True)
class PaceFigure:
    """A column for each portfolio, the longest first or ``in_order`` of marking."""

    paces: tuple[Pace, ...]
    names: Mapping[str, str] = field(default_factory=dict)
    in_order: bool = False
    key: str = "time-per-portfolio"

    @property
    def _timed(self) -> tuple[Pace, ...]:
        timed = tuple(one for one in self.paces if one.seconds > 0)
        return tuple(sorted(timed, key=lambda one: one.began)) if self.in_order else timed

    def _breaks(self) -> Iterator[tuple[int, dt.timedelta]]:
        """Before which column, counted from 0, and how long."""
        if self.in_order:
            for number, (before, one) in enumerate(pairwise(self._timed), 1):
                if one.began - before.ended > BREAK:
                    yield number, one.began - before.ended

    @property
    def title(self) -> str:
        """What it shows."""
        return tr("Time per portfolio")

    @property
    def empty(self) -> str:
        """Why there is nothing to show."""
        return "" if self._timed else tr("No times yet: they begin with the second decision.")

    @property
    def caption(self) -> str:
        """n, and the rule."""
        timed = self._timed
        text = tr(
            "n = {n} portfolios. The time between two decisions counts for the portfolio of the "
            "later one; breaks longer than {m} minutes are left out."
        ).format(n=len(timed), m=_MINUTES)
        if timed:
            middle = median(one.seconds for one in timed) / 60
            total = sum(one.seconds for one in timed) / 60
            text += " " + tr("Median {a:.1f} min (dashed), {b:.0f} min in all.").format(
                a=middle, b=total
            )
        gaps = [gap for _, gap in self._breaks()]
        return figures(f"{text} {_breaks_words(gaps)}" if gaps else text)

    def height(self, look: Look) -> float:
        """As high as the drift beside it."""
        return 140 * look.scale

    def paint(self, painter: QPainter, box: QRectF, look: Look) -> list[Spot]:
        """Columns and the median."""
        if self.empty:
            return say_empty(painter, box, self.empty, look)
        colours, line, timed = look.palette, look.line(), self._timed
        area = box.adjusted(44 * look.scale, line + 6, -8, -line - 8)
        most = max(1.0, max(one.seconds for one in timed) / 60) * 1.08
        y_axis(painter, area, 0, most, look)
        each = area.width() / max(len(timed), 8)
        spots = []
        for number, one in enumerate(timed):
            high = area.height() * one.seconds / 60 / most
            x = area.left() + number * each
            gap = each * 0.16 if each > 3 else 0.0
            bar = QRectF(x + gap, area.bottom() - high, each - 2 * gap, high)
            solid(painter, bar, colours.data)
            text = tr("{name}: {t:.1f} min, {n} decisions").format(
                name=self.names.get(one.learner, one.learner), t=one.seconds / 60, n=one.decisions
            )
            whole = QRectF(x, area.top(), each, area.height())
            spots.append(Spot(whole, text, (one.learner,)))
        middle = median(one.seconds for one in timed) / 60
        y = area.bottom() - area.height() * middle / most
        painter.setPen(pen(colours.law, 1.8, Qt.PenStyle.DashLine))
        painter.drawLine(QPointF(area.left(), y), QPointF(area.right(), y))
        painter.setPen(pen(colours.edge, 1.0))
        painter.drawLine(area.bottomLeft(), area.bottomRight())
        painter.setFont(look.font())
        foot = QRectF(area.left(), area.bottom() + 4, area.width(), line)
        text = tr("portfolios, longest first")
        if self.in_order:
            text = tr("portfolios, in order of marking")
        words(painter, foot, text, colours.pencil, Qt.AlignmentFlag.AlignHCenter)
        free = _head(painter, box, tr("time / min"), look)
        breaks = [(area.left() + number * each, gap) for number, gap in self._breaks()]
        _paint_breaks(painter, area, breaks, free, look)
        return spots
