"""The camera's hand taken out: rooms drawn at known shifts, and what must not be followed."""

import numpy as np
import pytest
from scipy import ndimage

from markbench.evidence.video.steady import steady

HEIGHT, WIDTH, MARGIN = 96, 160, 20


def room(seed: int, *, bare: bool = False) -> np.ndarray:
    """A wall with furniture, larger than the picture; ``bare``: an even wall."""
    rng = np.random.default_rng(seed)
    shape = (HEIGHT + 2 * MARGIN, WIDTH + 2 * MARGIN)
    scene = np.full(shape, 140.0)
    if bare:
        return scene
    scene += 250 * ndimage.gaussian_filter(rng.normal(0, 1, shape), 12)
    for _ in range(25):
        x, y = rng.integers(0, shape[1] - 40), rng.integers(0, shape[0] - 30)
        scene[y : y + rng.integers(12, 30), x : x + rng.integers(12, 40)] += rng.uniform(-60, 60)
    return ndimage.gaussian_filter(scene, 0.8)


def filmed(scene: np.ndarray, shifts: np.ndarray, *, grain: float = 1.5) -> np.ndarray:
    """The scene with the room moved by (down, right) pixels in each frame, cubic splines."""
    rng = np.random.default_rng(9)
    frames = []
    for down, right in shifts:
        moved = ndimage.shift(scene, (down, right), order=3, mode="nearest")
        frames.append(moved[MARGIN:-MARGIN, MARGIN:-MARGIN] + rng.normal(0, grain, (HEIGHT, WIDTH)))
    return np.clip(frames, 0, 255).astype(np.uint8)


def hand(n: int = 150) -> np.ndarray:
    """A hand's sway, to fractions of a pixel, (down, right) from the first frame."""
    t = np.arange(n) / 30
    sway = np.stack([2.3 * np.sin(2 * np.pi * 0.7 * t), 3.7 * np.sin(2 * np.pi * 0.4 * t + 0.5)])
    return (sway - sway[:, :1]).T


def walking(frames: np.ndarray, first: float = -25.0, last: float = WIDTH + 25.0) -> np.ndarray:
    """The same with somebody a quarter of the picture wide who walks through it."""
    frames = frames.copy()
    for frame, x in zip(frames, np.linspace(first, last, len(frames)), strict=True):
        frame[20:, max(round(x - 18), 0) : max(round(x + 18), 0)] = 60
    return frames


@pytest.mark.parametrize("seed", [1, 2, 3])
def test_known_shifts_are_found_and_undone(seed):
    shifts, scene = hand(), room(seed)
    frames = filmed(scene, shifts)
    still = scene[MARGIN + 8 : -MARGIN - 8, MARGIN + 8 : -MARGIN - 8]

    def unrest() -> float:
        return float(np.abs(frames[:, 8:-8, 8:-8] - still).mean())

    before = unrest()
    found = steady(frames)
    # The room sways by ± 2.3 and ± 3.7 pixels; each new reference hands its error on.
    assert np.abs(found - shifts).mean() < 0.5
    assert np.abs(found - shifts).max() < 1.2
    # What is left holds the grain, 1.2 grey levels in the mean.
    assert unrest() < 0.4 * before


@pytest.mark.parametrize("seed", [1, 2])
def test_somebody_who_walks_past_is_not_followed(seed):
    shifts = hand()
    frames = walking(filmed(room(seed), shifts))
    # She crosses 210 pixels; the room moves by less than eight.
    assert steady(frames) == pytest.approx(shifts, abs=1.2)


def test_a_camera_on_a_shelf_is_left_alone():
    frames = walking(filmed(room(1), np.zeros((150, 2))))
    before = frames.copy()
    assert np.abs(steady(frames)).max() < 0.3
    assert np.abs(frames.astype(int) - before).mean() < 0.5


def test_before_a_bare_wall_nothing_is_followed():
    """Neither grain nor the one thing that moves tells where the camera went."""
    frames = walking(filmed(room(1, bare=True), np.zeros((150, 2))))
    before = frames.copy()
    assert np.abs(steady(frames)).max() == 0.0
    assert (frames == before).all()
