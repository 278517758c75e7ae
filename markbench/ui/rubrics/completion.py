"""Names of facts, offered while a condition or a phrase is typed."""

from __future__ import annotations

import re

from PySide6.QtCore import QObject, QStringListModel, Qt, Signal
from PySide6.QtGui import QFocusEvent, QKeyEvent, QTextCursor
from PySide6.QtWidgets import QCompleter

from markbench.rubric.facts import FACTS, PLACEHOLDERS
from markbench.ui.look.theme import Theme
from markbench.ui.rubrics.wrapped import Wrapped

_WORD = re.compile(r"([A-Za-z_][A-Za-z0-9_]*)$")
_NAME = re.compile(r"([A-Za-z_][A-Za-z0-9_]*)")
_QUOTED = re.compile(r"\{([A-Za-z0-9_]*)$")
_PLACE = re.compile(r"\{([A-Za-z0-9_]+)\}?")
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


class FactEdit(Wrapped):
    """Words in which facts are named; ``pointed`` carries the fact under the cursor.

    ``begun`` finds the beginning of a name before the cursor, ``named`` whole names;
    ``least`` letters of one are needed before anything is offered.
    """

    pointed = Signal(str)

    def __init__(
        self,
        text: str,
        theme: Theme,
        names: list[str],
        patterns: tuple[re.Pattern[str], re.Pattern[str]],
        *,
        least: int,
        quoted: bool,
    ) -> None:
        super().__init__(text, theme, paragraphs=quoted)
        self._names, self._least, self._quoted = frozenset(names), least, quoted
        self._begun_as, self._named_as = patterns
        self.completer_ = _completer(names, self)
        self.completer_.setWidget(self)
        self.completer_.activated.connect(self._take)
        self.cursorPositionChanged.connect(self._point)

    def _begun(self) -> str | None:
        cursor = self.textCursor()
        before = cursor.block().text()[: cursor.positionInBlock()]
        found = self._begun_as.search(before)
        return found.group(1) if found is not None and len(found.group(1)) >= self._least else None

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
        begun = self._begun()
        self.completer_.setCompletionPrefix(begun or "")
        if begun is None or begun in self._names or not self.completer_.completionCount():
            _shut(self.completer_)
            return
        box = self.cursorRect()
        box.setWidth(self._theme.px(260))
        self.completer_.complete(box)

    def _take(self, name: str) -> None:
        begun = self._begun()
        if begun is None:
            return
        cursor = self.textCursor()
        cursor.movePosition(
            QTextCursor.MoveOperation.Left, QTextCursor.MoveMode.KeepAnchor, len(begun)
        )
        after = cursor.document().characterAt(self.textCursor().position())
        cursor.insertText(f"{name}}}" if self._quoted and after != "}" else name)
        self.setTextCursor(cursor)

    def _point(self) -> None:
        cursor = self.textCursor()
        text, at = cursor.block().text(), cursor.positionInBlock()
        for found in self._named_as.finditer(text):
            if found.start() <= at <= found.end():
                self.pointed.emit(fact_words(found.group(1), quoted=self._quoted))
                return
        self.pointed.emit("")

    def focusOutEvent(self, event: QFocusEvent) -> None:
        """The explanation belongs to the field one is in."""
        super().focusOutEvent(event)
        if event.reason() != Qt.FocusReason.PopupFocusReason:
            self.pointed.emit("")


class ConditionEdit(FactEdit):
    """A condition; facts are offered as they are typed."""

    def __init__(self, text: str, theme: Theme) -> None:
        super().__init__(text, theme, list(FACTS), (_WORD, _NAME), least=2, quoted=False)


class PhraseEdit(FactEdit):
    """Sentences, one to a line; after ``{`` the facts that can be quoted are offered."""

    def __init__(self, text: str, theme: Theme) -> None:
        super().__init__(text, theme, list(PLACEHOLDERS), (_QUOTED, _PLACE), least=0, quoted=True)
