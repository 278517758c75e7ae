"""A name in little room: narrower, on more lines, or smaller, before anything of it is cut.

Narrower comes first: names of two sizes side by side look as if they meant something.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from functools import lru_cache

from PySide6.QtCore import Qt
from PySide6.QtGui import QFont, QFontMetricsF

from markbench.ui.look.theme import Theme

# Size, width of the letters in per cent, lines. The usual way first; never more than three
# lines, and never below the smallest text.
_WAYS = (
    ("body", 100, 2), ("body", 90, 2), ("body", 100, 3), ("body", 82, 2), ("body", 82, 3),
    ("small", 82, 2), ("small", 82, 3),
)  # fmt: skip
_PART = re.compile(r"\s*([^\s\-‐]+[\-‐]?)")


@dataclass(frozen=True, slots=True)
class SetName:
    """A name set in lines of one font."""

    lines: tuple[str, ...]
    font: QFont
    metrics: QFontMetricsF

    @property
    def height(self) -> float:
        """Height used."""
        return self.metrics.height() * len(self.lines)


def set_name(name: str, width: float, height: float, ear: float, theme: Theme) -> SetName:
    """Set a name in ``width`` and, where it can be, ``height``; the first line has ``ear`` less.

    A part that is too long for a line of the smallest text is broken where it is full.
    """
    last: SetName | None = None
    for size, narrow, most in _WAYS:
        font, metrics = _face(theme, theme.scale, size, narrow)
        if last is not None and most * metrics.height() > height:
            continue
        lines = _lines(name, metrics, width, ear)
        last = SetName(tuple(lines), font, metrics)
        if len(lines) <= most and all(
            metrics.horizontalAdvance(line) <= width - (0 if number else ear)
            for number, line in enumerate(lines)
        ):
            return last
    assert last is not None
    most = max(int(height // last.metrics.height()), 1)
    return SetName(tuple(_broken(name, last.metrics, width, ear, most)), last.font, last.metrics)


@lru_cache(maxsize=32)
def _face(theme: Theme, _scale: float, size: str, narrow: int) -> tuple[QFont, QFontMetricsF]:
    """A font and its measures, kept: every card asks for them."""
    font = theme.font(size, bold=True)
    if narrow != 100:
        font.setStretch(narrow)
    return font, QFontMetricsF(font)


def _lines(name: str, metrics: QFontMetricsF, width: float, ear: float) -> list[str]:
    """As many parts to a line as fit; parts end at spaces and after hyphens."""
    lines: list[str] = []
    for part in _PART.finditer(name):
        longer = f"{lines[-1]}{part[0]}".strip() if lines else part[1]
        room = width - (ear if len(lines) < 2 else 0)
        if lines and metrics.horizontalAdvance(longer) > room:
            lines.append(part[1])
        elif lines:
            lines[-1] = longer
        else:
            lines.append(part[1])
    return lines or [name]


def _from(name: str, lines: list[str]) -> str:
    """What is left of a name after ``lines``, its blanks and all."""
    rest = name
    for line in lines:
        rest = rest[rest.index(line) + len(line) :]
    return rest.strip()


def _broken(name: str, metrics: QFontMetricsF, width: float, ear: float, most: int) -> list[str]:
    """Lines filled letter by letter where a part is too long; what is over is cut."""
    lines: list[str] = []
    for line in _lines(name, metrics, width, ear):
        rest = line
        while rest:
            room = width - (0 if lines else ear)
            count = len(rest)
            while count > 1 and metrics.horizontalAdvance(rest[:count]) > room:
                count -= 1
            lines.append(rest[:count].strip())
            rest = rest[count:]
    if len(lines) > most:
        over = _from(name, lines[: most - 1])
        lines = [*lines[: most - 1],
                 metrics.elidedText(over, Qt.TextElideMode.ElideRight, width)]  # fmt: skip
    return lines
