"""A rubric being written: its file as a document that is changed in place.

tomlkit keeps the teacher's comments, the order and the translations that a form does not
show. What is judged is always the text that would be saved, by the reader of rubric files,
so that nothing can be saved that could not be opened.
"""

from __future__ import annotations

import tempfile
from dataclasses import dataclass
from pathlib import Path
from typing import Any, Literal

import tomlkit
from tomlkit.items import AoT, Table

from markbench.model import Rubric
from markbench.rubric import Problem, RubricError, load_rubric

Part = Literal["level", "phrase"]


@dataclass(frozen=True, slots=True)
class Told:
    """A problem with its place: ``criterion`` its row, ``None`` for the file as a whole.

    ``key`` as the form names its fields: ``title``, ``level 2.when``, ``phrase 1.text``.
    """

    criterion: int | None
    key: str
    message: str


class RubricSheet:
    """A rubric file open for writing. Rows, levels and phrases are counted from 0."""

    def __init__(self, text: str, name: str) -> None:
        self.name = name
        self._document = tomlkit.parse(text)

    @classmethod
    def open(cls, path: Path) -> RubricSheet:
        """Read a rubric to work on. Raises ``OSError``; ``ValueError`` where it is not TOML."""
        try:
            return cls(path.read_text("utf-8"), path.stem)
        except tomlkit.exceptions.TOMLKitError as error:
            raise ValueError(f"{path.name} is not a readable rubric: {error}") from error

    @property
    def text(self) -> str:
        """The file as it would be saved."""
        return tomlkit.dumps(self._document)

    def restore(self, text: str) -> None:
        """Go back to an earlier :attr:`text`."""
        self._document = tomlkit.parse(text)

    @property
    def title(self) -> str:
        """The rubric's title."""
        return str(self._document.get("title", ""))

    @title.setter
    def title(self, words: str) -> None:
        self._document["title"] = words

    def rows(self) -> list[dict[str, Any]]:
        """The criteria as plain tables."""
        rows = self._document.unwrap().get("criterion", [])
        return [row for row in rows if isinstance(row, dict)]

    # --- changing what is there ------------------------------------------------------

    def set(self, row: int, key: str, value: Any) -> None:
        """Set a key of a criterion; ``None`` takes it away."""
        _put(self._row(row), key, value)

    def set_part(self, row: int, part: Part, at: int, key: str, value: Any) -> None:
        """Set a key of a level or a phrase; ``None`` takes it away."""
        _put(self._parts(row, part)[at], key, value)

    def add_row(self, title: str) -> int:
        """Add a criterion at the end, with two levels to begin with; returns its place."""
        taken = {str(row.get("id")) for row in self.rows()}
        number = next(n for n in range(1, 1000) if f"criterion_{n}" not in taken)
        made = tomlkit.table()
        made.update({"id": f"criterion_{number}", "title": title})
        levels = tomlkit.aot()
        for name, marks in (("Full", 1), ("None", 0)):
            level = tomlkit.table()
            level.update({"name": name, "marks": marks, "descriptor": name})
            if marks:
                level["when"] = "readings_given"
            levels.append(level)
        made["level"] = levels
        rows = self._rows()
        rows.append(made)
        return len(rows) - 1

    def add_part(self, row: int, part: Part) -> None:
        """Add a level above the last, or a phrase at the end."""
        parts = self._parts(row, part)
        made = tomlkit.table()
        by_eye = bool(self._row(row).get("by_eye", False))
        if part == "phrase":
            made.update({"role": "look" if by_eye else "next", "text": ""})
            parts.append(made)
            return
        made.update({"name": "", "marks": 0, "descriptor": ""})
        if not by_eye:
            made["when"] = ""
        parts.insert(max(len(parts) - 1, 0), made)

    def remove(self, row: int, part: Part | None = None, at: int = 0) -> None:
        """Take away a criterion, or a level or phrase of it."""
        if part is None:
            del self._rows()[row]
        else:
            del self._parts(row, part)[at]

    def move(self, row: int, by: int, part: Part | None = None, at: int = 0) -> int:
        """Move a criterion, or a level or phrase of it; returns where it stands then."""
        parts = self._rows() if part is None else self._parts(row, part)
        here = row if part is None else at
        there = min(max(here + by, 0), len(parts) - 1)
        if there != here:
            one = parts[here]
            del parts[here]
            parts.insert(there, one)
        return there

    # --- judging ---------------------------------------------------------------------

    def check(self, language: str = "en") -> tuple[Rubric | None, tuple[Told, ...]]:
        """The rubric, or everything that is wrong with it and where."""
        with tempfile.TemporaryDirectory() as place:
            path = Path(place) / f"{self.name or 'rubric'}.toml"
            path.write_text(self.text, "utf-8")
            try:
                return load_rubric(path, language), ()
            except RubricError as error:
                rows = self.rows()
                return None, tuple(_placed(problem, rows) for problem in error.problems)

    def _rows(self) -> AoT:
        rows = self._document.get("criterion")
        if not isinstance(rows, AoT):
            rows = tomlkit.aot()
            self._document["criterion"] = rows
            rows = self._document["criterion"]
        assert isinstance(rows, AoT)
        return rows

    def _row(self, row: int) -> Table:
        return self._rows()[row]

    def _parts(self, row: int, part: Part) -> AoT:
        table = self._row(row)
        if not isinstance(table.get(part), AoT):
            table[part] = tomlkit.aot()
        parts = table[part]
        assert isinstance(parts, AoT)
        return parts


def as_marks(text: str) -> int | float | str:
    """Marks as typed; text that is no number stays, for the check to say so."""
    try:
        value = float(text.strip().replace(",", "."))
    except ValueError:
        return text
    return int(value) if value.is_integer() else value


def as_texts(text: str) -> str | list[str]:
    """A phrase as typed: each line after the first is another way of saying it."""
    lines = [line.strip() for line in text.splitlines() if line.strip()]
    return lines if len(lines) > 1 else "".join(lines)


def _put(table: Table, key: str, value: Any) -> None:
    present = table.get(key)
    if value is None:
        if present is not None:
            del table[key]
    elif present is None or present.unwrap() != value:
        if isinstance(value, list):
            lines = tomlkit.array()
            lines.extend(value)
            table[key] = lines.multiline(True)
        else:
            table[key] = value


def _placed(problem: Problem, rows: list[dict[str, Any]]) -> Told:
    if not problem.criterion:
        return Told(None, problem.key, problem.message)
    ids = [str(row.get("id")) for row in rows]
    if problem.criterion in ids:
        # An id used twice is told at its second use.
        at = len(ids) - 1 - ids[::-1].index(problem.criterion)
        at = at if problem.key == "id" else ids.index(problem.criterion)
    else:
        number = problem.criterion.removeprefix("number ")
        at = int(number) - 1 if number.isdigit() else 0
    return Told(at, problem.key, problem.message)
