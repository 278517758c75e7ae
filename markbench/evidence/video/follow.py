"""From a place that swings to the bob's signed position in every frame.

1. The first moment of the grey levels about the place's middle is, for a bob on an even
   wall, exactly linear in its displacement, however small that is. It gives the phase.
2. Pictures averaged at equal phase show bob and arc clear of noise. A disc that moves to
   and fro is fitted to them: where the arc lies, how far it reaches, how large the bob is.
3. The wall behind is averaged over the frames in which the disc is elsewhere; in each
   frame the bob's centre is the centroid of what differs from that wall. First anywhere on
   the arc, then (:func:`refine`) only near where the fitted swing says it must be.

Rejected: brightness of single cells (sees twice the frequency), a median background
(contains the bob where the swing is smaller than the bob), correlation with a template
(a ball has no texture to hold on to).
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace

import numpy as np
from numpy.typing import NDArray
from scipy import ndimage
from scipy.optimize import least_squares

from markbench.evidence.video.oscillation import Swing, best_period
from markbench.evidence.video.search import (
    CELL,
    LONGEST_PERIOD_S,
    SHORTEST_PERIOD_S,
    Cells,
    Place,
)

Floats = NDArray[np.float64]
# Pictures of half a swing: enough of them that the bob moves by about its radius in between.
_BINS, _BINS_PER_WIDTH, _MOST_BINS = 8, 2.6, 32
_THRESHOLD = 2.5
_AT_ONCE = 64
# Below this share of the moment's variance a period is not even tried.
_LEAST_SHARE = 0.06
# Pixels: places nearer than this are one; a bob begins no larger than a tenth of the picture.
_APART, _LARGEST_GUESS = 6.0, 12.0


@dataclass(frozen=True, slots=True)
class Arc:
    """A disc's path in pixels: middle (x, y), reach (x, y) to one end, radius, sag at the ends.

    ``contrast`` in grey levels of the disc against the wall; ``fit`` the share explained.
    """

    x: float
    y: float
    reach_x: float
    reach_y: float
    radius: float
    sag: float
    contrast: float
    fit: float

    @property
    def reach(self) -> float:
        """Distance in pixels from the middle to one end."""
        return float(np.hypot(self.reach_x, self.reach_y))

    def at(self, u: Floats) -> tuple[Floats, Floats]:
        """Pixel positions for displacements ``u`` in units of the reach."""
        lift = self.sag * u**2 / max(self.reach, 1e-9)
        return (
            self.x + u * self.reach_x + lift * self.reach_y,
            self.y + u * self.reach_y - lift * self.reach_x,
        )


@dataclass(frozen=True, slots=True, eq=False)
class Track:
    """The bob frame by frame: ``along`` and ``across`` the arc in pixels, nan where unseen.

    ``wall`` is the picture without bob (within ``box``: rows, columns), ``noise`` its grain.
    """

    times_s: Floats
    along: Floats
    across: Floats
    arc: Arc
    period_s: float
    wall: Floats
    box: tuple[slice, slice]
    noise: float


def seeds(cells: Cells, place: Place) -> list[tuple[float, float]]:
    """Periods and phases (radians at 0 s) to begin with, from the moment about the middle.

    The moment is taken along the direction in which it swings most. Its own best period
    comes first, then, where that differs, the best near the period of the cells.
    """
    chosen = (cells.times_s >= place.window_s[0]) & (cells.times_s <= place.window_s[1])
    times = cells.times_s[chosen]
    mask = ndimage.binary_dilation(place.mask)
    rows, columns = np.nonzero(mask)
    levels = cells.levels[chosen][:, rows, columns].astype(float)
    levels -= levels.mean(axis=0)
    moments = np.stack([levels @ (columns - columns.mean()), levels @ (rows - rows.mean())])
    weights = np.linalg.svd(moments - moments.mean(axis=1, keepdims=True), full_matrices=False)[0]
    moment = weights[:, 0] @ moments
    longest = min(LONGEST_PERIOD_S, (times[-1] - times[0]) / 2.2)
    found: list[tuple[float, float]] = []
    for low, high in (
        (SHORTEST_PERIOD_S, longest),
        (0.94 * place.period_s, 1.06 * place.period_s),
    ):
        period, share = best_period(times, moment, low, high)
        if share < _LEAST_SHARE or any(abs(period / known - 1) < 0.05 for known, _ in found):
            continue
        angle = 2 * np.pi * times / period
        design = np.stack([np.cos(angle), np.sin(angle), np.ones_like(times)], axis=1)
        fit = np.linalg.lstsq(design, moment, rcond=None)[0]
        found.append((period, float(np.arctan2(-fit[1], fit[0]))))
    return found


def find_arc(
    frames: NDArray[np.uint8], times_s: Floats, place: Place, period_s: float, phase: float
) -> Arc | None:
    """Fit the moving disc to pictures averaged at equal phase within the place's window."""
    rows, columns = np.nonzero(place.mask)
    h, w = frames.shape[1:]
    pad = 3 * CELL
    top, bottom = max(rows.min() * CELL - pad, 0), min((rows.max() + 1) * CELL + pad, h)
    left, right = max(columns.min() * CELL - pad, 0), min((columns.max() + 1) * CELL + pad, w)
    chosen = np.flatnonzero((times_s >= place.window_s[0]) & (times_s <= place.window_s[1]))
    # There and back the bob passes the same points: phase folded to half a swing.
    u = np.cos(2 * np.pi * times_s[chosen] / period_s + phase)
    box = frames[:, top:bottom, left:right]
    mean = _folded(box, chosen, u, _BINS)
    if mean is None:
        return None
    folded, u_mean = mean
    ends = ndimage.gaussian_filter(folded[:2].mean(axis=0) - folded[-2:].mean(axis=0), 1.5)
    yy, xx = np.mgrid[top:bottom, left:right].astype(float)
    area = float(np.sum(np.abs(ends) > 0.5 * np.abs(ends).max())) / 2
    radius = float(np.clip((area / np.pi) ** 0.5, 1.5, _LARGEST_GUESS))
    # Dark or bright bob, and which end is which, cannot be told beforehand; and a shadow
    # beside a pale bob may be the darkest thing that moves.
    guesses = []
    for one in _tops(ends, xx, yy):
        for other in _tops(-ends, xx, yy):
            if np.hypot(*(one - other)) > 2.0:
                for reach in ((one - other) / 2, (other - one) / 2):
                    guesses.append(_arc(np.array([*((one + other) / 2), *reach, radius, 0.0])))
    if not guesses:
        return None
    # In a wide swing the bob must not be smeared over several of its widths.
    wide = guesses[0].reach / guesses[0].radius
    bins = min(int(np.ceil(_BINS_PER_WIDTH * wide)), _MOST_BINS, chosen.size // 6)
    if bins > 1.5 * _BINS and (finer := _folded(box, chosen, u, bins)) is not None:
        folded, u_mean = finer
    guesses.sort(key=lambda guess: -_weight(_fit_disc(folded, xx, yy, u_mean, guess, 0)))
    best = max((_fit_disc(folded, xx, yy, u_mean, guess, 8) for guess in guesses[:4]), key=_weight)
    return _fit_disc(folded, xx, yy, u_mean, best, 25) if best.fit > 0.2 else best


def _folded(
    box: NDArray[np.uint8], chosen: NDArray[np.intp], u: Floats, bins: int
) -> tuple[Floats, Floats] | None:
    """Mean pictures of the ``chosen`` frames at equal phase, less their mean, and their ``u``."""
    which = np.minimum((np.arccos(u) / np.pi * bins).astype(int), bins - 1)
    there = np.unique(which)
    if there.size < min(bins, max(_BINS, bins - 4)):
        return None
    folded = np.stack([box[chosen[which == k]].mean(axis=0, dtype=np.float64) for k in there])
    folded -= folded.mean(axis=0)
    return folded, np.array([u[which == k].mean() for k in there])


def _weight(arc: Arc) -> float:
    """Of several arcs the bob's is that of the largest, clearest disc, not the thread's."""
    return arc.fit * abs(arc.contrast) * arc.radius * min(arc.reach, 2 * arc.radius)


def _tops(picture: Floats, xx: Floats, yy: Floats) -> list[Floats]:
    """Up to three of the highest places of ``picture``, apart from one another, as (x, y)."""
    left, found = picture.copy(), []
    for _ in range(3):
        k = int(np.argmax(left))
        if left.flat[k] <= 0.3 * picture.max() or left.flat[k] <= 0:
            break
        at = np.array([xx.flat[k], yy.flat[k]])
        found.append(at)
        left[np.hypot(xx - at[0], yy - at[1]) < _APART] = 0
    return found


def _fit_disc(folded: Floats, xx: Floats, yy: Floats, u: Floats, guess: Arc, rounds: int) -> Arc:
    """Least squares of a disc at ``u`` (bins,) against ``folded`` (bins, rows, columns)."""
    edge = 1.5 * guess.reach + 2 * guess.radius + 6
    # Only what the disc sweeps: the thread above moves too, and may outweigh a pale bob.
    ends = np.stack(guess.at(np.linspace(-1.2, 1.2, 9)), axis=1)
    away = np.min([(xx - x) ** 2 + (yy - y) ** 2 for x, y in ends], axis=0)
    beside = guess.radius + 5 + 0.15 * guess.reach
    used = np.flatnonzero(away.ravel() <= beside**2)
    # Some hundreds of pixels say all there is to say.
    used = used[:: max(1, used.size // 700)]
    pictures, px, py = folded.reshape(len(folded), -1)[:, used], xx.flat[used], yy.flat[used]
    power = max(float(np.sum(pictures**2)), 1e-9)

    def shape(p: Floats) -> Floats:
        bx, by = _arc(p).at(u)
        away = np.hypot(px - bx[:, None], py - by[:, None])
        # An edge three pixels soft: sharp ones are hard to climb.
        disc = np.clip((p[4] - away) / 3.0 + 0.5, 0, 1)
        return np.asarray(disc - disc.mean(axis=0))

    def contrast(disc: Floats) -> float:
        return float(np.sum(disc * pictures) / max(float(np.sum(disc**2)), 1e-9))

    def residual(p: Floats) -> Floats:
        disc = shape(p)
        return np.asarray((pictures - contrast(disc) * disc).ravel() / power**0.5)

    def slopes(p: Floats) -> Floats:
        # Of the residual by each number, what the contrast takes up left out (Kaufman 1975).
        arc, disc = _arc(p), shape(p)
        bx, by = arc.at(u)
        dx, dy = px - bx[:, None], py - by[:, None]
        away = np.maximum(np.hypot(dx, dy), 1e-6)
        edge = (np.abs((p[4] - away) / 3.0) < 0.5) / 3.0
        to_x, to_y = edge * dx / away, edge * dy / away
        square, lift = max(arc.reach, 1e-9) ** 2, arc.sag * u**2 / max(arc.reach, 1e-9)
        rx, ry, bow = arc.reach_x, arc.reach_y, u**2 / square**0.5
        moves = (
            (u - lift * rx * ry / square, lift * (rx**2 / square - 1)),
            (lift * (1 - ry**2 / square), u + lift * rx * ry / square),
            (bow * ry, -bow * rx),
        )
        rest = [to_x * mx[:, None] + to_y * my[:, None] for mx, my in moves]
        each = np.stack([to_x, to_y, rest[0], rest[1], edge, rest[2]], axis=-1)
        each = (each - each.mean(axis=0)).reshape(-1, 6)
        flat = disc.ravel()
        each -= np.outer(flat, flat @ each / max(float(flat @ flat), 1e-9))
        return np.asarray(each * (-contrast(disc) / power**0.5))

    start = np.array([guess.x, guess.y, guess.reach_x, guess.reach_y, guess.radius, guess.sag])
    room = np.array([edge, edge, edge, edge, 0.0, 0.35 * edge])
    if rounds == 0:
        return replace(guess, fit=1 - float(np.sum(residual(start) ** 2)))
    low, high = start - room, start + room
    low[4], high[4] = 0.8, max(2.5 * guess.radius, 6.0)
    result = least_squares(residual, start, slopes, bounds=(low, high), max_nfev=rounds, xtol=1e-3)
    return replace(
        _arc(result.x), contrast=contrast(shape(result.x)), fit=1 - 2 * float(result.cost)
    )


def _arc(p: Floats) -> Arc:
    x, y, reach_x, reach_y, radius, sag = (float(value) for value in p)
    return Arc(x, y, reach_x, reach_y, radius, sag, 0.0, 0.0)


def track(
    frames: NDArray[np.uint8],
    times_s: Floats,
    arc: Arc,
    period_s: float,
    phase: float,
    window_s: tuple[float, float],
) -> Track:
    """The centroid of what differs from the wall anywhere on the arc, within the window.

    :func:`everywhere` then gives the other frames.
    """
    h, w = frames.shape[1:]
    edge = arc.radius + 6
    # Before the window the swing may have been half as wide again.
    ends_x, ends_y = arc.at(np.linspace(-1.5, 1.5, 13))
    box = (
        slice(max(int(ends_y.min() - edge), 0), min(int(ends_y.max() + edge) + 1, h)),
        slice(max(int(ends_x.min() - edge), 0), min(int(ends_x.max() + edge) + 1, w)),
    )
    chosen = np.flatnonzero((times_s >= window_s[0]) & (times_s <= window_s[1]))
    u = np.cos(2 * np.pi * times_s[chosen] / period_s + phase)
    wall, noise = _wall(frames, box, chosen, *arc.at(u), arc.radius)
    blank = np.full(times_s.size, np.nan)
    empty = Track(times_s, blank, blank, arc, period_s, wall, box, noise)
    return _centroids(frames, empty, chosen, lambda _: _swept(empty))


def everywhere(frames: NDArray[np.uint8], rough: Track) -> Track:
    """``rough`` carried through the whole film."""
    return _centroids(frames, rough, np.arange(rough.times_s.size), lambda _: _swept(rough))


def _swept(track: Track) -> NDArray[np.bool_]:
    arc = track.arc
    yy, xx = _grid(track.box)
    ends_x, ends_y = arc.at(np.linspace(-1.5, 1.5, 13))
    away = np.min([np.hypot(xx - x, yy - y) for x, y in zip(ends_x, ends_y, strict=True)], axis=0)
    return np.asarray(away <= max(arc.radius + 2, 0.13 * arc.reach + arc.radius))


def refine(frames: NDArray[np.uint8], track: Track, swing: Swing) -> Track:
    """The same with a better wall and looking only where ``swing`` puts the bob."""
    times = track.times_s
    inside = np.flatnonzero((times >= swing.start_s) & (times <= swing.end_s))
    # No more frames than needed for a quiet wall.
    inside = inside[:: max(1, inside.size // 400)]
    arc = track.arc
    bx, by = arc.at(swing.position_at(times) / arc.reach)
    wall, noise = _wall(frames, track.box, inside, bx[inside], by[inside], arc.radius)
    yy, xx = _grid(track.box)
    # Wide enough for the phase to be a tenth of a swing out, or a loose string.
    gate = arc.radius * 1.3 + 3 + 0.15 * float(swing.amplitude)

    def near(part: NDArray[np.intp]) -> NDArray[np.bool_]:
        x, y = bx[part, None, None], by[part, None, None]
        return np.asarray((xx - x) ** 2 + (yy - y) ** 2 <= gate**2)

    reach = np.array([swing.start_s - 1.5 * swing.period_s, swing.end_s + 1.5 * swing.period_s])
    low, high = np.searchsorted(times, reach)
    better = replace(track, wall=wall, noise=noise)
    return _centroids(frames, better, np.arange(low, high), near)


def _grid(box: tuple[slice, slice]) -> tuple[Floats, Floats]:
    yy, xx = np.mgrid[box].astype(float)
    return yy, xx


def _wall(
    frames: NDArray[np.uint8],
    box: tuple[slice, slice],
    chosen: NDArray[np.intp],
    bx: Floats,
    by: Floats,
    radius: float,
) -> tuple[Floats, float]:
    """Mean picture of the ``chosen`` frames without the disc at (bx, by); grain of a frame."""
    yy, xx = _grid(box)
    total, count = np.zeros(yy.shape), np.zeros(yy.shape)
    for i, x, y in zip(chosen, bx, by, strict=True):
        clear = np.hypot(xx - x, yy - y) > radius + 2.0
        total += clear * frames[i][box]
        count += clear
    seen = count >= min(5, max(1, chosen.size // 8))
    if not seen.any():
        seen = count >= count.max()
    # Where the bob never leaves, the wall is taken to be as nearest beside it.
    nearest = ndimage.distance_transform_edt(~seen, return_distances=False, return_indices=True)
    wall = (total / np.maximum(count, 1))[tuple(nearest)]
    grains = []
    for i, x, y in list(zip(chosen, bx, by, strict=True))[:: max(1, chosen.size // 40)]:
        clear = (np.hypot(xx - x, yy - y) > radius + 3.0) & seen
        if clear.sum() > 20:
            grain = np.abs(_smooth(frames[i][box] - wall)[clear])
            grains.append(float(np.median(grain)) * 1.4826)
    return wall, max(float(np.median(grains)) if grains else 1.0, 0.5)


def _smooth(difference: Floats) -> Floats:
    return np.asarray(ndimage.uniform_filter(difference, 3, mode="nearest"))


def _centroids(
    frames: NDArray[np.uint8],
    track: Track,
    chosen: NDArray[np.intp],
    where: Callable[[NDArray[np.intp]], NDArray[np.bool_]],
) -> Track:
    """Centroids in the ``chosen`` frames of what differs from the wall inside ``where``."""
    arc, box = track.arc, track.box
    yy, xx = _grid(box)
    along, across = np.full(track.times_s.size, np.nan), np.full(track.times_s.size, np.nan)
    ex, ey = arc.reach_x / arc.reach, arc.reach_y / arc.reach
    floor = max(_THRESHOLD * track.noise, 0.1 * abs(arc.contrast))
    least = 0.15 * np.pi * arc.radius**2 * max(abs(arc.contrast) - floor, 1.0)
    wall = track.wall.astype(np.float32)
    for begin in range(0, chosen.size, _AT_ONCE):
        part = chosen[begin : begin + _AT_ONCE]
        difference = frames[part][:, box[0], box[1]] - wall
        difference = ndimage.uniform_filter(difference, (1, 3, 3), mode="nearest")
        weight = np.maximum(np.abs(difference) - np.float32(floor), 0) * where(part)
        for i, one in zip(part, weight, strict=True):
            mass = float(one.sum())
            if mass < least:
                continue
            x = float(one.sum(axis=0) @ xx[0]) / mass
            y = float(one.sum(axis=1) @ yy[:, 0]) / mass
            # Once more round the centroid itself, so that the mask does not pull.
            one = one * ((xx - x) ** 2 + (yy - y) ** 2 <= (arc.radius * 1.5 + 3) ** 2)
            mass = float(one.sum())
            if mass < least:
                continue
            x = float(one.sum(axis=0) @ xx[0]) / mass - arc.x
            y = float(one.sum(axis=1) @ yy[:, 0]) / mass - arc.y
            along[i], across[i] = x * ex + y * ey, -x * ey + y * ex
    return replace(track, along=along, across=across)
