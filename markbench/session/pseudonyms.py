"""Marking a class under numbers: a copy of its folder without names, and the way home.

The copy is a class folder like any other, so window, exports and moderation of the copy know
numbers only, and it can be marked on a machine that never sees the names. The key lies in a
file of its own, which the teacher keeps elsewhere. At the end the marks are brought home into
the class itself, with the signatures and times they were made with.

Names and ids are replaced in folder and file names and in the cells and text of tables; photos
lose their tags, films their tags and their sound. What no program can take out with certainty
stays, and is said wherever a copy is made: faces, handwriting, a name on a picture, a learner's
way of writing. Reports and files that nobody owns are left out and named. Rejected: hiding
names in the window alone (that is blind marking; it protects from favour, not from a lost
laptop).
"""

from __future__ import annotations

import csv
import datetime as dt
import io
import json
import os
import random
import shutil
from collections import Counter
from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from pathlib import Path
from typing import Any

from markbench.intake.brief_file import BRIEF_NAME
from markbench.intake.brief_writing import write_brief
from markbench.intake.class_list import CLASS_LIST_ENDINGS
from markbench.intake.kinds import ending
from markbench.intake.tables.reader import read_grids
from markbench.intake.tables.texts import decode
from markbench.intake.tables.workbooks import UnreadableError
from markbench.intake.tree import PieceError, open_piece
from markbench.model import Decision, Piece, say
from markbench.moderation.scrubbing import Scrubber
from markbench.session.errors import RefusedError
from markbench.session.handed_in_work import WORK, Work, read_work, work_of
from markbench.session.keeping import store_of
from markbench.session.pack_media import NotCleanError, clean_photo, clean_video
from markbench.session.session import Progress, Session
from markbench.store import Journal, fold

FORMAT = "markbench-key"
KIND = "brought_home"
STAYS = (
    "faces, hands and rooms in photos and videos",
    "handwriting, and names written on what is pictured",
    "a learner's way of writing and the values themselves",
)
_NAMES = {
    "setup_photo": "set-up photo",
    "selfie": "selfie",
    "photo": "photo",
    "swing_video": "swing video",
}
# What is brought home: a person's word on a learner's work. Sampling, second marks and the
# signature come after, under the true names.
_HOME = frozenset(
    {
        "mark", "feedback", "note", "agreed_slip", "extension", "typed", "correction", "hints",
        "piece_kind", "piece_status", "swing_count",
    }
)  # fmt: skip


@dataclass(frozen=True, slots=True)
class Copied:
    """A copy that was made: ``left_out`` counts files by why they did not come along.

    ``doubts`` are words left in tables that may be names and may be words, as “Mark”.
    """

    folder: Path
    key: Path
    learners: int
    files: int
    left_out: Mapping[str, int]
    doubts: tuple[str, ...] = ()


@dataclass(slots=True)
class _Key:
    """Which number is whom, and which file and sheet of the copy was made of which."""

    folder: str
    made: str
    learners: dict[str, dict[str, str]] = field(default_factory=dict)
    files: dict[str, str] = field(default_factory=dict)
    sheets: dict[str, str] = field(default_factory=dict)  # file|sheet of the copy → true sheet
    work: dict[str, Work] = field(default_factory=dict)  # as it was when it was copied
    format: str = FORMAT
    version: int = 1


def make_copy(session: Session, to: Path, key: Path, *, progress: Progress | None = None) -> Copied:
    """Copy the class into the empty or new folder ``to`` under numbers; write ``key``.

    Raises :class:`RefusedError` where something is in the way or the key would lie in the
    copy, ``OSError`` where the disk refuses.
    """
    _refuse_places(session, to, key)
    order = [learner.id for learner in session.learners]
    random.SystemRandom().shuffle(order)
    width = max(2, len(str(len(order))))
    codes = {learner: f"P{number:0{width}}" for number, learner in enumerate(order, 1)}
    work = _Copying(session, to, codes)
    to.mkdir(parents=True, exist_ok=True)
    try:
        work.class_files()
        for done, learner in enumerate(order, 1):
            work.learner(learner)
            if progress is not None:
                progress(done, len(order), codes[learner])
        key.write_text(json.dumps(_plain(work.key), ensure_ascii=False, indent=1), "utf-8")
    except BaseException:
        shutil.rmtree(to, ignore_errors=True)
        raise
    return Copied(to, key, len(order), len(work.key.files), dict(work.left_out), tuple(work.doubts))


