"""The sheet has room for its words at twice the text, and shows no frame with nothing in it."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QFontMetrics
from PySide6.QtWidgets import QApplication
from pytestqt.qtbot import QtBot

from markbench.session import Session
from markbench.ui.look.theme import Theme
from markbench.ui.portfolio.curves import curves
from markbench.ui.window import Window


@pytest.fixture
def twice(window: Window) -> Iterator[Window]:
    window._theme.set_scale(2.0)
    window.resize(1280, 800)
    window.open_learner("s2")
    for _ in range(4):
        QApplication.processEvents()
    yield window
    window._theme.set_scale(1.0)


def test_no_heading_of_the_readings_is_cut_at_twice_the_text(twice: Window) -> None:
    table = twice.sheet.table
    header, model = table.horizontalHeader(), table.model()
    metrics = QFontMetrics(twice._theme.font("small"))
    padding = 2 * twice._theme.px(4)
    for column in range(model.columnCount()):
        words = model.headerData(column, Qt.Orientation.Horizontal)
        assert header.sectionSize(column) >= metrics.horizontalAdvance(words) + padding
    assert header.height() >= metrics.height() + padding
    # Nothing has to be scrolled for, but where the cards beside it would be cut.
    margin = twice.sheet.margin
    unscrolled = header.length() <= table.viewport().width()
    assert unscrolled or margin.width() <= margin.needed_width


def test_the_margin_keeps_what_its_cards_need_at_twice_the_text(twice: Window) -> None:
    margin = twice.sheet.margin
    inside = margin._scroll.widget()
    assert inside.width() <= margin._scroll.viewport().width()
    for part in (margin._total, margin._state):
        assert margin.rect().contains(part.geometry())
    assert not margin._total.geometry().intersects(margin._state.geometry())


def test_units_are_written_one_way(window: Window, session: Session) -> None:
    window.open_learner("s1")
    model = window.sheet.table.model()
    last = model.headerData(model.columnCount() - 1, Qt.Orientation.Horizontal)
    assert last == "g / (m/s²)"


def test_columns_fill_the_table_and_focus_moves_nothing(qtbot: QtBot, window: Window) -> None:
    window.activateWindow()
    window.open_learner("s2")
    table = window.sheet.table
    window.sheet.findings.rows[0].setFocus()
    QApplication.processEvents()
    for wide in range(1280, 1296, 3):
        window.resize(wide, 800)
        QApplication.processEvents()
        assert table.horizontalHeader().length() == table.viewport().width()
    before = table.viewport().geometry()
    table.setFocus()
    QApplication.processEvents()
    assert table.viewport().geometry() == before  # a frame that grows is drawn twice


def test_where_nothing_was_read_there_is_a_sentence_and_no_empty_frame(
    qtbot: QtBot, window: Window, session: Session, class_folder: Path
) -> None:
    (class_folder / "Aino Example" / "readings.csv").unlink()
    window.open_folder(class_folder)
    qtbot.waitUntil(
        lambda: window.desk is not None and window.desk.session is not session, timeout=10_000
    )
    qtbot.waitUntil(lambda: window.sheet is not None, timeout=10_000)
    window.open_learner("s1")
    QApplication.processEvents()
    sheet = window.sheet
    assert sheet.graph._none.isVisible()
    for part in (sheet.graph.plot, sheet.graph.save, sheet.explanations):
        assert not part.isVisible()
    window.open_learner("s2")
    QApplication.processEvents()
    assert not sheet.graph._none.isVisible()
    for part in (sheet.graph.plot, sheet.graph.save, sheet.explanations):
        assert part.isVisible()


def test_the_points_of_an_explanation_lie_within_the_axes(session: Session) -> None:
    explained = next(e for e in session.diagnosis("s2").explanations if e.mended)
    far = tuple((length * 1.5, period * 2) for length, period in explained.mended)
    drawn = curves(session.analysis("s2"), (), replace(explained, mended=far))
    assert max(drawn.ghost[0]) < drawn.longest_m
    assert max(drawn.ghost[1]) < drawn.largest_s2


def test_a_graph_of_two_lengths_blows_up_no_rounding(
    qtbot: QtBot, empty_window: Window, class_folder: Path
) -> None:
    own = class_folder / "Aino Example" / "readings.csv"
    own.write_text("Length (cm),Time 1 for 10 swings (s)\n20.0,8.97\n65.0,16.09\n", "utf-8")
    one = class_folder / "Cato Instance" / "readings.csv"
    one.write_text("Length (cm),Time 1 for 10 swings (s)\n20.0,8.97\n", "utf-8")
    empty_window.show_session(Session.open(class_folder, "A. Teacher"))
    empty_window.open_learner("s1")
    graph = empty_window.sheet.graph
    assert graph.curves.largest_residual > 0.005
    assert graph._names["data"].text().endswith("± unknown")
    assert graph._samples["data"].has_line
    empty_window.open_learner("s3")
    assert "no line" in graph._names["data"].text()
    assert not graph._samples["data"].has_line


def test_with_large_text_a_layer_covers_the_whole_sheet(
    qtbot: QtBot, window: Window, theme: Theme
) -> None:
    window.resize(1280, 800)
    window.open_learner("s1")
    theme.set_scale(2.0)
    try:
        window.sheet.open_table()
        QApplication.processEvents()
        assert window.sheet.layers.own_table.geometry() == window.sheet.rect()
        assert not window.sheet._behind_layer(window.sheet.layers.own_table.table)
        assert window.sheet._behind_layer(window.sheet.margin.note)
    finally:
        theme.set_scale(1.0)
