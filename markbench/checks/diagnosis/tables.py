"""Slips that touch the whole table: what the readings would be had they been typed aright.

A slip of timing gives another view of swings and times, a slip of measuring another view
of the lengths; honest work is the identity of both. One slip pairs a view with the other
identity, two slips at once pair two views, so that no pair needs code of its own.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from markbench.checks.diagnosis import priors
from markbench.model import say
from markbench.physics.honest import AMPLITUDE_FACTOR, AMPLITUDE_FACTOR_SD, OFFSET_SD_M, Array
from markbench.physics.pendulum import FOUR_PI_SQUARED
from markbench.physics.stack import Stack


@dataclass(frozen=True, slots=True, eq=False)
class TimeView:
    """Swings (n, R), times (n, R, K) and their step (n,) as they would be without a slip.

    ``log_weight`` (n,) is the log prior within the slip, −inf where the view cannot be;
    ``size`` and ``variant`` describe the slip's form; ``factor`` ± ``factor_sd`` is T/T₀.
    """

    slip: str
    variant: str
    size: float
    log_weight: Array
    swings: Array
    times_s: Array
    step_s: Array
    factor: float = AMPLITUDE_FACTOR
    factor_sd: float = AMPLITUDE_FACTOR_SD


@dataclass(frozen=True, slots=True, eq=False)
class LengthView:
    """Lengths (n, R) as they would be without a slip; the offset left has sd ``offset_sd_m``."""

    slip: str
    variant: str
    size: float
    log_weight: Array
    length_m: Array
    offset_sd_m: float = OFFSET_SD_M


def honest_times(stack: Stack) -> TimeView:
    """The times as typed."""
    nought = np.zeros(len(stack))
    return TimeView(priors.HONEST, "", 0.0, nought, stack.swings, stack.times_s, stack.time_step_s)


def honest_lengths(stack: Stack) -> LengthView:
    """The lengths as typed."""
    return LengthView(priors.HONEST, "", 0.0, np.zeros(len(stack)), stack.length_m)


def time_views(stack: Stack) -> Iterator[TimeView]:
    """Every slip of counting, of the watch and of the swing, for whole tables."""
    nought = np.zeros(len(stack))
    times, step, swings = stack.times_s, stack.time_step_s, stack.swings
    # One half swing taken for a swing, "one" said at the start, one swing too many.
    for slip, really in (
        ("half_swings", swings / 2),
        ("count_short", swings - 1),
        ("count_over", swings + 1),
    ):
        possible = np.asarray(~(really <= 0).any(axis=1))
        really = np.where(possible[:, None], really, swings)
        yield TimeView(slip, "", 0.0, np.where(possible, 0.0, -np.inf), really, times, step)
    # A period typed for a total: the total has N times the step, and its density spreads.
    most = np.nanmax(np.where(np.isfinite(swings), swings, 1.0), axis=1, initial=1.0)
    timings = np.isfinite(times).sum(axis=(1, 2))
    yield TimeView(
        "period_as_total",
        "",
        0.0,
        np.where(most > 1, timings * np.log(most), -np.inf),
        swings,
        times * swings[..., None],
        step * most,
    )
    yield from _clock_views(stack)
    for degrees, share, factor, factor_sd in zip(
        priors.WIDE_DEG,
        priors.WIDE_WEIGHT,
        priors.WIDE_FACTOR,
        priors.WIDE_FACTOR_SD,
        strict=True,
    ):
        yield TimeView(
            "wide_swing",
            "",
            float(degrees),
            nought + np.log(share),
            swings,
            times,
            step,
            float(factor),
            float(factor_sd),
        )


def _clock_views(stack: Stack) -> Iterator[TimeView]:
    """The display misread: minutes run into seconds, or seconds taken for minutes."""
    typed = stack.times_s
    hundreds, rest = np.floor(typed / 100), np.mod(typed, 100)
    minutes, after = np.floor(typed + 1e-9), np.mod(typed + 1e-9, 1.0) * 100
    yield _clock(
        stack,
        say("1:05.3 typed as 105.3"),
        np.where(typed < 60, typed, np.where(rest < 60, 60 * hundreds + rest, np.nan)),
        np.asarray((typed >= 100).any(axis=(1, 2))),
        stack.time_step_s,
    )
    # Which of the small numbers hold minutes shows against what the length would take.
    with np.errstate(invalid="ignore"):
        usual = stack.swings * np.sqrt(FOUR_PI_SQUARED * stack.length_m / 9.8)
    short = typed < 0.2 * usual[..., None]
    yield _clock(
        stack,
        say("1:05.3 typed as 1.053"),
        np.where(
            short, np.where((minutes >= 1) & (after < 60), 60 * minutes + after, np.nan), typed
        ),
        np.asarray(short.any(axis=(1, 2))),
        stack.time_step_s * 100,
    )
    # 14.23 s shown as 0:14:23 and taken for 14 min 23 s; 14.83 s becomes 14 min 83 s = 923 s.
    whole = (stack.time_step_s >= 1.0) & (typed >= 60).any(axis=(1, 2))
    seconds, shown = np.floor(typed / 60), np.mod(typed, 60)
    plain, carried = seconds + shown / 100, seconds - 1 + (shown + 60) / 100
    nearer = np.abs(carried - usual[..., None]) < np.abs(plain - usual[..., None])
    hundredths = np.where(nearer & (shown < 40), carried, plain)
    tenths = np.where(shown < 10, seconds + shown / 10, np.nan)
    fine = np.full(len(stack), 0.01)
    yield _clock(stack, say("0:14:23 taken for 14 min 23 s"), hundredths, whole, fine)
    yield _clock(stack, say("0:14:2 taken for 14 min 2 s"), tenths, whole, 10 * fine)


def _clock(
    stack: Stack, variant: str, times_s: Array, can_be: NDArray[np.bool_], step_s: Array
) -> TimeView:
    """A view of the clock; impossible where a typed time has no such reading."""
    broken = (np.isfinite(stack.times_s) & ~np.isfinite(times_s)).any(axis=(1, 2))
    weight = np.where(can_be & ~broken, -np.log(4.0), -np.inf)
    # Seen as typed where impossible, so that every array stays finite.
    times_s = np.where((weight > -np.inf)[:, None, None], times_s, stack.times_s)
    return TimeView("clock_misread", variant, 0.0, weight, stack.swings, times_s, step_s)


def length_views(stack: Stack) -> Iterator[LengthView]:
    """Every slip of measuring and writing lengths, for whole tables."""
    length = stack.length_m
    bob_sd = float(np.hypot(OFFSET_SD_M, priors.BOB_SD_M))
    share = -np.log(len(priors.BOB_M))
    for slip, sign in (("length_to_top", 1.0), ("length_to_bottom", -1.0)):
        for size in priors.BOB_M:
            yield _shifted(slip, size, sign * size, share, length, bob_sd)
    thread_sd = float(np.hypot(OFFSET_SD_M, priors.THREAD_SD_M))
    share = -np.log(len(priors.THREAD_M))
    for size in priors.THREAD_M:
        yield _shifted("whole_thread", size, -size, share, length, thread_sd)
    for factor, unit, weight in priors.UNITS:
        yield _in_unit(unit, factor, weight, length)


def _in_unit(unit: str, factor: float, weight: float, length_m: Array) -> LengthView:
    """All lengths meant in another unit; impossible where most are those of no home's pendulum.

    Without that bound metres beside times of one swing would be no slip at all: a hundred
    times the length swings ten times as slowly.
    """
    with np.errstate(invalid="ignore"):
        meant = length_m * factor
        outside = (meant < priors.SHORTEST_M) | (meant > priors.LONGEST_M)
    possible = np.asarray(2 * outside.sum(axis=1) <= np.isfinite(length_m).sum(axis=1))
    return LengthView(
        "length_unit",
        unit,
        factor,
        np.where(possible, np.log(weight), -np.inf),
        np.where(possible[:, None], meant, length_m),
    )


def _shifted(
    slip: str, size: float, by_m: float, share: float, length_m: Array, sd_m: float
) -> LengthView:
    """All lengths out by a constant; impossible where too little thread would be left."""
    with np.errstate(invalid="ignore"):
        possible = np.asarray(~(length_m + by_m < priors.SHORTEST_M).any(axis=1))
    return LengthView(
        slip,
        "",
        float(size),
        np.where(possible, share, -np.inf),
        np.where(possible[:, None], length_m + by_m, length_m),
        sd_m,
    )
