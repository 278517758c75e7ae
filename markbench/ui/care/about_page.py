"""What this program is, what leaves the machine, and what it is made of."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QPlainTextEdit

from markbench import __version__
from markbench.ui.background import in_background
from markbench.ui.care.sheet import CareSheet
from markbench.ui.look.theme import Theme
from markbench.ui.moderation.paper import Roll
from markbench.ui.parts import button, label

if TYPE_CHECKING:
    from markbench.session.components import Component


class AboutPage(CareSheet):
    """``left``: back to where one came from."""

    left = Signal()

    def __init__(self, theme: Theme) -> None:
        title = self.tr("About Markbench {version}").format(version=__version__)
        super().__init__(
            theme,
            title,
            self.tr(
                "The bench at which a physics teacher marks a class's home practicals. Free "
                "software under the MIT licence."
            ),
        )
        self.leaves = label(
            self.tr(
                "What leaves this machine: nothing. Markbench opens no network connection, sends "
                "no statistics and looks for no updates. What you write out or hand on, you hand "
                "on yourself."
            ),
            wrap=True,
        )
        headings = (self.tr("Made of"), self.tr("Version"), self.tr("Licence"), self.tr("Inside"))
        self.roll = Roll(headings, self.tr("Parts and their licences"), most_rows=8)
        self.roll.currentCellChanged.connect(lambda row, *_: self._show_text(row))
        self.text = QPlainTextEdit()
        self.text.setReadOnly(True)
        self.text.setMinimumHeight(theme.px(130))
        self.text.setAccessibleName(self.tr("Text of the licence"))
        for part in (self.leaves, self.roll, self.text):
            self.column.addWidget(part)
        self.column.setStretchFactor(self.text, 1)
        self.foot.addStretch(1)
        self.foot.addWidget(button(self.tr("Back"), "", self.left.emit))
        self.parts: tuple[Component, ...] = ()

        def work(_progress: object, _stop: object) -> tuple[Component, ...]:
            from markbench.session.components import components

            return components()

        in_background(self, work, done=self._show, failed=lambda e: self.text.setPlainText(str(e)))
        self.roll.setFocus()

    def _show(self, parts: tuple[Component, ...]) -> None:
        self.parts = parts
        self.roll.fill([("", (p.name, p.version, p.licence, p.inside)) for p in parts])

    def _show_text(self, row: int) -> None:
        if 0 <= row < len(self.parts):
            part = self.parts[row]
            words = self.tr("{name} brings no text of its licence ({licence}) along.")
            self.text.setPlainText(part.text or words.format(name=part.name, licence=part.licence))
