"""Whether a second thing swings in the film beside the bob that was followed.

Whatever is tied to the bob (its thread, its shadow, the light it takes) is a function of its
displacement u = cos φ. So all functions of u are taken out of every cell, and the bob itself
is painted over with the wall behind it; what then still swings, swings by itself: at a
period of its own, or at the same one out of step. A bob half before the first, or one of
the same length let go a moment later, stays visible that way.
"""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray
from scipy import stats

from markbench.evidence.video.follow import Arc, Track, find_arc, seeds
from markbench.evidence.video.oscillation import Swing
from markbench.evidence.video.search import CELL, Cells, Place, places

Floats = NDArray[np.float64]

# The disc must explain this share of its mean pictures; a person hides part of it at times.
_FITS = 0.35
# Its size and reach against the first bob's, and its contrast, or three grey levels.
_SIZES, _LEAST_REACH, _LEAST_CONTRAST = (0.4, 2.2), 0.25, 0.15
# What such a disc leaves in grey levels in a cell that it covers for a fifth of the time.
_LEAST_CHANGE = 1.0
# Chance that a sway shows so even a contrast; some tens of arcs are tried in each film.
_BY_CHANCE = 1e-4
# One bob, even on a path opened to an ellipse, stays below 0.1; two taken for one reach 1.
_OUT_OF_STEP = 0.3
# Longer than a person's sway passes for a swing.
_LASTS_S = 8.0
_MOST_S = 20.0
# Functions of the displacement: 1, cos φ … cos 6φ, each allowed to die away with the swing.
_ORDERS = 6


def second_bob(frames: NDArray[np.uint8], cells: Cells, first: Track, swing: Swing) -> bool:
    """Whether another bob swings, at another period or out of step with ``swing``."""
    if out_of_step(cells, first, swing) > _OUT_OF_STEP:
        return True
    half = _MOST_S / 2
    low = max(swing.start_s, swing.middle_s - half)
    high = min(swing.end_s, swing.middle_s + half)
    inside = np.flatnonzero((first.times_s >= low) & (first.times_s <= high))
    rest = _untied(cells, first, swing, low, high)
    painted: NDArray[np.uint8] | None = None
    for place in places(rest, most=4):
        if place.window_s[1] - place.window_s[0] < 0.9 * min(_LASTS_S, high - low):
            break
        if float(rest.levels[:, place.mask].std(axis=0).max()) < _LEAST_CHANGE:
            continue
        if painted is None:
            painted = _painted_over(frames, first, swing, inside)
        within = slice(*np.searchsorted(first.times_s[inside], place.window_s))
        part, times = painted[within], first.times_s[inside][within]
        for period, phase in _beginnings(rest, place):
            arc = find_arc(part, times, place, period, phase)
            if (
                arc is not None
                and _like_a_bob(arc, first.arc)
                and not _tied(arc, period, phase, first, swing, float(np.mean(times)))
                and _even(passages(part, times, arc, period, phase))
            ):
                return True
    return False


def out_of_step(cells: Cells, first: Track, swing: Swing) -> float:
    """Variance on the bob's way that its displacement does not account for, over that it does.

    Counted is what keeps the swing's period, or twice it, and is no function of cos φ: hardly
    any for one bob, as much again for two whose ways cross (which may even pass for one of
    half the period). A path opened to an ellipse gives little.
    """
    chosen = (cells.times_s >= swing.start_s) & (cells.times_s <= swing.end_s)
    levels = cells.levels[chosen]
    yy, xx = (np.mgrid[: levels.shape[1], : levels.shape[2]] + 0.5) * CELL
    x, y = first.arc.at(np.linspace(-1, 1, 9))
    away = np.min([np.hypot(xx - a, yy - b) for a, b in zip(x, y, strict=True)], axis=0)
    signal = levels[:, away < first.arc.radius + CELL].astype(float)
    phase = swing.phase_at(cells.times_s[chosen])
    orders = np.arange(1, _ORDERS + 1)
    slow = np.stack([np.linspace(-1, 1, phase.size) ** k for k in range(3)], axis=1)
    tied = np.cos(np.outer(phase, orders))
    halves = np.outer(phase, orders - 0.5)
    free = np.concatenate([np.sin(np.outer(phase, orders)), np.cos(halves), np.sin(halves)], axis=1)
    design = np.concatenate([slow, tied, tied * slow[:, 1:2], free], axis=1)
    basis = np.linalg.qr(design)[0]
    power = np.sum((basis.T @ signal) ** 2, axis=1)
    split = 3 + 2 * _ORDERS
    return float(power[split:].sum() / max(float(power[3:split].sum()), 1e-9))


def _beginnings(cells: Cells, place: Place) -> list[tuple[float, float]]:
    """Periods and phases to begin with; that of the cells too, a sway may drown it."""
    found = seeds(cells, place)
    if all(abs(place.period_s / period - 1) > 0.03 for period, _ in found):
        found += [(place.period_s, 0.0), (place.period_s, np.pi / 2)]
    return found


def _like_a_bob(arc: Arc, first: Arc) -> bool:
    return (
        arc.fit > _FITS
        and _SIZES[0] < arc.radius / first.radius < _SIZES[1]
        and arc.reach > _LEAST_REACH * first.reach
        and abs(arc.contrast) > max(3.0, _LEAST_CONTRAST * abs(first.contrast))
    )


