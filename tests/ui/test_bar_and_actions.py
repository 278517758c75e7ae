"""The bar over every page and the list of actions: nothing moves, nothing is lost, all is found."""

from __future__ import annotations

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QApplication
from pytestqt.qtbot import QtBot

from markbench.session import Session
from markbench.ui.window import Window

CTRL, SHIFT = Qt.KeyboardModifier.ControlModifier, Qt.KeyboardModifier.ShiftModifier


def places_of(window: Window) -> list[int]:
    QApplication.processEvents()
    return [
        one.mapTo(window, one.rect().topLeft()).x()
        for one in (*window.places.buttons.values(), window.undo_button)
    ]


def test_nothing_in_the_bar_moves_when_something_is_said(qtbot: QtBot, window: Window) -> None:
    window.resize(1280, 800)
    before = places_of(window)
    window.bar.say_notice("✓ reminder copied, and a good many words more about it")
    assert places_of(window) == before
    window.bar.say_trouble("The folder is out of reach; changes wait here until it is back.")
    assert places_of(window) == before
    window.bar.say_saved("✓ saved 21:07")
    assert places_of(window) == before


def test_a_notice_gives_its_place_back_and_trouble_stays(qtbot: QtBot, window: Window) -> None:
    bar = window.bar
    bar.say_notice("✓ reminder copied")
    assert (bar.trouble.isVisible(), bar.title.isVisible()) == (True, False)
    assert 5000 <= bar._over.remainingTime() <= 10_000
    bar.say_saved("✓ saved 21:07")  # what was just told is not wiped away unread
    assert bar.trouble.text() == "✓ reminder copied"
    bar._over.timeout.emit()
    assert (bar.trouble.isVisible(), bar.title.isVisible()) == (False, True)
    bar.say_trouble("The folder is out of reach.")
    assert not bar._over.isActive()


def test_undo_says_what_it_took_back(qtbot: QtBot, window: Window, session: Session) -> None:
    with qtbot.waitSignal(window.desk.changed, timeout=5000):
        window.desk.do(lambda session: session.accept("s1", "readings"))
    qtbot.keyClick(window, Qt.Key.Key_Z, CTRL)
    told = window.bar.trouble
    qtbot.waitUntil(lambda: told.text() == "Taken back: mark, Aino Example", timeout=5000)
    qtbot.keyClick(window, Qt.Key.Key_Z, CTRL | SHIFT)
    qtbot.waitUntil(lambda: told.text() == "Done again: mark, Aino Example", timeout=5000)
    with qtbot.waitSignal(window.desk.changed, timeout=5000):
        window.desk.hide_names(True)
    qtbot.keyClick(window, Qt.Key.Key_Z, CTRL)  # names are shown again
    qtbot.waitUntil(lambda: told.text().startswith("Taken back: names"), timeout=5000)
    assert "Aino" not in told.text()


def test_with_names_hidden_undo_names_nobody(qtbot: QtBot, window: Window) -> None:
    for command in (lambda s: s.accept("s1", "readings"),):
        with qtbot.waitSignal(window.desk.changed, timeout=5000):
            window.desk.hide_names(True)
        with qtbot.waitSignal(window.desk.changed, timeout=5000):
            window.desk.do(command)
    qtbot.keyClick(window, Qt.Key.Key_Z, CTRL)
    told = window.bar.trouble
    qtbot.waitUntil(lambda: told.text().startswith("Taken back: mark"), timeout=5000)
    assert "Aino" not in told.text()
    assert "Portfolio" in told.text()


@pytest.fixture
def listed(qtbot: QtBot, window: Window) -> Window:
    """The class page with the keyboard on its cards, and the list of actions open."""
    qtbot.waitExposed(window)
    window.activateWindow()
    window.bench.grid.setFocus()
    QApplication.processEvents()
    qtbot.keyClick(window, Qt.Key.Key_F1)
    assert QApplication.focusWidget() is window.deed_list.search
    return window


def test_escape_gives_the_keyboard_back(qtbot: QtBot, listed: Window) -> None:
    qtbot.keyClick(listed.deed_list.search, Qt.Key.Key_Escape)
    assert not listed.deed_list.isVisible()
    assert QApplication.focusWidget() is listed.bench.grid


