"""Is this the same picture? A fingerprint that survives resizing, saving again and cropping.

First a quick sieve: the picture is shrunk to 32 × 32 grey values; the signs of its lowest
8 × 8 cosine coefficients against their median are 64 bits (the usual perceptual hash by
discrete cosine transform). A crop shifts everything, so a photo carries ten of them: of the
whole picture, and of nine windows that leave out a tenth or less. A pair passes when any
window of one is near the whole of the other.

The sieve confuses two pictures of the same wall, so each pair that passes is looked at
again: one picture is laid over the other (shift and stretch by least squares), both are
high-passed, so that only detail counts, and the detail must agree in every part of the
picture. Photos of two learners before one wall differ where the learners are. Thresholds
and the measured false-alarm rate: DECISION-photos.md.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray
from PIL import Image
from scipy import ndimage
from scipy.fft import dctn

Floats = NDArray[np.float64]

_EDGE = 32
_LOW = 8
# Windows (left, top, right, bottom) in fractions: the whole, then trimmed all round or
# from one side or corner.
_WINDOWS = (
    (0.0, 0.0, 1.0, 1.0),
    (0.025, 0.025, 0.975, 0.975),
    (0.05, 0.05, 0.95, 0.95),
    (0.0, 0.0, 0.94, 0.94),
    (0.06, 0.0, 1.0, 0.94),
    (0.0, 0.06, 0.94, 1.0),
    (0.06, 0.06, 1.0, 1.0),
    (0.05, 0.0, 0.95, 1.0),
    (0.0, 0.05, 1.0, 0.95),
    (0.08, 0.08, 0.92, 0.92),
)
MOST_BITS = 12
# The second look: pictures of 96 × 96, cut into 8 × 8 parts.
_DETAIL_EDGE = 96
_PARTS = 8
_FINE, _COARSE = 1.0, 6.0
_ROUNDS = 8
# High-passing spoils the rim, differently in a picture and in its crop.
_RIM = 5
# Grey levels of detail that grain, saving and shrinking leave between equal pictures; a
# picture with hardly more than this has nothing to be known by.
_GRAIN = 2.0
# Share of the picture that must lie under the other, rims left out.
_LEAST_COMMON = 0.6
LEAST_AGREEMENT = 0.66


@dataclass(frozen=True, slots=True, eq=False)
class Fingerprint:
    """``bits`` (10,) uint64, the whole picture first; ``small`` (96, 96) grey."""

    bits: NDArray[np.uint64]
    small: NDArray[np.uint8]


def fingerprint(image: Image.Image) -> Fingerprint:
    """Fingerprint of an upright picture."""
    grey = image.convert("L")
    width, height = grey.size

    def shrunk(edge: int, window: tuple[float, float, float, float]) -> NDArray[np.uint8]:
        left, top, right, bottom = window
        box = (left * width, top * height, right * width, bottom * height)
        kind = Image.Resampling.BOX
        return np.asarray(grey.resize((edge, edge), kind, box=box, reducing_gap=2.0))

    small = np.stack([shrunk(_EDGE, window) for window in _WINDOWS])
    low = dctn(small.astype(float), axes=(1, 2), norm="ortho")[:, :_LOW, :_LOW].reshape(-1, 64)
    # The first coefficient is the mean brightness and says nothing of the picture.
    above = low > np.median(low[:, 1:], axis=1, keepdims=True)
    above[:, 0] = False
    bits = above @ (np.uint64(1) << np.arange(64, dtype=np.uint64))
    return Fingerprint(bits, shrunk(_DETAIL_EDGE, _WINDOWS[0]))


def _band(small: NDArray[np.uint8]) -> Floats:
    """Detail between the fine and the coarse scale, free of brightness and light."""
    grey = small.astype(float)
    return np.asarray(
        ndimage.gaussian_filter(grey, _FINE, mode="nearest")
        - ndimage.gaussian_filter(grey, _COARSE, mode="nearest")
    )


def _agreement(one: Floats, other: Floats, window: tuple[float, float, float, float]) -> float:
    """How far the detail of two pictures agrees in the part where it agrees least.

    ``other`` may show only a ``window`` of ``one`` (a guess, bettered here). 1 for the same
    detail everywhere, 0 or less where some part has nothing in common.
    """
    if min(one.std(), other.std()) < 1.5 * _GRAIN:
        return 0.0
    fitted = _laid_over(one, other, window)
    inside = np.isfinite(fitted)
    inside[:_RIM], inside[-_RIM:], inside[:, :_RIM], inside[:, -_RIM:] = (False,) * 4
    if inside.mean() < _LEAST_COMMON:
        return 0.0
    a, b = np.where(inside, fitted, 0.0), np.where(inside, other, 0.0)
    gain = float(a.ravel() @ b.ravel()) / max(float(a.ravel() @ a.ravel()), 1e-9)
    if gain <= 0:
        return 0.0
    a = a * gain
    common, power = _by_part(2 * a * b), _by_part(a**2 + b**2)
    # Parts with little detail are bare wall and grain: they tell nothing either way.
    floor = 2 * _GRAIN**2 * (one.shape[0] // _PARTS) ** 2
    return float(((common + floor) / (power + floor)).min())


def _laid_over(one: Floats, other: Floats, window: tuple[float, float, float, float]) -> Floats:
    """``one`` shifted and stretched onto ``other`` by least squares; nan beyond its edge."""
    edge = one.shape[0]
    everywhere: Floats = np.indices((edge, edge)).astype(float) + 0.5
    left, top, right, bottom = window
    p = np.array([left * edge, top * edge, right - left, bottom - top])
    slope_y, slope_x = (np.asarray(slope) for slope in np.gradient(one))

    def at(picture: Floats, p: Floats, grid: Floats) -> Floats:
        where = (p[1] + p[3] * grid[0] - 0.5, p[0] + p[2] * grid[1] - 0.5)
        return np.asarray(ndimage.map_coordinates(picture, where, order=1, cval=np.nan))

    # A quarter of the pixels fits four numbers as well as all of them.
    grid: Floats = everywhere[:, ::2, ::2]
    aim, y, x = other[::2, ::2], grid[0], grid[1]
    for _ in range(_ROUNDS):
        now, gx, gy = (at(picture, p, grid) for picture in (one, slope_x, slope_y))
        good = np.isfinite(now) & np.isfinite(gx) & np.isfinite(gy)
        gain = float(now[good] @ aim[good]) / max(float(now[good] @ now[good]), 1e-9)
        if gain <= 0:
            break
        design = gain * np.stack([gx, gy, gx * x, gy * y], axis=-1)[good]
        rest = aim[good] - gain * now[good]
        # Where the two differ greatly they are different things, not one thing shifted.
        weight = 1 / (1 + (rest / max(1.5 * float(np.median(np.abs(rest))), 1e-6)) ** 2)
        step = np.linalg.lstsq(
            design.T @ (design * weight[:, None]) + 1e-6 * np.eye(4),
            design.T @ (weight * rest),
            rcond=None,
        )[0]
        p = p + step
        if np.abs(step[:2]).max() < 0.02 and np.abs(step[2:]).max() < 0.0003:
            break
    return at(one, p, everywhere)


def _by_part(values: Floats) -> Floats:
    step = values.shape[0] // _PARTS
    return np.asarray(values.reshape(_PARTS, step, _PARTS, step).sum(axis=(1, 3)))


def repeated_pairs(prints: Sequence[Fingerprint]) -> list[tuple[int, int, float]]:
    """Pairs (i, j, agreement) with i < j that show the same picture.

    All pairs are compared at once in 64-bit words: a thousand photos are five million
    word operations a window, quicker than any tree at this size.
    """
    if len(prints) < 2:
        return []
    bits = np.stack([one.bits for one in prints])
    whole = bits[:, 0]
    bands: dict[int, Floats] = {}

    def band(i: int) -> Floats:
        if i not in bands:
            bands[i] = _band(prints[i].small)
        return bands[i]

    found = []
    for i in range(len(prints)):
        # Windows of i against the whole of the others, and the other way round.
        apart = np.bitwise_count(bits[i][:, None] ^ whole[None, i + 1 :]).T
        back = np.bitwise_count(bits[i + 1 :] ^ whole[i])
        passed = np.minimum(apart.min(axis=1), back.min(axis=1)) <= MOST_BITS
        for j in map(int, np.flatnonzero(passed)):
            near = -1.0
            for one, other, bits_apart in ((i, i + 1 + j, apart[j]), (i + 1 + j, i, back[j])):
                k = int(bits_apart.argmin())
                if bits_apart[k] <= MOST_BITS:
                    near = max(near, _agreement(band(one), band(other), _WINDOWS[k]))
            if near >= LEAST_AGREEMENT:
                found.append((i, i + 1 + j, near))
    return found
