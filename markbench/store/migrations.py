"""Named steps from an empty database to the present shape, each in a transaction.

A step once released is never edited; a change is a new step at the end. A file with a
step unknown here comes from a newer program and is refused before anything is written.
"""

from __future__ import annotations

import datetime as dt
from collections.abc import Callable

from sqlalchemy import Column, Engine, Integer, MetaData, String, Table, Text, inspect, select
from sqlalchemy.engine import Connection

from markbench.model import say
from markbench.store.errors import StoreError, StoreTooNewError

metadata = MetaData()
applied = Table(
    "migration",
    metadata,
    Column("name", String(60), primary_key=True),
    Column("at", String(40), nullable=False),
)
journal = Table(
    "journal",
    metadata,
    Column("number", Integer, primary_key=True, autoincrement=False),
    Column("entry", Text, nullable=False),
    Column("digest", String(64), nullable=False),
)

# The third trigger closes the way round the first two: INSERT OR REPLACE deletes silently.
_APPEND_ONLY = (
    "CREATE TRIGGER journal_keeps_entries BEFORE UPDATE ON journal "
    "BEGIN SELECT RAISE(ABORT, 'the journal is append-only'); END",
    "CREATE TRIGGER journal_loses_nothing BEFORE DELETE ON journal "
    "BEGIN SELECT RAISE(ABORT, 'the journal is append-only'); END",
    "CREATE TRIGGER journal_counts_on BEFORE INSERT ON journal "
    "WHEN NEW.number <> (SELECT COALESCE(MAX(number), 0) + 1 FROM journal) "
    "BEGIN SELECT RAISE(ABORT, 'the journal is append-only'); END",
)
# The same on PostgreSQL, where TRUNCATE is a third way to lose entries.
_APPEND_ONLY_ON_A_SERVER = (
    "CREATE FUNCTION journal_refuses() RETURNS trigger LANGUAGE plpgsql AS $$ "
    "BEGIN RAISE EXCEPTION 'the journal is append-only' "
    "USING ERRCODE = 'integrity_constraint_violation'; END $$",
    "CREATE TRIGGER journal_keeps_entries BEFORE UPDATE OR DELETE OR TRUNCATE ON journal "
    "FOR EACH STATEMENT EXECUTE FUNCTION journal_refuses()",
    "CREATE FUNCTION journal_counts() RETURNS trigger LANGUAGE plpgsql AS $$ "
    "BEGIN IF NEW.number <> (SELECT COALESCE(MAX(number), 0) + 1 FROM journal) THEN "
    "RAISE EXCEPTION 'the journal is append-only' "
    "USING ERRCODE = 'integrity_constraint_violation'; END IF; RETURN NEW; END $$",
    "CREATE TRIGGER journal_counts_on BEFORE INSERT ON journal "
    "FOR EACH ROW EXECUTE FUNCTION journal_counts()",
)


def _journal(connection: Connection) -> None:
    journal.create(connection)


def _append_only(connection: Connection) -> None:
    on_a_server = connection.dialect.name == "postgresql"
    for statement in _APPEND_ONLY_ON_A_SERVER if on_a_server else _APPEND_ONLY:
        connection.exec_driver_sql(statement)


MIGRATIONS: tuple[tuple[str, Callable[[Connection], None]], ...] = (
    ("0001-journal", _journal),
    ("0002-append-only", _append_only),
)


def pending(connection: Connection, name: str) -> tuple[str, ...]:
    """The steps this database still needs. Reads only.

    Raises :class:`StoreTooNewError` for a newer file and :class:`StoreError` for a database of
    some other program.
    """
    tables = set(inspect(connection).get_table_names())
    if applied.name not in tables:
        if tables:
            raise StoreError(
                say("{file} is a database of some other program; it was left alone.", file=name)
            )
        return tuple(step for step, _ in MIGRATIONS)
    done = set(connection.execute(select(applied.c.name)).scalars())
    known = [step for step, _ in MIGRATIONS]
    newer = sorted(done - set(known))
    if newer:
        raise StoreTooNewError(
            say(
                "{file} was made by a newer Markbench (it knows {step}); this one has "
                "not touched it. Install the newer version to go on.",
                file=name,
                step=repr(newer[0]),
            )
        )
    return tuple(step for step in known if step not in done)


def migrate(engine: Engine, steps: tuple[str, ...]) -> None:
    """Apply the steps named, each with its own record in a transaction of its own."""
    for step, change in MIGRATIONS:
        if step not in steps:
            continue
        with engine.begin() as connection:
            applied.create(connection, checkfirst=True)
            change(connection)
            connection.execute(
                applied.insert().values(name=step, at=dt.datetime.now(dt.UTC).isoformat())
            )
