"""The hand-ins as a table: a row for each learner, sorted and filtered by a proxy."""

from __future__ import annotations

import datetime as dt
from typing import Any

from PySide6.QtCore import (
    QAbstractTableModel,
    QModelIndex,
    QObject,
    QPersistentModelIndex,
    QSortFilterProxyModel,
    Qt,
)

from markbench.session.hand_ins import HandIn, hand_in, hand_ins
from markbench.session.order import by_surname, natural
from markbench.ui.desk import Desk
from markbench.ui.handins.since import short_word
from markbench.ui.look.dates import day, day_and_time

Index = QModelIndex | QPersistentModelIndex
ROW = int(Qt.ItemDataRole.UserRole)
SORT = ROW + 1
NAME, WHEN, STANDS, MISSING, DUE = range(5)


class HandInModel(QAbstractTableModel):
    """Learners in the session's order; follows the desk's news."""

    def __init__(self, desk: Desk, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._desk = desk
        self.rows: list[HandIn] = []
        self.names: dict[str, str] = {}
        self._by_name: dict[str, tuple[str | int, ...]] = {}
        desk.changed.connect(self._on_changed)

    def read(self) -> None:
        """Read all afresh."""
        session = self._desk.session
        self.beginResetModel()
        self.rows = list(hand_ins(session))
        self.names = {one.id: one.name or one.id for one in session.learners}
        self._by_name = {
            one.id: by_surname(one) if one.name else natural(one.id) for one in session.learners
        }
        self.endResetModel()

    def _on_changed(self, learner: str) -> None:
        if not self.rows:
            return  # never shown yet
        numbers = [i for i, row in enumerate(self.rows) if row.learner == learner]
        if not numbers:
            self.read()
            return
        self.rows[numbers[0]] = hand_in(self._desk.session, learner)
        self.dataChanged.emit(self.index(numbers[0], 0), self.index(numbers[0], DUE))

    def rowCount(self, parent: Index | None = None) -> int:
        """Number of learners."""
        return 0 if parent is not None and parent.isValid() else len(self.rows)

    def columnCount(self, parent: Index | None = None) -> int:
        """Name, time, standing, missing, last day."""
        return 0 if parent is not None and parent.isValid() else DUE + 1

    def headerData(
        self,
        section: int,
        orientation: Qt.Orientation,
        role: int = int(Qt.ItemDataRole.DisplayRole),
    ) -> Any:
        """Headings."""
        if orientation == Qt.Orientation.Horizontal and role == Qt.ItemDataRole.DisplayRole:
            return (self.tr("Learner"), self.tr("Handed in"), self.tr("How it stands"),
                    self.tr("Missing"), self.tr("Last day"))[section]  # fmt: skip
        if role == Qt.ItemDataRole.TextAlignmentRole:
            return int(Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter)
        return None

    def data(self, index: Index, role: int = int(Qt.ItemDataRole.DisplayRole)) -> Any:
        """Words; the row itself under ``ROW``; what it sorts by under ``SORT``."""
        if not index.isValid():
            return None
        row, column = self.rows[index.row()], index.column()
        if role == ROW:
            return row
        if role in (Qt.ItemDataRole.DisplayRole, Qt.ItemDataRole.ToolTipRole):
            return self._words(row, column)
        if role == SORT:
            return self._sorts(row, column)
        return None

    def _words(self, row: HandIn, column: int) -> str:
        if column == NAME:
            return self.names.get(row.learner, row.learner)
        if column == WHEN:
            return day_and_time(row.handed_in) if row.handed_in is not None else "–"
        if column == STANDS:
            return self.stands(row)
        if column == MISSING:
            return ", ".join(short_word(kind) for kind in row.missing)
        if row.due is None:
            return ""
        due = day(row.due)
        return self.tr("{day}, extended").format(day=due) if row.extended_to else due

    def stands(self, row: HandIn) -> str:
        """How a hand-in stands, each part with a sign of its own."""
        parts = []
        if row.nothing:
            parts.append(self.tr("○ nothing yet"))
        if row.days_late:
            days = self.tr("▲ {n} days late") if row.days_late > 1 else self.tr("▲ 1 day late")
            parts.append(days.format(n=row.days_late))
        if row.since_marked == "changed":
            parts.append(self.tr("≠ changed since marked"))
        elif row.since_marked:
            parts.append(self.tr("↻ newer than its mark"))
        elif row.replaced:
            parts.append(self.tr("↻ handed in again"))
        closed = dict(row.unopened)
        if closed:
            pieces = ", ".join(short_word(kind) for kind in closed)
            parts.append(self.tr("✗ does not open: {pieces}").format(pieces=pieces))
        again = [kind for kind in row.again if kind not in closed]
        if again:
            pieces = ", ".join(short_word(kind) for kind in again)
            parts.append(self.tr("✗ wanted again: {pieces}").format(pieces=pieces))
        if row.missing and not row.nothing:
            parts.append(self.tr("◇ incomplete"))
        if not parts:
            parts.append(self.tr("✓ in time") if row.due is not None else self.tr("✓ handed in"))
        return "  ".join(parts)

    def _sorts(self, row: HandIn, column: int) -> Any:
        never = dt.datetime.max
        when = row.handed_in.replace(tzinfo=None) if row.handed_in is not None else never
        if column == WHEN:
            return when
        if column == STANDS:
            return (-row.days_late, not row.nothing, not row.since_marked, not row.replaced,
                    not row.again, not row.missing)  # fmt: skip
        if column == MISSING:
            return -len(row.missing)
        if column == DUE:
            return row.due or dt.date.max
        return self._by_name.get(row.learner, natural(row.learner))


def passes(row: HandIn, filters: frozenset[str]) -> bool:
    """Whether a hand-in has everything that is asked for by ``filters``."""
    has = {
        "late": row.days_late > 0,
        "missing": bool(row.missing),
        "nothing": row.nothing,
        "again": row.replaced > 0 or bool(row.since_marked),
        "changed": bool(row.since_marked),
        "wanted": bool(row.again),
        "extended": row.extended_to is not None,
    }
    return all(has[one] for one in filters)


class HandInOrder(QSortFilterProxyModel):
    """The hand-ins as sorted and filtered."""

    def __init__(self, model: HandInModel, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self.filters: frozenset[str] = frozenset()
        self._held = model
        self.setSourceModel(model)

    def set_filters(self, filters: frozenset[str]) -> None:
        """Show those that pass."""
        self.filters = filters
        self.invalidate()

    def filterAcceptsRow(self, row: int, _parent: Index) -> bool:
        """Whether a learner is shown."""
        return passes(self._held.rows[row], self.filters)

    def lessThan(self, left: Index, right: Index) -> bool:
        """Order of two learners; equals stay as in the class list."""
        one = (left.data(SORT), left.row())
        return bool(one < (right.data(SORT), right.row()))
