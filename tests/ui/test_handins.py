"""The page of hand-ins: filters, reminders, more time, what changed since it was marked."""

from __future__ import annotations

import datetime as dt
import os
from pathlib import Path

import pytest
from PySide6.QtCore import QDate, Qt
from PySide6.QtGui import QGuiApplication
from PySide6.QtWidgets import QApplication
from pytestqt.qtbot import QtBot

from markbench.session import Session
from markbench.session.hand_ins import HandIn
from markbench.ui import languages
from markbench.ui.handins.letter_words import DE, EN
from markbench.ui.handins.model import DUE, MISSING, NAME, ROW, STANDS
from markbench.ui.handins.page import HandInsPage
from markbench.ui.handins.reminders import AGAIN, EVERYTHING, NAMES, reminders
from markbench.ui.window import Window

# The class of conftest.py, with dates: Aino in time, Bodil three days late and handed in
# twice, Cato's selfie missing; the last day is 16 March 2026.
IN_TIME, LATE = dt.datetime(2026, 3, 10, 18), dt.datetime(2026, 3, 19, 18)
EARLIER = (
    "Length (cm),Time 1 for 10 swings (s),Time 2 for 10 swings (s)\n"
    "20.0,8.95,9.01\n30.0,11.52,10.95\n40.0,12.72,12.66\n"
)


def settle() -> None:
    for _ in range(4):
        QApplication.processEvents()


@pytest.fixture
def class_folder(class_folder: Path) -> Path:
    (class_folder / "Bodil Sample" / "readings draft.csv").write_text(EARLIER, "utf-8")
    for path in class_folder.rglob("*"):
        when = LATE if "Bodil" in str(path) and "draft" not in path.name else IN_TIME
        os.utime(path, (when.timestamp(), when.timestamp()))
    (class_folder / "brief.toml").write_text(
        'title = "Test class"\nrubric = "short"\ncloses = 2026-03-16\n', "utf-8"
    )
    return class_folder


@pytest.fixture
def page(qtbot: QtBot, window: Window) -> HandInsPage:
    qtbot.mouseClick(window.places.buttons["handins"], Qt.MouseButton.LeftButton)
    settle()
    return window.further["handins"]


def shown(page: HandInsPage) -> list[str]:
    return [page.order.index(i, 0).data(ROW).learner for i in range(page.order.rowCount())]


def words(page: HandInsPage, learner: str, column: int) -> str:
    return page.order.index(shown(page).index(learner), column).data()


def test_the_late_one_stands_first_and_says_how_late(page: HandInsPage) -> None:
    assert shown(page)[0] == "s2"
    assert "3 days late" in words(page, "s2", STANDS)
    assert "handed in again" in words(page, "s2", STANDS)
    assert words(page, "s3", MISSING) == "selfie"
    assert "incomplete" in words(page, "s3", STANDS)
    assert words(page, "s1", STANDS) == "✓ in time"


def test_filters_combine_and_say_when_nobody_is_left(qtbot: QtBot, page: HandInsPage) -> None:
    qtbot.mouseClick(page.chips["missing"], Qt.MouseButton.LeftButton)
    assert shown(page) == ["s3"]
    qtbot.mouseClick(page.chips["late"], Qt.MouseButton.LeftButton)
    assert shown(page) == []
    assert "Nobody" in page.shown.text()
    qtbot.mouseClick(page.chips["missing"], Qt.MouseButton.LeftButton)
    assert shown(page) == ["s2"]
    assert page.chips["late"].text().startswith("✓")


def test_columns_sort(page: HandInsPage) -> None:
    page.table.sortByColumn(NAME, Qt.SortOrder.AscendingOrder)
    assert shown(page) == ["s1", "s2", "s3"]
    page.table.sortByColumn(NAME, Qt.SortOrder.DescendingOrder)
    assert shown(page) == ["s3", "s2", "s1"]


def test_enter_opens_the_learner(qtbot: QtBot, window: Window, page: HandInsPage) -> None:
    page.choose({"s3"})
    page.table.setCurrentIndex(page.order.index(shown(page).index("s3"), 0))
    qtbot.keyClick(page.table, Qt.Key.Key_Return)
    assert window.sheet.learner == "s3"
    qtbot.keyClick(window, Qt.Key.Key_Escape)
    assert window.pages.currentWidget() is page


