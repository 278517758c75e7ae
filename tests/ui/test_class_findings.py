"""The page of the class's findings: figures, the learners behind them, saved pictures."""

from __future__ import annotations

import datetime as dt
import xml.etree.ElementTree as ET
from pathlib import Path

import pytest
from PySide6.QtCore import QRectF, Qt
from PySide6.QtGui import QColor, QImage, QPainter
from PySide6.QtSvg import QSvgRenderer
from PySide6.QtWidgets import QApplication, QFileDialog, QScrollArea
from pytestqt.qtbot import QtBot

from markbench.model import LocalGravity
from markbench.session import Session
from markbench.session.overview import CriterionCount, OneG, OneMark, Pace, SpreadOfG, Topic
from markbench.ui.look.tokens import DARK
from markbench.ui.overview import levels
from markbench.ui.overview.evening import DriftFigure, PaceFigure
from markbench.ui.overview.figure import Figure, Look, ticks
from markbench.ui.overview.levels import LevelsFigure
from markbench.ui.overview.page import OverviewPage
from markbench.ui.overview.saving import foot_of, save_figure
from markbench.ui.overview.spread import SpreadFigure
from markbench.ui.overview.topics import TopicsFigure
from markbench.ui.window import Window

LOCAL = LocalGravity(9.81, 0.001, "invented")
NOON = dt.datetime(2026, 3, 1, 12, tzinfo=dt.UTC)


def settle() -> None:
    for _ in range(4):
        QApplication.processEvents()


@pytest.fixture
def page(qtbot: QtBot, window: Window) -> OverviewPage:
    qtbot.mouseClick(window.places.buttons["overview"], Qt.MouseButton.LeftButton)
    settle()
    return window.further["overview"]


def click(qtbot: QtBot, page: OverviewPage, paper: object, number: int) -> None:
    view = paper.view
    centre = view.spots[number].box.center().toPoint()
    qtbot.mouseClick(view, Qt.MouseButton.LeftButton, pos=centre)
    settle()


def test_a_bar_shows_the_learners_behind_it_and_one_is_opened(
    qtbot: QtBot, window: Window, page: OverviewPage
) -> None:
    topics = page.topics.view.figure.topics
    number = next(i for i, topic in enumerate(topics) if topic.id == "timing_departs")
    click(qtbot, page, page.topics, number)
    assert page.behind.count() == 1
    assert page.behind.item(0).text() == "Bodil Sample"
    assert topics[number].title in page.about.text()
    assert "1 of 3" in page.about.text()
    qtbot.keyClick(page.behind, Qt.Key.Key_Return)
    assert window.pages.currentWidget() is window.sheet
    assert window.sheet.learner == "s2"
    qtbot.keyClick(window, Qt.Key.Key_Escape)
    assert window.pages.currentWidget() is page


def test_keys_move_in_a_figure_and_choose(qtbot: QtBot, window: Window, page: OverviewPage) -> None:
    view = page.spread.view
    view.setFocus()
    qtbot.keyClick(view, Qt.Key.Key_Down)
    qtbot.keyClick(view, Qt.Key.Key_Down)
    assert view.current == 1
    assert "m/s²" in view.accessibleDescription()
    wanted = view.spots[1].learners[0]
    qtbot.keyClick(view, Qt.Key.Key_Return)
    assert window.sheet.learner == wanted


def test_empty_states_say_why(page: OverviewPage) -> None:
    assert "Nothing is marked" in page.drift.view.figure.empty
    assert page.pace.view.figure.empty
    assert not page.drift.save.isEnabled()
    assert page.drift.save.isHidden()
    assert page.drift.view.accessibleDescription() == page.drift.view.figure.empty
    for figure in (TopicsFigure((), 3), SpreadFigure(SpreadOfG((), ("a",), None)),
                   LevelsFigure((), 0), DriftFigure(()), PaceFigure(())):  # fmt: skip
        assert figure.empty
        assert paint(figure) == []


