"""Every reader of files with what it promises, in a form that any bytes can be thrown at.

``read`` gets the bytes and an empty class folder, and raises where the promise is broken: a
reader answers with what it read, with findings that say why not, or with its declared error,
whose text is a sentence. What a file is wrapped in (a zip's checksums, a pack's digests) is
made sound again, so that not every input dies at the door.
"""

from __future__ import annotations

import functools
import json
import math
from collections.abc import Callable, Iterable
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import hostile_seeds as seeds

from markbench.evidence.cache import Cache
from markbench.evidence.class_look import _look, photo_to_bytes, swing_to_bytes
from markbench.evidence.photos import PhotoLook, look_at_photo
from markbench.evidence.picture import PictureError, strip_metadata, thumbnail
from markbench.evidence.video.judge import SwingMeasurement, measure_swing
from markbench.intake.brief_file import read_brief
from markbench.intake.class_list import read_class_list
from markbench.intake.corrections import correct, typed_rows, typed_table
from markbench.intake.folder import read_class
from markbench.intake.tables import ColumnHints, read_class_sheet, read_readings
from markbench.intake.tree import PieceError, Shelf, walk
from markbench.model import Brief, Decision, Finding, Piece, ReadingsTable
from markbench.moderation.pack import canonical, digest_of
from markbench.moderation.plain import to_plain
from markbench.rubric import RubricError, find_rubric, load_rubric
from markbench.session import Session
from markbench.session.errors import MergeError, PackError
from markbench.session.pack_media import NotCleanError, clean_video, tags_of
from markbench.session.pack_session import open_pack
from markbench.session.phrases import offers, phrases
from markbench.session.replies import read_reply
from markbench.store import Journal, StoreDamagedError, StoreError, salvage

Read = Callable[[bytes, Path], None]


@dataclass(frozen=True)
class Reader:
    """``cost``: how many inputs of the cheapest reader one of this takes the time of."""

    name: str
    read: Read
    seeds: Callable[[], list[bytes]]
    words: tuple[bytes, ...] = ()
    cost: int = 1


def sentence(text: str) -> None:
    """Something a person can be told: not empty, not a bare repr."""
    assert text.strip(), "nothing was said"
    assert len(text) > 8, text


def _told(findings: Iterable[Finding]) -> None:
    for finding in findings:
        assert finding.check
        sentence(finding.message)


def _sound(table: ReadingsTable) -> None:
    for reading in table.readings:
        assert math.isfinite(reading.length_m), reading
        assert reading.length_m > 0, reading
        assert reading.swings >= 1, reading
        for timing in reading.timings:
            assert math.isfinite(timing.time_s), timing
            assert timing.time_s > 0, timing


# -- tables ------------------------------------------------------------------------------


def _readings(name: str, wrap: Callable[[bytes], bytes] = bytes) -> Read:
    def read(data: bytes, folder: Path) -> None:
        data = wrap(data)
        outcome = read_readings(name, data, Brief(), "A1")
        assert outcome.table is not None or outcome.findings, "neither a table nor a finding"
        _told(outcome.findings)
        if outcome.table is not None:
            _sound(outcome.table)
        read_class_sheet(name, data, Brief())

    return read


def _class_list(name: str, wrap: Callable[[bytes], bytes] = bytes) -> Read:
    def read(data: bytes, folder: Path) -> None:
        data = wrap(data)
        sure = read_class_list(name, data)
        assert sure is not None
        assert sure.learners or sure.problems, "neither learners nor a finding"
        _told(sure.problems)
        ids = [learner.id.casefold() for learner in sure.learners]
        assert len(set(ids)) == len(ids), "two learners with one id"
        read_class_list(name, data, sure=False)

    return read


def _part(kind: str, part: str) -> Callable[[bytes], bytes]:
    return lambda data: seeds.with_part(kind, part, data)


def _hints(data: bytes, folder: Path) -> None:
    value = _json(data)
    try:
        hints = ColumnHints.from_json(value)
    except (KeyError, ValueError):
        return
    outcome = read_readings("t.csv", seeds.READINGS, Brief(), "A1", hints)
    assert outcome.table is not None or outcome.findings
    assert ColumnHints.from_json(json.loads(json.dumps(hints.to_json()))) == hints


def _typed(data: bytes, folder: Path) -> None:
    value = _json(data)
    try:
        rows = typed_rows(value)
    except ValueError as error:
        sentence(str(error))
        return
    _sound(typed_table(rows, Brief()))


