"""What a card says: the whole name where there is room, and how far the marking is."""

from __future__ import annotations

import dataclasses

import pytest
from PySide6.QtCore import QRectF, Qt
from PySide6.QtGui import QFont, QFontMetricsF, QImage, QPainter
from pytestqt.qtbot import QtBot

from markbench.session import Session
from markbench.session.order import in_order
from markbench.session.so_far import SoFar, so_far
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
            other = dataclasses.replace(row, _add_up=lambda total=total: SoFar(total, row.most, 0))
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


def test_a_name_that_is_cut_keeps_its_blanks(theme: Theme) -> None:
    small = metrics(theme, "small")
    width = small.horizontalAdvance("Alexander Un")
    found = set_name("Constantin-Alexander Unterberger von Au", width, 2 * small.height(), 0, theme)
    assert found.lines[-1].endswith("…")
    assert found.lines[-1].startswith("Alexander U")


def test_the_signs_of_all_cards_stand_on_one_line(
    qtbot: QtBot, window: Window, monkeypatch: pytest.MonkeyPatch, theme: Theme
) -> None:
    rows = window.bench.model.rows
    rows[0] = dataclasses.replace(rows[0], called="Maximiliane-Theodora Oberhammer-Schattenbichler")
    monkeypatch.setattr(
        card, "paint_piece", lambda _p, _kind, _there, box, *_a, **_k: at.add(box.top())
    )
    delegate = window.bench.grid.itemDelegate()
    for wide, high in ((200, 110), (300, 150), (450, 200)):
        at: set[float] = set()
        image = QImage(wide, high, QImage.Format.Format_ARGB32)
        painter = QPainter(image)
        for row in rows:
            delegate.draw(painter, row, QRectF(0, 0, wide, high))
        painter.end()
        assert len(at) == 1


def test_a_learner_is_found_however_umlauts_are_typed(qtbot: QtBot, window: Window) -> None:
    rows = window.bench.model.rows
    rows[0] = dataclasses.replace(rows[0], name="Emre Yılmaz")
    rows[1] = dataclasses.replace(rows[1], name="Zoë Müller-Brückenbauer")
    for typed, name in (
        ("yilmaz", "Emre"), ("YILMAZ emre", "Emre"), ("brueckenbauer", "Zoë"),
        ("bruckenb", "Zoë"), ("Brücken", "Zoë"), ("mueller zoe", "Zoë"),
    ):  # fmt: skip
        window.bench.search.setText(typed)
        shown = [row.name for row in rows if row.id in window.bench.order.learners()]
        assert [one.split()[0] for one in shown] == [name], typed


def test_by_name_is_by_surname_where_the_list_tells_it(
    qtbot: QtBot, empty_window: Window, class_folder
) -> None:
    (class_folder / "class_list.csv").write_text(
        "id,surname,first name\ns1,Example,Aino\ns2,Sample,Bodil\ns3,Arbitrary,Cato\n",
        encoding="utf-8",
    )
    session = Session.open(class_folder, "A. Teacher")
    empty_window.show_session(session)
    bench = empty_window.bench
    bench.sorts.setCurrentIndex(bench.sorts.findData("name"))
    assert bench.order.learners() == ["s3", "s1", "s2"]
    assert in_order(session, "readings") == ("s3", "s1", "s2")


def test_a_draft_is_of_what_can_be_had_so_far(
    qtbot: QtBot, empty_window: Window, class_folder
) -> None:
    (class_folder / "brief.toml").write_text('title = "T"\nrubric = "full_report"\n')
    session = Session.open(class_folder, "A. Teacher")
    empty_window.show_session(session)
    held = so_far(session, "s1")
    assert held.for_your_eye > 0
    assert held.most < session.rubric.most
    row = empty_window.bench.model.rows[0]
    assert written(row, empty_window._theme) == f"draft {held.marks:g} / {held.most:g}"
    empty_window.open_learner("s1")
    margin = empty_window.sheet.margin
    assert f"{held.marks:g} of {held.most:g}" in margin._total.text()
    assert f"{held.for_your_eye} for your eye" in margin._state.text()
