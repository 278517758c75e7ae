"""The text to a learner with what belongs beside it: tools, length, words to check, phrases."""

from __future__ import annotations

from functools import partial
from typing import TYPE_CHECKING

from PySide6.QtCore import QEvent, QObject, QPoint, Qt, QTimer
from PySide6.QtGui import QContextMenuEvent, QTextCursor
from PySide6.QtWidgets import QHBoxLayout, QMenu, QScrollArea, QSizePolicy, QVBoxLayout, QWidget

from markbench.rubric.pieces import said, still_open
from markbench.session.phrases import Offer, keep_phrase, offers
from markbench.session.reading_level import FORMULA, reading_level
from markbench.session.spelling import words_in
from markbench.session.texts import Text, to_bring_back
from markbench.ui.desk import Desk
from markbench.ui.feedback.at_hand import AtHand
from markbench.ui.feedback.field import PieceField
from markbench.ui.feedback.marks import TextMarks
from markbench.ui.look.said import said as translated
from markbench.ui.look.theme import Theme
from markbench.ui.parts import IconButton, LinkLabel, label
from markbench.ui.signed import allow

if TYPE_CHECKING:
    from markbench.session import Session

_PAUSE_MS = 180  # after the last key: what is looked up then costs no keystroke
_OFFERS = 2
_LONGEST_BEGINNING = 8  # words of a piece that may still be the beginning of a phrase
_SHOWN = 110  # letters of a phrase on offer


