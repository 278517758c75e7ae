"""Which cell of the readings a finding, a reason or a source speaks of. No Qt here."""

from __future__ import annotations

import math
import re
from collections.abc import Iterable
from dataclasses import dataclass

from markbench.intake.corrections import reading_beside
from markbench.intake.tables.grid import column_letters, column_number
from markbench.model import Analysis, Finding, Reading, ReadingsTable, Source

# (reading, timing); timing None for the length itself, as in Finding.cells.
Cell = tuple[int, int | None]

#: What is said of the line as a whole, and of no cell.
OF_THE_LINE = frozenset({"g_implausible", "intercept"})
_AS_FAR = 0.8  # of the farthest: then a row stands as far as that
_ADDRESS = re.compile(r"([A-Z]+)(\d+)")


def cells_of(sources: Iterable[Source], table: ReadingsTable | None) -> list[Cell]:
    """Cells of the table that stand at any of ``sources``."""
    if table is None:
        return []
    wanted = {_place(source) for source in sources if source.cell}
    found: list[Cell] = []
    for i, reading in enumerate(table.readings):
        if _place(reading.source) in wanted:
            found.append((i, None))
        found += [(i, k) for k, t in enumerate(reading.timings) if _place(t.source) in wanted]
    return found


def cells_of_finding(finding: Finding, table: ReadingsTable | None) -> list[Cell]:
    """Cells a finding names itself, else those its sources stand at."""
    return list(finding.cells) or cells_of(finding.sources, table)


def farthest_rows(analysis: Analysis) -> list[Cell]:
    """The lengths whose g stands farthest from the local one, for what is said of the line."""
    away = {
        i: abs(math.log(row.g / analysis.local.g))
        for i, row in enumerate(analysis.rows)
        if math.isfinite(row.g) and row.g > 0
    }
    most = max(away.values(), default=0.0)
    far = [i for i, size in away.items() if size >= _AS_FAR * most]
    return [(i, k) for i in far for k in (None, *range(len(analysis.rows[i].timings_s)))]


@dataclass(frozen=True, slots=True)
class Slot:
    """A place for a timing: the number of the timing in it, and the cell it stands at.

    Without a timing the cell is empty and can be filled; without a cell it cannot.
    """

    timing: int | None
    source: Source | None = None


def timing_slots(table: ReadingsTable, *, for_many: bool = False) -> list[tuple[Slot, ...]]:
    """For each reading the timings under one another as in the learner's own table.

    A timing that is not there leaves its place empty, and the next one does not slide into it.
    Where the table shows no such order, the timings stand one after the other. On a sheet
    ``for_many`` only the row of a length is the learner's own.
    """
    most = max((len(reading.timings) for reading in table.readings), default=0)
    plain = [_in_a_row(reading, most) for reading in table.readings]
    if all(len(reading.timings) == most for reading in table.readings):
        return plain
    steps = [_steps(reading) for reading in table.readings]
    if any(way is None for way in steps):
        return plain
    ways = [way for way in steps if way is not None]
    places = sorted({step for way in ways for step in way})
    in_line = all(down == 0 for down, _ in places) or all(across == 0 for _, across in places)
    if not in_line or len(places) != most:
        return plain
    slots = []
    for reading, way in zip(table.readings, ways, strict=True):
        numbers = {step: number for number, step in enumerate(way)}
        slots.append(
            tuple(
                Slot(numbers[step], reading.timings[numbers[step]].source)
                if step in numbers
                else Slot(None, None if for_many and step[0] else _empty(table, reading, step))
                for step in places
            )
        )
    whole = all(slot.source is not None for row in slots for slot in row)
    return slots if whole else plain


def _in_a_row(reading: Reading, most: int) -> tuple[Slot, ...]:
    held = [Slot(k, timing.source) for k, timing in enumerate(reading.timings)]
    return (*held, *[Slot(None)] * (most - len(held)))


def _steps(reading: Reading) -> list[tuple[int, int]] | None:
    """How far down and across from the length each timing stands; ``None`` if elsewhere."""
    home, found = _numbered(reading.source), []
    for timing in reading.timings:
        at = _numbered(timing.source)
        if home is None or at is None or _sheet(timing.source) != _sheet(reading.source):
            return None
        found.append((at[0] - home[0], at[1] - home[1]))
    return found


def _empty(table: ReadingsTable, reading: Reading, step: tuple[int, int]) -> Source | None:
    """The cell so far from a length, if it is empty and what is typed there would be its own."""
    home = _numbered(reading.source)
    assert home is not None
    row, column = home[0] + step[0], home[1] + step[1]
    if row < 1 or column < 1:
        return None
    source = Source(reading.source.file, reading.source.sheet, f"{column_letters(column - 1)}{row}")
    if _place(source) in {_place(one) for one in _sources(table)}:
        return None
    try:
        owner = table.readings[reading_beside(table.readings, source)]
    except ValueError:
        return None
    return source if owner is reading else None


def _sources(table: ReadingsTable) -> Iterable[Source]:
    yield from table.headings
    yield from (value.source for value in table.own_values)
    for reading in table.readings:
        yield reading.source
        yield from (timing.source for timing in reading.timings)
        if reading.swings_source is not None:
            yield reading.swings_source


def _numbered(source: Source) -> tuple[int, int] | None:
    """Row and column, both from 1."""
    match = _ADDRESS.fullmatch(source.cell)
    if match is None:
        return None
    return int(match[2]), column_number(match[1]) + 1


def _sheet(source: Source) -> tuple[str, str]:
    return (source.file, source.sheet)


def correction_key(source: Source) -> str:
    """The subject under which a correction of a cell is kept."""
    return f"{source.file}|{source.sheet}|{source.cell}"


def _place(source: Source) -> tuple[str, str, str]:
    return (source.file, source.sheet, source.cell)
