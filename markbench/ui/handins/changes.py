"""What changed since an earlier hand-in: both tables side by side, and the other pieces."""

from __future__ import annotations

from typing import Any

from PySide6.QtCore import QAbstractTableModel, QModelIndex, QObject, QPersistentModelIndex, Qt
from PySide6.QtGui import QColor, QFont
from PySide6.QtWidgets import QAbstractItemView, QFrame, QHeaderView, QTableView, QVBoxLayout

from markbench.model import Reading, ReadingsTable
from markbench.session.hand_ins import earlier_table, replaced_pieces
from markbench.session.since_marked import RowChange, row_changes
from markbench.ui.background import Task, in_background
from markbench.ui.desk import Desk
from markbench.ui.look.dates import short_day_and_time
from markbench.ui.look.theme import Theme
from markbench.ui.parts import label
from markbench.ui.said import plainly

Index = QModelIndex | QPersistentModelIndex


class ChangesModel(QAbstractTableModel):
    """Earlier on the left, now on the right; ≠ where they differ."""

    def __init__(self, theme: Theme, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._theme = theme
        self.changes: tuple[RowChange, ...] = ()

    def show_changes(self, changes: tuple[RowChange, ...]) -> None:
        """Show another comparison."""
        self.beginResetModel()
        self.changes = changes
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
            return (self.tr("earlier: L / cm"), "N", "t / s", "", self.tr("now: L / cm"), "N",
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
        return f"{100 * reading.length_m:.1f}"
    if column == 1:
        return str(reading.swings)
    return "  ".join(f"{t.time_s:.{2 if t.decimals is None else t.decimals}f}"
                     for t in reading.timings)  # fmt: skip


class ChangesPanel(QFrame):
    """Hidden where the learner handed in once."""

    def __init__(self, desk: Desk, theme: Theme) -> None:
        super().__init__()
        self.setProperty("kind", "paper")
        self._desk = desk
        self.learner = ""
        self._task: Task | None = None
        self.heading = label(kind="heading")
        self.words = label(kind="small", wrap=True)
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
        self.table.horizontalHeader().setStretchLastSection(True)
        column = QVBoxLayout(self)
        column.setContentsMargins(12, 8, 12, 8)
        column.setSpacing(4)
        column.addWidget(self.heading)
        column.addWidget(self.words)
        column.addWidget(self.table, 1)
        self.hide()

    def show_learner(self, learner: str) -> None:
        """Compare for a learner; the earlier file is read in the background."""
        if self._task is not None:
            self._task.stop()
        self.learner = learner
        if not learner:
            self.hide()
            return
        portfolio = self._desk.session.portfolio(learner)
        replaced = replaced_pieces(portfolio)
        self.setVisible(bool(replaced))
        if not replaced:
            return
        self.heading.setText(
            self.tr("What changed: {name}").format(name=portfolio.learner.name or learner)
        )
        lines = []
        for one in replaced:
            now = one.now.file if one.now is not None else self.tr("nothing")
            words = self.tr("{now} stands in place of {earlier}")
            earlier = _with_time(one.earlier.file, one.earlier)
            lines.append(words.format(now=_with_time(now, one.now), earlier=earlier))
        self.words.setText("\n".join(lines))
        self.table.hide()
        now_table, held = portfolio.table, self._desk.held
        if now_table is None or not any(one.kind == "readings" for one in replaced):
            return
        self._task = in_background(
            self,
            lambda _progress, _stop: earlier_table(held, learner),
            done=lambda table: self._compare(table, now_table),
            failed=lambda error: self.words.setText(self._desk.hidden(plainly(error), learner)),
        )

    def _compare(self, earlier: ReadingsTable | None, now: ReadingsTable) -> None:
        if earlier is None:
            self.words.setText(
                self.words.text() + "\n" + self.tr("The earlier table cannot be read any more.")
            )
            return
        changes = row_changes(earlier.readings, now.readings)
        self.model.show_changes(changes)
        differ = sum(change.changed for change in changes)
        if differ:
            words = self.tr("{n} of {of} lengths differ.").format(n=differ, of=len(changes))
        else:
            words = self.tr("The numbers are the same.")
        self.words.setText(f"{self.words.text()}\n{words}")
        self.table.show()


def _with_time(file: str, piece: Any) -> str:
    when = piece.modified if piece is not None else None
    return f"{file} ({short_day_and_time(when)})" if when is not None else file
