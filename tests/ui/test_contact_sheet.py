"""The contact sheet by hand: everybody's set-up photo and film, judged in one gesture each."""

from __future__ import annotations

import dataclasses
from pathlib import Path

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QApplication
from pytestqt.qtbot import QtBot

from markbench.evidence.video.judge import SwingMeasurement
from markbench.session import Session
from markbench.session.evidence import Seen
from markbench.ui.contact.model import TILE
from markbench.ui.contact.page import ContactPage
from markbench.ui.window import Window

CTRL = Qt.KeyboardModifier.ControlModifier
MEASURED = SwingMeasurement(
    accepted=True,
    start_s=0.0,
    end_s=15.0,
    times_s=(0.0, 5.0, 10.0, 15.0),
    displacement_px=(1.0, -1.0, 1.0, -1.0),
    period_s=1.4207,
    u_period_s=0.0021,
    complete_swings=10,
)
REFUSED = dataclasses.replace(
    MEASURED, accepted=False, reason="no_swing", message="nothing in the video was seen to swing"
)


@pytest.fixture
def page(qtbot: QtBot, window: Window) -> ContactPage:
    """The sheet, gone to by its button, by name, so that Aino comes first."""
    window.bench.sorts.setCurrentIndex(window.bench.sorts.findData("name"))
    qtbot.mouseClick(window.places.buttons["contact"], Qt.MouseButton.LeftButton)
    QApplication.processEvents()
    found = window.further["contact"]
    assert isinstance(found, ContactPage)
    return found


def status(session: Session, learner: str, kind: str) -> str | None:
    piece = session.portfolio(learner).of_kind(kind)[0]
    return session.value("piece_status", learner, piece.file)


def shown(page: ContactPage) -> list[str]:
    return [page.order.index(i, 0).data(TILE).row.id for i in range(page.order.rowCount())]


def words_of(page: ContactPage, row: int) -> str:
    return str(page.order.index(row, 0).data(Qt.ItemDataRole.AccessibleTextRole))


def see(qtbot: QtBot, window: Window, **films: SwingMeasurement) -> None:
    """Let films have been measured; by learner."""
    session = window.desk.held
    files = {session.portfolio(i).of_kind("swing_video")[0].file: one for i, one in films.items()}
    with qtbot.waitSignal(window.desk.changed, timeout=10_000):
        window.desk.do(lambda _session: session.see(Seen(films=files)))


def test_it_is_in_the_list_of_actions_and_shows_everybody(qtbot: QtBot, window: Window) -> None:
    qtbot.keyClick(window, Qt.Key.Key_F1)
    qtbot.keyClicks(window.deed_list.search, "contact sheet")
    qtbot.keyClick(window.deed_list.search, Qt.Key.Key_Return)
    page = window.further["contact"]
    assert window.pages.currentWidget() is page
    assert sorted(shown(page)) == ["s1", "s2", "s3"]


def test_small_pictures_arrive_and_are_drawn(qtbot: QtBot, page: ContactPage) -> None:
    tile = page.order.index(0, 0).data(TILE)
    before = page.grid.grab().toImage()
    for piece in (tile.photo.piece, tile.film.piece):
        qtbot.waitUntil(lambda piece=piece: not page.pictures.image(piece).isNull(), timeout=10_000)
    QApplication.processEvents()
    assert page.grid.grab().toImage() != before


