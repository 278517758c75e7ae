"""Looking at media in a process that may die.

Decoders are large and the files come from outside: one that hangs, eats memory or crashes
must cost one finding, not the program. One worker process is kept for a whole class (a new
one takes about a second to start) and is replaced when it dies or overruns its time.
"""

from __future__ import annotations

import contextlib
import multiprocessing
import multiprocessing.connection
import os
import sys
import tempfile
from pathlib import Path
from types import TracebackType
from typing import Any, Literal, Self

from markbench.evidence.photos import PhotoLook, look_at_photo
from markbench.evidence.picture import PictureError, thumbnail
from markbench.evidence.video.judge import SwingMeasurement, measure_swing

Task = Literal["photo", "thumbnail", "swing"]
# Address space: decoders reserve far more than they use.
MOST_MEMORY_BYTES = 4 << 30
_START_S = 60.0


class WorkerError(Exception):
    """The worker could not finish; the message says why in plain words."""


class Worker:
    """A process that looks at photos and films, for one thread, in a ``with`` statement."""

    def __init__(self, *, photo_limit_s: float = 30.0, film_limit_s: float = 300.0) -> None:
        self.photo_limit_s, self.film_limit_s = photo_limit_s, film_limit_s
        self._process: multiprocessing.process.BaseProcess | None = None
        self._pipe: multiprocessing.connection.Connection[Any, Any] | None = None

    def __enter__(self) -> Self:
        return self

    def __exit__(
        self,
        kind: type[BaseException] | None,
        error: BaseException | None,
        trace: TracebackType | None,
    ) -> None:
        self.close()

    def close(self) -> None:
        """End the process."""
        if self._pipe is not None:
            self._pipe.close()
        if self._process is not None:
            self._process.terminate()
            self._process.join(5)
            if self._process.is_alive():
                self._process.kill()
                self._process.join()
        self._process = self._pipe = None

    def photo(self, data: bytes) -> PhotoLook:
        """:func:`look_at_photo`; a death of the worker is a photo with a problem."""
        try:
            looked: PhotoLook = self._call("photo", data, self.photo_limit_s)
        except WorkerError as error:
            return PhotoLook(None, 0.0, 0.0, None, str(error))
        return looked

    def thumbnail(self, data: bytes, size: int) -> bytes:
        """:func:`thumbnail` without cache. Raises :class:`PictureError`."""
        try:
            made = self._call("thumbnail", (data, size), self.photo_limit_s)
        except WorkerError as error:
            raise PictureError(str(error)) from error
        if isinstance(made, PictureError):
            raise made
        return bytes(made)

    def swing(self, data: bytes) -> SwingMeasurement:
        """:func:`measure_swing`; a death of the worker is an unreadable film."""
        with tempfile.TemporaryDirectory(prefix="markbench-") as folder:
            path = Path(folder) / "film"
            path.write_bytes(data)
            try:
                found: SwingMeasurement = self._call("swing", path, self.film_limit_s)
            except WorkerError as error:
                return SwingMeasurement(accepted=False, reason="unreadable", message=str(error))
        return found

    def _call(self, task: Task, argument: object, limit_s: float) -> Any:
        pipe = self._started()
        try:
            pipe.send((task, argument))
            if not pipe.poll(limit_s):
                self.close()
                raise WorkerError(f"looking at the file took longer than {limit_s:.0f} s")
            return pipe.recv()
        except (EOFError, OSError) as error:
            self.close()
            raise WorkerError("the file made its reader fail") from error

    def _started(self) -> multiprocessing.connection.Connection[Any, Any]:
        if self._pipe is not None and self._process is not None and self._process.is_alive():
            return self._pipe
        self.close()
        # Spawned, not forked: the window's threads and Qt must not come along.
        context = multiprocessing.get_context("spawn")
        self._pipe, theirs = context.Pipe()
        self._process = context.Process(target=_serve, args=(theirs,), daemon=True)
        self._process.start()
        theirs.close()
        if not self._pipe.poll(_START_S):
            self.close()
            raise WorkerError("the reader of photos and films did not start")
        self._pipe.recv()
        return self._pipe


def _serve(pipe: multiprocessing.connection.Connection[Any, Any]) -> None:
    """The worker's loop: a task in, a result out, until the pipe closes."""
    _limit_memory()
    if hasattr(os, "nice"):
        os.nice(10)  # whoever is marking at the window goes first
    with contextlib.suppress(EOFError, OSError, KeyboardInterrupt):
        pipe.send("ready")
        while True:
            task, argument = pipe.recv()
            pipe.send(_done(task, argument))


def _done(task: Task, argument: Any) -> object:
    if task == "swing":
        return measure_swing(argument)
    if task == "photo":
        return look_at_photo(argument)
    try:
        return thumbnail(*argument)
    except PictureError as error:
        return error


def _limit_memory() -> None:
    if sys.platform == "win32":
        return  # no such limit there; the time limit and the pixel limits remain
    import resource

    with contextlib.suppress(ValueError, OSError):
        _, hard = resource.getrlimit(resource.RLIMIT_AS)
        limit = MOST_MEMORY_BYTES if hard < 0 else min(MOST_MEMORY_BYTES, hard)
        resource.setrlimit(resource.RLIMIT_AS, (limit, hard))
