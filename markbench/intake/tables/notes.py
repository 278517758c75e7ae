"""What stands around a table: a note of the swings per timing, of units, a final own g."""

from __future__ import annotations

import re
from collections.abc import Iterable

from markbench.intake.tables.grid import Grid, text_of
from markbench.intake.tables.guesses import Noted
from markbench.intake.tables.headings import NOTHING, plain, understand, unit_named, words
from markbench.intake.tables.lines import Found, table_place
from markbench.intake.tables.units import dimension, size
from markbench.intake.tables.values import read_value
from markbench.intake.tables.view import View
from markbench.model import Brief, Concern, Finding, OwnValue, Source, say

_LONGEST_NOTE = 1000
_EQUALS_NUMBER = re.compile(
    r"[=≈:]\s*(?P<n>\d+(?:[.,]\d+)?)\s*(?:(?:±|\+/-)\s*\d+(?:[.,]\d+)?\s*)?(?P<u>[^=≈;,]{0,16})"
)
_G_FIRST = re.compile(r"(?<![^\W\d_])g(?:_?\w{0,6})?\s*(?:\([^)]*\)\s*)?(?:/[^=≈:]{1,12})?[=≈:]")
_COUNT_AFTER = re.compile(r"[=:]\s*(\d{1,3})(?![\d.,])")
_NEVER_SWINGS = 500


def _outside(view: View, founds: Iterable[Found]) -> Iterable[tuple[int, int, str]]:
    """Text cells of a grid that belong to no table."""
    regions = [found.region for found in founds if found.grid is view.grid]
    heads = {(r, c) for found in founds if found.grid is view.grid for r, c, _, _ in found.heads}
    for row, cells in enumerate(view.grid.rows):
        for column, cell in enumerate(cells):
            if type(cell) is not str or len(cell) < 1 or (row, column) in heads:
                continue
            if any(a <= row <= c and b <= column <= d for a, b, c, d in regions):
                continue
            if not cell.isspace():
                yield row, column, cell


def noted_beside(views: Iterable[View], founds: list[Found], brief: Brief) -> Noted:
    """Swings per timing and units told in the cells around the tables of a file."""
    noted = Noted()
    counts: dict[int, Source] = {}
    told: list[tuple[Grid, int, int, Source]] = []
    for view in views:
        for row, column, text in _outside(view, founds):
            heading = view.heads[row].get(column, NOTHING) if not view.turned else understand(text)
            count = heading.swings
            if count is None:
                count = _count_in(view.grid, row, column, text)
            if count is not None and 2 <= count <= _NEVER_SWINGS:
                source = view.grid.source(row, column, say("{n} swings in one timing", n=count))
                counts.setdefault(count, source)
                told.append((view.grid, row, count, source))
            if heading.unit and len(text) < 80:
                if heading.quantity == "length" and noted.length_unit is None:
                    noted.length_unit = heading.unit if heading.worded else None
                elif heading.quantity == "time" and heading.worded and noted.time_unit is None:
                    noted.time_unit = heading.unit
    if len(counts) > 1:
        allowed = {brief.swings_per_timing, *brief.swings_allowed}
        counts = {n: s for n, s in counts.items() if n in allowed}
    if len(counts) == 1:
        noted.swings, noted.swings_source = next(iter(counts.items()))
    elif counts:
        noted.several = tuple(one for one in told if one[2] in counts)
    return noted


def _count_in(grid: Grid, row: int, column: int, text: str) -> int | None:
    """A count in a sentence, or in the cell beside “number of oscillations”."""
    if len(text) > _LONGEST_NOTE:
        return None
    folded = plain(text).casefold()
    w = words()
    if match := w.find["swings"].search(folded):
        after = _COUNT_AFTER.search(folded, match.end())
        if after:
            return int(after[1])
        if counted := w.counted.search(folded):
            number = counted["n"]
            return int(number) if number.isdigit() else w.number_words[number]
        if len(text) < 60 and column + 1 < len(grid.rows[row]):
            value = read_value(grid.rows[row][column + 1]).number
            if value is not None and value == int(value):
                return int(value)
    return None


def own_g(
    views: Iterable[View], founds: list[Found], learner: str, findings: list[Finding]
) -> list[OwnValue]:
    """A final g written beside or below the table, as a value for the whole table."""
    values = []
    for view in views:
        grid = view.grid
        for row, column, text in _outside(view, founds):
            if len(text) > _LONGEST_NOTE:
                continue
            told = _g_in(grid, row, column, text)
            if told is None:
                continue
            number, unit, cell, places = told
            if dimension(unit) == "acceleration" and unit:
                number *= size(unit)
            elif 900 < number < 1100:
                number *= 0.01
                findings.append(
                    Finding(
                        "unit_guessed",
                        learner,
                        say(
                            "{table}: the final g in {cell} has no unit and was taken as cm/s².",
                            table=table_place(grid),
                            cell=grid.cell_name(row, cell),
                        ),
                        Concern.NOTE,
                        {"unit": "cm/s²", "quantity": "g"},
                        (grid.source(row, cell, say("taken as {what}", what="cm/s²")),),
                        say("Which unit is this g in?"),
                    )
                )
            values.append(
                OwnValue(
                    "g_m_s2",
                    number,
                    Source(
                        grid.file,
                        grid.sheet,
                        grid.cell_name(row, cell),
                        text_of(grid.rows[row][cell]),
                        say("the learner's own final g {number:.6g} m/s²", number=number),
                    ),
                    decimals=places,
                )
            )
    return values


def _g_in(
    grid: Grid, row: int, column: int, text: str
) -> tuple[float, str | None, int, int | None] | None:
    """A g told by one cell (with its neighbour): number, unit, column of the number, places."""
    cased = plain(text)
    folded = cased.casefold()
    w = words()
    if w.find["accepted"].search(folded):
        return None
    symbol = _G_FIRST.search(cased)
    if symbol or (w.find["g"].search(folded) and ("=" in folded or ":" in folded)):
        rest = cased[symbol.start() :] if symbol else cased
        matches = list(_EQUALS_NUMBER.finditer(rest))
        if matches:
            match = matches[-1]
            digits = match["n"].replace(",", ".")
            tail = match["u"].strip().rstrip(".").strip()
            unit = unit_named(tail) if tail else None
            if unit is None and tail:
                unit = next(
                    (u for end in range(len(tail), 1, -1) if (u := unit_named(tail[:end]))), None
                )
            if unit is not None and dimension(unit) != "acceleration":
                return None
            number = float(digits)
            return (number, unit, column, len(digits.partition(".")[2])) if number else None
        if not rest.rstrip().endswith(("=", ":")):
            return None
    label = understand(cased.rstrip(" =:≈"))
    if label.quantity != "g" or len(text) > 60:
        return None
    for beside in range(column + 1, min(column + 3, len(grid.rows[row]))):
        cell = grid.rows[row][beside]
        value = read_value(cell)
        if value.number is not None and value.number > 0:
            places = value.decimals
            if places is None:
                places = len(text_of(cell).partition(".")[2])
            return value.number, value.unit or label.unit, beside, places
        if not value.empty:
            return None
    return None
