"""From the bytes of one file to a learner's table of readings, with everything questioned."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import replace

from markbench.intake.tables.grid import Grid, column_number
from markbench.intake.tables.guesses import Noted
from markbench.intake.tables.layout import find_headed
from markbench.intake.tables.lines import Found, table_place
from markbench.intake.tables.listed import find_listed
from markbench.intake.tables.merge import join_tables
from markbench.intake.tables.notes import noted_beside, own_g
from markbench.intake.tables.outcome import ColumnHints, TableOutcome
from markbench.intake.tables.pointed import find_pointed
from markbench.intake.tables.settle import settle
from markbench.intake.tables.texts import read_delimited
from markbench.intake.tables.unheaded import find_bare, find_blocks, find_crosswise
from markbench.intake.tables.view import View, view_of
from markbench.intake.tables.workbooks import MOST_BYTES, MOST_CELLS, UnreadableError, read_workbook
from markbench.model import Brief, Concern, Figures, Finding, ReadingsTable, Source, say

_MOST_TABLES = 40
_MOST_CELL_FINDINGS = 25
_OLE = b"\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1"


def read_grids(name: str, data: bytes) -> tuple[Grid, ...]:
    """The raw cells of a spreadsheet or text file; :class:`UnreadableError` says why not."""
    if len(data) > MOST_BYTES:
        raise UnreadableError(say("it is larger than {n} MB", n=MOST_BYTES // 1_000_000))
    if not data:
        raise UnreadableError(say("it is empty"))
    if data.startswith((b"PK\x03\x04", _OLE)):
        return read_workbook(name, data)
    if data.startswith((b"%PDF", b"\x89PNG", b"\xff\xd8\xff", b"{\\rtf", b"<html", b"<!DOCTYPE")):
        raise UnreadableError(say("it is no spreadsheet or text table"))
    return (read_delimited(name, data),)


def read_readings(
    name: str,
    data: bytes,
    brief: Brief,
    learner: str,
    hints: ColumnHints | None = None,
    *,
    corrections: Mapping[str, str] | None = None,
) -> TableOutcome:
    """Read one learner's table of readings.

    ``name`` is the file as in :class:`~markbench.model.Source`; ``hints`` the teacher's
    pointing at columns. ``corrections`` are the teacher's new texts for single cells, by
    ``"file|sheet|cell"``; those of other files are passed over. Raises nothing for bad
    input: what could not be read is a finding, and ``grids`` holds the cells as they stand
    in the file (with the corrections put in).
    """
    try:
        grids = read_grids(name, data)
    except UnreadableError as error:
        return TableOutcome(None, (_unreadable(name, learner, str(error)),))
    grids = _corrected(grids, corrections or {})
    table, findings = understand_grids(name, grids, brief, learner, hints)
    return TableOutcome(table, _shortened(findings, name, learner), grids)


def understand_grids(
    name: str,
    grids: tuple[Grid, ...],
    brief: Brief,
    learner: str,
    hints: ColumnHints | None = None,
) -> tuple[ReadingsTable | None, list[Finding]]:
    """The table in some raw cells, or ``None`` with a finding that says why."""
    findings = [_too_large(grid, learner) for grid in grids if grid.cut]
    findings += [_joined(grid, learner) for grid in grids if grid.joined]
    if hints is not None:
        founds, vain = find_pointed(grids, hints, learner)
        views = [view_of(grid) for grid in grids]
        findings += vain
    else:
        views = [view_of(grid) for grid in grids]
        headed = [found for view in views for found in _find(view, learner)]
        founds = [found for found in headed if found.lines]
        if _worth(founds)[1] == 1:  # “Length | 20 cm” over its times, then the next such block
            blocks = [found for view in views for found in find_blocks(view, learner)]
            founds = max(founds, blocks, key=lambda some: _worth(some)[::-1])
        if not founds:
            listed = [found for view in views for found in find_listed(view, learner)]
            blocks = [found for view in views for found in find_blocks(view, learner)]
            founds = max(listed, blocks, key=_worth)
        for turned in (False, True):
            founds = founds or [
                found
                for grid in grids
                for found in find_bare(view_of(grid, turned), brief, learner)
            ]
        if not founds and headed:
            findings += [finding for found in headed for finding in found.findings]
            return None, [*findings, _no_timings(headed, learner)]
    if not founds:
        if hints is None:
            findings.append(_not_understood(name, grids, learner))
        return None, findings
    founds = _shown(founds, learner, findings)
    if len(founds) > _MOST_TABLES:
        findings.append(_too_many(founds, learner))
        founds = founds[:_MOST_TABLES]
    noted = noted_beside(views, founds, brief)
    if hints is not None:
        noted = _as_pointed(noted, hints)
    table = _join(founds, brief, learner, noted, findings)
    if table is None:
        findings.append(_no_timings(founds, learner))
        return None, findings
    final = own_g(views, founds, learner, findings)
    if final:
        table = replace(table, own_values=(*table.own_values, *final))
    return table, findings


def _find(view: View, learner: str) -> list[Found]:
    """Headed tables of a sheet, upright; turned on its side where that reads better."""
    if crosswise := find_crosswise(view, learner):
        return crosswise
    upright = find_headed(view, learner)
    if sum(len(found.lines) for found in upright) >= 2 and any(f.raw for f in upright):
        return upright
    turned = find_headed(view_of(view.grid, turned=True), learner)
    return max(upright, turned, key=_worth)


def _worth(founds: list[Found]) -> tuple[int, int]:
    return (
        sum(len(line.timings) for found in founds for line in found.lines),
        sum(len(found.lines) for found in founds),
    )


def _join(
    founds: list[Found], brief: Brief, learner: str, noted: Noted, findings: list[Finding]
) -> ReadingsTable | None:
    derived = [found for found in founds if not found.raw and any(ln.own for ln in found.lines)]
    with_times = [found for found in founds if not any(found is other for other in derived)]
    settled = []
    for group in (with_times, derived):
        for found in group:
            table, said = settle(found, brief, learner, noted.of(found, founds))
            if table is not None:
                settled.append((found, table))
                findings += said
            elif group is with_times:
                findings += said
        if settled:
            break
    if not settled:
        return None
    others = derived if with_times and settled[0][0] in with_times else []
    return join_tables(settled, others, brief, learner, findings)


def _as_pointed(noted: Noted, hints: ColumnHints) -> Noted:
    return replace(
        noted,
        length_unit=hints.length_unit or noted.length_unit,
        time_unit=hints.time_unit or noted.time_unit,
    )


def _corrected(grids: tuple[Grid, ...], corrections: Mapping[str, str]) -> tuple[Grid, ...]:
    """The grids with the teacher's texts put in the cells she corrected."""
    for key, text in corrections.items():
        file, _, rest = key.rpartition("|")[0].partition("|")
        cell = key.rpartition("|")[2]
        match = re.fullmatch(r"([A-Z]{1,3})(\d{1,7})", cell)
        if match is None:
            continue
        row, column = int(match[2]) - 1, column_number(match[1])
        grids = tuple(
            _with_cell(grid, row, column, text)
            if (grid.file, grid.sheet) == (file, rest)
            and row < len(grid.rows)
            and column < len(grid.rows[row])
            else grid
            for grid in grids
        )
    return grids


