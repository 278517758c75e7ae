"""Tables with headings, upright or turned on their side.

A table is found by its heading for the length. Headings may fill up to five rows (a merged
heading over its parts, the names, the units); each column's cells are read from above
downwards, a spanning heading passing its quantity, unit and swings on to those under it.
A table with its headings in the first column is the same table seen turned.
"""

from __future__ import annotations

from dataclasses import replace
from itertools import pairwise

from markbench.intake.tables.body import Body, Roles
from markbench.intake.tables.grid import Cell
from markbench.intake.tables.headings import NOTHING, Heading, join, unit_named
from markbench.intake.tables.lines import Found
from markbench.intake.tables.units import dimension
from markbench.intake.tables.values import read_value
from markbench.intake.tables.view import View

_TIMEISH = frozenset(("time", "trial", "period", "period_squared", "g", "swings"))
_ROMAN_HEADS = {"i": 1, "ii": 2, "iii": 3, "iv": 4, "v": 5, "vi": 6}


def _filled(view: View, row: int) -> list[int]:
    return [c for c, cell in enumerate(view.cells[row]) if cell != "" and _shows(cell)]


def _shows(cell: Cell) -> bool:
    return not isinstance(cell, str) or not cell.isspace()


def _is_anchor(view: View, row: int) -> bool:
    heads = view.heads[row]
    if not any(h.quantity == "length" and (h.worded or h.unit) for h in heads.values()):
        return False
    if len(_filled(view, row)) >= 2:
        return True
    following = _filled(view, row + 1) if row + 1 < len(view.cells) else []
    return len(following) >= 2 and bool(view.heads[row + 1])


def _counts_up(view: View, row: int, columns: list[int]) -> dict[int, int]:
    """Columns headed 1, 2, 3 …, as numbers, words like ``2nd`` left aside."""
    numbered = {}
    for column in columns:
        cell = view.cells[row][column]
        if isinstance(cell, str) and cell.strip().lower() in _ROMAN_HEADS:
            numbered[column] = _ROMAN_HEADS[cell.strip().lower()]
        elif isinstance(cell, str) and not cell.strip().rstrip(".)").isdigit():
            continue
        else:
            value = read_value(cell.strip().rstrip(".)") if isinstance(cell, str) else cell)
            if value.number is None or value.number != int(value.number) or value.unit:
                return {}
            numbered[column] = int(value.number)
    counted = list(numbered.values())
    if not counted or counted[0] != 1 or len(counted) > 12:
        return {}
    expected = 1
    for number in counted:  # 1 2 3, or 1 2 1 2 under two spanning headings
        if number == 1:
            expected = 1
        if number != expected:
            return {}
        expected += 1
    return numbered if len(counted) >= 2 else {}


def _is_subrow(view: View, row: int, length_columns: list[int]) -> bool:
    """A row of further headings or units under the headings, not yet readings."""
    columns = _filled(view, row)
    if not columns:
        return False
    for column in length_columns:
        if view.value(row, column).number is not None:
            return False
    numbers = [c for c in columns if view.value(row, c).number is not None]
    if numbers:
        return len(_counts_up(view, row, columns)) >= len(numbers) and len(numbers) >= 2
    heads = view.heads[row]
    if any(h.quantity == "length" and h.worded for h in heads.values()):
        return False
    return bool(heads) or bool(_counts_up(view, row, columns))


def _compose(view: View, top: int, bottom: int) -> list[tuple[Heading, list[int]]]:
    """For each column, its heading from all heading rows, and the rows its cells stand in."""
    width = len(view.cells[top])
    composed: list[tuple[Heading, list[int]]] = [(NOTHING, []) for _ in range(width)]
    for row in range(top, bottom + 1):
        heads = view.heads[row]
        counted = _counts_up(view, row, _filled(view, row))
        spanning: Heading = NOTHING
        spanning_at = -1
        for column in range(width):
            cell = view.cells[row][column]
            heading = heads.get(column, NOTHING)
            if column in counted:
                heading = Heading("trial", repeat=counted[column], worded=True)
            shown = cell != "" and _shows(cell)
            if heading is NOTHING and type(cell) is str and len(cell) <= 3:
                heading = _bare_unit(cell, composed[column][0])
            if shown:
                spanning, spanning_at = heading, column
            elif row < bottom:
                origin = view.merged.get((row, column))
                if origin is not None and origin[0] == row:
                    heading = heads.get(origin[1], NOTHING)
                elif (
                    (row, spanning_at) not in view.merged
                    and spanning.quantity in _TIMEISH
                    and any(view.cells[r][column] != "" for r in range(row + 1, bottom + 1))
                    and all(view.cells[r][column] == "" for r in range(top, row))
                ):
                    heading = spanning
            if heading is not NOTHING or shown:
                before, rows = composed[column]
                composed[column] = (join(before, heading), [*rows, row] if shown else rows)
    return composed


