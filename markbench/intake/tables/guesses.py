"""What a table leaves unsaid, filled in from the law and the brief, each guess a finding."""

from __future__ import annotations

import math
import re
from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import Literal

from markbench.intake.tables import law
from markbench.intake.tables.grid import Grid, text_of
from markbench.intake.tables.lines import Found, Line, Ref, table_place
from markbench.intake.tables.units import dimension, size
from markbench.intake.tables.values import Form
from markbench.model import Brief, Concern, Figures, Finding, Source, joined, say

_NAMES = {
    "mm": say("millimetres"),
    "cm": say("centimetres"),
    "m": say("metres"),
    "s": say("seconds"),
}
_MOST_NAMED = 8  # cells named in one sentence
_FORM_NAMES = {
    "minutes:seconds": say("minutes and seconds"),
    "minutes:seconds:hundredths": say("minutes, seconds and hundredths"),
    "hours:minutes:seconds": say("hours, minutes and seconds"),
    "seconds:hundredths": say("seconds and hundredths"),
    "month and year": say("a number that the spreadsheet made into a month and a year"),
    "day and month": say("a number that the spreadsheet made into a day and a month"),
}


@dataclass(slots=True)
class Noted:
    """What the words around a table say: swings per timing and units, with their cells."""

    swings: int | None = None
    swings_source: Source | None = None
    length_unit: str | None = None
    time_unit: str | None = None
    #: Where several counts are told: (grid, row, count, source), in the sheet's order.
    several: tuple[tuple[Grid, int, int, Source], ...] = ()

    def of(self, found: Found, founds: Sequence[Found]) -> Noted:
        """What holds for one table: of several counts, the one that stands just above it."""
        top = found.region[0]
        before = max(
            (f.region[2] for f in founds if f.grid is found.grid and f.region[2] < top), default=-1
        )
        own = [one for one in self.several if one[0] is found.grid and before < one[1] < top]
        if self.swings is not None or len({count for _, _, count, _ in own}) != 1:
            return self
        return replace(self, swings=own[0][2], swings_source=own[0][3])


def head_source(found: Found, ref: Ref, understood: str) -> Source:
    """The heading over a cell, or the cell itself where there is none."""
    head = found.head_of(ref)
    grid = found.grid
    if head is None:
        return grid.source(ref.row, ref.column, understood)
    return Source(grid.file, grid.sheet, grid.cell_name(head[0], head[1]), head[2], understood)


def swings_of(line: Line, ref: Ref, noted: Noted) -> int | None:
    """Swings stated for a timing: by its heading, its line or a note; else ``None``."""
    if ref.heading.swings is not None:
        return ref.heading.swings
    if line.swings is not None:
        return int(line.swings.value.number or 0)
    return noted.swings


_THOUSANDS = re.compile(r"\s*\d{1,3}([.,])\d{3}(?!\d)\D*")


def part_thousands(found: Found, learner: str, findings: list[Finding]) -> None:
    """Lengths such as 1.200 where the times have decimal commas (or 1,200 beside points)."""
    grid = found.grid

    def typed(ref: Ref) -> str:
        cell = grid.rows[ref.row][ref.column]
        return cell if isinstance(cell, str) else ""

    lengths = [line.length for line in found.lines]
    parted = {m[1] for ref in lengths if (m := _THOUSANDS.fullmatch(typed(ref)))}
    if len(parted) != 1:
        return
    mark = parted.pop()
    other = "," if mark == "." else "."
    times = "".join(typed(ref) for line in found.lines for ref in line.timings)
    if other not in times or mark in times:
        return
    if any(mark in typed(ref) and not _THOUSANDS.fullmatch(typed(ref)) for ref in lengths):
        return
    changed = {id(ref): ref for ref in lengths if _THOUSANDS.fullmatch(typed(ref))}
    for ref in changed.values():
        ref.value = replace(ref.value, number=(ref.value.number or 0.0) * 1000, decimals=0)
    first = next(iter(changed.values()))
    findings.append(
        Finding(
            "column_guessed",
            learner,
            say(
                "{table}: the “{mark}” in {text} was taken as parting thousands, since the times "
                "have “{other}” before their decimals.",
                table=table_place(grid),
                mark=mark,
                text=typed(first).strip(),
                other=other,
            ),
            Concern.NOTE,
            {"cell": grid.cell_name(first.row, first.column), "taken_as": "thousands"},
            tuple(
                grid.source(ref.row, ref.column, Figures(f"{ref.value.number:g}"))
                for ref in changed.values()
            ),
            say(
                "Does {text} mean {number:g}?", text=typed(first).strip(), number=first.value.number
            ),
        )
    )


