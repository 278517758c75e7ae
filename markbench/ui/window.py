"""The window: one slim bar, and below it the start page, the class, or one learner's sheet."""

from __future__ import annotations

from collections.abc import Sequence
from functools import partial
from pathlib import Path
from typing import TYPE_CHECKING, cast

from PySide6.QtCore import QByteArray, QSettings, Qt
from PySide6.QtGui import QCloseEvent
from PySide6.QtWidgets import (
    QFileDialog,
    QMainWindow,
    QStackedWidget,
    QVBoxLayout,
    QWidget,
)

from markbench.model import Decision
from markbench.ui.actions import DeedList, Deeds, UndoThroughFields
from markbench.ui.background import in_background
from markbench.ui.bar import Bar, saved_at
from markbench.ui.care.doors import CareDoors
from markbench.ui.desk import Desk
from markbench.ui.look.theme import Theme
from markbench.ui.mishaps import plainly
from markbench.ui.moderation.pack_door import ENDING as PACK_ENDING
from markbench.ui.moderation.pack_door import PackDoor
from markbench.ui.newclass.doors import Doors
from markbench.ui.parts import IconButton
from markbench.ui.places import Place, PlaceBar, make_bench, make_page, show_changes
from markbench.ui.reading import Reading
from markbench.ui.renewal import renew
from markbench.ui.start_page import StartPage
from markbench.ui.turned import ask_about_signature, turned
from markbench.ui.unfinished import Pending
from markbench.ui.unsaved import may_let_go
from markbench.ui.workbooks import write_workbooks

if TYPE_CHECKING:
    from markbench.session import Session
    from markbench.ui.bench.page import ClassPage
    from markbench.ui.portfolio.page import PortfolioPage

START, CLASS, SHEET = "start", "class", "sheet"


