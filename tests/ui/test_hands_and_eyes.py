"""Reach and reading: names for screen readers, keys, large text, themes, the libraries' health."""

from __future__ import annotations

import dataclasses
import sys
import threading

import pytest
from PySide6.QtCore import QAbstractListModel, QObject, QRect, QSortFilterProxyModel, Qt
from PySide6.QtWidgets import (
    QAbstractButton,
    QApplication,
    QComboBox,
    QLineEdit,
    QPlainTextEdit,
    QSlider,
    QTextEdit,
    QWidget,
)
from pytestqt.qtbot import QtBot

from markbench.session import Session
from markbench.ui.background import in_background
from markbench.ui.look.tokens import DARK, LIGHT
from markbench.ui.places import FURTHER
from markbench.ui.window import Window

CONTROLS = (QAbstractButton, QComboBox, QLineEdit, QPlainTextEdit, QTextEdit, QSlider)


def controls(page: QWidget) -> list[QWidget]:
    return [w for kind in CONTROLS for w in page.findChildren(kind) if w.isVisible()]


def settle_layout() -> None:
    for _ in range(5):
        QApplication.processEvents()


PAGES = ("class", "sheet", "viewer", *FURTHER)


def go_to(window: Window, page: str) -> None:
    """To a place of the bar, a sheet, or the viewer on it."""
    if page in ("sheet", "viewer"):
        window.open_learner("s2")
        if page == "viewer":
            window.sheet.open_evidence()
    else:
        window.show_place(page)
    settle_layout()


@pytest.mark.parametrize("page", PAGES)
def test_every_control_has_a_name(window: Window, page: str) -> None:
    go_to(window, page)
    found = controls(window)
    assert len(found) > 12
    for control in found:
        words = control.accessibleName() or getattr(control, "text", lambda: "")()
        assert words.strip(), f"{control.metaObject().className()} has no name"


@pytest.mark.parametrize("page", PAGES)
def test_every_control_can_be_reached_by_keyboard(window: Window, page: str) -> None:
    go_to(window, page)
    for control in controls(window):
        row = control.group() if isinstance(control, QAbstractButton) else None
        stops = row.buttons() if row is not None else [control]  # arrows go on within a row
        tab = Qt.FocusPolicy.TabFocus
        assert any(one.focusPolicy() & tab for one in stops), control.accessibleName()


@pytest.mark.parametrize("page", PAGES)
def test_text_at_twice_its_size_is_not_cut_off(window: Window, page: str) -> None:
    window._theme.set_scale(2.0)
    try:
        go_to(window, page)
        window.resize(1280, 800)
        settle_layout()
        assert window.width() <= 1280
        for control in controls(window):
            if isinstance(control, QAbstractButton) and control.text():
                needs = control.minimumSizeHint()  # the words and the room round them
                assert control.width() >= needs.width(), control.text()
                assert control.height() >= control.fontMetrics().height(), control.text()
    finally:
        window._theme.set_scale(1.0)


def test_thirty_cards_fit_a_small_screen_without_scrolling(window: Window) -> None:
    # Thirty cards in the view's own sizing, with three learners repeated in imagination:
    # the sizing looks at the number of rows only.
    grid = window.bench.grid
    model = window.bench.model
    row = model.rows[0]
    model.beginResetModel()
    model.rows = [row] * 30
    model.endResetModel()
    window.bench.order.invalidate()
    window.resize(1280, 800)
    settle_layout()
    last = grid.visualRect(window.bench.order.index(29, 0))
    assert window.bench.order.rowCount() == 30
    assert last.bottom() <= grid.viewport().height()
    assert last.width() >= 190


def test_the_look_follows_a_choice_at_once(window: Window) -> None:
    theme = window._theme
    theme.choose(True)
    assert theme.palette is DARK
    assert DARK.bench in QApplication.instance().styleSheet()
    theme.choose(False)
    assert theme.palette is LIGHT
    assert LIGHT.bench in QApplication.instance().styleSheet()


