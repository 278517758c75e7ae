"""A grid as the search sees it: upright, or turned so that its rows become columns."""

from __future__ import annotations

from dataclasses import dataclass, field

from markbench.intake.tables.grid import Cell, Grid
from markbench.intake.tables.headings import NOTHING, Heading, understand
from markbench.intake.tables.lines import Ref
from markbench.intake.tables.values import EMPTY, Value, mistyped, read_value


@dataclass(slots=True)
class View:
    """A grid upright or turned; rows and columns below are the view's own."""

    grid: Grid
    turned: bool
    cells: tuple[tuple[Cell, ...], ...]
    values: list[list[Value]] = field(default_factory=list)
    heads: list[dict[int, Heading]] = field(default_factory=list)
    merged: dict[tuple[int, int], tuple[int, int]] = field(default_factory=dict)

    def at(self, row: int, column: int) -> tuple[int, int]:
        """The grid's row and column of a cell."""
        return (column, row) if self.turned else (row, column)

    def value(self, row: int, column: int) -> Value:
        """A cell as a number."""
        return self.values[row][column]

    def ref(self, row: int, column: int, heading: Heading = NOTHING) -> Ref:
        """A cell with its value and heading."""
        value = self.values[row][column]
        return Ref(value, column, row, heading) if self.turned else Ref(value, row, column, heading)


def view_of(grid: Grid, turned: bool = False) -> View:
    """A grid seen upright or turned, each heading understood."""
    cells = tuple(zip(*grid.rows, strict=True)) if turned else grid.rows
    view = View(grid, turned, cells)
    for row in cells:
        heads: dict[int, Heading] = {}
        values = [EMPTY if cell == "" else read_value(cell) for cell in row]
        view.values.append(values)
        for column, cell in enumerate(row):
            if type(cell) is str and cell and values[column].number is None and not mistyped(cell):
                heading = understand(cell)
                if heading is not NOTHING:
                    heads[column] = heading
        view.heads.append(heads)
    for (top, left), (bottom, right) in grid.merged:
        first, last = ((left, top), (right, bottom)) if turned else ((top, left), (bottom, right))
        for at_row in range(first[0], min(last[0], len(cells) - 1) + 1):
            for at_column in range(first[1], min(last[1], len(cells[0]) - 1) + 1):
                view.merged[at_row, at_column] = first
    return view
