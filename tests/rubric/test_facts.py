"""Named facts: their table, their values on hand-worked readings, and what is not known."""

from __future__ import annotations

import datetime as dt
from dataclasses import replace
from pathlib import Path

import pytest
from rubric_learners import facts_from, pieces_of, table_of

from markbench.model import Brief, Finding, OwnValue, Piece, Place, Source
from markbench.rubric.facts import FACTS, GROUPS, PLACEHOLDERS, facts_table_markdown

ROOT = Path(__file__).parents[2]


def test_the_table_of_facts_is_up_to_date():
    written = (ROOT / "rubrics" / "FACTS.md").read_text(encoding="utf-8")
    assert written == facts_table_markdown(), (
        "run: python -m markbench.rubric.facts_table > rubrics/FACTS.md"
    )


@pytest.mark.parametrize("fact", FACTS.values(), ids=FACTS)
def test_every_fact_is_described(fact):
    assert fact.group in GROUPS
    assert fact.label
    assert fact.description.endswith((".", "”."))
    assert len(fact.description) > 15


def test_every_fact_is_of_its_kind_for_everyone(crowd):
    kinds = {"number": (int, float), "text": (str,), "yes/no": (bool,)}
    seen = dict.fromkeys(FACTS, False)
    for facts in crowd:
        for name, value in facts.items():
            if value is None:
                continue
            seen[name] = True
            assert isinstance(value, kinds[FACTS[name].kind]), name
            assert isinstance(value, bool) == (FACTS[name].kind == "yes/no"), name
    assert [name for name, known in seen.items() if not known] == []


def test_no_fact_fails_on_nothing():
    facts = facts_from()
    for name in FACTS:
        facts.show(name)
        facts.sources(name)
        facts.findings(name)
    assert facts["lengths"] == 0
    assert facts["readings_given"] is False
    assert facts["g"] is None
    assert facts["range_ratio"] is None


# Worked by hand: 20 cm and 80 cm, ten swings; T = 0.9 s and 1.8 s, so T² = 0.81 and 3.24 s²,
# slope 2.43/0.6 = 4.05 s²/m, intercept 0, g = 4π²/4.05 = 9.7478 m/s².
HAND = [(0.20, [8.9, 9.1]), (0.80, [18.0, 18.0])]


def test_hand_worked_readings():
    facts = facts_from(table_of(HAND), brief=Brief(place=Place(45.0, 0.0)))
    assert facts["lengths"] == 2
    assert facts["timings_fewest"] == 2
    assert facts["timings_total"] == 4
    assert facts["swings_fewest"] == 10
    assert facts["swings_total"] == 40
    assert facts["range_ratio"] == pytest.approx(4.0)
    assert facts["watched_s"] == pytest.approx(54.0)
    # Squares about the means 9.0 and 18.0: 0.01 + 0.01 on two degrees of freedom.
    assert facts["repeat_scatter_s"] == pytest.approx(0.1)
    assert facts["repeat_gap_s"] == pytest.approx(0.2)
    assert facts["repeat_gap_length_m"] == pytest.approx(0.2)
    assert facts["g"] == pytest.approx(9.7478, abs=2e-4)
    assert facts["u_g"] is None
    # Normal gravity at 45° is 9.8062 m/s² (WGS 84): (9.8062 − 9.7478)/9.8062 = 0.00595.
    assert facts["g_difference_fraction"] == pytest.approx(0.00595, abs=5e-5)
    assert facts["g_within_tolerance"] is True
    assert facts["g_above_local"] is False
    assert facts["worst_length_m"] is None
    assert facts.show("shortest_m") == "20.0 cm"
    assert facts.show("longest_time_s") == "18.00 s"
    assert facts.show("longest_period_s") == "1.800 s"


