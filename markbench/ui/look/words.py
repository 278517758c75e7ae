"""Words shown in little room."""

from __future__ import annotations

import re

from PySide6.QtCore import Qt
from PySide6.QtGui import QFontMetrics, QFontMetricsF

# A number keeps its unit, and a value its uncertainty, on one line.
_HELD = re.compile(r"(?<=\d) (?=(?:mm|cm|ms|min|m|s²|s|%|°)(?!\w))| (?=±)|(?<=±) ")
_HELD_TOGETHER = re.compile(_HELD.pattern.replace(" ", "\u00a0"))
_NO_BREAK_SPACE, _WORD_JOINER = "\u00a0", "\u2060"


def unbroken(text: str) -> str:
    """``text`` with its quantities held together where lines are broken; it looks the same."""
    held = _HELD.sub(_NO_BREAK_SPACE, text)
    return held.replace("m/s", f"m/{_WORD_JOINER}s")  # Qt breaks lines after a stroke


def breakable(text: str) -> str:
    """What :func:`unbroken` put into a text taken out; spaces that others hold stay as they are."""
    parted = text.replace(f"/{_WORD_JOINER}", "/")
    return _HELD_TOGETHER.sub(" ", parted)


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
