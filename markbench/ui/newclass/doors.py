"""The ways from the window to the pages about a class rather than in it."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, Qt, QUrl
from PySide6.QtGui import QDesktopServices, QKeySequence
from PySide6.QtWidgets import QApplication, QFileDialog, QWidget

from markbench.ui.look.theme import Theme
from markbench.ui.mishaps import plainly
from markbench.ui.parts import first_stop
from markbench.ui.places import FURTHER
from markbench.ui.unfinished import leave_field

if TYPE_CHECKING:
    from markbench.session import Session
    from markbench.ui.newclass.whose import LooseDesk
    from markbench.ui.phrases.drawer import PhraseDrawer
    from markbench.ui.window import Window

ABOUT, NEW = "about", "new"
_CLASS = " ".join(("class", "sheet", *FURTHER))


class Doors(QObject):
    """Opens a page over the others and takes it away when another is shown."""

    def __init__(self, window: Window, theme: Theme) -> None:
        super().__init__(window)
        self._window, self._theme = window, theme
        self.page: QWidget | None = None
        self._place = ABOUT
        self.drawer: PhraseDrawer | None = None
        window.pages.currentChanged.connect(lambda _i: self._sweep())
        self._name_deeds()

    def _name_deeds(self) -> None:
        deeds = self._window.deeds
        new = QKeySequence.StandardKey.New
        deeds.add(self.tr("Begin a new class…"), new, self.choose_folder)
        deeds.add(self.tr("Change what the class was asked to do"), "", self.open_brief, _CLASS,
                  self.tr("settings brief dates deadline grades place"))  # fmt: skip
        deeds.add(self.tr("Write the rubric"), "", self.open_rubric, _CLASS,
                  self.tr("criteria levels edit"))  # fmt: skip
        deeds.add(self.tr("Your phrases"), ("Ctrl+J",), self.open_phrases, "sheet")
        deeds.add(self.tr("Leave this page"), "Esc", self.leave_step, f"{ABOUT} {NEW} care")
        deeds.add(self.tr("Write a table of readings for learners…"), "", self.give_template,
                  _CLASS, self.tr("template form spreadsheet"))  # fmt: skip
        deeds.add(self.tr("Write a task sheet for learners…"), "", self.give_task_sheet, _CLASS,
                  self.tr("print handout pdf instructions"))  # fmt: skip

    # --- pages -----------------------------------------------------------------------

    def choose_folder(self) -> None:
        """Ask for the folder of a new class and look at it."""
        window = self._window
        words = self.tr("Choose the folder that holds the class's work")
        chosen = QFileDialog.getExistingDirectory(window, words, str(Path.home()))
        if chosen:
            self.look_at(Path(chosen))

    def look_at(self, folder: Path) -> None:
        """Look at the folder of a new class."""
        from markbench.ui.newclass.page import NewClassPage

        if not self._window.let_go():
            return
        page = NewClassPage(self._theme, self._window._who)
        page.begun.connect(self._window.open_folder)
        page.left.connect(self.leave)
        page.folder_wanted.connect(self.choose_folder)
        page.settled.connect(self._window._offer_undo)
        self.show_over(page, NEW)
        page.look_at(folder)

    def open_brief(self) -> None:
        """Show the brief of the open class."""
        desk = self._window.desk
        if desk is None:
            return
        from markbench.ui.newclass.brief_page import BriefPage

        if isinstance(self.page, BriefPage):
            return
        self._window._settle()
        page = BriefPage(desk, self._theme, self._window.pending)
        page.left.connect(self.leave)
        page.table_wanted.connect(self.give_template)
        page.sheet_wanted.connect(self.give_task_sheet)
        self.show_over(page)
        page.show_first()

    def open_rubric(self) -> None:
        """Show the rubric of the open class, to be written."""
        desk = self._window.desk
        if desk is None:
            return
        from markbench.ui.rubrics.page import RubricPage

        if isinstance(self.page, RubricPage):
            return
        self._window._settle()
        try:
            page = RubricPage(desk, self._theme, self._window.pending)
        except (OSError, ValueError) as error:
            self._window._say_trouble(plainly(error))
            return
        page.left.connect(self.leave)
        self.show_over(page)
        page.show_first()

    def open_phrases(self) -> None:
        """The teacher's phrases, for the criterion that is open on the sheet."""
        desk = self._window.desk
        if desk is None or self._window.sheet is None:
            return
        if self.drawer is None:
            from markbench.ui.phrases.drawer import PhraseDrawer

            drawer = self.drawer = PhraseDrawer(self._window, self._theme)
            desk.closing.connect(drawer.deleteLater)
            desk.closing.connect(lambda: setattr(self, "drawer", None))
        self.drawer.open_for_card()

    def leave_step(self) -> None:
        """Out of a field, else off the page."""
        if not leave_field(self.page):
            self.leave()

    def leave(self) -> None:
        """Back to the class, or to the start where none is open."""
        if not self.may_leave():
            return
        if self._window.bench is not None:
            self._window.show_class()
        else:
            self._window.close_class()

    def may_leave(self) -> bool:
        """Whether the page shown here may go; one that holds something unsaved asks."""
        may_leave = getattr(self.page, "may_leave", None)
        return may_leave is None or bool(may_leave())

    @property
    def desk(self) -> LooseDesk | None:
        """Where the files of a new class are settled, while its page is shown."""
        return getattr(self.page, "desk", None) if self._place == NEW else None

    def show_over(self, page: QWidget, place: str = ABOUT) -> None:
        """Show a page over the others, until another is shown."""
        if not self.may_leave():
            page.deleteLater()
            return
        self._put_away()
        self.page, self._place = page, place
        self._window.places.setVisible(self._window.desk is not None)
        self._window.pages.addWidget(page)
        self._window._go(place, page)
        first, now = first_stop(page), QApplication.focusWidget()
        if first is not None and (now is None or not page.isAncestorOf(now)):
            first.setFocus(Qt.FocusReason.OtherFocusReason)

    def _sweep(self) -> None:
        if self.page is not None and self._window.pages.currentWidget() is not self.page:
            self._window.places.show()
            self._put_away()

    def _put_away(self) -> None:
        """Take the page shown over the others away; what is unsaved on it is kept."""
        page, self.page, self._place = self.page, None, ABOUT
        if page is not None:
            self._window.pending.keep(page)
            self._window.pages.removeWidget(page)
            page.deleteLater()

    # --- what is handed out ----------------------------------------------------------

    def give_template(self) -> None:
        """Write the empty table of readings where the teacher says."""
        from markbench.session.handouts import TEMPLATE_NAME, template_for

        self._give(self.tr("Table of readings"), TEMPLATE_NAME, "xlsx", template_for)

    def give_task_sheet(self) -> None:
        """Write the task sheet where the teacher says."""
        from markbench.session.handouts import TASK_SHEET_NAME, task_sheet_for

        self._give(self.tr("Task sheet"), TASK_SHEET_NAME, "html", task_sheet_for)

    def _give(
        self, title: str, name: str, ending: str, write: Callable[[Path, Path], object]
    ) -> None:
        session = self._session()
        if session is None:
            return
        chosen, _ = QFileDialog.getSaveFileName(
            self._window, title, str(Path.home() / name), f"*.{ending}"
        )
        if not chosen:
            return
        to = Path(chosen)
        try:
            write(session.folder, to)
        except Exception as error:  # said in the bar, whatever it is
            self._window._say_trouble(plainly(error))
            return
        self._window._say_notice(self.tr("✓ written: {name}").format(name=to.name))
        if ending == "html":  # to be looked at and printed, by the system's own means
            QDesktopServices.openUrl(QUrl.fromLocalFile(str(to)))

    def _session(self) -> Session | None:
        desk = self._window.desk
        return desk.held if desk is not None else None
