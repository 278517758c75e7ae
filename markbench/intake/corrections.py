"""The teacher's own hand in the readings: rows she typed, cells she corrected.

A corrected value keeps the learner's text in ``Source.raw`` and says in ``understood`` what
the teacher made of it, so that both stay visible side by side.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from typing import Any

from markbench.intake.tables.units import dimension, size
from markbench.intake.tables.values import read_text
from markbench.model import (
    Brief,
    Figures,
    OwnValue,
    Reading,
    ReadingsTable,
    Source,
    Timing,
    joined,
    say,
)

TYPED = "typed by the teacher"
_CELL = re.compile(r"([A-Z]+)(\d+)")
_MOST_DECIMALS = 9


@dataclass(frozen=True, slots=True)
class TypedRow:
    """One length with its timings as the teacher typed them; ``swings`` 0: as in the brief.

    ``length_decimals`` are those of the length in centimetres, ``decimals`` those of each
    timing, as typed: they are the learner's, and judged. Not known for rows kept before that.
    """

    length_m: float
    swings: int
    timings_s: tuple[float, ...]
    length_decimals: int | None = None
    decimals: tuple[int, ...] = ()


def typed_rows(value: Any) -> tuple[TypedRow, ...]:
    """Rows from plain JSON, ``[{"length_m", "swings", "timings_s"}]``.

    ``length_decimals`` (of centimetres) and ``decimals`` (one to a timing) may stand with them.
    ``None`` is no rows. ``ValueError`` lists everything wrong, with the row it is in.
    """
    if value is None:
        return ()
    if not isinstance(value, list | tuple):
        raise ValueError("Typed readings must be a list of rows.")
    rows: list[TypedRow] = []
    wrong: list[str] = []
    for number, item in enumerate(value, 1):
        try:
            length, swings, timings = item["length_m"], item.get("swings"), item["timings_s"]
        except (TypeError, KeyError, AttributeError):
            wrong.append(f"Row {number} needs length_m, swings and timings_s.")
            continue
        if not _positive(length):
            wrong.append(f"Row {number}: length_m = {length!r} must be a number above 0 (metres).")
        if swings is not None and not (_positive(swings) and swings == int(swings)):
            wrong.append(f"Row {number}: swings = {swings!r} must be a whole number above 0.")
        if not isinstance(timings, list | tuple) or not all(_positive(t) for t in timings):
            wrong.append(
                f"Row {number}: timings_s = {timings!r} must be a list of numbers above 0 (s)."
            )
        of_length, decimals = item.get("length_decimals"), item.get("decimals", ())
        if not _as_typed(of_length, decimals, timings):
            wrong.append(f"Row {number}: its decimals must be whole numbers, one to a timing.")
        if not wrong:
            times = tuple(float(timing) for timing in timings)
            kept = (of_length, tuple(decimals))
            rows.append(TypedRow(float(length), int(swings or 0), times, *kept))
    if wrong:
        raise ValueError(" ".join(wrong))
    return tuple(rows)


def _positive(value: Any) -> bool:
    return isinstance(value, int | float) and not isinstance(value, bool) and 0 < value < 1e6


def _as_typed(of_length: Any, decimals: Any, timings: Any) -> bool:
    """Whether decimals are in order; nothing is said of rows kept without them."""
    if not isinstance(decimals, list | tuple):
        return False
    counts = [*decimals, *(() if of_length is None else (of_length,))]
    return len(decimals) in (0, len(timings) if isinstance(timings, list | tuple) else 0) and all(
        type(count) is int and 0 <= count <= _MOST_DECIMALS for count in counts
    )


def typed_table(rows: Iterable[TypedRow], brief: Brief) -> ReadingsTable:
    """Typed rows as a table: lengths in column A, swings in B, timings from C."""
    readings = []
    for number, row in enumerate(rows, 1):
        decimals = row.decimals or tuple(map(_decimals, row.timings_s))
        timings = tuple(
            Timing(time, _typed(_letters(k + 2), number, f"{time:.{places}f}", "s"), places)
            for k, (time, places) in enumerate(zip(row.timings_s, decimals, strict=True))
        )
        in_cm = row.length_decimals is not None
        places = row.length_decimals if row.length_decimals is not None else _decimals(row.length_m)
        length = f"{row.length_m * (100 if in_cm else 1):.{places}f}"
        counted = _typed("B", number, f"{row.swings}", "swings") if row.swings else None
        readings.append(
            Reading(
                length_m=row.length_m,
                swings=row.swings or brief.swings_per_timing,
                timings=timings,
                source=_typed("A", number, length, "cm" if in_cm else "m"),
                length_unit_m=0.01 if in_cm else 1.0,
                length_raw_decimals=places,
                swings_source=counted,
            )
        )
    return ReadingsTable(tuple(readings), (), Source(TYPED, understood=TYPED))


def _typed(column: str, row: int, text: str, unit: str) -> Source:
    return Source(TYPED, "", f"{column}{row}", text, f"{text} {unit}, {TYPED}")


def _letters(column: int) -> str:
    return chr(65 + column) if column < 26 else chr(64 + column // 26) + chr(65 + column % 26)


def _decimals(value: float) -> int:
    return len(f"{value:.6f}".rstrip("0").partition(".")[2])


def correction_key(source: Source) -> str:
    """The key under which a correction of this cell is kept."""
    return f"{source.file}|{source.sheet}|{source.cell}"


def holds(table: ReadingsTable, key: str) -> bool:
    """Whether a value of the table was read from the cell under this key."""
    sources = [value.source for value in table.own_values]
    for reading in table.readings:
        sources += [reading.source, *(timing.source for timing in reading.timings)]
        if reading.swings_source is not None:
            sources.append(reading.swings_source)
    return any(correction_key(source) == key for source in sources)


def in_own_row(table: ReadingsTable, key: str) -> bool:
    """Whether the cell under this key, on a sheet for many, stands beside one of the lengths."""
    _, _, rest = key.partition("|")
    sheet, _, cell = rest.rpartition("|")
    return len(_in_line(table.readings, Source("", sheet, cell), part=2)) == 1


def correct(table: ReadingsTable, corrections: Mapping[str, str]) -> ReadingsTable:
    """The table with the teacher's texts in place of the learner's.

    Cells of other files are passed over. ``ValueError`` names every text that cannot be
    read and every cell that belongs to no reading. An empty text takes a timing out.
    """
    wrong: list[str] = []
    for key, text in corrections.items():
        file, _, rest = key.partition("|")
        sheet, _, cell = rest.rpartition("|")
        if file != table.source.file:
            continue
        try:
            table = _correct_cell(table, Source(file, sheet, cell), text)
        except ValueError as error:
            wrong.append(say("{place}: {why}", place=str(Source(file, "", cell)), why=str(error)))
    if wrong:
        raise ValueError(joined(wrong))
    return table


def _correct_cell(table: ReadingsTable, place: Source, text: str) -> ReadingsTable:
    key = correction_key(place)
    readings = list(table.readings)
    found = False
    for index, reading in enumerate(readings):
        if correction_key(reading.source) == key:
            reading = _with_length(reading, text)
            found = True
        if reading.swings_source is not None and correction_key(reading.swings_source) == key:
            reading = _with_swings(reading, text)
            found = True
        if any(correction_key(timing.source) == key for timing in reading.timings):
            reading = _with_timing(reading, key, text)
            found = True
        readings[index] = reading
    own_values = tuple(
        _own(value, text) if correction_key(value.source) == key else value
        for value in table.own_values
    )
    found = found or any(correction_key(value.source) == key for value in table.own_values)
    if not found:
        index = reading_beside(readings, place)
        readings[index] = _with_new_timing(readings[index], place, text)
    return replace(table, readings=tuple(readings), own_values=own_values)


def _understood(source: Source, text: str, meaning: str) -> Source:
    return replace(
        source,
        understood=say(
            "{meaning}, corrected by the teacher to “{text}”", meaning=meaning, text=text
        ),
    )


def _quantity(text: str, wanted: str, unit: float) -> tuple[float, int | None, float]:
    """A corrected text in metres or seconds, its decimals, and the unit it was written in."""
    value = read_text(text)
    if value.number is None:
        raise ValueError(
            say(
                "“{text}” cannot be read ({why}).",
                text=text,
                why=value.trouble or say("it is empty"),
            )
        )
    if value.unit is not None:
        if dimension(value.unit) != wanted:
            raise ValueError(
                say("“{text}” is not a length.", text=text)
                if wanted == "length"
                else say("“{text}” is not a time.", text=text)
            )
        unit = size(value.unit)
    number = value.number * unit
    if not 0 < number < 1e6:
        raise ValueError(say("“{text}” must be above 0.", text=text))
    return number, value.decimals, unit


def _with_length(reading: Reading, text: str) -> Reading:
    length, decimals, unit = _quantity(text, "length", reading.length_unit_m)
    source = _understood(reading.source, text, say("length {length:.6g} cm", length=100 * length))
    return replace(
        reading, length_m=length, source=source, length_unit_m=unit, length_raw_decimals=decimals
    )


def _with_swings(reading: Reading, text: str) -> Reading:
    value = read_text(text)
    if value.number is None or value.number != int(value.number) or value.number < 1:
        raise ValueError(say("“{text}” is not a whole number of swings.", text=text))
    assert reading.swings_source is not None
    swings = int(value.number)
    source = _understood(reading.swings_source, text, say("{n} swings", n=swings))
    return replace(reading, swings=swings, swings_source=source)


def _with_timing(reading: Reading, key: str, text: str) -> Reading:
    timings = []
    for timing in reading.timings:
        if correction_key(timing.source) != key:
            timings.append(timing)
        elif text.strip():
            time, decimals, _ = _quantity(text, "time", _time_unit(timing))
            source = _understood(timing.source, text, Figures(f"{time:g} s"))
            timings.append(Timing(time, source, decimals))
    return replace(reading, timings=tuple(timings))


def _time_unit(timing: Timing) -> float:
    """The unit of the learner's column in seconds, as the uncorrected cell shows it."""
    was = read_text(timing.source.raw)
    if was.number and was.unit is None and not was.forms:
        for unit in (60.0, 0.001):
            if abs(was.number * unit - timing.time_s) < 1e-6 * timing.time_s:
                return unit
    return 1.0


