"""Opening a large class: what is made only when somebody looks at it, and what is not told."""

from __future__ import annotations

import ast
import gc
import subprocess
import sys
import threading
from pathlib import Path

import pytest
from PySide6.QtCore import QObject
from pytestqt.qtbot import QtBot

from markbench.session import Session
from markbench.session import judge as judging
from markbench.ui.background import in_background
from markbench.ui.window import Window


def test_a_class_is_open_before_anything_is_drafted(
    class_folder: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    drafted: list[str] = []
    true = judging.draft
    monkeypatch.setattr(
        judging, "draft", lambda r, facts, f: drafted.append(facts.learner) or true(r, facts, f)
    )
    session = Session.open(class_folder, "T. Teacher")
    assert drafted == []
    first = session.drafts("s1")
    assert session.drafts("s1") is first
    assert drafted == ["s1"]
    session.draft_all()
    assert sorted(drafted) == ["s1", "s2", "s3"]
    session.close()


def test_slips_to_settle_are_made_when_they_are_looked_at(window: Window) -> None:
    settle = window.bench.settle
    assert settle.count() == 1
    assert settle.widget() is None
    window.bench.settle_button.click()
    assert settle.widget() is not None


def test_slips_are_not_made_again_while_marking(qtbot: QtBot, window: Window) -> None:
    window.bench.settle_button.click()
    made = window.bench.settle.widget()
    with qtbot.waitSignal(window.desk.changed, timeout=10_000):
        window.desk.do(lambda session: session.accept("s1"))
    assert window.bench.settle.widget() is made


def test_more_files_than_anybody_settles_at_once_are_counted(
    qtbot: QtBot, empty_window: Window, class_folder: Path
) -> None:
    for number in range(2, 60):
        (class_folder / f"IMG_{number:04d}.jpg").write_bytes(b"no picture")
    empty_window.open_folder(class_folder)
    qtbot.waitUntil(lambda: empty_window.sheet is not None, timeout=20_000)
    empty_window.bench.settle_button.click()
    settle = empty_window.bench.settle
    words = [one.text() for one in settle.findChildren(type(empty_window.bar.saved))]
    assert settle.count() == 59
    assert sum(words.count(f"IMG_{number:04d}.jpg") for number in range(1, 60)) == 40
    assert any("19 more" in one for one in words)


def test_progress_is_told_no_oftener_than_it_is_seen_and_the_end_always(qtbot: QtBot) -> None:
    told: list[int] = []
    ended = threading.Event()
    owner = QObject()

    def work(progress: object, _stop: object) -> None:
        for at in range(1, 5001):
            progress(at, 5000, "")  # type: ignore[operator]

    in_background(
        owner,
        work,
        done=lambda _none: ended.set(),
        failed=lambda _error: None,
        progress=lambda at, _of, _text: told.append(at),
    )
    qtbot.waitUntil(ended.is_set, timeout=10_000)
    assert told[-1] == 5000
    assert len(told) < 500


def test_an_open_class_costs_the_collector_nothing_and_a_closed_one_is_visited(
    qtbot: QtBot, window: Window, class_folder: Path
) -> None:
    qtbot.waitUntil(lambda: gc.get_freeze_count() > 0, timeout=5000)
    assert gc.isenabled()
    held = window.desk.held
    assert not any(one is held.work for one in gc.get_objects())  # frozen: not visited
    work = held.work
    assert window.let_go()
    qtbot.waitUntil(lambda: gc.get_freeze_count() == 0, timeout=5000)
    assert any(one is work for one in gc.get_objects())  # visited again
    window.open_folder(class_folder)
    qtbot.waitUntil(lambda: window.sheet is not None, timeout=20_000)
    qtbot.waitUntil(lambda: gc.get_freeze_count() > 0, timeout=5000)
    assert gc.isenabled()


def test_the_first_window_waits_for_no_library_of_the_checks() -> None:
    """numpy, scipy, SQLAlchemy and the decoders are loaded once the window is on the screen."""
    code = "import sys, markbench.ui.window; print(sorted({n.split('.')[0] for n in sys.modules}))"
    told = subprocess.run([sys.executable, "-c", code], check=True, capture_output=True, text=True)
    loaded = set(ast.literal_eval(told.stdout))
    assert "PySide6" in loaded
    assert loaded.isdisjoint({"numpy", "scipy", "sqlalchemy", "PIL", "av", "openpyxl"})
