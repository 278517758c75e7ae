"""Figure: how many learners stand at each level of each criterion, in ink or in pencil."""

from __future__ import annotations

import math
from dataclasses import dataclass

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QFontMetricsF, QPainter

from markbench.session.overview import CriterionCount
from markbench.ui.look.marks import pen
from markbench.ui.look.said import figures
from markbench.ui.look.words import fitted
from markbench.ui.overview.figure import Look, Spot, learners_told, say_empty, solid, tr, words

_ACROSS = 5
_MOST_LINES = 4  # of a criterion's title


@dataclass(frozen=True, slots=True)
class LevelsFigure:
    """A small column chart for each criterion: marks solid, drafts dashed on top."""

    criteria: tuple[CriterionCount, ...]
    learners: int
    key: str = "marks-by-criterion"

    @property
    def title(self) -> str:
        """What it shows."""
        return tr("Marks by criterion")

    @property
    def empty(self) -> str:
        """Why there is nothing to show."""
        return "" if self.learners and self.criteria else tr("Nobody is in the class list.")

    @property
    def caption(self) -> str:
        """n, and what is shown."""
        marked = sum(len(level.marked) for row in self.criteria for level in row.levels)
        neither = sum(len(row.neither) for row in self.criteria)
        text = tr(
            "{n_learners}; each column the learners at one level, named by its marks. Solid: "
            "marked ({marked} of {all} marks given). Dashed: draft only."
        ).format(
            n_learners=learners_told(self.learners),
            marked=marked,
            all=self.learners * len(self.criteria),
        )
        if neither:
            text += " " + tr("{n} await your eye: no draft, no mark.").format(n=neither)
        return text

    def height(self, look: Look) -> float:
        """A row of charts for every five criteria."""
        return 176 * look.scale * math.ceil(len(self.criteria) / _ACROSS)

    def paint(self, painter: QPainter, box: QRectF, look: Look) -> list[Spot]:
        """The charts, five to a row."""
        if self.empty:
            return say_empty(painter, box, self.empty, look)
        rows = math.ceil(len(self.criteria) / _ACROSS)
        across = math.ceil(len(self.criteria) / rows)
        wide, high = box.width() / across, box.height() / rows
        metrics = QFontMetricsF(look.font(bold=True))
        titles = [fitted(one.title, metrics, wide - 8, _MOST_LINES) for one in self.criteria]
        lines = max(map(len, titles))
        spots: list[Spot] = []
        for number, criterion in enumerate(self.criteria):
            x = box.left() + number % across * wide
            y = box.top() + number // across * high
            place = QRectF(x, y, wide - 8, high - 4)
            painter.setFont(look.font(bold=True))
            for down, text in enumerate(titles[number]):
                at = QRectF(x, y + down * look.line(), place.width(), look.line())
                words(painter, at, text, look.palette.ink)
            place.setTop(y + lines * look.line())
            spots += self._chart(painter, criterion, place, look)
        return spots

    def _chart(
        self, painter: QPainter, criterion: CriterionCount, box: QRectF, look: Look
    ) -> list[Spot]:
        """The columns under a title, with what is counted and what the numbers below are."""
        colours, line = look.palette, look.line()
        area = box.adjusted(0, 2 * line + 4, 0, -2 * line - 5)
        each = area.width() / max(len(criterion.levels), 1)
        painter.setFont(look.font())
        middle = Qt.AlignmentFlag.AlignHCenter
        spots = []
        for number, level in enumerate(criterion.levels):
            x = area.left() + number * each
            count = len(level.marked) + len(level.drafted)
            inked = area.height() * len(level.marked) / self.learners
            pencilled = area.height() * len(level.drafted) / self.learners
            bar = QRectF(x + each * 0.14, area.bottom() - inked, each * 0.72, inked)
            if inked:
                solid(painter, bar, colours.deed)
            if pencilled:
                painter.setPen(pen(colours.ink, 1.1, Qt.PenStyle.DashLine))
                painter.drawRect(QRectF(bar.left(), bar.top() - pencilled, bar.width(), pencilled))
            top = area.bottom() - inked - pencilled
            if count:
                # A narrow bar's number reaches over its sides.
                over = QRectF(x - each / 2, top - line - 1, 2 * each, line)
                words(painter, over, str(count), colours.ink, middle)
            under = QRectF(x, area.bottom() + 2, each, line)
            words(painter, under, figures(f"{level.marks:g}"), colours.pencil, middle)
            text = tr("{title}, {level}: {marked} marked, {drafted} drafted").format(
                title=criterion.title, level=level.level, marked=len(level.marked),
                drafted=len(level.drafted),
            )  # fmt: skip
            place = QRectF(x, box.top(), each, box.height())
            spots.append(Spot(place, text, (*level.marked, *level.drafted)))
        head = QRectF(box.left(), box.top() + 2, box.width(), line)
        words(painter, head, tr("learners"), colours.pencil)
        foot = QRectF(area.left(), area.bottom() + 4 + line, area.width(), line)
        words(painter, foot, tr("marks"), colours.pencil, middle)
        painter.setPen(pen(colours.edge, 1.0))
        painter.drawLine(QPointF(area.left(), area.bottom()), QPointF(area.right(), area.bottom()))
        return spots
