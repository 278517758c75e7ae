"""What hands do on the page of one criterion: digits, Enter, arrows, orders, names hidden."""

from __future__ import annotations

from collections.abc import Callable
from itertools import pairwise
from pathlib import Path

import pytest
from PySide6.QtCore import QAbstractListModel, QPoint, QRectF, Qt
from PySide6.QtGui import QFontMetricsF
from PySide6.QtWidgets import QApplication, QLabel, QWidget
from pytestqt.qtbot import QtBot

from markbench.session import Session
from markbench.session.moderating import reopen, sign_off
from markbench.session.order import in_order
from markbench.ui.across.model import STRIP
from markbench.ui.across.page import AcrossPage
from markbench.ui.across.strip import columns, level_box, whole_numbers
from markbench.ui.look.words import fitted
from markbench.ui.window import Window

NAMES = ("Aino", "Bodil", "Cato")


def settle() -> None:
    for _ in range(4):
        QApplication.processEvents()


def press(qtbot: QtBot, window: Window, key: Qt.Key, changes: bool = True) -> None:
    """A key to whatever has the keyboard; waits for the change it makes."""
    page = window.further["across"]
    if not changes:
        qtbot.keyClick(page.view, key)
        return
    with qtbot.waitSignal(window.desk.changed, timeout=5000):
        qtbot.keyClick(page.view, key)


@pytest.fixture
def page(qtbot: QtBot, window: Window) -> AcrossPage:
    qtbot.mouseClick(window.places.buttons["across"], Qt.MouseButton.LeftButton)
    settle()
    return window.further["across"]


def test_digits_mark_enter_accepts_and_goes_on_to_the_next(
    qtbot: QtBot, window: Window, page: AcrossPage, session: Session
) -> None:
    criterion = session.rubric.criteria[0]
    assert page.learner == "s1"
    assert page.view.hasFocus()
    press(qtbot, window, Qt.Key.Key_2)
    assert session.mark("s1", criterion.id).level == criterion.levels[1].name
    assert page.learner == "s1"  # one sees what one chose
    press(qtbot, window, Qt.Key.Key_Return, changes=False)
    assert page.learner == "s2"
    press(qtbot, window, Qt.Key.Key_Return)
    assert session.mark("s2", criterion.id).level == session.draft("s2", criterion.id).level
    assert page.learner == "s3"
    assert "2 of 3" in page.state.text()


def test_arrows_move_among_learners_and_criteria(
    qtbot: QtBot, window: Window, page: AcrossPage, session: Session
) -> None:
    qtbot.keyClick(page.view, Qt.Key.Key_Down)
    assert page.learner == "s2"
    shown = " ".join(page.card.text.toPlainText().split("\n"))  # a sentence to a line
    assert shown == session.feedback("s2", page.criterion.id)
    qtbot.keyClick(page.view, Qt.Key.Key_Right)
    assert page.criterion.id == session.rubric.criteria[1].id
    assert page.card.criterion.id == session.rubric.criteria[1].id
    qtbot.keyClick(page.view, Qt.Key.Key_Left)
    assert page.criterion.id == session.rubric.criteria[0].id


def test_a_digit_in_the_text_is_text(
    qtbot: QtBot, window: Window, page: AcrossPage, session: Session
) -> None:
    page.write()
    page.card.text.selectAll()
    qtbot.keyClicks(page.card.text, "2 lengths more")
    page.settle()
    qtbot.waitUntil(lambda: session.feedback("s1", page.criterion.id) == "2 lengths more")
    assert session.mark("s1", page.criterion.id) is None


def test_a_click_on_a_level_box_marks_that_learner(
    qtbot: QtBot, window: Window, page: AcrossPage, session: Session
) -> None:
    index = page.model.index(2)
    strip = QRectF(page.view.visualRect(index)).adjusted(0.5, 2.5, -0.5, -2.5)
    criterion = session.rubric.criteria[0]
    place = columns(strip.width(), window._theme, len(criterion.levels))
    x, wide = place.levels[3]
    cell = QRectF(strip.left() + x, strip.top(), wide, strip.height())
    at = level_box(cell, window._theme).center().toPoint()
    with qtbot.waitSignal(window.desk.changed, timeout=5000):
        qtbot.mouseClick(page.view.viewport(), Qt.MouseButton.LeftButton, pos=QPoint(at))
    assert session.mark("s3", criterion.id).level == criterion.levels[3].name
    assert page.model.index(2).data(STRIP).level == criterion.levels[3].name


