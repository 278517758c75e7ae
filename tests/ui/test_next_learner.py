"""Whoever turns to another learner finds the criterion open that is to be marked next."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QApplication
from pytestqt.qtbot import QtBot

from markbench.session import Session
from markbench.ui.window import Window

CTRL = Qt.KeyboardModifier.ControlModifier
LEFT = Qt.MouseButton.LeftButton


def done(window: Window) -> None:
    window.desk.finish()
    QApplication.processEvents()


def test_the_next_learner_opens_at_the_first_criterion_not_yet_marked(
    qtbot: QtBot, window: Window, session: Session
) -> None:
    first, *_, last = session.rubric.criteria
    learner, after = window.bench.order.learners()[:2]
    session.set_level(after, first.id, first.levels[-1].name)
    window.open_learner(learner)
    margin = window.sheet.margin
    assert margin.current.criterion is first
    margin.open_card(last.id)
    qtbot.keyClick(window, Qt.Key.Key_PageDown, CTRL)
    assert window.sheet.learner == after
    # A level by key falls on what is still to be marked, and on nothing else.
    wanted = session.rubric.criteria[1]
    assert margin.current.criterion is wanted
    assert [card.criterion for card in margin.cards if card.is_open] == [wanted]
    qtbot.keyClick(window, Qt.Key.Key_1, CTRL)
    done(window)
    assert session.mark(after, wanted.id).level == wanted.levels[0].name
    assert session.mark(after, first.id).level == first.levels[-1].name
    assert session.mark(after, last.id) is None
    # Marked meanwhile, it stays open: one may think again, and go on by key.
    assert margin.current.criterion is wanted


def test_a_learner_fully_marked_opens_at_the_first_criterion(
    qtbot: QtBot, window: Window, session: Session
) -> None:
    learner, after = window.bench.order.learners()[:2]
    for criterion in session.rubric.criteria:
        session.set_level(after, criterion.id, criterion.levels[0].name)
    window.open_learner(learner)
    window.sheet.margin.open_card(session.rubric.criteria[-1].id)
    qtbot.mouseClick(window.sheet.margin.next, LEFT)
    assert window.sheet.learner == after
    assert window.sheet.margin.current.criterion is session.rubric.criteria[0]


def test_the_keyboard_goes_to_the_open_criterion_and_is_left_where_it_is_elsewhere(
    qtbot: QtBot, window: Window, session: Session
) -> None:
    learner, _after = window.bench.order.learners()[:2]
    window.open_learner(learner)
    margin = window.sheet.margin
    for _ in session.rubric.criteria:
        qtbot.keyClick(window, Qt.Key.Key_Down, CTRL)
    assert margin.cards[-1].isAncestorOf(QApplication.focusWidget())
    qtbot.keyClick(window, Qt.Key.Key_PageDown, CTRL)
    assert QApplication.focusWidget() is next(iter(margin.cards[0].levels.values()))
    assert margin._scroll.verticalScrollBar().value() == 0
    window.sheet.table.setFocus()
    qtbot.keyClick(window, Qt.Key.Key_PageUp, CTRL)
    assert QApplication.focusWidget() is window.sheet.table
