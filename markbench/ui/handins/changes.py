"""What changed: the readings then and now side by side, and the other pieces.

Where the work was marked, it is compared with what the mark rested on. Where it was not, or
that is not known, with the file that a later one replaced, if both lie in the folder.
"""

from __future__ import annotations

from typing import Any

from PySide6.QtCore import QAbstractTableModel, QModelIndex, QObject, QPersistentModelIndex, Qt
from PySide6.QtGui import QColor, QFont
from PySide6.QtWidgets import (
    QAbstractItemView,
    QFrame,
    QHeaderView,
    QSizePolicy,
    QTableView,
    QVBoxLayout,
)

from markbench.model import Portfolio, Reading, ReadingsTable
from markbench.session.hand_ins import Replaced, earlier_table, replaced_pieces
from markbench.session.since_marked import RowChange, row_changes
from markbench.ui.background import Task, in_background
from markbench.ui.desk import Desk
from markbench.ui.handins.since import file_and_time, lengths_words, piece_lines, since_words
from markbench.ui.look.said import figures
from markbench.ui.look.theme import Theme
from markbench.ui.mishaps import plainly
from markbench.ui.parts import label
from markbench.ui.portfolio.changed_strip import ChangedStrip

Index = QModelIndex | QPersistentModelIndex
_MOST_ROWS = 6  # seen without scrolling, whatever the size of the text


