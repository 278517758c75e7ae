"""Whole classes: who copied from whom, and how many slipped."""

from __future__ import annotations

import numpy as np
import pytest

from simulation.classes import classes
from simulation.copied import COPIES


@pytest.mark.parametrize("how", COPIES)
def test_pairs_are_where_they_are_said_to_be(how):
    made = classes(20, seed=1, copied=2, how=how, decimals=2)
    assert len(made.learners) == 600
    assert made.pairs.shape == (40, 2)
    copy, original = made.pairs.T
    assert (copy // 30 == original // 30).all(), "a copy comes from the same class"
    assert set(np.flatnonzero(made.learners.slip == "copied")) == set(copy)
    if how == "identical":
        np.testing.assert_array_equal(made.learners.times_s[copy], made.learners.times_s[original])


def test_share_of_slips():
    made = classes(200, seed=2, slipped=0.25)
    # Binomial: 6000 learners at 25 % have a standard deviation of 0.56 %.
    assert np.mean(made.learners.slip != "") == pytest.approx(0.25, abs=0.02)
    assert len(set(made.learners.slip)) == 16
    assert np.ptp(made.learners.g) == 0, "one place for all"


def test_one_class_is_a_part():
    made = classes(3, 10, seed=3, design="mixed")
    np.testing.assert_array_equal(made.one(1).times_s, made.learners.times_s[10:20])
