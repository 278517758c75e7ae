"""A field that finds phrases as one types, and keeps what is typed as a new one.

It stands by itself. Beside a text to a learner::

    box = PhraseBox(desk, theme)
    box.chosen.connect(text.put_in)
    box.show_for(learner, criterion)      # again for each learner and criterion
"""

from __future__ import annotations

from PySide6.QtCore import QEvent, QObject, Qt, QTimer, Signal
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QFrame, QHBoxLayout, QListWidget, QListWidgetItem, QVBoxLayout

from markbench.session.phrases import (
    LONGEST,
    Offer,
    PhraseError,
    fill,
    forget_phrase,
    keep_phrase,
    offers,
)
from markbench.session.reading_level import reading_level
from markbench.ui.desk import Desk
from markbench.ui.feedback.at_hand import AtHand
from markbench.ui.look.said import said
from markbench.ui.look.theme import Theme
from markbench.ui.mishaps import plainly
from markbench.ui.parts import button, label, restyle
from markbench.ui.rubrics.completion import PhraseEdit

_PAUSE_MS = 80
_ROWS = 5


class PhraseBox(QFrame):
    """``chosen`` carries a phrase that can be said here, its places still in braces."""

    chosen = Signal(str)

    def __init__(self, desk: Desk, theme: Theme) -> None:
        super().__init__()
        self.setProperty("kind", "paper")
        self._desk, self._theme, self._book = desk, theme, AtHand.of(desk).book
        self._learner = self._criterion = ""
        self._offers: tuple[Offer, ...] = ()
        self.field = PhraseEdit("", theme)
        self.field.setPlaceholderText(
            self.tr("Find one of your phrases, or write one; { quotes the learner’s numbers")
        )
        self.field.setAccessibleName(self.tr("Find or write a phrase"))
        self.field.installEventFilter(self)
        self.list = QListWidget()
        self.list.setAccessibleName(self.tr("Your phrases"))
        self.list.setWordWrap(True)
        self.list.setSpacing(2)
        self.list.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.list.itemActivated.connect(self._choose)
        self.list.itemClicked.connect(self._choose)
        self.list.currentRowChanged.connect(lambda _row: self._allow())
        self.nothing = label(kind="quiet", wrap=True)
        self.told = label(kind="small", wrap=True)
        self.put = button(self.tr("Put it in"), "", self._put)
        self.keep = button(self.tr("Keep as a phrase"), "", self._keep)
        self.forget = button(self.tr("Forget"), "plain", self._forget)
        self.forget.setAccessibleName(self.tr("Forget the chosen phrase"))
        self.forget.setToolTip(self.tr("Forget the chosen phrase"))
        self._later = QTimer(self, singleShot=True, interval=_PAUSE_MS)
        self._later.timeout.connect(self.look_up)
        self.field.textChanged.connect(self._later.start)
        desk.changed.connect(lambda _learner: self.look_up())
        foot = QHBoxLayout()
        foot.addWidget(self.forget)
        foot.addStretch(1)
        foot.addWidget(self.keep)
        foot.addWidget(self.put)
        column = QVBoxLayout(self)
        column.setContentsMargins(12, 10, 12, 10)
        column.setSpacing(6)
        column.addWidget(label(self.tr("Your phrases"), "heading"))
        column.addWidget(self.field)
        column.addWidget(self.nothing)
        column.addWidget(self.list, 100)
        column.addStretch(1)  # the room of a list that is empty or short
        column.addWidget(self.told)
        column.addLayout(foot)
        theme.changed.connect(self._size)
        self._size()

    def show_for(self, learner: str, criterion: str) -> None:
        """Offer what fits a learner and a criterion."""
        self._learner, self._criterion = learner, criterion
        self.look_up()

    def look_up(self) -> None:
        """Look for phrases again, and say how what is typed reads."""
        self._later.stop()
        if not self._learner:
            return
        session, typed = self._desk.session, self.field.toPlainText()
        self._offers = offers(session, self._learner, self._criterion, typed, book=self._book)
        kept = self.list.currentRow()
        self.list.clear()
        for offer in self._offers:
            item = QListWidgetItem(offer.words or offer.phrase.text)
            item.setToolTip(said(offer.trouble) or self._why(offer))
            item.setData(Qt.ItemDataRole.AccessibleDescriptionRole, item.toolTip())
            if offer.trouble:
                item.setText(f"{offer.phrase.text}\n▲ {said(offer.trouble)}")
            self.list.addItem(item)
        self.list.setVisible(bool(self._offers))
        self.forget.setVisible(bool(self._offers))
        self.nothing.setText(self._why_none(typed))
        self.nothing.setVisible(not self._offers)
        self.list.setCurrentRow(min(max(kept, 0), len(self._offers) - 1))
        self._say(typed)
        self._allow()

    def _why_none(self, typed: str) -> str:
        """Why no phrase is offered, and what can be done."""
        if typed.strip():
            return self.tr("None of your phrases fits what you typed.")
        return self.tr(
            "You have no phrase for this criterion yet. Write one above: “Put it in” says it to "
            "this learner, “Keep as a phrase” has it ready for others."
        )

    def eventFilter(self, _watched: QObject, event: QEvent) -> bool:
        """Down goes to the list, Ctrl+Enter puts in what is typed; the rest is typing."""
        if not isinstance(event, QKeyEvent):
            return False
        enter = event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter)
        if event.type() == QEvent.Type.ShortcutOverride and enter:
            event.accept()  # elsewhere these keys mark
            return True
        if event.type() != QEvent.Type.KeyPress:
            return False
        popup = self.field.completer_.popup()
        if popup is not None and popup.isVisible():
            return False
        if event.key() == Qt.Key.Key_Down and self.list.count() and self._at_end():
            self.list.setFocus()
            self.list.setCurrentRow(max(self.list.currentRow(), 0))
            return True
        if enter and event.modifiers() & Qt.KeyboardModifier.ControlModifier:
            self._put()
            return True
        return enter  # a phrase is one paragraph

    def _at_end(self) -> bool:
        cursor = self.field.textCursor()
        return not cursor.movePosition(cursor.MoveOperation.Down)

    def _why(self, offer: Offer) -> str:
        if offer.shared:
            found = ", ".join(offer.shared)
            return self.tr("Written where the same was found: {found}").format(found=found)
        return self.tr("Written by you")

    def _say(self, typed: str) -> None:
        trouble = ""
        if typed.strip():
            try:
                typed = fill(typed, self._desk.session.facts(self._learner))
            except PhraseError as error:
                trouble = plainly(error)
        level = reading_level(typed, self._desk.session.brief.feedback_language)
        words = self.tr("Words: {n}; characters: {c} of {most}").format(
            n=level.words, c=level.characters, most=LONGEST
        )
        if level.age is not None:
            words += self.tr("; reads easily from about {age:.0f} years").format(age=level.age)
        self.told.setText(trouble or (words if typed.strip() else ""))
        restyle(self.told, "kind", "look" if trouble else "small")

    def _allow(self) -> None:
        typed = bool(self.field.toPlainText().strip())
        at = self.list.currentRow()
        able = 0 <= at < len(self._offers) and bool(self._offers[at].words)
        writes = not self._desk.held.read_only
        self.forget.setEnabled(writes and 0 <= at < len(self._offers))
        self.keep.setEnabled(writes and typed)
        self.put.setEnabled(typed or able)

    def _choose(self, item: QListWidgetItem) -> None:
        offer = self._offers[self.list.row(item)]
        if offer.words:
            self.chosen.emit(offer.phrase.text)

    def _put(self) -> None:
        """What is typed, filled in; with nothing typed, the chosen phrase."""
        typed = self.field.toPlainText()
        item = self.list.currentItem()
        if not typed.strip():
            if item is not None:
                self._choose(item)
            return
        piece = " ".join(typed.split())
        try:
            fill(piece, self._desk.session.facts(self._learner))
        except PhraseError as error:
            self._tell(plainly(error))
            return
        self.field.clear()
        self.chosen.emit(piece)

    def _keep(self) -> None:
        typed, learner, criterion = self.field.toPlainText(), self._learner, self._criterion
        try:
            fill(typed, self._desk.session.facts(learner))
        except PhraseError as error:
            self._tell(plainly(error))
            return
        self._desk.do(lambda session: keep_phrase(session, learner, criterion, typed))
        self.field.clear()

    def _forget(self) -> None:
        at = self.list.currentRow()
        if 0 <= at < len(self._offers):
            phrase = self._offers[at].phrase
            self._desk.do(lambda session: forget_phrase(session, phrase))

    def _tell(self, words: str) -> None:
        self.told.setText(words)
        restyle(self.told, "kind", "look")

    def _size(self) -> None:
        self.list.setMaximumHeight(round(self._theme.line_height() * 2 * _ROWS))
