"""The stations of the evening, always in view: how far each has come, and the way there."""

from __future__ import annotations

from functools import partial

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QWidget

from markbench.ui.flow import FlowLayout
from markbench.ui.moderation.standing import Standing
from markbench.ui.parts import button


class StepBar(QWidget):
    """``wanted`` carries the name of a station."""

    wanted = Signal(str)

    def __init__(self) -> None:
        super().__init__()
        row = FlowLayout(self, spacing=4)
        self.buttons = {
            name: button("", "plain", partial(self.wanted.emit, name))
            for name in ("sample", "open", "agreement", "adjustment", "boundaries", "signing",
                         "out")
        }  # fmt: skip
        for control in self.buttons.values():
            row.addWidget(control)

    def show_standing(self, now: Standing) -> None:
        """How far each station has come."""
        sample, count = now.sample, len(now.open)
        seconds = sum(one.second_total is not None for one in now.found.values())
        decided = now.adjusted is not None
        for name, words in {
            "sample": self.tr("Sample: none yet") if sample is None
            else self.tr("✓ Sample: {n}").format(n=len(sample.learners)),
            "open": self.tr("Open: {n}").format(n=count) if count else self.tr("Open: nothing"),
            "agreement": self.tr("Second-marked: {n}").format(n=seconds),
            "adjustment": self.tr("✓ Adjustment") if decided else self.tr("Adjustment"),
            "boundaries": self.tr("Boundaries"),
            "signing": self.tr("Sign-off") if now.signed is None else self.tr("✓ Signed off"),
            "out": self.tr("Send out"),
        }.items():  # fmt: skip
            self.buttons[name].setText(words)