def test_a_mark_goes_back_to_a_draft_and_is_undone(
    qtbot: QtBot, window: Window, page: AcrossPage, session: Session
) -> None:
    press(qtbot, window, Qt.Key.Key_1)
    with qtbot.waitSignal(window.desk.changed, timeout=5000):
        qtbot.keyClick(page.view, Qt.Key.Key_Backspace, Qt.KeyboardModifier.ControlModifier)
    assert session.mark("s1", page.criterion.id) is None
    with qtbot.waitSignal(window.desk.changed, timeout=5000):
        qtbot.mouseClick(window.undo_button, Qt.MouseButton.LeftButton)
    assert session.mark("s1", page.criterion.id) is not None
    assert page.model.index(0).data(STRIP).level is not None


def test_orders_and_the_seed_of_a_shuffle(
    qtbot: QtBot, window: Window, page: AcrossPage, session: Session
) -> None:
    page.orders.setCurrentIndex(page.orders.findData("concern"))
    with qtbot.waitSignal(window.desk.changed, timeout=5000):
        page.orders.activated.emit(page.orders.currentIndex())
    assert page.model.order[0] == "s2"  # the one with a timing a whole swing too long
    with qtbot.waitSignal(window.desk.changed, timeout=5000):
        qtbot.keyClick(page.view, Qt.Key.Key_S, Qt.KeyboardModifier.AltModifier)
    decision = session.history()[-1]
    assert decision.kind == "order"
    assert page.model.order == in_order(session, page.criterion.id)
    assert str(decision.value["seed"]) in page._seed.text()
    assert page.again.isVisible()
    # Another criterion keeps its own order.
    qtbot.keyClick(page.view, Qt.Key.Key_Right)
    assert page.model.order == ("s1", "s2", "s3")
    assert not page.again.isVisible()


def test_the_order_stays_while_marks_are_given(
    qtbot: QtBot, window: Window, page: AcrossPage, session: Session
) -> None:
    before = page.model.order
    qtbot.keyClick(page.view, Qt.Key.Key_Down)
    press(qtbot, window, Qt.Key.Key_1)
    assert page.model.order == before
    assert page.learner == "s2"


def test_a_reason_leads_to_the_sheet_and_escape_leads_back(
    qtbot: QtBot, window: Window, page: AcrossPage, session: Session
) -> None:
    link = next(one for one in page.card._reasons if one.isVisible() and one.isEnabled())
    qtbot.mouseClick(link, Qt.MouseButton.LeftButton)
    assert window.pages.currentWidget() is window.sheet
    assert window.sheet.learner == "s1"
    qtbot.keyClick(window, Qt.Key.Key_Escape)
    if window.pages.currentWidget() is not page:  # a viewer was open over the sheet
        qtbot.keyClick(window, Qt.Key.Key_Escape)
    assert window.pages.currentWidget() is page
    assert page.learner == "s1"
    qtbot.keyClick(window, Qt.Key.Key_Escape)
    assert window.pages.currentWidget() is window.bench


# --- names hidden ----------------------------------------------------------------------


def words_on(page: QWidget) -> list[str]:
    """Everything a page says: labels, buttons, tooltips, accessible names, rows of models."""
    found: list[str] = []
    for widget in (page, *page.findChildren(QWidget)):
        found += [widget.toolTip(), widget.accessibleName(), widget.accessibleDescription()]
        for name in ("text", "toPlainText", "placeholderText", "currentText"):
            says: Callable[[], str] | None = getattr(widget, name, None)
            if callable(says):
                found.append(str(says()))
        model = getattr(widget, "model", lambda: None)
        model = model() if callable(model) else None
        if model is not None and not isinstance(widget, QLabel):
            for row in range(model.rowCount()):
                flat = isinstance(model, QAbstractListModel)
                for column in range(1 if flat else model.columnCount()):
                    for role in (Qt.ItemDataRole.DisplayRole, Qt.ItemDataRole.ToolTipRole,
                                 Qt.ItemDataRole.AccessibleTextRole):  # fmt: skip
                        found.append(str(model.index(row, column).data(role)))
    return found


