"""When a table is put to question: one statistic against a measured threshold.

The statistic is the log odds of the likeliest slip against honest work. Its threshold is
measured on simulated honest classes (``calibration.toml``), apart for tables with and
without repeats, for times to tenths and to hundredths, and for short, usual and long
pendulums, since those differ most in how often chance alone comes near. It never lies
below even odds.
"""

from __future__ import annotations

import tomllib
from collections.abc import Mapping
from functools import lru_cache
from importlib.resources import files
from typing import Any

import numpy as np
from numpy.typing import NDArray

from markbench.physics.honest import Array
from markbench.physics.stack import Stack

KINDS = tuple(
    f"{repeats}_{places}_{reach}"
    for repeats in ("repeats", "single")
    for places in ("hundredths", "tenths")
    for reach in ("short", "usual", "long")
)
# Longest length of a pendulum from a low support, and of one longer than a table is high.
_SHORT_M, _LONG_M = 0.35, 0.75


def kind_of_table(stack: Stack) -> NDArray[np.int64]:
    """Index into ``KINDS`` of each learner's table, (n,)."""
    if stack.times_s.size == 0:
        return np.zeros(len(stack), dtype=int)
    timings = np.isfinite(stack.times_s).sum(axis=2)
    rows = (timings > 0).sum(axis=1)
    single = 2 * (timings > 1).sum(axis=1) < rows
    longest_m = np.where(timings > 0, np.nan_to_num(stack.length_m), 0.0).max(axis=1)
    reach = (longest_m > _SHORT_M).astype(int) + (longest_m > _LONG_M)
    return np.asarray(6 * single + 3 * (stack.time_step_s > 0.03) + reach, dtype=int)


def margin(stack: Stack) -> Array:
    """How far a slip's log weight must lie above honest work's to be asked about, (n,).

    Taken off every slip's weight, so that a table is asked about exactly where a slip is
    the likeliest explanation, and the probabilities shown agree with that.
    """
    thresholds = calibration()["thresholds"]
    return np.array([max(float(thresholds[kind]), 0.0) for kind in KINDS])[kind_of_table(stack)]


def honest_rate(slip: str) -> float | None:
    """Measured share of honest learners asked about ``slip``; of a pair, the rarer of the two.

    The highest of the designs of the calibration; ``None`` before it was measured.
    """
    rates = calibration().get("honest_rate", {})
    known = [float(rates[name]) for name in slip.split("+") if name in rates]
    return min(known) if known else None


@lru_cache(maxsize=1)
def calibration() -> Mapping[str, Any]:
    """The table measured by ``tests/benchmarks/calibrate_diagnosis.py``."""
    text = files(__package__).joinpath("calibration.toml").read_text("utf-8")
    return tomllib.loads(text)
