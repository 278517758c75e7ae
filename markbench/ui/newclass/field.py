"""One setting of the brief: its name, what it does, where it is set, and what follows from it."""

from __future__ import annotations

from typing import Any

from PySide6.QtCore import QCoreApplication, Qt, Signal
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QCheckBox, QHBoxLayout, QLineEdit, QVBoxLayout, QWidget

from markbench.intake.brief_rules import ALLOWED
from markbench.session.brief_form import Way, as_raw, as_text, choices_of, way_of
from markbench.ui.look.said import figures, said
from markbench.ui.look.theme import Theme
from markbench.ui.parts import label, restyle

_EDITOR_WIDTH = 250
_ROOM = 720  # three columns need at least this


def _tr(words: str) -> str:
    return QCoreApplication.translate("Field", words)


class Field(QWidget):
    """``changed`` is sent at every key; :meth:`raw` is what the file would hold."""

    changed = Signal()

    def __init__(self, key: str, name: str, theme: Theme) -> None:
        super().__init__()
        self.key = key
        self._theme = theme
        self.way: Way = way_of(key)
        self.line: QLineEdit | None = None
        self.ticks: dict[str, QCheckBox] = {}
        about = _tr(ALLOWED[key].about)
        self._name = label(name, wrap=True)
        self._about = label(about, "small", wrap=True)
        self.told = label(kind="small", wrap=True)
        self._editor = self._make_editor(name, about)
        words = QVBoxLayout()
        words.setSpacing(2)
        words.addWidget(self._name)
        words.addWidget(self._about)
        words.addStretch(1)
        self._under = QVBoxLayout()
        self._under.addWidget(self._editor)
        self._row = QHBoxLayout(self)
        self._row.setContentsMargins(0, 6, 0, 6)
        self._row.setSpacing(20)
        self._row.addLayout(words, 5)
        self._row.addLayout(self._under)
        self._row.setAlignment(self._under, Qt.AlignmentFlag.AlignTop)
        self._narrow: bool | None = None
        self._place()
        theme.changed.connect(self._size)
        self._size()

    def _make_editor(self, name: str, about: str) -> QWidget:
        if self.way in ("choices", "yes_no"):
            part = QWidget()
            column = QVBoxLayout(part)
            column.setContentsMargins(0, 0, 0, 0)
            column.setSpacing(0)
            kinds = choices_of(self.key) if self.way == "choices" else ("",)
            for kind in kinds:
                tick = QCheckBox(_tr(_CHOICES.get(kind, kind)) if kind else _tr("yes"))
                tick.setAccessibleName(f"{name}: {tick.text()}")
                tick.setAccessibleDescription(about)
                tick.toggled.connect(lambda _on: self.changed.emit())
                self.ticks[kind] = tick
                column.addWidget(tick)
            return part
        self.line = QLineEdit()
        self.line.setAccessibleName(name)
        self.line.setAccessibleDescription(about)
        self.line.setPlaceholderText(_tr(_EXAMPLES[self.key]) if self.key in _EXAMPLES else "")
        self.line.textChanged.connect(lambda _text: self.changed.emit())
        return self.line

    def show_value(self, value: Any) -> None:
        """Fill in a value of the brief."""
        if self.way == "yes_no":
            self.ticks[""].setChecked(bool(value))
        elif self.way == "choices":
            for kind, tick in self.ticks.items():
                tick.setChecked(kind in value)
        elif self.line is not None:
            text = as_text(self.key, value)
            self.line.setText(figures(text) if self.way == "number" else text)
            self.line.setCursorPosition(0)

    def raw(self) -> Any:
        """The value as the file would hold it, ``None`` where it is left out."""
        if self.way == "yes_no":
            return self.ticks[""].isChecked()
        if self.line is None:
            return [kind for kind, tick in self.ticks.items() if tick.isChecked()]
        return as_raw(self.key, self.line.text())

    def tell(self, trouble: str, effect: str) -> None:
        """Say what is wrong, else what the setting means for this class."""
        told = trouble or said(effect)
        self.told.setText(told)
        restyle(self.told, "kind", "look" if trouble else "small")
        described = f"{_tr(ALLOWED[self.key].about)} {told}".strip()
        for editor in (self.line, *self.ticks.values()):
            if editor is not None:
                editor.setAccessibleDescription(described)

    def set_focus(self) -> None:
        """Give the keyboard to the editor."""
        editor = self.line or next(iter(self.ticks.values()))
        editor.setFocus()

    def resizeEvent(self, event: QResizeEvent) -> None:
        """What follows stands to the right, or below where there is no room."""
        super().resizeEvent(event)
        self._place()

    def _place(self) -> None:
        narrow = self.width() < self._theme.px(_ROOM)
        if narrow == self._narrow:
            return
        self._narrow = narrow
        if narrow:
            self._row.removeWidget(self.told)
            self._under.addWidget(self.told)
        else:
            self._under.removeWidget(self.told)
            self._row.addWidget(self.told, 5, Qt.AlignmentFlag.AlignTop)

    def _size(self) -> None:
        self._editor.setFixedWidth(self._theme.px(_EDITOR_WIDTH))
        self._place()


_CHOICES = {
    "setup_photo": "photo of the set-up",
    "selfie": "photo of the learner with it",
    "photo": "any photo",
    "swing_video": "swing video",
    "report": "report",
}
_EXAMPLES = {
    "opens": "year-month-day",
    "closes": "year-month-day",
    "support_height_m": "not given",
    "late.most_days": "every day counts",
    "place.latitude_deg": "not given",
    "place.height_m": "not given",
    "partners": "07 & 12, 08 & 09",
    "grades": "A = 16, B = 13",
}
