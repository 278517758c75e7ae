"""After the sign-off: what would change a result is at rest, and says why and where to go.

Only what the sign-off freezes is held. Notes, judging a picture or pointing at a column move no
signed result, and stay free.
"""

from __future__ import annotations

from PySide6.QtWidgets import QWidget

from markbench.ui.desk import Desk
from markbench.ui.parts import LinkLabel

_OWN = "own_tip"


def allow(desk: Desk, able: bool, *controls: QWidget) -> None:
    """Enable what changes a result where it is ``able`` to and the marks are not signed off."""
    why = desk.signed_words
    for control in controls:
        if control.property(_OWN) is None:
            control.setProperty(_OWN, control.toolTip())
        control.setEnabled(able and not why)
        control.setToolTip(why or control.property(_OWN))


class SignedLine(LinkLabel):
    """Says that the marks are signed off, and leads to where they are reopened; else hidden."""

    def __init__(self, desk: Desk) -> None:
        super().__init__()
        self._desk = desk
        self.clicked.connect(desk.reopening_wanted)
        desk.changed.connect(lambda _learner: self.renew())
        self.renew()

    def renew(self) -> None:
        """As it is now."""
        words = self._desk.signed_words
        if words != self.text():
            self.show_link(words, bool(words))
        # Without a page around it, it would be shown as a window of its own.
        if self.parentWidget() is not None or not words:
            self.setVisible(bool(words))
