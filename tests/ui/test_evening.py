"""What hands do: open, look, filter, correct, mark, undo, settle."""

from __future__ import annotations

from pathlib import Path

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QApplication, QLineEdit, QPushButton
from pytestqt.qtbot import QtBot

from markbench.session import Session
from markbench.ui.portfolio.readings_model import CELL
from markbench.ui.window import Window


def shown(window: Window) -> list[str]:
    return window.bench.order.learners()


def open_learner(window: Window, learner: str) -> None:
    window.open_learner(learner)
    QApplication.processEvents()


def test_opening_a_folder_shows_every_learner(window: Window) -> None:
    assert sorted(shown(window)) == ["s1", "s2", "s3"]
    assert window.pages.currentWidget() is window.bench


def test_a_folder_that_is_not_there_is_explained(
    qtbot: QtBot, empty_window: Window, tmp_path: Path
) -> None:
    empty_window.open_folder(tmp_path / "nowhere")
    qtbot.waitUntil(lambda: empty_window.start._trouble.isVisible(), timeout=5000)
    assert empty_window.start._trouble.text().count("nowhere") == 1
    assert empty_window.start.choose.isVisible()


def test_stopping_leads_back_to_the_start(
    qtbot: QtBot, empty_window: Window, class_folder: Path
) -> None:
    empty_window.open_folder(class_folder)
    qtbot.mouseClick(empty_window.start.stop, Qt.MouseButton.LeftButton)
    qtbot.wait(600)
    assert empty_window.bench is None
    assert empty_window.start.choose.isVisible()


def test_search_and_filters_combine(qtbot: QtBot, window: Window) -> None:
    bench = window.bench
    qtbot.keyClicks(bench.search, "bodil")
    assert shown(window) == ["s2"]
    bench.search.clear()
    qtbot.mouseClick(bench.chips["missing"], Qt.MouseButton.LeftButton)
    assert shown(window) == ["s3"]
    qtbot.keyClicks(bench.search, "aino")
    assert shown(window) == []
    assert "0 of 3" in bench.shown.text()


def test_orders(window: Window) -> None:
    bench = window.bench
    bench.sorts.setCurrentIndex(bench.sorts.findData("name"))
    assert shown(window) == ["s1", "s2", "s3"]
    bench.sorts.setCurrentIndex(bench.sorts.findData("concern"))
    assert shown(window)[0] == "s2"  # the one with a timing a whole swing too long


def test_keys_open_a_learner_and_move_on_and_back(qtbot: QtBot, window: Window) -> None:
    bench = window.bench
    bench.sorts.setCurrentIndex(bench.sorts.findData("name"))
    bench.grid.setCurrentIndex(bench.order.index(0, 0))
    qtbot.keyClick(bench.grid, Qt.Key.Key_Return)
    assert window.sheet.learner == "s1"
    qtbot.keyClick(window, Qt.Key.Key_PageDown, Qt.KeyboardModifier.ControlModifier)
    assert window.sheet.learner == "s2"
    qtbot.keyClick(window, Qt.Key.Key_PageUp, Qt.KeyboardModifier.ControlModifier)
    assert window.sheet.learner == "s1"
    qtbot.keyClick(window, Qt.Key.Key_Escape)
    assert window.pages.currentWidget() is bench


def test_a_questioned_cell_is_marked_and_explained(window: Window) -> None:
    open_learner(window, "s2")
    model = window.sheet.readings
    odd = model.index(4, 3)
    assert odd.data() == "17.09"
    assert odd.data(CELL).concern is not None
    assert "17.09" in odd.data(Qt.ItemDataRole.ToolTipRole)


def test_a_click_on_a_finding_leads_to_the_very_cell(qtbot: QtBot, window: Window) -> None:
    open_learner(window, "s2")
    sheet = window.sheet
    row = next(r for r in sheet.findings.rows if r.finding.check == "timing_departs")
    qtbot.mouseClick(row, Qt.MouseButton.LeftButton)
    cells = [(i.row(), i.column()) for i in sheet.table.selectedIndexes()]
    assert (4, 3) in cells or (4, 2) in cells
    assert all(row == 4 for row, _ in cells)
    assert "readings.csv" in sheet._source.text()


def test_a_reading_is_corrected_kept_and_undone(
    qtbot: QtBot, window: Window, session: Session
) -> None:
    open_learner(window, "s2")
    sheet = window.sheet
    before = session.analysis("s2").line.g
    index = sheet.readings.index(4, 3)
    sheet.table.setCurrentIndex(index)
    sheet.table.edit(index)
    editor = sheet.table.findChild(QLineEdit)
    assert editor.text() == "17.09"
    editor.selectAll()
    qtbot.keyClicks(editor, "15.55")
    with qtbot.waitSignal(window.desk.changed, timeout=10_000):
        qtbot.keyClick(editor, Qt.Key.Key_Return)
    now = sheet.readings.index(4, 3)
    assert now.data() == "15.55"
    assert now.data(CELL).original == "17.09"
    assert session.analysis("s2").line.g != pytest.approx(before)
    with qtbot.waitSignal(window.desk.changed, timeout=10_000):
        qtbot.mouseClick(window.undo_button, Qt.MouseButton.LeftButton)
    assert sheet.readings.index(4, 3).data() == "17.09"
    assert sheet.readings.index(4, 3).data(CELL).original == ""
    assert session.analysis("s2").line.g == pytest.approx(before)


