"""Where a journal may live: a file beside the work, or a database server by its address.

All that differs between the two stands here and in :mod:`.migrations`: opening, locking,
who has it, and copies. A server looks after its own copies, so none are made there.
"""

from __future__ import annotations

import platform
from pathlib import Path
from typing import Protocol

from sqlalchemy import URL, Engine, create_engine, event, make_url, text
from sqlalchemy.engine import Connection
from sqlalchemy.exc import ArgumentError
from sqlalchemy.pool import NullPool

from markbench.model import say
from markbench.store import backups
from markbench.store.database import engine_for
from markbench.store.errors import StoreDamagedError, StoreError, StoreInUseError, open_elsewhere
from markbench.store.holder import Holder, claim, holder_of, login

# Two of our own numbers for PostgreSQL's advisory locks; the schema is the second key.
_CLAIM, _WRITE = 0x6D626301, 0x6D626302
_NAME_BYTES = 60  # PostgreSQL cuts application names at 63


class Hold(Protocol):
    """The right to write, until :meth:`release` or the end of the process."""

    def release(self) -> None:
        """Give the class up."""


class Home(Protocol):
    """A place where one class's journal lives."""

    name: str
    path: Path | None

    def engine(self, *, read_only: bool) -> Engine:
        """An engine; transactions with the option ``writing`` are alone in writing."""

    def refuse_loss(self) -> None:
        """Raise if there was a journal here and it has vanished."""

    def is_there(self) -> bool:
        """Whether there is anything to read yet."""

    def claim(self, who: str) -> Hold:
        """Claim the class for marking, or raise :class:`StoreInUseError`."""

    def holder(self) -> Holder | None:
        """Who holds the class at this moment."""


def home_of(address: Path | str) -> Home:
    """The home that a path or an address means. Raises :class:`StoreError`."""
    if isinstance(address, str) and "://" in address:
        try:
            url = make_url(address)
        except ArgumentError as error:
            raise StoreError(say("The address of the class cannot be read.")) from error
        kind = url.get_backend_name()
        if kind in ("postgresql", "postgres"):
            return ServerHome(url)
        if kind != "sqlite":
            raise StoreError(say("A class cannot be kept on a {kind} server.", kind=kind))
        if not url.database or url.database == ":memory:":
            raise StoreError(say("A class is kept in a file; the address names none."))
        address = url.database
    return FileHome(Path(address).absolute())


class FileHome:
    """A file, with its copies and the claim on it in a folder beside it."""

    def __init__(self, path: Path) -> None:
        self.path: Path | None = path
        self._path = path
        self.name = path.name

    def engine(self, *, read_only: bool) -> Engine:
        """SQLite on the file."""
        return engine_for(self._path, read_only=read_only)

    def refuse_loss(self) -> None:
        """Never start an empty journal over one that has vanished or been emptied."""
        if not self.is_there() and (kept := backups.backups_of(self._path)):
            raise StoreDamagedError(
                say(
                    "{file} is {state}, but {n} copies of it are kept, from which it can be "
                    "rebuilt."
                    if len(kept) > 1
                    else "{file} is {state}, but a copy of it is kept, from which it can be "
                    "rebuilt.",
                    file=self.name,
                    state=say("empty") if self._path.exists() else say("gone"),
                    n=len(kept),
                )
            )

    def is_there(self) -> bool:
        """Whether the file holds anything."""
        return self._path.exists() and self._path.stat().st_size > 0

    def claim(self, who: str) -> Hold:
        """A lock on a tiny database beside the copies."""
        backups.folder_for(self._path).mkdir(exist_ok=True)
        return claim(self._claim_file, self.name, who)

    def holder(self) -> Holder | None:
        """Read from the same tiny database."""
        return holder_of(self._claim_file)

    @property
    def _claim_file(self) -> Path:
        return backups.folder_for(self._path) / "in-use"


class ServerHome:
    """A database (or a schema of one, by ``options=-csearch_path=…``) on PostgreSQL.

    One class to a database or schema. Its name leaves out the password.
    """

    def __init__(self, url: URL) -> None:
        self.path: Path | None = None
        self._url = url.set(drivername="postgresql+psycopg")
        self.name = f"{url.database or 'the class'} on {url.host or 'this computer'}"

    def engine(self, *, read_only: bool) -> Engine:
        """An engine whose writing transactions hold one lock from their beginning."""
        engine = self._make(self._url, pool_pre_ping=True)

        @event.listens_for(engine, "begin")
        def begin(connection: Connection) -> None:
            if read_only:
                connection.exec_driver_sql("SET TRANSACTION READ ONLY")
            elif connection.get_execution_options().get("writing", False):
                connection.exec_driver_sql(
                    f"SELECT pg_advisory_xact_lock({_WRITE}, hashtext(current_schema()))"
                )

        return engine

    def refuse_loss(self) -> None:
        """A server keeps its own copies; there is nothing here to compare with."""

    def is_there(self) -> bool:
        """A server answers or the first question to it fails."""
        return True

    def claim(self, who: str) -> Hold:
        """A session's advisory lock, which the server drops when the connection ends.

        The name of the connection says who it is, so nothing has to be written or cleared.
        """
        whom = f"{who or login()} on {platform.node() or 'a computer'}"
        name = whom.encode("utf-8", "replace")[:_NAME_BYTES].decode("utf-8", "ignore")
        url = self._url.update_query_dict({"application_name": name})
        engine = self._make(url, poolclass=NullPool)
        connection = engine.connect().execution_options(isolation_level="AUTOCOMMIT")
        try:
            got = connection.execute(
                text("SELECT pg_try_advisory_lock(:key, hashtext(current_schema()))"),
                {"key": _CLAIM},
            ).scalar()
            if not got:
                holder = self.holder()
                raise StoreInUseError(
                    open_elsewhere(self.name, holder),
                    holder,
                )
        except BaseException:
            connection.close()
            raise
        return _Connected(connection)

    def holder(self) -> Holder | None:
        """The connection that holds the lock, as the server lists it."""
        engine = self._make(self._url, poolclass=NullPool)
        with engine.connect() as connection:
            row = connection.execute(
                text(
                    "SELECT a.application_name, a.pid, a.backend_start "
                    "FROM pg_locks l JOIN pg_stat_activity a USING (pid) "
                    "WHERE l.locktype = 'advisory' AND l.granted AND l.objsubid = 2 "
                    "AND l.classid::bigint = :key AND l.objid::bigint = "
                    "(hashtext(current_schema())::bigint & 4294967295) "
                    "AND l.database = (SELECT oid FROM pg_database "
                    "WHERE datname = current_database())"
                ),
                {"key": _CLAIM},
            ).first()
        if row is None:
            return None
        who, _, computer = (row.application_name or "someone").rpartition(" on ")
        return Holder(who or computer, computer, row.pid, row.backend_start)

    def _make(self, url: URL, **options: object) -> Engine:
        try:
            return create_engine(url, **options)
        except ModuleNotFoundError as error:
            raise StoreError(
                say(
                    "A class on a PostgreSQL server needs the part of Markbench that talks "
                    'to it: install "markbench[server]".'
                )
            ) from error


class _Connected:
    """A claim that lasts as long as its connection."""

    def __init__(self, connection: Connection) -> None:
        self._connection = connection

    def release(self) -> None:
        self._connection.close()
        self._connection.engine.dispose()
