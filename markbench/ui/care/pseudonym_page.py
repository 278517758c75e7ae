"""Marking under numbers: make the copy, keep the key, bring the marks home."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QFileDialog
from shiboken6 import isValid

from markbench.ui.care.sheet import CareSheet
from markbench.ui.desk import Desk
from markbench.ui.look.said import said
from markbench.ui.look.theme import Theme
from markbench.ui.mishaps import plainly
from markbench.ui.parts import button, label

if TYPE_CHECKING:
    from markbench.session.pseudonyms import Copied

ENDING = ".markbench-key"


class PseudonymPage(CareSheet):
    """``left``: back to the class."""

    left = Signal()

    def __init__(self, desk: Desk, theme: Theme) -> None:
        super().__init__(
            theme,
            self.tr("Mark under numbers"),
            self.tr(
                "A copy of the class in which everybody is a number, to be marked on a machine "
                "that never sees the names. The key lies in a file of its own: keep it elsewhere, "
                "and do not lose it. At the end the marks are brought home into this class, with "
                "the signatures they were made with."
            ),
        )
        self._desk = desk
        goes = self.tr(
            "Taken out: names and ids in folder and file names and in tables; the tags of photos "
            "and videos, and the videos' sound. Reports and files that nobody owns stay behind. "
            "Marks made so far stay here."
        )
        stays = self.tr(
            "Not taken out, and not to be: faces, hands and rooms; handwriting, and names written "
            "on what is pictured; a learner's way of writing."
        )
        self.copy = button(self.tr("Make the copy…"), "deed", self.ask_and_copy)
        self.home = button(self.tr("Bring the marks of a copy home…"), "", self.ask_and_bring)
        self.home.setEnabled(not desk.held.read_only)
        self.told = label(wrap=True)
        desk.turned.connect(self._say_no_more)  # a method: it ends with the page
        for part in (label(goes, wrap=True), label(stays, wrap=True), self.told):
            self.column.addWidget(part)
        self.column.addStretch(1)
        self.foot.addStretch(1)
        for control in (
            button(self.tr("Back"), "", self.left.emit),
            self.home,
            self.copy,
        ):
            self.foot.addWidget(control)

    def ask_and_copy(self) -> None:
        """Ask where the copy and the key shall lie, and make both."""
        folder = self._desk.held.folder
        near = folder.with_name(f"{folder.name} under numbers")
        place = QFileDialog.getExistingDirectory(
            self, self.tr("An empty folder for the copy"), str(near.parent)
        )
        if not place:
            return
        key, _ = QFileDialog.getSaveFileName(
            self,
            self.tr("Where the key shall be kept"),
            str(Path.home() / f"{folder.name}{ENDING}"),
            f"*{ENDING}",
        )
        if key:
            self.make(Path(place), Path(key))

    def make(self, place: Path, key: Path) -> None:
        """Make the copy and the key."""
        from markbench.session.pseudonyms import make_copy

        held = self._desk.held
        self._begin(self.tr("Copying…"))
        self._desk.do_long(
            self,
            lambda progress, _stop: make_copy(held, place, key, progress=progress),
            done=self._copied,
            failed=lambda error: self._end(plainly(error)),
            progress=lambda at, of, _what: self._begin(f"{at} / {of}"),
        )

    def ask_and_bring(self) -> None:
        """Ask for a copy and its key, and bring its marks home."""
        place = QFileDialog.getExistingDirectory(
            self, self.tr("The copy that was marked"), str(self._desk.held.folder.parent)
        )
        if not place:
            return
        key, _ = QFileDialog.getOpenFileName(
            self, self.tr("Its key"), str(Path.home()), f"*{ENDING}"
        )
        if key:
            self.bring(Path(place), Path(key))

    def bring(self, place: Path, key: Path) -> None:
        """Bring the marks of a copy home."""
        from markbench.session.pseudonyms import bring_home

        held = self._desk.held
        self._begin(self.tr("Bringing home…"))
        words = self.tr("✓ {n} decisions brought home.")
        self._desk.do_long(
            self,
            lambda _progress, _stop: bring_home(held, place, key),
            done=lambda count: self._end(words.format(n=count)),
            failed=lambda error: self._end(plainly(error)),
        )

    def _say_no_more(self) -> None:
        """What was done here was taken back, or something else was."""
        self.told.clear()

    def _copied(self, made: Copied) -> None:
        lines = [
            self.tr("✓ {n} learners, {files} files copied to {folder}.").format(
                n=made.learners, files=made.files, folder=made.folder.name
            )
        ]
        if made.left_out:
            left = "; ".join(f"{count}: {said(why)}" for why, count in made.left_out.items())
            lines.append(self.tr("Left out: {files}.").format(files=left))
        if made.doubts:
            words = self.tr("Perhaps names, and left: {words}.")
            lines.append(words.format(words="; ".join(made.doubts)))
        self._end("\n".join(lines))

    def _begin(self, words: str) -> None:
        if isValid(self):
            self.told.setText(words)
            self.copy.setEnabled(False)
            self.home.setEnabled(False)

    def _end(self, words: str) -> None:
        self.told.setText(words)
        self.copy.setEnabled(True)
        self.home.setEnabled(not self._desk.held.read_only)