def test_the_point_off_the_line_is_found_in_seconds_of_timing():
    # T² = 4·L exactly, but for 40 cm, whose T² of 1.69 should be 1.60. Least squares over
    # 20, 40, 60 cm: slope 4.0, intercept 0.03; at 40 cm the line has 1.63 s², that is
    # 12.767 s for ten swings, against 13.0 s.
    times = [(0.2, [10 * 0.8**0.5]), (0.4, [13.0]), (0.6, [10 * 2.4**0.5])]
    facts = facts_from(table_of(times))
    assert facts["worst_length_m"] == pytest.approx(0.4)
    assert facts["largest_departure_s"] == pytest.approx(13.0 - 10 * 1.63**0.5, abs=1e-9)
    assert facts["worst_is_slow"] is True
    # Total of T² about its mean: 0.8, 1.69, 2.4 → 1.2830; residuals −0.03, 0.06, −0.03.
    assert facts["r_squared"] == pytest.approx(1 - 0.0054 / 1.2830, abs=1e-4)


# One timing at 50 cm holds a swing too many: its mean lies half a second off the line of all
# five, which it pulls so far that the line's own scatter lets it pass.
ONE_SWING_MORE = [
    (0.2, [8.97, 9.05]), (0.3, [11.01, 10.93]), (0.4, [12.70, 12.74]), (0.5, [14.20, 15.64]),
    (0.6, [15.55, 15.49]),
]  # fmt: skip


def test_a_point_far_off_the_line_counts_although_it_widens_the_lines_scatter():
    facts = facts_from(table_of(ONE_SWING_MORE))
    assert facts["largest_departure_s"] == pytest.approx(0.51, abs=0.01)
    assert facts["outliers"] == 1
    assert [source.cell for source in facts.sources("outliers")] == ["A5", "B5", "C5"]
    # Without the odd swing, no point departs by more than a few hundredths.
    right = [*ONE_SWING_MORE[:3], (0.5, [14.20, 14.22]), ONE_SWING_MORE[4]]
    assert facts_from(table_of(right))["outliers"] == 0
    # A shaky hand all over is no single point off the line.
    shaky = [(0.2, [8.7, 9.3]), (0.3, [11.3, 10.7]), (0.4, [12.4, 13.1]), (0.5, [14.0, 14.9]),
             (0.6, [15.2, 15.9])]  # fmt: skip
    assert facts_from(table_of(shaky))["outliers"] == 0


def test_a_point_that_the_check_names_counts_once():
    named = Finding("off_the_line", "L1", "Apart.", cells=((3, None), (3, 0), (3, 1)))
    assert facts_from(table_of(ONE_SWING_MORE), findings=(named,))["outliers"] == 1


def test_lengths_count_once():
    facts = facts_from(table_of([(0.2, [9.0]), (0.2, [9.1]), (0.4, [12.7])]))
    assert facts["lengths"] == 2
    assert facts["timed_once"] == 3


def test_a_length_timed_once_is_named_with_its_time():
    facts = facts_from(table_of([(0.2, [9.0, 9.1]), (0.4, [12.7]), (0.6, [15.5, 15.6])]))
    assert (facts.show("once_length_m"), facts.show("once_time")) == ("40.0 cm", "12.70 s")
    assert [source.cell for source in facts.sources("once_time")] == ["A3", "B3"]
    assert facts_from(table_of(HAND))["once_time"] is None


def test_a_length_without_a_timing_does_not_count():
    facts = facts_from(table_of([(0.2, [9.0]), (0.4, [])]))
    assert facts["lengths"] == 1


def test_pieces_must_be_there_open_and_not_be_empty():
    empty = Piece("selfie.jpg", "selfie", size_bytes=0)
    broken = Finding("photo_unreadable", "L1", "Broken.", sources=(Source("setup_photo.bin"),))
    facts = facts_from(None, (*pieces_of("setup_photo", "swing_video"), empty), (broken,))
    assert facts["setup_photo"] is None  # handed in: whether it shows anything is not known
    assert facts["selfie"] is False
    assert facts["swing_video"] is True
    assert facts["pieces_present"] == 1
    assert facts["pieces_unopened"] == 1
    assert facts.show("missing_pieces") == "the photo of you with the set-up"


