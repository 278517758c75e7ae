"""The sample class in the tree is what its script makes, and shows what it should."""

from __future__ import annotations

import collections
import datetime as dt
import io
import tomllib
import zipfile
from pathlib import Path

import av
import numpy as np
import pytest
from PIL import Image, ImageOps

from simulation import sample_class
from simulation.readings import SLIPS
from simulation.sample_layouts import LAYOUTS
from simulation.sample_learners import CLOSES, COPIED, OPENS, PARTNERS, PUPILS
from simulation.sample_pieces import setup_photo

FOLDER = Path(__file__).parents[2] / "sample_class"
TRUTH = Path(__file__).with_name("truth.toml")


def opened(files: dict[str, bytes]) -> dict[str, tuple[bytes, dt.datetime | None]]:
    """Every file and zip member by path, zip files within zip files opened too."""
    members: dict[str, tuple[bytes, dt.datetime | None]] = {}
    for path, data in files.items():
        if not path.endswith(".zip"):
            members[path] = (data, None)
            continue
        with zipfile.ZipFile(io.BytesIO(data)) as archive:
            for info in archive.infolist():
                inner, at = archive.read(info), dt.datetime(*info.date_time)
                if info.filename.endswith(".zip"):
                    for name, (deep, when) in opened({info.filename: inner}).items():
                        members[f"{path}!/{name}"] = (deep, when)
                else:
                    members[f"{path}!/{info.filename}"] = (inner, at)
    return members


@pytest.fixture(scope="module")
def committed() -> dict[str, tuple[bytes, dt.datetime | None]]:
    return opened(
        {
            path.relative_to(FOLDER).as_posix(): path.read_bytes()
            for path in sorted(FOLDER.rglob("*"))
            # The class's own journal may lie beside the work.
            if path.is_file()
            and not path.relative_to(FOLDER).parts[0].startswith("class.mark")
            and path.relative_to(FOLDER).parts[0] != "markbench-out"
        }
    )


@pytest.fixture(scope="module")
def truth() -> dict[str, dict[str, object]]:
    return tomllib.loads(TRUTH.read_text(encoding="utf-8"))


def is_picture(name: str) -> bool:
    return name.lower().endswith((".jpg", ".mp4", ".mov"))


def test_everything_but_pictures_is_made_again_byte_for_byte(committed):
    again = opened({p: data for p, (data, _) in sample_class.contents(False).items()})
    here = {p: d for p, d in committed.items() if not is_picture(p)}
    assert sorted(here) == sorted(again)
    for path, (data, at) in again.items():
        assert here[path][0] == data, path
        assert here[path][1] == at, path


def test_a_photograph_is_made_again(committed):
    # By its pixels: another version of the JPEG library may round otherwise.
    made = Image.open(io.BytesIO(setup_photo(PUPILS[1]))).convert("L")
    name = next(p for p in committed if "Wi\u0142kowicz" in p and "setup" in p)
    kept = Image.open(io.BytesIO(committed[name][0])).convert("L")
    difference = np.asarray(made, dtype=float) - np.asarray(kept, dtype=float)
    assert np.abs(difference).mean() < 2.0


def test_truth_is_made_again():
    assert TRUTH.read_text(encoding="utf-8") == sample_class.truth()


def test_size_is_small():
    total = sum(path.stat().st_size for path in FOLDER.rglob("*") if path.is_file())
    assert total < 15e6


def test_half_is_honest_and_each_slip_occurs_once(truth):
    counts = collections.Counter(facts["slip"] for facts in truth.values())
    honest = counts.pop("honest")
    assert len(truth) == 30
    assert 13 <= honest <= 17
    assert counts == dict.fromkeys([*SLIPS, "copied"], 1)


def test_every_layout_is_used(truth):
    used = {facts["layout"] for facts in truth.values()}
    assert used == {*LAYOUTS, "class_sheet", ""}
    endings = {LAYOUTS[name][0] for name in used & set(LAYOUTS)}
    assert endings == {".xlsx", ".csv", ".ods", ".txt"}


def test_copy_is_partly_altered(truth):
    copy, original = (np.array(truth[id_]["times_s"]) for id_ in COPIED)
    assert copy.shape == original.shape
    changed = np.abs(copy - original) > 1e-9
    assert changed.sum() == changed.size // 2
    assert np.abs(copy - original).max() <= 0.05 + 1e-9


def test_partners_share_their_readings(truth):
    first, second = (truth[id_] for id_ in PARTNERS[0])
    assert first["times_s"] == second["times_s"]
    brief = tomllib.loads((FOLDER / "brief.toml").read_text(encoding="utf-8"))
    assert brief["partners"] == [list(PARTNERS[0])]


def test_evidence_of_every_kind_is_missing_somewhere(truth):
    missing = {kind for facts in truth.values() for kind in facts["missing"]}
    assert missing == {"readings", "setup_photo", "selfie", "swing_video"}


def test_all_in_zip_files_came_in_time(committed):
    times = [at.date() for _, at in committed.values() if at is not None]
    assert min(times) >= OPENS
    assert max(times) <= CLOSES
    assert sum(name.startswith("late/") for name in committed) == 4


def photographs(committed):
    return {p: d for p, (d, _) in committed.items() if p.lower().endswith(".jpg")}


def test_photographs_and_their_troubles(committed):
    taken = photographs(committed)
    bytes_seen = collections.Counter(taken.values())
    assert sorted(bytes_seen.values(), reverse=True)[:2] == [2, 1], "one picture is used twice"
    tags = {p: Image.open(io.BytesIO(data)).getexif() for p, data in taken.items()}
    assert [p for p, exif in tags.items() if exif.get_ifd(0x8825)] == ["10A.zip!/Eirik T/setup.jpg"]
    turned = [p for p, exif in tags.items() if exif.get(0x0112) == 6]
    assert len(turned) == 1
    sizes = collections.Counter(
        ImageOps.exif_transpose(Image.open(io.BytesIO(data))).size for data in taken.values()
    )
    assert sizes == {(960, 720): len(taken) - 1, (160, 120): 1}
    light = {p: np.asarray(Image.open(io.BytesIO(d)).convert("L")) for p, d in taken.items()}
    assert sum(grey.mean() < 40 for grey in light.values()) == 2  # too dark; a thumb
    assert sum(grey.std() < 3 for grey in light.values()) == 1


def test_films_open_but_one(committed, truth):
    films = {p: d for p, (d, _) in committed.items() if p.lower().endswith((".mp4", ".mov"))}
    assert len(films) == 29
    broken, turned, uneven = [], [], 0
    for path, data in films.items():
        try:
            with av.open(io.BytesIO(data)) as container:
                stream = container.streams.video[0]
                first = next(container.decode(stream))
                times = sorted(p.pts for p in container.demux(stream) if p.pts is not None)
        except av.error.InvalidDataError:
            broken.append(path)
            continue
        if first.rotation:
            turned.append(path)
        uneven += len(set(np.diff(times))) > 3
    assert [p for p in broken if "Mateus" in p] == broken
    assert len(broken) == 1
    assert len(turned) == 1
    assert uneven == sum("uneven" in pupil.film for pupil in PUPILS)
    assert sum(0 < facts["film_swings"] < 10 for facts in truth.values()) == 3


def test_names_are_not_told_apart_by_the_truth(committed):
    # The folder itself must not say who slipped.
    text = " ".join(committed).casefold()
    assert not any(slip in text for slip in (*SLIPS, "truth"))
