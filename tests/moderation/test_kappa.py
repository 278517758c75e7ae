"""Kappa against printed tables and a reference library."""

import warnings

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from statsmodels.stats.inter_rater import cohens_kappa

from markbench.moderation.kappa import kappa_of, kappa_of_table

# Cohen (1968), Psychological Bulletin 70, 213: shares, disagreement weights, N = 200.
COHEN = np.array([[0.44, 0.07, 0.09], [0.05, 0.20, 0.05], [0.01, 0.03, 0.06]]) * 200
COHEN_WEIGHTS = [[0, 1, 3], [1, 0, 6], [3, 6, 0]]
# Artstein & Poesio (2008), Computational Linguistics 34, 555, tables 1 and 4.
YES_NO = [[20, 20], [10, 50]]
# Twenty subjects rated 1 to 6 by three raters: the `anxiety` data of the R package irr,
# values as printed in statsmodels' tests.
R1 = [3, 3, 3, 4, 5, 5, 2, 3, 5, 2, 2, 6, 1, 5, 2, 2, 1, 2, 4, 3]
R2 = [3, 6, 4, 6, 2, 4, 2, 4, 3, 3, 2, 3, 3, 3, 2, 2, 1, 3, 3, 4]
R3 = [2, 1, 4, 4, 3, 2, 1, 6, 1, 1, 1, 2, 3, 3, 1, 1, 3, 3, 2, 2]


def test_cohens_own_example():
    # Printed: .492 and .348.
    assert kappa_of_table(COHEN, "none").value == pytest.approx(0.492, abs=5e-4)
    assert kappa_of_table(COHEN, COHEN_WEIGHTS).value == pytest.approx(0.348, abs=5e-4)


def test_asymmetric_weights_of_cohens_example():
    # Cohen (1968), printed .353.
    weights = [[0, 1, 4], [1, 0, 6], [2, 2, 0]]
    assert kappa_of_table(COHEN, weights).value == pytest.approx(0.353, abs=5e-4)


def test_artstein_and_poesio():
    assert kappa_of_table(YES_NO, "none").value == pytest.approx(0.348, abs=5e-4)
    first = [0] * 46 + [1] * 44 + [2] * 10
    second = [0] * 50 + [1] * 40 + [2] * 10
    # Values of scikit-learn's own tests for the coders of table 4.
    for weights, value in (("none", 0.9315), ("linear", 0.9412), ("quadratic", 0.9541)):
        assert kappa_of(first, second, [0, 1, 2], weights).value == pytest.approx(value, abs=5e-5)


@pytest.mark.parametrize(
    ("one", "two", "weights", "value"),
    [
        (R1, R2, "none", 0.119497), (R1, R2, "linear", 0.189189), (R1, R2, "quadratic", 0.296765),
        (R2, R3, "none", -0.006289), (R2, R3, "linear", 0.145907), (R2, R3, "quadratic", 0.252033),
        (list(range(1, 10)), [1, 3, 1, 6, 1, 5, 5, 6, 7], "none", 0.0),
    ],
)  # fmt: skip
def test_ordinal_ratings(one, two, weights, value):
    # irr numbers the levels that occur: raters 2 and 3 never give a 5.
    levels = sorted(set(one) | set(two))
    assert kappa_of(one, two, levels, weights).value == pytest.approx(value, abs=1e-6)


def test_a_level_nobody_gave_still_lies_between_its_neighbours():
    every_level = kappa_of(R2, R3, [1, 2, 3, 4, 5, 6], "linear").value
    assert every_level < kappa_of(R2, R3, [1, 2, 3, 4, 6], "linear").value


def test_standard_errors_and_intervals_as_printed_by_a_statistics_package():
    # The 3 × 3 table and its printout in statsmodels' tests.
    table = [[0, 4, 1], [0, 8, 0], [0, 1, 5]]
    plain = kappa_of_table(table, "none")
    assert (plain.value, plain.se) == pytest.approx((0.4842, 0.1380), abs=5e-5)
    assert plain.asymptotic95 == pytest.approx((0.2137, 0.7547), abs=1e-4)
    linear = kappa_of_table(table, "linear")
    assert (linear.value, linear.se) == pytest.approx((0.4701, 0.1457), abs=5e-5)


@settings(max_examples=40, deadline=None, derandomize=True)
@given(
    st.lists(st.integers(0, 9), min_size=16, max_size=16),
    st.sampled_from(["none", "linear", "quadratic"]),
)
def test_any_table_against_statsmodels(cells, weights):
    table = np.array(cells).reshape(4, 4) + np.diag([1, 0, 0, 1])
    names = {"none": None, "linear": "linear", "quadratic": "quadratic"}
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")
        theirs = cohens_kappa(table, wt=names[weights], return_results=True)
    ours = kappa_of_table(table, weights)
    assert ours.value == pytest.approx(theirs.kappa, abs=1e-9)
    assert ours.se == pytest.approx(theirs.std_kappa, abs=1e-7)


def test_perfect_agreement_of_ten_is_not_certainty():
    ten = kappa_of([0, 1] * 5, [0, 1] * 5, [0, 1, 2, 3])
    assert ten.value == 1
    assert ten.se == 0  # what makes the asymptotic interval useless here
    assert ten.low95 < 0.9
    hundred = kappa_of([0, 1] * 50, [0, 1] * 50, [0, 1, 2, 3])
    assert ten.low95 < hundred.low95 < 1


@pytest.mark.parametrize(
    ("first", "second"), [([], []), ([1, 1, 1], [1, 1, 1])], ids=["nobody", "one level only"]
)
def test_undefined_says_why(first, second):
    found = kappa_of(first, second, [0, 1, 2])
    assert found.value is None
    assert found.low95 is None
    assert found.undefined
    assert "undefined" in str(found)


def test_one_marker_who_uses_one_level_shows_no_agreement_beyond_chance():
    found = kappa_of([1, 1, 1, 1], [0, 1, 1, 2], [0, 1, 2])
    assert found.value == pytest.approx(0)


def test_what_cannot_be_is_refused():
    with pytest.raises(ValueError, match="same learners"):
        kappa_of([1], [1, 0], [0, 1])
    with pytest.raises(ValueError, match="no level"):
        kappa_of([7], [1], [0, 1])
    with pytest.raises(ValueError, match="weights"):
        kappa_of_table([[1, 0], [0, 1]], "cubic")


def test_result_carries_its_inputs_and_reads_as_a_sentence():
    found = kappa_of_table(YES_NO, "linear")
    assert found.table == ((20, 20), (10, 50))
    assert str(found).startswith("kappa (linear weights) 0.35 (95 % interval ")
    assert found.count == 100
