"""The stretch of film in which the bob swings freely, and whether it was cut.

A pendulum keeps step with itself. Where the positions agree with one swing for a while,
and agree again later but out of step, time is missing: the film was cut. Where they
disagree for a moment and then agree in step, somebody walked past.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from markbench.evidence.video.follow import Track
from markbench.evidence.video.oscillation import Swing, fit_swing, local_agreement

Floats = NDArray[np.float64]
_AGREES = 0.6
# A tenth of a radian is a sixtieth of a swing: far above the phase noise of a swing, and
# the smallest step that still is worth a question.
_LEAST_STEP = 0.12
_OUT_OF_STEP = 0.5
# The bob is where it should be to this share of the amplitude; to more where it scatters; at
# first sight to half of it.
_NEAR, _AT_MOST, _FAR = 0.22, 0.4, 0.5


@dataclass(frozen=True, slots=True)
class Stretch:
    """From where to where the bob swings; ``cut`` when time is missing in between."""

    start_s: float
    end_s: float
    cut: bool = False


def find_stretch(rough: Track, swing: Swing) -> Stretch:
    """Grow from the window of ``swing`` as far as the positions keep its period and step."""
    times, period = rough.times_s, swing.period_s
    seen = np.isfinite(rough.along)
    filled = np.where(seen, rough.along, 0.0)
    share, amplitude, _ = local_agreement(times, filled, seen.astype(float), period)
    agrees = (share > _AGREES) & (amplitude > 0.2 * swing.amplitude)
    runs = [run for run in _runs(agrees) if times[run[1]] - times[run[0]] > 0.3 * period]
    if not runs:
        return Stretch(swing.start_s, swing.end_s)
    middle = [max(0.0, min(times[b], swing.end_s) - max(times[a], swing.start_s)) for a, b in runs]
    home = int(np.argmax(middle))
    low, high = runs[home]
    cut = False
    for order in (range(home - 1, -1, -1), range(home + 1, len(runs))):
        for k in order:
            first, last = runs[k]
            fitted = fit_swing(times[low : high + 1], rough.along[low : high + 1], period)
            if fitted is None:
                break
            part = slice(first, last + 1)
            span = float(times[last] - times[first])
            there = times[part][seen[part]]
            if there.size < 8:
                continue
            step, sure = _step(there, rough.along[part][seen[part]], fitted)
            if abs(step) < _OUT_OF_STEP:
                low, high = min(low, first), max(high, last)
            elif span > 0.9 * period and sure > 0.8:
                cut = True
    return Stretch(float(times[low]), float(times[high]), cut)


def _step(times: Floats, x: Floats, swing: Swing) -> tuple[float, float]:
    """Phase of ``x`` ahead of ``swing``'s (radians, −π to π) and the share explained."""
    phase = swing.phase_at(times)
    design = np.stack([np.ones_like(phase), np.cos(phase), np.sin(phase)], axis=1)
    solution = np.linalg.lstsq(design, x, rcond=None)[0]
    left = float(np.var(x - design @ solution))
    ahead = float(np.arctan2(-solution[2], solution[1]))
    return ahead, 1 - left / max(float(np.var(x)), 1e-9)


def trim(fine: Track, swing: Swing, rough: Track) -> Stretch:
    """The frames at both ends up to which the bob is where ``swing`` says, to a frame.

    ``fine`` was looked for only where ``swing`` puts it: what an unsteady camera leaves of the
    room agrees there with any swing. ``rough``, looked for everywhere, must not be far from it.
    """
    times, period = fine.times_s, swing.period_s
    size, meant = swing.envelope_at(times), swing.position_at(times)
    off, roughly = np.abs(fine.along - meant), np.abs(rough.along - meant)
    allowed = np.maximum(_NEAR * size, np.minimum(4 * swing.scatter, _AT_MOST * size))
    agrees = np.where(np.isfinite(off), off < allowed, np.nan)
    inside = np.flatnonzero((times >= swing.start_s) & (times <= swing.end_s))
    low, high = int(inside[0]), int(inside[-1])
    # Shrink to where it holds, then grow; somebody walking past may hide a swing of it.
    width = 0.2 * period
    while low < high and _share(agrees, times, times[low], times[low] + width) < 0.7:
        low += 1
    while high > low and _share(agrees, times, times[high] - width, times[high]) < 0.7:
        high -= 1
    agrees[roughly > _FAR * size] = 0
    for i in range(low - 1, -1, -1):
        gap = times[low] - times[i]
        if gap > period:
            break
        if agrees[i] == 1 and _resumes(agrees, times, times[i], 1, gap, period):
            low = i
    for i in range(high + 1, times.size):
        gap = times[i] - times[high]
        if gap > period:
            break
        if agrees[i] == 1 and _resumes(agrees, times, times[i], -1, gap, period):
            high = i
    return Stretch(float(times[low]), float(times[high]))


