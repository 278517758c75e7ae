"""The raw cells of one sheet, kept as they were so that a teacher can point at them."""

from __future__ import annotations

import datetime as dt
import math
from dataclasses import dataclass
from functools import lru_cache

from markbench.model import Source

# What a cell may hold; "" is an empty one.
Cell = str | int | float | bool | dt.time | dt.timedelta | dt.datetime | dt.date

LONGEST_CELL = 10_000


@lru_cache(maxsize=1024)
def column_letters(column: int) -> str:
    """Spreadsheet letters of a column counted from 0 (0 → A, 26 → AA)."""
    if column < 26:
        return chr(65 + column)
    letters = ""
    column += 1
    while column:
        column, rest = divmod(column - 1, 26)
        letters = chr(65 + rest) + letters
    return letters


def column_number(letters: str) -> int:
    """Column counted from 0 of spreadsheet letters; ValueError for anything else."""
    number = 0
    for letter in letters.strip().upper():
        if not "A" <= letter <= "Z":
            raise ValueError(f"{letters!r} is not a column")
        number = number * 26 + ord(letter) - 64
    if not number:
        raise ValueError("an empty column name")
    return number - 1


def text_of(cell: Cell) -> str:
    """A cell as text: what the learner typed, as far as the file keeps it."""
    if type(cell) is str:
        return cell
    if isinstance(cell, float):
        return f"{cell:.15g}"
    if isinstance(cell, dt.timedelta):
        seconds = cell.total_seconds()
        if not math.isfinite(seconds):
            return str(cell)
        hours, rest = divmod(seconds, 3600)
        minutes, rest = divmod(rest, 60)
        return f"{int(hours)}:{int(minutes):02d}:{rest:05.2f}"
    if isinstance(cell, dt.time):
        return cell.strftime("%H:%M:%S") + (
            f".{cell.microsecond:06d}".rstrip("0") if cell.microsecond else ""
        )
    return str(cell)


@dataclass(frozen=True, slots=True)
class Grid:
    """The cells of one sheet or text file, rows from the sheet's first row.

    ``merged`` holds merged ranges as ((first row, first column), (last row, last column)),
    counted from 0. ``missing`` names cells whose value the file does not hold, with what
    stands there instead (a formula without a stored result, an error such as #DIV/0!).
    ``cut``: only a part of a very large sheet was kept. ``text`` marks a text file, whose
    cells show every decimal that was typed. ``hidden``: a sheet the learner's program hides.
    ``joined``: commas that parted the decimals from the columns' commas were guessed.
    """

    file: str
    sheet: str
    rows: tuple[tuple[Cell, ...], ...]
    merged: tuple[tuple[tuple[int, int], tuple[int, int]], ...] = ()
    missing: tuple[tuple[int, int, str], ...] = ()
    cut: bool = False
    text: bool = False
    hidden: bool = False
    joined: bool = False

    def cell_name(self, row: int, column: int) -> str:
        """A1 name of a cell counted from 0."""
        return f"{column_letters(column)}{row + 1}"

    def source(self, row: int, column: int, understood: str = "") -> Source:
        """Where a cell stands and what was typed there."""
        return Source(
            self.file,
            self.sheet,
            f"{column_letters(column)}{row + 1}",
            text_of(self.rows[row][column]),
            understood,
        )