def _with_cell(grid: Grid, row: int, column: int, text: str) -> Grid:
    cells = list(grid.rows[row])
    cells[column] = text
    rows = list(grid.rows)
    rows[row] = tuple(cells)
    return replace(
        grid,
        rows=tuple(rows),
        missing=tuple(m for m in grid.missing if (m[0], m[1]) != (row, column)),
    )


def _shown(founds: list[Found], learner: str, findings: list[Finding]) -> list[Found]:
    """Tables of the sheets that are seen, if one holds times; hidden ones are spoken of."""
    if not any(found.raw and not found.grid.hidden for found in founds):
        return founds
    told: set[str] = set()
    for found in founds:
        if found.grid.hidden and found.raw and found.grid.sheet not in told:
            told.add(found.grid.sheet)
            row, column, _, _ = found.region
            findings.append(
                Finding(
                    "several_tables",
                    learner,
                    say(
                        "{table}: this sheet is hidden and holds a table of readings too; it was "
                        "left aside.",
                        table=table_place(found.grid),
                    ),
                    Concern.NOTE,
                    {"tables": len(founds)},
                    (found.grid.source(max(0, row), max(0, column), say("hidden, left aside")),),
                )
            )
    return [found for found in founds if not found.grid.hidden]


def _too_many(founds: list[Found], learner: str) -> Finding:
    return Finding(
        "several_tables",
        learner,
        say(
            "{table}: {n} tables were found; only the first {most} were read.",
            table=table_place(founds[0].grid),
            n=len(founds),
            most=_MOST_TABLES,
        ),
        Concern.LOOK,
        {"tables": len(founds)},
        ask=say("Which of the tables holds the readings to be marked?"),
    )


