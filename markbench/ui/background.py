"""The one way to do long work: off the main thread, with progress and a way to stop.

Results, errors and progress come back on the main thread, and not at all once the owner
is gone. Rejected: a thread per kind of work (each needs the same care), and Qt's own
futures (they carry neither progress text nor Python's exceptions).
"""

from __future__ import annotations

import threading
import time
from collections.abc import Callable
from typing import Any

from PySide6.QtCore import QObject, QRunnable, QThreadPool, Signal, Slot
from shiboken6 import isValid

Progress = Callable[[int, int, str], None]
Stop = Callable[[], bool]
Work = Callable[[Progress, Stop], Any]

_SEEN_S = 0.1

_running: set[Task] = set()


class Task(QObject):
    """Work under way. ``stop`` asks it to end; nothing is reported after that."""

    _ended = Signal(object, object)
    _moved = Signal(int, int, str)

    def __init__(
        self,
        owner: QObject,
        done: Callable[[Any], None],
        failed: Callable[[Exception], None],
        progress: Progress | None,
    ) -> None:
        super().__init__()
        self._owner, self._done, self._failed, self._progress = owner, done, failed, progress
        self._stopped = threading.Event()
        self._told_at = 0.0
        self._ended.connect(self._on_ended)
        self._moved.connect(self._on_moved)

    def stop(self) -> None:
        """Ask the work to end."""
        self._stopped.set()

    @property
    def stopped(self) -> bool:
        """Whether the work was asked to end."""
        return self._stopped.is_set()

    def work(self, work: Work) -> None:
        """Called on the worker's thread."""
        try:
            result, error = work(self._tell, self._stopped.is_set), None
        except Exception as problem:
            result, error = None, problem
        if isValid(self):
            self._ended.emit(result, error)

    def _tell(self, at: int, of: int, text: str) -> None:
        """Pass progress on, no oftener than it can be seen: drawing it would slow the work."""
        now = time.monotonic()
        if now - self._told_at >= _SEEN_S or at >= of:
            self._told_at = now
            self._moved.emit(at, of, text)

    def _wanted(self) -> bool:
        return isValid(self._owner) and not self.stopped

    @Slot(object, object)
    def _on_ended(self, result: Any, error: Exception | None) -> None:
        _running.discard(self)
        if not self._wanted():
            return
        if error is None:
            self._done(result)
        else:
            self._failed(error)

    @Slot(int, int, str)
    def _on_moved(self, at: int, of: int, text: str) -> None:
        if self._progress is not None and self._wanted():
            self._progress(at, of, text)


class _Runnable(QRunnable):
    def __init__(self, task: Task, work: Work) -> None:
        super().__init__()
        self._task, self._work = task, work

    def run(self) -> None:
        self._task.work(self._work)


def in_background(
    owner: QObject,
    work: Work,
    done: Callable[[Any], None],
    failed: Callable[[Exception], None],
    progress: Progress | None = None,
    pool: QThreadPool | None = None,
) -> Task:
    """Run ``work(progress, stop)`` on a thread of ``pool``; report to ``owner``'s callables."""
    task = Task(owner, done, failed, progress)
    _running.add(task)
    (pool or QThreadPool.globalInstance()).start(_Runnable(task, work))
    return task
