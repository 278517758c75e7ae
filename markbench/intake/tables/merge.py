"""Several tables in one file: continued, repeated, copied, or worked out from one another."""

from __future__ import annotations

from dataclasses import replace

from markbench.intake.tables.lines import Found, Line, table_place
from markbench.intake.tables.own import GroupedLines, own_values
from markbench.intake.tables.units import dimension, size
from markbench.model import Brief, Concern, Finding, OwnValue, Reading, ReadingsTable, say

# Two lengths are the same if they agree to the tenth of a millimetre a ruler cannot show.
_SAME_LENGTH_M = 1e-4


def join_tables(
    settled: list[tuple[Found, ReadingsTable]],
    derived: list[Found],
    brief: Brief,
    learner: str,
    findings: list[Finding],
) -> ReadingsTable:
    """One table of all; what was done with each further one becomes a finding."""
    order = sorted(settled, key=lambda pair: -_timings(pair[1]))
    main = order[0][1] if _conflict(settled) else settled[0][1]
    joined = main
    told: list[tuple[Found, str, Concern]] = []
    what: str
    for found, table in settled:
        if table is main:
            continue
        if _same(joined, table):
            what = say("repeats the same readings and was counted once")
            told.append((found, what, Concern.NOTE))
        elif not _keys(joined) & _keys(table):
            joined = _extend(joined, table)
            told.append((found, say("goes on with further readings"), Concern.NOTE))
        elif _may_repeat(joined, table):
            joined = _add_timings(joined, table)
            what = say("was taken as further timings of the same lengths")
            told.append((found, what, Concern.ASK))
        else:
            what = say("holds other times for the same lengths and was left aside")
            told.append((found, what, Concern.LOOK))
    for found, what, concern in told:
        row, column, _, _ = found.region
        at = found.grid.cell_name(max(0, row), max(0, column))
        findings.append(
            Finding(
                "several_tables",
                learner,
                say(
                    "{table}: there are {n} tables of readings; the one at {cell} {what}.",
                    table=table_place(found.grid),
                    n=len(settled),
                    cell=at,
                    what=what,
                ),
                concern,
                {"tables": len(settled), "cell": at},
                (found.grid.source(max(0, row), max(0, column), what),),
                say("Which of the tables holds the readings to be marked?")
                if concern > Concern.NOTE
                else "",
            )
        )
    for found in derived:
        own = _tie(found, joined, learner, findings)
        if own:
            joined = replace(joined, own_values=(*joined.own_values, *own))
    return joined


def _timings(table: ReadingsTable) -> int:
    return sum(len(reading.timings) for reading in table.readings)


def _key(reading: Reading) -> tuple[int, int]:
    return round(reading.length_m / _SAME_LENGTH_M), reading.swings


def _keys(table: ReadingsTable) -> set[tuple[int, int]]:
    return {_key(reading) for reading in table.readings}


def _same(one: ReadingsTable, other: ReadingsTable) -> bool:
    times = {_key(r): [t.time_s for t in r.timings] for r in one.readings}
    return all(times.get(_key(r)) == [t.time_s for t in r.timings] for r in other.readings)


def _may_repeat(one: ReadingsTable, other: ReadingsTable) -> bool:
    """Tables of the same lengths with one timing each are the repeats, written apart."""
    return _keys(one) == _keys(other) and all(len(r.timings) == 1 for r in other.readings)


def _conflict(settled: list[tuple[Found, ReadingsTable]]) -> bool:
    first = settled[0][1]
    return any(
        _keys(first) & _keys(table) and not _same(first, table) and not _may_repeat(first, table)
        for _, table in settled[1:]
    )


def _extend(one: ReadingsTable, other: ReadingsTable) -> ReadingsTable:
    shift = len(one.readings)
    return replace(
        one,
        readings=(*one.readings, *other.readings),
        own_values=(
            *one.own_values,
            *(
                replace(own, reading=None if own.reading is None else own.reading + shift)
                for own in other.own_values
            ),
        ),
        headings=(*one.headings, *other.headings),
        heading_has_unit=(*one.heading_has_unit, *other.heading_has_unit),
    )


def _add_timings(one: ReadingsTable, other: ReadingsTable) -> ReadingsTable:
    index = {_key(reading): i for i, reading in enumerate(one.readings)}
    readings = list(one.readings)
    own: list[OwnValue] = list(one.own_values)
    for i, reading in enumerate(other.readings):
        at = index[_key(reading)]
        before = len(readings[at].timings)
        readings[at] = replace(readings[at], timings=(*readings[at].timings, *reading.timings))
        own += [
            replace(value, reading=at, timing=before)
            for value in other.own_values
            if value.reading == i
        ]
    return replace(
        one,
        readings=tuple(readings),
        own_values=tuple(own),
        headings=(*one.headings, *other.headings),
        heading_has_unit=(*one.heading_has_unit, *other.heading_has_unit),
    )


def _tie(
    found: Found, table: ReadingsTable, learner: str, findings: list[Finding]
) -> list[OwnValue]:
    """Own values of a table of results, tied to the readings by their lengths."""
    unit_m = table.readings[0].length_unit_m
    groups: list[GroupedLines] = []
    for reading in table.readings:
        lines: list[Line] = []
        for line in found.lines:
            unit = line.length.value.unit or line.length.heading.unit
            scale = size(unit) if unit and dimension(unit) == "length" else unit_m
            length_m = (line.length.value.number or 0.0) * scale
            if abs(length_m - reading.length_m) <= 0.005 * reading.length_m:
                lines.append(line)
        groups.append((lines, reading.swings, [t.time_s for t in reading.timings], []))
    findings += found.findings
    return own_values(found, groups, learner, findings)
