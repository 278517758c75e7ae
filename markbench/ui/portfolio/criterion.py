"""One criterion on the marking sheet: draft in pencil or mark in ink, levels, reasons, text."""

from __future__ import annotations

import datetime as dt
import math
from collections.abc import Callable
from functools import partial

from PySide6.QtCore import Signal
from PySide6.QtGui import QFocusEvent, QFontMetricsF, QMouseEvent
from PySide6.QtWidgets import QFrame, QPushButton, QVBoxLayout, QWidget

from markbench.model import Criterion, Draft, Mark, Reason
from markbench.rubric.pieces import OPEN
from markbench.session.moved import Moved
from markbench.session.texts import drafted
from markbench.ui.desk import Desk
from markbench.ui.feedback.editor import FeedbackEditor
from markbench.ui.flow import FlowLayout
from markbench.ui.look.dates import short_day_and_time
from markbench.ui.look.said import figures, said
from markbench.ui.look.theme import Theme
from markbench.ui.parts import ElidedLabel, LinkLabel, button, label, restyle
from markbench.ui.portfolio.level_row import LevelButton, LevelRow
from markbench.ui.signed import allow
from markbench.ui.text_field import TextField

_WIDEST_STATE = 330  # pixels, at 100 % text: the margin has no more


class CriterionCard(QFrame):
    """``reason_chosen`` asks to see what a draft rests on; ``opened`` to be the open one."""

    reason_chosen = Signal(object)
    opened = Signal(str)

    def __init__(self, desk: Desk, theme: Theme, criterion: Criterion) -> None:
        super().__init__()
        self._desk, self._theme, self.criterion = desk, theme, criterion
        self._learner = ""
        self._moved: Moved | None = None
        #: Whether a draft is accepted here; a page with a button of its own says no.
        self.takes_drafts = True
        self._reasons: list[LinkLabel] = []
        self._title = label(criterion.title)
        self._title.setFont(theme.font("body", bold=True))
        self._state = label(kind="pencil")
        self._row = LevelRow()
        self.levels = {level.name: self._level_button(level.name) for level in criterion.levels}
        self._descriptor = label(kind="small", wrap=True)
        named = self.tr("Text to the learner: {c}").format(c=criterion.title)
        self.writing = FeedbackEditor(desk, theme, criterion.id, named)
        self.text = self.writing.field
        self.text.setPlaceholderText(self.tr("Text to the learner"))
        self.note = TextField(self.tr("Private note: {c}").format(c=criterion.title))
        self.note.setPlaceholderText(self.tr("Private note, never sent"))
        self.note.settled.connect(self._keep_note)
        #: Where Escape goes from what one writes in.
        self.out_of_text: Callable[[], None] = self.take_keyboard
        for field in (self.text, self.note):
            field.left_by_key.connect(lambda: self.out_of_text())
        self._preview = ElidedLabel("small")
        #: Says that the draft has changed since the mark was given.
        self.moved = label(kind="look", wrap=True)
        #: Says that the text does not speak of the level that was given.
        self.unsaid = label(kind="look", wrap=True)
        self.take = button(self.tr("Take the draft"), "deed", self.accept_draft)
        self.keep = button(self.tr("Keep the mark"), "", self.keep_mark)
        self.accept = button(self.tr("Accept draft"), "deed", self.accept_draft)
        self.clear = button(self.tr("Back to draft"), "plain", self._clear)
        self._lay_out()
        self.set_open(False)
        self._keep_room()
        desk.kept.connect(self._show_kept)
        theme.changed.connect(self._restyle)

    def _lay_out(self) -> None:
        head = FlowLayout(spacing=10)
        head.addWidget(self._title)
        head.addWidget(self._state)
        levels = FlowLayout(spacing=5)
        for control in self.levels.values():
            levels.addWidget(control)
        self._reason_box = QVBoxLayout()
        self._reason_box.setSpacing(0)
        settling = FlowLayout(spacing=6)
        for control in (self.take, self.keep):
            settling.addWidget(control)
        foot = FlowLayout(spacing=6)
        for control in (self.accept, self.clear):
            foot.addWidget(control)
        column = QVBoxLayout(self)
        column.setContentsMargins(14, 9, 14, 9)
        column.setSpacing(5)
        column.addLayout(head)
        column.addLayout(levels)
        column.addWidget(self.moved)
        column.addWidget(self.unsaid)
        column.addLayout(settling)
        column.addWidget(self._descriptor)
        column.addWidget(self._preview)
        column.addLayout(self._reason_box)
        column.addWidget(self.writing)
        column.addWidget(self.note)
        column.addLayout(foot)

    def _level_button(self, name: str) -> QPushButton:
        level = next(one for one in self.criterion.levels if one.name == name)
        words = figures(self.tr("{level} · {marks:g}").format(level=level.name, marks=level.marks))
        made = LevelButton(words, self._row)
        made.setToolTip(level.descriptor)
        made.clicked.connect(lambda _on=False: self.choose_level(name))
        one, many = self.tr("{c}: {level}, 1 mark"), self.tr("{c}: {level}, {marks:g} marks")
        named = one if level.marks == 1 else many
        title = self.criterion.title
        made.setAccessibleName(figures(named.format(c=title, level=level.name, marks=level.marks)))
        return made

    def show_learner(self, learner: str) -> None:
        """Show a learner's draft or mark as it is now."""
        if learner != self._learner:
            self.settle()
        self._learner = learner
        self._show_mark()
        if self.is_open:
            self._fill()

    def _show_mark(self) -> None:
        session, learner = self._desk.session, self._learner
        draft = session.draft(learner, self.criterion.id)
        mark = session.mark(learner, self.criterion.id)
        self._moved = session.moved_draft(learner, self.criterion.id)
        settled = mark is not None and self._moved is None
        restyle(self, "kind", "marked" if settled else "drafted")
        restyle(self._state, "kind", "ink" if settled else "pencil")
        self._state.setText(self._state_words(mark, draft.level))
        for name, control in self.levels.items():
            control.setChecked(mark is not None and mark.level == name)
            restyle(control, "drafted", "true" if draft.level == name else "false")
        shown = mark.level if mark is not None else draft.level
        waits = self._desk.not_saved("mark", learner, self.criterion.id)
        if waits is not None:
            shown = waits.value["level"] if waits.value else draft.level
            for name, control in self.levels.items():
                control.setChecked(bool(waits.value) and name == shown)
            self._state.setText(self.tr("not saved yet"))
        self._row.stop_at(self.levels.get(shown or ""))
        level = next((one for one in self.criterion.levels if one.name == shown), None)
        self._descriptor.setText(level.descriptor if level is not None else "")
        self._preview.setText(OPEN.sub("…", session.feedback(learner, self.criterion.id)))
        self._preview.setVisible(not self.is_open and bool(self._preview.text()))
        words = self._unsaid_words(mark, draft)
        self.unsaid.setText(words)
        self.unsaid.setVisible(bool(words))
        self._offer_draft(mark, draft)

    def _offer_draft(self, mark: Mark | None, draft: Draft) -> None:
        """What can be done with the mark or the draft, and what changed since it was given."""
        moved = self._moved
        self.moved.setText(self._moved_words(moved) if moved is not None else "")
        self.moved.setVisible(moved is not None)
        allow(self._desk, mark is not None, self.clear)
        self._show_deeds()
        if moved is not None and mark is not None:
            words = self.tr("{level} · {marks:g}")
            drafted = figures(words.format(level=moved.level, marks=moved.marks))
            self.take.setText(self.tr("Take {level}").format(level=drafted))
            given = figures(words.format(level=mark.level, marks=mark.marks))
            self.keep.setText(self.tr("Keep {level}").format(level=given))
        self.accept.setText(self.tr("Accept draft") if draft.level else self.tr("No draft"))
        allow(self._desk, draft.level is not None and mark is None, self.accept)
        allow(self._desk, moved is not None, self.take, self.keep)

    def _show_deeds(self) -> None:
        moved = self._moved is not None
        self.accept.setVisible(self.is_open and not moved and self.takes_drafts)
        for control in (self.take, self.keep):
            control.setVisible(self.is_open and moved)
        self.clear.setVisible(self.is_open and not moved)

    def freeze(self, frozen: bool) -> None:
        """Have the levels look as they do where they stand; to press one says why it stands."""
        for control in self.levels.values():
            restyle(control, "stands", "true" if frozen else "false")

    def set_open(self, is_open: bool) -> None:
        """Show everything, or the head and the levels only."""
        self.is_open = is_open
        for part in (self._descriptor, self.writing, self.note):
            part.setVisible(is_open)
        self._show_deeds()
        for control in self._reasons:
            control.setVisible(is_open and bool(control.text()))
        self._preview.setVisible(not is_open and bool(self._preview.text()))
        if is_open and self._learner:
            self._fill()

    def _fill(self) -> None:
        """What only the open card shows; writing it for all would cost time at every learner."""
        session, learner, criterion = self._desk.session, self._learner, self.criterion.id
        self._show_text()
        self.note.show_text(self._desk.note(learner, criterion))
        self._show_reasons(session.draft(learner, criterion).reasons)

    def _show_kept(self) -> None:
        if self._learner:
            self._show_mark()  # and leaves alone what was typed

    def _show_text(self) -> None:
        self.writing.show_learner(self._learner)

    def choose_level(self, name: str) -> None:
        """Mark with a level."""
        if self._refused():
            return
        self.levels[name].setChecked(True)  # a press on the level that holds takes nothing away
        self.settle()
        learner, criterion = self._learner, self.criterion.id
        self._desk.do(lambda session: session.set_level(learner, criterion, name))
        self.opened.emit(criterion)

    def accept_draft(self) -> None:
        """Make a mark of the draft."""
        if self._refused():
            return
        self.settle()
        learner, criterion = self._learner, self.criterion.id
        self._desk.do(lambda session: session.accept(learner, criterion))

    def keep_mark(self) -> None:
        """Let the mark stand although its draft has changed."""
        if self._refused():
            return
        self.settle()
        learner, criterion = self._learner, self.criterion.id
        self._desk.do(lambda session: session.keep_mark(learner, criterion))

    def take_keyboard(self) -> None:
        """To the level that is marked or drafted."""
        self._row.stop.setFocus()

    def settle(self) -> None:
        """Pass on whatever was typed."""
        self.writing.settle()
        self.note.settle()

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """A click on the card opens it."""
        self.opened.emit(self.criterion.id)
        super().mousePressEvent(event)

    def focusInEvent(self, event: QFocusEvent) -> None:
        """So does the keyboard."""
        self.opened.emit(self.criterion.id)
        super().focusInEvent(event)

    def _state_words(self, mark: Mark | None, drafted: str | None) -> str:
        if mark is None:
            return self.tr("✎ draft") if drafted is not None else self.tr("✎ for your eye")
        when = mark.at.astimezone()
        words = f"{when:%H:%M}" if when.date() == dt.date.today() else short_day_and_time(when)
        told = self.tr("✓ marked by {who}, {when}")
        if self._moved is not None:
            told = self.tr("marked by {who}, {when}")
        return told.format(who=mark.by, when=words)

    def _unsaid_words(self, mark: Mark | None, draft: Draft) -> str:
        """What is to be seen before the text of a level chosen by hand goes out."""
        if mark is None or mark.level == draft.level:
            return ""
        pieces = self._desk.session.text(self._learner, self.criterion.id).pieces
        if not any(piece.strip() for piece in pieces):
            return self.tr("▲ There is no text to the learner yet.")
        if draft.level is not None and set(pieces) <= set(drafted(draft).pieces):
            return self.tr("▲ The text is still the one drafted for {level}.").format(
                level=draft.level
            )
        return ""

    def _moved_words(self, moved: Moved) -> str:
        at = self.tr("{level} · {marks:g}").format(level=moved.level, marks=moved.marks)
        words = {
            "readings": self.tr("▲ Readings corrected since; the draft would now be {level}."),
            "agreed": self.tr("▲ Explanation agreed since; the draft would now be {level}."),
        }.get(moved.why, self.tr("▲ The draft has changed since; it would now be {level}."))
        return words.format(level=figures(at))

    def _show_reasons(self, reasons: tuple[Reason, ...]) -> None:
        while len(self._reasons) < len(reasons):
            made = LinkLabel()
            made.clicked.connect(partial(self._choose_reason, len(self._reasons)))
            before = self._reasons[-1] if self._reasons else self._row.buttons()[-1]
            self._reasons.append(made)
            self._reason_box.addWidget(made)
            QWidget.setTabOrder(before, made)  # where it is seen: above the text
        self._shown_reasons = reasons
        for number, control in enumerate(self._reasons):
            there = number < len(reasons)
            leads = there and bool(reasons[number].check or reasons[number].sources)
            words = said(reasons[number].text) if there else ""
            control.show_link(f"{words}\u00a0→" if leads else words, leads)
            control.setVisible(there and self.is_open)

    def _choose_reason(self, number: int) -> None:
        self.reason_chosen.emit(self._shown_reasons[number])

    def _keep_note(self, text: str) -> None:
        learner, criterion = self._learner, self.criterion.id
        self._desk.do(lambda session: session.set_note(learner, text, criterion))

    def _refused(self) -> bool:
        """Whether the marks are signed off; what holds is then shown again."""
        refused = self._desk.refuse_signed()
        if refused:
            self.show_learner(self._learner)
        return refused

    def _clear(self) -> None:
        if self._refused():
            return
        learner, criterion = self._learner, self.criterion.id
        self._desk.do(lambda session: session.clear_mark(learner, criterion))

    def _keep_room(self) -> None:
        """As wide as when it tells of a mark: nothing below moves when a draft is accepted."""
        told = self.tr("✓ marked by {who}, {when}").format(who=self._desk.held.who, when="00:00")
        metrics = QFontMetricsF(self._theme.font("body", bold=True))  # as it stands in ink
        wide = metrics.horizontalAdvance(told) + 2
        self._state.setMinimumWidth(min(math.ceil(wide), self._theme.px(_WIDEST_STATE)))

    def _restyle(self) -> None:
        self._keep_room()
        self._title.setFont(self._theme.font("body", bold=True))
