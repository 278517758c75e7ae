"""A second bob beside the first: seen where it swings by itself, not where it is a shadow."""

from dataclasses import replace

import drawn_films
import numpy as np
import pytest
from drawn_films import RATE, Bob, put, swinging, wall

from markbench.evidence.video import judge
from markbench.evidence.video.judge import measure_film
from markbench.evidence.video.rims import pool_of, round_things, roundness
from markbench.evidence.video.second import others, out_of_step

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


def test_a_bob_that_somebody_hides_half_of_the_time_is_refused():
    """Before a jacket of its own shade it is gone; beside it, and before the wall, it is seen."""
    other = Bob(x=118, period_s=0.75, lag=1.0)
    rng = np.random.default_rng(8)
    times = np.arange(300) / RATE
    sway = np.convolve(rng.normal(0, 1, 400), np.hanning(40), "same")[: times.size]
    ways = [(bob, *bob.centre(times)) for bob in (other, FIRST)]
    yy, xx = np.mgrid[: drawn_films.HEIGHT, : drawn_films.WIDTH].astype(float)
    pictures = []
    for n in range(times.size):
        picture = wall()
        picture[(np.abs(xx - 128 - 2 * sway[n]) < 12) & (yy > 20)] = other.level
        for bob, x, y in ways:
            put(picture, x[n], y[n], bob.radius, bob.level)
        pictures.append(picture)
    assert measure_film(drawn_films.film_of(pictures)).reason == "two_bobs"


def test_the_second_bobs_own_swing_is_found(monkeypatch):
    second = SECONDS["another length"]
    seen = []
    monkeypatch.setattr(
        judge, "second_bob", lambda frames, _, *rest: seen.extend(others(frames, *rest))
    )
    measure_film(swinging(second, FIRST))
    best = max(seen, key=lambda other: other.weight)
    assert best.period_s == pytest.approx(second.period_s, rel=0.005)
    assert best.x == pytest.approx(second.x, abs=1)
    assert best.reach == pytest.approx(second.reach, abs=1)
    # 7 s of quarter swings of 0.1875 s.
    assert best.quarters == pytest.approx(37, abs=1)
    assert best.share > 0.95


def test_only_a_ball_has_a_rim_all_round():
    """A ball half before 150 and half before 90 grey levels shows the smaller step, 40, all
    round its rim; the straight border between the two shades shows none."""
    yy, xx = np.mgrid[:96, :160].astype(float)
    picture = np.where(xx < 80, 150.0, 90.0)
    picture[np.hypot(xx - 80, yy - 48) < 8] = 50
    levels = roundness(np.round(picture)[None].astype(np.uint8), 8.0)[0]
    row, column = 48 // pool_of(8.0), 80 // pool_of(8.0)
    assert levels[row - 1 : row + 2, column - 1 : column + 2].max() == pytest.approx(40, abs=6)
    assert levels[:12].max() < 1


def test_a_skirting_board_is_no_ball_however_small():
    """A line as thick as the ball's radius differs across the rim at some points only."""
    picture = np.full((96, 160), 150.0)
    picture[46:49] = 40
    levels = roundness(picture[None].astype(np.uint8), 3.5)[0]
    assert levels.max() < 25


def test_what_is_round_and_stands_still_is_left_out():
    pictures = np.full((30, 96, 160), 150, np.uint8)
    yy, xx = np.mgrid[:96, :160]
    pictures[:, np.hypot(xx - 40, yy - 50) < 8] = 60
    for n in range(30):
        pictures[n, np.hypot(xx - 80 - 2 * n, yy - 50) < 8] = 60
    things = round_things(pictures, 8.0, 20.0)
    assert np.abs(things.x - 80 - 2 * things.frame).max() <= 2
    assert np.abs(things.y - 50).max() <= 2
    assert things.frame.size >= 30
