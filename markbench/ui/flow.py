"""A layout that wraps like words, so that rows of buttons survive large text.

Qt has none; this follows the shape of its documented example of a custom layout.
"""

from __future__ import annotations

from PySide6.QtCore import QRect, QSize, Qt
from PySide6.QtWidgets import QLayout, QLayoutItem, QWidget


class FlowLayout(QLayout):
    """Left to right, then down."""

    def __init__(self, parent: QWidget | None = None, spacing: int = 6) -> None:
        super().__init__(parent)
        self._items: list[QLayoutItem] = []
        self._heights: dict[int, int] = {}
        self.setSpacing(spacing)
        self.setContentsMargins(0, 0, 0, 0)

    def addItem(self, item: QLayoutItem) -> None:
        """Append."""
        self._items.append(item)

    def count(self) -> int:
        """Number of items."""
        return len(self._items)

    def itemAt(self, index: int) -> QLayoutItem | None:
        """Item at an index, if there is one."""
        return self._items[index] if 0 <= index < len(self._items) else None

    def takeAt(self, index: int) -> QLayoutItem | None:
        """Remove and return an item."""
        return self._items.pop(index) if 0 <= index < len(self._items) else None

    def expandingDirections(self) -> Qt.Orientation:
        """Takes no more room than it needs."""
        return Qt.Orientation(0)

    def hasHeightForWidth(self) -> bool:
        """Narrow means tall."""
        return True

    def heightForWidth(self, width: int) -> int:
        """Height when wrapped to ``width``."""
        if width not in self._heights:
            self._heights[width] = self._place(QRect(0, 0, width, 0), move=False)
        return self._heights[width]

    def invalidate(self) -> None:
        """Something changed: measure again."""
        self._heights.clear()
        super().invalidate()

    def sizeHint(self) -> QSize:
        """As small as may be."""
        return self.minimumSize()

    def minimumSize(self) -> QSize:
        """The largest single item."""
        size = QSize()
        for item in self._items:
            size = size.expandedTo(item.minimumSize())
        return size

    def setGeometry(self, rect: QRect) -> None:
        """Place everything."""
        super().setGeometry(rect)
        self._place(rect, move=True)

    def _place(self, rect: QRect, move: bool) -> int:
        around = self.contentsMargins()
        rect = rect.marginsRemoved(around)
        y = rect.y()
        for line in self._lines(rect.width()):
            high = max(item.sizeHint().height() for item in line)
            x = rect.x()
            for item in line:
                size = item.sizeHint()
                wide = min(size.width(), rect.width())
                if move:
                    top = y + (high - size.height()) // 2
                    item.setGeometry(QRect(x, top, wide, size.height()))
                x += wide + self.spacing()
            y += high + self.spacing()
        used = max(y - self.spacing(), rect.y()) - rect.y()
        return used + around.top() + around.bottom()

    def _lines(self, width: int) -> list[list[QLayoutItem]]:
        lines: list[list[QLayoutItem]] = []
        x = 0
        for item in self._items:
            if item.isEmpty():
                continue
            wide = item.sizeHint().width()
            if not lines or x + wide > width:
                lines.append([])
                x = 0
            lines[-1].append(item)
            x += wide + self.spacing()
        return lines
