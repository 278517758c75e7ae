"""F5: files that came while the class is open are taken up, and nothing typed is lost."""

from __future__ import annotations

from pathlib import Path

import pytest
from PySide6.QtCore import Qt
from pytestqt.qtbot import QtBot
from small_class import PLAIN, photo, table

from markbench.session import Session
from markbench.ui.window import Window


def told(window: Window, words: str) -> bool:
    return words in window.bar.trouble.text()


def test_a_file_that_came_meanwhile_is_taken_up_on_the_sheet(
    qtbot: QtBot, window: Window, session: Session, class_folder: Path
) -> None:
    window.open_learner("s3")
    page = window.sheet
    page.margin.note.setFocus()
    qtbot.keyClicks(page.margin.note, "Ring home about the thread")
    photo(class_folder / "Cato Instance" / "selfie.png", "#a0e0a0")
    other = {**PLAIN, 20: ("8.90", "9.01")}
    (class_folder / "Cato Instance" / "readings.csv").write_text(table(other), encoding="utf-8")
    qtbot.keyClick(page, Qt.Key.Key_F5)
    qtbot.waitUntil(lambda: told(window, "1 new file, 1 changed (Cato Instance)"), timeout=10_000)
    assert window.sheet is page
    assert page.margin.note.toPlainText() == "Ring home about the thread"
    assert session.value("note", "s3") == "Ring home about the thread"
    assert session.portfolio("s3").of_kind("selfie")
    assert session.portfolio("s3").table.readings[0].timings[0].time_s == pytest.approx(8.90)
    shown = page.readings.index(0, 2).data()
    assert shown == "8.90"
    qtbot.keyClick(page, Qt.Key.Key_F5)
    qtbot.waitUntil(lambda: told(window, "nothing new"), timeout=10_000)
    assert window.bar.saved.text() == "" or "saved" in window.bar.saved.text()


def test_a_new_learner_or_another_brief_makes_the_pages_anew(
    qtbot: QtBot, window: Window, class_folder: Path
) -> None:
    window.open_learner("s2")
    with (class_folder / "class_list.csv").open("a", encoding="utf-8") as file:
        file.write("s4,Doro Figment\n")
    qtbot.keyClick(window.sheet, Qt.Key.Key_F5)
    qtbot.waitUntil(lambda: told(window, "class list changed"), timeout=10_000)
    assert [row.id for row in window.bench.model.rows] == ["s1", "s2", "s3", "s4"]
    assert window.pages.currentWidget() is window.sheet
    assert window.sheet.learner == "s2"


@pytest.mark.parametrize("place", ["class", "across", "contact", "overview", "handins"])
def test_it_is_offered_on_every_page_of_the_class(qtbot: QtBot, window: Window, place: str) -> None:
    window.show_place(place)
    qtbot.keyClick(window.pages.currentWidget(), Qt.Key.Key_F5)
    qtbot.waitUntil(lambda: told(window, "nothing new"), timeout=10_000)
    assert window.pages.currentWidget() is (window.further.get(place) or window.bench)


def test_a_folder_out_of_reach_is_told_and_nothing_is_lost(
    qtbot: QtBot, window: Window, session: Session, class_folder: Path, tmp_path: Path
) -> None:
    class_folder.rename(tmp_path / "elsewhere")
    qtbot.keyClick(window.bench, Qt.Key.Key_F5)
    qtbot.waitUntil(lambda: told(window, "There is no class folder"), timeout=10_000)
    assert len(session.learners) == 3
