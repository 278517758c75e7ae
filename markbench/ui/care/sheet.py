"""What the pages of this folder are made of: one sheet with a title, a lead and a foot."""

from __future__ import annotations

from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from markbench.ui.look.theme import Theme
from markbench.ui.parts import frame, label, quiet_scroll

_WIDEST = 980


class CareSheet(QWidget):
    """``column`` takes the parts of the page, ``foot`` its deeds."""

    def __init__(self, theme: Theme, title: str, lead: str) -> None:
        super().__init__()
        self._theme = theme
        self._inside = QWidget()
        self._inside.setProperty("kind", "inside")
        self.column = QVBoxLayout(self._inside)
        self.column.setContentsMargins(0, 0, 14, 0)
        self.column.setSpacing(8)
        self.lead = label(lead, "quiet", wrap=True)
        self.foot = QHBoxLayout()
        self.foot.setSpacing(8)
        sheet = frame("margin")
        outer = QVBoxLayout(sheet)
        outer.setContentsMargins(28, 18, 20, 16)
        outer.setSpacing(8)
        outer.addWidget(label(title, "title"))
        outer.addWidget(quiet_scroll(self._inside), 1)
        outer.addLayout(self.foot)
        self.column.addWidget(self.lead)
        row = QHBoxLayout(self)
        row.setContentsMargins(40, 12, 0, 0)
        row.addWidget(sheet)
        theme.changed.connect(self._size)
        self._size()

    def _size(self) -> None:
        self._inside.setMaximumWidth(self._theme.px(_WIDEST))
