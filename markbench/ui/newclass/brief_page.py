"""The brief of a class that is open: change it, and everything is drafted again."""

from __future__ import annotations

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from markbench.intake.brief_file import (
    BRIEF_NAME,
    is_unreadable,
    name_aside,
    put_aside,
    read_brief,
)
from markbench.model import Brief
from markbench.ui.desk import Desk
from markbench.ui.flow import FlowLayout
from markbench.ui.look.said import said
from markbench.ui.look.theme import Theme
from markbench.ui.mishaps import plainly
from markbench.ui.newclass.brief_form import BriefForm
from markbench.ui.parts import button, frame, label
from markbench.ui.unfinished import Pending


class BriefPage(QWidget):
    """``left``: away from here; what is typed is kept. Where it is saved, the desk tells that
    the page is outdated.

    ``table_wanted`` and ``sheet_wanted`` ask for what learners are given before they start.
    """

    NAME = "brief"
    left = Signal()
    table_wanted = Signal()
    sheet_wanted = Signal()

    def __init__(self, desk: Desk, theme: Theme, pending: Pending) -> None:
        super().__init__()
        self._desk, self._pending = desk, pending
        self._discarded: dict[str, str] = {}
        self._saved = False
        self.form = BriefForm(theme)
        self.form.changed.connect(self._say)
        self.form.edited.connect(self._offer)
        self.trouble = label(kind="look", wrap=True)
        self.save = button(self.tr("Save and draft again"), "deed", self._save)
        self.discard = button("", "", self._discard)
        leave = button(self.tr("Back to the class"), "", self.left.emit)
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
        self.given = label(kind="quiet")
        given = FlowLayout(spacing=8)
        for part in (self.given, self.table, self.sheet):
            given.addWidget(part)
        column.addLayout(given)
        column.addWidget(self.form, 1)
        foot = FlowLayout(spacing=8)
        for one in (self.save, self.discard, leave):
            foot.addWidget(one)
        column.addWidget(self.trouble)
        column.addSpacing(4)
        column.addLayout(foot)
        row = QHBoxLayout(self)
        row.setContentsMargins(40, 12, 0, 0)
        row.addWidget(sheet)
        # From the file, not the session: pairs named in the class list stay there.
        brief, self._odd = read_brief(desk.held.folder / BRIEF_NAME)
        if is_unreadable(self._odd):
            self.save.setText(self.tr("Put it aside, save and draft again"))
            words = self.tr("The file as it is will be kept as “{name}” beside it.")
            self.save.setToolTip(words.format(name=name_aside(desk.held.folder)))
        self.form.show_brief(brief, desk.held.work, desk.held.rubric.most)
        typed = pending.of(self.NAME)
        if isinstance(typed, dict):
            self.form.type_again(typed)

    def show_first(self) -> None:
        """Give the keyboard to the first setting."""
        self.form.fields["title"].set_focus()

    def typed(self) -> dict[str, str] | None:
        """What was changed and is not saved."""
        return None if self._saved else self.form.typed() or None

    def save_now(self) -> bool:
        """Save before this returns; what is in the way is said."""
        if self._wrong():
            return False
        self._desk.finish()
        try:
            self._save_brief(self.form.brief)
        except Exception as error:  # the disk, the journal, the brief in place: all are told
            self._failed(error)
            return False
        self._saved = True
        return True

    def _save_brief(self, brief: Brief) -> None:
        """Save on any thread; a file that was seen not to be readable is put aside first."""
        held = self._desk.held
        if is_unreadable(self._odd) and is_unreadable(read_brief(held.folder / BRIEF_NAME)[1]):
            put_aside(held.folder)
        held.save_brief(brief)

    def _wrong(self) -> bool:
        self.form.judge()
        if self.form.troubles:
            self.form.show_trouble()
        return bool(self.form.troubles)

    def _say(self) -> None:
        words = self.form.wrong() or "\n".join(said(one.sentence) for one in self._odd)
        self.trouble.setText(words)
        self.trouble.setVisible(bool(words))
        self._offer()

    def _offer(self) -> None:
        unsaved = bool(self.form.typed())
        may = not self._desk.held.read_only
        self.save.setEnabled(may and (unsaved or bool(self._odd)))
        bring_back = bool(self._discarded) and not unsaved
        self.discard.setText(
            self.tr("Bring the changes back") if bring_back else self.tr("Discard the changes")
        )
        self.discard.setEnabled(unsaved or bring_back)
        self.given.setText(
            self.tr("For learners, without your unsaved changes:")
            if unsaved
            else self.tr("For learners:")
        )

    def _discard(self) -> None:
        """Back to what is saved; pressed again, what was discarded comes back."""
        typed = self.form.typed()
        if typed:
            self._discarded = typed
            self.form.forget_typed()
        else:
            again, self._discarded = self._discarded, {}
            self.form.type_again(again)
        self.form.fields["title"].set_focus()

    def _save(self) -> None:
        if self._wrong():
            return
        brief = self.form.brief
        self.save.setEnabled(False)
        self._pending.save(
            self,
            self._desk,
            lambda _progress, _stop: self._save_brief(brief),
            done=self._leave_saved,
            failed=self._failed,
        )

    def _leave_saved(self) -> None:
        self._saved = True
        self.left.emit()

    def _failed(self, error: Exception) -> None:
        self.save.setEnabled(True)
        self.trouble.setText(plainly(error))
        self.trouble.show()
