"""How long the pendulum is in the picture, where its thread can be seen.

A taut thread's points swing in proportion to their distance from the support. Pictures
averaged at the two ends of the arc show the thread twice, apart by less and less towards
the support; where the gap would close is the support.
"""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray
from scipy import ndimage, stats

from markbench.evidence.video.follow import Track
from markbench.evidence.video.oscillation import Swing

_CLEAR = 5.0
_LEAST_ROWS = 8


def string_length_px(frames: NDArray[np.uint8], fine: Track, swing: Swing) -> float | None:
    """Support to bob in kept pixels, or ``None``; only for a swing seen nearly level."""
    arc = fine.arc
    if abs(arc.reach_y) > 0.3 * abs(arc.reach_x) or swing.amplitude < 3:
        return None
    inside = (fine.times_s >= swing.start_s) & (fine.times_s <= swing.end_s)
    turn = np.cos(swing.phase_at(fine.times_s))
    right, left = np.flatnonzero(inside & (turn > 0.85)), np.flatnonzero(inside & (turn < -0.85))
    bottom = int(arc.y - arc.radius - 3)
    if min(right.size, left.size) < 10 or bottom < _LEAST_ROWS:
        return None
    apart = frames[right, :bottom].mean(axis=0) - frames[left, :bottom].mean(axis=0)
    apart = ndimage.gaussian_filter(apart, (1.0, 0.7))
    reach = int(abs(arc.reach) * 1.3 + 4)
    low, high = max(int(arc.x) - reach, 0), int(arc.x) + reach
    rest = np.concatenate([apart[:, :low], apart[:, high:]], axis=1)
    grain = 1.4826 * float(np.median(np.abs(rest))) if rest.size > 50 else 0.5
    middle = apart[:, low:high]
    rows = np.arange(bottom)
    gap = np.abs(np.argmax(middle, axis=1) - np.argmin(middle, axis=1)) / 2.0
    clear = np.minimum(middle.max(axis=1), -middle.min(axis=1)) > _CLEAR * max(grain, 0.1)
    # The thread is where the gap is at least two pixels and not wider than at the bob.
    clear &= (gap >= 2) & (gap <= 1.1 * swing.amplitude)
    if clear.sum() < _LEAST_ROWS:
        return None
    slope, _, low_slope, high_slope = stats.theilslopes(gap[clear], rows[clear])
    reached = float(np.median(gap[clear] - slope * rows[clear]))
    if slope <= 0 or (high_slope - low_slope) > 0.5 * slope:
        return None
    support = -reached / slope
    # Mean amplitude over the frames used, for the rows were averaged over them all.
    size = float(np.mean(swing.envelope_at(fine.times_s[inside])))
    length = arc.y - support
    expected = size * 0.95 / slope
    return float(length) if 0.6 < length / expected < 1.6 and length > arc.reach else None
