"""A line over the sheet: the work changed since it was marked, and what to do about it."""

from __future__ import annotations

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QApplication, QFrame, QVBoxLayout

from markbench.session.since_marked import SinceMarked, let_stand, mark_again, since_marked
from markbench.ui.desk import Desk
from markbench.ui.flow import FlowLayout
from markbench.ui.handins.since import since_words
from markbench.ui.parts import button, label


class ChangedStrip(QFrame):
    """Hidden where nothing changed.

    ``see_wanted`` asks for the comparison; ``settled``: it was shown, had the keyboard, and is
    shown no more. ``sees`` is false beside the comparison itself, which has its own words.
    """

    see_wanted = Signal()
    settled = Signal()

    def __init__(self, desk: Desk, *, sees: bool = True) -> None:
        super().__init__()
        self._desk, self._sees, self._learner = desk, sees, ""
        self.words = label(wrap=True)
        self.see = button(self.tr("See what changed"), "", self.see_wanted.emit)
        self.again = button(self.tr("Mark again"), "", self._mark_again)
        self.again.setToolTip(self.tr("The marks go back to drafts; your texts stay."))
        self.leave = button(self.tr("Leave the mark as it is"), "", self._leave)
        deeds = FlowLayout(spacing=8)
        for part in (*((self.see,) if sees else ()), self.again, self.leave):
            deeds.addWidget(part)
        column = QVBoxLayout(self)
        column.setSpacing(4)
        if sees:
            self.setProperty("kind", "paper")
            column.setContentsMargins(12, 6, 12, 8)
            column.addWidget(self.words)
        else:
            column.setContentsMargins(0, 0, 0, 0)
        column.addLayout(deeds)
        self.hide()

    def show_learner(self, learner: str) -> SinceMarked | None:
        """Show how a learner's work stands; returns what changed."""
        self._learner = learner
        session = self._desk.session
        changed = since_marked(session, learner) if learner else None
        had_keyboard = self.isAncestorOf(QApplication.focusWidget() or self.window())
        if changed is not None:
            signed = session.value("sign_off") is not None
            self.again.setVisible(not signed)
            lines = ["≠  " + since_words(changed)]
            marks = len(session.marks(learner))
            self.leave.setText(
                self.tr("Leave all {n} marks as they are").format(n=marks)
                if marks > 1
                else self.tr("Leave the mark as it is")
            )
            if len(changed.criteria) < marks:
                words = self.tr("This concerns {n} of {of} marks.")
                lines.append(words.format(n=len(changed.criteria), of=marks))
            if signed:
                lines.append(self.tr("The marks are signed off and stand."))
            self.words.setText(" ".join(lines))
        self.setVisible(changed is not None)
        if changed is None and had_keyboard:
            self.settled.emit()
        return changed

    def _mark_again(self) -> None:
        learner = self._learner
        self._desk.do(lambda session: mark_again(session, learner))

    def _leave(self) -> None:
        learner = self._learner
        self._desk.do(lambda session: let_stand(session, learner))
