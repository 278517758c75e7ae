"""A whole class's readings as arrays, padded with nan, so that formulas run once for all."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from markbench.model import Reading

_COARSE_S = (0.1, 1.0)
_SHOW_A_STEP = 6


@dataclass(frozen=True, slots=True, eq=False)
class Stack:
    """Readings of n learners, at most R lengths and K timings each.

    ``length_m`` (n, R) and ``times_s`` (n, R, K) are nan where absent; ``swings`` (n, R)
    is nan likewise. ``time_step_s`` (n,) is the rounding step of each learner's times as
    their decimals show (0.01 where unknown), or a coarser one that all of them keep to;
    ``length_step_m`` (n,) is the step of the lengths.
    """

    length_m: NDArray[np.float64]
    swings: NDArray[np.float64]
    times_s: NDArray[np.float64]
    time_step_s: NDArray[np.float64]
    length_step_m: NDArray[np.float64]

    def __len__(self) -> int:
        return int(self.length_m.shape[0])

    def take(self, index: slice | Sequence[int]) -> Stack:
        """The learners at ``index``."""
        return Stack(
            self.length_m[index],
            self.swings[index],
            self.times_s[index],
            self.time_step_s[index],
            self.length_step_m[index],
        )


def stack_readings(learners: Sequence[Sequence[Reading]]) -> Stack:
    """Stack each learner's readings, in order, into one set of padded arrays."""
    n = len(learners)
    rows = max((len(readings) for readings in learners), default=0)
    timings = max((len(r.timings) for readings in learners for r in readings), default=0)
    length_m = np.full((n, rows), np.nan)
    swings = np.full((n, rows), np.nan)
    times_s = np.full((n, rows, timings), np.nan)
    time_step_s = np.full(n, 0.01)
    length_step_m = np.full(n, 0.001)
    for i, readings in enumerate(learners):
        places = [t.decimals for r in readings for t in r.timings if t.decimals is not None]
        # Trailing zeros are lost in spreadsheets: the most decimals seen is the step.
        if places:
            time_step_s[i] = 10.0 ** -min(max(places), 3)
        steps = [
            r.length_unit_m * 10.0**-r.length_raw_decimals
            for r in readings
            if r.length_raw_decimals is not None
        ]
        if steps:
            length_step_m[i] = min(steps)
        for j, reading in enumerate(readings):
            length_m[i, j] = reading.length_m
            swings[i, j] = reading.swings
            for k, timing in enumerate(reading.timings):
                times_s[i, j, k] = timing.time_s
    return Stack(length_m, swings, times_s, _steps_kept_to(times_s, time_step_s), length_step_m)


def _steps_kept_to(
    times_s: NDArray[np.float64], step_s: NDArray[np.float64]
) -> NDArray[np.float64]:
    """``step_s`` (n,), or whole seconds or tenths where every timing of a learner is one.

    A column set to two decimals writes 9.00 for 9. Six timings to the hundredth that are all
    whole tenths by accident are one in a million.
    """
    there = np.isfinite(times_s)
    shown = there.sum(axis=(1, 2)) >= _SHOW_A_STEP
    for coarse in _COARSE_S:  # the finer first: whole seconds are tenths, too
        parts = np.where(there, times_s / coarse, 0.0)
        kept = (np.abs(parts - np.rint(parts)) < 1e-6).all(axis=(1, 2))
        step_s = np.where(shown & kept & (step_s < coarse), coarse, step_s)
    return step_s
