"""The evidence of one learner: a strip of small pictures, and the viewer they open in."""

from __future__ import annotations

from collections import OrderedDict
from functools import partial
from pathlib import Path

from PySide6.QtCore import QRectF, QSize, Qt, QThreadPool, Signal
from PySide6.QtGui import QColor, QImage, QPainter, QPaintEvent
from PySide6.QtWidgets import QAbstractButton, QFrame, QVBoxLayout

from markbench.model import Piece, PieceKind
from markbench.ui.background import in_background
from markbench.ui.desk import Desk
from markbench.ui.flow import FlowLayout
from markbench.ui.look.marks import paint_piece, pen
from markbench.ui.look.theme import Theme
from markbench.ui.parts import label
from markbench.ui.portfolio.pictures import load_film_still, load_picture

PICTURES = ("setup_photo", "selfie", "photo")
FILMS = ("swing_video",)
_THUMB = 220
_KEPT = 400


class Thumb(QAbstractButton):
    """One piece, or the gap where one is missing."""

    def __init__(self, theme: Theme) -> None:
        super().__init__()
        self._theme = theme
        self.kind: PieceKind = "unknown"
        self.piece: Piece | None = None
        self.image = QImage()
        self.caption, self.status = "", ""
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)

    def show_piece(self, kind: PieceKind, piece: Piece | None, caption: str, status: str) -> None:
        """Show another piece."""
        self.kind, self.piece, self.caption, self.status = kind, piece, caption, status
        self.image = QImage()
        self.setEnabled(piece is not None)
        words = caption if piece is not None else self.tr("{c}: missing").format(c=caption)
        self.setAccessibleName(f"{words} {status}".strip())
        self.setToolTip(piece.file if piece is not None else words)
        self.update()

    def sizeHint(self) -> QSize:
        """A small picture with a line of words."""
        return QSize(self._theme.px(112), round(76 + self._theme.line_height("small")))

    def paintEvent(self, _event: QPaintEvent) -> None:
        """The picture or the gap, and the words."""
        painter, colours = QPainter(self), self._theme.palette
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        line = self._theme.line_height("small")
        box = QRectF(self.rect()).adjusted(2, 2, -2, -line - 4)
        if self.image.isNull():
            missing = self.piece is None
            style = Qt.PenStyle.DashLine if missing else Qt.PenStyle.SolidLine
            painter.setPen(pen(colours.edge, 1.2, style))
            painter.setBrush(QColor(colours.paper if missing else colours.shade))
            painter.drawRoundedRect(box, 3, 3)
            glyph = QRectF(0, 0, 26, 26)
            glyph.moveCenter(box.center())
            paint_piece(painter, self.kind, not missing, glyph, colours)
        else:
            self._paint_image(painter, box)
        if self.hasFocus():
            painter.setPen(pen(colours.deed, 2.5))
            painter.setBrush(Qt.BrushStyle.NoBrush)
            painter.drawRoundedRect(box, 3, 3)
        words = self.caption if not self.status else f"{self.caption} · {self.status}"
        if self.piece is None:
            words = self.tr("{c}: missing").format(c=self.caption)
        painter.setFont(self._theme.font("small"))
        painter.setPen(QColor(colours.look if self.piece is None else colours.pencil))
        shown = painter.fontMetrics().elidedText(words, Qt.TextElideMode.ElideRight, self.width())
        foot = QRectF(2, self.height() - line - 1, self.width() - 4, line)
        painter.drawText(foot, Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter, shown)

    def _paint_image(self, painter: QPainter, box: QRectF) -> None:
        size = QSize(self.image.size())
        size.scale(box.size().toSize(), Qt.AspectRatioMode.KeepAspectRatioByExpanding)
        part = self.image.width() / max(size.width(), 1)
        source = QRectF(0, 0, box.width() * part, box.height() * part)
        source.moveCenter(QRectF(self.image.rect()).center())
        painter.drawImage(box, self.image, source)
        if self.kind in FILMS:
            glyph = QRectF(box.left() + 5, box.bottom() - 25, 20, 20)
            painter.setPen(Qt.PenStyle.NoPen)
            painter.setBrush(QColor(self._theme.palette.paper))
            painter.drawRoundedRect(glyph, 3, 3)
            paint_piece(painter, self.kind, True, glyph.adjusted(3, 3, -3, -3),
                        self._theme.palette)  # fmt: skip


