"""A number is never parted from its unit, wherever a label breaks its line."""

from __future__ import annotations

import pytest
from PySide6.QtGui import QFont, QTextLayout, QTextOption
from PySide6.QtWidgets import QApplication, QLabel

from markbench.ui.look.words import breakable, unbroken
from markbench.ui.parts import LinkLabel, label


def lines(text: str, width: int) -> list[str]:
    """Where Qt breaks a text."""
    layout, option = QTextLayout(text, QFont()), QTextOption()
    option.setWrapMode(QTextOption.WrapMode.WordWrap)
    layout.setTextOption(option)
    layout.beginLayout()
    found = []
    while (line := layout.createLine()).isValid():
        line.setLineWidth(width)
        found.append(text[line.textStart() : line.textStart() + line.textLength()].strip())
    layout.endLayout()
    return found


@pytest.mark.parametrize(
    "quantity", ["9.88 ± 0.19 m/s²", "20.0 cm", "15.57 s", "0.1 s²", "50 %", "1.5 m", "3 min"]
)
def test_no_width_parts_a_quantity(qapp: QApplication, quantity: str) -> None:
    held = unbroken(f"so it is {quantity} here and now")
    broken = [wide for wide in range(40, 400, 3) if not any(
        unbroken(quantity) in line for line in lines(held, wide))]  # fmt: skip
    assert broken == []


def test_words_that_are_no_quantity_break_as_before(qapp: QApplication) -> None:
    for text in ("5 learners", "10 swings", "2 marks", "in 3 months", "at 20 seconds"):
        assert unbroken(text) == text


@pytest.mark.parametrize("text", ["g is 9.88 ± 0.19 m/s² at 20.0 cm", "Voilà\u00a0: deux", "a/b"])
def test_what_was_held_is_let_go_and_nothing_else(text: str) -> None:
    assert breakable(unbroken(text)) == text


def test_a_label_says_what_it_was_given(qapp: QApplication) -> None:
    words = "g is 9.81 m/s²"
    shown, link = label(words, wrap=True), LinkLabel()
    link.show_link(words, leads=True)
    assert shown.text() == link.text() == link.accessibleName() == words
    assert QLabel.text(shown) != words
    shown.clear()
    assert shown.text() == QLabel.text(shown) == ""
