"""Facts of the raw readings: how many, how far apart, how well they repeat."""

from __future__ import annotations

import math
import re
from itertools import pairwise

from markbench.checks.wording import listed
from markbench.model import Finding, Reading, Row, Source, Timing
from markbench.rubric.facts.registry import (
    Value,
    Work,
    centimetres,
    count,
    number,
    of_two_ends,
    one_decimal,
    seconds,
    seconds_apart,
    text,
    whole,
    yes_no,
)


def _length_cells(work: Work) -> tuple[Source, ...]:
    return tuple(reading.source for reading in work.readings)


def _reading_at(work: Work, longest: bool) -> Reading | None:
    pick = max if longest else min
    return pick(work.readings, key=lambda r: r.length_m, default=None)


def _ends(work: Work) -> tuple[Source, ...]:
    ends = (_reading_at(work, longest=False), _reading_at(work, longest=True))
    return tuple(reading.source for reading in ends if reading is not None)


def _timing_cells(work: Work) -> tuple[Source, ...]:
    return tuple(timing.source for reading in work.readings for timing in reading.timings)


def _tenths(value: Value, work: Work | None) -> str:
    return f"{value:.1f} s"


@yes_no("readings", "readings that could be used", checks=("table_not_understood",))
def readings_given(work: Work) -> bool:
    """Whether there is at least one length with a timing."""
    return bool(work.readings)


@count("readings", "different lengths", ("too_few_lengths",), _length_cells)
def lengths(work: Work) -> int:
    """How many different lengths were timed."""
    return len(work.lengths)


@count("readings", "timings at the length timed least often", ("too_few_timings",), _timing_cells)
def timings_fewest(work: Work) -> int:
    """The fewest timings taken at any length."""
    return min((len(reading.timings) for reading in work.readings), default=0)


@count("readings", "timings in all", cells=_timing_cells)
def timings_total(work: Work) -> int:
    """How many timings were taken in all."""
    return sum(len(reading.timings) for reading in work.readings)


@count("readings", "lengths timed once only", ("too_few_timings",))
def timed_once(work: Work) -> int:
    """How many readings have a single timing."""
    return sum(len(reading.timings) == 1 for reading in work.readings)


def _once(work: Work) -> Reading | None:
    """One of the readings with a single timing, chosen by the learner's data."""
    once = [reading for reading in work.readings if len(reading.timings) == 1]
    return once[work.data_hash % len(once)] if once else None


def _once_cells(work: Work) -> tuple[Source, ...]:
    reading = _once(work)
    return (reading.source, reading.timings[0].source) if reading is not None else ()


@number("readings", "a length timed once only", centimetres, "m", cells=_once_cells)
def once_length_m(work: Work) -> float | None:
    """One of the lengths with a single timing, chosen by the learner's data."""
    reading = _once(work)
    return reading.length_m if reading is not None else None


@text("readings", "the only timing at that length", cells=_once_cells)
def once_time(work: Work) -> str | None:
    """The single timing of that length, as written."""
    reading = _once(work)
    return as_written(reading.timings[0]) if reading is not None else None


@count("readings", "swings in the shortest count", ("too_few_swings", "swings_guessed"))
def swings_fewest(work: Work) -> int | None:
    """The fewest complete swings to a timing; after an agreed miscount, as many as it leaves."""
    return min((work.swings_in(reading) for reading in work.readings), default=None)


@count("readings", "swings timed in all")
def swings_total(work: Work) -> int:
    """How many complete swings were timed in all, counted likewise."""
    return sum(work.swings_in(reading) * len(reading.timings) for reading in work.readings)


@number("readings", "time watched in all", _tenths, "s", cells=_timing_cells)
def watched_s(work: Work) -> float | None:
    """All the timings added up: how long the pendulum was watched."""
    if not work.readings:
        return None
    return sum(timing.time_s for reading in work.readings for timing in reading.timings)


@number("readings", "ratio of longest to shortest length", one_decimal, "", ("short_range",), _ends)
def range_ratio(work: Work) -> float | None:
    """The longest length divided by the shortest."""
    different = work.lengths
    return different[-1] / different[0] if different and different[0] > 0 else None


