"""Drafts: the level, why this one and not the next, and what the learner is told."""

from __future__ import annotations

import re
from dataclasses import replace

import pytest
from rubric_learners import facts_from, pieces_of, table_of

from markbench.model import (
    Brief,
    Criterion,
    Diagnosis,
    Explanation,
    Finding,
    Level,
    OwnValue,
    Phrase,
    Rubric,
    Source,
)
from markbench.rubric import draft

THREE = table_of([(0.2, [8.97, 9.02]), (0.4, [12.68, 12.71]), (0.6, [15.54, 15.50])])

LEVELS = (
    Level("Full", 3, "All.", "lengths >= asked_lengths and timings_fewest >= asked_timings"),
    Level("Some", 1, "Some.", "lengths >= 2"),
    Level("None", 0, "None."),
)


def rubric_of(*phrases: Phrase, levels=LEVELS, by_eye=False) -> Rubric:
    row = Criterion("row", "The row", tuple(levels), tuple(phrases), by_eye)
    return Rubric("test", "Test", (row,))


def test_the_first_level_that_holds_is_drafted():
    five = table_of([(0.1 * i, [9.0, 9.1]) for i in range(2, 7)])
    assert draft(rubric_of(), facts_from(five))[0].level == "Full"
    some = draft(rubric_of(), facts_from(THREE))[0]
    assert (some.criterion, some.level, some.marks) == ("row", "Some", 1)
    assert draft(rubric_of(), facts_from())[0].level == "None"


def test_reasons_say_what_decided_and_what_the_next_level_needs():
    finding = Finding(
        "too_few_lengths", "L1", "3 lengths where 5 were asked.", sources=(Source("table.csv"),)
    )
    reasons = draft(rubric_of(), facts_from(THREE, findings=(finding,)), (finding,))[0].reasons
    texts = [reason.text for reason in reasons]
    assert texts[0] == "For “Full”: needs at least 5 different lengths; 3 found."
    assert "Different lengths: 3 (at least 2 needed)." in texts
    # What holds is no obstacle: every length was timed twice.
    assert not any("timings" in text for text in texts)
    # From the draft to the fact, from the fact to the cells, and to the finding under it.
    assert reasons[0].fact == "lengths"
    assert [source.cell for source in reasons[0].sources] == ["A2", "A3", "A4"]
    under = [reason for reason in reasons if reason.check == "too_few_lengths"]
    assert under[0].text == finding.message
    assert under[0].sources == finding.sources


@pytest.mark.parametrize(
    "when, told",
    [
        ("report", "needs a written report; not found"),
        ("not readings_given", "must be without readings that could be used; it is there"),
        ("own_arithmetic_right", "needs arithmetic that follows from the readings; not known"),
        (
            "range_ratio >= 4",
            "needs ratio of longest to shortest length of at least 4.0; it is 3.0",
        ),
        (
            "4 <= range_ratio",
            "needs ratio of longest to shortest length of at least 4.0; it is 3.0",
        ),
        ("shortest_m < 0.1", "needs shortest length of less than 10.0 cm; it is 20.0 cm"),
        ("lengths == 4", "needs exactly 4 different lengths; 3 found"),
        ("lengths >= asked_lengths - 1", "needs at least 4 different lengths; 3 found"),
        ("best_g > 9", "needs best estimate of g of more than 9 m/s²; it is not known"),
        ("report or lengths > 3", "not found, or needs more than 3 different lengths; 3 found"),
        ("own_arithmetic_right or not known(lengths)", "needs arithmetic that follows"),
        ("known(best_g)", "best estimate of g is not known"),
        ("not (lengths > 2)", "does not hold (different lengths: 3)"),
        ("lengths * 2 > 7 + 1", "does not hold (different lengths: 3)"),
        ('slip == "half_swings"', "it is none"),
    ],
)
def test_why_a_level_was_not_reached_in_plain_words(when, told):
    levels = (Level("High", 1, "High.", when), Level("Low", 0, "Low."))
    reasons = draft(rubric_of(levels=levels), facts_from(THREE))[0].reasons
    assert told in reasons[0].text
    assert reasons[0].text.startswith("For “High”: ")


