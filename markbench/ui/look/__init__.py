"""One visual language: paper, pencil and ink.

Drafts are in pencil (grey, dashed, the word "draft"); a person's marks are in ink (solid,
a tick, a name and a time). Everything else stays as quiet as a sheet of paper.
"""

from markbench.ui.look.theme import Theme
from markbench.ui.look.tokens import DARK, LIGHT, SPACE, Palette

__all__ = ["DARK", "LIGHT", "SPACE", "Palette", "Theme"]
