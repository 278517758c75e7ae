"""Every check of the registry: what trips it, what it says, and what leaves it silent."""

import ast
import datetime as dt
import math
from dataclasses import replace
from pathlib import Path

import pytest

import markbench
from markbench.checks import CHECKS, honest_rates, run
from markbench.checks.wording import listed, one_in
from markbench.model import (
    Brief,
    ClassWork,
    Concern,
    Learner,
    OwnValue,
    Piece,
    Place,
    Portfolio,
    Reading,
    ReadingsTable,
    Source,
    Timing,
)
from markbench.physics.analyse import analyse
from markbench.physics.gravity import local_gravity
from markbench.physics.stack import stack_readings

# A place of our own invention at 50° N, sea level: g = 9.81070 m/s² (normal gravity).
BRIEF = Brief(
    place=Place(50.0, 0.0), opens=dt.date(2026, 3, 2), closes=dt.date(2026, 3, 13), evidence=()
)
G = 9.8107
FILE = "table.csv"


def source(cell, raw=""):
    return Source(FILE, "", cell, raw)


def reading(row, length_m, *times_s, swings=10, decimals=2):
    timings = tuple(
        Timing(t, source(f"{'BCD'[k]}{row}", f"{t}"), decimals) for k, t in enumerate(times_s)
    )
    return Reading(length_m, swings, timings, source(f"A{row}"))


def law(length_m, swings=10):
    return swings * 2 * math.pi * math.sqrt(length_m / G)


def honest(changes=None, lengths=(0.2, 0.3, 0.4, 0.5, 0.6)):
    """Five lengths with scatter a hand would show, written down here once by hand."""
    scatter = ((0.06, -0.08), (-0.11, 0.05), (0.02, 0.09), (0.07, -0.04), (-0.06, 0.03))
    rows = [
        reading(i + 2, length, *(round(law(length) + e, 2) for e in scatter[i]))
        for i, length in enumerate(lengths)
    ]
    for index, row in (changes or {}).items():
        rows[index] = row
    return tuple(rows)


PIECES = (Piece(FILE, "readings", size_bytes=9, modified=dt.datetime(2026, 3, 10, 17)),)


def ask(readings=None, own=(), headings=(), units=(), brief=BRIEF, pieces=PIECES, **extra):
    """All findings on one learner."""
    readings = honest() if readings is None else readings
    table = ReadingsTable(tuple(readings), tuple(own), source(""), headings, units)
    learner = Learner("7", "Invented Learner")
    portfolio = Portfolio(learner, pieces, table=table if readings else None)
    work = ClassWork(brief, (learner,), {"7": portfolio})
    (analysis,) = analyse(stack_readings([readings]), local_gravity(brief.place))
    return run(work, {"7": analysis}, **extra)["7"]


def found(check, **case):
    return [finding for finding in ask(**case) if finding.check == check]


def test_honest_work_is_left_in_peace():
    assert ask() == ()


LONG_ROW = reading(6, 0.6, round(law(0.6) + 0.9, 2), round(law(0.6) + 1.0, 2))

