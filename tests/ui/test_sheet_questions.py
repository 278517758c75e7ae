"""Questions on the sheet: each told once, leading to the odd one, answered by agreeing."""

from __future__ import annotations

import math
from pathlib import Path

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QApplication, QLabel
from pytestqt.qtbot import QtBot

from markbench.session import Session
from markbench.ui.portfolio.findings import FindingRow
from markbench.ui.window import Window

ALT = Qt.KeyboardModifier.AltModifier
HEAD = "Length (cm),Time 1 for 10 swings (s),Time 2 for 10 swings (s)"
LENGTHS_CM = (20, 30, 40, 50, 60)
SCATTER_S = ((0.06, -0.08), (-0.11, 0.05), (0.02, 0.09), (0.07, -0.04), (-0.06, 0.03))


def written(times) -> str:
    lines = [HEAD]
    for cm, scatter in zip(LENGTHS_CM, SCATTER_S, strict=True):
        law = 20 * math.pi * math.sqrt(cm / 981)
        pair = times(cm, [law + e for e in scatter])
        lines.append(f"{cm}.0," + ",".join(f"{t:.2f}" for t in pair))
    return "\n".join(lines) + "\n"


@pytest.fixture
def class_folder(class_folder: Path) -> Path:
    """Aino counted half swings; Bodil's second timing at 40 cm is nine seconds too long."""
    half = written(lambda _cm, pair: [t / 2 for t in pair])
    odd = written(lambda cm, pair: [pair[0], pair[1] + (9.0 if cm == 40 else 0.0)])
    (class_folder / "Aino Example" / "readings.csv").write_text(half)
    (class_folder / "Bodil Sample" / "readings.csv").write_text(odd)
    return class_folder


def row_of(window: Window, check: str) -> FindingRow:
    shown = [row for row in window.sheet.findings.rows if not row.isHidden()]
    return next(row for row in shown if row.finding.check == check)


def choose(qtbot: QtBot, window: Window, check: str) -> None:
    row_of(window, check).setFocus()
    qtbot.keyClick(row_of(window, check), Qt.Key.Key_Return)


def test_a_departing_timing_leads_to_the_odd_one_of_the_two(
    qtbot: QtBot, window: Window, session: Session
) -> None:
    window.open_learner("s2")
    choose(qtbot, window, "timing_departs")
    at = window.sheet.table.currentIndex()
    assert (at.row(), at.column()) == (2, 3)  # 40 cm, second timing
    assert "cell C4" in window.sheet._source.text()


def test_what_is_said_of_the_line_leads_to_the_lengths_farthest_from_it(
    qtbot: QtBot, window: Window, session: Session
) -> None:
    window.open_learner("s1")
    window.sheet.table.clearSelection()
    choose(qtbot, window, "g_implausible")
    rows = {index.row() for index in window.sheet.table.selectedIndexes()}
    assert rows == set(range(5))  # half swings: every length is as far off
    assert window.sheet.graph.plot.chosen is not None


def test_no_sentence_stands_twice_on_the_sheet(
    qtbot: QtBot, window: Window, session: Session
) -> None:
    for learner in ("s1", "s2", "s3"):
        window.open_learner(learner)
        QApplication.processEvents()
        sheet = window.sheet
        told = [
            one.text()
            for panel in (sheet.findings, sheet.explanations)
            for one in panel.findChildren(QLabel)
            if not one.isHidden() and len(one.text()) > 30
        ]
        assert len(told) == len(set(told))


def test_the_question_of_a_slip_points_to_its_explanation(
    qtbot: QtBot, window: Window, session: Session
) -> None:
    window.open_learner("s1")
    choose(qtbot, window, "slip")
    assert window.sheet.explanations._rows[0].show_it.isChecked()
    assert window.sheet.graph.curves.ghost_words


def test_agreeing_says_what_it_brings_about(qtbot: QtBot, window: Window, session: Session) -> None:
    window.open_learner("s1")
    sheet = window.sheet
    text = sheet.margin.cards[0].writing.field
    counted = ("count of swings is 5", "count of 5")  # once the ten are agreed to be halves
    asked = session.findings("s1")
    for again in (True, False):
        with qtbot.waitSignal(window.desk.changed, timeout=10_000):
            qtbot.keyClick(window, Qt.Key.Key_A, ALT)
        row = sheet.explanations._rows[0]
        assert row.agreed.isVisible() is again
        explained = [f for f in session.findings("s1") if f.explained_by]
        assert bool(explained) is again
        shown = [r for r in sheet.findings.rows if not r.isHidden()]
        told = [r for r in shown if "Explained" in r.accessibleDescription()]
        assert [r.finding for r in told] == explained
        assert any(words in text.toPlainText() for words in counted) is again
        assert "wise" not in text.toPlainText()
        assert "you made a tenth of a second" not in text.toPlainText()
        if again:
            assert f"{len(explained)}" in row.agreed.text()
            assert "Findings" in row.agreed.text()
            assert f"{len(explained)} explained" in sheet.findings._heading.text()
    assert session.findings("s1") == asked


class TestNobodyCanSay:
    """Times that lie on a line of their own, which several slips explain alike."""

    @pytest.fixture
    def class_folder(self, class_folder: Path) -> Path:
        rows = "20.0,9,9\n30.0,11,11\n40.0,13,13\n50.0,15,15\n60.0,17,17\n"
        (class_folder / "Bodil Sample" / "readings.csv").write_text(f"{HEAD}\n{rows}")
        return class_folder

    def test_what_would_settle_it_ends_in_one_full_stop(
        self, qtbot: QtBot, window: Window, session: Session
    ) -> None:
        pair = next(pair for pair in session.diagnosis("s2").indistinct if pair.settle)
        window.open_learner("s2")
        told = window.sheet.explanations._limits.text()
        assert pair.settle in told
        assert ".." not in told
