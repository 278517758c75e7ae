"""Brief and rubric as saved in the window, taken back and done again by its own keys."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QFileDialog, QLabel
from pytestqt.qtbot import QtBot

from markbench.intake.brief_file import read_brief
from markbench.rubric.loading import SHIPPED
from markbench.ui.newclass.brief_page import BriefPage
from markbench.ui.newclass.page import RUBRIC, NewClassPage
from markbench.ui.places import MODERATION
from markbench.ui.rubrics.page import RubricPage
from markbench.ui.window import Window

LEFT = Qt.MouseButton.LeftButton
CONTROL = Qt.KeyboardModifier.ControlModifier
SHIFT = Qt.KeyboardModifier.ShiftModifier
Press = Callable[[], None]


@pytest.fixture
def undo(qtbot: QtBot, empty_window: Window) -> Press:
    """Ctrl+Z, and every page made anew for it."""
    return lambda: renewed(qtbot, empty_window, CONTROL)


@pytest.fixture
def redo(qtbot: QtBot, empty_window: Window) -> Press:
    return lambda: renewed(qtbot, empty_window, CONTROL | SHIFT)


def renewed(qtbot: QtBot, window: Window, keys: Qt.KeyboardModifier) -> None:
    old = window.bench
    qtbot.keyClick(window.pages.currentWidget(), Qt.Key.Key_Z, keys)
    qtbot.waitUntil(lambda: window.bench is not None and window.bench is not old, timeout=10_000)


def save_brief(qtbot: QtBot, window: Window, key: str, text: str) -> None:
    window.doors.open_brief()
    page = window.doors.page
    assert isinstance(page, BriefPage)
    line = page.form.fields[key].line
    line.selectAll()
    qtbot.keyClicks(line, text)
    old = window.bench
    qtbot.mouseClick(page.save, LEFT)
    qtbot.waitUntil(lambda: window.bench is not None and window.bench is not old, timeout=10_000)


def titles(window: Window) -> list[str]:
    """The criteria that the learner's sheet shows."""
    assert window.sheet is not None
    return [card.criterion.title for card in window.sheet.margin.cards]


def test_a_brief_saved_by_the_form_is_taken_back_done_again_and_kept(
    qtbot: QtBot, window: Window, class_folder: Path, undo: Press, redo: Press
) -> None:
    brief = class_folder / "brief.toml"
    before = brief.read_bytes()
    first = window.desk.session.rubric.criteria[0].id
    draft = window.desk.session.draft("s1", first)
    save_brief(qtbot, window, "lengths", "9")
    after = brief.read_bytes()
    assert read_brief(brief)[0].lengths == 9
    undo()
    assert brief.read_bytes() == before
    assert window.desk.session.draft("s1", first) == draft
    assert "brief.toml" in window.bar.trouble.text()
    window.doors.open_brief()
    assert window.doors.page.form.fields["lengths"].line.text() == "5"
    window.doors.leave()
    redo()
    assert brief.read_bytes() == after
    assert window.desk.session.brief.lengths == 9
    window.close_class()
    window.open_folder(class_folder)
    qtbot.waitUntil(lambda: window.bench is not None, timeout=10_000)
    assert window.desk.session.brief.lengths == 9
    assert window.undo_button.isEnabled()
    undo()
    assert brief.read_bytes() == before


def test_undo_goes_back_over_a_saved_brief_to_what_was_said_before(
    qtbot: QtBot, window: Window, class_folder: Path, undo: Press
) -> None:
    window.open_learner("s1")
    qtbot.mouseClick(window.sheet.margin.accept_all, LEFT)
    qtbot.waitUntil(lambda: bool(window.desk.session.marks("s1")), timeout=5000)
    save_brief(qtbot, window, "title", "Other")
    undo()
    qtbot.keyClick(window.pages.currentWidget(), Qt.Key.Key_Z, CONTROL)
    qtbot.waitUntil(lambda: not window.desk.session.marks("s1"), timeout=5000)