@number(
    "readings", "shortest length", of_two_ends(centimetres), "m", ("length_out_of_range",), _ends
)
def shortest_m(work: Work) -> float | None:
    """The shortest length."""
    reading = _reading_at(work, longest=False)
    return reading.length_m if reading is not None else None


@number("readings", "longest length", centimetres, "m", ("length_out_of_range",), _ends)
def longest_m(work: Work) -> float | None:
    """The longest length."""
    reading = _reading_at(work, longest=True)
    return reading.length_m if reading is not None else None


@yes_no("readings", "lengths inside the brief's range", ("length_out_of_range",), _ends)
def lengths_in_range(work: Work) -> bool | None:
    """Whether every length lies inside the range that the brief calls sensible."""
    if not work.readings:
        return None
    brief = work.brief
    return all(brief.shortest_m <= r.length_m <= brief.longest_m for r in work.readings)


@yes_no("readings", "evenly spread lengths", ("uneven_lengths",), _length_cells)
def lengths_even(work: Work) -> bool | None:
    """Whether the lengths are evenly spread (no finding says otherwise)."""
    return "uneven_lengths" not in work.by_check if len(work.lengths) > 2 else None


@number(
    "readings", "widest gap between neighbouring lengths", centimetres, "m", ("uneven_lengths",)
)
def widest_gap_m(work: Work) -> float | None:
    """The widest step from one length to the next."""
    different = work.lengths
    steps = [b - a for a, b in pairwise(different)]
    return max(steps, default=None)


@yes_no("readings", "the same number of decimals down each column", ("decimals_uneven",))
def decimals_even(work: Work) -> bool | None:
    """Whether the times are written with one number of decimals; unknown where the file keeps none.

    A spreadsheet's number cells drop trailing zeros and a time cell has no decimals of its own.
    Neither is known of times that differ so little that dropped zeros may be all there is to it.
    """
    if "decimals_uneven" in work.by_check:
        return False
    written = [timing.decimals for reading in work.readings for timing in reading.timings]
    alike = len(written) >= 3 and None not in written and len(set(written)) == 1
    return True if alike else None


@number("readings", "decimals of the times as written", whole)
def time_decimals(work: Work) -> int | None:
    """The most decimals with which a time was written."""
    return max(
        (t.decimals for r in work.readings for t in r.timings if t.decimals is not None),
        default=None,
    )


_UNITS = ("heading_without_unit", "unit_guessed")


def _bare(work: Work) -> tuple[Source, ...]:
    found = (*work.by_check.get("heading_without_unit", ()), *_without_unit(work))
    return tuple(dict.fromkeys(source for finding in found for source in finding.sources))


def _without_unit(work: Work) -> list[Finding]:
    """The questions for lengths or times that no heading and no cell gives a unit to.

    A heading in other words than the reader of tables knows may name the unit all the same.
    """
    return [
        finding
        for finding in work.by_check.get("unit_guessed", ())
        if finding.numbers.get("quantity") in ("length", "time")
        and not any(_names(source.raw, finding.numbers.get("unit")) for source in finding.sources)
    ]


def _names(heading: str, unit: float | str | None) -> bool:
    return bool(unit) and re.search(rf"(?<!\w){re.escape(str(unit))}(?!\w)", heading) is not None


@yes_no("readings", "a unit in every heading that needs one", _UNITS, _bare)
def headings_have_units(work: Work) -> bool | None:
    """Whether every heading that needs a unit has one (no finding says otherwise)."""
    table = work.portfolio.table
    if _without_unit(work):
        return False
    if table is None or not table.headings:
        return None
    return "heading_without_unit" not in work.by_check


@text("readings", "a heading without a unit", _UNITS, _bare)
def bare_heading(work: Work) -> str | None:
    """A heading that lacks its unit, as the learner typed it."""
    table = work.portfolio.table
    typed = {(h.sheet, h.cell) for h in table.headings} if table is not None else set()
    bare = (s.raw for s in _bare(work) if s.raw and (s.sheet, s.cell) in typed)
    opened, closed = "„“" if work.brief.feedback_language == "de" else "“”"
    return next((f"{opened}{raw}{closed}" for raw in bare), None)