def _bare_unit(text: str, above: Heading) -> Heading:
    """A unit alone under a heading: “m” under a length is metres, elsewhere a symbol."""
    unit = unit_named(text)
    if unit is None or above.unit is not None or dimension(unit) != above.quantity:
        return NOTHING
    return Heading(unit=unit, has_unit=True)


def find_headed(view: View, learner: str) -> list[Found]:
    """All tables of a view that have a heading for the length."""
    anchors = [row for row in range(len(view.cells)) if view.heads[row] and _is_anchor(view, row)]
    found = []
    blocks: list[tuple[int, int]] = []
    for anchor in anchors:
        if blocks and anchor <= blocks[-1][1]:
            continue
        lengths = [c for c, h in view.heads[anchor].items() if h.quantity == "length"]
        top = bottom = anchor
        while (
            top > 0
            and anchor - top < 2
            and (not blocks or top - 1 > blocks[-1][1])
            and _is_parent(view, top - 1, lengths)
        ):
            top -= 1
        while (
            bottom + 1 < len(view.cells)
            and bottom - anchor < 2
            and _is_subrow(view, bottom + 1, lengths)
        ):
            bottom += 1
        blocks.append((top, bottom))
    for index, (top, bottom) in enumerate(blocks):
        end = blocks[index + 1][0] if index + 1 < len(blocks) else len(view.cells)
        table = _read_body(view, top, bottom, end, learner)
        if table is not None:
            found.append(table)
    return found


def _is_parent(view: View, row: int, lengths: list[int]) -> bool:
    heads = view.heads[row]
    if not any(
        h.quantity in _TIMEISH and (c > min(lengths) or (row, c) in view.merged)
        for c, h in heads.items()
    ):
        return False
    return all(
        isinstance(view.cells[row][c], str) and view.value(row, c).number is None
        for c in _filled(view, row)
    )


def _read_body(view: View, top: int, bottom: int, end: int, learner: str) -> Found | None:
    composed = _compose(view, top, bottom)
    start = bottom + 1
    numeric = [0] * len(composed)
    for row in range(start, end):
        for column, value in enumerate(view.values[row]):
            if value.number is not None:
                numeric[column] += 1
    lengths = [
        c
        for c, (h, _) in enumerate(composed)
        if h.quantity == "length" and not h.mean and numeric[c]
    ]
    if not lengths:
        return None
    length = max(lengths, key=lambda c: (composed[c][0].whole, composed[c][0].worded, -c))
    roles = _roles(view, composed, length, numeric, start, end)
    table = Found(view.grid, [], long=roles.long, turned=view.turned)
    Body(view, table, composed, length, roles, learner).read(start, end)
    if not table.lines and not table.findings:
        return None
    for column, (heading, rows) in enumerate(composed):
        # Beside a turned table, a text with no numbers after it is a note.
        if rows and (numeric[column] or not view.turned):
            at = [view.at(r, column) for r in rows]
            text = " ".join(str(view.cells[r][column]).strip() for r in rows)
            table.heads.append((*at[-1], text, heading))
    used = [c for c, (_, rows) in enumerate(composed) if numeric[c] or (rows and not view.turned)]
    low, high = view.at(top, min(used)), view.at(roles.last_row, max(used))
    table.region = (*low, *high)
    return table


