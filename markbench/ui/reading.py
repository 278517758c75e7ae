"""A class being read for the window: before it is shown, and what is worked out after that."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, QTimer

from markbench.ui import opening
from markbench.ui.background import Task, in_background
from markbench.ui.desk import Desk
from markbench.ui.mishaps import plainly

if TYPE_CHECKING:
    from markbench.session import Session
    from markbench.ui.window import Window

_IDLE_MS = 250  # the first frame is drawn and nobody has chosen a folder yet
_SHOWN_MS = 30  # the class is on the screen
_GONE_MS = 100  # pages of a class that was closed are deleted by then


class Reading(QObject):
    """Reads one class at a time; ``window`` shows it."""

    def __init__(self, window: Window) -> None:
        super().__init__(window)
        self._window = window
        self._task: Task | None = None
        self._gone = False  # a class was closed, and its memory is not yet searched
        QTimer.singleShot(_IDLE_MS, self, self._load_ahead)

    def _load_ahead(self) -> None:
        # Trouble is told when a class is opened, where somebody can do something about it.
        in_background(
            self,
            opening.load_libraries,
            done=lambda _none: opening.load_pages(),
            failed=lambda _error: None,
        )

    def begin(self, folder: Path, who: str) -> None:
        """Read a class folder in the background."""
        self._task = in_background(
            self,
            opening.open_session(folder, who),
            done=self._show,
            failed=lambda error: self._fail(folder, error),
            progress=self._window.start.show_progress,
        )

    def stop(self) -> None:
        """Give up reading."""
        if self._task is not None:
            self._task.stop()
        self._end()

    def _show(self, session: Session) -> None:
        self._task = None
        self._window.show_session(session)

    def _fail(self, folder: Path, error: Exception) -> None:
        self._end()
        self._window.refuse(folder, error)

    def _end(self) -> None:
        """Nothing is being read any more, and no class was shown for it."""
        self._task = None
        QTimer.singleShot(_GONE_MS, self, self._let_class_go)

    def follow_up(self, desk: Desk) -> None:
        """Once the class on ``desk`` is on the screen: the sheet, and everybody's drafts."""
        QTimer.singleShot(_SHOWN_MS, desk, lambda: self._draft(desk))

    def _draft(self, desk: Desk) -> None:
        if desk is not self._window.desk:
            return  # closed meanwhile
        from markbench.ui.feedback.at_hand import AtHand

        self._window.make_sheet()
        AtHand.of(desk)  # Undo may reach a word or a phrase before any text is in sight
        self._let_class_go()
        opening.set_apart()
        drafting = in_background(
            self,
            opening.draft_all(desk.held),
            done=lambda _none: opening.set_apart() if desk.open else None,
            failed=lambda error: self._window.bar.say_trouble(plainly(error)),
        )
        desk.closing.connect(drafting.stop)

    def forget_class(self) -> None:
        """A class was closed: let its memory go."""
        self._gone = True
        QTimer.singleShot(_GONE_MS, self, self._let_class_go)

    def _let_class_go(self) -> None:
        """Not while another class is read, which would wait."""
        if self._gone and self._task is None:
            self._gone = False
            opening.let_class_go()
