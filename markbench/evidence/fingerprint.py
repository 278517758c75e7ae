"""Is this the same picture? A fingerprint that survives resizing, saving again and cropping.

The picture is shrunk to 32 × 32 grey values; the signs of its lowest 8 × 8 cosine
coefficients against their median are 64 bits (the usual perceptual hash by discrete cosine
transform). A crop shifts everything, so a photo carries ten fingerprints: of the whole
picture, and of nine windows that leave out a tenth or less; two photos are close when any
window of one is close to the whole of the other.

Bits alone confuse two pictures of the same plain wall, so a near pair is looked at again:
the small grey pictures themselves must agree. Thresholds and the measured false-alarm
rate: DECISION-photos.md.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray
from PIL import Image
from scipy.fft import dctn

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
LEAST_AGREEMENT = 0.93


@dataclass(frozen=True, slots=True, eq=False)
class Fingerprint:
    """``bits`` (10,) uint64, the whole picture first; ``small`` (10, 32, 32) grey."""

    bits: NDArray[np.uint64]
    small: NDArray[np.uint8]


def fingerprint(image: Image.Image) -> Fingerprint:
    """Fingerprint of an upright picture."""
    grey = image.convert("L")
    width, height = grey.size
    small = np.empty((len(_WINDOWS), _EDGE, _EDGE), dtype=np.uint8)
    for k, (left, top, right, bottom) in enumerate(_WINDOWS):
        box = (left * width, top * height, right * width, bottom * height)
        small[k] = np.asarray(
            grey.resize((_EDGE, _EDGE), Image.Resampling.BOX, box=box, reducing_gap=2.0)
        )
    low = dctn(small.astype(float), axes=(1, 2), norm="ortho")[:, :_LOW, :_LOW].reshape(-1, 64)
    # The first coefficient is the mean brightness and says nothing of the picture.
    above = low > np.median(low[:, 1:], axis=1, keepdims=True)
    above[:, 0] = False
    return Fingerprint(above @ (np.uint64(1) << np.arange(64, dtype=np.uint64)), small)


def agreement(one: NDArray[np.uint8], other: NDArray[np.uint8]) -> float:
    """Correlation of two small grey pictures, −1 to 1; 0 where one is blank."""
    a, b = one.astype(float).ravel(), other.astype(float).ravel()
    a -= a.mean()
    b -= b.mean()
    size = float(np.sqrt((a @ a) * (b @ b)))
    return float(a @ b) / size if size > 0 else 0.0


def _best(windowed: Fingerprint, whole: Fingerprint, apart: NDArray[np.uint8]) -> float:
    """Best agreement of the near windows of one with the whole of the other."""
    near = np.flatnonzero(apart <= MOST_BITS)
    return max((agreement(windowed.small[k], whole.small[0]) for k in near), default=-1.0)


def repeated_pairs(prints: Sequence[Fingerprint]) -> list[tuple[int, int, float]]:
    """Pairs (i, j, agreement) with i < j that show the same picture.

    All pairs are compared at once in 64-bit words: a thousand photos are five million
    word operations a window, quicker than any tree at this size.
    """
    if len(prints) < 2:
        return []
    bits = np.stack([one.bits for one in prints])
    whole = bits[:, 0]
    found: dict[tuple[int, int], float] = {}
    for i in range(len(prints)):
        # Windows of i against the whole of the others, and the other way round.
        apart = np.bitwise_count(bits[i][:, None] ^ whole[None, :])
        back = np.bitwise_count(bits ^ whole[i])
        near_by = (apart.min(axis=0) <= MOST_BITS) | (back.min(axis=1) <= MOST_BITS)
        for j in map(int, np.flatnonzero(near_by)):
            if j <= i:
                continue
            near = max(
                _best(prints[i], prints[j], apart[:, j]), _best(prints[j], prints[i], back[j])
            )
            if near >= LEAST_AGREEMENT:
                found[(i, j)] = near
    return [(i, j, near) for (i, j), near in sorted(found.items())]
