"""One learner's sheet: from the mark to the cell, the graph as a picture, room for the table."""

from __future__ import annotations

import math
from dataclasses import replace
from pathlib import Path
from xml.etree import ElementTree

import pytest
from PySide6.QtCore import QPoint, QRectF, Qt
from PySide6.QtGui import QImage, QPainter
from PySide6.QtWidgets import QApplication, QFileDialog
from pytestqt.qtbot import QtBot

from markbench.model import Reason
from markbench.session import Session
from markbench.ui.look.tokens import LIGHT
from markbench.ui.overview.figure import Look
from markbench.ui.portfolio.criterion import CriterionCard
from markbench.ui.portfolio.curves import curves
from markbench.ui.portfolio.drawing import draw_graph
from markbench.ui.portfolio.graph_figure import GraphFigure
from markbench.ui.window import Window

CTRL, SHIFT = Qt.KeyboardModifier.ControlModifier, Qt.KeyboardModifier.ShiftModifier


def shown_reasons(card: CriterionCard) -> tuple[Reason, ...]:
    """The reasons of a card that is open; a closed one has none."""
    return vars(card).get("_shown_reasons", ())


@pytest.fixture
def four_timings(class_folder: Path) -> None:
    """Bodil timed each length four times, the last one a whole swing too long."""
    rows = {20: "8.95,9.01,8.97,8.99", 30: "11.02,10.95,11.00,10.97",
            40: "12.72,12.66,12.70,12.69", 50: "14.21,14.15,14.20,14.18",
            60: "15.52,15.58,15.55,17.09"}  # fmt: skip
    head = "Length (cm)," + ",".join(f"Time {n} for 10 swings (s)" for n in (1, 2, 3, 4))
    lines = [head, *(f"{length}.0,{times}" for length, times in rows.items())]
    (class_folder / "Bodil Sample" / "readings.csv").write_text("\n".join(lines) + "\n")


def test_one_click_on_a_reason_leads_to_the_finding_and_the_very_cell(
    qtbot: QtBot, window: Window, session: Session
) -> None:
    window.open_learner("s2")
    QApplication.processEvents()
    sheet = window.sheet
    link = next(
        control
        for card in sheet.margin.cards
        for control, reason in zip(card._reasons, shown_reasons(card), strict=False)
        if not control.isHidden() and any(s.cell == "C6" for s in reason.sources)
    )
    qtbot.mouseClick(link, Qt.MouseButton.LeftButton)
    # readings.csv: the heading is row 1, 60 cm row 6, its second timing column C.
    cells = {(i.row(), i.column()) for i in sheet.table.selectedIndexes()}
    assert (4, 3) in cells
    sheet.table.setCurrentIndex(sheet.readings.index(4, 3))
    assert "cell C6" in sheet._source.text()
    assert "17.09" in sheet._source.text()
    sheet.table.setCurrentIndex(sheet.readings.index(4, 0))
    assert sheet._source.text().endswith("written “60.0”  ·  length 60 cm")


def test_a_reason_of_every_criterion_reveals_its_finding(
    qtbot: QtBot, window: Window, session: Session
) -> None:
    window.open_learner("s3")  # the selfie is missing
    QApplication.processEvents()
    sheet, led = window.sheet, []
    for _ in session.rubric.criteria:
        card = sheet.margin.current
        for control, reason in zip(card._reasons, shown_reasons(card), strict=False):
            if reason.check and control.isVisible():
                qtbot.mouseClick(control, Qt.MouseButton.LeftButton)
                rows = [one for one in sheet.findings.rows if one.finding.check == reason.check]
                assert any(one.isVisible() for one in rows), reason.text
                led.append(reason.check)
        qtbot.keyClick(window, Qt.Key.Key_Down, CTRL)
        QApplication.processEvents()
    assert led


