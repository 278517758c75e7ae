"""The table of hand-ins: columns as wide as their words, signs held to them, rows that wrap."""

from __future__ import annotations

import re

from PySide6.QtCore import QModelIndex, QPersistentModelIndex, QRect, QSize, Qt
from PySide6.QtGui import QFontMetrics, QResizeEvent
from PySide6.QtWidgets import (
    QAbstractItemView,
    QHeaderView,
    QStyledItemDelegate,
    QStyleOptionViewItem,
    QTableView,
)

from markbench.ui.handins.model import DUE, MISSING, STANDS, WHEN, HandInModel, HandInOrder
from markbench.ui.look.columns import fair_widths
from markbench.ui.look.theme import Theme

Index = QModelIndex | QPersistentModelIndex
_AROUND, _HEAD = 24, 44  # beside a cell's text, and beside a heading's with its arrow
_BREAKS = re.compile(r"(?<=-)| ")  # where Qt may break a line


def held(text: str, column: int) -> str:
    """A cell's words with spaces at which no line may break."""
    if column in (WHEN, DUE):
        return re.sub("(?<!,) ", "\u00a0", text)
    return re.sub("(?<=[▲○≠↻✗◇✓]) ", "\u00a0", text) if column == STANDS else text


class _Held(QStyledItemDelegate):
    """Keeps a sign with its word, and the parts of a day together, where lines break."""

    def __init__(self, table: QTableView) -> None:
        super().__init__(table)
        self._table = table

    def initStyleOption(self, option: QStyleOptionViewItem, index: Index) -> None:
        """Put the words as they are held."""
        super().initStyleOption(option, index)
        option.text = held(option.text, index.column())

    def sizeHint(self, option: QStyleOptionViewItem, index: Index) -> QSize:
        """As high as the lines are within the padding, which Qt forgets."""
        size, table = super().sizeHint(option, index), self._table
        room = QRect(0, 0, table.columnWidth(index.column()) - _AROUND, 10_000)
        words = held(index.data(), index.column())
        needs = table.fontMetrics().boundingRect(room, Qt.TextFlag.TextWordWrap, words)
        return size.expandedTo(QSize(0, needs.height()))


class HandInRoll(QTableView):
    """Rows of ``order``, measured by what stands in ``model``; rows of several lines part."""

    def __init__(self, model: HandInModel, order: HandInOrder, theme: Theme) -> None:
        super().__init__()
        self._model, self._theme = model, theme
        self._apart_px = 0
        self.setProperty("kind", "roll")
        self.setModel(order)
        self.setItemDelegate(_Held(self))
        self.setSelectionBehavior(QAbstractItemView.SelectionBehavior.SelectRows)
        self.setSelectionMode(QAbstractItemView.SelectionMode.ExtendedSelection)
        self.setEditTriggers(QAbstractItemView.EditTrigger.NoEditTriggers)
        self.setSortingEnabled(True)
        self.sortByColumn(STANDS, Qt.SortOrder.AscendingOrder)
        self.setShowGrid(False)
        self.setTabKeyNavigation(False)
        self.setHorizontalScrollMode(QAbstractItemView.ScrollMode.ScrollPerPixel)
        self.verticalHeader().hide()
        heads = self.horizontalHeader()
        heads.setSectionResizeMode(QHeaderView.ResizeMode.Interactive)
        heads.setHighlightSections(False)

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Share the new room out."""
        super().resizeEvent(event)
        self.rule_columns()

    def sizeHintForRow(self, row: int) -> int:
        """A little more than the text needs."""
        return super().sizeHintForRow(row) + self._apart_px

    @property
    def room(self) -> int:
        """Width of all columns together, whether there is something to scroll or not."""
        return self.contentsRect().width() - self.verticalScrollBar().sizeHint().width()

    def rule_columns(self) -> None:
        """Columns as wide as what stands in them; lines wrap where the text is too large."""
        metrics, px, model = QFontMetrics(self._theme.font()), self._theme.px, self._model
        bold = QFontMetrics(self._theme.font(bold=True))
        least, wanted = [], []
        for column in range(DUE + 1):
            head = model.headerData(column, Qt.Orientation.Horizontal)
            cells = (model.index(row, column).data() for row in range(model.rowCount()))
            texts = {held(text, column) for text in cells}
            words = {word for text in texts for word in _BREAKS.split(text)}
            across = px(_HEAD) + bold.horizontalAdvance(head)
            widest = (
                max((metrics.horizontalAdvance(one) for one in some), default=0) + px(_AROUND)
                for some in (words, texts)
            )
            narrow, wide = (max(across, one) for one in widest)
            least.append(narrow)
            wanted.append(wide)
        room = self.room
        for column in (DUE, WHEN):  # the dates break last of all
            if sum(least) - least[column] + wanted[column] <= room:
                least[column] = wanted[column]
        for column, width in enumerate(fair_widths(least, wanted, room, MISSING)):
            self.setColumnWidth(column, width)
        rows = self.verticalHeader()
        self._apart_px = px(8)
        wraps = sum(wanted) > room
        mode = QHeaderView.ResizeMode
        rows.setSectionResizeMode(mode.ResizeToContents if wraps else mode.Fixed)
        rows.setDefaultSectionSize(px(30))
        if not wraps and rows.count() and rows.sectionSize(0) != px(30):  # they wrapped before
            for row in range(rows.count()):
                rows.resizeSection(row, px(30))
