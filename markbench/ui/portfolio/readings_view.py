"""The table of readings: questioned cells tinted and marked, corrections beside the original."""

from __future__ import annotations

import math
from collections.abc import Iterable

from PySide6.QtCore import QModelIndex, QPersistentModelIndex, QRectF, QSize, Qt, Signal
from PySide6.QtGui import QColor, QFontMetricsF, QKeyEvent, QMouseEvent, QPainter, QResizeEvent
from PySide6.QtWidgets import (
    QAbstractItemView,
    QHeaderView,
    QLineEdit,
    QStyle,
    QStyledItemDelegate,
    QStyleOptionViewItem,
    QTableView,
    QWidget,
)

from markbench.model import Concern, Source
from markbench.ui.look.marks import paint_concern, pen
from markbench.ui.look.theme import Theme
from markbench.ui.portfolio.cells import Cell
from markbench.ui.portfolio.readings_model import CELL, CellLook, ReadingsModel

Index = QModelIndex | QPersistentModelIndex
_TIGHTER = 5  # pixels that the air in a cell can be less
_HEADING_PAD = 4  # as the style sheet pads a heading, at the usual text
_RIGHT = Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter


class _CellDelegate(QStyledItemDelegate):
    def __init__(self, theme: Theme, parent: QWidget) -> None:
        super().__init__(parent)
        self._theme = theme

    def paint(self, painter: QPainter, option: QStyleOptionViewItem, index: Index) -> None:
        colours, box = self._theme.palette, QRectF(option.rect)
        look: CellLook = index.data(CELL)
        concern = look.concern
        chosen = bool(option.state & QStyle.StateFlag.State_Selected)
        if chosen:
            painter.fillRect(box, QColor(colours.deed_soft))
        elif concern is not None and concern > Concern.NOTE:
            soft = colours.look_soft if concern == Concern.LOOK else colours.ask_soft
            painter.fillRect(box, QColor(soft))
        focused = bool(option.state & QStyle.StateFlag.State_HasFocus)
        if concern is not None or look.explained or focused:
            painter.save()
            painter.setRenderHint(QPainter.RenderHint.Antialiasing)
            self._paint_marks(painter, box, look, focused)
            painter.restore()
        inner = box.adjusted(6, 0, -7, 0)
        text, original = look.text, look.original
        font = self._theme.font("body", bold=bool(original))
        if look.unread:
            font.setItalic(True)
        painter.setFont(font)
        told = colours.look if look.unread else colours.pencil if look.computed else colours.ink
        painter.setPen(QColor(told))
        painter.drawText(inner, _RIGHT, text)
        if original:
            struck = self._theme.font("small")
            struck.setStrikeOut(not look.unread)  # the learner's own still counts
            painter.setFont(struck)
            painter.setPen(QColor(colours.pencil))
            left = inner.adjusted(0, 0, -QFontMetricsF(font).horizontalAdvance(text) - 6, 0)
            painter.drawText(left, _RIGHT, original)

    def _paint_marks(self, painter: QPainter, box: QRectF, look: CellLook, focused: bool) -> None:
        """The shape of a question, the outline of an explanation and of the keyboard."""
        colours = self._theme.palette
        if look.concern is not None:
            side = box.height() * 0.28
            mark = QRectF(box.left() + 3, box.top() + 3, side, side)
            paint_concern(painter, look.concern, mark, colours)
        painter.setBrush(Qt.BrushStyle.NoBrush)
        if look.explained:
            painter.setPen(pen(colours.ghost, 1.6, Qt.PenStyle.DotLine))
            painter.drawRect(box.adjusted(1.5, 1.5, -1.5, -1.5))
        if focused:
            painter.setPen(pen(colours.deed, 2))
            painter.drawRect(box.adjusted(1, 1, -1, -1))

    def sizeHint(self, option: QStyleOptionViewItem, index: Index) -> QSize:
        look: CellLook = index.data(CELL)
        wide = self._wide(look.text, "body") + 20
        if look.original:
            wide += self._wide(look.original, "small") + 6
        return QSize(round(wide), round(self._theme.line_height() + 9))

    def _wide(self, text: str, size: str) -> float:
        return self._theme.metrics(size).horizontalAdvance(text)

    def createEditor(self, parent: QWidget, _option: QStyleOptionViewItem, index: Index) -> QWidget:
        editor = QLineEdit(parent)
        editor.setAccessibleName(self.tr("Corrected reading"))
        editor.setFrame(False)
        editor.setStyleSheet("padding: 0; min-height: 0;")
        editor.setToolTip(self.tr("As the learner would write it; empty restores the original"))
        return editor


