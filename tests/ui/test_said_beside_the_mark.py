"""What a card, a strip and the list of actions say of how things stand."""

from __future__ import annotations

from PySide6.QtWidgets import QApplication
from pytestqt.qtbot import QtBot

from markbench.session import Session
from markbench.ui.rereading import read_again
from markbench.ui.window import Window


def test_a_level_given_beside_the_drafted_text_is_said(
    qtbot: QtBot, window: Window, session: Session
) -> None:
    window.open_learner("s1")
    card = window.sheet.margin.current
    drafted = session.draft("s1", card.criterion.id).level
    assert not card.unsaid.isVisible()
    other = next(name for name in card.levels if name != drafted)
    card.choose_level(other)
    qtbot.waitUntil(lambda: f"drafted for {drafted}" in card.unsaid.text(), timeout=5000)
    assert card.unsaid.isVisible()
    assert session.mark("s1", card.criterion.id).level == other  # and nobody is stopped
    learner, criterion = "s1", card.criterion.id
    window.desk.do(lambda held: held.set_feedback(learner, criterion, "Your own words."))
    qtbot.waitUntil(lambda: card.unsaid.isHidden(), timeout=5000)
    window.desk.do(lambda held: held.set_feedback(learner, criterion, ""))
    qtbot.waitUntil(lambda: "no text to the learner" in card.unsaid.text(), timeout=5000)


def test_nothing_moves_when_a_draft_is_accepted(
    qtbot: QtBot, window: Window, session: Session
) -> None:
    window.resize(1280, 800)
    window.open_learner("s1")
    QApplication.processEvents()
    card = window.sheet.margin.current
    level = next(iter(card.levels.values()))
    before = level.mapTo(card, level.rect().topLeft()).y()
    with qtbot.waitSignal(window.desk.changed, timeout=5000):
        window.desk.do(lambda held: held.accept("s1", card.criterion.id))
    QApplication.processEvents()
    assert "marked by" in card._state.text()
    assert level.mapTo(card, level.rect().topLeft()).y() == before


def test_a_level_says_one_mark_and_two_marks(window: Window) -> None:
    window.open_learner("s1")
    names = [
        (level.marks, card.levels[level.name].accessibleName())
        for card in window.sheet.margin.cards
        for level in card.criterion.levels
    ]
    assert any(marks == 1 for marks, _ in names)
    for marks, name in names:
        assert name.endswith("1 mark" if marks == 1 else f"{marks:g} marks")


def test_the_list_of_actions_offers_only_what_can_be_done(
    qtbot: QtBot, window: Window, session: Session
) -> None:
    window.open_learner("s1")

    def listed() -> list[str]:
        return [deed.action.text() for deed in window.deeds.find("")]

    levels = len(window.sheet.margin.current.levels)
    assert f"Level {levels} of this criterion" in listed()
    assert f"Level {levels + 1} of this criterion" not in listed()
    for words in (
        "Keep this mark although its draft has changed",
        "Take this mark back to a draft",
        "Leave the mark as it is though the work changed",
    ):
        assert words not in listed()
    criterion = window.sheet.margin.current.criterion.id
    with qtbot.waitSignal(window.desk.changed, timeout=5000):
        window.desk.do(lambda held: held.accept("s1", criterion))
    window.sheet.margin.open_card(criterion)
    assert "Take this mark back to a draft" in listed()


def test_an_empty_box_of_phrases_says_what_to_do_and_how_to_leave(
    qtbot: QtBot, window: Window
) -> None:
    window.open_learner("s1")
    window.doors.open_phrases()
    drawer = window.doors.drawer
    assert "no phrase for this criterion yet" in drawer.box.nothing.text()
    assert drawer.box.nothing.isVisible()
    assert not drawer.box.forget.isVisible()
    drawer.shut.click()
    assert not drawer.isVisible()


def test_leaving_the_work_as_it_is_says_that_it_settles_every_mark(
    qtbot: QtBot, window: Window, session: Session
) -> None:
    strip = window.sheet.changed if window.sheet else window.make_sheet().changed
    with qtbot.waitSignal(window.desk.changed, timeout=5000):
        window.desk.do(lambda held: held.accept("s1"))
    marks = len(session.marks("s1"))
    assert marks > 1
    own = session.folder / "Aino Example" / "readings.csv"
    own.write_text(own.read_text("utf-8").replace("8.95", "8.75"), encoding="utf-8")
    read_again(window)
    window.open_learner("s1")
    qtbot.waitUntil(strip.isVisible, timeout=10_000)
    assert strip.leave.text() == f"Leave all {marks} marks as they are"
