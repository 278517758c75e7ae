"""The brief of a class that is open: change it, and everything is drafted again."""

from __future__ import annotations

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from markbench.intake.brief_file import BRIEF_NAME, read_brief
from markbench.ui.desk import Desk
from markbench.ui.flow import FlowLayout
from markbench.ui.look.theme import Theme
from markbench.ui.mishaps import plainly
from markbench.ui.newclass.brief_form import BriefForm
from markbench.ui.parts import button, frame, label


class BriefPage(QWidget):
    """``left``: the brief is as it was. Where it is saved, the desk tells that it is outdated.

    ``table_wanted`` and ``sheet_wanted`` ask for what learners are given before they start.
    """

    left = Signal()
    table_wanted = Signal()
    sheet_wanted = Signal()

    def __init__(self, desk: Desk, theme: Theme) -> None:
        super().__init__()
        self._desk = desk
        self.form = BriefForm(theme)
        self.form.changed.connect(self._say)
        self.trouble = label(kind="look", wrap=True)
        self.save = button(self.tr("Save and draft again"), "deed", self._save)
        self.save.setEnabled(not desk.held.read_only)
        leave = button(self.tr("Leave it as it was"), "", self.left.emit)
        lead = self.tr(
            "Marks stay as they are; the drafts follow the brief. Your comments in "
            "brief.toml are kept."
        )
        sheet = frame("margin")
        column = QVBoxLayout(sheet)
        column.setContentsMargins(28, 18, 20, 16)
        column.setSpacing(8)
        column.addWidget(label(self.tr("What was the class asked to do?"), "title"))
        column.addWidget(label(lead, "quiet", wrap=True))
        self.table = button(self.tr("Table of readings…"), "", self.table_wanted.emit)
        self.sheet = button(self.tr("Task sheet…"), "", self.sheet_wanted.emit)
        given = FlowLayout(spacing=8)
        given.addWidget(label(self.tr("For learners, from the brief as saved:"), "quiet"))
        given.addWidget(self.table)
        given.addWidget(self.sheet)
        column.addLayout(given)
        column.addWidget(self.form, 1)
        foot = QHBoxLayout()
        foot.addWidget(self.trouble, 1)
        foot.addWidget(leave)
        foot.addWidget(self.save)
        column.addLayout(foot)
        row = QHBoxLayout(self)
        row.setContentsMargins(40, 12, 0, 0)
        row.addWidget(sheet)
        # From the file, not the session: pairs named in the class list stay there.
        brief, self._odd = read_brief(desk.held.folder / BRIEF_NAME)
        self.form.show_brief(brief, desk.held.work)
        self.form.fields["title"].set_focus()

    def _say(self) -> None:
        self.trouble.setText(self.form.wrong() or "\n".join(one.sentence for one in self._odd))

    def _save(self) -> None:
        self.form.judge()
        if self.form.troubles:
            self.form.show_trouble()
            return
        held, brief = self._desk.held, self.form.brief
        self.save.setEnabled(False)
        self._desk.do_long(
            self,
            lambda _progress, _stop: held.save_brief(brief),
            done=lambda _none: self.left.emit(),  # nothing was changed, or this page is gone
            failed=self._failed,
        )

    def _failed(self, error: Exception) -> None:
        self.save.setEnabled(True)
        self.trouble.setText(plainly(error))
