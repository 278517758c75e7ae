"""What every layout comes down to: lines, each one length with its timings and own values."""

from __future__ import annotations

from dataclasses import dataclass, field, replace

from markbench.intake.tables.grid import Grid, text_of
from markbench.intake.tables.headings import NOTHING, Heading
from markbench.intake.tables.values import Value
from markbench.model import Concern, Finding, Source, say

MOST_SWINGS = 1000  # beyond any timing of one pendulum


def is_count(number: float | None) -> bool:
    """Whether a number can be the swings of one timing."""
    return number is not None and number == int(number) and 1 <= number <= MOST_SWINGS


@dataclass(slots=True)
class Ref:
    """One cell of a grid, its value, and what its heading says."""

    value: Value
    row: int
    column: int
    heading: Heading = NOTHING


def parted(ref: Ref) -> list[Ref]:
    """A cell once for each timing it holds."""
    return [replace(ref, value=value) for value in ref.value.several] or [ref]


@dataclass(slots=True)
class Line:
    """One row of readings as it stands in the file. ``own`` are worked-out values."""

    length: Ref
    timings: list[Ref] = field(default_factory=list)
    swings: Ref | None = None
    own: list[Ref] = field(default_factory=list)
    unclaimed: list[Ref] = field(default_factory=list)


@dataclass(slots=True)
class Found:
    """A table found in a grid, before units, swings and clock forms are settled.

    ``heads``: cells of the headings with what was made of them. ``long``: one row per
    timing, so that equal lengths belong together. ``region``: the table's cells in the
    grid, (first row, first column, last row, last column). ``unread``: by column (in a turned
    table, row), findings on cells that are no numbers, to be told if it holds readings.
    """

    grid: Grid
    lines: list[Line]
    heads: list[tuple[int, int, str, Heading]] = field(default_factory=list)
    findings: list[Finding] = field(default_factory=list)
    long: bool = False
    turned: bool = False
    region: tuple[int, int, int, int] = (0, 0, -1, -1)
    unread: dict[int, list[Finding]] = field(default_factory=dict)

    def key_of(self, ref: Ref) -> int:
        """The column a cell stands in; in a turned table, the row."""
        return ref.row if self.turned else ref.column

    def head_of(self, ref: Ref) -> tuple[int, int, str] | None:
        """The heading cell over (or, in a turned table, before) a cell, and its text."""
        for row, column, text, _ in self.heads:
            if (row == ref.row) if self.turned else (column == ref.column):
                return row, column, text
        return None

    @property
    def raw(self) -> bool:
        """Whether it holds timings at all."""
        return any(line.timings for line in self.lines)


def places_of(grid: Grid, ref: Ref) -> int:
    """Decimals of a cell as typed, or as far as the file's number shows them."""
    if ref.value.decimals is not None:
        return ref.value.decimals
    return min(6, len(text_of(grid.rows[ref.row][ref.column]).partition(".")[2]))


def place(grid: Grid, row: int, column: int) -> str:
    """Where a cell is, as a person would say it."""
    return str(Source(grid.file, grid.sheet, grid.cell_name(row, column)))


def table_place(grid: Grid) -> str:
    """Which table is spoken of."""
    return str(Source(grid.file, grid.sheet))


def not_understood(
    learner: str, grid: Grid, row: int, column: int, what: str, why: str, raw: str | None = None
) -> Finding:
    """A cell that should hold a number and does not."""
    shown = text_of(grid.rows[row][column]) if raw is None else raw
    source = Source(
        grid.file,
        grid.sheet,
        grid.cell_name(row, column),
        shown,
        say("not read as {what}: {why}", what=what, why=why),
    )
    short = shown if len(shown) <= 40 else shown[:37] + "…"
    said = say("“{text}”", text=short) if short.strip() else say("an empty cell")
    return Finding(
        check="value_not_understood",
        learner=learner,
        message=say(
            "{place}: {said} could not be read as {what}: {why}.",
            place=place(grid, row, column),
            said=said,
            what=what,
            why=why,
        ),
        concern=Concern.ASK,
        numbers={"cell": grid.cell_name(row, column)},
        sources=(source,),
        ask=say("Which value belongs here?"),
    )


def left_empty(learner: str, grid: Grid, refs: list[Ref]) -> Finding:
    """Cells with a dash or the like: no reading was made."""
    names = [grid.cell_name(ref.row, ref.column) for ref in refs]
    listed = ", ".join(names[:8]) + (", …" if len(names) > 8 else "")
    return Finding(
        check="value_not_understood",
        learner=learner,
        message=say(
            "{table}: {cells} holds a dash or the like, taken as no reading."
            if len(names) == 1
            else "{table}: {cells} hold a dash or the like, taken as no reading.",
            table=table_place(grid),
            cells=listed,
        ),
        concern=Concern.NOTE,
        numbers={"cells": len(names)},
        sources=tuple(
            grid.source(ref.row, ref.column, say("taken as no reading")) for ref in refs[:20]
        ),
    )