class FeedbackEditor(QWidget):
    """One criterion's text to the learner."""

    def __init__(self, desk: Desk, theme: Theme, criterion: str, name: str) -> None:
        super().__init__()
        self._desk, self._theme, self._criterion = desk, theme, criterion
        self._learner = ""
        self._offers: tuple[Offer, ...] = ()
        self._by_typing = False
        self._at_hand: AtHand | None = None
        self.field = PieceField(name, theme)
        self.field.decided.connect(self._keep)
        self.field.refused.connect(desk.refuse_signed)
        self.field.installEventFilter(self)
        self.marks = TextMarks(self.field, theme)
        self.told = label(kind="small", wrap=True)
        self.told.setSizePolicy(QSizePolicy.Policy.Ignored, QSizePolicy.Policy.Preferred)
        self.trouble = label(kind="look", wrap=True)
        self.up = IconButton(theme, "up", self.tr("Move this sentence up (Alt+↑)"),
                             lambda: self.field.step(-1))  # fmt: skip
        self.down = IconButton(theme, "down", self.tr("Move this sentence down (Alt+↓)"),
                               lambda: self.field.step(1))  # fmt: skip
        self.drop = IconButton(theme, "cross", self.tr("Leave this sentence out (Alt+X)"),
                               self.field.leave_out)  # fmt: skip
        self.back = IconButton(theme, "add", self.tr("Bring a sentence back (Alt+Z)"),
                               self.choose_back)  # fmt: skip
        self.links = [LinkLabel() for _ in range(_OFFERS)]
        self._later = QTimer(self, singleShot=True, interval=_PAUSE_MS)
        self._later.timeout.connect(self.look)
        self.field.textChanged.connect(self._later.start)
        self.field.cursorPositionChanged.connect(self._later.start)
        self.field.cursorPositionChanged.connect(self._show_caret)
        self._lay_out()

    def _lay_out(self) -> None:
        tools = QHBoxLayout()
        tools.setSpacing(0)
        tools.addWidget(self.told, 1)
        for tool in (self.up, self.down, self.drop, self.back):
            tools.addWidget(tool)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(2)
        column.addWidget(self.field)
        column.addLayout(tools)
        column.addWidget(self.trouble)
        for number, link in enumerate(self.links):
            link.clicked.connect(partial(self.take, number))
            link.hide()
            column.addWidget(link)
        self.trouble.hide()

    # --- showing -------------------------------------------------------------------

    def show_learner(self, learner: str) -> None:
        """Show the text as it stands now, with the learner's own numbers."""
        session = self._desk.session
        self._learner = learner
        if self._at_hand is None:
            self._at_hand = AtHand.of(self._desk)
            self._at_hand.loaded.connect(self.look)
        self.field.setReadOnly(session.read_only or self._desk.signed is not None)
        self.marks.show_struck(session.struck(learner, self._criterion))
        self.field.show_pieces(session.text(learner, self._criterion), session.facts(learner))
        self._later.start()

    def settle(self) -> None:
        """Pass on whatever was typed."""
        self.field.settle()

    def look(self) -> None:
        """Say how the text reads, which words to check, and which phrases fit. In a pause."""
        self._later.stop()
        if not self._learner or not self.isVisible():
            return
        text = self._words()
        self._tell(text)
        self._check(text)
        self._offer()
        able = not self._desk.session.read_only
        allow(self._desk, able and self.field.count() > 1, self.up, self.down)
        allow(self._desk, able and any(self.field.lines()), self.drop)
        allow(self._desk, able and bool(self._out()), self.back)

    def _words(self) -> str:
        """The text as it would go out: without what is struck."""
        lines = zip(self.field.toPlainText().split("\n"), self.field.lines(), strict=True)
        told = " ".join(words for words, piece in lines if piece not in self.marks.struck)
        return " ".join(told.split())

    def _tell(self, text: str) -> None:
        language = self._desk.session.brief.feedback_language
        level = reading_level(text, language)
        words = self.tr("Words: {n}").format(n=level.words)
        if level.age is not None:
            words += self.tr("; reads easily from about {age:.0f} years").format(age=level.age)
        self.told.setText(words if text else "")
        self.told.setToolTip(FORMULA if level.age is not None else "")

    def _check(self, text: str) -> None:
        wrong: frozenset[str] = frozenset()
        at_hand = self._at_hand
        if at_hand is not None and at_hand.spelling is not None:
            wrong = at_hand.spelling.wrong(text, at_hand.known) - {self._word_being_typed()}
        self.marks.show_wrong(wrong)
        told = [f"▲ {translated(words)}." for words in (still_open(text),) if words]
        if self.marks.struck & set(self.field.lines()):
            told.append(self.tr("Struck: no longer true of these readings, and not sent."))
        if wrong:
            listed = ", ".join(dict.fromkeys(w for _, w in words_in(text) if w in wrong))
            told.append(self.tr("≈ To check (Alt+C): {words}").format(words=listed))
        self.trouble.setText("\n".join(told))
        self.trouble.setVisible(bool(told))

    def _word_being_typed(self) -> str:
        """The word that ends at the caret is perhaps only begun."""
        cursor = self.field.textCursor()
        if not self.field.hasFocus() or not self.field.unsettled:
            return ""
        at = cursor.positionInBlock()
        words = words_in(cursor.block().text())
        return next((word for start, word in words if start + len(word) == at), "")

    # --- phrases -------------------------------------------------------------------

    def _offer(self) -> None:
        """Phrases begun in the current piece, else those written where the same was found."""
        session, at_hand = self._desk.session, self._at_hand
        assert at_hand is not None
        begun = self._begun()
        found: tuple[Offer, ...] = ()
        if begun:
            found = offers(session, self._learner, self._criterion, begun, 8, at_hand.book)
        self._by_typing = bool(found)
        if not found:
            found = tuple(
                one
                for one in offers(session, self._learner, self._criterion, "", 8, at_hand.book)
                if one.shared and one.phrase.criterion == self._criterion
            )
        here = set(self.field.pieces())
        self._offers = tuple(
            one for one in found if one.words and one.phrase.text not in here
        )[:_OFFERS]  # fmt: skip
        for number, link in enumerate(self.links):
            there = number < len(self._offers) and not self.field.isReadOnly()
            if there:
                words = self._offers[number].words
                shown = words if len(words) <= _SHOWN else f"{words[:_SHOWN].rstrip()}…"
                key = self.tr("  (Alt+Enter)") if number == 0 else ""
                link.show_link(f"+ {shown}{key}", True)
                link.setToolTip(self.tr("Your phrase: {words}").format(words=words))
            link.setVisible(there)

    def _begun(self) -> str:
        """What was typed of the current piece, where it may be the beginning of a phrase."""
        field = self.field
        if not field.hasFocus():
            return ""
        cursor = field.textCursor()
        typed = cursor.block().text()[: cursor.positionInBlock()].strip()
        short = len(typed.split()) <= _LONGEST_BEGINNING and len(typed) >= 3
        whole = not cursor.block().text()[cursor.positionInBlock() :].strip()
        return typed if short and whole and not typed.endswith((".", "!", "?")) else ""

    def take(self, number: int = 0) -> None:
        """Put a phrase on offer in: instead of its beginning, or as a piece of its own."""
        self._later.stop()
        if number < len(self._offers):
            self.field.put_in(self._offers[number].phrase.text, instead=self._by_typing)
            self.field.setFocus()

    def keep_piece(self) -> None:
        """Keep the current piece as a phrase of one's own."""
        self.field.settle()
        pieces, at = self.field.pieces(), self.field.current()
        if at < len(pieces):
            learner, criterion, piece = self._learner, self._criterion, pieces[at]

            def keep(session: Session) -> None:
                keep_phrase(session, learner, criterion, piece)

            self._desk.do(keep)

    # --- leaving out, bringing back ----------------------------------------------------

    def _out(self) -> tuple[str, ...]:
        session = self._desk.session
        text = Text(self.field.pieces(), self.field.out)
        draft, struck = session.draft(self._learner, self._criterion), self.marks.struck
        return to_bring_back(text, draft, struck)

    def choose_back(self) -> None:
        """Choose a sentence to bring back; the only one comes at once."""
        out = self._out()
        if len(out) == 1:
            self.field.put_in(out[0])
        elif out:
            menu = QMenu(self)
            menu.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
            self._add_back(menu, out)
            menu.popup(self.back.mapToGlobal(QPoint(0, self.back.height())))
            menu.setActiveAction(menu.actions()[0])

    def _add_back(self, menu: QMenu, out: tuple[str, ...]) -> None:
        facts = self._desk.session.facts(self._learner)
        for piece in out:
            words = said((piece,), facts)
            shown = words if len(words) <= 70 else f"{words[:70].rstrip()}…"
            menu.addAction(shown.replace("&", "&&"), partial(self.field.put_in, piece))

    # --- spelling ------------------------------------------------------------------

    def next_wrong(self) -> None:
        """Go to the next word to check and offer what may have been meant."""
        self.look()
        cursor = self.field.textCursor()
        places = self._wrong_places()
        after = [one for one in places if one[0] + len(one[1]) > cursor.selectionEnd()]
        if places:
            start, word = (after or places)[0]
            cursor.setPosition(start)
            cursor.setPosition(start + len(word), QTextCursor.MoveMode.KeepAnchor)
            self.field.setTextCursor(cursor)
            self.field.setFocus()
            menu = QMenu(self)
            menu.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
            self._add_words(menu, start, word)
            menu.popup(self.field.viewport().mapToGlobal(self.field.cursorRect().bottomLeft()))
            menu.setActiveAction(menu.actions()[0])

    def _wrong_places(self) -> list[tuple[int, str]]:
        """Words to check with their places in the document, in order."""
        wrong, found = self.marks.wrong, []
        block = self.field.document().begin()
        while block.isValid():
            found += [(block.position() + at, w) for at, w in words_in(block.text()) if w in wrong]
            block = block.next()
        return found

    def _add_words(self, menu: QMenu, start: int, word: str) -> None:
        at_hand = self._at_hand
        if at_hand is None or at_hand.spelling is None or self.field.isReadOnly():
            return
        for meant in at_hand.spelling.suggest(word):
            menu.addAction(meant, partial(self.field.replace_word, start, word, meant))
        known = self.tr("“{word}” is right: remember it").format(word=word)
        menu.addAction(known, partial(at_hand.learn, word))

    def eventFilter(self, _watched: QObject, event: QEvent) -> bool:
        """The menu of the text, by mouse or key; word lists load when one comes to write."""
        if event.type() == QEvent.Type.FocusIn and self._at_hand is not None:
            self._at_hand.load()
            QTimer.singleShot(0, self, self._show_caret)
        if event.type() == QEvent.Type.ContextMenu and isinstance(event, QContextMenuEvent):
            self._show_menu(event)
            return True
        return False

    def _show_caret(self) -> None:
        """Whatever one writes in is to be seen, however large the text."""
        around = self.parentWidget()
        while around is not None and not isinstance(around, QScrollArea):
            around = around.parentWidget()
        inside = around.widget() if around is not None else None
        if around is not None and inside is not None and self.field.hasFocus():
            caret = self.field.cursorRect()
            at = self.field.viewport().mapTo(inside, caret.center())
            around.ensureVisible(at.x(), at.y(), 0, 2 * caret.height())

    def _show_menu(self, event: QContextMenuEvent) -> None:
        field = self.field
        if event.reason() == QContextMenuEvent.Reason.Mouse:
            within = field.viewport().mapFrom(field, event.pos())
            at = field.cursorForPosition(within).position()
            if not field.textCursor().hasSelection():
                cursor = field.textCursor()
                cursor.setPosition(at)
                field.setTextCursor(cursor)
        at = field.textCursor().position()
        menu = field.createStandardContextMenu()
        menu.setParent(self, menu.windowFlags())
        menu.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        words = QMenu(menu)
        for start, word in self._wrong_places():
            if start <= at <= start + len(word):
                self._add_words(words, start, word)
        first = menu.actions()[0] if menu.actions() else None
        if first is not None and words.actions():
            menu.insertActions(first, words.actions())
            menu.insertSeparator(first)
        if not field.isReadOnly():
            menu.addSeparator()
            menu.addAction(self.up.toolTip(), partial(field.step, -1))
            menu.addAction(self.down.toolTip(), partial(field.step, 1))
            menu.addAction(self.drop.toolTip(), field.leave_out)
            menu.addAction(self.tr("Keep this sentence as a phrase (Alt+K)"), self.keep_piece)
        menu.popup(event.globalPos())

    # --- keeping -------------------------------------------------------------------

    def _keep(self, text: Text) -> None:
        learner, criterion = self._learner, self._criterion
        self._desk.do(lambda session: session.set_text(learner, criterion, text))
