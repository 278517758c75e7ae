"""Copies are made while the file is sound, and a damaged file is rebuilt from all there is."""

import datetime as dt
import hashlib
import sqlite3
from contextlib import closing

import pytest

from markbench.model import Decision
from markbench.store import Journal, StoreDamagedError, StoreError, backups_of, salvage
from markbench.store import backups as rolling

NOON = dt.datetime(2026, 3, 2, 12, tzinfo=dt.UTC)


@pytest.fixture
def path(tmp_path):
    return tmp_path / "class.markbench"


def fill(path, count, start=0, size=20):
    with Journal.open(path) as journal:
        return journal.append(
            Decision("note", "L01", str(start + i), f"said {start + i} " + "x" * size)
            for i in range(count)
        )


def test_a_copy_is_made_on_opening_once_something_was_said(path):
    Journal.open(path).close()
    assert backups_of(path) == ()
    said = fill(path, 3)
    assert backups_of(path) == ()  # made on opening, before those three
    Journal.open(path).close()
    (copy,) = backups_of(path)
    with Journal.open(copy, read_only=True) as journal:
        assert journal.all() == said
        assert journal.verify() is None
    fill(path, 1)
    Journal.open(path).close()
    assert backups_of(path) == (copy,)  # within the hour


@pytest.mark.parametrize(
    ("hours", "last", "due"),
    [(0.5, 9, False), (1.5, 9, True), (1.5, 5, False), (-30, 9, True), (0.99, 6, False)],
)
def test_when_a_copy_is_due(path, hours, last, due):
    fill(path, 5)
    rolling.back_up(path, 5, NOON)
    assert rolling.is_due(path, last, NOON + dt.timedelta(hours=hours)) is due


def test_the_fullest_ten_are_kept_whatever_the_clock_said(path):
    fill(path, 1)
    for number in range(1, 15):
        rolling.back_up(path, number, NOON - dt.timedelta(days=number))
    kept = [int(copy.name.split("-")[1]) for copy in backups_of(path)]
    assert kept == list(range(14, 4, -1))


def test_a_meddled_file_never_replaces_a_sound_copy(path):
    fill(path, 3)
    Journal.open(path).close()
    (sound,) = backups_of(path)
    with closing(sqlite3.connect(path)) as connection:
        connection.execute("DROP TRIGGER journal_keeps_entries")
        connection.execute("UPDATE journal SET entry = replace(entry, 'said', 'sung')")
        connection.commit()
    with Journal.open(path) as journal:
        assert journal.back_up() is None
    assert backups_of(path) == (sound,)


def test_a_vanished_or_emptied_file_is_not_started_afresh(path):
    said = fill(path, 4)
    Journal.open(path).close()
    path.write_bytes(b"")
    with pytest.raises(StoreDamagedError, match="empty"):
        Journal.open(path)
    path.unlink()
    with pytest.raises(StoreDamagedError, match="gone"):
        Journal.open(path)
    result = salvage(path)
    assert (result.entries, result.proved, result.lost, result.kept) == (4, 4, (), None)
    with Journal.open(path) as journal:
        assert journal.all()[:4] == said


def overwrite(path, start, length):
    with path.open("r+b") as file:
        file.seek(start)
        file.write(b"\xa5" * length)


def test_the_header_destroyed_with_no_copy_at_all(path):
    said = fill(path, 60)
    overwrite(path, 0, 2000)
    with pytest.raises(StoreDamagedError):
        Journal.open(path)
    before = hashlib.sha256(path.read_bytes()).hexdigest()
    result = salvage(path, who="A. Teacher")
    assert (result.entries, result.unproved, result.lost) == (60, (), ())
    assert hashlib.sha256(result.kept.read_bytes()).hexdigest() == before
    with Journal.open(path) as journal:
        *kept, last = journal.all()
        assert journal.verify() is None
    assert kept == said
    assert last.kind == "salvaged"
    assert last.value == {"proved": 60, "unproved": [], "lost": []}


def test_the_newest_entries_come_from_the_damaged_file_the_rest_from_the_copy(path):
    said = fill(path, 200)
    Journal.open(path).close()
    assert len(backups_of(path)) == 1
    said += fill(path, 200, start=200)
    # The early leaves of the table are gone; every entry in them is in the copy.
    overwrite(path, 4096, 4096 * 5)
    result = salvage(path)
    assert (result.entries, result.unproved, result.lost) == (400, (), ())
    with Journal.open(path) as journal:
        assert journal.all()[:400] == said
        assert journal.append([Decision("note", "L", "", "on we go")])[0].number == 402


def test_what_is_lost_is_numbered_and_nothing_else_goes_with_it(path):
    said = fill(path, 300)
    size = path.stat().st_size
    middle = size // 2 // 4096 * 4096
    overwrite(path, middle, 4096)
    result = salvage(path)
    assert result.lost
    assert result.entries == 300 - len(result.lost)
    assert result.unproved == (result.lost[-1] + 1,)  # only the one whose forerunner is gone
    with Journal.open(path) as journal:
        kept = journal.all()
        assert journal.verify() is None
    for was, now in zip(said, kept, strict=False):
        if was.number in result.lost:
            assert (now.number, now.kind, now.value) == (was.number, "lost", None)
        else:
            assert now == was


def test_long_entries_that_spill_over_pages_are_recovered_too(path):
    said = fill(path, 8, size=20_000)
    Journal.open(path).close()
    overwrite(path, 0, 4096)
    result = salvage(path)
    assert result.lost == ()
    with Journal.open(path) as journal:
        assert journal.all()[:8] == said


def test_salvaging_a_sound_file_changes_no_decision(path):
    said = fill(path, 5)
    assert str(salvage(path)).startswith("All 5 decisions")
    with Journal.open(path) as journal:
        assert journal.all()[:5] == said


def test_nothing_readable_changes_nothing(path):
    path.write_bytes(b"not a database at all" * 50)
    with pytest.raises(StoreError, match="No decision could be read"):
        salvage(path)
    assert path.read_bytes() == b"not a database at all" * 50


def test_a_class_in_use_is_not_salvaged(path):
    with Journal.open(path) as journal:
        journal.append([Decision("note", "L", "", "x")])
        with pytest.raises(StoreError, match="open for marking"):
            salvage(path)
