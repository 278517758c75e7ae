"""Words painted into little room."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtGui import QFontMetrics, QFontMetricsF


def fitted(text: str, metrics: QFontMetricsF | QFontMetrics, width: float, most: int) -> list[str]:
    """``text`` broken into at most ``most`` lines; the last ends in … where there is more."""
    lines: list[str] = [""]
    words = text.split()
    for number, word in enumerate(words):
        longer = f"{lines[-1]} {word}".strip()
        if metrics.horizontalAdvance(longer) <= width or not lines[-1]:
            lines[-1] = longer
        elif len(lines) == most:
            rest = " ".join((lines[-1], *words[number:]))
            lines[-1] = metrics.elidedText(rest, Qt.TextElideMode.ElideRight, int(width))
            break
        else:
            lines.append(word)
    return lines