def test_marking_brings_the_figures_up_to_date(
    qtbot: QtBot, window: Window, page: OverviewPage, session: Session
) -> None:
    criterion = session.rubric.criteria[0].id
    with qtbot.waitSignal(window.desk.changed, timeout=5000):
        window.desk.do(lambda s: s.accept("s1", criterion))
    qtbot.waitUntil(lambda: page.drift.view.figure.empty == "", timeout=5000)
    assert "n = 1 mark with a draft" in page.drift.view.figure.caption
    assert "1 of 15 marks given" in page.levels.view.figure.caption
    settle()
    click(qtbot, page, page.drift, 0)
    assert window.sheet.learner == "s1"


def test_without_names_the_figures_name_nobody(
    qtbot: QtBot, window: Window, page: OverviewPage
) -> None:
    with qtbot.waitSignal(window.desk.changed, timeout=5000):
        window.hide_names(True)
    qtbot.wait(300)
    settle()
    for paper in page.papers:
        for spot in paper.view.spots:
            assert "Bodil" not in spot.words
    click(qtbot, page, page.topics, 0)
    names = [page.behind.item(i).text() for i in range(page.behind.count())]
    assert names
    assert all("Portfolio" in name for name in names)


# --- figures by themselves -----------------------------------------------------------


def paint(figure: Figure, wide: int = 400, high: int = 300, look: Look | None = None) -> list:
    image = QImage(wide, high, QImage.Format.Format_RGB32)
    image.fill(Qt.GlobalColor.white)
    painter = QPainter(image)
    spots = figure.paint(painter, QRectF(0, 0, wide, high), look or Look())
    painter.end()
    return spots