def test_a_rubric_saved_in_the_editor_is_taken_back_where_one_stands(
    qtbot: QtBot, window: Window, class_folder: Path, undo: Press, redo: Press
) -> None:
    window.open_learner("s2")
    before = titles(window)
    window.doors.open_rubric()
    page = window.doors.page
    assert isinstance(page, RubricPage)
    field = page.form.entries["title"].field
    field.selectAll()
    qtbot.keyClicks(field, "Told otherwise")
    old = window.bench
    qtbot.mouseClick(page.save, LEFT)
    qtbot.waitUntil(lambda: window.bench is not None and window.bench is not old, timeout=10_000)
    window.open_learner("s2")
    assert titles(window) == ["Told otherwise", *before[1:]]
    undo()
    assert window.pages.currentWidget() is window.sheet
    assert window.sheet.learner == "s2"
    assert titles(window) == before
    assert not (class_folder / "our_short.toml").exists()
    assert read_brief(class_folder / "brief.toml")[0].rubric == "short"
    redo()
    assert titles(window) == ["Told otherwise", *before[1:]]
    assert (SHIPPED / "short.toml").is_file()


def test_another_rubric_for_the_class_is_taken_back(
    qtbot: QtBot,
    window: Window,
    class_folder: Path,
    monkeypatch: pytest.MonkeyPatch,
    undo: Press,
    redo: Press,
) -> None:
    monkeypatch.setattr(QFileDialog, "getExistingDirectory", lambda *_: str(class_folder))
    window.doors.choose_folder()
    page = window.doors.page
    assert isinstance(page, NewClassPage)
    qtbot.waitUntil(lambda: page.new is not None, timeout=10_000)
    page.go(RUBRIC)
    qtbot.mouseClick(page.rubrics.buttons["full_report"], LEFT)
    qtbot.mouseClick(page.next, LEFT)
    qtbot.waitUntil(lambda: window.bench is not None, timeout=10_000)
    assert window.desk.session.rubric.id == "full_report"
    undo()
    assert window.desk.session.rubric.id == "short"
    redo()
    assert window.desk.session.rubric.id == "full_report"


def test_grade_boundaries_kept_in_the_brief_are_taken_back_on_their_page(
    qtbot: QtBot, window: Window, class_folder: Path, undo: Press
) -> None:
    save_brief(qtbot, window, "grades", "A = 8, B = 5")
    window.show_place(MODERATION)
    page = window.further[MODERATION]
    page.boundaries.fields["A"].setValue(9)
    old = window.bench
    qtbot.mouseClick(page.boundaries.keep, LEFT)
    qtbot.waitUntil(lambda: window.bench is not None and window.bench is not old, timeout=10_000)
    assert window.pages.currentWidget() is window.further[MODERATION]
    assert dict(window.desk.session.brief.grade_boundaries)["A"] == 9
    undo()
    assert window.pages.currentWidget() is window.further[MODERATION]
    assert window.further[MODERATION].boundaries.fields["A"].value() == 8


def test_a_brief_changed_by_another_hand_is_left_alone_with_a_sentence(
    qtbot: QtBot, window: Window, class_folder: Path
) -> None:
    save_brief(qtbot, window, "lengths", "9")
    (class_folder / "brief.toml").write_text("lengths = 7\n")
    qtbot.keyClick(window.pages.currentWidget(), Qt.Key.Key_Z, CONTROL)
    qtbot.waitUntil(lambda: "changed outside" in window.bar.trouble.text(), timeout=5000)
    assert (class_folder / "brief.toml").read_text() == "lengths = 7\n"
    qtbot.waitUntil(lambda: not window.undo_button.isEnabled(), timeout=5000)


def test_names_stay_hidden_while_pages_are_made_anew(
    qtbot: QtBot, window: Window, undo: Press
) -> None:
    save_brief(qtbot, window, "lengths", "9")
    window.turn_blind()
    qtbot.waitUntil(lambda: window.desk.blind, timeout=5000)
    save_brief(qtbot, window, "lengths", "8")
    undo()
    assert window.desk.blind
    names = [one.name for one in window.desk.session.learners]
    assert not any("Aino" in name for name in names)
    window.open_learner("s1")
    shown = " ".join(one.text() for one in window.findChildren(QLabel) if one.isVisible())
    assert "Aino" not in shown


def test_what_was_typed_a_moment_ago_is_the_first_to_be_taken_back(
    qtbot: QtBot, window: Window
) -> None:
    window.open_learner("s1")
    margin, session = window.sheet.margin, window.desk.session
    qtbot.mouseClick(margin.accept_all, LEFT)
    qtbot.waitUntil(window.undo_button.isEnabled, timeout=5000)
    marks = session.marks("s1")
    margin.note.setPlainText("was ill")
    qtbot.mouseClick(window.undo_button, LEFT)
    qtbot.waitUntil(lambda: [d.value for d in session.history("s1")][-1] is None, timeout=5000)
    assert session.history("s1")[-2].value == "was ill"
    assert session.marks("s1") == marks
