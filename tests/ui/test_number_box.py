"""A field for a number shows the language's decimal mark and reads comma and point alike."""

from __future__ import annotations

from collections.abc import Iterator

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication
from pytestqt.qtbot import QtBot

from markbench.ui import languages
from markbench.ui.look.number_box import NumberBox


@pytest.fixture(params=["en", "de"])
def spoken(qapp: QApplication, request: pytest.FixtureRequest) -> Iterator[str]:
    installed = languages.install(qapp, request.param)
    yield request.param
    for translator in installed:
        qapp.removeTranslator(translator)


@pytest.mark.parametrize("typed", ["12.5", "12,5"])
def test_both_marks_are_read(spoken: str, qtbot: QtBot, typed: str) -> None:
    box = NumberBox()
    qtbot.addWidget(box)
    box.setDecimals(1)
    box.setRange(-99, 99)
    box.selectAll()
    QTest.keyClicks(box, typed)
    QTest.keyClick(box, Qt.Key.Key_Return)
    assert box.value() == 12.5
    assert box.text() == ("12,5" if spoken == "de" else "12.5")


def test_a_letter_is_not_taken(spoken: str, qtbot: QtBot) -> None:
    box = NumberBox()
    qtbot.addWidget(box)
    box.selectAll()
    QTest.keyClicks(box, "1x,")
    QTest.keyClick(box, Qt.Key.Key_Return)
    assert box.value() == 1
