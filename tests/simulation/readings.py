"""Learners' readings simulated from physics, with every slip, for whole classes at once.

The order is that of the work itself: a thread of some true length hangs from a support;
it swings; a hand times it; a learner counts, reads a ruler, and types. A slip enters at
the step where it happens. Two slips at once are joined by ``+``.
"""

from __future__ import annotations

from dataclasses import dataclass, replace

import numpy as np
from numpy.typing import NDArray

from markbench.model import Place, Reading, Source, Timing
from markbench.physics.stack import Stack
from simulation import typing_slips
from simulation.worlds import (
    Array,
    Habits,
    gravity_at,
    hand_noise,
    nominal_lengths,
    period,
)

Ints = NDArray[np.int64]

SLIPS = (
    "half_swings",
    "count_short",
    "count_over",
    "one_timing_miscounted",
    "length_to_top",
    "length_to_bottom",
    "whole_thread",
    "length_unit",
    "period_as_total",
    "clock_misread",
    "wide_swing",
    "mistyped_cell",
    "rows_swapped",
    "made_from_formula",
    "made_by_hand",
)
# How many of each unit make a metre, for lengths typed under the heading "cm".
_UNIT_M = {"inch": 0.0254, "m": 1.0, "mm": 0.001}


@dataclass(frozen=True, slots=True, eq=False)
class Simulated:
    """Readings of n learners as typed, beside the truth they came from.

    As typed, nan where absent: ``length_m`` (n, R), ``swings`` (n, R), ``times_s``
    (n, R, K); ``length_decimals`` (n,) in centimetres and ``time_decimals`` (n,).
    Truth: ``g`` (n,), ``true_length_m`` (n, R), ``amplitude_deg`` and ``counted``
    (n, R, K; swings that really went by), ``scatter_s`` (n,); ``slip`` (n,), the empty
    string for honest work; ``parameter`` (n,) its size (metres, degrees, seconds, or the
    unit in metres), ``variant`` (n,) its form; ``row``, ``other_row`` and ``timing`` (n,)
    the cell or rows touched, −1 where none (``timing`` −1 with a row: the length).
    """

    length_m: Array
    swings: Array
    times_s: Array
    length_decimals: Ints
    time_decimals: Ints
    g: Array
    true_length_m: Array
    amplitude_deg: Array
    counted: Array
    scatter_s: Array
    slip: NDArray[np.str_]
    parameter: Array
    variant: NDArray[np.str_]
    row: Ints
    other_row: Ints
    timing: Ints
    place: Place

    def __len__(self) -> int:
        return int(self.length_m.shape[0])

    def take(self, index: slice | NDArray[np.generic]) -> Simulated:
        """The learners at ``index``."""
        return replace(self, **{name: getattr(self, name)[index] for name in _PER_LEARNER})

    def stack(self) -> Stack:
        """The readings as arrays, as the program stacks them."""
        return Stack(
            length_m=self.length_m.copy(),
            swings=self.swings.copy(),
            times_s=self.times_s.copy(),
            time_step_s=10.0 ** -np.minimum(self.time_decimals, 3),
            length_step_m=0.01 * 10.0 ** -self.length_decimals.astype(float),
        )

    def readings(self) -> list[tuple[Reading, ...]]:
        """The readings as the objects that intake makes of a learner's table."""
        return [self._table(i) for i in range(len(self))]

    def _table(self, i: int) -> tuple[Reading, ...]:
        table = []
        for j, length in enumerate(self.length_m[i]):
            if np.isnan(length):
                continue
            file = f"learner {i + 1}.csv"
            timings = tuple(
                Timing(
                    float(t),
                    Source(
                        file, cell=f"{chr(66 + k)}{j + 2}", raw=f"{t:.{self.time_decimals[i]}f}"
                    ),
                    decimals=int(self.time_decimals[i]),
                )
                for k, t in enumerate(self.times_s[i, j])
                if not np.isnan(t)
            )
            raw = f"{length * 100:.{self.length_decimals[i]}f}"
            table.append(
                Reading(
                    length_m=float(length),
                    swings=int(self.swings[i, j]),
                    timings=timings,
                    source=Source(file, cell=f"A{j + 2}", raw=raw),
                    length_raw_decimals=int(self.length_decimals[i]),
                )
            )
        return tuple(table)


_PER_LEARNER = tuple(f for f in Simulated.__dataclass_fields__ if f != "place")


def join(*parts: Simulated) -> Simulated:
    """One class of several groups, padded to the longest table; keeps the first's place."""
    rows = max(p.times_s.shape[1] for p in parts)
    timings = max(p.times_s.shape[2] for p in parts)

    def padded(array: Array) -> Array:
        target = (rows, timings)[: array.ndim - 1]
        widths = [(0, 0)] + [
            (0, want - have) for want, have in zip(target, array.shape[1:], strict=True)
        ]
        return np.pad(array, widths, constant_values=np.nan) if array.ndim > 1 else array

    joined = {
        name: np.concatenate([padded(getattr(p, name)) for p in parts]) for name in _PER_LEARNER
    }
    return replace(parts[0], **joined)


