"""Build the sample class from nothing: ``python -m simulation.sample_class OUT [TRUTH]``.

Run from ``tests``. The same seed gives the same files, byte for byte wherever the same
versions of the drawing and encoding libraries are used. ``TRUTH`` receives what is true
of each learner, for tests; it is no part of the class folder.

A copy of a folder keeps no times of its files, so all that was sent in time lies in zip
files, as whole-class downloads do, whose members keep theirs. What lies loose came late
or from nobody, whatever its time.
"""

from __future__ import annotations

import csv
import datetime as dt
import io
import os
import sys
import zipfile
from collections.abc import Iterable
from pathlib import Path

import numpy as np

from simulation.pictures import Picture, photograph
from simulation.readings import simulate
from simulation.sample_layouts import LAYOUTS, class_sheet, typed
from simulation.sample_learners import CLOSES, COPIED, OPENS, PARTNERS, PLACE, PUPILS, Pupil
from simulation.sample_pieces import (
    HABITS,
    SEED,
    HandedIn,
    film_of,
    filmed_row,
    handed_in_at,
    pieces_of,
    readings_of,
    table_of,
)

LATE = "24112"
DOUBTFUL = "24129"
_EARLIEST = dt.datetime(2026, 3, 1, 9, 0)

ABOUT = """\
About this class
================
Everything here is invented: the school (Hollowmere Bay School), its place, the thirty
learners and their readings. The photographs are drawings and the videos are made by
calculation; nobody in them is real, and any likeness of a name is chance.

The folder is made by the script tests/simulation/sample_class.py. It is as uneven as real
work: three groups that sent their work in three ways, tables in many layouts and
languages, pieces missing, late, unreadable, sent twice, or with no name on them.
"""

BRIEF = f"""\
# What the class was asked to do. The school and the place are invented.
title = "Timing a pendulum at home"
opens = {OPENS}
closes = {CLOSES}
lengths = 5
timings_per_length = 2
swings_per_timing = 10
swings_allowed = [10, 20]
evidence = ["setup_photo", "selfie", "swing_video"]
rubric = "short"
partners = [["{PARTNERS[0][0]}", "{PARTNERS[0][1]}"]]

[place]
latitude_deg = {PLACE.latitude_deg}
height_m = {PLACE.height_m}
"""


def contents(pictures: bool = True) -> dict[str, tuple[bytes, dt.datetime]]:
    """Every file of the class folder by its path; ``pictures``: photographs and films too."""
    files: dict[str, tuple[bytes, dt.datetime]] = {
        "ABOUT.txt": (ABOUT.encode("utf-8"), _EARLIEST),
        "brief.toml": (BRIEF.encode("utf-8"), _EARLIEST),
        "class_list.csv": (_class_list(), _EARLIEST),
    }
    groups: dict[str, list[tuple[str, HandedIn]]] = {"10A": [], "10B": [], "10C": []}
    for pupil in PUPILS:
        pieces = pieces_of(pupil, pictures)
        if pupil.id == LATE:
            for piece in pieces:
                files[f"late/{pupil.stem}/{piece.name}"] = (piece.data, piece.at)
        elif pupil.group == "10A":
            groups["10A"] += [(f"{pupil.stem}/{piece.name}", piece) for piece in pieces]
        elif pupil.group == "10B":
            groups["10B"] += [(_flat(pupil, piece.name), piece) for piece in pieces]
        else:
            groups["10C"] += _zipped(pupil, pieces)
    at = dt.datetime(2026, 3, 9, 18, 20)
    nobody = typed(simulate(1, seed=SEED, place=PLACE, habits=HABITS), "", "")
    stray = HandedIn("readings", "untitled results.csv", LAYOUTS["plain_csv"][1](nobody), at)
    groups["10B"].append((stray.name, stray))
    together = [(p.id, table_of(p)) for p in PUPILS if p.layout == "class_sheet"]
    sheet = HandedIn("readings", "10C shared readings.xlsx", class_sheet(together), at)
    groups["10C"].append((sheet.name, sheet))
    for group, members in groups.items():
        last = max(piece.at for _, piece in members)
        files[f"{group}.zip"] = (_zip((n, p.data, p.at) for n, p in members), last)
    if pictures:
        lost = photograph(Picture("setup", 0.45, seed=99, room=5, support="shelf"))
        files["not claimed/IMG_20260311_174512.jpg"] = (lost, dt.datetime(2026, 3, 11, 17, 45))
    return files


