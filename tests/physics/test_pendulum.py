"""The pendulum's period against handbook tables, another library and exact relations."""

import math

import mpmath
import numpy as np
import pytest

from markbench.physics.pendulum import amplitude_factor, gravity_from, period_s

STANDARD_GRAVITY = 9.80665  # exact, 3rd CGPM (1901)


def test_seconds_pendulum():
    # Length of the seconds pendulum (T = 2 s) at standard gravity, "about 0.994 m".
    length_m = 0.9936213856
    assert float(period_s(length_m, STANDARD_GRAVITY)) == pytest.approx(2.0, abs=1e-9)
    assert float(gravity_from(length_m, 2.0)) == pytest.approx(STANDARD_GRAVITY, abs=1e-8)


@pytest.mark.parametrize(
    ("amplitude_deg", "period"),
    [
        # A university computing-physics exercise's table, L = 1 m, g = 9.81 m/s².
        (10, 2.00989262729860052),
        (20, 2.02145125782457619),
        (30, 2.04098988951913023),
        (40, 2.06893785189358914),
        (60, 2.15287466688051548),
        (80, 2.28188592401963935),
    ],
)
def test_period_at_finite_amplitude(amplitude_deg, period):
    assert float(period_s(1.0, 9.81, amplitude_deg)) == pytest.approx(period, rel=1e-14)


def test_right_angle_guards_parameter_against_modulus():
    # K(m = 0.5) = 1.8540746773013719 (Abramowitz & Stegun, Table 17.1): ratio 1.18034.
    assert float(amplitude_factor(90.0)) == pytest.approx(1.8540746773013719 * 2 / math.pi)


def test_against_mpmath():
    for amplitude_deg in np.linspace(0.5, 175, 40):
        m = mpmath.sin(mpmath.radians(amplitude_deg) / 2) ** 2
        expected = 2 / mpmath.pi * mpmath.ellipk(m)
        assert float(amplitude_factor(amplitude_deg)) == pytest.approx(float(expected), rel=1e-13)


def test_broadcasts_over_a_class():
    lengths = np.array([[0.2, 0.4], [0.6, 0.8]])
    assert period_s(lengths, 9.8).shape == (2, 2)
    assert np.allclose(gravity_from(lengths, period_s(lengths, 9.8)), 9.8)
