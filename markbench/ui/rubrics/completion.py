"""Names of facts, offered while a condition or a phrase is typed."""

from __future__ import annotations

import re

from PySide6.QtCore import QEvent, QObject, QStringListModel, Qt, Signal
from PySide6.QtGui import QFocusEvent, QKeyEvent, QTextCursor
from PySide6.QtWidgets import QCompleter, QLineEdit, QPlainTextEdit

from markbench.rubric.facts import FACTS, PLACEHOLDERS
from markbench.ui.look.theme import Theme

_WORD = re.compile(r"[A-Za-z_][A-Za-z0-9_]*$")
_QUOTED = re.compile(r"\{([A-Za-z0-9_]*)$")
_MOST_LINES = 12
_KEYS_OF_THE_LIST = (Qt.Key.Key_Return, Qt.Key.Key_Enter, Qt.Key.Key_Tab, Qt.Key.Key_Escape)


def fact_words(name: str, *, quoted: bool) -> str:
    """What a fact is, for the line under the field; empty for no fact."""
    fact = PLACEHOLDERS.get(name) if quoted else FACTS.get(name)
    if fact is None:
        return ""
    unit = f", {fact.unit}" if fact.unit else ""
    return f"{name} ({fact.kind}{unit}): {fact.description}"


def _completer(names: list[str], owner: QObject) -> QCompleter:
    made = QCompleter(QStringListModel(sorted(names), owner), owner)
    made.setCaseSensitivity(Qt.CaseSensitivity.CaseInsensitive)
    made.setFilterMode(Qt.MatchFlag.MatchContains)
    made.setCompletionMode(QCompleter.CompletionMode.PopupCompletion)
    made.setMaxVisibleItems(9)
    return made


def _shut(completer: QCompleter) -> None:
    popup = completer.popup()
    if popup is not None:
        popup.hide()


class ConditionEdit(QLineEdit):
    """One line with a condition; ``pointed`` carries the fact under the cursor."""

    pointed = Signal(str)

    def __init__(self, text: str) -> None:
        super().__init__(text)
        self.setCursorPosition(0)
        self.completer_ = _completer(list(FACTS), self)
        self.completer_.setWidget(self)
        self.completer_.activated.connect(self._take)
        self.textEdited.connect(lambda _text: self._offer())
        self.cursorPositionChanged.connect(lambda _old, _new: self._point())

    def _begun(self) -> str:
        found = _WORD.search(self.text()[: self.cursorPosition()])
        return found.group() if found else ""

    def _offer(self) -> None:
        begun = self._begun()
        self.completer_.setCompletionPrefix(begun)
        if len(begun) < 2 or begun in FACTS or not self.completer_.completionCount():
            _shut(self.completer_)
            return
        self.completer_.complete()

    def _take(self, name: str) -> None:
        at, text = self.cursorPosition(), self.text()
        start = at - len(self._begun())
        self.setText(text[:start] + name + text[at:])
        self.setCursorPosition(start + len(name))
        self.textEdited.emit(self.text())

    def _point(self) -> None:
        text, at = self.text(), self.cursorPosition()
        for found in re.finditer(r"[A-Za-z_][A-Za-z0-9_]*", text):
            if found.start() <= at <= found.end():
                self.pointed.emit(fact_words(found.group(), quoted=False))
                return
        self.pointed.emit("")

    def focusOutEvent(self, event: QFocusEvent) -> None:
        """The explanation belongs to the field one is in."""
        super().focusOutEvent(event)
        if event.reason() != Qt.FocusReason.PopupFocusReason:
            self.pointed.emit("")


class PhraseEdit(QPlainTextEdit):
    """Sentences, one to a line; after ``{`` the facts that can be quoted are offered."""

    pointed = Signal(str)

    def __init__(self, text: str, theme: Theme) -> None:
        super().__init__(text)
        self._theme = theme
        self.setTabChangesFocus(True)
        self.completer_ = _completer(list(PLACEHOLDERS), self)
        self.completer_.setWidget(self)
        self.completer_.activated.connect(self._take)
        self.cursorPositionChanged.connect(self._point)
        self.document().documentLayout().documentSizeChanged.connect(lambda _size: self._size())
        theme.changed.connect(self._size)
        self._size()

    def _before(self) -> str:
        cursor = self.textCursor()
        return cursor.block().text()[: cursor.positionInBlock()]

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Keys of the list go to the list; typing offers anew."""
        popup = self.completer_.popup()
        if popup is not None and popup.isVisible() and event.key() in _KEYS_OF_THE_LIST:
            event.ignore()
            return
        super().keyPressEvent(event)
        if event.text():
            self._offer()

    def _offer(self) -> None:
        found = _QUOTED.search(self._before())
        if found is None:
            _shut(self.completer_)
            return
        self.completer_.setCompletionPrefix(found.group(1))
        if found.group(1) in PLACEHOLDERS or not self.completer_.completionCount():
            _shut(self.completer_)
            return
        box = self.cursorRect()
        box.setWidth(self._theme.px(260))
        self.completer_.complete(box)

    def _take(self, name: str) -> None:
        found = _QUOTED.search(self._before())
        if found is None:
            return
        cursor = self.textCursor()
        cursor.movePosition(
            QTextCursor.MoveOperation.Left, QTextCursor.MoveMode.KeepAnchor, len(found.group(1))
        )
        after = cursor.document().characterAt(self.textCursor().position())
        cursor.insertText(name if after == "}" else name + "}")
        self.setTextCursor(cursor)

    def _point(self) -> None:
        cursor = self.textCursor()
        text, at = cursor.block().text(), cursor.positionInBlock()
        for found in re.finditer(r"\{([A-Za-z0-9_]+)\}?", text):
            if found.start() <= at <= found.end():
                self.pointed.emit(fact_words(found.group(1), quoted=True))
                return
        self.pointed.emit("")

    def _size(self) -> None:
        lines = min(max(self.document().size().height(), 2), _MOST_LINES)
        high = round(lines * self._theme.line_height()) + self._theme.px(26)
        if high != self.height():
            self.setFixedHeight(high)

    def changeEvent(self, event: QEvent) -> None:
        """A new font needs a new height."""
        super().changeEvent(event)
        if event.type() == QEvent.Type.FontChange:
            self._size()
