"""Rolling copies of the class's file in ``<file>-backups/``, made while it is whole.

A copy's name begins with the number of its last entry, so that the newest is the fullest
whatever the clock said. As the journal only grows, a later sound copy holds everything an
earlier one does; dropping the oldest loses nothing.
"""

from __future__ import annotations

import datetime as dt
import os
import sqlite3
from contextlib import closing
from pathlib import Path

KEEP = 10
AT_MOST_EVERY = dt.timedelta(hours=1)
_STAMP = "%Y%m%dT%H%M%SZ"


def folder_for(path: Path) -> Path:
    """Where the copies lie."""
    return path.with_name(path.name + "-backups")


def backups_of(path: Path) -> tuple[Path, ...]:
    """The copies of a class's file, fullest first."""
    return tuple(sorted(folder_for(path).glob("entries-*.markbench"), reverse=True))


def made_at(copy: Path) -> dt.datetime | None:
    """When a copy was made, by its name; ``None`` where the name does not say."""
    try:
        stamp = copy.stem.split("-", 2)[2][:16]
        return dt.datetime.strptime(stamp, _STAMP).replace(tzinfo=dt.UTC)
    except (IndexError, ValueError):
        return None


def is_due(path: Path, last_number: int, now: dt.datetime) -> bool:
    """Whether something was decided since the fullest copy, and an hour has gone by.

    A copy dated in the future (the clock was set back) does not hold the next one up.
    """
    newest = next(iter(backups_of(path)), None)
    if newest is None:
        return last_number > 0
    if int(newest.stem.split("-", 2)[1]) >= last_number:
        return False
    made = made_at(newest)
    return made is None or not dt.timedelta(0) <= now - made < AT_MOST_EVERY


def back_up(path: Path, last_number: int, now: dt.datetime) -> Path:
    """Copy the file through SQLite's backup interface and drop the oldest beyond ``KEEP``.

    The copy appears under its name only when complete.
    """
    folder = folder_for(path)
    folder.mkdir(exist_ok=True)
    target = folder / f"entries-{last_number:07d}-{now.astimezone(dt.UTC):{_STAMP}}.markbench"
    unfinished = target.with_suffix(".unfinished")
    unfinished.unlink(missing_ok=True)
    with closing(sqlite3.connect(path)) as source, closing(sqlite3.connect(unfinished)) as copy:
        source.backup(copy)
    os.replace(unfinished, target)
    for oldest in backups_of(path)[KEEP:]:
        oldest.unlink(missing_ok=True)
    return target
