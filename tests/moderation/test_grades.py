"""Grades, moving a boundary, and what lateness costs."""

import datetime as dt

import pytest

from markbench.model import Late
from markbench.moderation.grades import effect_of_moving, grade_of, late_deduction, move

BOUNDARIES = (("A", 16.0), ("B", 13.0), ("C", 10.0))
LAST = dt.date(2026, 3, 16)


@pytest.mark.parametrize(
    ("total", "grade"),
    [(20, "A"), (16, "A"), (15.9, "B"), (10, "C"), (9.9, ""), (0, ""), (None, "")],
)
def test_grade_of(total, grade):
    assert grade_of(total, BOUNDARIES) == grade
    assert grade_of(total, BOUNDARIES[::-1]) == grade
    assert grade_of(total, ()) == ""


def test_a_sum_of_tenths_reaches_its_boundary():
    total = 0.1 + 0.2  # 0.30000000000000004
    assert grade_of(1 - 0.9, (("pass", 0.1),)) == "pass"
    assert grade_of(total, (("pass", 0.3),)) == "pass"


def test_effect_of_moving_a_boundary():
    totals = {"01": 16, "02": 15, "03": 13, "04": 3}
    effect = effect_of_moving(BOUNDARIES, totals, move(BOUNDARIES, "A", 15))
    assert effect.counts == (("A", 2), ("B", 1), ("C", 0), ("", 1))
    assert [(c.learner, c.before, c.after) for c in effect.changes] == [("02", "B", "A")]
    assert effect_of_moving(BOUNDARIES, totals).changes == ()


def test_a_boundary_does_not_pass_its_neighbour():
    with pytest.raises(ValueError, match="neighbour"):
        move(BOUNDARIES, "B", 16)
    with pytest.raises(ValueError, match="no grade"):
        move(BOUNDARIES, "Z", 16)


@pytest.mark.parametrize(
    ("rule", "day", "off"),
    [
        (Late(), 20, None),
        (Late(2.0), 16, None),
        (Late(2.0), 17, 2),
        (Late(2.0), 20, 8),
        (Late(2.0, 3), 20, 6),
    ],
)
def test_late_rules(rule, day, off):
    found = late_deduction(rule, LAST, dt.datetime(2026, 3, day, 8, 30))
    assert (found.marks_off if found else None) == off
    if found:
        assert (found.days, found.last_day) == (day - LAST.day, LAST)
        assert (found.counted < found.days) == (rule.most_days is not None)


def test_lateness_needs_both_dates():
    assert late_deduction(Late(2.0), None, dt.datetime(2026, 3, 20)) is None
    assert late_deduction(Late(2.0), LAST, None) is None