def test_more_time_for_several_is_one_step_that_can_be_undone(
    qtbot: QtBot, window: Window, page: HandInsPage, session: Session
) -> None:
    qtbot.keyClick(page.table, Qt.Key.Key_A, Qt.KeyboardModifier.ControlModifier)
    assert len(page.chosen()) == 3
    page.until.setDate(QDate(2026, 3, 23))
    with qtbot.waitSignal(window.desk.changed, timeout=5000):
        qtbot.mouseClick(page.extend, Qt.MouseButton.LeftButton)
    qtbot.waitUntil(lambda: "extended" in words(page, "s2", DUE), timeout=5000)
    assert session.value("extension", "s1") == "2026-03-23"
    assert "late" not in words(page, "s2", STANDS)
    assert "outside_window" not in {f.check for f in session.findings("s2")}
    with qtbot.waitSignal(window.desk.changed, timeout=5000):
        qtbot.mouseClick(window.undo_button, Qt.MouseButton.LeftButton)
    qtbot.waitUntil(lambda: "3 days late" in words(page, "s2", STANDS), timeout=5000)
    assert session.value("extension", "s1") is None


def test_an_extension_is_taken_back(
    qtbot: QtBot, window: Window, page: HandInsPage, session: Session
) -> None:
    page.choose({"s2"})
    assert not page.take_back.isEnabled()
    with qtbot.waitSignal(window.desk.changed, timeout=5000):
        qtbot.mouseClick(page.extend, Qt.MouseButton.LeftButton)
    qtbot.waitUntil(page.take_back.isEnabled, timeout=5000)
    with qtbot.waitSignal(window.desk.changed, timeout=5000):
        qtbot.mouseClick(page.take_back, Qt.MouseButton.LeftButton)
    assert session.value("extension", "s2") is None


def test_what_changed_stands_side_by_side(qtbot: QtBot, page: HandInsPage) -> None:
    page.choose({"s1"})
    assert page.changes.isHidden()
    page.choose({"s2"})
    qtbot.waitUntil(lambda: not page.changes.table.isHidden(), timeout=5000)
    model = page.changes.model
    table = [[model.index(r, c).data() for c in range(7)] for r in range(model.rowCount())]
    # 20 and 40 cm as before; 30 cm timed again; 50 and 60 cm new.
    assert [row[3] for row in table] == ["=", "≠", "=", "≠", "≠"]
    assert table[1] == ["30.0", "10", "11.52  10.95", "≠", "30.0", "10", "11.02  10.95"]
    assert table[4][0] == "–"
    assert "3 of 5 lengths differ" in page.changes.words.text()
    assert "readings draft.csv" in page.changes.words.text()


def test_a_reminder_is_copied_for_those_it_concerns(
    qtbot: QtBot, window: Window, page: HandInsPage
) -> None:
    page.choose_all()
    page.about.setCurrentIndex(page.about.findData("selfie"))
    text = page.letters.toPlainText()
    assert "Dear Cato Instance," in text
    assert "Aino" not in text
    qtbot.mouseClick(page.copy, Qt.MouseButton.LeftButton)
    assert QGuiApplication.clipboard().text() == text
    page.about.setCurrentIndex(page.about.findData("swing_video"))
    assert page.letters.toPlainText() == ""
    assert not page.copy.isEnabled()
    assert "Nothing" in page.letters.placeholderText()
    page.choose(set())
    assert "Choose learners" in page.letters.placeholderText()


def test_reminders_wait_while_names_are_hidden(
    qtbot: QtBot, window: Window, page: HandInsPage
) -> None:
    page.choose_all()
    assert page.copy.isEnabled()
    with qtbot.waitSignal(window.desk.changed, timeout=5000):
        window.hide_names(True)
    settle()
    page.choose_all()
    assert not page.copy.isEnabled()
    assert "names" in page._note.text()
    assert all("Portfolio" in words(page, learner, NAME) for learner in shown(page))
    page.choose({"s2"})
    qtbot.waitUntil(lambda: not page.changes.table.isHidden(), timeout=5000)
    assert "Bodil" not in page.changes.words.text() + page.changes.heading.text()


# --- letters -----------------------------------------------------------------------------

TODAY = dt.date(2026, 3, 14)


def row(**changes: object) -> HandIn:
    usual = {
        "learner": "s1", "handed_in": IN_TIME, "due": dt.date(2026, 3, 16), "days_late": 0,
        "extended_to": None, "missing": (), "again": (), "replaced": 0, "since_marked": "",
    }  # fmt: skip
    return HandIn(**{**usual, **changes})


def test_a_letter_is_neutral_and_names_the_day() -> None:
    asked = row(missing=("swing_video",))
    (text,) = [reminders([("Aino Example", asked)], EVERYTHING, "Timing a pendulum", TODAY)]
    assert text.startswith("Dear Aino Example,\n\nThank you for your work on")
    assert "I have not found the video of the swings." in text
    assert "hand it in by 16 March 2026?" in text
    for word in ("must", "failed", "late", "immediately", "!"):
        assert word not in text


