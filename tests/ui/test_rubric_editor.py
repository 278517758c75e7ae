"""Writing a rubric by hand: slips told at their place, facts offered, the class previewed."""

from __future__ import annotations

from pathlib import Path

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QAbstractButton, QCheckBox, QLineEdit
from pytestqt.qtbot import QtBot

from markbench.rubric.loading import SHIPPED
from markbench.session.rubric_preview import Shift
from markbench.ui.rubrics.completion import ConditionEdit
from markbench.ui.rubrics.page import RubricPage
from markbench.ui.rubrics.wrapped import Wrapped
from markbench.ui.window import Window

LEFT = Qt.MouseButton.LeftButton


@pytest.fixture
def page(qtbot: QtBot, window: Window) -> RubricPage:
    window.doors.open_rubric()
    made = window.doors.page
    assert isinstance(made, RubricPage)
    qtbot.waitUntil(lambda: made._found is not None, timeout=5000)
    return made


def typed(qtbot: QtBot, field: QLineEdit, text: str) -> None:
    field.setFocus()
    field.selectAll()
    qtbot.keyClicks(field, text)


def test_a_slip_is_told_under_its_field_and_holds_saving(qtbot: QtBot, page: RubricPage) -> None:
    entry = page.form.entries["level 1.when"]
    typed(qtbot, entry.field, "lenths >= 3")
    qtbot.waitUntil(lambda: "did you mean “lengths”" in entry.told, timeout=2000)
    assert not page.save.isEnabled()
    assert page.list.item(0).text().startswith("▲")
    assert "did you mean" in entry.field.accessibleDescription()
    typed(qtbot, entry.field, "lengths >= 3")
    qtbot.waitUntil(page.save.isEnabled, timeout=2000)
    assert not page.list.item(0).text().startswith("▲")


def test_facts_are_offered_and_explained_while_typing(qtbot: QtBot, page: RubricPage) -> None:
    entry = page.form.entries["level 1.when"]
    field = entry.field
    assert isinstance(field, ConditionEdit)
    typed(qtbot, field, "timings_few")
    popup = field.completer_.popup()
    assert popup.isVisible()
    qtbot.keyClick(popup, Qt.Key.Key_Down)
    qtbot.keyClick(popup, Qt.Key.Key_Return)
    assert field.text() == "timings_fewest"
    qtbot.waitUntil(lambda: "timings_fewest (number" in entry.told, timeout=2000)


def test_facts_to_quote_are_offered_after_a_brace(qtbot: QtBot, page: RubricPage) -> None:
    field = page.form.phrase_field(1)
    field.setFocus()
    field.clear()
    qtbot.keyClicks(field, "From {shortest_per")
    popup = field.completer_.popup()
    assert popup.isVisible()
    qtbot.keyClick(popup, Qt.Key.Key_Down)
    qtbot.keyClick(popup, Qt.Key.Key_Return)
    assert field.toPlainText() == "From {shortest_period}"


def test_the_class_is_previewed_before_and_after(qtbot: QtBot, page: RubricPage) -> None:
    rows = {name: (before, after) for name, before, after in page.preview.ladder.rows}
    assert rows["Complete"] == (3, 3)
    assert "Nobody" in page.preview.changes.text()
    typed(qtbot, page.form.entries["level 1.when"].field, "lengths >= 50")
    qtbot.waitUntil(lambda: ("Complete", 3, 0) in page.preview.ladder.rows, timeout=5000)
    assert "Complete → Nearly complete (3): Aino Example, " in page.preview.changes.text()
    assert "3" in page.preview.ladder.accessibleDescription()


def test_a_learners_sentences_are_shown(qtbot: QtBot, page: RubricPage) -> None:
    field = page.form.phrase_field(1)
    field.setPlainText("All of your {lengths} lengths are there.")
    qtbot.waitUntil(
        lambda: "All of your 5 lengths are there." in page.preview.sentences.text(), timeout=5000
    )


