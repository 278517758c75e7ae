"""Opening the database so that what is committed stays committed."""

from __future__ import annotations

import sqlite3
from pathlib import Path

from sqlalchemy import Engine, QueuePool, create_engine, event
from sqlalchemy.engine import Connection

from markbench.model import say
from markbench.store.errors import StoreAwayError

# How long to wait for another program's write to end. Longer than any save takes, shorter
# than a teacher's patience.
WAIT_S = 2.0


def engine_for(path: Path, *, read_only: bool) -> Engine:
    """An engine on the file; nothing is touched until it is used.

    Transactions are begun explicitly: writing ones (execution option ``writing``) take the
    write lock at once, so that the last number read is still the last when adding to it.
    """
    known = path.exists()

    def connect() -> sqlite3.Connection:
        nonlocal known
        # SQLite would quietly make a new, empty file where a known one has vanished.
        if known and not path.exists():
            raise StoreAwayError(
                say("{file} was moved or deleted; nothing was saved.", file=path.name)
            )
        # A plain path and query_only rather than a mode=ro address: those cannot name a
        # Windows share, and cannot roll back what a killed writer left half done.
        connection = sqlite3.connect(
            path, timeout=WAIT_S, isolation_level=None, check_same_thread=False
        )
        connection.execute("PRAGMA synchronous = EXTRA")
        known = known or path.exists()
        connection.execute("PRAGMA trusted_schema = OFF")
        if read_only:
            connection.execute("PRAGMA query_only = ON")
        return connection

    engine = create_engine("sqlite://", creator=connect, poolclass=QueuePool)

    @event.listens_for(engine, "begin")
    def begin(connection: Connection) -> None:
        writing = connection.get_execution_options().get("writing", False)
        connection.exec_driver_sql("BEGIN IMMEDIATE" if writing else "BEGIN")

    return engine
