"""An empty cell of the readings is filled like any other is corrected; no key goes astray."""

from __future__ import annotations

from pathlib import Path

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QApplication, QLineEdit
from pytestqt.qtbot import QtBot

from markbench.model import Reading, ReadingsTable, Source, Timing
from markbench.session import Session
from markbench.ui.choosing import choose_only
from markbench.ui.portfolio.cells import timing_slots
from markbench.ui.portfolio.readings_model import CELL
from markbench.ui.window import Window


@pytest.fixture
def class_folder(class_folder: Path) -> Path:
    """Aino has no first timing at 40 cm, and does not say how many swings a timing has."""
    path = class_folder / "Aino Example" / "readings.csv"
    text = path.read_text("utf-8").replace("40.0,12.72", "40.0,").replace(" for 10 swings", "")
    path.write_text(text, encoding="utf-8")
    return class_folder


@pytest.fixture
def sheet(qtbot: QtBot, window: Window):
    window.activateWindow()
    window.open_learner("s1")
    QApplication.processEvents()
    return window.sheet


def shown(sheet, row: int) -> list[str]:
    return [sheet.readings.index(row, column).data(CELL).text for column in (2, 3)]


def test_a_missing_timing_leaves_its_own_place_empty(window: Window, sheet) -> None:
    assert shown(sheet, 2) == ["", "12.66"]
    assert sheet.readings.source_of(sheet.readings.index(2, 2)).cell == "B4"


def test_typing_into_an_empty_cell_fills_it_and_no_other(
    qtbot: QtBot, window: Window, sheet, session: Session
) -> None:
    before = [shown(sheet, row) for row in range(5)]
    choose_only(sheet.table, sheet.readings.index(2, 2))
    sheet.table.setFocus()
    qtbot.keyClicks(sheet.table, "1")
    editor = sheet.table.findChild(QLineEdit)
    qtbot.keyClicks(editor, "2.70")
    qtbot.keyClick(editor, Qt.Key.Key_Return)
    qtbot.waitUntil(lambda: shown(sheet, 2) == ["12.70", "12.66"], timeout=10_000)
    assert [shown(sheet, row) for row in (0, 1, 3, 4)] == [before[row] for row in (0, 1, 3, 4)]
    timings = session.portfolio("s1").table.readings[2].timings
    assert [timing.time_s for timing in timings] == [12.70, 12.66]
    assert "filled in" in sheet.readings.index(2, 2).data(Qt.ItemDataRole.ToolTipRole)
    window.desk.undo()
    qtbot.waitUntil(lambda: shown(sheet, 2) == ["", "12.66"], timeout=10_000)


@pytest.mark.parametrize(("column", "word"), [(1, "Whole table"), (4, "worked out")])
def test_a_key_where_nothing_can_be_typed_stays_there_and_says_why(
    qtbot: QtBot, window: Window, sheet, column: int, word: str
) -> None:
    choose_only(sheet.table, sheet.readings.index(2, column))
    sheet.table.setFocus()
    for key in (Qt.Key.Key_1, Qt.Key.Key_F2):
        window.bar.say_notice("")
        qtbot.keyClick(sheet.table, key)
        assert word in window.bar.trouble.text()
    at = sheet.table.currentIndex()
    assert (at.row(), at.column()) == (2, column)
    assert sheet.table.findChild(QLineEdit) is None


def cell(at: str) -> Source:
    return Source("t.csv", "", at, "1")


def reading(at: str, *timings: str) -> Reading:
    return Reading(0.2, 10, tuple(Timing(9.0, cell(one)) for one in timings), cell(at))


@pytest.mark.parametrize(
    ("rows", "empty"),
    [
        ((reading("A2", "B2", "C2"), reading("A3", "B3")), "C3"),
        ((reading("B1", "B2", "B3"), reading("C1", "C3")), "C2"),
        ((reading("A2", "B2", "B3"), reading("A4", "B4")), None),  # a line for each timing
        ((reading("A2", "C2", "D2"), reading("B2", "D2")), None),  # that cell is another's
    ],
)
def test_only_a_cell_that_is_surely_meant_can_be_filled(rows, empty: str | None) -> None:
    slots = timing_slots(ReadingsTable(rows, (), Source("t.csv")))
    found = [slot.source for row in slots for slot in row if slot.timing is None]
    assert [one.cell if one is not None else None for one in found] == [empty]


def test_on_a_sheet_for_many_only_the_length_s_own_row_can_be_filled() -> None:
    for rows, fills in (
        ((reading("A2", "B2", "C2"), reading("A3", "B3")), True),
        ((reading("B1", "B2", "B3"), reading("C1", "C3")), False),
    ):
        slots = timing_slots(ReadingsTable(rows, (), Source("t.csv")), for_many=True)
        assert [s.source is not None for row in slots for s in row if s.timing is None] == [fills]
