"""Slips of paper for files whose owner is open: the keyboard goes on, and one may look inside."""

from __future__ import annotations

from pathlib import Path

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QApplication, QComboBox, QFileDialog, QLabel, QPushButton
from pytestqt.qtbot import QtBot

from markbench.ui.bench.peep import Peep
from markbench.ui.window import Window

LEFT = Qt.MouseButton.LeftButton


@pytest.fixture
def class_folder(class_folder: Path) -> Path:
    """Three files that fit nobody: a photo, a table, and one that is neither."""
    (class_folder / "a song.mp3").write_bytes(b"la la la")
    table = (class_folder / "Aino Example" / "readings.csv").read_text()
    (class_folder / "data.csv").write_text(table)
    return class_folder


@pytest.fixture
def settling(qtbot: QtBot, window: Window) -> Window:
    qtbot.mouseClick(window.bench.settle_button, LEFT)
    assert window.bench.settle.count() == 3
    return window


def peep(window: Window, file: str) -> Peep:
    return next(
        one
        for one in window.bench.settle.findChildren(Peep)
        if one.open.accessibleDescription() == file
    )


def test_the_keyboard_goes_to_the_next_file_and_at_last_to_the_cards(
    qtbot: QtBot, settling: Window
) -> None:
    panel = settling.bench.settle
    for left in (2, 1, 0):
        nobody = next(b for b in panel.findChildren(QPushButton) if b.text() == "Nobody's")
        if left == 2:
            nobody.setFocus()
        else:  # on whose it is; Enter held too long must not call it nobody's
            held = QApplication.focusWidget()
            assert isinstance(held, QComboBox)
            assert held.parentWidget().isAncestorOf(nobody)
        with qtbot.waitSignal(settling.desk.changed, timeout=10_000):
            qtbot.keyClick(nobody, Qt.Key.Key_Return)
        assert panel.count() == left
    assert settling.bench.grid.hasFocus()
    assert settling.bench.settle_button.text() == "Set aside: 3"


def test_who_has_gone_elsewhere_meanwhile_is_left_there(qtbot: QtBot, settling: Window) -> None:
    panel = settling.bench.settle
    nobody = next(b for b in panel.findChildren(QPushButton) if b.text() == "Nobody's")
    qtbot.mouseClick(nobody, LEFT)
    settling.bench.search.setFocus()
    qtbot.waitUntil(lambda: panel.count() == 2, timeout=10_000)
    assert settling.bench.search.hasFocus()


def test_a_look_into_a_table_a_photo_and_what_is_neither(qtbot: QtBot, settling: Window) -> None:
    one = peep(settling, "data.csv")
    qtbot.mouseClick(one.open, LEFT)
    qtbot.waitUntil(lambda: not one.cells.isHidden(), timeout=10_000)
    texts = [cell.text() for cell in one.cells.findChildren(QLabel)]
    assert texts[0].startswith("Length")
    assert "8.95" in texts
    photo = peep(settling, "IMG_0001.jpg")
    qtbot.mouseClick(photo.open, LEFT)
    qtbot.waitUntil(lambda: not photo.picture.isHidden(), timeout=20_000)
    assert photo.picture.pixmap().width() > 50
    song = peep(settling, "a song.mp3")
    qtbot.mouseClick(song.open, LEFT)
    qtbot.waitUntil(lambda: not song.told.isHidden(), timeout=10_000)
    assert "cannot be shown" in song.told.text()


def test_a_class_without_learners_says_so_and_leads_to_another(
    qtbot: QtBot, empty_window: Window, tmp_path: Path, monkeypatch: pytest.MonkeyPatch,
    class_folder: Path,
) -> None:  # fmt: skip
    empty = tmp_path / "empty"
    empty.mkdir()
    empty_window.open_folder(empty)
    qtbot.waitUntil(lambda: empty_window.bench is not None, timeout=10_000)
    bench = empty_window.bench
    assert bench.empty.isVisible()
    assert bench.grid.isHidden()
    assert bench.another.hasFocus()
    monkeypatch.setattr(QFileDialog, "getExistingDirectory", lambda *_: str(class_folder))
    qtbot.keyClick(bench.another, Qt.Key.Key_Return)
    qtbot.waitUntil(lambda: empty_window.bench not in (None, bench), timeout=10_000)
    assert empty_window.bench.empty.isHidden()
    assert empty_window.bench.grid.isVisible()


def test_why_somebody_may_own_a_file_is_said_once(
    qtbot: QtBot, empty_window: Window, class_folder: Path
) -> None:
    table = (class_folder / "Aino Example" / "readings.csv").read_text()
    (class_folder / "AE.csv").write_text(table)
    empty_window.open_folder(class_folder)
    qtbot.waitUntil(lambda: empty_window.bench is not None, timeout=10_000)
    qtbot.mouseClick(empty_window.bench.settle_button, LEFT)
    said = [one.text() for one in empty_window.bench.settle.findChildren(QLabel)]
    assert sum("only the initials" in text for text in said) == 1
