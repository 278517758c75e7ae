"""Removing a class's photos and films: what goes, what stays, and a person's word."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QCheckBox
from shiboken6 import isValid

from markbench.ui.care.sheet import CareSheet
from markbench.ui.desk import Desk
from markbench.ui.look.said import figures
from markbench.ui.look.theme import Theme
from markbench.ui.mishaps import plainly
from markbench.ui.moderation.paper import Roll
from markbench.ui.parts import button, label

if TYPE_CHECKING:
    from markbench.session.purging import Plan, Purged

_ROLL = 560  # px at 100 % text: what the table is read at with ease


class PurgePage(CareSheet):
    """``left``: back to the class; ``purged``: files went, the class is as it now is."""

    left = Signal()
    purged = Signal()

    def __init__(self, desk: Desk, theme: Theme) -> None:
        super().__init__(
            theme,
            self.tr("Remove photos and videos"),
            self.tr(
                "Once the marks are signed off, the learners' photos and videos can be removed "
                "from the class folder, from zip files in it and from what Markbench keeps to be "
                "quick. Marks, readings, what was measured in photos and videos, feedback and the "
                "journal stay, and the class still opens and is exported as before."
            ),
        )
        self._desk = desk
        self.plan: Plan | None = None
        self.everything = QCheckBox(self.tr("Also tables, reports and all else handed in"))
        self.everything.toggled.connect(lambda _on: self.refresh())
        self.why_not = label(kind="look", wrap=True)
        headings = (
            self.tr("What becomes of it"),
            self.tr("Kind"),
            self.tr("Files"),
            self.tr("Size"),
        )
        self.roll = Roll(headings, self.tr("What goes and what stays"))
        self.roll.setSelectionMode(Roll.SelectionMode.NoSelection)
        self.roll.setMaximumWidth(theme.px(_ROLL))
        self._warning = label(
            self.tr(
                "This cannot be undone: nothing here brings them back, and nobody can look at them "
                "again after an appeal. Copies elsewhere, such as the school's backups, a share, "
                "phones or mailboxes, are not reached."
            ),
            wrap=True,
        )
        self.sure = QCheckBox(self.tr("I have seen what goes, and want it removed for good"))
        self.sure.toggled.connect(lambda _on: self._offer())
        self.done = label(kind="ink", wrap=True)
        parts = (self.everything, self.why_not, self.roll, self._warning, self.sure, self.done)
        for part in parts:
            self.column.addWidget(part)
        self.column.addStretch(1)
        self.go = button("", "deed", self.remove)
        self.foot.addStretch(1)
        self.foot.addWidget(button(self.tr("Leave them"), "", self.left.emit))
        self.foot.addWidget(self.go)
        self.refresh()

    def refresh(self) -> None:
        """Show what would go and what would stay."""
        from markbench.session.purging import plan

        self._show(plan(self._desk.held, everything=self.everything.isChecked()))

    def remove(self) -> None:
        """Remove what is shown, as one command after those given before."""
        from markbench.session.purging import purge

        shown, held = self.plan, self._desk.held
        if shown is None or not self.sure.isChecked():
            return
        self.go.setEnabled(False)
        self.everything.setEnabled(False)
        self.sure.setEnabled(False)
        self.done.setText(self.tr("Removing…"))
        self._desk.do_long(
            self,
            lambda progress, _stop: purge(held, shown, progress=progress),
            done=self._removed,
            failed=self._failed,
            progress=self._moved,
        )

    def _moved(self, _at: int, _of: int, file: str) -> None:
        if isValid(self):  # the page may have been left meanwhile
            self.done.setText(self._desk.hidden(file))

    def _removed(self, done: Purged) -> None:
        words = self.tr("✓ {n} files removed, {size}. The journal names each with its digest.")
        if done.count == 1:
            words = self.tr("✓ 1 file removed, {size}. The journal names it with its digest.")
        told = words.format(n=done.count, size=_size(done.size_bytes))
        if done.left:
            still = self.tr("Still there: {files}")
            told += "\n" + still.format(files="; ".join(f"{f}: {w}" for f, w in done.left.items()))
        self._end(told)
        self.purged.emit()

    def _failed(self, error: Exception) -> None:
        self._end(plainly(error))

    def _end(self, words: str) -> None:
        self.sure.setChecked(False)
        for control in (self.sure, self.everything):
            control.setEnabled(True)
        self.refresh()
        self.done.setText(words)

    def _show(self, shown: Plan) -> None:
        self.plan = shown
        self.why_not.setText(shown.why_not)
        self.why_not.setVisible(bool(shown.why_not))
        heaps = [
            *((self.tr("goes"), heap) for heap in shown.goes),
            *((self.tr("stays"), heap) for heap in shown.stays),
        ]
        self.roll.fill(
            [("", (w, self._name(h.kind), str(h.count), _size(h.size_bytes))) for w, h in heaps]
        )
        self.roll.setVisible(bool(heaps))
        for part in (self._warning, self.sure):
            part.setVisible(not shown.why_not)
        words = self.tr("Remove {n} files, {size}, for good")
        if shown.count == 1:
            words = self.tr("Remove 1 file, {size}, for good")
        self.go.setText(words.format(n=shown.count, size=_size(shown.size_bytes)))
        self.go.setVisible(bool(shown.count))
        self._offer()

    def _offer(self) -> None:
        shown = self.plan
        self.go.setEnabled(shown is not None and not shown.why_not and self.sure.isChecked())

    def _name(self, kind: str) -> str:
        return {
            "setup_photo": self.tr("photos of the set-up"),
            "selfie": self.tr("photos of the learner"),
            "photo": self.tr("photos not told apart"),
            "swing_video": self.tr("swing videos"),
            "readings": self.tr("tables of readings"),
            "report": self.tr("written reports"),
            "pack": self.tr("moderation packs, which hold copies of photos"),
        }.get(kind, self.tr("other files"))


def _size(size_bytes: int) -> str:
    if size_bytes >= 50_000:
        return figures(f"{size_bytes / 1e6:.1f} MB")
    return figures(f"{size_bytes / 1e3:.1f} kB")
