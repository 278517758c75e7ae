"""Which rubric the class is marked by, with its criteria to look at before choosing."""

from __future__ import annotations

from pathlib import Path

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QButtonGroup, QHBoxLayout, QPushButton, QVBoxLayout, QWidget

from markbench.model import Rubric
from markbench.session.newclass import RubricChoice, rubrics_for
from markbench.ui.look.said import said
from markbench.ui.look.theme import Theme
from markbench.ui.parts import button, frame, label, quiet_scroll


class RubricChooser(QWidget):
    """``chosen`` carries the name of the rubric that was picked."""

    chosen = Signal(str)

    def __init__(self, theme: Theme) -> None:
        super().__init__()
        self._theme = theme
        self._choices: dict[str, RubricChoice] = {}
        self.buttons: dict[str, QPushButton] = {}
        self._group = QButtonGroup(self)
        self.name = ""
        self._side = QVBoxLayout()
        self._side.setSpacing(8)
        self._preview = QVBoxLayout()
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(24)
        row.addLayout(self._side, 3)
        row.addLayout(self._preview, 6)

    def offer(self, folder: Path, name: str, language: str) -> None:
        """Show what can be chosen for a folder; ``name`` is chosen if it is there."""
        _clear(self._side)
        self._choices = {choice.name: choice for choice in rubrics_for(folder, language)}
        self.buttons = {}
        for choice in self._choices.values():
            self._side.addWidget(self._button(choice))
        self._side.addStretch(1)
        stem = name.removesuffix(".toml")
        able = [c.name for c in self._choices.values() if c.rubric is not None]
        self._pick(stem if stem in able else next(iter(able), ""))

    @property
    def most(self) -> float | None:
        """The marks of the chosen rubric."""
        choice = self._choices.get(self.name)
        return choice.rubric.most if choice is not None and choice.rubric is not None else None

    def focus_choice(self) -> None:
        """Give the keyboard to the chosen rubric."""
        if self.name in self.buttons:
            self.buttons[self.name].setFocus()

    def _button(self, choice: RubricChoice) -> QPushButton:
        rubric = choice.rubric
        if rubric is None:
            words = self.tr("{name}\ncannot be used").format(name=choice.name)
        else:
            origin = self.tr("in the class folder") if choice.own else self.tr("comes along")
            words = self.tr("{title}\n{marks:g} marks, {n} criteria; {origin}").format(
                title=rubric.title, marks=rubric.most, n=len(rubric.criteria), origin=origin
            )
        made = button(words, "choice")
        made.setCheckable(True)
        made.setEnabled(rubric is not None)
        made.setToolTip(said(choice.trouble))
        made.setAccessibleDescription(said(choice.trouble))
        made.setMinimumHeight(round(self._theme.line_height() * 2 + 20))
        made.clicked.connect(lambda _on, name=choice.name: self._pick(name))
        self._group.addButton(made)
        self.buttons[choice.name] = made
        return made

    def _pick(self, name: str) -> None:
        self.name = name
        _clear(self._preview)
        choice = self._choices.get(name)
        if choice is None or choice.rubric is None:
            words = self.tr("There is no rubric that can be used.")
            self._preview.addWidget(label(words, "look", wrap=True))
            return
        self.buttons[name].setChecked(True)
        self._preview.addWidget(quiet_scroll(self._sheet(choice.rubric)))
        self.chosen.emit(name)

    def _sheet(self, rubric: Rubric) -> QWidget:
        inside = QWidget()
        inside.setProperty("kind", "inside")
        column = QVBoxLayout(inside)
        column.setContentsMargins(0, 0, 12, 0)
        column.setSpacing(4)
        for criterion in rubric.criteria:
            head = QHBoxLayout()
            head.addWidget(label(criterion.title, "name", wrap=True), 1)
            if criterion.by_eye:
                head.addWidget(label(self.tr("for your eye"), "pencil"))
            head.addWidget(label(self.tr("{n:g} marks").format(n=criterion.most)))
            column.addLayout(head)
            column.addWidget(frame("rule"))
            for level in criterion.levels:
                words = self.tr("{n:g}  {name}: {descriptor}").format(
                    n=level.marks, name=level.name, descriptor=level.descriptor
                )
                column.addWidget(label(words, "small", wrap=True))
            column.addSpacing(12)
        column.addStretch(1)
        return inside


def _clear(layout: QVBoxLayout) -> None:
    while layout.count():
        item = layout.takeAt(0)
        if item is not None and (old := item.widget()) is not None:
            old.hide()
            old.deleteLater()
