"""One thing to fill in: its name, the field, and under it what is wrong or what is meant."""

from __future__ import annotations

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QLineEdit, QVBoxLayout, QWidget

from markbench.ui.look.theme import Theme
from markbench.ui.parts import label, restyle
from markbench.ui.rubrics.completion import ConditionEdit, FactEdit, PhraseEdit
from markbench.ui.rubrics.wrapped import Wrapped


class Entry(QWidget):
    """``edited`` carries the text at every key.

    ``kind``: ``line`` for a short name or a number; ``words`` wrap; a ``condition`` and a
    ``phrase`` offer facts.
    """

    edited = Signal(str)

    def __init__(
        self, words: str, text: str, theme: Theme, kind: str = "line", name: str = ""
    ) -> None:
        """``name``: what a screen reader says, where ``words`` need their place on the page."""
        super().__init__()
        self.field: QLineEdit | Wrapped
        if kind == "line":
            self.field = line = QLineEdit(text)
            line.setCursorPosition(0)
            line.textEdited.connect(self.edited)
        else:
            kinds = {"words": Wrapped, "condition": ConditionEdit, "phrase": PhraseEdit}
            self.field = wrapped = kinds[kind](text, theme)
            wrapped.textChanged.connect(lambda: self.edited.emit(wrapped.toPlainText()))
            if isinstance(wrapped, FactEdit):
                wrapped.pointed.connect(self._explain)
        name = name or words
        self.field.setAccessibleName(name)
        self._told = label(kind="look", wrap=True)
        self._told.hide()
        self._meant = ""
        self._wrong = ""
        self.setProperty("kind", "stop")  # Escape leaves the field for it
        self.setAttribute(Qt.WidgetAttribute.WA_StyledBackground)
        self.setAccessibleName(name)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(2)
        column.addWidget(label(words, "small"))
        column.addWidget(self.field)
        column.addWidget(self._told)
        column.addStretch(1)

    @property
    def told(self) -> str:
        """What stands under the field."""
        return self._told.text()

    def tell(self, wrong: str) -> None:
        """Say what is wrong with it; nothing where all is well."""
        self._wrong = wrong
        self.field.setAccessibleDescription(wrong)
        self._show()

    def _explain(self, meant: str) -> None:
        self._meant = meant
        self._show()

    def _show(self) -> None:
        words = self._wrong or self._meant
        self._told.setText(words)
        self._told.setVisible(bool(words))
        restyle(self._told, "kind", "look" if self._wrong else "small")
