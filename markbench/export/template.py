"""An empty table of readings for learners, made so that it comes back without a riddle.

Headings are written quantity / unit and carry the number of swings, since a heading without
them is what makes a table hard to read. Cells take numbers only, within generous ranges:
they catch metres typed for centimetres, a stray letter or a slipped key, and leave honest
mistakes alone, for those are what the marking is about. Nothing is protected: a locked
sheet that a learner cannot widen comes back as a photo of the screen.
"""

from __future__ import annotations

import io
import math
from collections.abc import Callable
from pathlib import Path

from openpyxl import Workbook
from openpyxl.cell import Cell
from openpyxl.styles import Alignment, Border, Font, PatternFill, Side
from openpyxl.utils import get_column_letter
from openpyxl.worksheet.datavalidation import DataValidation
from openpyxl.worksheet.worksheet import Worksheet

from markbench.export.handout import write_handout
from markbench.export.task_words import TaskWords, task_words
from markbench.model import Brief
from markbench.physics.pendulum import period_s

SPARE_ROWS = 5
"""Rows below those asked for that take numbers too: more lengths are welcome."""

_HEADINGS, _FIRST = 4, 5  # row of the headings, first row to fill in
# A length may be half the brief's shortest or twice its longest; a time may come from half
# or twice the swings (the commonest miscount) and still be typed as it was measured.
_BEYOND = 2.0
_NOMINAL_G = 9.8  # for a range this wide the place does not matter
_PAPER, _SHADE, _LINE = "FFFDF9", "F0E9DC", "857A67"


def template_headings(brief: Brief) -> tuple[str, ...]:
    """The headings of the table: one length, then a time for each timing asked for."""
    say = task_words(brief.feedback_language)
    time = say.time.format(n=brief.swings_per_timing)
    if brief.timings_per_length == 1:
        return (say.length, f"{time} / s")
    tries = range(1, brief.timings_per_length + 1)
    return (say.length, *(f"{say.timing.format(time=time, i=i)} / s" for i in tries))


def length_range_cm(brief: Brief) -> tuple[float, float]:
    """Lengths the cells accept, in centimetres."""
    low, high = brief.shortest_m / _BEYOND, brief.longest_m * _BEYOND
    return (_neat(100 * low, math.floor), _neat(100 * high, math.ceil))


def time_range_s(brief: Brief) -> tuple[float, float]:
    """Times the cells accept, in seconds."""
    low, high = (
        float(period_s(cm / 100, _NOMINAL_G)) * brief.swings_per_timing
        for cm in length_range_cm(brief)
    )
    return (_neat(low / _BEYOND, math.floor), _neat(high * _BEYOND, math.ceil))


def write_template(path: Path, brief: Brief) -> None:
    """Write the empty table (xlsx). Raises :class:`ExportError` where it cannot be written."""
    book = Workbook()
    sheet = book.active
    assert isinstance(sheet, Worksheet)
    sheet.title = task_words(brief.feedback_language).table_name
    _write_words(sheet, brief)
    headings = template_headings(brief)
    for column, words in enumerate(headings, 1):
        _put(sheet.cell(_HEADINGS, column), words)
    _dress(sheet, len(headings), brief.lengths)
    _accept_numbers_only(sheet, brief, len(headings))
    held = io.BytesIO()
    book.save(held)
    write_handout(path, held.getvalue())


def _put(cell: Cell, words: str) -> None:
    """Text stays text, even where a title begins with an equals sign."""
    cell.value = words
    cell.data_type = "s"


def _write_words(sheet: Worksheet, brief: Brief) -> None:
    title, note = sheet.cell(1, 1), sheet.cell(2, 1)
    _put(title, brief.title)
    title.font = Font(size=14, bold=True)
    _put(note, task_words(brief.feedback_language).note)
    note.font = Font(italic=True)


def _dress(sheet: Worksheet, columns: int, rows: int) -> None:
    thin = Side(style="thin", color=_LINE)
    box = Border(left=thin, right=thin, top=thin, bottom=thin)
    middle = Alignment(horizontal="center", vertical="center", wrap_text=True)
    for column in range(1, columns + 1):
        heading = sheet.cell(_HEADINGS, column)
        heading.font, heading.alignment, heading.border = Font(bold=True), middle, box
        heading.fill = PatternFill("solid", fgColor=_SHADE)
        sheet.column_dimensions[get_column_letter(column)].width = 18
        for row in range(_FIRST, _FIRST + rows):
            cell = sheet.cell(row, column)
            cell.border, cell.fill = box, PatternFill("solid", fgColor=_PAPER)
            cell.alignment = Alignment(horizontal="center")
    sheet.row_dimensions[_HEADINGS].height = 34
    sheet.freeze_panes = f"A{_FIRST}"
    sheet.page_setup.paperSize = sheet.PAPERSIZE_A4
    sheet.page_setup.orientation = "landscape" if columns > 4 else "portrait"
    sheet.page_setup.fitToWidth, sheet.page_setup.fitToHeight = 1, 0
    sheet.sheet_properties.pageSetUpPr.fitToPage = True


def _accept_numbers_only(sheet: Worksheet, brief: Brief, columns: int) -> None:
    last = _FIRST + brief.lengths + SPARE_ROWS - 1
    say = task_words(brief.feedback_language)
    lengths = _numbers(length_range_cm(brief), say, say.length_title, say.length_prompt, "cm")
    lengths.add(f"A{_FIRST}:A{last}")
    prompt = say.time_prompt.format(n=brief.swings_per_timing)
    times = _numbers(time_range_s(brief), say, say.time_title, prompt, "s")
    times.add(f"B{_FIRST}:{get_column_letter(columns)}{last}")
    sheet.add_data_validation(lengths)
    sheet.add_data_validation(times)


def _numbers(
    bounds: tuple[float, float], say: TaskWords, title: str, prompt: str, unit: str
) -> DataValidation:
    low, high = bounds
    rule = DataValidation(
        type="decimal", operator="between", formula1=f"{low:g}", formula2=f"{high:g}"
    )
    rule.allow_blank = True
    rule.errorStyle, rule.errorTitle = "stop", title
    rule.error = say.wrong.format(low=say.number(low), high=say.number(high), unit=unit)
    rule.promptTitle, rule.prompt = title, prompt
    rule.showErrorMessage = rule.showInputMessage = True
    return rule


def _neat(value: float, towards: Callable[[float], int]) -> float:
    """Two significant figures, rounded outward."""
    step = 10.0 ** (math.floor(math.log10(value)) - 1)
    return float(f"{towards(value / step) * step:.6g}")