class ReadingsView(QTableView):
    """``looked_at`` tells the source of the current cell; ``reading_chosen`` its row.

    ``refused`` says why nothing can be typed at the current cell.
    """

    looked_at = Signal(object)
    reading_chosen = Signal(int)
    refused = Signal(str)

    def __init__(self, model: ReadingsModel, theme: Theme) -> None:
        super().__init__()
        self._theme, self._readings = theme, model
        self.setModel(model)
        self.setItemDelegate(_CellDelegate(theme, self))
        self.setAccessibleName(self.tr("Readings"))
        self.setProperty("kind", "readings")
        self.setSelectionMode(QAbstractItemView.SelectionMode.ContiguousSelection)
        self.setEditTriggers(
            QAbstractItemView.EditTrigger.DoubleClicked
            | QAbstractItemView.EditTrigger.EditKeyPressed
            | QAbstractItemView.EditTrigger.AnyKeyPressed
        )
        self.verticalHeader().setVisible(False)
        self.horizontalHeader().setDefaultAlignment(
            Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter
        )
        self.horizontalHeader().setHighlightSections(False)
        self.horizontalHeader().setSectionResizeMode(QHeaderView.ResizeMode.Fixed)
        self.horizontalHeader().setMinimumSectionSize(20)
        self.setVerticalScrollMode(QAbstractItemView.ScrollMode.ScrollPerPixel)
        self.setTabKeyNavigation(False)
        self.setCornerButtonEnabled(False)
        self.needed_width = 0
        model.modelReset.connect(self._fit)
        theme.changed.connect(self._fit)
        self._fit()

    def highlight(self, cells: Iterable[Cell]) -> bool:
        """Select the very cells and bring them into view; False where there are none."""
        selection = self.selectionModel()
        selection.clear()
        first = None
        for cell in cells:
            index = self._readings.index_of(cell)
            if index.isValid():
                selection.select(index, selection.SelectionFlag.Select)
                first = first or index
        if first is None:
            return False
        selection.setCurrentIndex(first, selection.SelectionFlag.NoUpdate)
        self.scrollTo(first)
        return True

    def currentChanged(self, current: Index, previous: Index) -> None:
        """Tell what is looked at."""
        super().currentChanged(current, previous)
        source: Source | None = self._readings.source_of(current) if current.isValid() else None
        self.looked_at.emit(source)
        if current.isValid():
            self.reading_chosen.emit(current.row())

    def keyboardSearch(self, _typed: str) -> None:
        """Search nothing: a key that cannot be typed here must not go to another reading."""

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """What is typed where nothing can be is answered with a word."""
        words = self._readings.why_not(self.currentIndex())
        typed = event.text().isprintable() and event.text().strip()
        chord = event.modifiers() & ~(
            Qt.KeyboardModifier.ShiftModifier | Qt.KeyboardModifier.KeypadModifier
        )
        if words and not chord and (typed or event.key() == Qt.Key.Key_F2):
            self.refused.emit(words)
            return
        super().keyPressEvent(event)

    def mouseDoubleClickEvent(self, event: QMouseEvent) -> None:
        """So is a double click."""
        super().mouseDoubleClickEvent(event)
        words = self._readings.why_not(self.indexAt(event.position().toPoint()))
        if words:
            self.refused.emit(words)

    def _fit(self) -> None:
        height = round(self._theme.line_height() + 9)
        self.verticalHeader().setMinimumSectionSize(height)
        self.verticalHeader().setDefaultSectionSize(height)
        rows = min(self._readings.rowCount(), 8)
        header = math.ceil(self._theme.line_height("small")) + 2 * self._theme.px(_HEADING_PAD) + 2
        self.horizontalHeader().setFixedHeight(header)
        self._share_out()
        across = self.horizontalHeader().length() > self.viewport().width()
        self.setFixedHeight(rows * height + header + (18 if across else 4))

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Share a new width out again."""
        super().resizeEvent(event)
        if event.size().width() != event.oldSize().width():
            self._fit()

    def _share_out(self) -> None:
        """Columns as wide as what they hold needs, and the rest in equal parts."""
        metrics, model = QFontMetricsF(self._theme.font("small")), self._readings
        delegate, option = self.itemDelegate(), QStyleOptionViewItem()
        needs: list[int] = []
        least: list[int] = []
        for column in range(model.columnCount()):
            heading = str(model.headerData(column, Qt.Orientation.Horizontal))
            cells = [model.index(row, column) for row in range(model.rowCount())]
            wide = max((delegate.sizeHint(option, cell).width() for cell in cells), default=0)
            around = 2 * self._theme.px(_HEADING_PAD) + 4
            head = math.ceil(metrics.horizontalAdvance(heading)) + around
            needs.append(max(wide, head))
            least.append(max(wide - _TIGHTER, head - _TIGHTER // 2))
        #: Below this width the columns have to be scrolled.
        self.needed_width = sum(least) + 2 * self.frameWidth() + 2
        if sum(needs) > self.viewport().width():  # closer, before anything has to be scrolled
            needs = least
        spare = max(self.viewport().width() - sum(needs), 0)
        each, left = divmod(spare, max(len(needs), 1))
        for column, need in enumerate(needs):
            last = column == len(needs) - 1  # it takes what cannot be shared
            self.setColumnWidth(column, need + each + (left if last else 0))
