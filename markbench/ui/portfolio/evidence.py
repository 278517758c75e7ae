"""The evidence of one learner: a strip of small pictures with what was said of each."""

from __future__ import annotations

from functools import partial
from typing import cast

from PySide6.QtCore import Signal
from PySide6.QtGui import QImage
from PySide6.QtWidgets import QFrame, QVBoxLayout

from markbench.model import Piece, PieceKind, piece_states
from markbench.ui.desk import Desk
from markbench.ui.flow import FlowLayout
from markbench.ui.look.theme import Theme
from markbench.ui.parts import label
from markbench.ui.portfolio.thumb import Thumb
from markbench.ui.portfolio.thumbnails import Thumbnails, can_show


class EvidenceStrip(QFrame):
    """``opened`` carries the piece to look at."""

    opened = Signal(object)

    def __init__(self, desk: Desk, theme: Theme, bare: bool = False) -> None:
        super().__init__()
        self.setProperty("kind", "" if bare else "paper")
        self._desk, self._theme = desk, theme
        self._learner = ""
        self._judges = True
        self._wide = 108 if bare else 124  # three beside each other
        self._pictures = Thumbnails(desk, self)
        self._pictures.arrived.connect(self._deal_out)
        self.thumbs: list[Thumb] = []
        self._row = FlowLayout(spacing=8)
        column = QVBoxLayout(self)
        if bare:  # within another paper
            column.setContentsMargins(0, 8, 0, 8)
        else:
            column.setContentsMargins(12, 8, 12, 8)
            column.addWidget(label(self.tr("Evidence"), "heading"))
        column.setSpacing(4)
        column.addLayout(self._row)

    def show_learner(self, learner: str) -> None:
        """Show a learner's pieces; the pictures follow as they are read."""
        self._learner = learner
        shown = self._pieces(learner)
        while len(self.thumbs) < len(shown):
            thumb = Thumb(self._theme, self._judges, self._wide)
            thumb.clicked.connect(partial(self._open, thumb))
            thumb.judged.connect(partial(self._judge, thumb))
            thumb.told.connect(partial(self._tell, thumb))
            self._row.addWidget(thumb)
            self.thumbs.append(thumb)
        for number, thumb in enumerate(self.thumbs):
            thumb.setVisible(number < len(shown))
            if number < len(shown):
                kind, piece = shown[number]
                asks = (
                    piece is not None
                    and piece.kind == "photo"
                    and not piece.gone
                    and self._may_see(piece)
                )
                status = self._status(learner, piece)
                away = kind in self._desk.kept_back(learner)
                thumb.show_piece(kind, piece, self.words_for(kind), status, asks, away)
        for _, piece in reversed(shown):  # the last one asked for is made first
            if piece is not None:
                self._pictures.ask(piece)
        self._deal_out()

    def look_only(self) -> None:
        """Offer nothing to judge or tell: who looks may not decide here."""
        self._judges = False

    def prepare(self, learner: str) -> None:
        """Read the pictures of whoever comes next."""
        for _, piece in self._pieces(learner):
            if piece is not None:
                self._pictures.ask(piece)

    def openable(self, learner: str) -> list[Piece]:
        """Pieces the viewer can show, in the order of the strip."""
        pieces = (p for _, p in self._pieces(learner) if p is not None)
        return [p for p in pieces if can_show(p) and not p.gone]

    def words_for(self, kind: str) -> str:
        """Name of a kind of evidence."""
        return {
            "setup_photo": self.tr("Set-up"),
            "selfie": self.tr("Selfie"),
            "photo": self.tr("Which is it?"),
            "swing_video": self.tr("Video"),
            "readings": self.tr("Readings"),
            "report": self.tr("Report"),
        }.get(kind, self.tr("Other"))

    def _pieces(self, learner: str) -> list[tuple[PieceKind, Piece | None]]:
        session = self._desk.session
        portfolio = session.portfolio(learner)
        shown: list[tuple[PieceKind, Piece | None]] = []
        for piece in portfolio.pieces:
            if can_show(piece):
                shown.append((piece.kind, piece))
        have = {kind for kind, _ in shown}
        order = cast(list[PieceKind], list(session.brief.evidence))
        states = piece_states(portfolio, order)  # an untold one is among those shown
        shown += [(kind, None) for kind in order if kind not in have and states[kind] != "untold"]
        return sorted(shown, key=lambda one: order.index(one[0]) if one[0] in order else 99)

    def _may_see(self, piece: Piece) -> bool:
        return self._desk.may_open(piece.file)

    def _status(self, learner: str, piece: Piece | None) -> str:
        if piece is None:
            return ""
        return str(self._desk.session.value("piece_status", learner, piece.file) or "")

    def _deal_out(self, _file: str = "") -> None:
        for thumb in self.thumbs:
            if not thumb.isHidden():
                piece = thumb.piece
                thumb.image = QImage() if piece is None else self._pictures.image(piece)
                thumb.update()

    def _open(self, thumb: Thumb, _checked: bool = False) -> None:
        if thumb.piece is not None and not thumb.piece.gone:
            self.opened.emit(thumb.piece)

    def _judge(self, thumb: Thumb, status: str) -> None:
        if thumb.piece is not None:
            self._desk.judge_piece(self._learner, thumb.piece.file, status)

    def _tell(self, thumb: Thumb, kind: str) -> None:
        if thumb.piece is not None and self._may_see(thumb.piece):
            self._desk.tell_kind(thumb.piece.file, kind)