def simulate(
    n: int,
    design: str = "standard",
    slip: str | None = None,
    noise: str = "gaussian",
    *,
    seed: int,
    place: bool | Place = True,
    decimals: int | None = None,
    swings: int | None = None,
    timings: int | None = None,
    variant: str | None = None,
    bob: str = "offset",
    habits: Habits | None = None,
) -> Simulated:
    """``n`` learners of one class, all with the same ``slip`` (``None``: honest work).

    ``design``: standard (20–60 cm), low (5–25), tall (30–150), mixed, or one of
    ``worlds.POOR_SETS``. ``place``: one known place for the class (drawn, or the one
    given); ``False``: each learner lives somewhere, 9.76 to 9.83 m/s². ``decimals``,
    ``swings`` and ``timings`` fix what is otherwise habit: one or two places, ten swings
    (ten or twenty when mixed), two timings (two or three when mixed).
    ``variant`` fixes the form of ``length_unit`` (inch, m, mm), ``clock_misread`` and
    ``mistyped_cell`` (see ``typing_slips``). ``bob``: ``offset`` draws the error of a
    length taken to the top or bottom of the bob itself, ``diameter`` draws the bob's
    diameter, of which the error is half.
    """
    habits = habits or Habits()
    slips = set(slip.split("+")) if slip else set()
    if unknown := slips - set(SLIPS):
        raise ValueError(f"no such slip: {', '.join(sorted(unknown))}")
    rng = np.random.default_rng(seed)

    where, g = _where(rng, n, place)
    nominal = nominal_lengths(rng, n, design)
    rows = nominal.shape[1]
    kept = 3 if design == "mixed" and timings is None else timings or 2
    shape = (n, rows, kept)
    none = np.full(n, -1)
    sim = Simulated(
        length_m=nominal,
        swings=np.where(np.isnan(nominal), np.nan, _swings(rng, n, design, swings)[:, None]),
        times_s=np.zeros(shape),
        length_decimals=np.where(rng.random(n) < habits.measured_share, 1, 0),
        time_decimals=np.full(n, decimals)
        if decimals is not None
        else np.where(rng.random(n) < habits.tenths_share, 1, 2),
        g=g,
        true_length_m=nominal,
        amplitude_deg=np.zeros(shape),
        counted=np.zeros(shape),
        scatter_s=_scatter(rng, n, habits),
        slip=np.full(n, slip or "", dtype="U64"),
        parameter=np.full(n, np.nan),
        variant=np.full(n, "", dtype="U16"),
        row=none,
        other_row=none.copy(),
        timing=none.copy(),
        place=where,
    )
    sim = _hang(rng, sim, slips, habits, bob, variant)
    if "clock_misread" in slips:
        sim = typing_slips.choose_clock(rng, sim, variant)
    sim = _swing_and_time(rng, sim, slips, noise, habits)
    if design == "mixed" and timings is None:
        sim.times_s[rng.random(n) < 0.6, :, 2] = np.nan
    if "made_by_hand" in slips:
        first = sim.times_s[:, :, :1]
        near = rng.uniform(-habits.hand_repeat_s, habits.hand_repeat_s, sim.times_s.shape)
        near[:, :, 0] = 0.0
        sim.times_s[:] = np.where(np.isnan(sim.times_s), np.nan, first + near)
    if "made_from_formula" in slips:
        sim = _from_formula(rng, sim, habits)
    sim.times_s[:] = to_places(sim.times_s, sim.time_decimals)
    return typing_slips.apply(rng, sim, slips, habits, variant)


def _where(rng: np.random.Generator, n: int, known: bool | Place) -> tuple[Place, Array]:
    """Where people live: a place for the class, or one for each learner."""
    if isinstance(known, Place):
        at = np.array([known.latitude_deg or 0.0]), np.array([known.height_m or 0.0])
        return known, np.full(n, gravity_at(np.random.default_rng(0), *at)[0])
    count = 1 if known else n
    latitude = rng.uniform(-50.0, 65.0, count)
    height = np.minimum(rng.exponential(300.0, count), 2500.0)
    g = gravity_at(rng, latitude, height)
    if known:
        return Place(round(float(latitude[0]), 1), round(float(height[0]), -1)), np.full(n, g[0])
    return Place(), np.clip(g, 9.76, 9.83)


def _swings(rng: np.random.Generator, n: int, design: str, fixed: int | None) -> Array:
    if fixed is not None:
        return np.full(n, float(fixed))
    if design == "mixed":
        return np.where(rng.random(n) < 0.3, 20.0, 10.0)
    return np.full(n, 10.0)


def _scatter(rng: np.random.Generator, n: int, habits: Habits) -> Array:
    low, typical, high = habits.scatter_s
    return np.asarray(np.clip(typical * np.exp(rng.normal(0, 0.35, n)), low, high))


