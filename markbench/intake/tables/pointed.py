"""A table where the teacher has pointed at its columns or rows."""

from __future__ import annotations

from dataclasses import replace

from markbench.intake.tables.grid import Grid, column_number
from markbench.intake.tables.headings import NOTHING, Heading, Quantity, understand
from markbench.intake.tables.lines import (
    MOST_SWINGS,
    Found,
    Line,
    is_count,
    left_empty,
    not_understood,
    parted,
)
from markbench.intake.tables.outcome import ColumnHints
from markbench.intake.tables.units import UNITS
from markbench.intake.tables.view import View, view_of
from markbench.model import Concern, Finding, say


def find_pointed(
    grids: tuple[Grid, ...], hints: ColumnHints, learner: str
) -> tuple[list[Found], list[Finding]]:
    """The table the hints point at, or a finding on what they point at in vain."""
    grid = next((g for g in grids if g.sheet == hints.sheet), None)
    if grid is None and not hints.sheet and grids:
        grid = grids[0]
    if grid is None:
        return [], [_vain(learner, grids, say("there is no sheet “{sheet}”", sheet=hints.sheet))]
    turned = hints.along == "rows"
    view = view_of(grid, turned)

    def line_of(name: str) -> int:
        number = int(name) - 1 if turned else column_number(name)
        if not 0 <= number < (len(view.cells[0]) if view.cells else 0):
            raise ValueError(say("{cell} lies outside the sheet", cell=name))
        return number

    def across(name: str, otherwise: int) -> int:
        if not name:
            return otherwise
        return column_number(name) if turned else int(name) - 1

    try:
        length = line_of(hints.length)
        timings = [line_of(name) for name in hints.timings]
        counted = isinstance(hints.swings, str) and hints.swings != ""
        if _is_count(hints.swings, turned):
            counted = False
        swings = line_of(str(hints.swings)) if counted else None
        first = max(0, across(hints.first, 0))
        last = min(len(view.cells) - 1, across(hints.last, len(view.cells) - 1))
        for unit in (hints.length_unit, hints.time_unit):
            if unit and unit not in UNITS:
                raise ValueError(say("{unit} is no unit known here", unit=unit))
        count = int(hints.swings) if hints.swings != "" and not counted else None
        if count is not None and not 1 <= count <= MOST_SWINGS:
            raise ValueError(say("{n} is no number of swings", n=count))
    except ValueError as error:
        return [], [_vain(learner, grids, str(error))]
    table = Found(grid, [], turned=turned, long=len(timings) == 1)
    length_heading, timing_headings = _headings(view, length, timings, hints, count, table)
    dashes = []
    for row in range(first, last + 1):
        ref = view.ref(row, length, length_heading)
        if ref.value.number is None or ref.value.number <= 0:
            if hints.first and not ref.value.empty:
                why = ref.value.trouble or say("it is not above zero")
                table.findings.append(
                    not_understood(learner, grid, ref.row, ref.column, say("a length"), why)
                )
            continue
        line = Line(ref)
        for column, heading in zip(timings, timing_headings, strict=True):
            timing = view.ref(row, column, heading)
            if timing.value.number is not None and timing.value.number > 0:
                line.timings += parted(timing)
            elif timing.value.dash:
                dashes.append(timing)
            elif not timing.value.empty:
                why = timing.value.trouble or say("it is not above zero")
                table.findings.append(
                    not_understood(learner, grid, timing.row, timing.column, say("a timing"), why)
                )
        if swings is not None:
            number = view.ref(row, swings)
            if is_count(number.value.number):
                line.swings = number
        if line.timings:
            table.lines.append(line)
    if dashes:
        table.findings.append(left_empty(learner, grid, dashes))
    if not table.lines:
        return [], [*table.findings, _vain(learner, grids, say("no length has a timing beside it"))]
    low, high = view.at(first, min(length, *timings)), view.at(last, max(length, *timings))
    table.region = (*low, *high)
    return [table], []


def _is_count(swings: str | int, turned: bool) -> bool:
    """Whether text means a count: digits do, except where rows are numbered."""
    return isinstance(swings, int) or (not turned and swings.isdecimal())


def _headings(
    view: View,
    length: int,
    timings: list[int],
    hints: ColumnHints,
    count: int | None,
    table: Found,
) -> tuple[Heading, list[Heading]]:
    """What the nearest texts above the numbers say, the teacher's word going first."""
    known: dict[int, Heading] = {}
    for column in (length, *timings):
        for row, cells in enumerate(view.cells):
            if view.value(row, column).number is not None:
                break
            cell = cells[column]
            if isinstance(cell, str) and cell.strip():
                known[column] = understand(cell)
                table.heads = [
                    h
                    for h in table.heads
                    if (h[0], h[1])[not table.turned] != (view.at(row, column)[not table.turned])
                ]
                # What it holds is the teacher's word now, and so a unit is due where none was.
                meant: Quantity = "length" if column == length else "time"
                heading = replace(known[column], quantity=known[column].quantity or meant)
                table.heads.append((*view.at(row, column), cell.strip(), heading))
    said = known.get(length, NOTHING)
    unit = hints.length_unit or (said.unit if said.quantity == "length" else None)
    of_length = Heading("length", unit, has_unit=said.has_unit)
    of_timings = []
    for column in timings:
        said = known.get(column, NOTHING)
        of_timings.append(
            Heading(
                "time",
                hints.time_unit or said.unit,
                count if count is not None else said.swings,
                repeat=said.repeat,
                has_unit=said.has_unit,
            )
        )
    return of_length, of_timings


def _vain(learner: str, grids: tuple[Grid, ...], why: str) -> Finding:
    file = grids[0].file if grids else say("the file")
    return Finding(
        "table_not_understood",
        learner,
        say("{file}: the columns pointed at could not be read: {why}.", file=file, why=why),
        Concern.LOOK,
        ask=say("Which column holds the lengths, and which the times?"),
    )
