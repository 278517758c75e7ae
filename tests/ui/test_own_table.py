"""Where the program read a table wrongly or not at all, the teacher points or types."""

from __future__ import annotations

from pathlib import Path

import openpyxl
import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QApplication
from pytestqt.qtbot import QtBot

from markbench.model import Source
from markbench.session import Session
from markbench.ui.window import Window


@pytest.fixture
def own(qtbot: QtBot, window: Window):
    window.open_learner("s1")
    window.sheet.open_table()
    own = window.sheet.layers.own_table
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
    assert "reads it now" in own._why.text()
    choose_column(own, 1)  # the second timing alone
    qtbot.mouseClick(own.roles[""], Qt.MouseButton.LeftButton)
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


def test_the_first_column_is_chosen_and_no_button_is_dead(
    qtbot: QtBot, window: Window, own, session: Session
) -> None:
    assert own.table.currentIndex().column() == 0
    assert own.model.headerData(0, Qt.Orientation.Horizontal) == "A: length"
    qtbot.mouseClick(own.roles["timing"], Qt.MouseButton.LeftButton)
    assert not own.take.isEnabled()
    assert "lengths and timings are needed" in own._why.text()  # nothing holds the lengths now
    qtbot.mouseClick(own.roles["length"], Qt.MouseButton.LeftButton)
    assert "reads it now" not in own._why.text() or not own.take.isEnabled()


def test_a_unit_alone_is_enough(qtbot: QtBot, window: Window, own, session: Session) -> None:
    own.length_unit.setFocus()
    own.length_unit.setCurrentIndex(own.length_unit.findData("mm"))
    assert own.take.isEnabled()
    with qtbot.waitSignal(window.desk.changed, timeout=10_000):
        qtbot.mouseClick(own.take, Qt.MouseButton.LeftButton)
    lengths = [r.length_m for r in session.portfolio("s1").table.readings]
    assert lengths == pytest.approx([0.02, 0.03, 0.04, 0.05, 0.06])


def test_typed_readings_keep_the_decimals_as_written(
    qtbot: QtBot, window: Window, own, session: Session
) -> None:
    was = session.portfolio("s1").table.readings
    typed = own.typed
    assert typed.table.item(0, 0).text() == "20.0"
    typed.table.item(1, 2).setText("11.00")
    with qtbot.waitSignal(window.desk.changed, timeout=10_000):
        qtbot.mouseClick(typed.take, Qt.MouseButton.LeftButton)
    now = session.portfolio("s1").table.readings
    for before, after in zip(was, now, strict=True):
        assert after.length_m == pytest.approx(before.length_m)
        assert [t.decimals for t in after.timings] == [2, 2]
    shown = window.sheet.readings
    assert shown.index(0, 0).data() == "20.0"
    assert shown.index(1, 2).data() == "11.00"
    window.sheet.open_table()
    assert typed.table.item(1, 2).text() == "11.00"


@pytest.mark.parametrize("what", ["none", "broken"])
def test_with_no_file_to_point_at_one_types_at_once(
    qtbot: QtBot, window: Window, session: Session, class_folder: Path, what: str
) -> None:
    file = class_folder / "Aino Example" / "readings.csv"
    file.unlink()
    if what == "broken":
        file.with_suffix(".xlsx").write_bytes(b"PK\x03\x04 broken")
    window.open_folder(class_folder)
    qtbot.waitUntil(
        lambda: window.desk is not None and window.desk.session is not session, timeout=10_000
    )
    qtbot.waitUntil(lambda: window.sheet is not None, timeout=10_000)
    window.open_learner("s1")
    qtbot.keyClick(window, Qt.Key.Key_W, Qt.KeyboardModifier.AltModifier)
    own = window.sheet.layers.own_table
    qtbot.waitUntil(lambda: own.typed.table.hasFocus(), timeout=5000)
    assert not own.take.isVisible()
    assert not own.table.isVisible()
    qtbot.mouseClick(own.typed.take, Qt.MouseButton.LeftButton)
    assert "Nothing is typed" in own.typed._trouble.text()


def test_the_keyboard_is_never_behind_the_table(qtbot: QtBot, window: Window, own) -> None:
    assert own.isAncestorOf(QApplication.focusWidget())
    own.shut()
    window.sheet.findings.rows[0].setFocus()
    window.sheet.open_table()
    assert own.isAncestorOf(QApplication.focusWidget())  # at once, not when the file has come


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
    assert "2 learners are not fully marked" in window.bar.trouble.text()
    book = openpyxl.load_workbook(class_folder / "markbench-out" / "marks.xlsx")
    assert any("Aino" in str(c.value) for row in book.worksheets[0].iter_rows() for c in row)
