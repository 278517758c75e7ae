"""The session as the window sees it: commands in order off the main thread, news as signals.

A command ends in a write that must reach the disk, and may read the folder again; neither
may be felt while typing. So every command goes to one worker, in order, and the change
comes back as a signal on the main thread.
"""

from __future__ import annotations

import datetime as dt
from collections.abc import Callable
from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, QThread, QThreadPool, Signal

from markbench.ui.background import in_background

if TYPE_CHECKING:
    from markbench.session import Change, Session

Command = Callable[["Session"], None]


class Desk(QObject):
    """Holds one open :class:`Session`. ``changed`` carries a learner's id, empty for all."""

    changed = Signal(str)
    saved = Signal(object)
    trouble = Signal(str)
    waiting = Signal(bool)

    def __init__(self, session: Session, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self.session = session
        self.saved_at: dt.datetime | None = None
        self._pool = QThreadPool(self)
        self._pool.setMaxThreadCount(1)
        self._pending = 0
        self._news: list[Change] = []
        self._forget = session.listen(self._on_told)

    def do(self, command: Command) -> None:
        """Give a command; it runs after those given before it."""
        self._pending += 1
        if self._pending == 1:
            self.waiting.emit(True)
        in_background(
            self,
            lambda _progress, _stop: command(self.session),
            done=self._on_done,
            failed=self._on_failed,
            pool=self._pool,
        )

    def undo(self) -> None:
        """Take the last step back."""
        self.do(lambda session: session.undo())

    def redo(self) -> None:
        """Do it again."""
        self.do(lambda session: session.redo())

    def finish(self) -> None:
        """Wait until everything given is written."""
        self._pool.waitForDone()

    def close(self) -> None:
        """Wait until everything given is written, then let the class go."""
        self.finish()
        self._forget()
        self.session.close()

    def _on_told(self, change: Change) -> None:
        """Called by the session in the middle of a command: pass it on when that is done."""
        self._news.append(change)
        if QThread.currentThread() is self.thread():
            self._pass_on()

    def _pass_on(self) -> None:
        news, self._news = self._news, []
        for change in news:
            self.saved_at = dt.datetime.now()
            self.saved.emit(self.saved_at)
            self.changed.emit(change.learner)

    def _on_done(self, _result: object) -> None:
        self._settle()

    def _on_failed(self, error: Exception) -> None:
        self._settle()
        self.trouble.emit(str(error))

    def _settle(self) -> None:
        self._pass_on()
        self._pending -= 1
        if self._pending == 0:
            self.waiting.emit(False)