def _widest_repeat(work: Work) -> Row | None:
    repeated = [row for row in work.rows if len(row.timings_s) > 1]
    return max(repeated, key=lambda r: max(r.timings_s) - min(r.timings_s), default=None)


def _one_of_repeats(value: Value, work: Work | None) -> str | None:
    """One of two repeats set against each other, as written; none where they are alike."""
    if work is None:
        return seconds(value, work)
    if seconds_apart(repeat_gap_s(work), work) is None:
        return None
    timings = (t for reading in work.readings for t in reading.timings)
    return next((as_written(t) for t in timings if t.time_s == value), seconds(value, work))


@number(
    "readings",
    "usual scatter of repeated timings",
    seconds_apart,
    "s",
    ("timing_departs",),
    _timing_cells,
)
def repeat_scatter_s(work: Work) -> float | None:
    """Standard deviation of one timing about the mean of its length, pooled over the lengths."""
    freedom = squares = 0.0
    for row in work.rows:
        if len(row.timings_s) > 1:
            mean = sum(row.timings_s) / len(row.timings_s)
            squares += sum((t - mean) ** 2 for t in row.timings_s)
            freedom += len(row.timings_s) - 1
    return math.sqrt(squares / freedom) if freedom else None


@number("readings", "widest difference between repeats", seconds_apart, "s", ("timing_departs",))
def repeat_gap_s(work: Work) -> float | None:
    """The widest difference between timings of one length."""
    row = _widest_repeat(work)
    return max(row.timings_s) - min(row.timings_s) if row is not None else None


@number("readings", "length whose repeats differ most", centimetres, "m", ("timing_departs",))
def repeat_gap_length_m(work: Work) -> float | None:
    """The length whose repeats differ most."""
    row = _widest_repeat(work)
    return row.length_m if row is not None else None


@number(
    "readings",
    "shortest of the repeats that differ most",
    _one_of_repeats,
    "s",
    ("timing_departs",),
)
def repeat_low_s(work: Work) -> float | None:
    """The shortest timing at the length whose repeats differ most."""
    row = _widest_repeat(work)
    return min(row.timings_s) if row is not None else None


@number(
    "readings", "longest of the repeats that differ most", _one_of_repeats, "s", ("timing_departs",)
)
def repeat_high_s(work: Work) -> float | None:
    """The longest timing at the length whose repeats differ most."""
    row = _widest_repeat(work)
    return max(row.timings_s) if row is not None else None


@count("readings", "timings that depart from their repeats", ("timing_departs",))
def timings_departing(work: Work) -> int:
    """How many timings depart from their repeats by more than hands usually scatter."""
    return len(work.by_check.get("timing_departs", ()))


def _example_cells(work: Work) -> tuple[Source, ...]:
    reading = work.example
    return (reading.source, *(t.source for t in reading.timings)) if reading is not None else ()


@number("readings", "length of an example", centimetres, "m", cells=_example_cells)
def example_length_m(work: Work) -> float | None:
    """The length of one reading, chosen by the learner's data, to speak of as an example."""
    return work.example.length_m if work.example is not None else None


@text("readings", "timings of an example", cells=_example_cells)
def example_timings(work: Work) -> str | None:
    """The timings at the example length as written, named in a row."""
    if work.example is None:
        return None
    return listed([as_written(timing) for timing in work.example.timings], work.last_of_a_list)


def as_written(timing: Timing) -> str:
    """A timing with the decimals it was written with; those that a spreadsheet shows else."""
    if timing.decimals is None:
        return f"{timing.time_s:g} s"
    return f"{timing.time_s:.{min(timing.decimals, 3)}f} s"


@number("readings", "mean time at the longest length", seconds, "s")
def longest_time_s(work: Work) -> float | None:
    """The mean time of the counted swings at the longest length."""
    return work.rows[-1].mean_time_s if work.rows else None


@number("readings", "mean time at the shortest length", of_two_ends(seconds), "s")
def shortest_time_s(work: Work) -> float | None:
    """The mean time of the counted swings at the shortest length."""
    return work.rows[0].mean_time_s if work.rows else None
