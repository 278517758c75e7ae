"""What the reader hands back, and the teacher's hints it accepts."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any, Literal

from markbench.intake.tables.grid import Grid
from markbench.model import Finding, ReadingsTable, Source


@dataclass(frozen=True, slots=True)
class ColumnHints:
    """The teacher's pointing: which columns (or rows) of which sheet hold what.

    ``length``, ``timings`` and ``swings`` are column letters where ``along`` is
    ``columns``, row numbers as text (``"3"``) where it is ``rows``. ``swings`` may also be
    a plain count. ``first`` and ``last`` bound the readings (row numbers, or column
    letters where ``along`` is ``rows``); empty: as far as there are numbers. Units are
    those of the length (``mm cm dm m inch ft``) and time (``s ms min``) as written; empty:
    as the headings say.
    """

    length: str
    timings: tuple[str, ...]
    sheet: str = ""
    along: Literal["columns", "rows"] = "columns"
    swings: str | int = ""
    first: str = ""
    last: str = ""
    length_unit: str = ""
    time_unit: str = ""

    def to_json(self) -> dict[str, Any]:
        """As plain JSON values."""
        return {
            "length": self.length,
            "timings": list(self.timings),
            "sheet": self.sheet,
            "along": self.along,
            "swings": self.swings,
            "first": self.first,
            "last": self.last,
            "length_unit": self.length_unit,
            "time_unit": self.time_unit,
        }

    @classmethod
    def from_json(cls, value: Mapping[str, Any]) -> ColumnHints:
        """From :meth:`to_json`; KeyError or ValueError where it is not of that form."""
        if not isinstance(value, Mapping) or not isinstance(value.get("timings"), list | tuple):
            raise ValueError("hints are a table with a list of timings")
        along = value.get("along", "columns")
        if along not in ("columns", "rows"):
            raise ValueError(f"along is {along!r}; it must be columns or rows")
        swings = value.get("swings", "")
        return cls(
            length=str(value["length"]),
            timings=tuple(str(timing) for timing in value["timings"]),
            sheet=str(value.get("sheet", "")),
            along=along,
            swings=swings if isinstance(swings, int) and swings > 0 else str(swings or ""),
            first=str(value.get("first", "")),
            last=str(value.get("last", "")),
            length_unit=str(value.get("length_unit", "")),
            time_unit=str(value.get("time_unit", "")),
        )


@dataclass(frozen=True, slots=True)
class TableOutcome:
    """What came of one file: the table if it was understood, everything questioned, all cells."""

    table: ReadingsTable | None
    findings: tuple[Finding, ...] = ()
    grids: tuple[Grid, ...] = ()


@dataclass(frozen=True, slots=True)
class ClassRow:
    """One learner's row (or rows) of a class sheet."""

    id_text: str
    name_text: str
    source: Source
    table: ReadingsTable | None
    findings: tuple[Finding, ...] = ()