def bring_home(session: Session, copy: Path, key: Path) -> int:
    """Take what was decided in a copy into the class it was made of; returns how much.

    Raises :class:`RefusedError` where copy, key and class do not belong together, or the
    class is signed off.
    """
    known = _read_key(key)
    ids = {code: one["id"] for code, one in known.learners.items()}
    missing = sorted(set(ids.values()) - {learner.id for learner in session.learners})
    if missing:
        raise RefusedError(
            say("This key belongs to another class: it names learners not in this one.")
        )
    with Journal.open(store_of(copy), read_only=True) as journal:
        broken = journal.verify()
        if broken is not None:
            raise RefusedError(
                say("The copy's journal is not as it was written: {why}", why=broken.message)
            )
        theirs = fold(journal.all())
    home: list[Decision] = []
    at_home: set[tuple[str, str, str]] = set()
    for (kind, code, subject), decision in theirs.items():
        if kind not in _HOME:
            continue
        if code and code not in ids:
            raise RefusedError(
                say("This key belongs to another copy: it does not know its numbers.")
            )
        true = _true_subject(known, subject)
        mine = replace(decision, learner=ids.get(code, ""), subject=true, undoes=None, number=0)
        if kind == "mark":
            mine, work = _resting_at_home(mine, theirs.get((WORK, code, mine.value.get(WORK))),
                                          known.work.get(code))  # fmt: skip
            if work is not None and work.key not in at_home and session.value(*work.key) is None:
                at_home.add(work.key)
                home.append(work)
        held = session.value(*mine.key)
        if held != mine.value:
            home.append(replace(mine, before=held))
    if not home:
        raise RefusedError(say("There is nothing in this copy that the class does not have."))
    brought = len(home) - len(at_home)
    note = {"decisions": brought}
    session.keep_copy()
    session.take_in(home, Decision(KIND, "", "", note))
    return brought


def _resting_at_home(
    mark: Decision, there: Decision | None, here: Work | None
) -> tuple[Decision, Decision | None]:
    """A mark of the copy on the work at home that it was made of, and that work to be kept.

    Photos and films of a copy are other bytes; its readings tell that it was the same work.
    Where they do not, the mark comes home without saying what it rests on.
    """
    plain = {key: value for key, value in mark.value.items() if key != WORK}
    if there is None or here is None or _numbers(read_work(there.value)) != _numbers(here):
        return replace(mark, value=plain), None
    work = Decision(WORK, mark.learner, here.key, here.plain, who=mark.who, at=mark.at)
    return replace(mark, value={**plain, WORK: here.key}), work


def _numbers(work: Work) -> list[tuple[float, int, tuple[float, ...]]]:
    return [(row.length_m, row.swings, row.times_s) for row in work.rows]


def _true_subject(known: _Key, subject: str) -> str:
    """A subject of the copy (``file``, or ``file|sheet|cell``) as the class knows it."""
    parts = subject.split("|")
    if len(parts) == 3:
        parts[1] = known.sheets.get(f"{parts[0]}|{parts[1]}", parts[1])
    return "|".join((known.files.get(parts[0], parts[0]), *parts[1:]))


def _refuse_places(session: Session, to: Path, key: Path) -> None:
    ours, copy = session.folder.resolve(), to.resolve()
    if copy == ours or ours in copy.parents:
        raise RefusedError(say("The copy cannot lie in the class folder itself."))
    if to.exists() and (not to.is_dir() or any(to.iterdir())):
        raise RefusedError(
            say("{file} is not empty; choose a new folder for the copy.", file=to.name)
        )
    if copy in (key.resolve(), *key.resolve().parents):
        raise RefusedError(say("The key must not lie in the copy: keep it elsewhere."))
    if key.exists():
        raise RefusedError(
            say("{file} exists already; a key is never written over.", file=key.name)
        )