def _flat(pupil: Pupil, name: str) -> str:
    between = (" - ", "_", " ")[pupil.number % 3]
    return f"{pupil.stem}{between}{name.replace(' ', '_') if between == '_' else name}"


def _zipped(pupil: Pupil, pieces: list[HandedIn]) -> list[tuple[str, HandedIn]]:
    """A zip file of the learner's own; one table lies beside it under half a name."""
    beside = []
    if pupil.id == DOUBTFUL:
        table = next(p for p in pieces if p.kind == "readings")
        pieces = [p for p in pieces if p is not table]
        beside = [("S Lindqval readings.csv", table)]
    if not pieces:
        return beside
    data = _zip((p.name, p.data, p.at) for p in pieces)
    own = HandedIn("zip", f"{pupil.stem}.zip", data, handed_in_at(pupil))
    return [(own.name, own), *beside]


def _zip(members: Iterable[tuple[str, bytes, dt.datetime]]) -> bytes:
    out = io.BytesIO()
    with zipfile.ZipFile(out, "w") as archive:
        for name, data, at in members:
            info = zipfile.ZipInfo(name, at.timetuple()[:6])
            info.create_system = 3  # the same on every machine
            info.external_attr = 0o644 << 16
            packed = name.lower().endswith((".jpg", ".mp4", ".mov", ".zip", ".xlsx", ".ods"))
            info.compress_type = zipfile.ZIP_STORED if packed else zipfile.ZIP_DEFLATED
            archive.writestr(info, data)
    return out.getvalue()


def _class_list() -> bytes:
    out = io.StringIO()
    writer = csv.writer(out)
    writer.writerow(["ID", "Name", "Group"])
    writer.writerows([p.id, p.name, p.group] for p in PUPILS)
    return out.getvalue().encode("utf-8")


def truth() -> str:
    """What is true of each learner, as TOML."""
    lines = ["# Made by simulation.sample_class; the truth behind the sample class."]
    for pupil in PUPILS:
        sim = readings_of(pupil.id)
        table = table_of(pupil)
        film = film_of(pupil)
        facts: dict[str, object] = {
            "name": pupil.name,
            "group": pupil.group,
            "slip": pupil.slip or "honest",
            "variant": str(sim.variant[0]),
            "layout": pupil.layout,
            "readable": pupil.layout not in ("", "broken_xlsx"),
            "own_arithmetic": pupil.own,
            "missing": list(pupil.missing),
            "late": pupil.id == LATE,
            "swings": table.swings,
            "lengths_cm": [float(x) for x in table.lengths],
            "times_s": [[float(t) for t in row] for row in table.times],
            "true_lengths_cm": [round(float(x) * 100, 2) for x in sim.true_length_m[0] if x > 0],
            "filmed_row": filmed_row(pupil),
            "film_swings": 0.0 if "swing_video" in pupil.missing else round(film.swings, 2),
        }
        if not np.isnan(sim.parameter[0]):
            facts["parameter"] = round(float(sim.parameter[0]), 5)
        if sim.row[0] >= 0:
            facts["row"], facts["timing"] = int(sim.row[0]), int(sim.timing[0])
            facts["other_row"] = int(sim.other_row[0])
        if pupil.id == COPIED[0]:
            facts["copied_from"] = COPIED[1]
        lines += ["", f'["{pupil.id}"]', *(f"{k} = {_toml(v)}" for k, v in facts.items())]
    return "\n".join(lines) + "\n"


def _toml(value: object) -> str:
    if isinstance(value, bool):
        return str(value).lower()
    if isinstance(value, str):
        return f'"{value}"'
    if isinstance(value, list):
        return "[" + ", ".join(map(_toml, value)) + "]"
    return repr(value)


def build(out: Path) -> None:
    """Write the class folder."""
    for path, (data, at) in contents().items():
        file = out / path
        file.parent.mkdir(parents=True, exist_ok=True)
        file.write_bytes(data)
        stamp = at.replace(tzinfo=dt.UTC).timestamp()
        os.utime(file, (stamp, stamp))


def main(arguments: list[str]) -> int:
    """Build into the folder named; write the truth where named."""
    if not 1 <= len(arguments) <= 2:
        print("usage: python -m simulation.sample_class OUT [TRUTH]", file=sys.stderr)
        return 2
    build(Path(arguments[0]))
    if len(arguments) == 2:
        Path(arguments[1]).write_text(truth(), encoding="utf-8")
    return 0


if __name__ == "__main__":
    raise SystemExit(main(sys.argv[1:]))