def test_a_photo_not_told_apart_leaves_both_photos_unknown():
    facts = facts_from(None, pieces_of("photo", "swing_video"))
    assert facts["setup_photo"] is None
    assert facts["selfie"] is None
    assert facts["pieces_missing"] == 0
    assert facts["pieces_untold"] == 2


def test_own_arithmetic_names_cell_and_recomputed_value():
    wrong = OwnValue("period_squared_s2", 3.42, Source("table.csv", cell="G3", raw="3.42"), 1)
    right = OwnValue("period_squared_s2", 0.81, Source("table.csv", cell="G2", raw="0.81"), 0)
    finding = Finding("own_arithmetic", "L1", "Differs.", sources=(wrong.source,))
    facts = facts_from(table_of(HAND, own=(right, wrong)), findings=(finding,))
    assert facts["own_arithmetic_right"] is False
    assert facts["own_arithmetic_wrong_count"] == 1
    assert facts.show("wrong_cell") == "G3"
    assert facts.show("wrong_value") == "3.42"
    assert facts.show("wrong_quantity") == "T² at 80.0 cm"
    assert facts.show("wrong_recomputed") == "3.240 s²"
    assert facts.sources("own_arithmetic_right") == (wrong.source,)


def test_own_working_is_unknown_without_any():
    facts = facts_from(table_of(HAND))
    assert facts["own_arithmetic_right"] is None
    assert facts["own_g_given"] is False


@pytest.mark.parametrize(
    "closes, extended, late",
    [
        (None, None, None),
        (dt.date(2026, 3, 4), None, 0),
        (dt.date(2026, 3, 1), None, 3),
        (dt.date(2026, 3, 1), dt.date(2026, 3, 6), 0),
        (dt.date(2026, 3, 1), dt.date(2026, 3, 2), 2),
    ],
)
def test_days_late(closes, extended, late):
    """Handed in on 4 March."""
    brief = Brief(closes=closes)
    facts = facts_from(None, pieces_of("readings"), brief=brief, extended_to=extended)
    assert facts["late_days"] == late


def test_the_example_is_one_of_the_learners_own_rows():
    facts = facts_from(table_of(HAND))
    shown = facts.show("example_length_m"), facts.show("example_timings")
    assert shown in [("20.0 cm", "8.90 s and 9.10 s"), ("80.0 cm", "18.00 s and 18.00 s")]


def test_an_agreed_miscount_of_every_timing_changes_the_count():
    table = table_of(HAND)
    counted = [
        (facts["swings_fewest"], facts["swings_total"])
        for facts in (
            facts_from(table, agreed_slip=slip)
            for slip in (None, "half_swings", "count_short+length_to_top", "count_over")
        )
    ]
    assert counted == [(10, 40), (5, 20), (9, 36), (11, 44)]
    # Five passages are two swings there and back, and one way more.
    assert facts_from(table_of(HAND, 5), agreed_slip="half_swings")["swings_fewest"] == 2


def test_single_timings_are_quoted_as_they_were_written():
    """A spreadsheet's number cells keep no trailing noughts, and none are put there."""
    facts = facts_from(table_of([(0.2, [9.0, 8.9])], decimals=None))
    assert facts.show("example_timings") == "9 s and 8.9 s"
    assert (facts.show("repeat_low_s"), facts.show("repeat_high_s")) == ("8.9 s", "9 s")
    typed = facts_from(table_of([(0.2, [9.0, 8.9])], decimals=1))
    assert typed.show("repeat_high_s") == "9.0 s"


