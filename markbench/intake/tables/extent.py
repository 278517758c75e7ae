"""How far a sheet reaches, before calamine lays it out.

Calamine lays a sheet out from its first cell to its last, whatever lies between: a cell far
away, or one whose name is nonsense, makes it ask for more memory than there is, and the
process ends there and then. So each sheet's own text is read first, by a real parser (the
standard library's expat, which unfolds no entities here as none may be declared).

Rejected: searching the text for cell names with patterns; other quotation marks, rows that
name their number and cells that do not, and endless names all went past them.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping
from xml.parsers import expat

MOST_LAID_OUT = 16_000_000  # cells; some 45 bytes each while the sheet is laid out
_MOST_TEXT = 5_000_000  # bytes of one sheet; a table of readings has some ten thousand
_MOST_TEXT_ODS = 20_000_000  # all sheets of the file together
_LAST_ROW, _LAST_COLUMN = 1_048_576, 16_384
_NAME = re.compile(r"([A-Za-z]{1,3})(\d{1,7})")

Start = Callable[[str, Mapping[str, str]], None]


class TooFarError(Exception):
    """A sheet that must not be laid out; the message is a clause for the teacher."""


def check_sheet(text: bytes) -> None:
    """Refuse a sheet of an xlsx that would not fit: :class:`TooFarError`."""
    if len(text) >= _MOST_TEXT:
        raise TooFarError("one of its sheets is far larger than a table of readings")
    sheet = _Sheet()
    _parse(text, sheet.start)
    if sheet.last_row * sheet.last_column > MOST_LAID_OUT:
        raise TooFarError(
            f"a sheet reaches to row {sheet.last_row} and column {sheet.last_column}; "
            "a stray cell far from the table must be deleted first"
        )


def check_ods(text: bytes) -> None:
    """Refuse the sheets of an ods that would not fit: :class:`TooFarError`."""
    if len(text) >= _MOST_TEXT_ODS:
        raise TooFarError("its sheets are far larger than a table of readings")
    sheets = _OdsSheets()
    _parse(text, sheets.start)
    if sheets.most > MOST_LAID_OUT:
        raise TooFarError("a stray cell far from the table must be deleted first")


def _parse(text: bytes, start: Start) -> None:
    parser = expat.ParserCreate()
    parser.StartElementHandler = start
    parser.StartDoctypeDeclHandler = _refuse_doctype
    try:
        parser.Parse(text, True)
    except (expat.ExpatError, LookupError, ValueError, OverflowError) as error:
        raise TooFarError("it is damaged, or not the kind of file its name says") from error


def _refuse_doctype(*_: object) -> None:
    raise TooFarError("it declares a document type, which no spreadsheet program writes")


def _local(name: str) -> str:
    return name.rpartition(":")[2]


class _Sheet:
    """Counts as calamine does: rows and cells that do not name their place follow the last."""

    def __init__(self) -> None:
        self.row = self.column = self.last_row = self.last_column = 0

    def start(self, name: str, attributes: Mapping[str, str]) -> None:
        if _local(name) == "row":
            named = attributes.get("r")
            self.row = self.row + 1 if named is None else int(named)
            self.column = 0
        elif _local(name) == "c":
            self.row, self.column = self.row or 1, self.column + 1
            if (place := attributes.get("r")) is not None:
                match = _NAME.fullmatch(place)
                if match is None:
                    raise TooFarError("it is damaged: a cell has a name that none can have")
                self.column = 0
                for letter in match[1].upper():
                    self.column = self.column * 26 + ord(letter) - 64
                self.row = int(match[2])
            if not (1 <= self.row <= _LAST_ROW and self.column <= _LAST_COLUMN):
                raise TooFarError("it is damaged: a cell lies beyond the last one there can be")
            self.last_row = max(self.last_row, self.row)
            self.last_column = max(self.last_column, self.column)


class _OdsSheets:
    """Repeats count in full up to the last cell that holds a value."""

    def __init__(self) -> None:
        self.most = 0
        self.rows = self.columns = self.used_columns = 0

    def start(self, name: str, attributes: Mapping[str, str]) -> None:
        kind = _local(name)
        if kind == "table":
            self.rows = self.used_columns = 0
        elif kind == "table-row":
            self.rows += _repeated(attributes, "number-rows-repeated")
            self.columns = 0
        elif kind in ("table-cell", "covered-table-cell"):
            self.columns += _repeated(attributes, "number-columns-repeated")
            if any(_local(key) in ("value-type", "formula") for key in attributes):
                self.used_columns = max(self.used_columns, self.columns)
                self.most = max(self.most, self.rows * self.used_columns)


def _repeated(attributes: Mapping[str, str], key: str) -> int:
    given = next((value for name, value in attributes.items() if _local(name) == key), "1")
    return max(1, int(given))
