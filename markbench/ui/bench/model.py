"""The class as a Qt list: one row per learner, sorted and filtered by a proxy."""

from __future__ import annotations

import datetime as dt
from dataclasses import dataclass
from functools import cached_property
from typing import Any

from PySide6.QtCore import (
    QAbstractListModel,
    QModelIndex,
    QObject,
    QPersistentModelIndex,
    QSortFilterProxyModel,
    Qt,
    Signal,
)

from markbench.ui.bench.rows import Axes, LearnerRow, learner_row
from markbench.ui.desk import Desk
from markbench.ui.look.said import figures, said

Index = QModelIndex | QPersistentModelIndex
ROW = int(Qt.ItemDataRole.UserRole)

SORTS = ("concern", "name", "mark", "progress", "handed_in", "class_list")
_NEVER = dt.datetime.max


class ClassModel(QAbstractListModel):
    """Learners in the order of the class list; follows the desk's news."""

    axes_changed = Signal()

    def __init__(self, desk: Desk, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._desk = desk
        self.rows: list[LearnerRow] = []
        self.axes = Axes.of([])
        self._read()
        desk.changed.connect(self._on_changed)

    def rowCount(self, parent: Index | None = None) -> int:
        """Number of learners."""
        return 0 if parent is not None and parent.isValid() else len(self.rows)

    def data(self, index: Index, role: int = int(Qt.ItemDataRole.DisplayRole)) -> Any:
        """The row itself under ``ROW``; words for screen readers under the usual roles."""
        if not index.isValid():
            return None
        row = self.rows[index.row()]
        if role == ROW:
            return row
        if role == Qt.ItemDataRole.DisplayRole:
            return row.name
        if role == Qt.ItemDataRole.AccessibleTextRole:
            return self._in_words(row)
        if role == Qt.ItemDataRole.ToolTipRole:
            return self._in_words(row)
        return None

    def number_of(self, learner: str) -> int:
        """Row number of a learner id; −1 where unknown."""
        return next((i for i, row in enumerate(self.rows) if row.id == learner), -1)

    def _in_words(self, row: LearnerRow) -> str:
        from markbench.checks.pieces import PIECE_WORDS  # late: the checks bring scipy along

        parts = [row.name]
        if row.changed:
            parts.append(self.tr("changed since it was marked"))
        if row.missing:
            names = ", ".join(said(PIECE_WORDS[kind]) for kind in row.missing)
            parts.append(self.tr("missing: {pieces}").format(pieces=names))
        if row.untold:
            names = ", ".join(said(PIECE_WORDS[kind]) for kind in row.untold)
            parts.append(
                self.tr("to be told apart among the photos: {pieces}").format(pieces=names)
            )
        parts.append(self.tr("{look} to look at, {ask} to ask").format(look=row.look, ask=row.ask))
        if row.summary:
            parts.append(said(row.summary))
        if row.finished and row.total is not None:
            total = self.tr("marked, {n:g} of {most:g}").format(n=row.total, most=row.most)
            parts.append(figures(total))
        else:
            parts.append(
                self.tr("{n} of {of} criteria marked").format(n=row.marked, of=row.criteria)
            )
        return "\n".join(parts)

    def _read(self) -> None:
        session = self._desk.session
        self._called = self._numbers()
        self.rows = [
            learner_row(session, learner.id, i, self._called.get(learner.id))
            for i, learner in enumerate(session.learners)
        ]
        self.axes = Axes.of(self.rows)

    def _numbers(self) -> dict[str, str]:
        """Where names are hidden, the number by which each learner goes."""
        if not self._desk.blind:
            return {}
        from markbench.session.blind import numbers  # late, as the session is

        return {learner: str(number) for learner, number in numbers(self._desk.held).items()}

    def _on_changed(self, learner: str) -> None:
        number = self.number_of(learner)
        if number < 0:
            self._renew()
            return
        before, axes = self.rows[number], self.axes
        row = self.rows[number] = learner_row(
            self._desk.session, learner, number, self._called.get(learner)
        )
        if row.points != before.points:
            self.axes = Axes.of(self.rows)
        index = self.index(number)
        self.dataChanged.emit(index, index)
        if self.axes != axes:
            self.axes_changed.emit()

    def _renew(self) -> None:
        """Everybody may have changed. Whoever is chosen stays chosen where the list is the same.

        It is another where names were hidden or shown, even if chance dealt the same order.
        """
        ids, axes, called = [row.id for row in self.rows], self.axes, self._called
        now = [learner.id for learner in self._desk.session.learners]
        if now == ids and self._numbers() == called:
            self._read()
            self.dataChanged.emit(self.index(0), self.index(len(ids) - 1))
        else:
            self.beginResetModel()
            self._read()
            self.endResetModel()
        if self.axes != axes:
            self.axes_changed.emit()


@dataclass(frozen=True)
class Filters:
    """What is wanted; all that are set must hold."""

    text: str = ""
    unmarked: bool = False
    questioned: bool = False
    missing: bool = False
    late: bool = False
    changed: bool = False
    group: str = ""

    def accept(self, row: LearnerRow) -> bool:
        """Whether a learner passes."""
        return (
            (not self.unmarked or not row.finished)
            and (not self.questioned or row.look > 0)
            and (not self.missing or bool(row.missing))
            and (not self.late or row.late)
            and (not self.changed or row.changed)
            and (not self.group or row.group == self.group)
            and all(word in row.sought for word in self.words)
        )

    @cached_property
    def words(self) -> list[str]:
        """Words sought, without accents or case."""
        from markbench.intake.names import fold  # late, as the session is

        return fold(self.text).split()


class ClassOrder(QSortFilterProxyModel):
    """The learners as sorted and filtered.

    Both hold until they are asked for again: a mark given or a film measured moves no card
    under the hand. :meth:`differs` says whether asking would change anything.
    """

    def __init__(self, model: ClassModel, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self.filters = Filters()
        self.by = "concern"
        self.setSourceModel(model)
        self._class = model
        self.setDynamicSortFilter(False)
        self._shown: list[str] | None = None
        self._places: list[int] = []  # of each row of the class in the order asked for
        self._news = False  # since they were placed
        model.dataChanged.connect(self._hear)
        for changed in (self.layoutChanged, self.modelReset, self.rowsInserted, self.rowsRemoved):
            changed.connect(self._forget)
        model.modelReset.connect(self.sort_again)  # other learners, or the same by number
        self._rank()
        self.sort(0)

    def set_filters(self, filters: Filters) -> None:
        """Show those that pass ``filters``."""
        self.filters = filters
        self.invalidate()

    def sort_by(self, by: str) -> None:
        """Sort by one of :data:`SORTS`."""
        self.by = by
        self.sort_again()

    def sort_again(self) -> None:
        """Sort and filter by what is known now."""
        self._rank()
        self.invalidate()  # the finer calls differ between versions of Qt

    def differs(self) -> bool:
        """Whether sorting and filtering again would show others, or in another order."""
        if not self._news:
            return False  # as while somebody types a search
        rows = sorted(self._class.rows, key=self._key)
        return [row.id for row in rows if self.filters.accept(row)] != self.learners()

    def _rank(self) -> None:
        """Place everybody once: asked pair by pair, a class of a thousand would be waited for."""
        rows = self._class.rows
        self._news = False
        self._places = [0] * len(rows)
        for place, row in enumerate(sorted(rows, key=self._key)):
            self._places[row.order] = place

    def learners(self) -> list[str]:
        """Ids in the order shown."""
        if self._shown is None:
            self._shown = [self.index(i, 0).data(ROW).id for i in range(self.rowCount())]
        return self._shown

    def _forget(self) -> None:
        self._shown = None

    def _hear(self) -> None:
        self._news = True

    def filterAcceptsRow(self, row: int, parent: Index) -> bool:
        """Whether a learner is shown."""
        return self.filters.accept(self._class.rows[row])

    def lessThan(self, left: Index, right: Index) -> bool:
        """Order of two learners; ties keep the order of the class list."""
        try:
            return self._places[left.row()] < self._places[right.row()]
        except IndexError:  # a longer class list, not yet placed
            self._rank()
            return self._places[left.row()] < self._places[right.row()]

    def _key(self, row: LearnerRow) -> tuple[Any, ...]:
        if self.by == "concern":
            return (tuple(-n for n in row.concern), row.order)
        if self.by == "name":
            return (row.by_name, row.order)
        if self.by == "mark":
            # Of what can be had so far: a criterion for the teacher's eye is not against anyone.
            return (row.drafted is None, -row.so_far.share, row.order)
        if self.by == "progress":
            return (row.marked / max(row.criteria, 1), row.order)
        if self.by == "handed_in":
            when = row.handed_in
            return ((_NEVER if when is None else when.replace(tzinfo=None)), row.order)
        return (row.order,)