def test_the_data_hash_is_fixed_by_learner_and_readings():
    one = facts_from(table_of(HAND)).data_hash
    assert one == facts_from(table_of(HAND)).data_hash
    assert one != facts_from(table_of(HAND), learner="L2").data_hash
    assert one != facts_from(table_of([HAND[0], (0.80, [18.0, 18.01])])).data_hash


def test_names_of_slips_are_never_quoted_to_a_learner():
    assert not {"slip", "agreed_slip", "slip_probability"} & set(PLACEHOLDERS)


def test_decimals_that_no_file_keeps_are_not_praised():
    pairs = [(0.2, [9.0, 9.0]), (0.4, [13.0, 12.0])]
    assert facts_from(table_of(pairs))["decimals_even"] is True
    assert facts_from(table_of(pairs, decimals=None))["decimals_even"] is None


def test_times_of_different_decimals_are_not_praised_where_no_check_asks():
    """“8,95”, “ca. 11”, “12,7”, “14,15”: too few for the check in a spreadsheet, and not even."""
    table = table_of([(0.2, [8.95, 9.02]), (0.3, [11.0, 10.97]), (0.4, [12.7])])
    places = iter((2, 2, 0, 2, 1))
    readings = tuple(
        replace(r, timings=tuple(replace(t, decimals=next(places)) for t in r.timings))
        for r in table.readings
    )
    assert facts_from(replace(table, readings=readings))["decimals_even"] is None
    # Nor is “every time” known where one cell keeps no decimals.
    first = replace(table.readings[0].timings[0], decimals=None)
    row = replace(table.readings[0], timings=(first, table.readings[0].timings[1]))
    some = replace(table, readings=(row, *table.readings[1:]))
    assert facts_from(some)["decimals_even"] is None
    assert facts_from(table)["decimals_even"] is True


def test_a_difference_too_small_for_its_figures_is_a_bound():
    show = FACTS["g_difference_fraction"].show
    assert show(0.0004, None) == "less than 0.1 %"
    assert show(0.0006, None) == "0.1 %"
    assert show(0.123, None) == "12 %"


def test_a_unit_that_was_guessed_is_no_unit_in_a_heading():
    """Headings that say nothing need no unit to the reader; the guess says that one is missing."""
    table = table_of(HAND, headings=("Thread", "Trial A", "Trial B"))
    guessed = Finding(
        "unit_guessed", "L1", "No unit for the times.", numbers={"unit": "s", "quantity": "time"},
        sources=(table.headings[1],),
    )  # fmt: skip
    facts = facts_from(table, findings=(guessed,))
    assert facts["headings_have_units"] is False
    assert facts.show("bare_heading") == "“Trial A”"
    german = facts_from(table, findings=(guessed,), brief=Brief(feedback_language="de"))
    assert german.show("bare_heading") == "„Trial A“"
    # Beside no headings at all, the cell that was guessed at is no heading.
    cell = Finding(
        "unit_guessed", "L1", "No unit for the length.", numbers={"quantity": "length"},
        sources=(Source("table.csv", cell="A2", raw="20"),),
    )  # fmt: skip
    bare = facts_from(table_of(HAND, headings=()), findings=(cell,))
    assert bare["headings_have_units"] is False
    assert bare["bare_heading"] is None
    # A heading that the reader of tables did not understand, but that names the unit.
    table = table_of(HAND, headings=("string length in cm", "t1 / s", "t2 / s"))
    named = Finding(
        "unit_guessed", "L1", "No unit for the length.", sources=(table.headings[0],),
        numbers={"unit": "cm", "quantity": "length"},
    )  # fmt: skip
    assert facts_from(table, findings=(named,))["headings_have_units"] is True
    # A cell that speaks against its heading, or a final g, is another question.
    for numbers in ({"unit": "mm", "heading_unit": "cm"}, {"quantity": "g"}):
        other = Finding("unit_guessed", "L1", "Another question.", numbers=numbers)
        assert facts_from(table_of(HAND), findings=(other,))["headings_have_units"] is True
