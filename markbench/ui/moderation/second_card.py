"""One criterion for the second marker: her own level first, then the first mark beside it."""

from __future__ import annotations

from PySide6.QtWidgets import QComboBox, QVBoxLayout, QWidget

from markbench.model import Criterion, Draft, Mark
from markbench.moderation.pack import FirstMark
from markbench.moderation.records import Action, Moderated
from markbench.ui.flow import FlowLayout
from markbench.ui.look.theme import Theme
from markbench.ui.moderation.pack_desk import PackDesk
from markbench.ui.parts import button, label, restyle
from markbench.ui.portfolio.criterion import CriterionCard
from markbench.ui.text_field import TextField


class SecondCard(CriterionCard):
    """A card without draft and text; once the first marks are shown, it answers them."""

    _in_answer: tuple[QWidget, ...] = ()

    def __init__(self, desk: PackDesk, theme: Theme, criterion: Criterion) -> None:
        super().__init__(desk, theme, criterion)
        self._pack = desk.pack
        self.answer = QWidget()
        self._first = label(wrap=True)
        self._told = label(wrap=True)
        self._why = label(kind="small", wrap=True)
        self._said = label(kind="ink", wrap=True)
        self.agree = button(self.tr("Agree"), "", lambda: self._answer("agree"))
        self.level = QComboBox()
        self.level.setAccessibleName(self.tr("Level to adjust to: {c}").format(c=criterion.title))
        self.level.addItem(self.tr("Adjust to…"))
        for one in criterion.levels:
            self.level.addItem(
                self.tr("{level} · {marks:g}").format(level=one.name, marks=one.marks), one.name
            )
        self.words = TextField(
            self.tr("Reason or question to the first marker: {c}").format(c=criterion.title)
        )
        self.words.setPlaceholderText(self.tr("Reason to adjust, or your question"))
        self.adjust = button(self.tr("Adjust"), "", lambda: self._answer("adjust"))
        self.ask = button(self.tr("Ask"), "", lambda: self._answer("ask"))
        for control, tip in (
            (self.agree, self.tr("The first mark stands")),
            (self.adjust, self.tr("Needs a level and a reason")),
            (self.ask, self.tr("Needs your question in words")),
        ):
            control.setToolTip(tip)
            control.setAccessibleName(f"{control.text()}: {criterion.title}")
        self._lay_out_answer()
        self.level.currentIndexChanged.connect(lambda _i: self._offer())
        self.words.textChanged.connect(self._offer)

    def _lay_out_answer(self) -> None:
        row = QWidget()
        deeds = FlowLayout(row, spacing=6)
        for control in (self.agree, self.level, self.adjust, self.ask):
            deeds.addWidget(control)
        column = QVBoxLayout(self.answer)
        column.setContentsMargins(0, 4, 0, 0)
        column.setSpacing(4)
        column.addWidget(self._first)
        column.addWidget(self._told)
        column.addWidget(self._why)
        column.addWidget(self._said)
        column.addWidget(self.words)
        column.addWidget(row)
        self._in_answer = (self._told, self._why, self.words, row)
        own = self.layout()
        assert isinstance(own, QVBoxLayout)
        own.addWidget(self.answer)
        self.answer.hide()

    def set_open(self, is_open: bool) -> None:
        """Levels always; what they mean while open; never a draft or a text."""
        super().set_open(is_open)
        for part in (self.writing, self.note, self._preview):
            part.hide()
        for answering in self._in_answer:
            answering.setVisible(is_open)

    def _show_deeds(self) -> None:
        """There is no draft to accept."""
        for part in (self.moved, self.accept, self.take, self.keep, self.clear):
            part.hide()

    def _unsaid_words(self, mark: Mark | None, draft: Draft) -> str:
        """She writes no text that could lag behind her level."""
        return ""

    def _show_text(self) -> None:
        """The text to the learner is the first marker's."""

    def show_first(self, first: FirstMark | None, said: Moderated | None) -> None:
        """The first mark and what she said to it; ``None`` hides it and frees her own mark."""
        self.answer.setVisible(first is not None)
        self.freeze(first is not None)
        if first is None:
            return
        mine = self._pack.second(self._learner, self.criterion.id)
        same = mine is not None and mine.marks == first.marks
        words = self.tr("First mark, {who}: {level} ({marks:g})").format(
            who=first.by, level=first.level, marks=first.marks
        )
        self._first.setText(("= " if same else "≠ ") + words)
        restyle(self._first, "kind", "" if same else "look")
        told = self.tr("To the learner: {text}").format(text=first.feedback)
        self._told.setText(told if first.feedback else "")
        self._told.setVisible(self.is_open and bool(first.feedback))
        self._why.setText(self._behind(first))
        self._said.setText(self._said_words(said))
        self._said.setVisible(said is not None)
        self.words.show_text("" if said is None else said.why)
        at = self.level.findData(said.level) if said is not None and said.level else 0
        self.level.setCurrentIndex(max(at, 0))
        self._offer()

    def _behind(self, first: FirstMark) -> str:
        """The first marker's reason, and then a line for each fact of the draft."""
        parts = [self.tr("Reason: {why}").format(why=first.why)] if first.why else []
        if first.reasons:
            parts += [self.tr("Drafted from:"), *(f"–\u00a0{one}" for one in first.reasons)]
        return "\n".join(parts)

    def _said_words(self, said: Moderated | None) -> str:
        if said is None:
            return ""
        if said.action == "agree":
            return self.tr("✓ you agree")
        if said.action == "ask":
            return self.tr("? you ask")
        return self.tr("✓ you adjust to {level} ({marks:g})").format(
            level=said.level, marks=said.marks
        )

    def _offer(self) -> None:
        words = bool(self.words.toPlainText().strip())
        self.adjust.setEnabled(words and self.level.currentIndex() > 0)
        self.ask.setEnabled(words)

    def _answer(self, action: Action) -> None:
        number, criterion = self._learner, self.criterion.id
        why = "" if action == "agree" else self.words.toPlainText()
        level = self.level.currentData() if action == "adjust" else None
        self.words.settle()
        pack = self._pack
        self._desk.do(lambda _s: pack.moderate(number, criterion, action, why, level))

    def _state_words(self, mark: Mark | None, drafted: str | None) -> str:
        return self.tr("not yet marked by you") if mark is None else self.tr("✓ your mark")
