"""Tables without usable headings: lengths across the top, as sub-headings, or bare numbers.

But for the first, only tried where no heading names a length. Bare numbers are taken for a
table only if the pendulum's law ties two of their columns together, row by row.
"""

from __future__ import annotations

import math
import re

from markbench.intake.tables.grid import Cell
from markbench.intake.tables.headings import (
    NOTHING,
    Heading,
    join,
    plain,
    understand,
    unit_named,
)
from markbench.intake.tables.lines import (
    Found,
    Line,
    Ref,
    is_count,
    not_understood,
    parted,
    table_place,
)
from markbench.intake.tables.units import dimension, size
from markbench.intake.tables.values import Value, mistyped, read_text, read_value
from markbench.intake.tables.view import View
from markbench.model import Brief, Concern, Finding, say

_MOST_BARE_COLUMNS = 20
# Hand timing strays by a few parts in a hundred; other columns rarely keep so close to √L.
_SCATTER = 0.06
_LABELLED = re.compile(
    r"(?P<label>[^=:]{1,40}?)\s*[=:]\s*(?P<value>[OIl|]?[\d.,][\d.,OoIl|]*\s*\w*)\s*\.?"
)


def find_crosswise(view: View, learner: str) -> list[Found]:
    """Lengths across the top (“20 cm, 30 cm …”), their timings down the columns."""
    top = _length_row(view)
    if top is None:
        return []
    row, columns, heading = top
    slips = [
        (*view.at(row, column), value.trouble)
        for column, value in enumerate(view.values[row])
        if column > columns[0] and value.trouble and mistyped(str(view.cells[row][column]))
    ]
    lines = {column: Line(view.ref(row, column, heading)) for column in columns}
    above = [h for r in range(row + 1) for c, h in view.heads[r].items() if c not in columns]
    spoken = next((h for h in above if h.quantity == "time"), NOTHING)
    table = Found(view.grid, [], turned=view.turned)
    for at_row, at_column, why in slips:
        table.findings.append(
            not_understood(learner, view.grid, at_row, at_column, say("a length"), why)
        )
    last = row
    for below in range(row + 1, len(view.cells)):
        label = next(iter(view.heads[below].values()), NOTHING)
        numbers = [c for c in columns if view.value(below, c).number is not None]
        if not numbers and last > row:
            break
        for column in columns:
            ref = view.ref(below, column, join(spoken, label))
            if ref.value.number is not None and ref.value.number > 0:
                put(lines[column], ref)
                last = below
            elif ref.value.trouble and numbers:
                table.findings.append(
                    not_understood(
                        learner, view.grid, ref.row, ref.column, say("a timing"), ref.value.trouble
                    )
                )
    table.lines = [line for line in lines.values() if line.timings]
    if len(table.lines) < 2:
        return []
    low, high = view.at(row, 0), view.at(last, max(columns))
    table.region = (*low, *high)
    return [table]


def _length_row(view: View) -> tuple[int, list[int], Heading] | None:
    """The one row of lengths that heads columns: cells with units, or under “Length (cm)”."""
    found = []
    for row, values in enumerate(view.values):
        columns = [c for c, v in enumerate(values) if v.unit and dimension(v.unit) == "length"]
        if len({values[c].number for c in columns}) >= 2:
            if any(h.quantity == "length" for h in view.heads[row].values()):
                return None
            found.append((row, columns, NOTHING))
    if found:
        return found[0] if len(found) == 1 else None
    for row, heads in enumerate(view.heads[:-1]):
        for column, heading in heads.items():
            values = view.values[row + 1]
            if (
                heading.quantity != "length"
                or column == 0
                or any(cell != "" for cell in view.cells[row][column + 1 :])
            ):
                continue
            columns = [c for c in range(column, len(values)) if values[c].number is not None]
            if len(columns) >= 2 and all(cell == "" for cell in view.cells[row + 1][:column]):
                return row + 1, columns, heading
    return None


