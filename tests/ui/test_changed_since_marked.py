"""The learner overwrites her file after marking: the sheet, the card and the hand-ins tell."""

from __future__ import annotations

import os
from pathlib import Path

import pytest
from PySide6.QtCore import QSettings, Qt
from PySide6.QtWidgets import QApplication
from pytestqt.qtbot import QtBot
from second_marking import moderation

from markbench.model import Decision
from markbench.session import Session
from markbench.session.moderating import sign_off
from markbench.session.since_marked import let_stand, since_marked
from markbench.ui.bench.card import paint_card
from markbench.ui.bench.model import ROW
from markbench.ui.handins.model import NAME, STANDS, WHEN
from markbench.ui.handins.page import HandInsPage
from markbench.ui.handins.roll import held
from markbench.ui.look import Theme
from markbench.ui.look.columns import fair_widths
from markbench.ui.window import Window


def settle() -> None:
    for _ in range(4):
        QApplication.processEvents()


def overwrite(folder: Path, was: str, becomes: str) -> None:
    """Another number in Aino's table, under its old date."""
    path = folder / "Aino Example" / "readings.csv"
    stamp = path.stat().st_mtime
    path.write_text(path.read_text("utf-8").replace(was, becomes), "utf-8")
    os.utime(path, (stamp, stamp))


@pytest.fixture
def class_folder(class_folder: Path) -> Path:
    """Aino and Bodil are marked; then Aino times 30 cm again and sends another film."""
    opened = Session.open(class_folder, "T. Teacher")
    for learner in ("s1", "s2"):
        for criterion in opened.rubric.criteria:
            opened.set_level(learner, criterion.id, criterion.levels[0].name)
    opened.close()
    overwrite(class_folder, "11.02,10.95", "11.42,10.95")
    film = class_folder / "Aino Example" / "swing video.mp4"
    film.write_bytes(film.read_bytes() + b"\0" * 20)
    return class_folder


@pytest.fixture
def page(qtbot: QtBot, window: Window) -> HandInsPage:
    qtbot.mouseClick(window.places.buttons["handins"], Qt.MouseButton.LeftButton)
    settle()
    return window.further["handins"]


def shown(page: HandInsPage) -> list[str]:
    return [page.order.index(i, 0).data(ROW).learner for i in range(page.order.rowCount())]


def test_the_card_and_a_filter_tell(qtbot: QtBot, window: Window) -> None:
    assert [row.changed for row in window.bench.model.rows] == [True, False, False]
    chip = window.bench.chips["changed"]
    assert chip.isVisible()
    assert window.bench.foot.legend.changed.isVisible()
    qtbot.mouseClick(chip, Qt.MouseButton.LeftButton)
    assert window.bench.order.learners() == ["s1"]
    index = window.bench.order.index(0, 0)
    assert "changed since it was marked" in index.data(Qt.ItemDataRole.AccessibleTextRole)


def test_the_card_bears_a_sign_that_others_do_not(
    window: Window, theme: Theme, qtbot: QtBot
) -> None:
    from dataclasses import replace

    from PySide6.QtCore import QRectF
    from PySide6.QtGui import QImage, QPainter

    def drawn(changed: bool) -> QImage:
        image = QImage(220, 130, QImage.Format.Format_ARGB32)
        image.fill(0)
        painter = QPainter(image)
        row = replace(window.bench.model.rows[0], changed=changed)
        paint_card(painter, row, QRectF(0, 0, 220, 130), window.bench.model.axes, theme)
        painter.end()
        return image

    assert drawn(True) != drawn(False)


def test_the_sheet_says_so_and_leads_to_the_comparison(qtbot: QtBot, window: Window) -> None:
    window.open_learner("s2")
    assert window.sheet.changed.isHidden()
    window.open_learner("s1")
    strip = window.sheet.changed
    assert strip.isVisible()
    assert "Changed since it was marked" in strip.words.text()
    assert "1 of 5 lengths differ" in strip.words.text()
    assert "video replaced" in strip.words.text()
    qtbot.mouseClick(strip.see, Qt.MouseButton.LeftButton)
    settle()
    page = window.further["handins"]
    assert window.pages.currentWidget() is page
    assert [row.learner for row in page.chosen()] == ["s1"]
    model = page.changes.model
    rows = [[model.index(r, c).data() for c in range(7)] for r in range(model.rowCount())]
    assert [row[3] for row in rows] == ["=", "≠", "=", "=", "="]
    assert rows[1] == ["30.0", "10", "11.02  10.95", "≠", "30.0", "10", "11.42  10.95"]
    head = model.headerData(0, Qt.Orientation.Horizontal)
    assert head == "when marked:\nL / cm"
    assert "video: replaced, Aino Example/swing video.mp4" in page.changes.words.text()
    qtbot.keyClick(page.table, Qt.Key.Key_Return)  # and back
    assert window.sheet.learner == "s1"


