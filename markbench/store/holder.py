"""Who has the class open for marking.

Two windows marking the same class would each fold a journal the other is adding to, so
the second opens for reading. The claim is SQLite's own write lock on a tiny database in
the backups folder: the operating system drops it the instant its process ends, however it
ends, so there is no stale claim to detect and no heartbeat to keep. It works wherever the
class's file itself can be locked, since it is the same lock.
"""

from __future__ import annotations

import datetime as dt
import getpass
import os
import platform
import sqlite3
from contextlib import closing
from dataclasses import dataclass
from pathlib import Path

from markbench.store.errors import StoreInUseError, open_elsewhere


@dataclass(frozen=True, slots=True)
class Holder:
    """The person and process with the class open for marking, ``since`` in UTC."""

    who: str
    computer: str
    process: int
    since: dt.datetime

    def __str__(self) -> str:
        local = self.since.astimezone()
        return f"{self.who} on {self.computer}, since {local:%H:%M on %d %B %Y}"


class Claim:
    """The right to write, held until :meth:`release` or the end of the process."""

    def __init__(self, connection: sqlite3.Connection) -> None:
        self._connection = connection

    def release(self) -> None:
        """Give the class up for the next window."""
        self._connection.close()


def claim(file: Path, name: str, who: str = "") -> Claim:
    """Claim the class, or raise :class:`StoreInUseError` naming who has it."""
    connection = sqlite3.connect(file, timeout=0.2, isolation_level=None, check_same_thread=False)
    try:
        connection.execute("BEGIN IMMEDIATE")
        connection.execute(
            "CREATE TABLE IF NOT EXISTS holder "
            "(one INTEGER PRIMARY KEY, who TEXT, computer TEXT, process INTEGER, since TEXT)"
        )
        connection.execute(
            "INSERT OR REPLACE INTO holder VALUES (1, ?, ?, ?, ?)",
            (
                (who or login()).encode("utf-8", "replace").decode(),
                platform.node() or "this computer",
                os.getpid(),
                dt.datetime.now(dt.UTC).isoformat(),
            ),
        )
        connection.execute("COMMIT")  # now others can read who it is
        connection.execute("BEGIN IMMEDIATE")  # and this is held for as long as we live
    except sqlite3.OperationalError as error:
        connection.close()
        if getattr(error, "sqlite_errorname", "").startswith(("SQLITE_BUSY", "SQLITE_LOCKED")):
            holder = holder_of(file)
            raise StoreInUseError(
                open_elsewhere(name, holder),
                holder,
            ) from error
        raise
    except sqlite3.Error:
        # Only the name of the holder is in there: a damaged one is made anew.
        connection.close()
        file.unlink()
        return claim(file, name, who)
    return Claim(connection)


def holder_of(file: Path) -> Holder | None:
    """Who holds the class at this moment; ``None`` if nobody does."""
    if not file.exists():
        return None
    with closing(sqlite3.connect(file, timeout=0.2, isolation_level=None)) as connection:
        try:
            connection.execute("BEGIN IMMEDIATE")
            return None
        except sqlite3.Error:
            pass
        try:
            row = connection.execute("SELECT who, computer, process, since FROM holder").fetchone()
        except sqlite3.Error:
            return None
    return Holder(row[0], row[1], row[2], dt.datetime.fromisoformat(row[3])) if row else None


def login() -> str:
    """The name this person is logged in with."""
    try:
        return getpass.getuser()
    except (OSError, KeyError, ImportError):  # no login name, as in a bare container
        return "someone"
