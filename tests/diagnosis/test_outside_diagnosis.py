"""The slips' signatures and priors against the literature and exact consequences of the law."""

import numpy as np
import pytest
from scipy.integrate import quad

from markbench.checks.diagnosis import priors, weigh
from markbench.checks.diagnosis.cells import meant_values
from markbench.model import LocalGravity
from markbench.physics.best import estimate_gravity
from markbench.physics.honest import (
    AMPLITUDE_FACTOR,
    SCATTER_CENTRE_S,
    SCATTER_GRID_S,
    SCATTER_LOG_PRIOR,
    scatter_log_prior,
)
from markbench.physics.stack import Stack

HERE = LocalGravity(9.81, 0.0005, "test")
LENGTH_M = np.array([0.2, 0.3, 0.4, 0.5, 0.6])
# T/T₀ = 1 + θ²/16 + 11θ⁴/3072 + 173θ⁶/737280 + …: Nelson & Olsson, Am. J. Phys. 54 (1986)
# 112, first terms; the exact values are those of the complete elliptic integral,
# Abramowitz & Stegun (1964), Table 17.1.
TABLE = {30: 1.017408798, 40: 1.031340519, 45: 1.039973343, 60: 1.073182007, 75: 1.118959039}


def table(length_m, times_s, swings=10.0, step_s=0.01):
    times = np.asarray(times_s, float)
    return Stack(
        np.asarray(length_m, float)[None],
        np.full((1, len(length_m)), swings),
        np.stack([times - 0.05, times + 0.05], axis=-1)[None],
        np.array([step_s]),
        np.array([0.001]),
    )


def honest_times(length_m, swings=10.0):
    return swings * 2 * np.pi * np.sqrt(np.asarray(length_m) / HERE.g) * AMPLITUDE_FACTOR


def g_of(stack):
    return float(estimate_gravity(stack)[0][0])


@pytest.mark.parametrize(
    ("really", "swings", "ratio"),
    # Exact consequences of g ∝ (N/t)²: ×4, ×(N/(N−1))², ×(N/(N+1))².
    [(5, 10, 4.0), (9, 10, 1.234568), (19, 20, 1.108033), (11, 10, 0.826446), (21, 20, 0.907029)],
)
def test_count_slips_change_g_by_the_known_factor(really, swings, ratio):
    slipped = table(LENGTH_M, honest_times(LENGTH_M, really), swings)
    assert g_of(slipped) / 9.81 == pytest.approx(ratio, rel=2e-3)


@pytest.mark.parametrize(
    ("slip", "length_m", "times_s", "swings"),
    [
        ("half_swings", LENGTH_M, honest_times(LENGTH_M, 5), 10),
        ("count_short", LENGTH_M, honest_times(LENGTH_M, 9), 10),
        ("count_short", LENGTH_M, honest_times(LENGTH_M, 19), 20),
        ("count_over", LENGTH_M, honest_times(LENGTH_M, 21), 20),
        # 1.25 cm and 2 cm to the top and bottom of a bob: g from each length × (L ∓ r)/L.
        ("length_to_top", LENGTH_M - 0.02, honest_times(LENGTH_M), 10),
        ("length_to_bottom", LENGTH_M + 0.02, honest_times(LENGTH_M), 10),
        ("length_unit", LENGTH_M / 100, honest_times(LENGTH_M), 10),
        ("length_unit", LENGTH_M * 10, honest_times(LENGTH_M), 10),
        ("length_unit", LENGTH_M / 2.54, honest_times(LENGTH_M), 10),
        ("rows_swapped", LENGTH_M[[0, 3, 2, 1, 4]], honest_times(LENGTH_M), 10),
    ],
)
def test_signatures_without_scatter_are_named(slip, length_m, times_s, swings):
    (d,) = weigh(table(length_m, times_s, swings), HERE)
    assert d.flagged
    assert d.explanations[0].slip == slip
    assert d.explanations[0].g_if_mended == pytest.approx(9.81, rel=0.02)


@pytest.mark.parametrize("degrees", [40, 45, 60])
def test_the_amplitude_of_a_wide_swing_is_found(degrees):
    times = honest_times(LENGTH_M) / AMPLITUDE_FACTOR * TABLE[degrees]
    (d,) = weigh(table(LENGTH_M, times), HERE)
    first = d.explanations[0]
    assert first.slip == "wide_swing"
    assert first.parameters["amplitude_deg"].value == pytest.approx(degrees, abs=3)


def test_the_factors_of_wide_swings_are_those_of_the_literature():
    for degrees, factor in TABLE.items():
        near = np.interp(degrees, priors.WIDE_DEG, priors.WIDE_FACTOR)
        if priors.WIDE_DEG[0] <= degrees <= priors.WIDE_DEG[-1]:
            # Between cells 5° apart the chord lies above the curve by up to 5e-4.
            assert near == pytest.approx(factor, abs=6e-4)


def test_the_honest_amplitude_is_the_mean_of_three_to_fifteen_degrees():
    """⟨1 + θ²/16 + 11θ⁴/3072⟩ over 3°–15°, the series of Nelson & Olsson (1986)."""
    low, high = np.radians([3, 15])
    mean, _ = quad(lambda a: 1 + a**2 / 16 + 11 * a**4 / 3072, low, high)
    assert pytest.approx(mean / (high - low), abs=2e-4) == AMPLITUDE_FACTOR


def test_the_prior_of_the_scatter_is_that_of_published_hand_timing():
    """Faux & Godolphin, Am. J. Phys. 87 (2019) 110: 0.07 s an event, 0.10 s an interval."""
    assert pytest.approx(np.sqrt(2) * 0.07, abs=0.002) == SCATTER_CENTRE_S
    mean = (np.exp(SCATTER_LOG_PRIOR) * SCATTER_GRID_S).sum()
    assert mean == pytest.approx(0.10, abs=0.02)
    assert np.exp(scatter_log_prior(SCATTER_GRID_S)).sum() == pytest.approx(1.0)


def test_what_a_typed_number_may_have_been():
    meant = meant_values(np.array([12.34, 40.0]), np.array([0.01, 1.0]))
    np.testing.assert_allclose(meant[0], [12.43, 13.24, 21.34, 1.234, 123.4])
    # 40: the digits give 04 = 4; there is no third digit to change over.
    np.testing.assert_allclose(meant[1], [4, np.nan, np.nan, 4, 400])
    # 10.91 typed as 01.91 is kept as 1.91: the nought changed over does not show.
    (meant,) = meant_values(np.array([1.91]), np.array([0.01]))
    np.testing.assert_allclose(meant, [1.19, 9.11, 10.91, 0.191, 19.1])


def test_the_clocks_of_the_wall():
    """63.4 s is 1:03.4: typed 103.4 or 1.034; 14.23 s is 0:14:23, taken for 863 s."""
    length = np.array([0.6, 0.8, 1.0, 1.2, 1.4])
    times = honest_times(length, 40)
    assert (times > 60).all()
    minutes = np.floor(times / 60)
    for typed in (100 * minutes + times % 60, minutes + (times % 60) / 100):
        together = table(length, typed, 40)
        np.copyto(together.times_s, typed[None, :, None])
        (d,) = weigh(together, HERE)
        assert d.explanations[0].slip == "clock_misread"
    times = honest_times(LENGTH_M)
    shown = np.floor(times) * 60 + np.round((times % 1) * 100)
    stack = table(LENGTH_M, shown, step_s=1.0)
    np.copyto(stack.times_s, shown[None, :, None])
    (d,) = weigh(stack, HERE)
    assert d.explanations[0].slip == "clock_misread"
