"""No screen is needed: Qt draws into memory. A small class of our own is built per test."""

from __future__ import annotations

import os
from collections.abc import Iterator
from pathlib import Path

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")

import pytest
from PySide6.QtCore import QSettings, Qt
from PySide6.QtGui import QDesktopServices
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QWidget
from pytestqt.qtbot import QtBot
from second_marking import HER, mark_class, pack_opened
from small_class import LEARNERS, ODD, PLAIN, film, photo, table

from markbench.session import Session
from markbench.session.moderating import take_sample
from markbench.session.packing import Packed, write_pack
from markbench.ui.bench.looking import EvidenceLook
from markbench.ui.look import Theme
from markbench.ui.moderation.pack_sheet import PackSheet
from markbench.ui.window import Window


@pytest.fixture
def class_folder(tmp_path: Path) -> Path:
    folder = tmp_path / "10A"
    folder.mkdir()
    (folder / "class_list.csv").write_text(
        "id,name\n" + "".join(f"{i},{name}\n" for i, name in LEARNERS), encoding="utf-8"
    )
    (folder / "brief.toml").write_text('title = "Test class"\nrubric = "short"\n')
    for number, (_, name) in enumerate(LEARNERS):
        own = folder / name
        own.mkdir()
        (own / "readings.csv").write_text(table(ODD if number == 1 else PLAIN), encoding="utf-8")
        photo(own / "setup.png", ("#c8d0e0", "#d0c8a0", "#a0d0c0")[number])
        if number != 2:
            photo(own / "selfie.png", ("#e0a0a0", "#a0a0e0")[number])
        film(own / "swing video.mp4")
    (folder / "IMG_0001.jpg").write_bytes(b"")
    photo(folder / "IMG_0001.jpg", "#808080")
    return folder


@pytest.fixture
def settings(tmp_path: Path) -> QSettings:
    return QSettings(str(tmp_path / "settings.ini"), QSettings.Format.IniFormat)


@pytest.fixture(autouse=True)
def own_place(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Phrases and words learnt go beside the test, not to whoever runs it."""
    for module in ("phrase_book", "spelling"):
        monkeypatch.setattr(
            f"markbench.session.{module}.user_data_path", lambda *_a, **_k: tmp_path / "own"
        )


@pytest.fixture(autouse=True)
def no_looking(request: pytest.FixtureRequest, monkeypatch: pytest.MonkeyPatch) -> None:
    """Measuring films takes seconds: only tests that ask for ``looks`` wait for it."""
    if "looks" not in request.fixturenames:
        monkeypatch.setattr(EvidenceLook, "start", lambda self: None)


@pytest.fixture(autouse=True)
def opened(monkeypatch: pytest.MonkeyPatch) -> list[str]:
    """The local files that the system was asked to open; none is."""
    asked: list[str] = []
    monkeypatch.setattr(
        QDesktopServices, "openUrl", lambda url: asked.append(url.toLocalFile()) or True
    )
    return asked


@pytest.fixture
def looks() -> None:
    """Ask for this to have photos and films looked at."""


@pytest.fixture(scope="session")
def theme(qapp: QApplication) -> Theme:
    """Restyling the application costs time: it is done once."""
    return Theme(qapp)


@pytest.fixture(autouse=True)
def no_key_held(qapp: QApplication) -> None:
    """Qt remembers Ctrl or Shift from the last key or click, of another test even."""
    QTest.keyClick(QWidget(), Qt.Key.Key_Shift)


def let_unsaved_go(window: Window) -> None:
    """Nobody is there to be asked about it: a test that fails must not wait for an answer."""
    window.pending.may_let_go = lambda: True
    window.doors.may_leave = lambda: True


@pytest.fixture
def empty_window(qtbot: QtBot, theme: Theme, settings: QSettings) -> Iterator[Window]:
    window = Window(theme, settings, who="T. Teacher")
    qtbot.addWidget(window, before_close_func=let_unsaved_go)
    window.resize(1280, 800)
    window.show()
    yield window
    let_unsaved_go(window)
    window.close()


@pytest.fixture
def window(qtbot: QtBot, empty_window: Window, class_folder: Path) -> Window:
    """A window with the small class open, opened as a hand would."""
    empty_window.open_folder(class_folder)
    qtbot.waitUntil(lambda: empty_window.bench is not None, timeout=10_000)
    qtbot.waitUntil(lambda: empty_window.sheet is not None, timeout=10_000)
    return empty_window


@pytest.fixture
def session(window: Window) -> Session:
    assert window.desk is not None
    return window.desk.session


@pytest.fixture
def marked_folder(class_folder: Path) -> Path:
    mark_class(class_folder)
    return class_folder


@pytest.fixture
def packed(marked_folder: Path, tmp_path: Path) -> Packed:
    """The pack as it lies on the moderator's machine."""
    session = Session.open(marked_folder, "T. Teacher")
    take_sample(session, seed=4)
    made = write_pack(session, tmp_path / "received" / "class.markbench-pack")
    session.close()
    return made


@pytest.fixture
def her_window(qtbot: QtBot, theme, settings) -> Iterator[Window]:
    window = Window(theme, settings, who=HER)
    qtbot.addWidget(window)
    window.resize(1280, 800)
    window.show()
    yield window
    window.close()


@pytest.fixture
def sheet(qtbot: QtBot, her_window: Window, packed: Packed) -> PackSheet:
    her_window.open_path(packed.path)  # as the command line does
    return pack_opened(qtbot, her_window)
