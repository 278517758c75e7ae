"""A reading is corrected after the marks were given: the sheet says so, and a hand settles it."""

from __future__ import annotations

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QApplication, QLineEdit
from pytestqt.qtbot import QtBot

from markbench.session import Session
from markbench.ui.bench.model import ROW
from markbench.ui.window import Window

CTRL, SHIFT = Qt.KeyboardModifier.ControlModifier, Qt.KeyboardModifier.ShiftModifier


@pytest.fixture
def corrected(qtbot: QtBot, window: Window, session: Session) -> Window:
    """Bodil's marks are all given; then 17.09 s is read as 15.49 s."""
    window.open_learner("s2")
    margin = window.sheet.margin
    with qtbot.waitSignal(window.desk.changed, timeout=10_000):
        qtbot.keyClick(window, Qt.Key.Key_Return, CTRL | SHIFT)
    for card in margin.cards:  # what was for the teacher's eye
        if session.mark("s2", card.criterion.id) is None:
            with qtbot.waitSignal(window.desk.changed, timeout=10_000):
                card.choose_level(next(iter(card.levels)))
    assert session.progress("s2") == (5, 5)
    margin.open_card("result")
    table = window.sheet.table
    index = window.sheet.readings.index(4, 3)
    table.setCurrentIndex(index)
    table.edit(index)
    editor = table.findChild(QLineEdit)
    editor.selectAll()
    qtbot.keyClicks(editor, "15.49")
    with qtbot.waitSignal(window.desk.changed, timeout=10_000):
        qtbot.keyClick(editor, Qt.Key.Key_Return)
    QApplication.processEvents()
    return window


def test_the_card_says_so_and_the_learner_is_not_finished(
    qtbot: QtBot, corrected: Window, session: Session
) -> None:
    margin = corrected.sheet.margin
    card, draft = margin.current, session.draft("s2", "result")
    assert f"{draft.level} · {draft.marks:g}" in card.moved.text()
    assert "Readings corrected since" in card.moved.text()
    assert card.keep.isVisible()
    assert "✓" not in margin._total.text()
    grid = corrected.bench.grid
    row = next(
        grid.model().index(i, 0).data(ROW)
        for i in range(grid.model().rowCount())
        if grid.model().index(i, 0).data(ROW).id == "s2"
    )
    assert not row.finished
    margin.open_card("readings")  # shut, it says so as well, and shows no raw brace
    assert card.moved.isVisible()
    assert "{" not in card._preview.text()


def test_one_key_takes_the_new_draft_and_one_keeps_the_mark(
    qtbot: QtBot, corrected: Window, session: Session
) -> None:
    margin = corrected.sheet.margin
    was = session.mark("s2", "result").level
    with qtbot.waitSignal(corrected.desk.changed, timeout=10_000):
        qtbot.keyClick(corrected, Qt.Key.Key_K, CTRL)
    assert session.mark("s2", "result").level == was
    assert session.progress("s2") == (5, 5)
    assert "✓" in margin._total.text()
    with qtbot.waitSignal(corrected.desk.changed, timeout=10_000):
        qtbot.keyClick(corrected, Qt.Key.Key_Z, CTRL)
    margin.open_card("result")
    with qtbot.waitSignal(corrected.desk.changed, timeout=10_000):
        qtbot.keyClick(corrected, Qt.Key.Key_Return, CTRL)
    assert session.mark("s2", "result").level == session.draft("s2", "result").level != was
    assert session.feedback("s2", "result") == session.draft("s2", "result").feedback


def test_what_is_no_longer_true_is_struck_in_the_text(
    qtbot: QtBot, corrected: Window, session: Session
) -> None:
    writing = corrected.sheet.margin.current.writing
    writing.look()
    struck = [line for line in writing.field.lines() if line in writing.marks.struck]
    assert struck
    block = writing.field.document().findBlockByNumber(writing.field.lines().index(struck[0]))
    formats = block.layout().formats()
    assert any(one.format.fontStrikeOut() for one in formats)
    assert "not sent" in writing.trouble.text()
    assert "{" not in writing.trouble.text()  # what is struck is no open place
