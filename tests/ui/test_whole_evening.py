"""The complete evening, by keyboard and mouse alone: open, settle, correct, agree, mark, export.

Nothing here calls the program but to look at it: every step is a key, a click, or the answer
to the system's own folder dialogue.
"""

from __future__ import annotations

import csv
import hashlib
from pathlib import Path

import openpyxl
import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QComboBox, QFileDialog, QLineEdit
from pytestqt.qtbot import QtBot

from markbench.session import Session
from markbench.ui.window import Window

CTRL, ALT = Qt.KeyboardModifier.ControlModifier, Qt.KeyboardModifier.AltModifier
SHIFT = Qt.KeyboardModifier.ShiftModifier

# Ten passages timed instead of ten swings: half of 10 · 2π√(L/9.81), rounded, with a hair's
# breadth of scatter. Dora is invented like the rest of the class.
HALVES = """Length (cm),Time 1 for 10 swings (s),Time 2 for 10 swings (s)
20.0,4.48,4.51
30.0,5.51,5.48
40.0,6.36,6.33
50.0,7.11,7.08
60.0,7.76,7.79
"""


@pytest.fixture
def folder(class_folder: Path) -> Path:
    """The small class with one learner more, who counted half swings."""
    own = class_folder / "Dora Placeholder"
    own.mkdir()
    (own / "readings.csv").write_text(HALVES, encoding="utf-8")
    for piece in ("setup.png", "selfie.png", "swing video.mp4"):
        (own / piece).write_bytes((class_folder / "Aino Example" / piece).read_bytes())
    with (class_folder / "class_list.csv").open("a", encoding="utf-8") as roll:
        roll.write("s4,Dora Placeholder\n")
    return class_folder


class Hands:
    """What two hands can do at the window, and waiting until it is done."""

    def __init__(self, qtbot: QtBot, window: Window) -> None:
        self._qtbot, self._window = qtbot, window

    def press(self, key: Qt.Key, *modifiers: Qt.KeyboardModifier) -> None:
        """A key, wherever the keyboard is."""
        held = Qt.KeyboardModifier.NoModifier
        for one in modifiers:
            held |= one
        self._qtbot.keyClick(self._window.focusWidget() or self._window, key, held)

    def decide(self, key: Qt.Key, *modifiers: Qt.KeyboardModifier) -> None:
        """A key that decides something: wait until it is written."""
        with self._qtbot.waitSignal(self._window.desk.saved, timeout=10_000):
            self.press(key, *modifiers)

    def find(self, name: str) -> None:
        """Search for a learner and open the sheet."""
        self.press(Qt.Key.Key_F, CTRL)
        self._qtbot.keyClicks(self._window.focusWidget(), name)
        self.press(Qt.Key.Key_Return)  # from the search to the cards
        self.press(Qt.Key.Key_Home)
        self.press(Qt.Key.Key_Return)
        assert self._window.pages.currentWidget() is self._window.sheet


def digests(folder: Path) -> dict[str, str]:
    """Every file that was handed in."""
    return {
        str(path.relative_to(folder)): hashlib.sha256(path.read_bytes()).hexdigest()
        for path in sorted(folder.rglob("*"))
        if path.is_file() and path.suffix in (".csv", ".png", ".mp4", ".jpg", ".toml")
    }


