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
    """The headings of the table: one length, then a time for each timing asked for.

    Where the brief leaves a choice of how many swings are timed, they have a column.
    """
    say, choice = task_words(brief.feedback_language), len(_counts(brief)) > 1
    time = say.time[choice].format(n=brief.swings_per_timing)
    first = (say.length, say.swings) if choice else (say.length,)
    if brief.timings_per_length == 1:
        return (*first, f"{time} / s")
    tries = range(1, brief.timings_per_length + 1)
    return (*first, *(f"{say.timing.format(time=time, i=i)} / s" for i in tries))


def _counts(brief: Brief) -> list[int]:
    """The numbers of swings that may be timed."""
    return sorted({brief.swings_per_timing, *brief.swings_allowed})


def length_range_cm(brief: Brief) -> tuple[float, float]:
    """Lengths the cells accept, in centimetres."""
    low, high = brief.shortest_m / _BEYOND, brief.longest_m * _BEYOND
    return (_neat(100 * low, math.floor), _neat(100 * high, math.ceil))


def time_range_s(brief: Brief) -> tuple[float, float]:
    """Times the cells accept, in seconds."""
    counts = _counts(brief)
    low, high = (
        float(period_s(cm / 100, _NOMINAL_G)) * count
        for cm, count in zip(length_range_cm(brief), (counts[0], counts[-1]), strict=True)
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
    last, counts = _FIRST + brief.lengths + SPARE_ROWS - 1, _counts(brief)
    choice = len(counts) > 1
    say = task_words(brief.feedback_language)
    lengths = _between(length_range_cm(brief), say, "cm")
    _tell(lengths, say.length_title, say.length_prompt)
    lengths.add(f"A{_FIRST}:A{last}")
    times = _between(time_range_s(brief), say, "s")
    _tell(times, say.time_title, say.time_prompt[choice].format(n=brief.swings_per_timing))
    times.add(f"{'C' if choice else 'B'}{_FIRST}:{get_column_letter(columns)}{last}")
    sheet.add_data_validation(lengths)
    sheet.add_data_validation(times)
    if choice:
        allowed = ",".join(map(str, counts))
        swings = DataValidation(type="list", formula1=f'"{allowed}"')
        swings.error = say.wrong_count.format(counts=", ".join(map(str, counts)))
        _tell(swings, say.swings_title, say.swings_prompt)
        swings.add(f"B{_FIRST}:B{last}")
        sheet.add_data_validation(swings)
        for row in range(_FIRST, last + 1):
            sheet.cell(row, 2).value = brief.swings_per_timing


def _between(bounds: tuple[float, float], say: TaskWords, unit: str) -> DataValidation:
    low, high = bounds
    rule = DataValidation(
        type="decimal", operator="between", formula1=f"{low:g}", formula2=f"{high:g}"
    )
    rule.error = say.wrong.format(low=say.number(low), high=say.number(high), unit=unit)
    return rule


def _tell(rule: DataValidation, title: str, prompt: str) -> None:
    """What a cell says when it is entered, and that nothing else is taken."""
    rule.allow_blank = True
    rule.errorStyle, rule.errorTitle = "stop", title
    rule.promptTitle, rule.prompt = title, prompt
    rule.showErrorMessage = rule.showInputMessage = True


def _neat(value: float, towards: Callable[[float], int]) -> float:
    """Two significant figures, rounded outward."""
    step = 10.0 ** (math.floor(math.log10(value)) - 1)
    return float(f"{towards(value / step) * step:.6g}")
