"""The file beside a pack, with all that a moderator decided, is gone or damaged."""

from __future__ import annotations

from pathlib import Path

from PySide6.QtCore import Qt
from pytestqt.qtbot import QtBot
from second_marking import HER, LEFT, mark_blind, pack_opened

from markbench.session.pack_session import journal_beside, open_pack
from markbench.session.packing import Packed
from markbench.store import backups_of
from markbench.ui.look import Theme
from markbench.ui.window import Window


def marked_and_closed(qtbot: QtBot, window: Window, pack: Path) -> int:
    """One learner second-marked, and a copy kept; how many criteria that were."""
    window.open_path(pack)
    sheet = pack_opened(qtbot, window)
    mark_blind(qtbot, sheet)
    window.pack_door.leave()
    open_pack(pack, HER).close()  # an opening keeps a copy of what there is
    (copy,) = backups_of(journal_beside(pack))
    assert copy.is_file()
    return len(sheet.margin.cards)


def test_a_lost_file_of_second_marks_is_rebuilt_with_a_press(
    qtbot: QtBot, her_window: Window, packed: Packed
) -> None:
    count = marked_and_closed(qtbot, her_window, packed.path)
    journal_beside(packed.path).unlink()
    her_window.activateWindow()
    her_window.open_path(packed.path)
    start = her_window.start
    qtbot.waitUntil(start._trouble.isVisible, timeout=10_000)
    assert start._title.text() == "This moderation pack could not be opened"
    assert "a copy of it is kept" in start.trouble()
    assert start.again.text() == "Try again"
    assert start.again.isVisible()
    assert start.rebuild.hasFocus()
    qtbot.keyClick(start.rebuild, Qt.Key.Key_Return)
    sheet = pack_opened(qtbot, her_window)
    assert sheet._pack.progress(sheet.learner) == (count, count)


def test_to_try_again_opens_the_pack_once_its_file_is_back(
    qtbot: QtBot, her_window: Window, packed: Packed
) -> None:
    count = marked_and_closed(qtbot, her_window, packed.path)
    lost = journal_beside(packed.path)
    away = lost.rename(lost.with_name("away"))
    her_window.open_path(packed.path)
    qtbot.waitUntil(her_window.start._trouble.isVisible, timeout=10_000)
    away.rename(lost)
    qtbot.mouseClick(her_window.start.again, LEFT)
    sheet = pack_opened(qtbot, her_window)
    assert sheet._pack.progress(sheet.learner) == (count, count)


def test_what_cannot_be_rebuilt_says_so_under_the_same_title(
    qtbot: QtBot, her_window: Window, packed: Packed
) -> None:
    journal_beside(packed.path).write_bytes(b"SQLite format 3\x00" + b"\xff" * 5000)
    her_window.open_path(packed.path)
    start = her_window.start
    qtbot.waitUntil(start.rebuild.isVisible, timeout=10_000)
    qtbot.mouseClick(start.rebuild, LEFT)
    qtbot.waitUntil(lambda: "nothing was changed" in start.trouble(), timeout=10_000)
    assert start._title.text() == "This moderation pack could not be opened"
    assert not start.rebuild.isVisible()


def test_the_name_is_asked_once_for_a_pack_that_is_tried_again(
    qtbot: QtBot, theme: Theme, settings, packed: Packed, monkeypatch
) -> None:
    asked: list[str] = []

    def ask(*_a: object, **_k: object) -> tuple[str, bool]:
        asked.append("name")
        return HER, True

    monkeypatch.setattr("PySide6.QtWidgets.QInputDialog.getText", ask)
    window = Window(theme, settings)
    qtbot.addWidget(window)
    window.show()
    away = packed.path.rename(packed.path.with_name("away"))
    window.open_path(packed.path)
    qtbot.waitUntil(window.start._trouble.isVisible, timeout=10_000)
    away.rename(packed.path)
    qtbot.mouseClick(window.start.again, LEFT)
    sheet = pack_opened(qtbot, window)
    assert (sheet._pack.who, asked) == (HER, ["name"])
    window.close()
