"""Slips made after the watch was stopped: reading the display, copying, typing.

Forms of ``clock_misread``: ``run_together`` (1:05.3 typed 105.3) and ``minute_point``
(1:05.3 typed 1.053) touch only times of a minute and more, so that the swings are raised
until the longest length reaches a minute; ``as_minutes`` takes 0:14:23 (14.23 s) for
14 minutes 23 seconds. Forms of ``mistyped_cell``: ``swapped`` (two neighbouring digits)
and ``point`` (the decimal point slipped one place).
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from typing import TYPE_CHECKING

import numpy as np
from numpy.typing import NDArray

from simulation.worlds import Habits

if TYPE_CHECKING:
    from simulation.readings import Simulated

CLOCKS = ("run_together", "minute_point", "as_minutes")
_LENGTHS_SHARE = 0.2  # of mistyped cells: a length is typed once, its timings twice or more


def some_row(rng: np.random.Generator, sim: Simulated) -> NDArray[np.int64]:
    """One of each learner's rows, (n,)."""
    return (rng.random(len(sim)) * (~np.isnan(sim.length_m)).sum(axis=1)).astype(int)


def choose_clock(rng: np.random.Generator, sim: Simulated, variant: str | None) -> Simulated:
    """Choose how the display is misread, and swings enough for the slip to show."""
    n = len(sim)
    form = rng.choice(CLOCKS, n) if variant is None else np.full(n, variant)
    longest = np.nanmax(sim.true_length_m, axis=1)
    enough = 10 * np.ceil(6.4 / (2 * np.pi * np.sqrt(longest / 9.8)))
    raised = np.where((form == "as_minutes")[:, None], sim.swings, enough[:, None])
    swings = np.fmax(sim.swings, np.where(np.isnan(sim.swings), np.nan, raised))
    return replace(sim, variant=form.astype("U16"), swings=swings)


def apply(
    rng: np.random.Generator,
    sim: Simulated,
    slips: set[str],
    habits: Habits,
    variant: str | None,
) -> Simulated:
    """The slips of this module among ``slips``, in the order in which they happen."""
    if "period_as_total" in slips:
        sim = _period_as_total(rng, sim)
    if "clock_misread" in slips:
        sim = _clock_misread(sim)
    if "rows_swapped" in slips:
        sim = _rows_swapped(rng, sim)
    if "mistyped_cell" in slips:
        sim = _mistyped(rng, sim, habits, variant)
    return sim


def _period_as_total(rng: np.random.Generator, sim: Simulated) -> Simulated:
    """The period, worked out from the time, typed where the time belongs."""
    exact = (rng.random(len(sim)) < 0.5) | (sim.time_decimals == 1)
    decimals = np.where(exact, sim.time_decimals + 1, 2)
    scale = 10.0 ** decimals[:, None, None]
    typed = np.round(sim.times_s / sim.swings[:, :, None] * scale) / scale
    return replace(sim, times_s=typed, time_decimals=decimals)


def _clock_misread(sim: Simulated) -> Simulated:
    t = sim.times_s
    minutes = np.floor(t / 60)
    seconds = t - 60 * minutes
    over = minutes >= 1
    form = sim.variant[:, None, None]
    together = np.where(over, 100 * minutes + seconds, t)
    point = np.where(over, minutes + seconds / 100, t)
    # 14.23 s shown as 0:14:23; in tenths 0:14:2, read as 14 min 2 s.
    whole = np.floor(t + 1e-9)
    rest = np.round((t - whole) * 10.0 ** sim.time_decimals[:, None, None])
    as_minutes = 60 * whole + rest
    typed = np.where(
        form == "run_together", together, np.where(form == "minute_point", point, as_minutes)
    )
    # Typed with two more places when the seconds come after the point, none as whole seconds.
    extra = np.where(sim.variant == "minute_point", 2, 0)
    decimals = np.where(sim.variant == "as_minutes", 0, sim.time_decimals + extra)
    scale = 10.0 ** decimals[:, None, None]
    return replace(sim, times_s=np.round(typed * scale) / scale, time_decimals=decimals)


def _rows_swapped(rng: np.random.Generator, sim: Simulated) -> Simulated:
    n = len(sim)
    rows = (~np.isnan(sim.length_m)).sum(axis=1)
    first = some_row(rng, sim)
    other = (first + 1 + (rng.random(n) * (rows - 1)).astype(int)) % rows
    times = sim.times_s.copy()
    who = np.arange(n)
    times[who, first], times[who, other] = sim.times_s[who, other], sim.times_s[who, first]
    return replace(sim, times_s=times, row=first, other_row=other)


def _mistyped(
    rng: np.random.Generator, sim: Simulated, habits: Habits, variant: str | None
) -> Simulated:
    """One cell of each table spoilt; drawn again until the value changes materially."""
    length, times = sim.length_m.copy(), sim.times_s.copy()
    row = some_row(rng, sim)
    timing = np.where(rng.random(len(sim)) < _LENGTHS_SHARE, -1, rng.integers(2, size=len(sim)))
    form = np.array(
        [variant or ("swapped", "point")[k] for k in rng.integers(2, size=len(sim))], dtype="U16"
    )
    rows = (~np.isnan(length)).sum(axis=1)
    for i in range(len(sim)):
        for _ in range(100):
            j, k = int(row[i]), int(timing[i])
            if k < 0:
                decimals = int(sim.length_decimals[i])
                typed = _spoilt(rng, f"{length[i, j] * 100:.{decimals}f}", str(form[i]))
                changed = typed / 100 - length[i, j]
                if typed > 0 and abs(changed) >= habits.least_change_m:
                    length[i, j] = typed / 100
                    break
            else:
                decimals = int(sim.time_decimals[i])
                typed = _spoilt(rng, f"{times[i, j, k]:.{decimals}f}", str(form[i]))
                if typed > 0 and abs(typed - times[i, j, k]) >= habits.least_change_s:
                    times[i, j, k] = typed
                    break
            row[i] = rng.integers(rows[i])
            timing[i] = -1 if rng.random() < _LENGTHS_SHARE else rng.integers(2)
    return replace(sim, length_m=length, times_s=times, row=row, timing=timing, variant=form)


def _spoilt(rng: np.random.Generator, text: str, form: str) -> float:
    return _FORMS[form](rng, text)


def _swap_digits(rng: np.random.Generator, text: str) -> float:
    """Two neighbouring digits exchanged, the point left where it is."""
    digits = [at for at, char in enumerate(text) if char.isdigit()]
    i = int(rng.integers(len(digits) - 1)) if len(digits) > 1 else 0
    a, b = digits[i], digits[min(i + 1, len(digits) - 1)]
    chars = list(text)
    chars[a], chars[b] = chars[b], chars[a]
    return float("".join(chars))


def _slip_point(rng: np.random.Generator, text: str) -> float:
    return float(text) * (10.0 if rng.random() < 0.5 else 0.1)


_FORMS: dict[str, Callable[[np.random.Generator, str], float]] = {
    "swapped": _swap_digits,
    "point": _slip_point,
}