class Window(QMainWindow):
    """Holds the pages and moves between them; the pages do the rest."""

    def __init__(self, theme: Theme, settings: QSettings, who: str = "") -> None:
        super().__init__()
        self._theme, self._settings, self._who = theme, settings, who
        self.desk: Desk | None = None
        self.bench: ClassPage | None = None
        self.sheet: PortfolioPage | None = None
        self.further: dict[str, Place] = {}
        self._back = ""
        self._reading = Reading(self)
        self.start = StartPage(theme)
        self.start.folder_wanted.connect(self.choose_folder)
        self.start.chosen.connect(self.open_path)
        self.start.stopped.connect(self.stop_opening)
        self.pages = QStackedWidget()
        self.pages.addWidget(self.start)
        self.deeds = Deeds(self)
        self.deed_list = DeedList(self.deeds, theme, self)
        UndoThroughFields(self)
        self.places = PlaceBar()
        self.places.wanted.connect(self.show_place)
        self.places.blind_wanted.connect(self.hide_names)
        self.care = CareDoors(self, theme)
        self.pending = Pending(self)
        self.bar = self._make_bar()
        inside = QWidget()
        inside.setProperty("kind", "bench")
        column = QVBoxLayout(inside)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(0)
        column.addWidget(self.bar)
        column.addWidget(self.pages, 1)
        self.setCentralWidget(inside)
        self.setWindowTitle("Markbench")
        self.setMinimumSize(760, 480)
        self._name_deeds()
        self.doors = Doors(self, theme)
        self.start.new_wanted.connect(self.doors.choose_folder)
        self.pack_door = PackDoor(self, theme)
        self.start.pack_wanted.connect(self.pack_door.choose)
        self._restore()
        self._show_start()

    # --- opening and closing -------------------------------------------------------

    def choose_folder(self) -> None:
        """Ask for a class folder and open it."""
        last = str(self._settings.value("folder", "") or Path.home())
        chosen = QFileDialog.getExistingDirectory(self, self.tr("Choose a class folder"), last)
        if chosen:
            self.open_folder(Path(chosen))

    def open_path(self, path: Path) -> None:
        """Open a class folder or a moderation pack."""
        if path.suffix == PACK_ENDING:
            self.pack_door.open(path)
        else:
            self.open_folder(path)

    def open_folder(self, folder: Path) -> None:
        """Read a class folder in the background and show the class."""
        if not self.let_go():
            return
        self.start.show_opening(folder)
        self._reading.begin(folder, self._who)

    def refuse(self, path: Path, error: Exception) -> None:
        """Say why a class folder or a pack could not be opened, and what can be done."""
        from markbench.store import StoreDamagedError

        can_rebuild = isinstance(error, StoreDamagedError)
        is_pack = path.suffix == PACK_ENDING
        self.start.show_trouble(path, plainly(error), can_rebuild=can_rebuild, is_pack=is_pack)

    def stop_opening(self) -> None:
        """Give up reading."""
        self._reading.stop()
        self._show_start()

    def show_session(self, session: Session) -> None:
        """Show a class that was opened."""
        self._settings.setValue("folder", str(session.folder))
        self._show_desk(Desk(session, self))
        self.bar.say_saved(self.tr("read only") if session.read_only else "")
        self.show_class()
        if session.notice:
            self._say_notice(session.notice)

    def _show_desk(self, desk: Desk) -> None:
        """Make the pages of a class that is on a desk."""
        self.desk, session = desk, desk.held
        desk.saved.connect(lambda at: self._say_saved(f"{at:%H:%M}"))
        # When the desk is done with the command: it is put down for this.
        desk.renewed.connect(partial(renew, self), Qt.ConnectionType.QueuedConnection)
        desk.trouble.connect(self._say_trouble)
        desk.trouble.connect(lambda _words: self._show_blind())
        desk.trouble.connect(lambda _words: self._offer_undo())
        desk.changed.connect(lambda _learner: self._offer_undo())
        desk.turned.connect(self._say_turned)
        desk.unsure.connect(self._ask_sure)
        desk.reopening_wanted.connect(self._lead_to_sign_off)
        desk.changed.connect(lambda _learner: self._show_blind())
        self._show_blind()
        self.bench = make_bench(self)
        self.pages.addWidget(self.bench)
        # The class first: where there is no room for all, its end is cut.
        self.bar.say_title(f"{session.folder.name}  ·  {session.brief.title}")
        self.care.remind()
        self._reading.follow_up(desk)

    def _lead_to_sign_off(self) -> None:
        from markbench.ui.moderation.page import ModerationPage

        self.show_place("moderation")
        page = self.further["moderation"]
        if isinstance(page, ModerationPage):
            page.go_to("signing")

    def turn_blind(self) -> None:
        """Hide who is who, or show it again."""
        if self.desk is not None:
            self.hide_names(not self.desk.blind)

    def write_out(self) -> None:
        """Write the workbook and the mark sheet beside the class's work."""
        if self.desk is None:
            return
        self._settle()
        session = self.desk.held  # what goes out bears names
        self._say_notice(self.tr("Writing the workbook…"))
        self.desk.finish()
        in_background(
            self,
            lambda _progress, _stop: write_workbooks(session),
            done=lambda words: self._say_notice(words),
            failed=lambda error: self._say_trouble(plainly(error)),
        )

    def let_go(self) -> bool:
        """Close the class, unless something said is not saved and the person keeps it open."""
        self._settle()
        if not self.doors.may_leave():
            return False
        desk = self.desk
        if desk is not None and not (self.pending.may_let_go() and may_let_go(self, desk)):
            return False
        self.close_class()
        return True

    def close_class(self) -> None:
        """Write what is pending and let the class go."""
        desk = self.desk
        self._leave_pages()
        if desk is not None:
            desk.close()
            desk.deleteLater()
        self.care.remind()
        self.bar.say_title("")
        self.bar.say_saved("")
        self.bar.go_on()
        self._show_start()
        self.pending.forget()

    def _leave_pages(self) -> None:
        """Take the pages of the class away; what was typed in them is passed on."""
        self._settle()
        if self.desk is not None:
            self._reading.forget_class()
        for page in (self.bench, self.sheet, *self.further.values()):
            if isinstance(page, QWidget):
                self.pages.removeWidget(page)
                page.deleteLater()
        self.desk = self.bench = self.sheet = None
        self.further.clear()

    def closeEvent(self, event: QCloseEvent) -> None:
        """Remember size and place; nothing said is lost."""
        if not self.let_go():
            event.ignore()
            return
        self._settings.setValue("geometry", self.saveGeometry())
        self.stop_opening()
        super().closeEvent(event)

    # --- moving about --------------------------------------------------------------

    def _show_start(self) -> None:
        last = str(self._settings.value("folder", "") or "")
        self.start.show_empty(Path(last) if last else None)
        self._go(START, self.start)

    def show_class(self) -> None:
        """The class page; a viewer that is open is closed first."""
        if self.bench is None:
            return
        if self.sheet is not None and self.sheet.isVisible() and self.sheet.shut_layer():
            return
        self._settle()
        self._back = ""
        self._go(CLASS, self.bench)
        self.bench.show_first()

    def show_place(self, place: str) -> None:
        """One of the places of the bar."""
        if self.bench is None or self.desk is None:
            return
        if place == CLASS:
            self.show_class()
            return
        self._settle()
        self._back = ""
        if place not in self.further:
            page = make_page(self, place)
            self.pages.addWidget(page)
            self.further[place] = cast(Place, page)
        self._go(place, cast(QWidget, self.further[place]))
        self.further[place].show_page()

    def open_from(self, place: str, learner: str) -> None:
        """One learner's sheet, with the way back to ``place``."""
        self._settle()
        self.open_learner(learner)
        self._back = place

    def go_back(self) -> None:
        """To where one came from: a viewer's sheet, a place of the bar, the class."""
        if self.sheet is not None and self.sheet.isVisible() and self.sheet.shut_layer():
            return
        self.show_place(self._back or CLASS)

    def hide_names(self, on: bool) -> None:
        """Mark without names, or with them again."""
        if self.desk is not None:
            self._settle()
            self.desk.hide_names(on)

    def _show_blind(self) -> None:
        self.places.show_blind(self.desk is not None and self.desk.blind)

    def _settle(self) -> None:
        """Pass on whatever was typed, on any page."""
        if self.sheet is not None:
            self.sheet.margin.settle()
        for page in self.further.values():
            page.settle()

    def open_learner(self, learner: str) -> None:
        """One learner's sheet."""
        if self.bench is None:
            return
        sheet = self.make_sheet()
        if learner != sheet.learner:
            self._leave_words()
        order = self.bench.order.learners()
        at = order.index(learner) if learner in order else 0
        everybody = len(self.bench.model.rows)
        place = self.tr("{n} of {of}")
        if len(order) < everybody:
            place = self.tr("{n} of {of} shown ({all} in the class)")
        place = place.format(n=at + 1, of=max(len(order), 1), all=everybody)
        sheet.show_learner(learner, place)
        if self.pages.currentWidget() is not sheet:
            self._go(SHEET, sheet)
            sheet.table.setFocus()
        if at + 1 < len(order):
            sheet.prepare(order[at + 1])

    def step(self, by: int) -> None:
        """The next learner in the order of the class page, or the one before."""
        if self.bench is None or self.sheet is None or not self.sheet.learner:
            return
        order = self.bench.order.learners()
        here = self.sheet.learner
        at = order.index(here) + by if here in order else 0
        if 0 <= at < len(order):
            self.open_learner(order[at])
            return
        self.show_class()
        first, last = self.tr("That was the first one."), self.tr("That was the last one.")
        self._say_notice(first if at < 0 else last)

    def _leave_words(self) -> None:
        """What was said is left behind, unless something still waits to be saved."""
        if self.desk is None or not self.desk.unsaved:
            self.bar.go_on()

    def _go(self, place: str, page: QWidget) -> None:
        if page is not self.pages.currentWidget():
            self._leave_words()
        if self.bench is not None and self.sheet is not None and self.sheet.isVisible():
            self.bench.grid.choose(self.sheet.learner)
        self.pages.setCurrentWidget(page)
        self.deeds.go_to(place, page)
        self._offer_undo()
        self.places.show_place(place)
        self.bar.setVisible(place != START)

    def make_sheet(self) -> PortfolioPage:
        """The page for one learner, made when it is first wanted."""
        if self.sheet is None:
            from markbench.ui.portfolio.page import PortfolioPage

            assert self.desk is not None
            self.sheet = PortfolioPage(self.desk, self._theme)
            self.sheet.left.connect(self.show_class)
            self.sheet.moved.connect(self.step)
            self.sheet.said.connect(self._say_notice)
            self.sheet.changes_wanted.connect(lambda learner: show_changes(self, learner))
            self.pages.addWidget(self.sheet)
        return self.sheet

    # --- bar and actions -----------------------------------------------------------

    def _make_bar(self) -> Bar:
        self.undo_button = IconButton(self._theme, "undo", self.tr("Undo"), self._undo)
        self.redo_button = IconButton(self._theme, "redo", self.tr("Redo"), self._redo)
        words = self.tr("Everything that can be done (F1)")
        find = IconButton(self._theme, "list", words, self.deed_list.open_list)
        light = IconButton(self._theme, "light", self.tr("Light or dark"), self._turn_light)
        tools = (self.care.overdue, self.undo_button, self.redo_button, light, find)
        return Bar(self._theme, self.places, tools, tuple(self.pending.buttons.values()))

    def _name_deeds(self) -> None:
        from markbench.ui.deeds import name_deeds

        name_deeds(self, self.deeds, self._theme)

    def _undo(self) -> None:
        self._settle()  # what was typed a moment ago is the last thing said
        desk = self.desk or self.pack_door.desk or self.doors.desk
        if desk is not None:
            desk.undo()

    def _say_turned(self, step: Sequence[Decision], again: bool) -> None:
        # A file is told of when its pages are made anew.
        if self.desk is not None and all(d.kind != "file" for d in step):
            self._say_notice(turned(step, self.desk.session, again=again))

    def _ask_sure(self, again: bool) -> None:
        desk = self.desk
        if desk is not None:
            move = partial(desk.redo if again else desk.undo, sure=True)
            ask_about_signature(self, desk.signed is not None, move)

    def _redo(self) -> None:
        self._settle()
        desk = self.desk or self.pack_door.desk or self.doors.desk
        if desk is not None:
            desk.redo()

    def _turn_light(self) -> None:
        self._theme.choose(not self._theme.dark)

    def _offer_undo(self) -> None:
        desk = self.desk or self.pack_door.desk or self.doors.desk
        session = desk.session if desk is not None else None
        self.undo_button.setEnabled(session is not None and session.can_undo)
        self.redo_button.setEnabled(session is not None and session.can_redo)

    def _say_saved(self, when: str) -> None:
        self.bar.say_saved(saved_at(when))

    def _say_notice(self, words: str) -> None:
        self.bar.say_notice(words)

    def _say_trouble(self, words: str) -> None:
        self.bar.say_trouble(words)

    def _restore(self) -> None:
        kept = self._settings.value("geometry")
        if not (isinstance(kept, QByteArray) and self.restoreGeometry(kept)):
            self.resize(1280, 800)
        self.setWindowState(self.windowState() & ~Qt.WindowState.WindowFullScreen)
