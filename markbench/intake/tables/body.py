"""The rows under the headings, read into lines; every cell that is no number is questioned."""

from __future__ import annotations

from dataclasses import dataclass, field

from markbench.checks.wording import listed
from markbench.intake.tables.grid import Grid
from markbench.intake.tables.headings import Heading
from markbench.intake.tables.lines import (
    MOST_SWINGS,
    Found,
    Line,
    Ref,
    is_count,
    left_empty,
    not_understood,
    parted,
    place,
    places_of,
    table_place,
)
from markbench.intake.tables.values import Value
from markbench.intake.tables.view import View
from markbench.model import Concern, Finding, say

_LONGEST_LABEL = 30


def _sums_up(grid: Grid, line: Line, above: list[Line]) -> bool:
    """Whether the length and every time of a line are the sum, or the mean, of those above."""
    for share in (1.0, 1.0 / len(above)):
        pairs = [(line.length, [other.length for other in above])]
        for i, ref in enumerate(line.timings):
            pairs.append((ref, [other.timings[i] for other in above if i < len(other.timings)]))
        if len(pairs) > 1 and all(
            len(refs) == len(above)
            and abs(sum(r.value.number or 0.0 for r in refs) * share - (ref.value.number or 0.0))
            <= 0.51 * 10.0 ** -places_of(grid, ref)
            for ref, refs in pairs
        ):
            return True
    return False


@dataclass(slots=True)
class Roles:
    """Which columns of a table hold what (the view's columns)."""

    timings: list[int] = field(default_factory=list)
    own: list[int] = field(default_factory=list)
    swings: int | None = None
    unclaimed: list[int] = field(default_factory=list)
    ordinals: list[int] = field(default_factory=list)
    long: bool = False
    last_row: int = 0


