"""One learner's readings as a Qt table: as written, recomputed, questioned, corrected."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Any

from PySide6.QtCore import (
    QAbstractTableModel,
    QModelIndex,
    QObject,
    QPersistentModelIndex,
    Qt,
)

from markbench.model import (
    Concern,
    Explanation,
    Finding,
    Reading,
    ReadingsTable,
    Row,
    Source,
    Timing,
)
from markbench.ui.desk import Desk
from markbench.ui.look.said import figures, said
from markbench.ui.portfolio.cells import (
    Cell,
    Slot,
    cells_of_finding,
    correction_key,
    timing_slots,
)

Index = QModelIndex | QPersistentModelIndex
CELL = int(Qt.ItemDataRole.UserRole)
_RIGHT = Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter


@dataclass(frozen=True, slots=True)
class CellLook:
    """All that is painted of a cell. ``original`` is the learner's text, if corrected;
    ``unread`` says that ``text`` is a correction that could not be read."""

    text: str
    original: str
    concern: Concern | None
    explained: bool
    computed: bool
    unread: bool


class ReadingsModel(QAbstractTableModel):
    """Columns: length, swings, each timing, then T, T² and g of each length."""

    def __init__(self, desk: Desk, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._desk = desk
        self.learner = ""
        self._readings: tuple[Reading, ...] = ()
        self._rows: tuple[Row, ...] = ()
        self._slots: list[tuple[Slot, ...]] = []
        self._timings = 0
        self._questioned: dict[Cell, list[Finding]] = {}
        self._explained: frozenset[Cell] = frozenset()
        self._unread_cells: frozenset[str] = frozenset()
        self._looks: dict[tuple[int, int], CellLook] = {}  # each is measured, then painted

    def show_learner(self, learner: str) -> None:
        """Show the readings of a learner as they are now."""
        self.beginResetModel()
        session = self._desk.session
        self.learner = learner
        table = session.portfolio(learner).table
        self._readings = table.readings if table is not None else ()
        rows = session.analysis(learner).rows
        self._rows = rows if len(rows) == len(self._readings) else ()
        self._slots = (
            timing_slots(table, for_many=self._for_many(table)) if table is not None else []
        )
        self._timings = max(map(len, self._slots), default=0)
        self._questioned = {}
        for finding in session.findings(learner):
            for cell in cells_of_finding(finding, table):
                self._questioned.setdefault(cell, []).append(finding)
        self._unread_cells = frozenset(
            correction_key(source)
            for finding in session.findings(learner)
            if "correction" in finding.numbers
            for source in finding.sources
        )
        self._explained = frozenset()
        self._looks.clear()
        self.endResetModel()

    def show_explanation(self, explanation: Explanation | None) -> None:
        """Outline the cells that speak for an explanation."""
        self._explained = frozenset(explanation.cells if explanation is not None else ())
        self._looks.clear()
        if self._readings:
            last = self.index(self.rowCount() - 1, self.columnCount() - 1)
            self.dataChanged.emit(self.index(0, 0), last)

    def cell_at(self, index: Index) -> Cell | None:
        """The reading's cell at an index; ``None`` for what was recomputed."""
        if index.isValid() and index.column() == 0:
            return (index.row(), None)
        slot = self._slot(index)
        return (index.row(), slot.timing) if slot is not None and slot.timing is not None else None

    def index_of(self, cell: Cell) -> QModelIndex:
        """Where a cell stands."""
        reading, timing = cell
        if timing is None or not 0 <= reading < len(self._slots):
            return self.index(reading, 0)
        held = [slot.timing for slot in self._slots[reading]]
        return self.index(reading, 2 + held.index(timing)) if timing in held else QModelIndex()

    def source_of(self, index: Index) -> Source | None:
        """Where the value at an index was read from, or the empty cell where one can be put."""
        if not index.isValid() or index.column() >= 2 + self._timings:
            return None
        if index.column() < 2:
            reading = self._readings[index.row()]
            return reading.swings_source if index.column() else reading.source
        slot = self._slot(index)
        return slot.source if slot is not None else None

    def why_not(self, index: Index) -> str:
        """Why nothing can be typed at an index, and where it can; empty where it can be."""
        if not index.isValid() or self.flags(index) & Qt.ItemFlag.ItemIsEditable:
            return ""
        if index.column() >= 2 + self._timings:
            return self.tr("T, T² and g are worked out: correct the length or a time instead.")
        return self.tr(
            "This is no cell of the learner’s table. “Whole table” takes what you type instead."
        )

    def _for_many(self, table: ReadingsTable) -> bool:
        """Whether others' readings stand in the same file; asked where a timing is missing."""
        if len({len(reading.timings) for reading in table.readings}) < 2:
            return False
        session, file = self._desk.session, table.source.file
        tables = (session.portfolio(one.id).table for one in session.learners)
        return sum(one is not None and one.source.file == file for one in tables) > 1

    def _slot(self, index: Index) -> Slot | None:
        if not index.isValid() or not 2 <= index.column() < 2 + self._timings:
            return None
        return self._slots[index.row()][index.column() - 2]

    def rowCount(self, parent: Index | None = None) -> int:
        """Number of lengths."""
        return 0 if parent is not None and parent.isValid() else len(self._readings)

    def columnCount(self, parent: Index | None = None) -> int:
        """Length, swings, timings, T, T², g."""
        return 0 if parent is not None and parent.isValid() else 5 + self._timings

    def headerData(
        self,
        section: int,
        orientation: Qt.Orientation,
        role: int = int(Qt.ItemDataRole.DisplayRole),
    ) -> Any:
        """Quantity and unit, as a heading should have them."""
        if role != Qt.ItemDataRole.DisplayRole or orientation != Qt.Orientation.Horizontal:
            return None
        times = [f"t{'₁₂₃₄₅₆₇₈₉'[i] if i < 9 else i + 1} / s" for i in range(self._timings)]
        return ["L / cm", "N", *times, "T / s", "T² / s²", "g / (m/s²)"][section]

    def flags(self, index: Index) -> Qt.ItemFlag:
        """Raw values may be corrected where they came from a cell, and empty cells filled."""
        flags = Qt.ItemFlag.ItemIsEnabled | Qt.ItemFlag.ItemIsSelectable
        source = self.source_of(index)
        return flags | Qt.ItemFlag.ItemIsEditable if source is not None and source.cell else flags

    def data(self, index: Index, role: int = int(Qt.ItemDataRole.DisplayRole)) -> Any:
        """Value, alignment, findings and corrections of a cell."""
        if not index.isValid():
            return None
        if role == Qt.ItemDataRole.DisplayRole:
            return self._text(index)
        if role == Qt.ItemDataRole.EditRole:
            source = self.source_of(index)
            return self._corrected(source) or (source.raw if source else self._text(index))
        if role == Qt.ItemDataRole.TextAlignmentRole:
            return _RIGHT
        if role == CELL:
            return self._look(index)
        if role in (Qt.ItemDataRole.ToolTipRole, Qt.ItemDataRole.AccessibleDescriptionRole):
            return self._in_words(index)
        return None

    def setData(self, index: Index, value: Any, role: int = int(Qt.ItemDataRole.EditRole)) -> bool:
        """Correct a reading; an empty text restores the original."""
        source, text = self.source_of(index), str(value).strip()
        if role != Qt.ItemDataRole.EditRole or source is None:
            return False
        if text == (self._corrected(source) or source.raw):
            return False
        learner = self.learner
        self._desk.do(lambda session: session.correct(learner, source, text or None))
        return True

    def leave_out(self, index: Index) -> bool:
        """Take a timing out of the reckoning; False where there is none."""
        cell, source = self.cell_at(index), self.source_of(index)
        if cell is None or cell[1] is None or source is None:
            return False
        learner = self.learner
        self._desk.do(lambda session: session.correct(learner, source, ""))
        return True

    def _look(self, index: Index) -> CellLook:
        place = (index.row(), index.column())
        if place not in self._looks:
            self._looks[place] = self._worked_out(index)
        return self._looks[place]

    def _worked_out(self, index: Index) -> CellLook:
        source, cell = self.source_of(index), self.cell_at(index)
        return CellLook(
            text=self._text(index),
            original=source.raw if source is not None and self._corrected(source) else "",
            concern=max((f.concern for f in self._findings(index)), default=None),
            explained=cell in self._explained,
            computed=index.column() >= 2 + self._timings,
            unread=source is not None and correction_key(source) in self._unread_cells,
        )

    def _text(self, index: Index) -> str:
        row, column = index.row(), index.column()
        reading = self._readings[row]
        if self._unread(index):
            return self._corrected(self.source_of(index))
        if column == 0:
            return length_text(reading)
        if column == 1:
            return str(reading.swings)
        if column < 2 + self._timings:
            slot = self._slots[row][column - 2]
            return "" if slot.timing is None else time_text(reading.timings[slot.timing])
        if not self._rows:
            return ""
        computed = self._rows[row]
        values = (computed.period_s, computed.period_squared_s2, computed.g)
        number = values[column - 2 - self._timings]
        places = 2 if column == 4 + self._timings else 3
        return figures(f"{number:.{places}f}") if math.isfinite(number) else ""

    def _findings(self, index: Index) -> list[Finding]:
        cell = self.cell_at(index)
        return self._questioned.get(cell, []) if cell is not None else []

    def _unread(self, index: Index) -> bool:
        """Whether the teacher's own text in this cell could not be read."""
        source = self.source_of(index)
        return source is not None and correction_key(source) in self._unread_cells

    def _corrected(self, source: Source | None) -> str:
        if source is None:
            return ""
        held = self._desk.session.value("correction", self.learner, correction_key(source))
        return "" if held is None else str(held)

    def _in_words(self, index: Index) -> str:
        found = sorted(self._findings(index), key=lambda finding: -finding.concern)
        parts = [said(finding.message) for finding in found]
        source = self.source_of(index)
        if source is not None:
            corrected = self._corrected(source)
            if corrected and not source.raw:
                told = self.tr("“{text}” cannot be read.") if self._unread(index) else self.tr(
                    "Nothing was written here; filled in with “{text}”.")  # fmt: skip
                parts.append(told.format(text=corrected))
            elif corrected and self._unread(index):
                words = self.tr("“{text}” cannot be read; “{raw}” still counts.")
                parts.append(words.format(raw=source.raw, text=corrected))
            elif corrected:
                parts.append(
                    self.tr("Written “{raw}”; corrected to “{text}”.").format(
                        raw=source.raw, text=corrected
                    )
                )
            parts.append(said(str(source)))
        return "\n".join(parts)


def length_text(reading: Reading) -> str:
    """A length in centimetres with the decimals it was written with."""
    written = 1 if reading.length_raw_decimals is None else reading.length_raw_decimals
    shift = round(math.log10(0.01 / reading.length_unit_m))
    return figures(f"{100 * reading.length_m:.{max(written + shift, 0)}f}")


def time_text(timing: Timing) -> str:
    """A time in seconds with the decimals it was written with."""
    return figures(f"{timing.time_s:.{2 if timing.decimals is None else timing.decimals}f}")
