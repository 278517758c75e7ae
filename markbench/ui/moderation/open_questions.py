"""What is open between the markers, each with its choices, and what a merge had to choose."""

from __future__ import annotations

from collections.abc import Sequence
from functools import partial

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QComboBox, QHBoxLayout, QVBoxLayout, QWidget

from markbench.model import Criterion, Decision
from markbench.model.sentence import reworded
from markbench.session.merging import MERGED, Clash, Merge
from markbench.session.moderating import settle_mark
from markbench.ui.desk import Desk
from markbench.ui.flow import FlowLayout
from markbench.ui.look.said import said
from markbench.ui.moderation.clashes import ClashRow
from markbench.ui.moderation.paper import Paper, line
from markbench.ui.moderation.standing import Standing
from markbench.ui.parts import button, label
from markbench.ui.signed import allow


class OpenRow(QWidget):
    """One criterion of one learner: the sentence, a level, a reason, and the last word."""

    def __init__(self, desk: Desk, learner: str, criterion: Criterion, name: str) -> None:
        super().__init__()
        self._desk, self._learner, self._criterion = desk, learner, criterion
        about = f"{name}, {criterion.title}"
        self.words = label(wrap=True)
        self.levels = QComboBox()
        self.levels.setAccessibleName(self.tr("Level that holds: {c}").format(c=about))
        for one in criterion.levels:
            self.levels.addItem(f"{one.name} · {one.marks:g}", one.name)
        self.reason = line(self.tr("Your reason"))
        self.reason.setAccessibleName(self.tr("Your reason: {c}").format(c=about))
        self.settle = button(self.tr("Settle"), "", self._settle)
        self.settle.setAccessibleName(self.tr("Settle: {c}").format(c=about))
        self.look = button(self.tr("Look"), "quiet")
        self.look.setAccessibleName(self.tr("Look at the work: {c}").format(c=name))
        self.offer()
        self.reason.textChanged.connect(lambda _text: self.offer())
        deeds = QHBoxLayout()
        deeds.setSpacing(6)
        deeds.addWidget(self.levels)
        deeds.addWidget(self.reason, 1)
        for part in (self.settle, self.look):
            deeds.addWidget(part)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 2, 0, 4)
        column.setSpacing(3)
        column.addWidget(self.words)
        column.addLayout(deeds)

    def offer(self) -> None:
        """The last word needs its reason."""
        allow(self._desk, bool(self.reason.text().strip()), self.settle)

    def _settle(self) -> None:
        if self._desk.refuse_signed():
            return
        held, level, why = self._desk.held, self.levels.currentData(), self.reason.text()
        learner, criterion = self._learner, self._criterion.id
        self._desk.do(lambda _session: settle_mark(held, learner, criterion, level, why))


_SHOWN = 5  # more would push the rest of the page out of sight


class OpenPaper(Paper):
    """``opened`` carries a learner whose sheet is wanted."""

    opened = Signal(str)

    def __init__(self, desk: Desk) -> None:
        super().__init__(self.tr("Open between the markers"))
        self._desk = desk
        self.rows: dict[tuple[str, str], OpenRow] = {}
        self.choices: list[ClashRow] = []
        self._names: dict[str, str] = {}
        self._titles: dict[str, str] = {}
        self._merge = label(kind="small", wrap=True)
        self._none = label(kind="quiet", wrap=True)
        self._merge.hide()
        self._rows, self._clashes = QVBoxLayout(), QVBoxLayout()
        self.column.addWidget(self._merge)
        self.column.addLayout(self._clashes)
        self.column.addWidget(self._none)
        self.column.addLayout(self._rows)
        self.more = button("", "plain", self._show_all)
        more = FlowLayout(spacing=6)
        more.addWidget(self.more)
        self.column.addLayout(more)
        self._all = False
        desk.turned.connect(self.forget_merge)

    def show_standing(self, now: Standing) -> None:
        """What is open; a row that stays keeps what was typed into it."""
        self._names, self._titles = dict(now.names), dict(now.titles)
        for choice in self.choices:
            choice.show_held()
        criteria = {one.id: one for one in self._desk.session.rubric.criteria}
        wanted = {(learner, criterion): words for learner, criterion, words in now.open}
        for key in [key for key in self.rows if key not in wanted]:
            row = self.rows.pop(key)
            self._rows.removeWidget(row)
            row.hide()
            row.deleteLater()
        for (learner, criterion), words in wanted.items():
            name = now.names.get(learner, learner)
            if (learner, criterion) not in self.rows:
                row = OpenRow(self._desk, learner, criteria[criterion], name)
                row.look.clicked.connect(partial(self._look, learner))
                held = now.found[learner].of(criterion).level
                row.levels.setCurrentIndex(max(row.levels.findData(held), 0))
                self.rows[learner, criterion] = row
                self._rows.addWidget(row)
            told = said(reworded(words, lambda name: now.titles.get(name, name)))
            self.rows[learner, criterion].words.setText(f"{name}, {told}")
        # One under the other, they begin and end at the same places.
        widest = max((row.levels.sizeHint().width() for row in self.rows.values()), default=0)
        for row in self.rows.values():
            row.levels.setMinimumWidth(widest)
            row.offer()
        self._limit()
        several = any(one.seconds for outcome in now.found.values() for one in outcome.criteria)
        self._none.setVisible(not wanted)
        self._none.setText(
            self.tr("Nothing is open.") if several else self.tr("No second marks were merged yet.")
        )

    def _show_all(self) -> None:
        self._all = True
        self._limit()

    def _limit(self) -> None:
        rest = 0 if self._all else max(len(self.rows) - _SHOWN, 0)
        for number, row in enumerate(self.rows.values()):
            row.setVisible(self._all or number < _SHOWN)
        self.more.setVisible(rest > 0)
        self.more.setText(self.tr("Show {n} more").format(n=rest))

    def show_merge(self, merge: Merge) -> None:
        """What came in, and each clash with the choice there is."""
        words = self.tr(
            "Merged: {n} entries added, {known} known already, {d} double marks, {c} clashes"
        ).format(
            n=len(merge.decisions), known=merge.known, d=len(merge.doubles), c=len(merge.clashes)
        )
        if merge.revised:
            revised = self.tr("{n} changed again by the same person: the later holds")
            words += f"; {revised.format(n=merge.revised)}"
        self._merge.setText(words)
        self._merge.show()
        self._forget_choices()
        by_learner: dict[str, list[Clash]] = {}
        for double in merge.doubles:
            by_learner.setdefault(double.learner, []).append(double)
        told = [*by_learner.values(), *([clash] for clash in merge.clashes)]
        self.choices = [ClashRow(self._desk, one, self._names, self._titles) for one in told]
        for made in self.choices:
            made.opened.connect(self.opened)
            self._clashes.addWidget(made)

    def forget_merge(self, step: Sequence[Decision]) -> None:
        """Say no more of a merge that was taken back."""
        if any(d.kind == MERGED for d in step):
            self._merge.hide()
            self._forget_choices()

    def _forget_choices(self) -> None:
        for held in self.choices:
            self._clashes.removeWidget(held)
            held.hide()
            held.deleteLater()
        self.choices = []

    def _look(self, learner: str, _checked: bool = False) -> None:
        self.opened.emit(learner)
