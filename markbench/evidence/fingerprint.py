"""Is this the same picture? A fingerprint that survives resizing, saving again and cropping.

First a quick sieve: the picture is shrunk to 32 × 32 grey values; the signs of its lowest
8 × 8 cosine coefficients against their median are 64 bits (the usual perceptual hash by
discrete cosine transform). A crop shifts everything, so a photo carries ten of them: of the
whole picture, and of nine windows that leave out a tenth or less. A pair passes when any
window of one is near the whole of the other.

The sieve confuses two pictures of the same wall, so each pair that passes is looked at
again: sameness.py. Photos of two learners before one wall differ where the learners are.
Thresholds and the measured false-alarm rate: DECISION-photos.md.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray
from PIL import Image
from scipy.fft import dctn

from markbench.evidence.sameness import (
    EDGE,
    LEAST_AGREEMENT,
    agreement,
    at_a_glance,
    coarse_of,
    detail_of,
)

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
    return Fingerprint(bits, shrunk(EDGE, _WINDOWS[0]))


def repeated_pairs(
    prints: Sequence[Fingerprint], stop: Callable[[], bool] = lambda: False
) -> list[tuple[int, int, float]]:
    """Pairs (i, j, agreement) with i < j that show the same picture; none once told to stop.

    The sieve compares all pairs at once in 64-bit words: two thousand photos are forty
    million word operations, quicker than any tree at this size.
    """
    if len(prints) < 2:
        return []
    whole = np.array([one.bits[0] for one in prints])
    details = [detail_of(one.small) for one in prints]
    coarse = np.concatenate([coarse_of(one.small, _WINDOWS[:1]) for one in prints])
    found: dict[tuple[int, int], float] = {}
    for i, one in enumerate(prints):
        if stop():
            return []
        # Windows of this one against the whole of all others.
        apart = np.bitwise_count(one.bits[:, None] ^ whole)
        window, least = apart.argmin(axis=0), apart.min(axis=0)
        least[i] = MOST_BITS + 1
        passed = np.flatnonzero(least <= MOST_BITS)
        if not passed.size:
            continue
        mine = coarse_of(one.small, _WINDOWS)
        for j in map(int, passed[at_a_glance(mine, coarse[passed])]):
            near = agreement(details[i], details[j], _WINDOWS[window[j]])
            if near >= LEAST_AGREEMENT:
                pair = (min(i, j), max(i, j))
                found[pair] = max(near, found.get(pair, near))
    return [(i, j, near) for (i, j), near in sorted(found.items())]