def _hang(
    rng: np.random.Generator,
    sim: Simulated,
    slips: set[str],
    habits: Habits,
    bob: str,
    variant: str | None,
) -> Simulated:
    """What the learner reads off the ruler, and how long the pendulum really is."""
    n, rows = sim.length_m.shape
    # Some set the thread to round lengths, some write what the ruler says to a millimetre.
    measured = (sim.length_decimals == 1)[:, None]
    read = np.where(measured, sim.length_m + rng.normal(0, 0.005, (n, rows)), sim.length_m)
    excess = np.zeros(n)  # written minus true
    half = 0.5 if bob == "diameter" else 1.0
    if "length_to_top" in slips:
        excess -= half * rng.uniform(*habits.bob_offset_m, n)
    if "length_to_bottom" in slips:
        excess += half * rng.uniform(*habits.bob_offset_m, n)
    if "whole_thread" in slips:
        excess += rng.uniform(*habits.thread_excess_m, n)
    unit_m = np.full(n, 0.01)
    if "length_unit" in slips:
        names = rng.choice(list(_UNIT_M), n) if variant is None else np.full(n, variant)
        unit_m = np.array([_UNIT_M[str(name)] for name in names])
        # Whoever holds an inch ruler sets whole inches.
        inches = (unit_m == 0.0254)[:, None]
        read = np.where(inches, np.round(read / 0.0254) * 0.0254, read)
        sim.variant[:] = names
        sim.parameter[:] = unit_m
    else:
        sim.parameter[:] = np.where(excess != 0, np.abs(excess), np.nan)
    written_decimals = np.where(
        unit_m == 1.0, 2 + sim.length_decimals, np.where(unit_m == 0.001, 0, sim.length_decimals)
    )
    # A thread shorter than its own tail cannot be: then the excess lengthens what is read.
    low = np.nanmin(read, axis=1) - excess < 0.02
    read = read + np.where(low, excess, 0.0)[:, None]
    typed = to_places(read / unit_m[:, None], written_decimals)
    true = typed * unit_m[:, None] - excess[:, None]
    true -= rng.normal(0, habits.length_offset_m, (n, 1))
    true -= rng.normal(0, habits.length_reading_m, (n, rows))
    return replace(
        sim,
        length_m=typed * 0.01,
        length_decimals=written_decimals,
        true_length_m=np.maximum(true, 0.005),
    )


def _swing_and_time(
    rng: np.random.Generator, sim: Simulated, slips: set[str], noise: str, habits: Habits
) -> Simulated:
    n, rows, timings = sim.times_s.shape
    wide = "wide_swing" in slips
    usual = rng.uniform(*(habits.wide_deg if wide else habits.amplitude_deg), n)
    jitter = rng.normal(0, habits.amplitude_jitter_deg, sim.times_s.shape)
    amplitude = np.abs(usual[:, None, None] + jitter)
    if wide:
        sim.parameter[:] = usual
    counted = np.repeat(sim.swings[:, :, None], timings, axis=2)
    if "half_swings" in slips:
        counted /= 2
    if "count_short" in slips:
        counted -= 1
    if "count_over" in slips:
        counted += 1
    if "one_timing_miscounted" in slips:
        row = typing_slips.some_row(rng, sim)
        timing = rng.integers(2, size=n)
        by = rng.choice([-1.0, 1.0], n)
        counted[np.arange(n), row, timing] += by
        sim = replace(sim, row=row, timing=timing, parameter=by)
    one = period(
        sim.true_length_m[:, :, None], sim.g[:, None, None], amplitude, habits.bob_radius_m
    )
    error = sim.scatter_s[:, None, None] * hand_noise(rng, (n, rows, timings), noise)
    return replace(
        # The rare wild error of a heavy tail must not turn time backwards.
        sim,
        times_s=np.maximum(counted * one + error, 0.5 * counted * one),
        amplitude_deg=amplitude,
        counted=counted,
    )


def _from_formula(rng: np.random.Generator, sim: Simulated, habits: Habits) -> Simulated:
    """Times nobody measured: the formula at the written length, roughened a little."""
    n = len(sim)
    g = rng.choice(habits.formula_g, n)
    jitter = rng.uniform(*habits.formula_jitter_s, n)
    exact = sim.swings * 2 * np.pi * np.sqrt(sim.length_m / g[:, None])
    made = exact[:, :, None] + jitter[:, None, None] * rng.normal(size=sim.times_s.shape)
    return replace(
        sim,
        times_s=np.where(np.isnan(sim.times_s), np.nan, made),
        parameter=jitter,
        variant=np.array([f"{value:g}" for value in g], dtype="U16"),
    )


def to_places(values: Array, decimals: Ints) -> Array:
    """Rounded to each learner's own number of decimals, (n, …)."""
    scale = 10.0 ** decimals.astype(float).reshape(-1, *[1] * (values.ndim - 1))
    return np.asarray(np.round(values * scale) / scale)
