"""The swing video measured, or refused with the reason; a period is never invented.

The order: decode, hold the room still, propose places, follow the bob, find the stretch
of film in which it swings, fit, count, and then look for everything that would make the
result worthless: a cut, a second bob, too few swings, a swing that explains too little.
Each threshold stands here with its reason. They were set on drawn films, some of them after
looking at films that failed; how they do on films not looked at: DECISION-video.md.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from pathlib import Path

import numpy as np
from numpy.typing import NDArray

from markbench.evidence.troubles import TROUBLES
from markbench.evidence.video.film import Film, FilmError, read_film
from markbench.evidence.video.follow import Track, everywhere, refine
from markbench.evidence.video.look import LEAST_SEEN, look
from markbench.evidence.video.oscillation import Swing, fit_swing
from markbench.evidence.video.search import Cells, places, pool
from markbench.evidence.video.second import second_bob
from markbench.evidence.video.steady import steady
from markbench.evidence.video.stretch import Stretch, cut_within, find_stretch, trim
from markbench.evidence.video.support import string_length_px
from markbench.model import say
from markbench.model.sentence import known_again

METHOD = "swing-5"
Floats = NDArray[np.float64]

# In the end the swing must explain this share of the variance of the positions.
_LAST_LOOK = 0.9
_LEAST_SWINGS = 3
# Product of the two above which a place plainly swings.
_CLEAR = 0.7
_WORST_PERIOD = 0.005
# The film ends within a frame or so of a whole swing: the eye counts it.
_WHOLE = 0.02
_TRACE_POINTS = 3000


@dataclass(frozen=True, slots=True)
class SwingMeasurement:
    """What the film shows. Times in seconds on the film's own clock; nan where unknown.

    ``reason`` is empty when accepted, else one of ``unreadable``, ``no_swing``,
    ``few_swings``, ``two_bobs``, ``cut``, ``unsteady``, ``slow``; ``message`` says it in words.
    ``times_s`` and ``displacement_px`` (main direction; pixels of the kept pictures) run
    over the swing, nan where the bob was not seen. ``swings_shown`` counts with its
    fraction; ``swing_marks_s`` are the times at which each counted swing ends.
    ``decrement`` is the logarithmic decrement for one swing; ``amplitude_start`` and
    ``amplitude_end`` relative to the first. ``amplitude_deg`` at the start where the
    thread can be seen. ``ellipse`` is the ratio of the path's axes as far as the picture,
    a view from one side, can tell.
    """

    accepted: bool
    reason: str = ""
    message: str = ""
    start_s: float = float("nan")
    end_s: float = float("nan")
    times_s: tuple[float, ...] = ()
    displacement_px: tuple[float, ...] = ()
    period_s: float = float("nan")
    u_period_s: float = float("nan")
    complete_swings: int = 0
    swings_shown: float = 0.0
    swing_marks_s: tuple[float, ...] = ()
    decrement: float = float("nan")
    amplitude_px: float = float("nan")
    amplitude_end: float = float("nan")
    amplitude_deg: float | None = None
    ellipse: float = float("nan")
    bob_xy: tuple[float, float] = (float("nan"), float("nan"))
    frame_rate: float = float("nan")
    uneven_frames: float = float("nan")
    frames: int = 0
    duration_s: float = float("nan")
    size: tuple[int, int] = (0, 0)
    kept_size: tuple[int, int] = (0, 0)
    method: str = METHOD


_WORDS = {
    "no_swing": say("nothing in the video was seen to swing with a steady period"),
    "few_swings": say("fewer than three complete swings were seen, too few to measure a period"),
    "two_bobs": say("two things swing in the video, and it does not say which is the pendulum"),
    "cut": say("the swing jumps in the middle, as where a video has been cut"),
    "unsteady": say("something swings, but not steadily enough for its period to be trusted"),
}


def why_not(found: SwingMeasurement) -> str:
    """Why a film was not measured. What was kept in a file is known again by its reason."""
    return _WORDS.get(found.reason) or known_again(found.message, TROUBLES)


def measure_swing(source: Path | bytes, *, time_limit_s: float = 300.0) -> SwingMeasurement:
    """Measure the swing in a film file; a refusal is a result, not an error."""
    try:
        film = read_film(source, time_limit_s=time_limit_s)
    except FilmError as error:
        return SwingMeasurement(accepted=False, reason="unreadable", message=str(error))
    return measure_film(film)


def measure_film(film: Film) -> SwingMeasurement:
    """Measure a decoded film, whose frames are steadied in place."""
    frames, times = film.frames, film.times_s
    if times.size < 24:
        return _refused(film, "few_swings")
    steady(frames)
    cells = pool(frames, times)
    refusals = []
    for rough, swing in _swings(frames, times, cells):
        found = _judge(film, cells, rough, swing)
        if found.accepted:
            return found
        refusals.append(found)
        # A clear swing that was refused settles it; a doubtful one lets the next try.
        if swing.in_step * rough.arc.fit > _CLEAR and found.reason != "unsteady":
            break
    return refusals[0] if refusals else _refused(film, "no_swing")


def _swings(
    frames: NDArray[np.uint8], times: Floats, cells: Cells
) -> Iterator[tuple[Track, Swing]]:
    """Places that prove to swing: clear ones as they are found, then the doubtful."""
    doubtful = []
    for place in places(cells, most=6):
        looked = look(frames, times, cells, place)
        if looked is None:
            continue
        if looked[1].in_step * looked[0].arc.fit > _CLEAR:
            yield looked
        else:
            doubtful.append(looked)
    yield from sorted(doubtful, key=lambda found: -found[1].in_step * found[0].arc.fit)[:2]


def _judge(film: Film, cells: Cells, rough: Track, swing: Swing) -> SwingMeasurement:
    frames, times = film.frames, film.times_s
    rough = everywhere(frames, rough)
    stretch = find_stretch(rough, swing)
    if stretch.cut:
        return _refused(film, "cut")
    fine = rough
    for _ in range(2):
        within = (times >= stretch.start_s) & (times <= stretch.end_s)
        fitted = fit_swing(times[within], fine.along[within], swing.period_s)
        if fitted is None:
            return _refused(film, "unsteady")
        swing = fitted
        fine = refine(frames, fine, swing)
        stretch = trim(fine, swing, rough)
    within = (times >= stretch.start_s) & (times <= stretch.end_s)
    fitted = fit_swing(times[within], fine.along[within], swing.period_s)
    if fitted is None:
        return _refused(film, "unsteady")
    swing = fitted
    shown = _shown(film, swing, stretch)
    turns = float(np.diff(swing.phase_at(np.array(shown)))[0]) / (2 * np.pi)
    if cut_within(fine, swing):
        return _refused(film, "cut")
    if turns + _WHOLE < _LEAST_SWINGS:
        return _refused(film, "few_swings")
    if (
        swing.explained < _LAST_LOOK
        or np.isfinite(fine.along[within]).mean() < LEAST_SEEN
        or not 0 < swing.u_period_s < _WORST_PERIOD * swing.period_s
    ):
        return _refused(film, "unsteady")
    if second_bob(frames, cells, fine, swing):
        return _refused(film, "two_bobs")
    return _accepted(film, fine, swing, shown, turns)


def _shown(film: Film, swing: Swing, stretch: Stretch) -> tuple[float, float]:
    """From where to where swings are counted.

    A swing that does not reach the film's edge began at the moment of letting go, which
    is an end of the arc: the fitted phase tells that moment better than any one frame.
    """
    start, end = stretch.start_s, stretch.end_s
    slack = max(2.5 * film.frame_s * film.group, 0.06 * swing.period_s)
    if start - film.shown_s[0] <= slack:
        start = film.shown_s[0]
    else:
        half = np.round(float(swing.phase_at(np.array([start]))[0]) / np.pi) * np.pi
        start = _when(swing, float(half), start)
    if film.shown_s[1] - end <= slack:
        end = film.shown_s[1]
    return start, end


def _when(swing: Swing, phase: float, near_s: float) -> float:
    """The time at which the swing has ``phase``, by Newton's rule from ``near_s``."""
    time = near_s
    for _ in range(8):
        tau = time - swing.middle_s
        slope = 2 * np.pi / swing.period_s + 2 * swing.bend * tau
        time -= (float(swing.phase_at(np.array([time]))[0]) - phase) / slope
    return time


