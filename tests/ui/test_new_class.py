"""From an empty start to a class that can be marked, with mouse and keys."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest
from openpyxl import load_workbook
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QApplication, QFileDialog, QLabel, QPushButton, QWidget
from pytestqt.qtbot import QtBot

from markbench.intake.brief_file import read_brief
from markbench.intake.brief_rules import ALLOWED
from markbench.intake.tables import read_readings
from markbench.ui.newclass.brief_page import BriefPage
from markbench.ui.newclass.page import BRIEF, FOUND, RUBRIC, WHOSE, NewClassPage
from markbench.ui.window import Window

LEFT = Qt.MouseButton.LeftButton
Click = Callable[[QWidget], None]


@pytest.fixture
def click(qtbot: QtBot) -> Click:
    return lambda widget: qtbot.mouseClick(widget, LEFT)


@pytest.fixture
def page(
    qtbot: QtBot,
    empty_window: Window,
    class_folder: Path,
    monkeypatch: pytest.MonkeyPatch,
    click: Click,
    asked: list[str],
) -> NewClassPage:
    """The new class's page after a folder was chosen, by hand."""
    monkeypatch.setattr(QFileDialog, "getExistingDirectory", lambda *_: str(class_folder))
    click(empty_window.start.new)
    made = empty_window.doors.page
    assert isinstance(made, NewClassPage)
    qtbot.waitUntil(lambda: made.new is not None, timeout=10_000)
    return made


@pytest.fixture
def asked(monkeypatch: pytest.MonkeyPatch) -> list[str]:
    """Every question before leaving; it is answered with yes unless "keep" is put first."""
    questions: list[str] = []

    def answer(_owner: QWidget, question: str, _more: str, **_words: str) -> bool:
        questions.append(question)
        return questions[0] != "keep"

    monkeypatch.setattr("markbench.ui.newclass.page.may_lose", answer)
    return questions


def everything(folder: Path) -> dict[str, bytes]:
    return {str(p.relative_to(folder)): p.read_bytes() for p in folder.rglob("*") if p.is_file()}


def test_the_whole_way_with_four_presses(
    qtbot: QtBot, empty_window: Window, page: NewClassPage, class_folder: Path, click: Click
) -> None:
    before = everything(class_folder)
    for number in (FOUND, WHOSE, BRIEF, RUBRIC):
        assert page.steps.currentIndex() == number
        click(page.next)
    qtbot.waitUntil(lambda: empty_window.bench is not None, timeout=10_000)
    after = everything(class_folder)
    assert {name for name, data in before.items() if after[name] != data} <= {"brief.toml"}
    assert empty_window.desk.session.rubric.id == "short"


