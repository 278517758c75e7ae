"""A field for a number with decimals, in the window's language."""

from __future__ import annotations

from PySide6.QtCore import QLocale
from PySide6.QtGui import QValidator
from PySide6.QtWidgets import QDoubleSpinBox

from markbench.ui.look.dates import language
from markbench.ui.look.said import decimal_mark


class NumberBox(QDoubleSpinBox):
    """Shows the language's decimal mark and reads a comma and a point alike.

    A mark between thousands is not read: 1.5 typed into a German field is one and a half.
    """

    def __init__(self) -> None:
        super().__init__()
        plain = QLocale(language())
        plain.setNumberOptions(QLocale.NumberOption.RejectGroupSeparator)
        self.setLocale(plain)

    def validate(self, text: str, at: int) -> tuple[QValidator.State, str, int]:
        """Qt's own judgement, of the text with the language's mark."""
        return super().validate(_with_mark(text), at)

    def valueFromText(self, text: str) -> float:
        """The number typed."""
        return super().valueFromText(_with_mark(text))


def _with_mark(text: str) -> str:
    mark = decimal_mark()
    return text.replace("," if mark == "." else ".", mark)
