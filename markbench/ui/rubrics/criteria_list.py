"""The criteria at the left of the editor: numbered, ruled apart, those with a slip marked."""

from __future__ import annotations

from PySide6.QtCore import QModelIndex, QPersistentModelIndex, QRectF, QSize, Qt
from PySide6.QtGui import QColor, QFontMetricsF, QPainter
from PySide6.QtWidgets import (
    QListWidget,
    QListWidgetItem,
    QStyle,
    QStyledItemDelegate,
    QStyleOptionViewItem,
)

from markbench.ui.look.theme import Theme

Index = QModelIndex | QPersistentModelIndex

_WRAPPED = int(Qt.TextFlag.TextWordWrap | Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignTop)
_PAD = 8.0


class CriteriaList(QListWidget):
    """Titles of any length, whole."""

    def __init__(self, theme: Theme) -> None:
        super().__init__()
        self.setAccessibleName(self.tr("Criteria"))
        self.setItemDelegate(_Numbered(theme, self))
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setResizeMode(QListWidget.ResizeMode.Adjust)
        theme.changed.connect(self.doItemsLayout)

    def show_titles(self, titles: list[str]) -> None:
        """List the criteria anew."""
        self.clear()
        for title in titles:
            self.addItem(QListWidgetItem(title))

    def show_title(self, row: int, title: str, *, wrong: bool) -> None:
        """Say a title anew, and whether something is wrong there."""
        item = self.item(row)
        if item is not None:
            item.setText(f"▲ {title}" if wrong else title)


class _Numbered(QStyledItemDelegate):
    def __init__(self, theme: Theme, parent: QListWidget) -> None:
        super().__init__(parent)
        self._theme, self._list = theme, parent

    def _words(self, box: QRectF) -> QRectF:
        metrics = QFontMetricsF(self._theme.font())
        number = metrics.horizontalAdvance("00  ")
        return box.adjusted(_PAD + number, _PAD, -_PAD, -_PAD)

    def sizeHint(self, _option: QStyleOptionViewItem, index: Index) -> QSize:
        """As high as its words need."""
        width = float(self._list.viewport().width())
        words = self._words(QRectF(0, 0, width, 10_000))
        title = str(index.data())
        needed = QFontMetricsF(self._theme.font()).boundingRect(words, _WRAPPED, title)
        return QSize(round(width), round(needed.height() + 2 * _PAD))

    def paint(self, painter: QPainter, option: QStyleOptionViewItem, index: Index) -> None:
        """The number in pencil, the title in ink, a rule below."""
        colours, box = self._theme.palette, QRectF(option.rect)
        if option.state & QStyle.StateFlag.State_Selected:
            painter.fillRect(box, QColor(colours.deed_soft))
            painter.fillRect(QRectF(box.left(), box.top(), 3, box.height()), QColor(colours.deed))
        words = self._words(box)
        painter.setFont(self._theme.font())
        painter.setPen(QColor(colours.pencil))
        number = QRectF(box.left() + _PAD, words.top(), words.left() - box.left(), words.height())
        painter.drawText(number, _WRAPPED, str(index.row() + 1))
        wrong = str(index.data()).startswith("▲")
        painter.setPen(QColor(colours.look if wrong else colours.ink))
        painter.drawText(words, _WRAPPED, str(index.data()))
        painter.fillRect(QRectF(box.left(), box.bottom() - 1, box.width(), 1), QColor(colours.rule))
