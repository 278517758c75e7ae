"""The foot of the class page: what the signs mean or, while several are chosen, what to do."""

from __future__ import annotations

from PySide6.QtCore import QRectF, Signal
from PySide6.QtGui import QPainter
from PySide6.QtWidgets import QSizePolicy, QStackedWidget, QVBoxLayout, QWidget

from markbench.model import Concern, PieceKind
from markbench.ui.bench.card import paint_changed
from markbench.ui.flow import FlowLayout
from markbench.ui.look.marks import paint_concern
from markbench.ui.look.theme import Theme
from markbench.ui.parts import Painter, button, key_to, label, piece_painter


class Foot(QStackedWidget):
    """Both share one place, so that choosing moves no card."""

    def __init__(self, theme: Theme, pieces: dict[PieceKind, str]) -> None:
        super().__init__()
        self.legend = Legend(theme, pieces)
        self.chosen = ChosenStrip()
        self.addWidget(self.legend)
        self.addWidget(self.chosen)
        self.setSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Maximum)

    def show_chosen(self, count: int) -> None:
        """Offer what can be done with several."""
        self.chosen.show_count(count)
        self.setCurrentWidget(self.chosen if count > 1 else self.legend)


class ChosenStrip(QWidget):
    """What can be done with the learners chosen."""

    ask = Signal()
    copy = Signal()
    none = Signal()

    def __init__(self) -> None:
        super().__init__()
        self._count = label()
        self.ask_button = button(self.tr("Ask again for…"), "deed", self.ask.emit)
        self.ask_button.setAccessibleName(self.tr("Ask again for pieces of the chosen learners"))
        self.copy_button = button(self.tr("Copy the list"), "", self.copy.emit)
        self.copy_button.setAccessibleName(
            self.tr("Copy the list of what is missing from the chosen learners")
        )
        self.none_button = button(self.tr("None"), "plain", self.none.emit)
        self.none_button.setAccessibleName(self.tr("None chosen any more"))
        row = FlowLayout(self, spacing=8)
        for part in (self._count, self.ask_button, self.copy_button, self.none_button):
            row.addWidget(part)

    def show_count(self, count: int) -> None:
        """Say how many are chosen."""
        self._count.setText(self.tr("{n} chosen:").format(n=count))


class Legend(QWidget):
    """What the graphs and signs on the cards mean."""

    def __init__(self, theme: Theme, pieces: dict[PieceKind, str]) -> None:
        super().__init__()
        self.axes = label(kind="small")
        row = FlowLayout(spacing=14)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.addStretch(1)
        column.addLayout(row)
        column.addStretch(1)
        row.addWidget(self.axes)
        for concern, words in (
            (Concern.LOOK, self.tr("look before marking")),
            (Concern.ASK, self.tr("ask the learner")),
            (Concern.NOTE, self.tr("worth knowing")),
        ):
            row.addWidget(key_to(theme, _concern_painter(concern), words))
        for kind, words in pieces.items():
            row.addWidget(key_to(theme, piece_painter(kind, True), words))
        row.addWidget(key_to(theme, piece_painter("report", False), self.tr("struck: missing")))
        asks = piece_painter("report", False, untold=True)
        self.untold = key_to(theme, asks, self.tr("to be told apart"))
        row.addWidget(self.untold)
        self.changed = key_to(theme, paint_changed, self.tr("changed since marked"))
        row.addWidget(self.changed)


def _concern_painter(concern: Concern) -> Painter:
    def paint(painter: QPainter, box: QRectF, theme: Theme) -> None:
        paint_concern(painter, concern, box, theme.palette)

    return paint
