"""What was found in a new class's folder: whose it is and why, and what is wrong with it."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest
from PySide6.QtCore import QPoint, Qt
from PySide6.QtWidgets import QApplication, QFileDialog, QLabel, QPushButton, QWidget
from pytestqt.qtbot import QtBot

from markbench.intake.brief_file import read_brief
from markbench.model import Brief
from markbench.ui.newclass.brief_page import BriefPage
from markbench.ui.newclass.page import FOUND, RUBRIC, WHOSE, NewClassPage
from markbench.ui.window import Window

LEFT = Qt.MouseButton.LeftButton
Look = Callable[[Path], NewClassPage]


@pytest.fixture(autouse=True)
def no_question(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("markbench.ui.newclass.page.may_lose", lambda *_a, **_k: True)


@pytest.fixture
def look(qtbot: QtBot, empty_window: Window) -> Look:
    """Look at a folder as a new class."""

    def at(folder: Path) -> NewClassPage:
        empty_window.doors.look_at(folder)
        page = empty_window.doors.page
        assert isinstance(page, NewClassPage)
        qtbot.waitUntil(lambda: page.new is not None, timeout=10_000)
        return page

    return at


def words(part: QWidget) -> str:
    return "\n".join(one.text() for one in part.findChildren(QLabel) if one.isVisible())


def choose(qtbot: QtBot, page: NewClassPage, number: int) -> None:
    """Click a learner in the list."""
    roll = page.found.roll
    box = roll.visualRect(roll.model().index(number, 0))
    qtbot.mouseClick(roll.viewport(), LEFT, pos=box.topLeft() + QPoint(20, box.height() // 2))


def test_a_learner_is_chosen_and_the_files_are_listed_with_why(
    qtbot: QtBot, look: Look, class_folder: Path
) -> None:
    page = look(class_folder)
    choose(qtbot, page, 1)
    told = words(page.found.files)
    assert "Bodil Sample/readings.csv" in told
    assert "by its folder" in told
    assert "Bodil Sample/swing video.mp4" in told
    assert "Aino" not in told
    qtbot.keyClick(page.found.roll, Qt.Key.Key_Up)
    qtbot.waitUntil(lambda: "Aino Example/readings.csv" in words(page.found.files), timeout=2000)
    qtbot.mouseClick(page.found.files.back, LEFT)
    assert not page.found.files.isVisible()
    assert page.found.numbers.isVisible()
    assert page.found.roll.hasFocus()


def test_what_is_not_hers_goes_to_the_files_to_settle_and_can_be_undone(
    qtbot: QtBot, look: Look, class_folder: Path, empty_window: Window
) -> None:
    page = look(class_folder)
    choose(qtbot, page, 0)
    file = "Aino Example/selfie.png"
    with qtbot.waitSignal(page.settled, timeout=10_000):
        qtbot.mouseClick(page.found.files.others[file], LEFT)
    assert page.found.roll.learner == "s1"  # she stays chosen
    assert file not in page.found.files.others
    assert QApplication.focusWidget() is not None
    page.go(WHOSE)
    assert page.whose.count() == 2
    assert "You said that it is not from Aino Example." in words(page.whose)
    with qtbot.waitSignal(page.settled, timeout=10_000):
        qtbot.mouseClick(empty_window.undo_button, LEFT)
    assert page.whose.count() == 1


def test_what_does_not_open_and_what_fits_nobody_are_listed_by_name(
    qtbot: QtBot, look: Look, class_folder: Path
) -> None:
    (class_folder / "Cato Instance" / "readings.csv").unlink()
    (class_folder / "Cato Instance" / "readings.xlsx").write_bytes(b"PK\3\4 and no more")
    page = look(class_folder)
    damaged = "Cato Instance/readings.xlsx  (Cato Instance)"
    qtbot.waitUntil(lambda: damaged in words(page.found), timeout=2000)
    assert "IMG_0001.jpg" in words(page.found)
    numbers = [one.accessibleName() for one in page.found.numbers.findChildren(QLabel)]
    assert "2 of 3 tables of readings understood" in numbers
    item = page.found.roll.model().index(2, 0)
    assert "not there: table" in item.data(Qt.ItemDataRole.AccessibleTextRole)
    choose(qtbot, page, 2)
    assert "could not be opened" in words(page.found.files)
    choose(qtbot, page, 1)
    qtbot.mouseClick(page.found.files.back, LEFT)
    say = next(b for b in page.found.findChildren(QPushButton) if b.text() == "Say whose it is")
    qtbot.mouseClick(say, LEFT)
    assert page.steps.currentIndex() == WHOSE


def test_an_unreadable_brief_is_put_aside_and_the_class_is_begun(
    qtbot: QtBot, look: Look, class_folder: Path, empty_window: Window
) -> None:
    (class_folder / "brief.toml").write_text("lengths = = 3\n")
    page = look(class_folder)
    assert page.found.brief.isVisible()
    assert "not a readable brief" in words(page.found.brief)
    page.go(RUBRIC)
    qtbot.mouseClick(page.next, LEFT)
    # Led to where it is decided, with the keyboard on it.
    assert page.steps.currentIndex() == FOUND
    assert "brief.toml" in page.trouble.text()
    assert page.found.brief.aside.hasFocus()
    qtbot.keyClick(page.found.brief.aside, Qt.Key.Key_Return)
    assert "“brief (unreadable).toml”" in words(page.found.brief)
    assert page.trouble.text() == ""
    assert (class_folder / "brief.toml").read_text() == "lengths = = 3\n"  # not before the end
    page.go(RUBRIC)
    qtbot.mouseClick(page.next, LEFT)
    qtbot.waitUntil(lambda: empty_window.bench is not None, timeout=10_000)
    assert (class_folder / "brief (unreadable).toml").read_text() == "lengths = = 3\n"
    assert read_brief(class_folder / "brief.toml")[1] == ()


def test_an_unreadable_brief_of_an_open_class_is_put_aside_when_it_is_saved(
    qtbot: QtBot, class_folder: Path, empty_window: Window
) -> None:
    (class_folder / "brief.toml").write_text("lengths = = 3\n")
    window = empty_window
    window.open_folder(class_folder)
    qtbot.waitUntil(lambda: window.bench is not None and window.sheet is not None, timeout=10_000)
    window.doors.open_brief()
    page = window.doors.page
    assert isinstance(page, BriefPage)
    assert "Put it aside" in page.save.text()
    old = window.bench
    qtbot.mouseClick(page.save, LEFT)
    qtbot.waitUntil(lambda: window.bench not in (None, old), timeout=10_000)
    assert read_brief(class_folder / "brief.toml") == (Brief(), ())
    assert (class_folder / "brief (unreadable).toml").read_text() == "lengths = = 3\n"


def test_an_empty_folder_is_not_begun_and_says_what_a_class_folder_looks_like(
    qtbot: QtBot, look: Look, tmp_path: Path, class_folder: Path, empty_window: Window,
    monkeypatch: pytest.MonkeyPatch,
) -> None:  # fmt: skip
    empty = tmp_path / "empty"
    empty.mkdir()
    page = look(empty)
    assert "No work was found" in words(page.found.no_work)
    assert "a folder or a zip file for each learner" in words(page.found.no_work)
    assert not page.next.isEnabled()
    assert not page.names[RUBRIC].isEnabled()
    assert page.found.no_work.another.hasFocus()
    # Something was put there meanwhile.
    (empty / "Aino Example").mkdir()
    (empty / "Aino Example" / "readings.csv").write_text("Length (cm),t1 (s)\n20,8.95\n30,11.02\n")
    qtbot.mouseClick(page.found.no_work.look, LEFT)
    qtbot.waitUntil(page.next.isEnabled, timeout=10_000)
    assert not page.found.no_work.isVisible()
    # Or another folder is chosen.
    for path in (empty / "Aino Example").iterdir():
        path.unlink()
    page = look(empty)
    monkeypatch.setattr(QFileDialog, "getExistingDirectory", lambda *_: str(class_folder))
    qtbot.keyClick(page.found.no_work.another, Qt.Key.Key_Return)
    qtbot.waitUntil(lambda: empty_window.doors.page is not page, timeout=10_000)
    other = empty_window.doors.page
    assert isinstance(other, NewClassPage)
    qtbot.waitUntil(lambda: other.new is not None, timeout=10_000)
    assert other.next.isEnabled()


def test_a_class_whose_last_learner_was_called_nobodys_cannot_be_begun(
    qtbot: QtBot, look: Look, tmp_path: Path
) -> None:
    folder = tmp_path / "papers"
    folder.mkdir()
    (folder / "tax.csv").write_text("a,b\nx,y\n")
    page = look(folder)
    assert "of use" in words(page.found.no_work)  # but it could be somebody's
    assert page.next.isEnabled()
    with qtbot.waitSignal(page.settled, timeout=10_000):
        page.desk.do(lambda new: new.settle_owner("tax.csv", ""))
    page.go(WHOSE)
    assert not page.next.isEnabled()
    back = next(b for b in page.whose.findChildren(QPushButton) if b.text() == "Bring back")
    with qtbot.waitSignal(page.settled, timeout=10_000):
        qtbot.mouseClick(back, LEFT)
    assert page.next.isEnabled()
