"""The ways into a moderation pack: a button, an action, the command line, or a file dropped.

A moderator's reply dropped on the window of its class is merged.
"""

from __future__ import annotations

import getpass
from functools import partial
from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtCore import QEvent, QObject
from PySide6.QtGui import QDragEnterEvent, QDropEvent
from PySide6.QtWidgets import QFileDialog, QInputDialog

from markbench.ui.background import in_background
from markbench.ui.look.theme import Theme
from markbench.ui.places import MODERATION

if TYPE_CHECKING:
    from markbench.session.pack_session import PackSession
    from markbench.ui.desk import Desk
    from markbench.ui.moderation.pack_sheet import PackSheet
    from markbench.ui.window import Window

# As in markbench.session.endings, which would bring the whole session along.
ENDING, REPLY = ".markbench-pack", ".markbench-reply"
PACK = "pack"


class PackDoor(QObject):
    """Opens a pack in the window and takes it away when another page is shown."""

    def __init__(self, window: Window, theme: Theme) -> None:
        super().__init__(window)
        self._window, self._theme = window, theme
        self.sheet: PackSheet | None = None
        self.desk: Desk | None = None
        self._asked: tuple[Path | None, str] = (None, "")  # so that to try again asks no more
        window.setAcceptDrops(True)
        window.installEventFilter(self)
        window.pages.currentChanged.connect(lambda _i: self._sweep())
        self._name_deeds()

    def _name_deeds(self) -> None:
        deeds = self._window.deeds
        deeds.add(self.tr("Open a moderation pack…"), ("Ctrl+Shift+O",), self.choose)
        deeds.add(self.tr("Leave the pack"), ("Escape",), self.leave, PACK)
        deeds.add(self.tr("Next learner of the pack"), ("Ctrl+PgDown",),
                  lambda: self._do("on"), PACK)  # fmt: skip
        deeds.add(self.tr("Learner before in the pack"), ("Ctrl+PgUp",),
                  lambda: self._do("back"), PACK)  # fmt: skip
        deeds.add(self.tr("Next criterion"), ("Ctrl+Down",), lambda: self._do("down"), PACK)
        deeds.add(self.tr("Criterion before"), ("Ctrl+Up",), lambda: self._do("up"), PACK)
        deeds.add(self.tr("Show the first marks"), ("Ctrl+Shift+Return",),
                  lambda: self._do("first"), PACK)  # fmt: skip
        deeds.add(self.tr("Send back what was second-marked…"), ("Ctrl+E",),
                  lambda: self._do("send"), PACK)  # fmt: skip
        for number in range(1, 10):
            words = self.tr("Level {n} as your mark").format(n=number)
            deeds.add(words, (f"Ctrl+{number}",), partial(self._level, number), PACK)

    def choose(self) -> None:
        """Ask for a pack and open it."""
        chosen, _ = QFileDialog.getOpenFileName(
            self._window, self.tr("Open a moderation pack"), str(Path.home()), f"*{ENDING}"
        )
        if chosen:
            self.open(Path(chosen))

    def open(self, path: Path) -> None:
        """Ask who moderates, and open a pack in the background."""
        asked, name = self._asked
        who = self._window._who or (name if asked == path else "")
        if not who:
            words = self.tr("Your name, as it shall stand under your second marks")
            who, sure = QInputDialog.getText(
                self._window, self.tr("Second marking"), words, text=getpass.getuser()
            )
            if not sure:
                return
            self._asked = (path, who)
        window = self._window
        if not window.let_go():
            return
        window.start.show_opening(path)

        def work(_progress: object, _stop: object) -> PackSession:
            # Imported here so that the window is up before numpy and scipy are.
            from markbench.session.pack_session import open_pack

            return open_pack(path, who)

        in_background(
            self,
            work,
            done=self._show,
            failed=lambda error: window.refuse(path, error),
        )

    def _take(self, packs: list[Path], replies: list[Path]) -> None:
        if packs:
            self.open(packs[0])
            return
        from markbench.ui.moderation.page import ModerationPage

        self._window.show_place(MODERATION)
        page = self._window.further.get(MODERATION)
        if isinstance(page, ModerationPage):
            for path in replies:
                page.sample.merge_file(path)

    def leave(self) -> None:
        """Back to the start; what she decided is kept beside the pack."""
        if self.sheet is not None and not self.sheet.shut_layer():
            self._window._show_start()

    def close(self) -> None:
        """Let the pack go, when the window closes."""
        self._sweep(closing=True)

    def _show(self, pack: PackSession) -> None:
        from markbench.ui.moderation.pack_desk import PackDesk
        from markbench.ui.moderation.pack_sheet import PackSheet

        window = self._window
        desk = PackDesk(pack, self)
        sheet = PackSheet(desk, self._theme)
        sheet.left.connect(self.leave)
        sheet.said.connect(window._say_notice)
        sheet.trouble.connect(window._say_trouble)
        desk.trouble.connect(window._say_trouble)
        desk.changed.connect(lambda _learner: window._offer_undo())
        desk.saved.connect(lambda at: window._say_saved(f"{at:%H:%M}"))
        self.sheet, self.desk = sheet, desk
        window.bar.say_title(pack.path.name)
        window.places.hide()
        window.pages.addWidget(sheet)
        window._go(PACK, sheet)
        sheet.table.setFocus()

    def _sweep(self, *, closing: bool = False) -> None:
        sheet = self.sheet
        if sheet is None or (not closing and self._window.pages.currentWidget() is sheet):
            return
        self.sheet = None
        sheet.margin.settle()
        if self.desk is not None:
            self.desk.close()
            self.desk.deleteLater()
            self.desk = None
        self._window.pages.removeWidget(sheet)
        sheet.deleteLater()
        self._window.places.show()
        self._window.bar.say_title("")
        self._window.bar.say_saved("")

    def _do(self, what: str) -> None:
        sheet = self.sheet
        if sheet is None:
            return
        if what in ("on", "back"):
            sheet.step(1 if what == "on" else -1)
        elif what in ("down", "up"):
            sheet.margin.step(1 if what == "down" else -1)
        elif what == "send":
            sheet.ask_and_send()
        elif sheet.margin.accept_all.isEnabled():
            sheet.margin.accept_drafts()

    def _level(self, number: int) -> None:
        if self.sheet is not None:
            self.sheet.margin.choose_level(number)

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Take a pack that is dropped on the window."""
        if isinstance(event, QDragEnterEvent | QDropEvent):
            dropped = [url.toLocalFile() for url in event.mimeData().urls()]
            packs = [Path(one) for one in dropped if one.endswith(ENDING)]
            replies = [Path(one) for one in dropped if one.endswith(REPLY)]
            if packs or (replies and self._window.desk is not None):
                event.acceptProposedAction()
                if event.type() == QEvent.Type.Drop:
                    self._take(packs, replies)
                return True
        return super().eventFilter(watched, event)
