"""The journal keeps what it is told, in order, unchanged, and says so when it cannot."""

import datetime as dt
import hashlib
import json
import os
import sqlite3
from contextlib import closing

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from markbench.model import Decision
from markbench.store import (
    Journal,
    StoreDamagedError,
    StoreError,
    StoreInUseError,
    StoreTooNewError,
    fold,
)


@pytest.fixture
def path(tmp_path):
    return tmp_path / "class.markbench"


def note(text, learner="L01", subject=""):
    return Decision("note", learner, subject, text, who="A. Teacher")


def raw(path, statement, *values):
    """Reach into the file past the store, as a meddler would."""
    with closing(sqlite3.connect(path)) as connection:
        connection.execute(statement, values)
        connection.commit()


def unguard(path):
    for trigger in ("journal_keeps_entries", "journal_loses_nothing", "journal_counts_on"):
        raw(path, f"DROP TRIGGER {trigger}")


def test_appended_decisions_come_back_numbered_and_dated_after_reopening(path):
    with Journal.open(path) as journal:
        first = journal.append([note("one"), note("two", "L02")])
        second = journal.append([note("three")])
    with Journal.open(path) as journal:
        assert journal.all() == first + second
        assert journal.since(2) == second
        assert journal.verify() is None
    assert [d.number for d in first + second] == [1, 2, 3]
    assert all(d.at.utcoffset() == dt.timedelta(0) for d in first + second)


def test_a_refused_batch_leaves_nothing_behind(path):
    with Journal.open(path) as journal:
        with pytest.raises(StoreError, match="cannot be saved"):
            journal.append([note("fine"), note(float("nan"))])
        assert journal.all() == []
        assert journal.append([]) == []


@pytest.mark.parametrize("value", [float("inf"), {1: "a"}, [{"a": {2: 3}}], object(), b"bytes"])
def test_what_is_not_json_is_refused(path, value):
    with Journal.open(path) as journal, pytest.raises(StoreError, match="cannot be saved"):
        journal.append([note(value)])


def test_a_clock_set_back_is_kept_as_said_and_never_reorders(path):
    later = dt.datetime(2031, 5, 2, 12, tzinfo=dt.timezone(dt.timedelta(hours=8)))
    earlier = dt.datetime(2030, 1, 1, tzinfo=dt.UTC)
    with Journal.open(path) as journal:
        journal.append([Decision("note", "L01", "", "first", at=later)])
        journal.append([Decision("note", "L01", "", "second", at=earlier)])
        kept = journal.all()
    assert [d.at for d in kept] == [later, earlier]
    assert kept[0].at.isoformat() == "2031-05-02T04:00:00+00:00"  # 12:00 at UTC+8
    assert fold(kept)["note", "L01", ""].value == "second"


def test_the_chain_is_the_documented_one(path):
    """Recomputed here from the words of the issue: SHA-256 over previous digest + JSON."""
    with Journal.open(path) as journal:
        journal.append([note("one"), note("two")])
        last = journal.last_digest
    with closing(sqlite3.connect(path)) as connection:
        lines = [row[0] for row in connection.execute("SELECT entry FROM journal ORDER BY number")]
    digest = ""
    for line in lines:
        assert line == json.dumps(json.loads(line), sort_keys=True, separators=(",", ":"))
        digest = hashlib.sha256((digest + line).encode()).hexdigest()
    assert digest == last


@pytest.mark.parametrize(
    "statement",
    [
        "UPDATE journal SET entry = '{}' WHERE number = 1",
        "DELETE FROM journal WHERE number = 1",
        "INSERT OR REPLACE INTO journal VALUES (1, '{}', 'x')",
        "INSERT INTO journal VALUES (7, '{}', 'x')",
    ],
)
def test_the_file_itself_refuses_changes(path, statement):
    with Journal.open(path) as journal:
        journal.append([note("one"), note("two")])
    with pytest.raises(sqlite3.IntegrityError, match="append-only"):
        raw(path, statement)


@pytest.mark.parametrize(
    ("statement", "number", "words"),
    [
        ("UPDATE journal SET entry = replace(entry, 'two', 'six') WHERE number = 2", 2, "not as"),
        ("UPDATE journal SET digest = upper(digest) WHERE number = 3", 3, "not as"),
        ("DELETE FROM journal WHERE number = 2", 2, "missing"),
        ("UPDATE journal SET entry = replace(entry, '2026', '2019') WHERE number = 1", 1, "not as"),
        ("UPDATE journal SET entry = replace(entry, 'two', 'twö') WHERE number = 2", 2, "not as"),
    ],
)
def test_tampering_is_found_at_the_first_broken_entry(path, statement, number, words):
    at = dt.datetime(2026, 3, 1, tzinfo=dt.UTC)
    with Journal.open(path) as journal:
        journal.append([Decision("note", "L", "", t, at=at) for t in ("one", "two", "three")])
    unguard(path)
    raw(path, statement)
    with Journal.open(path, read_only=True) as journal:
        broken = journal.verify()
    assert broken is not None
    assert broken.number == number
    assert words in broken.message


