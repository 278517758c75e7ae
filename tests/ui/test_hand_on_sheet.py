"""What a hand at the keyboard meets on the sheet: the way of Tab, arrows, Escape, dead keys."""

from __future__ import annotations

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QApplication, QWidget
from pytestqt.qtbot import QtBot

from markbench.session import Session
from markbench.ui.window import Window

CTRL, ALT = Qt.KeyboardModifier.ControlModifier, Qt.KeyboardModifier.AltModifier


@pytest.fixture
def sheet(qtbot: QtBot, window: Window):
    window.activateWindow()
    window.open_learner("s2")
    QApplication.processEvents()
    return window.sheet


def way_of_tab(qtbot: QtBot, start: QWidget, until: QWidget) -> list[QWidget]:
    start.setFocus()
    found = [start]
    while found[-1] is not until and len(found) < 120:
        qtbot.keyClick(found[-1], Qt.Key.Key_Tab)
        found.append(QApplication.focusWidget())
    return found


def test_tab_goes_down_the_left_then_the_right_then_the_margin(
    qtbot: QtBot, window: Window, sheet
) -> None:
    led = way_of_tab(qtbot, sheet.table, sheet.margin.next)
    parts = (
        sheet.table, sheet._whole, sheet.findings, sheet.evidence, sheet.graph,
        sheet.explanations, sheet.margin,
    )  # fmt: skip
    order = [
        next(n for n, part in enumerate(parts) if part is one or part.isAncestorOf(one))
        for one in led
    ]
    assert order == sorted(order)
    assert set(order) == set(range(len(parts)))


def test_a_row_of_levels_is_one_stop_and_a_shut_card_no_more(
    qtbot: QtBot, window: Window, sheet, session: Session
) -> None:
    led = way_of_tab(qtbot, sheet.table, sheet.margin.next)
    for card in sheet.margin.cards:
        inside = [one for one in led if card.isAncestorOf(one)]
        levels = [one for one in inside if one in card.levels.values()]
        assert len(levels) == 1
        drafted = session.draft("s2", card.criterion.id).level
        assert drafted is None or levels == [card.levels[drafted]]
        assert card.is_open or inside == levels


def test_arrows_go_from_level_to_level_and_choose_nothing(
    qtbot: QtBot, window: Window, sheet, session: Session
) -> None:
    card = sheet.margin.current
    levels = list(card.levels.values())
    levels[0].setFocus()
    for key, at in ((Qt.Key.Key_Right, 1), (Qt.Key.Key_Down, 2), (Qt.Key.Key_Left, 1)):
        qtbot.keyClick(QApplication.focusWidget(), key)
        assert QApplication.focusWidget() is levels[at]
    qtbot.keyClick(levels[1], Qt.Key.Key_Tab)
    assert QApplication.focusWidget() not in levels
    assert session.mark("s2", card.criterion.id) is None
    levels[1].setFocus()
    with qtbot.waitSignal(window.desk.changed, timeout=10_000):
        qtbot.keyClick(levels[1], Qt.Key.Key_Space)
    assert session.mark("s2", card.criterion.id).level == list(card.levels)[1]


@pytest.mark.parametrize("where", ["text", "note", "learner note"])
def test_escape_leaves_the_text_first_and_then_the_sheet(
    qtbot: QtBot, window: Window, sheet, session: Session, where: str
) -> None:
    card = sheet.margin.current
    field = {"text": card.text, "note": card.note, "learner note": sheet.margin.note}[where]
    field.setFocus()
    qtbot.keyClicks(field, "Mind the knot.")
    with qtbot.waitSignal(window.desk.changed, timeout=10_000):
        qtbot.keyClick(field, Qt.Key.Key_Escape)
    assert window.pages.currentWidget() is sheet
    assert QApplication.focusWidget() in card.levels.values()
    qtbot.keyClick(QApplication.focusWidget(), Qt.Key.Key_Escape)
    assert window.pages.currentWidget() is window.bench


def test_escape_leaves_the_text_for_the_strips_across_the_class(
    qtbot: QtBot, window: Window, session: Session
) -> None:
    window.show_place("across")
    page = window.pages.currentWidget()
    page.card.text.setFocus()
    qtbot.keyClick(page.card.text, Qt.Key.Key_Escape)
    assert window.pages.currentWidget() is page
    assert page.view.hasFocus()


@pytest.mark.parametrize(
    ("learner", "key", "modifier", "words"),
    [
        ("s1", Qt.Key.Key_9, CTRL, "no level 9"),
        ("s3", Qt.Key.Key_A, ALT, "no explanation"),
        ("s3", Qt.Key.Key_G, ALT, "nothing to show"),
        ("s1", Qt.Key.Key_Delete, ALT, "Choose a timing"),
    ],
)
def test_a_key_with_nothing_to_do_says_so(
    qtbot: QtBot, window: Window, sheet, session: Session, learner, key, modifier, words
) -> None:
    window.open_learner("s3")
    table = session.portfolio("s3").table
    for reading in table.readings[1:]:
        session.correct("s3", reading.source, "20.0")  # one length alone: nothing to weigh
    window.open_learner(learner)
    window.sheet.table.setCurrentIndex(window.sheet.readings.index(0, 0))
    qtbot.keyClick(window, key, modifier)
    assert words in window.bar.trouble.text()


def test_the_place_says_when_not_everybody_is_shown(
    qtbot: QtBot, window: Window, session: Session
) -> None:
    window.open_learner("s2")
    assert "of 3" in window.sheet._place.text()
    window.show_class()
    window.bench.search.setText("bodil")
    qtbot.waitUntil(lambda: len(window.bench.order.learners()) == 1, timeout=5000)
    window.open_learner("s2")
    assert window.sheet._place.text() == "1 of 1 shown (3 in the class)"
    qtbot.keyClick(window, Qt.Key.Key_PageDown, CTRL)
    assert window.pages.currentWidget() is window.bench
    assert "last one" in window.bar.trouble.text()


def test_tab_comes_to_the_facts_before_the_text_that_stands_below_them(
    qtbot: QtBot, window: Window, sheet
) -> None:
    for at, card in enumerate(sheet.margin.cards[:3]):
        sheet.margin.open_card(card.criterion.id)
        QApplication.processEvents()
        led = way_of_tab(qtbot, sheet.table, sheet.margin.next)
        inside = [one for one in led if card.isAncestorOf(one)]
        tops = [one.mapTo(card, one.rect().topLeft()).y() for one in inside]
        assert tops == sorted(tops), (at, inside)
        assert card.text in inside
