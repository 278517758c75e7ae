"""Tiles of one size, each drawn once and shown as a picture after that."""

from __future__ import annotations

from PySide6.QtCore import QModelIndex, QObject, QPersistentModelIndex, QRectF, QSize, Qt
from PySide6.QtGui import QPainter, QPixmap
from PySide6.QtWidgets import QStyledItemDelegate, QStyleOptionViewItem

from markbench.ui.look.marks import pen
from markbench.ui.look.theme import Theme

_KEPT = 1500  # more than the largest class shown at once


class PictureDelegate(QStyledItemDelegate):
    """Says how to draw a tile in :meth:`draw`; a picture is kept while its thing is the same."""

    def __init__(self, theme: Theme, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._theme = theme
        self.card_size = QSize(230, 116)
        self._pictures: dict[tuple[str, int, int], tuple[object, QPixmap]] = {}
        theme.changed.connect(self.forget)

    def draw(self, painter: QPainter, thing: object, box: QRectF) -> None:
        """Draw the tile of ``thing`` in ``box``."""
        raise NotImplementedError

    def forget(self) -> None:
        """Draw everything afresh."""
        self._pictures.clear()

    def forget_one(self, name: str) -> None:
        """Draw one tile afresh."""
        for key in [key for key in self._pictures if key[0] == name]:
            del self._pictures[key]

    def sizeHint(
        self, _option: QStyleOptionViewItem, _index: QModelIndex | QPersistentModelIndex
    ) -> QSize:
        """One size for all."""
        return self.card_size

    def blit(self, painter: QPainter, box: QRectF, name: str, thing: object) -> None:
        """Show the picture of ``thing``, the present form of what is called ``name``."""
        size = box.size().toSize()
        key = (name, size.width(), size.height())
        held = self._pictures.get(key)
        if held is None or held[0] is not thing:
            held = (thing, self._drawn(thing, size, painter.device().devicePixelRatioF()))
            if len(self._pictures) > _KEPT:
                self._pictures.clear()
            self._pictures[key] = held
        painter.drawPixmap(box.topLeft(), held[1])

    def frame(self, painter: QPainter, box: QRectF, chosen: bool, hovered: bool) -> None:
        """The frame that tells chosen and pointed at."""
        if not (chosen or hovered):
            return
        colours = self._theme.palette
        painter.save()
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.setPen(pen(colours.deed if chosen else colours.edge, 2.5 if chosen else 1.2))
        painter.setBrush(Qt.BrushStyle.NoBrush)
        painter.drawRoundedRect(box.adjusted(1, 1, -1, -1), 3, 3)
        painter.restore()

    def _drawn(self, thing: object, size: QSize, ratio: float) -> QPixmap:
        pixmap = QPixmap(size * ratio)
        pixmap.setDevicePixelRatio(ratio)
        pixmap.fill(Qt.GlobalColor.transparent)
        canvas = QPainter(pixmap)
        canvas.setRenderHint(QPainter.RenderHint.Antialiasing)
        self.draw(canvas, thing, QRectF(0, 0, size.width(), size.height()))
        canvas.end()
        return pixmap