def test_a_complete_evening(
    qtbot: QtBot, empty_window: Window, folder: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    window, before = empty_window, digests(folder)
    hands = Hands(qtbot, window)

    # Open: the folder is chosen in the system's own dialogue.
    monkeypatch.setattr(QFileDialog, "getExistingDirectory", lambda *_: str(folder))
    qtbot.mouseClick(window.start.choose, Qt.MouseButton.LeftButton)
    qtbot.waitUntil(lambda: window.bench is not None and window.sheet is not None, timeout=20_000)
    session: Session = window.desk.session
    assert sorted(window.bench.order.learners()) == ["s1", "s2", "s3", "s4"]

    # Settle: the picture nobody named is Cato's; he is chosen from the list by name.
    hands.press(Qt.Key.Key_T, CTRL)
    box = window.bench.settle.findChild(QComboBox)
    box.setFocus()  # as Tab would, past the slip's other controls
    hands.press(Qt.Key.Key_Down)
    with qtbot.waitSignal(window.desk.saved, timeout=10_000):
        qtbot.keyClicks(box.view(), "Cato")
        qtbot.keyClick(box.view(), Qt.Key.Key_Return)
    window.activateWindow()  # no screen, no window manager: the closed list gives nothing back
    qtbot.waitUntil(window.isActiveWindow, timeout=5000)
    assert len(session.portfolio("s3").of_kind("photo")) == 1
    assert window.bench.settle.count() == 0
    hands.press(Qt.Key.Key_T, CTRL)

    # It shows him: one key on the small picture tells.
    hands.find("cato")
    thumb = next(one for one in window.sheet.evidence.thumbs if one.kind == "photo")
    thumb.setFocus()
    hands.decide(Qt.Key.Key_L)
    assert not session.portfolio("s3").of_kind("photo")
    hands.press(Qt.Key.Key_Escape)

    # Correct a reading: Bodil wrote 17.09 for what was a swing less.
    hands.find("bodil")
    g_before = session.analysis("s2").line.g
    for _ in range(4):
        hands.press(Qt.Key.Key_Down)
    for _ in range(3):
        hands.press(Qt.Key.Key_Right)
    hands.press(Qt.Key.Key_F2)
    editor = window.sheet.table.findChild(QLineEdit)
    assert editor.text() == "17.09"
    qtbot.keyClicks(editor, "15.55")
    with qtbot.waitSignal(window.desk.saved, timeout=10_000):
        qtbot.keyClick(editor, Qt.Key.Key_Return)
    assert session.analysis("s2").line.g > g_before
    hands.decide(Qt.Key.Key_Z, CTRL)
    assert session.analysis("s2").line.g == pytest.approx(g_before)
    hands.decide(Qt.Key.Key_Z, CTRL, SHIFT)
    assert session.analysis("s2").line.g > g_before
    hands.press(Qt.Key.Key_Escape)

    # Agree with an explanation: Dora counted half swings.
    hands.find("dora")
    hands.press(Qt.Key.Key_G, ALT)  # the ghost in her graph
    hands.decide(Qt.Key.Key_A, ALT)
    assert session.value("agreed_slip", "s4") == "half_swings"
    hands.press(Qt.Key.Key_Escape)

    # Mark all, in the order of the class page, from sheet to sheet.
    hands.press(Qt.Key.Key_F, CTRL)
    hands.press(Qt.Key.Key_A, CTRL)
    hands.press(Qt.Key.Key_Delete)
    hands.press(Qt.Key.Key_Return)
    hands.press(Qt.Key.Key_Home)
    hands.press(Qt.Key.Key_Return)
    for learner in window.bench.order.learners():
        assert window.sheet.learner == learner
        hands.decide(Qt.Key.Key_Return, CTRL, SHIFT)
        assert session.progress(learner) == (5, 5)  # the short rubric has five criteria
        if learner == "s1":  # and once of her own mind: the second level of the first criterion
            hands.decide(Qt.Key.Key_2, CTRL)
        hands.press(Qt.Key.Key_PageDown, CTRL)
    assert window.pages.currentWidget() is window.bench
    assert "4 marked" in window.bench.shown.text()

    # Export, and read back what came out.
    hands.press(Qt.Key.Key_E, CTRL)
    qtbot.waitUntil(lambda: "✓ written" in window.bar.trouble.text(), timeout=20_000)
    assert "drafts" not in window.bar.trouble.text()
    sheet = openpyxl.load_workbook(folder / "markbench-out" / "marks.xlsx")["Mark sheet"]
    head, *rows = sheet.iter_rows(values_only=True)
    by_id = {row[0]: dict(zip(head, row, strict=True)) for row in rows}
    assert {i: row["Name"] for i, row in by_id.items()} == {
        "s1": "Aino Example", "s2": "Bodil Sample", "s3": "Cato Instance",
        "s4": "Dora Placeholder",
    }  # fmt: skip
    # The marks of the levels stand in rubrics/short.toml: readings 5 and 4, evidence 3.
    assert by_id["s1"]["Raw readings /5"] == 4
    # Dora's ten half swings, agreed, are five swings where ten were asked for.
    assert [by_id[i]["Raw readings /5"] for i in ("s2", "s3", "s4")] == [5, 5, 4]
    assert [by_id[i]["Evidence /3"] for i in ("s1", "s2", "s3", "s4")] == [3, 3, 3, 3]
    for row in by_id.values():
        marks = [value for title, value in row.items() if "/" in title and title[:5] != "Total"]
        assert row["Total /18"] == sum(marks)
        assert row["Marked by"] == "T. Teacher"
    with (folder / "markbench-out" / "mark_sheet.csv").open(encoding="utf-8-sig") as held:
        listed = list(csv.reader(held))
    assert len(listed) == 5

    # Nothing that was handed in was touched, and tomorrow all of it is still there.
    assert digests(folder) | before == digests(folder)
    qtbot.keyClick(window, Qt.Key.Key_W, CTRL)
    qtbot.waitUntil(lambda: window.pages.currentWidget() is window.start, timeout=10_000)
    assert window.desk is None
    tomorrow = Session.open(folder, "T. Teacher")
    assert [tomorrow.progress(one.id) for one in tomorrow.learners] == [(5, 5)] * 4
    assert tomorrow.value("agreed_slip", "s4") == "half_swings"
    tomorrow.close()
