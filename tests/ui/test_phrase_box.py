"""Own phrases by hand: written, kept, found, put in, forgotten."""

from __future__ import annotations

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QTextCursor
from pytestqt.qtbot import QtBot

from markbench.session.phrases import phrases
from markbench.ui.phrases.box import PhraseBox
from markbench.ui.window import Window

LEFT = Qt.MouseButton.LeftButton
CONTROL = Qt.KeyboardModifier.ControlModifier


@pytest.fixture
def box(qtbot: QtBot, window: Window) -> PhraseBox:
    made = PhraseBox(window.desk, window._theme)
    qtbot.addWidget(made)
    made.resize(420, 360)
    made.show_for("s1", "readings")
    made.show()
    made.activateWindow()
    made.field.setFocus()
    return made


def keep(qtbot: QtBot, window: Window, box: PhraseBox, text: str) -> None:
    box.field.setPlainText(text)
    box.look_up()
    count = len(phrases(window.desk.session))
    qtbot.mouseClick(box.keep, LEFT)
    qtbot.waitUntil(lambda: len(phrases(window.desk.session)) == count + 1, timeout=5000)


def test_written_kept_found_and_put_in(qtbot: QtBot, window: Window, box: PhraseBox) -> None:
    keep(qtbot, window, box, "All {lengths} lengths from {shortest}: well done.")
    keep(qtbot, window, box, "Stand the phone still.")
    box.show_for("s2", "readings")
    qtbot.keyClicks(box.field, "lenghts well")
    qtbot.waitUntil(lambda: box.list.count() == 1, timeout=2000)
    with qtbot.waitSignal(box.chosen) as got:
        qtbot.keyClick(box.field, Qt.Key.Key_Down)
        qtbot.keyClick(box.list, Qt.Key.Key_Return)
    assert got.args == ["All {lengths} lengths from {shortest}: well done."]


def test_a_hole_is_refused_with_a_sentence(qtbot: QtBot, window: Window, box: PhraseBox) -> None:
    box.field.setPlainText("You have {lenghts}.")
    qtbot.waitUntil(lambda: "did you mean" in box.told.text(), timeout=2000)
    with qtbot.assertNotEmitted(box.chosen):
        qtbot.mouseClick(box.put, LEFT)
    qtbot.mouseClick(box.keep, LEFT)
    assert "did you mean" in box.told.text()
    assert phrases(window.desk.session) == ()


def test_length_and_reading_age_are_told(qtbot: QtBot, box: PhraseBox) -> None:
    words = "You took great care with each of your lengths and it shows in the line you drew."
    box.field.setPlainText(words)
    qtbot.waitUntil(lambda: "Words: 17" in box.told.text(), timeout=2000)
    assert "years" in box.told.text()


def test_what_is_typed_is_put_in_by_key(qtbot: QtBot, box: PhraseBox) -> None:
    box.field.setPlainText("Your shortest was {shortest}.")
    with qtbot.waitSignal(box.chosen) as got:
        qtbot.keyClick(box.field, Qt.Key.Key_Return, CONTROL)
    assert got.args == ["Your shortest was {shortest}."]
    assert box.field.toPlainText() == ""


def test_forgotten_and_brought_back(qtbot: QtBot, window: Window, box: PhraseBox) -> None:
    keep(qtbot, window, box, "Stand the phone still.")
    qtbot.waitUntil(lambda: box.list.count() == 1, timeout=2000)
    box.list.setCurrentRow(0)
    qtbot.mouseClick(box.forget, LEFT)
    qtbot.waitUntil(lambda: box.list.count() == 0, timeout=5000)
    window.desk.undo()
    qtbot.waitUntil(lambda: box.list.count() == 1, timeout=5000)


def test_on_the_sheet_a_phrase_goes_into_the_open_text(qtbot: QtBot, window: Window) -> None:
    window.open_learner("s1")
    card = window.sheet.margin.current
    before = window.desk.session.feedback("s1", card.criterion.id)
    card.text.moveCursor(QTextCursor.MoveOperation.End)
    qtbot.keyClick(window, Qt.Key.Key_J, CONTROL)
    drawer = window.doors.drawer
    assert drawer.isVisible()
    drawer.box.field.setPlainText("You timed {lengths} lengths.")
    qtbot.keyClick(drawer.box.field, Qt.Key.Key_Return, CONTROL)
    assert not drawer.isVisible()
    session, said = window.desk.session, f"{before} You timed 5 lengths."
    qtbot.waitUntil(lambda: session.feedback("s1", card.criterion.id) == said, timeout=5000)
    assert session.text("s1", card.criterion.id).pieces[-1] == "You timed {lengths} lengths."
    assert session.marks("s1") == {}  # the same keys mark elsewhere on the sheet


def test_escape_closes_the_drawer_and_not_the_sheet(qtbot: QtBot, window: Window) -> None:
    window.open_learner("s1")
    window.doors.open_phrases()
    drawer = window.doors.drawer
    qtbot.keyClick(drawer.box.field, Qt.Key.Key_Escape)
    assert not drawer.isVisible()
    assert window.pages.currentWidget() is window.sheet


def test_a_phrase_never_goes_to_the_next_learner_with_the_last_ones_numbers(
    qtbot: QtBot, window: Window
) -> None:
    window.open_learner("s1")
    window.doors.open_phrases()
    box = window.doors.drawer.box
    window.open_learner("s2")
    text = window.sheet.margin.current.text.toPlainText()
    box.chosen.emit("Your shortest was 20.0 cm.")
    assert window.sheet.margin.current.text.toPlainText() == text
