"""What is printed, with nothing in it that a terminal would obey.

File names, names and cells come from outside. A terminal takes an escape character as a
command, and shows what stands after a mark of writing direction the wrong way round; a name
in square brackets would be a style to the printing library.
"""

from __future__ import annotations

import re
from typing import Any

from rich.console import Console
from rich.text import Text

# Controls but for tab and line feed, and the marks that turn or embed a direction (Unicode
# Standard Annex 9, 2.1 to 2.4).
_OBEYED = re.compile("[\x00-\x08\x0b-\x1f\x7f-\x9f\u061c\u200e\u200f\u202a-\u202e\u2066-\u2069]")


def plain(text: str) -> str:
    """The text with every character that a terminal would obey shown by its number."""
    text = text.encode("utf-8", "replace").decode()  # half characters of odd file names
    return _OBEYED.sub(lambda match: f"<{ord(match.group()):02X}>", text)


class Terminal(Console):
    """A console that takes texts as they are: no styles in brackets, nothing obeyed."""

    def __init__(self, **options: Any) -> None:
        super().__init__(markup=False, highlight=False, emoji=False, **options)

    def render_str(self, text: str, **options: Any) -> Text:
        """Called for every text on its way out, also for those in tables."""
        return super().render_str(plain(text), **options)
