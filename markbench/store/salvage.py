"""Rebuild a damaged class file from whatever can still be read, throwing nothing away.

Entries are gathered from the damaged file (through SQLite where it still answers, and
straight from the bytes where it does not) and from every backup. The digest chain then
says which of them are as written. The damaged file itself is kept, whole.
"""

from __future__ import annotations

import datetime as dt
import os
import re
import shutil
import sqlite3
import tempfile
from collections import defaultdict
from collections.abc import Iterator
from contextlib import closing
from dataclasses import dataclass
from pathlib import Path

from markbench.model import Decision, say
from markbench.store import backups
from markbench.store.entry import decode, digest_of
from markbench.store.errors import StoreError, told_plainly
from markbench.store.holder import claim
from markbench.store.journal import Journal

Found = dict[int, list[tuple[str, str]]]
_SHORTEST_ENTRY = 100  # bytes: the names of its fields and its digest alone are more
# An entry on an SQLite page: its line (printable ASCII) directly followed by its digest.
_CARVED = re.compile(rb'(\{"at":"[\x20-\x7e]{60,}?\})([0-9a-f]{64})')


@dataclass(frozen=True, slots=True)
class Salvaged:
    """What was rebuilt.

    ``proved`` entries are as they were written, by the digest chain; ``unproved`` numbers
    were read but stand after a gap, ``lost`` ones could not be read anywhere. ``kept`` is
    the damaged file, untouched, under its new name (``None`` if it had vanished).
    """

    entries: int
    proved: int
    unproved: tuple[int, ...]
    lost: tuple[int, ...]
    kept: Path | None

    def __str__(self) -> str:
        if not self.unproved and not self.lost:
            return f"All {self.entries} decisions were recovered and are as they were written."
        return (
            f"{self.entries} decisions were recovered; {self.proved} are proved to be as they "
            f"were written, {len(self.unproved)} could be read but not proved, "
            f"{len(self.lost)} are lost. The damaged file is kept."
        )


def salvage(path: Path, *, who: str = "") -> Salvaged:
    """Rebuild the class's file in place; the damaged one moves to the backups folder.

    Numbers are kept: a lost entry leaves an entry of kind ``lost`` in its place, and the
    new journal ends with one of kind ``salvaged`` that says what happened.
    """
    path = path.absolute()
    folder = backups.folder_for(path)
    with told_plainly(path.name):
        folder.mkdir(exist_ok=True)
        held = claim(folder / "in-use", path.name, who)
        try:
            return _rebuild(path, folder, who)
        finally:
            held.release()


def _rebuild(path: Path, folder: Path, who: str) -> Salvaged:
    found: Found = defaultdict(list)
    sources = [path, *backups.backups_of(path), *sorted(folder.glob("damaged-*.markbench"))]
    for source in sources:
        if source.exists():
            for number, line, digest in _entries_of(source):
                if (line, digest) not in found[number]:
                    found[number].append((line, digest))
    # A number beyond what so many bytes can hold is none of this journal's.
    most = sum(s.stat().st_size for s in sources if s.exists()) // _SHORTEST_ENTRY
    found = {number: lines for number, lines in found.items() if 0 < number <= most}
    if not found:
        raise StoreError(
            say(
                "No decision could be read from {file} or its copies; nothing was changed.",
                file=path.name,
            )
        )
    chosen, proved, unproved, lost = _choose(found)
    now = dt.datetime.now(dt.UTC)
    with tempfile.TemporaryDirectory(dir=folder, prefix="salvage-") as work:
        fresh = Path(work) / path.name
        with Journal.open(fresh, who=who) as journal:
            journal.append(chosen)
            journal.append(
                [
                    Decision(
                        kind="salvaged",
                        learner="",
                        subject="",
                        value={"proved": proved, "unproved": list(unproved), "lost": list(lost)},
                        who=who,
                        at=now,
                        why="The class's file was damaged and has been rebuilt.",
                    )
                ]
            )
        kept = None
        if path.exists():
            kept = _free_name(folder, f"damaged-{now:%Y%m%dT%H%M%SZ}")
            for tail in ("", "-journal"):
                part = path.with_name(path.name + tail)
                if part.exists():
                    shutil.copy2(part, kept.with_name(kept.name + tail))
        path.with_name(path.name + "-journal").unlink(missing_ok=True)
        os.replace(fresh, path)
    return Salvaged(len(chosen) - len(lost), proved, unproved, lost, kept)


def _choose(found: Found) -> tuple[list[Decision], int, tuple[int, ...], tuple[int, ...]]:
    """Follow the chain from its start; past a break, take what is there and say so."""
    chosen: list[Decision] = []
    unproved: list[int] = []
    lost: list[int] = []
    previous: str | None = ""
    for number in range(1, max(found) + 1):
        candidates = found.get(number, [])
        good = [
            (line, digest)
            for line, digest in candidates
            if previous is not None
            and digest == digest_of(previous, line)
            and _number_in(line) == number
        ]
        if good:
            line, previous = good[0]
            chosen.append(decode(line))
            continue
        readable = [line for line, _ in candidates if _number_in(line) == number]
        if readable:
            chosen.append(decode(readable[0]))
            unproved.append(number)
            # The entries after this one may still be chained to it as it stands.
            previous = candidates[0][1] if len(candidates) == 1 else None
        else:
            chosen.append(Decision(kind="lost", learner="", subject=str(number), value=None))
            lost.append(number)
            previous = None
    proved = len(chosen) - len(unproved) - len(lost)
    return chosen, proved, tuple(unproved), tuple(lost)


def _entries_of(source: Path) -> Iterator[tuple[int, str, str]]:
    """Every entry that can be read from one file, by either way; repeats are fine."""
    with tempfile.TemporaryDirectory(dir=source.parent, prefix="salvage-") as work:
        copy = Path(work) / "copy"  # SQLite may roll back a half-done write: not in the original
        shutil.copyfile(source, copy)
        rollback = source.with_name(source.name + "-journal")
        if rollback.exists():
            shutil.copyfile(rollback, copy.with_name("copy-journal"))
        yield from _read_through_sqlite(copy)
    for file in (source, rollback):
        if file.exists():
            for match in _CARVED.finditer(file.read_bytes()):
                line, digest = (part.decode("ascii") for part in match.groups())
                number = _number_in(line)
                if number is not None:
                    yield number, line, digest


def _read_through_sqlite(file: Path) -> Iterator[tuple[int, str, str]]:
    """From the front as far as it goes, then from the back as far as it goes."""
    with closing(sqlite3.connect(file)) as connection:
        connection.text_factory = lambda raw: raw.decode("ascii", "replace")
        for order in ("ASC", "DESC"):
            try:
                for number, line, digest in connection.execute(
                    f"SELECT number, entry, digest FROM journal ORDER BY number {order}"
                ):
                    if isinstance(line, str) and _number_in(line) == number:
                        yield number, line, str(digest)
            except sqlite3.Error:
                continue


def _number_in(line: str) -> int | None:
    """The entry's own number, or ``None`` if the line is no whole entry."""
    try:
        return decode(line).number
    except ValueError:
        return None


def _free_name(folder: Path, stem: str) -> Path:
    names = [f"{stem}.markbench", *(f"{stem}-{n}.markbench" for n in range(2, 1000))]
    return next(folder / name for name in names if not (folder / name).exists())
