"""Where the program read a table wrongly or not at all, the teacher points or types."""

from __future__ import annotations

from pathlib import Path

import openpyxl
import pytest
from PySide6.QtCore import Qt
from pytestqt.qtbot import QtBot

from markbench.model import Source
from markbench.session import Session
from markbench.ui.window import Window


@pytest.fixture
def own(qtbot: QtBot, window: Window):
    window.open_learner("s1")
    window.sheet.open_table()
    own = window.sheet.own_table
    qtbot.waitUntil(lambda: own.model.rowCount() > 0, timeout=5000)
    return own


def choose_column(own, column: int) -> None:
    own.table.selectColumn(column)


def test_the_file_is_shown_as_it_stands(own) -> None:
    assert own.model.index(0, 0).data() == "Length (cm)"
    assert own.model.index(5, 2).data() == "15.58"


def test_a_source_leads_to_its_very_cell(qtbot: QtBot, window: Window, own) -> None:
    window.sheet.open_table(Source("Aino Example/readings.csv", "", "B1"))
    at = own.table.currentIndex()
    assert (at.row(), at.column()) == (0, 1)


def test_pointing_at_columns_is_a_decision_and_is_read(
    qtbot: QtBot, window: Window, own, session: Session
) -> None:
    assert not own.take.isEnabled()
    choose_column(own, 0)
    qtbot.mouseClick(own.roles["length"], Qt.MouseButton.LeftButton)
    choose_column(own, 2)  # the second timing alone
    qtbot.mouseClick(own.roles["timing"], Qt.MouseButton.LeftButton)
    assert own.take.isEnabled()
    with qtbot.waitSignal(window.desk.changed, timeout=10_000):
        qtbot.mouseClick(own.take, Qt.MouseButton.LeftButton)
    readings = session.portfolio("s1").table.readings
    assert [[t.time_s for t in r.timings] for r in readings] == [
        [9.01], [10.95], [12.66], [14.15], [15.58]
    ]  # fmt: skip
    assert not own.isVisible()
    with qtbot.waitSignal(window.desk.changed, timeout=10_000):
        window.desk.undo()
    assert len(session.portfolio("s1").table.readings[0].timings) == 2


def test_typed_readings_stand_in_and_can_be_given_up(
    qtbot: QtBot, window: Window, own, session: Session
) -> None:
    typed = own.typed
    typed.table.item(0, 0).setText("25,0")  # a decimal comma is understood
    with qtbot.waitSignal(window.desk.changed, timeout=10_000):
        qtbot.mouseClick(typed.take, Qt.MouseButton.LeftButton)
    table = session.portfolio("s1").table
    assert table.readings[0].length_m == pytest.approx(0.25)
    assert "teacher" in table.source.file
    window.sheet.open_table()
    assert typed.drop.isEnabled()
    with qtbot.waitSignal(window.desk.changed, timeout=10_000):
        qtbot.mouseClick(typed.drop, Qt.MouseButton.LeftButton)
    assert session.portfolio("s1").table.readings[0].length_m == pytest.approx(0.20)


def test_what_is_no_number_is_named(qtbot: QtBot, own, session: Session) -> None:
    own.typed.table.item(1, 2).setText("about 11")
    qtbot.mouseClick(own.typed.take, Qt.MouseButton.LeftButton)
    assert "Row 2" in own.typed._trouble.text()
    assert "about 11" in own.typed._trouble.text()
    assert session.value("typed", "s1") is None


def test_the_workbook_is_written_from_the_window(
    qtbot: QtBot, window: Window, class_folder: Path
) -> None:
    window.open_learner("s1")
    with qtbot.waitSignal(window.desk.changed, timeout=5000):
        window.sheet.margin.accept_drafts()
    window.write_out()
    qtbot.waitUntil(lambda: "✓ written" in window.bar.trouble.text(), timeout=10_000)
    assert "2 learners still carry drafts" in window.bar.trouble.text()
    book = openpyxl.load_workbook(class_folder / "markbench-out" / "marks.xlsx")
    assert any("Aino" in str(c.value) for row in book.worksheets[0].iter_rows() for c in row)