def test_a_key_judges_the_picture_it_speaks_to(
    qtbot: QtBot, window: Window, page: ContactPage, session: Session
) -> None:
    with qtbot.waitSignal(window.desk.changed, timeout=20_000):
        qtbot.keyClick(page.grid, Qt.Key.Key_G)
    assert status(session, "s1", "setup_photo") == "accepted"
    qtbot.keyClick(page.grid, Qt.Key.Key_Right)  # to the film of the same learner
    with qtbot.waitSignal(window.desk.changed, timeout=20_000):
        qtbot.keyClick(page.grid, Qt.Key.Key_A)
    assert status(session, "s1", "swing_video") == "again"
    qtbot.keyClick(page.grid, Qt.Key.Key_Right)  # to the next learner's photo
    with qtbot.waitSignal(window.desk.changed, timeout=20_000):
        qtbot.keyClick(page.grid, Qt.Key.Key_U)
    assert status(session, "s2", "setup_photo") == "unreadable"
    with qtbot.waitSignal(window.desk.changed, timeout=20_000):
        qtbot.keyClick(page.grid, Qt.Key.Key_U)  # said again, it is taken back
    assert status(session, "s2", "setup_photo") is None
    qtbot.keyClick(page.grid, Qt.Key.Key_Left)  # back to the film before
    assert page.grid.side == "film"
    assert "Aino Example" in page.whose.text()
    assert "Hand in again" in words_of(page, 0)


def test_one_click_judges_what_is_under_the_mouse(
    qtbot: QtBot, window: Window, page: ContactPage, session: Session
) -> None:
    port = page.grid.viewport()
    spot = page.grid.judgement_place(1, "film", "unreadable")
    qtbot.mouseMove(port, spot)
    with qtbot.waitSignal(window.desk.changed, timeout=20_000):
        qtbot.mouseClick(port, Qt.MouseButton.LeftButton, pos=spot)
    assert status(session, "s2", "swing_video") == "unreadable"
    assert page.grid.currentIndex().row() == 0  # what was chosen stays chosen


def test_several_films_are_asked_for_again_and_taken_back_in_one_step(
    qtbot: QtBot, window: Window, page: ContactPage, session: Session
) -> None:
    qtbot.keyClick(page.grid, Qt.Key.Key_Right)
    qtbot.keyClick(page.grid, Qt.Key.Key_A, CTRL)  # all of them
    assert page.whose.text() == "3 videos"
    with qtbot.waitSignals([window.desk.changed] * 3, timeout=20_000):
        qtbot.mouseClick(page.judgements["again"], Qt.MouseButton.LeftButton)
    assert [status(session, i, "swing_video") for i in ("s1", "s2", "s3")] == ["again"] * 3
    with qtbot.waitSignals([window.desk.changed] * 3, timeout=20_000):
        qtbot.keyClick(window, Qt.Key.Key_Z, CTRL)
    assert [status(session, i, "swing_video") for i in ("s1", "s2", "s3")] == [None] * 3


def test_enter_opens_the_very_picture_and_escape_leads_back(
    qtbot: QtBot, window: Window, page: ContactPage, session: Session
) -> None:
    qtbot.keyClick(page.grid, Qt.Key.Key_Right)
    qtbot.keyClick(page.grid, Qt.Key.Key_Return)
    assert window.pages.currentWidget() is window.sheet
    assert window.sheet.layers.viewer.piece == session.portfolio("s1").of_kind("swing_video")[0]
    window.go_back()  # the viewer
    window.go_back()  # the sheet
    assert window.pages.currentWidget() is page
    assert page.grid.side == "film"


def test_verdicts_follow_what_was_measured(qtbot: QtBot, window: Window, page: ContactPage) -> None:
    assert "Not yet measured" in words_of(page, 0)
    page.grid.setCurrentIndex(page.order.index(1, 0))
    see(qtbot, window, s1=MEASURED, s2=REFUSED)
    assert "10 swings  ·  T = 1.4207 ± 0.0021 s" in words_of(page, 0)
    # 40 cm swings in 2π√(0.40/9.81) = 1.269 s, 50 cm in 1.419 s: the film fits the 50 cm.
    assert "Fits 50 cm" in words_of(page, 0)
    assert "nothing in the video was seen to swing" in words_of(page, 1)
    assert page.grid.currentIndex().row() == 1  # news does not take the place away
    qtbot.mouseClick(page.chips["unmeasured"], Qt.MouseButton.LeftButton)
    assert shown(page) == ["s2", "s3"]


