"""Which cell of the readings a finding, a reason or a source speaks of. No Qt here."""

from __future__ import annotations

from collections.abc import Iterable

from markbench.model import Finding, ReadingsTable, Source

# (reading, timing); timing None for the length itself, as in Finding.cells.
Cell = tuple[int, int | None]


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