def test_a_draft_is_in_pencil_and_a_mark_in_ink(
    qtbot: QtBot, window: Window, session: Session
) -> None:
    open_learner(window, "s1")
    card = window.sheet.margin.cards[0]
    assert card.property("kind") == "drafted"
    assert "draft" in card._state.text()
    assert session.mark("s1", card.criterion.id) is None
    with qtbot.waitSignal(window.desk.changed, timeout=5000):
        qtbot.mouseClick(card.accept, Qt.MouseButton.LeftButton)
    mark = session.mark("s1", card.criterion.id)
    assert mark is not None
    assert mark.by == "T. Teacher"
    assert card.property("kind") == "marked"
    assert "marked by T. Teacher" in card._state.text()
    assert "saved" in window.bar.saved.text()
    with qtbot.waitSignal(window.desk.changed, timeout=5000):
        qtbot.keyClick(window, Qt.Key.Key_Z, Qt.KeyboardModifier.ControlModifier)
    assert session.mark("s1", card.criterion.id) is None
    assert card.property("kind") == "drafted"


def test_accept_all_and_the_class_knows(qtbot: QtBot, window: Window, session: Session) -> None:
    open_learner(window, "s1")
    with qtbot.waitSignal(window.desk.changed, timeout=5000):
        qtbot.mouseClick(window.sheet.margin.accept_all, Qt.MouseButton.LeftButton)
    assert session.progress("s1")[0] == len(session.rubric.criteria)
    row = window.bench.model.rows[window.bench.model.number_of("s1")]
    assert row.finished
    assert not window.sheet.margin.accept_all.isEnabled()


def test_a_level_by_key_is_a_persons_mark(qtbot: QtBot, window: Window, session: Session) -> None:
    open_learner(window, "s1")
    criterion = session.rubric.criteria[0]
    with qtbot.waitSignal(window.desk.changed, timeout=5000):
        qtbot.keyClick(window, Qt.Key.Key_2, Qt.KeyboardModifier.ControlModifier)
    assert session.mark("s1", criterion.id).level == criterion.levels[1].name
    assert window.sheet.margin.cards[0].levels[criterion.levels[1].name].isChecked()


def test_text_is_saved_after_a_pause_and_on_leaving(
    qtbot: QtBot, window: Window, session: Session
) -> None:
    open_learner(window, "s1")
    card = window.sheet.margin.cards[0]
    card.text.setFocus()
    card.text.selectAll()
    with qtbot.waitSignal(window.desk.changed, timeout=5000):
        qtbot.keyClicks(card.text, "Well timed.")
    assert session.feedback("s1", card.criterion.id) == "Well timed."
    qtbot.keyClicks(card.text, " Go on.")
    window.open_learner("s2")  # before the pause is over
    qtbot.waitUntil(
        lambda: session.feedback("s1", card.criterion.id) == "Well timed. Go on.", timeout=5000
    )
    assert session.feedback("s2", card.criterion.id) != "Well timed. Go on."


def test_an_unowned_file_is_given_to_a_learner_and_it_is_remembered(
    qtbot: QtBot, window: Window, session: Session, class_folder: Path
) -> None:
    bench = window.bench
    assert bench.settle.count() == 1
    qtbot.mouseClick(bench.settle_button, Qt.MouseButton.LeftButton)
    assert bench.settle.isVisible()
    nobody = next(b for b in bench.settle.findChildren(QPushButton) if "Nobody" in b.text())
    with qtbot.waitSignal(window.desk.changed, timeout=10_000):
        qtbot.mouseClick(nobody, Qt.MouseButton.LeftButton)
    assert session.value("owner", "", "IMG_0001.jpg") == ""
    qtbot.waitUntil(lambda: bench.settle.count() == 0, timeout=5000)
    assert bench.settle_button.text() == "Set aside: 1"
    assert bench.grid.hasFocus()  # nothing is left to settle
    back = next(b for b in bench.settle.findChildren(QPushButton) if b.text() == "Bring back")
    with qtbot.waitSignal(window.desk.changed, timeout=10_000):
        qtbot.mouseClick(back, Qt.MouseButton.LeftButton)
    assert session.value("owner", "", "IMG_0001.jpg") is None
    qtbot.waitUntil(lambda: bench.settle.count() == 1, timeout=5000)
    with qtbot.waitSignal(window.desk.changed, timeout=10_000):
        qtbot.mouseClick(window.undo_button, Qt.MouseButton.LeftButton)
    qtbot.waitUntil(lambda: bench.settle.aside() == 1, timeout=5000)
    window.close_class()
    with_hers = Session.open(class_folder, "T. Teacher")
    assert with_hers.value("owner", "", "IMG_0001.jpg") == ""
    with_hers.close()


def test_actions_are_found_by_typing(qtbot: QtBot, window: Window) -> None:
    open_learner(window, "s1")
    qtbot.keyClick(window, Qt.Key.Key_F1)
    assert window.deed_list.isVisible()
    qtbot.keyClicks(window.deed_list.search, "back to the class")
    assert window.deed_list.list.count() == 1
    qtbot.keyClick(window.deed_list.search, Qt.Key.Key_Return)
    assert not window.deed_list.isVisible()
    assert window.pages.currentWidget() is window.bench


def test_right_points_of_the_graph_are_drawn(window: Window, session: Session) -> None:
    open_learner(window, "s1")
    drawn = window.sheet.graph.curves.points
    rows = session.analysis("s1").rows
    assert list(drawn[0]) == pytest.approx([row.length_m for row in rows])
    assert list(drawn[1]) == pytest.approx([row.period_squared_s2 for row in rows])
    assert window.sheet.graph.grab().toImage().size().isValid()
