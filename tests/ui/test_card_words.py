"""What a card says: the whole name where there is room, and how far the marking is."""

from __future__ import annotations

import dataclasses

import pytest
from PySide6.QtCore import QRectF, Qt
from PySide6.QtGui import QFont, QFontMetricsF, QImage, QPainter
from pytestqt.qtbot import QtBot

from markbench.session import Session
from markbench.ui.bench import card
from markbench.ui.bench.names import set_name
from markbench.ui.bench.rows import LearnerRow
from markbench.ui.look.theme import Theme
from markbench.ui.window import Window

WIDE, HIGH = 200, 120


def metrics(theme: Theme, size: str) -> QFontMetricsF:
    return QFontMetricsF(theme.font(size, bold=True))


def test_a_name_takes_a_third_line_where_there_is_height(theme: Theme) -> None:
    body = metrics(theme, "body")
    width = max(body.horizontalAdvance(part) for part in ("Quentin", "Adeyemi-", "Ross")) + 1
    found = set_name("Quentin Adeyemi-Ross", width, 3 * body.height(), 0, theme)
    assert found.lines == ("Quentin", "Adeyemi-", "Ross")
    assert found.font == theme.font("body", bold=True)


def test_a_name_is_narrower_before_it_is_smaller_and_smaller_before_it_is_cut(
    theme: Theme,
) -> None:
    body, small = metrics(theme, "body"), metrics(theme, "small")
    width = body.horizontalAdvance("Vandermeersch") * 0.93
    found = set_name("Ulrich Vandermeersch", width, 3 * body.height(), 0, theme)
    assert found.lines == ("Ulrich", "Vandermeersch")
    assert found.font.pixelSize() == theme.font("body", bold=True).pixelSize()
    assert found.metrics.horizontalAdvance("Vandermeersch") <= width
    width = small.horizontalAdvance("Vandermeersch") * 0.85
    found = set_name("Ulrich Vandermeersch", width, 3 * body.height(), 0, theme)
    assert found.lines == ("Ulrich", "Vandermeersch")
    assert found.font.pixelSize() == theme.font("small", bold=True).pixelSize()


def test_a_part_longer_than_a_line_goes_on_in_the_next(theme: Theme) -> None:
    small = metrics(theme, "small")
    width = small.horizontalAdvance("Featherst") + 1
    found = set_name("Ada Featherstonehaugh", width, 3 * small.height(), 0, theme)
    assert "".join(found.lines).replace(" ", "") == "AdaFeatherstonehaugh"
    assert all(found.metrics.horizontalAdvance(line) <= width for line in found.lines)
    assert len(found.lines) == 3


def test_without_height_a_name_ends_in_three_dots(theme: Theme) -> None:
    small = metrics(theme, "small")
    width = small.horizontalAdvance("Feath") + 1
    found = set_name("Ada Featherstonehaugh-Brown", width, 2 * small.height(), 0, theme)
    assert len(found.lines) == 2
    assert found.lines[-1].endswith("…")


def test_the_first_line_keeps_clear_of_the_folded_corner(theme: Theme) -> None:
    body = metrics(theme, "body")
    width = body.horizontalAdvance("Zo Li") + 1
    assert set_name("Zo Li", width, 60, 0, theme).lines == ("Zo Li",)
    clear = set_name("Zo Li", width, 60, 14, theme)
    assert clear.lines == ("Zo", "Li")
    assert clear.font == theme.font("body", bold=True)


def test_with_names_hidden_a_card_is_headed_by_a_number(qtbot: QtBot, window: Window) -> None:
    with qtbot.waitSignal(window.desk.changed, timeout=5000):
        window.hide_names(True)
    assert sorted(row.called for row in window.bench.model.rows) == ["1", "2", "3"]
    for row in window.bench.model.rows:
        assert row.called in row.name.split()
    with qtbot.waitSignal(window.desk.changed, timeout=5000):
        window.desk.do(lambda session: session.accept("s1"))
    assert sorted(row.called for row in window.bench.model.rows) == ["1", "2", "3"]
    with qtbot.waitSignal(window.desk.changed, timeout=5000):
        window.hide_names(False)
    assert all(row.called == row.name for row in window.bench.model.rows)


class Listener:
    """Stands in for a painter and hears what is written."""

    def __init__(self) -> None:
        self.said: list[str] = []

    def setFont(self, font: QFont) -> None: ...

    def setPen(self, pen: object) -> None: ...

    def drawText(self, box: QRectF, how: Qt.AlignmentFlag, text: str) -> None:
        self.said.append(text)


def written(row: LearnerRow, theme: Theme) -> str:
    listener = Listener()
    card._paint_total(listener, row, QRectF(0, 0, 90, 14), theme)  # type: ignore[arg-type]
    return listener.said[0]


def test_a_draft_says_of_how_much_as_a_mark_does(
    qtbot: QtBot, window: Window, session: Session, theme: Theme
) -> None:
    rows = window.bench.model.rows
    most = f"{session.rubric.most:g}"
    assert written(rows[0], theme) == f"draft {rows[0].drafted:g} / {most}"
    with qtbot.waitSignal(window.desk.changed, timeout=5000):
        window.desk.do(lambda held: held.accept("s1"))
    assert written(rows[0], theme) == f"{rows[0].total:g} / {most}"


@pytest.mark.parametrize("scale", [1.0, 2.0])
def test_the_boxes_are_of_one_size_whatever_the_total(
    window: Window, theme: Theme, scale: float
) -> None:
    theme.set_scale(scale)
    try:
        row = window.bench.model.rows[0]
        strips = []
        for total in (0.0, 9.0, 17.5):
            other = dataclasses.replace(row, _add_up=lambda total=total: total)
            strips.append(foot(other, window, theme))
        assert strips[0] == strips[1] == strips[2]
        marked = dataclasses.replace(row, marked=2)
        assert foot(marked, window, theme) != strips[0]  # it is these boxes that are compared
    finally:
        theme.set_scale(1.0)


def foot(row: LearnerRow, window: Window, theme: Theme) -> QImage:
    """The foot of a card, under its words."""
    picture = QImage(round(WIDE * theme.scale), round(HIGH * theme.scale),
                     QImage.Format.Format_RGB32)  # fmt: skip
    picture.fill(Qt.GlobalColor.white)
    painter = QPainter(picture)
    box = QRectF(picture.rect())
    card.paint_card(painter, row, box, window.bench.model.axes, theme)
    painter.end()
    high = round(6 + card._TALLY * theme.line_height("small")) - 1
    return picture.copy(0, picture.height() - high, picture.width(), high)
