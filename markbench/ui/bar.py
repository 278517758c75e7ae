"""The slim bar over every page: the class, its places, what was saved, a few tools."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QGridLayout, QHBoxLayout, QWidget

from markbench.ui.look.theme import Theme
from markbench.ui.parts import ElidedLabel, label, restyle
from markbench.ui.places import PlaceBar


class Bar(QWidget):
    """One line where there is room; with large text the places stand in a line of their own."""

    def __init__(self, theme: Theme, places: PlaceBar, tools: Sequence[QWidget]) -> None:
        super().__init__()
        self._theme, self._places = theme, places
        self.title = ElidedLabel("quiet")
        self.saved = label(kind="small")
        self.trouble = ElidedLabel("look", most=False)
        self._tools = QWidget()
        row = QHBoxLayout(self._tools)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(4)
        row.addWidget(self.trouble)
        row.addWidget(self.saved)
        row.addSpacing(8)
        for tool in tools:
            row.addWidget(tool)
        self._grid = QGridLayout(self)
        self._grid.setContentsMargins(16, 4, 12, 0)
        self._grid.setHorizontalSpacing(8)
        self._grid.setVerticalSpacing(0)
        self._grid.setColumnStretch(0, 1)
        self._grid.addWidget(self.title, 0, 0)
        self._narrow: bool | None = None
        self._arrange()
        theme.changed.connect(self._arrange)

    def say_title(self, words: str) -> None:
        """Which class is open."""
        self.title.setText(words)

    def say_saved(self, words: str) -> None:
        """When something was last written; any trouble is over."""
        self._say("")
        self.saved.setText(words)
        self._arrange()

    def say_notice(self, words: str) -> None:
        """Something that was done."""
        self._say(words)
        restyle(self.trouble, "kind", "quiet")

    def say_trouble(self, words: str) -> None:
        """Something that could not be done."""
        self._say(words)
        restyle(self.trouble, "kind", "look")

    def renew(self) -> None:
        """A tool came or went."""
        self._arrange()

    def resizeEvent(self, event: QResizeEvent) -> None:
        """One line or two."""
        super().resizeEvent(event)
        self._arrange()

    def _say(self, words: str) -> None:
        self.trouble.setText(words)
        self.trouble.setToolTip(words)  # whole, where the line has no room for it
        self._arrange()

    def _arrange(self) -> None:
        tools = self._tools.sizeHint().width() - self.trouble.sizeHint().width()
        least = 40 + self._places.sizeHint().width() + tools + self._theme.px(110)
        narrow = least > self.width()
        if narrow == self._narrow:
            return
        self._narrow = narrow
        if narrow:
            self._grid.addWidget(self._tools, 0, 1)
            self._grid.addWidget(self._places, 1, 0, 1, 2)
        else:
            self._grid.addWidget(self._places, 0, 1)
            self._grid.addWidget(self._tools, 0, 2)
