"""What each learner of the sample class hands in: table, photographs, film, a few words."""

from __future__ import annotations

import datetime as dt
from dataclasses import dataclass, replace
from fractions import Fraction
from functools import cache
from typing import Any

import numpy as np

from simulation.copied import copies
from simulation.film import Film, record
from simulation.pictures import Picture, photograph
from simulation.readings import Simulated, simulate
from simulation.sample_layouts import LAYOUTS, Typed, typed
from simulation.sample_learners import COPIED, OPENS, PARTNERS, PLACE, PUPILS, Pupil
from simulation.worlds import Habits

SEED = 2603
# The sample class's hands take the middle of the bob less exactly than most.
HABITS = Habits(length_offset_m=0.003)
# Out at sea, where nobody lives: the one photograph that carries a place.
GPS = (52.4, -20.5)
# What learners call their set-up photo, selfie, film and table.
_NAMES = (
    ("setup", "selfie", "swing video", "readings"),
    ("photo of set-up", "me with my pendulum", "10 swings video", "table"),
    ("IMG_4021 setup", "IMG_4022 selfie", "VID_4023", "pendulum data"),
    ("apparatus", "selfie", "video", "results"),
    ("set up photo", "selfie with set up", "swings film", "measurements"),
)
_REPORTS = {
    "24101": "I think g came out large because my room is warm.\nNext time I would use a fan.\n",
    "24108": "The graph of T squared against L is a straight line.\nWe timed it together.\n",
    "24124": "Length was my independent variable. I kept the bob and the angle the same.\n",
}


@dataclass(frozen=True, slots=True)
class HandedIn:
    """One file: the kind of piece, its name without the learner, bytes and time."""

    kind: str
    name: str
    data: bytes
    at: dt.datetime


@cache
def readings_of(id_: str) -> Simulated:
    """The readings of one learner, as typed and in truth."""
    pupil = next(p for p in PUPILS if p.id == id_)
    if id_ == PARTNERS[0][1]:
        return readings_of(PARTNERS[0][0])
    if id_ == COPIED[0]:
        return copies(readings_of(COPIED[1]), "altered", seed=SEED)
    options: dict[str, Any] = dict(pupil.simulated)
    return simulate(
        1,
        pupil.design,
        pupil.slip,
        seed=SEED * 100 + pupil.number,
        place=PLACE,
        habits=HABITS,
        **options,
    )


def table_of(pupil: Pupil) -> Typed:
    """The learner's table as typed."""
    return typed(readings_of(pupil.id), pupil.name, pupil.own)


def handed_in_at(pupil: Pupil) -> dt.datetime:
    """When the learner sent the work: on an afternoon within the window, or after it."""
    rng = np.random.default_rng([SEED, pupil.number])
    day = 17 if pupil.id == "24112" else int(rng.integers(3, 14))
    minute = int(rng.integers(60 * 15, 60 * 21))
    return dt.datetime.combine(OPENS, dt.time()) + dt.timedelta(days=day, minutes=minute)


def pieces_of(pupil: Pupil, pictures: bool = True) -> list[HandedIn]:
    """Every file the learner sent, in the order of sending; ``pictures``: also those."""
    at = handed_in_at(pupil)
    setup, selfie, film, table = _NAMES[pupil.number % len(_NAMES)]
    pieces = []
    if pupil.layout in LAYOUTS:
        ending, write = LAYOUTS[pupil.layout]
        if pupil.id == "24116":  # an early version with two lengths fewer, then the whole
            whole = table_of(pupil)
            part = replace(whole, lengths=whole.lengths[:-2], times=whole.times[:-2])
            early = at - dt.timedelta(days=2, hours=3)
            pieces.append(HandedIn("readings", f"{table} draft{ending}", write(part), early))
            table += " final"
        pieces.append(HandedIn("readings", table + ending, write(table_of(pupil)), at))
    if pupil.id in _REPORTS:
        pieces.append(HandedIn("report", "conclusion.txt", _REPORTS[pupil.id].encode("utf-8"), at))
    if not pictures:
        return pieces
    big = pupil.number % 4 == 3
    if "setup_photo" not in pupil.missing:
        name = setup + (".JPG" if big else ".jpg")
        pieces.append(HandedIn("setup_photo", name, setup_photo(pupil), at))
    if "selfie" not in pupil.missing:
        name = selfie + (".JPG" if big else ".jpg")
        pieces.append(HandedIn("selfie", name, selfie_of(pupil), at))
    if "swing_video" not in pupil.missing:
        ending = ".MOV" if pupil.number == 7 else ".MP4" if big else ".mp4"
        pieces.append(HandedIn("swing_video", film + ending, swing_film(pupil), at))
    return pieces


def _picture(pupil: Pupil, kind: str) -> Picture:
    sim = readings_of(pupil.id)
    trouble = pupil.trouble.get(kind, "")
    evening = handed_in_at(pupil) - dt.timedelta(days=1)
    minutes = 4 if kind == "selfie" else 0
    taken = evening.replace(hour=17, minute=(7 * pupil.number) % 50 + minutes, second=12)
    if trouble == "old":  # a picture from before the class was asked
        taken = taken.replace(year=taken.year - 2)
    return Picture(
        kind=kind,
        length_m=float(sim.true_length_m[0, filmed_row(pupil)]),
        seed=pupil.number,
        room=pupil.number,
        support=pupil.support,
        bob=pupil.bob,
        taken=taken,
        trouble=trouble if trouble in ("dark", "blurred", "blank", "small") else "",
        orientation=6 if trouble == "turned" else 1,
        gps=GPS if trouble == "gps" else None,
        look=pupil.look,
    )


def setup_photo(pupil: Pupil) -> bytes:
    """The photograph of the set-up; one learner sends another's."""
    borrowed = pupil.trouble.get("setup", "")
    if borrowed.startswith("of "):
        pupil = next(p for p in PUPILS if p.id == borrowed.removeprefix("of "))
    return photograph(_picture(pupil, "setup"))


def selfie_of(pupil: Pupil) -> bytes:
    """The drawn learner with the set-up."""
    return photograph(_picture(pupil, "selfie"))


def filmed_row(pupil: Pupil) -> int:
    """Which of the learner's lengths the film and the photographs show."""
    return pupil.number % 3 if pupil.design != "tall" else pupil.number % 2


def film_of(pupil: Pupil) -> Film:
    """How the learner filmed: the true length, the place's g, the amplitude of that row."""
    sim = readings_of(pupil.id)
    row = filmed_row(pupil)
    rng = np.random.default_rng([SEED, pupil.number, 1])
    film = Film(
        length_m=round(float(sim.true_length_m[0, row]), 4),
        g=float(sim.g[0]),
        amplitude_deg=round(float(np.mean(sim.amplitude_deg[0, row, :2])) + 1.0, 1),
        swings=float(rng.uniform(10.3, 13.5)),
        held_s=float(rng.uniform(0.4, 1.2)),
        decay_s=float(rng.uniform(60, 150)),
        frame_rate=Fraction(30_000, 1001) if pupil.number % 3 == 1 else Fraction(30),
        support=pupil.support,
        room=pupil.number,
        bob=pupil.bob,
        seed=pupil.number,
    )
    changed: dict[str, Any] = {k: v for k, v in pupil.film.items() if k != "broken"}
    return replace(film, **changed)


def swing_film(pupil: Pupil) -> bytes:
    """The film as a file; one breaks off before its end, so that nothing can open it."""
    data = record(film_of(pupil))
    return data[: len(data) * 3 // 5] if pupil.film.get("broken") else data
