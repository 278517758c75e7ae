"""Facts that can be quoted, offered while a place in braces is typed."""

from __future__ import annotations

import re

from PySide6.QtCore import QObject, QStringListModel, Qt, Signal
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QCompleter, QTextEdit

from markbench.rubric.facts import PLACEHOLDERS
from markbench.ui.look.theme import Theme

_BEGUN = re.compile(r"\{([A-Za-z0-9_]*)$")
_KEYS = (Qt.Key.Key_Return, Qt.Key.Key_Enter, Qt.Key.Key_Tab, Qt.Key.Key_Escape)


class PlaceList(QObject):
    """``chosen`` carries a place and how many letters of it were typed, the brace included."""

    chosen = Signal(str, int)

    def __init__(self, field: QTextEdit, theme: Theme) -> None:
        super().__init__(field)
        self._field, self._theme = field, theme
        self.completer = QCompleter(QStringListModel(sorted(PLACEHOLDERS), self), self)
        self.completer.setCaseSensitivity(Qt.CaseSensitivity.CaseInsensitive)
        self.completer.setFilterMode(Qt.MatchFlag.MatchContains)
        self.completer.setMaxVisibleItems(9)
        self.completer.setWidget(field)
        self.completer.activated.connect(self._take)

    def takes(self, event: QKeyEvent) -> bool:
        """Whether a key belongs to the list while it is open."""
        popup = self.completer.popup()
        return popup is not None and popup.isVisible() and event.key() in _KEYS

    def offer(self) -> None:
        """Offer what fits the place begun before the caret, or shut the list."""
        begun = self._begun()
        popup = self.completer.popup()
        if begun is not None:
            self.completer.setCompletionPrefix(begun)
            if self.completer.completionCount():
                box = self._field.cursorRect()
                box.setWidth(self._theme.px(260))
                self.completer.complete(box)
                return
        if popup is not None:
            popup.hide()

    def _begun(self) -> str | None:
        cursor = self._field.textCursor()
        found = _BEGUN.search(cursor.block().text()[: cursor.positionInBlock()])
        return None if found is None else found.group(1)

    def _take(self, name: str) -> None:
        begun = self._begun()
        if begun is not None:
            self.chosen.emit(name, len(begun) + 1)
