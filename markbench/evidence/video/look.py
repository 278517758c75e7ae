"""A place that seems to swing, looked at: is there a disc on an arc that keeps step?"""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from markbench.evidence.video.follow import Track, find_arc, seeds, track
from markbench.evidence.video.oscillation import Swing, fit_swing
from markbench.evidence.video.search import Cells, Place

Floats = NDArray[np.float64]

# A disc on an arc must explain this share of the averaged pictures along the arc; thread,
# shadow and the shading of a pale bob take the rest, more of it than of a dark one.
_ARC_FITS = 0.3
# At first sight this share of the positions must keep step (the bob may be held for part
# of the window; positions at random keep step for a quarter of the time).
_FIRST_LOOK = 0.6
# Before a dark cupboard a dark bob is lost for half of every swing; the rest will do.
LEAST_SEEN = 0.35


def look(
    frames: NDArray[np.uint8],
    times: Floats,
    cells: Cells,
    place: Place,
) -> tuple[Track, Swing] | None:
    """Follow what swings at ``place`` during its window, if anything does."""
    within = (times >= place.window_s[0]) & (times <= place.window_s[1])
    for period, phase in seeds(cells, place):
        arc = find_arc(frames, times, place, period, phase)
        if arc is None or arc.fit < _ARC_FITS or arc.reach < 1.5:
            continue
        rough = track(frames, times, arc, period, phase, place.window_s)
        if np.isfinite(rough.along[within]).mean() < LEAST_SEEN:
            continue
        swing = fit_swing(times[within], rough.along[within], period)
        if (
            swing is not None
            and swing.in_step >= _FIRST_LOOK
            and abs(swing.period_s / period - 1) < 0.1
        ):
            return rough, swing
    return None
