"""Where a number or a file came from, so that every value can be traced to its cell."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Source:
    """One place in the learner's own files.

    ``file`` is relative to the class folder and written with ``/``; a member of a zip
    file reads ``work.zip!/table.xlsx``. ``cell`` is in A1 notation for every kind of
    table (for a text file, column letter = field, number = line). ``raw`` is the text as
    the learner typed it; ``understood`` says in plain words what was made of it.
    """

    file: str
    sheet: str = ""
    cell: str = ""
    raw: str = ""
    understood: str = ""

    def __str__(self) -> str:
        parts = [self.file]
        if self.sheet:
            parts.append(f"sheet {self.sheet}")
        if self.cell:
            parts.append(f"cell {self.cell}")
        return ", ".join(parts)