def test_the_hand_ins_filter_shows_it_whatever_was_filtered(
    qtbot: QtBot, window: Window, page: HandInsPage
) -> None:
    qtbot.mouseClick(page.chips["changed"], Qt.MouseButton.LeftButton)
    assert shown(page) == ["s1"]
    assert "≠ changed since marked" in page.order.index(0, STANDS).data()
    qtbot.mouseClick(page.chips["wanted"], Qt.MouseButton.LeftButton)
    assert shown(page) == []
    window.open_learner("s1")
    window.sheet.changed.see.click()
    settle()
    assert [row.learner for row in page.chosen()] == ["s1"]


def test_leaving_the_mark_settles_it_and_undo_asks_again(
    qtbot: QtBot, window: Window, session: Session
) -> None:
    window.open_learner("s1")
    marks = session.marks("s1")
    strip = window.sheet.changed
    strip.leave.setFocus()
    with qtbot.waitSignal(window.desk.changed, timeout=5000):
        qtbot.keyClick(strip.leave, Qt.Key.Key_Space)
    settle()
    assert strip.isHidden()
    assert window.sheet.table.hasFocus()  # the keyboard is not lost with the button
    assert session.marks("s1") == marks
    assert not window.bench.model.rows[0].changed
    with qtbot.waitSignal(window.desk.changed, timeout=5000):
        qtbot.mouseClick(window.undo_button, Qt.MouseButton.LeftButton)
    settle()
    assert strip.isVisible()
    assert window.bench.model.rows[0].changed


def test_marking_again_takes_the_marks_back_to_drafts(
    qtbot: QtBot, window: Window, page: HandInsPage, session: Session
) -> None:
    page.choose({"s1"})
    again = page.changes.strip.again
    again.setFocus()
    with qtbot.waitSignal(window.desk.changed, timeout=5000):
        qtbot.keyClick(again, Qt.Key.Key_Space)
    qtbot.waitUntil(lambda: "changed" not in page.order.index(
        shown(page).index("s1"), STANDS).data(), timeout=5000)  # fmt: skip
    assert session.marks("s1") == {}
    assert page.table.hasFocus()  # not the reminder, which stands next
    assert len(session.marks("s2")) == len(session.rubric.criteria)


def test_a_mark_given_again_says_of_how_many_it_still_holds(
    qtbot: QtBot, window: Window, session: Session
) -> None:
    window.open_learner("s1")
    card = window.sheet.margin.cards[0]
    of = len(window.sheet.margin.cards)
    with qtbot.waitSignal(window.desk.changed, timeout=5000):
        qtbot.mouseClick(next(iter(card.levels.values())), Qt.MouseButton.LeftButton)
    settle()
    assert f"This concerns {of - 1} of {of} marks." in window.sheet.changed.words.text()


def test_correcting_a_cell_oneself_is_no_change(
    qtbot: QtBot, window: Window, session: Session
) -> None:
    window.open_learner("s2")
    table = session.portfolio("s2").table
    source = table.readings[0].timings[0].source
    with qtbot.waitSignal(window.desk.changed, timeout=5000):
        window.desk.do(lambda held: held.correct("s2", source, "9.95"))
    settle()
    assert session.portfolio("s2").table.readings[0].timings[0].time_s == 9.95
    assert window.sheet.changed.isHidden()


def test_without_names_no_name_is_told(qtbot: QtBot, window: Window) -> None:
    with qtbot.waitSignal(window.desk.changed, timeout=5000):
        window.hide_names(True)
    settle()
    window.open_learner("s1")
    told = [window.sheet.changed.words.text()]
    window.sheet.changed.see.click()
    settle()
    changes = window.further["handins"].changes
    told += [changes.heading.text(), changes.words.text()]
    assert "video: replaced, Portfolio" in changes.words.text()
    for text in told:
        assert "Aino" not in text
    with qtbot.waitSignal(window.desk.changed, timeout=5000):
        qtbot.mouseClick(changes.strip.leave, Qt.MouseButton.LeftButton)
    settle()
    assert since_marked(window.desk.held, "s1") is None


def test_signed_off_marks_stand(qtbot: QtBot, window: Window) -> None:
    with qtbot.waitSignal(window.desk.changed, timeout=5000):
        window.desk.do(lambda _session: _sign(window.desk.held))
    settle()
    window.open_learner("s1")
    strip = window.sheet.changed
    assert "signed off and stand" in strip.words.text()
    assert strip.again.isHidden()
    assert strip.leave.isVisible()


