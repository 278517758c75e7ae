"""Pictures of pieces, upright and no larger than needed, on any thread.

They are decoded in a process of their own, whose death costs one picture; Qt's readers are
not let near a learner's file (one crashes the window over a sound TIFF).
"""

from __future__ import annotations

import functools
from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtGui import QImage

from markbench.intake.tree import open_piece

if TYPE_CHECKING:
    from markbench.evidence.showing import Opener, Pixels

MOST_BYTES = 120_000_000  # far above any phone's photo


def load_picture(folder: Path, file: str, longest: int = 0) -> QImage:
    """The picture of a piece; ``longest`` > 0 limits its longer side in pixels.

    Raises ``ValueError`` with a sentence where it cannot be read.
    """
    return image_of(_opener().picture(open_piece(folder, file, MOST_BYTES), longest))


def load_film_still(folder: Path, file: str, longest: int) -> QImage:
    """A frame from the middle of a film, where the bob swings, for its thumbnail."""
    from markbench.ui.portfolio.film import MOST_BYTES as MOST_OF_A_FILM

    return image_of(_opener().still(open_piece(folder, file, MOST_OF_A_FILM), longest))


def image_of(pixels: Pixels) -> QImage:
    """The same as Qt's picture."""
    wide, high, rgb = pixels
    return QImage(rgb, wide, high, 3 * wide, QImage.Format.Format_RGB888).copy()


@functools.cache
def _opener() -> Opener:
    """One for all small pictures and photos: starting it takes about a second."""
    from markbench.evidence.showing import Opener

    return Opener()
