"""Photos are told apart, pieces judged, and the measured swing is read off under the film."""

from __future__ import annotations

import math
from pathlib import Path

import pytest
from PySide6.QtCore import QPoint, Qt
from PySide6.QtWidgets import QMenu
from pytestqt.qtbot import QtBot

from markbench.evidence.video.judge import SwingMeasurement
from markbench.session import Session
from markbench.session.evidence import Seen
from markbench.ui.portfolio.swing_words import swing_words
from markbench.ui.window import Window

FILM = "Aino Example/swing video.mp4"
CTRL = Qt.KeyboardModifier.ControlModifier


@pytest.fixture
def class_folder(class_folder: Path) -> Path:
    """The second learner's photos have names that tell nothing."""
    own = class_folder / "Bodil Sample"
    (own / "setup.png").rename(own / "a.png")
    (own / "selfie.png").rename(own / "b.png")
    return class_folder


def kinds(session: Session, learner: str) -> dict[str, str]:
    pieces = session.portfolio(learner).pieces
    return {piece.file.rpartition("/")[2]: piece.kind for piece in pieces}


def thumb_of(window: Window, name: str):
    return next(
        thumb
        for thumb in window.sheet.evidence.thumbs
        if not thumb.isHidden() and thumb.piece is not None and thumb.piece.file.endswith(name)
    )


def changed(qtbot: QtBot, window: Window):
    return qtbot.waitSignal(window.desk.changed, timeout=10_000)


# --- which is the set-up, which the selfie ------------------------------------------------


def test_only_what_is_not_settled_asks(window: Window) -> None:
    window.open_learner("s2")
    assert thumb_of(window, "a.png").kinds["selfie"].isVisible()
    window.open_learner("s1")
    assert not thumb_of(window, "setup.png").kinds["selfie"].isVisible()
    window.sheet.open_piece(thumb_of(window, "setup.png").piece)
    assert not window.sheet.layers.viewer._asks.isVisible()


def test_one_click_in_the_strip_tells_and_is_undone_and_kept(
    qtbot: QtBot, window: Window, session: Session, class_folder: Path
) -> None:
    window.open_learner("s2")
    with changed(qtbot, window):
        qtbot.mouseClick(thumb_of(window, "a.png").kinds["setup_photo"], Qt.MouseButton.LeftButton)
    with changed(qtbot, window):
        qtbot.keyClick(thumb_of(window, "b.png"), Qt.Key.Key_L)
    told = {"a.png": "setup_photo", "b.png": "selfie"}
    assert {name: kind for name, kind in kinds(session, "s2").items() if name in told} == told
    assert not thumb_of(window, "a.png").kinds["selfie"].isVisible()
    row = window.bench.model.rows[window.bench.model.number_of("s2")]
    assert "setup_photo" not in row.missing
    with changed(qtbot, window):
        qtbot.keyClick(window, Qt.Key.Key_Z, CTRL)
    assert kinds(session, "s2")["b.png"] == "photo"
    window.close_class()
    again = Session.open(class_folder, "T. Teacher")
    assert kinds(again, "s2")["a.png"] == "setup_photo"
    again.close()


def test_the_viewer_asks_and_stays_with_the_picture(
    qtbot: QtBot, window: Window, session: Session
) -> None:
    window.open_learner("s2")
    window.sheet.open_piece(thumb_of(window, "b.png").piece)
    viewer = window.sheet.layers.viewer
    assert viewer._asks.isVisible()
    with changed(qtbot, window):
        qtbot.keyClick(viewer.photo, Qt.Key.Key_L)
    assert viewer.piece.file.endswith("b.png")
    assert not viewer._asks.isVisible()
    assert viewer.kinds["selfie"].isChecked()
    with changed(qtbot, window):  # a slip of the hand is put right the same way
        qtbot.mouseClick(viewer.kinds["setup_photo"], Qt.MouseButton.LeftButton)
    assert kinds(session, "s2")["b.png"] == "setup_photo"


def test_a_hidden_picture_is_not_asked_about(qtbot: QtBot, window: Window) -> None:
    with changed(qtbot, window):
        window.hide_names(True)
    window.open_learner("s2")
    thumbs = [t for t in window.sheet.evidence.thumbs if not t.isHidden() and t.kind == "photo"]
    assert len(thumbs) == 2
    assert not any(choice.isVisible() for thumb in thumbs for choice in thumb.kinds.values())


# --- accepted, unreadable, to be handed in again --------------------------------------------


def test_a_piece_is_judged_in_the_strip_by_key_and_undone(
    qtbot: QtBot, window: Window, session: Session
) -> None:
    window.open_learner("s1")
    thumb = thumb_of(window, "setup.png")
    for key, status in ((Qt.Key.Key_U, "unreadable"), (Qt.Key.Key_G, "accepted")):
        with changed(qtbot, window):
            qtbot.keyClick(thumb, key)
        assert session.value("piece_status", "s1", thumb.piece.file) == status
        assert thumb.status == status
    assert "Accepted" in thumb.accessibleName()
    with changed(qtbot, window):
        qtbot.keyClick(window, Qt.Key.Key_Z, CTRL)
    assert thumb.status == "unreadable"


