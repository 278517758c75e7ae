"""The class page by hand: always a card to go on from, nothing that jumps, nobody lost."""

from __future__ import annotations

import secrets

import pytest
from PySide6.QtCore import QPoint, Qt
from PySide6.QtWidgets import QApplication, QLabel
from pytestqt.qtbot import QtBot

from markbench.session import Session
from markbench.session.blind import KIND as BLIND
from markbench.session.evidence import Seen
from markbench.session.order import shuffled
from markbench.ui.bench.page import ClassPage
from markbench.ui.window import Window

CTRL, SHIFT = Qt.KeyboardModifier.ControlModifier, Qt.KeyboardModifier.ShiftModifier


def settle() -> None:
    for _ in range(5):
        QApplication.processEvents()


def press(qtbot: QtBot, window: Window, key: Qt.Key, how: Qt.KeyboardModifier = CTRL) -> None:
    """A key to whatever has the keyboard."""
    qtbot.keyClick(window.focusWidget() or window, key, how)
    settle()


@pytest.fixture
def bench(window: Window) -> ClassPage:
    window.activateWindow()
    bench = window.bench
    assert bench is not None
    bench.sorts.setCurrentIndex(bench.sorts.findData("class_list"))
    return bench


# --- a card to go on from --------------------------------------------------------------


def test_the_one_learner_found_is_opened_by_enter(
    qtbot: QtBot, window: Window, bench: ClassPage
) -> None:
    press(qtbot, window, Qt.Key.Key_F)
    qtbot.keyClicks(bench.search, "cato")
    qtbot.keyClick(bench.search, Qt.Key.Key_Return)
    assert window.pages.currentWidget() is window.sheet
    assert window.sheet.learner == "s3"


def test_enter_goes_from_the_search_to_the_cards_and_enter_opens_the_first(
    qtbot: QtBot, window: Window, bench: ClassPage
) -> None:
    bench.grid.choose("s2")
    press(qtbot, window, Qt.Key.Key_F)
    qtbot.keyClicks(bench.search, "ins")  # only in Cato Instance
    bench.search.clear()
    qtbot.keyClicks(bench.search, "a")  # everybody
    qtbot.keyClick(bench.search, Qt.Key.Key_Return)
    assert bench.grid.hasFocus()
    qtbot.keyClick(bench.grid, Qt.Key.Key_Return)
    assert window.pages.currentWidget() is window.sheet
    assert window.sheet.learner == "s3"  # current since it alone was found


def test_there_is_a_current_card_after_every_filter_order_and_hiding_of_names(
    qtbot: QtBot, window: Window, bench: ClassPage
) -> None:
    def current() -> str:
        assert bench.grid.chosen(), "nothing is chosen"
        return bench.grid.current()

    bench.grid.choose("s1")
    bench.chips["missing"].click()
    assert current() == "s3"
    bench.chips["missing"].click()
    assert current() == "s3"
    for row in range(bench.sorts.count()):
        bench.sorts.setCurrentIndex(row)
        assert current() == "s3"
    bench.search.setText("nobody of that name")
    bench.search.clear()
    assert current()
    for hidden in (True, False):
        with qtbot.waitSignal(window.desk.changed, timeout=5000):
            window.hide_names(hidden)
        settle()
        assert current() == bench.order.learners()[0]


# --- what is to settle, while names are hidden -----------------------------------------


def test_what_is_to_settle_waits_for_names_says_so_and_can_be_closed(
    qtbot: QtBot, window: Window, bench: ClassPage
) -> None:
    press(qtbot, window, Qt.Key.Key_T)
    assert bench.settle.isVisible()
    with qtbot.waitSignal(window.desk.changed, timeout=5000):
        window.hide_names(True)
    settle()
    said = [one.text() for one in bench.settle.findChildren(QLabel)]
    assert said == ["Whose files are whose is settled when names are shown."]
    assert not window.deeds.find("settle whose")
    qtbot.mouseClick(bench.shut_settle, Qt.MouseButton.LeftButton)
    assert not bench.settle.isVisible()
    assert bench.grid.hasFocus()
    press(qtbot, window, Qt.Key.Key_T)
    assert not bench.settle.isVisible()
    with qtbot.waitSignal(window.desk.changed, timeout=5000):
        window.hide_names(False)
    assert window.deeds.find("settle whose")
    press(qtbot, window, Qt.Key.Key_T)
    assert any("IMG_0001" in one.text() for one in bench.settle.findChildren(QLabel))


