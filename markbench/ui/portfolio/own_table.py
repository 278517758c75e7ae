"""The learner's own table as it stands: see the very cell, point at columns, or type instead."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace
from functools import partial
from pathlib import Path

from PySide6.QtCore import QModelIndex, QPersistentModelIndex, Qt, Signal
from PySide6.QtGui import QColor, QKeyEvent, QPainter
from PySide6.QtWidgets import (
    QAbstractItemView,
    QCheckBox,
    QComboBox,
    QFrame,
    QHBoxLayout,
    QPushButton,
    QStyledItemDelegate,
    QStyleOptionViewItem,
    QTableView,
    QVBoxLayout,
    QWidget,
)

from markbench.intake.tables.grid import Grid, column_number
from markbench.model import Piece, Source
from markbench.ui.background import in_background
from markbench.ui.choosing import COLUMN, ROW, choose_only
from markbench.ui.desk import Desk
from markbench.ui.flow import FlowLayout
from markbench.ui.look.theme import Theme
from markbench.ui.mishaps import plainly
from markbench.ui.parts import IconButton, button, label, quiet_scroll
from markbench.ui.portfolio.own_table_model import CELL, ROLE, GridModel, Pointing
from markbench.ui.portfolio.typed import TypedTable

Index = QModelIndex | QPersistentModelIndex
_MOST_BYTES = 50_000_000


def load_grids(folder: Path, file: str) -> tuple[Grid, ...]:
    """The sheets of a piece; ``ValueError`` with a sentence where there are none."""
    from markbench.intake.tables import UnreadableError, read_grids
    from markbench.intake.tree import open_piece

    try:
        return read_grids(file, open_piece(folder, file, _MOST_BYTES))
    except UnreadableError as error:
        raise ValueError(f"{file}: {error}.") from error


class _Delegate(QStyledItemDelegate):
    """Tints the lines that were pointed at."""

    def __init__(self, theme: Theme, parent: QWidget) -> None:
        super().__init__(parent)
        self._theme = theme

    def paint(self, painter: QPainter, option: QStyleOptionViewItem, index: Index) -> None:
        if index.data(ROLE):
            painter.fillRect(option.rect, QColor(self._theme.palette.ask_soft))
        super().paint(painter, option, index)


class OwnTable(QFrame):
    """Lies over the left of the sheet like the evidence viewer. Escape closes."""

    closed = Signal()

    def __init__(self, desk: Desk, theme: Theme) -> None:
        super().__init__()
        self.setProperty("kind", "paper")
        self._desk, self._learner, self._file = desk, "", ""
        self._grids: tuple[Grid, ...] = ()
        self._wanted: Source | None = None
        self._as_read = Pointing()
        self.model = GridModel(self)
        self.table = QTableView()
        self.table.setAccessibleName(self.tr("The learner's own table"))
        self.table.setModel(self.model)
        self.table.setItemDelegate(_Delegate(theme, self.table))
        self.table.setEditTriggers(QAbstractItemView.EditTrigger.NoEditTriggers)
        self.table.setTabKeyNavigation(False)
        self._caption = label(wrap=True)
        self.sheets = QComboBox()
        self.sheets.setAccessibleName(self.tr("Sheet"))
        self.sheets.currentIndexChanged.connect(self._show_sheet)
        self.roles = {
            "length": self._role(self.tr("Length")),
            "timing": self._role(self.tr("Timing")),
            "swings": self._role(self.tr("Swings")),
            "": self._role(self.tr("Neither")),
        }
        for role, control in self.roles.items():
            control.clicked.connect(partial(self._point, role))
        self.rows = QCheckBox(self.tr("It runs in rows"))
        self.rows.toggled.connect(self._turn)
        self.length_unit = self._units(self.tr("Unit of length"), ("mm", "cm", "m", "inch"))
        self.time_unit = self._units(self.tr("Unit of time"), ("s", "ms", "min"))
        for box in (self.length_unit, self.time_unit):
            box.currentIndexChanged.connect(self._consider)
        self.take = button(self.tr("Read it so"), "deed", self._take)
        self._why = label(kind="small", wrap=True)
        self.restore = button(self.tr("As the program read it"), "", self._restore)
        self.typed = TypedTable(desk, theme)
        shut = IconButton(theme, "cross", self.tr("Close (Esc)"), self.shut)
        self._lay_out(shut)

    def _lay_out(self, shut: QWidget) -> None:
        head = QHBoxLayout()
        head.addWidget(self._caption, 1)
        head.addWidget(self.sheets)
        head.addWidget(shut)
        deeds = FlowLayout(spacing=6)
        deeds.addWidget(label(self.tr("The chosen column holds:"), "quiet"))
        for control in self.roles.values():
            deeds.addWidget(control)
        for part in (self.length_unit, self.time_unit, self.rows, self.take, self.restore):
            deeds.addWidget(part)
        inside = QWidget()
        inside.setProperty("kind", "inside")
        self._file_parts = QWidget()
        of_file = QVBoxLayout(self._file_parts)
        of_file.setContentsMargins(0, 0, 0, 0)
        of_file.setSpacing(8)
        self.table.setMinimumHeight(220)
        of_file.addWidget(self.table, 1)
        of_file.addLayout(deeds)
        of_file.addWidget(self._why)
        parts = QVBoxLayout(inside)
        parts.setContentsMargins(0, 0, 4, 0)
        parts.setSpacing(8)
        parts.addWidget(self._file_parts, 3)
        parts.addWidget(self.typed, 2)
        column = QVBoxLayout(self)
        column.setContentsMargins(12, 8, 8, 12)
        column.setSpacing(8)
        column.addLayout(head)
        column.addWidget(quiet_scroll(inside), 1)

    def open_table(self, learner: str, file: str, wanted: Source | None = None) -> None:
        """Show a file of readings, at the cell of ``wanted`` if given."""
        self._learner, self._wanted = learner, wanted
        self.model.shown = partial(self._desk.hidden, learner=learner)
        self.typed.show_learner(learner)
        self.show()
        self.raise_()
        if file == self._file and self._grids:
            self._offer()
            self._show_wanted()
            return
        self._file = file
        self._grids = ()
        self._offer()
        self._caption.setText(file or self.tr("No table was handed in."))
        self._show_file(bool(file))
        if file:
            folder, true_file = self._desk.session.folder, self._desk.true_file(file)
            in_background(
                self,
                lambda _progress, _stop: load_grids(folder, true_file),
                done=partial(self._arrived, file),
                failed=partial(self._failed, file),
            )

    def _show_file(self, there: bool) -> None:
        """Point at the file, or type where there is none; the keyboard comes along."""
        self._file_parts.setVisible(there)
        self.typed.come_first(not there)
        if there:
            self.table.setFocus()
        else:
            self.typed.take_keyboard()

    def _failed(self, file: str, error: Exception) -> None:
        if file == self._file:
            self._caption.setText(self._desk.hidden(plainly(error)))
            self._show_file(False)

    def renew(self, tables: Iterable[Piece]) -> None:
        """Close where its file is not the learner's any more, or no longer called so."""
        if self._file and self._file not in {piece.file for piece in tables}:
            self._file, self._grids = "", ()
            self.hide()

    def shut(self) -> None:
        """Close."""
        self.hide()
        self.closed.emit()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Escape closes."""
        if event.key() == Qt.Key.Key_Escape:
            self.shut()
        else:
            super().keyPressEvent(event)

    def _role(self, words: str) -> QPushButton:
        return QPushButton(words)

    def _units(self, name: str, units: tuple[str, ...]) -> QComboBox:
        box = QComboBox()
        box.setAccessibleName(name)
        box.addItem(self.tr("{name}: as headed").format(name=name), "")
        for unit in units:
            box.addItem(f"{name}: {unit}", unit)
        return box

    def _arrived(self, file: str, grids: tuple[Grid, ...]) -> None:
        if file != self._file:
            return
        self._grids = grids
        self._offer()
        self._show_wanted()

    def _offer(self) -> None:
        self.sheets.blockSignals(True)
        self.sheets.clear()
        for number, grid in enumerate(self._grids):
            self.sheets.addItem(grid.sheet or self.tr("Text"), number)
        self.sheets.blockSignals(False)
        self.sheets.setVisible(len(self._grids) > 1)
        held = self._desk.session.value("hints", "", self._file) if self._file else None
        self.restore.setEnabled(held is not None)
        for box in (self.length_unit, self.time_unit):
            box.setCurrentIndex(0)
        self._show_sheet(self._of_readings())

    def _of_readings(self) -> int:
        """The sheet the readings were read from, or the first."""
        table = self._desk.session.portfolio(self._learner).table
        sheet = table.readings[0].source.sheet if table is not None and table.readings else ""
        return next((n for n, grid in enumerate(self._grids) if grid.sheet == sheet), 0)

    def _show_sheet(self, number: int) -> None:
        """A sheet as the program read it, its first column chosen."""
        grid = self._grids[number] if 0 <= number < len(self._grids) else None
        table = self._desk.session.portfolio(self._learner).table
        self._as_read = Pointing() if grid is None else Pointing.of(table, self._file, grid.sheet)
        self.sheets.blockSignals(True)
        self.sheets.setCurrentIndex(number)
        self.sheets.blockSignals(False)
        self.rows.blockSignals(True)
        self.rows.setChecked(self._as_read.rows)
        self.rows.blockSignals(False)
        self.model.show_grid(grid, self._as_read)
        self.table.resizeColumnsToContents()
        if grid is not None:
            line = ROW if self._as_read.rows else COLUMN
            choose_only(self.table, self.model.index(0, 0), line)
        self._consider()

    def _show_wanted(self) -> None:
        wanted = self._wanted
        self._show_file(True)
        place = CELL.fullmatch(wanted.cell) if wanted is not None else None
        if wanted is None or place is None:
            return
        for number, grid in enumerate(self._grids):
            if grid.sheet == wanted.sheet:
                self.sheets.setCurrentIndex(number)
        index = self.model.index(int(place[2]) - 1, column_number(place[1]))
        choose_only(self.table, index)
        self.table.scrollTo(index, QAbstractItemView.ScrollHint.PositionAtCenter)

    def _point(self, role: str) -> None:
        pointing = self.model.pointing
        chosen = self.table.selectedIndexes() or [self.table.currentIndex()]
        for index in chosen:
            pointing = pointing.with_role(index.row() if pointing.rows else index.column(), role)
        self.model.point(pointing)
        self._consider()

    def _turn(self, rows: bool) -> None:
        self.model.point(Pointing(rows=rows))
        self._consider()

    def _pointed(self) -> Pointing:
        """What the lines hold, with the units chosen beside."""
        return replace(
            self.model.pointing,
            length_unit=self.length_unit.currentData(),
            time_unit=self.time_unit.currentData(),
        )

    def _consider(self) -> None:
        """Whether it can be read so, and if not, what is wanting."""
        pointed = self._pointed()
        why = ""
        if not pointed.complete:
            why = self.tr(
                "Choose a column, then say what it holds: lengths and timings are needed."
            )
            if pointed.rows:
                why = self.tr(
                    "Choose a row, then say what it holds: lengths and timings are needed."
                )
        elif pointed == self._as_read:
            why = self.tr("So the program reads it now. Change what a column holds, or a unit.")
        self.take.setEnabled(self.model.grid is not None and not why)
        self._why.setText(why)

    def _take(self) -> None:
        grid, file = self.model.grid, self._file
        if grid is None:
            return
        hints = self._pointed().hints(grid.sheet).to_json()
        self._desk.do(lambda session: session.point_at_columns(file, hints))
        self.shut()

    def _restore(self) -> None:
        file = self._file
        self._desk.do(lambda session: session.point_at_columns(file, None))
        self.shut()
