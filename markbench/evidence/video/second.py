"""Whether a second thing swings in the film beside the bob that was followed.

The first bob is painted over with the wall behind it. Of what is round and about its size in
what is left, frame by frame, it is asked whether it keeps time: a swing is sought that most
of it agrees with, at any period and place. A head, a hand and a person's outline move too,
but agree with no one swing for long. The second bob may be hidden for much of the time, so
only the times at which something is seen are counted, quarter swing by quarter swing.

Two bobs whose ways cross may besides pass for one; see :func:`out_of_step`.
"""

from __future__ import annotations

from dataclasses import dataclass, replace

import numpy as np
from numpy.typing import NDArray

from markbench.evidence.video.follow import Track
from markbench.evidence.video.oscillation import Swing
from markbench.evidence.video.rims import RoundThings, pool_of, round_things, roundness
from markbench.evidence.video.search import CELL, LONGEST_PERIOD_S, SHORTEST_PERIOD_S, Cells

Floats = NDArray[np.float64]
Way = tuple[Floats, Floats]

# One bob, even on a path opened to an ellipse of 0.4, stays below 0.4; two taken for one reach 1.
_OUT_OF_STEP = 0.6
# Functions of the displacement: 1, cos φ … cos 6φ, each allowed to die away with the swing.
_ORDERS = 6
_MOST_S = 20.0
_FRAMES_A_S = 15.0
# As clear as this share of the first bob, and, where there is much clutter, only clearer.
_CLEAR = (0.15, 0.3, 0.5)
# Nearer than this to the first bob, in radii, the painting over may leave its own rim.
_BESIDE = 1.5
# See Other.weight. Set on films used for building; how it does on others: DECISION-video.md.
_ENOUGH = 17.5
# From this share of the first bob's clearness on, what is clearer weighs more, at most so much.
_PALE, _MOST_CLEAR = 0.45, 1.0
_SHARE, _EXPLAINED, _LEAST_REACH, _MOST_REACH = 0.6, 0.93, 0.25, 4.0
# A swing is in the middle half of its way for a third of the time: cos 60° = 1/2.
_LEAST_BETWEEN = 0.1
# Correlation with the first bob's way: a quarter of a radian behind comes to 0.97.
_IN_STEP = 0.97
_OVERTONE, _OVERTONES, _NO_THREAD = 0.02, (0.5, 2, 3), 0.7
_TRIES, _LEAST_POINTS, _MOST_POINTS = 40, 10, 240


@dataclass(frozen=True, slots=True)
class Other:
    """A second swing: period, middle (x, y) and reach in pixels, and how much speaks for it.

    ``quarters``: quarter swings in which it was seen where it should be; ``share`` of the
    frames in which anything round was seen about its way; ``clear`` against the first bob;
    ``near``, in pixels, is how near its place it had to be seen. ``in_step`` with the first
    are its shadow and its image in a cupboard door; they do no harm. An ``overtone``, a half
    or a third of the first one's period or twice as long, is what a place beside the thread or
    the bob sees of them, never so clear as the bob itself.
    """

    period_s: float
    x: float
    y: float
    reach: float
    quarters: int
    share: float
    clear: float
    near: float
    in_step: bool
    overtone: bool

    @property
    def weight(self) -> float:
        """How much speaks for it: most where it is seen often, alone, clear, in a wide swing.

        Points strewn about its way at random agree with it, in a wide swing, the more seldom.
        """
        seldom = np.log1p(self.reach / self.near)
        clear = max(min(self.clear, _MOST_CLEAR) / _PALE, 1.0)
        return float(self.quarters * (2 * self.share - 1) * seldom * clear)


@dataclass(frozen=True, slots=True, eq=False)
class _First:
    """The bob that was followed: ``x`` (n,) in pixels at ``times_s`` (n,), radius and reach.

    ``size`` (n,) is its amplitude against that in the middle; another dies away about as fast.
    """

    times_s: Floats
    x: Floats
    size: Floats
    radius: float
    reach: float
    period_s: float

    @property
    def span_s(self) -> float:
        return float(self.times_s[-1] - self.times_s[0])

    @property
    def near(self) -> float:
        """How many pixels from its place another may be seen."""
        return 2.0 + 0.1 * self.radius


def second_bob(frames: NDArray[np.uint8], cells: Cells, first: Track, swing: Swing) -> bool:
    """Whether another bob swings, at another period or out of step with ``swing``."""
    if out_of_step(cells, first, swing) > _OUT_OF_STEP:
        return True
    return any(other.weight > _ENOUGH for other in others(frames, first, swing))


