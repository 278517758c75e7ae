"""What goes back to learners and school, written with the marks that hold."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QCheckBox, QVBoxLayout, QWidget

from markbench.ui.background import in_background
from markbench.ui.desk import Desk
from markbench.ui.flow import FlowLayout
from markbench.ui.look.said import said
from markbench.ui.mishaps import plainly
from markbench.ui.moderation.paper import Paper, line
from markbench.ui.moderation.standing import Standing
from markbench.ui.moderation.words import moved_words, unmarked_words
from markbench.ui.parts import button, label, restyle

if TYPE_CHECKING:
    from markbench.session.going_out import WentOut

_CHANGES_SHOWN = 8


class OutPaper(Paper):
    """``said`` and ``trouble`` carry words for the bar."""

    said = Signal(str)
    trouble = Signal(str)

    def __init__(self, desk: Desk) -> None:
        super().__init__(self.tr("What goes out"))
        self._desk = desk
        self.state = label(wrap=True)
        self.feedback = QCheckBox(self.tr("Feedback sheets (PDF and web page, and all in a zip)"))
        self.feedback.setChecked(True)
        self.roster = QCheckBox(self.tr("OneRoster results for the school's system"))
        self.school = line(self.tr("Id of the school in that system"))
        self.term = line(self.tr("Id of the term in that system"))
        self.record = QCheckBox(self.tr("Moderation record, to be signed"))
        self.audit = QCheckBox(self.tr("List of every decision"))
        self.write = button(self.tr("Write what goes out"), "", self.write_out)
        self.told = label(kind="small", wrap=True)
        #: Why nothing can be written yet, beside the deed.
        self.why = label(kind="small", wrap=True)
        self._ids = QWidget()
        ids = QVBoxLayout(self._ids)
        ids.setContentsMargins(24, 0, 0, 0)
        ids.setSpacing(4)
        for field in (self.school, self.term):
            ids.addWidget(field)
        for part in (self.state, self.feedback, self.roster, self._ids, self.record, self.audit):
            self.column.addWidget(part)
        deeds = FlowLayout(spacing=6)
        deeds.addWidget(self.write)
        self.column.addWidget(self.why)
        self.column.addLayout(deeds)
        self.column.addWidget(self.told)
        self.told.hide()
        self._ids.hide()
        self.roster.toggled.connect(self._ids.setVisible)
        self.roster.toggled.connect(lambda _on: self._offer())
        for field in (self.school, self.term):
            field.textChanged.connect(lambda _text: self._offer())

    def show_standing(self, now: Standing) -> None:
        """Whether what goes out is signed."""
        if now.moved:
            words = self.tr("Nothing can go out: results are not what was signed.")
        elif now.signed is None:
            words = self.tr(
                "The workbook and the mark sheet are always written. The marks are not signed "
                "off yet; what goes out says so."
            )
        else:
            words = self.tr("The workbook and the mark sheet are always written.")
        self.state.setText(words)
        restyle(self.write, "kind", "" if now.signed is None else "deed")
        self._free = not now.moved
        self._offer()

    def _offer(self) -> None:
        named = bool(self.school.text().strip() and self.term.text().strip())
        lacks = self.roster.isChecked() and not named
        self.write.setEnabled(self._free and not lacks)
        self.why.setText(self.tr("The school's system needs both ids. Fill them in, or leave its "
                                 "results out."))  # fmt: skip
        self.why.setVisible(self._free and lacks)

    def write_out(self) -> None:
        """Write it all beside the class's work, off the main thread."""
        session = self._desk.held
        ids = (self.school.text().strip(), self.term.text().strip())
        feedback, roster = self.feedback.isChecked(), self.roster.isChecked()
        audit, record = self.audit.isChecked(), self.record.isChecked()
        self._desk.finish()
        self.write.setEnabled(False)
        self.said.emit(self.tr("Writing what goes out…"))

        def work(_progress: object, _stop: object) -> WentOut:
            from markbench.export import RosterIds
            from markbench.session.going_out import Wanted, write_out

            wanted = Wanted(
                feedback=feedback,
                oneroster=RosterIds(*ids) if roster else None,
                audit=audit,
                record=record,
            )
            return write_out(session, None, wanted)

        in_background(self, work, done=self._tell, failed=self._fail)

    def _tell(self, went: WentOut) -> None:
        self._offer()
        self.said.emit(self.tr("✓ written to {folder}").format(folder=went.folder.name))
        words = []
        if went.unmarked:
            told = self.tr("{what}; their rows say so.")
            words.append(told.format(what=unmarked_words(went.unmarked)))
        if went.moved:
            words.append(f"{moved_words(went.moved)}.")
        if went.sheets is not None:
            sheets = len(went.sheets.sheets)
            told = self.tr("{n} feedback sheets written.")
            if sheets == 1:
                told = self.tr("1 feedback sheet written.")
            words.append(told.format(n=sheets))
        words += [said(one) for one in went.not_sent]
        if went.behind:
            told = self.tr("Texts written for a level that moderation changed: {n}.")
            words.append(told.format(n=len(went.behind)))
            words += [said(one) for one in went.behind[:_CHANGES_SHOWN]]
            words += ["…"] if len(went.behind) > _CHANGES_SHOWN else []
        if went.changes.unreadable:
            words.append(said(went.changes.unreadable))
        elif went.changes.since:
            found = went.changes.found
            told = self.tr("Since the writing of {day}: {n} changes.") if found else self.tr(
                "Nothing has changed since the writing of {day}.")  # fmt: skip
            if len(found) == 1:
                told = self.tr("Since the writing of {day}: 1 change.")
            words.append(told.format(day=went.changes.since, n=len(found)))
            words += [said(str(change)) for change in found[:_CHANGES_SHOWN]]
            words += ["…"] if len(found) > _CHANGES_SHOWN else []
        self.told.setText("\n".join(words))
        self.told.setVisible(bool(words))

    def _fail(self, error: Exception) -> None:
        self._offer()
        self.trouble.emit(plainly(error))
