"""From lines to readings: units, clock forms and swings settled, each guess reported."""

from __future__ import annotations

import re
from collections import Counter
from dataclasses import dataclass, replace

from markbench.intake.tables.columns import assign_columns
from markbench.intake.tables.grid import text_of
from markbench.intake.tables.guesses import (
    Noted,
    clock_form,
    count_findings,
    head_source,
    length_unit,
    part_thousands,
    time_unit,
)
from markbench.intake.tables.lines import Found, Line, Ref, not_understood, table_place
from markbench.intake.tables.own import own_values
from markbench.intake.tables.units import dimension, size
from markbench.intake.tables.values import Form
from markbench.model import (
    Brief,
    Concern,
    Finding,
    Reading,
    ReadingsTable,
    Source,
    Timing,
    joined,
    say,
)

_FIVE_AS_S = re.compile(r"\s*\d+[.,]\d+S\s*")


@dataclass(slots=True)
class _Group:
    """One reading in the making."""

    length_m: float
    length: Ref
    unit: str
    swings: int
    swings_source: Source | None
    timings: list[tuple[float, Ref]]
    lines: list[Line]


def settle(
    found: Found, brief: Brief, learner: str, noted: Noted
) -> tuple[ReadingsTable | None, list[Finding]]:
    """The readings of one found table; ``None`` if nothing usable is left."""
    findings = list(found.findings)
    grid = found.grid
    assign_columns(found, brief, learner, noted.swings, findings)
    if not found.raw:
        return None, findings
    _drop_wrong_dimensions(found, learner, findings)
    for line in found.lines:
        if not (line.length.value.number or 0) > 0:
            at = (line.length.row, line.length.column)
            findings.append(
                not_understood(learner, grid, *at, say("a length"), say("it is not above zero"))
            )
    found.lines = [line for line in found.lines if (line.length.value.number or 0) > 0]
    lines = [line for line in found.lines if line.timings]
    if not lines:
        return None, findings
    findings += _drop_fives_as_s(found, lines, learner)
    lines = [line for line in lines if line.timings]
    if not lines:
        return None, findings
    findings += _several_in_a_cell(found, lines, learner)
    part_thousands(found, learner, findings)
    unit = length_unit(found, lines, brief, noted, learner, findings)
    scales = [size(line.length.value.unit or unit) for line in lines]
    lengths_m = [
        line.length.value.number * scale  # type: ignore[operator]
        for line, scale in zip(lines, scales, strict=True)
    ]
    unit_of_time = time_unit(found, lines, noted, learner, findings)
    form = clock_form(found, lines, lengths_m, brief, noted, learner, findings)
    groups = _group(found, lines, lengths_m, unit, unit_of_time, form, brief, noted)
    if not groups:
        return None, findings
    count_findings(
        found,
        [
            (group.length_m, time_s, ref)
            for group in groups
            if group.swings_source is None
            for time_s, ref in group.timings
        ],
        brief,
        learner,
        findings,
    )
    readings = tuple(_reading(found, group) for group in groups)
    own = own_values(
        found,
        [
            (
                group.lines,
                group.swings,
                [t for t, _ in group.timings],
                [ref for _, ref in group.timings],
            )
            for group in groups
        ],
        learner,
        findings,
    )
    heads = sorted(found.heads, key=lambda head: (head[0], head[1]))
    return (
        ReadingsTable(
            readings,
            tuple(own),
            Source(grid.file, grid.sheet),
            tuple(
                Source(grid.file, grid.sheet, grid.cell_name(r, c), text, _heading_says(heading))
                for r, c, text, heading in heads
            ),
            tuple(_needs_no_unit(h.quantity) or h.has_unit for _, _, _, h in heads),
        ),
        findings,
    )


def _drop_fives_as_s(found: Found, lines: list[Line], learner: str) -> list[Finding]:
    """“12,6S” among 12,70 and 12,66: an S for a 5 as likely as seconds, so it is asked about."""
    grid = found.grid
    times = [ref for line in lines for ref in line.timings]
    odd = [ref for ref in times if _FIVE_AS_S.fullmatch(text_of(grid.rows[ref.row][ref.column]))]
    others = [ref.value.decimals for ref in times if not any(ref is one for one in odd)]
    places = min((n for n in others if n is not None), default=0)
    slips = [ref for ref in odd if ref.value.decimals is not None and ref.value.decimals < places]
    for line in lines:
        line.timings = [ref for ref in line.timings if not any(ref is one for one in slips)]
    why = say("an S may stand for seconds or for a 5")
    return [not_understood(learner, grid, r.row, r.column, say("a timing"), why) for r in slips]


def _several_in_a_cell(found: Found, lines: list[Line], learner: str) -> list[Finding]:
    counted = Counter((ref.row, ref.column) for line in lines for ref in line.timings)
    cells = [at for at, timings in counted.items() if timings > 1]
    if not cells:
        return []
    grid = found.grid
    name = grid.cell_name(*cells[0])
    return [
        Finding(
            "column_guessed",
            learner,
            say(
                "{table}: “{text}” in {cell} was taken as {n} timings, and so were the cells like "
                "it.",
                table=table_place(grid),
                text=text_of(grid.rows[cells[0][0]][cells[0][1]]),
                cell=name,
                n=counted[cells[0]],
            ),
            Concern.NOTE,
            {"cell": name, "taken_as": "several timings"},
            tuple(grid.source(*at, say("taken as several timings")) for at in cells[:20]),
        )
    ]


def _needs_no_unit(quantity: str | None) -> bool:
    return quantity in (None, "swings", "number", "trial", "other")


_QUANTITIES = {
    "length": say("length"),
    "time": say("time"),
    "period": say("period"),
    "period_squared": say("period squared"),
    "swings": say("swings"),
    "trial": say("trial"),
}


