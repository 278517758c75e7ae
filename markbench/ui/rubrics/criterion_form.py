"""One criterion as a form: its levels, highest first, and its phrases."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Any, cast

from PySide6.QtCore import QCoreApplication, Signal
from PySide6.QtWidgets import (
    QCheckBox,
    QComboBox,
    QFrame,
    QHBoxLayout,
    QSizePolicy,
    QVBoxLayout,
    QWidget,
)

from markbench.model.sentence import opening
from markbench.session.rubric_sheet import Part, RubricSheet, Told, as_marks, as_texts
from markbench.ui.look.said import said
from markbench.ui.look.theme import Theme
from markbench.ui.parts import IconButton, button, frame, label
from markbench.ui.rubrics.completion import PhraseEdit
from markbench.ui.rubrics.entry import Entry

_ROLES = {"praise": "praise", "problem": "problem", "next": "next step", "look": "for your eye"}


def _tr(words: str) -> str:
    return QCoreApplication.translate("CriterionForm", words)


class CriterionForm(QWidget):
    """``edited``: something was typed; ``reshaped``: levels or phrases came, went or moved."""

    edited = Signal()
    reshaped = Signal()

    def __init__(self, sheet: RubricSheet, row: int, theme: Theme, *, narrow: bool = False) -> None:
        super().__init__()
        self.setProperty("kind", "inside")
        # A scroll area would squeeze it to the least heights of the style sheet otherwise.
        self.setSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Minimum)
        self._sheet, self._row, self._theme, self._narrow = sheet, row, theme, narrow
        self.entries: dict[str, Entry] = {}
        self._general = label(kind="look", wrap=True)
        self._general.hide()
        table = sheet.rows()[row]
        self._eye = bool(table.get("by_eye", False))
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 12, 8)
        column.setSpacing(8)
        column.addLayout(self._head(table))
        column.addWidget(self._general)
        column.addWidget(label(_tr("Levels, highest first"), "name"))
        levels = table.get("level", [])
        for at, level in enumerate(levels):
            column.addWidget(self._level(at, level, last=at + 1 == len(levels)))
        column.addWidget(self._adder("level", _tr("Add a level")))
        column.addSpacing(10)
        column.addWidget(label(_tr("Sentences to the learner"), "name"))
        for at, phrase in enumerate(table.get("phrase", [])):
            column.addWidget(self._phrase(at, phrase))
        column.addWidget(self._adder("phrase", _tr("Add a sentence")))
        column.addStretch(1)

    def tell(self, told: Iterable[Told]) -> None:
        """Show what is wrong beside the fields it is wrong in; the rest above them."""
        beside: dict[str, list[str]] = {}
        general = []
        for one in told:
            if one.key in self.entries:
                beside.setdefault(one.key, []).append(said(opening(one.message)))
            else:
                message = said(one.message)
                general.append(f"{one.key}: {message}" if one.key else message)
        for key, entry in self.entries.items():
            entry.tell("\n".join(beside.get(key, ())))
        self._general.setText("\n".join(general))
        self._general.setVisible(bool(general))

    def _head(self, table: dict[str, Any]) -> QVBoxLayout | QHBoxLayout:
        line = QVBoxLayout() if self._narrow else QHBoxLayout()
        title = self._entry("title", _tr("Title of the criterion"), str(table.get("title", "")))
        title.edited.connect(lambda text: self._set("title", text))
        name = self._entry("id", _tr("Short name, for files"), str(table.get("id", "")))
        name.edited.connect(lambda text: self._set("id", text))
        self.eye = QCheckBox(_tr("for your eye alone"))
        self.eye.setToolTip(_tr("No level is drafted; you look and decide."))
        self.eye.setChecked(self._eye)
        self.eye.toggled.connect(self._set_eye)
        line.addWidget(title, 3)
        line.addWidget(name, 1)
        line.addWidget(self.eye)
        return line

    def _level(self, at: int, table: dict[str, Any], *, last: bool) -> QFrame:
        place = f"level {at + 1}"
        number = at + 1
        box, column = self._box()
        line = QHBoxLayout()
        fields = (
            ("name", "words", _tr("Level {n}"), ""),
            ("marks", "line", _tr("Marks"), _tr("Marks of level {n}")),
            ("descriptor", "words", _tr("What level {n} asks for"), ""),
        )
        for key, kind, words, name in fields:
            shown = table.get(key, "")
            text = f"{shown:g}" if isinstance(shown, int | float) else str(shown)
            entry = self._entry(
                f"{place}.{key}", words.format(n=number), text, kind, name.format(n=number)
            )
            entry.edited.connect(
                lambda text, key=key: self._set_part(
                    "level", at, key, as_marks(text) if key == "marks" else text
                )
            )
            if key == "descriptor":
                column.addWidget(entry)
            else:
                line.addWidget(entry, 5 if key == "name" else 1)
        line.addLayout(self._tools("level", at))
        column.insertLayout(0, line)
        if table.get("when") or not (self._eye or last):
            words = _tr("Drafted when (level {n})").format(n=number)
            when = self._entry(f"{place}.when", words, str(table.get("when", "")), "condition")
            when.edited.connect(lambda text: self._set_part("level", at, "when", text or None))
            column.addWidget(when)
        return box

    def _phrase(self, at: int, table: dict[str, Any]) -> QFrame:
        place = f"phrase {at + 1}"
        number = at + 1
        box, column = self._box()
        line = QHBoxLayout()
        role = QComboBox()
        role.setAccessibleName(_tr("Kind of sentence {n}").format(n=number))
        for name in ("look",) if self._eye else ("praise", "problem", "next"):
            role.addItem(_tr(_ROLES[name]), name)
        role.setCurrentIndex(max(role.findData(table.get("role")), 0))
        role.activated.connect(lambda _i: self._set_part("phrase", at, "role", role.currentData()))
        kind = QVBoxLayout()
        kind.setSpacing(2)
        kind.addWidget(label(_tr("Kind"), "small"))
        kind.addWidget(role)
        kind.addStretch(1)
        line.addLayout(kind)
        words = _tr("Said when (sentence {n})").format(n=number)
        when = self._entry(f"{place}.when", words, str(table.get("when", "")), "condition")
        when.edited.connect(lambda text: self._set_part("phrase", at, "when", text or None))
        line.addWidget(when, 1)
        line.addLayout(self._tools("phrase", at))
        column.addLayout(line)
        given = table.get("text", "")
        text = "\n".join(map(str, given)) if isinstance(given, list) else str(given)
        words = _tr("Sentence {n}; further lines are other ways of saying it").format(n=number)
        entry = self._entry(f"{place}.text", words, text, "phrase")
        entry.edited.connect(lambda text: self._set_part("phrase", at, "text", as_texts(text)))
        column.addWidget(entry)
        return box

    def _box(self) -> tuple[QFrame, QVBoxLayout]:
        box = frame("paper")
        column = QVBoxLayout(box)
        column.setContentsMargins(12, 8, 8, 10)
        column.setSpacing(6)
        return box, column

    def _entry(self, key: str, words: str, text: str, kind: str = "line", name: str = "") -> Entry:
        entry = self.entries[key] = Entry(words, text, self._theme, kind, name)
        return entry

    def _tools(self, part: Part, at: int) -> QHBoxLayout:
        names = {"level": _tr("level"), "phrase": _tr("sentence")}
        what = f"{names[part]} {at + 1}"
        line = QHBoxLayout()
        line.setSpacing(0)
        for icon, words, do in (
            ("up", _tr("Move {what} up"), lambda: self._move(part, at, -1)),
            ("down", _tr("Move {what} down"), lambda: self._move(part, at, 1)),
            ("cross", _tr("Take {what} away"), lambda: self._remove(part, at)),
        ):
            line.addWidget(IconButton(self._theme, icon, words.format(what=what), do))
        return line

    def _adder(self, part: Part, words: str) -> QWidget:
        holder = QWidget()
        line = QHBoxLayout(holder)
        line.setContentsMargins(0, 0, 0, 0)
        line.addWidget(button(words, "", lambda: self._add(part)))
        line.addStretch(1)
        return holder

    # --- changing ---------------------------------------------------------------------

    def _set(self, key: str, value: Any) -> None:
        self._sheet.set(self._row, key, value)
        self.edited.emit()

    def _set_part(self, part: Part, at: int, key: str, value: Any) -> None:
        self._sheet.set_part(self._row, part, at, key, value)
        self.edited.emit()

    def _set_eye(self, on: bool) -> None:
        """A criterion of the eye has no conditions on its levels, and other sentences."""
        sheet, row = self._sheet, self._row
        sheet.set(row, "by_eye", on or None)
        table = sheet.rows()[row]
        for at, phrase in enumerate(table.get("phrase", [])):
            allowed = ("look",) if on else ("praise", "problem", "next")
            if phrase.get("role") not in allowed:
                sheet.set_part(row, "phrase", at, "role", allowed[-1])
        if on:
            for at in range(len(table.get("level", []))):
                sheet.set_part(row, "level", at, "when", None)
        self.reshaped.emit()

    def _add(self, part: Part) -> None:
        self._sheet.add_part(self._row, part)
        self.reshaped.emit()

    def _remove(self, part: Part, at: int) -> None:
        self._sheet.remove(self._row, part, at)
        self.reshaped.emit()

    def _move(self, part: Part, at: int, by: int) -> None:
        self._sheet.move(self._row, by, part, at)
        self.reshaped.emit()

    def phrase_field(self, number: int) -> PhraseEdit:
        """The field of a sentence, counted from 1."""
        return cast(PhraseEdit, self.entries[f"phrase {number}.text"].field)