def length_unit(
    found: Found,
    lines: list[Line],
    brief: Brief,
    noted: Noted,
    learner: str,
    findings: list[Finding],
) -> str:
    """The unit for lengths whose cells name none; a guess or a clash becomes a finding."""
    first = lines[0].length
    stated = first.heading.unit if dimension(first.heading.unit) == "length" else None
    in_cells = {line.length.value.unit for line in lines if line.length.value.unit}
    if stated and in_cells - {stated}:
        clashing = next(ln.length for ln in lines if ln.length.value.unit not in (None, stated))
        findings.append(
            Finding(
                "unit_guessed",
                learner,
                say(
                    "{table}: the heading gives lengths in {unit}, but {text} names another unit; "
                    "the cell's own unit was taken.",
                    table=table_place(found.grid),
                    unit=stated,
                    text=text_of(found.grid.rows[clashing.row][clashing.column]),
                ),
                Concern.ASK,
                {"unit": str(clashing.value.unit), "heading_unit": stated},
                (
                    found.grid.source(
                        clashing.row, clashing.column, say("the cell's own unit taken")
                    ),
                ),
                say("Which unit are the lengths in?"),
            )
        )
    if stated:
        return stated
    without = [line for line in lines if line.length.value.unit is None]
    if not without:
        return "cm"
    if noted.length_unit:
        return noted.length_unit
    numbers = [line.length.value.number or 0.0 for line in without]
    timings = [
        (i, ref.value.number or 0.0, swings_of(line, ref, noted))
        for i, line in enumerate(without)
        for ref in line.timings
        if not ref.value.forms
    ]
    unit, _ = law.guess_length_unit(numbers, timings, brief)
    if len(in_cells) == 1:  # "20 cm, 30, 40": the unit named once holds for the rest
        unit = str(next(iter(in_cells)))
        refs = [line.length for line in without]
        findings.append(_as_others(found, refs, len(lines), unit, "length", learner))
        return unit
    low, high = min(numbers), max(numbers)
    lengths = [numbers[i] * size(unit) for i, _, _ in timings]
    swings = law.apparent_swings(
        (length, t) for length, (_, t, _) in zip(lengths, timings, strict=True)
    )
    findings.append(
        Finding(
            "unit_guessed",
            learner,
            say(
                "{table}: no unit is given for the length; {low:g} to {high:g} was taken as {unit} "
                "(the times would then be of about {swings:.3g} swings each)."
                if math.isfinite(swings)
                else "{table}: no unit is given for the length; {low:g} to {high:g} was taken as "
                "{unit}.",
                table=table_place(found.grid),
                low=low,
                high=high,
                unit=_NAMES.get(unit, unit),
                swings=swings,
            ),
            Concern.ASK,
            {"unit": unit, "quantity": "length"},
            (head_source(found, first, say("taken as {what}", what=unit)),),
            say("Which unit are the lengths in?"),
        )
    )
    return unit


def time_unit(
    found: Found, lines: list[Line], noted: Noted, learner: str, findings: list[Finding]
) -> str:
    """The unit for times whose cells and headings name none; a guess becomes a finding.

    The one unit that other times of the table name, else seconds.
    """
    times = [ref for line in lines for ref in line.timings if not ref.value.forms]
    named = [_unit_of_time(ref) for ref in times]
    without = [ref for ref, unit in zip(times, named, strict=True) if unit is None]
    if not without:
        return "s"
    if noted.time_unit:
        return noted.time_unit
    units = {unit for unit in named if unit is not None}
    unit = next(iter(units)) if len(units) == 1 else "s"
    if units:
        findings.append(_as_others(found, without, len(times), unit, "time", learner))
        return unit
    findings.append(
        Finding(
            "unit_guessed",
            learner,
            say(
                "{table}: no unit is given for the times; they were taken as seconds.",
                table=table_place(found.grid),
            ),
            Concern.NOTE,
            {"unit": "s", "quantity": "time"},
            (head_source(found, without[0], say("taken as {what}", what="s")),),
            say("Which unit are the times in?"),
        )
    )
    return "s"


