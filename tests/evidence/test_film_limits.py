"""What a film may cost: size, pixels, time and length are limited before they are spent."""

from fractions import Fraction

import clips
import numpy as np
import pytest

from markbench.evidence.video import film as reading
from markbench.evidence.video.film import FilmError, block_means, read_film
from markbench.evidence.video.judge import measure_swing


@pytest.fixture(scope="module")
def short() -> bytes:
    levels = [np.full((64, 96), 90 + n, dtype=np.uint8) for n in range(60)]
    return clips.encode(levels, np.arange(60) / 30, "mp4", 0, Fraction(30))


@pytest.mark.parametrize(
    ("limit", "value", "word"),
    [("MOST_BYTES", 1000, "larger"), ("MOST_PIXELS", 64 * 96 - 1, "too large")],
)
def test_too_large_is_refused_before_decoding(short, monkeypatch, limit, value, word):
    monkeypatch.setattr(reading, limit, value)
    monkeypatch.setattr(reading, "_good_frames", None)
    with pytest.raises(FilmError, match=word):
        read_film(short)
    assert measure_swing(short).reason == "unreadable"


def test_decoding_stops_when_its_time_is_up(short):
    with pytest.raises(FilmError, match="longer than"):
        read_film(short, time_limit_s=0.0)


def test_an_endless_film_is_read_so_far_and_no_further(short, monkeypatch):
    monkeypatch.setattr(reading, "LONGEST_S", 1.0)
    film = read_film(short)
    assert 1.0 < film.duration_s < 1.2


def test_memory_is_bounded_by_the_frames_kept(short, monkeypatch):
    monkeypatch.setattr(reading, "BUDGET_BYTES", 20 * 64 * 96)
    monkeypatch.setattr(reading, "SHORTEST_EDGE", 96)
    assert read_film(short).frames.nbytes <= 20 * 64 * 96


@pytest.mark.parametrize("by", [3, 4, 6, 8, 16])
def test_means_over_blocks(by):
    """Against numpy's mean of the two rows of each block that stand for it, rounded down."""
    rng = np.random.default_rng(by)
    plane = rng.integers(0, 256, (5 * by, 7 * by), dtype=np.uint8)
    blocks = plane.reshape(5, by, 7, by)[:, [by // 4, by // 4 + by // 2]]
    assert (block_means(plane, by) == np.floor(blocks.mean(axis=(1, 3)))).all()


def test_one_plane_of_brightness_is_shrunk_evenly():
    """Dark left, bright right, at a quarter the size; ITU-R BT.601: Y' from 16 to 235."""
    picture = np.tile(np.where(np.arange(960) < 480, 40, 200).astype(np.uint8), (540, 1))
    film = read_film(clips.encode([picture] * 4, np.arange(4) / 30, "mp4", 0, Fraction(30)))
    assert film.frames.shape[1:] == (135, 240)
    levels = film.frames[1].astype(float)
    assert levels[:, :115] == pytest.approx(16 + 219 * 40 / 255, abs=3)
    assert levels[:, 125:] == pytest.approx(16 + 219 * 200 / 255, abs=3)