def find_blocks(view: View, learner: str) -> list[Found]:
    """“Length = 20 cm”, then its timings row by row, then the next length."""
    table = Found(view.grid, [], long=True)
    current: Line | None = None
    over: dict[int, Heading] = {}  # headings within a block, by column
    first_row = last_row = -1
    for row, cells in enumerate(view.cells):
        filled = [c for c, cell in enumerate(cells) if cell != "" and str(cell).strip()]
        if not filled:
            continue
        length = _block_length(view, row, filled)
        if length is not None and length.value.trouble:
            why = length.value.trouble
            table.findings.append(
                not_understood(learner, view.grid, row, length.column, say("a length"), why)
            )
            current = None  # what follows is of no length that is known
            continue
        if length is not None:
            current, over = Line(length), {}
            table.lines.append(current)
            first_row = row if first_row < 0 else first_row
            last_row = row
            filled = [c for c in filled if c > length.column]
        if current is None:
            continue
        heading = NOTHING
        for column in filled:
            cell = cells[column]
            if isinstance(cell, str) and read_value(cell).number is None:
                inline = _LABELLED.fullmatch(plain(cell).strip())
                if mistyped(inline["value"] if inline else cell):
                    why = read_text(inline["value"] if inline else cell).trouble
                    table.findings.append(
                        not_understood(learner, view.grid, row, column, say("a timing"), why)
                    )
                    continue
                if inline and (value := read_text(inline["value"])).number is not None:
                    put(current, Ref(value, row, column, understand(inline["label"])))
                    last_row = row
                    continue
                heading = over[column] = understand(cell.rstrip(" :="))
                if heading is NOTHING and current.timings == [] and len(cell) <= 12:
                    table.findings.append(
                        not_understood(
                            learner,
                            view.grid,
                            row,
                            column,
                            say("a timing"),
                            read_value(cell).trouble or say("it is not a number"),
                        )
                    )
                continue
            above = over.get(column, NOTHING)
            if above.quantity in ("trial", "number") and above.unit is None and len(over) > 1:
                continue  # under "Trial" stands which one it is
            ref = view.ref(row, column, join(above, heading))
            if ref.value.number is not None and ref.value.number > 0:
                put(current, ref)
                last_row = row
    table.lines = [line for line in table.lines if line.timings]
    if len(table.lines) < 2:
        return []
    table.region = (first_row, 0, last_row, max(map(len, view.cells)) - 1)
    return [table]


def put(line: Line, ref: Ref) -> None:
    """Give a cell its part in a line, by what its label or heading says."""
    quantity = ref.heading.quantity
    if quantity in ("period", "period_squared", "g") or ref.heading.mean:
        if quantity is None:
            ref.heading = Heading("time", ref.heading.unit, mean=True)
        line.own.append(ref)
    elif dimension(ref.value.unit or ref.heading.unit) == "other":
        return  # a mass, an angle
    elif quantity in ("time", "trial", None):
        line.timings += parted(ref)
    elif quantity == "swings" and line.swings is None and is_count(ref.value.number):
        line.swings = ref


def _block_length(view: View, row: int, filled: list[int]) -> Ref | None:
    first = view.cells[row][filled[0]]
    if not isinstance(first, str):
        return None
    text = plain(first).strip()
    if (match := _LABELLED.fullmatch(text)) is not None:
        heading, value = understand(match["label"]), read_text(match["value"])
        if heading.quantity == "length" and (value.number or mistyped(match["value"])):
            return Ref(value, row, filled[0], heading)
        return None
    value = read_value(first)
    if value.number and dimension(value.unit) == "length" and len(filled) == 1:
        return Ref(value, row, filled[0])
    if (
        len(filled) == 1
        and mistyped(first)
        and dimension(unit_named(first.lstrip("0123456789.,:;OoIl|"))) == "length"
    ):
        return Ref(value, row, filled[0])
    heading = understand(text)
    if heading.quantity == "length" and len(filled) == 2:
        beside: Value = view.value(row, filled[1])
        if beside.number or mistyped(str(view.cells[row][filled[1]])):
            return Ref(beside, row, filled[1], heading)
    return None


def find_bare(view: View, brief: Brief, learner: str) -> list[Found]:
    """Columns of numbers with no headings that can be understood."""
    first, last = _longest_run(view)
    rows = range(first, last + 1)
    if len(rows) < 3:
        return []
    width = max(len(view.cells[row]) for row in rows)
    columns = [
        c
        for c in range(width)
        if sum(_meant_for_number(view.cells[row][c]) for row in rows) >= 0.8 * len(rows)
    ][:_MOST_BARE_COLUMNS]
    heads = {c: h for c, h in view.heads[first - 1].items() if c in columns} if first else {}
    counts = [c for c, h in heads.items() if h.quantity == "swings"]
    # Known to be something else; but a word may mislead, as “height” for the length.
    others = [c for c, h in heads.items() if h.quantity in ("number", "other")] + counts
    readings = [c for c in columns if c not in others]
    length = _length_column(view, rows, readings, brief)
    if length is None:
        readings = columns
        length = _length_column(view, rows, readings, brief)
    if length is None:
        return []
    table = Found(view.grid, [], turned=view.turned)
    for column in range(width):
        above = view.cells[first - 1][column] if first else ""
        if isinstance(above, str) and above.strip():
            table.heads.append((*view.at(first - 1, column), above.strip(), NOTHING))
    said = heads.get(length, NOTHING)
    headed = said if said.quantity == "length" else NOTHING
    for row in rows:
        ref = view.ref(row, length, headed)
        if ref.value.trouble:
            table.findings.append(
                not_understood(
                    learner, view.grid, ref.row, ref.column, say("a length"), ref.value.trouble
                )
            )
        if not ref.value.number or ref.value.number < 0:
            continue
        line = Line(ref)
        for column in counts if readings is not columns else ():
            count = view.ref(row, column)
            if is_count(count.value.number) and not _counting(view, rows, column):
                line.swings = count
        for column in readings:
            other = view.ref(row, column, heads.get(column, NOTHING))
            if column != length and other.value.number and other.value.number > 0:
                line.unclaimed += parted(other)
            elif column != length and other.value.trouble:
                table.unread.setdefault(table.key_of(other), []).append(
                    not_understood(
                        learner,
                        view.grid,
                        other.row,
                        other.column,
                        say("a timing"),
                        other.value.trouble,
                    )
                )
        table.lines.append(line)
    if headed is NOTHING:
        table.findings.append(_length_guessed(view, first, length, learner))
    low, high = view.at(first, min(columns)), view.at(last, max(columns))
    table.region = (*low, *high)
    return [table]


