"""A line over the cards: something in the brief cannot be used, and the way to put it right."""

from __future__ import annotations

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QFrame, QHBoxLayout, QVBoxLayout

from markbench.ui.desk import Desk
from markbench.ui.look.said import said
from markbench.ui.parts import button, label

_MOST = 3  # what is wrong, one line each; the brief itself shows all


class BriefStrip(QFrame):
    """Hidden where the brief is in order; it stays until that is so. ``wanted`` asks for it."""

    wanted = Signal()

    def __init__(self, desk: Desk) -> None:
        from markbench.intake.brief_file import BRIEF_NAME  # late: the reader brings scipy along

        super().__init__()
        self.setProperty("kind", "paper")
        wrong = [
            problem
            for problem in desk.held.work.problems
            if any(source.file == BRIEF_NAME for source in problem.sources)
        ]
        unread = any(not source.raw for problem in wrong for source in problem.sources)
        lead = (
            self.tr("The brief cannot be read. Until it can, every setting has its usual value.")
            if unread
            else self.tr("Something in the brief cannot be used as it stands.")
        )
        self.words = label(lead, "look", wrap=True)
        self.open_brief = button(self.tr("Go to the brief"), "", self.wanted.emit)
        column = QVBoxLayout()
        column.setSpacing(2)
        column.addWidget(self.words)
        for problem in wrong[:_MOST]:
            column.addWidget(label(said(problem.message), "small", wrap=True))
        if len(wrong) > _MOST:
            more = self.tr("and {n} more").format(n=len(wrong) - _MOST)
            column.addWidget(label(more, "small"))
        row = QHBoxLayout(self)
        row.setContentsMargins(12, 6, 12, 8)
        row.setSpacing(12)
        row.addLayout(column, 1)
        row.addWidget(self.open_brief)
        self.setVisible(bool(wrong))