# check id → (case that trips it, words its message must hold)
TRIPS = {
    "missing_piece": (
        {"brief": replace(BRIEF, evidence=("swing_video",))},
        ["video of the swings is missing"],
    ),
    "outside_window": (
        {"pieces": (replace(PIECES[0], modified=dt.datetime(2026, 3, 15, 9)),)},
        ["15 March 2026", "2 days after", "13 March 2026"],
    ),
    "too_few_lengths": ({"readings": honest()[:4]}, ["4 different lengths", "asks for 5"]),
    "too_few_timings": (
        {"readings": honest({1: reading(3, 0.3, round(law(0.3), 2))})},
        ["30.0 cm (1)"],
    ),
    "short_range": (
        {"readings": honest(lengths=(0.40, 0.45, 0.50, 0.55, 0.60))},
        ["60.0 cm", "1.50 times", "40.0 cm", "2 times"],
    ),
    "uneven_lengths": (
        {"readings": honest(lengths=(0.20, 0.22, 0.24, 0.26, 0.60))},
        ["26.0 cm to 60.0 cm", "85%"],
    ),
    "length_out_of_range": (
        {"readings": honest({4: reading(6, 2.0, *(round(law(2.0), 2),) * 2)})},
        ["200.0 cm", "5.0 cm to 150.0 cm"],
    ),
    "too_few_swings": (
        {"readings": honest({0: reading(2, 0.2, 4.49, 4.5, swings=5)})},
        ["5 swings", "1 of 5 lengths", "asks for 10"],
    ),
    "period_off_law": (
        {"readings": honest({2: reading(4, 0.4, 13.97, 13.95)})},
        ["13.97 s for 10 swings at 40.0 cm", "12.71 s", "2 of 10"],
    ),
    "g_implausible": (
        # Every time 5 % long, as if one count in twenty were missed: g is 9.3 % low.
        {
            "readings": [
                reading(i + 2, length, round(law(length) * 1.05, 2), round(law(length) * 1.05, 2))
                for i, length in enumerate((0.2, 0.3, 0.4, 0.5, 0.6))
            ]
        },
        ["g = 8.89", "local g is 9.81 m/s²"],
    ),
    "timing_departs": (
        {"readings": honest({3: reading(5, 0.5, 14.22, 15.63)})},
        ["50.0 cm", "1.41 s", "14.22 s, 15.63 s"],
    ),
    "off_the_line": (
        {
            "readings": [
                *(
                    reading(i + 2, length, *(round(law(length) + e, 2) for e in (0.01, 0.0)))
                    for i, length in enumerate((0.2, 0.3, 0.4, 0.5))
                ),
                LONG_ROW,
            ]
        },
        ["60.0 cm", "s² off the line"],
    ),
    "intercept": (
        {
            "readings": [
                reading(i + 2, length, *(round(law(length + 0.025) + e, 2) for e in (0.01, -0.01)))
                for i, length in enumerate((0.2, 0.3, 0.4, 0.5, 0.6))
            ]
        },
        ["misses the origin", "2.5 cm too short"],
    ),
    "own_arithmetic": (
        {"own": (OwnValue("period_s", 1.98, source("E2"), reading=0, decimals=2),)},
        ["T at 20.0 cm is written as 1.98 s", "comes out as 0.896 s", "cell E2"],
    ),
    "decimals_uneven": (
        {"readings": honest({1: reading(3, 0.3, 11.0, 11.0, decimals=0)})},
        ["0 and 2 decimals", "2 of 10"],
    ),
    "heading_without_unit": (
        {"headings": (source("A1", "Length"), source("B1", "t / s")), "units": (False, True)},
        ["“Length” (A1)"],
    ),
}


@pytest.mark.parametrize("check", TRIPS)
def test_check_speaks_when_it_should(check):
    case, words = TRIPS[check]
    (finding,) = found(check, **case)
    for word in words:
        assert word in finding.message
    assert finding.ask
    assert finding.honest_rate == honest_rates().get(check)


def test_every_check_is_explained_tested_and_measured():
    for id_, check in CHECKS.items():
        assert check.id == id_
        assert check.title
        assert len(check.explanation.split()) >= 5
        assert check.rests_on
    asked = {check.id for check in CHECKS.values() if check.ask is not None}
    assert asked == set(TRIPS)
    assert {c.id for c in CHECKS.values() if c.judges_numbers} == set(honest_rates())


def test_no_finding_is_made_without_an_entry_in_the_registry():
    # Every literal check id handed to Finding(...) anywhere in the program.
    made = set()
    for path in Path(markbench.__file__).parent.rglob("*.py"):
        for node in ast.walk(ast.parse(path.read_text("utf-8"))):
            if isinstance(node, ast.Call) and getattr(node.func, "id", "") == "Finding":
                named = [k.value for k in node.keywords if k.arg == "check"]
                made |= {n.value for n in named or node.args[:1] if isinstance(n, ast.Constant)}
    assert len(made) > 20
    assert made <= set(CHECKS)


