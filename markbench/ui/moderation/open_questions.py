"""What is open between the markers, each with its choices, and what a merge had to choose."""

from __future__ import annotations

from functools import partial

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QComboBox, QInputDialog, QVBoxLayout, QWidget

from markbench.model import Criterion, Decision
from markbench.session.first_marker import make_first
from markbench.session.merging import Clash, Merge
from markbench.session.moderating import settle_mark
from markbench.ui.desk import Desk
from markbench.ui.flow import FlowLayout
from markbench.ui.moderation.paper import Paper, line
from markbench.ui.moderation.standing import Standing
from markbench.ui.parts import button, label


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
        self.settle.setEnabled(False)
        self.reason.textChanged.connect(lambda text: self.settle.setEnabled(bool(text.strip())))
        deeds = FlowLayout(spacing=6)
        for part in (self.levels, self.reason, self.settle, self.look):
            deeds.addWidget(part)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 2, 0, 4)
        column.setSpacing(3)
        column.addWidget(self.words)
        column.addLayout(deeds)

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
        self.choices: list[QWidget] = []
        self._names: dict[str, str] = {}
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

    def show_standing(self, now: Standing) -> None:
        """What is open; a row that stays keeps what was typed into it."""
        self._names = dict(now.names)
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
            told = words.replace(f"{criterion}:", f"{now.titles[criterion]}:", 1)
            self.rows[learner, criterion].words.setText(f"{name}, {told}")
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
        self._merge.setText(
            self.tr("Merged: {n} entries added, {known} known already, {d} double marks, "
                    "{c} clashes").format(
                n=len(merge.decisions), known=merge.known, d=len(merge.doubles),
                c=len(merge.clashes))
        )  # fmt: skip
        self._merge.show()
        for held in self.choices:
            self._clashes.removeWidget(held)
            held.deleteLater()
        self.choices = [self._choice(clash) for clash in (*merge.doubles, *merge.clashes)]
        for made in self.choices:
            self._clashes.addWidget(made)

    def _choice(self, clash: Clash) -> QWidget:
        part = QWidget()
        deeds = FlowLayout(spacing=6)
        words = clash.sentence
        for learner, name in self._names.items():
            words = words.replace(learner, name) if learner == clash.learner else words
        if clash.learner:
            look = button(self.tr("Look"), "quiet", partial(self._look, clash.learner))
            look.setAccessibleName(self.tr("Look at the work: {c}").format(
                c=self._names.get(clash.learner, clash.learner)))  # fmt: skip
            deeds.addWidget(look)
        if clash.kind == "mark" and clash.mine.key == clash.theirs.key:
            whose = self.tr("Whose mark is the first…")
            turn = button(whose, "", partial(self._turn, clash))
            turn.setAccessibleName(self.tr("Whose mark is the first: {c}").format(
                c=self._names.get(clash.learner, clash.learner)))  # fmt: skip
            deeds.addWidget(turn)
        elif clash.mine.key == clash.theirs.key:
            for one in (clash.mine, clash.theirs):
                take = button(self.tr("As {who} decided").format(who=one.who), "",
                              partial(self._take, one))  # fmt: skip
                deeds.addWidget(take)
        column = QVBoxLayout(part)
        column.setContentsMargins(0, 2, 0, 4)
        column.setSpacing(2)
        column.addWidget(label(words, "look", wrap=True))
        column.addLayout(deeds)
        return part

    def _take(self, one: Decision) -> None:
        again = Decision(*one.key, one.value, why=one.why)
        held = self._desk.held
        self._desk.do(lambda _session: held.decide(again))

    def _turn(self, clash: Clash) -> None:
        """Let the one who stands second be the first, with a reason."""
        held = self._desk.held
        first = held.mark(clash.learner, clash.subject)
        other = next((d.who for d in (clash.mine, clash.theirs) if first and d.who != first.by), "")
        words = self.tr("{who} shall be the first marker of {learner}, because:")
        about = words.format(who=other, learner=self._names.get(clash.learner, clash.learner))
        why, sure = QInputDialog.getText(self, self.tr("Whose mark is the first"), about)
        if sure:
            self._desk.do(lambda _session: make_first(held, clash.learner, other, why))

    def _look(self, learner: str, _checked: bool = False) -> None:
        self.opened.emit(learner)