def test_the_sign_off_names_it_and_leads_there(qtbot: QtBot, window: Window) -> None:
    signing = moderation(qtbot, window).signing
    left, changed = signing.leads["unmarked"], signing.leads["changed"]
    assert left.words.text() == "1 learner is not fully marked:"
    assert [one.text() for one in left.names] == ["Cato Instance"]
    assert not signing.sign.isEnabled()
    window.desk.do(_mark_cato)
    qtbot.waitUntil(left.isHidden, timeout=5000)
    assert [one.text() for one in changed.names] == ["Aino Example"]
    assert "Nothing stands in the way" not in signing.state.text()
    assert signing.sign.isEnabled()  # she may let the marks stand
    qtbot.mouseClick(changed.names[0], Qt.MouseButton.LeftButton)
    assert window.pages.currentWidget() is window.sheet
    assert "Changed since it was marked" in window.sheet.changed.words.text()
    window.show_place("moderation")
    window.desk.do(lambda _session: let_stand(window.desk.held, "s1"))
    qtbot.waitUntil(changed.isHidden, timeout=5000)
    assert signing.state.text() == "Nothing stands in the way of signing."


def _mark_cato(held: Session) -> None:
    for criterion in held.rubric.criteria:
        held.set_level("s3", criterion.id, criterion.levels[0].name)


def _sign(held: Session) -> None:
    _mark_cato(held)
    sign_off(held, despite_open=True)


def test_of_an_old_mark_it_is_said_that_nothing_is_known(
    qtbot: QtBot, empty_window: Window, class_folder: Path, settings: QSettings
) -> None:
    opened = Session.open(class_folder, "T. Teacher")
    value = dict(opened.value("mark", "s1", opened.rubric.criteria[0].id))
    del value["work"]
    opened.decide(*(Decision("mark", "s1", c.id, value) for c in opened.rubric.criteria))
    opened.close()
    path = class_folder / "Aino Example" / "readings.csv"
    later = path.stat().st_mtime + 3600
    os.utime(path, (later, later))
    empty_window.open_folder(class_folder)
    qtbot.waitUntil(lambda: empty_window.sheet is not None, timeout=10_000)
    empty_window.open_learner("s1")
    words = empty_window.sheet.changed.words.text()
    assert "What was marked is not known" in words
    empty_window.sheet.changed.see.click()
    settle()
    changes = empty_window.further["handins"].changes
    assert "What was marked is not known" in changes.words.text()
    assert changes.table.isHidden()


# --- the table of hand-ins -----------------------------------------------------------------


def test_lines_break_neither_after_a_sign_nor_within_a_day() -> None:
    assert held("▲ 3 days late  ◇ incomplete", STANDS) == "▲\u00a03 days late  ◇\u00a0incomplete"
    assert held("29. Nov. 2026, 10:57", WHEN) == "29.\u00a0Nov.\u00a02026, 10:57"
    assert held("Li O", NAME) == "Li O"


def test_with_nothing_to_compare_the_words_stand_at_the_top(
    window: Window, page: HandInsPage
) -> None:
    page.choose({"s1"})
    settle()
    changes = page.changes
    compared = changes.height()
    changes.table.hide()
    settle()
    assert changes.height() < compared - 50
    assert changes.heading.geometry().top() < 20


@pytest.mark.parametrize("scale", [1.0, 2.0])
def test_no_cell_of_the_hand_ins_is_cut(
    qtbot: QtBot, window: Window, page: HandInsPage, scale: float
) -> None:
    window._theme.set_scale(scale)
    try:
        settle()
        table = page.table
        for column in range(page.order.columnCount()):
            for row in range(page.order.rowCount()):
                index = page.order.index(row, column)
                cell = table.visualRect(index).adjusted(6, 0, -6, 0)
                needed = table.fontMetrics().boundingRect(
                    cell.adjusted(0, 0, 0, 1000),
                    int(Qt.TextFlag.TextWordWrap),
                    index.data(),
                )
                assert needed.width() <= cell.width(), index.data()
                assert needed.height() <= cell.height(), index.data()
        assert table.horizontalScrollBar().maximum() == 0
        assert table.height() >= 3 * table.rowHeight(0)
    finally:
        window._theme.set_scale(1.0)


def test_rows_are_low_again_after_large_text(window: Window, page: HandInsPage) -> None:
    high = page.table.rowHeight(0)
    window._theme.set_scale(2.0)
    settle()
    wrapped = page.table.rowHeight(0)
    page.choose({"s1"})
    settle()
    compared = page.changes.table
    try:
        last = compared.model().rowCount() - 1
        foot = compared.rowViewportPosition(last) + compared.rowHeight(last)
        assert foot <= compared.viewport().height()
    finally:
        window._theme.set_scale(1.0)
    settle()
    assert wrapped > 1.5 * high
    assert page.table.rowHeight(0) == high


def test_the_columns_follow_the_window(window: Window, page: HandInsPage) -> None:
    window.resize(1600, 800)
    settle()
    table = page.table
    assert sum(table.columnWidth(c) for c in range(page.order.columnCount())) == table.room


def test_columns_are_shared_out_fairly() -> None:
    assert fair_widths((10, 10, 10), (40, 60, 20), 200, 2) == (40, 60, 100)
    assert fair_widths((10, 20, 10), (40, 60, 20), 80, 2) == (25, 40, 15)
    assert fair_widths((10, 20, 10), (40, 60, 20), 30, 2) == (10, 20, 10)