def test_names_are_hidden_on_every_page_until_switched_off(
    qtbot: QtBot, window: Window, page: AcrossPage, session: Session
) -> None:
    assert any("Aino" in words for words in words_on(page))  # the test can see names
    with qtbot.waitSignal(window.desk.changed, timeout=5000):
        qtbot.mouseClick(window.places.blind, Qt.MouseButton.LeftButton)
    settle()
    assert "hidden" in window.places.blind.text()
    assert session.value("blind")["on"] is True
    assert session.history()[-1].at is not None
    for place in ("across", "class"):
        window.show_place(place)
        settle()
        for words in words_on(window.pages.currentWidget()):
            assert not any(name in words for name in NAMES), words
    for learner in ("s1", "s2", "s3"):
        window.open_learner(learner)
        window.sheet.open_table()
        qtbot.wait(150)
        for words in words_on(window.sheet):
            assert not any(name in words for name in NAMES), words
    with qtbot.waitSignal(window.desk.changed, timeout=5000):
        qtbot.mouseClick(window.places.blind, Qt.MouseButton.LeftButton)
    settle()
    assert "shown" in window.places.blind.text()
    window.show_place("across")
    assert any("Aino" in words for words in words_on(page))


def test_a_selfie_is_not_opened_while_names_are_hidden(
    qtbot: QtBot, window: Window, page: AcrossPage
) -> None:
    def pictures() -> dict[str, bool]:
        return {t.kind: not t.image.isNull() for t in page.evidence.thumbs if not t.isHidden()}

    with qtbot.waitSignal(window.desk.changed, timeout=5000):
        window.hide_names(True)
    page._go_to(page.model.number_of("s1"))
    qtbot.waitUntil(lambda: pictures().get("setup_photo", False), timeout=5000)
    qtbot.wait(200)
    assert pictures()["selfie"] is False
    with qtbot.waitSignal(window.desk.changed, timeout=5000):
        window.hide_names(False)
    qtbot.waitUntil(lambda: pictures().get("selfie", False), timeout=5000)


def test_marks_given_blind_are_the_learners_own(
    qtbot: QtBot, window: Window, page: AcrossPage, session: Session
) -> None:
    with qtbot.waitSignal(window.desk.changed, timeout=5000):
        window.hide_names(True)
    learner = page.learner
    press(qtbot, window, Qt.Key.Key_1)
    assert session.mark(learner, page.criterion.id) is not None
    assert session.portfolio(learner).learner.name  # the journal knows the learner by id


# --- drawing ---------------------------------------------------------------------------


def test_columns_never_overlap(window: Window) -> None:
    theme = window._theme
    for scale in (1.0, 2.0):
        theme.set_scale(scale)
        for width in (420, 680, 860, 1300):
            for levels in (2, 5, 7):
                place = columns(width, theme, levels)
                shown = [one for one in (place.graph, place.readings, place.words) if one[1]]
                edges = [*shown, *place.levels]
                for (x, wide), (after, _) in pairwise(edges):
                    assert x + wide <= after + 0.01
                assert place.levels[-1][0] + place.levels[-1][1] <= width
    theme.set_scale(1.0)


def test_fitted_lines_say_where_they_break_off(window: Window) -> None:
    metrics = window.fontMetrics()
    text = "one two three four five six seven eight nine ten"
    width = metrics.horizontalAdvance("one two three")
    whole = fitted(text, metrics, 10_000, 3)
    assert whole == [text]
    lines = fitted(text, metrics, width, 2)
    assert len(lines) == 2
    assert lines[-1].endswith("…")
    assert all(metrics.horizontalAdvance(line) <= width for line in lines)


def test_the_page_draws_at_twice_the_size_and_in_the_dark(window: Window, page: AcrossPage) -> None:
    theme = window._theme
    theme.choose(True)
    theme.set_scale(2.0)
    settle()
    assert not page.grab().toImage().isNull()
    assert window.width() <= 1280
    theme.set_scale(1.0)
    theme.choose(False)


