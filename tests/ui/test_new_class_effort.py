"""A new class in under two minutes: what the hands do, in seconds, by a published model.

The keystroke-level model (S. K. Card, T. P. Moran and A. Newell, "The keystroke-level model
for user performance time with interactive systems", Communications of the ACM 23(7), 1980,
396-410) gives a practised person's time for a task as the sum of its operators. Its values
here are from memory: a key or button 0.28 s (average typist), pointing 1.1 s, moving the hand
between mouse and keys 0.4 s, making up one's mind 1.35 s. Reading is not in the model: one
of the two minutes is left for that and for the machine.
"""

from __future__ import annotations

import math
from pathlib import Path

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QFileDialog, QLineEdit, QPushButton, QWidget
from pytestqt.qtbot import QtBot

from markbench.ui.newclass.page import BRIEF, FOUND, RUBRIC, WHOSE, NewClassPage
from markbench.ui.window import Window

KEY_S, POINT_S, HOME_S, MIND_S = 0.28, 1.1, 0.4, 1.35
HANDS_S = 60.0
DIALOG_CLICKS = 3  # into the system's own dialogue, on the folder, and its button
PEOPLE = 30
LOOSE = 6


class Hands:
    """Mouse and keys, and the seconds they take."""

    def __init__(self, qtbot: QtBot) -> None:
        self._qtbot, self.seconds = qtbot, DIALOG_CLICKS * (MIND_S + POINT_S + KEY_S)

    def click(self, widget: QWidget) -> None:
        assert widget.isVisible()
        assert widget.isEnabled()
        self._qtbot.mouseClick(widget, Qt.MouseButton.LeftButton)
        self.seconds += MIND_S + POINT_S + KEY_S

    def type_in(self, field: QLineEdit, words: str) -> None:
        self.click(field)
        field.selectAll()  # as the model's person does by a second click
        self._qtbot.keyClicks(field, words)
        self.seconds += KEY_S + HOME_S + KEY_S * len(words) + HOME_S


@pytest.fixture
def messy(tmp_path: Path) -> Path:
    """Thirty invented learners, and loose tables that their names only hint at."""
    root = tmp_path / "10M"
    root.mkdir()
    names = [f"Learner{n:02d} Invented{chr(97 + n % 26)}{n:02d}" for n in range(PEOPLE)]
    lines = "".join(f"{n},{name}\n" for n, name in enumerate(names, 101))
    (root / "class_list.csv").write_text("id,name\n" + lines, encoding="utf-8")
    for n, name in enumerate(names):
        times = [20 * math.pi * math.sqrt(cm / 981) + 0.01 * (n % 7) for cm in (20, 30, 40, 50, 60)]
        rows = "".join(f"{20 + 10 * i},{t:.2f}\n" for i, t in enumerate(times))
        table = "Length (cm),Time of 10 swings (s)\n" + rows
        if n < PEOPLE - LOOSE:
            (root / name).mkdir()
            (root / name / "readings.csv").write_text(table, encoding="utf-8")
        else:
            (root / f"pendulum table {n}.csv").write_text(table, encoding="utf-8")
    return root


def nobodys(page: NewClassPage) -> list[QPushButton]:
    """The button of each slip that calls its file nobody's."""
    return [b for b in page.whose.findChildren(QPushButton) if "Nobody" in b.text()]


def test_the_hands_take_no_more_than_a_minute(
    qtbot: QtBot, empty_window: Window, messy: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    hands = Hands(qtbot)
    monkeypatch.setattr(QFileDialog, "getExistingDirectory", lambda *_: str(messy))
    hands.click(empty_window.start.new)
    page = empty_window.doors.page
    assert isinstance(page, NewClassPage)
    qtbot.waitUntil(lambda: page.new is not None, timeout=20_000)
    assert page.steps.currentIndex() == FOUND
    hands.click(page.next)
    assert page.steps.currentIndex() == WHOSE
    for left in range(LOOSE, 0, -1):
        qtbot.waitUntil(lambda left=left: len(nobodys(page)) == left, timeout=20_000)
        hands.click(nobodys(page)[0])
    qtbot.waitUntil(lambda: page.whose.count() == 0, timeout=20_000)
    hands.click(page.next)
    assert page.steps.currentIndex() == BRIEF
    latitude = page.form.fields["place.latitude_deg"].line
    assert latitude is not None
    hands.type_in(latitude, "52.5")
    hands.click(page.next)
    assert page.steps.currentIndex() == RUBRIC
    hands.click(page.next)
    qtbot.waitUntil(lambda: empty_window.bench is not None, timeout=20_000)
    assert len(empty_window.desk.session.learners) == PEOPLE
    assert empty_window.desk.session.brief.place.latitude_deg == 52.5
    assert hands.seconds < HANDS_S