def _own(value: OwnValue, text: str) -> OwnValue:
    read = read_text(text)
    if read.number is None:
        raise ValueError(
            say(
                "“{text}” cannot be read ({why}).",
                text=text,
                why=read.trouble or say("it is empty"),
            )
        )
    unit = size(read.unit) if read.unit is not None else 1.0
    number = read.number * unit
    source = _understood(value.source, text, Figures(f"{number:g}"))
    return replace(value, value=number, source=source, decimals=read.decimals)


def reading_beside(readings: Sequence[Reading], place: Source) -> int:
    """The reading that a cell without a value belongs to: same row, or same column."""
    for part in (2, 1):
        beside = _in_line(readings, place, part=part)
        if len(beside) == 1:
            return beside[0]
    raise ValueError(say("no reading belongs to this cell; type the readings in instead."))


def _in_line(readings: Sequence[Reading], place: Source, *, part: int) -> list[int]:
    """The readings whose length stands in the row (part 2) or column (part 1) of a cell."""
    match = _CELL.fullmatch(place.cell)
    if match is None:
        return []
    return [
        index
        for index, reading in enumerate(readings)
        if (other := _CELL.fullmatch(reading.source.cell)) is not None
        and other[part] == match[part]
        and reading.source.sheet == place.sheet
    ]


def _with_new_timing(reading: Reading, place: Source, text: str) -> Reading:
    """A cell that held nothing readable becomes one more timing, in the order of the cells."""
    unit = _time_unit(reading.timings[0]) if reading.timings else 1.0
    time, decimals, _ = _quantity(text, "time", unit)
    timing = Timing(time, _understood(place, text, Figures(f"{time:g} s")), decimals)

    def order(one: Timing) -> tuple[str, int, int, str]:
        match = _CELL.fullmatch(one.source.cell)
        if match is None:
            return (one.source.sheet, 0, 0, one.source.cell)
        return (one.source.sheet, int(match[2]), len(match[1]), match[1])

    return replace(reading, timings=tuple(sorted([*reading.timings, timing], key=order)))
