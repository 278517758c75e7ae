"""Spreadsheets to raw cells, through calamine, which runs no macro and no formula.

Calamine gives each cell's stored value and says nothing of formulas whose result was never
stored, or of errors: both look empty. For xlsx the sheet's own text is therefore searched
for them.
"""

from __future__ import annotations

import io
import re
import zipfile
from collections.abc import Iterator, Mapping
from contextlib import contextmanager
from html import unescape

from python_calamine import (
    CalamineError,
    CalamineWorkbook,
    PasswordError,
    SheetMetadata,
    SheetTypeEnum,
    SheetVisibleEnum,
)

from markbench.intake.tables.compound import chains_end
from markbench.intake.tables.extent import TooFarError, check_ods, check_sheet
from markbench.intake.tables.grid import LONGEST_CELL, Cell, Grid, column_number
from markbench.intake.tables.members import unpacked
from markbench.model import say

MOST_BYTES = 20_000_000
MOST_UNPACKED = 200_000_000
MOST_CELLS = 20_000
MOST_ROWS = 2_000
MOST_COLUMNS = 200
_MOST_SHEETS = 30

_FORMULA = re.compile(
    rb'<c\b[^>]*?\br="([A-Z]{1,3})(\d{1,7})"[^>]*>\s*<f\b[^>]*?(?:/>|>([^<]*)</f>)\s*'
    rb"(?:<v\s*/>|<v>\s*</v>)?\s*</c>"
)
_ERROR = re.compile(
    rb'<c\b(?=[^>]*\bt="e")[^>]*?\br="([A-Z]{1,3})(\d{1,7})"[^>]*>(?:<f\b[^>]*?(?:/>|>[^<]*</f>))?'
    rb"\s*<v>([^<]*)</v>"
)
_SHEET = re.compile(rb"<sheet\b[^>]*>")
_RELATION = re.compile(rb"<Relationship\b[^>]*>")


class UnreadableError(Exception):
    """A file that could not be opened; the message is a clause for the teacher."""


def read_workbook(name: str, data: bytes) -> tuple[Grid, ...]:
    """All sheets with cells, in their order; :class:`UnreadableError` otherwise."""
    missing = look_inside(data)
    with refused_plainly():
        return tuple(
            grid
            for book, meta in worksheets(data)
            if (grid := _grid(name, book, meta, missing)) is not None
        )


def worksheets(data: bytes) -> Iterator[tuple[CalamineWorkbook, SheetMetadata]]:
    """The sheets of a workbook that was looked into before, charts and macros left out."""
    book = CalamineWorkbook.from_filelike(io.BytesIO(data))
    found = [sheet for sheet in book.sheets_metadata if sheet.typ == SheetTypeEnum.WorkSheet]
    for sheet in found[:_MOST_SHEETS]:
        yield book, sheet


@contextmanager
def refused_plainly() -> Iterator[None]:
    """Within, whatever calamine makes of a broken file leaves as :class:`UnreadableError`."""
    try:
        yield
    except PasswordError as error:
        raise UnreadableError(say("it is locked with a password")) from error
    except (CalamineError, OSError, ValueError, OverflowError) as error:
        raise UnreadableError(
            say("it is damaged, or not the kind of file its name says")
        ) from error
    except BaseException as error:
        # Calamine panics on some damaged files; its panics are no ordinary exceptions.
        if type(error).__name__ != "PanicException":
            raise
        raise UnreadableError(say("it is damaged")) from error