def test_a_reason_leads_to_the_finding_and_the_cell(window: Window, session: Session) -> None:
    window.open_learner("s2")
    sheet = window.sheet
    reasons = [
        (draft.criterion, reason)
        for draft in session.drafts("s2")
        for reason in draft.reasons
        if reason.check or reason.sources
    ]
    assert reasons
    for _, reason in reasons:
        sheet.table.selectionModel().clear()
        sheet._source.clear()
        sheet.layers.viewer.hide()
        sheet.way.to_reason(reason)
        led = sheet.table.selectedIndexes() or sheet._source.text() or sheet.layers.viewer.piece
        assert led, reason.text


def test_agreeing_with_an_explanation_is_a_decision(
    qtbot: QtBot, window: Window, session: Session
) -> None:
    window.open_learner("s2")
    first = session.diagnosis("s2").explanations[0]
    with qtbot.waitSignal(window.desk.changed, timeout=5000):
        window.sheet.explanations.agree_with_first()
    assert session.value("agreed_slip", "s2") == first.slip
    assert "Agreed" in window.sheet.explanations._rows[0].agree.text()


def test_the_ghost_of_an_explanation_is_drawn(window: Window, session: Session) -> None:
    window.open_learner("s2")
    sheet = window.sheet
    wanted = next(e for e in session.diagnosis("s2").explanations if e.mended)
    sheet._show_ghost(wanted)
    drawn = sheet.graph.curves.ghost
    assert drawn[0] == pytest.approx([length for length, _ in wanted.mended])
    assert drawn[1] == pytest.approx([period**2 for _, period in wanted.mended])


def test_background_work_reports_on_the_main_thread(qtbot: QtBot, qapp: QApplication) -> None:
    owner, seen = QObject(), []
    here = threading.get_ident()

    def work(progress, stop):
        progress(1, 2, "half")
        seen.append(("work", threading.get_ident() != here))
        return 42

    in_background(
        owner,
        work,
        done=lambda result: seen.append(("done", result, threading.get_ident() == here)),
        failed=lambda error: seen.append(("failed", error)),
        progress=lambda at, of, text: seen.append((at, of, text)),
    )
    qtbot.waitUntil(lambda: len(seen) == 3, timeout=5000)
    assert ("work", True) in seen
    assert ("done", 42, True) in seen
    assert (1, 2, "half") in seen


def test_background_errors_come_back_and_stopped_work_is_silent(
    qtbot: QtBot, qapp: QApplication
) -> None:
    owner, seen = QObject(), []

    def fail(progress, stop):
        raise ValueError("no")

    in_background(owner, fail, done=seen.append, failed=lambda error: seen.append(str(error)))
    qtbot.waitUntil(lambda: seen == ["no"], timeout=5000)
    task = in_background(owner, lambda p, stop: stop(), done=seen.append, failed=seen.append)
    task.stop()
    qtbot.wait(100)
    assert seen == ["no"]


def test_none_keeps_its_references(qapp: QApplication) -> None:
    """PySide6 6.12.0 loses one each time an override returns None, and Python 3.11 dies of it."""

    class Empty(QAbstractListModel):
        def rowCount(self, parent=None):
            return 1

        def data(self, index, role=0):
            return None

    model, proxy = Empty(), QSortFilterProxyModel()
    proxy.setSourceModel(model)
    index = proxy.index(0, 0)
    index.data(9)
    before = sys.getrefcount(None)
    for _ in range(300):
        index.data(9)
    assert sys.getrefcount(None) > before - 100, "this release of PySide6 must be avoided"


def test_the_axis_is_drawn_afresh_when_the_range_changes(window: Window, session: Session) -> None:
    window.open_learner("s2")
    sheet = window.sheet
    settle_layout()
    plot = sheet.graph.plot
    before, drawn = plot.curves.largest_s2, plot.grab().toImage()
    ghost = next(e for e in session.diagnosis("s2").explanations if e.mended)
    far = [(length, 2 * period) for length, period in ghost.mended]
    high = plot.place(far[-1][0], far[-1][1] ** 2)
    sheet._show_ghost(dataclasses.replace(ghost, mended=tuple(far)))
    assert plot.curves.largest_s2 > 2 * before
    # What lay above the graph lies within it now, and the numbers of the axis are others.
    assert high.y() < 0 < plot.place(far[-1][0], far[-1][1] ** 2).y()
    numbers = QRect(0, 0, int(plot.place(0.0, 0.0).x()) - 6, int(plot.place(0.0, 0.0).y()) - 20)
    assert plot.grab().toImage().copy(numbers) != drawn.copy(numbers)
