"""The levels of a criterion in a row: one stop for the Tab key, arrows from level to level."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QButtonGroup, QPushButton

_STEPS = {
    Qt.Key.Key_Left: -1,
    Qt.Key.Key_Up: -1,
    Qt.Key.Key_Right: 1,
    Qt.Key.Key_Down: 1,
}


class LevelButton(QPushButton):
    """One level; an arrow goes to its neighbour without choosing it."""

    def __init__(self, words: str, row: LevelRow) -> None:
        super().__init__(words)
        self.setProperty("kind", "level")
        self.setAutoDefault(True)  # Enter presses it, as Space does
        self.setCheckable(True)
        row.addButton(self)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """An arrow moves within the row."""
        step, row = _STEPS.get(Qt.Key(event.key())), self.group()
        if step is None or event.modifiers() & ~Qt.KeyboardModifier.KeypadModifier:
            super().keyPressEvent(event)
            return
        levels = row.buttons()
        at = min(max(levels.index(self) + step, 0), len(levels) - 1)
        levels[at].setFocus()


class LevelRow(QButtonGroup):
    """Holds the row together; where Tab stops is the level marked, else the one drafted."""

    def __init__(self) -> None:
        super().__init__()
        self.setExclusive(False)

    def stop_at(self, level: QPushButton | None) -> None:
        """Let Tab stop at one level; at the first where none is meant."""
        levels = self.buttons()
        here = level or (levels[0] if levels else None)
        for one in levels:
            stops = one is here
            one.setFocusPolicy(Qt.FocusPolicy.StrongFocus if stops else Qt.FocusPolicy.ClickFocus)

    @property
    def stop(self) -> QPushButton:
        """Where Tab stops."""
        levels = self.buttons()
        stops = (x for x in levels if x.focusPolicy() & Qt.FocusPolicy.TabFocus)
        found = next(stops, levels[0])
        assert isinstance(found, QPushButton)
        return found
