"""Blind marking hides names, selfies and file names in the window."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QLabel, QWidget
from pytestqt.qtbot import QtBot

from markbench.ui.window import Window

NAMES = ("Aino", "Bodil", "Cato", "Example", "Sample", "Instance")


def words_on(page: QWidget) -> str:
    labels = [w.text() for w in page.findChildren(QLabel) if w.isVisible()]
    tips = [w.toolTip() for w in page.findChildren(QWidget) if w.isVisible()]
    return "\n".join([*labels, *tips])


def test_names_files_and_selfies_are_gone_and_come_back(qtbot: QtBot, window: Window) -> None:
    window.open_learner("s2")
    sheet = window.sheet
    assert "Bodil Sample" in words_on(sheet)
    with qtbot.waitSignal(window.desk.changed, timeout=5000):
        qtbot.keyClick(window, Qt.Key.Key_B, Qt.KeyboardModifier.ControlModifier)
    assert not any(name in row.name for row in window.bench.model.rows for name in NAMES)
    shown = words_on(sheet)
    assert [line for line in shown.splitlines() if any(name in line for name in NAMES)] == []
    tip = sheet.readings.index(4, 3).data(Qt.ItemDataRole.ToolTipRole)
    assert not any(name in tip for name in NAMES)
    with qtbot.waitSignal(window.desk.changed, timeout=5000):
        qtbot.keyClick(window, Qt.Key.Key_B, Qt.KeyboardModifier.ControlModifier)
    assert "Bodil Sample" in words_on(sheet)