def _correction(data: bytes, folder: Path) -> None:
    table = read_readings("t.csv", seeds.READINGS, Brief(), "A1").table
    assert table is not None
    text = data.decode("utf-8", "surrogateescape")
    for cell in ("A2", "B3", "D2", "Z9"):
        try:
            _sound(correct(table, {f"t.csv||{cell}": text}))
        except ValueError as error:
            sentence(str(error))


# -- the teacher's files -----------------------------------------------------------------


def _brief(data: bytes, folder: Path) -> None:
    path = folder / "brief.toml"
    path.write_bytes(data)
    brief, problems = read_brief(path)
    for problem in problems:
        sentence(problem.sentence)
    assert math.isfinite(brief.longest_m)
    assert 0 < brief.shortest_m < brief.longest_m
    assert brief.swings_per_timing in brief.swings_allowed


def _rubric(data: bytes, folder: Path) -> None:
    path = folder / "own.toml"
    path.write_bytes(data)
    for language in ("en", "ms"):
        try:
            rubric = load_rubric(path, language)
        except RubricError as error:
            sentence(str(error))
            continue
        assert rubric.criteria
        assert all(criterion.levels for criterion in rubric.criteria)


# -- the class folder --------------------------------------------------------------------


def _zip(data: bytes, folder: Path) -> None:
    (folder / "hand-ins.zip").write_bytes(data)
    tree = walk(folder)
    assert tree.found or tree.problems or data[:2] == b"PK", "a file vanished without a word"
    _told(tree.problems)
    with Shelf(folder) as shelf:
        for one in tree.found[:50]:
            try:
                shelf.read(one.file, 5_000_000)
            except PieceError as error:
                sentence(str(error))
    work = read_class(folder)
    _told(work.problems)


# -- photos and films --------------------------------------------------------------------


def _photo(data: bytes, folder: Path) -> None:
    look = look_at_photo(data)
    if look.header is None:
        sentence(look.problem)
    for write in (strip_metadata, lambda data: thumbnail(data, 64)):
        try:
            made = write(data)
        except PictureError as error:
            sentence(str(error))
        else:
            assert made.startswith(b"\xff\xd8")
            assert b"Exif\0" not in made


def _film(data: bytes, folder: Path) -> None:
    path = folder / "film"
    path.write_bytes(data)
    found = measure_swing(path)
    if not found.accepted:
        assert found.reason
        sentence(found.message)


def _sent_film(data: bytes, folder: Path) -> None:
    try:
        made = clean_video(data)
    except NotCleanError as error:
        sentence(str(error))
    else:
        assert not tags_of(made)


class _NoWorker:
    """Stands for the process that looks again."""

    def photo(self, data: bytes) -> PhotoLook:
        return PhotoLook(None, 0.0, 0.0, None, "not looked at")

    def swing(self, data: bytes) -> SwingMeasurement:
        return SwingMeasurement(accepted=False, reason="unreadable", message="not looked at")


def _cached(data: bytes, folder: Path) -> None:
    """A kept result that is damaged is made again."""
    for kind in ("swing_video", "photo"):
        cache, piece = Cache(folder / kind), Piece("piece", kind, "name")
        _look(piece, lambda piece: b"piece", cache, _NoWorker())  # type: ignore[arg-type]
        for kept in cache.folder.iterdir():
            kept.write_bytes(data)
        _look(piece, lambda piece: b"piece", cache, _NoWorker())  # type: ignore[arg-type]


def _shown_picture(data: bytes, folder: Path) -> None:
    from markbench.ui.portfolio.pictures import load_picture

    (folder / "picture").write_bytes(data)
    for longest in (0, 64):
        try:
            load_picture(folder, "picture", longest)
        except ValueError as error:
            sentence(str(error))


