"""The files of one learner, and why they are taken for hers; what is not hers is sent back."""

from __future__ import annotations

from functools import partial

from PySide6.QtCore import QRectF, Qt, Signal
from PySide6.QtGui import QPainter
from PySide6.QtWidgets import QFrame, QHBoxLayout, QPushButton, QVBoxLayout, QWidget

from markbench.model import Learner, Piece, Portfolio
from markbench.session.newclass import NewClass
from markbench.ui.bench.peep import Peep
from markbench.ui.look.marks import paint_piece
from markbench.ui.look.said import said
from markbench.ui.look.theme import Theme
from markbench.ui.parts import Glyph, button, frame, label, quiet_scroll


class LearnerFiles(QWidget):
    """``refused`` carries a file and the learner whose it is not; ``left``: back to the counts."""

    refused = Signal(str, str)
    left = Signal()

    def __init__(self, theme: Theme) -> None:
        super().__init__()
        self._theme = theme
        self._column = QVBoxLayout(self)
        self._column.setContentsMargins(0, 0, 0, 0)
        self.back = button(self.tr("‹ All that was found"), "quiet", self.left.emit)
        self._name = label(kind="name", wrap=True)
        self._column.addWidget(self.back, 0, Qt.AlignmentFlag.AlignLeft)
        self._column.addWidget(self._name)
        self._slips = QWidget()
        self._column.addWidget(self._slips, 1)
        self.others: dict[str, QPushButton] = {}

    def show_learner(self, new: NewClass, learner: Learner) -> None:
        """Show what one learner handed in."""
        self._name.setText(learner.name)
        portfolio: Portfolio = new.work.portfolios[learner.id]
        damaged = {one.file: one.why for one in new.damaged()}
        self.others = {}
        inside = QWidget()
        inside.setProperty("kind", "inside")
        column = QVBoxLayout(inside)
        column.setContentsMargins(0, 0, 8, 0)
        column.setSpacing(8)
        for piece in portfolio.pieces:
            slip = self._slip(new, learner, piece, damaged.get(piece.file, ""), earlier=False)
            column.addWidget(slip)
        for piece in portfolio.earlier:
            slip = self._slip(new, learner, piece, damaged.get(piece.file, ""), earlier=True)
            column.addWidget(slip)
        if not self.others:
            column.addWidget(label(self.tr("No file was found."), "quiet", wrap=True))
        column.addStretch(1)
        fresh = quiet_scroll(inside)
        self._column.replaceWidget(self._slips, fresh)
        self._slips.hide()
        self._slips.deleteLater()
        self._slips = fresh

    def _slip(
        self, new: NewClass, learner: Learner, piece: Piece, why_not: str, *, earlier: bool
    ) -> QFrame:
        slip = frame("paper")
        column = QVBoxLayout(slip)
        column.setContentsMargins(12, 10, 12, 10)
        column.setSpacing(4)
        head = QHBoxLayout()
        head.setSpacing(8)
        there = not why_not

        def sign(painter: QPainter, box: QRectF, theme: Theme) -> None:
            paint_piece(painter, piece.kind, there, box, theme.palette)

        head.addWidget(Glyph(self._theme, sign), 0, Qt.AlignmentFlag.AlignTop)
        head.addWidget(label(self._kind(piece), wrap=True), 1)
        column.addLayout(head)
        column.addWidget(label(piece.file, wrap=True))
        if piece.match is not None:
            column.addWidget(label(said(piece.match.why), "small", wrap=True))
        if earlier:
            words = self.tr("A later one of the same kind is used; this one is kept.")
            column.addWidget(label(words, "small", wrap=True))
        if why_not:
            column.addWidget(label(said(why_not), "look", wrap=True))
        other = button(
            self.tr("Somebody else's"), "", partial(self.refused.emit, piece.file, learner.id)
        )
        other.setAccessibleDescription(piece.file)
        self.others[piece.file] = other
        column.addWidget(Peep(new.folder, piece, other))
        return slip

    def _kind(self, piece: Piece) -> str:
        return {
            "readings": self.tr("Table of readings"),
            "setup_photo": self.tr("Photo of the set-up"),
            "selfie": self.tr("Selfie"),
            "photo": self.tr("Photo"),
            "swing_video": self.tr("Video"),
            "report": self.tr("Report"),
        }.get(piece.kind, self.tr("File"))
