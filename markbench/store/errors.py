"""Everything that can go wrong with the class's file, each as one plain sentence."""

from __future__ import annotations

import errno
import sqlite3
from collections.abc import Iterator
from contextlib import contextmanager
from typing import TYPE_CHECKING

from sqlalchemy.exc import DBAPIError, SQLAlchemyError

from markbench.model import say

if TYPE_CHECKING:
    from markbench.store.holder import Holder


class StoreError(Exception):
    """The class's file could not be read or written; the message says why."""


class StoreInUseError(StoreError):
    """Someone else has the class open for marking; ``holder`` says who."""

    def __init__(self, message: str, holder: Holder | None) -> None:
        super().__init__(message)
        self.holder = holder


class StoreAwayError(StoreError):
    """The file cannot be reached or written to just now; later it may work."""


class StoreTooNewError(StoreError):
    """The file was made by a newer Markbench; it has not been touched."""


class StoreDamagedError(StoreError):
    """The file cannot be trusted as it stands; :func:`salvage` can rebuild it."""


def open_elsewhere(name: str, holder: object) -> str:
    """That a class is open for marking by somebody, known or not."""
    whom = f"{holder}" if holder else say("it does not say by whom")
    return say(
        "{name} is open for marking elsewhere ({whom}). It can be opened here for reading.",
        name=name,
        whom=whom,
    )


# By the name of SQLite's result code, the longest matching start first.
_SENTENCES = {
    "SQLITE_READONLY_DBMOVED": "{name} was moved or deleted while it was open; nothing was saved.",
    "SQLITE_READONLY": "{name} may not be written to: the file or its folder is read-only.",
    "SQLITE_BUSY": "{name} is being written by another program; nothing was saved. "
    "Try again in a moment.",
    "SQLITE_LOCKED": "{name} is being written by another window; nothing was saved. "
    "Try again in a moment.",
    "SQLITE_FULL": "The disk with {name} is full; nothing was saved. Free some space and try "
    "again.",
    "SQLITE_IOERR": "The disk or share with {name} did not answer; nothing was saved.",
    "SQLITE_CANTOPEN": "{name} cannot be opened: its folder is missing, out of reach or not "
    "yours to write in.",
    "SQLITE_PERM": "{name} is not yours to open.",
    "SQLITE_AUTH": "{name} is not yours to open.",
    "SQLITE_CONSTRAINT": "{name} is append-only: a decision once written is never changed or "
    "deleted.",
}
_OF_THE_DISK = {
    errno.EACCES: "SQLITE_READONLY",
    errno.EPERM: "SQLITE_READONLY",
    errno.EROFS: "SQLITE_READONLY",
    errno.ENOSPC: "SQLITE_FULL",
    errno.ENOENT: "SQLITE_CANTOPEN",
    errno.ENOTDIR: "SQLITE_CANTOPEN",
}
# By the start of PostgreSQL's five-letter code (PostgreSQL manual, appendix A).
_OF_A_SERVER = {
    "08": "{name} did not answer; nothing was saved.",
    "23": _SENTENCES["SQLITE_CONSTRAINT"],
    "25006": "{name} is open for reading only; nothing was saved.",
    "28": "{name} did not accept the name or the password.",
    "3D": "{name}: there is no such database on the server.",
    "42501": "{name} is not yours to write in.",
    "53100": "The disk of the server with {name} is full; nothing was saved.",
    "57": "{name} was shut down; nothing was saved.",
}
# What may pass: a share that comes back, a disk with room again, another program done.
_PASSING = ("SQLITE_READONLY", "SQLITE_BUSY", "SQLITE_LOCKED", "SQLITE_FULL", "SQLITE_IOERR",
            "SQLITE_CANTOPEN")  # fmt: skip
_PASSING_ON_A_SERVER = ("08", "25006", "53100", "57")
_DAMAGE = ("SQLITE_CORRUPT", "SQLITE_NOTADB")
_DAMAGED = "{name} is damaged. Nothing is lost yet: it can be rebuilt from what can be read."


def store_sentences() -> tuple[str, ...]:
    """The forms of what is said for each code, for those who say them in another language."""
    return (*_SENTENCES.values(), *_OF_A_SERVER.values(), _DAMAGED)


def as_store_error(error: Exception, name: str) -> StoreError:
    """Turn a database error into the sentence a teacher can act on."""
    original = error.orig if isinstance(error, DBAPIError) else error
    if isinstance(original, OSError):
        code = _OF_THE_DISK.get(original.errno or 0, "")
    else:
        code = str(getattr(original, "sqlite_errorname", ""))
    state = str(getattr(original, "sqlstate", None) or "")
    for start, sentence in _OF_A_SERVER.items():
        if state.startswith(start):
            kind = StoreAwayError if start in _PASSING_ON_A_SERVER else StoreError
            return kind(say(sentence, name=name))
    if hasattr(original, "sqlstate") and not state:  # no connection was made; it says why
        said = str(original).strip().splitlines() or ["no reason given"]
        return StoreAwayError(
            say(
                "{file} could not be reached; nothing was saved ({why}).",
                file=name,
                why=said[-1].strip(),
            )
        )
    if code.startswith(_DAMAGE):
        return StoreDamagedError(say(_DAMAGED, name=name))
    for start in sorted(_SENTENCES, key=len, reverse=True):
        if code.startswith(start):
            kind = StoreAwayError if code.startswith(_PASSING) else StoreError
            return kind(say(_SENTENCES[start], name=name))
    return StoreError(say("{file} could not be used: {why}.", file=name, why=str(original)))


@contextmanager
def told_plainly(name: str) -> Iterator[None]:
    """Within, errors of the database or the disk leave as :class:`StoreError`."""
    try:
        yield
    except (SQLAlchemyError, sqlite3.Error, OSError) as error:
        raise as_store_error(error, name) from error
