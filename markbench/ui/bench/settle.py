"""Pieces whose owner is in doubt or unknown, with the evidence for each candidate."""

from __future__ import annotations

from functools import partial

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QKeyEvent, QShowEvent, QStandardItem, QStandardItemModel, QWheelEvent
from PySide6.QtWidgets import (
    QApplication,
    QComboBox,
    QFrame,
    QHBoxLayout,
    QPushButton,
    QScrollArea,
    QVBoxLayout,
    QWidget,
)

from markbench.model import Doubt, Match, Piece
from markbench.ui.bench.peep import Peep
from markbench.ui.desk import Desk
from markbench.ui.look.said import said
from markbench.ui.look.theme import Theme
from markbench.ui.parts import button, frame, label

_AT_ONCE = 40  # more slips than anybody reads before settling the first
Asked = tuple[Doubt | Piece, ...]


class _PickBox(QComboBox):
    """Chooses only from its open list: an arrow or the wheel passing by decides nothing."""

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Any key that would change the choice opens the list instead."""
        if event.key() in (Qt.Key.Key_Tab, Qt.Key.Key_Backtab, Qt.Key.Key_Escape):
            super().keyPressEvent(event)
        else:
            self.showPopup()

    def wheelEvent(self, event: QWheelEvent) -> None:
        """Scrolls the slips."""
        event.ignore()


class SettlePanel(QScrollArea):
    """One slip of paper per open question; choosing is a command and is remembered.

    ``done``: the last question was answered here, and the keyboard is free to go on.
    """

    done = Signal()

    def __init__(self, desk: Desk, theme: Theme, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._desk, self._theme = desk, theme
        self.setProperty("kind", "stop")
        self.setAccessibleName(self.tr("To settle"))
        self.setWidgetResizable(True)
        self.setFrameShape(QFrame.Shape.NoFrame)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self._asked: tuple[Asked, tuple[Piece, ...], bool] | None = None
        self._names = {
            words: QStandardItemModel(self)
            for words in (self.tr("Whose is it?"), self.tr("Another learner…"))
        }
        self._answered: int | None = None
        theme.changed.connect(self._size)
        desk.changed.connect(self._refresh)
        self._size()

    def count(self) -> int:
        """Questions still open."""
        work = self._desk.session.work
        return len(work.doubts) + len(work.unowned)

    def aside(self) -> int:
        """Files set aside as nobody's."""
        return len(self._desk.session.work.set_aside)

    def showEvent(self, event: QShowEvent) -> None:
        """Only now is it made: most evenings nobody needs it."""
        super().showEvent(event)
        self._refresh()

    def _refresh(self) -> None:
        work = self._desk.session.work
        asked: Asked = (*work.doubts, *work.unowned)
        now = (asked, work.set_aside, self._desk.blind)
        if self.isVisible() and now != self._asked:
            self._asked = now
            held = QApplication.focusWidget()
            mine = held is None or held is self or self.isAncestorOf(held)
            slips = self._fill(asked, work.set_aside)
            if self._answered is not None and mine:
                self._go_on(slips)
            self._answered = None

    def _go_on(self, slips: list[QFrame]) -> None:
        """The keyboard goes to the slip that moved up, else to the last, else elsewhere."""
        if not slips:
            self.done.emit()
            return
        at = min(self._answered or 0, len(slips) - 1)
        # The likeliest owner, else the list of all: never “Nobody's”, which Enter would press.
        parts = slips[at].findChildren(QWidget)
        next(one for one in parts if isinstance(one, QPushButton | QComboBox)).setFocus()
        self.ensureWidgetVisible(slips[at])

    def _size(self) -> None:
        self.setFixedWidth(self._theme.px(330))

    def _fill(self, asked: Asked, set_aside: tuple[Piece, ...]) -> list[QFrame]:
        learners = sorted(self._desk.session.learners, key=lambda one: one.name)
        for words, model in self._names.items():
            model.clear()
            model.appendRow(QStandardItem(words))
            for learner in learners:
                item = QStandardItem(learner.name)
                item.setData(learner.id, Qt.ItemDataRole.UserRole)
                model.appendRow(item)
        inside = QWidget()
        inside.setProperty("kind", "inside")
        column = QVBoxLayout(inside)
        column.setContentsMargins(0, 0, 6, 0)
        column.setSpacing(8)
        slips = []
        for number, one in enumerate(asked[:_AT_ONCE]):
            piece, doubt = (one.piece, one) if isinstance(one, Doubt) else (one, None)
            slips.append(self._slip(number, piece, doubt))
            column.addWidget(slips[-1])
        if len(asked) > _AT_ONCE:
            words = self.tr("{n} more follow when these are settled.")
            column.addWidget(label(words.format(n=len(asked) - _AT_ONCE), "quiet", wrap=True))
        if set_aside:
            column.addSpacing(8)
            column.addWidget(label(self.tr("Set aside as nobody's"), "heading"))
            for piece in set_aside[:_AT_ONCE]:
                column.addLayout(self._aside(piece))
        if not asked and not set_aside:
            column.addWidget(label(self._nothing(), "quiet", wrap=True))
        column.addStretch(1)
        self.setWidget(inside)
        return slips

    def _nothing(self) -> str:
        if self._desk.blind:
            return self.tr("Whose files are whose is settled when names are shown.")
        return self.tr("Every file has its owner.")

    def _slip(self, number: int, piece: Piece, doubt: Doubt | None) -> QFrame:
        slip = frame("paper")
        column = QVBoxLayout(slip)
        column.setContentsMargins(12, 10, 12, 10)
        column.setSpacing(6)
        column.addWidget(label(piece.file, wrap=True))
        why = (
            said(doubt.why) if doubt is not None else self.tr("No learner of the class list fits.")
        )
        column.addWidget(label(why, "small", wrap=True))
        candidates: tuple[Match, ...] = doubt.candidates if doubt is not None else ()
        for match in candidates:
            name = self._name(match.learner)
            choose = button(
                self.tr("{name} ({score:.0f} %)").format(name=name, score=match.score),
                clicked=partial(self._settle, number, piece, match.learner),
            )
            choose.setAccessibleName(f"{choose.text()}: {piece.file}")
            choose.setAccessibleDescription(said(match.why))
            column.addWidget(choose)
            if said(match.why) not in why:  # it is said above already
                column.addWidget(label(said(match.why), "small", wrap=True))
        words = self.tr("Another learner…") if candidates else self.tr("Whose is it?")
        nobody = button(self.tr("Nobody's"), clicked=partial(self._settle, number, piece, ""))
        nobody.setAccessibleName(f"{nobody.text()}: {piece.file}")
        column.addWidget(self._anyone(number, piece, words))
        column.addWidget(Peep(self._desk.held.folder, piece, nobody))
        return slip

    def _aside(self, piece: Piece) -> QHBoxLayout:
        row = QHBoxLayout()
        row.addWidget(label(piece.file, "small", wrap=True), 1)
        back = button(self.tr("Bring back"), "", partial(self._bring_back, piece))
        back.setAccessibleName(f"{back.text()}: {piece.file}")
        row.addWidget(back, 0, Qt.AlignmentFlag.AlignTop)
        return row

    def _anyone(self, number: int, piece: Piece, words: str) -> QComboBox:
        box = _PickBox()
        box.setAccessibleName(self.tr("Another learner for {file}").format(file=piece.file))
        box.setModel(self._names[words])
        box.setSizeAdjustPolicy(QComboBox.SizeAdjustPolicy.AdjustToMinimumContentsLengthWithIcon)

        def chosen(_i: int) -> None:
            if box.currentData() is not None:
                self._settle(number, piece, box.currentData())

        box.activated.connect(chosen)
        return box

    def _settle(self, number: int, piece: Piece, learner: str) -> None:
        self._answered = number
        self._desk.do(lambda session: session.settle_owner(piece.file, learner))

    def _bring_back(self, piece: Piece) -> None:
        self._answered = 0
        self._desk.do(lambda session: session.settle_owner(piece.file, None))

    def _name(self, learner_id: str) -> str:
        for learner in self._desk.session.learners:
            if learner.id == learner_id:
                return learner.name
        return learner_id