def _heading_says(heading: object) -> str:
    quantity = getattr(heading, "quantity", None)
    if quantity is None or quantity in ("other", "number"):
        return say("not used")
    named = _QUANTITIES.get(quantity, quantity)
    parts = [say("mean {quantity}", quantity=named) if getattr(heading, "mean", False) else named]
    if unit := getattr(heading, "unit", None):
        parts.append(say("in {unit}", unit=unit))
    if swings := getattr(heading, "swings", None):
        parts.append(say("of {n} swings", n=swings))
    return joined(parts)


def _drop_wrong_dimensions(found: Found, learner: str, findings: list[Finding]) -> None:
    grid = found.grid
    seen: set[tuple[int, int]] = set()
    kept: list[Line] = []
    for line in found.lines:
        if line.length.heading.unit == "inch" and line.length.value.unit == "s":
            line.length.value = replace(line.length.value, unit=None)  # 10" is ten inches here
        unit = line.length.value.unit
        if unit and dimension(unit) != "length":
            at = (line.length.row, line.length.column)
            if at not in seen:
                seen.add(at)
                findings.append(
                    not_understood(
                        learner,
                        grid,
                        *at,
                        say("a length"),
                        say("{unit} is no unit of length", unit=unit),
                    )
                )
            continue
        if line.length.value.several:
            at = (line.length.row, line.length.column)
            why = say("it holds more than one number")
            findings.append(not_understood(learner, grid, *at, say("a length"), why))
            continue
        good = []
        for ref in line.timings:
            if ref.value.unit and dimension(ref.value.unit) != "time":
                findings.append(
                    not_understood(
                        learner,
                        grid,
                        ref.row,
                        ref.column,
                        say("a timing"),
                        say("{unit} is no unit of time", unit=ref.value.unit),
                    )
                )
            else:
                good.append(ref)
        line.timings = good
        kept.append(line)
    found.lines = kept


def seconds(ref: Ref, unit: str, form: dict[tuple[Form, ...], Form]) -> float:
    """A timing in seconds."""
    value = ref.value
    if value.forms:
        names = tuple(name for name, _ in value.forms)
        name = form.get(names, names[0])
        return value.forms[names.index(name)][1]
    stated = ref.heading.unit if dimension(ref.heading.unit) == "time" else None
    scale = size(value.unit or stated or unit)
    return (value.number or 0.0) * scale if scale != 1.0 else value.number or 0.0


def _swings(line: Line, ref: Ref, brief: Brief, noted: Noted) -> tuple[int, Ref | None]:
    """Swings of one timing, and the cell or the cell under the heading that states them.

    A count stated by one heading holds for the other timings of its row.
    """
    if ref.heading.swings is not None:
        return ref.heading.swings, ref
    if line.swings is not None:
        return int(line.swings.value.number or 1), line.swings
    for other in line.timings:
        if other.heading.swings is not None:
            return other.heading.swings, other
    return brief.swings_per_timing if noted.swings is None else noted.swings, None


def _swings_source(
    found: Found, line: Line, counted: Ref | None, swings: int, noted: Noted
) -> Source | None:
    """Where the swings are stated; ``None`` if only the brief says."""
    if counted is None:
        return noted.swings_source if noted.swings is not None else None
    if counted is line.swings:
        return found.grid.source(counted.row, counted.column, say("{n} swings", n=swings))
    return head_source(found, counted, say("{n} swings", n=swings))


def _group(
    found: Found,
    lines: list[Line],
    lengths_m: list[float],
    unit: str,
    time_unit: str,
    form: dict[tuple[Form, ...], Form],
    brief: Brief,
    noted: Noted,
) -> list[_Group]:
    groups: dict[tuple[object, int], _Group] = {}
    for line, length_m in zip(lines, lengths_m, strict=True):
        key: object = length_m if found.long else id(line.length)
        for ref in line.timings:
            swings, counted = _swings(line, ref, brief, noted)
            group = groups.get((key, swings))
            if group is None:
                source = _swings_source(found, line, counted, swings, noted)
                group = groups[key, swings] = _Group(
                    length_m, line.length, line.length.value.unit or unit, swings, source, [], []
                )
            group.timings.append((seconds(ref, time_unit, form), ref))
            if not group.lines or group.lines[-1] is not line:
                group.lines.append(line)
    return list(groups.values())


def _whole_seconds(ref: Ref) -> list[float]:
    """What a stopwatch's cell means in the forms that end in seconds."""
    return [time_s for form, time_s in ref.value.forms if form.endswith(":seconds")]


def _reading(found: Found, group: _Group) -> Reading:
    grid = found.grid
    file, sheet = grid.file, grid.sheet
    timings = []
    for time_s, ref in group.timings:
        places = ref.value.decimals
        if ref.value.forms and places is not None and time_s in _whole_seconds(ref):
            places = 0
        timings.append(
            Timing(
                time_s,
                Source(
                    file,
                    sheet,
                    grid.cell_name(ref.row, ref.column),
                    text_of(grid.rows[ref.row][ref.column]),
                    say(
                        "{time:.6g} s for {n} swing"
                        if group.swings == 1
                        else "{time:.6g} s for {n} swings",
                        time=time_s,
                        n=group.swings,
                    ),
                ),
                places,
            )
        )
    length = group.length
    return Reading(
        group.length_m,
        group.swings,
        tuple(timings),
        Source(
            file,
            sheet,
            grid.cell_name(length.row, length.column),
            text_of(grid.rows[length.row][length.column]),
            say("length {length:.6g} cm", length=100 * group.length_m),
        ),
        size(group.unit),
        length.value.decimals,
        group.swings_source,
    )