def some_figures() -> list[Figure]:
    topics = tuple(
        Topic(f"t{i}", f"Topic {i}", "Why.", i % 2 == 0, tuple(f"s{k}" for k in range(8 - i)))
        for i in range(6)
    )
    gs = (OneG("low", 2.4, 2.3, 2.5), OneG("a", 9.5, 9.3, 9.7), OneG("b", 9.8, 9.6, 10.0),
          OneG("far", 39.0, 38.0, 40.0))  # fmt: skip
    marks = tuple(
        OneMark(f"s{i}", "c", NOON + dt.timedelta(minutes=i), (i % 3) - 1.0, i // 20)
        for i in range(40)
    )
    paces = tuple(
        Pace(f"s{i}", 60.0 * (9 - i), 5, *[NOON + dt.timedelta(minutes=10 * i)] * 2)
        for i in range(9)
    )
    return [
        TopicsFigure(topics, 8),
        SpreadFigure(SpreadOfG(gs, ("gone",), LOCAL)),
        DriftFigure(marks),
        PaceFigure(paces),
    ]


@pytest.mark.parametrize("number", range(4))
def test_every_spot_lies_inside_and_names_its_learners(page: OverviewPage, number: int) -> None:
    figure = some_figures()[number]
    for look in (Look(), Look(DARK, 2.0)):
        high = max(int(figure.height(look)), 300)
        spots = paint(figure, 500, high, look)
        assert spots
        for spot in spots:
            assert spot.learners
            assert spot.words
            assert spot.box.top() >= -1
            assert spot.box.bottom() <= high + 1
    assert "n = " in figure.caption


def test_captions_state_what_was_counted() -> None:
    topics, spread, drift, pace = some_figures()
    assert "n = 8 learners" in topics.caption
    # By hand: only 9.8 ± 0.2 of the four intervals holds 9.81; median of 9.5 and 9.8.
    assert "n = 4 learners" in spread.caption
    assert "1 interval holds it" in spread.caption
    assert "median 9.65" in spread.caption
    assert "2 beyond the axis" in spread.caption
    assert "1 without readings" in spread.caption
    # −1, 0, 1, … : six whole rounds, then −1 and 0, make −1 over 20 marks; the next 20 are
    # 1, six whole rounds, and −1, which make 0.
    assert "First half −0.05, second half 0 marks" in drift.caption
    assert "longer than 10 minutes (1 min)" in drift.caption  # told as it was between the marks
    assert "Median 5.0 min" in pace.caption  # of 1 … 9 minutes
    assert "45 min in all" in pace.caption


def test_the_axis_of_g_is_never_wider_than_three_either_side() -> None:
    wild = SpreadFigure(SpreadOfG(tuple(OneG(str(i), 40.0, 39, 41) for i in range(9)), (), LOCAL))
    low, high = wild.limits
    assert high - low == pytest.approx(6.0)
    calm = SpreadFigure(SpreadOfG((OneG("a", 9.8, 9.7, 9.9),), (), LOCAL))
    assert calm.limits[1] - calm.limits[0] == pytest.approx(1.0)


def test_ticks_are_round_and_inside() -> None:
    assert ticks(0, 10, 5) == [0, 2, 4, 6, 8, 10]
    assert ticks(9.31, 10.31, 5) == [9.4, 9.6, 9.8, 10.0, 10.2]
    assert ticks(-1, 1, 4) == [-1, -0.5, 0, 0.5, 1]
    assert ticks(1, 1) == []


# --- saving ------------------------------------------------------------------------------


@pytest.mark.parametrize("number", range(4))
def test_a_figure_is_saved_as_png_and_svg(page: OverviewPage, tmp_path: Path, number: int) -> None:
    figure = some_figures()[number]
    png, svg = tmp_path / "f.png", tmp_path / "f.svg"
    save_figure(figure, png)
    save_figure(figure, svg)
    image = QImage(str(png))
    assert image.width() > 2000  # sharp on a projector
    assert len({image.pixel(x, y) for x in range(0, image.width(), 7)
                for y in range(0, image.height(), 7)}) > 3  # fmt: skip
    root = ET.parse(svg).getroot()
    words = "".join(root.itertext())
    assert figure.title in words
    assert figure.caption in words  # the description holds it whole
    assert QSvgRenderer(str(svg)).isValid()


def test_saving_by_hand(
    qtbot: QtBot, window: Window, page: OverviewPage, tmp_path: Path,
    monkeypatch: pytest.MonkeyPatch,
) -> None:  # fmt: skip
    target = tmp_path / "spread"
    answer = (str(target), "Drawing for print (*.svg)")
    monkeypatch.setattr(QFileDialog, "getSaveFileName", lambda *_: answer)
    qtbot.mouseClick(page.spread.save, Qt.MouseButton.LeftButton)
    assert target.with_name("spread.svg").stat().st_size > 500
    assert "spread.svg" in window.bar.trouble.text()


def test_what_cannot_be_saved_is_said(
    page: OverviewPage, tmp_path: Path, monkeypatch: pytest.MonkeyPatch, qtbot: QtBot
) -> None:
    figure = some_figures()[0]
    with pytest.raises(ValueError, match="neither"):
        save_figure(figure, tmp_path / "f.bmp")
    nowhere = tmp_path / "no folder" / "f.png"
    with pytest.raises(OSError, match="written"):
        save_figure(figure, nowhere)
    monkeypatch.setattr(QFileDialog, "getSaveFileName", lambda *_: (str(nowhere), ""))
    with qtbot.waitSignal(page.trouble, timeout=2000):
        page.ask_and_save(figure)


def test_one_column_at_twice_the_size(window: Window, page: OverviewPage) -> None:
    window._theme.set_scale(2.0)
    settle()
    try:
        left = {paper.x() for paper in page.papers}
        assert len(left) == 1
        assert window.width() <= 1280
    finally:
        window._theme.set_scale(1.0)
    settle()
    assert len({paper.x() for paper in page.papers}) == 3


def test_no_paper_runs_off_the_side_where_the_text_is_half_as_large_again(
    window: Window, page: OverviewPage
) -> None:
    window.resize(1366, 768)
    window._theme.set_scale(1.5)
    settle()
    try:
        assert len({paper.x() for paper in page.papers}) == 2
        area = page.findChild(QScrollArea)
        assert area.widget().width() <= area.viewport().width()
    finally:
        window._theme.set_scale(1.0)


def test_a_title_that_needs_four_lines_is_not_cut(monkeypatch: pytest.MonkeyPatch) -> None:
    said: list[str] = []
    real = levels.words
    monkeypatch.setattr(
        levels, "words", lambda painter, box, text, *rest: (
            said.append(text), real(painter, box, text, *rest))
    )  # fmt: skip
    count = CriterionCount("a", "How the readings are written down", (), ())
    paint(LevelsFigure((count,) * 5, 3), 560, 300)
    assert "How the readings are written down" in " ".join(said)
    assert {"learners", "marks"} <= set(said)


def test_a_picture_is_saved_from_the_list_of_actions(
    qtbot: QtBot,
    window: Window,
    page: OverviewPage,
    tmp_path: Path,
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    target = tmp_path / "g.png"
    monkeypatch.setattr(QFileDialog, "getSaveFileName", lambda *_: (str(target), ""))
    qtbot.keyClick(window, Qt.Key.Key_F1)
    qtbot.keyClicks(window.deed_list.search, "save spread")
    assert window.deed_list.list.count() == 1
    qtbot.keyClick(window.deed_list.search, Qt.Key.Key_Return)
    assert target.stat().st_size > 1000


# --- drift and time per portfolio -----------------------------------------------------------


def written(figure: Figure, tmp_path: Path) -> str:
    """The words in a figure, in the order painted."""
    save_figure(figure, tmp_path / "w.svg")
    texts = ET.parse(tmp_path / "w.svg").getroot().iter("{http://www.w3.org/2000/svg}text")
    return "|".join("".join(one.itertext()).strip() for one in texts)


def later(minutes: float) -> dt.datetime:
    return NOON + dt.timedelta(minutes=minutes)


def two_evenings() -> PaceFigure:
    """Two portfolios, 13 hours of sleep, the longest one, and 25 minutes until the last."""
    return PaceFigure(
        (
            Pace("c", 500.0, 5, later(800), later(808)),
            Pace("a", 300.0, 5, later(0), later(5)),
            Pace("d", 200.0, 5, later(833), later(836)),
            Pace("b", 100.0, 5, later(5), later(20)),
        )
    )


def test_axes_say_what_they_count(page: OverviewPage, tmp_path: Path) -> None:
    _, _, drift, pace = some_figures()
    said = written(drift, tmp_path)
    assert "mark − draft / marks" in said
    assert "marks in the order in which they were given" in said
    said = written(pace, tmp_path)
    assert "time / min" in said
    assert "portfolios, longest first" in said


def test_a_break_is_told_with_its_length(page: OverviewPage, tmp_path: Path) -> None:
    minutes = (0, 1, 26, 27, 807, 808, 808 + 60 * 24 * 3)
    sittings = (0, 0, 1, 1, 2, 2, 3)
    marks = tuple(
        OneMark(f"s{i}", "c", later(at), 0.0, sitting)
        for i, (at, sitting) in enumerate(zip(minutes, sittings, strict=True))
    )
    figure = DriftFigure(marks)
    assert "longer than 10 minutes (25 min, 13 h, 3 days)" in figure.caption
    said = written(figure, tmp_path).split("|")
    assert {"25 min", "13 h", "3 days"} <= set(said)
    assert "Dotted" not in DriftFigure(marks[:2]).caption


def test_time_in_order_of_marking_shows_breaks_and_when(page: OverviewPage, tmp_path: Path) -> None:
    figure = two_evenings()
    assert [spot.learners[0] for spot in paint(figure)] == ["c", "a", "d", "b"]
    assert "Dotted" not in figure.caption
    turned = PaceFigure(figure.paces, in_order=True)
    assert [spot.learners[0] for spot in paint(turned)] == ["a", "b", "c", "d"]
    assert "(13 h, 25 min)" in turned.caption
    said = written(turned, tmp_path)
    assert "portfolios, in order of marking" in said
    assert {"13 h", "25 min"} <= set(said.split("|"))


def test_the_order_of_the_time_is_turned_by_hand_and_by_key(
    qtbot: QtBot, window: Window, page: OverviewPage
) -> None:
    qtbot.mouseClick(page.pace.turn, Qt.MouseButton.LeftButton)
    assert page.pace.view.figure.in_order
    assert page.pace.turn.text().startswith("✓")
    qtbot.keyClick(window, Qt.Key.Key_O, Qt.KeyboardModifier.AltModifier)
    assert not page.pace.view.figure.in_order
    assert page.drift.turn.isHidden()


# --- a long list of what to teach again ------------------------------------------------------


@pytest.fixture
def long(page: OverviewPage) -> OverviewPage:
    topics = tuple(Topic(f"t{i}", f"Topic {i}", "Why.", True, ("s1", "s2")) for i in range(30))
    page.topics.view.show_figure(TopicsFigure(topics, 3))
    settle()
    return page


def in_sight(view: object, number: int) -> bool:
    seen = QRectF(view.visibleRegion().boundingRect())
    return seen.contains(view.spots[number].box)


def test_keys_bring_the_bar_into_sight(qtbot: QtBot, long: OverviewPage) -> None:
    view = long.topics.view
    assert not in_sight(view, 25)
    view.setFocus()
    for _ in range(26):
        qtbot.keyClick(view, Qt.Key.Key_Down)
    assert view.current == 25
    assert in_sight(view, 25)
    for _ in range(25):
        qtbot.keyClick(view, Qt.Key.Key_Up)
    assert in_sight(view, 0)
    assert view.visibleRegion().boundingRect().top() == 0  # and the key above it


def test_whoever_comes_back_sees_whole_rows(
    qtbot: QtBot, window: Window, long: OverviewPage
) -> None:
    view = long.topics.view
    bar = long.topics.findChild(QScrollArea).verticalScrollBar()
    window.open_from("overview", "s1")
    bar.setValue(20)
    qtbot.keyClick(window, Qt.Key.Key_Escape)
    settle()
    assert view.hasFocus()
    assert in_sight(view, 0)
    assert bar.value() == 0


def test_the_frame_of_the_focus_is_in_sight(
    qtbot: QtBot, window: Window, long: OverviewPage
) -> None:
    view = long.topics.view
    view.setFocus()
    bar = long.topics.findChild(QScrollArea).verticalScrollBar()
    bar.setValue(60)
    settle()
    seen = view.visibleRegion().boundingRect()
    picture = long.topics.findChild(QScrollArea).viewport().grab().toImage()
    ratio, deed = picture.devicePixelRatio(), QColor(window._theme.palette.deed)
    across, down = round(seen.width() * ratio / 2), round(seen.height() * ratio / 2)
    for x, y in (
        (across, 1),
        (across, round((seen.height() - 2) * ratio)),
        (1, down),
        (round((seen.width() - 2) * ratio), down),
    ):
        assert picture.pixelColor(x, y) == deed, (x, y)


# --- the foot of a picture -----------------------------------------------------------------


def test_a_picture_says_of_which_class_and_day_it_is(
    qtbot: QtBot, window: Window, page: OverviewPage, tmp_path: Path,
    monkeypatch: pytest.MonkeyPatch,
) -> None:  # fmt: skip
    foot = foot_of(window.desk.held, dt.date(2026, 3, 1))
    assert foot == "Test class  ·  10A  ·  1 Mar 2026"
    target = tmp_path / "spread.svg"
    monkeypatch.setattr(QFileDialog, "getSaveFileName", lambda *_: (str(target), ""))
    qtbot.mouseClick(page.spread.save, Qt.MouseButton.LeftButton)
    texts = ET.parse(target).getroot().iter("{http://www.w3.org/2000/svg}text")
    said = ["".join(one.itertext()) for one in texts]
    assert any("Test class" in one and "10A" in one for one in said)
    window.open_learner("s1")
    graph = tmp_path / "graph.svg"
    monkeypatch.setattr(QFileDialog, "getSaveFileName", lambda *_: (str(graph), ""))
    window.sheet.save_graph()
    assert "Test class" in graph.read_text("utf-8")
