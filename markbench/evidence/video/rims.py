"""Round things of the bob's size, wherever they are in the picture, frame by frame.

A ball differs from what lies beside it all the way round its rim, whether it hangs before a
pale wall, before a dark jacket, or half before each. The outline of a person, a shelf or a
thread does so for a part of the way only. So of the differences across the rim, at a number
of points round it, a low quantile is kept, whatever their signs: plain correlation with a
disc takes the sway of a person for a swing, and misses a ball that is darker than the wall
but paler than the jacket.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray
from scipy import ndimage

Floats = NDArray[np.float64]

# Below this radius, in pixels, half the size would leave too few of them across a rim.
_SMALL = 4.5
_POINTS = 12
# Two points in twelve may show no difference: a bob before two shades, grain, a thread.
_QUANTILE = 2
# The rim is looked at from so far within to as far without, in radii.
_WIDE = 0.35
# Pixels searched, from which on a rim is smoothed before it is looked at.
_COARSE = 3.0


@dataclass(frozen=True, slots=True, eq=False)
class RoundThings:
    """Tops of roundness: ``frame`` (n,) index, ``x`` and ``y`` (n,) in pixels, ``clear`` (n,).

    ``clear`` in grey levels across the rim, above what stands at that place all the time.
    """

    frame: NDArray[np.intp]
    x: Floats
    y: Floats
    clear: Floats


def pool_of(radius: float) -> int:
    """Pixels of the kept pictures to one of those searched for discs of ``radius``."""
    return 1 if radius < _SMALL else 2


def roundness(frames: NDArray[np.uint8], radius: float) -> NDArray[np.float32]:
    """Grey levels across the rim of a disc of ``radius`` about each place.

    ``frames`` (n, h, w); returns (n, h // p, w // p) for p = ``pool_of(radius)``.
    """
    n, h, w = frames.shape
    pool = pool_of(radius)
    rows, columns = h // pool, w // pool
    r = radius / pool
    angles = 2 * np.pi * (np.arange(_POINTS) + 0.5) / _POINTS
    unit = np.stack([np.sin(angles), np.cos(angles)], axis=1)
    within = np.rint(unit * r * (1 - _WIDE)).astype(int)
    without = np.rint(unit * (r * (1 + _WIDE) + 0.5)).astype(int)
    edge = int(np.abs(without).max())
    found = np.empty((n, rows, columns), dtype=np.float32)
    across = np.empty((_POINTS, rows, columns), dtype=np.float32)
    for i in range(n):
        block = frames[i, : rows * pool, : columns * pool].reshape(rows, pool, columns, pool)
        small = block.sum(axis=(1, 3), dtype=np.uint16).astype(np.float32) / pool**2
        if r > _COARSE:
            small = ndimage.uniform_filter(small, 3)
        wide = np.pad(small, edge, mode="edge")
        for k, ((a, b), (c, d)) in enumerate(zip(within + edge, without + edge, strict=True)):
            np.subtract(
                wide[a : a + rows, b : b + columns],
                wide[c : c + rows, d : d + columns],
                out=across[k],
            )
        np.abs(across, out=across)
        across.partition(_QUANTILE, axis=0)
        found[i] = across[_QUANTILE]
    return found


def round_things(frames: NDArray[np.uint8], radius: float, least: float) -> RoundThings:
    """Where in ``frames`` (n, h, w) something round of about ``radius`` comes and goes.

    Only what is clearer than ``least`` grey levels; what is round and stands still, a clock
    on the wall, is no more round than usual.
    """
    found = roundness(frames, radius)
    found -= np.median(found, axis=0)
    apart = max(3, int(radius) | 1)
    tops = (found == ndimage.maximum_filter(found, size=(1, apart, apart))) & (found > least)
    frame, row, column = np.nonzero(tops)
    pool = pool_of(radius)
    middle = (pool - 1) / 2
    return RoundThings(
        frame=frame,
        x=(pool * column + middle).astype(np.float64),
        y=(pool * row + middle).astype(np.float64),
        clear=found[frame, row, column].astype(np.float64),
    )
