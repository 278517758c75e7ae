"""How long a typical xlsx of five lengths takes to read and understand.

Run: ``python tests/benchmarks/bench_tables.py``. Each figure is the median of
many calls in processor time; calamine's own load is measured apart.
"""

from __future__ import annotations

import datetime as dt
import io
import time
from collections.abc import Callable
from statistics import median

import xlsxwriter
from python_calamine import CalamineWorkbook

from markbench.intake.tables import read_grids, read_readings
from markbench.intake.tables.reader import understand_grids
from markbench.model import Brief

ROWS = [
    (20, 9.02, 8.94),
    (30, 10.95, 11.04),
    (40, 12.71, 12.63),
    (50, 14.15, 14.23),
    (60, 15.6, 15.49),
]


def portfolio(shift: float) -> bytes:
    """An xlsx as a learner makes it: title, five lengths, own columns, a note."""
    buffer = io.BytesIO()
    book = xlsxwriter.Workbook(buffer, {"in_memory": True})
    book.set_properties({"created": dt.datetime(2026, 1, 1)})
    sheet = book.add_worksheet("Readings")
    sheet.write_row(0, 0, ["Pendulum practical"])
    sheet.write_row(
        2, 0, ["Length L / cm", "t1 / s", "t2 / s", "Mean t / s", "T / s", "T² / s²", "g / m s^-2"]
    )
    for row, (length, first, second) in enumerate(ROWS, 3):
        mean = round((first + second) / 2 + shift, 3)
        period = mean / 10
        sheet.write_row(row, 0, [length, first + shift, second + shift])
        for column, value in enumerate((mean, period, period**2, 0.3948 * length / period**2), 3):
            sheet.write_formula(row, column, f"=A{row}", None, round(value, 4))
    sheet.write_row(10, 0, ["Each timing is of 10 complete swings."])
    sheet.write_row(11, 0, ["g = 9.71 m/s^2"])
    book.close()
    return buffer.getvalue()


def per_call_us(call: Callable[[int], object], times: int = 400) -> float:
    """Median processor time of one call, in microseconds, after a first to warm up."""
    call(0)
    spent = []
    for i in range(times):
        start = time.process_time()
        call(i)
        spent.append((time.process_time() - start) * 1e6)
    return median(spent)


def main() -> None:
    """Print the figures."""
    files = [portfolio(i * 0.013) for i in range(100)]
    brief = Brief()
    outcome = read_readings("a.xlsx", files[0], brief, "x")
    assert outcome.table is not None
    assert len(outcome.table.readings) == 5
    assert len(outcome.table.own_values) == 21
    grids = [read_grids("a.xlsx", data) for data in files]

    def load(i: int) -> object:
        sheet = CalamineWorkbook.from_filelike(io.BytesIO(files[i % 100])).get_sheet_by_index(0)
        return sheet.to_python(skip_empty_area=False)

    print(f"calamine alone       {per_call_us(load):7.0f} us")
    print(f"cells of the file    {per_call_us(lambda i: read_grids('a', files[i % 100])):7.0f} us")
    understood = per_call_us(lambda i: understand_grids("a", grids[i % 100], brief, "x"))
    print(f"cells to readings    {understood:7.0f} us")
    whole = per_call_us(lambda i: read_readings("a.xlsx", files[i % 100], brief, "x"))
    print(f"file to readings     {whole:7.0f} us")


if __name__ == "__main__":
    main()
