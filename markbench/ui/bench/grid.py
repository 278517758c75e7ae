"""The view of the cards: as many columns as fit, keys to move, Enter to open."""

from __future__ import annotations

import time

from PySide6.QtCore import (
    QAbstractItemModel,
    QItemSelectionModel,
    QModelIndex,
    QPersistentModelIndex,
    QSize,
    Qt,
    QTimer,
    Signal,
)
from PySide6.QtGui import QKeyEvent, QResizeEvent
from PySide6.QtWidgets import QFrame, QListView, QWidget

from markbench.ui.bench.kept import PictureDelegate
from markbench.ui.bench.model import ROW
from markbench.ui.look.theme import Theme

_IDLE_MS = 12  # between slices of drawing ahead: scrolling comes first
_SLICE_S = 0.004


class ClassGrid(QListView):
    """Every learner's card. ``opened`` carries a learner's id."""

    opened = Signal(str)
    least_width, least_height, most_height = 196.0, 96.0, 220.0
    shape = 1.75  # width over height at which graph and words stand well together
    widest = 2.1

    def __init__(
        self,
        order: QAbstractItemModel,
        delegate: PictureDelegate,
        theme: Theme,
        parent: QWidget | None = None,
    ) -> None:
        super().__init__(parent)
        self._theme, self._cards = theme, delegate
        self.setProperty("kind", "open")
        self.setAccessibleName(self.tr("The class"))
        self.setViewMode(QListView.ViewMode.IconMode)
        self.setMovement(QListView.Movement.Static)
        self.setResizeMode(QListView.ResizeMode.Adjust)
        self.setUniformItemSizes(True)
        self.setSelectionMode(QListView.SelectionMode.ExtendedSelection)
        self.setFrameShape(QFrame.Shape.NoFrame)
        self.setVerticalScrollMode(QListView.ScrollMode.ScrollPerPixel)
        self.setMouseTracking(True)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setModel(order)
        self.setItemDelegate(delegate)
        self.doubleClicked.connect(self._open)
        self._ahead = QTimer(self, singleShot=True, interval=_IDLE_MS)
        self._ahead.timeout.connect(self._draw_ahead)
        delegate.late.connect(self.viewport().update)
        self.verticalScrollBar().valueChanged.connect(lambda _at: self._ahead.start())
        for changed in (order.modelReset, order.layoutChanged, order.rowsRemoved,
                        order.rowsInserted, theme.changed):  # fmt: skip
            changed.connect(self.fit)

    def fit(self) -> None:
        """Give the cards the size at which all fit, or the least one that can be read."""
        scroll = 14
        width, height = self.width() - scroll - 6, self.height() - 6
        best = self._largest(width, height, max(self.model().rowCount(), 1))
        if best != self._cards.card_size or best != self.gridSize():
            self._cards.card_size = best
            self.setGridSize(best)
            self.scheduleDelayedItemsLayout()
        # This page, two below, one above, and one that was left: five screens of pixels.
        self._cards.most_kept = 5 * self._page()[1]

    def _largest(self, width: int, height: int, count: int) -> QSize:
        scale = self._theme.scale
        least_wide, least_high = self.least_width * scale, self.least_height * scale
        most_columns = max(int(width // least_wide), 1)
        best, best_score = QSize(width // most_columns, int(least_high * 1.15)), 0.0
        for columns in range(1, most_columns + 1):
            wide, high = width / columns, height / -(-count // columns)
            high = min(high, self.most_height * scale)
            score = min(high, wide / self.shape)
            if high >= least_high and score > best_score:
                best, best_score = QSize(int(min(wide, self.widest * high)), int(high)), score
        return best

    def _draw_ahead(self) -> None:
        """Draw the cards of the page below and the page above, before they are scrolled to."""
        cell, model, ratio = self.gridSize(), self.model(), self.devicePixelRatioF()
        if not self.isVisible() or cell.isEmpty():
            return
        columns, page = self._page()
        top = columns * (self.verticalScrollBar().value() // cell.height())
        end = time.perf_counter() + _SLICE_S
        for row in (*range(top, top + 2 * page), *range(top - 1, top - page, -1)):
            if 0 <= row < model.rowCount() and self._cards.prepare(model.index(row, 0), ratio):
                self._ahead.start()
                if time.perf_counter() > end:
                    return

    def _page(self) -> tuple[int, int]:
        """Columns, and cards that may be seen at once."""
        cell, area = self.gridSize(), self.viewport().size()
        columns = max(area.width() // max(cell.width(), 1), 1)
        return columns, columns * (area.height() // max(cell.height(), 1) + 2)

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Fit again."""
        super().resizeEvent(event)
        self.fit()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Enter opens the current learner."""
        if event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter) and self.currentIndex().isValid():
            self._open(self.currentIndex())
            return
        super().keyPressEvent(event)

    def choose(self, learner: str) -> None:
        """Make a learner current, if shown; one of several chosen leaves them chosen."""
        model = self.model()
        for i in range(model.rowCount()):
            index = model.index(i, 0)
            if index.data(ROW).id == learner:
                self._make_current(index, keep=self.selectionModel().isSelected(index))
                return

    def keep_current(self) -> None:
        """Have a current card wherever there is a card: the first, where the last is gone."""
        chosen = self.selectedIndexes()
        index = self.currentIndex()
        if not index.isValid():
            index = min(chosen, key=lambda one: one.row()) if chosen else self.model().index(0, 0)
        if index.isValid():
            self._make_current(index, keep=bool(chosen))

    def _make_current(self, index: QModelIndex, keep: bool) -> None:
        flags = QItemSelectionModel.SelectionFlag
        how = flags.NoUpdate if keep else flags.ClearAndSelect
        self.selectionModel().setCurrentIndex(index, how)

    def current(self) -> str:
        """Id of the current learner; empty where there is none."""
        index = self.currentIndex()
        return str(index.data(ROW).id) if index.isValid() else ""

    def chosen(self) -> list[str]:
        """Ids of the selected learners, in the order shown."""
        indexes = sorted(self.selectedIndexes(), key=lambda index: index.row())
        return [index.data(ROW).id for index in indexes]

    def _open(self, index: QModelIndex | QPersistentModelIndex) -> None:
        self.opened.emit(index.data(ROW).id)
