"""Readers of what is handed in and of the teacher's own files, held to what they promise."""

from __future__ import annotations

import json
import math
from collections.abc import Callable
from pathlib import Path

import hostile_seeds as seeds
from hostile_promises import plain_json, sentence, sound, told

from markbench.evidence.cache import Cache
from markbench.evidence.class_look import _look, photo_to_bytes, swing_to_bytes
from markbench.evidence.photos import PhotoLook, look_at_photo
from markbench.evidence.picture import PictureError, strip_metadata, thumbnail
from markbench.evidence.showing import Frames, picture_pixels
from markbench.evidence.video.judge import SwingMeasurement, measure_swing
from markbench.intake.brief_file import read_brief
from markbench.intake.class_list import read_class_list
from markbench.intake.corrections import correct, typed_rows, typed_table
from markbench.intake.folder import read_class
from markbench.intake.tables import ColumnHints, read_class_sheet, read_readings
from markbench.intake.tree import PieceError, Shelf, walk
from markbench.model import Brief, Piece
from markbench.rubric import RubricError, load_rubric
from markbench.session.pack_media import NotCleanError, clean_video, tags_of

Read = Callable[[bytes, Path], None]

# -- tables ------------------------------------------------------------------------------


def read_table(name: str, wrap: Callable[[bytes], bytes] = bytes) -> Read:
    def read(data: bytes, folder: Path) -> None:
        data = wrap(data)
        outcome = read_readings(name, data, Brief(), "A1")
        assert outcome.table is not None or outcome.findings, "neither a table nor a finding"
        told(outcome.findings)
        if outcome.table is not None:
            sound(outcome.table)
        read_class_sheet(name, data, Brief())

    return read


def read_list(name: str, wrap: Callable[[bytes], bytes] = bytes) -> Read:
    def read(data: bytes, folder: Path) -> None:
        data = wrap(data)
        sure = read_class_list(name, data)
        assert sure is not None
        assert sure.learners or sure.problems, "neither learners nor a finding"
        told(sure.problems)
        ids = [learner.id.casefold() for learner in sure.learners]
        assert len(set(ids)) == len(ids), "two learners with one id"
        read_class_list(name, data, sure=False)

    return read


def in_part(kind: str, part: str) -> Callable[[bytes], bytes]:
    return lambda data: seeds.with_part(kind, part, data)


def read_hints(data: bytes, folder: Path) -> None:
    value = plain_json(data)
    try:
        hints = ColumnHints.from_json(value)
    except (KeyError, ValueError):
        return
    outcome = read_readings("t.csv", seeds.READINGS, Brief(), "A1", hints)
    assert outcome.table is not None or outcome.findings
    assert ColumnHints.from_json(json.loads(json.dumps(hints.to_json()))) == hints


def read_typed(data: bytes, folder: Path) -> None:
    value = plain_json(data)
    try:
        rows = typed_rows(value)
    except ValueError as error:
        sentence(str(error))
        return
    sound(typed_table(rows, Brief()))


def read_correction(data: bytes, folder: Path) -> None:
    table = read_readings("t.csv", seeds.READINGS, Brief(), "A1").table
    assert table is not None
    text = data.decode("utf-8", "surrogateescape")
    for cell in ("A2", "B3", "D2", "Z9"):
        try:
            sound(correct(table, {f"t.csv||{cell}": text}))
        except ValueError as error:
            sentence(str(error))


# -- the teacher's files -----------------------------------------------------------------


def read_a_brief(data: bytes, folder: Path) -> None:
    path = folder / "brief.toml"
    path.write_bytes(data)
    brief, problems = read_brief(path)
    for problem in problems:
        sentence(problem.sentence)
    assert math.isfinite(brief.longest_m)
    assert 0 < brief.shortest_m < brief.longest_m
    assert brief.swings_per_timing in brief.swings_allowed


def read_a_rubric(data: bytes, folder: Path) -> None:
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


def read_zip(data: bytes, folder: Path) -> None:
    (folder / "hand-ins.zip").write_bytes(data)
    tree = walk(folder)
    assert tree.found or tree.problems or data[:2] == b"PK", "a file vanished without a word"
    told(tree.problems)
    with Shelf(folder) as shelf:
        for one in tree.found[:50]:
            try:
                shelf.read(one.file, 5_000_000)
            except PieceError as error:
                sentence(str(error))
    work = read_class(folder)
    told(work.problems)


# -- photos and films --------------------------------------------------------------------


def read_photo(data: bytes, folder: Path) -> None:
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


def read_a_film(data: bytes, folder: Path) -> None:
    path = folder / "film"
    path.write_bytes(data)
    found = measure_swing(path)
    if not found.accepted:
        assert found.reason
        sentence(found.message)


def send_film(data: bytes, folder: Path) -> None:
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


def read_cached(data: bytes, folder: Path) -> None:
    """A kept result that is damaged is made again."""
    for kind in ("swing_video", "photo"):
        cache, piece = Cache(folder / kind), Piece("piece", kind, "name")
        _look(piece, lambda piece: b"piece", cache, _NoWorker())  # type: ignore[arg-type]
        for kept in cache.folder.iterdir():
            kept.write_bytes(data)
        _look(piece, lambda piece: b"piece", cache, _NoWorker())  # type: ignore[arg-type]


def show_picture(data: bytes, _folder: Path) -> None:
    for longest in (0, 64):
        try:
            picture_pixels(data, longest)
        except ValueError as error:
            sentence(str(error))


def show_film(data: bytes, _folder: Path) -> None:
    try:
        film = Frames(data, 96)
        for number in (0, len(film.times_s) // 2, len(film.times_s) - 1):
            film.frame(number)
    except ValueError as error:
        sentence(str(error))


def sound_cache() -> list[bytes]:
    looked = look_at_photo(seeds.photos()[0])
    unread = SwingMeasurement(accepted=False, reason="unreadable", message="x")
    return [photo_to_bytes(looked), swing_to_bytes(unread)]
