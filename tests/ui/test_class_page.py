"""The class at a glance: orders, filters together, lists to copy, and what news changes."""

from __future__ import annotations

import dataclasses
import datetime as dt
import os
from pathlib import Path

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QApplication, QWidget
from pytestqt.qtbot import QtBot

from markbench.model import Source
from markbench.session import Session
from markbench.session.evidence import Seen
from markbench.ui.window import Window

CTRL = Qt.KeyboardModifier.ControlModifier


def shown(window: Window) -> list[str]:
    return window.bench.order.learners()


def sort_by(window: Window, by: str) -> list[str]:
    window.bench.sorts.setCurrentIndex(window.bench.sorts.findData(by))
    return shown(window)


@pytest.fixture
def handed_in_apart(class_folder: Path) -> None:
    """Cato was first, then Aino, then Bodil: every file of each on a day of its own."""
    for name, day in (("Cato Instance", 3), ("Aino Example", 5), ("Bodil Sample", 9)):
        at = dt.datetime(2026, 3, day, 12, 0).timestamp()
        for path in (class_folder / name).iterdir():
            os.utime(path, (at, at))


def test_order_by_time_of_hand_in(handed_in_apart: None, window: Window) -> None:
    assert sort_by(window, "handed_in") == ["s3", "s1", "s2"]


def test_order_by_mark_puts_the_highest_first_and_follows_marks_at_the_next_sorting(
    qtbot: QtBot, window: Window, session: Session
) -> None:
    worst = session.rubric.criteria[0].levels[-1].name
    with qtbot.waitSignal(window.desk.changed, timeout=5000):
        window.desk.do(lambda held: held.accept("s1"))
    with qtbot.waitSignal(window.desk.changed, timeout=5000):
        window.desk.do(lambda held: held.set_level("s1", session.rubric.criteria[0].id, worst))
    marks = {row.id: row.total or row.drafted for row in window.bench.model.rows}
    order = sort_by(window, "mark")
    assert [marks[i] for i in order] == sorted(marks.values(), reverse=True)
    assert order[-1] == "s1"


def test_numbers_in_names_count_as_numbers(
    qtbot: QtBot, empty_window: Window, class_folder: Path
) -> None:
    roll = "id,name\n" + "".join(f"n{n},Group {n}\n" for n in (10, 2, 1))
    (class_folder / "class_list.csv").write_text(roll, encoding="utf-8")
    empty_window.open_folder(class_folder)
    qtbot.waitUntil(lambda: empty_window.sheet is not None, timeout=10_000)
    assert sort_by(empty_window, "name") == ["n1", "n2", "n10"]


def test_filters_hold_together(qtbot: QtBot, window: Window) -> None:
    bench = window.bench
    qtbot.mouseClick(bench.chips["questioned"], Qt.MouseButton.LeftButton)
    questioned = set(shown(window))
    assert "s2" in questioned  # a timing a whole swing too long
    qtbot.mouseClick(bench.chips["unmarked"], Qt.MouseButton.LeftButton)
    assert set(shown(window)) == questioned
    with qtbot.waitSignal(window.desk.changed, timeout=5000):
        window.desk.do(lambda session: session.accept("s2"))
    bench.search.setText("o")  # anything looks again
    assert set(shown(window)) == questioned - {"s2"}
    bench.show_everybody()
    assert set(shown(window)) == {"s1", "s2", "s3"}


def test_a_list_of_what_is_missing_for_the_chosen_ones(
    qtbot: QtBot, class_folder: Path, empty_window: Window
) -> None:
    for name in ("Aino Example", "Cato Instance"):
        (class_folder / name / "swing video.mp4").unlink()
    empty_window.open_folder(class_folder)
    qtbot.waitUntil(lambda: empty_window.sheet is not None, timeout=10_000)
    window = empty_window
    sort_by(window, "name")
    grid = window.bench.grid
    grid.setCurrentIndex(window.bench.order.index(0, 0))
    qtbot.keyClick(grid, Qt.Key.Key_Down, Qt.KeyboardModifier.ShiftModifier)
    qtbot.keyClick(grid, Qt.Key.Key_A, CTRL)
    assert len(grid.chosen()) == 3
    qtbot.keyClick(window, Qt.Key.Key_C, CTRL | Qt.KeyboardModifier.ShiftModifier)
    lines = QApplication.clipboard().text().splitlines()
    assert [line.partition(":")[0] for line in lines] == ["Aino Example", "Cato Instance"]
    assert all("video" in line for line in lines)


def test_the_axes_follow_a_corrected_reading(
    qtbot: QtBot, window: Window, session: Session
) -> None:
    before = window.bench.model.axes
    note = window.bench.foot.legend.axes.text()
    source: Source = session.portfolio("s1").table.readings[-1].source
    with qtbot.waitSignal(window.desk.changed, timeout=10_000):
        window.desk.do(lambda held: held.correct("s1", source, "95.0"))
    after = window.bench.model.axes
    assert after.longest_m > before.longest_m
    assert window.bench.foot.legend.axes.text() != note
    assert dataclasses.replace(after, slope=before.slope) != before


def test_news_of_the_films_keeps_the_chosen_and_says_nothing_was_saved(
    qtbot: QtBot, window: Window
) -> None:
    grid = window.bench.grid
    grid.setCurrentIndex(window.bench.order.index(2, 0))
    chosen = grid.chosen()
    with qtbot.waitSignal(window.desk.changed, timeout=10_000):
        window.desk.do(lambda session: session.see(Seen()))
    assert grid.chosen() == chosen
    assert window.bar.saved.text() == ""
    with qtbot.waitSignal(window.desk.changed, timeout=5000):
        window.desk.do(lambda session: session.set_note("s1", "tall stand"))
    assert "saved" in window.bar.saved.text()


def test_the_bar_holds_everything_at_twice_the_text_size(qtbot: QtBot, window: Window) -> None:
    theme = window._theme
    try:
        theme.set_scale(2.0)
        with qtbot.waitSignal(window.desk.changed, timeout=5000):
            window.desk.do(lambda session: session.set_note("s1", "tall stand"))
        QApplication.processEvents()
        window.resize(1280, 800)
        QApplication.processEvents()
        assert window.width() <= 1280
        parts: list[QWidget] = [*window.places.buttons.values(), window.places.blind]
        parts += [window.bar.saved, window.undo_button, window.redo_button]
        for part in parts:
            assert part.width() >= part.sizeHint().width(), part.accessibleName()
            right = part.mapTo(window.bar, part.rect().topRight()).x()
            assert right <= window.bar.width()
    finally:
        theme.set_scale(1.0)
