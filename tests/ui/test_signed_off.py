"""After the sign-off whatever would change a result is at rest, or says why it does not."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QGuiApplication
from PySide6.QtWidgets import QApplication, QWidget
from pytestqt.qtbot import QtBot
from second_marking import HER, LEFT, ask_file, moderation

from markbench.session import Session
from markbench.session.moderating import reopen, sign_off, take_sample
from markbench.session.pack_session import open_pack
from markbench.session.packing import write_pack
from markbench.ui.window import Window

CTRL, SHIFT = Qt.KeyboardModifier.ControlModifier, Qt.KeyboardModifier.ShiftModifier
ALT = Qt.KeyboardModifier.AltModifier
KEY = Qt.Key


@pytest.fixture
def signed(qtbot: QtBot, empty_window: Window, marked_folder: Path) -> Window:
    """A class marked and signed off."""
    session = Session.open(marked_folder, "T. Teacher")
    take_sample(session, seed=4)
    sign_off(session)
    session.close()
    empty_window.open_folder(marked_folder)
    qtbot.waitUntil(lambda: empty_window.sheet is not None, timeout=10_000)
    empty_window.activateWindow()
    qtbot.waitUntil(empty_window.isActiveWindow, timeout=5000)
    return empty_window


def refused(window: Window, gesture: Callable[[], object]) -> None:
    """The gesture changes nothing and says so in one line: since when, and where to reopen."""
    session = window.desk.held
    window.desk.finish()
    QApplication.processEvents()
    window.bar.say_trouble("")
    before = session.history()
    gesture()
    window.desk.finish()
    QApplication.processEvents()
    assert session.history() == before
    said = window.bar.trouble.text()
    when = window.desk.signed.at.astimezone()
    assert said == f"Signed off {when.day} {when:%b, %H:%M}. Reopen: Moderation"


def at_rest(window: Window, control: QWidget) -> None:
    """The deed cannot be pressed, and says why and where to go."""
    assert not control.isEnabled()
    assert control.toolTip() == window.desk.signed_words
    assert "Reopen: Moderation" in control.toolTip()


def level(window: Window, at: int) -> None:
    """By mouse."""
    control = list(window.sheet.margin.current.levels.values())[at]
    window.sheet.margin._scroll.ensureWidgetVisible(control)
    control.click()


def test_every_way_of_marking_on_the_sheet_says_that_the_class_is_signed_off(
    qtbot: QtBot, signed: Window
) -> None:
    window, session = signed, signed.desk.held
    window.open_learner("s1")
    margin = window.sheet.margin
    held = session.mark("s1", margin.current.criterion.id)
    keys = [(KEY.Key_1, CTRL), (KEY.Key_2, CTRL), (KEY.Key_Return, CTRL),
            (KEY.Key_Return, CTRL | SHIFT), (KEY.Key_Backspace, CTRL)]  # fmt: skip
    for key, modifiers in keys:
        refused(window, lambda key=key, m=modifiers: qtbot.keyClick(window, key, m))
    for at in (0, 1):  # another level than the one that holds, and that one
        refused(window, lambda at=at: level(window, at))
        checked = [name for name, one in margin.current.levels.items() if one.isChecked()]
        assert checked == [held.level]
    at_rest(window, margin.current.clear)
    # On a criterion opened afterwards, too.
    margin.open_card(margin.cards[1].criterion.id)
    refused(window, lambda: qtbot.keyClick(window, KEY.Key_1, CTRL))


def test_the_text_to_the_learner_says_it_and_stays(qtbot: QtBot, signed: Window) -> None:
    window = signed
    window.open_learner("s1")
    for card in window.sheet.margin.cards[:2]:
        window.sheet.margin.open_card(card.criterion.id)
        field = card.text
        field.setFocus()
        said = field.toPlainText()
        assert said
        QGuiApplication.clipboard().setText("Pasted.")
        for key, modifiers in (
            (KEY.Key_A, Qt.KeyboardModifier.NoModifier), (KEY.Key_V, CTRL),
            (KEY.Key_Delete, Qt.KeyboardModifier.NoModifier),
            (KEY.Key_Backspace, Qt.KeyboardModifier.NoModifier), (KEY.Key_X, ALT),
        ):  # fmt: skip
            refused(window, lambda key=key, m=modifiers, f=field: qtbot.keyClick(f, key, m))
            assert field.toPlainText() == said
        card.writing.look()
        for tool in (card.writing.up, card.writing.down, card.writing.drop, card.writing.back):
            at_rest(window, tool)
        refused(window, lambda field=field: field.put_in("A phrase."))
        assert field.toPlainText() == said
        # Reading it is no change.
        window.bar.say_trouble("")
        qtbot.keyClick(field, KEY.Key_Right)
        qtbot.keyClick(field, KEY.Key_C, CTRL)
        assert window.bar.trouble.text() == ""


def test_marking_across_the_class_says_it(qtbot: QtBot, signed: Window) -> None:
    window = signed
    window.show_place("across")
    page = window.further["across"]
    assert page.accept.text() == "Next learner"
    for key, modifiers in ((KEY.Key_1, Qt.KeyboardModifier.NoModifier), (KEY.Key_2, CTRL),
                           (KEY.Key_Backspace, CTRL)):  # fmt: skip
        refused(window, lambda key=key, m=modifiers: qtbot.keyClick(page.view, key, m))
    learner, name = page.learner, page.criterion.levels[0].name
    refused(window, lambda: page.delegate.level_clicked.emit(learner, name))
    # To go on is no change.
    window.bar.say_trouble("")
    at = page.view.currentIndex().row()
    qtbot.keyClick(page.view, KEY.Key_Return)
    assert page.view.currentIndex().row() == at + 1
    assert window.bar.trouble.text() == ""


def test_more_time_waits_as_well(qtbot: QtBot, signed: Window) -> None:
    window = signed
    window.show_place("handins")
    page = window.further["handins"]
    page.choose({"s1"})
    at_rest(window, page.extend)
    at_rest(window, page.take_back)


def test_moderation_says_it_and_keeps_what_was_typed(
    qtbot: QtBot, signed: Window, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    window = signed
    held = window.desk.held
    made = write_pack(held, tmp_path / "late.markbench-pack")
    hers = open_pack(made.path, HER)
    for criterion in hers.rubric.criteria:
        hers.second_mark("01", criterion.id, criterion.levels[0].name)
    hers.write_reply(tmp_path / "late.markbench-reply")
    hers.close()
    page = moderation(qtbot, window)
    assert QApplication.focusWidget() is page.sample.roll  # and not on what is refused
    refused(window, lambda: qtbot.keyClick(window, KEY.Key_S, ALT))
    ask_file(monkeypatch, tmp_path / "late.markbench-reply")
    refused(window, lambda: page.sample.merge_file(tmp_path / "late.markbench-reply"))
    for deed in (page.sample.draw, page.sample.merge, page.sample.merge_colleague):
        at_rest(window, deed)
    qtbot.keyClicks(page.adjustment.reason, "Too low.")
    page.adjustment.shift.setValue(1)
    for control in (page.adjustment.leave, page.adjustment.adjust, page.adjustment.remark):
        at_rest(window, control)
    assert page.adjustment.reason.text() == "Too low."


def test_the_way_to_reopen_is_in_sight_and_leads_there(qtbot: QtBot, signed: Window) -> None:
    window = signed
    window.open_learner("s1")
    on_the_sheet = window.sheet.margin.signed
    window.show_place("across")
    for line in (window.further["across"].signed, on_the_sheet):
        if line is on_the_sheet:
            window.show_class()
            window.open_learner("s1")
        assert line.isVisible()
        qtbot.mouseClick(line, LEFT)
        page = window.further["moderation"]
        assert window.pages.currentWidget() is page
        qtbot.waitUntil(page.signing.why.hasFocus, timeout=5000)
    reopen(window.desk.held, "A film came late.")
    QApplication.processEvents()
    assert on_the_sheet.isHidden()
    qtbot.waitUntil(page.sample.draw.isEnabled, timeout=5000)
    assert page.sample.draw.toolTip().startswith("With a new seed")


def test_what_changes_no_result_is_still_free_and_all_is_after_reopening(
    qtbot: QtBot, signed: Window
) -> None:
    window, session = signed, signed.desk.held
    window.open_learner("s1")
    margin = window.sheet.margin
    margin.note.setFocus()
    qtbot.keyClicks(margin.note, "Ask about the film.")
    margin.note.settle()
    window.desk.finish()
    QApplication.processEvents()
    assert session.value("note", "s1") == "Ask about the film."
    reopen(session, "A film came late.")
    QApplication.processEvents()
    criterion = margin.current.criterion
    qtbot.keyClick(window, KEY.Key_1, CTRL)
    window.desk.finish()
    assert session.mark("s1", criterion.id).level == criterion.levels[0].name
    assert not margin.current.text.isReadOnly()


def test_a_press_on_the_level_that_holds_takes_nothing_away(
    qtbot: QtBot, window: Window, session: Session
) -> None:
    window.open_learner("s1")
    control = next(iter(window.sheet.margin.current.levels.values()))
    for _ in range(2):
        control.click()
        window.desk.finish()
        QApplication.processEvents()
        assert control.isChecked()