@pytest.mark.parametrize("ending", ["png", "svg"])
def test_the_graph_is_saved_as_it_is_shown(
    qtbot: QtBot,
    window: Window,
    session: Session,
    tmp_path: Path,
    monkeypatch: pytest.MonkeyPatch,
    ending: str,
) -> None:
    window.open_learner("s2")
    window.sheet.explanations.show_first()
    target = tmp_path / f"bodil.{ending}"
    monkeypatch.setattr(QFileDialog, "getSaveFileName", lambda *_: (str(target), ""))
    if ending == "png":
        qtbot.mouseClick(window.sheet.graph.save, Qt.MouseButton.LeftButton)
        image = QImage(str(target))
        assert image.width() >= 1800  # sharp on a projector
        across, down = range(0, image.width(), 3), range(0, image.height(), 3)
        colours = {image.pixelColor(x, y).name() for x in across for y in down}
        assert {LIGHT.data, LIGHT.law, LIGHT.ghost} <= colours  # readings, local law, the ghost
    else:
        qtbot.keyClick(window, Qt.Key.Key_S, CTRL | SHIFT)
        root = ElementTree.parse(target).getroot()
        space = "{http://www.w3.org/2000/svg}"
        assert "Bodil Sample" in root.findtext(f"{space}title")
        dots = [one for name in ("circle", "ellipse") for one in root.iter(f"{space}{name}")]
        assert len(dots) >= 2 * len(session.analysis("s2").rows)  # readings and residuals
    assert target.name in window.bar.trouble.text()


def test_each_reading_is_drawn_where_its_numbers_are_and_a_click_on_it_finds_its_row(
    qtbot: QtBot, window: Window, session: Session
) -> None:
    window.open_learner("s2")
    sheet = window.sheet
    QApplication.processEvents()
    plot = sheet.graph.plot
    drawn, ratio = plot.grab().toImage(), plot.devicePixelRatioF()
    for number, row in enumerate(session.analysis("s2").rows):
        at = plot.place(row.length_m, row.period_squared_s2)
        colour = drawn.pixelColor((at * ratio).toPoint())
        assert colour.name() == window._theme.palette.data.lower()
        qtbot.mouseClick(plot, Qt.MouseButton.LeftButton, pos=at.toPoint() + QPoint(3, -3))
        assert {index.row() for index in sheet.table.selectedIndexes()} == {number}
    sheet.table.clearSelection()
    qtbot.mouseClick(plot, Qt.MouseButton.LeftButton, pos=QPoint(3, 3))
    assert not sheet.table.selectedIndexes()


def test_a_reading_that_lacks_a_number_leaves_the_others_drawn(session: Session) -> None:
    analysis = session.analysis("s1")
    whole = curves(analysis)
    gap = replace(analysis.rows[-1], length_m=math.nan, period_squared_s2=math.nan)
    drawn = curves(replace(analysis, rows=(*analysis.rows[:-1], gap)))
    assert math.isfinite(drawn.longest_m)
    assert 0 < drawn.longest_m < whole.longest_m
    picture = QImage(300, 300, QImage.Format.Format_RGB32)
    painter = QPainter(picture)
    draw_graph(painter, QRectF(picture.rect()), drawn, Look())
    painter.end()


def test_the_saved_graph_says_what_each_line_is(session: Session) -> None:
    analysis = session.analysis("s1")
    figure = GraphFigure("Portfolio 2", curves(analysis))
    assert "Portfolio 2" in figure.title
    assert "5 readings" in figure.caption
    assert "local g" in figure.caption
    assert not figure.empty


def test_a_table_of_four_timings_shows_its_last_column(
    four_timings: None, qtbot: QtBot, empty_window: Window, class_folder: Path
) -> None:
    window = empty_window
    window.open_folder(class_folder)
    qtbot.waitUntil(lambda: window.sheet is not None, timeout=10_000)
    window.open_learner("s2")
    QApplication.processEvents()
    table = window.sheet.table
    assert table.model().columnCount() == 9
    assert table.horizontalHeader().length() <= table.viewport().width()
    wide = table.width()
    window.open_learner("s1")  # two timings: the graph has its room again
    qtbot.waitUntil(lambda: table.width() < wide, timeout=5000)


@pytest.mark.parametrize("step", [0, 1, 2])
def test_an_open_criterion_shows_its_head(window: Window, step: int) -> None:
    window.resize(1280, 800)
    window.open_learner("s1")
    QApplication.processEvents()
    margin = window.sheet.margin
    for _ in range(step):
        margin.step(1)
    QApplication.processEvents()
    card = margin.current
    top = card.mapTo(margin._scroll.viewport(), card.rect().topLeft()).y()
    assert 0 <= top < margin._scroll.viewport().height() / 2 or (
        top + card.height() <= margin._scroll.viewport().height()
    )