# --- a search without a hit ------------------------------------------------------------


def test_a_search_without_a_hit_says_so_and_shows_everybody_again(
    qtbot: QtBot, window: Window, bench: ClassPage
) -> None:
    press(qtbot, window, Qt.Key.Key_F)
    qtbot.keyClicks(bench.search, "zebra")
    assert bench.nobody.isVisible()
    assert "zebra" in bench.nobody.text()
    qtbot.keyClick(bench.search, Qt.Key.Key_Return)  # opens nothing
    assert window.pages.currentWidget() is bench
    qtbot.mouseClick(bench.everybody_again, Qt.MouseButton.LeftButton)
    assert not bench.nobody.isVisible()
    assert len(bench.order.learners()) == 3
    bench.search.setText("o")
    bench.chips["missing"].click()
    bench.search.setText("aino")
    assert "filters" in bench.nobody.text()


def test_escape_clears_the_search_first_and_then_goes_to_the_cards(
    qtbot: QtBot, window: Window, bench: ClassPage
) -> None:
    press(qtbot, window, Qt.Key.Key_F)
    qtbot.keyClicks(bench.search, "aino")
    press(qtbot, window, Qt.Key.Key_Escape, Qt.KeyboardModifier.NoModifier)
    assert bench.search.text() == ""
    assert bench.search.hasFocus()
    press(qtbot, window, Qt.Key.Key_Escape, Qt.KeyboardModifier.NoModifier)
    assert bench.grid.hasFocus()


def test_how_far_a_search_reaches_stands_beside_it(
    qtbot: QtBot, window: Window, bench: ClassPage
) -> None:
    assert not bench.reach.isVisible()
    bench.search.setText("aino")
    assert bench.reach.isVisible()
    assert "Pictures" in bench.reach.text()
    window.show_place("contact")
    page = window.further["contact"]
    assert "as on the class page" in page.shown.text()
    window.show_place("across")
    assert window.further["across"].model.rowCount() == 3
    window.show_place("handins")
    assert window.further["handins"].order.rowCount() == 3
    window.show_class()
    qtbot.mouseClick(bench.everybody, Qt.MouseButton.LeftButton)
    assert not bench.reach.isVisible()


# --- several chosen --------------------------------------------------------------------


def test_several_chosen_are_asked_again_on_the_page_of_hand_ins(
    qtbot: QtBot, window: Window, bench: ClassPage
) -> None:
    bench.grid.choose("s2")
    bench.grid.setFocus()
    assert not bench.foot.chosen.isVisible()
    press(qtbot, window, Qt.Key.Key_Right, SHIFT)
    assert bench.grid.chosen() == ["s2", "s3"]
    assert bench.foot.chosen.isVisible()
    assert "2 chosen" in bench.foot.chosen.findChild(QLabel).text()
    assert not bench.foot.legend.isVisible()
    window.show_place("handins")
    page = window.further["handins"]
    page.chips["nothing"].setChecked(True)  # a filter there hides nobody who is asked
    window.show_class()
    qtbot.mouseClick(bench.foot.chosen.ask_button, Qt.MouseButton.LeftButton)
    assert window.pages.currentWidget() is page
    assert sorted(row.learner for row in page.chosen()) == ["s2", "s3"]
    assert "Cato Instance" in page.letters.toPlainText()
    assert page.copy.hasFocus()
    qtbot.keyClick(page.copy, Qt.Key.Key_Return)
    assert "Cato Instance" in QApplication.clipboard().text()
    press(qtbot, window, Qt.Key.Key_Escape, Qt.KeyboardModifier.NoModifier)
    assert bench.grid.chosen() == ["s2", "s3"]
    window.open_learner("s2")
    window.show_class()
    assert bench.grid.chosen() == ["s2", "s3"]  # whose sheet was seen is one of them
    qtbot.mouseClick(bench.foot.chosen.none_button, Qt.MouseButton.LeftButton)
    assert len(bench.grid.chosen()) == 1
    assert bench.foot.legend.isVisible()


def test_asking_again_is_found_by_its_words_and_has_a_key(
    qtbot: QtBot, window: Window, bench: ClassPage
) -> None:
    bench.grid.choose("s3")
    found = window.deeds.find("ask again")
    assert len(found) == 1
    press(qtbot, window, Qt.Key.Key_A)
    assert len(window.deeds.find("ask again")) == 1  # its button is no second one
    found[0].action.trigger()
    assert len(window.further["handins"].chosen()) == 3


