"""One setting of the brief: its name, what it does, where it is set, and what follows from it."""

from __future__ import annotations

from typing import Any

from PySide6.QtCore import QCoreApplication, Qt, Signal
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QCheckBox, QHBoxLayout, QLineEdit, QVBoxLayout, QWidget

from markbench.export.task_words import LANGUAGES
from markbench.intake.brief_file import value_of
from markbench.intake.brief_rules import ALLOWED
from markbench.model import Brief
from markbench.session.brief_form import Way, way_of
from markbench.ui.languages import NAMES
from markbench.ui.look.said import said
from markbench.ui.look.theme import Theme
from markbench.ui.newclass.editors import (
    ChoiceEditor,
    DayEditor,
    Editor,
    LineEditor,
    TicksEditor,
)
from markbench.ui.parts import LinkLabel, label, restyle

_EDITOR_WIDTH = 262
_NO_LIMIT = 16_777_215  # as Qt has it
_ROOM = 720  # three columns need at least this


def _tr(words: str) -> str:
    return QCoreApplication.translate("Field", words)


class Field(QWidget):
    """``changed`` is sent at every key; :meth:`raw` is what the file would hold.

    A dot before the name marks what is not saved yet; what is not as it usually is says so
    under the editor, with the way back.
    """

    changed = Signal()

    def __init__(self, key: str, name: str, theme: Theme) -> None:
        super().__init__()
        self.key = key
        self._theme = theme
        self.way: Way = way_of(key)
        self._words = name
        self._about_words = _tr(ALLOWED[key].about)
        self._name = label(name, wrap=True)
        self._about = label(self._about_words, "small", wrap=True)
        self.told = label(kind="small", wrap=True)
        self.editor = self._make_editor()
        self.editor.changed.connect(self._on_changed)
        for part in self.editor.parts:
            if not part.accessibleName():
                part.setAccessibleName(name)
        self._default = self.editor.text_of(value_of(Brief(), key))
        self._saved = self.editor.text()
        self._may_be_empty = self.line is not None and self.way != "text"
        if self.line is not None and self._may_be_empty and not self.line.placeholderText():
            self.line.setPlaceholderText(self._default)
        self.usual = LinkLabel()
        self.usual.clicked.connect(self.go_back)
        # Escape leaves the editor for the row, and the row shows that it has the keyboard.
        self.setProperty("kind", "stop")
        self.setAttribute(Qt.WidgetAttribute.WA_StyledBackground)
        self.setAccessibleName(name)
        words = QVBoxLayout()
        words.setSpacing(2)
        words.addWidget(self._name)
        words.addWidget(self._about)
        words.addStretch(1)
        self._under = QVBoxLayout()
        self._under.setSpacing(2)
        self._under.addWidget(self.editor)
        self._under.addWidget(self.usual)
        self._below = QVBoxLayout()
        self._under.addLayout(self._below)
        self._under.addStretch(1)
        self._row = QHBoxLayout(self)
        self._row.setContentsMargins(0, 6, 0, 6)
        self._row.setSpacing(20)
        self._row.addLayout(words, 5)
        self._row.addLayout(self._under)
        self._narrow: bool | None = None
        self._place()
        theme.changed.connect(self._size)
        self._size()

    def _make_editor(self) -> Editor:
        if self.way in ("choices", "yes_no"):
            return TicksEditor(self.key, self._words, lambda kind: _tr(_CHOICES.get(kind, kind)))
        if self.way == "language":
            return ChoiceEditor(self.key, [(code, NAMES.get(code, code)) for code in LANGUAGES])
        if self.way == "date":
            return DayEditor(self.key, self._words, self._theme)
        return LineEditor(self.key, _tr(_EXAMPLES[self.key]) if self.key in _EXAMPLES else "")

    @property
    def line(self) -> QLineEdit | None:
        """The line to type in, where there is one."""
        return self.editor.line if isinstance(self.editor, LineEditor) else None

    @property
    def ticks(self) -> dict[str, QCheckBox]:
        """What can be ticked."""
        return self.editor.ticks if isinstance(self.editor, TicksEditor) else {}

    def show_value(self, value: Any) -> None:
        """Fill in a value of the brief that is saved."""
        self.fill(self.editor.text_of(value))
        self._saved = self.editor.text()
        self._mark()

    def fill(self, text: str) -> None:
        """Fill in what was typed before, without telling anybody."""
        self.editor.blockSignals(True)
        self.editor.fill(text)
        self.editor.blockSignals(False)
        self._mark()

    def raw(self) -> Any:
        """The value as the file would hold it, ``None`` where it is left out."""
        return self.editor.raw()

    @property
    def unsaved(self) -> bool:
        """Whether it is not as it is saved."""
        return self._differs_from(self._saved)

    def _differs_from(self, text: str) -> bool:
        left_out = self._default if self._may_be_empty else ""
        one, other = (self.editor.raw_of(one or left_out) for one in (self.editor.text(), text))
        return bool(one != other)

    def go_back(self) -> None:
        """Back to what it usually is."""
        self.editor.fill(self._default)
        self.set_focus()

    def tell(self, trouble: str, effect: str, doubt: str = "") -> None:
        """Say what is wrong, else what may be, else what the setting means for this class."""
        words = said(trouble or doubt or effect)
        self.told.setText(words)
        restyle(self.told, "kind", "look" if trouble or doubt else "small")
        for part in self.editor.parts:
            part.setAccessibleDescription(f"{self._about_words} {words}".strip())

    def set_focus(self) -> None:
        """Give the keyboard to the editor."""
        self.editor.parts[0].setFocus()

    def resizeEvent(self, event: QResizeEvent) -> None:
        """What follows stands to the right, or below where there is no room."""
        super().resizeEvent(event)
        self._place()

    def _on_changed(self) -> None:
        self._mark()
        self.changed.emit()

    def _mark(self) -> None:
        self._name.setText(f"● {self._words}" if self.unsaved else self._words)
        other = self._differs_from(self._default) and self.key not in _OWN
        if other and self._default:
            words = _tr("Back to the usual: {value}")
            self.usual.show_link(words.format(value=self._usual_words()), True)
        self.usual.setVisible(bool(other and self._default))

    def _usual_words(self) -> str:
        if self.ticks:
            return ", ".join(self.ticks[kind].text() for kind in self._default.split())
        if isinstance(self.editor, ChoiceEditor):
            return NAMES.get(self._default, self._default)
        return self._default

    def _place(self) -> None:
        narrow = self.width() < self._theme.px(_ROOM)
        if narrow == self._narrow:
            return
        self._narrow = narrow
        if narrow:
            self._row.removeWidget(self.told)
            self._below.addWidget(self.told)
        else:
            self._below.removeWidget(self.told)
            self._row.addWidget(self.told, 5, Qt.AlignmentFlag.AlignTop)
        self._row.setStretch(1, 5 if narrow else 0)
        self._size_editor()

    def _size(self) -> None:
        self._size_editor()
        self._place()

    def _size_editor(self) -> None:
        """One width in three columns; in two, what the names leave."""
        least = self._theme.px(_EDITOR_WIDTH)
        for part in (self.editor, self.usual):
            part.setMinimumWidth(least)
            part.setMaximumWidth(_NO_LIMIT if self._narrow else least)


_OWN = ("title",)  # nobody wants the usual one back
_CHOICES = {
    "setup_photo": "photo of the set-up",
    "selfie": "photo of the learner with it",
    "photo": "any photo",
    "swing_video": "swing video",
    "report": "report",
    "yes": "yes",
}
_EXAMPLES = {
    "support_height_m": "not given",
    "late.most_days": "every day counts",
    "place.latitude_deg": "not given",
    "place.height_m": "not given",
    "partners": "07 & 12, 08 & 09",
    "grades": "A = 16, B = 13",
}
