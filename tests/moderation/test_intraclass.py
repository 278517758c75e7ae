"""Intraclass correlations against the six targets by four judges of the literature."""

import pytest

from markbench.moderation.intraclass import intraclass

# Shrout & Fleiss (1979), Psychological Bulletin 86, 420, table 2.
SIX_BY_FOUR = [[9, 2, 5, 8], [6, 1, 3, 2], [8, 4, 6, 8], [7, 1, 2, 6], [10, 5, 6, 9], [6, 2, 4, 7]]


def test_mean_squares_as_printed():
    found = intraclass(SIX_BY_FOUR)
    printed = (11.24, 6.26, 32.49, 1.02)
    ours = (
        found.between_learners, found.within_learners, found.between_markers, found.residual
    )  # fmt: skip
    assert ours == pytest.approx(printed, abs=5e-3)


@pytest.mark.parametrize(
    ("form", "value", "low", "high"),
    [
        # Values printed in table 4 of the paper; intervals as given by the R package psych
        # and the Python package pingouin for the same data.
        ("(1,1)", 0.17, -0.13, 0.72), ("(2,1)", 0.29, 0.02, 0.76), ("(3,1)", 0.71, 0.34, 0.95),
        ("(1,k)", 0.44, None, None), ("(2,k)", 0.62, 0.07, 0.93), ("(3,k)", 0.91, 0.68, 0.99),
    ],
)  # fmt: skip
def test_the_six_forms(form, value, low, high):
    found = intraclass(SIX_BY_FOUR)[form]
    assert found.value == pytest.approx(value, abs=5e-3)
    if low is not None:
        assert (found.low95, found.high95) == pytest.approx((low, high), abs=5.1e-3)


def test_more_decimals_of_the_same_example():
    found = intraclass(SIX_BY_FOUR)
    # R package psych, ICC(sf).
    values = [one.value for one in found.forms]
    assert values == pytest.approx(
        [0.165742, 0.289764, 0.714841, 0.442797, 0.620051, 0.909316], abs=1e-6
    )


def test_a_marker_always_two_marks_lower_keeps_ranks_and_loses_level():
    marks = [[5, 3], [8, 6], [12, 10], [15, 13], [9, 7]]
    found = intraclass(marks)
    assert found["(3,1)"].value == pytest.approx(1)
    assert found["(2,1)"].value < 0.95
    assert found["(2,1)"].low95 < found["(2,1)"].value < found["(2,1)"].high95


@pytest.mark.parametrize(
    "marks", [[], [[3, 4]], [[3], [4]], [[5, 5], [5, 5], [5, 5]], [[4, 6], [6, 4]]]
)
def test_undefined_says_why_and_never_fails(marks):
    found = intraclass(marks)
    assert len(found.forms) == 6
    assert all(one.value is None and one.undefined for one in found.forms)
    assert "undefined" in str(found["(2,1)"])


def test_equal_marks_of_different_learners_agree_perfectly():
    found = intraclass([[3, 3], [7, 7], [9, 9]])
    assert all(one.value == pytest.approx(1) for one in found.forms)
