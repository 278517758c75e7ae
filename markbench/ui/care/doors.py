"""The ways from the window to the pages that look after a class."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtCore import QObject

from markbench.ui.background import in_background
from markbench.ui.look.dates import day
from markbench.ui.look.theme import Theme
from markbench.ui.moderation.pack_door import ENDING as PACK_ENDING
from markbench.ui.parts import button
from markbench.ui.places import FURTHER

if TYPE_CHECKING:
    from markbench.store import Salvaged
    from markbench.ui.window import Window

CARE = "care"
"""The place of pages that do something to the class, which Undo takes back."""
_CLASS = " ".join(("class", "sheet", *FURTHER))


class CareDoors(QObject):
    """Opens the pages over the others; they are left as any such page is."""

    def __init__(self, window: Window, theme: Theme) -> None:
        super().__init__(window)
        self._window, self._theme = window, theme
        window.start.rebuild_wanted.connect(self.rebuild)
        deeds = window.deeds
        deeds.add(self.tr("Copies of this class: go back to one"), "", self.open_copies, _CLASS,
                  self.tr("backup restore"))  # fmt: skip
        deeds.add(self.tr("Remove photos and videos after sign-off…"), "", self.open_purge, _CLASS,
                  self.tr("delete purge films privacy"))  # fmt: skip
        deeds.add(self.tr("Mark under numbers: a copy without names, and its marks home"), "",
                  self.open_pseudonyms, _CLASS)  # fmt: skip
        deeds.add(self.tr("About Markbench: version, licences, what leaves the machine"), "",
                  self.open_about)  # fmt: skip
        #: Shown in the bar once photos and films are kept past their day.
        self.overdue = button("", "quiet", self.open_purge)
        self.overdue.hide()

    def open_copies(self) -> None:
        """Show the copies of the open class."""
        from markbench.ui.care.restore_page import RestorePage

        desk = self._window.desk
        if desk is not None:
            page = RestorePage(desk, self._theme)
            page.left.connect(self._window.doors.leave)
            self._window.doors.show_over(page, CARE)

    def open_purge(self) -> None:
        """Show what of the evidence would be removed, and what would stay."""
        from markbench.ui.care.purge_page import PurgePage

        desk = self._window.desk
        if desk is not None:
            page = PurgePage(desk, self._theme)
            page.left.connect(self._window.doors.leave)
            page.purged.connect(self.remind)
            self._window.doors.show_over(page, CARE)

    def open_pseudonyms(self) -> None:
        """Make a copy under numbers, or bring its marks home."""
        from markbench.ui.care.pseudonym_page import PseudonymPage

        desk = self._window.desk
        if desk is not None:
            page = PseudonymPage(desk, self._theme)
            page.left.connect(self._window.doors.leave)
            self._window.doors.show_over(page, CARE)

    def open_about(self) -> None:
        """Say what Markbench is and what it is made of."""
        from markbench.ui.care.about_page import AboutPage

        page = AboutPage(self._theme)
        page.left.connect(self._window.doors.leave)
        self._window.doors.show_over(page)

    def remind(self) -> None:
        """Say in the bar that photos and films are kept past their day, if they are."""
        from markbench.session.retention import overdue

        desk = self._window.desk
        late = None if desk is None else overdue(desk.held)
        self.overdue.setVisible(late is not None)
        if late is not None:
            words = self.tr("Photos and videos past their day")
            self.overdue.setText(words)
            told = self.tr("They were to be kept until {day}; {n} are still here.")
            self.overdue.setToolTip(told.format(day=day(late.until), n=late.count))
        self._window.bar.renew()

    def rebuild(self, path: Path) -> None:
        """Make the damaged file of a class or a pack anew from its copies, then open it."""
        window = self._window
        window.start.show_opening(path)

        def work(_progress: object, _stop: object) -> Salvaged:
            from markbench.session.restoring import rebuild, rebuild_second_marks

            make = rebuild_second_marks if path.suffix == PACK_ENDING else rebuild
            return make(path, window._who)

        def done(made: Salvaged) -> None:
            window.open_path(path)
            window._say_notice(str(made))

        in_background(
            self, work, done=done,
            failed=lambda error: window.refuse(path, error),
        )  # fmt: skip