def test_a_deed_is_done_where_the_keyboard_was(qtbot: QtBot, listed: Window) -> None:
    qtbot.keyClicks(listed.deed_list.search, "larger text")
    qtbot.keyClick(listed.deed_list.search, Qt.Key.Key_Return)
    try:
        assert QApplication.focusWidget() is listed.bench.grid
        assert listed._theme.scale > 1.0
    finally:
        listed._theme.set_scale(1.0)


@pytest.mark.parametrize(
    ("typed", "found"),
    [
        ("theme", "Dark"),
        ("font", "Larger text"),
        ("export", "Write the workbook and the mark sheet"),
        ("quit", "Leave Markbench"),
        ("backup", "Copies of this class: go back to one"),
        ("print", "Write a task sheet for learners…"),
        ("settings", "Change what the class was asked to do"),
        ("help", "Find an action"),
    ],
)
def test_an_action_is_found_by_the_word_that_comes_to_mind(
    window: Window, typed: str, found: str
) -> None:
    assert found in [deed.action.text() for deed in window.deeds.find(typed)]


def test_what_a_button_and_an_action_both_do_stands_once(listed: Window) -> None:
    told = [deed.action.text() for deed in listed.deeds.find("not yet marked")]
    assert told == ["Only those not yet marked"]


def test_no_action_by_these_words_is_said(qtbot: QtBot, listed: Window) -> None:
    qtbot.keyClicks(listed.deed_list.search, "teapot")
    assert listed.deed_list.list.count() == 1
    assert "Nothing here" in listed.deed_list.list.item(0).text()
    qtbot.keyClick(listed.deed_list.search, Qt.Key.Key_Return)
    assert listed.deed_list.isVisible()


def test_a_page_opened_from_the_list_has_the_keyboard(qtbot: QtBot, listed: Window) -> None:
    qtbot.keyClicks(listed.deed_list.search, "asked to do")
    qtbot.keyClick(listed.deed_list.search, Qt.Key.Key_Return)
    page = listed.doors.page
    assert page is not None
    assert page.isAncestorOf(QApplication.focusWidget())


def test_the_program_is_left_by_a_key(qtbot: QtBot, window: Window) -> None:
    qtbot.keyClick(window, Qt.Key.Key_Q, CTRL)
    assert not window.isVisible()


LONG = (
    "class.markbench was moved or deleted; nothing was saved. "
    "Changes kept here until they can be saved: 1."
)


def in_sight(label) -> str:
    """What can be read of a label that wraps; empty where any of it is cut."""
    QApplication.processEvents()
    fits = label.height() >= label.heightForWidth(label.width())
    return label.text() if label.isVisible() and fits else ""


@pytest.mark.parametrize("width", [1920, 1280, 900])
def test_a_long_notice_can_be_read_whole(qtbot: QtBot, window: Window, width: int) -> None:
    window.resize(width, 700)
    bar = window.bar
    for words in ("The folder is out of reach.", LONG, LONG + " " + LONG):
        bar.say_trouble(words)
        qtbot.waitUntil(lambda words=words: in_sight(bar.trouble) == words)
        assert bar.trouble.x() + bar.trouble.width() <= width
        beside = bar.title if bar.title.isVisible() else window.places
        assert not bar.trouble.geometry().intersects(beside.geometry())
    bar.go_on()
    QApplication.processEvents()
    assert not bar.trouble.isVisible()
    assert bar.title.isVisible()


def test_what_was_said_is_left_behind(qtbot: QtBot, window: Window) -> None:
    told = window.bar.trouble
    window.open_learner(window.bench.order.learners()[0])
    for goes_on in (lambda: window.step(1), window.show_class, lambda: window.show_place("across")):
        window.bar.say_trouble("Signed off. Reopen: Moderation")
        goes_on()
        assert told.text() == ""
    window.bar.say_notice("✓ reminder copied")
    window.close_class()
    assert told.text() == ""


def test_what_waits_to_be_saved_is_told_wherever_one_goes(
    qtbot: QtBot, window: Window, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(type(window.desk), "unsaved", property(lambda _desk: 1))
    window.bar.say_trouble(LONG)
    window.open_learner(window.bench.order.learners()[0])
    window.step(1)
    assert window.bar.trouble.text() == LONG
    monkeypatch.undo()


def test_places_in_a_line_of_their_own_are_no_wider_than_they_need(
    qtbot: QtBot, window: Window
) -> None:
    window.resize(860, 700)
    QApplication.processEvents()
    assert window.bar._narrow
    for one in window.places.buttons.values():
        assert one.width() <= one.sizeHint().width() + 1
