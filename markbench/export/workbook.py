"""The workbook: sheets of plain rows made to read and print well.

No cell is ever a formula: a total that a spreadsheet computes could differ from the one
the window shows, and learners' text could hide among formulas.
"""

from __future__ import annotations

import datetime as dt
import math
from collections.abc import Sequence
from pathlib import Path
from textwrap import wrap
from typing import Any

from openpyxl import Workbook
from openpyxl.cell import WriteOnlyCell
from openpyxl.styles import Alignment, Border, Font, PatternFill, Side
from openpyxl.utils import get_column_letter
from openpyxl.worksheet.properties import PageSetupProperties

from markbench.export.marks import levels, mark_sheet
from markbench.export.numbers_sheets import gravity, readings
from markbench.export.plain_text import for_cell, looks_like_formula
from markbench.export.questions import evidence, findings
from markbench.export.read_me import read_me
from markbench.export.report import ClassReport
from markbench.export.sheet import Cell, Column, DraftText, Number, Sheet
from markbench.export.whole_file import whole_file

# One accent, a deep green-blue; the tint of drafts is light enough to print as white.
_ACCENT = "1D5B5E"
_HEAD_FILL = PatternFill("solid", fgColor="E4EEEC")
_DRAFT_FILL = PatternFill("solid", fgColor="FBF3DA")
_HEAD_LINE = Border(bottom=Side(style="medium", color=_ACCENT))
_ROW_LINE = Border(bottom=Side(style="hair", color="A9B7B6"))
_FONT = "Calibri"
_LINE_PT = 15.0
_TALLEST_PT = 409.0  # no spreadsheet row is taller
_A4 = 9  # ECMA-376, part 1, 18.3.1.63, paperSize


def write_workbook(path: Path, report: ClassReport) -> None:
    """Write everything about a class as one workbook. Raises :class:`ExportError`."""
    sheets = [
        mark_sheet(report),
        levels(report),
        readings(report),
        gravity(report),
        findings(report),
        evidence(report),
    ]
    sheets.append(read_me(report, tuple(sheets)))
    book = Workbook(write_only=True)
    book.properties.creator = "Markbench"
    book.properties.title = for_cell(report.brief.title)
    book.properties.created = dt.datetime.combine(report.date, dt.time())
    with whole_file(path, report) as unfinished:
        for sheet in sheets:
            _write(book, sheet, report)
        book.save(unfinished)


def _write(book: Workbook, sheet: Sheet, report: ClassReport) -> None:
    out = book.create_sheet(sheet.title)
    _lay_out(out, sheet, report)
    pens = _Pens(out, sheet.columns)
    widths = [column.width for column in sheet.columns]
    tallest = max(len(wrap(column.heading, int(column.width) - 1)) for column in sheet.columns)
    out.row_dimensions[1].height = tallest * _LINE_PT
    out.append([pens.heading(column) for column in sheet.columns])
    count = 1
    for row in sheet.rows:
        count += 1
        _set_height(out, count, row, widths)
        # A generator: each cell is written before its pen takes the next value.
        out.append(pens.cell(at, cell) for at, cell in enumerate(row))
        del out.row_dimensions[count]
    out.auto_filter.ref = f"A1:{get_column_letter(len(sheet.columns))}{count}"


def _lay_out(out: Any, sheet: Sheet, report: ClassReport) -> None:
    """Widths, frozen panes and the printed page; before any row, as streaming needs."""
    for at, column in enumerate(sheet.columns, start=1):
        out.column_dimensions[get_column_letter(at)].width = column.width
    held = get_column_letter(sheet.held + 1)
    out.freeze_panes = f"{held}2"
    out.print_title_rows = "1:1"
    if sheet.held:
        out.print_title_cols = f"A:{get_column_letter(sheet.held)}"
    out.page_setup.orientation = "landscape"
    out.page_setup.paperSize = _A4
    out.page_setup.fitToWidth = 1
    out.page_setup.fitToHeight = 0
    out.sheet_properties.pageSetUpPr = PageSetupProperties(fitToPage=True)
    out.page_margins.left = out.page_margins.right = 0.4
    out.page_margins.top = out.page_margins.bottom = 0.7
    # In a printed head "&" begins a code, and the whole may hold 255 characters.
    title = for_cell(report.brief.title).replace("\n", " ")[:80].replace("&", "&&")
    out.oddHeader.left.text = title
    out.oddHeader.right.text = sheet.title
    out.oddFooter.left.text = f"Markbench {report.program_version}, {report.date:%Y-%m-%d}"
    out.oddFooter.right.text = "Page &P of &N"


