"""A process that may die, asked one question at a time.

Decoders are large and the files come from outside: one that hangs, eats memory or crashes
must cost one finding or one picture, not the program. A process is started when it is first
needed (that takes about a second), kept, and replaced when it dies or overruns its time.
"""

from __future__ import annotations

import contextlib
import multiprocessing
import multiprocessing.connection
import os
import sys
from collections.abc import Callable
from types import TracebackType
from typing import Any, Self

# Address space: decoders reserve far more than they use.
MOST_MEMORY_BYTES = 4 << 30
_START_S = 60.0

Answer = Callable[[str, Any], object]


class WorkerError(Exception):
    """The process could not finish; the message says why in plain words."""


class SlowWorkerError(WorkerError):
    """The process took longer than it may: of this machine as much as of the file."""


class Process:
    """Answers questions elsewhere, for one thread at a time, in a ``with`` statement.

    ``prepare`` (a function of a module) is called there once and gives what answers;
    ``patient`` lets whoever is marking at the window go first; ``memory_bytes`` of address
    space are all it may have.
    """

    def __init__(
        self,
        prepare: Callable[[], Answer],
        *,
        patient: bool,
        memory_bytes: int = MOST_MEMORY_BYTES,
    ) -> None:
        self._prepare, self._patient, self._memory_bytes = prepare, patient, memory_bytes
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
        """End the process; the next question starts another."""
        self._end()

    def _end(self) -> None:
        if self._pipe is not None:
            self._pipe.close()
        if self._process is not None:
            self._process.terminate()
            self._process.join(5)
            if self._process.is_alive():
                self._process.kill()
                self._process.join()
        self._process = self._pipe = None

    def ask(self, task: str, argument: object, limit_s: float) -> Any:
        """The answer. Raises :class:`WorkerError` when it does not come, in whichever way."""
        pipe = self._started()
        try:
            pipe.send((task, argument))
            if not pipe.poll(limit_s):
                self._end()
                raise SlowWorkerError(f"looking at the file took longer than {limit_s:.0f} s")
            return pipe.recv()
        except (EOFError, OSError) as error:
            self._end()
            raise WorkerError("the file made its reader fail") from error

    def _started(self) -> multiprocessing.connection.Connection[Any, Any]:
        if self._pipe is not None and self._process is not None and self._process.is_alive():
            return self._pipe
        self._end()
        # Spawned, not forked: the window's threads and Qt must not come along.
        context = multiprocessing.get_context("spawn")
        self._pipe, theirs = context.Pipe()
        process = context.Process(
            target=_serve,
            args=(theirs, self._prepare, self._patient, self._memory_bytes),
            daemon=True,
        )
        try:
            process.start()
        except (OSError, RuntimeError) as error:  # no memory for one, or the program is ending
            self._end()
            raise WorkerError("the reader of photos and videos did not start") from error
        finally:
            theirs.close()
        self._process = process
        if not self._pipe.poll(_START_S):
            self._end()
            raise WorkerError("the reader of photos and videos did not start")
        self._pipe.recv()
        return self._pipe


def _serve(
    pipe: multiprocessing.connection.Connection[Any, Any],
    prepare: Callable[[], Answer],
    patient: bool,
    memory_bytes: int,
) -> None:
    """The process's loop: a question in, an answer out, until the pipe closes."""
    _limit_memory(memory_bytes)
    if patient and hasattr(os, "nice"):
        os.nice(10)
    answer = prepare()
    with contextlib.suppress(EOFError, OSError, KeyboardInterrupt):
        pipe.send("ready")
        while True:
            task, argument = pipe.recv()
            pipe.send(answer(task, argument))


def _limit_memory(most_bytes: int) -> None:
    if sys.platform == "win32":
        return  # no such limit there; the time limit and the pixel limits remain
    import resource

    with contextlib.suppress(ValueError, OSError):
        _, hard = resource.getrlimit(resource.RLIMIT_AS)
        limit = most_bytes if hard < 0 else min(most_bytes, hard)
        resource.setrlimit(resource.RLIMIT_AS, (limit, hard))