class _Copying:
    """One copy being made."""

    def __init__(self, session: Session, to: Path, codes: Mapping[str, str]) -> None:
        self.session, self.to, self.codes = session, to, codes
        scrubber = Scrubber.of(session.learners, codes)
        # A bare number stands in a cell where a name stood, so that it is matched as one.
        bare = {part: one.removeprefix("learner ") for part, one in scrubber.stands_for.items()}
        self.scrubber = replace(scrubber, stands_for=bare)
        self.doubts: list[str] = []
        self.left_out: Counter[str] = Counter()
        self.key = _Key(session.folder.name, dt.date.today().isoformat())
        self._sheets: set[str] = set()
        self._renamed: dict[str, str] = {}  # sheets of the workbook in hand

    def class_files(self) -> None:
        """Brief, class list, the class's own rubrics."""
        brief = self.session.brief
        pairs = tuple(
            (self.codes[one], self.codes[two])
            for one, two in brief.partners
            if one in self.codes and two in self.codes
        )
        title = self.scrubber.text(brief.title)
        write_brief(self.to / BRIEF_NAME, replace(brief, partners=pairs, title=title))
        rows = io.StringIO()
        writer = csv.writer(rows)
        writer.writerow(("id", "name"))
        for learner in sorted(self.session.learners, key=lambda one: self.codes[one.id]):
            code = self.codes[learner.id]
            writer.writerow((code, code))
            self.key.learners[code] = {"id": learner.id, "name": learner.name}
        (self.to / "class_list.csv").write_text(rows.getvalue(), "utf-8")
        own = self.session.folder / f"{brief.rubric.removesuffix('.toml')}.toml"
        if own.is_file():
            shutil.copyfile(own, self.to / own.name)
        work = self.session.work
        loose = len(work.unowned) + len(work.doubts)
        if loose:
            self.left_out[say("nobody owns it yet")] += loose
        if work.set_aside:
            self.left_out[say("it was called nobody's")] += len(work.set_aside)

    def learner(self, learner: str) -> None:
        """One learner's pieces, under the number."""
        code, used = self.codes[learner], Counter[str]()
        portfolio = self.session.portfolio(learner)
        self.key.work[code] = work_of(portfolio)
        if portfolio.earlier:
            self.left_out[say("a later hand-in replaced it")] += len(portfolio.earlier)
        for piece in portfolio.pieces:
            gone = say("it was removed after sign-off")
            why = gone if piece.gone else self._piece(piece, code, used)
            if why:
                self.left_out[why] += 1

    def _piece(self, piece: Piece, code: str, used: Counter[str]) -> str:
        """Copy one piece; returns why it was left out."""
        sheet, _, row = piece.file.rpartition("#")
        whole = "!" in row and sheet.casefold().endswith(CLASS_LIST_ENDINGS)
        file = sheet if whole else piece.file
        if whole and file in self._sheets:
            return ""
        try:
            data = open_piece(self.session.folder, file)
            made, end = self._made(piece, file, data)
        except (PieceError, NotCleanError, UnreadableError) as error:
            return str(error).rstrip(".")
        if not end:
            return say("a report or another file in which names may stand")
        if whole:
            self._sheets.add(file)
            name = f"class sheet {len(self._sheets)}.{end}"
        else:
            what = _NAMES.get(piece.kind, "readings")
            used[what] += 1
            count = f" {used[what]}" if used[what] > 1 else ""
            name = f"{code}/{code} {what}{count}.{end}"
        target = self.to / name
        target.parent.mkdir(exist_ok=True)
        target.write_bytes(made)
        if piece.modified is not None:  # hand-ins are late or not by their dates
            stamp = piece.modified.timestamp()
            os.utime(target, (stamp, stamp))
        self.key.files[name] = file
        self.key.sheets |= {f"{name}|{new}": old for new, old in self._renamed.items()}
        return ""

    def _made(self, piece: Piece, file: str, data: bytes) -> tuple[bytes, str]:
        """The piece without names, and its ending; no ending where it cannot come along."""
        self._renamed = {}
        if piece.kind in ("setup_photo", "selfie", "photo"):
            return clean_photo(data), "jpg"
        if piece.kind == "swing_video":
            return clean_video(data), "mp4"
        table = self.session.portfolio(piece.match.learner).table if piece.match else None
        if piece.kind != "readings" and (table is None or table.source.file != piece.file):
            return b"", ""
        if ending(file) in ("csv", "tsv", "tab", "txt"):
            return self._text(decode(data)).encode("utf-8"), ending(file)
        return self._workbook(file, data), "xlsx"

    def _text(self, text: str) -> str:
        self.doubts += self.scrubber.doubts(text)
        return self.scrubber.text(text)

    def _workbook(self, file: str, data: bytes) -> bytes:
        """The cells of every sheet, each in its place; nothing else of the file."""
        from openpyxl import Workbook

        from markbench.export.plain_text import for_cell

        book = Workbook()
        book.remove(book.active)
        for grid in read_grids(file, data):
            sheet = book.create_sheet(self.scrubber.text(grid.sheet)[:31] or "Sheet1")
            self._renamed[sheet.title] = grid.sheet
            for at, cells in enumerate(grid.rows, 1):
                for column, value in enumerate(cells, 1):
                    if value == "":
                        continue
                    cell = sheet.cell(at, column)
                    if isinstance(value, str):
                        cell.value = for_cell(self._text(value))
                        cell.data_type = "s"  # never a formula
                    else:
                        cell.value = value
        held = io.BytesIO()
        book.save(held)
        return held.getvalue()


def _plain(key: _Key) -> dict[str, Any]:
    return {
        "format": key.format,
        "version": key.version,
        "class": key.folder,
        "made": key.made,
        "learners": key.learners,
        "files": key.files,
        "sheets": key.sheets,
        "work": {code: work.plain for code, work in key.work.items()},
    }


def _read_key(path: Path) -> _Key:
    try:
        found = json.loads(path.read_text("utf-8"))
        if found["format"] != FORMAT or found["version"] != 1:
            raise ValueError(path.name)
        learners = {
            str(code): {"id": str(one["id"]), "name": str(one["name"])}
            for code, one in found["learners"].items()
        }
        files, sheets = (
            {str(new): str(old) for new, old in found[what].items()} for what in ("files", "sheets")
        )
        work = {str(code): read_work(one) for code, one in found.get("work", {}).items()}
        return _Key(str(found["class"]), str(found["made"]), learners, files, sheets, work)
    except (OSError, ValueError, KeyError, TypeError, AttributeError) as error:
        raise RefusedError(say("{file} is not a key that can be read.", file=path.name)) from error