def _shown_film(data: bytes, folder: Path) -> None:
    from markbench.ui.portfolio.film import Film

    (folder / "film").write_bytes(data)
    try:
        with Film.open(folder, "film", 96) as film:
            for number in (0, len(film) // 2, len(film) - 1):
                film.frame(number)
    except ValueError as error:
        sentence(str(error))


# -- the journal, packs and replies ------------------------------------------------------


@functools.cache
def _journal_seed() -> bytes:
    place = seeds.Path(seeds.__file__).parent / "corpus" / "sound.journal"
    return place.read_bytes()


def _journal(data: bytes, folder: Path) -> None:
    path = folder / "class.markbench"
    path.write_bytes(data)
    try:
        with Journal.open(path, read_only=True) as journal:
            journal.all()
            journal.verify()
        with Journal.open(path) as journal:
            kept = journal.append([Decision("note", "A1", "", "one more")])
            assert journal.all()[-1] == kept[0]
    except StoreDamagedError as error:
        sentence(str(error))
        try:
            sentence(str(salvage(path)))
        except StoreError as error:
            sentence(str(error))
    except StoreError as error:
        sentence(str(error))


def _entry(data: bytes, folder: Path) -> None:
    """A journal whose chain is sound and whose entries say what ``data`` says."""
    import sqlite3
    from contextlib import closing

    path = folder / "class.markbench"
    Journal.open(path).close()
    line = data.decode("latin-1")
    with closing(sqlite3.connect(path)) as connection:
        digest = digest_of(line.encode("ascii", "replace"))
        connection.execute("INSERT INTO journal VALUES (1, ?, ?)", (line, digest))
        connection.commit()
    try:
        with Journal.open(path) as journal:
            journal.all()
    except StoreError as error:
        sentence(str(error))
        try:
            salvage(path)
        except StoreError as error:
            sentence(str(error))


def _decisions(data: bytes, folder: Path) -> None:
    """A class opened over decisions whose values are of no kind the program writes."""
    value = _json(data)
    entries = value if isinstance(value, list) else [value]
    (folder / "A1 Ada readings.csv").write_bytes(seeds.READINGS)
    (folder / "class_list.csv").write_bytes(seeds.CLASS_LIST)
    decisions = [
        Decision(str(e.get("kind")), str(e.get("learner")), str(e.get("subject")), e.get("value"),
                 who="x")
        for e in entries[:20]
        if isinstance(e, dict)
    ]  # fmt: skip
    try:
        with Journal.open(folder / "class.markbench") as journal:
            journal.append(decisions)
        session = Session.open(folder, "T. Teacher")
    except StoreError as error:
        sentence(str(error))
        return
    try:
        phrases(session)
        offers(session, "A1", session.rubric.criteria[0].id, "l")
        for learner in session.learners:
            session.total(learner.id)
    finally:
        session.close()


@functools.cache
def _pack_members() -> dict[str, Any]:
    table = read_readings("t.csv", seeds.READINGS, Brief(), "01")
    first = [
        {"criterion": c.id, "level": c.levels[0].name, "marks": c.levels[0].marks,
         "feedback": "Well timed.", "by": "T. Teacher"}
        for c in find_rubric("short").criteria
    ]  # fmt: skip
    return {
        "brief.json": to_plain(Brief()),
        "rubric.json": to_plain(find_rubric("short")),
        "01/portfolio.json": {
            "pieces": [], "table": to_plain(table.table), "findings": to_plain(table.findings),
        },
        "01/first.json": first,
    }  # fmt: skip


def _packed(members: dict[str, bytes], more: dict[str, Any] | None = None) -> bytes:
    manifest = {
        "title": "x", "made": "2026-01-05", "learners": ["01"],
        "members": {name: digest_of(data) for name, data in members.items()},
        "shipped": [], "left_out": [], "format": "markbench-pack", "version": 1, **(more or {}),
    }  # fmt: skip
    return seeds.zipped({**members, "manifest.json": canonical(manifest)})


def _sound_pack() -> bytes:
    return _packed({name: canonical(value) for name, value in _pack_members().items()})


def _pack(data: bytes, folder: Path) -> None:
    path = folder / "class.markbench-pack"
    path.write_bytes(data)
    try:
        session = open_pack(path, "M. Moderator")
    except (PackError, StoreError) as error:
        sentence(str(error))
        return
    try:
        for learner in session.learners:
            session.findings(learner.id)
            for criterion in session.rubric.criteria:
                session.second_mark(learner.id, criterion.id, criterion.levels[0].name)
            session.first(learner.id)
    except PackError as error:
        sentence(str(error))
    finally:
        session.close()


def _pack_part(data: bytes, folder: Path) -> None:
    """One part of a pack says anything; its digest is right."""
    parts = list(_pack_members())
    members = {name: canonical(value) for name, value in _pack_members().items()}
    members[parts[data[0] % len(parts)] if data else parts[0]] = data[1:]
    _pack(_packed(members), folder)


class _NoSession:
    """As much of a session as reading a reply asks for."""

    rubric = find_rubric("short")

    def value(self, kind: str, learner: str = "", subject: str = "") -> Any:
        return {"numbers": {"01": "A1"}} if subject == "d" else None


def _sound_reply() -> bytes:
    criterion = _NoSession.rubric.criteria[0]
    mark = {"level": criterion.levels[0].name, "marks": criterion.levels[0].marks, "feedback": ""}
    at = "2026-01-05T10:00:00+00:00"
    moderated = {"action": "agree", "level": None, "marks": None, "first_seen": 1.0}
    subject = f"{criterion.id}|M"
    entries = [
        {"kind": "second_mark", "learner": "01", "subject": subject, "value": mark},
        {"kind": "first_seen", "learner": "01", "subject": "M", "value": True},
        {"kind": "moderated", "learner": "01", "subject": subject, "value": moderated},
    ]
    body = {"format": "markbench-reply", "version": 1, "pack": "d", "who": "M",
            "decisions": [{**entry, "at": at, "why": ""} for entry in entries]}  # fmt: skip
    return json.dumps(body).encode()


def _reply(data: bytes, folder: Path) -> None:
    try:
        body = json.loads(data)
        if isinstance(body, dict):
            data = json.dumps(seeds.sealed(body)).encode()
    except (ValueError, RecursionError):
        pass
    path = folder / "m.markbench-reply"
    path.write_bytes(data)
    try:
        read_reply(_NoSession(), path)  # type: ignore[arg-type]
    except MergeError as error:
        sentence(str(error))


def _json(data: bytes) -> Any:
    """Plain JSON as a journal gives it back; what is none stands for itself as text."""
    try:
        value = json.loads(data)
        json.dumps(value, allow_nan=False)
    except (ValueError, RecursionError):
        return data.decode("latin-1")
    return value


def _decision_seeds() -> list[bytes]:
    values: dict[str, Any] = {
        "mark": {"level": "Complete", "marks": 1, "feedback": "x"},
        "hints": ColumnHints("A", ("B", "C")).to_json(),
        "typed": [{"length_m": 0.2, "swings": 10, "timings_s": [9.0, 8.9]}],
        "phrase": {"text": "Well timed, {g}.", "criterion": "raw", "about": ["slip:half"]},
        "owner": "A1", "piece_kind": "readings", "correction": "9.1", "agreed_slip": None,
        "extension": "2026-01-09", "swing_count": 10, "sign_off": {"results": {}},
        "feedback": "x", "note": "y", "second_mark": {"level": "Complete", "marks": 1},
        "moderated": {"action": "agree"}, "adjustment": {"choice": "leave", "shift": 0.0},
        "piece_status": "accepted", "blind": {"seed": 1}, "sample": {"ids": ["A1"], "seed": 1},
    }  # fmt: skip
    subject = {"correction": "A1 Ada readings.csv||B2", "typed": "", "agreed_slip": ""}
    return [
        json.dumps(
            [{"kind": kind, "learner": "A1", "subject": subject.get(kind, "raw"), "value": value}]
        ).encode()
        for kind, value in values.items()
    ]


def _json_of(*values: Any) -> Callable[[], list[bytes]]:
    return lambda: [json.dumps(value).encode() for value in values]


_NUMBERS = (b"1e308", b"-1", b"NaN", b"Infinity", b"1" + b"0" * 400, b"0x1F", b"-0.0", b"1_0")
_XML = (b'<c r="A1"', b't="e"', b't="s"', b"<f>", b"</f>", b"<v>", b'r="XFD1048576"', b"&#0;",
        b'<!DOCTYPE x [<!ENTITY a "b">]>', b"&a;", b"<row ", b't="inlineStr"', b"<is><t>",
        b'number-columns-repeated="16384"', b'number-rows-repeated="1048576"')  # fmt: skip
_CELLS = (b"Length / cm", b"Time for 10 swings / s", b"10T", b"T / s", b";", b"\t", b'"', b"\n",
          b"0:14.23", b"14,2 s", b"2026-01-05", b"=SUM(A1)", b"\xff\xfe", b"\0", b"N = 10",
          b"g = 9.8", b"Name", b"mean", b"1/2", b"\xe2\x88\x9e")  # fmt: skip
_TOML = (b"[[criterion]]", b"[[criterion.level]]", b"[place]", b"= 1979-05-27", b"'''", b'"""',
         b"{ a = 1 }", b"[", b"]", b"level", b"when", b"marks", b"inf", b"nan", b"a.b.c",
         b"[[", b"\\u0000", b"0x" + b"F" * 5000, b"a" + b".a" * 3000 + b" = 1",
         b"title_ms = 5", b"not", b"and", b">=", b"{g}")  # fmt: skip
_JSON = (b"null", b"[]", b"{}", b'"\\ud800"', b"true", b"[[[[", b'"level"', b'"marks"')
_ZIP = (b"PK\x01\x02", b"PK\x05\x06", b"PK\x06\x06", b"../", b"C:\\", b"!/", b"\0")

READERS: dict[str, Reader] = {
    reader.name: reader
    for reader in (
        Reader("readings.csv", _readings("t.csv"), seeds.texts, _CELLS + _NUMBERS),
        Reader("readings.xlsx", _readings("t.xlsx"), seeds.workbooks, _XML),
        Reader(
            "xlsx-sheet",
            _readings("t.xlsx", _part("xlsx", "xl/worksheets/sheet1.xml")),
            lambda: [seeds.part_of("xlsx", "xl/worksheets/sheet1.xml")],
            _XML + _NUMBERS,
        ),
        Reader(
            "xlsx-strings",
            _readings("t.xlsx", _part("xlsx", "xl/sharedStrings.xml")),
            lambda: [seeds.part_of("xlsx", "xl/sharedStrings.xml")],
            _XML + _CELLS,
        ),
        Reader(
            "xlsx-book",
            _readings("t.xlsx", _part("xlsx", "xl/workbook.xml")),
            lambda: [seeds.part_of("xlsx", "xl/workbook.xml")],
            _XML,
        ),
        Reader(
            "ods-content",
            _readings("t.ods", _part("ods", "content.xml")),
            lambda: [seeds.part_of("ods", "content.xml")],
            _XML + _NUMBERS,
        ),
        Reader("class-sheet", _readings("c.csv"), seeds.class_sheets, _CELLS),
        Reader("class-list.csv", _class_list("class_list.csv"), seeds.class_lists, _CELLS),
        Reader(
            "class-list.xlsx",
            _class_list("class_list.xlsx", _part("xlsx", "xl/worksheets/sheet1.xml")),
            lambda: [seeds.part_of("xlsx", "xl/worksheets/sheet1.xml")],
            _XML,
        ),
        Reader("brief", _brief, seeds.briefs, _TOML + _NUMBERS),
        Reader("rubric", _rubric, seeds.rubrics, _TOML + _NUMBERS, cost=2),
        Reader("zip", _zip, seeds.zips, _ZIP, cost=3),
        Reader("photo", _photo, seeds.photos, cost=3),
        Reader("shown-picture", _shown_picture, seeds.photos, (b"<svg", b"xlink:href"), cost=2),
        Reader("film", _film, lambda: seeds.films() + seeds.playlists(), cost=10),
        Reader("shown-film", _shown_film, lambda: seeds.films() + seeds.playlists(), cost=5),
        Reader("sent-film", _sent_film, lambda: seeds.films() + seeds.playlists(), cost=5),
        Reader("cache", _cached, lambda: [b"{}", *_cache_seeds()]),
        Reader("journal", _journal, lambda: [_journal_seed()], cost=20),
        Reader("entry", _entry, lambda: [_entry_seed()], _JSON, cost=20),
        Reader("decisions", _decisions, _decision_seeds, _JSON, cost=20),
        Reader("pack", _pack, lambda: [_sound_pack()], _ZIP, cost=10),
        Reader("pack-part", _pack_part, lambda: _part_seeds(), _JSON + _NUMBERS, cost=10),
        Reader("reply", _reply, lambda: [_sound_reply()], _JSON + _NUMBERS),
        Reader(
            "hints",
            _hints,
            _json_of(
                ColumnHints("A", ("B", "C")).to_json(),
                ColumnHints("1", ("2",), along="rows", swings=3, first="A").to_json(),
            ),
            _JSON,
        ),
        Reader(
            "typed",
            _typed,
            _json_of([{"length_m": 0.2, "swings": 10, "timings_s": [9.0]}], []),
            _JSON + _NUMBERS,
        ),
        Reader("correction", _correction, lambda: [b"9.1", b"20 cm", b"0:14.2"], _CELLS + _NUMBERS),
    )
}


def _cache_seeds() -> list[bytes]:
    looked = look_at_photo(seeds.photos()[0])
    unread = SwingMeasurement(accepted=False, reason="unreadable", message="x")
    return [photo_to_bytes(looked), swing_to_bytes(unread)]


def _entry_seed() -> bytes:
    from markbench.store.entry import encode

    return encode(Decision("note", "A1", "", "said", number=1, who="T")).encode()


def _part_seeds() -> list[bytes]:
    return [bytes([at]) + canonical(value) for at, value in enumerate(_pack_members().values())]