@pytest.mark.parametrize("check", TRIPS)
def test_wording_never_accuses(check):
    case, _ = TRIPS[check]
    text = " ".join(f.message + f.ask for f in found(check, **case)).lower()
    for word in ("cheat", "fake", "fraud", "dishonest", "wrong", "invalid", "must have"):
        assert word not in text


def test_questioned_cells_are_named():
    (finding,) = found("timing_departs", readings=honest({3: reading(5, 0.5, 14.22, 15.63)}))
    assert finding.cells == ((3, 1), (3, 0))  # the odd one first: it is shown first
    assert [s.cell for s in finding.sources] == ["C5", "B5"]
    three = honest({3: reading(5, 0.5, 14.22, 15.63, 14.25)})
    (finding,) = found("timing_departs", readings=three)
    assert finding.cells == ((3, 1),)


def test_a_late_hand_in_names_the_last_day_and_the_files():
    late = replace(PIECES[0], modified=dt.datetime(2026, 3, 15, 9))
    (one,) = found("outside_window", pieces=(late,))
    assert one.message == (
        "Handed in on 15 March 2026, 2 days after the last day, 13 March 2026 (latest: table.csv)."
    )
    (several,) = found("outside_window", pieces=(late, replace(late, file="setup.jpg")))
    assert several.message.endswith("(latest: table.csv and setup.jpg).")


def test_an_extension_moves_the_closing_day():
    late = (replace(PIECES[0], modified=dt.datetime(2026, 3, 15, 9)),)
    assert not found("outside_window", pieces=late, extensions={"7": dt.date(2026, 3, 15)})
    assert found("outside_window", pieces=late, extensions={"7": dt.date(2026, 3, 14)})


def test_a_photo_of_unknown_kind_may_be_the_missing_one():
    brief = replace(BRIEF, evidence=("setup_photo", "selfie"))
    photo = Piece("IMG_2231.jpg", "photo", size_bytes=5)
    concerns = [f.concern for f in found("missing_piece", brief=brief, pieces=(*PIECES, photo))]
    assert concerns == [Concern.NOTE, Concern.ASK]
    empty = replace(photo, size_bytes=0)
    concerns = [f.concern for f in found("missing_piece", brief=brief, pieces=(*PIECES, empty))]
    assert concerns == [Concern.ASK, Concern.ASK]


def test_photos_that_no_name_tells_apart_are_one_question():
    brief = replace(BRIEF, evidence=("setup_photo", "selfie"))
    photos = tuple(Piece(f"IMG_223{n}.jpg", "photo", size_bytes=5) for n in (1, 2))
    (both,) = found("missing_piece", brief=brief, pieces=(PIECES[0], *photos))
    assert both.message == (
        "The names of 2 photos do not say what they show; the photo of the set-up and that of the "
        "learner with it could be among them."
    )
    assert [source.file for source in both.sources] == ["IMG_2231.jpg", "IMG_2232.jpg"]
    one, missing = found("missing_piece", brief=brief, pieces=(PIECES[0], photos[0]))
    assert "one photo does not say what it shows" in one.message
    assert (one.numbers["could_be"], missing.numbers["piece"]) == ("photo", "selfie")


def test_a_learner_is_asked_as_you():
    brief = replace(BRIEF, evidence=("setup_photo", "selfie", "swing_video"))
    asked = [f.ask for f in found("missing_piece", brief=brief, pieces=PIECES[:1], readings=())]
    asked += [f.ask for f in found("missing_piece", brief=brief, pieces=(
        PIECES[0], Piece("IMG_1.jpg", "photo", size_bytes=5)))]  # fmt: skip
    assert "Please hand in the photo of you with the set-up." in asked
    assert not [text for text in asked if "learner" in text or "portfolio" in text]


