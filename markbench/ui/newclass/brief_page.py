"""The brief of a class that is open: change it, and everything is drafted again."""

from __future__ import annotations

from pathlib import Path

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from markbench.intake.brief_file import BRIEF_NAME, read_brief, write_brief
from markbench.model import ClassWork
from markbench.ui.flow import FlowLayout
from markbench.ui.look.theme import Theme
from markbench.ui.newclass.brief_form import BriefForm
from markbench.ui.parts import button, frame, label


class BriefPage(QWidget):
    """``saved``: the brief was written and the class is to be read again; ``left``: it was not.

    ``table_wanted`` and ``sheet_wanted`` ask for what learners are given before they start.
    """

    saved = Signal()
    left = Signal()
    table_wanted = Signal()
    sheet_wanted = Signal()

    def __init__(self, folder: Path, work: ClassWork, theme: Theme, *, read_only: bool) -> None:
        super().__init__()
        self._path = folder / BRIEF_NAME
        self.form = BriefForm(theme)
        self.form.changed.connect(self._say)
        self.trouble = label(kind="look", wrap=True)
        self.save = button(self.tr("Save and draft again"), "deed", self._save)
        self.save.setEnabled(not read_only)
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
        brief, self._odd = read_brief(self._path)
        self.form.show_brief(brief, work)
        self.form.fields["title"].set_focus()

    def _say(self) -> None:
        self.trouble.setText(self.form.wrong() or "\n".join(one.sentence for one in self._odd))

    def _save(self) -> None:
        self.form.judge()
        if self.form.troubles:
            self.form.show_trouble()
            return
        try:
            write_brief(self._path, self.form.brief)
        except (OSError, ValueError) as error:
            self.trouble.setText(str(error))
            return
        self.saved.emit()