def test_a_newer_file_is_refused_untouched(path):
    with Journal.open(path) as journal:
        journal.append([note("one")])
    raw(path, "INSERT INTO migration VALUES ('9001-from-the-future', '2040-01-01')")
    before = path.read_bytes()
    stamp = path.stat().st_mtime_ns
    for read_only in (False, True):
        with pytest.raises(StoreTooNewError, match="newer Markbench"):
            Journal.open(path, read_only=read_only)
    assert path.read_bytes() == before
    assert path.stat().st_mtime_ns == stamp


def make_older(path):
    """A file as the first migration alone left it, holding one entry."""
    line = (
        '{"at":"2026-01-05T10:00:00+00:00","before":null,"kind":"note","learner":"L01",'
        '"number":1,"subject":"","undoes":null,"value":"old","who":"A. Teacher","why":""}'
    )
    digest = hashlib.sha256(line.encode()).hexdigest()
    raw(path, "CREATE TABLE migration (name VARCHAR(60) PRIMARY KEY, at VARCHAR(40) NOT NULL)")
    raw(
        path,
        "CREATE TABLE journal (number INTEGER PRIMARY KEY, entry TEXT NOT NULL, "
        "digest VARCHAR(64) NOT NULL)",
    )
    raw(path, "INSERT INTO migration VALUES ('0001-journal', '2026-01-05')")
    raw(path, "INSERT INTO journal VALUES (1, ?, ?)", line, digest)


def test_an_older_file_is_brought_up_to_date_after_a_copy(path, tmp_path):
    make_older(path)
    with Journal.open(path, read_only=True) as journal:
        assert [d.value for d in journal.all()] == ["old"]
    with Journal.open(path) as journal:
        assert [d.value for d in journal.all()] == ["old"]
        assert journal.verify() is None
        assert journal.append([note("new")])[0].number == 2
    with pytest.raises(sqlite3.IntegrityError, match="append-only"):
        raw(path, "DELETE FROM journal")
    (copy,) = (tmp_path / "class.markbench-backups").glob("*.markbench")
    with closing(sqlite3.connect(copy)) as connection:
        assert connection.execute("SELECT name FROM migration").fetchall() == [("0001-journal",)]


def test_a_failing_migration_leaves_the_file_as_it_was(path, monkeypatch):
    make_older(path)

    def half_done(connection):
        connection.exec_driver_sql("CREATE TABLE half (x INTEGER)")
        raise sqlite3.OperationalError("stopped half way")

    from markbench.store import migrations

    monkeypatch.setattr(
        migrations, "MIGRATIONS", (migrations.MIGRATIONS[0], ("0002-append-only", half_done))
    )
    with pytest.raises(StoreError):
        Journal.open(path)
    monkeypatch.undo()
    with closing(sqlite3.connect(path)) as connection:
        tables = {row[0] for row in connection.execute("SELECT name FROM sqlite_master")}
    assert "half" not in tables
    with Journal.open(path) as journal:
        assert [d.value for d in journal.all()] == ["old"]


def test_some_other_programs_database_is_left_alone(path):
    raw(path, "CREATE TABLE recipes (name TEXT)")
    before = path.read_bytes()
    with pytest.raises(StoreError, match="some other program"):
        Journal.open(path)
    assert path.read_bytes() == before


def test_what_is_no_database_is_called_damaged(path):
    path.write_text("name,mark\nAda,12\n" * 100)
    with pytest.raises(StoreDamagedError, match="rebuilt"):
        Journal.open(path)


def test_a_second_window_is_told_who_has_the_class_and_may_read(path):
    with Journal.open(path, who="A. Teacher") as first:
        first.append([note("one")])
        with pytest.raises(StoreInUseError, match=r"A\. Teacher") as refused:
            Journal.open(path)
        assert refused.value.holder.who == "A. Teacher"
        assert refused.value.holder.process == os.getpid()
        with Journal.open(path, read_only=True) as second:
            assert second.holder.who == "A. Teacher"
            first.append([note("two")])
            assert [d.value for d in second.all()] == ["one", "two"]
            with pytest.raises(StoreError, match="reading only"):
                second.append([note("three")])
    with Journal.open(path, read_only=True) as alone:
        assert alone.holder is None
    with Journal.open(path, who="B. Teacher") as next_one:
        assert next_one.holder.who == "B. Teacher"


def test_a_damaged_claim_does_not_keep_the_teacher_out(path):
    Journal.open(path).close()
    (path.with_name("class.markbench-backups") / "in-use").write_bytes(b"rubbish" * 999)
    with Journal.open(path, who="A. Teacher") as journal:
        assert journal.holder.who == "A. Teacher"


def test_reading_a_class_that_is_not_there_makes_no_file(path):
    with Journal.open(path, read_only=True) as journal:
        assert (journal.all(), journal.verify(), journal.last_digest) == ([], None, "")
        assert journal.holder is None
    assert list(path.parent.iterdir()) == []