def _shortened(findings: list[Finding], name: str, learner: str) -> tuple[Finding, ...]:
    """The findings, a flood of unreadable cells gathered into one."""
    cells = [finding for finding in findings if finding.check == "value_not_understood"]
    rest = cells[_MOST_CELL_FINDINGS:]
    if not rest:
        return tuple(findings)
    gathered = {id(finding) for finding in rest}
    return (
        *(finding for finding in findings if id(finding) not in gathered),
        Finding(
            "value_not_understood",
            learner,
            say("{file}: {n} further cells could not be read as numbers.", file=name, n=len(rest)),
            Concern.ASK,
            {"cells": len(rest)},
            tuple(source for finding in rest for source in finding.sources)[:200],
            say("Is this the table of readings?"),
        ),
    )


def _unreadable(name: str, learner: str, why: str) -> Finding:
    return Finding(
        "unreadable_file",
        learner,
        say("{file} could not be opened: {why}.", file=name, why=why),
        Concern.LOOK,
        sources=(Source(name, understood=say("not opened")),),
        ask=say("Hand the file in again, as xlsx, ods or csv."),
    )


def _too_large(grid: Grid, learner: str) -> Finding:
    return Finding(
        "table_not_understood",
        learner,
        say(
            "{table}: the sheet is very large; only its first {n} cells were searched for a table.",
            table=table_place(grid),
            n=MOST_CELLS,
        ),
        Concern.ASK,
        {"cells": MOST_CELLS},
        (Source(grid.file, grid.sheet, understood=say("read in part")),),
    )


def _joined(grid: Grid, learner: str) -> Finding:
    joined = (
        (r, c) for r, row in enumerate(grid.rows) for c, cell in enumerate(row)
        if isinstance(cell, str) and re.fullmatch(r"\d+,\d+", cell)
    )  # fmt: skip
    shown = next(joined, (0, 0))
    cell = str(grid.rows[shown[0]][shown[1]])
    return Finding(
        "column_guessed",
        learner,
        say(
            "{file}: commas part the columns and the decimals alike; they were taken so that "
            "there is one number under each heading, as {text} in {cell}.",
            file=grid.file,
            text=cell,
            cell=grid.cell_name(*shown),
        ),
        Concern.ASK,
        {"cell": grid.cell_name(*shown), "taken_as": "decimals"},
        (grid.source(*shown, say("taken as {what}", what=Figures(cell.replace(",", ".")))),),
        say("Are these the numbers in your table?"),
    )


def _not_understood(name: str, grids: tuple[Grid, ...], learner: str) -> Finding:
    filled = sum(cell != "" for grid in grids for row in grid.rows for cell in row)
    why = say(
        "it holds no cells with anything in them"
        if not filled
        else "no heading names a length, and no two columns of numbers are tied by the "
        "pendulum's law"
    )
    return Finding(
        "table_not_understood",
        learner,
        say("{file}: no table of readings was found: {why}.", file=name, why=why),
        Concern.LOOK,
        {"cells": filled},
        (Source(name, understood=say("no table found")),),
        ask=say("Which column holds the lengths, and which the times?"),
    )


def _no_timings(founds: list[Found], learner: str) -> Finding:
    grid = founds[0].grid
    return Finding(
        "table_not_understood",
        learner,
        say("{table}: lengths were found, but no times beside them.", table=table_place(grid)),
        Concern.LOOK,
        sources=tuple(
            grid.source(line.length.row, line.length.column, say("a length without a time"))
            for line in founds[0].lines[:20]
        ),
        ask=say("Which column holds the lengths, and which the times?"),
    )