def _roles(
    view: View,
    composed: list[tuple[Heading, list[int]]],
    length: int,
    numeric: list[int],
    start: int,
    end: int,
) -> Roles:
    roles = Roles()
    trial_column = False
    roles.ordinals = _ordinals(view, composed, numeric, start, end)
    symbols = {h.repeat for h, _ in composed if h.quantity == "period" and h.repeat}
    for column, (heading, rows) in enumerate(composed):
        if column == length:
            continue
        quantity = heading.quantity
        if column in roles.ordinals:
            trial_column = True
        elif quantity == "trial" and heading.repeat is None and numeric[column]:
            counts = _small_counts(view, column, start, end)
            if counts:
                trial_column = True
            else:
                roles.timings.append(column)
        elif quantity in ("time", "trial"):
            if heading.mean:
                roles.own.append(column)
            elif numeric[column] or rows:
                roles.timings.append(column)
        elif quantity == "period" and heading.repeat == 2 and symbols == {2} and not heading.unit:
            # T2 beside a T, and no T1: the learner's T².
            composed[column] = (Heading("period_squared", worded=True), rows)
            roles.own.append(column)
        elif quantity in ("period", "period_squared", "g"):
            roles.own.append(column)
        elif quantity == "swings" and any(view.cells[r][column] != "" for r in range(start, end)):
            if roles.swings is None and not _numbers_rows(view, column, start, end):
                roles.swings = column
        elif quantity is None and heading.mean:
            composed[column] = (replace(heading, quantity="time"), rows)
            roles.own.append(column)
        elif quantity is None and numeric[column]:
            roles.unclaimed.append(column)
        elif quantity == "number" and not _whole(_column_numbers(view, column, start, end)):
            roles.unclaimed.append(column)  # "No. 1", "No. 2" over the times themselves
    worded = [c for c in roles.timings if composed[c][0].worded]
    for column in roles.timings if worded else ():
        # Beside a column that is called a time, one with only a unit need not be one.
        if column not in worded and composed[column][1]:
            roles.unclaimed.append(column)
    roles.timings = [c for c in roles.timings if c not in roles.unclaimed]
    _inherit(composed, roles.timings)
    _count_beside(composed, roles, numeric)
    roles.long = trial_column or len(roles.timings) == 1
    return roles


def _ordinals(
    view: View,
    composed: list[tuple[Heading, list[int]]],
    numeric: list[int],
    start: int,
    end: int,
) -> list[int]:
    """Columns that say in words which repeat a row is: ``1st``, ``second``, ``trial 2``."""
    timed = any(
        h.quantity in ("time", "period") and numeric[c] for c, (h, _) in enumerate(composed)
    )
    return [
        column
        for column, (heading, _) in enumerate(composed)
        if timed
        and heading.quantity == "trial"
        and heading.repeat is None
        and not numeric[column]
        and all(
            view.heads[row].get(column, NOTHING).quantity == "trial"
            for row in range(start, end)
            if view.cells[row][column] != ""
        )
    ]


def _inherit(composed: list[tuple[Heading, list[int]]], timings: list[int]) -> None:
    """``t1 for 10 swings / s`` followed by a plain ``t2``: the count and unit still hold."""
    for left, right in pairwise(timings):
        first, (second, rows) = composed[left][0], composed[right]
        if second.repeat is None or (second.swings is not None and second.unit):
            continue
        composed[right] = (
            replace(
                second,
                swings=first.swings if second.swings is None else second.swings,
                unit=second.unit or first.unit,
            ),
            rows,
        )


def _count_beside(
    composed: list[tuple[Heading, list[int]]], roles: Roles, numeric: list[int]
) -> None:
    """``t1``, ``t2`` and a heading “for 10 swings” over nothing: the count is theirs."""
    counts = {h.swings for c, (h, _) in enumerate(composed) if h.swings and not numeric[c]}
    used = [c for c in roles.timings if numeric[c]]
    if len(counts) != 1 or any(composed[c][0].swings for c in used):
        return
    for column in used:
        heading, rows = composed[column]
        composed[column] = (replace(heading, swings=next(iter(counts))), rows)


def _whole(numbers: list[float]) -> bool:
    return all(number == int(number) for number in numbers)


def _column_numbers(view: View, column: int, start: int, end: int) -> list[float]:
    values = (view.value(row, column).number for row in range(start, end))
    return [v for v in values if v is not None]


def _small_counts(view: View, column: int, start: int, end: int) -> bool:
    """Whether a column says which repeat a row is: small whole numbers, starting at 1."""
    numbers = _column_numbers(view, column, start, end)
    return bool(numbers) and min(numbers) == 1 and max(numbers) <= 12 and _whole(numbers)


def _numbers_rows(view: View, column: int, start: int, end: int) -> bool:
    """Whether a column only numbers the rows: 1, 2, 3 …"""
    numbers = _column_numbers(view, column, start, end)
    return len(numbers) > 1 and numbers == [float(n) for n in range(1, len(numbers) + 1)]
