"""Photos and films are looked at in the background, and what was seen reaches the page."""

from __future__ import annotations

from PySide6.QtCore import Qt
from pytestqt.qtbot import QtBot

from markbench.evidence.video.judge import SwingMeasurement
from markbench.session import Session
from markbench.ui.window import Window


def test_what_the_films_show_becomes_findings(
    looks: None, qtbot: QtBot, window: Window, session: Session
) -> None:
    # The fixture's films show one second of something that does not swing.
    qtbot.waitUntil(
        lambda: any(f.check.startswith("video_") for f in session.findings("s1")), timeout=60_000
    )
    assert not window.bench.looking.isVisible()
    qtbot.waitUntil(
        lambda: any(
            check.startswith("video_")
            for check in window.bench.model.rows[window.bench.model.number_of("s1")].checks
        ),
        timeout=5000,
    )
    window.open_learner("s1")
    film = next(p for p in window.sheet.evidence.openable("s1") if p.kind == "swing_video")
    window.sheet.open_piece(film)
    assert "measured" in window.sheet.layers.viewer.film.told.text()


def test_looking_can_be_stopped(qtbot: QtBot, window: Window) -> None:
    looking = window.bench.looking
    looking._moved(1, 9, "")
    assert looking.isVisible()
    assert "1 of 9" in looking.words.text()
    qtbot.mouseClick(looking.stop_button, Qt.MouseButton.LeftButton)
    assert not looking.isVisible()


def test_the_teachers_own_count_is_a_decision(
    qtbot: QtBot, window: Window, session: Session
) -> None:
    window.open_learner("s1")
    viewer = window.sheet.layers.viewer
    film = next(p for p in window.sheet.evidence.openable("s1") if p.kind == "swing_video")
    window.sheet.open_piece(film)
    viewer.count.setFocus()
    viewer.count.selectAll()
    qtbot.keyClicks(viewer.count, "11")
    with qtbot.waitSignal(window.desk.changed, timeout=5000):
        qtbot.keyClick(viewer.count, Qt.Key.Key_Return)
    assert session.value("swing_count", "s1", film.file) == 11
    assert viewer.count.text() == "11"


def test_swings_are_counted_along_the_film(qtbot: QtBot, window: Window) -> None:
    window.open_learner("s1")
    film = next(p for p in window.sheet.evidence.openable("s1") if p.kind == "swing_video")
    window.sheet.open_piece(film)
    view = window.sheet.layers.viewer.film
    qtbot.waitUntil(lambda: "frame 1" in view.words.text(), timeout=5000)
    start = view._film.start_s
    marks = (start + 0.30, start + 0.60)
    view.show_measured(SwingMeasurement(accepted=True, swing_marks_s=marks), [])
    view.step(10)  # 30 frames a second: 0.33 s
    qtbot.waitUntil(lambda: "swing 1 of 2" in view.words.text(), timeout=5000)
