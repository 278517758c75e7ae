"""The table given to learners comes back without a guess, and takes only sensible numbers."""

import math
from pathlib import Path

import pytest
from openpyxl import load_workbook

from markbench.export.template import (
    SPARE_ROWS,
    length_range_cm,
    template_headings,
    time_range_s,
    write_template,
)
from markbench.intake.tables import read_readings
from markbench.model import Brief

BRIEFS = {
    "usual": Brief(),
    "twenty swings, once": Brief(timings_per_length=1, swings_per_timing=20),
    "short and many": Brief(shortest_m=0.05, longest_m=0.25, lengths=9, timings_per_length=4),
    "one count": Brief(swings_allowed=(10,)),
    "odd count": Brief(swings_per_timing=7, swings_allowed=(7,), timings_per_length=3),
    "title like a formula": Brief(title="=HYPERLINK(1)"),
    "in German": Brief(feedback_language="de", timings_per_length=3),
    "in German, once": Brief(feedback_language="de-AT", timings_per_length=1),
}


def fill(path: Path, brief: Brief) -> list[tuple[float, ...]]:
    """Type readings as a learner would: T = 2π√(L/g) with g = 9.81, to hundredths."""
    book = load_workbook(path)
    sheet = book.active
    top = next(r for r in range(1, 12) if sheet.cell(r, 1).value == template_headings(brief)[0])
    typed, first = [], len(template_headings(brief)) - brief.timings_per_length
    for i in range(brief.lengths):
        length, swings = 5.5 + 2 * i, brief.swings_per_timing
        if first == 2 and i % 2:  # she timed another number here, and says so
            swings = max(brief.swings_allowed)
            sheet.cell(top + 1 + i, 2).value = swings
        once = swings * 2 * math.pi * math.sqrt(length / 100 / 9.81)
        times = tuple(round(once + 0.03 * j, 2) for j in range(brief.timings_per_length))
        for column, value in ((1, length), *enumerate(times, first + 1)):
            sheet.cell(top + 1 + i, column).value = value
        typed.append((length, swings, *times))
    book.save(path)
    return typed


@pytest.mark.parametrize("brief", BRIEFS.values(), ids=BRIEFS.keys())
def test_a_filled_template_is_read_without_a_question(tmp_path: Path, brief: Brief) -> None:
    path = tmp_path / "readings.xlsx"
    write_template(path, brief)
    typed = fill(path, brief)
    # Read with another brief: the swings must come from the heading, not from a default.
    other = Brief(swings_per_timing=13, swings_allowed=(13,))
    outcome = read_readings(path.name, path.read_bytes(), other, "x")
    assert outcome.findings == ()
    readings = outcome.table.readings
    assert len(readings) == brief.lengths
    for row, reading in zip(typed, readings, strict=True):
        assert reading.length_m == pytest.approx(row[0] / 100)
        assert [t.time_s for t in reading.timings] == pytest.approx(list(row[2:]))
        assert reading.swings == row[1]
        assert reading.swings_source is not None
    assert all(outcome.table.heading_has_unit)


def test_every_cell_to_fill_takes_numbers_only_and_nothing_is_locked(tmp_path: Path) -> None:
    brief = Brief(lengths=6, timings_per_length=3)
    path = tmp_path / "readings.xlsx"
    write_template(path, brief)
    sheet = load_workbook(path).active
    rules = sheet.data_validations.dataValidation
    assert {rule.type for rule in rules} == {"decimal", "list"}
    assert [rule.formula1 for rule in rules if rule.type == "list"] == ['"10,20"']
    assert all(rule.errorStyle == "stop" and rule.showErrorMessage for rule in rules)
    covered = {c for rule in rules for area in rule.sqref.ranges for c in area.cells}
    rows = {row for row, _ in covered}
    assert len(rows) == brief.lengths + SPARE_ROWS
    assert {column for _, column in covered} == {1, 2, 3, 4, 5}
    assert {sheet.cell(row, 2).value for row in rows} == {10}
    assert not sheet.protection.sheet


@pytest.mark.parametrize("brief", BRIEFS.values(), ids=BRIEFS.keys())
def test_ranges_let_honest_mistakes_in_and_keep_slips_of_the_pen_out(brief: Brief) -> None:
    low, high = length_range_cm(brief)
    assert low <= 100 * brief.shortest_m
    assert high >= 100 * brief.longest_m
    assert brief.longest_m < low  # metres typed for centimetres are caught
    shortest_s, longest_s = time_range_s(brief)
    n = brief.swings_per_timing
    # The law with g = 9.81; half and twice the swings is the commonest miscount.
    assert shortest_s < 2 * math.pi * math.sqrt(brief.shortest_m / 9.81) * n / 2
    assert longest_s > 2 * math.pi * math.sqrt(brief.longest_m / 9.81) * n * 2


def test_a_title_like_a_formula_stays_text(tmp_path: Path) -> None:
    path = tmp_path / "readings.xlsx"
    write_template(path, BRIEFS["title like a formula"])
    assert load_workbook(path).active.cell(1, 1).data_type == "s"


def test_a_folder_that_is_not_there_is_told_in_words(tmp_path: Path) -> None:
    from markbench.export import ExportError

    with pytest.raises(ExportError, match="could not be written"):
        write_template(tmp_path / "no" / "readings.xlsx", Brief())
