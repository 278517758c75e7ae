"""The mark sheet as csv, for whatever reads no workbook."""

from __future__ import annotations

import csv
import datetime as dt
import math
from pathlib import Path

from markbench.export.marks import mark_sheet
from markbench.export.plain_text import for_csv
from markbench.export.report import ClassReport
from markbench.export.sheet import Cell, DraftText, Number
from markbench.export.whole_file import whole_file


def write_mark_sheet_csv(path: Path, report: ClassReport) -> None:
    """Write the mark sheet by RFC 4180, in UTF-8 with a byte-order mark.

    Raises :class:`ExportError`.
    """
    sheet = mark_sheet(report)
    with (
        whole_file(path, report) as unfinished,
        unfinished.open("w", encoding="utf-8-sig", newline="") as file,
    ):
        writer = csv.writer(file, lineterminator="\r\n")
        writer.writerow(for_csv(column.heading) for column in sheet.columns)
        writer.writerows([_field(cell) for cell in row] for row in sheet.rows)


def _field(cell: Cell) -> str:
    match cell:
        case None:
            return ""
        case Number(value) if not math.isfinite(value):
            return "not known"
        case Number(value, decimals):
            return f"{value:.12g}" if decimals is None else f"{value:.{decimals}f}"
        case DraftText(text) | str(text):
            return for_csv(text)
        case dt.datetime():
            return f"{cell:%Y-%m-%d %H:%M}"
        case dt.date():
            return f"{cell:%Y-%m-%d}"
