"""The teacher's phrases over the marking sheet, for the criterion that is open."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QEvent, QObject, Qt
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QApplication, QFrame, QHBoxLayout, QVBoxLayout, QWidget

from markbench.ui.look.theme import Theme
from markbench.ui.parts import button, label, restyle
from markbench.ui.phrases.box import PhraseBox

if TYPE_CHECKING:
    from markbench.ui.window import Window

_OURS = (Qt.Key.Key_Escape, Qt.Key.Key_Return, Qt.Key.Key_Enter)


class PhraseDrawer(QFrame):
    """Opens beside the margin; what is chosen goes into the text where the cursor stands."""

    def __init__(self, window: Window, theme: Theme) -> None:
        super().__init__(window)
        assert window.desk is not None
        self.setProperty("kind", "paper")
        self._window, self._theme = window, theme
        self._learner = self._criterion = ""
        self.box = PhraseBox(window.desk, theme)
        restyle(self.box, "kind", "inside")  # the drawer is the paper
        self.box.chosen.connect(self._put)
        self._title = label(kind="name", wrap=True)
        self.shut = button(self.tr("Close"), "plain", self._shut)
        self.shut.setAccessibleName(self.tr("Close your phrases"))
        column = QVBoxLayout(self)
        column.setContentsMargins(4, 10, 4, 4)
        head = QHBoxLayout()
        head.setContentsMargins(12, 0, 8, 0)
        head.addWidget(self._title, 1)
        head.addWidget(self.shut, 0, Qt.AlignmentFlag.AlignTop)
        column.addLayout(head)
        column.addWidget(self.box)
        app = QApplication.instance()
        assert isinstance(app, QApplication)
        app.focusChanged.connect(self._focus_went)
        window.pages.currentChanged.connect(self.hide)
        self.hide()

    def open_for_card(self) -> None:
        """Show what fits the learner and the criterion that is open."""
        window = self._window
        card = window.sheet.margin.current if window.sheet is not None else None
        if window.sheet is None or card is None:
            return
        self._learner, self._criterion = window.sheet.learner, card.criterion.id
        self._title.setText(self.tr("For “{title}”").format(title=card.criterion.title))
        self.box.field.clear()
        self.box.show_for(self._learner, self._criterion)
        wide = min(self._theme.px(470), window.width() - 40)
        high = min(self._theme.px(360), window.height() - 80)
        edge = window.sheet.margin.mapTo(window, window.sheet.margin.rect().topLeft()).x()
        self.setGeometry(max(20, edge - wide - 12), window.height() - high - 24, wide, high)
        self.show()
        self.raise_()
        self.box.field.setFocus()

    def _put(self, words: str) -> None:
        window = self._window
        card = window.sheet.margin.current if window.sheet is not None else None
        if window.sheet is None or card is None:
            return
        if (window.sheet.learner, card.criterion.id) != (self._learner, self._criterion):
            self.open_for_card()  # another learner came meanwhile: her numbers, not the last's
            return
        card.text.put_in(words)
        self.hide()
        card.text.setFocus()

    def event(self, event: QEvent) -> bool:
        """Escape closes the drawer, not the sheet; Enter with Ctrl marks nothing from here."""
        if isinstance(event, QKeyEvent) and event.key() in _OURS:
            if event.type() == QEvent.Type.ShortcutOverride:
                event.accept()
                return True
            if event.type() == QEvent.Type.KeyPress and event.key() == Qt.Key.Key_Escape:
                self._shut()
                return True
        return super().event(event)

    def _shut(self) -> None:
        self.hide()
        card = self._window.sheet.margin.current if self._window.sheet is not None else None
        if card is not None:
            card.text.setFocus()

    def _focus_went(self, _old: QObject | None, new: QWidget | None) -> None:
        if new is not None and self.isVisible() and not self.isAncestorOf(new):
            popup = self.box.field.completer_.popup()
            if new is not popup:
                self.hide()