class ChangesModel(QAbstractTableModel):
    """Earlier on the left, now on the right; ≠ where they differ."""

    def __init__(self, theme: Theme, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._theme = theme
        self._marked = False
        self.changes: tuple[RowChange, ...] = ()

    def show_changes(self, changes: tuple[RowChange, ...], *, marked: bool) -> None:
        """Show another comparison; ``marked``: the left side is what was marked."""
        self.beginResetModel()
        self.changes, self._marked = changes, marked
        self.endResetModel()

    def rowCount(self, parent: Index | None = None) -> int:
        """Lengths of either table."""
        return 0 if parent is not None and parent.isValid() else len(self.changes)

    def columnCount(self, parent: Index | None = None) -> int:
        """Length, swings and times, twice, and the sign between."""
        return 0 if parent is not None and parent.isValid() else 7

    def headerData(
        self,
        section: int,
        orientation: Qt.Orientation,
        role: int = int(Qt.ItemDataRole.DisplayRole),
    ) -> Any:
        """Headings with units."""
        if orientation == Qt.Orientation.Horizontal and role == Qt.ItemDataRole.DisplayRole:
            then = self.tr("when marked:") if self._marked else self.tr("earlier:")
            now, length = self.tr("now:"), self.tr("L / cm")
            return (f"{then}\n{length}", "N", "t / s", "", f"{now}\n{length}", "N",
                    "t / s")[section]  # fmt: skip
        return None

    def data(self, index: Index, role: int = int(Qt.ItemDataRole.DisplayRole)) -> Any:
        """The numbers; changed rows in bold on a tint."""
        if not index.isValid():
            return None
        change = self.changes[index.row()]
        if role == Qt.ItemDataRole.DisplayRole:
            if index.column() == 3:
                return "≠" if change.changed else "="
            reading = change.earlier if index.column() < 3 else change.now
            return _cell(reading, index.column() % 4)
        if role == Qt.ItemDataRole.AccessibleTextRole and index.column() == 3:
            return self.tr("changed") if change.changed else self.tr("the same")
        if change.changed and role == Qt.ItemDataRole.BackgroundRole:
            return QColor(self._theme.palette.ask_soft)
        if change.changed and role == Qt.ItemDataRole.FontRole:
            font: QFont = self._theme.font(bold=True)
            return font
        return None


def _cell(reading: Reading | None, column: int) -> str:
    if reading is None:
        return "–"
    if column == 0:
        return figures(f"{100 * reading.length_m:.1f}")
    if column == 1:
        return str(reading.swings)
    times = (f"{t.time_s:.{2 if t.decimals is None else t.decimals}f}" for t in reading.timings)
    return figures("  ".join(times))


class ChangesPanel(QFrame):
    """Hidden where nothing changed and the learner handed in once."""

    def __init__(self, desk: Desk, theme: Theme) -> None:
        super().__init__()
        self.setProperty("kind", "paper")
        self.setSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Maximum)
        self._desk, self._theme = desk, theme
        self.learner = ""
        self._task: Task | None = None
        self.heading = label(kind="heading", wrap=True)
        self.words = label(kind="small", wrap=True)
        self.strip = ChangedStrip(desk, sees=False)
        self.model = ChangesModel(theme, self)
        self.table = QTableView()
        self.table.setProperty("kind", "roll")
        self.table.setAccessibleName(self.tr("Earlier and present readings side by side"))
        self.table.setModel(self.model)
        self.table.setFrameShape(QFrame.Shape.NoFrame)
        self.table.setSelectionMode(QAbstractItemView.SelectionMode.NoSelection)
        self.table.setTabKeyNavigation(False)
        self.table.verticalHeader().hide()
        self.table.horizontalHeader().setSectionResizeMode(QHeaderView.ResizeMode.ResizeToContents)
        column = QVBoxLayout(self)
        column.setContentsMargins(12, 8, 12, 8)
        column.setSpacing(4)
        column.addWidget(self.heading)
        column.addWidget(self.words)
        column.addWidget(self.table)
        column.addWidget(self.strip)
        self.hide()
        theme.changed.connect(self._fit)
        self._fit()

    def show_learner(self, learner: str) -> None:
        """Compare for a learner; an earlier file is read in the background."""
        if self._task is not None:
            self._task.stop()
        self.learner = learner
        changed = self.strip.show_learner(learner)
        if not learner:
            self.hide()
            return
        portfolio = self._desk.session.portfolio(learner)
        replaced = replaced_pieces(portfolio)
        known = changed is not None and not changed.by_date
        self.setVisible(bool(replaced) or changed is not None)
        self.table.hide()
        name = portfolio.learner.name or learner
        if known and changed is not None:
            self.heading.setText(f"{name}: {since_words(changed)}")
            lines = piece_lines(changed, portfolio)
            if changed.rows and not changed.differing:
                lines.append(lengths_words(changed.rows))
            self.words.setText("\n".join(lines))
            if changed.rows:
                self._show(changed.rows, marked=True)
            return
        self.heading.setText(self.tr("What changed: {name}").format(name=name))
        lines = [] if changed is None else [since_words(changed)]
        self.words.setText("\n".join((*lines, *self._replaced(replaced))))
        if any(one.kind == "readings" for one in replaced):
            self._read_earlier(portfolio)

    def _replaced(self, replaced: tuple[Replaced, ...]) -> list[str]:
        words = self.tr("{now} stands in place of {earlier}")
        return [
            words.format(
                now=self.tr("nothing") if one.now is None else file_and_time(one.now),
                earlier=file_and_time(one.earlier),
            )
            for one in replaced
        ]

    def _read_earlier(self, portfolio: Portfolio) -> None:
        now, held, learner = portfolio.table, self._desk.held, portfolio.learner.id
        if now is None:
            return
        self._task = in_background(
            self,
            lambda _progress, _stop: earlier_table(held, learner),
            done=lambda table: self._compare(table, now),
            failed=lambda error: self.words.setText(self._desk.hidden(plainly(error), learner)),
        )

    def _compare(self, earlier: ReadingsTable | None, now: ReadingsTable) -> None:
        if earlier is None:
            words = self.tr("The earlier table cannot be read any more.")
        else:
            changes = row_changes(earlier.readings, now.readings)
            words = self.tr("The numbers are the same.")
            if any(change.changed for change in changes):
                words = self.tr("Readings: {what}.").format(what=lengths_words(changes))
            self._show(changes, marked=False)
        self.words.setText(f"{self.words.text()}\n{words}")

    def _show(self, changes: tuple[RowChange, ...], *, marked: bool) -> None:
        self.model.show_changes(changes, marked=marked)
        self._fit()
        # Beside an empty half there is nothing to compare.
        self.table.setVisible(
            any(change.earlier for change in changes) and any(change.now for change in changes)
        )

    def _fit(self) -> None:
        """A usual table is seen whole; a longer one is scrolled."""
        high = self._theme.px(26)
        self.table.verticalHeader().setDefaultSectionSize(high)
        rows = min(self.model.rowCount(), _MOST_ROWS)
        head = self.table.horizontalHeader().sizeHint().height()
        bar = self.table.horizontalScrollBar().sizeHint().height()
        self.table.setFixedHeight(head + rows * high + bar + self._theme.px(2))