def _grid(
    name: str,
    book: CalamineWorkbook,
    meta: SheetMetadata,
    missing: Mapping[str, tuple[tuple[int, int, str], ...]],
) -> Grid | None:
    sheet = book.get_sheet_by_name(meta.name)
    width, height = sheet.total_width, sheet.total_height
    if not width or not height:
        return None
    most_rows = min(MOST_ROWS, max(1, MOST_CELLS // min(width, MOST_COLUMNS)))
    cells = sheet.to_python(skip_empty_area=False, nrows=most_rows if height > most_rows else None)
    merged = getattr(sheet, "merged_cell_ranges", None) or ()
    return Grid(
        name,
        sheet.name,
        tuple(_shorten(row) for row in cells),
        tuple(((a[0], a[1]), (b[0], b[1])) for a, b in merged),
        missing.get(sheet.name, ()),
        cut=height > most_rows or width > MOST_COLUMNS,
        hidden=meta.visible != SheetVisibleEnum.Visible,
    )


def _shorten(row: list[Cell]) -> tuple[Cell, ...]:
    return tuple(c[:LONGEST_CELL] if type(c) is str and len(c) > LONGEST_CELL else c for c in row)


def look_inside(data: bytes) -> dict[str, tuple[tuple[int, int, str], ...]]:
    """Refuse what would not fit in memory; find the cells without a stored value.

    Every workbook is looked into before calamine opens it. Sheet → row, column, what stands
    there; nothing for the older kinds, whose sheets are small by their nature.
    """
    if data[:2] != b"PK":
        if not chains_end(data):
            raise UnreadableError(say("it is damaged, or not the kind of file its name says"))
        return {}
    try:
        archive = zipfile.ZipFile(io.BytesIO(data))
        names = archive.namelist()
        if sum(info.file_size for info in archive.infolist()) > MOST_UNPACKED:
            raise UnreadableError(say("it unpacks to more than 200 MB"))
        if "xl/workbook.bin" in names:
            raise UnreadableError(
                say("it is a binary workbook (xlsb); saved as xlsx it can be read")
            )
        found: dict[str, list[tuple[int, int, str]]] = {}
        for info in archive.infolist():  # by their entries: two may have one name
            part = info.filename
            text = b"" if part.startswith("xl/media/") else unpacked(archive, info, data)
            if part == "content.xml":
                check_ods(text)
            elif b"sheetData" in text:  # a sheet, wherever the workbook keeps it
                check_sheet(text)
                cells = _without_value(text)
                if cells:
                    found[part] = cells
        if not found:
            return {}
        titles = _sheet_titles(archive)
        return {titles.get(part, part): tuple(cells) for part, cells in found.items()}
    except TooFarError as error:
        raise UnreadableError(str(error)) from error
    except (zipfile.BadZipFile, KeyError, NotImplementedError, EOFError, RuntimeError) as error:
        raise UnreadableError(
            say("it is damaged, or not the kind of file its name says")
        ) from error
    except (zipfile.LargeZipFile, OSError, ValueError, zipfile.zlib.error) as error:  # type: ignore[attr-defined]
        raise UnreadableError(
            say("it is damaged, or not the kind of file its name says")
        ) from error


def _without_value(text: bytes) -> list[tuple[int, int, str]]:
    cells = []
    if b"<f" in text:
        for letters, row, formula in _FORMULA.findall(text):
            what = unescape(formula.decode("utf-8", "replace"))[:60]
            cells.append((int(row) - 1, column_number(letters.decode()), f"={what}"))
    if b't="e"' in text:
        for letters, row, error in _ERROR.findall(text):
            shown = unescape(error.decode("utf-8", "replace"))
            cells.append((int(row) - 1, column_number(letters.decode()), shown))
    return cells


def _sheet_titles(archive: zipfile.ZipFile) -> dict[str, str]:
    """Part name → sheet name, as the workbook's own index says."""

    def attribute(tag: bytes, name: bytes) -> str:
        match = re.search(rb"\b" + name + rb'="([^"]*)"', tag)
        return unescape(match[1].decode("utf-8", "replace")) if match else ""

    targets = {
        attribute(tag, b"Id"): attribute(tag, b"Target")
        for tag in _RELATION.findall(archive.read("xl/_rels/workbook.xml.rels"))
    }
    titles = {}
    for tag in _SHEET.findall(archive.read("xl/workbook.xml")):
        target = targets.get(attribute(tag, b"r:id"), "").lstrip("/")
        part = target if target.startswith("xl/") else f"xl/{target}"
        titles[part] = attribute(tag, b"name")
    return titles
