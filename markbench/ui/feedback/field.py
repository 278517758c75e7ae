"""The text to a learner, one piece to a line, with numbers that stay live.

It is a plain text field first: whoever wants to type, types. A number quoted from the
readings is ordinary text that remembers its place; changing a letter of it makes it mere
words again. Rejected: numbers as objects that cannot be typed into (a text one cannot edit),
and a list of sentences beside a text field (the same thing twice).
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from itertools import count

from PySide6.QtCore import QMimeData, Qt, Signal
from PySide6.QtGui import (
    QKeyEvent,
    QKeySequence,
    QTextBlock,
    QTextBlockFormat,
    QTextCharFormat,
    QTextCursor,
    QTextFormat,
)

from markbench.rubric import Facts
from markbench.rubric.pieces import runs, shown_at
from markbench.session.texts import Text
from markbench.ui.feedback.gutter import PieceGutter
from markbench.ui.feedback.places import PlaceList
from markbench.ui.look.theme import Theme
from markbench.ui.look.words import breakable, unbroken
from markbench.ui.text_field import TextField

_OWN = int(QTextFormat.Property.UserProperty)
_PLACE, _SHOWN, _NUMBER = _OWN + 1, _OWN + 2, _OWN + 3
_TYPED = re.compile(r"\{([A-Za-z0-9_]+)\}$")
_GAP_PX = 4  # between pieces, so that they can be told apart


def live_runs(block: QTextBlock) -> Iterator[tuple[int, str, str]]:
    """Where live numbers stand in a block: (start in the block, what is shown, its place)."""
    each = block.begin()
    while not each.atEnd():
        fragment = each.fragment()
        each += 1
        place = fragment.charFormat().property(_PLACE)
        if place:
            shown = str(fragment.charFormat().property(_SHOWN))
            within = fragment.text().find(shown)
            if within >= 0:  # else it was typed into, and is mere words now
                yield fragment.position() - block.position() + within, shown, str(place)


def _would_change(event: QKeyEvent) -> bool:
    """Whether a key writes or takes away; Escape, Tab and most of what goes with Ctrl do not."""
    keys = QKeySequence.StandardKey
    if event.matches(keys.Paste) or event.matches(keys.Cut):
        return True
    if event.modifiers() & (Qt.KeyboardModifier.ControlModifier | Qt.KeyboardModifier.AltModifier):
        return False
    if event.key() in (Qt.Key.Key_Delete, Qt.Key.Key_Backspace):
        return True
    leaves = (Qt.Key.Key_Escape, Qt.Key.Key_Tab, Qt.Key.Key_Backtab)
    return bool(event.text()) and event.key() not in leaves


class PieceField(TextField):
    """``decided`` carries the text as it is to be kept.

    ``refused``: a key would have changed a text that may only be read.
    """

    decided = Signal(object)
    refused = Signal()

    def __init__(self, name: str, theme: Theme) -> None:
        super().__init__(name)
        self._theme = theme
        self._facts: Facts | None = None
        self._held = Text(())
        self._numbers = count(1)
        self.places = PlaceList(self, theme)
        self.places.chosen.connect(self._quote)
        self.gutter = PieceGutter(self, theme)
        theme.changed.connect(self._space)
        self._space()

    # --- showing -------------------------------------------------------------------

    @property
    def unsettled(self) -> bool:
        """Whether something typed has not been passed on."""
        return self.pieces() != self._held.pieces

    def show_pieces(self, text: Text, facts: Facts) -> None:
        """Show a text with a learner's numbers, unless one is in the middle of changing it."""
        if self.hasFocus() and self.unsettled and facts.learner == self._learner:
            return
        fresh = self._facts is not facts
        self._held, self._facts = text, facts
        if fresh or self.pieces() != text.pieces:
            self._write(list(text.pieces))
        self._idle.stop()

    @property
    def _learner(self) -> str:
        return "" if self._facts is None else self._facts.learner

    def pieces(self) -> tuple[str, ...]:
        """The text as it stands, places in braces; empty lines at both ends are no pieces."""
        found = self.lines()
        while found and not found[-1]:
            found.pop()
        while found and not found[0]:
            found.pop(0)
        return tuple(found)

    def settle(self) -> None:
        """Pass on what was typed."""
        self._idle.stop()
        if self._facts is not None and self.unsettled:
            self._decide(Text(self.pieces(), self._held.out))

    @property
    def out(self) -> tuple[str, ...]:
        """The pieces left out, the latest last."""
        return self._held.out

    # --- pieces --------------------------------------------------------------------

    def current(self) -> int:
        """The number of the piece the caret is in."""
        return self.textCursor().blockNumber()

    def count(self) -> int:
        """How many lines there are."""
        return self.document().blockCount()

    def carry(self, at: int, to: int) -> None:
        """Put a piece where another stands, and keep it in hand."""
        lines = Text(tuple(self.lines()), self._held.out)
        to = min(max(to, 0), self.count() - 1)
        if at != to and 0 <= at < self.count():
            self._rearrange(lines.moved(at, to), to)

    def step(self, by: int) -> None:
        """Move the current piece up or down."""
        self.carry(self.current(), self.current() + by)

    def leave_out(self) -> None:
        """Take the current piece out of the text; it can be brought back."""
        at = self.current()
        self._rearrange(Text(tuple(self.lines()), self._held.out).without(at), at)

    def put_in(self, piece: str, *, instead: bool = False) -> None:
        """Put a piece in after the current one; ``instead`` of it where it was a beginning."""
        lines, at = self.lines(), self.current()
        if instead or not lines[at]:
            del lines[at]
            at -= 1
        if not any(lines):
            lines, at = [], -1
        self._rearrange(Text(tuple(lines), self._held.out).with_piece(piece, at + 1), at + 1)

    def quote(self, piece: str) -> None:
        """Write words with places at the caret."""
        if self._facts is not None and not self._only_read():
            cursor = self.textCursor()
            for run in runs(piece, self._facts):
                self._insert(cursor, run.text, run.place)
            self.setTextCursor(cursor)

    def replace_word(self, start: int, word: str, meant: str) -> None:
        """Write another word where one stands in the document."""
        cursor = QTextCursor(self.document())
        cursor.setPosition(start)
        cursor.setPosition(start + len(word), QTextCursor.MoveMode.KeepAnchor)
        if cursor.selectedText() == word:
            cursor.insertText(meant, QTextCharFormat())
            self.settle()

    def _rearrange(self, text: Text, at: int) -> None:
        if self._only_read():
            return
        self._write(list(text.pieces))
        block = self.document().findBlockByNumber(min(max(at, 0), self.count() - 1))
        cursor = QTextCursor(block)
        cursor.movePosition(QTextCursor.MoveOperation.EndOfBlock)
        self.setTextCursor(cursor)
        self._idle.stop()
        self._decide(Text(self.pieces(), text.out))

    def _only_read(self) -> bool:
        if self.isReadOnly():
            self.refused.emit()
        return self.isReadOnly()

    def _decide(self, text: Text) -> None:
        if text != self._held:
            self._held = text
            self.decided.emit(text)

    def lines(self) -> list[str]:
        """The text as it stands, a piece to a line, places in braces."""
        block, found = self.document().begin(), []
        while block.isValid():
            found.append(piece_of(block))
            block = block.next()
        return found

    def _write(self, pieces: list[str]) -> None:
        """Write the document anew; what was typed before belongs to the journal now."""
        assert self._facts is not None
        was = self.textCursor()
        line, column = was.blockNumber(), was.positionInBlock()
        document = self.document()
        document.setUndoRedoEnabled(False)
        cursor = QTextCursor(document)
        cursor.beginEditBlock()  # laid out and marked once, not for each run
        cursor.select(QTextCursor.SelectionType.Document)
        cursor.removeSelectedText()
        spaced = QTextBlockFormat()
        spaced.setBottomMargin(self._theme.px(_GAP_PX))
        cursor.setBlockFormat(spaced)
        for number, piece in enumerate(pieces):
            if number:
                cursor.insertBlock(spaced, QTextCharFormat())
            for run in runs(piece, self._facts):
                self._insert(cursor, run.text, run.place)
        cursor.endEditBlock()
        document.setUndoRedoEnabled(True)
        block = document.findBlockByNumber(min(line, document.blockCount() - 1))
        back = QTextCursor(block)
        back.setPosition(block.position() + min(column, block.length() - 1))
        self.setTextCursor(back)

    def _insert(self, cursor: QTextCursor, words: str, place: str = "") -> None:
        """Write at ``cursor``: mere words, or the number of a place on one line with its unit."""
        made = QTextCharFormat()
        if place:
            words = unbroken(words)
            made.setProperty(_PLACE, place)
            made.setProperty(_SHOWN, words)
            made.setProperty(_NUMBER, next(self._numbers))  # so that neighbours stay two
        cursor.insertText(words, made)

    # --- typing --------------------------------------------------------------------

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Typing after a number is words; a place closed with } becomes its number."""
        if self.places.takes(event):
            event.ignore()
            return
        if _would_change(event) and self._only_read():
            return
        if event.text() and not self.textCursor().hasSelection():
            self.setCurrentCharFormat(QTextCharFormat())
        super().keyPressEvent(event)
        if event.text() == "}":
            self._close_place()
        if event.text():
            self.places.offer()

    def insertFromMimeData(self, source: QMimeData) -> None:
        """Pasted words are mere words."""
        if source.hasText():
            self.textCursor().insertText(source.text(), QTextCharFormat())

    def _close_place(self) -> None:
        cursor = self.textCursor()
        found = _TYPED.search(cursor.block().text()[: cursor.positionInBlock()])
        if found is not None:
            self._quote(found.group(1), len(found.group()))

    def _quote(self, place: str, typed: int) -> None:
        """Let the number stand where its place was typed; unknown, the place stays open."""
        cursor = self.textCursor()
        start = cursor.positionInBlock() - typed
        first = not cursor.block().text()[:start].strip()
        shown = None if self._facts is None else shown_at(place, self._facts, first=first)
        keep = QTextCursor.MoveMode.KeepAnchor
        cursor.movePosition(QTextCursor.MoveOperation.Left, keep, typed)
        if shown is None:
            self._insert(cursor, f"{{{place}}}")
        else:
            self._insert(cursor, shown, place)
        self.setTextCursor(cursor)

    def _space(self) -> None:
        self.setViewportMargins(self._theme.px(14), 0, 0, 0)
        self.gutter.place()
        if self._facts is not None:
            self._write(list(self.lines()))
            self._idle.stop()


def piece_of(block: QTextBlock) -> str:
    """A line of the document as it is kept, its live numbers as places in braces."""
    text, done, parts = block.text(), 0, []
    for start, shown, place in live_runs(block):
        parts += [text[done:start], f"{{{place}}}"]
        done = start + len(shown)
    return breakable("".join((*parts, text[done:])).replace("\u2028", " ")).strip()
