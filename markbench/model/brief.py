"""What the class was asked to do; every field has a default a school would recognise.

The defaults are common practice of the trade (no source): five lengths, ten complete
swings to a timing, each timing taken twice, the longest length at least twice the
shortest.
"""

from __future__ import annotations

import datetime as dt
from dataclasses import dataclass, field


@dataclass(frozen=True, slots=True)
class Words:
    """The syllabus's words for the three kinds of variable."""

    independent: str = "independent variable"
    dependent: str = "dependent variable"
    controlled: str = "controlled variable"


@dataclass(frozen=True, slots=True)
class Place:
    """Where the class measured; ``None`` where the brief does not say."""

    latitude_deg: float | None = None
    height_m: float | None = None


@dataclass(frozen=True, slots=True)
class Tolerances:
    """How far a value may stray before it is questioned.

    ``timing_scatter_s``: usual standard deviation of one hand timing.
    ``g_fraction``: |g − local g| / local g that the rubric calls close.
    ``own_arithmetic_fraction``: relative difference between the learner's own value and
    the recomputed one, beyond rounding, that counts as a slip of arithmetic.
    ``false_alarm``: share of honest learners that a statistical check may trip.
    """

    timing_scatter_s: float = 0.1
    g_fraction: float = 0.05
    own_arithmetic_fraction: float = 0.01
    false_alarm: float = 0.005


@dataclass(frozen=True, slots=True)
class Late:
    """What lateness costs: ``marks_per_day`` off the total, on ``most_days`` days at most.

    None by default; ``most_days`` ``None`` counts every day. An extension moves the last day.
    """

    marks_per_day: float = 0.0
    most_days: int | None = None


@dataclass(frozen=True, slots=True)
class Brief:
    """What the class was asked to do. Dates are local, lengths in metres.

    ``grade_boundaries``: (grade, least marks), highest first. ``selfies_in_pack``: whether
    photos of learners may go into a moderation pack, ``reports_in_pack`` whether written
    reports may, as their words with names taken out. ``keep_evidence_until``: the last day on
    which photos and films are kept; they are removed by a person, never by the date.
    """

    title: str = "Timing a pendulum at home"
    opens: dt.date | None = None
    closes: dt.date | None = None
    lengths: int = 5
    timings_per_length: int = 2
    swings_per_timing: int = 10
    swings_allowed: tuple[int, ...] = (10, 20)
    shortest_m: float = 0.05
    longest_m: float = 1.5
    least_ratio: float = 2.0
    support_height_m: float | None = None
    evidence: tuple[str, ...] = ("setup_photo", "selfie", "swing_video")
    place: Place = field(default_factory=Place)
    rubric: str = "short"
    feedback_language: str = "en"
    words: Words = field(default_factory=Words)
    tolerances: Tolerances = field(default_factory=Tolerances)
    partners: tuple[tuple[str, str], ...] = ()
    late: Late = field(default_factory=Late)
    grade_boundaries: tuple[tuple[str, float], ...] = ()
    selfies_in_pack: bool = False
    reports_in_pack: bool = False
    keep_evidence_until: dt.date | None = None