def test_it_is_saved_for_this_class_and_used(
    qtbot: QtBot, window: Window, page: RubricPage, class_folder: Path
) -> None:
    shipped = (SHIPPED / "short.toml").read_bytes()
    typed(qtbot, page.title.field, "Our own")
    typed(qtbot, page.form.entries["level 1.when"].field, "lengths >= 50")
    qtbot.waitUntil(lambda: ("Complete", 3, 0) in page.preview.ladder.rows, timeout=5000)
    old = window.desk
    qtbot.mouseClick(page.save, LEFT)
    qtbot.waitUntil(lambda: window.desk is not None and window.desk is not old, timeout=10_000)
    session = window.desk.session
    assert session.rubric.title == "Our own"
    assert session.draft("s1", "readings").level == "Nearly complete"
    text = (class_folder / "our_short.toml").read_text("utf-8")
    assert "# Facts and placeholders: FACTS.md beside this file." in text
    assert (SHIPPED / "short.toml").read_bytes() == shipped


def test_a_bad_name_is_told(qtbot: QtBot, page: RubricPage, class_folder: Path) -> None:
    typed(qtbot, page.name, "brief")
    qtbot.mouseClick(page.save, LEFT)
    qtbot.waitUntil(lambda: "brief.toml is the brief" in page.trouble.text(), timeout=5000)
    assert 'title = "Test class"' in (class_folder / "brief.toml").read_text()


def test_criteria_come_and_go_and_levels_move(qtbot: QtBot, page: RubricPage) -> None:
    count = page.list.count()
    page._add()
    assert page.list.count() == count + 1
    assert page.form.entries["title"].field.hasFocus()
    typed(qtbot, page.form.entries["title"].field, "Diary")
    qtbot.waitUntil(lambda: page.list.item(count).text() == "Diary", timeout=2000)
    page._move(-1)
    assert page.list.item(count - 1).text() == "Diary"
    page._remove()
    assert page.list.count() == count
    page.list.setCurrentRow(0)
    page.form._move("level", 0, 1)
    qtbot.waitUntil(
        lambda: page.form.entries["level 1.name"].field.text() == "Nearly complete", timeout=2000
    )
    qtbot.waitUntil(lambda: "not below" in page.form.entries["level 2.marks"].told, timeout=2000)


def test_a_criterion_for_the_eye_has_no_conditions(qtbot: QtBot, page: RubricPage) -> None:
    box = page.form.eye
    assert isinstance(box, QCheckBox)
    box.setFocus()
    qtbot.keyClick(box, Qt.Key.Key_Space)
    qtbot.waitUntil(lambda: "level 1.when" not in page.form.entries, timeout=2000)
    qtbot.waitUntil(lambda: page.told == (), timeout=2000)
    assert page.rubric.criteria[0].by_eye


def test_leaving_writes_nothing(
    qtbot: QtBot, window: Window, page: RubricPage, class_folder: Path
) -> None:
    before = {p.name for p in class_folder.iterdir()}
    typed(qtbot, page.title.field, "Never kept")
    page.left.emit()
    assert window.pages.currentWidget() is window.bench
    assert {p.name for p in class_folder.iterdir()} - before <= {"class.markbench"}


def said(page: RubricPage, words: str) -> QAbstractButton:
    return next(b for b in page.findChildren(QAbstractButton) if b.accessibleName() == words)


def test_whatever_was_changed_is_taken_back_and_done_again(qtbot: QtBot, page: RubricPage) -> None:
    before = page.sheet.text
    titles = [page.list.item(i).text() for i in range(page.list.count())]
    assert not page.undo.isEnabled()
    typed(qtbot, page.title.field, "Ours")
    qtbot.waitUntil(page.undo.isEnabled, timeout=2000)
    qtbot.mouseClick(said(page, "Take the criterion away"), LEFT)
    qtbot.waitUntil(lambda: page.list.count() == len(titles) - 1, timeout=2000)
    qtbot.mouseClick(said(page, "Take level 1 away"), LEFT)
    qtbot.waitUntil(lambda: len(page._history.past) == 3, timeout=2000)
    after = page.sheet.text
    page.list.setFocus()
    for _ in range(3):
        qtbot.keyClick(page.list, Qt.Key.Key_Z, Qt.KeyboardModifier.ControlModifier)
    assert page.sheet.text == before
    assert [page.list.item(i).text() for i in range(page.list.count())] == titles
    assert page.title.field.text() == page.sheet.title != "Ours"
    assert not page.undo.isEnabled()
    page.list.setFocus()
    for _ in range(3):
        qtbot.keyClick(page.list, Qt.Key.Key_Y, Qt.KeyboardModifier.ControlModifier)
    assert page.sheet.text == after
    assert not page.redo.isEnabled()


