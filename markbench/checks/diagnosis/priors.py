"""How common each slip is, and how large, before any reading is seen.

Reasons stand in `DECISION-priors.md`. Each size of a slip is a list of cells (centre, and
the spread of a rectangle of that width), so that it is integrated by a short sum.
"""

from __future__ import annotations

import numpy as np

from markbench.model import say
from markbench.physics.honest import Array
from markbench.physics.pendulum import amplitude_factor

HONEST = "honest"

# Share of learners making each slip: about half a class makes one, most often in counting.
# The order of magnitude matters, the digit does not.
SLIP_RATE: dict[str, float] = {
    "half_swings": 0.04,
    "count_short": 0.06,
    "count_over": 0.016,
    "one_timing_miscounted": 0.11,
    "length_to_top": 0.10,
    "length_to_bottom": 0.09,
    "whole_thread": 0.035,
    "length_unit": 0.02,
    "period_as_total": 0.02,
    "clock_misread": 0.02,
    "wide_swing": 0.065,
    "mistyped_cell": 0.045,
    "rows_swapped": 0.02,
    "made_from_formula": 0.018,
    "made_by_hand": 0.025,
}
# Two slips at once: rarer than chance would have it, since the pair must earn its place
# over the single slips that it contains.
PAIR_FACTOR = 0.3


def cells(low: float, high: float, count: int) -> tuple[Array, float]:
    """Centres of ``count`` equal cells of [low, high], and the sd within one."""
    width = (high - low) / count
    return np.asarray(low + width * (np.arange(count) + 0.5)), float(width / 12**0.5)


# Lengths to the top or bottom of the bob are out by 0.8–2.5 cm.
BOB_M, BOB_SD_M = cells(0.008, 0.025, 4)
# A whole thread is long by the knot and the tail, 3–12 cm.
THREAD_M, THREAD_SD_M = cells(0.03, 0.12, 6)
# No pendulum of less than this hangs at home: the thread must leave so much.
SHORTEST_M = 0.015
# Nor one longer than a stairwell is high.
LONGEST_M = 5.0
# A wide swing starts at 35–75°.
WIDE_DEG, _ = cells(35.0, 75.0, 8)
# Fewer and fewer pull a thread so far out of the way: a falling density.
WIDE_WEIGHT = (80.0 - WIDE_DEG) / (80.0 - WIDE_DEG).sum()
WIDE_FACTOR = amplitude_factor(WIDE_DEG)
WIDE_FACTOR_SD = (amplitude_factor(WIDE_DEG + 2.5) - amplitude_factor(WIDE_DEG - 2.5)) / 12**0.5
# True length over length as read, the unit meant, how often among unit slips.
UNITS: tuple[tuple[float, str, float], ...] = (
    (2.54, say("inches"), 0.3),
    (100.0, say("metres"), 0.25),
    (0.1, say("millimetres"), 0.25),
    (0.01, say("centimetres (read as metres)"), 0.1),
    (10.0, say("centimetres (read as millimetres)"), 0.1),
)
# Made from a formula: the g typed into it, and how the times were roughened (sd, s).
FORMULA_G: tuple[float, ...] = (9.8, 9.81, 10.0)
FORMULA_JITTER_S = np.array([0.001, 0.004, 0.008, 0.013, 0.02, 0.03])
# Made by hand: first times that a hand did time (scatter and weight), repeats written
# beside them: evenly within some hundredths, or in a small bell about them.
HAND_FIRST_S = np.array([0.05, 0.075, 0.115, 0.175])
HAND_FIRST_WEIGHT = np.array([0.15, 0.3, 0.35, 0.2])
HAND_WITHIN_S = np.array([0.01, 0.02, 0.03, 0.04])
HAND_REPEAT_S = np.array([0.004, 0.008, 0.013, 0.02])
HAND_BELL_SHARE = 0.3
# Phone stopwatches show hundredths, and what is invented is written as one would show it.
HAND_RATE_HUNDREDTHS = 0.07
HAND_FINE_STEP_S = 0.03
