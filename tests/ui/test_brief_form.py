"""The form of the brief: days, shares, slips at both ends, doubts, and the way back."""

from __future__ import annotations

from pathlib import Path

import pytest
from PySide6.QtCore import QDate, Qt
from PySide6.QtWidgets import QAbstractItemView, QLineEdit
from pytestqt.qtbot import QtBot

from markbench.intake.brief_file import read_brief
from markbench.ui.look.theme import Theme
from markbench.ui.newclass.brief_form import BriefForm
from markbench.ui.newclass.brief_page import BriefPage
from markbench.ui.newclass.editors import DayEditor
from markbench.ui.newclass.field import Field
from markbench.ui.window import Window

LEFT = Qt.MouseButton.LeftButton


@pytest.fixture
def page(window: Window) -> BriefPage:
    window.activateWindow()
    window.doors.open_brief()
    made = window.doors.page
    assert isinstance(made, BriefPage)
    return made


@pytest.fixture
def form(page: BriefPage) -> BriefForm:
    return page.form


def typed(qtbot: QtBot, field: QLineEdit, text: str) -> None:
    field.setFocus()
    field.selectAll()
    qtbot.keyClicks(field, text)


def told(form: BriefForm, key: str) -> str:
    return form.fields[key].told.text()


def test_every_setting_says_what_it_means_for_the_class(form: BriefForm) -> None:
    assert [key for key in form.fields if not told(form, key)] == []


def test_the_first_setting_has_the_keyboard(form: BriefForm) -> None:
    assert form.fields["title"].line.hasFocus()


@pytest.mark.parametrize("text", ["2026-03-31", "31.3.2026", "31. 3. 2026", "31 Mar 2026"])
def test_a_day_is_typed_in_several_ways_and_written_in_one(
    qtbot: QtBot, form: BriefForm, text: str
) -> None:
    line = form.fields["closes"].line
    typed(qtbot, line, text)
    qtbot.keyClick(line, Qt.Key.Key_Tab)
    assert line.text() == "31 Mar 2026"
    assert form.fields["closes"].raw() == "2026-03-31"


def test_a_day_is_picked_from_the_calendar(qtbot: QtBot, form: BriefForm) -> None:
    editor = form.fields["closes"].editor
    assert isinstance(editor, DayEditor)
    qtbot.mouseClick(editor.pick, LEFT)
    editor.calendar.setSelectedDate(QDate(2026, 3, 31))
    qtbot.keyClick(editor.calendar.findChild(QAbstractItemView), Qt.Key.Key_Return)
    assert editor.line.text() == "31 Mar 2026"
    assert editor.line.hasFocus()
    qtbot.keyClick(editor.line, Qt.Key.Key_Z, Qt.KeyboardModifier.ControlModifier)
    assert editor.line.text() == ""


def test_a_contradiction_is_told_at_both_settings_and_nothing_is_worked_out(
    qtbot: QtBot, form: BriefForm
) -> None:
    typed(qtbot, form.fields["opens"].line, "2026-04-01")
    typed(qtbot, form.fields["closes"].line, "2026-03-31")
    form.judge()
    assert told(form, "opens") == "Not after the last day."
    assert told(form, "closes") == "Not before the first day."
    assert told(form, "late.marks_per_day") == ""
    typed(qtbot, form.fields["longest_m"].line, "0.01")
    form.judge()
    assert told(form, "longest_m") == "More than the shortest length."
    assert told(form, "shortest_m") == "Less than the longest length."


def test_no_slip_is_told_in_the_language_of_the_file(qtbot: QtBot, form: BriefForm) -> None:
    for key, field in form.fields.items():
        if field.line is None or key in (
            "title",
            *(k for k in form.fields if k.startswith("words")),
        ):
            continue
        field.line.setText("§§§")
    form.judge()
    assert len(form.troubles) > 15
    for sentence in form.troubles.values():
        assert "brief.toml" not in sentence
        assert "_" not in sentence
        assert "used" not in sentence


def test_what_is_likely_a_slip_is_doubted_and_can_be_saved(
    qtbot: QtBot, page: BriefPage, form: BriefForm
) -> None:
    typed(qtbot, form.fields["partners"].line, "s1 & 99")
    typed(qtbot, form.fields["grades"].line, "A = 160, B = 5")
    form.judge()
    assert told(form, "partners").endswith(": 99.")
    assert told(form, "grades").endswith("of the rubric: A.")
    assert form.troubles == {}
    assert page.save.isEnabled()


def test_an_empty_title_is_told(qtbot: QtBot, form: BriefForm) -> None:
    form.fields["title"].line.clear()
    form.judge()
    assert list(form.troubles) == ["title"]


def test_what_was_changed_is_seen_and_goes_back_to_the_usual(qtbot: QtBot, form: BriefForm) -> None:
    field = form.fields["tolerances.g_fraction"]
    assert field.usual.isHidden()
    typed(qtbot, field.line, "7")
    assert field._name.text().startswith("●")
    assert "5 %" in field.usual.text()
    assert field.usual.isVisible()
    qtbot.mouseClick(field.usual, LEFT)
    assert field.line.text() == "5 %"
    assert field.usual.isHidden()
    assert not field.unsaved
    ticks = form.fields["evidence"]
    ticks.ticks["report"].setChecked(True)
    assert "swing video" in ticks.usual.text()
    qtbot.mouseClick(ticks.usual, LEFT)
    assert not ticks.ticks["report"].isChecked()


def test_a_number_left_out_is_the_usual_one(qtbot: QtBot, form: BriefForm) -> None:
    line = form.fields["lengths"].line
    line.clear()
    form.judge()
    assert line.placeholderText() == "5"
    assert form.brief.lengths == 5
    assert not form.fields["lengths"].unsaved


def test_the_feedback_speaks_a_language_there_is(
    qtbot: QtBot, window: Window, page: BriefPage, class_folder: Path
) -> None:
    box = page.form.fields["feedback_language"].editor.box
    assert [box.itemData(i) for i in range(box.count())] == ["en", "de"]
    qtbot.keyClick(box, Qt.Key.Key_Down)
    old = window.bench
    qtbot.mouseClick(page.save, LEFT)
    qtbot.waitUntil(lambda: window.bench is not None and window.bench is not old, timeout=10_000)
    assert read_brief(class_folder / "brief.toml")[0].feedback_language == "de"


def test_another_language_in_the_file_stays_and_is_told(window: Window, class_folder: Path) -> None:
    with (class_folder / "brief.toml").open("a") as file:
        file.write('feedback_language = "fr"\n')
    window.doors.open_brief()
    field = window.doors.page.form.fields["feedback_language"]
    assert field.raw() == "fr"
    assert "English goes out" in field.told.text()


def test_what_is_given_out_says_that_changes_are_not_in_it(qtbot: QtBot, page: BriefPage) -> None:
    assert "without" not in page.given.text()
    typed(qtbot, page.form.fields["lengths"].line, "9")
    assert "without your unsaved changes" in page.given.text()


def test_a_field_takes_the_room_that_its_name_leaves(qtbot: QtBot, theme: Theme) -> None:
    field = Field("title", "Title", theme)
    qtbot.addWidget(field)
    field.show()
    for width, wide in ((700, range(330, 500)), (1100, range(262, 263))):
        field.resize(width, 80)
        qtbot.waitUntil(lambda wide=wide: field.editor.width() in wide, timeout=2000)