def test_the_menu_of_a_piece_judges_and_takes_back(
    qtbot: QtBot, window: Window, session: Session
) -> None:
    window.open_learner("s1")
    thumb = thumb_of(window, "selfie.png")
    for expected in ("again", ""):
        qtbot.mouseClick(thumb.more, Qt.MouseButton.LeftButton)
        menu = thumb.findChildren(QMenu)[-1]
        action = next(a for a in menu.actions() if "Hand in again" in a.text())
        with changed(qtbot, window):
            action.trigger()
        menu.close()
        assert (session.value("piece_status", "s1", thumb.piece.file) or "") == expected
        assert thumb.status == expected


# --- the swing under the film ----------------------------------------------------------------


def measured(**changes) -> SwingMeasurement:
    """Four swings of 0.2 s, invented, on the clock of the small film of one second."""
    times = tuple(i / 30 for i in range(3, 28))
    given = {
        "accepted": True,
        "start_s": 0.1,
        "end_s": 0.9,
        "times_s": times,
        "displacement_px": tuple(20 * math.cos(2 * math.pi * (t - 0.1) / 0.2) for t in times),
        "period_s": 0.2,
        "u_period_s": 0.001,
        "complete_swings": 4,
        "swing_marks_s": (0.3, 0.5, 0.7, 0.9),
        "amplitude_deg": 8.2,
    }
    return SwingMeasurement(**{**given, **changes})


@pytest.fixture
def film(qtbot: QtBot, window: Window, session: Session):
    session.see(Seen(films={FILM: measured()}))
    window.open_learner("s1")
    window.sheet.open_piece(thumb_of(window, "swing video.mp4").piece)
    shown = window.sheet.layers.viewer.film
    qtbot.waitUntil(lambda: "frame 1" in shown.words.text(), timeout=20_000)
    return shown


def test_a_click_on_the_trace_moves_the_film(qtbot: QtBot, film) -> None:
    assert film.trace.isVisible()
    x = round(film.trace.place_of(0.5))
    qtbot.mouseClick(film.trace, Qt.MouseButton.LeftButton, pos=QPoint(x, 40))
    qtbot.waitUntil(lambda: film.at == 15, timeout=20_000)  # 0.5 s at 30 frames a second
    assert film.trace._now_s == pytest.approx(0.5, abs=0.02)
    assert "swing 2 of 4" in film.words.text()


def test_a_key_leads_from_swing_to_swing(qtbot: QtBot, film) -> None:
    for frame in (9, 15, 21):  # 0.3, 0.5 and 0.7 s at 30 frames a second
        qtbot.keyClick(film, Qt.Key.Key_M)
        qtbot.waitUntil(lambda frame=frame: film.at == frame, timeout=20_000)
    qtbot.keyClick(film, Qt.Key.Key_M, Qt.KeyboardModifier.ShiftModifier)
    qtbot.waitUntil(lambda: film.at == 15, timeout=20_000)


def test_the_trace_draws_swing_and_numbers(film) -> None:
    image = film.trace.grab().toImage()
    colours = film.trace._theme.palette
    names = {
        image.pixelColor(x, y).name() for x in range(image.width()) for y in range(image.height())
    }
    assert {colours.data, colours.deed, colours.look} <= names


def test_the_teacher_s_count_is_named_as_hers(qtbot: QtBot, window: Window, film) -> None:
    assert "4 complete swings" in film.told.text()
    viewer = window.sheet.layers.viewer
    qtbot.keyClicks(viewer.count, "5")
    with changed(qtbot, window):
        qtbot.keyClick(viewer.count, Qt.Key.Key_Return)
    assert "5 complete swings by your count, 4 marked" in film.told.text()


def test_what_was_not_measured_says_why(window: Window, session: Session, film) -> None:
    refusal = measured(accepted=False, reason="no_swing", message="as kept by an older version")
    session.see(Seen(films={FILM: refusal}))
    assert not film.trace.isVisible()
    steady = "nothing in the video was seen to swing with a steady period"
    assert film.told.text() == f"Not measured: {steady}."


def test_a_film_without_a_look_says_so_and_keeps_nothing_of_another(
    window: Window, session: Session, film
) -> None:
    session.see(Seen())
    assert not film.trace.isVisible()
    assert film.told.text() == "Not yet measured."


def test_a_film_that_was_left_leaves_no_place_behind(qtbot: QtBot, window: Window, film) -> None:
    qtbot.waitUntil(lambda: film.slider.maximum() > 0, timeout=10_000)
    film.step(12)
    qtbot.waitUntil(lambda: film.slider.value() == 12, timeout=10_000)
    film.leave()
    assert (film.slider.value(), film.slider.maximum()) == (0, 0)


def test_film_and_table_agree_or_not(window: Window, session: Session) -> None:
    rows = session.analysis("s1").rows
    # 40 cm swings in 2π√(0.40/9.81) = 1.269 s; taken for half swings, the film shows twice
    # what is written.
    agree = swing_words(measured(period_s=1.269), rows, None)
    assert "T = 1.2690 ± 0.0010 s" in agree[0]
    # 3.5 % of 8.2° (DECISION-video.md).
    assert "begins at (8.20 ± 0.29)° from the middle" in agree[0]
    assert "ellipse" not in agree[0]
    wide = swing_words(measured(ellipse=0.12), rows, None)
    assert "opens into an ellipse, at least 12 % as wide as long" in wide[0]
    assert agree[1].startswith("Fits 40 cm")
    against = swing_words(measured(period_s=2 * 1.42), rows, None)
    assert "No period of the table agrees" in against[1]
    assert "there or back" in against[1]
    assert len(swing_words(measured(), (), None)) == 1
