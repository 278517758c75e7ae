"""Which cell of the readings a finding, a reason or a source speaks of. No Qt here."""

from __future__ import annotations

import math
from collections.abc import Iterable

from markbench.model import Analysis, Finding, ReadingsTable, Source

# (reading, timing); timing None for the length itself, as in Finding.cells.
Cell = tuple[int, int | None]

#: What is said of the line as a whole, and of no cell.
OF_THE_LINE = frozenset({"g_implausible", "intercept"})
_AS_FAR = 0.8  # of the farthest: then a row stands as far as that


def cells_of(sources: Iterable[Source], table: ReadingsTable | None) -> list[Cell]:
    """Cells of the table that stand at any of ``sources``."""
    if table is None:
        return []
    wanted = {_place(source) for source in sources if source.cell}
    found: list[Cell] = []
    for i, reading in enumerate(table.readings):
        if _place(reading.source) in wanted:
            found.append((i, None))
        found += [(i, k) for k, t in enumerate(reading.timings) if _place(t.source) in wanted]
    return found


def cells_of_finding(finding: Finding, table: ReadingsTable | None) -> list[Cell]:
    """Cells a finding names itself, else those its sources stand at."""
    return list(finding.cells) or cells_of(finding.sources, table)


def farthest_rows(analysis: Analysis) -> list[Cell]:
    """The lengths whose g stands farthest from the local one, for what is said of the line."""
    away = {
        i: abs(math.log(row.g / analysis.local.g))
        for i, row in enumerate(analysis.rows)
        if math.isfinite(row.g) and row.g > 0
    }
    most = max(away.values(), default=0.0)
    far = [i for i, size in away.items() if size >= _AS_FAR * most]
    return [(i, k) for i in far for k in (None, *range(len(analysis.rows[i].timings_s)))]


def source_at(table: ReadingsTable, cell: Cell) -> Source | None:
    """Where a cell was read from."""
    at, timing = cell
    if not 0 <= at < len(table.readings):
        return None
    reading = table.readings[at]
    if timing is None:
        return reading.source
    return reading.timings[timing].source if timing < len(reading.timings) else None


def correction_key(source: Source) -> str:
    """The subject under which a correction of a cell is kept."""
    return f"{source.file}|{source.sheet}|{source.cell}"


def _place(source: Source) -> tuple[str, str, str]:
    return (source.file, source.sheet, source.cell)
