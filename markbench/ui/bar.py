"""The slim bar over every page: the class, its places, what was saved, a few tools."""

from __future__ import annotations

import math
from collections.abc import Sequence

from PySide6.QtCore import QCoreApplication, Qt, QTimer
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QGridLayout, QHBoxLayout, QWidget

from markbench.ui.look.theme import Theme
from markbench.ui.parts import ElidedLabel, label, restyle
from markbench.ui.places import PlaceBar

_LEAST_MS, _LETTER_MS = 5000, 60  # some 200 words a minute, after a moment to look up


def saved_at(time: str) -> str:
    """That everything was on the disk at ``time``."""
    return QCoreApplication.translate("Window", "✓ saved {time}").format(time=time)


class Bar(QWidget):
    """One line where there is room; with large text the places stand in a line of their own.

    What is said stands where the class's title is, so that nothing in the bar moves under
    the hand; where there is no room for all of it, in a strip of its own below. A notice gives
    the place back after a while, trouble with the next thing saved; both when one goes on.
    """

    def __init__(
        self,
        theme: Theme,
        places: PlaceBar,
        tools: Sequence[QWidget],
        beside: Sequence[QWidget] = (),
    ) -> None:
        """``beside``: what comes and goes beside the title."""
        super().__init__()
        self._theme, self._places, self._beside = theme, places, beside
        self.title = ElidedLabel("quiet")
        self.saved = label(kind="small")
        self.saved.setAlignment(Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter)
        self.trouble = label(kind="look", wrap=True)
        self.trouble.setTextInteractionFlags(Qt.TextInteractionFlag.TextSelectableByMouse)
        self.trouble.setFocusPolicy(Qt.FocusPolicy.NoFocus)  # no stop for Tab
        self._over = QTimer(self, singleShot=True)
        self._over.timeout.connect(lambda: self._say(""))
        self._tools = QWidget()
        row = QHBoxLayout(self._tools)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(4)
        row.addWidget(self.saved)
        row.addSpacing(8)
        for tool in tools:
            row.addWidget(tool)
        self._grid = QGridLayout(self)
        self._grid.setContentsMargins(16, 4, 12, 0)
        self._grid.setHorizontalSpacing(8)
        self._grid.setVerticalSpacing(0)
        self._grid.setColumnStretch(0, 1)
        self._left = QHBoxLayout()
        self._left.addWidget(self.title, 1)
        for one in beside:
            self._left.addWidget(one)
        self._grid.addLayout(self._left, 0, 0)
        self._narrow: bool | None = None
        self._below: bool | None = None
        self._say("")
        self._keep_room()
        theme.changed.connect(self._keep_room)

    def say_title(self, words: str) -> None:
        """Which class is open."""
        self.title.setText(words)

    def say_saved(self, words: str) -> None:
        """When something was last written; any trouble is over."""
        if not self._over.isActive():
            self._say("")
        self.saved.setText(words)
        self._arrange()

    def say_notice(self, words: str) -> None:
        """Something that was done; long enough to be read."""
        self._say(words)
        restyle(self.trouble, "kind", "said")
        if words:
            self._over.start(_LEAST_MS + _LETTER_MS * len(words))

    def say_trouble(self, words: str) -> None:
        """Something that could not be done."""
        self._say(words)
        restyle(self.trouble, "kind", "look")

    def go_on(self) -> None:
        """Whatever was said belongs to what one has left."""
        self._say("")

    def renew(self) -> None:
        """A tool came or went."""
        self._arrange()

    def resizeEvent(self, event: QResizeEvent) -> None:
        """One line or two."""
        super().resizeEvent(event)
        self._arrange()

    def _say(self, words: str) -> None:
        self._over.stop()
        self.trouble.setText(words)
        self.trouble.setVisible(bool(words))
        self._place_words()

    def _keep_room(self) -> None:
        """Room for the time of saving is kept, or the places would move when it first comes."""
        widest = saved_at("00:00")
        self.saved.setMinimumWidth(
            math.ceil(self._theme.metrics("small").horizontalAdvance(widest)) + 4
        )
        self._arrange()

    def _arrange(self) -> None:
        tools = self._tools.sizeHint().width()
        tools += sum(one.sizeHint().width() for one in self._beside if not one.isHidden())
        least = 40 + self._places.sizeHint().width() + tools + self._theme.px(110)
        narrow = least > self.width()
        if narrow != self._narrow:
            self._narrow = narrow
            if narrow:
                self._grid.addWidget(self._tools, 0, 1)
                self._grid.addWidget(self._places, 1, 0, 1, 2)
            else:
                self._grid.addWidget(self._places, 0, 1)
                self._grid.addWidget(self._tools, 0, 2)
        self._place_words()

    def _place_words(self) -> None:
        """In the title's place, or in a strip of their own where they are longer."""
        words = self.trouble.text()
        room = self.width() - 44 - self._tools.sizeHint().width()
        room -= sum(one.sizeHint().width() + 8 for one in self._beside if not one.isHidden())
        if not self._narrow:
            room -= self._places.sizeHint().width() + 8
        wide = max(map(self.trouble.fontMetrics().horizontalAdvance, words.split("\n")))
        below = wide > room or "\n" in words
        self.title.setVisible(not words or below)
        if below != self._below:
            self._below = below
            self._left.removeWidget(self.trouble)
            self._grid.removeWidget(self.trouble)
            if below:
                self._grid.addWidget(self.trouble, 2, 0, 1, 3)
            else:
                self._left.insertWidget(1, self.trouble, 1)
