"""Every slip has words, they fill in, and they accuse nobody."""

import re
from dataclasses import fields

import numpy as np
import pytest

from markbench.checks.diagnosis import SLIPS, slip_finding, weigh
from markbench.checks.diagnosis.flagging import KINDS, calibration
from markbench.checks.diagnosis.priors import SLIP_RATE
from markbench.checks.diagnosis.slips import SlipWords
from markbench.model import Concern, Diagnosis, Place, Reading, Source, Timing
from markbench.physics.gravity import local_gravity
from markbench.physics.stack import stack_readings
from simulation.readings import SLIPS as SIMULATED
from simulation.readings import simulate

ACCUSING = re.compile(
    r"cheat|fraud|dishonest|lie[ds]?\b(?! (within|closer))|fake|guilty|invented", re.I
)


def test_the_registry_is_complete():
    assert set(SLIPS) == set(SLIP_RATE) == set(SIMULATED)
    assert sum(SLIP_RATE.values()) < 1


def test_the_calibration_is_complete():
    assert set(calibration()["thresholds"]) == set(KINDS)
    assert set(calibration()["honest_rate"]) == set(SLIPS)
    assert all(0 <= rate <= 0.01 for rate in calibration()["honest_rate"].values())


@pytest.mark.parametrize("slip", SLIPS)
def test_no_words_accuse(slip):
    for field in fields(SlipWords):
        assert not ACCUSING.search(getattr(SLIPS[slip], field.name))


@pytest.mark.parametrize("slip", [*SIMULATED, "half_swings+length_to_top"])
def test_sentences_carry_the_learners_own_numbers(slip):
    sim = simulate(12, slip=slip, seed=31)
    for d in weigh(sim.stack(), local_gravity(sim.place)):
        for explanation in d.explanations:
            if explanation.slip == "honest":
                continue
            for text in (explanation.sentence, explanation.to_learner, explanation.ask):
                assert text
                assert "{" not in text
                assert "nan" not in text
                assert "None" not in text
            assert re.search(r"\d", explanation.to_learner)


def test_two_slips_are_told_together_and_each_can_be_agreed_alone():
    sim = simulate(12, slip="half_swings+length_to_top", seed=31)
    told = [
        e
        for d in weigh(sim.stack(), local_gravity(sim.place))
        for e in d.explanations
        if e.slip == "half_swings+length_to_top"
    ]
    assert told
    for explanation in told:
        assert explanation.sentence.count("would explain") == 1
        assert explanation.sentence.startswith("Two things together")
        assert explanation.to_learner.count("your readings give g") == 1
        assert set(explanation.parts_to_learner) == {"half_swings", "length_to_top"}
        for part in explanation.parts_to_learner.values():
            assert part in explanation.to_learner
            assert "g =" not in part  # which another slip beside it would alter


@pytest.mark.parametrize("slip", SLIPS)
def test_what_is_asked_is_a_question(slip):
    assert SLIPS[slip].ask.endswith("?")


def test_a_finding_is_a_question_with_its_numbers():
    sim = simulate(3, slip="count_short", seed=32)
    d = weigh(sim.stack(), local_gravity(sim.place))[0]
    finding = slip_finding(d, "L01")
    assert finding.check == "slip"
    assert finding.learner == "L01"
    assert finding.concern == Concern.LOOK
    assert finding.numbers["slip"] == "count_short"
    assert finding.numbers["swings"] == 9
    assert finding.ask.endswith("?")
    assert finding.honest_rate == calibration()["honest_rate"]["count_short"]
    assert slip_finding(d, "L01", {"count_short": 0.004}).honest_rate == 0.004


def test_honest_work_makes_no_finding():
    sim = simulate(20, seed=33)
    found = weigh(sim.stack(), local_gravity(sim.place))
    quiet = [d for d in found if not d.flagged]
    assert len(quiet) >= 18
    for d in quiet:
        assert slip_finding(d, "L01") is None
        assert d.explanations[0].slip == "honest"


PLACE = local_gravity(Place(50.0, 0.0))


