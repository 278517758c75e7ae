"""Raw readings as the learner wrote them, and the learner's own derived columns."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from markbench.model.source import Source

OwnQuantity = Literal["mean_time_s", "period_s", "period_squared_s2", "g_m_s2"]


@dataclass(frozen=True, slots=True)
class Timing:
    """One stopwatch time for a number of complete swings.

    ``decimals`` counts the places of the seconds as written (``14.2`` → 1); ``None``
    where the file did not keep them.
    """

    time_s: float
    source: Source
    decimals: int | None = None


@dataclass(frozen=True, slots=True)
class Reading:
    """One length and its timings.

    ``source`` and ``length_raw_decimals`` belong to the length: the number of decimals as
    written in the learner's own unit, whose size in metres is ``length_unit_m``.
    ``swings_source`` is ``None`` where the count came from the brief.
    """

    length_m: float
    swings: int
    timings: tuple[Timing, ...]
    source: Source
    length_unit_m: float = 0.01
    length_raw_decimals: int | None = None
    swings_source: Source | None = None


@dataclass(frozen=True, slots=True)
class OwnValue:
    """A value the learner worked out, kept apart from the raw readings.

    ``reading`` is the index of the reading it belongs to (``None``: the whole table, as a
    final g); ``timing`` the index of the timing where it belongs to a single one.
    ``decimals`` as written.
    """

    quantity: OwnQuantity
    value: float
    source: Source
    reading: int | None = None
    timing: int | None = None
    decimals: int | None = None


@dataclass(frozen=True, slots=True)
class ReadingsTable:
    """Everything understood from a learner's table of readings.

    ``source`` names the file (and sheet) it was read from. ``headings`` are the column
    headings as typed, with their cells, for the check of units in headings.
    ``heading_has_unit`` runs beside ``headings``.
    """

    readings: tuple[Reading, ...]
    own_values: tuple[OwnValue, ...]
    source: Source
    headings: tuple[Source, ...] = ()
    heading_has_unit: tuple[bool, ...] = ()