def test_a_missing_folder_is_said_plainly(path):
    with pytest.raises(StoreError, match=r"folder is missing|out of reach"):
        Journal.open(path.parent / "nowhere" / "class.markbench")


def test_another_writer_is_waited_for_then_said_plainly(path, monkeypatch):
    monkeypatch.setattr("markbench.store.database.WAIT_S", 0.05)
    with Journal.open(path) as journal, closing(sqlite3.connect(path)) as other:
        journal.append([note("one")])
        other.execute("BEGIN IMMEDIATE")
        with pytest.raises(StoreError, match="being written by another program"):
            journal.append([note("two")])
        other.rollback()
        assert journal.append([note("two")])[0].number == 2


def test_a_full_disk_is_said_plainly_and_breaks_nothing(path):
    """SQLite's own page limit gives the very error a full disk gives (SQLITE_FULL)."""
    with Journal.open(path) as journal:
        journal.append([note("one")])
        with journal._engine.connect() as connection:
            pages = connection.exec_driver_sql("PRAGMA page_count").scalar()
            connection.exec_driver_sql(f"PRAGMA max_page_count = {pages}")
        with pytest.raises(StoreError, match="is full"):
            journal.append([note("x" * 100_000)])
        assert [d.value for d in journal.all()] == ["one"]
        assert journal.verify() is None


@pytest.mark.skipif(os.name == "nt", reason="Windows forbids deleting an open file")
def test_a_file_deleted_under_us_is_noticed_not_written_into_the_void(path):
    with Journal.open(path) as journal:
        journal.append([note("one")])
        path.unlink()
        with pytest.raises(StoreError, match="moved or deleted"):
            journal.append([note("two")])
    assert not path.exists()


@pytest.mark.skipif(
    os.name == "nt" or os.geteuid() == 0, reason="the administrator may write anywhere"
)
def test_a_read_only_folder_is_said_plainly(path):
    path.parent.chmod(0o500)
    try:
        with pytest.raises(StoreError, match="read-only"):
            Journal.open(path)
    finally:
        path.parent.chmod(0o700)


def test_addresses(path):
    with Journal.open(f"sqlite:///{path}") as journal:
        journal.append([note("one")])
    with Journal.open(str(path)) as journal:
        assert len(journal.all()) == 1
    with pytest.raises(StoreError, match="mysql server"):
        Journal.open("mysql://school/class")
    with pytest.raises(StoreError, match="names none"):
        Journal.open("sqlite://")


# Text of any kind, unpaired surrogates and NUL included: file names on some systems hold them.
any_text = st.text(st.characters(), max_size=30)
any_json = st.recursive(
    st.none()
    | st.booleans()
    | st.integers()
    | st.floats(allow_nan=False, allow_infinity=False)
    | any_text,
    lambda inner: st.lists(inner, max_size=4) | st.dictionaries(any_text, inner, max_size=4),
    max_leaves=12,
)
some_key = st.sampled_from(["a", "b"])


def paired(value):
    """Two surrogates that make one character are that character, as in any JSON."""
    if isinstance(value, str):
        return value.encode("utf-16", "surrogatepass").decode("utf-16", "surrogatepass")
    if isinstance(value, list):
        return [paired(inner) for inner in value]
    if isinstance(value, dict):
        return {paired(key): paired(inner) for key, inner in value.items()}
    return value


@settings(deadline=None, max_examples=40)
@given(value=any_json, subject=any_text, why=any_text)
def test_any_json_value_round_trips(tmp_path_factory, value, subject, why):
    path = tmp_path_factory.mktemp("json") / "class.markbench"
    with Journal.open(path) as journal:
        kept = journal.append([Decision("note", "L", subject, value, before=value, why=why)])
        assert journal.all() == kept
        assert journal.verify() is None
    (decision,) = kept
    expected = paired(value)
    assert decision.value == expected
    # 1, 1.0 and True are equal but not the same; the order of keys means nothing in JSON.
    assert json.dumps(decision.value, sort_keys=True) == json.dumps(expected, sort_keys=True)
    assert decision.subject == paired(subject)
    assert decision.why == paired(why)


@settings(deadline=None, max_examples=40)
@given(
    batches=st.lists(
        st.lists(st.tuples(some_key, some_key, st.none() | st.integers()), max_size=4), max_size=5
    )
)
def test_the_present_is_what_was_said_last(tmp_path_factory, batches):
    path = tmp_path_factory.mktemp("fold") / "class.markbench"
    expected = {}
    with Journal.open(path) as journal:
        for batch in batches:
            journal.append(Decision("mark", learner, subject, v) for learner, subject, v in batch)
            for learner, subject, value in batch:
                expected["mark", learner, subject] = value
        kept = journal.all()
    state = fold(kept)
    assert {key: d.value for key, d in state.items()} == {
        key: value for key, value in expected.items() if value is not None
    }
    half = len(kept) // 2
    assert fold(kept[half:], fold(kept[:half])) == state