def others(frames: NDArray[np.uint8], first: Track, swing: Swing) -> list[Other]:
    """What besides the first bob keeps the time of some swing, the likeliest of each height."""
    half = _MOST_S / 2
    low = max(swing.start_s, swing.middle_s - half)
    high = min(swing.end_s, swing.middle_s + half)
    inside = np.flatnonzero((first.times_s >= low) & (first.times_s <= high))
    inside = inside[:: max(1, round(inside.size / (high - low) / _FRAMES_A_S))]
    if inside.size < _LEAST_POINTS:
        return []
    times = first.times_s[inside]
    meant, seen = _ways(first, swing, inside)
    own = _own_roundness(frames[inside], seen, first.arc.radius)
    painted = _painted_over(frames[inside], first, (meant, seen))
    things = round_things(painted, first.arc.radius, _CLEAR[0] * own)
    beside = np.min(
        [
            np.hypot(things.x - x[things.frame], things.y - y[things.frame])
            for x, y in (meant, seen)
        ],
        axis=0,
    )
    away = beside > _BESIDE * first.arc.radius + 2
    size = swing.envelope_at(times) / max(swing.amplitude, 1e-9)
    known = _First(times, seen[0], size, first.arc.radius, first.arc.reach, swing.period_s)
    found = []
    for clear in _CLEAR:
        kept = np.flatnonzero(away & (things.clear > clear * own))
        found += _by_height(things, kept, known, own)
    return found


def _ways(first: Track, swing: Swing, inside: NDArray[np.intp]) -> tuple[Way, Way]:
    """Where the first bob must have been in the frames ``inside``, and where it was seen.

    In a wide swing the arc, a parabola, leaves the bob at the ends; beside a second bob what
    was seen may be drawn towards that.
    """
    arc = first.arc
    x, y = arc.at(swing.position_at(first.times_s[inside]) / arc.reach)
    along, across = first.along[inside], first.across[inside]
    right, down = arc.reach_x / arc.reach, arc.reach_y / arc.reach
    there = np.isfinite(along)
    seen_x = np.where(there, arc.x + along * right - across * down, x)
    seen_y = np.where(there, arc.y + along * down + across * right, y)
    return (x, y), (seen_x, seen_y)