def _set_height(out: Any, number: int, row: Sequence[Cell], widths: Sequence[float]) -> None:
    """Room for the longest wrapped text: not every program works it out on opening."""
    lines = 1
    for cell, width in zip(row, widths, strict=True):
        text = cell.text if isinstance(cell, DraftText) else cell
        if isinstance(text, str):
            lines = max(lines, _lines(text, _room(width)))
    out.row_dimensions[number].height = min(lines * _LINE_PT, _TALLEST_PT)


def _room(width: float) -> float:
    """Letters in a column: widths count digits, letters run narrower, two go to margins."""
    return 1.15 * width - 2


def _lines(text: str, width: float) -> int:
    """How many lines a text takes, a little on the safe side; wide scripts count double."""
    if len(text) * 2 <= width and "\n" not in text:
        return 1
    count = 0
    for paragraph in text.split("\n"):
        size = len(paragraph) + sum(char >= "\u1100" for char in paragraph if char > "\u04ff")
        count += max(1, math.ceil(size / width))
    return count


class _Pens:
    """One styled cell for each look of each column, used over and over.

    Setting fonts and borders anew for every cell takes most of the time of an export.
    """

    def __init__(self, out: Any, columns: tuple[Column, ...]) -> None:
        self._out = out
        self._columns = columns
        self._made: dict[tuple[object, ...], Any] = {}

    def heading(self, column: Column) -> Any:
        cell = WriteOnlyCell(self._out)
        cell.font = Font(name=_FONT, size=11, bold=True, color=_ACCENT)
        cell.fill = _HEAD_FILL
        cell.border = _HEAD_LINE
        cell.alignment = _alignment(column, "bottom")
        return _text(cell, column.heading)

    def cell(self, at: int, value: Cell) -> Any:
        match value:
            case None | "":
                pen = self._pen(at)
                value = None
            case Number(number) if not math.isfinite(number):
                return _text(self._pen(at), "not known")
            case Number(number, decimals):
                pen = self._pen(at, number_format=_format(decimals))
                pen.value = number
                return pen
            case DraftText(text):
                return _text(self._pen(at, draft=True, quoted=looks_like_formula(text)), text)
            case str(text):
                return _text(self._pen(at, quoted=looks_like_formula(text)), text)
            case dt.datetime():
                pen = self._pen(at, number_format="yyyy-mm-dd hh:mm")
            case dt.date():
                pen = self._pen(at, number_format="yyyy-mm-dd")
        pen.value = value
        return pen

    def _pen(
        self, at: int, *, number_format: str = "", draft: bool = False, quoted: bool = False
    ) -> Any:
        key = (at, number_format, draft, quoted)
        if key not in self._made:
            cell = WriteOnlyCell(self._out)
            cell.border = _ROW_LINE
            cell.alignment = _alignment(self._columns[at], "top")
            if draft:
                cell.font = Font(name=_FONT, size=11, italic=True)
                cell.fill = _DRAFT_FILL
            if quoted:
                cell.quotePrefix = True
            if number_format:
                cell.number_format = number_format
            self._made[key] = cell
        return self._made[key]


def _alignment(column: Column, vertical: str) -> Alignment:
    """Text keeps a little clear of the numbers that end where it begins."""
    indent = 1 if column.align == "left" else 0
    return Alignment(wrap_text=True, vertical=vertical, horizontal=column.align, indent=indent)


def _text(cell: Any, text: str) -> Any:
    """Put text into a cell as text, whatever it begins with."""
    cell.value = for_cell(text)
    cell.data_type = "s"
    return cell


def _format(decimals: int | None) -> str:
    return "General" if decimals is None else "0" + ("." + "0" * decimals if decimals else "")
