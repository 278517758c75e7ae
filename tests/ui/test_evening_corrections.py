"""A correction that cannot be read is shown as what it is."""

from __future__ import annotations

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QLineEdit
from pytestqt.qtbot import QtBot

from markbench.session import Session
from markbench.ui.portfolio.readings_model import CELL
from markbench.ui.window import Window


def type_over(qtbot: QtBot, window: Window, row: int, column: int, text: str) -> None:
    table = window.sheet.table
    index = window.sheet.readings.index(row, column)
    table.setCurrentIndex(index)
    table.edit(index)
    editor = table.findChild(QLineEdit)
    editor.selectAll()
    qtbot.keyClicks(editor, text)
    with qtbot.waitSignal(window.desk.changed, timeout=10_000):
        qtbot.keyClick(editor, Qt.Key.Key_Return)


@pytest.mark.parametrize(("column", "raw"), [(3, "17.09"), (0, "60.0")])
def test_an_unreadable_correction_is_shown_with_its_question(
    qtbot: QtBot, window: Window, session: Session, column: int, raw: str
) -> None:
    window.open_learner("s2")
    before = session.analysis("s2").line.g
    type_over(qtbot, window, 4, column, "15.5x?")
    now = window.sheet.readings.index(4, column)
    look = now.data(CELL)
    assert (look.text, look.original, look.unread) == ("15.5x?", raw, True)
    assert look.concern is not None
    assert "15.5x?" in now.data(Qt.ItemDataRole.ToolTipRole)
    assert session.analysis("s2").line.g == pytest.approx(before)
    asked = [r for r in window.sheet.findings.rows if "not used" in r.finding.message]
    assert len(asked) == 1
    qtbot.mouseClick(asked[0], Qt.MouseButton.LeftButton)
    cells = [(i.row(), i.column()) for i in window.sheet.table.selectedIndexes()]
    assert cells == [(4, column)]
    type_over(qtbot, window, 4, column, raw)  # writing what the learner wrote puts it right
    look = window.sheet.readings.index(4, column).data(CELL)
    assert not look.unread
    assert look.text == raw


def test_names_are_hidden_the_same_way_by_key_and_by_the_switch(
    qtbot: QtBot, window: Window
) -> None:
    for gesture, hidden in (("key", True), ("switch", False), ("switch", True), ("key", False)):
        with qtbot.waitSignal(window.desk.changed, timeout=10_000):
            if gesture == "key":
                qtbot.keyClick(window, Qt.Key.Key_B, Qt.KeyboardModifier.ControlModifier)
            else:
                qtbot.mouseClick(window.places.blind, Qt.MouseButton.LeftButton)
        assert window.desk.blind is hidden
        assert window.places.blind.isChecked() is hidden
