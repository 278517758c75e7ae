"""The learners in the order of marking one criterion, each as a strip of what is needed."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Any

from PySide6.QtCore import QAbstractListModel, QModelIndex, QObject, QPersistentModelIndex, Qt

from markbench.model import Criterion
from markbench.session.order import in_order
from markbench.ui.across.in_short import Short, in_short
from markbench.ui.bench.model import ClassModel
from markbench.ui.bench.rows import Axes, LearnerRow
from markbench.ui.desk import Desk
from markbench.ui.look.said import said
from markbench.ui.portfolio.readings_model import length_text, time_text

Index = QModelIndex | QPersistentModelIndex
STRIP = int(Qt.ItemDataRole.UserRole)


@dataclass(frozen=True, slots=True)
class Strip:
    """One learner and one criterion. ``level`` is a person's mark, ``drafted`` the draft.

    ``readings`` are the lengths, each with its timings, as the learner wrote them, ``values``
    what the criterion rests on in short, ``feedback`` the text to the learner and ``own``
    whether it is other than drafted.
    """

    row: LearnerRow
    readings: tuple[tuple[str, ...], ...]
    level: str | None
    drafted: str | None
    by_eye: bool
    reasons: tuple[str, ...]
    values: tuple[Short, ...]
    feedback: str
    own: bool


class StripModel(QAbstractListModel):
    """Learners for one criterion; the order stays while marks are given."""

    def __init__(self, desk: Desk, learners: ClassModel, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._desk, self._learners = desk, learners
        self.criterion: Criterion = desk.session.rubric.criteria[0]
        self.order: tuple[str, ...] = ()
        self.timings = 2  # of one length, the most in the class
        self._strips: dict[str, Strip] = {}
        desk.changed.connect(self._on_changed)

    @property
    def axes(self) -> Axes:
        """Common axes of the small graphs."""
        return self._learners.axes

    @property
    def signed(self) -> bool:
        """Whether the marks are signed off and stand."""
        return self._desk.session.value("sign_off") is not None

    def show_criterion(self, criterion: Criterion) -> None:
        """Show a criterion in the order recorded for it."""
        self.beginResetModel()
        self.criterion = criterion
        session = self._desk.session
        self.order = in_order(session, criterion.id)
        rows = (row for learner in self.order for row in session.analysis(learner).rows)
        self.timings = max((len(row.timings_s) for row in rows), default=2)
        self._strips.clear()
        self.endResetModel()

    def number_of(self, learner: str) -> int:
        """Place of a learner, from 0; −1 where unknown."""
        return self.order.index(learner) if learner in self.order else -1

    def rowCount(self, parent: Index | None = None) -> int:
        """Number of learners."""
        return 0 if parent is not None and parent.isValid() else len(self.order)

    def data(self, index: Index, role: int = int(Qt.ItemDataRole.DisplayRole)) -> Any:
        """The strip under ``STRIP``; words for screen readers under the usual roles."""
        if not index.isValid():
            return None
        if role == STRIP:
            return self.strip(self.order[index.row()])
        if role == Qt.ItemDataRole.DisplayRole:
            return self.strip(self.order[index.row()]).row.name
        if role in (Qt.ItemDataRole.AccessibleTextRole, Qt.ItemDataRole.ToolTipRole):
            return self._in_words(self.strip(self.order[index.row()]))
        return None

    def strip(self, learner: str) -> Strip:
        """One learner's strip, made when first asked for."""
        if learner not in self._strips:
            self._strips[learner] = self._make(learner)
        return self._strips[learner]

    def _make(self, learner: str) -> Strip:
        session, criterion = self._desk.session, self.criterion
        draft = session.draft(learner, criterion.id)
        mark = session.mark(learner, criterion.id)
        table = session.portfolio(learner).table
        text = session.feedback(learner, criterion.id)
        return Strip(
            row=self._learners.rows[self._learners.number_of(learner)],
            readings=tuple(
                (length_text(one), *map(time_text, one.timings))
                for one in (() if table is None else table.readings)
                if one.timings and math.isfinite(one.length_m)
            ),
            level=None if mark is None else mark.level,
            drafted=draft.level,
            by_eye=criterion.by_eye,
            reasons=tuple(said(reason.text) for reason in draft.reasons),
            values=in_short(session, learner, criterion),
            feedback=text,
            own=text != " ".join(draft.sentences),
        )

    def _in_words(self, strip: Strip) -> str:
        parts = [strip.row.name]
        if strip.level is not None:
            parts.append(self.tr("marked: {level}").format(level=strip.level))
        elif strip.drafted is not None:
            parts.append(self.tr("draft: {level}").format(level=strip.drafted))
        else:
            parts.append(self.tr("for your eye"))
        return "\n".join((*parts, *strip.reasons))

    def _on_changed(self, learner: str) -> None:
        if not self.order:
            return
        number = self.number_of(learner)
        if number < 0 or {one.id for one in self._desk.session.learners} != set(self.order):
            self.show_criterion(self.criterion)
            return
        self._strips.pop(learner, None)
        index = self.index(number)
        self.dataChanged.emit(index, index)
