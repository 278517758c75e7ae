"""The hand that holds the camera, taken out: every frame moved so that the room stands still.

Each frame is compared with a reference by the gradient method (Lucas & Kanade 1981, in the
inverse form of Baker & Matthews 2004, on the gradients of the reference),
at half size and smoothed. What moves in the room, the bob above all, is left out of the
reckoning by its large residuals. A ridge keeps a bare wall, where nothing shows a shift, at rest.
A frame that no longer resembles the reference starts a new one; a sudden change of the
whole picture is reported as a cut.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray
from scipy import ndimage

Floats = NDArray[np.float32]
# Share of the picture that may move with the camera before the reference is renewed.
_FAR = 0.06
# A shift is believed only against some texture: mean squared gradient per pixel.
_RIDGE = 0.02
_ROUNDS = 3


@dataclass(frozen=True, slots=True, eq=False)
class Steadied:
    """``shifts_px`` (n, 2): how far (down, right) the room stands from the first frame.

    ``jumps`` (n,) is the mean grey-level change from the frame before that no shift
    explains, over its median: a cut stands out.
    """

    shifts_px: NDArray[np.float64]
    jumps: NDArray[np.float64]


def steady(frames: NDArray[np.uint8]) -> Steadied:
    """Estimate the camera's movement and undo it in ``frames`` (n, h, w), in place."""
    n = len(frames)
    shifts = np.zeros((n, 2))
    changes = np.zeros(n)
    reference = _Reference(_half(frames[0]), np.zeros(2))
    before = reference.picture
    for i in range(1, n):
        picture = _half(frames[i])
        shifts[i] = reference.shift_of(picture, shifts[i - 1])
        now = _moved(picture, *(-shifts[i]))
        earlier = _moved(before, *(-shifts[i - 1]))
        changes[i] = float(np.mean(np.minimum(np.abs(now - earlier), 40.0)))
        before = picture
        if np.abs(shifts[i] - reference.at).max() > _FAR * min(picture.shape):
            reference = _Reference(picture, shifts[i])
    for i in range(1, n):
        down, right = shifts[i] * 2
        if abs(down) + abs(right) > 0.05:
            moved = _moved(frames[i].astype(np.float32), -down, -right)
            frames[i] = np.clip(moved + 0.5, 0, 255).astype(np.uint8)
    changes[0] = changes[1] if n > 1 else 0.0
    return Steadied(shifts * 2, changes / max(float(np.median(changes)), 0.3))


class _Reference:
    def __init__(self, picture: Floats, at: NDArray[np.float64]) -> None:
        self.picture, self.at = picture, at
        down, right = np.gradient(picture)
        rim = np.zeros_like(picture)
        rim[4:-4, 4:-4] = 1.0
        self.steepest = np.stack([(-down * rim).ravel(), (-right * rim).ravel(), rim.ravel()])
        self.ridge = np.diag([1.0, 1.0, 0.0]) * _RIDGE * picture.size

    def shift_of(self, picture: Floats, guess: NDArray[np.float64]) -> NDArray[np.float64]:
        """(down, right) by which the room in ``picture`` lies off the first frame."""
        shift = guess - self.at
        for _ in range(_ROUNDS):
            residual = (_moved(picture, *(-shift)) - self.picture).ravel()
            residual -= np.median(residual[::7])
            # What moves in the room stands out from the rest and is left out altogether.
            usual = max(1.5 * float(np.median(np.abs(residual[::7]))), 0.7)
            weighted = self.steepest * (np.abs(residual) < 3 * usual)
            normal = weighted @ self.steepest.T + self.ridge
            step = np.linalg.solve(normal, weighted @ residual)
            shift = shift + step[:2]
            if np.abs(step[:2]).max() < 0.02:
                break
        return np.asarray(shift + self.at)


def _half(frame: NDArray[np.uint8]) -> Floats:
    h, w = frame.shape[0] // 2 * 2, frame.shape[1] // 2 * 2
    pairs = frame[0:h:2, :w].astype(np.float32) + frame[1:h:2, :w]
    small = (pairs[:, 0::2] + pairs[:, 1::2]) / 4
    return np.asarray(ndimage.uniform_filter(small, 3, mode="nearest"), dtype=np.float32)


def _moved(picture: Floats, down: float, right: float) -> Floats:
    """``picture`` moved by a fraction of pixels (bilinear, edges repeated)."""
    whole_down, whole_right = int(np.floor(down)), int(np.floor(right))
    v, u = np.float32(down - whole_down), np.float32(right - whole_right)
    rows = np.clip(np.arange(picture.shape[0] + 1) - whole_down - 1, 0, picture.shape[0] - 1)
    columns = np.clip(np.arange(picture.shape[1] + 1) - whole_right - 1, 0, picture.shape[1] - 1)
    wide = picture[rows][:, columns]
    across = (1 - v) * wide[1:] + v * wide[:-1]
    return np.asarray((1 - u) * across[:, 1:] + u * across[:, :-1])
