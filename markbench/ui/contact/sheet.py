"""The sheet of tiles: keys and mouse move among pictures, judge them, open them."""

from __future__ import annotations

from PySide6.QtCore import (
    QEvent,
    QItemSelectionModel,
    QModelIndex,
    QObject,
    QPersistentModelIndex,
    QPoint,
    QPointF,
    QRectF,
    Qt,
    Signal,
)
from PySide6.QtGui import QKeyEvent, QMouseEvent
from PySide6.QtWidgets import QAbstractItemView, QWidget

from markbench.ui.bench.grid import ClassGrid
from markbench.ui.contact.model import TILE, ContactOrder, SideName, Tile
from markbench.ui.contact.tile import GAP, TileDelegate, judgement_boxes, places
from markbench.ui.look.theme import Theme
from markbench.ui.portfolio.status import KIND_KEYS

_JUMP = Qt.KeyboardModifier.NoModifier


class ContactGrid(ClassGrid):
    """``judged`` carries a status, a learner and a half; ``wanted`` the learner and half to
    open; ``told`` what the current photo shows.
    """

    judged = Signal(str, str, str)
    told = Signal(str)
    wanted = Signal(str, str)
    moved = Signal()
    least_width, least_height, most_height = 190.0, 132.0, 330.0
    shape = 1.5
    widest = 1.6

    def __init__(
        self, order: ContactOrder, delegate: TileDelegate, theme: Theme,
        parent: QWidget | None = None,
    ) -> None:  # fmt: skip
        super().__init__(order, delegate, theme, parent)
        self._tiles = delegate
        self.side: SideName = "photo"
        self.setAccessibleName(self.tr("Contact sheet: set-up photos and videos"))
        self.selectionModel().currentChanged.connect(self._point)
        self.viewport().installEventFilter(self)

    def show_side(self, side: SideName) -> None:
        """Speak to this half of the current tile."""
        self.side = side
        self._point()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Left and right go from picture to picture, Enter opens; judging is the window's."""
        key, plain = Qt.Key(event.key()), event.modifiers() == _JUMP
        if not self.currentIndex().isValid():
            super().keyPressEvent(event)
        elif plain and key in (Qt.Key.Key_Left, Qt.Key.Key_Right):
            self._step(1 if key == Qt.Key.Key_Right else -1)
        elif plain and key in KIND_KEYS:
            self.told.emit(KIND_KEYS[key])
        else:
            super().keyPressEvent(event)

    def keyboardSearch(self, _search: str) -> None:
        """Typing judges; it does not look for names."""

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """A judgement under the mouse is given; else the half is chosen with its tile."""
        index = self.indexAt(event.position().toPoint())
        if index.isValid() and event.button() == Qt.MouseButton.LeftButton:
            side = self._side_at(index, event.position())
            status = self._judgement_at(index, side, event.position())
            if status:
                self.judged.emit(status, index.data(TILE).row.id, side)
                return
            self.side = side
        super().mousePressEvent(event)
        self._point()

    def mouseDoubleClickEvent(self, event: QMouseEvent) -> None:
        """Opening is for the picture, not for the judgements on it."""
        index = self.indexAt(event.position().toPoint())
        side = self._side_at(index, event.position())
        if index.isValid() and self._judgement_at(index, side, event.position()):
            self.mousePressEvent(event)
            return
        super().mouseDoubleClickEvent(event)

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """What lies under the mouse is offered for judging."""
        if isinstance(event, QMouseEvent) and event.type() == QEvent.Type.MouseMove:
            index = self.indexAt(event.position().toPoint())
            side = self._side_at(index, event.position())
            self._show_under((index.row(), side) if index.isValid() else None)
        elif event.type() == QEvent.Type.Leave:
            self._show_under(None)
        return bool(super().eventFilter(watched, event))

    def judgement_place(self, row: int, side: SideName, status: str) -> QPoint:
        """Where on the sheet a judgement is offered."""
        boxes = judgement_boxes(self._side_box(self.model().index(row, 0), side), self._theme)
        return boxes[status].center().toPoint()

    # --- inside --------------------------------------------------------------------

    def _open(self, index: QModelIndex | QPersistentModelIndex) -> None:
        tile: Tile = index.data(TILE)
        self.wanted.emit(tile.row.id, self.side)

    def _step(self, by: int) -> None:
        if (self.side == "photo") == (by > 0):  # within the tile
            self.show_side("film" if by > 0 else "photo")
            return
        row = self.currentIndex().row() + by
        if 0 <= row < self.model().rowCount():
            self.side = "photo" if by > 0 else "film"
            self.selectionModel().setCurrentIndex(
                self.model().index(row, 0), QItemSelectionModel.SelectionFlag.ClearAndSelect
            )
            self.scrollTo(self.currentIndex(), QAbstractItemView.ScrollHint.EnsureVisible)

    def _point(self, *_: object) -> None:
        current = self.currentIndex()
        self._tiles.at = (current.row(), self.side) if current.isValid() else None
        self.viewport().update()
        self.moved.emit()

    def _show_under(self, spot: tuple[int, SideName] | None) -> None:
        if spot != self._tiles.under:
            self._tiles.under = spot
            self.viewport().update()

    def _side_box(self, index: QModelIndex, side: SideName) -> QRectF:
        box = QRectF(self.visualRect(index).adjusted(GAP, GAP, -GAP, -GAP))
        return places(box, self._theme).side(side)

    def _side_at(self, index: QModelIndex, spot: QPointF) -> SideName:
        return "photo" if spot.x() < self.visualRect(index).center().x() else "film"

    def _judgement_at(self, index: QModelIndex, side: SideName, spot: QPointF) -> str:
        tile: Tile = index.data(TILE)
        if tile.side(side).piece is None or (index.row(), side) not in (
            self._tiles.at, self._tiles.under,
        ):  # fmt: skip
            return ""
        boxes = judgement_boxes(self._side_box(index, side), self._theme)
        return next((status for status, box in boxes.items() if box.contains(spot)), "")
