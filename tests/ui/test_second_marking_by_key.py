"""Second marking from the keyboard, and the question before the first marks are shown."""

from __future__ import annotations

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QApplication, QMessageBox
from pytestqt.qtbot import QtBot
from second_marking import answer, ask_to_look, card, ids_of, look, mark_blind

from markbench.ui.moderation.pack_sheet import PackSheet
from markbench.ui.window import Window

CTRL, SHIFT = Qt.KeyboardModifier.ControlModifier, Qt.KeyboardModifier.ShiftModifier


@pytest.fixture(autouse=True)
def in_front(qtbot: QtBot, her_window: Window, sheet: PackSheet) -> None:
    """Keys reach the window that is in front."""
    her_window.activateWindow()
    qtbot.waitUntil(her_window.isActiveWindow, timeout=5000)


def done(sheet: PackSheet) -> None:
    sheet._desk.finish()
    QApplication.processEvents()


def test_a_whole_pack_is_marked_by_level_keys_and_the_next_learner(
    qtbot: QtBot, her_window: Window, sheet: PackSheet
) -> None:
    criteria = sheet._pack.rubric.criteria
    for _ in ids_of(sheet):
        for _criterion in criteria:
            qtbot.keyClick(her_window, Qt.Key.Key_1, CTRL)
            done(sheet)
            qtbot.keyClick(her_window, Qt.Key.Key_Down, CTRL)
        qtbot.keyClick(her_window, Qt.Key.Key_PageDown, CTRL)
    assert {sheet._pack.progress(one) for one in ids_of(sheet)} == {(len(criteria), len(criteria))}


def test_a_learner_of_the_pack_opens_at_what_is_still_to_mark(
    qtbot: QtBot, her_window: Window, sheet: PackSheet
) -> None:
    one, two = ids_of(sheet)[:2]
    criteria = sheet._pack.rubric.criteria
    sheet._pack.second_mark(two, criteria[0].id, criteria[0].levels[2].name)
    sheet.margin.open_card(criteria[-1].id)
    qtbot.keyClick(her_window, Qt.Key.Key_PageDown, CTRL)
    qtbot.keyClick(her_window, Qt.Key.Key_1, CTRL)
    done(sheet)
    assert sheet._pack.second(two, criteria[0].id).level == criteria[0].levels[2].name
    assert sheet._pack.second(two, criteria[1].id).level == criteria[1].levels[0].name
    sheet.show_number(one)  # by the list, too
    assert sheet.margin.current.criterion is criteria[0]


def test_the_first_marks_are_shown_only_when_she_knows_that_hers_are_then_final(
    qtbot: QtBot, her_window: Window, sheet: PackSheet
) -> None:
    number, pack = sheet.learner, sheet._pack
    mark_blind(qtbot, sheet)
    box = ask_to_look(qtbot, sheet)
    assert "Learner 01" in box.text()
    assert "final" in box.text()
    qtbot.keyClick(box, Qt.Key.Key_Escape)
    done(sheet)
    assert not pack.has_looked(number)
    # By key as well; a key held down does not answer it.
    qtbot.waitUntil(lambda: sheet.findChild(QMessageBox) is None, timeout=5000)
    her_window.activateWindow()
    qtbot.waitUntil(her_window.isActiveWindow, timeout=5000)
    qtbot.keyClick(her_window, Qt.Key.Key_Return, CTRL | SHIFT)
    box = sheet.findChild(QMessageBox)
    assert box is not None
    assert box.defaultButton().text() == "Not yet"
    qtbot.keyClick(box.defaultButton(), Qt.Key.Key_Return, CTRL | SHIFT)
    qtbot.waitUntil(lambda: sheet.findChild(QMessageBox) is None, timeout=5000)
    done(sheet)
    assert not pack.has_looked(number)
    assert her_window.undo_button.isEnabled()  # and her marks can still be taken back
    sheet.margin.open_card(pack.rubric.criteria[-1].id)
    look(qtbot, sheet)
    assert pack.has_looked(number)
    # What is to be answered first is open and has the keyboard; the next not answered follows.
    first, second = sheet.margin.cards[:2]
    qtbot.waitUntil(lambda: first.is_open and first.isAncestorOf(QApplication.focusWidget()))
    pack.moderate(number, first.criterion.id, "agree")
    done(sheet)
    qtbot.waitUntil(her_window.isActiveWindow, timeout=5000)
    qtbot.keyClick(her_window, Qt.Key.Key_PageDown, CTRL)
    assert sheet.learner != number
    qtbot.keyClick(her_window, Qt.Key.Key_PageUp, CTRL)
    assert sheet.learner == number
    assert sheet.margin.current.criterion.id == second.criterion.id


def test_she_is_asked_for_every_learner_until_she_wants_no_more_questions(
    qtbot: QtBot, her_window: Window, sheet: PackSheet
) -> None:
    first, second, third = ids_of(sheet)
    for number, quiet in ((first, False), (second, True)):
        sheet.show_number(number)
        mark_blind(qtbot, sheet)
        box = ask_to_look(qtbot, sheet)
        assert box is not None
        box.checkBox().setChecked(quiet)
        answer(qtbot, box, "Show them")
        qtbot.waitUntil(lambda: card(sheet, 0).answer.isVisible(), timeout=5000)
        QApplication.sendPostedEvents(None, 52)  # deferred deletions
    sheet.show_number(third)
    mark_blind(qtbot, sheet)
    assert ask_to_look(qtbot, sheet) is None
    qtbot.waitUntil(lambda: sheet._pack.has_looked(third), timeout=5000)


def test_what_undo_takes_back_is_seen(qtbot: QtBot, her_window: Window, sheet: PackSheet) -> None:
    """A mark taken back on a learner out of sight would be missed."""
    one, two = ids_of(sheet)[:2]
    qtbot.keyClick(her_window, Qt.Key.Key_1, CTRL)
    done(sheet)
    qtbot.keyClick(her_window, Qt.Key.Key_PageDown, CTRL)
    assert sheet.learner == two
    qtbot.keyClick(her_window, Qt.Key.Key_Z, CTRL)
    done(sheet)
    assert sheet._pack.second(one, sheet._pack.rubric.criteria[0].id) is None
    assert sheet.learner == one
