"""One sheet for the whole class: a row, or a few rows, for each learner.

Three forms are read: a row per length with the learner named beside it; a row per learner
with groups of columns (length, its times, the next length …); and a row per learner with
the lengths in the headings (“20 cm, trial 1”).
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass, field, replace
from functools import cache

from markbench.intake.names import fold, word_list
from markbench.intake.tables.grid import Cell, Grid, text_of
from markbench.intake.tables.guesses import Noted
from markbench.intake.tables.headings import NOTHING, Heading, join, plain, understand, words
from markbench.intake.tables.layout import find_headed
from markbench.intake.tables.lines import (
    Found,
    Line,
    Ref,
    left_empty,
    not_understood,
    parted,
    place,
)
from markbench.intake.tables.notes import noted_beside
from markbench.intake.tables.outcome import ClassRow
from markbench.intake.tables.reader import read_grids
from markbench.intake.tables.settle import settle
from markbench.intake.tables.values import Value, read_text, read_value
from markbench.intake.tables.view import View, view_of
from markbench.intake.tables.workbooks import UnreadableError
from markbench.model import Brief, Concern, Finding, OwnValue, Source, say

_SEARCHED_ROWS = 15
_LENGTH_IN_HEADING = re.compile(
    r"(?<![\w.,])(\d+(?:[.,]\d+)?)\s*(mm|cm|dm|m)(?![\w/])", re.IGNORECASE
)


@dataclass(slots=True)
class _Who:
    """The header rows of a class sheet and the columns that name the learner."""

    top: int
    bottom: int
    id_column: int | None
    name_columns: tuple[int, ...]

    @property
    def columns(self) -> tuple[int, ...]:
        return (*(() if self.id_column is None else (self.id_column,)), *self.name_columns)


@dataclass(slots=True)
class _Plan:
    """Which columns belong to one length: its own (or a heading's value) and its timings."""

    length: int | None
    fixed: Ref | None
    length_heading: Heading = NOTHING
    timings: list[tuple[int, Heading]] = field(default_factory=list)
    own: list[tuple[int, Heading]] = field(default_factory=list)


def read_class_sheet(name: str, data: bytes, brief: Brief) -> tuple[ClassRow, ...] | None:
    """The learners' rows of a class sheet, or ``None`` where the file is none.

    A class sheet names at least two learners in a column and has readings beside them.
    Findings carry an empty ``learner``: whose row it is, the caller knows. Raises nothing
    for bad input.
    """
    try:
        grids = read_grids(name, data)
    except UnreadableError:
        return None
    for grid in grids:
        view = view_of(grid)
        who = _find_who(view)
        if who is None:
            continue
        rows = _by_rows(view, who, brief) or _by_columns(view, who, brief)
        if (
            rows
            and len({(row.id_text, row.name_text) for row in rows}) >= 2
            and any(row.table is not None for row in rows)
        ):
            return rows
    return None


def _find_who(view: View) -> _Who | None:
    w = words()
    for row, cells in enumerate(view.cells[:_SEARCHED_ROWS]):
        ids, names = [], []
        for column, cell in enumerate(cells):
            if not isinstance(cell, str) or not 0 < len(cell) <= 40:
                continue
            if understand(cell).quantity not in (None, "number"):
                continue
            folded = plain(cell).casefold()
            if w.ids.search(folded):
                ids.append(column)
            elif w.names.search(folded):
                names.append(column)
        if (ids or names) and sum(isinstance(c, str) and c != "" for c in cells) >= 2:
            bottom = row
            while (
                bottom + 1 < len(view.cells)
                and bottom - row < 2
                and all(view.cells[bottom + 1][c] == "" for c in (*ids[:1], *names[:1]))
                and any(cell != "" for cell in view.cells[bottom + 1])
            ):
                bottom += 1
            top = row
            if row and view.cells[row - 1].count("") <= len(cells) - 2:
                above = view.cells[row - 1]
                if all(above[c] == "" for c in (*ids[:1], *names[:1])):
                    top = row - 1
            return _Who(top, bottom, ids[0] if ids else None, _halves(cells, ids, names))
    return None


def _halves(cells: Sequence[Cell], ids: list[int], names: list[int]) -> tuple[int, ...]:
    """The column of names, with the other half of the name where that stands beside it."""
    if not names:
        return ()
    first = names[0]
    for column in (first + 1, first - 1):
        if 0 <= column < len(cells) and column not in ids:
            pair = {_run(str(cells[first])), _run(str(cells[column]))}
            if pair <= _names_of("name", "given", "surname") and pair & _names_of(
                "given", "surname"
            ):
                return tuple(sorted((first, column)))
    return (first,)


@cache
def _names_of(*columns: str) -> frozenset[str]:
    return frozenset(_run(word) for name in columns for word in word_list()["class_list"][name])


def _run(text: str) -> str:
    return "".join(letter for letter in fold(text) if letter.isalnum())


def _label(view: View, row: int, column: int | None) -> str:
    return "" if column is None else text_of(view.cells[row][column]).strip()


def _name(view: View, row: int, who: _Who) -> str:
    return " ".join(_label(view, row, column) for column in who.name_columns).strip()


def _row(
    grid: Grid,
    row: int,
    who: _Who,
    id_text: str,
    name_text: str,
    found: Found | None,
    brief: Brief,
    noted: Noted,
    finals: list[OwnValue],
) -> ClassRow:
    column = who.columns[0]
    source = Source(
        grid.file,
        grid.sheet,
        grid.cell_name(row, column),
        text_of(grid.rows[row][column]),
        say("the learner this row belongs to"),
    )
    if found is None or not found.lines:
        missing = Finding(
            "table_not_understood",
            "",
            say(
                "{place}: no readings stand in the row of {name}.",
                place=place(grid, row, column),
                name=name_text or id_text,
            ),
            Concern.LOOK,
            sources=(source,),
            ask=say("Could you hand the readings in?"),
        )
        said = found.findings if found is not None else []
        return ClassRow(id_text, name_text, source, None, (*said, missing))
    table, findings = settle(found, brief, "", noted)
    if table is not None and finals:
        table = replace(table, own_values=(*table.own_values, *finals))
    return ClassRow(id_text, name_text, source, table, tuple(findings))


def _by_rows(view: View, who: _Who, brief: Brief) -> tuple[ClassRow, ...] | None:
    """A row per length, with the learner's name in each row or in the first of hers."""
    founds = [found for found in find_headed(view, "") if found.raw]
    if len(founds) != 1 or founds[0].region[0] > who.bottom:
        return None
    found = founds[0]
    lengths = {c for _, c, _, h in found.heads if h.quantity == "length" and h.whole >= 0}
    if len(lengths) > 1:
        return None
    noted = noted_beside([view], founds, brief)
    owners: dict[tuple[str, str], list[Line]] = {}
    first_row: dict[tuple[str, str], int] = {}
    current = ("", "")
    row_owner: dict[int, tuple[str, str]] = {}
    for row in range(who.bottom + 1, len(view.cells)):
        label = (_label(view, row, who.id_column), _name(view, row, who))
        if any(label):
            current = label
        row_owner[row] = current
        first_row.setdefault(current, row)
    for line in found.lines:
        cells = [*line.timings, *line.own]
        row = cells[0].row if cells else line.length.row
        owner = row_owner.get(row, ("", ""))
        if any(owner):
            owners.setdefault(owner, []).append(line)
    rows = []
    for owner, lines in owners.items():
        part = Found(found.grid, lines, found.heads, long=found.long, region=found.region)
        part.findings = _of_owner(found.findings, row_owner, owner)
        part.unread = {
            column: _of_owner(findings, row_owner, owner)
            for column, findings in found.unread.items()
        }
        rows.append(_row(found.grid, first_row[owner], who, *owner, part, brief, noted, []))
    return tuple(rows)


def _of_owner(
    findings: list[Finding], row_owner: dict[int, tuple[str, str]], owner: tuple[str, str]
) -> list[Finding]:
    return [
        finding
        for finding in findings
        if any(
            row_owner.get(int(re.sub(r"\D", "", source.cell) or 0) - 1) == owner
            for source in finding.sources
        )
    ]


def _headings(view: View, who: _Who) -> list[tuple[Heading, Ref | None]]:
    """Per column: its heading from all header rows, and a length named in the headings."""
    result: list[tuple[Heading, Ref | None]] = [(NOTHING, None)] * len(view.cells[0])
    for row in range(who.top, who.bottom + 1):
        spanning: tuple[Heading, Ref | None] = (NOTHING, None)
        for column, cell in enumerate(view.cells[row]):
            if column in who.columns:
                continue
            if cell == "":
                if row < who.bottom and result[column] == (NOTHING, None):
                    heading, fixed = spanning
                else:
                    heading, fixed = NOTHING, None
            else:
                heading, fixed = _heading_of(view, row, column)
                spanning = (heading, fixed)
            before, before_fixed = result[column]
            result[column] = (join(before, heading), fixed or before_fixed)
    return result


def _heading_of(view: View, row: int, column: int) -> tuple[Heading, Ref | None]:
    cell = view.cells[row][column]
    if not isinstance(cell, str):
        value = read_value(cell)
        if value.number is not None and float(value.number).is_integer() and value.number <= 12:
            return Heading("trial", repeat=int(value.number)), None
        return NOTHING, None
    match = _LENGTH_IN_HEADING.search(plain(cell))
    if match is not None:
        value = read_text(match[1])
        length = Value(value.number, match[2].lower(), value.decimals)
        rest = plain(cell)[: match.start()] + " " + plain(cell)[match.end() :]
        rest = re.sub(r"\b[Ll](?:ength)?\s*=", " ", rest)
        return understand(rest.strip(" ,;:-–()")), Ref(length, *view.at(row, column))
    return understand(cell), None


def _plans(view: View, who: _Who) -> tuple[list[_Plan], list[tuple[int, Heading]]]:
    """Columns grouped by length, and columns of a final g."""
    plans: list[_Plan] = []
    finals: list[tuple[int, Heading]] = []
    loose: list[tuple[int, Heading]] = []
    by_length: dict[tuple[float | None, str | None], _Plan] = {}
    current: _Plan | None = None
    for column, (heading, fixed) in enumerate(_headings(view, who)):
        if column in who.columns:
            continue
        if fixed is not None:
            key = (fixed.value.number, fixed.value.unit)
            current = by_length.get(key)
            if current is None:
                current = by_length[key] = _Plan(None, fixed)
                plans.append(current)
            if heading.quantity in (None, "length", "number", "other"):
                heading = replace(heading, quantity="time")
        elif heading.quantity == "length" and not heading.mean:
            current = _Plan(column, None, heading)
            plans.append(current)
            continue
        if heading.quantity == "g":
            finals.append((column, heading))
        elif heading.quantity in ("time", "trial") and not heading.mean:
            if current is None:
                continue
            current.timings.append((column, heading))
            loose.append((column, heading))
        elif current is not None and heading.quantity in ("time", "period", "period_squared"):
            current.own.append((column, heading))
    with_length = [plan for plan in plans if plan.fixed is None]
    if len(with_length) > 1 and all(not plan.timings for plan in with_length[:-1]):
        _deal_out(with_length, loose)
    if len(finals) > 1:
        finals = []
    return [plan for plan in plans if plan.timings], finals


def _deal_out(plans: list[_Plan], loose: list[tuple[int, Heading]]) -> None:
    """All lengths first, then all times: the times' own numbering says which is whose."""
    if not loose or len(loose) % len(plans):
        return
    each = len(loose) // len(plans)
    for plan in plans:
        plan.timings, plan.own = [], []
    numbers = [heading.repeat for _, heading in loose]
    by_trial = numbers[: len(plans)] == list(range(1, len(plans) + 1))
    for i, timing in enumerate(loose):
        plans[i % len(plans) if by_trial else i // each].timings.append(timing)


def _by_columns(view: View, who: _Who, brief: Brief) -> tuple[ClassRow, ...] | None:
    plans, finals = _plans(view, who)
    if not plans:
        return None
    grid = view.grid
    timed = [column for plan in plans for column, _ in plan.timings]
    last = max(
        (row for row in range(len(view.cells)) if any(view.cells[row][c] != "" for c in timed)),
        default=who.bottom,
    )
    whole = Found(grid, [], region=(who.top, 0, last, len(view.cells[0])))
    noted = noted_beside([view], [whole], brief)
    heads = []
    for row in range(who.top, who.bottom + 1):
        for column, cell in enumerate(view.cells[row]):
            if isinstance(cell, str) and cell.strip() and column not in who.columns:
                heads.append((row, column, cell.strip(), view.heads[row].get(column, NOTHING)))
    rows = []
    for row in range(who.bottom + 1, len(view.cells)):
        id_text, name_text = _label(view, row, who.id_column), _name(view, row, who)
        if not (id_text or name_text):
            continue
        if not id_text and words().find["mean"].fullmatch(plain(name_text).casefold()):
            continue  # a row of class means at the foot
        found = Found(grid, [], heads)
        dashes: list[Ref] = []
        for plan in plans:
            line = _line(view, row, plan, found, dashes)
            if line is not None:
                found.lines.append(line)
        if dashes:
            found.findings.append(left_empty("", grid, dashes))
        told = understand(name_text or id_text)
        if not found.lines and not found.findings and (told.quantity or told.swings):
            continue  # a note under the table, not a name
        own = []
        for column, heading in finals:
            ref = view.ref(row, column, heading)
            if ref.value.number is not None and ref.value.number > 0:
                own.append(
                    OwnValue(
                        "g_m_s2",
                        ref.value.number,
                        grid.source(row, column, say("the learner's own final g")),
                        decimals=ref.value.decimals,
                    )
                )
        rows.append(_row(grid, row, who, id_text, name_text, found, brief, noted, own))
    return tuple(rows)


def _line(view: View, row: int, plan: _Plan, found: Found, dashes: list[Ref]) -> Line | None:
    grid = view.grid
    timings = []
    for column, heading in plan.timings:
        ref = view.ref(row, column, heading)
        if ref.value.number is not None and ref.value.number > 0:
            timings += parted(ref)
        elif ref.value.dash:
            dashes.append(ref)
        elif not ref.value.empty:
            why = ref.value.trouble or say("it is not above zero")
            found.findings.append(
                not_understood("", grid, ref.row, ref.column, say("a timing"), why)
            )
    if plan.fixed is not None:
        length = plan.fixed
    else:
        length = view.ref(row, plan.length or 0, plan.length_heading)
        if length.value.number is None or length.value.number <= 0:
            if timings or not length.value.empty:
                why = length.value.trouble or say("there is none beside its times")
                found.findings.append(
                    not_understood("", grid, length.row, length.column, say("a length"), why)
                )
            return None
    if not timings:
        return None
    line = Line(length, timings)
    for column, heading in plan.own:
        ref = view.ref(row, column, heading)
        if ref.value.number is not None:
            line.own.append(ref)
    return line