@pytest.mark.parametrize(
    "when, told",
    [
        ("not report", "Without a written report."),
        ("readings_given", "Readings that could be used: yes."),
        ("known(g)", "g from the straight line: known."),
        ("range_ratio > 2", "Ratio of longest to shortest length is 3.0 (more than 2.0 needed)."),
        ("report or lengths == 3", "Different lengths: 3 (exactly 3 needed)."),
        ("not (lengths > 3)", "The condition holds (different lengths: 3)."),
        ("not known(best_g)", "Best estimate of g: not known."),
        (
            "own_arithmetic_right or not known(own_arithmetic_right)",
            "Arithmetic that follows from the readings: not known, and not held against the "
            "learner.",
        ),
    ],
)
def test_why_a_level_was_reached_in_plain_words(when, told):
    levels = (Level("High", 1, "High.", when), Level("Low", 0, "Low."))
    drafted = draft(rubric_of(levels=levels), facts_from(THREE))[0]
    assert drafted.level == "High"
    assert drafted.reasons[0].text == told


def test_of_several_bounds_on_one_fact_the_strictest_is_told():
    levels = (
        Level("High", 2, "High.", "lengths >= 4 and lengths > 3.5 and lengths >= 5"),
        Level("Low", 1, "Low.", "lengths >= 1 and lengths >= asked_lengths - 3 and lengths <= 9"
              " and lengths < 8"),
        Level("None", 0, "None."),
    )  # fmt: skip
    reasons = draft(rubric_of(levels=levels), facts_from(THREE))[0].reasons
    assert [reason.text for reason in reasons] == [
        "For “High”: needs at least 5 different lengths; 3 found.",
        "Different lengths: 3 (at least 2 needed).",
        "Different lengths: 3 (less than 8 needed).",
    ]


def test_the_teachers_eye_gets_a_prompt_and_the_learner_nothing():
    look = Phrase("The lengths run to {longest}: why?", "lengths >= 2", "look")
    praise = Phrase("Fine: {lengths}.", "lengths >= 2")
    drafted = draft(rubric_of(look, praise, by_eye=True), facts_from(THREE))[0]
    assert drafted.level is None
    assert drafted.marks is None
    assert drafted.sentences == ()
    assert drafted.reasons[0].text.startswith("For your eye: The row.")
    assert drafted.reasons[1].text == "The lengths run to 60.0 cm: why?"
    assert drafted.reasons[1].sources


def test_a_table_that_could_not_be_understood_is_not_marked_down():
    finding = Finding("table_not_understood", "L1", "No columns were recognised.")
    facts = facts_from(None, pieces_of("readings", "selfie"), (finding,))
    drafted = draft(rubric_of(), facts, (finding,))[0]
    assert (drafted.level, drafted.marks, drafted.sentences) == (None, None, ())
    assert drafted.reasons[1].check == "table_not_understood"
    # What does not rest on readings is judged all the same.
    levels = (Level("Sent", 1, "Sent.", "selfie"), Level("None", 0, "None."))
    assert draft(rubric_of(levels=levels), facts, (finding,))[0].level == "Sent"


def test_nothing_handed_in_is_the_lowest_level():
    assert draft(rubric_of(), facts_from())[0].marks == 0


def test_a_phrase_with_a_place_that_cannot_be_filled_falls_away():
    phrases = (
        Phrase("Your best g is {best_g}, at {longest}."),
        Phrase("Your longest length is {longest}."),
    )
    assert draft(rubric_of(*phrases), facts_from(THREE))[0].sentences == (
        "Your longest length is 60.0 cm.",
    )
    assert draft(rubric_of(phrases[0]), facts_from(THREE))[0].sentences == ()


def test_one_of_each_role_in_order():
    phrases = (
        Phrase("Next {lengths}.", "lengths > 0", "next"),
        Phrase("Problem {lengths}.", "lengths > 0", "problem"),
        Phrase("Praise {lengths}.", "lengths > 0", "praise"),
        Phrase("Never {lengths}.", "lengths > 9", "praise"),
    )
    drafted = draft(rubric_of(*phrases), facts_from(THREE))[0]
    assert drafted.sentences == ("Praise 3.", "Problem 3.", "Next 3.")
    assert drafted.feedback == "Praise 3. Problem 3. Next 3."


def test_never_more_than_three_and_room_goes_to_a_second_problem_first():
    def phrase(role: str, number: int) -> Phrase:
        return Phrase(f"{role} {number} {{lengths}}.", f"lengths > 0 and lengths < 9{number}", role)

    praise, problem = [phrase("praise", i) for i in (1, 2)], [phrase("problem", i) for i in (1, 2)]
    step = [phrase("next", 1)]

    def said(*phrases: Phrase) -> list[str]:
        sentences = draft(rubric_of(*phrases), facts_from(THREE))[0].sentences
        return [" ".join(sentence.split()[:2]).lower() for sentence in sentences]

    assert said(*praise, *problem, *step) == ["praise 1", "problem 1", "next 1"]
    assert said(*praise, *step) == ["praise 1", "praise 2", "next 1"]
    assert said(*problem, *step) == ["problem 1", "problem 2", "next 1"]
    assert said(*praise, *problem) == ["praise 1", "problem 1", "problem 2"]
    assert said(*praise) == ["praise 1", "praise 2"]
    assert said(*step) == ["next 1"]


