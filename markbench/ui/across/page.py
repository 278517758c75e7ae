"""The page on which one criterion is marked for the whole class, from the keyboard."""

from __future__ import annotations

import secrets

from PySide6.QtCore import QModelIndex, QTimer, Signal
from PySide6.QtGui import QKeyEvent, QResizeEvent, Qt
from PySide6.QtWidgets import (
    QAbstractItemView,
    QBoxLayout,
    QComboBox,
    QFrame,
    QHBoxLayout,
    QListView,
    QStackedWidget,
    QVBoxLayout,
    QWidget,
)

from markbench.model import Criterion, Piece, Reason
from markbench.session.order import choose_order, in_order, order_by, seed_of, shuffle_every
from markbench.ui.across.model import StripModel
from markbench.ui.across.strip import LevelHeading, StripDelegate
from markbench.ui.bench.model import ClassModel
from markbench.ui.desk import Desk
from markbench.ui.flow import FlowLayout
from markbench.ui.look.theme import Theme
from markbench.ui.parts import ElidedLabel, button, label, quiet_scroll, restyle
from markbench.ui.portfolio.criterion import CriterionCard
from markbench.ui.portfolio.evidence import EvidenceStrip
from markbench.ui.portfolio.tab_order import TabOrder
from markbench.ui.signed import SignedLine

_EVERY = "every"  # criterion is to be shuffled


