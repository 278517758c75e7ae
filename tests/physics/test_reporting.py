"""Rounding a value to its uncertainty, by the Particle Data Group's published rule."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from markbench.physics.reporting import round_pair, with_uncertainty


@pytest.mark.parametrize(
    ("value", "u", "text"),
    [
        # Review of Particle Physics, "Rounding": the two printed examples.
        (0.827, 0.119, "0.83 ± 0.12"),
        (0.827, 0.367, "0.8 ± 0.4"),
        # Edges of the rule (355–949 one figure, 950–999 rounds up): a library author's cases.
        (1.827, 0.967, "1.8 ± 1.0"),
        (0.0119, 0.122, "0.01 ± 0.12"),
        (0.0119, 0.827, "0.0 ± 0.8"),
        # JCGM 100:2008, 7.2.2.
        (100.02147, 0.00035, "100.02147 ± 0.00035"),
        # GUM H.3: u = 0.35 mg keeps two figures; 0.355 keeps one.
        (9.8012, 0.0354, "9.801 ± 0.035"),
        (9.8012, 0.0355, "9.80 ± 0.04"),
    ],
)
def test_published_examples(value, u, text):
    assert with_uncertainty(value, u) == text


def test_unit_and_unknown():
    assert with_uncertainty(9.8, 0.14, "m/s²") == "9.80 ± 0.14 m/s²"
    assert with_uncertainty(float("nan"), 0.1, "s") == "not known"
    assert with_uncertainty(9.81234, float("nan"), "m/s²") == "9.812 m/s²"


@given(
    st.floats(-1e6, 1e6),
    st.floats(1e-6, 1e5),
)
def test_rounding_never_moves_the_value_by_more_than_half_the_last_figure(value, u):
    rounded, u_rounded, decimals = round_pair(value, u)
    half = 0.5 * 10.0**-decimals
    assert abs(rounded - value) <= half * (1 + 1e-6)
    assert abs(u_rounded - u) <= half * (1 + 1e-6)
    # One or two figures, as JCGM 100:2008, 7.2.6 asks.
    assert len(f"{u_rounded * 10.0**decimals:.0f}") <= 2


@pytest.mark.parametrize(
    ("value", "u", "written"),
    [
        (-0.31, 0.09, "−0.31 ± 0.09"),  # the sign of print, U+2212
        (-0.001, 0.09, "0.00 ± 0.09"),  # no nought below nought
        (-0.31, float("nan"), "−0.31"),
        (0.31, 0.09, "0.31 ± 0.09"),
    ],
)
def test_negative_values_carry_a_true_minus(value, u, written):
    assert with_uncertainty(value, u) == written