def test_alternates_are_chosen_by_the_learners_data_and_stay_chosen():
    phrases = [Phrase(f"Way {i}: {{lengths}}.", "lengths > 0") for i in range(3)]
    rubric = rubric_of(*phrases)
    ways = [draft(rubric, facts_from(THREE, learner=f"L{i}"))[0].sentences[0] for i in range(60)]
    again = [draft(rubric, facts_from(THREE, learner=f"L{i}"))[0].sentences[0] for i in range(60)]
    assert ways == again
    # Each of three ways expects 20 of 60; fewer than 8 has a chance of about 1 in 5000.
    assert all(ways.count(way) >= 8 for way in set(ways))
    assert len(set(ways)) == 3


def test_a_sentence_begins_with_a_capital_unless_with_the_symbol_g():
    phrases = (
        Phrase("{missing_pieces} did not come.", "", "problem"),
        Phrase("g is not there.", "", "next"),
    )
    sentences = draft(rubric_of(*phrases), facts_from(THREE))[0].sentences
    assert sentences[0].startswith("The photo")
    assert sentences[1].startswith("g is")


def diagnosis_of(slip: str) -> Diagnosis:
    words = "Your 8.97 s fits 5 swings."
    odd = Explanation(slip, 0.97, "Half the swings.", {}, 9.81, 0.08, to_learner=words)
    return Diagnosis((odd, Explanation("honest", 0.03, "Honest.", {})), None, flagged=True)


def test_a_suspected_slip_is_at_most_a_question_to_the_learner():
    ask = Finding("slip", "L1", "Half the swings?", ask="How did you count the ten swings?")
    facts = facts_from(THREE, findings=(ask,), diagnosis=diagnosis_of("half_swings"))
    assert facts["slip"] == "half_swings"
    assert facts["slip_probability"] == 0.97
    assert facts.show("slip_question") == "How did you count the ten swings?"
    assert facts.show("slip_explained") is None
    assert facts["agreed_slip"] == ""


def test_an_agreed_slip_is_explained_in_the_learners_numbers():
    ask = Finding("slip", "L1", "Half the swings?", ask="How did you count the ten swings?")
    rubric = rubric_of(
        Phrase("{slip_explained}", "known(slip_explained)", "problem"),
        Phrase("{slip_question}", 'slip != "" and agreed_slip == ""', "next"),
    )
    about = {"findings": (ask,), "diagnosis": diagnosis_of("half_swings")}
    asked = draft(rubric, facts_from(THREE, **about))[0]
    assert asked.sentences == ("How did you count the ten swings?",)
    agreed = draft(rubric, facts_from(THREE, agreed_slip="half_swings", **about))[0]
    assert agreed.sentences == ("Your 8.97 s fits 5 swings.",)
    other = draft(rubric, facts_from(THREE, agreed_slip="count_short", **about))[0]
    assert other.sentences == ()


def test_agreeing_takes_the_agreed_explanation_and_not_the_likeliest():
    two = Diagnosis(
        (
            Explanation("half_swings", 0.7, "Half.", {}, 9.9, 0.1),
            Explanation("count_short", 0.3, "One short.", {}, 9.7, 0.1),
        ),
        None,
        flagged=True,
    )
    assert facts_from(THREE, diagnosis=two)["g_if_mended"] == 9.9
    agreed = facts_from(THREE, diagnosis=two, agreed_slip="count_short")
    assert agreed["g_if_mended"] == 9.7
    assert agreed["agreed_slip"] == "count_short"


def test_agreeing_to_one_of_two_slips_explains_that_one():
    pair = Explanation(
        "half_swings+length_to_top", 0.9, "Both.", {}, 9.9, 0.1, to_learner="Both, g = 9.9 m/s².",
        parts_to_learner={"half_swings": "Swings: 5.", "length_to_top": "Lengths: 2 cm short."},
    )  # fmt: skip
    diagnosis = Diagnosis((pair,), None, flagged=True)
    both = facts_from(THREE, diagnosis=diagnosis, agreed_slip=pair.slip)
    assert both.show("slip_explained") == "Both, g = 9.9 m/s²."
    assert both["g_if_mended"] == 9.9
    one = facts_from(THREE, diagnosis=diagnosis, agreed_slip="length_to_top")
    assert one.show("slip_explained") == "Lengths: 2 cm short."
    assert one["g_if_mended"] is None


