"""Shortcuts with Ctrl: what they choose is chosen, though the key is still down."""

from __future__ import annotations

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QGuiApplication
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QWidget
from pytestqt.qtbot import QtBot

from markbench.session import Session
from markbench.ui.window import Window

CTRL = Qt.KeyboardModifier.ControlModifier


@pytest.fixture(autouse=True)
def held(window: Window) -> None:
    """Qt believes the key down until another event says that it is not."""
    QTest.keyPress(QWidget(), Qt.Key.Key_Shift, CTRL)
    assert QGuiApplication.keyboardModifiers() == CTRL


def test_the_first_of_the_hand_ins_is_chosen(window: Window) -> None:
    window.show_place("handins")
    assert len(window.further["handins"].chosen()) == 1


def test_the_learner_whose_changes_are_asked_for_is_chosen(window: Window) -> None:
    window.show_place("handins")
    window.further["handins"].show_changes("s3")
    assert [row.learner for row in window.further["handins"].chosen()] == ["s3"]


def test_the_first_column_of_her_table_is_chosen_whole(qtbot: QtBot, window: Window) -> None:
    window.open_learner("s1")
    window.sheet.open_table()
    own = window.sheet.layers.own_table
    qtbot.waitUntil(lambda: own.model.rowCount() > 0, timeout=10_000)
    chosen = {(at.row(), at.column()) for at in own.table.selectedIndexes()}
    assert chosen == {(row, 0) for row in range(own.model.rowCount())}


def test_the_cell_corrected_stays_the_one_chosen(
    qtbot: QtBot, window: Window, session: Session
) -> None:
    window.open_learner("s1")
    table = window.sheet.table
    at = window.sheet.readings.index(1, 1)
    table.selectionModel().setCurrentIndex(at, table.selectionModel().SelectionFlag.ClearAndSelect)
    source = session.portfolio("s1").table.readings[1].timings[0].source
    window.desk.do(lambda held: held.correct("s1", source, "11.5"))
    cells = [window.sheet.readings.index(1, column) for column in range(3)]
    qtbot.waitUntil(lambda: any("11.5" in str(one.data()) for one in cells), timeout=10_000)
    assert [(one.row(), one.column()) for one in table.selectedIndexes()] == [(1, 1)]
