"""The second look: is one picture another one, shifted, cropped, shrunk or saved again?

One is laid over the other (shift and stretch by least squares), both are high-passed, so
that only detail counts, and the detail must agree in every part of the picture. A glance
comes first, at a third of the size and only where the sieve's windows lay the two: coarse
detail that disagrees in a large part will not agree in its small ones. Photos of a class
that share a wall pass the sieve by the thousand, and the glance leaves one in five of them.
"""

from __future__ import annotations

import functools
from collections.abc import Sequence

import numpy as np
from numpy.typing import NDArray
from scipy import ndimage

Floats = NDArray[np.float64]
Detail = NDArray[np.float32]
Window = tuple[float, float, float, float]

# Pictures of 96 × 96, cut into 8 × 8 parts.
EDGE = 96
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

# The glance: 32 × 32 of coarser detail in 4 × 4 parts. Equal pictures agreed to 0.61 or
# more in some window, four in five unequal ones to less than 0.4 (DECISION-photos.md).
_GLANCE_EDGE, _GLANCE_PARTS, _GLANCE_RIM = 32, 4, 2
_GLANCE_FINE, _GLANCE_COARSE, _GLANCE_GRAIN = 3.0, 9.0, 1.5
_GLANCE_LEAST = 0.4


def detail_of(small: NDArray[np.uint8]) -> Detail:
    """Detail of a (96, 96) picture between two scales, free of brightness and light."""
    return _between(small, _FINE, _COARSE).astype(np.float32)


def coarse_of(small: NDArray[np.uint8], windows: Sequence[Window]) -> Detail:
    """(windows, 32, 32): the coarse detail of a (96, 96) picture in each of its windows."""
    band = _between(small, _GLANCE_FINE, _GLANCE_COARSE)
    shrunk = [
        _shrinking(top, bottom) @ band @ _shrinking(left, right).T
        for left, top, right, bottom in windows
    ]
    rim = _GLANCE_RIM
    seen = np.zeros((len(windows), _GLANCE_EDGE, _GLANCE_EDGE), dtype=np.float32)
    seen[:, rim:-rim, rim:-rim] = np.stack(shrunk)[:, rim:-rim, rim:-rim]
    return seen


def at_a_glance(one: Detail, others: Detail) -> NDArray[np.bool_]:
    """Which of ``others`` (n, 32, 32) may be ``one``, given in its windows (windows, 32, 32)."""
    mine, theirs = _in_parts(one), _in_parts(others)
    across = theirs @ mine.transpose(0, 2, 1)  # (parts, n, windows)
    own, their = (mine**2).sum(axis=2), (theirs**2).sum(axis=2)
    gain = across.sum(axis=0) / np.maximum(own.sum(axis=0), 1e-9)
    floor = 2 * _GLANCE_GRAIN**2 * mine.shape[2]
    power = gain**2 * own[:, None, :] + their[:, :, None]
    least = ((2 * gain * across + floor) / (power + floor)).min(axis=0)
    return np.asarray(((gain > 0) & (least >= _GLANCE_LEAST)).any(axis=1))


def _in_parts(pictures: Detail) -> Detail:
    """(parts, pictures, pixels of a part)."""
    step = _GLANCE_EDGE // _GLANCE_PARTS
    cut = pictures.reshape(-1, _GLANCE_PARTS, step, _GLANCE_PARTS, step)
    return cut.transpose(1, 3, 0, 2, 4).reshape(_GLANCE_PARTS**2, -1, step**2)


def agreement(one: Detail, other: Detail, window: Window) -> float:
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
    floor = 2 * _GRAIN**2 * (EDGE // _PARTS) ** 2
    return float(((common + floor) / (power + floor)).min())


def _between(small: NDArray[np.uint8], fine: float, coarse: float) -> Floats:
    grey = small.astype(float)
    return np.asarray(
        ndimage.gaussian_filter(grey, fine, mode="nearest")
        - ndimage.gaussian_filter(grey, coarse, mode="nearest")
    )


@functools.cache
def _shrinking(low: float, high: float) -> Floats:
    """(32, 96) weights that shrink the stretch from ``low`` to ``high`` of an edge."""
    width = max((high - low) * EDGE / _GLANCE_EDGE, 1.0)
    middles = low * EDGE + (np.arange(_GLANCE_EDGE) + 0.5) * width - 0.5
    weights = np.maximum(0.0, 1 - np.abs(np.arange(EDGE)[None, :] - middles[:, None]) / width)
    return np.asarray(weights / weights.sum(axis=1, keepdims=True))


def _laid_over(one: Detail, other: Detail, window: Window) -> Floats:
    """``one`` shifted and stretched onto ``other`` by least squares; nan beyond its edge."""
    left, top, right, bottom = window
    p = np.array([left * EDGE, top * EDGE, right - left, bottom - top])
    slope_y, slope_x = np.gradient(one)
    layers = np.stack([one, slope_x, slope_y])
    # A quarter of the pixels fits four numbers as well as all of them.
    grid: Floats = np.arange(0, EDGE, 2, dtype=float) + 0.5
    aim = other[::2, ::2].ravel()
    x, y = np.tile(grid, grid.size), np.repeat(grid, grid.size)
    for _ in range(_ROUNDS):
        now, gx, gy = _sampled(layers, p, grid).reshape(3, -1)
        good = np.isfinite(now)
        now, gx, gy, seen = now[good], gx[good], gy[good], aim[good]
        gain = float(now @ seen) / max(float(now @ now), 1e-9)
        if gain <= 0:
            break
        design = gain * np.stack([gx, gy, gx * x[good], gy * y[good]])
        rest = seen - gain * now
        # Where the two differ greatly they are different things, not one thing shifted.
        usual = float(np.median(np.abs(rest))) if rest.size else 0.0
        weight = 1 / (1 + (rest / max(1.5 * usual, 1e-6)) ** 2)
        weighted = design * weight
        step = np.linalg.solve(weighted @ design.T + 1e-6 * np.eye(4), weighted @ rest)
        p = p + step
        if np.abs(step[:2]).max() < 0.02 and np.abs(step[2:]).max() < 0.0003:
            break
    everywhere: Floats = np.arange(EDGE, dtype=float) + 0.5
    fitted: Floats = _sampled(one[None], p, everywhere)[0]
    return fitted


def _sampled(layers: Detail, p: Floats, grid: Floats) -> Floats:
    """``layers`` at the shifted, stretched ``grid``: linear, first in rows, then in columns."""
    rows, down, in_rows = _between_pixels(p[1] + p[3] * grid - 0.5)
    columns, right, in_columns = _between_pixels(p[0] + p[2] * grid - 0.5)
    lines = layers[:, rows] * (1 - down[:, None]) + layers[:, rows + 1] * down[:, None]
    values = lines[:, :, columns] * (1 - right) + lines[:, :, columns + 1] * right
    values[:, ~in_rows, :] = np.nan
    values[:, :, ~in_columns] = np.nan
    return np.asarray(values)


def _between_pixels(at: Floats) -> tuple[NDArray[np.intp], Floats, NDArray[np.bool_]]:
    low = np.clip(np.floor(at), 0, EDGE - 2).astype(np.intp)
    return low, at - low, (at >= 0) & (at <= EDGE - 1)


def _by_part(values: Floats) -> Floats:
    step = EDGE // _PARTS
    return np.asarray(values.reshape(_PARTS, step, _PARTS, step).sum(axis=(1, 3)))
