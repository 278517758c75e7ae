"""Tiles of one size, each drawn once and shown as a picture after that.

Drawing a tile takes a millisecond or two and a page holds fifty, so whoever scrolls would
wait for them. One frame therefore draws no more tiles than it has time for; the rest are
blank paper until the next frame, a few milliseconds later.
"""

from __future__ import annotations

import time
from collections import OrderedDict

from PySide6.QtCore import (
    QModelIndex,
    QObject,
    QPersistentModelIndex,
    QRectF,
    QSize,
    Qt,
    QTimer,
    Signal,
)
from PySide6.QtGui import QColor, QPainter, QPixmap
from PySide6.QtWidgets import QStyle, QStyledItemDelegate, QStyleOptionViewItem

from markbench.ui.look.marks import pen
from markbench.ui.look.theme import Theme

_TURN_MS = 10  # the rest of the tiles belong to the screen's next picture, not to this one
_FRAME_S = 0.004  # of the 16 ms that a frame has, what may go into drawing tiles

Index = QModelIndex | QPersistentModelIndex


class PictureDelegate(QStyledItemDelegate):
    """Says how to draw a tile in :meth:`draw`; a picture is kept while its thing is the same.

    ``late``: some tiles are still blank, and there is time for them now.
    """

    late = Signal()

    def __init__(self, theme: Theme, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._theme = theme
        self.card_size = QSize(230, 116)
        #: Pictures kept at the most; more than one page and its neighbours have.
        self.most_kept = 300
        self._pictures: OrderedDict[tuple[str, int, int], tuple[object, QPixmap]] = OrderedDict()
        self._spent_s, self._behind = 0.0, False
        self._turn = QTimer(self, singleShot=True, interval=_TURN_MS)
        self._turn.timeout.connect(self._next_frame)
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

    def same(self, before: object, now: object) -> bool:
        """Whether a picture of ``before`` shows ``now`` as well."""
        return before is now

    def prepare(self, _index: Index, _ratio: float) -> bool:
        """Draw a tile that may be wanted next; False where there is nothing to draw."""
        return False

    def sizeHint(self, _option: QStyleOptionViewItem, _index: Index) -> QSize:
        """One size for all."""
        return self.card_size

    def blit(self, painter: QPainter, box: QRectF, name: str, thing: object) -> None:
        """Show the picture of ``thing``, the present form of what is called ``name``."""
        size = box.size().toSize()
        picture = self._at_hand(name, thing, size)
        if picture is None:
            if self._spent_s >= _FRAME_S:
                self._behind = True
                self._blank(painter, box)
                return
            picture = self._draw_anew(name, thing, size, painter.device().devicePixelRatioF())
        painter.drawPixmap(box.topLeft(), picture)

    def draw_ahead(self, name: str, thing: object, size: QSize, ratio: float) -> bool:
        """Draw a tile before it is shown; False where that was done."""
        if self._at_hand(name, thing, size) is not None:
            return False
        self._draw_anew(name, thing, size, ratio)
        return True

    def _at_hand(self, name: str, thing: object, size: QSize) -> QPixmap | None:
        key = (name, size.width(), size.height())
        held = self._pictures.get(key)
        if held is None or not self.same(held[0], thing):
            return None
        self._pictures[key] = (thing, held[1])
        self._pictures.move_to_end(key)
        return held[1]

    def _draw_anew(self, name: str, thing: object, size: QSize, ratio: float) -> QPixmap:
        start = time.perf_counter()
        picture = self._drawn(thing, size, ratio)
        key = (name, size.width(), size.height())
        self._pictures[key] = (thing, picture)
        while len(self._pictures) > self.most_kept:
            self._pictures.popitem(last=False)
        self._spent_s += time.perf_counter() - start
        self._turn.start()
        return picture

    def _next_frame(self) -> None:
        self._spent_s = 0.0
        if self._behind:
            self._behind = False
            self.late.emit()

    def _blank(self, painter: QPainter, box: QRectF) -> None:
        colours = self._theme.palette
        painter.setPen(pen(colours.rule, 1.0))
        painter.setBrush(QColor(colours.paper))
        painter.drawRoundedRect(box.adjusted(0.5, 0.5, -0.5, -0.5), 3, 3)

    def frame(self, painter: QPainter, box: QRectF, state: QStyle.StateFlag) -> None:
        """The frame that tells chosen and pointed at; a second line, where the keyboard is."""
        chosen = bool(state & QStyle.StateFlag.State_Selected)
        keyboard = bool(state & QStyle.StateFlag.State_HasFocus)
        if not (chosen or keyboard or state & QStyle.StateFlag.State_MouseOver):
            return
        colours = self._theme.palette
        painter.save()
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.setPen(pen(colours.deed if chosen else colours.edge, 2.5 if chosen else 1.2))
        painter.setBrush(Qt.BrushStyle.NoBrush)
        painter.drawRoundedRect(box.adjusted(1, 1, -1, -1), 3, 3)
        if keyboard:
            painter.setPen(pen(colours.deed, 1.4))
            painter.drawRoundedRect(box.adjusted(4.5, 4.5, -4.5, -4.5), 2, 2)
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
