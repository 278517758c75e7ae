"""Pieces whose owner is in doubt or unknown, with the evidence for each candidate."""

from __future__ import annotations

from functools import partial

from PySide6.QtCore import Qt
from PySide6.QtGui import QKeyEvent, QShowEvent, QStandardItem, QStandardItemModel, QWheelEvent
from PySide6.QtWidgets import QComboBox, QFrame, QScrollArea, QVBoxLayout, QWidget

from markbench.model import Doubt, Piece
from markbench.ui.desk import Desk
from markbench.ui.look.theme import Theme
from markbench.ui.parts import button, frame, label

_AT_ONCE = 40  # more slips than anybody reads before settling the first


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
    """One slip of paper per open question; choosing is a command and is remembered."""

    def __init__(self, desk: Desk, theme: Theme, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._desk, self._theme = desk, theme
        self.setProperty("kind", "stop")
        self.setAccessibleName(self.tr("To settle"))
        self.setWidgetResizable(True)
        self.setFrameShape(QFrame.Shape.NoFrame)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self._asked: tuple[Doubt | Piece, ...] | None = None
        self._names = QStandardItemModel(self)
        theme.changed.connect(self._size)
        desk.changed.connect(self._refresh)
        self._size()

    def count(self) -> int:
        """Questions still open."""
        work = self._desk.session.work
        return len(work.doubts) + len(work.unowned)

    def showEvent(self, event: QShowEvent) -> None:
        """Only now is it made: most evenings nobody needs it."""
        super().showEvent(event)
        self._refresh()

    def _refresh(self) -> None:
        work = self._desk.session.work
        asked: tuple[Doubt | Piece, ...] = (*work.doubts, *work.unowned)
        if self.isVisible() and asked != self._asked:
            self._asked = asked
            self._fill()

    def _size(self) -> None:
        self.setFixedWidth(self._theme.px(330))

    def _fill(self) -> None:
        self._names.clear()
        self._names.appendRow(QStandardItem(self.tr("Another learner…")))
        for learner in sorted(self._desk.session.learners, key=lambda one: one.name):
            item = QStandardItem(learner.name)
            item.setData(learner.id, Qt.ItemDataRole.UserRole)
            self._names.appendRow(item)
        inside = QWidget()
        inside.setProperty("kind", "inside")
        column = QVBoxLayout(inside)
        column.setContentsMargins(0, 0, 6, 0)
        column.setSpacing(8)
        asked = self._asked or ()
        for one in asked[:_AT_ONCE]:
            column.addWidget(
                self._slip(one.piece, one) if isinstance(one, Doubt) else self._slip(one, None)
            )
        if len(asked) > _AT_ONCE:
            words = self.tr("{n} more follow when these are settled.")
            column.addWidget(label(words.format(n=len(asked) - _AT_ONCE), "quiet", wrap=True))
        if not asked:
            column.addWidget(label(self.tr("Every file has its owner."), "quiet", wrap=True))
        column.addStretch(1)
        self.setWidget(inside)

    def _slip(self, piece: Piece, doubt: Doubt | None) -> QFrame:
        slip = frame("paper")
        column = QVBoxLayout(slip)
        column.setContentsMargins(12, 10, 12, 10)
        column.setSpacing(6)
        column.addWidget(label(piece.file, wrap=True))
        why = doubt.why if doubt is not None else self.tr("No learner of the class list fits.")
        column.addWidget(label(why, "small", wrap=True))
        for match in doubt.candidates if doubt is not None else ():
            name = self._name(match.learner)
            choose = button(
                self.tr("{name} ({score:.0f} %)").format(name=name, score=match.score),
                clicked=partial(self._settle, piece, match.learner),
            )
            choose.setAccessibleDescription(match.why)
            column.addWidget(choose)
            column.addWidget(label(match.why, "small", wrap=True))
        column.addWidget(self._anyone(piece))
        column.addWidget(
            button(self.tr("Nobody's"), "plain", clicked=partial(self._settle, piece, ""))
        )
        return slip

    def _anyone(self, piece: Piece) -> QComboBox:
        box = _PickBox()
        box.setAccessibleName(self.tr("Another learner for {file}").format(file=piece.file))
        box.setModel(self._names)
        box.setSizeAdjustPolicy(QComboBox.SizeAdjustPolicy.AdjustToMinimumContentsLengthWithIcon)

        def chosen(_i: int) -> None:
            if box.currentData() is not None:
                self._settle(piece, box.currentData())

        box.activated.connect(chosen)
        return box

    def _settle(self, piece: Piece, learner: str) -> None:
        self._desk.do(lambda session: session.settle_owner(piece.file, learner))

    def _name(self, learner_id: str) -> str:
        for learner in self._desk.session.learners:
            if learner.id == learner_id:
                return learner.name
        return learner_id
