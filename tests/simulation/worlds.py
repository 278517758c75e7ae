"""What is ordinary at home: lengths, places, hands and habits, drawn from stated ranges.

Every range stands here, apart from the physics that uses it, so that a calibration can
name the world it was measured in.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

Array = NDArray[np.float64]

# Typical sets of lengths, in metres (common practice, no source).
DESIGNS: dict[str, tuple[float, ...]] = {
    "standard": (0.20, 0.30, 0.40, 0.50, 0.60),
    "low": (0.05, 0.10, 0.15, 0.20, 0.25),
    "tall": (0.30, 0.60, 0.90, 1.20, 1.50),
}
# Sets a "mixed" class chooses from, besides the three above.
OTHER_SETS: tuple[tuple[float, ...], ...] = (
    (0.25, 0.35, 0.45, 0.55, 0.65, 0.75),
    (0.20, 0.40, 0.60, 0.80, 1.00),
    (0.15, 0.30, 0.45, 0.60),
    (0.30, 0.40, 0.50, 0.60, 0.70, 0.80, 0.90),
    (0.12, 0.22, 0.37, 0.48, 0.71),
)
# Sets that a teacher would question; no "mixed" class draws from them.
POOR_SETS: dict[str, tuple[float, ...]] = {
    "close": (0.40, 0.45, 0.50, 0.55, 0.60),
    "few": (0.25, 0.40, 0.60),
}
NOISES = ("gaussian", "heavy", "haste", "uneven")


@dataclass(frozen=True, slots=True)
class Habits:
    """Ranges the learners are drawn from; lengths in metres, times in seconds.

    ``scatter_s`` (lowest, typical, highest) of one hand timing: 0.10 s per interval in
    Faux & Godolphin, Am. J. Phys. 87 (2019) 110; its spread between people is common
    practice, no source, as is every other range here.
    """

    scatter_s: tuple[float, float, float] = (0.05, 0.10, 0.25)
    length_reading_m: float = 0.0015
    length_offset_m: float = 0.002  # “a few millimetres”: 2, and 3 as a harsher world
    amplitude_deg: tuple[float, float] = (3.0, 15.0)
    wide_deg: tuple[float, float] = (35.0, 70.0)
    amplitude_jitter_deg: float = 1.5
    tenths_share: float = 0.35
    measured_share: float = 0.3
    bob_radius_m: float = 0.0
    bob_offset_m: tuple[float, float] = (0.008, 0.025)
    thread_excess_m: tuple[float, float] = (0.03, 0.12)
    formula_g: tuple[float, ...] = (9.8, 9.81, 10.0)
    formula_jitter_s: tuple[float, float] = (0.0, 0.02)
    hand_repeat_s: float = 0.03
    least_change_s: float = 0.3
    least_change_m: float = 0.01


def period_ratio(amplitude_deg: Array) -> Array:
    """T/T₀ at finite amplitude through the arithmetic-geometric mean.

    T/T₀ = 1/M(1, cos(θ/2)): Gauss. Six steps reach double precision below 170°.
    """
    a = np.ones_like(amplitude_deg)
    b = np.cos(np.radians(amplitude_deg) / 2)
    for _ in range(6):
        a, b = (a + b) / 2, np.sqrt(a * b)
    return np.asarray(1.0 / a)


def period(length_m: Array, g: Array, amplitude_deg: Array, bob_radius_m: float = 0.0) -> Array:
    """Period in seconds; a bob that is a sphere adds 2r²/(5L) to the length; broadcasts."""
    effective = length_m + 0.4 * bob_radius_m**2 / length_m
    return np.asarray(2 * np.pi * np.sqrt(effective / g) * period_ratio(amplitude_deg))


def gravity_at(rng: np.random.Generator, latitude_deg: Array, height_m: Array) -> Array:
    """True g in m/s²: the 1980 short formula, height, and the ground's own departure.

    The formula and its ±5 parts in 10⁵ are the National Physical Laboratory's; the
    departure is drawn with half of that as its standard deviation.
    """
    sine = np.sin(np.radians(latitude_deg))
    double = np.sin(np.radians(2 * latitude_deg))
    formula = 9.780327 * (1 + 0.0053024 * sine**2 - 0.0000058 * double**2) - 3.086e-6 * height_m
    return np.asarray(formula * (1 + rng.normal(0, 2.5e-5, formula.shape)))


def nominal_lengths(rng: np.random.Generator, n: int, design: str) -> Array:
    """The lengths each learner set out to use, (n, R) in metres, nan-padded."""
    if design != "mixed":
        return np.tile(np.array((DESIGNS | POOR_SETS)[design]), (n, 1))
    sets = (*DESIGNS.values(), *OTHER_SETS)
    table = np.full((len(sets), max(map(len, sets))), np.nan)
    for row, lengths in zip(table, sets, strict=True):
        row[: len(lengths)] = lengths
    return np.asarray(table[rng.integers(len(sets), size=n)])


def hand_noise(rng: np.random.Generator, shape: tuple[int, int, int], noise: str) -> Array:
    """Timing errors of unit standard deviation, (n, R, K), in one of ``NOISES``.

    ``heavy``: Student's t with 3 degrees of freedom. ``haste``: each error remembers the
    one before (correlation 0.6) and the hand tires by one standard deviation from the
    first timing to the last. ``uneven``: the scatter differs by length.
    """
    n, rows, timings = shape
    if noise == "gaussian":
        return rng.normal(size=shape)
    if noise == "heavy":
        return np.asarray(rng.standard_t(3, size=shape) / np.sqrt(3.0))
    if noise == "haste":
        count = rows * timings
        step = rng.normal(size=(n, count))
        error = np.empty_like(step)
        error[:, 0] = step[:, 0]
        for i in range(1, count):
            error[:, i] = 0.6 * error[:, i - 1] + 0.8 * step[:, i]
        drift = rng.choice([-1.0, 1.0], size=(n, 1)) * np.linspace(-0.5, 0.5, count)
        total = (error + drift) / np.sqrt(1 + np.mean(drift[:1] ** 2))
        return np.asarray(total.reshape(shape))
    if noise == "uneven":
        factor = np.exp(rng.normal(0, 0.5, size=(n, rows, 1)))
        factor /= np.sqrt(np.mean(factor**2, axis=1, keepdims=True))
        return np.asarray(rng.normal(size=shape) * factor)
    raise ValueError(f"noise {noise!r} is not one of {', '.join(NOISES)}")