class StripView(QListView):
    """The strips. Enter accepts, left and right change the criterion."""

    accepted = Signal()
    turned = Signal(int)
    opened = Signal()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Keys of the hand that marks; digits come as actions of the window."""
        if event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            self.accepted.emit()
        elif event.key() in (Qt.Key.Key_Left, Qt.Key.Key_Right):
            self.turned.emit(-1 if event.key() == Qt.Key.Key_Left else 1)
        else:
            super().keyPressEvent(event)

    def keyboardSearch(self, _search: str) -> None:
        """Typing marks; it does not look for names."""


class AcrossPage(QWidget):
    """``opened`` carries a learner; ``led`` a learner with the reason or piece to look at."""

    opened = Signal(str)
    led = Signal(str, object)

    def __init__(self, desk: Desk, theme: Theme, learners: ClassModel) -> None:
        super().__init__()
        self._desk, self._theme = desk, theme
        self._cards: dict[str, CriterionCard] = {}
        self.model = StripModel(desk, learners, self)
        self.delegate = StripDelegate(theme, self.model, self)
        self.delegate.level_clicked.connect(self._clicked)
        self.view = self._make_view()
        self.heading = LevelHeading(theme)
        self.criteria = QComboBox()
        self.criteria.setAccessibleName(self.tr("Criterion"))
        for criterion in desk.session.rubric.criteria:
            self.criteria.addItem(criterion.title, criterion.id)
        self.criteria.currentIndexChanged.connect(self._show_chosen)
        self.orders = QComboBox()
        self.orders.setAccessibleName(self.tr("Order of marking"))
        for by, words in (
            ("name", self.tr("By name")),
            ("concern", self.tr("Most questions first")),
            ("shuffled", self.tr("Shuffled")),
            (_EVERY, self.tr("Shuffle all criteria")),
        ):
            self.orders.addItem(words, by)
        self.orders.activated.connect(self._order_chosen)
        self.again = button(self.tr("Shuffle again"), "", self.shuffle)
        self.state = label(kind="small")
        self._seed = label(kind="small")
        self.signed = SignedLine(desk)
        self._name = ElidedLabel("title")
        self._place = label(kind="small")
        self.evidence = EvidenceStrip(desk, theme, bare=True)
        self.evidence.opened.connect(self._look_at)
        self.stack = QStackedWidget()
        self._keys = label(kind="small", wrap=True)
        self._lay_out()
        self._tab = TabOrder(
            self.view, self.signed, self.evidence, self.stack, self.accept, self.whole
        )
        desk.changed.connect(self._on_changed)
        theme.changed.connect(self._restyle)
        self._restyle()

    def _make_view(self) -> StripView:
        view = StripView()
        view.setProperty("kind", "open")
        view.setAccessibleName(self.tr("Learners"))
        view.setModel(self.model)
        view.setItemDelegate(self.delegate)
        view.setUniformItemSizes(True)
        view.setFrameShape(QFrame.Shape.NoFrame)
        view.setSelectionMode(QAbstractItemView.SelectionMode.SingleSelection)
        view.setVerticalScrollMode(QAbstractItemView.ScrollMode.ScrollPerPixel)
        view.setVerticalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOn)
        view.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        view.setResizeMode(QListView.ResizeMode.Adjust)
        view.accepted.connect(self.accept_and_go_on)
        view.turned.connect(self.turn)
        view.doubleClicked.connect(lambda _index: self.open_current())
        view.selectionModel().currentChanged.connect(self._current_changed)
        return view

    def _lay_out(self) -> None:
        tools = FlowLayout(spacing=8)
        for part in (self.criteria, self.orders, self.again, self._seed, self.state):
            tools.addWidget(part)
        left = QVBoxLayout()
        left.setContentsMargins(16, 8, 6, 6)
        left.setSpacing(4)
        left.addLayout(tools)
        left.addWidget(self.heading)
        left.addWidget(self.view, 1)
        left.addWidget(self._keys)
        inside = QWidget()
        inside.setProperty("kind", "inside")
        inner = QVBoxLayout(inside)
        inner.setContentsMargins(0, 0, 0, 0)
        inner.setSpacing(0)
        pictures = QVBoxLayout()
        pictures.setContentsMargins(10, 0, 8, 0)
        pictures.addWidget(self.evidence)
        inner.addLayout(pictures)
        inner.addWidget(self.stack)
        inner.addStretch(1)
        head = QHBoxLayout()
        head.setContentsMargins(14, 10, 14, 0)
        head.addWidget(self._name, 1)
        head.addWidget(self._place)
        foot = self._foot = QHBoxLayout()
        foot.setContentsMargins(14, 8, 14, 10)
        foot.setSpacing(8)
        self.accept = button(self.tr("Accept and go on"), "deed", self.accept_and_go_on)
        self.whole = button(self.tr("The whole sheet"), "", self.open_current)
        foot.addWidget(self.accept, 1)
        foot.addWidget(self.whole, 1)
        self._margin = QFrame()
        self._margin.setProperty("kind", "margin")
        right = QVBoxLayout(self._margin)
        right.setContentsMargins(0, 0, 0, 0)
        right.setSpacing(0)
        right.addLayout(head)
        signed = QVBoxLayout()
        signed.setContentsMargins(12, 0, 12, 0)
        signed.addWidget(self.signed)
        right.addLayout(signed)
        right.addWidget(quiet_scroll(inside), 1)
        right.addLayout(foot)
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(0)
        row.addLayout(left, 1)
        row.addWidget(self._margin)

    # --- showing -------------------------------------------------------------------

    @property
    def criterion(self) -> Criterion:
        """The criterion being marked."""
        return self.model.criterion

    @property
    def learner(self) -> str:
        """The learner whose strip is current; empty where there is none."""
        at = self.view.currentIndex().row()
        return self.model.order[at] if 0 <= at < len(self.model.order) else ""

    @property
    def card(self) -> CriterionCard:
        """The card of the criterion, made when first needed."""
        criterion = self.criterion
        if criterion.id not in self._cards:
            card = CriterionCard(self._desk, self._theme, criterion)
            card.takes_drafts = False  # the page's own goes on to the next learner as well
            card.out_of_text = self.view.setFocus
            card.set_open(True)
            card.reason_chosen.connect(self._look_at)
            self._cards[criterion.id] = card
            self.stack.addWidget(card)
        return self._cards[criterion.id]

    def show_page(self) -> None:
        """Come to this page: at the learner left, or the first not yet marked."""
        learner = self.learner
        self._fill(self.criterion, learner)
        self.view.setFocus()

    def show_criterion(self, criterion: str) -> None:
        """Turn to a criterion."""
        self.criteria.setCurrentIndex(self.criteria.findData(criterion))

    def turn(self, by: int) -> None:
        """The next criterion or the one before."""
        at = self.criteria.currentIndex() + by
        if 0 <= at < self.criteria.count():
            self.criteria.setCurrentIndex(at)
            self.view.setFocus()

    def settle(self) -> None:
        """Pass on whatever was typed."""
        for card in self._cards.values():
            card.settle()

    def _show_chosen(self) -> None:
        self.settle()
        wanted = self.criteria.currentData()
        criteria = self._desk.session.rubric.criteria
        self._fill(next(one for one in criteria if one.id == wanted), "")

    def _fill(self, criterion: Criterion, learner: str) -> None:
        self.model.show_criterion(criterion)
        self.heading.show_criterion(criterion, self.model.timings)
        self.stack.setCurrentWidget(self.card)
        at = self.model.number_of(learner)
        self._go_to(at if at >= 0 else max(self._next_unmarked(-1), 0))
        self._count()

    def _go_to(self, row: int) -> None:
        index = self.model.index(row)
        if index == self.view.currentIndex() or not index.isValid():
            self._show_current()
        else:
            self.view.setCurrentIndex(index)  # and that shows it
        self.view.scrollTo(index)

    def _current_changed(self, now: QModelIndex, _before: QModelIndex) -> None:
        if now.isValid():
            self._show_current()

    def _show_current(self) -> None:
        learner = self.learner
        there = bool(learner)
        for part in (self.stack, self.evidence, self.accept, self.whole):
            part.setEnabled(there)
        if not there:
            self._name.setText(self.tr("Nobody is in the class list."))
            return
        self._name.setText(self.model.strip(learner).row.name)
        at = self.view.currentIndex().row()
        words = self.tr("{n} of {of}")
        self._place.setText(words.format(n=at + 1, of=len(self.model.order)))
        self.card.show_learner(learner)
        self.card.freeze(self.model.signed)
        self.evidence.show_learner(learner)
        self._tab.renew()
        if at + 1 < len(self.model.order):
            after = self.model.order[at + 1]
            QTimer.singleShot(120, self, lambda: self.evidence.prepare(after))

    def _count(self) -> None:
        session, criterion = self._desk.session, self.criterion.id
        done = sum(session.is_settled(one, criterion) for one in self.model.order)
        words = self.tr("{n} of {of} marked")
        signed = self.tr("✓ signed off")
        counted = words.format(n=done, of=len(self.model.order))
        self.state.setText(signed if self.model.signed else counted)
        self._say_keys()
        by = order_by(session, criterion)
        self.orders.setCurrentIndex(self.orders.findData(by))
        self.again.setVisible(by == "shuffled")
        seed = seed_of(session, criterion)
        self._seed.setVisible(seed is not None)
        self._seed.setText(self.tr("seed {n}, recorded").format(n=seed))

    def _say_keys(self) -> None:
        """The keys of this page, and its deed: once the marks are signed off, to go on."""
        signed = self.model.signed
        if signed:
            words = self.tr("Enter: go on  ·  ↑ ↓ learner  ·  ← → criterion")
        else:
            words = self.tr(
                "Digits: a level  ·  Enter: accept and go on  ·  ↑ ↓ learner  ·  ← → criterion  ·  "
                "Alt+S: shuffle  ·  Alt+Shift+S: every criterion"
            )
        self._keys.setText(words)
        self.accept.setText(self.tr("Next learner") if signed else self.tr("Accept and go on"))
        restyle(self.accept, "kind", "" if signed else "deed")

    def _on_changed(self, learner: str) -> None:
        if not self.isVisible():
            return
        if not learner or learner not in self.model.order:
            # The order may have been chosen anew, names hidden, or the folder read again.
            kept = self.learner
            if in_order(self._desk.session, self.criterion.id) != self.model.order or not kept:
                self._fill(self.criterion, kept)
                return
        if learner in ("", self.learner):
            self._show_current()
        self._count()

    # --- marking -------------------------------------------------------------------

    def choose_level(self, number: int) -> None:
        """Mark the current learner with the level of that number, from 1."""
        levels = self.criterion.levels
        if self.learner and 1 <= number <= len(levels):
            self.card.choose_level(levels[number - 1].name)

    def accept_and_go_on(self) -> None:
        """Accept the draft if there is no mark yet, and go to the next learner not marked."""
        learner = self.learner
        if not learner:
            return
        session, criterion = self._desk.session, self.criterion.id
        if session.mark(learner, criterion) is None:
            if session.draft(learner, criterion).level is None:
                return  # for the teacher's eye: a level must be chosen
            self.card.accept_draft()
        at = self.view.currentIndex().row()
        after = self._next_unmarked(at)
        if after >= 0:
            self._go_to(after)
        elif at + 1 < len(self.model.order):
            self._go_to(at + 1)

    def back_to_draft(self) -> None:
        """Take the current learner's mark back to a draft."""
        learner, criterion = self.learner, self.criterion.id
        if learner and not self._desk.refuse_signed():
            self._desk.do(lambda session: session.clear_mark(learner, criterion))

    def write(self) -> None:
        """Write to the current learner."""
        self.card.text.setFocus()

    def open_current(self) -> None:
        """The current learner's whole sheet."""
        if self.learner:
            self.opened.emit(self.learner)

    def _next_unmarked(self, after: int) -> int:
        session, criterion = self._desk.session, self.criterion.id
        for row in range(after + 1, len(self.model.order)):
            if not session.is_settled(self.model.order[row], criterion):
                return row
        return -1

    def _clicked(self, learner: str, level: str) -> None:
        self._go_to(self.model.number_of(learner))
        self.card.choose_level(level)

    def _look_at(self, thing: Reason | Piece) -> None:
        self.led.emit(self.learner, thing)

    # --- order ---------------------------------------------------------------------

    def _order_chosen(self) -> None:
        by, criterion = self.orders.currentData(), self.criterion.id
        if by == "shuffled":
            self.shuffle()
        elif by == _EVERY:
            self.shuffle_every()
        else:
            self._desk.do(lambda session: choose_order(session, criterion, by))

    def shuffle(self) -> None:
        """A fresh shuffled order for this criterion, recorded with its seed."""
        criterion, seed = self.criterion.id, secrets.randbelow(1_000_000)
        self._desk.do(lambda session: choose_order(session, criterion, "shuffled", seed))

    def shuffle_every(self) -> None:
        """A fresh shuffled order for every criterion, each with its own seed, as one step."""
        criteria = self._desk.session.rubric.criteria
        seeds = {one.id: secrets.randbelow(1_000_000) for one in criteria}
        self._desk.do(lambda session: shuffle_every(session, seeds))

    # --- size ----------------------------------------------------------------------

    def resizeEvent(self, event: QResizeEvent) -> None:
        """The margin keeps the share it has on the sheet."""
        super().resizeEvent(event)
        self._restyle()

    def _restyle(self) -> None:
        wide = min(max(self._theme.px(390), int(self.width() * 0.3)), int(self.width() * 0.44))
        self._margin.setFixedWidth(wide)
        widest = max(self.accept.sizeHint().width(), self.whole.sizeHint().width())
        side_by_side = 2 * widest + self._foot.spacing() + 28 <= wide
        self._foot.setDirection(
            QBoxLayout.Direction.LeftToRight if side_by_side else QBoxLayout.Direction.TopToBottom
        )
        self.heading.inset = self.view.verticalScrollBar().sizeHint().width()
        self.heading.update()
        self.view.scheduleDelayedItemsLayout()