def _own_roundness(frames: NDArray[np.uint8], way: Way, radius: float) -> float:
    """How round the first bob itself is, in the middle of some frames."""
    some = slice(None, None, max(1, len(frames) // 40))
    levels = roundness(frames[some], radius)
    h, w = levels.shape[1:]
    pool = pool_of(radius)
    seen = []
    for picture, at_x, at_y in zip(levels, way[0][some], way[1][some], strict=True):
        row = int(np.clip(at_y / pool, 1, h - 2))
        column = int(np.clip(at_x / pool, 1, w - 2))
        seen.append(float(picture[row - 1 : row + 2, column - 1 : column + 2].max()))
    return float(np.median(seen))


def _painted_over(
    frames: NDArray[np.uint8], first: Track, ways: tuple[Way, Way]
) -> NDArray[np.uint8]:
    """``frames`` with the wall in place of the first bob, wherever on ``ways`` it may be."""
    painted = frames.copy()
    yy, xx = np.mgrid[first.box].astype(np.float32)
    reach = first.arc.radius + 2.5
    wall = np.clip(first.wall + 0.5, 0, 255).astype(np.uint8)
    for way in ways:
        for picture, x, y in zip(painted, *way, strict=True):
            bob = (xx - x) ** 2 + (yy - y) ** 2 <= reach**2
            np.copyto(picture[first.box], wall, where=bob)
    return painted


def _by_height(
    things: RoundThings, kept: NDArray[np.intp], first: _First, own: float
) -> list[Other]:
    """The best swing among the ``kept`` things at each height in the picture."""
    found: list[Other] = []
    if kept.size == 0:
        return found
    y = things.y[kept]
    high = 2 + 0.5 * first.radius
    for middle in np.arange(y.min(), y.max() + high / 2, high):
        band = kept[np.abs(y - middle) <= high]
        laid = _best_swing(things.frame[band], things.x[band], first)
        clear = float(np.median(things.clear[band])) / own if band.size else 0.0
        other = None if laid is None else _seen(things, band, first, *laid)
        if other is None or other.in_step or (other.overtone and clear < _NO_THREAD):
            continue
        found.append(replace(other, y=float(middle), clear=clear))
    return found


def _best_swing(frame: NDArray[np.intp], x: Floats, first: _First) -> tuple[float, Floats] | None:
    """Frequency, and centre and two waves, of the swing that most of the points agree with.

    By random sample consensus (Fischler & Bolles 1981): a sinusoid of each period is laid
    through three points at a time.
    """
    if frame.size < _LEAST_POINTS:
        return None
    clock, size = first.times_s[frame] - first.times_s[0], first.size[frame]
    chance = np.random.default_rng(0)
    some = np.arange(frame.size)
    if some.size > _MOST_POINTS:
        some = np.sort(chance.choice(some.size, _MOST_POINTS, replace=False))
    triples = chance.integers(0, some.size, (_TRIES, 3))
    best, at = 0.0, None
    least = max(1.6 * first.near, _LEAST_REACH * first.reach)
    slowest = max(3 / first.span_s, 1 / LONGEST_PERIOD_S)
    for frequency in np.arange(slowest, 1 / SHORTEST_PERIOD_S, 0.25 / first.span_s):
        waves = _waves(clock[some], frequency, size[some])
        threes = waves[triples]
        firm = np.abs(np.linalg.det(threes)) > 0.3
        laid = np.linalg.solve(threes[firm], x[some][triples[firm]][..., None])[..., 0]
        reach = np.hypot(laid[:, 1], laid[:, 2])
        likely = (reach > least) & (reach < _MOST_REACH * first.reach)
        laid, reach = laid[likely], reach[likely]
        if reach.size == 0:
            continue
        agrees = np.abs(laid @ waves.T - x[some]) < first.near
        about = np.abs(x[some] - laid[:, :1]) < reach[:, None] + 2 * first.radius
        scores = agrees.sum(axis=1) - 0.5 * (about & ~agrees).sum(axis=1)
        if scores.max() > best:
            best, at = float(scores.max()), (float(frequency), laid[int(np.argmax(scores))])
    return at


def _seen(
    things: RoundThings, band: NDArray[np.intp], first: _First, frequency: float, laid: Floats
) -> Other | None:
    """The swing fitted to all points that agree with it, and how much of it was seen."""
    frame, x = things.frame[band], things.x[band]
    clock, size = first.times_s[frame] - first.times_s[0], first.size[frame]
    for _ in range(4):
        waves = _waves(clock, frequency, size)
        rest = x - waves @ laid
        agrees = np.abs(rest) < first.near
        if agrees.sum() < _LEAST_POINTS:
            return None
        by_frequency = 2 * np.pi * clock * (laid[2] * waves[:, 1] - laid[1] * waves[:, 2])
        by_decay = -(clock - first.span_s / 2) * (waves[:, 1:] @ laid[1:])
        design = np.column_stack([waves, by_frequency, by_decay])[agrees]
        step = np.linalg.lstsq(design, rest[agrees], rcond=None)[0]
        laid = laid + step[:3]
        frequency += float(np.clip(step[3], -0.1 / first.span_s, 0.1 / first.span_s))
        faster = float(np.clip(step[4], -0.5 / first.span_s, 0.5 / first.span_s))
        size = size * np.exp(-faster * (clock - first.span_s / 2))
    rest = x - _waves(clock, frequency, size) @ laid
    agrees = np.abs(rest) < first.near
    reach = float(np.hypot(laid[1], laid[2]))
    if agrees.sum() < _LEAST_POINTS or reach < _LEAST_REACH * first.reach:
        return None
    explained = 1 - float(np.var(rest[agrees])) / max(float(np.var(x[agrees])), 1e-9)
    about = np.abs(x - laid[0]) < reach + 2 * first.radius
    share = np.unique(frame[agrees]).size / max(np.unique(frame[about]).size, 1)
    if explained < _EXPLAINED or share < _SHARE:
        return None
    # Two knobs of a cupboard that come and go by turns agree with a swing; nothing passes between.
    if np.mean(np.abs(x - laid[0])[agrees] < reach / 2) < _LEAST_BETWEEN:
        return None
    way = _waves(first.times_s - first.times_s[0], frequency, first.size) @ laid
    return Other(
        period_s=1 / frequency,
        x=float(laid[0]),
        y=float("nan"),
        reach=reach,
        quarters=np.unique(np.floor(4 * frequency * clock[agrees])).size,
        share=share,
        clear=0.0,
        near=first.near,
        in_step=float(np.corrcoef(way, first.x)[0, 1]) > _IN_STEP,
        overtone=min(abs(frequency * first.period_s / k - 1) for k in _OVERTONES) < _OVERTONE,
    )


def _waves(clock: Floats, frequency: float, size: Floats) -> Floats:
    angle = 2 * np.pi * frequency * clock
    return np.stack([np.ones_like(angle), size * np.cos(angle), size * np.sin(angle)], axis=1)


def out_of_step(cells: Cells, first: Track, swing: Swing) -> float:
    """Variance on the bob's way that its displacement does not account for, over that it does.

    Whatever is tied to the bob (its thread, its shadow, the light it takes) is a function of
    its displacement, cos φ. Counted is what keeps the swing's period, or twice it, and is none:
    hardly any for one bob, as much again for two whose ways cross (which may even pass for
    one of half the period). A path opened to an ellipse gives little.
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