def _as_others(
    found: Found,
    without: list[Ref],
    of: int,
    unit: str,
    quantity: Literal["length", "time"],
    learner: str,
) -> Finding:
    """Some cells name no unit, but others of their kind do: theirs was taken."""
    grid = found.grid
    cells = [grid.cell_name(ref.row, ref.column) for ref in without]
    one = len(without) == 1
    form = say(
        (
            "{table}: one length names no unit ({cells}); it was taken in {unit}, as others are."
            if one
            else "{table}: {n} of {of} lengths name no unit ({cells}); they were taken in {unit}, "
            "as others are."
        )
        if quantity == "length"
        else (
            "{table}: one time names no unit ({cells}); it was taken in {unit}, as others are."
            if one
            else "{table}: {n} of {of} times name no unit ({cells}); they were taken in {unit}, "
            "as others are."
        ),
        table=table_place(grid),
        n=len(without),
        of=of,
        cells=_first_of(cells),
        unit=_NAMES.get(unit, unit),
    )
    return Finding(
        "unit_guessed",
        learner,
        form,
        Concern.NOTE,
        {"unit": unit, "quantity": quantity},
        tuple(
            grid.source(ref.row, ref.column, say("taken as {what}", what=unit))
            for ref in without[:20]
        ),
        say(
            "Which unit are the lengths in?"
            if quantity == "length"
            else "Which unit are the times in?"
        ),
    )


def _first_of(cells: list[str]) -> str:
    return ", ".join(cells[:_MOST_NAMED]) + (", …" if len(cells) > _MOST_NAMED else "")


def _unit_of_time(ref: Ref) -> str | None:
    """The unit that a time's own cell, or else its heading, names."""
    stated = ref.value.unit or ref.heading.unit
    return stated if dimension(stated) == "time" else None


def clock_form(
    found: Found,
    lines: list[Line],
    lengths_m: list[float],
    brief: Brief,
    noted: Noted,
    learner: str,
    findings: list[Finding],
) -> dict[tuple[Form, ...], Form]:
    """For each kind of ambiguous stopwatch cell, the one form that fits the law best."""
    kinds: dict[tuple[Form, ...], list[tuple[float, Line, Ref]]] = {}
    for line, length_m in zip(lines, lengths_m, strict=True):
        for ref in line.timings:
            if ref.value.forms:
                names = tuple(name for name, _ in ref.value.forms)
                kinds.setdefault(names, []).append((length_m, line, ref))
    chosen: dict[tuple[Form, ...], Form] = {}
    for names, cells in kinds.items():
        fits = []
        for index, name in enumerate(names):
            timings = [
                (length_m, ref.value.forms[index][1], swings_of(line, ref, noted))
                for length_m, line, ref in cells
            ]
            fits.append((law.count_misfit(timings, brief), index, name))
        _, index, name = min(fits)
        chosen[names] = name
        first = cells[0][2]
        raw = text_of(found.grid.rows[first.row][first.column])
        findings.append(
            Finding(
                "time_form_guessed",
                learner,
                say(
                    "{table}: {n} time written like {text} could be read in more than one way; "
                    "taken as {form}, so {text} is {time:g} s."
                    if len(cells) == 1
                    else "{table}: {n} times written like {text} could be read in more than one "
                    "way; taken as {form}, so {text} is {time:g} s.",
                    table=table_place(found.grid),
                    n=len(cells),
                    text=raw,
                    form=_FORM_NAMES[name],
                    time=first.value.forms[index][1],
                ),
                Concern.NOTE,
                {"form": name, "cells": len(cells)},
                tuple(
                    found.grid.source(
                        ref.row, ref.column, Figures(f"{ref.value.forms[index][1]:g} s")
                    )
                    for _, _, ref in cells[:20]
                ),
                say("Does {text} mean {time:g} s?", text=raw, time=first.value.forms[index][1]),
            )
        )
    return chosen


def count_findings(
    found: Found,
    guessed: list[tuple[float, float, Ref]],
    brief: Brief,
    learner: str,
    findings: list[Finding],
) -> None:
    """Say that the number of swings was not given, and what the times themselves suggest.

    ``guessed`` holds (length in m, time in s, its cell) of every such timing.
    """
    if not guessed:
        return
    apparent = law.apparent_swings((length, time) for length, time, _ in guessed)
    taken = brief.swings_per_timing
    better = [
        n
        for n in (1, *brief.swings_allowed)
        if n != taken and 0.8 < apparent / n < 1.25 and not 0.8 < apparent / taken < 1.25
    ]
    told: str = say(
        "{table}: the number of swings in one timing is not given; {n} was taken from the brief.",
        table=table_place(found.grid),
        n=taken,
    )
    if better:
        told = joined((told, say("The times would fit {n} better.", n=better[0])))
    numbers: dict[str, float | str] = {"swings": taken, "apparent_swings": apparent}
    if better:
        numbers["fits_better"] = better[0]
    first = guessed[0][2]
    findings.append(
        Finding(
            "swings_guessed",
            learner,
            told,
            Concern.LOOK if better else Concern.ASK,
            numbers,
            (head_source(found, first, say("{n} swings, from the brief", n=taken)),),
            say("How many complete swings did you time at once?"),
        )
    )