class EvidenceStrip(QFrame):
    """``opened`` carries the piece to look at."""

    opened = Signal(object)

    def __init__(self, desk: Desk, theme: Theme, bare: bool = False) -> None:
        super().__init__()
        self.setProperty("kind", "" if bare else "paper")
        self._desk, self._theme = desk, theme
        self._folder: Path = desk.session.folder
        self._pictures: OrderedDict[str, QImage] = OrderedDict()
        self._pool = QThreadPool(self)
        self._pool.setMaxThreadCount(1)
        self._loading: set[str] = set()
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
        shown = self._pieces(learner)
        while len(self.thumbs) < len(shown):
            thumb = Thumb(self._theme)
            thumb.clicked.connect(partial(self._open, thumb))
            self._row.addWidget(thumb)
            self.thumbs.append(thumb)
        for number, thumb in enumerate(self.thumbs):
            thumb.setVisible(number < len(shown))
            if number < len(shown):
                kind, piece = shown[number]
                thumb.show_piece(kind, piece, self.words_for(kind), self._status(learner, piece))
                self._fetch(piece)
        self._deal_out()

    def prepare(self, learner: str) -> None:
        """Read the pictures of whoever comes next."""
        for _, piece in self._pieces(learner):
            self._fetch(piece)

    def openable(self, learner: str) -> list[Piece]:
        """Pieces the viewer can show, in the order of the strip."""
        return [p for _, p in self._pieces(learner) if p is not None and _can_show(p)]

    def words_for(self, kind: str) -> str:
        """Name of a kind of evidence."""
        return {
            "setup_photo": self.tr("Set-up"),
            "selfie": self.tr("Selfie"),
            "photo": self.tr("Photo"),
            "swing_video": self.tr("Video"),
            "readings": self.tr("Readings"),
            "report": self.tr("Report"),
        }.get(kind, self.tr("Other"))

    def _pieces(self, learner: str) -> list[tuple[PieceKind, Piece | None]]:
        session = self._desk.session
        portfolio = session.portfolio(learner)
        shown: list[tuple[PieceKind, Piece | None]] = []
        for piece in portfolio.pieces:
            if _can_show(piece):
                shown.append((piece.kind, piece))
        have = {kind for kind, _ in shown}
        order = list(session.brief.evidence)
        shown += [(kind, None) for kind in order if kind not in have]  # type: ignore[misc]
        return sorted(shown, key=lambda one: order.index(one[0]) if one[0] in order else 99)

    def _status(self, learner: str, piece: Piece | None) -> str:
        if piece is None:
            return ""
        held = self._desk.session.value("piece_status", learner, piece.file)
        return {
            "accepted": self.tr("✓ good"),
            "unreadable": self.tr("✗ unreadable"),
            "again": self.tr("↻ ask again"),
        }.get(str(held), "")

    def _fetch(self, piece: Piece | None) -> None:
        if piece is None or not _can_show(piece) or not self._desk.may_open(piece.file):
            return
        file, folder, true_file = piece.file, self._folder, self._desk.true_file(piece.file)
        if file in self._pictures or file in self._loading:
            return
        self._loading.add(file)
        load = load_film_still if piece.kind in FILMS else load_picture
        in_background(
            self,
            lambda _progress, _stop: load(folder, true_file, _THUMB),
            done=partial(self._arrived, file),
            failed=partial(self._failed, file),
            pool=self._pool,
        )

    def _arrived(self, file: str, image: QImage) -> None:
        self._loading.discard(file)
        self._pictures[file] = image
        while len(self._pictures) > _KEPT:
            self._pictures.popitem(last=False)
        self._deal_out()

    def _failed(self, file: str, _error: Exception) -> None:
        # The evidence checks say what is wrong; the strip shows the plain glyph.
        self._arrived(file, QImage())

    def _deal_out(self) -> None:
        for thumb in self.thumbs:
            if thumb.piece is not None and not thumb.isHidden():
                thumb.image = self._pictures.get(thumb.piece.file, QImage())
                thumb.update()

    def _open(self, thumb: Thumb, _checked: bool = False) -> None:
        if thumb.piece is not None:
            self.opened.emit(thumb.piece)


def _can_show(piece: Piece) -> bool:
    return piece.kind in PICTURES or piece.kind in FILMS
