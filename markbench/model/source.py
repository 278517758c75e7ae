"""Where a number or a file came from, so that every value can be traced to its cell."""

from __future__ import annotations

from dataclasses import dataclass

from markbench.model.sentence import joined, say


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
        sheet = say("sheet {sheet}", sheet=self.sheet) if self.sheet else ""
        cell = say("cell {cell}", cell=self.cell) if self.cell else ""
        return joined((self.file, sheet, cell), ", ")