class Body:
    """Reads the rows ``start`` to ``end`` of a view into the lines of ``table``."""

    def __init__(
        self,
        view: View,
        table: Found,
        composed: list[tuple[Heading, list[int]]],
        length: int,
        roles: Roles,
        learner: str,
    ) -> None:
        self.view, self.table, self.roles = view, table, roles
        self.headings = [heading for heading, _ in composed]
        self.length = length
        self.learner = learner
        self.missing = {(r, c): what for r, c, what in view.grid.missing}
        self.values = roles.timings + roles.own or roles.unclaimed
        self.dashes: list[Ref] = []
        self.without_times: list[Ref] = []
        self.current: Ref | None = None  # the length that holds for rows without one
        self.gap = False

    def read(self, start: int, end: int) -> None:
        """Fill ``table.lines`` and ``table.findings``."""
        for row in range(start, end):
            if all(cell == "" or str(cell).isspace() for cell in self.view.cells[row]):
                self.gap = bool(self.table.lines)
                continue
            if self._length_of(row) is None:
                continue
            line = self._line(row)
            if line.timings or line.own or line.unclaimed:
                self.table.lines.append(line)
                self.roles.last_row = row
        self._drop_foot()
        self._report()

    def _length_of(self, row: int) -> Ref | None:
        """The length a row belongs to; ``None`` for a row that holds no readings."""
        view, roles = self.view, self.roles
        first = view.ref(row, self.length, self.headings[self.length])
        values = view.values[row]
        numbers = any(values[c].number is not None for c in self.values)
        lost = bool(self.missing) and any(
            view.at(row, c) in self.missing for c in (self.length, *self.values)
        )
        if first.value.number is not None:
            times = roles.timings or roles.unclaimed
            if not numbers and not lost and all(view.cells[row][c] == "" for c in times):
                if not self.gap and self.values:
                    self.without_times.append(first)
                return None
            if not self._usable(first, say("a length")):
                return None
            self.current, self.gap = first, False
            return first
        if first.value.empty and not first.value.dash and not self._is_missing(first):
            # Under a merged or once-written length: a further timing of the same length.
            if self.gap or not any(values[c].number is not None for c in roles.timings):
                return None
            if any(
                heading.mean or heading.quantity
                for column, heading in view.heads[row].items()
                if column not in roles.ordinals
            ):
                return None
            return self.current
        told = view.heads[row].get(self.length)
        if not (numbers or lost) or (told is not None and (told.mean or told.quantity)):
            return None
        if self.gap or len(str(view.cells[row][self.length])) > _LONGEST_LABEL:
            return None
        self._usable(first, say("a length"))
        self.current = None
        return None

    def _line(self, row: int) -> Line:
        assert self.current is not None
        view, line = self.view, Line(self.current)
        for column in self.roles.timings:
            ref = view.ref(row, column, self.headings[column])
            if self._usable(ref, say("a timing")):
                line.timings += parted(ref)
        for column in self.roles.own:
            ref = view.ref(row, column, self.headings[column])
            if self._usable(ref, say("an own value"), above_zero=False):
                line.own.append(ref)
        for column in self.roles.unclaimed:
            ref = view.ref(row, column, self.headings[column])
            if ref.value.number is not None and ref.value.number > 0:
                line.unclaimed += parted(ref)
            elif why := self._why_unread(ref):
                unread = self.table.unread.setdefault(self.table.key_of(ref), [])
                unread.append(self._finding(ref, say("a timing"), why))
        if self.roles.swings is not None:
            ref = view.ref(row, self.roles.swings, self.headings[self.roles.swings])
            told = view.heads[row].get(self.roles.swings)
            if told is not None and told.swings:  # "10 swings"
                ref.value = Value(float(told.swings))
            number = ref.value.number
            if is_count(number):
                line.swings = ref
            elif not ref.value.empty:
                why = ref.value.trouble or say(
                    "it is not a whole number from 1 to {most}", most=MOST_SWINGS
                )
                self._question(ref, say("a number of swings"), why)
        return line

    def _is_missing(self, ref: Ref) -> bool:
        return (ref.row, ref.column) in self.missing

    def _question(self, ref: Ref, what: str, why: str) -> None:
        self.table.findings.append(self._finding(ref, what, why))

    def _finding(self, ref: Ref, what: str, why: str) -> Finding:
        raw = self.missing.get((ref.row, ref.column)) if ref.value.empty else None
        return not_understood(self.learner, self.view.grid, ref.row, ref.column, what, why, raw)

    def _usable(self, ref: Ref, what: str, above_zero: bool = True) -> bool:
        """Whether a cell holds a number that can be used; if not, it is questioned."""
        value = ref.value
        if value.several and what != "a timing":
            self._question(ref, what, say("it holds more than one number"))
        elif value.number is not None:
            if value.number > 0 or not above_zero:
                return True
            self._question(ref, what, say("it is not above zero"))
        elif value.dash:
            self.dashes.append(ref)
        elif why := self._why_unread(ref):
            self._question(ref, what, why)
        return False

    def _why_unread(self, ref: Ref) -> str:
        """Why a cell holds no number, though something stands in it; else an empty text."""
        if not ref.value.empty or not self._is_missing(ref):
            return ref.value.trouble
        shown = self.missing[ref.row, ref.column]
        return say(
            "the file holds the formula but not its result; opening and saving it in a "
            "spreadsheet program stores the result"
            if shown.startswith("=")
            else "the spreadsheet shows the error {shown}",
            shown=shown,
        )

    def _drop_foot(self) -> None:
        """Take out last rows without a label that hold the sums or means of those above."""
        lines, grid = self.table.lines, self.view.grid
        for foot in (2, 1):
            above, last = lines[:-foot], lines[-foot:]
            if len(above) < 3 or not all(_sums_up(grid, line, above) for line in last):
                continue
            del lines[-foot:]
            names = listed([grid.cell_name(n.length.row, n.length.column) for n in last])
            self.table.findings.append(
                Finding(
                    "column_guessed",
                    self.learner,
                    say(
                        "{table}: what begins at {cells} holds the sums or means of the readings "
                        "above and was not taken for readings.",
                        table=table_place(grid),
                        cells=names,
                    ),
                    Concern.NOTE,
                    {"cell": names, "taken_as": "sums or means"},
                    tuple(
                        grid.source(n.length.row, n.length.column, say("taken as a sum or mean"))
                        for n in last
                    ),
                )
            )
            return

    def _report(self) -> None:
        grid = self.view.grid
        if self.dashes:
            self.table.findings.append(left_empty(self.learner, grid, self.dashes))
        if self.without_times:
            refs = self.without_times
            names = ", ".join(grid.cell_name(ref.row, ref.column) for ref in refs[1:8])
            where = place(grid, refs[0].row, refs[0].column)
            if names:
                where = say("{place} (and {cells})", place=where, cells=names)
            self.table.findings.append(
                Finding(
                    "value_not_understood",
                    self.learner,
                    say("{place}: no timing stands beside the length.", place=where),
                    Concern.ASK,
                    {"cells": len(refs)},
                    tuple(
                        grid.source(ref.row, ref.column, say("a length without a timing"))
                        for ref in refs[:20]
                    ),
                    say("Were these lengths timed, and what were the times?"),
                )
            )