def _length_guessed(view: View, first: int, length: int, learner: str) -> Finding:
    name = view.grid.cell_name(*view.at(first, length))
    return Finding(
        "column_guessed",
        learner,
        say(
            "{table}: no heading says where the lengths stand; the row from {cell} was taken, "
            "because the other numbers follow from it by the pendulum's law."
            if view.turned
            else "{table}: no heading says where the lengths stand; the column from {cell} "
            "was taken, because the other numbers follow from it by the pendulum's law.",
            table=table_place(view.grid),
            cell=name,
        ),
        Concern.ASK,
        {"cell": name, "taken_as": "lengths"},
        (view.grid.source(*view.at(first, length), say("taken as the first length")),),
        say("What does each column hold?"),
    )


def _counting(view: View, rows: range, column: int) -> bool:
    """Whether a column only numbers the rows: 1, 2, 3 …"""
    numbers = [_positive(view.cells[row][column]) for row in rows]
    return numbers == [float(n) for n in range(1, len(numbers) + 1)]


def _length_column(view: View, rows: range, columns: list[int], brief: Brief) -> int | None:
    """The column that most of the others follow by the pendulum's law, best."""
    best: tuple[int, float, int] | None = None
    for column in columns:
        numbers = {_positive(view.cells[row][column]) for row in rows}
        if _counting(view, rows, column) or len(numbers) < 2:
            continue
        fits = [
            fit
            for other in columns
            if other != column and (fit := _tied(view, rows, column, other, brief)) is not None
        ]
        if fits:
            candidate = (len(fits), -min(fits), -column)
            best = candidate if best is None else max(best, candidate)
    return None if best is None else -best[2]


def _positive(cell: Cell) -> float | None:
    number = read_value(cell).number
    return number if number is not None and number > 0 else None


def _meant_for_number(cell: Cell) -> bool:
    """Whether a cell holds a number above zero, or one with a slip of the finger in it."""
    return _positive(cell) is not None or (isinstance(cell, str) and mistyped(cell))


def _longest_run(view: View) -> tuple[int, int]:
    """First and last row of the longest run of rows with at least two numbers."""
    best = (0, -1)
    start: int | None = None
    for row, cells in enumerate([*view.cells, ()]):
        if sum(map(_meant_for_number, cells)) >= 2:
            start = row if start is None else start
        elif start is not None:
            if row - 1 - start > best[1] - best[0]:
                best = (start, row - 1)
            start = None
    return best


def _tied(view: View, rows: range, length: int, time: int, brief: Brief) -> float | None:
    """How evenly a column follows another by T = 2π√(L/g), as a log spread; ``None``: not."""
    logs = []
    for row in rows:
        a, b = _positive(view.cells[row][length]), _positive(view.cells[row][time])
        if a is not None and b is not None:
            logs.append(math.log(b / math.sqrt(a)))
    if len(logs) < 3:
        return None
    logs.sort()
    middle = logs[len(logs) // 2]
    if sum(abs(x - middle) < _SCATTER for x in logs) < 0.8 * len(logs):
        return None
    spread = logs[-1] - logs[0]
    for unit in ("cm", "m", "mm"):
        lengths = [n * size(unit) for row in rows if (n := _positive(view.cells[row][length]))]
        if not all(brief.shortest_m / 3 <= n <= 3 * brief.longest_m for n in lengths):
            continue
        apparent = math.exp(middle) * math.sqrt(9.8 / size(unit)) / (2 * math.pi)
        for count in {1, brief.swings_per_timing, *brief.swings_allowed}:
            if 0.6 < apparent / count < 1.6:
                return spread
    return None
