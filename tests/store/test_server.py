"""The same journal on a PostgreSQL server started for these tests."""

import getpass
import itertools
import os
import shutil
import subprocess
import tempfile
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path

import pytest
from sqlalchemy import create_engine, text
from sqlalchemy.exc import DBAPIError

from markbench.model import Decision
from markbench.session import Session
from markbench.store import Journal, StoreError, StoreInUseError, fold

_COUNT = itertools.count(1)


def programs():
    """The folder with initdb and pg_ctl: on the path, or where Debian keeps it."""
    found = shutil.which("initdb")
    places = [Path(found).resolve().parent] if found else []
    places += sorted(Path("/usr/lib/postgresql").glob("*/bin"), reverse=True)
    return next((p for p in places if (p / "initdb").exists() and (p / "pg_ctl").exists()), None)


def as_other_than_root():
    """PostgreSQL refuses to run as root; the account its package makes is used then."""
    if not hasattr(os, "geteuid") or os.geteuid() != 0:
        return None, getpass.getuser()
    import pwd

    try:
        return pwd.getpwnam("postgres"), "postgres"
    except KeyError:
        pytest.skip("root cannot run PostgreSQL, and there is no account postgres")


@pytest.fixture(scope="module")
def server():
    pytest.importorskip("psycopg", reason="psycopg is not installed (markbench[server])")
    bin_folder = programs()
    if bin_folder is None:
        pytest.skip("PostgreSQL's initdb and pg_ctl are not installed")
    account, user = as_other_than_root()
    # Not under pytest's own folder: that is closed to other accounts, and a socket's path
    # may have 107 characters at most.
    root = Path(tempfile.mkdtemp(prefix="mb-pg-"))
    if account is not None:
        os.chown(root, account.pw_uid, account.pw_gid)
    who = {} if account is None else {"user": account.pw_uid, "group": account.pw_gid}
    data = root / "data"

    def run(*words):
        subprocess.run(
            words, check=True, cwd=root, stdout=subprocess.DEVNULL, stderr=subprocess.PIPE, **who
        )

    run(bin_folder / "initdb", "-D", data, "-A", "trust", "-U", user, "-E", "UTF8", "--no-sync")
    options = f"-k {root} -c listen_addresses='' -c fsync=off"
    run(bin_folder / "pg_ctl", "-D", data, "-w", "-l", root / "log", "-o", options, "start")
    try:
        yield f"postgresql://{user}@/{{database}}?host={root}"
    finally:
        run(bin_folder / "pg_ctl", "-D", data, "-m", "immediate", "stop")
        shutil.rmtree(root, ignore_errors=True)


def raw(address, statement):
    """Reach past the store, as a meddler would."""
    engine = create_engine(address.replace("postgresql:", "postgresql+psycopg:"))
    try:
        with engine.connect().execution_options(isolation_level="AUTOCOMMIT") as connection:
            connection.execute(text(statement))
    finally:
        engine.dispose()


@pytest.fixture
def address(server):
    name = f"class_{next(_COUNT)}"
    raw(server.format(database="postgres"), f"CREATE DATABASE {name}")
    return server.format(database=name)


def note(words, learner="01"):
    return Decision("note", learner, "", words, who="A. Teacher")


def test_appended_decisions_come_back_and_verify(address):
    with Journal.open(address) as journal:
        first = journal.append([note("one"), note("two \x00 \ud83d", "02")])
        second = journal.append([note("three")])
        assert journal.path is None
        assert journal.back_up() is None
    with Journal.open(address) as journal:
        assert journal.all() == first + second
        assert journal.since(2) == second
        assert journal.verify() is None
        assert journal.last_digest
        assert fold(journal.all())["note", "01", ""].value == "three"


def test_an_empty_database_opens_for_reading_and_is_left_empty(address):
    with Journal.open(address, read_only=True) as journal:
        assert journal.all() == []
        with pytest.raises(StoreError, match="reading only"):
            journal.append([note("no")])
    with Journal.open(address, read_only=True) as journal:
        assert journal.all() == []


