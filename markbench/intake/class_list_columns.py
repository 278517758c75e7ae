"""What the columns of a class list hold: its cells as text, and its headings understood."""

from __future__ import annotations

import csv
import re
from collections import Counter
from collections.abc import Sequence
from functools import cache

from markbench.intake.names import PARTICLES, cut, fold, word_list
from markbench.intake.tables.texts import decode
from markbench.intake.tables.workbooks import look_inside, refused_plainly, worksheets

_HEADING_ROWS = 15  # how far down a heading row may stand
MOST_LEARNERS = 100_000
_MOST_ROWS = MOST_LEARNERS + _HEADING_ROWS
_MOST_COLUMNS = 200
_LONGEST_LINE = 100_000
_TRIED_LINES = 1000  # lines that tell the delimiter
_LONGEST_CELL = 1000  # no name is longer; what stands in a longer cell is cut
# Between the parts of a heading such as “Name, Vorname” or “Nom de l'élève”.
_LINKING = frozenset(
    {
        "and", "et", "und", "u", "y", "e", "en", "i", "og", "och", "dan", "of", "the", "de",
        "del", "della", "des", "der", "do", "da", "du", "l", "le", "la", "van",
    }
)  # fmt: skip
_MOST_PARTS = 8
_ENDING = re.compile(r"\((\w{1,3})\)")  # "Forename(s)"
_ELIDED = str.maketrans("'’", "  ")  # "l'élève"
_HALVES = frozenset(("given", "surname", "name"))
_MOST_WORDS_OF_A_NAME = 5


def sheets_of(name: str, data: bytes) -> list[tuple[str, list[list[str]]]]:
    """Name and cells of each sheet; raises ``UnreadableError``."""
    if name.lower().endswith((".csv", ".tsv", ".txt")):
        return [("", _text_cells(data))]
    look_inside(data)
    with refused_plainly():
        return [
            (sheet.name, [[_cell(value) for value in row[:_MOST_COLUMNS]] for row in
                          book.get_sheet_by_name(sheet.name).to_python(
                              skip_empty_area=False, nrows=_MOST_ROWS)])
            for book, sheet in worksheets(data)
        ]  # fmt: skip


def _cell(value: object) -> str:
    if isinstance(value, float) and value.is_integer():
        return str(int(value))  # an id typed as a number
    return " ".join(str(value)[:_LONGEST_CELL].split())


def _text_cells(data: bytes) -> list[list[str]]:
    lines = [line[:_LONGEST_LINE] for line in decode(data).splitlines()[:_MOST_ROWS]]
    # The delimiter that cuts most lines into the same number (above one) of fields.
    best, chosen = 0, ""
    for delimiter in (";", "\t", ",", "|"):
        widths = Counter(
            len(row) for row in _cut(lines[:_TRIED_LINES], delimiter) if any(c.strip() for c in row)
        )
        alike = max((count for width, count in widths.items() if width > 1), default=0)
        if alike > best:
            best, chosen = alike, delimiter
    rows = _cut(lines, chosen) if chosen else [[line] for line in lines]
    return [[_cell(cell) for cell in row] for row in rows]


def _cut(lines: Sequence[str], delimiter: str) -> list[list[str]]:
    try:
        return list(csv.reader((line + "\n" for line in lines), delimiter=delimiter))
    except csv.Error:  # a quotation mark that never ends
        return [line.split(delimiter) for line in lines]


@cache
def _headings() -> dict[str, frozenset[str]]:
    return {
        column: frozenset(heading_form(word) for word in words)
        for column, words in word_list()["class_list"].items()
    }


def heading_form(text: str) -> str:
    """A heading as it is looked up: letters and digits alone."""
    return "".join(letter for letter in fold(text) if letter.isalnum())


def heading_of(text: str) -> str:
    """Which column of a class list a heading names, or an empty text."""
    form = heading_form(text)
    for column, words in _headings().items():
        if form and form in words:
            return column
    # "Surname, Forename", "Name Vorname": both halves of a name in one column are the name.
    parts = [fold(part) for part in cut(_ENDING.sub(r"\1", text).translate(_ELIDED))]
    if not 2 <= len(parts) <= _MOST_PARTS:
        return ""
    kinds = {"given" if kind == "called" else kind for kind in _parts(tuple(parts))}
    return "name" if "name" in kinds <= _HALVES or kinds == {"given", "surname"} else ""


def _parts(words: tuple[str, ...]) -> tuple[str, ...]:
    """What the parts of a heading name, each as long as can be; "?" for one that is unknown."""
    if not words:
        return ()
    if words[0] in _LINKING:
        return _parts(words[1:])
    for size in range(len(words), 0, -1):
        part = "".join(words[:size])
        for column, known in _headings().items():
            if part in known:
                return (column, *_parts(words[size:]))
    return ("?",)


def heading_row(cells: Sequence[Sequence[str]], *, sure: bool) -> tuple[int, dict[int, str]] | None:
    """Row number of the headings and which column holds what; ``sure`` of a class list."""
    best: tuple[int, dict[int, str]] | None = None
    for number, row in enumerate(cells[:_HEADING_ROWS]):
        columns: dict[int, str] = {}
        strange = 0
        for place, text in enumerate(row):
            column = heading_of(text)
            if not column:
                strange += bool(text.strip())
            elif column != "other" and column not in columns.values():
                columns[place] = column
        kinds = set(columns.values())
        named = kinds & {"name", "given", "surname", "called"}
        if named and not sure and not strange and len(kinds) > 1:
            return number, _told_apart(columns)
        if sure and (named or (kinds == {"id"} and strange == 0)):
            # "Students" above "id, name, group" is a title.
            best = (number, columns) if best is None or len(columns) > len(best[1]) else best
    return None if best is None else (best[0], _told_apart(best[1]))


def _told_apart(columns: dict[int, str]) -> dict[int, str]:
    """``nom`` or ``nome`` alone is the whole name; beside a first name it is the surname.

    What somebody likes to be called is a first name only where nothing else tells it.
    """
    kinds = set(columns.values())
    if "called" in kinds:
        if kinds & {"name", "given"}:
            columns = {place: c for place, c in columns.items() if c != "called"}
        else:
            columns = {p: "given" if c == "called" else c for p, c in columns.items()}
        kinds = set(columns.values())
    if "name" not in kinds and len(kinds & {"given", "surname"}) == 1:
        return {
            place: "name" if column in ("given", "surname") else column
            for place, column in columns.items()
        }
    return columns


def looks_like_a_name(text: str) -> bool:
    """“Okafor, James”, “Ana María Silva”: two to five words, none small, no digits."""
    words = [word for word in cut(text) if fold(word) not in PARTICLES]
    return (
        2 <= len(words) <= _MOST_WORDS_OF_A_NAME
        and not any(letter.isdigit() for letter in text)
        and not any(word[0].islower() for word in words)
    )
