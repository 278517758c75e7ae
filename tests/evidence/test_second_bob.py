"""A second bob beside the first: seen where it swings by itself, not where it is a shadow."""

from dataclasses import replace

import drawn_films
import numpy as np
import pytest
from drawn_films import RATE, Bob, put, swinging, wall

from markbench.evidence.video import judge
from markbench.evidence.video.follow import Arc
from markbench.evidence.video.judge import measure_film
from markbench.evidence.video.second import out_of_step, passages

FIRST = Bob(x=60)


def test_one_bob_is_measured():
    found = measure_film(swinging(FIRST))
    assert found.accepted, found.message
    assert found.period_s == pytest.approx(FIRST.period_s, rel=0.001)
    # 7 s less the last interval, at 0.9 s a swing.
    assert found.complete_swings == 7


SECONDS = {
    "another length": Bob(x=112, period_s=0.75, lag=1.0),
    "the same length, let go later": Bob(x=112, lag=1.2),
    "the same length, against it": Bob(x=112, lag=np.pi),
    "half before the first": Bob(x=82, lag=1.2),
    "half before the first, a little shorter": Bob(x=82, period_s=0.89, lag=1.5),
    "paler": Bob(x=112, period_s=0.75, level=110.0),
}


@pytest.mark.parametrize("name", SECONDS)
def test_two_bobs_are_refused(name):
    assert measure_film(swinging(SECONDS[name], FIRST)).reason == "two_bobs"


@pytest.mark.parametrize("name", ["half before the first", "another length"])
def test_what_the_displacement_does_not_account_for(name, monkeypatch):
    """Two that cross leave as much again on the way; one alone, or far apart, hardly any."""
    seen = []
    monkeypatch.setattr(judge, "second_bob", lambda _, *rest: seen.append(out_of_step(*rest)))
    measure_film(swinging(SECONDS[name], FIRST))
    assert seen[0] > 0.8 if name.startswith("half") else seen[0] < 0.01


def test_a_shadow_in_step_is_no_second_bob():
    shadow = replace(FIRST, x=112, level=125.0)
    found = measure_film(swinging(shadow, FIRST))
    assert found.accepted, found.message


def test_somebody_who_sways_is_no_second_bob():
    rng = np.random.default_rng(5)
    times = np.arange(210) / RATE
    sway = np.convolve(rng.normal(0, 1, 400), np.hanning(40), "same")[: times.size]
    x, y = FIRST.centre(times)
    pictures = []
    for n in range(times.size):
        picture = wall()
        put(picture, 125 + 2.5 * sway[n], 55, 13, 60)
        put(picture, x[n], y[n], FIRST.radius, FIRST.level)
        pictures.append(picture)
    found = measure_film(drawn_films.film_of(pictures))
    assert found.accepted, found.message


def test_contrast_of_each_passage():
    """A bob of −110 grey levels against the wall shows it each time; a wall shows none."""
    film = swinging(FIRST)
    arc = Arc(FIRST.x, FIRST.y, FIRST.reach, 0.0, FIRST.radius, 0.1 * FIRST.reach, 0.0, 0.0)
    shown = passages(film.frames, film.times_s, arc, FIRST.period_s, 0.0)
    assert len(shown) == 15
    assert shown.mean() == pytest.approx(-110, rel=0.15)
    assert shown.std() < 8
    beside = replace(arc, x=125.0)
    assert np.abs(passages(film.frames, film.times_s, beside, FIRST.period_s, 0.0)).max() < 2
