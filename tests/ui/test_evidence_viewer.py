"""Photos open, turn and zoom; the film plays, pauses and steps by frame."""

from __future__ import annotations

from pathlib import Path

import pytest
from PySide6.QtCore import Qt
from pytestqt.qtbot import QtBot

from markbench.session import Session
from markbench.ui.look.theme import Theme
from markbench.ui.portfolio.film import Film
from markbench.ui.portfolio.pictures import load_picture
from markbench.ui.window import Window


def piece_of(window: Window, kind: str):
    return next(p for p in window.sheet.evidence.openable("s1") if p.kind == kind)


@pytest.fixture
def viewer(window: Window):
    window.open_learner("s1")
    return window.sheet.layers.viewer


def test_a_photo_opens_turns_and_zooms(qtbot: QtBot, window: Window, viewer) -> None:
    window.sheet.open_piece(piece_of(window, "setup_photo"))
    assert viewer.isVisible()
    qtbot.waitUntil(lambda: viewer.photo._picture.pixmap().width() == 480, timeout=20_000)
    qtbot.keyClick(viewer.photo, Qt.Key.Key_R)
    assert viewer.photo.turn == 90
    qtbot.keyClick(viewer.photo, Qt.Key.Key_Plus)
    assert viewer.photo.zoom > 1
    qtbot.keyClick(viewer.photo, Qt.Key.Key_Minus)
    assert viewer.photo.zoom == pytest.approx(1)


def test_escape_closes_the_viewer_before_the_sheet(qtbot: QtBot, window: Window, viewer) -> None:
    window.sheet.open_evidence()
    qtbot.keyClick(window, Qt.Key.Key_Escape)
    assert not viewer.isVisible()
    assert window.pages.currentWidget() is window.sheet


def test_next_goes_round_the_pieces(qtbot: QtBot, window: Window, viewer) -> None:
    pieces = window.sheet.evidence.openable("s1")
    window.sheet.open_piece(pieces[0])
    for wanted in (*pieces[1:], pieces[0]):
        qtbot.keyClick(viewer, Qt.Key.Key_N)
        assert viewer.piece is wanted


def test_the_film_plays_pauses_and_steps(qtbot: QtBot, window: Window, viewer) -> None:
    window.sheet.open_piece(piece_of(window, "swing_video"))
    film = viewer.film
    qtbot.waitUntil(lambda: "frame 1" in film.words.text(), timeout=20_000)
    film.setFocus()
    qtbot.keyClick(film, Qt.Key.Key_Period)
    qtbot.waitUntil(lambda: film.at == 1, timeout=20_000)
    qtbot.keyClick(film, Qt.Key.Key_Space)
    assert film.playing
    qtbot.waitUntil(lambda: film.at > 5, timeout=20_000)
    qtbot.keyClick(film, Qt.Key.Key_Space)
    assert not film.playing
    qtbot.wait(80)
    at = film.at
    qtbot.keyClick(film, Qt.Key.Key_Comma)
    qtbot.waitUntil(lambda: film.at == at - 1, timeout=20_000)
    assert not film.picture._picture.pixmap().isNull()


def test_slow_motion_comes_round(qtbot: QtBot, viewer) -> None:
    film = viewer.film
    seen = []
    for _ in range(4):
        qtbot.mouseClick(film.speed, Qt.MouseButton.LeftButton)
        seen.append(film.speed.text())
    assert seen == ["½ ×", "¼ ×", "⅛ ×", "1 ×"]


def test_judging_a_piece_is_a_decision(
    qtbot: QtBot, window: Window, viewer, session: Session
) -> None:
    piece = piece_of(window, "selfie")
    window.sheet.open_piece(piece)
    with qtbot.waitSignal(window.desk.changed, timeout=20_000):
        qtbot.mouseClick(viewer.judgements["again"], Qt.MouseButton.LeftButton)
    assert session.value("piece_status", "s1", piece.file) == "again"
    assert viewer.judgements["again"].isChecked()


def test_frames_come_by_their_own_number(class_folder: Path) -> None:
    with Film.open(class_folder, "Aino Example/swing video.mp4") as film:
        assert len(film) == 30
        # 30 frames a second, as written by the fixture.
        assert film.times_s[29] == pytest.approx(29 / 30, abs=1e-3)
        forward = [film.frame(i).copy() for i in (0, 12, 25)]
        assert film.frame(12) == forward[1]
        assert forward[0] != forward[2]


def test_what_is_no_picture_is_said_in_a_sentence(class_folder: Path) -> None:
    (class_folder / "broken.jpg").write_bytes(b"not a picture")
    with pytest.raises(ValueError, match="cannot be opened"):
        load_picture(class_folder, "broken.jpg")
    with pytest.raises(ValueError, match="cannot be opened"):
        Film.open(class_folder, "broken.jpg")


def test_what_lies_round_a_picture_follows_the_theme(window: Window, theme: Theme, viewer) -> None:
    """At night the pale ground of the day would be the brightest thing in the window."""
    window.sheet.open_piece(piece_of(window, "setup_photo"))
    ground = viewer.photo.viewport().rect().topLeft()
    theme.choose(False)
    by_day = viewer.photo.grab().toImage().pixelColor(ground).lightnessF()
    theme.choose(True)
    by_night = viewer.photo.grab().toImage().pixelColor(ground).lightnessF()
    assert by_day > 0.8
    assert by_night < 0.3
    theme.choose(False)


def test_why_there_is_no_picture_stands_in_its_place(
    qtbot: QtBot, window: Window, class_folder: Path
) -> None:
    for name in ("setup.png", "swing video.mp4"):
        (class_folder / "Aino Example" / name).write_bytes(b"neither a picture nor a film")
    window.open_learner("s1")
    pieces = window.sheet.evidence.openable("s1")
    viewer = window.sheet.layers.viewer
    left = set()
    for kind, view in (("setup_photo", viewer.photo), ("swing_video", viewer.film.picture)):
        window.sheet.open_piece(next(one for one in pieces if one.kind == kind))
        qtbot.waitUntil(lambda view=view: "cannot be opened" in view._words.text(), timeout=10_000)
        assert view._words.isVisible()
        left.add(viewer.judgements["accepted"].x())
    assert viewer.film.words.text() == ""  # and the slider keeps its room
    assert len(left) == 1  # the judgements stand in one place