def _accepted(
    film: Film, fine: Track, swing: Swing, shown: tuple[float, float], turns: float
) -> SwingMeasurement:
    start, end = shown
    count = int(np.floor(turns + _WHOLE))
    first = float(swing.phase_at(np.array([start]))[0])
    marks = [
        min(_when(swing, first + 2 * np.pi * k, start + k * swing.period_s), end)
        for k in range(1, count + 1)
    ]
    within = np.flatnonzero((fine.times_s >= start) & (fine.times_s <= end))
    kept = within[:: max(1, -(-within.size // _TRACE_POINTS))]
    sizes = swing.envelope_at(np.array([start, end]))
    length = string_length_px(film.frames, fine, swing)
    widest = float(sizes[0]) / length if length else None
    return replace(
        _of_film(film),
        accepted=True,
        message=f"{count} complete swings, period {swing.period_s:.3f} s",
        start_s=start,
        end_s=end,
        times_s=tuple(float(t) for t in fine.times_s[kept]),
        displacement_px=tuple(float(x) for x in fine.along[kept]),
        period_s=(end - start) / turns,
        u_period_s=swing.u_period_s,
        complete_swings=count,
        swings_shown=turns,
        swing_marks_s=tuple(marks),
        decrement=swing.decrement,
        amplitude_px=float(sizes[0]),
        amplitude_end=float(sizes[1] / sizes[0]),
        amplitude_deg=float(np.degrees(np.arcsin(widest))) if widest and widest < 1 else None,
        ellipse=_ellipse(fine, swing, within),
        bob_xy=(fine.arc.x / film.frames.shape[2], fine.arc.y / film.frames.shape[1]),
    )


def _ellipse(fine: Track, swing: Swing, within: NDArray[np.intp]) -> float:
    """Movement across the arc a quarter swing out of step, over that along it."""
    seen = within[np.isfinite(fine.across[within])]
    phase = swing.phase_at(fine.times_s[seen])
    size = swing.envelope_at(fine.times_s[seen])
    # The arc's own sag runs at twice the frequency and is fitted beside it.
    design = np.stack(
        [
            np.ones_like(phase),
            size * np.cos(phase),
            size * np.sin(phase),
            size**2 * np.cos(2 * phase),
            size**2,
        ],
        axis=1,
    )
    return float(abs(np.linalg.lstsq(design, fine.across[seen], rcond=None)[0][2]))


def _of_film(film: Film) -> SwingMeasurement:
    return SwingMeasurement(
        accepted=False,
        frame_rate=film.rate,
        uneven_frames=film.uneven,
        frames=film.decoded,
        duration_s=film.duration_s,
        size=film.size,
        kept_size=(int(film.frames.shape[2]), int(film.frames.shape[1])),
    )


def _refused(film: Film, reason: str) -> SwingMeasurement:
    return replace(_of_film(film), reason=reason, message=_WORDS[reason])
