"""One piece in the strip of evidence, or the gap where one is missing."""

from __future__ import annotations

from functools import partial

from PySide6.QtCore import QPoint, QPointF, QRectF, QSize, Qt, Signal
from PySide6.QtGui import (
    QAction,
    QColor,
    QContextMenuEvent,
    QImage,
    QKeyEvent,
    QPainter,
    QPaintEvent,
    QResizeEvent,
)
from PySide6.QtWidgets import QAbstractButton, QMenu

from markbench.model import Piece, PieceKind
from markbench.ui.look.marks import paint_piece, pen
from markbench.ui.look.theme import Theme
from markbench.ui.parts import IconButton, button
from markbench.ui.portfolio.status import (
    KIND_KEYS,
    STATUS_KEYS,
    STATUSES,
    paint_badge,
    status_word,
)
from markbench.ui.portfolio.thumbnails import FILMS, PICTURES


class Thumb(QAbstractButton):
    """``judged`` carries a status, ``told`` what a picture shows, both as a person said it."""

    judged = Signal(str)
    told = Signal(str)

    def __init__(self, theme: Theme, judges: bool = True, wide: int = 124) -> None:
        super().__init__()
        self._theme, self._judges, self._wide = theme, judges, wide
        self.kind: PieceKind = "unknown"
        self.piece: Piece | None = None
        self.image = QImage()
        self.caption, self.status = "", ""
        self._away = False
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.more = IconButton(theme, "down", self.tr("Judge this piece"), self.open_menu)
        self.more.setParent(self)
        self.kinds = {
            "setup_photo": button(
                self.tr("Set-up"), clicked=partial(self.told.emit, "setup_photo")
            ),
            "selfie": button(self.tr("Selfie"), clicked=partial(self.told.emit, "selfie")),
        }
        for choice in self.kinds.values():
            choice.setParent(self)
            choice.setStyleSheet("padding: 0;")
        self.more.setStyleSheet("padding: 0; min-height: 0;")

    def show_piece(
        self,
        kind: PieceKind,
        piece: Piece | None,
        caption: str,
        status: str,
        asks: bool,
        away: bool = False,
    ) -> None:
        """Show another piece; ``asks`` whether it is to be told what the picture shows.

        ``away``: it was handed in and is elsewhere, which is not to be missing.
        """
        self._away = away and piece is None
        self.kind, self.piece, self.caption, self.status = kind, piece, caption, status
        self.setEnabled(piece is not None)
        self.more.setVisible(piece is not None and self._judges)
        for choice in self.kinds.values():
            choice.setVisible(asks and self._judges)
        words = self._words()
        self.setAccessibleName(f"{words} {status_word(status)}".strip())
        self.more.setAccessibleName(self.tr("Judge: {piece}").format(piece=words))
        self.setToolTip(piece.file if piece is not None else words)
        self._place()
        self.update()

    def _words(self) -> str:
        if self.piece is None:
            words = self.tr("{c}: not in the pack") if self._away else self.tr("{c}: missing")
            return words.format(c=self.caption)
        return self.tr("{c}: removed").format(c=self.caption) if self.piece.gone else self.caption

    def open_menu(self) -> None:
        """What can be said of this piece."""
        self._menu().popup(self.mapToGlobal(QPoint(self.width() // 4, self.height() // 3)))

    def _menu(self) -> QMenu:
        menu = QMenu(self)
        menu.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        for (key, status), words in zip(
            STATUS_KEYS.items(), map(status_word, STATUSES), strict=True
        ):
            action = self._choice(menu, words, Qt.Key(key), status == self.status)
            action.triggered.connect(partial(self._judge, status))
        if self.kind in PICTURES:
            menu.addSeparator()
            for key, kind in KIND_KEYS.items():
                words = self.tr("Shows: {kind}").format(kind=self.kinds[kind].text())
                action = self._choice(menu, words, Qt.Key(key), kind == self.kind)
                action.triggered.connect(partial(self.told.emit, kind))
        return menu

    def _choice(self, menu: QMenu, words: str, key: Qt.Key, on: bool) -> QAction:
        action = menu.addAction(f"{words}\t{chr(key.value)}")
        action.setCheckable(True)
        action.setChecked(on)
        return action

    def _judge(self, status: str, _checked: bool = False) -> None:
        self.judged.emit("" if status == self.status else status)

    def contextMenuEvent(self, event: QContextMenuEvent) -> None:
        """The same by the other mouse button or the menu key."""
        if self.piece is not None and self._judges:
            self._menu().popup(event.globalPos())

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """One key judges, one key tells what a picture shows."""
        key = Qt.Key(event.key())
        plain = event.modifiers() == Qt.KeyboardModifier.NoModifier and self._judges
        if plain and self.piece is not None and key in STATUS_KEYS:
            self._judge(STATUS_KEYS[key])
        elif plain and self.piece is not None and key in KIND_KEYS and self.kind in PICTURES:
            self.told.emit(KIND_KEYS[key])
        else:
            super().keyPressEvent(event)

    def sizeHint(self) -> QSize:
        """A small picture with a line of words."""
        return QSize(self._theme.px(self._wide), self._theme.px(78) + self._foot())

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Keep the small controls in their corners."""
        super().resizeEvent(event)
        self._place()

    def _foot(self) -> int:
        """Height of the line of words and its control, large enough to be hit."""
        return self._theme.px(26)

    def _box(self) -> QRectF:
        return QRectF(self.rect()).adjusted(2, 2, -2, -self._foot())

    def _place(self) -> None:
        box = self._box()
        side = self._foot()
        self.more.setGeometry(self.width() - side - 2, self.height() - side, side, side)
        high = self.kinds["selfie"].sizeHint().height()
        wide = int(box.width() - 10) // 2
        for number, choice in enumerate(self.kinds.values()):
            choice.setGeometry(int(box.left()) + 4 + number * (wide + 2),
                               int(box.bottom()) - high - 3, wide, high)  # fmt: skip

    def paintEvent(self, _event: QPaintEvent) -> None:
        """The picture or the gap, how it was judged, and the words."""
        painter, colours = QPainter(self), self._theme.palette
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        box = self._box()
        if self.image.isNull():
            missing = self.piece is None and not self._away
            style = Qt.PenStyle.DashLine if missing else Qt.PenStyle.SolidLine
            painter.setPen(pen(colours.edge, 1.2, style))
            painter.setBrush(QColor(colours.paper if missing else colours.shade))
            painter.drawRoundedRect(box, 3, 3)
            glyph = QRectF(0, 0, 26, 26)
            glyph.moveCenter(box.center())
            paint_piece(painter, self.kind, not missing, glyph, colours)
        else:
            paint_picture(painter, self.image, box, self.kind, self._theme)
        if self.status:
            paint_badge(painter, self.status, box.topLeft() + QPointF(3, 3), self._theme)
        if self.hasFocus():
            painter.setPen(pen(colours.deed, 2.5))
            painter.setBrush(Qt.BrushStyle.NoBrush)
            painter.drawRoundedRect(box, 3, 3)
        words = self._words()
        missing = self.piece is None and not self._away
        painter.setFont(self._theme.font("small"))
        painter.setPen(QColor(colours.look if missing else colours.pencil))
        foot = QRectF(2, box.bottom(), self.width() - 4, self.height() - box.bottom())
        if self.piece is not None and self._judges:
            foot.setRight(self.more.x())
        room = int(foot.width())
        shown = painter.fontMetrics().elidedText(words, Qt.TextElideMode.ElideRight, room)
        painter.drawText(foot, Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter, shown)


def paint_picture(
    painter: QPainter, image: QImage, box: QRectF, kind: PieceKind, theme: Theme
) -> None:
    """The middle of a picture so that it fills ``box``; a film bears its glyph."""
    size = QSize(image.size())
    size.scale(box.size().toSize(), Qt.AspectRatioMode.KeepAspectRatioByExpanding)
    part = image.width() / max(size.width(), 1)
    source = QRectF(0, 0, box.width() * part, box.height() * part)
    source.moveCenter(QRectF(image.rect()).center())
    painter.drawImage(box, image, source)
    if kind in FILMS:
        glyph = QRectF(box.left() + 5, box.bottom() - 25, 20, 20)
        painter.setPen(Qt.PenStyle.NoPen)
        painter.setBrush(QColor(theme.palette.paper))
        painter.drawRoundedRect(glyph, 3, 3)
        paint_piece(painter, kind, True, glyph.adjusted(3, 3, -3, -3), theme.palette)