def _even(contrasts: Floats) -> bool:
    """Whether the contrast is the same time after time (Student's t against none at all)."""
    if contrasts.size < 5:
        return False
    spread = max(float(contrasts.std(ddof=1)), 1e-6) / contrasts.size**0.5
    t = abs(float(contrasts.mean())) / spread
    return bool(2 * stats.t.sf(t, contrasts.size - 1) < _BY_CHANCE)


def _tied(
    arc: Arc, period: float, phase: float, first: Track, swing: Swing, middle_s: float
) -> bool:
    """Whether it goes with the first: in step, or at a harmonic in the first one's own place."""
    own = np.hypot(arc.x - first.arc.x, arc.y - first.arc.y) < first.arc.radius
    ratio = swing.period_s / period
    if own and abs(ratio - round(ratio)) < 0.05 and round(ratio) > 1:
        return True
    if abs(ratio - 1) > 0.03:
        return abs(ratio - 2) < 0.04
    at = np.array([middle_s])
    behind = 2 * np.pi * middle_s / period + phase - float(swing.phase_at(at)[0])
    same_way = arc.reach_x * first.arc.reach_x + arc.reach_y * first.arc.reach_y > 0
    in_step = np.cos(behind) > 0 if same_way else np.cos(behind) < 0
    # A disc that hardly moves looks the same dark to the left or bright to the right.
    return bool(abs(np.sin(behind)) < 0.4 and (in_step or own or arc.reach < 0.7 * arc.radius))


def _untied(cells: Cells, first: Track, swing: Swing, low_s: float, high_s: float) -> Cells:
    """``cells`` between two times, less all that is a function of the displacement."""
    chosen = (cells.times_s >= low_s) & (cells.times_s <= high_s)
    times = cells.times_s[chosen]
    phase = swing.phase_at(times)
    clock = (times - times.mean()) / max(float(np.ptp(times)), 1e-9)
    waves = np.cos(np.outer(phase, np.arange(_ORDERS + 1)))
    design = np.concatenate([waves, waves * clock[:, None]], axis=1)
    basis = np.linalg.qr(design)[0].astype(np.float32)
    levels = cells.levels[chosen]
    # The bob's way and, above it, the thread's.
    yy, xx = (np.mgrid[: levels.shape[1], : levels.shape[2]] + 0.5) * CELL
    arc = first.arc
    reach = abs(arc.reach_x) + arc.radius + 1.5 * CELL
    near = (np.abs(xx - arc.x) < reach) & (
        yy < arc.y + arc.radius + abs(arc.reach_y) + abs(arc.sag) + 1.5 * CELL
    )
    flat = levels.reshape(times.size, -1)
    flat = np.where(near.ravel(), flat - basis @ (basis.T @ flat), flat)
    return Cells(flat.reshape(levels.shape), times, cells.noise)


def _painted_over(
    frames: NDArray[np.uint8], first: Track, swing: Swing, inside: NDArray[np.intp]
) -> NDArray[np.uint8]:
    """The frames ``inside`` with the wall in place of the first bob."""
    painted = frames[inside].copy()
    yy, xx = np.mgrid[first.box].astype(np.float32)
    x, y = first.arc.at(swing.position_at(first.times_s[inside]) / first.arc.reach)
    reach = first.arc.radius + 2.5
    wall = np.clip(first.wall + 0.5, 0, 255).astype(np.uint8)
    for picture, at_x, at_y in zip(painted, x, y, strict=True):
        bob = (xx - at_x) ** 2 + (yy - at_y) ** 2 <= reach**2
        np.copyto(picture[first.box], wall, where=bob)
    return painted


def passages(
    frames: NDArray[np.uint8], times_s: Floats, arc: Arc, period_s: float, phase: float
) -> Floats:
    """Contrast of the disc on ``arc`` in each passage, there or back, taken by itself.

    A bob shows the same contrast time after time; a person who sways shows now one, now the
    other, however well their mean picture looks like a disc on an arc.
    """
    h, w = frames.shape[1:]
    edge = arc.radius + 2
    ends_x, ends_y = arc.at(np.linspace(-1, 1, 9))
    top, bottom = max(int(ends_y.min() - edge), 0), min(int(ends_y.max() + edge) + 1, h)
    left, right = max(int(ends_x.min() - edge), 0), min(int(ends_x.max() + edge) + 1, w)
    if bottom - top < 2 or right - left < 2:
        return np.zeros(0)
    yy, xx = np.mgrid[top:bottom, left:right].astype(np.float32)
    turned = 2 * np.pi * times_s / period_s + phase
    number = np.floor(turned / np.pi).astype(int)
    found = []
    for k in range(number[0], number[-1] + 1):
        these = np.flatnonzero(number == k)
        if these.size < 5 or np.ptp(turned[these]) < 0.6 * np.pi:
            continue
        x, y = (p.astype(np.float32)[:, None, None] for p in arc.at(np.cos(turned[these])))
        disc = np.clip((arc.radius - np.hypot(xx - x, yy - y)) / 3 + 0.5, 0, 1)
        disc -= disc.mean(axis=0)
        part = frames[these, top:bottom, left:right].astype(np.float32)
        part -= part.mean(axis=0)
        found.append(float(np.sum(disc * part)) / max(float(np.sum(disc**2)), 1e-6))
    return np.array(found)
