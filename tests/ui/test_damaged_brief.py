"""A brief that cannot be used is told where the class is, with the way to it."""

from __future__ import annotations

from pathlib import Path

import pytest
from PySide6.QtCore import Qt
from pytestqt.qtbot import QtBot

from markbench.session import Session
from markbench.ui.newclass.brief_page import BriefPage
from markbench.ui.parts import Words
from markbench.ui.window import Window


@pytest.mark.parametrize(
    ("brief", "words"),
    [
        ('title = "x', "cannot be read"),
        ('title = "x"\nclosses = 2026-01-30\n', "did you mean closes"),
        ('lengths = "five"\nopens = 3\nswings = 4\ntitles = "x"\nclosses = 1\n', "and 2 more"),
    ],
)
def test_a_damaged_brief_is_told_on_the_class_page(
    qtbot: QtBot, empty_window: Window, class_folder: Path, brief: str, words: str
) -> None:
    (class_folder / "brief.toml").write_text(brief, encoding="utf-8")
    window = empty_window
    window.show_session(Session.open(class_folder, "A. Teacher"))
    strip = window.bench.brief
    assert strip.isVisible()
    assert any(words in one.text() for one in strip.findChildren(Words))
    window.open_learner("s1")
    window.show_class()
    assert strip.isVisible()  # until it is put right
    qtbot.mouseClick(strip.open_brief, Qt.MouseButton.LeftButton)
    assert isinstance(window.pages.currentWidget(), BriefPage)


def test_nothing_is_told_of_a_brief_in_order(qtbot: QtBot, window: Window) -> None:
    assert not window.bench.brief.isVisible()
