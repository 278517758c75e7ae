"""The hand that holds the camera, taken out: every frame moved so that the room stands still.

Each frame is compared with a reference by the gradient method (Lucas & Kanade 1981, in the
inverse form of Baker & Matthews 2004, on the gradients of the reference),
at a third of the size. What moves in the room, the bob above all, is left out of the
reckoning by its large residuals. A ridge keeps a bare wall, where nothing shows a shift, at rest.
A frame that has moved far starts a new reference. Whether the room is quieter for it is
measured at the end: on a bare wall a person walking past is the likeliest thing to be
followed by mistake, and then the film is better left as it is.
"""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray
from scipy.ndimage import gaussian_filter

Floats = NDArray[np.float32]
# Share of the picture that may move with the camera before the reference is renewed.
_FAR = 0.06
# A shift is believed only against some texture: mean squared gradient per pixel.
_RIDGE = 0.02
_ROUNDS = 2
# Pixels of the kept pictures to one of those compared here.
_POOL = 3
# Pixels of the kept pictures that a camera on a shelf may seem to move.
_STANDS = 0.3
# Below this in every one of the frames looked at first, the camera stood; no more are looked at.
_AT_REST = 0.45
# White grain smoothed by σ = 1 loses at most a tenth of itself to a half-pixel move.
_CLEARLY = 0.85


def steady(frames: NDArray[np.uint8]) -> NDArray[np.float64]:
    """Estimate the camera's movement and undo it in ``frames`` (n, h, w), in place.

    Returns (n, 2): how far (down, right) in pixels the room stood from the first frame.
    """
    still = np.zeros((len(frames), 2))
    sample = slice(None, None, max(1, len(frames) // 150))
    pictures = np.stack([gaussian_filter(_pooled(frame), 1.0) for frame in frames[sample]])
    if np.abs(_shifts(frames[sample], None)).max() * _POOL < _AT_REST:
        return still
    tried = [(still, *_unrest(pictures, still[sample]))]
    shifts = _shifts(frames, None)
    tried.append((shifts, *_unrest(pictures, shifts[sample])))
    moves = float(np.abs(shifts).max()) * _POOL > _STANDS
    if moves and tried[1][1] > _CLEARLY * tried[0][1]:
        # Perhaps a person was followed instead of the room: leave out what never rests.
        restless = np.minimum(tried[0][2], tried[1][2])
        shifts = _shifts(frames, restless < 2.5 * np.median(restless))
        tried.append((shifts, *_unrest(pictures, shifts[sample])))
    best, unrest, _ = min(tried, key=lambda one: one[1])
    if unrest > _CLEARLY * tried[0][1]:
        best = still
    for i, (down, right) in enumerate(best * _POOL):
        if abs(down) + abs(right) > 0.05:
            moved = _moved(frames[i].astype(np.float32), -down, -right)
            frames[i] = np.clip(moved + 0.5, 0, 255).astype(np.uint8)
    return np.asarray(best * _POOL)


def _shifts(frames: NDArray[np.uint8], trusted: NDArray[np.bool_] | None) -> NDArray[np.float64]:
    shifts = np.zeros((len(frames), 2))
    reference = _Reference(_pooled(frames[0]), np.zeros(2), trusted)
    for i in range(1, len(frames)):
        picture = _pooled(frames[i])
        shifts[i] = reference.shift_of(picture, shifts[i - 1])
        if np.abs(shifts[i] - reference.at).max() > _FAR * min(picture.shape):
            reference = _Reference(picture, shifts[i], trusted)
    return shifts


def _unrest(pictures: Floats, shifts: NDArray[np.float64]) -> tuple[float, Floats]:
    """How restless the room is once ``shifts`` are undone: in all, and pixel by pixel.

    A move by a fraction of a pixel smooths the grain and flatters itself; ``pictures`` are
    smoothed beforehand, so that little is left to flatter, and the gain must be clear.
    """
    moved = np.stack(
        [_moved(picture, *(-shift)) for picture, shift in zip(pictures, shifts, strict=True)]
    )
    middle = np.median(moved, axis=0)
    spread = np.median(np.abs(moved - middle), axis=0)
    ceiling = 4 * max(float(np.median(spread)), 0.5)
    return float(np.minimum(spread, ceiling).mean()), spread


class _Reference:
    def __init__(
        self, picture: Floats, at: NDArray[np.float64], trusted: NDArray[np.bool_] | None
    ) -> None:
        self.picture, self.at = picture, at
        down, right = np.gradient(picture)
        rim = np.zeros_like(picture)
        rim[4:-4, 4:-4] = 1.0
        if trusted is not None:
            rim *= np.where(trusted, 1.0, 0.05)
        self.steepest = np.stack([(-down * rim).ravel(), (-right * rim).ravel(), rim.ravel()])
        self.ridge = np.diag([1.0, 1.0, 0.0]) * _RIDGE * picture.size

    def shift_of(self, picture: Floats, guess: NDArray[np.float64]) -> NDArray[np.float64]:
        """(down, right) by which the room in ``picture`` lies off the first frame."""
        shift = guess - self.at
        for _ in range(_ROUNDS):
            residual = (_moved(picture, *(-shift)) - self.picture).ravel()
            # Quartiles of a sample: what moves stands out from them and is left out.
            sample = np.sort(residual[::17])
            quarter = sample.size // 4
            residual -= sample[2 * quarter]
            usual = max(0.75 * float(sample[3 * quarter] - sample[quarter]), 0.7)
            weighted = self.steepest * (np.abs(residual) < 3 * usual)
            normal = weighted @ self.steepest.T + self.ridge
            step = np.linalg.solve(normal, weighted @ residual)
            shift = shift + step[:2]
            if np.abs(step[:2]).max() < 0.02:
                break
        return np.asarray(shift + self.at)


def _pooled(frame: NDArray[np.uint8]) -> Floats:
    h, w = frame.shape[0] // _POOL, frame.shape[1] // _POOL
    block = frame[: h * _POOL, : w * _POOL].reshape(h, _POOL, w * _POOL)
    sums = block.sum(axis=1, dtype=np.uint16).reshape(h, w, _POOL).sum(axis=2, dtype=np.float32)
    return np.asarray(sums / np.float32(_POOL**2))


def _moved(picture: Floats, down: float, right: float) -> Floats:
    """``picture`` moved by a fraction of pixels (bilinear, edges repeated)."""
    whole_down, whole_right = int(np.floor(down)), int(np.floor(right))
    v, u = np.float32(down - whole_down), np.float32(right - whole_right)
    rows = np.clip(np.arange(picture.shape[0] + 1) - whole_down - 1, 0, picture.shape[0] - 1)
    columns = np.clip(np.arange(picture.shape[1] + 1) - whole_right - 1, 0, picture.shape[1] - 1)
    wide = picture[rows][:, columns]
    across = (1 - v) * wide[1:] + v * wide[:-1]
    return np.asarray((1 - u) * across[:, 1:] + u * across[:, :-1])