def test_filters_of_the_class_hold_here_and_combine(
    qtbot: QtBot, window: Window, page: ContactPage, session: Session
) -> None:
    assert page.everybody.isHidden()
    window.show_class()
    qtbot.keyClicks(window.bench.search, "o")  # Aino, Bodil, Cato: all
    qtbot.mouseClick(window.bench.chips["missing"], Qt.MouseButton.LeftButton)
    window.show_place("contact")
    assert shown(page) == ["s3"]
    qtbot.mouseClick(page.everybody, Qt.MouseButton.LeftButton)
    assert sorted(shown(page)) == ["s1", "s2", "s3"]
    page.grid.setCurrentIndex(page.order.index(0, 0))
    with qtbot.waitSignal(window.desk.changed, timeout=20_000):
        qtbot.keyClick(page.grid, Qt.Key.Key_G)
    qtbot.keyClick(page.grid, Qt.Key.Key_Right)
    with qtbot.waitSignal(window.desk.changed, timeout=20_000):
        qtbot.keyClick(page.grid, Qt.Key.Key_G)
    qtbot.mouseClick(page.chips["unjudged"], Qt.MouseButton.LeftButton)
    assert sorted(shown(page)) == ["s2", "s3"]


def test_an_empty_film_counts_as_missing(
    qtbot: QtBot, empty_window: Window, class_folder: Path
) -> None:
    (class_folder / "Bodil Sample" / "swing video.mp4").write_bytes(b"")
    empty_window.open_folder(class_folder)
    qtbot.waitUntil(lambda: empty_window.sheet is not None, timeout=10_000)
    row = empty_window.bench.model.rows[empty_window.bench.model.number_of("s2")]
    assert ("swing_video", "missing") in row.pieces  # struck on the card of the class
    empty_window.show_place("contact")
    page = empty_window.further["contact"]
    page.chips["missing"].click()
    assert shown(page) == ["s2"]
    assert "empty file" in words_of(page, 0)


def test_blind_no_name_shows_and_no_hidden_picture(
    qtbot: QtBot, window: Window, page: ContactPage, class_folder: Path
) -> None:
    with qtbot.waitSignal(window.desk.changed, timeout=20_000):
        window.hide_names(True)
    words = "\n".join(words_of(page, i) for i in range(page.order.rowCount()))
    assert "Portfolio 1" in words
    assert not any(name in words for name in ("Aino", "Bodil", "Cato"))
    page.grid.setCurrentIndex(page.order.index(0, 0))
    with qtbot.waitSignal(window.desk.changed, timeout=20_000):
        qtbot.keyClick(page.grid, Qt.Key.Key_G)
    learner = page.order.index(0, 0).data(TILE).row.id
    assert status(window.desk.held, learner, "setup_photo") == "accepted"


def test_photos_not_told_apart_are_not_called_missing(
    qtbot: QtBot, empty_window: Window, class_folder: Path
) -> None:
    own = class_folder / "Bodil Sample"
    (own / "setup.png").rename(own / "IMG_1.png")
    (own / "selfie.png").rename(own / "IMG_2.png")
    empty_window.open_folder(class_folder)
    qtbot.waitUntil(lambda: empty_window.sheet is not None, timeout=10_000)
    number = empty_window.bench.model.number_of("s2")
    row = empty_window.bench.model.rows[number]
    assert row.untold == ("setup_photo", "selfie")
    assert row.missing == ()
    assert empty_window.bench.foot.legend.untold.isVisible()
    words = empty_window.bench.model.index(number, 0).data(Qt.ItemDataRole.ToolTipRole)
    assert "to be told apart" in words
    empty_window.show_place("contact")
    order = empty_window.further["contact"].order
    tile = order.index(order.number_of("s2"), 0).data(TILE)
    assert "1 of 2" in tile.photo.untold