def weighed(*rows: tuple[float, list[float]], swings: int = 10) -> Diagnosis:
    """The explanations of one table, its rows (length in cm, times as typed) written by hand."""
    readings = tuple(
        Reading(
            cm / 100, swings, tuple(Timing(t, Source("t.csv"), 2) for t in times), Source("t.csv"),
            length_raw_decimals=0,
        )
        for cm, times in rows
    )  # fmt: skip
    return weigh(stack_readings([readings]), PLACE)[0]


# One timing at 50 cm holds eleven swings; the others are honest.
ELEVEN = [(20, [8.97, 9.05]), (30, [11.01, 10.93]), (40, [12.70, 12.74]), (50, [14.20, 15.64]),
          (60, [15.55, 15.49])]  # fmt: skip


def test_a_repair_that_leaves_the_best_estimate_is_told_by_what_it_does_to_the_line():
    """The best estimate gave the odd timing no weight from the start: the graph's line did."""
    told = weighed(*ELEVEN).explanations[0]
    assert told.slip == "one_timing_miscounted"
    assert "15.64 s at 50.0 cm would be 11 swings" in told.sentence
    assert "The line then gives g = 9.8" in told.sentence
    assert "instead of 9.4 ± 0.7 m/s²" in told.sentence  # what the graph says
    for before, after in re.findall(r"g becomes (.+?) instead of (.+?)\.", told.sentence):
        assert before != after
    # A slip that moves the best estimate is told by it, as ever.
    halves = [(cm, [round(t / 2, 2) for t in times]) for cm, times in ELEVEN[:3]]
    assert "g becomes 9.8" in weighed(*halves).explanations[0].sentence


def test_the_learner_is_told_of_a_timing_in_one_sentence():
    told = weighed(*ELEVEN).explanations[0].to_learner
    assert told.startswith("Your 15.64 s at 50.0 cm (the second timing) fits 11 swings, not 10")


def with_one(typed: float) -> Diagnosis:
    """Honest readings, but for the second timing at 30 cm, which should be 10.93 s."""
    rows = [ELEVEN[0], (30, [11.01, typed]), ELEVEN[2], (50, [14.20, 14.22]), ELEVEN[4]]
    return weighed(*rows)


@pytest.mark.parametrize("typed", [4.0, 5.55, 22.74])
def test_where_nothing_comes_near_the_readings_nothing_is_told(typed):
    """The least bad of them would be told at 99 %: another length, and a g that fits worse."""
    told = with_one(typed)
    assert told.explanations == ()
    assert not told.flagged
    assert slip_finding(told, "L1") is None
    assert "comes near these readings" in told.limits
    assert told.best.g == pytest.approx(9.85, abs=0.05)


@pytest.mark.parametrize(
    "typed, meant",
    # Digits changed over, the point moved, and the two first ones: 01.93 is kept as 1.93.
    [(19.03, "10.93"), (109.3, "10.93"), (1.93, "10.93")],
)
def test_a_mistyped_time_that_fits_is_told_with_what_was_meant(typed, meant):
    told = with_one(typed).explanations[0]
    assert told.slip == "mistyped_cell"
    assert f"as {meant} s" in told.sentence


@pytest.mark.parametrize("slip", SLIPS)
def test_an_explanation_says_what_it_suggests(slip):
    assert "would explain" in SLIPS[slip].sentence


def test_what_cannot_be_told_apart_is_said():
    """A swing of 69° lengthens the period by as much as an eleventh swing."""
    sim = simulate(60, slip="count_over", seed=34, decimals=2)
    found = weigh(sim.stack(), local_gravity(sim.place))
    alike = [d.indistinct[0] for d in found if d.indistinct]
    assert alike
    assert all("cannot tell" in pair.sentence for pair in alike)
    assert any("video" in pair.settle for pair in alike)


def test_probabilities_add_up():
    sim = simulate(40, "mixed", seed=35)
    for d in weigh(sim.stack(), local_gravity(sim.place)):
        total = sum(e.probability for e in d.explanations)
        assert 0.85 < total <= 1 + 1e-9
        assert np.all(np.diff([e.probability for e in d.explanations]) <= 0)


def test_limits_say_what_is_hidden():
    sim = simulate(2, seed=36, decimals=1, timings=1)
    d = weigh(sim.stack(), local_gravity(sim.place))[0]
    assert "one timing to a length" in d.limits.lower() or "With one timing" in d.limits
    assert "0.05 s" in d.limits
