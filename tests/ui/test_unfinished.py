"""What is typed in the brief or the rubric and not saved: never thrown away unasked."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QApplication, QLineEdit, QMessageBox
from pytestqt.qtbot import QtBot

from markbench.intake.brief_file import read_brief
from markbench.ui import unfinished
from markbench.ui.newclass.brief_page import BriefPage
from markbench.ui.places import OVERVIEW
from markbench.ui.rubrics.page import RubricPage
from markbench.ui.unfinished import Pending
from markbench.ui.window import Window

LEFT = Qt.MouseButton.LeftButton
BUTTONS = QMessageBox.StandardButton
Ask = Callable[[QMessageBox.StandardButton], list[str]]


def typed(qtbot: QtBot, field: QLineEdit, text: str) -> None:
    field.setFocus()
    field.selectAll()
    qtbot.keyClicks(field, text)


@pytest.fixture
def lengths(qtbot: QtBot, window: Window) -> BriefPage:
    """The brief with another number of lengths typed in it."""
    window.activateWindow()
    window.doors.open_brief()
    page = window.doors.page
    assert isinstance(page, BriefPage)
    typed(qtbot, page.form.fields["lengths"].line, "9")
    return page


@pytest.fixture
def titled(qtbot: QtBot, window: Window) -> RubricPage:
    """The rubric with another title typed in it."""
    window.activateWindow()
    window.doors.open_rubric()
    page = window.doors.page
    assert isinstance(page, RubricPage)
    typed(qtbot, page.title.field, "Our own")
    return page


@pytest.fixture
def ask(window: Window, monkeypatch: pytest.MonkeyPatch) -> Ask:
    """Answer what is asked; returns what was asked about."""

    def answer(button: QMessageBox.StandardButton) -> list[str]:
        asked: list[str] = []
        monkeypatch.setattr(unfinished, "_ask", lambda _owner, name: asked.append(name) or button)
        monkeypatch.setattr(
            window.pending, "may_let_go", Pending.may_let_go.__get__(window.pending)
        )
        return asked

    return answer


def test_settings_typed_outlive_another_place(
    qtbot: QtBot, window: Window, lengths: BriefPage, class_folder: Path
) -> None:
    before = (class_folder / "brief.toml").read_bytes()
    qtbot.mouseClick(window.places.buttons[OVERVIEW], LEFT)
    assert window.pages.currentWidget() is window.further[OVERVIEW]
    back = window.pending.buttons["brief"]
    assert back.isVisible()
    assert (class_folder / "brief.toml").read_bytes() == before
    qtbot.mouseClick(back, LEFT)
    page = window.doors.page
    assert isinstance(page, BriefPage)
    assert page is not lengths
    assert page.form.fields["lengths"].line.text() == "9"
    assert list(page.form.typed()) == ["lengths"]
    qtbot.mouseClick(page.save, LEFT)
    qtbot.waitUntil(lambda: window.doors.page is None and window.desk is not None, timeout=10_000)
    assert read_brief(class_folder / "brief.toml")[0].lengths == 9
    assert not back.isVisible()


def test_escape_leaves_the_field_and_then_the_page(
    qtbot: QtBot, window: Window, lengths: BriefPage
) -> None:
    field = lengths.form.fields["lengths"]
    qtbot.keyClick(field.line, Qt.Key.Key_Escape)
    assert window.pages.currentWidget() is lengths
    assert QApplication.focusWidget() is field
    qtbot.keyClick(field, Qt.Key.Key_Tab)
    assert field.line.hasFocus()
    qtbot.keyClick(field.line, Qt.Key.Key_Escape)
    qtbot.keyClick(field, Qt.Key.Key_Escape)
    assert window.pages.currentWidget() is window.bench
    assert window.pending.buttons["brief"].isVisible()


def test_a_page_left_without_a_change_is_not_unfinished(window: Window) -> None:
    for open_page in (window.doors.open_brief, window.doors.open_rubric):
        open_page()
        window.show_class()
    assert not any(one.isVisible() for one in window.pending.buttons.values())


def test_a_rubric_in_the_making_outlives_another_place_with_its_undo(
    qtbot: QtBot, window: Window, titled: RubricPage
) -> None:
    before = titled._saved
    qtbot.keyClick(titled.title.field, Qt.Key.Key_Escape)
    assert window.pages.currentWidget() is titled
    qtbot.mouseClick(window.places.buttons["class"], LEFT)
    qtbot.mouseClick(window.pending.buttons["rubric"], LEFT)
    page = window.doors.page
    assert isinstance(page, RubricPage)
    assert page.title.field.text() == "Our own"
    qtbot.mouseClick(page.undo, LEFT)
    assert page.sheet.text == before
    window.show_class()
    assert not window.pending.buttons["rubric"].isVisible()


def test_both_are_kept_while_the_other_is_saved(
    qtbot: QtBot, window: Window, titled: RubricPage, class_folder: Path
) -> None:
    window.doors.open_brief()
    page = window.doors.page
    assert isinstance(page, BriefPage)
    typed(qtbot, page.form.fields["lengths"].line, "9")
    old = window.bench
    qtbot.mouseClick(page.save, LEFT)
    qtbot.waitUntil(lambda: window.bench is not None and window.bench is not old, timeout=10_000)
    assert window.pending.buttons["rubric"].isVisible()
    assert not window.pending.buttons["brief"].isVisible()
    window.doors.open_rubric()
    assert window.doors.page.title.field.text() == "Our own"


def test_closing_asks_and_one_may_stay(window: Window, lengths: BriefPage, ask: Ask) -> None:
    window.show_class()
    asked = ask(BUTTONS.Cancel)
    assert not window.close()
    assert asked == ["brief"]
    page = window.doors.page
    assert isinstance(page, BriefPage)  # in sight, to see what one is asked about
    assert page.form.fields["lengths"].line.text() == "9"


def test_closing_saves_where_one_says_so(
    window: Window, lengths: BriefPage, ask: Ask, class_folder: Path
) -> None:
    ask(BUTTONS.Save)
    assert window.let_go()
    assert read_brief(class_folder / "brief.toml")[0].lengths == 9
    assert window.pages.currentWidget() is window.start
    assert not window.pending.buttons["brief"].isVisible()


def test_closing_lets_go_where_one_says_so(
    window: Window, titled: RubricPage, ask: Ask, class_folder: Path
) -> None:
    asked = ask(BUTTONS.Discard)
    assert window.let_go()
    assert asked == ["rubric"]
    assert not (class_folder / "our_short.toml").exists()
    assert window.pending.of("rubric") is None


def test_what_is_wrong_cannot_be_saved_on_closing(
    qtbot: QtBot, window: Window, lengths: BriefPage, ask: Ask
) -> None:
    typed(qtbot, lengths.form.fields["closes"].line, "soon")
    ask(BUTTONS.Save)
    assert not window.let_go()
    assert window.desk is not None
    assert lengths.form.fields["closes"].line.hasFocus()
    assert "1 setting" in lengths.trouble.text() or "One setting" in lengths.trouble.text()


def test_a_refused_save_keeps_what_was_typed(
    qtbot: QtBot, window: Window, lengths: BriefPage, class_folder: Path
) -> None:
    (class_folder / "brief.toml").write_text("lengths = = 3")
    qtbot.mouseClick(lengths.save, LEFT)
    qtbot.waitUntil(lambda: "not a readable brief" in lengths.trouble.text(), timeout=5000)
    window.show_class()
    assert window.pending.of("brief") == {"lengths": "9"}


def test_settings_discarded_can_be_brought_back(qtbot: QtBot, lengths: BriefPage) -> None:
    line = lengths.form.fields["lengths"].line
    qtbot.mouseClick(lengths.discard, LEFT)
    assert line.text() == "5"
    assert not lengths.save.isEnabled()
    qtbot.mouseClick(lengths.discard, LEFT)
    assert line.text() == "9"
    assert lengths.save.isEnabled()