def test_what_python_says_of_a_slip_is_not_passed_on(qtbot: QtBot, page: RubricPage) -> None:
    entry = page.form.entries["level 1.when"]
    typed(qtbot, entry.field, "(lengths >= 3")
    want = "This condition cannot be read: a bracket is not closed"
    qtbot.waitUntil(lambda: entry.told == want, timeout=2000)


def test_the_last_preview_stays_while_the_rubric_is_wrong(qtbot: QtBot, page: RubricPage) -> None:
    rows = page.preview.ladder.rows
    typed(qtbot, page.form.entries["level 1.when"].field, "lengths >=")
    qtbot.waitUntil(page.preview.stale.isVisible, timeout=2000)
    assert page.preview.ladder.rows == rows
    assert page.preview.ladder.stale
    typed(qtbot, page.form.entries["level 1.when"].field, "lengths >= 50")
    qtbot.waitUntil(lambda: ("Complete", 3, 0) in page.preview.ladder.rows, timeout=5000)
    assert not page.preview.stale.isVisible()


def test_of_many_who_change_a_few_are_named_and_all_on_demand(
    qtbot: QtBot, page: RubricPage
) -> None:
    panel = page.preview
    panel._shifts = [Shift(f"Learner {n}", "Full", "Part") for n in range(5)]
    panel._show_changes()
    assert panel.changes.text() == "Full → Part (5): Learner 0, Learner 1, Learner 2 and 2 more"
    qtbot.mouseClick(panel.names, LEFT)
    assert panel.changes.text().endswith("Learner 3, Learner 4")
    qtbot.mouseClick(panel.names, LEFT)
    assert "and 2 more" in panel.changes.text()


def test_the_name_of_a_rubric_that_comes_along_is_told(
    qtbot: QtBot, page: RubricPage, class_folder: Path
) -> None:
    assert page.name_told.isHidden()
    typed(qtbot, page.name, "short")
    assert "comes along" in page.name_told.text()
    assert page.name_told.isVisible()
    (class_folder / "ours.toml").write_text("")
    typed(qtbot, page.name, "ours")
    assert "The class folder has" in page.name_told.text()
    typed(qtbot, page.name, "quite_new")
    assert page.name_told.isHidden()


def test_texts_of_a_level_wrap_and_are_whole(qtbot: QtBot, page: RubricPage) -> None:
    long = page.form.entries["level 2.when"].field
    assert long.document().size().height() > 1
    assert long.height() > page.form.entries["level 3.when"].field.height()
    for key in ("name", "descriptor", "when"):
        field = page.form.entries[f"level 2.{key}"].field
        assert isinstance(field, Wrapped)
        field.setFocus()
        field.selectAll()
        qtbot.keyClicks(field, "x")
        before = field.height()
        qtbot.keyClicks(field, " lengths >= 3 and" * 20)
        qtbot.keyClick(field, Qt.Key.Key_Return)
        assert "\n" not in field.text()
        assert field.height() > 2 * before
        assert field.document().size().height() * field.fontMetrics().height() <= field.height()


def test_criteria_stand_apart_in_the_list(qtbot: QtBot, page: RubricPage) -> None:
    typed(qtbot, page.form.entries["title"].field, "A title of very many words " * 4)
    qtbot.waitUntil(
        lambda: page.list.sizeHintForRow(0) > 2 * page.list.sizeHintForRow(2), timeout=2000
    )
