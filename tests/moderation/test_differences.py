"""Differences between markers against the published peak-flow example."""

import numpy as np
import pytest
from scipy import stats

from markbench.moderation.differences import concordance, limits_of_agreement

# Bland & Altman (1986), Lancet i, 307: first readings of two meters on 17 subjects, l/min.
WRIGHT = [494, 395, 516, 434, 476, 557, 413, 442, 650, 433, 417, 656, 267, 478, 178, 423, 427]
MINI = [512, 430, 520, 428, 500, 600, 364, 380, 658, 445, 432, 626, 260, 477, 259, 350, 451]


def test_peak_flow_as_printed_with_two_standard_deviations():
    found = limits_of_agreement(MINI, WRIGHT, multiplier=2, exact=False)
    assert found.mean == pytest.approx(-2.1, abs=0.05)
    assert found.sd == pytest.approx(38.8, abs=0.05)
    # The paper works with the rounded -2.1 and 38.8, hence 0.15 and, for the intervals, 0.3.
    assert (found.lower, found.upper) == pytest.approx((-79.7, 75.5), abs=0.15)
    assert found.mean95 == pytest.approx((-22.0, 17.8), abs=0.1)
    assert found.lower95 == pytest.approx((-114.3, -45.1), abs=0.3)
    assert found.upper95 == pytest.approx((40.9, 110.1), abs=0.3)


def test_the_usual_multiplier_is_said():
    found = limits_of_agreement(MINI, WRIGHT)
    # Recomputed with mean ± 1.96 sd from the same data.
    assert (found.lower, found.upper) == pytest.approx((-78.10, 73.86), abs=0.01)
    assert "± 1.96 sd" in str(found)
    assert "n = 17" in str(found)


def test_exact_intervals_hold_the_true_limit_as_often_as_they_say():
    """Simulated normal differences; n = 10 learners, 4000 classes: ±0.7 points at 95 %."""
    rng = np.random.default_rng(5)
    exact = approximate = 0
    for _ in range(800):
        marks = rng.normal(0, 1, 10)
        for is_exact in (True, False):
            found = limits_of_agreement(np.zeros(10), marks, exact=is_exact)
            hit = found.upper95[0] <= 1.96 <= found.upper95[1]
            if is_exact:
                exact += hit
            else:
                approximate += hit
    # Binomial 800 × 0.95: standard deviation 6; four of them either way.
    assert exact == pytest.approx(760, abs=25)
    assert approximate != exact


def test_too_few_pairs():
    assert limits_of_agreement([], []).mean is None
    one = limits_of_agreement([5], [7])
    assert one.mean == 2
    assert one.lower is None
    assert "undefined" in str(one)
    same = limits_of_agreement([5, 6, 7], [5, 6, 7])
    assert (same.lower, same.upper) == (0, 0)


def test_points_of_the_plot():
    assert limits_of_agreement([4, 10], [6, 9]).points == ((5, 2), (9.5, -1))


def test_mean_interval_is_students():
    found = limits_of_agreement([4, 10, 7, 8], [6, 9, 9, 8])
    theirs = stats.ttest_rel([6, 9, 9, 8], [4, 10, 7, 8]).confidence_interval(0.95)
    assert found.mean95 == pytest.approx(tuple(theirs))


def test_concordance_of_the_same_data():
    # Recomputed from Lin's definition with the moments of the published data.
    found = concordance(WRIGHT, MINI)
    assert found.value == pytest.approx(0.942742, abs=1e-5)
    assert found.low95 < found.value < found.high95


@pytest.mark.parametrize(("first", "second"), [([], []), ([3], [3]), ([3, 3, 3], [3, 3, 3])])
def test_concordance_undefined(first, second):
    found = concordance(first, second)
    assert found.value is None
    assert found.undefined


def test_unequal_lists_are_refused():
    with pytest.raises(ValueError, match="same learners"):
        limits_of_agreement([1, 2], [1])