def test_a_copied_list_says_so(qtbot: QtBot, window: Window, bench: ClassPage) -> None:
    press(qtbot, window, Qt.Key.Key_A)
    qtbot.mouseClick(bench.foot.chosen.copy_button, Qt.MouseButton.LeftButton)
    assert "Cato Instance" in QApplication.clipboard().text()
    assert "copied" in window.bar.trouble.text()


@pytest.mark.parametrize("same_order", [True, False])
def test_cards_that_go_are_chosen_no_more(
    qtbot: QtBot,
    window: Window,
    bench: ClassPage,
    session: Session,
    monkeypatch: pytest.MonkeyPatch,
    same_order: bool,
) -> None:
    """Numbers come in place of the names, though they be dealt in the order that stood."""
    ids = [learner.id for learner in session.learners]
    dealt = (n for n in range(100) if (list(shuffled(ids, n, BLIND)) == ids) is same_order)
    monkeypatch.setattr(secrets, "randbelow", lambda _most: next(dealt))
    press(qtbot, window, Qt.Key.Key_A)
    assert bench.foot.chosen.isVisible()
    bench.search.setText("nobody of that name")
    assert not bench.foot.chosen.isVisible()
    bench.search.clear()
    press(qtbot, window, Qt.Key.Key_A)
    with qtbot.waitSignal(window.desk.changed, timeout=5000):
        window.hide_names(True)
    settle()
    assert len(bench.grid.chosen()) == 1
    assert not bench.foot.chosen.isVisible()


def test_choosing_several_moves_no_card(qtbot: QtBot, window: Window, bench: ClassPage) -> None:
    before = bench.grid.geometry(), bench.grid.gridSize()
    press(qtbot, window, Qt.Key.Key_A)
    assert bench.foot.chosen.isVisible()
    assert (bench.grid.geometry(), bench.grid.gridSize()) == before


# --- nothing moves under the hand ------------------------------------------------------


def test_a_mark_moves_no_card_until_asked(
    qtbot: QtBot, window: Window, bench: ClassPage, session: Session
) -> None:
    bench.sorts.setCurrentIndex(bench.sorts.findData("progress"))
    bench.chips["unmarked"].click()
    before = bench.order.learners()
    assert not bench.again.isVisible()
    with qtbot.waitSignal(window.desk.changed, timeout=5000):
        window.desk.do(lambda held: held.accept(before[0]))
    assert bench.order.learners() == before
    assert bench.again.isVisible()
    qtbot.mouseClick(bench.again, Qt.MouseButton.LeftButton)
    assert bench.order.learners() == before[1:]
    assert not bench.again.isVisible()


def test_news_of_films_moves_no_card_until_asked(
    qtbot: QtBot, window: Window, bench: ClassPage, monkeypatch: pytest.MonkeyPatch
) -> None:
    bench.sorts.setCurrentIndex(bench.sorts.findData("concern"))
    before = bench.order.learners()
    monkeypatch.setattr(  # as if the films had raised questions about the last one
        bench.order, "_key", lambda row: (row.id != before[-1], row.order)
    )
    with qtbot.waitSignal(window.desk.changed, timeout=5000):
        window.desk.do(lambda held: held.see(Seen()))
    assert bench.order.learners() == before
    bench.search.setText("a")  # a search does not sort either
    assert bench.order.learners() == before
    bench.search.clear()
    assert bench.again.isVisible()
    bench.sorts.activated.emit(bench.sorts.currentIndex())  # the same order, chosen again
    assert bench.order.learners() == [before[-1], *before[:-1]]


def test_no_card_moves_when_the_looking_at_films_ends(window: Window, bench: ClassPage) -> None:
    bench.looking._moved(1, 9, "")
    settle()
    assert bench.looking.isVisible()
    during = bench.grid.mapTo(window, QPoint(0, 0)), bench.grid.gridSize()
    words = bench.shown.mapTo(window, QPoint(0, 0))
    bench.looking._moved(9, 9, "")
    settle()
    assert not bench.looking.isVisible()
    assert (bench.grid.mapTo(window, QPoint(0, 0)), bench.grid.gridSize()) == during
    assert bench.shown.mapTo(window, QPoint(0, 0)) == words
