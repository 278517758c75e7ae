"""What lies over the sheet when wanted: a photo or video large, or the learner's own table."""

from __future__ import annotations

from PySide6.QtCore import QObject, QRect, Signal
from PySide6.QtWidgets import QWidget

from markbench.model import Piece, Source
from markbench.ui.desk import Desk
from markbench.ui.look.theme import Theme
from markbench.ui.portfolio.own_table import OwnTable
from markbench.ui.portfolio.viewer import EvidenceViewer


class Layers(QObject):
    """Over ``page``, one of them at a time."""

    closed = Signal()

    def __init__(self, desk: Desk, theme: Theme, page: QWidget) -> None:
        super().__init__(page)
        self._desk = desk
        self.viewer = EvidenceViewer(desk, theme)
        self.own_table = OwnTable(desk, theme)
        for layer in (self.viewer, self.own_table):
            layer.setParent(page)
            layer.hide()
            layer.closed.connect(self.closed)

    @property
    def open(self) -> bool:
        """Whether either covers the sheet."""
        return not (self.viewer.isHidden() and self.own_table.isHidden())

    def holds(self, widget: QWidget) -> bool:
        """Whether a widget stands in one of them."""
        layers = (self.viewer, self.own_table)
        return any(layer is widget or layer.isAncestorOf(widget) for layer in layers)

    def place(self, where: QRect) -> None:
        """Lay both over this part of the page."""
        self.viewer.setGeometry(where)
        self.own_table.setGeometry(where)

    def renew(self, learner: str, pieces: list[Piece]) -> None:
        """Show again what is open, after the learner's work changed."""
        self.viewer.renew(pieces)
        self.own_table.renew(self.tables(learner))

    def shut(self) -> bool:
        """Close the one that is open; False where neither is."""
        for layer in (self.viewer, self.own_table):
            if not layer.isHidden():
                layer.shut()
                return True
        return False

    def open_piece(self, learner: str, pieces: list[Piece], piece: Piece) -> None:
        """Show one of a learner's pieces large."""
        self.shut()
        self.viewer.open_piece(learner, pieces, piece)

    def open_table(self, learner: str, source: Source | None = None) -> None:
        """A learner's own table as it stands, at a cell if one is meant."""
        tables = self.tables(learner)
        held = self._desk.session.portfolio(learner).table
        file = source.file if source is not None else ""
        if not file and held is not None and held.source.file in {p.file for p in tables}:
            file = held.source.file
        if not file and tables:
            file = tables[0].file
        self.shut()
        self.own_table.open_table(learner, file, source)

    def tables(self, learner: str) -> list[Piece]:
        """The files of readings a learner handed in."""
        return list(self._desk.session.portfolio(learner).of_kind("readings"))
