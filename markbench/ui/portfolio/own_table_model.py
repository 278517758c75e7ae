"""A learner's file as it stands, and what a person says its columns or rows hold."""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import dataclass, field, replace
from typing import Any

from PySide6.QtCore import QAbstractTableModel, QModelIndex, QObject, QPersistentModelIndex, Qt

from markbench.intake.tables.grid import Grid, column_letters, column_number, text_of
from markbench.intake.tables.outcome import ColumnHints
from markbench.model import ReadingsTable, Source

Index = QModelIndex | QPersistentModelIndex
CELL = re.compile(r"([A-Z]+)(\d+)")
ROLES = ("length", "timing", "swings")
ROLE = int(Qt.ItemDataRole.UserRole)


@dataclass(frozen=True, slots=True)
class Pointing:
    """Line number (column or row, from 0) → what it holds; how the lines run; units.

    ``span`` are the first and last reading's names, where the program's own reading stands.
    """

    roles: dict[int, str] = field(default_factory=dict)
    rows: bool = False
    length_unit: str = ""
    time_unit: str = ""
    span: tuple[str, str] = ("", "")

    @classmethod
    def of(cls, table: ReadingsTable | None, file: str, sheet: str) -> Pointing:
        """How the program read a sheet; nothing where no line holds one thing alone."""
        if table is None or not table.readings:
            return cls()
        lengths = [_place(r.source, file, sheet) for r in table.readings]
        timings = [_place(t.source, file, sheet) for r in table.readings for t in r.timings]
        counts = [_place(r.swings_source, file, sheet) for r in table.readings if r.swings_source]
        if not timings or None in lengths or None in timings:
            return cls()
        for rows in (False, True):
            line, across = (0, 1) if rows else (1, 0)
            of_length = {place[line] for place in lengths if place}
            of_timings = {place[line] for place in timings if place}
            of_counts = {place[line] for place in counts if place} - of_length - of_timings
            if len(of_length) == 1 and not of_length & of_timings and len(of_counts) < 2:
                roles = {
                    **dict.fromkeys(of_length, "length"),
                    **dict.fromkeys(of_timings, "timing"),
                    **dict.fromkeys(of_counts, "swings"),
                }
                along = [place[across] for place in lengths if place]
                first, last = (
                    column_letters(at) if rows else str(at + 1) for at in (min(along), max(along))
                )
                return cls(roles, rows, span=(first, last))
        return cls()

    def with_role(self, line: int, role: str) -> Pointing:
        """One line given a role; there is one line of lengths and one of counts."""
        kept = {
            n: r
            for n, r in self.roles.items()
            if n != line and not (r == role and role in ("length", "swings"))
        }
        roles = {**kept, line: role} if role else kept
        return self if roles == self.roles else replace(self, roles=roles, span=("", ""))

    @property
    def complete(self) -> bool:
        """Whether it names lengths and at least one line of timings."""
        held = self.roles.values()
        return "length" in held and "timing" in held

    def hints(self, sheet: str) -> ColumnHints:
        """In the form in which the reader takes it."""

        def name(line: int) -> str:
            return str(line + 1) if self.rows else column_letters(line)

        lines = {role: [name(n) for n, r in sorted(self.roles.items()) if r == role]
                 for role in ROLES}  # fmt: skip
        return ColumnHints(
            length=lines["length"][0],
            timings=tuple(lines["timing"]),
            sheet=sheet,
            along="rows" if self.rows else "columns",
            swings=lines["swings"][0] if lines["swings"] else "",
            first=self.span[0],
            last=self.span[1],
            length_unit=self.length_unit,
            time_unit=self.time_unit,
        )


def _place(source: Source, file: str, sheet: str) -> tuple[int, int] | None:
    """Row and column of a cell of a sheet, from 0."""
    found = CELL.fullmatch(source.cell)
    if found is None or (source.file, source.sheet) != (file, sheet):
        return None
    return int(found[2]) - 1, column_number(found[1])


class GridModel(QAbstractTableModel):
    """The cells of one sheet, with spreadsheet headings."""

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self.grid: Grid | None = None
        self.pointing = Pointing()
        self._columns = 0
        #: A cell's text as it may be seen.
        self.shown: Callable[[str], str] = str

    def show_grid(self, grid: Grid | None, pointing: Pointing = Pointing()) -> None:
        """Show another sheet, and what its lines are taken to hold."""
        self.beginResetModel()
        self.grid = grid
        self._columns = max((len(row) for row in grid.rows), default=0) if grid else 0
        self.pointing = pointing
        self.endResetModel()

    def point(self, pointing: Pointing) -> None:
        """Say what the lines hold."""
        self.pointing = pointing
        if self.rowCount() and self.columnCount():
            last = self.index(self.rowCount() - 1, self.columnCount() - 1)
            self.dataChanged.emit(self.index(0, 0), last)
            self.headerDataChanged.emit(Qt.Orientation.Horizontal, 0, self.columnCount() - 1)
            self.headerDataChanged.emit(Qt.Orientation.Vertical, 0, self.rowCount() - 1)

    def rowCount(self, parent: Index | None = None) -> int:
        """Rows of the sheet."""
        none = self.grid is None or (parent is not None and parent.isValid())
        return 0 if none or self.grid is None else len(self.grid.rows)

    def columnCount(self, parent: Index | None = None) -> int:
        """Columns of its widest row."""
        return 0 if parent is not None and parent.isValid() else self._columns

    def data(self, index: Index, role: int = int(Qt.ItemDataRole.DisplayRole)) -> Any:
        """A cell's text, and the role of its line."""
        if self.grid is None or not index.isValid():
            return None
        if role == Qt.ItemDataRole.DisplayRole:
            row = self.grid.rows[index.row()]
            return self.shown(text_of(row[index.column()])) if index.column() < len(row) else ""
        if role == ROLE:
            line = index.row() if self.pointing.rows else index.column()
            return self.pointing.roles.get(line, "")
        return None

    def headerData(
        self,
        section: int,
        orientation: Qt.Orientation,
        role: int = int(Qt.ItemDataRole.DisplayRole),
    ) -> Any:
        """Letters and numbers, as in any spreadsheet, with the role beside."""
        if role != Qt.ItemDataRole.DisplayRole:
            return None
        across = orientation == Qt.Orientation.Horizontal
        name = column_letters(section) if across else str(section + 1)
        if across == self.pointing.rows:
            return name
        words = {
            "length": self.tr("length"),
            "timing": self.tr("timing"),
            "swings": self.tr("swings"),
        }.get(self.pointing.roles.get(section, ""), "")
        return f"{name}: {words}" if words else name
