"""The thread seen above the bob: its length and the angle, from how the picture was drawn."""

from dataclasses import replace

import numpy as np
import pytest
from drawn_films import Hung, film_of, hanging

from markbench.evidence.video import judge
from markbench.evidence.video.judge import measure_film
from markbench.evidence.video.support import U_ANGLE, string_length_px

PLAIN = Hung()
SEEN = {
    "plain": PLAIN,
    "a longer thread, a smaller angle": Hung(string=70.0, amplitude_deg=6.0),
    "a large angle": Hung(amplitude_deg=22.0),
    "a faint thread": Hung(thread=0.15),
    "a bright bob and thread": Hung(level=245.0),
    "hung above the picture": Hung(string=84.0, top=-14.0),
    "the camera held askew": Hung(askew_deg=3.0),
}


@pytest.fixture
def lengths(monkeypatch):
    """The lengths that the measuring asked for, in pixels."""
    asked = []

    def noted(*arguments):
        asked.append(string_length_px(*arguments))
        return asked[-1]

    monkeypatch.setattr(judge, "string_length_px", noted)
    return asked


@pytest.mark.parametrize("name", SEEN)
def test_a_thread_is_measured_as_it_was_drawn(name, lengths):
    pendulum = SEEN[name]
    found = measure_film(hanging(pendulum))
    assert found.accepted, found.message
    assert lengths == [pytest.approx(pendulum.string, rel=0.02)]
    # Let go at the first frame; within the uncertainty that is told.
    assert found.amplitude_deg == pytest.approx(pendulum.amplitude_deg, rel=2 * U_ANGLE)


@pytest.mark.parametrize("angle", [6.0, 12.0, 20.0])
def test_no_thread_no_angle(angle, lengths):
    found = measure_film(hanging(Hung(thread=0.0, amplitude_deg=angle)))
    assert found.accepted, found.message
    assert lengths == [None]
    assert found.amplitude_deg is None


def test_a_thread_that_hangs_still_is_none_of_the_bobs(lengths):
    """A cord beside, drawn plumb in every frame, and a bob whose own thread is not seen."""
    film = hanging(replace(PLAIN, thread=0.0))
    film.frames[:, 8:66, 79:81] = 40
    assert measure_film(film).amplitude_deg is None
    assert lengths == [None]


def test_somebody_who_passes_behind_does_not_hide_the_thread(lengths):
    film = hanging(PLAIN)
    grey = film.frames.astype(float)
    sway = 25 + 22 * np.sin(np.arange(len(grey)) / 31)
    for picture, x in zip(grey, sway, strict=True):
        picture[20:90, max(int(x) - 9, 0) : int(x) + 9] = 70
    found = measure_film(film_of(list(grey)))
    assert found.accepted, found.message
    assert lengths[-1] == pytest.approx(PLAIN.string, rel=0.03)