def test_the_whole_way_by_keys(
    qtbot: QtBot, empty_window: Window, class_folder: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    window = empty_window
    monkeypatch.setattr(QFileDialog, "getExistingDirectory", lambda *_: str(class_folder))
    qtbot.keyClick(window, Qt.Key.Key_N, Qt.KeyboardModifier.ControlModifier)
    page = window.doors.page
    assert isinstance(page, NewClassPage)
    qtbot.waitUntil(lambda: page.new is not None, timeout=10_000)
    for number in (FOUND, WHOSE):
        assert page.steps.currentIndex() == number
        qtbot.keyClick(QApplication.focusWidget(), Qt.Key.Key_Return)
    for number in (BRIEF, RUBRIC):
        assert page.steps.currentIndex() == number
        here = QApplication.focusWidget()
        qtbot.keyClick(here, Qt.Key.Key_Return, Qt.KeyboardModifier.ControlModifier)
    qtbot.waitUntil(lambda: window.bench is not None, timeout=10_000)


def test_what_was_found_is_counted(page: NewClassPage) -> None:
    numbers = [one.accessibleName() for one in page.found.numbers.findChildren(QLabel)]
    assert "3 learners" in numbers
    assert "3 tables of readings understood" in numbers
    assert "1 file that fits nobody" in numbers
    assert "2 of 3 learners" in page.found.roll.accessibleDescription()


def test_a_file_is_settled_and_reaches_the_open_class(
    qtbot: QtBot, empty_window: Window, page: NewClassPage, click: Click
) -> None:
    click(page.next)
    nobody = next(b for b in page.whose.findChildren(QPushButton) if "Nobody" in b.text())
    click(nobody)
    qtbot.waitUntil(lambda: "Nothing is left to settle" in page._lead.text(), timeout=10_000)
    assert page.whose.count() == 0
    assert page.next.hasFocus()
    page.go(RUBRIC)
    click(page.next)
    qtbot.waitUntil(lambda: empty_window.bench is not None, timeout=10_000)
    assert empty_window.desk.session.value("owner", "", "IMG_0001.jpg") == ""
    assert empty_window.bench.settle.count() == 0


def test_every_setting_of_the_brief_can_be_set(page: NewClassPage) -> None:
    assert set(page.form.fields) == set(ALLOWED) - {"rubric"}
    for key, field in page.form.fields.items():
        editors = [field.line] if field.line is not None else list(field.ticks.values())
        for editor in editors:
            assert editor.accessibleName(), key
            assert ALLOWED[key].about in editor.accessibleDescription()


def test_a_slip_is_told_beside_the_setting_and_holds_the_step(
    qtbot: QtBot, page: NewClassPage, click: Click
) -> None:
    page.go(BRIEF)
    field = page.form.fields["lengths"]
    field.line.selectAll()
    qtbot.keyClicks(field.line, "1")
    qtbot.waitUntil(lambda: "whole number from 2 to 50" in field.told.text(), timeout=2000)
    click(page.next)
    assert page.steps.currentIndex() == BRIEF
    assert field.line.hasFocus()
    field.line.selectAll()
    qtbot.keyClicks(field.line, "6")
    qtbot.waitUntil(lambda: "0 of the 3 tables have 6" in field.told.text(), timeout=2000)
    click(page.next)
    assert page.steps.currentIndex() == RUBRIC


def test_local_g_follows_the_latitude(qtbot: QtBot, page: NewClassPage) -> None:
    page.go(BRIEF)
    qtbot.keyClicks(page.form.fields["place.latitude_deg"].line, "45")
    qtbot.keyClicks(page.form.fields["place.height_m"].line, "0")
    told = page.form.fields["place.latitude_deg"].told
    # Normal gravity at 45° and sea level is 9.80620 m/s² (WGS 84, NIMA TR8350.2).
    qtbot.waitUntil(lambda: "9.806" in told.text(), timeout=2000)


def test_another_rubric_is_chosen_and_used(
    qtbot: QtBot, empty_window: Window, page: NewClassPage, class_folder: Path, click: Click
) -> None:
    page.go(RUBRIC)
    click(page.rubrics.buttons["full_report"])
    click(page.next)
    qtbot.waitUntil(lambda: empty_window.bench is not None, timeout=10_000)
    assert empty_window.desk.session.rubric.id == "full_report"
    assert 'rubric = "full_report"' in (class_folder / "brief.toml").read_text()


def test_giving_up_leaves_the_folder_as_it_was(
    empty_window: Window, page: NewClassPage, class_folder: Path, click: Click, asked: list[str]
) -> None:
    before = everything(class_folder)
    page.go(BRIEF)
    page.form.fields["title"].line.setText("Other")
    click(page.give_up)
    assert asked == ["Give up this new class?"]
    assert everything(class_folder) == before
    assert empty_window.pages.currentWidget() is empty_window.start
    assert empty_window.doors.page is None


def test_a_folder_that_cannot_be_read_is_explained(
    qtbot: QtBot, empty_window: Window, tmp_path: Path
) -> None:
    empty_window.doors.look_at(tmp_path / "nowhere")
    page = empty_window.doors.page
    qtbot.waitUntil(lambda: "nowhere" in page._lead.text(), timeout=5000)
    assert not page.next.isEnabled()
    assert page.give_up.isEnabled()


def test_escape_in_a_field_asks_before_anything_is_lost(
    qtbot: QtBot, empty_window: Window, page: NewClassPage, asked: list[str]
) -> None:
    page.go(BRIEF)
    line = page.form.fields["lengths"].line
    line.selectAll()
    qtbot.keyClicks(line, "7")
    asked.append("keep")
    qtbot.keyClick(line, Qt.Key.Key_Escape)
    assert asked == ["keep"]  # first it only leaves the field
    assert not line.hasFocus()
    for leave in (
        lambda: qtbot.keyClick(QApplication.focusWidget(), Qt.Key.Key_Escape),
        empty_window.care.open_about,
        empty_window.close,
    ):
        leave()
        assert empty_window.doors.page is page
        assert empty_window.isVisible()
        assert line.text() == "7"
    assert asked == ["keep", *["Give up this new class?"] * 3]
    asked.clear()
    qtbot.keyClick(QApplication.focusWidget(), Qt.Key.Key_Escape)
    assert empty_window.pages.currentWidget() is empty_window.start


def test_nothing_is_asked_where_nothing_would_be_lost(
    qtbot: QtBot, empty_window: Window, page: NewClassPage, asked: list[str]
) -> None:
    page.go(BRIEF)
    for _ in range(2):  # out of the field, off the page
        qtbot.keyClick(QApplication.focusWidget(), Qt.Key.Key_Escape)
    assert empty_window.doors.page is None
    assert asked == []


def test_what_was_settled_is_undone_and_done_again_from_the_bar_and_by_key(
    qtbot: QtBot, empty_window: Window, page: NewClassPage, click: Click, asked: list[str]
) -> None:
    window = empty_window
    assert not window.undo_button.isEnabled()
    page.go(WHOSE)
    nobody = next(b for b in page.whose.findChildren(QPushButton) if "Nobody" in b.text())
    with qtbot.waitSignal(page.settled, timeout=10_000):
        click(nobody)
    assert page.new.counts().set_aside == 1
    with qtbot.waitSignal(page.settled, timeout=10_000):
        click(window.undo_button)
    assert page.whose.count() == 1
    assert not window.undo_button.isEnabled()
    with qtbot.waitSignal(page.settled, timeout=10_000):
        click(window.redo_button)
    assert page.whose.count() == 0
    page.go(RUBRIC)
    with qtbot.waitSignal(page.settled, timeout=10_000):
        qtbot.keyClick(window, Qt.Key.Key_Z, Qt.KeyboardModifier.ControlModifier)
    assert page.steps.currentIndex() == WHOSE  # what was undone is in sight
    assert page.whose.count() == 1
    with qtbot.waitSignal(page.settled, timeout=10_000):
        qtbot.keyClick(window, Qt.Key.Key_Y, Qt.KeyboardModifier.ControlModifier)
    click(page.give_up)
    assert asked == ["Give up this new class?"]
    assert not window.undo_button.isEnabled()


def test_the_brief_of_an_open_class_is_changed_and_all_is_drafted_again(
    qtbot: QtBot, window: Window, class_folder: Path, click: Click
) -> None:
    before = window.desk.session.draft("s1", window.desk.session.rubric.criteria[0].id)
    window.doors.open_brief()
    page = window.doors.page
    assert isinstance(page, BriefPage)
    line = page.form.fields["lengths"].line
    line.selectAll()
    qtbot.keyClicks(line, "9")
    old = window.desk
    click(page.save)
    qtbot.waitUntil(lambda: window.desk is not None and window.desk is not old, timeout=10_000)
    assert read_brief(class_folder / "brief.toml")[0].lengths == 9
    after = window.desk.session.draft("s1", window.desk.session.rubric.criteria[0].id)
    assert after.marks < before.marks
    assert window.doors.page is None


def test_handouts_are_written_where_the_teacher_says_and_the_sheet_is_opened_to_be_printed(
    window: Window, tmp_path: Path, monkeypatch: pytest.MonkeyPatch, opened: list[str]
) -> None:
    for name, write in (
        ("t.xlsx", window.doors.give_template), ("t.html", window.doors.give_task_sheet),
    ):  # fmt: skip
        to = tmp_path / name
        monkeypatch.setattr(QFileDialog, "getSaveFileName", lambda *_, to=to: (str(to), ""))
        write()
        assert to.stat().st_size > 1000
        assert name in window.bar.trouble.text()
    assert opened == [str(tmp_path / "t.html")]


def test_what_learners_are_given_is_at_hand_on_the_brief(
    window: Window, tmp_path: Path, monkeypatch: pytest.MonkeyPatch, click: Click
) -> None:
    window.doors.open_brief()
    page = window.doors.page
    assert isinstance(page, BriefPage)
    for control, name in ((page.table, "given.xlsx"), (page.sheet, "given.html")):
        to = tmp_path / name
        monkeypatch.setattr(QFileDialog, "getSaveFileName", lambda *_, to=to: (str(to), ""))
        click(control)
        assert to.stat().st_size > 1000
        assert name in window.bar.trouble.text()
    # Filled as a learner would, the table comes back without a question.
    book = load_workbook(tmp_path / "given.xlsx")
    cells = book.active
    for number, length in enumerate((20, 30, 40, 50, 60)):
        for column, value in ((1, length), (3, 8.97 + number), (4, 9.01 + number)):
            cells.cell(5 + number, column).value = value
    book.save(tmp_path / "given.xlsx")
    data = (tmp_path / "given.xlsx").read_bytes()
    read = read_readings("given.xlsx", data, window.desk.session.brief, "s1")
    assert read.findings == ()
    assert [one.length_m for one in read.table.readings] == pytest.approx([0.2, 0.3, 0.4, 0.5, 0.6])
    assert [len(one.timings) for one in read.table.readings] == [2] * 5
