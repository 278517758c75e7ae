"""A pack opened by its moderator: one numbered portfolio at a time, her own marks first."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import (
    QAbstractItemView,
    QBoxLayout,
    QCheckBox,
    QComboBox,
    QDialog,
    QFileDialog,
    QMessageBox,
    QPlainTextEdit,
    QVBoxLayout,
)

from markbench.model import Criterion
from markbench.model.sentence import known_again
from markbench.moderation.pack import LEFT_OUT, SHIPPED, FirstMark
from markbench.ui.flow import FlowLayout
from markbench.ui.look.said import said
from markbench.ui.look.theme import Theme
from markbench.ui.mishaps import plainly
from markbench.ui.moderation.pack_desk import PackDesk
from markbench.ui.moderation.second_card import SecondCard
from markbench.ui.parts import IconButton, button, label, restyle
from markbench.ui.portfolio.criterion import CriterionCard
from markbench.ui.portfolio.margin import MarkingMargin
from markbench.ui.portfolio.page import PortfolioPage

if TYPE_CHECKING:
    from markbench.session.session import Change


class SecondMargin(MarkingMargin):
    """Her own marks; then, at her word, the first marks beside them."""

    def __init__(self, desk: PackDesk, theme: Theme) -> None:
        self._pack = desk.pack
        self._firsts: dict[str, dict[str, FirstMark]] = {}
        self._ask = True
        self._was = ("", False)  # whom the margin showed, and whether she had looked
        super().__init__(desk, theme)
        self.setAccessibleName(self.tr("Second marking"))
        self.note.hide()

    def make_card(self, criterion: Criterion) -> CriterionCard:
        """A card of the second marker."""
        assert isinstance(self._desk, PackDesk)
        return SecondCard(self._desk, self._theme, criterion)

    def accept_drafts(self) -> None:
        """Show the first marks, once she knows that her own are then final."""
        number = self._learner
        if not self._ask:
            self._look(number)
            return
        box = QMessageBox(self)
        box.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        box.setWindowTitle(self.tr("Show the first marks"))
        name = self._desk.session.portfolio(number).learner.name
        words = self.tr("Show the first marks? Your levels for {learner} are then final.")
        box.setText(words.format(learner=name))
        box.setInformativeText(
            self.tr("Undo does not reach behind the look. You may still agree, adjust or ask.")
        )
        again = QCheckBox(self.tr("Do not ask again for this pack"))
        box.setCheckBox(again)
        show = box.addButton(self.tr("Show them"), QMessageBox.ButtonRole.AcceptRole)
        stay = box.addButton(self.tr("Not yet"), QMessageBox.ButtonRole.RejectRole)
        box.setDefaultButton(stay)  # a key held down too long must not decide this
        box.setEscapeButton(stay)

        def answered(_result: int) -> None:
            self.activateWindow()  # for whoever goes on by key
            if box.clickedButton() is show:
                self._ask = not again.isChecked()
                self._look(number)

        box.finished.connect(answered)
        box.open()

    def _look(self, number: str) -> None:
        pack = self._pack
        self._desk.do(lambda _session: self._keep(number, pack.first(number)))

    def accept_current(self) -> None:
        """There is no draft to accept: on to the next criterion."""
        self.step(1)

    def _keep(self, number: str, firsts: dict[str, FirstMark]) -> None:
        self._firsts[number] = firsts

    def show_learner(self, learner: str) -> None:
        """Her marks, and the first marks where she has looked at them.

        Just after the look, what is to be answered first is open.
        """
        looked = self._pack.has_looked(learner)
        begins = looked and (learner, False) == self._was
        self._was = (learner, looked)
        super().show_learner(learner)
        if self._pack.has_looked(learner) and learner not in self._firsts:
            self._keep(learner, self._pack.first(learner))
        shown = self._firsts.get(learner, {})
        for card in self.cards:
            if isinstance(card, SecondCard):
                criterion = card.criterion.id
                said = self._pack.moderated(learner, criterion)
                card.show_first(shown.get(criterion), said)
        if begins:
            self._begin(keyboard=True)

    def _awaits(self, criterion: str) -> bool:
        pack, learner = self._pack, self._learner
        if not pack.has_looked(learner):
            return super()._awaits(criterion)
        return pack.moderated(learner, criterion) is None

    def _sum_up(self) -> None:
        pack, learner = self._pack, self._learner
        done, of = pack.progress(learner)
        marks = [pack.second(learner, c.id) for c in pack.rubric.criteria]
        given = sum(mark.marks for mark in marks if mark is not None)
        words = self.tr("✓ {n:g} of {most:g}") if done == of else self.tr("{n:g} of {most:g}")
        self._total.setText(words.format(n=given, most=pack.rubric.most))
        restyle(self._total, "kind", "ink" if done == of else "pencil")
        self._state.setText(self.tr("{n} of {of} second-marked").format(n=done, of=of))
        looked = pack.has_looked(learner)
        self.accept_all.setEnabled(done == of and not looked)
        if looked:
            said = sum(pack.moderated(learner, c.id) is not None for c in pack.rubric.criteria)
            self.accept_all.setText(self.tr("Answered {n} of {of}").format(n=said, of=of))
        else:
            self.accept_all.setText(self.tr("Show the first marks"))
        self.accept_all.setToolTip(
            self.tr("Once every criterion is second-marked; your own marks then stand")
        )


class PackSheet(PortfolioPage):
    """``said`` and ``trouble`` carry words for the bar."""

    trouble = Signal(str)

    def __init__(self, desk: PackDesk, theme: Theme) -> None:
        self._pack = desk.pack
        super().__init__(desk, theme, SecondMargin(desk, theme))
        self.graph.can_save = False
        self.graph.save.hide()
        self._whole.hide()  # the learners' own files stay with the class
        self.table.setEditTriggers(QAbstractItemView.EditTrigger.NoEditTriggers)
        self.explanations.look_only(
            self.tr("Explanations of the numbers come with the first marks: they would lead you.")
        )
        self.evidence.look_only()
        self.layers.viewer.look_only()
        self.moved.connect(self.step)
        desk.changed.connect(self._count)
        desk.told.connect(self._show_undone)
        self._count()
        if desk.learners:
            self.show_number(desk.learners[0].id)

    def _head(self) -> QBoxLayout:
        pack = self._pack
        self.numbers = QComboBox()
        self.numbers.setAccessibleName(self.tr("Learner of the pack"))
        self.numbers.setSizeAdjustPolicy(QComboBox.SizeAdjustPolicy.AdjustToContents)
        for one in pack.learners:
            self.numbers.addItem("", one.id)
        self.numbers.activated.connect(lambda at: self.show_number(self.numbers.itemData(at)))
        self.send = button(self.tr("Send back…"), "deed", self.ask_and_send)
        self.leave_pack = button(self.tr("Leave the pack"), "plain", self.left.emit)
        before = IconButton(self._theme, "back", self.tr("Learner before"),
                            lambda: self.moved.emit(-1))  # fmt: skip
        after = IconButton(self._theme, "next", self.tr("Next learner"),
                           lambda: self.moved.emit(1))  # fmt: skip
        code = label("·  " + self.tr("check code {code}").format(code=pack.code), "small")
        code.setToolTip(self.tr("The same digits as the sender's: compare them by telephone"))
        whose = label("·  " + self.tr("as {who}").format(who=pack.who), "small")
        held = (*pack.manifest.shipped, "", *pack.manifest.left_out)
        known = (*SHIPPED, *LEFT_OUT)
        whose.setToolTip("\n".join(said(known_again(one, known)) for one in held))
        self._done = label(kind="small")
        self.report = button(self.tr("Written report…"), "", self.read_report)
        first, second = FlowLayout(spacing=8), FlowLayout(spacing=8)
        for part in (label(self.tr("You are second-marking"), "title"), self.send, self.leave_pack):
            first.addWidget(part)
        for each in (before, after, self.numbers, self.report, self._done, code, whose):
            second.addWidget(each)
        column = QVBoxLayout()
        column.setSpacing(4)
        column.addLayout(first)
        column.addLayout(second)
        return column

    def show_number(self, number: str) -> None:
        """One portfolio of the pack."""
        self.show_learner(number)
        self.numbers.setCurrentIndex(self.numbers.findData(number))

    def show_learner(self, learner: str, place: str = "") -> None:
        """Show a portfolio, and whether there is a report to read."""
        super().show_learner(learner, place)
        self.report.setVisible(bool(self._pack.portfolio(learner).of_kind("report")))

    def read_report(self) -> None:
        """The words of this portfolio's written reports."""
        from markbench.session.errors import PackError

        reports = self._pack.portfolio(self.learner).of_kind("report")
        try:
            words = "\n\n".join(self._pack.data(one).decode() for one in reports)
        except (PackError, UnicodeDecodeError) as error:
            self.trouble.emit(plainly(error))
            return
        page = QDialog(self)
        page.setWindowTitle(self.tr("Written report"))
        page.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        page.resize(self._theme.px(640), self._theme.px(560))
        text = QPlainTextEdit(words)
        text.setReadOnly(True)
        text.setAccessibleName(self.tr("Words of the report, names taken out"))
        QVBoxLayout(page).addWidget(text)
        page.open()

    def step(self, by: int) -> None:
        """The next portfolio, or the one before."""
        at = self.numbers.currentIndex() + by
        if 0 <= at < self.numbers.count():
            self.show_number(self.numbers.itemData(at))

    def _show_undone(self, change: Change) -> None:
        """A mark taken back on a learner out of sight would be missed."""
        if "undone" in change.kinds and change.learner != self.learner:
            self.show_number(change.learner)

    def _count(self, _number: str = "") -> None:
        pack, finished = self._pack, 0
        for at, one in enumerate(pack.learners):
            done, of = pack.progress(one.id)
            finished += done == of
            state = self.tr("✓ looked") if pack.has_looked(one.id) else f"{done}/{of}"
            self.numbers.setItemText(at, f"{one.name}  ·  {state}")
        words = self.tr("{n} of {of} learners second-marked")
        self._done.setText(words.format(n=finished, of=len(pack.learners)))

    def ask_and_send(self) -> None:
        """Ask for a place and write what goes back there."""
        from markbench.session.endings import REPLY_ENDING
        from markbench.session.errors import PackError

        self.margin.settle()
        self._desk.finish()
        start = self._pack.path.with_suffix(REPLY_ENDING)
        chosen, _ = QFileDialog.getSaveFileName(
            self, self.tr("Send back"), str(start), f"*{REPLY_ENDING}"
        )
        if not chosen:
            return
        path = Path(chosen)
        if path.suffix != REPLY_ENDING:
            path = path.with_name(path.name + REPLY_ENDING)
        try:
            self._pack.write_reply(path)
        except PackError as error:
            self.trouble.emit(plainly(error))
        else:
            self.said.emit(
                self.tr("✓ written: {file}. Send this file to the first marker.").format(
                    file=path.name
                )
            )
