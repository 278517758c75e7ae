"""The marking sheet's margin: every criterion, the total, and the way to the next learner."""

from __future__ import annotations

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QApplication, QFrame, QHBoxLayout, QVBoxLayout, QWidget

from markbench.model import Criterion
from markbench.session.so_far import so_far
from markbench.ui.desk import Desk
from markbench.ui.look.said import figures
from markbench.ui.look.theme import Theme
from markbench.ui.parts import button, label, press, quiet_scroll, restyle
from markbench.ui.portfolio.criterion import CriterionCard
from markbench.ui.signed import SignedLine, allow
from markbench.ui.text_field import TextField


class MarkingMargin(QFrame):
    """One card per criterion, one of them open; ``reason_chosen`` passes a reason on."""

    reason_chosen = Signal(object)
    next_wanted = Signal()

    def __init__(self, desk: Desk, theme: Theme) -> None:
        super().__init__()
        self.setProperty("kind", "margin")
        self.setAccessibleName(self.tr("Marking"))
        self._desk, self._theme, self._learner = desk, theme, ""
        self._total = label(kind="lead")
        self._state = label(kind="small", wrap=True)
        self.signed = SignedLine(desk)
        self._state.setAlignment(Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter)
        self.cards = [self.make_card(c) for c in desk.session.rubric.criteria]
        self.note = TextField(self.tr("Private note on this learner"))
        self.note.setPlaceholderText(self.tr("Private note on this learner, never sent"))
        self.note.settled.connect(self._keep_note)
        self.note.left_by_key.connect(self.take_keyboard)
        self.accept_all = button(self.tr("Accept all drafts"), "deed", self.accept_drafts)
        self.next = button(self.tr("Next learner"), "", self.next_wanted.emit)
        inside = QWidget()
        inside.setProperty("kind", "inside")
        cards = QVBoxLayout(inside)
        cards.setContentsMargins(0, 0, 0, 0)
        cards.setSpacing(0)
        for card in self.cards:
            card.opened.connect(self.open_card)
            card.reason_chosen.connect(self.reason_chosen)
            cards.addWidget(card)
        last = QVBoxLayout()
        last.setContentsMargins(14, 8, 14, 8)
        last.addWidget(self.note)
        cards.addLayout(last)
        cards.addStretch(1)
        desk.kept.connect(self._show_kept)
        self._inside = inside
        self._scroll = quiet_scroll(inside)
        self._lay_out()
        if self.cards:
            self.open_card(self.cards[0].criterion.id)

    def _lay_out(self) -> None:
        head = QHBoxLayout()
        head.setContentsMargins(14, 8, 14, 6)
        head.addWidget(self._total)
        head.addWidget(self._state, 1)
        foot = QHBoxLayout()
        foot.setContentsMargins(14, 8, 14, 10)
        foot.setSpacing(8)
        foot.addWidget(self.accept_all, 1)
        foot.addWidget(self.next, 1)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(0)
        column.addLayout(head)
        signed = QVBoxLayout()
        signed.setContentsMargins(12, 0, 12, 0)
        signed.addWidget(self.signed)
        column.addLayout(signed)
        column.addWidget(self._scroll, 1)
        column.addLayout(foot)

    def make_card(self, criterion: Criterion) -> CriterionCard:
        """The card of one criterion."""
        return CriterionCard(self._desk, self._theme, criterion)

    def show_learner(self, learner: str) -> None:
        """Show a learner's drafts and marks as they are now."""
        fresh, held = learner != self._learner, self._holds_keyboard()
        if fresh:
            self.settle()
        self._learner = learner
        if fresh:
            self._shut_others()
        self._frozen = self._desk.signed is not None
        for card in self.cards:
            card.show_learner(learner)
            card.freeze(self._frozen)
        if fresh:
            self._begin(keyboard=held)
        self.note.show_text(self._desk.note(learner))
        self._sum_up()

    @property
    def needed_width(self) -> int:
        """Below this the cards are cut at their side."""
        beside = self._scroll.verticalScrollBar().sizeHint().width() + 2 * self.frameWidth()
        return self._inside.minimumSizeHint().width() + beside

    def _show_kept(self) -> None:
        if self._learner:
            self._sum_up()

    def settle(self) -> None:
        """Pass on whatever was typed."""
        self.note.settle()
        for card in self.cards:
            card.settle()

    @property
    def current(self) -> CriterionCard | None:
        """The open card."""
        return next((card for card in self.cards if card.is_open), None)

    def open_card(self, criterion: str) -> None:
        """Open one card and shut the others."""
        for card in self.cards:
            if card.is_open != (card.criterion.id == criterion):
                card.set_open(card.criterion.id == criterion)

    def step(self, by: int) -> None:
        """Open the next criterion or the one before, and give it the keyboard."""
        numbers = [i for i, card in enumerate(self.cards) if card.is_open]
        at = min(max((numbers[0] if numbers else 0) + by, 0), len(self.cards) - 1)
        self._turn_to(self.cards[at])

    def _turn_to(self, card: CriterionCard, *, keyboard: bool = True) -> None:
        self.open_card(card.criterion.id)
        if keyboard:
            card.take_keyboard()
        self._bring_in(card)

    def _bring_in(self, card: CriterionCard) -> None:
        """The whole card if there is room for it, and its head in any case."""
        inside = self._inside
        layout = inside.layout()
        if layout is not None:
            layout.activate()  # its height is that of what it shows now
        bar, room = self._scroll.verticalScrollBar(), self._scroll.viewport().height()
        top = card.mapTo(inside, card.rect().topLeft()).y()
        if top < bar.value() or top + card.height() > bar.value() + room:
            bar.setValue(top if card.height() > room else max(top + card.height() - room, 0))

    def _holds_keyboard(self) -> bool:
        """Whether one of the cards has the keyboard, which a shut one may have to give away."""
        at = QApplication.focusWidget()
        return at is not None and any(card.isAncestorOf(at) for card in self.cards)

    def _shut_others(self) -> None:
        """Shut what is not to be open for this learner: only what stays open is filled."""
        first = self._first()
        for card in self.cards:
            if card.is_open and card is not first:
                card.set_open(False)

    def _begin(self, *, keyboard: bool) -> None:
        """Open the first criterion not yet marked, else the first.

        A key that gives a level would else fall on whatever was open for the learner before.
        """
        first = self._first()
        if first is not None:
            self._turn_to(first, keyboard=keyboard)

    def _first(self) -> CriterionCard | None:
        unmarked = (card for card in self.cards if self._awaits(card.criterion.id))
        return next(unmarked, self.cards[0] if self.cards else None)

    def _awaits(self, criterion: str) -> bool:
        """Whether something is still to be decided on a criterion."""
        return not self._desk.session.is_settled(self._learner, criterion)

    def choose_level(self, number: int) -> bool:
        """Mark the open criterion with its level of that number, from 1; False for none."""
        card = self.current
        if card is None or not 1 <= number <= len(card.levels):
            return False
        card.choose_level(list(card.levels)[number - 1])
        return True

    def take_keyboard(self) -> None:
        """To the open card's levels."""
        card = self.current
        if card is not None:
            card.take_keyboard()

    def accept_current(self) -> None:
        """Accept the open draft, or take the one that changed, and go on to the next criterion."""
        card = self.current
        if card is None or self._desk.refuse_signed():
            return
        if card.accept.isEnabled() or card.take.isEnabled():
            card.accept_draft()
            self.step(1)

    def keep_current(self) -> None:
        """Let the open mark stand whose draft has changed, and go on to the next criterion."""
        card = self.current
        if card is not None and not self._desk.refuse_signed() and card.keep.isEnabled():
            card.keep_mark()
            self.step(1)

    def back_to_draft(self) -> None:
        """Take the open mark back to a draft."""
        card = self.current
        if card is not None and not self._desk.refuse_signed():
            press(card.clear)

    def accept_drafts(self) -> None:
        """Accept every draft not yet marked."""
        if self._desk.refuse_signed():
            return
        self.settle()
        learner = self._learner
        self._desk.do(lambda session: session.accept(learner))

    def _keep_note(self, text: str) -> None:
        learner = self._learner
        self._desk.do(lambda session: session.set_note(learner, text))

    def _sum_up(self) -> None:
        session, learner = self._desk.session, self._learner
        done, of = session.progress(learner)
        total, most = session.total(learner), session.rubric.most
        held = so_far(session, learner)
        if total is not None and done == of:
            words = self.tr("✓ {n:g} of {most:g}").format(n=total, most=most)
            self._total.setText(figures(words))
            restyle(self._total, "kind", "ink")
        else:
            words = self.tr("✎ draft {n:g} of {most:g}").format(n=held.marks, most=held.most)
            self._total.setText(figures(words))
            restyle(self._total, "kind", "pencil")
        state = self.tr("{n} of {of} marked").format(n=done, of=of)
        if held.for_your_eye:
            state = self.tr("{state}, {n} for your eye").format(state=state, n=held.for_your_eye)
        if any(session.moved_draft(learner, card.criterion.id) for card in self.cards):
            state = self.tr("{state}, look again").format(state=state)
        every = (self._desk.not_saved("mark", learner, card.criterion.id) for card in self.cards)
        waiting = sum(one is not None for one in every)
        if waiting:
            state = self.tr("{state}, {n} not saved yet").format(state=state, n=waiting)
        self._state.setText(state)
        self._state.setVisible(not self._frozen)
        left = [
            d.criterion
            for d in session.drafts(learner)
            if d.level is not None and session.mark(learner, d.criterion) is None
        ]
        allow(self._desk, bool(left), self.accept_all)
        words = self.tr("Accept {n} drafts") if len(left) > 1 else self.tr("Accept the last draft")
        self.accept_all.setText(words.format(n=len(left)) if left else self.tr("No draft left"))
