"""Cards of a large class: no frame waits for all of them, and none stays blank or stale."""

from __future__ import annotations

import dataclasses
from pathlib import Path

import pytest
from PySide6.QtCore import QRectF
from PySide6.QtGui import QPainter
from PySide6.QtWidgets import QApplication
from pytestqt.qtbot import QtBot

from markbench.session import Session
from markbench.session.evidence import Seen
from markbench.session.session import Change
from markbench.session.so_far import SoFar
from markbench.ui.bench import card, kept
from markbench.ui.bench.card import CardDelegate
from markbench.ui.bench.grid import ClassGrid
from markbench.ui.bench.rows import LearnerRow
from markbench.ui.window import Window


@pytest.fixture
def drawn(monkeypatch: pytest.MonkeyPatch) -> list[str]:
    """Whose cards were drawn, in order."""
    whose: list[str] = []
    true = card.paint_card

    def paint(painter: QPainter, row: LearnerRow, box: QRectF, *rest: object) -> None:
        whose.append(row.id)
        true(painter, row, box, *rest)  # type: ignore[arg-type]

    monkeypatch.setattr(card, "paint_card", paint)
    return whose


@pytest.fixture
def crowd(qtbot: QtBot, empty_window: Window, tmp_path: Path, drawn: list[str]) -> Window:
    """Three hundred invented learners, who have handed in nothing."""
    folder = tmp_path / "crowd"
    folder.mkdir()
    rows = "".join(f"n{i:03d},Learner Number{i:03d}\n" for i in range(300))
    (folder / "class_list.csv").write_text(f"id,name\n{rows}", encoding="utf-8")
    empty_window.open_folder(folder)
    qtbot.waitUntil(lambda: empty_window.sheet is not None, timeout=20_000)
    return empty_window


def cards(window: Window) -> CardDelegate:
    delegate = window.bench.grid.itemDelegate()
    assert isinstance(delegate, CardDelegate)
    return delegate


def in_view(grid: ClassGrid) -> set[str]:
    area, model = grid.viewport().rect(), grid.model()
    indexes = (model.index(i, 0) for i in range(model.rowCount()))
    return {whose(i) for i in indexes if grid.visualRect(i).intersects(area)}


def whose(index) -> str:
    return index.data(int(card.ROW)).id


def test_a_frame_draws_what_it_has_time_for_and_the_next_ones_the_rest(
    qtbot: QtBot, crowd: Window, drawn: list[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    grid = crowd.bench.grid
    QApplication.processEvents()
    cards(crowd).forget()
    cards(crowd)._next_frame()
    monkeypatch.setattr(kept, "_FRAME_S", 1e-9)  # time for one card and no more
    drawn.clear()
    grid.viewport().repaint()
    assert len(drawn) == 1
    wanted = in_view(grid)
    assert len(wanted) > 20
    qtbot.waitUntil(lambda: wanted <= set(drawn), timeout=10_000)
    assert len(drawn) == len(set(drawn))


def test_the_page_to_come_is_drawn_while_nobody_scrolls(
    qtbot: QtBot, crowd: Window, drawn: list[str]
) -> None:
    grid = crowd.bench.grid
    bar = grid.verticalScrollBar()
    bar.setValue(bar.maximum() // 2)
    page = grid.viewport().height()
    QApplication.processEvents()
    qtbot.waitUntil(lambda: not (grid._ahead.isActive() or cards(crowd)._behind), timeout=20_000)
    for place in (bar.value() + page, bar.value() - page):
        drawn.clear()
        bar.setValue(place)
        grid.viewport().repaint()
        assert drawn == []


def test_no_more_pictures_are_kept_than_a_few_pages(
    qtbot: QtBot, crowd: Window, drawn: list[str]
) -> None:
    grid, bar = crowd.bench.grid, crowd.bench.grid.verticalScrollBar()
    crowd.resize(800, 500)
    QApplication.processEvents()
    for place in range(0, bar.maximum(), grid.viewport().height()):
        bar.setValue(place)
        grid.viewport().repaint()
        wanted = in_view(grid)
        qtbot.waitUntil(lambda wanted=wanted: wanted <= set(drawn), timeout=10_000)
    assert cards(crowd).most_kept < 200 < len(set(drawn))
    assert len(cards(crowd)._pictures) <= cards(crowd).most_kept


def test_news_draws_those_cards_anew_that_look_otherwise(
    qtbot: QtBot, drawn: list[str], window: Window, session: Session
) -> None:
    grid = window.bench.grid
    qtbot.waitUntil(lambda: len(set(drawn)) == 3, timeout=5000)
    drawn.clear()
    with qtbot.waitSignal(window.desk.changed, timeout=10_000):
        window.desk.do(lambda held: held.see(Seen()))  # looked at, and nothing was found
    grid.viewport().repaint()
    assert drawn == []
    with qtbot.waitSignal(window.desk.changed, timeout=10_000):
        window.desk.do(lambda held: held.accept("s2"))
    grid.viewport().repaint()
    assert drawn == ["s2"]


def test_a_draft_that_changed_is_never_shown_as_before(window: Window) -> None:
    row = window.bench.model.rows[0]
    assert row.drafted is not None
    fresh = dataclasses.replace(row, _add_up=lambda: SoFar(row.drafted + 1, row.most, 0))
    assert fresh == row
    assert not cards(window).same(row, fresh)


def test_what_was_seen_is_told_when_everybody_is_drafted(session: Session) -> None:
    told: list[int] = []

    def listen(_change: Change) -> None:
        everybody = session._judging.judged.values()
        told.append(sum("drafts" in vars(one) for one in everybody))

    stop = session.listen(listen)
    session.see(Seen())
    stop()
    assert told == [3]