def test_after_sign_off_the_page_is_locked_and_says_so(
    qtbot: QtBot, window: Window, page: AcrossPage, session: Session
) -> None:
    window.show_class()
    for learner in session.learners:
        for criterion in session.rubric.criteria:
            session.set_level(learner.id, criterion.id, criterion.levels[0].name)
    sign_off(session)
    qtbot.mouseClick(window.places.buttons["across"], Qt.MouseButton.LeftButton)
    settle()
    assert page.state.text() == "✓ signed off"
    with qtbot.waitSignal(window.desk.trouble, timeout=5000) as told:
        qtbot.keyClick(page.view, Qt.Key.Key_3)
    assert "Signed off" in told.args[0]
    first = page.criterion.levels[0].name
    assert session.mark("s1", page.criterion.id).level == first
    with qtbot.waitSignal(window.desk.changed, timeout=5000):
        window.desk.do(lambda held: reopen(held, "A sheet was found."))
    window.show_class()
    qtbot.mouseClick(window.places.buttons["across"], Qt.MouseButton.LeftButton)
    settle()
    qtbot.keyClick(page.view, Qt.Key.Key_3)
    qtbot.waitUntil(lambda: session.mark("s1", page.criterion.id).level != first, timeout=5000)


def test_numbers_are_whole_and_those_without_room_are_counted(window: Window) -> None:
    metrics = QFontMetricsF(window.font())
    written = ("31.2", "11.41", "11.27", "11.12", "11.45")
    whole = metrics.horizontalAdvance("  ".join(written))
    assert whole_numbers(written, metrics, whole + 1) == "31.2  11.41  11.27  11.12  11.45"
    room = metrics.horizontalAdvance("31.2  11.41  11.27  +2") + 1
    assert whole_numbers(written, metrics, room) == "31.2  11.41  11.27  +2"
    assert whole_numbers(written, metrics, 1) == "31.2  +4"


@pytest.mark.parametrize(("wide", "scale"), [(1280, 1.0), (1024, 1.0), (1280, 2.0)])
def test_the_levels_are_named_at_every_width(
    window: Window, page: AcrossPage, wide: int, scale: float
) -> None:
    window.resize(wide, 700)
    window._theme.set_scale(scale)
    settle()
    try:
        heading = page.heading
        over = [" ".join(name) for name in heading._names()]
        beside = "  ".join(heading._legend())
        for number, level in enumerate(page.criterion.levels, 1):
            assert level.name == over[number - 1] or f"{number} {level.name}" in beside
    finally:
        window._theme.set_scale(1.0)


def test_readings_stand_as_they_were_written_and_photos_to_be_told_apart_are_not_missing(
    qtbot: QtBot, empty_window: Window, class_folder: Path
) -> None:
    own = class_folder / "Aino Example"
    (own / "readings.csv").write_text("L (cm),t1 for 10 swings (s),t2 (s)\n20,9,8.95\n30,11,11.0\n")
    (own / "setup.png").rename(own / "IMG_1.png")
    (own / "selfie.png").rename(own / "IMG_2.png")
    empty_window.open_folder(class_folder)
    qtbot.waitUntil(lambda: empty_window.sheet is not None, timeout=10_000)
    empty_window.show_place("across")
    page = empty_window.further["across"]
    strip = page.model.strip("s1")
    assert strip.readings[0] == ("20", "9", "8.95")
    page.show_criterion("evidence")
    told = {one.words: one.lacks for one in page.model.strip("s1").values}
    assert told["2 photos to be told apart"]
    assert "pieces 0" not in told
    shown = [thumb.accessibleName() for thumb in page.evidence.thumbs if not thumb.isHidden()]
    assert not any("missing" in name for name in shown)


def test_tab_goes_as_the_eye_does_to_the_foot_last(qtbot: QtBot, window: Window) -> None:
    window.activateWindow()
    window.show_place("across")
    page = window.further["across"]
    page.view.setFocus()
    led = []
    for _ in range(40):
        qtbot.keyClick(QApplication.focusWidget(), Qt.Key.Key_Tab)
        here = QApplication.focusWidget()
        if here is page.view or here is page.whole:
            break
        led.append(here)
    assert page.accept in led
    assert led[-1] is page.accept
    parts = [part for part in (page.evidence, page.card) for one in led if part.isAncestorOf(one)]
    assert parts == sorted(parts, key=(page.evidence, page.card).index)
    assert set(parts) == {page.evidence, page.card}
