"""What the papers of the moderation page are made of."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from functools import partial

from PySide6.QtCore import QRect, Qt, SignalInstance
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import (
    QAbstractItemView,
    QFrame,
    QHeaderView,
    QLineEdit,
    QSizePolicy,
    QTableWidget,
    QTableWidgetItem,
    QVBoxLayout,
    QWidget,
)

from markbench.ui.flow import FlowLayout
from markbench.ui.parts import LinkLabel, label

_INSIDE = 16  # above and below a text together
_ASIDE = 24  # left and right of it, and a little more, so that no line is taken to fit
_NAMED = 6  # learners in one line; the rest show once these are seen to
_LEARNER = int(Qt.ItemDataRole.UserRole)


class Paper(QFrame):
    """A sheet with a heading; its parts go into ``column``."""

    def __init__(self, heading: str) -> None:
        super().__init__()
        self.setProperty("kind", "paper")
        self.column = QVBoxLayout(self)
        self.column.setContentsMargins(12, 8, 12, 10)
        self.column.setSpacing(6)
        self.column.addWidget(label(heading, "heading"))


class Roll(QTableWidget):
    """Rows to be read, each of a learner or none; as high as its rows, up to a limit."""

    aside = _ASIDE

    def __init__(
        self, headings: Sequence[str], name: str, most_rows: int = 12, air: int = 0
    ) -> None:
        super().__init__(0, len(headings))
        self.setProperty("kind", "roll")
        self.setAccessibleName(name)
        self.setHorizontalHeaderLabels(list(headings))
        self.verticalHeader().setVisible(False)
        self.setSelectionBehavior(QAbstractItemView.SelectionBehavior.SelectRows)
        self.setSelectionMode(QAbstractItemView.SelectionMode.SingleSelection)
        self.setEditTriggers(QAbstractItemView.EditTrigger.NoEditTriggers)
        self.setTabKeyNavigation(False)
        self.setShowGrid(False)
        self.setVerticalScrollMode(QAbstractItemView.ScrollMode.ScrollPerPixel)
        self.setHorizontalScrollMode(QAbstractItemView.ScrollMode.ScrollPerPixel)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        self.horizontalHeader().setHighlightSections(False)
        self.horizontalHeader().setDefaultAlignment(Qt.AlignmentFlag.AlignLeft)
        self.horizontalHeader().setSectionResizeMode(QHeaderView.ResizeMode.ResizeToContents)
        self.horizontalHeader().setStretchLastSection(True)
        self._most_rows, self._air = most_rows, air

    def fill(self, rows: Sequence[tuple[str, Sequence[str]]]) -> None:
        """Show (learner, cells) rows."""
        at = self.currentRow()
        self.setRowCount(len(rows))
        for number, (learner, cells) in enumerate(rows):
            for column, text in enumerate(cells):
                item = QTableWidgetItem(text)
                item.setData(_LEARNER, learner)
                item.setToolTip(text)
                self.setItem(number, column, item)
        self.fit()
        if rows:
            self.setCurrentCell(min(max(at, 0), len(rows) - 1), 0)

    def fit(self) -> None:
        """As high as the rows are."""
        self.resizeRowsToContents()
        last, metrics = self.columnCount() - 1, self.fontMetrics()
        room = QRect(0, 0, self.columnWidth(last) - self.aside, 10_000)
        for at in range(self.rowCount()):
            # Qt's own height forgets the padding of the sheet, and cuts a line that just fits.
            item = self.item(at, last)
            words = item.text() if item is not None else ""
            needs = metrics.boundingRect(room, Qt.TextFlag.TextWordWrap, words).height() + _INSIDE
            lines = needs > metrics.height() + _INSIDE
            high = max(self.rowHeight(at), needs if lines else 0)
            self.setRowHeight(at, high + self._air)
        rows = [self.rowHeight(at) for at in range(min(self.rowCount(), self._most_rows))]
        self.setFixedHeight(self.horizontalHeader().sizeHint().height() + sum(rows) + 6)

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Words wrap anew where the width is another."""
        super().resizeEvent(event)
        if event.size().width() != event.oldSize().width():
            self.fit()

    def learner(self, row: int) -> str:
        """Whose row it is."""
        item = self.item(row, 0)
        return "" if item is None else str(item.data(_LEARNER))

    def texts(self) -> list[list[str]]:
        """What stands in it, row by row."""
        return [
            [item.text() if (item := self.item(r, c)) else "" for c in range(self.columnCount())]
            for r in range(self.rowCount())
        ]


class Leads(QWidget):
    """Words, and the learners they are about: a press on a name leads to the sheet."""

    def __init__(self, opened: SignalInstance) -> None:
        super().__init__()
        self._opened = opened
        self._row = FlowLayout(self, spacing=8)
        self.words = label()
        self._row.addWidget(self.words)
        self.names: list[LinkLabel] = []
        self._shown: list[tuple[str, str]] = []
        self.hide()

    def show_learners(self, words: str, learners: Sequence[str], names: Mapping[str, str]) -> None:
        """Show the first of them; nothing where there are none."""
        self.setVisible(bool(learners))
        self.words.setText(words)
        shown = [(one, names.get(one, one)) for one in learners[: _NAMED + 1]]
        if shown == self._shown:
            return
        self._shown = shown
        for old in self.names:
            self._row.removeWidget(old)
            old.hide()  # at once: it may bear a name that is to be hidden
            old.deleteLater()
        self.names = []
        for at, (learner, name) in enumerate(shown):
            link = LinkLabel()
            link.show_link("…" if at == _NAMED else name, True)
            link.setAccessibleName(name)
            link.setWordWrap(False)
            link.clicked.connect(partial(self._opened.emit, learner))
            self.names.append(link)
            self._row.addWidget(link)


def line(name: str) -> QLineEdit:
    """A line to write in, with its name as placeholder."""
    made = QLineEdit()
    made.setPlaceholderText(name)
    made.setAccessibleName(name)
    return made
