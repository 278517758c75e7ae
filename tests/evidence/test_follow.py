"""The bob found and followed where it is pale, or where it swings wide."""

from dataclasses import replace

import numpy as np
import pytest
from drawn_films import RATE, Bob, film_of, put, swinging, wall
from scipy import special

from markbench.evidence.video.judge import measure_film

BOB = Bob(x=80)


@pytest.mark.parametrize("difference", [-14.0, 14.0])
def test_a_pale_bob(difference):
    """Fourteen of 255 grey levels from a wall whose own texture is eight either way."""
    found = measure_film(swinging(replace(BOB, level=150 + difference, radius=6.0)))
    assert found.accepted, found.message
    assert found.period_s == pytest.approx(BOB.period_s, rel=0.002)


def test_a_small_swing_is_followed_to_a_fraction_of_a_pixel():
    found = measure_film(swinging(replace(BOB, reach=3.0)))
    assert found.accepted, found.message
    assert found.amplitude_px == pytest.approx(3.0, rel=0.2)
    assert found.period_s == pytest.approx(BOB.period_s, rel=0.002)


def test_a_wide_swing():
    """At 50 degrees T/T0 = 2K(sin 25°)/π (Abramowitz & Stegun 17.3); x = L sin θ."""
    amplitude, length_px = np.radians(50), 60.0
    times = np.arange(240) / RATE
    modulus = np.sin(amplitude / 2)
    quarter = special.ellipk(modulus**2)
    small_period = 0.9
    rate = 2 * np.pi / small_period
    # sin(θ/2) = k·cd(ω₀t, k), the pendulum let go at rest.
    _, cosine, delta, _ = special.ellipj(rate * times, modulus**2)
    angle = 2 * np.arcsin(modulus * cosine / delta)
    pictures = []
    for theta in angle:
        picture = wall()
        put(picture, 80 + length_px * np.sin(theta), 20 + length_px * np.cos(theta), 5, 40)
        pictures.append(picture)
    found = measure_film(film_of(pictures))
    assert found.accepted, found.message
    assert found.period_s == pytest.approx(small_period * 2 * quarter / np.pi, rel=0.003)
