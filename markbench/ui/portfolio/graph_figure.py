"""The learner's graph as a figure of its own, to be saved for a slide, a page or the learner."""

from __future__ import annotations

from dataclasses import dataclass

from PySide6.QtCore import QCoreApplication, QRectF
from PySide6.QtGui import QPainter

from markbench.ui.overview.figure import Look, Spot, say_empty
from markbench.ui.portfolio.curves import Curves
from markbench.ui.portfolio.drawing import draw_graph


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
        solid = self.curves.line_words
        parts.append(_tr("solid: {words}").format(words=solid) if self.curves.fitted[0] else solid)
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
        draw_graph(painter, box, self.curves, look)
        return []


def _tr(text: str) -> str:
    return QCoreApplication.translate("GraphFigure", text)