def test_the_second_window_opens_for_reading_and_hears_who_has_it(address):
    with Journal.open(address, who="A. Teacher") as first:
        with pytest.raises(StoreInUseError, match="open for marking") as refused:
            Journal.open(address, who="B. Teacher")
        assert refused.value.holder.who == "A. Teacher"
        assert first.holder.who == "A. Teacher"
        first.append([note("one")])
        with Journal.open(address, read_only=True) as second:
            assert len(second.all()) == 1
    with Journal.open(address, who="B. Teacher") as journal:
        assert journal.holder.who == "B. Teacher"
        assert len(journal.all()) == 1


@pytest.mark.parametrize(
    "statement",
    [
        "UPDATE journal SET entry = 'x'",
        "DELETE FROM journal",
        "TRUNCATE journal",
        "INSERT INTO journal VALUES (9, 'x', 'x')",
        "INSERT INTO journal VALUES (1, 'x', 'x') ON CONFLICT (number) DO UPDATE SET entry = 'x'",
    ],
)
def test_the_server_itself_refuses_to_change_an_entry(address, statement):
    with Journal.open(address) as journal:
        journal.append([note("one"), note("two")])
    with pytest.raises(DBAPIError, match="append-only"):
        raw(address, statement)
    with Journal.open(address) as journal:
        assert len(journal.all()) == 2


def test_what_goes_round_the_triggers_is_found(address):
    with Journal.open(address) as journal:
        journal.append([note("one"), note("two")])
    raw(address, "ALTER TABLE journal DISABLE TRIGGER ALL")
    raw(address, "UPDATE journal SET entry = replace(entry, 'two', 'too') WHERE number = 2")
    with Journal.open(address) as journal:
        assert journal.verify().number == 2


def test_appends_from_many_threads_count_on_without_a_gap(address):
    with Journal.open(address) as journal, ThreadPoolExecutor(4) as pool:
        list(pool.map(lambda n: journal.append([note(f"{n}"), note(f"{n} again")]), range(20)))
        assert [d.number for d in journal.all()] == list(range(1, 41))
        assert journal.verify() is None


def test_a_refused_batch_leaves_nothing_behind(address):
    with Journal.open(address) as journal:
        with pytest.raises(StoreError, match="cannot be saved"):
            journal.append([note("fine"), note(float("nan"))])
        assert journal.all() == []


def test_two_classes_in_two_schemas_of_one_database(address):
    raw(address, "CREATE SCHEMA first")
    raw(address, "CREATE SCHEMA second")
    one = f"{address}&options=-csearch_path%3Dfirst"
    two = f"{address}&options=-csearch_path%3Dsecond"
    with Journal.open(one) as a, Journal.open(two) as b:
        a.append([note("first")])
        assert b.all() == []


def test_what_is_wrong_is_said(server, address):
    with pytest.raises(StoreError, match="nowhere"):
        Journal.open(server.format(database="nowhere"))
    gone = address.replace("host=", "host=/nowhere")
    with pytest.raises(StoreError, match="could not be reached"):
        Journal.open(gone)
    raw(address, "CREATE TABLE other (one int)")
    with pytest.raises(StoreError, match="other program"):
        Journal.open(address)


def test_a_class_folder_that_names_its_server_is_kept_there(address, tmp_path):
    table = "Length / cm,t1 / s for 10 swings,t2 / s\n20,9.0,8.9\n40,12.7,12.8\n60,15.5,15.6\n"
    (tmp_path / "Ada Invented").mkdir()
    (tmp_path / "Ada Invented" / "readings.csv").write_text(table, "utf-8")
    (tmp_path / "class.markbench-server").write_text(f"{address}\n", "utf-8")
    for _ in range(2):  # the second time, what the first kept is there
        session = Session.open(tmp_path, "A. Teacher")
        learner = session.learners[0].id
        session.accept(learner)
        criterion = next(iter(session.marks(learner)))
        session.close()
    with Journal.open(address, read_only=True) as journal:
        kept = [d for d in journal.all() if d.subject == criterion]
        assert [(d.kind, d.who) for d in kept] == [("mark", "A. Teacher")]
    assert not (tmp_path / "class.markbench").exists()
