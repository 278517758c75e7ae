"""The journal of a class: open, append, read, verify."""

from __future__ import annotations

import dataclasses
import datetime as dt
from collections.abc import Iterable, Iterator, Sequence
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path
from types import TracebackType

from sqlalchemy import Engine, func, select

from markbench.model import Decision, say
from markbench.store import backups
from markbench.store.entry import decode, digest_of, encode
from markbench.store.errors import StoreAwayError, StoreDamagedError, StoreError, told_plainly
from markbench.store.holder import Holder
from markbench.store.homes import Hold, Home, home_of
from markbench.store.migrations import journal, migrate, pending


@dataclass(frozen=True, slots=True)
class Break:
    """The first entry of the journal that is not as it was written."""

    number: int
    message: str


class Journal:
    """An append-only journal of decisions. Make one with :meth:`open`.

    What :meth:`append` has returned is on the disk. Every method raises
    :class:`StoreError` with a sentence for people when it cannot do its work.
    """

    def __init__(self, home: Home, read_only: bool) -> None:
        self._home = home
        self._engine: Engine = home.engine(read_only=read_only)
        self._writing = self._engine.execution_options(writing=True)
        self._held: Hold | None = None
        #: The file; ``None`` where a server keeps the class.
        self.path = home.path
        self.name = home.name
        self.read_only = read_only
        self._empty = False

    @classmethod
    def open(cls, path: Path | str, *, read_only: bool = False, who: str = "") -> Journal:
        """Open a class's file (or a database address), making it if there is none.

        ``who`` is shown to anyone who finds the class in use. Opening for writing brings
        an older file up to date, after a copy, and makes the hourly copy. Opening for
        reading where there is no file yet gives an empty journal and makes none.

        Raises :class:`StoreInUseError` when another window is marking the class (open it with
        ``read_only``), :class:`StoreTooNewError`, :class:`StoreDamagedError` (see ``salvage``) or
        plain :class:`StoreError`.
        """
        home = home_of(path)
        with told_plainly(home.name):
            home.refuse_loss()
            opened = cls(home, read_only)
            try:
                opened._prepare(who)
            except BaseException:
                opened.close()
                raise
        return opened

    def _prepare(self, who: str) -> None:
        if self.read_only and not self._home.is_there():
            self._empty = True
            return
        with self._engine.connect() as connection:
            steps = pending(connection, self.name)
            empty = not connection.dialect.has_table(connection, journal.name)
        if self.read_only:
            self._empty = empty
            return
        self._held = self._home.claim(who)
        if not empty:
            self._copy(must=bool(steps))
        migrate(self._writing, steps)

    def append(self, decisions: Iterable[Decision]) -> list[Decision]:
        """Add decisions, all or none, and return them as kept: numbered and dated.

        Numbers run on from the last; a decision without a time gets the present. Times
        are kept as given even when the clock was set back: only numbers order.
        """
        if self.read_only:
            raise StoreError(
                say("{file} is open for reading only; nothing was saved.", file=self.name)
            )
        decisions = list(decisions)
        if not decisions:
            return []
        with self._reached_anew(), told_plainly(self.name), self._writing.begin() as connection:
            last = connection.execute(
                select(journal.c.number, journal.c.digest)
                .order_by(journal.c.number.desc())
                .limit(1)
            ).first()
            number, digest = (last.number, last.digest) if last else (0, "")
            rows = []
            for decision in decisions:
                number += 1
                line = encode(dataclasses.replace(decision, number=number))
                digest = digest_of(digest, line)
                rows.append({"number": number, "entry": line, "digest": digest})
            connection.execute(journal.insert(), rows)
        return [decode(str(row["entry"])) for row in rows]

    def all(self) -> list[Decision]:
        """Every decision, in order of number."""
        return self.since(0)

    def since(self, number: int) -> list[Decision]:
        """The decisions after entry ``number``, in order."""
        found = []
        for at, line, _ in self._rows(number):
            try:
                found.append(decode(line))
            except ValueError as error:
                raise StoreDamagedError(
                    say(
                        "Entry {at} of {file} cannot be read. Nothing is lost yet: it can be "
                        "rebuilt from what can be read.",
                        at=at,
                        file=self.name,
                    )
                ) from error
        return found

    def verify(self) -> Break | None:
        """The first entry that was changed, removed or slipped in; ``None`` if none was."""
        previous = ""
        for expected, (number, line, digest) in enumerate(self._rows(0), start=1):
            if number != expected:
                return Break(expected, f"Entry {expected} is missing; {number} follows.")
            if digest != digest_of(previous, line):
                return Break(number, f"Entry {number} is not as it was written.")
            previous = digest
        return None

    @property
    def last_digest(self) -> str:
        """The digest that vouches for the whole journal so far; empty for an empty one."""
        if self._empty:
            return ""
        with told_plainly(self.name), self._engine.connect() as connection:
            query = select(journal.c.digest).order_by(journal.c.number.desc()).limit(1)
            return connection.execute(query).scalar() or ""

    @property
    def holder(self) -> Holder | None:
        """Who has the class open for marking at this moment, here or elsewhere."""
        with told_plainly(self.name):
            return self._home.holder()

    def back_up(self) -> Path | None:
        """Copy the file now; ``None`` if it is empty or does not verify, or on a server."""
        with told_plainly(self.name):
            return self._copy(must=True)

    def close(self) -> None:
        """Let go of the file."""
        self._engine.dispose()
        if self._held is not None:
            self._held.release()
            self._held = None

    def __enter__(self) -> Journal:
        return self

    def __exit__(
        self,
        kind: type[BaseException] | None,
        error: BaseException | None,
        trace: TracebackType | None,
    ) -> None:
        self.close()

    @contextmanager
    def _reached_anew(self) -> Iterator[None]:
        """After a failure the file is opened anew: a share that came back is another one."""
        try:
            yield
        except StoreAwayError:
            self._engine.dispose()
            raise

    def _rows(self, after: int) -> Sequence[tuple[int, str, str]]:
        if self._empty:
            return []
        query = (
            select(journal.c.number, journal.c.entry, journal.c.digest)
            .where(journal.c.number > after)
            .order_by(journal.c.number)
        )
        with told_plainly(self.name), self._engine.connect() as connection:
            return [(row.number, row.entry, row.digest) for row in connection.execute(query)]

    def _copy(self, must: bool) -> Path | None:
        """Make a copy if due; only of a sound file, so that no sound copy is rolled away.

        A server keeps copies of its own.
        """
        if self.path is None:
            return None
        with self._engine.connect() as connection:
            last = connection.execute(select(func.max(journal.c.number))).scalar() or 0
            now = dt.datetime.now(dt.UTC)
            if last == 0 or not (must or backups.is_due(self.path, last, now)):
                return None
            report = connection.exec_driver_sql("PRAGMA quick_check").scalar()
        if report != "ok":
            raise StoreDamagedError(
                say(
                    "{file} is damaged. Nothing is lost yet: it can be rebuilt from what "
                    "can be read.",
                    file=self.name,
                )
            )
        return None if self.verify() else backups.back_up(self.path, last, now)
