"""How long the pendulum is in the picture, where its thread can be seen.

A taut thread's points swing in proportion to their distance from the support, and how the
bob at its lower end swings is known. So only the place of the support is unknown: for each
place it might have, the thread's way through the film is laid down, and it is asked how much
of a thin line is seen along that way (a matched filter on pictures averaged where the bob is
equally far out, so that neither grain nor a passer-by counts for much). The same is asked of
lines that lean against the bob, as nothing does: what is seen of those is chance, and the
thread must be far clearer. Rejected: the widest gap between pictures of the two ends row by
row, which gave as many angles with twice the error at 95 % (DECISION-video.md).
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray
from scipy import ndimage

from markbench.evidence.video.follow import Track
from markbench.evidence.video.oscillation import Swing

Floats = NDArray[np.float64]

# Relative standard uncertainty of an angle that is given: twice it held 93 % of drawn films
# (DECISION-video.md). What the fit itself leaves open is far less.
U_ANGLE = 0.035

# A bob that moves less than this many pixels shows no angle.
_LEAST_REACH, _LEAST_ROWS, _LEAST_BINS, _MOST_BINS = 3.0, 8, 6, 32
# In sigmas of the grain, and against what a line that leans the wrong way shows.
_CLEAR, _OVER_CHANCE = 12.0, 2.5
# Bob to support in reaches of the bob: from 40° down to 2.3°; the camera may be held 6° askew.
_SHORTEST, _LONGEST, _ASKEW, _SLANTS = 1.55, 25.0, 0.1, 13
# Scales in pixels of a thread and of what lies beside it; grey levels no thread surpasses.
_THIN, _BESIDE, _MOST_DETAIL = 0.7, 2.0, 12.0
# Pixels from the middle within which ways that lean either way cross.
_CROSSING = 3.0


@dataclass(frozen=True, slots=True)
class Thread:
    """``length_px`` from support to bob in kept pixels.

    ``clear``: in sigmas, how much of it is seen; ``chance``: of the clearest wrong line.
    """

    length_px: float
    clear: float
    chance: float


def string_length_px(frames: NDArray[np.uint8], fine: Track, swing: Swing) -> float | None:
    """Support to bob in kept pixels, or ``None``; only for a swing seen nearly level."""
    thread = likeliest_thread(frames, fine, swing)
    if thread is None or thread.clear < max(_CLEAR, _OVER_CHANCE * thread.chance):
        return None
    return thread.length_px


def likeliest_thread(frames: NDArray[np.uint8], fine: Track, swing: Swing) -> Thread | None:
    """The likeliest thread, clear or not; ``None`` where there is no room for one."""
    arc = fine.arc
    bottom = int(arc.y - abs(arc.sag) - arc.radius - 3)
    flat = abs(arc.reach_y) <= 0.3 * abs(arc.reach_x)
    if not flat or swing.amplitude < _LEAST_REACH or bottom < _LEAST_ROWS:
        return None
    lines = _lines(frames, fine, swing, bottom)
    if lines.way.size < _LEAST_BINS:
        return None
    reach = float(np.abs(lines.way).max())
    # Steps by which the middle of the thread moves about a pixel at its ends.
    steps = int(np.clip(np.log(_LONGEST / _SHORTEST) * reach, 24, 120))
    lengths = reach * np.geomspace(_SHORTEST, _LONGEST, steps)
    slants = np.linspace(-_ASKEW, _ASKEW, _SLANTS)
    seen = np.array([[lines.seen(length, slant) for slant in slants] for length in lengths])
    i, k = np.unravel_index(np.abs(seen).argmax(), seen.shape)
    if i in (0, lengths.size - 1):
        return None
    # Darker than the wall or brighter, but the same all along and for those it is held against.
    sign = float(np.sign(seen[i, k]))
    near = np.linspace(lengths[i - 1], lengths[i + 1], 21)
    beside = slants[k] + np.linspace(-1, 1, 9) * (slants[1] - slants[0])
    finer = sign * np.array([[lines.seen(length, slant) for slant in beside] for length in near])
    slant = float(beside[finer.max(axis=0).argmax()])
    length = _top(near, finer.max(axis=1))
    chance = [lines.apart(other, lean, -1.0) for other in lengths[::2] for lean in slants]
    return Thread(length, sign * lines.apart(length, slant), float((sign * np.array(chance)).max()))


def _top(x: Floats, y: Floats) -> float:
    """Where a parabola through the highest points has its top."""
    j = int(np.clip(y.argmax(), 1, x.size - 2))
    before, top, after = y[j - 1 : j + 2]
    bend = before - 2 * top + after
    shift = 0.5 * (before - after) / bend if bend < 0 else 0.0
    return float(x[j] + np.clip(shift, -1, 1) * (x[1] - x[0]))


class _Lines(NamedTuple):
    """How much of a thin line is seen along a thread's way, for any place of the support.

    ``way`` (n,) displacement of the bob to the right in pixels, ``weights`` (n,) the frames
    averaged; ``detail`` (n, rows, columns) what is left of the pictures above the bob once
    light, shade and their mean are taken out, by the ``grain`` (rows,) of each row. The bob
    at rest is at (``x``, ``y``). ``sizes``, ``left``: of a line that moves so far to each
    side, in shares of the bob's reach, how much its own mean leaves.
    """

    way: Floats
    weights: Floats
    detail: Floats
    grain: Floats
    x: float
    y: float
    sizes: Floats
    left: Floats

    def seen(self, length: float, slant: float) -> float:
        """Signed clearness of a line hung ``length`` above the bob, ``slant`` off the plumb."""
        rows, _, value, inside = self._along(length, slant, 1.0)
        if rows.size < _LEAST_ROWS:
            return 0.0
        level = (self.weights[:, None] * np.where(inside, value, 0.0)).sum(axis=0)
        grain = self.grain[rows]
        left = np.interp((rows - (self.y - length)) / length, self.sizes, self.left)
        return float((level / grain).sum() / max((left / grain**2).sum(), 1e-9) ** 0.5)

    def apart(self, length: float, slant: float, sense: float = 1.0) -> float:
        """The same in sigmas, of what lies clear of the middle; ``sense`` −1 leans against."""
        rows, out, value, inside = self._along(length, slant, sense)
        inside = inside & (np.abs(out) > _CROSSING)
        if inside.sum() < 20:
            return 0.0
        weights = np.where(inside, self.weights[:, None] / self.grain[rows], 0.0)
        return float((weights * value).sum() / ((weights**2).sum()) ** 0.5)

    def _along(
        self, length: float, slant: float, sense: float
    ) -> tuple[NDArray[np.intp], Floats, Floats, NDArray[np.bool_]]:
        """Rows; and (n, rows) distance from the middle, detail there, whether in the picture."""
        top = self.y - length
        rows = np.arange(max(int(np.ceil(top + 1)), 0), self.detail.shape[1])
        # At the ends of the arc the bob stands higher: L cos θ below the support.
        drop = np.sqrt(np.maximum(length**2 - self.way**2, 1.0))
        out = sense * self.way[:, None] * (rows - top) / drop[:, None]
        x = self.x - slant * (self.y - rows) + out
        widest = self.detail.shape[2] - 1
        low = np.clip(np.floor(x).astype(int), 0, widest - 1)
        part, n = x - low, np.arange(self.way.size)[:, None]
        value = (1 - part) * self.detail[n, rows, low] + part * self.detail[n, rows, low + 1]
        return rows, out, value, (x >= 0) & (x <= widest)


def _lines(frames: NDArray[np.uint8], fine: Track, swing: Swing, bottom: int) -> _Lines:
    """Mean pictures of the rows above ``bottom``, by how far out the bob is."""
    inside = np.flatnonzero((fine.times_s >= swing.start_s) & (fine.times_s <= swing.end_s))
    times = fine.times_s[inside]
    sense = float(np.sign(fine.arc.reach_x))
    out = sense * swing.envelope_at(times) * np.cos(swing.phase_at(times))
    edges = np.linspace(out.min(), out.max(), int(np.clip(2 * swing.amplitude, 10, _MOST_BINS)))
    which = np.clip(np.digitize(out, edges) - 1, 0, edges.size - 2)
    bins = [n for n in range(edges.size - 1) if np.sum(which == n) >= 3]
    way = np.array([out[which == n].mean() for n in bins])
    count = np.array([np.sum(which == n) for n in bins], dtype=float)
    weights = count / count.sum()
    detail = np.empty((len(bins), bottom, frames.shape[2]))
    for i, n in enumerate(bins):
        picture = frames[inside[which == n], :bottom].mean(axis=0)
        beside = ndimage.gaussian_filter1d(picture, _BESIDE, axis=1)
        detail[i] = ndimage.gaussian_filter1d(picture, _THIN, axis=1) - beside
    detail -= np.tensordot(weights, detail, axes=1)
    # Edges of somebody who walks by must not outweigh all the rest.
    usual = 1.4826 * float(np.median(np.abs(detail)))
    most = max(5 * usual, _MOST_DETAIL)
    detail = np.clip(detail, -most, most)
    grain = np.maximum(1.4826 * np.median(np.abs(detail), axis=(0, 2)), 0.3 + usual)
    # A line like a bell of twice the thread's width, against its own mean over the film.
    sizes = np.linspace(0, 1.1, 41)
    apart = sizes[:, None, None] * (way[:, None] - way[None, :])
    alike = np.exp(-(apart**2) / (4 * (2 * _THIN) ** 2))
    left = 1 - np.einsum("kij,i,j->k", alike, weights, weights)
    x = fine.arc.x + sense * swing.centre
    return _Lines(way, weights, detail / grain[:, None], grain, x, fine.arc.y, sizes, left)
