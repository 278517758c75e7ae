"""The page of one criterion: strips say what differs, shuffles for all, Escape step by step."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest
from PySide6.QtCore import QRect, Qt
from PySide6.QtGui import QFontMetricsF, QImage, QPainter
from PySide6.QtWidgets import QApplication, QStyleOptionViewItem
from pytestqt.qtbot import QtBot

from markbench.session import Session
from markbench.session.order import in_order
from markbench.ui.across import page as across
from markbench.ui.across.in_short import in_short
from markbench.ui.across.page import AcrossPage
from markbench.ui.across.strip import columns
from markbench.ui.window import Window

ALT, SHIFT = Qt.KeyboardModifier.AltModifier, Qt.KeyboardModifier.ShiftModifier


def settle() -> None:
    for _ in range(5):
        QApplication.processEvents()


@pytest.fixture
def page(window: Window) -> AcrossPage:
    window.activateWindow()
    window.show_place("across")
    settle()
    return window.further["across"]


@pytest.fixture
def uneven(class_folder: Path) -> None:
    """Aino timed three lengths, once each; Bodil each of five three times; Cato nothing."""
    head = "Length (cm),Time 1 for 10 swings (s)"
    once = [head, "20.0,8.95", "25.0,10.02", "30.0,11.02"]
    three = [
        f"{head},Time 2 for 10 swings (s),Time 3 for 10 swings (s)",
        "20.0,8.95,9.01,8.98",
        "30.0,11.02,10.95,10.99",
        "40.0,12.72,12.66,12.70",
        "50.0,14.21,14.15,14.18",
        "60.0,15.52,15.58,15.55",
    ]
    for name, lines in (("Aino Example", once), ("Bodil Sample", three)):
        (class_folder / name / "readings.csv").write_text("\n".join(lines) + "\n")
    (class_folder / "Cato Instance" / "readings.csv").unlink()


class Ear(QPainter):
    """A painter that remembers what was written."""

    def __init__(self, on: QImage) -> None:
        super().__init__(on)
        self.said: list[str] = []

    def drawText(self, *how: object) -> None:
        self.said.append(str(how[-1]))
        super().drawText(*how)  # type: ignore[call-overload]


def said(page: AcrossPage, learner: str, width: int) -> list[str]:
    """What the strip of a learner says, as it is painted ``width`` wide."""
    option = QStyleOptionViewItem()
    index = page.model.index(page.model.number_of(learner))
    option.rect = QRect(0, 0, width, page.delegate.sizeHint(option, index).height())
    picture = QImage(option.rect.size(), QImage.Format.Format_RGB32)
    ear = Ear(picture)
    page.delegate.paint(ear, option, index)
    ear.end()
    return ear.said


# --- what differs ----------------------------------------------------------------------


def test_a_strip_gives_the_values_and_first_those_that_fall_short(
    uneven: None, window: Window, session: Session
) -> None:
    readings = session.rubric.criteria[0]

    def values(learner: str) -> list[tuple[str, bool]]:
        return [(one.words, one.lacks) for one in in_short(session, learner, readings)]

    assert values("s2") == [
        ("lengths 5", False), ("timings each 3", False), ("swings 10", False), ("ratio 3.0", False),
    ]  # fmt: skip
    assert values("s1") == [
        ("lengths 3", True), ("timings each 1", True), ("ratio 1.5", True), ("swings 10", False),
    ]  # fmt: skip
    assert values("s3") == [("no readings", True)]


def test_a_strip_gives_g_with_its_uncertainty(window: Window, session: Session) -> None:
    result = next(one for one in session.rubric.criteria if one.id == "result")
    words = [one.words for one in in_short(session, "s1", result)]
    assert sum(one.startswith("g ") for one in words) == 1
    assert any("±" in one and one.endswith("m/s²") for one in words)


def test_values_timings_and_numbers_of_questions_are_all_written(
    uneven: None, window: Window, page: AcrossPage
) -> None:
    wide = 1000
    assert page.model.timings == 3
    words = said(page, "s2", wide)
    for line in page.model.strip("s2").readings:
        assert len(line) == 4  # a length and three timings
        assert "  ".join(line) in words
    row = page.model.strip("s3").row
    words = said(page, "s3", wide)
    after = words[words.index(row.name) + 1 :]
    counts = [str(count) for count in (row.look, row.ask) if count]
    assert counts
    assert after[: len(counts) + 1] == [*counts, "no readings"]


def test_readings_have_the_room_their_timings_need_where_there_is_any(window: Window) -> None:
    theme = window._theme
    metrics = QFontMetricsF(theme.font("small"))
    for timings in (1, 2, 3, 5):
        text = "20.0" + "  12.34" * timings
        place = columns(1300, theme, 5, timings)
        assert place.readings[1] >= metrics.horizontalAdvance(text)
        narrow = columns(760, theme, 5, timings)
        assert narrow.words[1] >= theme.px(150)


def test_only_words_of_the_teachers_own_stand_on_a_strip(
    qtbot: QtBot, window: Window, page: AcrossPage
) -> None:
    assert not any("“" in one for one in said(page, "s1", 1000))
    with qtbot.waitSignal(window.desk.changed, timeout=5000):
        window.desk.do(lambda held: held.set_feedback("s1", page.criterion.id, "Well hung."))
    assert "“Well hung.”" in said(page, "s1", 1000)


# --- shuffling all ---------------------------------------------------------------------


@pytest.fixture
def seeds(monkeypatch: pytest.MonkeyPatch) -> Iterator[int]:
    dealt = iter(range(100, 200))
    monkeypatch.setattr(across.secrets, "randbelow", lambda _most: next(dealt))
    return dealt


def test_every_criterion_is_shuffled_at_once_each_with_its_own_seed(
    qtbot: QtBot, window: Window, page: AcrossPage, session: Session, seeds: Iterator[int]
) -> None:
    criteria = [one.id for one in session.rubric.criteria]
    with qtbot.waitSignal(window.desk.changed, timeout=5000):
        qtbot.keyClick(page.view, Qt.Key.Key_S, ALT | SHIFT)
    settle()
    kept = [session.value("order", "", one) for one in criteria]
    assert [one["by"] for one in kept] == ["shuffled"] * len(criteria)
    assert len({one["seed"] for one in kept}) == len(criteria)
    for criterion, order in zip(criteria, kept, strict=True):
        page.show_criterion(criterion)
        assert page.orders.currentData() == "shuffled"
        assert str(order["seed"]) in page._seed.text()
        assert page.model.order == in_order(session, criterion)
    with qtbot.waitSignal(window.desk.changed, timeout=5000):
        window.desk.undo()
    assert [session.value("order", "", one) for one in criteria] == [None] * len(criteria)


def test_shuffling_all_is_offered_with_the_orders_and_then_reads_shuffled(
    qtbot: QtBot, window: Window, page: AcrossPage, session: Session
) -> None:
    page.orders.setCurrentIndex(page.orders.count() - 1)
    with qtbot.waitSignal(window.desk.changed, timeout=5000):
        page.orders.activated.emit(page.orders.currentIndex())
    settle()
    assert all(session.value("order", "", one.id) for one in session.rubric.criteria)
    assert page.orders.currentData() == "shuffled"
    assert window.deeds.find("shuffle every")


# --- Escape ----------------------------------------------------------------------------


def test_escape_leads_from_a_text_to_the_strips_and_from_them_to_the_class(
    qtbot: QtBot, window: Window, page: AcrossPage, session: Session
) -> None:
    page.write()
    page.card.text.selectAll()
    qtbot.keyClicks(page.card.text, "Measure once more")
    qtbot.keyClick(page.card.text, Qt.Key.Key_Escape)
    settle()
    assert window.pages.currentWidget() is page
    assert page.view.hasFocus()
    qtbot.waitUntil(lambda: session.feedback("s1", page.criterion.id) == "Measure once more")
    qtbot.keyClick(page.view, Qt.Key.Key_Escape)
    settle()
    assert window.pages.currentWidget() is window.bench