def test_no_readings_asks_for_them_and_nothing_else():
    findings = ask(readings=())
    assert [f.check for f in findings] == ["missing_piece"]
    assert findings[0].concern is Concern.LOOK


def test_lengths_above_the_support():
    (finding,) = found("length_out_of_range", brief=replace(BRIEF, support_height_m=0.45))
    assert "50.0 cm and 60.0 cm" in finding.message
    assert finding.cells == ((3, None), (4, None))


@pytest.mark.parametrize(
    ("own", "right"),
    [
        # Row one: 8.98 s and 9.05 s or so; mean as computed below by hand from honest().
        (OwnValue("mean_time_s", 8.96, source("D2"), reading=0, decimals=2), True),
        (OwnValue("mean_time_s", 9.3, source("D2"), reading=0, decimals=1), False),
        (OwnValue("period_s", 0.9, source("E2"), reading=0, decimals=1), True),
        (OwnValue("period_squared_s2", 0.81, source("F2"), reading=0, decimals=2), True),
        (OwnValue("period_squared_s2", 0.45, source("F2"), reading=0, decimals=2), False),
        (OwnValue("g_m_s2", 9.83, source("G2"), reading=0, decimals=2), True),
        (OwnValue("g_m_s2", 39.3, source("G2"), reading=0, decimals=1), False),
        (OwnValue("g_m_s2", 9.8, source("B9"), decimals=1), True),
        (OwnValue("g_m_s2", 98.1, source("B9"), decimals=1), False),
        (OwnValue("g_m_s2", math.nan, source("B9")), False),
    ],
)
def test_own_arithmetic_follows_rounding(own, right):
    assert bool(found("own_arithmetic", own=(own,))) is not right


def test_own_square_may_follow_the_own_rounded_period():
    # 0.9² = 0.81 where the unrounded square is 0.803: the learner's own rounding is followed.
    own = (
        OwnValue("period_s", 0.9, source("E2"), reading=0, decimals=1),
        OwnValue("period_squared_s2", 0.810, source("F2"), reading=0, decimals=3),
    )
    assert not found("own_arithmetic", own=own)


def test_a_dropped_zero_in_a_spreadsheet_is_no_inconsistency():
    rows = honest({1: reading(3, 0.3, 10.9, 11.04, decimals=2)})
    rows = (
        rows[0],
        replace(rows[1], timings=(replace(rows[1].timings[0], decimals=1), rows[1].timings[1])),
        *rows[2:],
    )
    learner = Learner("7", "Invented Learner")
    for file, expected in (("table.xlsx", 0), ("table.csv", 1)):
        table = ReadingsTable(rows, (), Source(file))
        work = ClassWork(BRIEF, (learner,), {"7": Portfolio(learner, PIECES, table=table)})
        (analysis,) = analyse(stack_readings([rows]), local_gravity(BRIEF.place))
        findings = run(work, {"7": analysis})["7"]
        assert sum(f.check == "decimals_uneven" for f in findings) == expected


@pytest.mark.parametrize(
    ("rate", "text"),
    [
        (None, ""),
        (0.005, "about 1 honest learner in 200 is asked this"),
        (0.0061, "about 1 honest learner in 160 is asked this"),
        (0.08, "about 8 honest learners in 100 are asked this"),
    ],
)
def test_rates_read_as_a_teacher_would_say_them(rate, text):
    assert one_in(rate) == text


def test_lists_read_as_sentences():
    assert listed([]) == ""
    assert listed(["a", "b", "c"]) == "a, b and c"


def test_every_face_shows_the_same_number_for_a_rate():
    # The workbook's words are shorter; the number must be the window's.
    from markbench.checks.wording import how_often
    from markbench.export.questions import _rate

    for rate in (0.00033, 0.0049, 0.0061, 0.08):
        assert how_often(rate)[1] in one_in(rate)
        assert how_often(rate)[1] in _rate(rate)