def test_a_piece_that_will_not_open_is_not_marked_down():
    levels = (
        Level("All", 2, "All.", "pieces_present >= asked_pieces"),
        Level("None", 0, "None."),
    )
    broken = Finding("video_unreadable", "L1", "Broken.", sources=(Source("swing_video.bin"),))
    about = {"brief": Brief(evidence=("swing_video",)), "pieces": pieces_of("swing_video")}
    (waiting,) = draft(rubric_of(levels=levels), facts_from(THREE, findings=(broken,), **about))
    assert (waiting.level, waiting.marks) == (None, None)
    assert "will not open" in waiting.reasons[0].text
    assert draft(rubric_of(levels=levels), facts_from(THREE, **about))[0].level == "All"


def test_an_honest_diagnosis_suggests_nothing():
    honest = Diagnosis((Explanation("honest", 0.99, "Honest.", {}, 9.81),), None)
    facts = facts_from(THREE, diagnosis=honest)
    assert facts["slip"] == ""
    assert facts["slip_probability"] is None
    assert facts["g_if_mended"] is None


def test_no_level_is_an_error_only_a_rubric_by_hand_can_make():
    with pytest.raises(ValueError, match="no level of the criterion row holds"):
        draft(rubric_of(levels=(Level("Full", 1, "All.", "lengths > 9"),)), facts_from(THREE))


def test_thresholds_come_from_the_brief():
    asked = facts_from(THREE, brief=Brief(lengths=3))
    assert draft(rubric_of(), asked)[0].level == "Full"


def test_numbers_are_written_the_same_in_reasons_and_sentences():
    phrase = Phrase("From {shortest}.", "shortest_m > 0", "problem")
    levels = (Level("High", 1, "High.", "shortest_m < 0.1"), Level("Low", 0, "Low."))
    drafted = draft(rubric_of(phrase, levels=levels), facts_from(THREE))[0]
    assert re.search(r"\b20\.0 cm", drafted.sentences[0])
    assert re.search(r"\b20\.0 cm", drafted.reasons[0].text)


def test_a_photo_not_yet_told_apart_is_not_marked_down():
    levels = (
        Level("All", 2, "All.", "pieces_present >= asked_pieces"),
        Level("Some", 1, "Some.", "pieces_present >= 1"),
        Level("None", 0, "None."),
    )
    brief = Brief(evidence=("setup_photo", "swing_video"))
    untold = facts_from(THREE, pieces_of("photo", "swing_video"), brief=brief)
    (waiting,) = draft(rubric_of(levels=levels), untold)
    assert (waiting.level, waiting.marks) == (None, None)
    assert "nobody has said what it shows" in waiting.reasons[0].text
    told = facts_from(THREE, pieces_of("setup_photo", "swing_video"), brief=brief)
    assert draft(rubric_of(levels=levels), told)[0].level == "All"
    lacking = facts_from(THREE, pieces_of("swing_video"), brief=brief)
    assert draft(rubric_of(levels=levels), lacking)[0].level == "Some"


def test_working_that_may_stand_in_a_report_is_left_to_the_teacher():
    levels = (
        Level("Full", 2, "All.", "own_period_squared_given and own_arithmetic_right"),
        Level("None", 0, "None."),
    )
    told = Phrase("Nothing is worked out from {longest}.", "own_columns == 0", "problem")
    rubric = rubric_of(told, levels=levels)
    (alone,) = draft(rubric, facts_from(THREE, pieces_of("readings")))
    assert (alone.level, len(alone.sentences)) == ("None", 1)
    (beside,) = draft(rubric, facts_from(THREE, pieces_of("readings", "report")))
    assert (beside.level, beside.marks, beside.sentences) == (None, None, ())
    assert "report" in beside.reasons[0].text
    # What the table itself shows needs no report.
    own = OwnValue("period_squared_s2", 0.809, Source("table.csv", cell="G2", raw="0.809"), 0)
    worked = table_of([(0.2, [8.97, 9.02])], own=(own,))
    (full,) = draft(rubric, facts_from(worked, pieces_of("readings", "report")))
    assert full.level == "Full"


def test_readings_that_may_stand_in_a_report_are_not_marked_absent():
    (reported,) = draft(rubric_of(), facts_from(None, pieces_of("report")))
    assert (reported.level, reported.sentences) == (None, ())
    assert "readings may stand in it" in reported.reasons[0].text
    assert draft(rubric_of(), facts_from(THREE, pieces_of("readings", "report")))[0].level == "Some"
    # An empty file is no report.
    empty = replace(pieces_of("report")[0], size_bytes=0)
    assert draft(rubric_of(), facts_from(None, (empty,)))[0].level == "None"
