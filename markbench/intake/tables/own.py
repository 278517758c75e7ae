"""The learner's own worked-out values, tied to the readings they belong to."""

from __future__ import annotations

import math
from collections.abc import Sequence

from markbench.intake.tables.grid import text_of
from markbench.intake.tables.lines import Found, Line, Ref, table_place
from markbench.intake.tables.units import dimension, size
from markbench.model import Concern, Finding, OwnQuantity, OwnValue, Source, say

_QUANTITY: dict[str, OwnQuantity] = {
    "time": "mean_time_s",
    "period": "period_s",
    "period_squared": "period_squared_s2",
    "g": "g_m_s2",
}
_DIMENSION = {
    "mean_time_s": "time",
    "period_s": "time",
    "period_squared_s2": "time_squared",
    "g_m_s2": "acceleration",
}
# Lines of one reading, its swings, its timings in s, and their cells.
GroupedLines = tuple[Sequence[Line], int, Sequence[float], Sequence[Ref]]


def own_values(
    found: Found, groups: Sequence[GroupedLines], learner: str, findings: list[Finding]
) -> list[OwnValue]:
    """All own values of a table, columns confused between t and T put right by their size."""
    columns: dict[int, list[tuple[int, int | None, Ref]]] = {}
    taken: set[int] = set()
    for index, (lines, swings, _, refs) in enumerate(groups):
        counts: dict[int, int] = {}
        for line in lines:
            for ref in line.own:
                key = _key(found, ref)
                counts[key] = counts.get(key, 0) + 1
        for line in lines:
            single = [r for r in line.own if r.heading.quantity == "period" and not r.heading.mean]
            own_timings = [i for i, ref in enumerate(refs) if any(ref is r for r in line.timings)]
            for ref in line.own:
                if id(ref) in taken:
                    continue
                if ref.heading.swings not in (None, swings) and _swings_elsewhere(
                    groups, line, ref
                ):
                    continue
                taken.add(id(ref))
                timing: int | None = None
                if ref in single and len(single) == len(own_timings) > 1:
                    timing = own_timings[single.index(ref)]
                elif len(lines) > 1 and counts[_key(found, ref)] > 1 and len(own_timings) == 1:
                    timing = own_timings[0]
                columns.setdefault(_key(found, ref), []).append((index, timing, ref))
    values = []
    for cells in columns.values():
        values += _column(found, cells, groups, learner, findings)
    return values


def _swings_elsewhere(groups: Sequence[GroupedLines], line: Line, ref: Ref) -> bool:
    return any(
        swings == ref.heading.swings and any(line is other for other in lines)
        for lines, swings, _, _ in groups
    )


def _key(found: Found, ref: Ref) -> int:
    return ref.row if found.turned else ref.column


def places_of(refs: Sequence[Ref], found: Found) -> list[int | None]:
    """Decimals as written. A number cell drops its trailing zeros, so a column of them
    counts as written to the most decimals that any of its cells shows.
    """
    shown = [
        len(text_of(found.grid.rows[ref.row][ref.column]).partition(".")[2])
        for ref in refs
        if ref.value.decimals is None
    ]
    most = max(shown, default=0)
    return [most if ref.value.decimals is None else ref.value.decimals for ref in refs]


def _column(
    found: Found,
    cells: Sequence[tuple[int, int | None, Ref]],
    groups: Sequence[GroupedLines],
    learner: str,
    findings: list[Finding],
) -> list[OwnValue]:
    heading = cells[0][2].heading
    quantity = _QUANTITY.get(heading.quantity or "")
    if quantity is None:
        return []
    swapped = _other_time(quantity, cells, groups)
    if swapped is not None:
        quantity = swapped
        first = cells[0][2]
        head = found.head_of(first)
        at = (head[0], head[1]) if head else (first.row, first.column)
        what = say("mean times") if swapped == "mean_time_s" else say("periods T")
        findings.append(
            Finding(
                "column_guessed",
                learner,
                say(
                    "{table}: the values under {cell} were taken as {what}, by their size.",
                    table=table_place(found.grid),
                    cell=found.grid.cell_name(*at),
                    what=what,
                ),
                Concern.NOTE,
                {"cell": found.grid.cell_name(*at), "taken_as": what},
                (found.grid.source(*at, say("taken as {what}", what=what)),),
            )
        )
    values = []
    grid = found.grid
    places = places_of([ref for _, _, ref in cells], found)
    for (reading, timing, ref), decimals in zip(cells, places, strict=True):
        unit = ref.value.unit or heading.unit
        scale = size(unit) if unit and dimension(unit) == _DIMENSION[quantity] else 1.0
        number = (ref.value.number or 0.0) * scale
        values.append(
            OwnValue(
                quantity,
                number,
                Source(
                    grid.file,
                    grid.sheet,
                    grid.cell_name(ref.row, ref.column),
                    text_of(grid.rows[ref.row][ref.column]),
                    _own_value(quantity, number),
                ),
                reading,
                timing,
                decimals,
            )
        )
    return values


def _own_value(quantity: OwnQuantity, value: float) -> str:
    match quantity:
        case "mean_time_s":
            return say("the learner's own mean time {value:.6g} s", value=value)
        case "period_s":
            return say("the learner's own period {value:.6g} s", value=value)
        case "period_squared_s2":
            return say("the learner's own T² {value:.6g} s²", value=value)
    return say("the learner's own g {value:.6g} m/s²", value=value)


def _other_time(
    quantity: OwnQuantity,
    cells: Sequence[tuple[int, int | None, Ref]],
    groups: Sequence[GroupedLines],
) -> OwnQuantity | None:
    """Whether a column headed T holds mean times, or one headed as a mean time holds T."""
    if quantity not in ("mean_time_s", "period_s"):
        return None
    nearer = 0
    for reading, _, ref in cells:
        _, swings, times, _ = groups[reading]
        number = ref.value.number or 0.0
        if swings < 3 or number <= 0 or not times:
            return None
        mean = sum(times) / len(times)
        stated, other = (
            (mean, mean / swings) if quantity == "mean_time_s" else (mean / swings, mean)
        )
        if abs(number / other - 1) < 0.05 < abs(math.log(number / stated)):
            nearer += 1
    if nearer < max(2, 0.8 * len(cells)):
        return None
    return "period_s" if quantity == "mean_time_s" else "mean_time_s"
