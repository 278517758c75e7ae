"""A film's say in the weighing: by hand, on a diagnosis made up for it."""

import math

import pytest

from markbench.checks.diagnosis.film import with_film
from markbench.model import Diagnosis, Explanation


def explanation(slip, probability):
    return Explanation(slip, probability, f"About {slip}.", {})


DIAGNOSIS = Diagnosis(
    (explanation("count_short", 0.6), explanation("honest", 0.3), explanation("wide_swing", 0.1)),
    None,
    flagged=True,
)


def weights(**logs):
    return {"honest": 0.0, "half_swings": -9.0, "count_short": 0.0, "count_over": -9.0} | logs


def test_a_film_for_it_strengthens_and_says_so():
    after = with_film(DIAGNOSIS, weights(count_short=math.log(30)))
    # Bayes by hand: 0.6·30 : 0.3 : 0.1 = 18 : 0.3 : 0.1.
    assert after.explanations[0].probability == pytest.approx(18 / 18.4)
    assert after.flagged
    assert "video speak for it" in after.explanations[0].sentence


def test_a_film_against_it_takes_the_question_back():
    after = with_film(DIAGNOSIS, weights(count_short=-6.0))
    assert after.explanations[0].slip == "honest"
    assert not after.flagged


def test_it_never_raises_a_question_by_itself():
    calm = Diagnosis((explanation("honest", 0.9), explanation("count_over", 0.1)), None)
    assert not with_film(calm, weights(count_over=8.0)).flagged


def test_of_two_slips_at_once_the_way_of_counting_is_weighed():
    two = Diagnosis(
        (explanation("half_swings+length_to_top", 0.5), explanation("honest", 0.5)), None, True
    )
    after = with_film(two, weights(half_swings=math.log(9)))
    assert after.explanations[0].probability == pytest.approx(0.9)


def test_nothing_measured_changes_nothing():
    assert with_film(DIAGNOSIS, {}) is DIAGNOSIS