def test_a_day_that_has_passed_is_not_named() -> None:
    asked = row(missing=("swing_video",))
    text = reminders([("A", asked)], EVERYTHING, "T", dt.date(2026, 3, 17))
    assert "2026" not in text


def test_nothing_yet_and_several_pieces() -> None:
    asked = row(handed_in=None, missing=("readings", "setup_photo", "swing_video"))
    text = reminders([("A", asked)], EVERYTHING, "T", TODAY)
    assert "Nothing has reached me yet" in text
    assert "your table of readings, the photo of your set-up and the video of the swings" in text
    assert "hand them in" in text
    assert "If you have sent them already, tell me the names of the files" in text
    assert "hank you" not in text


def test_again_asks_for_what_could_not_be_used() -> None:
    rows = [("A", row(again=("swing_video",))), ("B", row(missing=("selfie",)))]
    text = reminders(rows, AGAIN, "T", TODAY)
    assert "I could not make use of the video of the swings." in text
    assert "Dear B" not in text
    both = reminders(rows, EVERYTHING, "T", TODAY)
    first, line, second = (part.strip() for part in both.partition("—" * 12))
    assert first.startswith("Dear A,")
    assert line
    assert second.startswith("Dear B,")
    assert "If you have sent it already" in first


def test_what_does_not_open_is_asked_for_by_its_name_as_something_handed_in() -> None:
    asked = row(again=("readings",), unopened=(("readings", "oskar.xlsx"),))
    for about in (AGAIN, EVERYTHING, "readings"):
        text = reminders([("Oskar Dahl", asked)], about, "T", TODAY)
        assert "I could not open oskar.xlsx. Could you hand it in again" in text
        assert "not found" not in text
        assert "make use" not in text
    assert reminders([("Oskar Dahl", asked)], "selfie", "T", TODAY) == ""


def test_a_file_that_does_not_open_is_told_in_the_row(
    qtbot: QtBot, class_folder: Path, empty_window: Window
) -> None:
    for path in (class_folder / "Cato Instance").glob("*.csv"):
        path.unlink()
    (class_folder / "Cato Instance" / "readings.xlsx").write_bytes(b"PK\3\4 and no more")
    empty_window.open_folder(class_folder)
    qtbot.waitUntil(lambda: empty_window.bench is not None, timeout=10_000)
    qtbot.mouseClick(empty_window.places.buttons["handins"], Qt.MouseButton.LeftButton)
    settle()
    page = empty_window.further["handins"]
    assert "does not open: readings" in words(page, "s3", STANDS)
    assert words(page, "s3", MISSING) == "selfie"
    qtbot.mouseClick(page.chips["wanted"], Qt.MouseButton.LeftButton)
    assert shown(page) == ["s3"]


def test_names_make_a_list() -> None:
    rows = [("A", row(missing=("selfie", "readings"))), ("B", row()), ("C", row(again=("report",)))]
    assert reminders(rows, NAMES, "T", TODAY).splitlines() == [
        "A: selfie, table of readings",
        "C: report",
    ]


def test_letters_follow_the_feedback_and_not_the_window(qapp: QApplication) -> None:
    asked = [("Ida Mohn", row(missing=("selfie", "report"), again=("swing_video",)))]
    installed = languages.install(qapp, "de")
    try:
        english = reminders(asked, EVERYTHING, "Timing a pendulum", TODAY, "en")
        names = reminders(asked, NAMES, "Timing a pendulum", TODAY, "en")
    finally:
        for translator in installed:
            qapp.removeTranslator(translator)
    german = reminders(asked, EVERYTHING, "Pendel", TODAY, "de")
    assert english.startswith("Dear Ida Mohn,\n\nThank you for your work")
    assert names == "Ida Mohn: Selfie, Bericht, Video"
    assert german.startswith("Hallo Ida Mohn,\n\ndanke für deine Arbeit zu „Pendel“.")
    assert "das Foto von dir mit deinem Aufbau und deinen Bericht" in german
    assert "bis zum 16. März 2026" in german
    assert reminders(asked, EVERYTHING, "T", TODAY, "is").startswith("Dear Ida Mohn")


def test_every_language_of_letters_names_every_piece() -> None:
    for words in (EN, DE):
        assert set(words.pieces) == {"readings", "setup_photo", "selfie", "swing_video", "report"}


def test_the_page_holds_at_twice_the_size(window: Window, page: HandInsPage) -> None:
    window._theme.set_scale(2.0)
    settle()
    try:
        assert window.width() <= 1280
        for control in (page.copy, page.extend, *page.chips.values()):
            assert control.width() >= control.fontMetrics().horizontalAdvance(control.text())
    finally:
        window._theme.set_scale(1.0)
