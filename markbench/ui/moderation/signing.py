"""Sign-off and reopening, and the record that is written of it all."""

from __future__ import annotations

from pathlib import Path

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QCheckBox, QFileDialog

from markbench.session.moderating import reopen, sign_off
from markbench.ui.background import in_background
from markbench.ui.desk import Desk
from markbench.ui.flow import FlowLayout
from markbench.ui.look.dates import day_and_time
from markbench.ui.mishaps import plainly
from markbench.ui.moderation.paper import Leads, Paper, line
from markbench.ui.moderation.standing import Standing
from markbench.ui.moderation.words import moved_words, unmarked_words
from markbench.ui.parts import button, label, restyle


class SigningPaper(Paper):
    """``said`` and ``trouble`` carry words for the bar, ``opened`` a learner."""

    opened = Signal(str)
    said = Signal(str)
    trouble = Signal(str)

    def __init__(self, desk: Desk) -> None:
        super().__init__(self.tr("Sign-off and record"))
        self._desk = desk
        self.leads = {name: Leads(self.opened) for name in ("unmarked", "moved", "changed")}
        self.state = label(wrap=True)
        self.moved = label(kind="look", wrap=True)
        self.note = line(self.tr("A note to the signature (may stay empty)"))
        self.despite = QCheckBox(self.tr("Sign although questions are open"))
        self.sign = button(self.tr("Sign off the marks"), "deed", self._sign)
        self.why = line(self.tr("Reason for reopening"))
        self.reopen = button(self.tr("Reopen the marks"), "", self._reopen)
        self.record = button(self.tr("Write the record…"), "", self.ask_and_write)
        self.why.textChanged.connect(lambda text: self.reopen.setEnabled(bool(text.strip())))
        deeds = FlowLayout(spacing=6)
        for control in (self.sign, self.reopen, self.record):
            deeds.addWidget(control)
        for part in (
            self.state,
            *self.leads.values(),
            self.moved,
            self.note,
            self.despite,
            self.why,
        ):
            self.column.addWidget(part)
        self.column.addLayout(deeds)
        self.despite.toggled.connect(lambda _on: self._offer())

    def show_standing(self, now: Standing) -> None:
        """Whether the marks are signed, and what stands in the way."""
        self._now = now
        signed = now.signed
        for part in (self.note, self.sign):
            part.setVisible(signed is None)
        for part in (self.why, self.reopen):
            part.setVisible(signed is not None)
        # One filled deed at a time: the sample comes before the signature.
        restyle(self.sign, "kind", "" if now.sample is None else "deed")
        self.despite.setVisible(signed is None and bool(now.open))
        self.moved.setVisible(bool(now.moved))
        for name, lead in self.leads.items():
            lead.show_learners(self._words(name, now), getattr(now.ahead, name), now.names)
        if signed is not None:
            self.state.show()
            words = self.tr("✓ signed off by {who}, {when}").format(
                who=signed.by, when=day_and_time(signed.at.astimezone())
            )
            self.state.setText(f"{words}. {signed.note}" if signed.note else f"{words}.")
            moved = [
                f"{now.names.get(x, x)} {_told(was)} → {_told(is_now)}"
                for x, (was, is_now) in now.moved.items()
            ]
            self.moved.setText(self.tr("Moved since: {who}").format(who="; ".join(moved)))
            self.reopen.setEnabled(bool(self.why.text().strip()))
            return
        words = self._stands_in_the_way(now)
        self.state.setText(words)
        self.state.setVisible(bool(words))
        self._offer()

    def _stands_in_the_way(self, now: Standing) -> str:
        """Words over those to be looked at; empty where they say enough."""
        open_between = len(now.open)
        if open_between == 1:
            return self.tr("1 question is open between the markers.")
        if open_between:
            words = self.tr("{n} questions are open between the markers.")
            return words.format(n=open_between)
        ahead = now.ahead
        if ahead.unmarked:
            return ""
        if ahead.moved or ahead.changed:
            return self.tr("The marks can be signed. Look first at:")
        return self.tr("Nothing stands in the way of signing.")

    def _words(self, name: str, now: Standing) -> str:
        """What is to be looked at in a kind of learners."""
        if name == "changed":
            return self.tr("≠ Work changed since it was marked:")
        words = unmarked_words if name == "unmarked" else moved_words
        return f"{words(len(getattr(now.ahead, name)))}:"

    def _offer(self) -> None:
        unmarked = self._now.ahead.unmarked
        self.sign.setEnabled(not unmarked and (not self._now.open or self.despite.isChecked()))

    def _sign(self) -> None:
        held, note, despite = self._desk.held, self.note.text(), self.despite.isChecked()
        self._desk.do(lambda _session: sign_off(held, note, despite_open=despite))
        self.note.setText("")  # with nothing left for its own undo

    def _reopen(self) -> None:
        held, why = self._desk.held, self.why.text()
        self._desk.do(lambda _session: reopen(held, why))
        self.why.setText("")  # with nothing left for its own undo

    def ask_and_write(self) -> None:
        """Ask for a place and write the record there, off the main thread."""
        session = self._desk.held
        out = session.folder / "markbench-out"
        start = (out if out.is_dir() else session.folder.parent) / "moderation-record.pdf"
        chosen, _ = QFileDialog.getSaveFileName(
            self, self.tr("Write the record"), str(start), "*.pdf"
        )
        if not chosen:
            return
        path = Path(chosen)
        if path.suffix.casefold() != ".pdf":
            path = path.with_name(path.name + ".pdf")
        self._desk.finish()
        self.said.emit(self.tr("Writing the record…"))

        def work(_progress: object, _stop: object) -> str:
            from markbench.export.record import write_record
            from markbench.session.record_of import moderation_record

            write_record(path, moderation_record(session))
            return path.name

        in_background(
            self,
            work,
            done=lambda name: self.said.emit(self.tr("✓ written: {file}").format(file=name)),
            failed=lambda error: self.trouble.emit(plainly(error)),
        )


def _told(result: tuple[float | None, str]) -> str:
    total, grade = result
    return f"{'–' if total is None else f'{total:g}'}{f' ({grade})' if grade else ''}"