def cut_within(fine: Track, swing: Swing) -> bool:
    """Whether the phase takes a step somewhere inside the fitted stretch.

    Local phases, one each 0.6 of a swing, are fitted by a parabola with and without a
    step at each place in turn.
    """
    times = fine.times_s
    within = (times >= swing.start_s) & (times <= swing.end_s) & np.isfinite(fine.along)
    t, x = times[within], (fine.along - swing.position_at(times))[within]
    edges = np.arange(t[0], t[-1], 0.6 * swing.period_s)
    centres, ahead = [], []
    for start in edges:
        part = (t >= start) & (t < start + 0.6 * swing.period_s)
        if part.sum() < 5:
            continue
        phase, size = swing.phase_at(t[part]), swing.envelope_at(t[part])
        # x − A·cos φ ≈ −A·sin φ·Δφ for a small step ahead.
        slope = -size * np.sin(phase)
        centres.append(float(np.mean(t[part])))
        ahead.append(float(np.sum(slope * x[part]) / max(float(np.sum(slope**2)), 1e-9)))
    when, lead = np.array(centres), np.array(ahead)
    if when.size < 7:
        return False
    clock = (when - when.mean()) / np.ptp(when)
    smooth = np.stack([clock**k for k in range(3)], axis=1)
    for k in range(2, when.size - 1):
        design = np.concatenate([smooth, (np.arange(when.size) >= k)[:, None]], axis=1)
        solution, _, rank, _ = np.linalg.lstsq(design, lead, rcond=None)
        if rank < 4:
            continue
        residual = lead - design @ solution
        spread = float(np.sqrt(residual @ residual / max(when.size - 4, 1)))
        u = spread * float(np.sqrt(np.linalg.inv(design.T @ design)[3, 3]))
        if abs(solution[3]) > max(_LEAST_STEP, 6 * u):
            return True
    return False


def _resumes(
    agrees: Floats, times: Floats, at_s: float, towards: int, gap_s: float, period: float
) -> bool:
    """Whether the bob is in step again at ``at_s``, beyond a gap.

    A bob held at one end agrees for a fifth of every swing: past a real gap it must agree
    for most of a swing on the far side.
    """
    if gap_s < 0.12 * period:
        inward = sorted((at_s, at_s + towards * 0.2 * period))
        return _share(agrees, times, *inward) >= 0.7
    outward = sorted((at_s, at_s - towards * 0.75 * period))
    reaches = times[0] <= outward[0] and outward[1] <= times[-1]
    return reaches and _share(agrees, times, *outward) >= 0.8


def _runs(flags: NDArray[np.bool_]) -> list[tuple[int, int]]:
    padded = np.concatenate([[False], flags, [False]]).astype(int)
    steps = np.diff(padded)
    return list(zip(np.flatnonzero(steps == 1), np.flatnonzero(steps == -1) - 1, strict=True))


def _share(agrees: Floats, times: Floats, low_s: float, high_s: float) -> float:
    """Share of the frames where the bob was seen that agree; 0 where it was hardly seen."""
    low, high = np.searchsorted(times, [low_s - 1e-9, high_s + 1e-9])
    seen = agrees[low:high][np.isfinite(agrees[low:high])]
    return float(seen.mean()) if seen.size > 0.25 * (high - low) else 0.0
