"""What stayed behind when a pack was made: in a few lines, and piece by piece on demand."""

from __future__ import annotations

from pathlib import Path

import pytest
from pytestqt.qtbot import QtBot
from second_marking import LEFT, ask_file, moderation

from markbench.session import Session
from markbench.session.moderating import take_sample
from markbench.ui.window import Window


def test_the_pack_is_told_in_lines_that_leave_the_page_where_it_is(
    qtbot: QtBot, empty_window: Window, marked_folder: Path, tmp_path: Path,
    monkeypatch: pytest.MonkeyPatch,
) -> None:  # fmt: skip
    (marked_folder / "Bodil Sample" / "swing video.mp4").write_bytes(b"\x00\x00\x00\x18ftypmp42")
    session = Session.open(marked_folder, "T. Teacher")
    take_sample(session, seed=4)
    session.close()
    empty_window.open_folder(marked_folder)
    qtbot.waitUntil(lambda: empty_window.sheet is not None, timeout=10_000)
    page = moderation(qtbot, empty_window)
    ask_file(monkeypatch, tmp_path / "out.markbench-pack")
    qtbot.mouseClick(page.sample.pack, LEFT)
    qtbot.waitUntil(page.sample.pack_said.isVisible, timeout=20_000)
    told = page.sample.pack_said.text()
    assert len(told.splitlines()) == 3
    assert "check code" in told.splitlines()[0]
    assert "selfie of learners" in told
    assert "does not allow photos of learners" in told
    assert "swing video of learner" in told
    for raw in ("Errno", "_in_pack", "<none>"):
        assert raw not in told
    # Piece by piece, for whoever wants it.
    each = page.sample._pieces
    assert not each.isVisible()
    qtbot.mouseClick(page.sample.each, LEFT)
    assert each.isVisible()
    assert each.text().count("Learner") == 3
    qtbot.mouseClick(page.sample.each, LEFT)
    assert not each.isVisible()
