"""Where in the picture, and when, does something swing?

The steadied pictures are pooled into cells of a few pixels. In a sliding window of time
each cell's grey level is explained by a period and its harmonics (least squares, adjusted
for the number of terms). Cells that the bob crosses are explained almost wholly; a person
walking by, a leaf, noise are not.

Brightness alone cannot tell a period from half of it: a cell in the middle of the arc
sees the bob twice a swing. Here it only proposes places and periods; the period is
measured on the signed position of the bob (see :mod:`.follow`), which cannot be halved.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from functools import lru_cache

import numpy as np
from numpy.typing import NDArray
from scipy import ndimage

Floats = NDArray[np.float64]

CELL = 4
# Strings of 4 cm to 2.5 m: T = 2π√(L/g).
SHORTEST_PERIOD_S, LONGEST_PERIOD_S = 0.4, 3.2
# The shortest for three swings of 0.6 s, as slow motion is often kept short.
_WINDOWS_S = (16.0, 8.0, 4.0, 2.0)
_RATE = 20.0
# A small bob on a wide arc passes in a flash: many harmonics, and much of it unexplained.
# A short window bears fewer terms and must be surer.
_HARMONICS_LONG, _EXPLAINED_LONG = 5, 0.33
_HARMONICS_SHORT, _EXPLAINED_SHORT = 3, 0.45
_LONG_S = 6.0
_LEAST_FUNDAMENTAL = 0.08


@dataclass(frozen=True, slots=True, eq=False)
class Cells:
    """Mean grey level of each cell on an even clock: ``levels`` (n, rows, columns).

    ``times_s`` (n,); ``noise`` the standard deviation of a still cell.
    """

    levels: NDArray[np.float32]
    times_s: Floats
    noise: float


@dataclass(frozen=True, slots=True, eq=False)
class Place:
    """A part of the picture that changes with one period during a window of time.

    ``mask`` (rows, columns) of cells; ``score`` grows with contrast, area and clearness.
    """

    period_s: float
    window_s: tuple[float, float]
    mask: NDArray[np.bool_]
    score: float


def pool(frames: NDArray[np.uint8], times_s: Floats) -> Cells:
    """Cells of ``frames`` (n, h, w), interpolated to an even clock."""
    n, h, w = frames.shape
    rows, columns = h // CELL, w // CELL
    raw = np.empty((n, rows, columns), dtype=np.float32)
    for i in range(n):
        block = frames[i, : rows * CELL, : columns * CELL].reshape(rows, CELL, columns, CELL)
        raw[i] = block.sum(axis=(1, 3), dtype=np.uint32) / CELL**2
    clock = np.arange(times_s[0], times_s[-1], 1 / _RATE)
    at = np.interp(clock, times_s, np.arange(n))
    low = np.minimum(at.astype(int), n - 2)
    part = (at - low).astype(np.float32)[:, None, None]
    levels = (1 - part) * raw[low] + part * raw[low + 1]
    # Flicker of the whole picture (exposure, mains light) moves every cell alike.
    levels -= np.median(levels, axis=(1, 2), keepdims=True)
    steps = np.abs(np.diff(raw[:: max(1, n // 300)], axis=0))
    return Cells(levels, clock, max(float(np.median(steps)) / 0.954, 0.15))


def places(
    cells: Cells,
    *,
    most: int = 5,
) -> Iterator[Place]:
    """The likeliest places, from long windows first, and of those the best first.

    A long window is the surest; shorter ones are searched only if the caller goes on
    asking. ``most`` places for each length of window.
    """
    low, high = cells.times_s[0], cells.times_s[-1]
    lengths = sorted({min(length, high - low) for length in _WINDOWS_S}, reverse=True)
    kept: list[Place] = []
    for length in lengths:
        found: list[Place] = []
        # Evenly to the very end: a bob let go late swings only there.
        steps = int(np.ceil((high - low - length) / (length / 2.5)))
        for start in np.linspace(low, high - length, max(steps, 0) + 1):
            chosen = (cells.times_s >= start) & (cells.times_s <= start + length)
            found += _in_window(cells, chosen)
        found.sort(key=lambda place: -place.score)
        room = len(kept) + most
        for place in found:
            if len(kept) < room and all(_different(place, other) for other in kept):
                kept.append(place)
                yield place


def _different(one: Place, other: Place) -> bool:
    same_period = abs(np.log(one.period_s / other.period_s)) < 0.06
    overlap = np.sum(one.mask & other.mask) / min(one.mask.sum(), other.mask.sum())
    # What fails in a long window, held for half of it, may do in a short one.
    lasts, lasted = (place.window_s[1] - place.window_s[0] for place in (one, other))
    return not (same_period and overlap > 0.3 and lasts > 0.7 * lasted)


def _in_window(cells: Cells, chosen: NDArray[np.bool_]) -> list[Place]:
    times = cells.times_s[chosen]
    if times.size < 30:
        return []
    span = round(float(times[-1] - times[0]), 6)
    levels = cells.levels[chosen]
    shape = levels.shape[1:]
    signal = levels.reshape(times.size, -1)
    trend = _trend(times.size)
    signal = signal - trend @ (trend.T @ signal)
    power = np.einsum("ij,ij->j", signal, signal)
    active = power / times.size > (2.0 * cells.noise) ** 2
    where = np.flatnonzero(active)
    if where.size < 3:
        return []
    signal, power = signal[:, where], power[where]
    weight = np.sqrt(power / times.size)

    harmonics, enough = (
        (_HARMONICS_LONG, _EXPLAINED_LONG)
        if span > _LONG_S
        else (_HARMONICS_SHORT, _EXPLAINED_SHORT)
    )
    frequencies, bases = _bases(times.size, span, harmonics)
    scores = np.zeros(frequencies.size)
    shares = np.zeros((frequencies.size, where.size), dtype=np.float32)
    for k, basis in enumerate(bases):
        terms = basis.shape[0] // 2
        parts = (basis @ signal) ** 2
        explained = parts.sum(axis=0) / power
        adjusted = 1 - (1 - explained) * (times.size - 3) / (times.size - 3 - 2 * terms)
        share = parts[:2].sum(axis=0) / np.maximum(parts.sum(axis=0), 1e-9)
        good = adjusted > enough
        if good.sum() < 3:
            continue
        if np.average(share[good], weights=weight[good] ** 2) < _LEAST_FUNDAMENTAL:
            continue
        shares[k] = adjusted
        scores[k] = float(np.sum(weight * np.maximum(adjusted - enough, 0)))
    found = []
    for k in _peaks(scores)[:3]:
        mask = np.zeros(shape, dtype=bool)
        mask.ravel()[where] = shares[k] > enough
        labels, number = ndimage.label(mask, np.ones((3, 3)))
        amount = np.zeros(shape)
        amount.ravel()[where] = weight * np.maximum(shares[k] - enough, 0)
        sizes = np.asarray(ndimage.sum_labels(amount, labels, np.arange(1, number + 1)))
        for label in np.argsort(-sizes)[:3]:
            part = labels == label + 1
            if part.sum() >= 3 and sizes[label] > 0.1 * sizes.max():
                found.append(
                    Place(
                        period_s=float(1 / frequencies[k]),
                        window_s=(float(times[0]), float(times[-1])),
                        mask=part,
                        score=float(sizes[label]),
                    )
                )
    return found


@lru_cache(maxsize=8)
def _trend(count: int) -> NDArray[np.float32]:
    clock = np.linspace(-0.5, 0.5, count)
    return np.linalg.qr(np.stack([clock**k for k in range(3)], axis=1))[0].astype(np.float32)


@lru_cache(maxsize=8)
def _bases(
    count: int, span_s: float, harmonics: int
) -> tuple[Floats, tuple[NDArray[np.float32], ...]]:
    """Frequencies to try in a window, and for each (2·terms, count) waves free of the trend.

    The clock is even, so windows of one length share them. Cosine and sine of the
    fundamental come first: what the harmonics add is counted apart.
    """
    slowest, fastest = max(2.7 / span_s, 1 / LONGEST_PERIOD_S), 1 / SHORTEST_PERIOD_S
    frequencies = np.arange(slowest, fastest, 0.25 / span_s)
    clock, trend = np.linspace(-span_s / 2, span_s / 2, count), _trend(count)
    bases = []
    for frequency in frequencies:
        terms = min(harmonics, int(0.45 * _RATE / frequency))
        angles = 2 * np.pi * frequency * np.outer(clock, np.arange(1, terms + 1))
        waves = np.stack([np.cos(angles), np.sin(angles)], axis=2).reshape(count, -1)
        waves = waves.astype(np.float32)
        waves -= trend @ (trend.T @ waves)
        bases.append(np.ascontiguousarray(np.linalg.qr(waves)[0].T))
    return frequencies, tuple(bases)


def _peaks(scores: Floats) -> list[int]:
    padded = np.concatenate([[0.0], scores, [0.0]])
    tops = (padded[1:-1] > padded[:-2]) & (padded[1:-1] >= padded[2:]) & (scores > 0)
    return sorted(np.flatnonzero(tops), key=lambda k: -scores[k])
