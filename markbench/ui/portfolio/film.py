"""A swing video as frames by number, decoded in a process of its own."""

from __future__ import annotations

import functools
from pathlib import Path
from typing import TYPE_CHECKING, Self

from PySide6.QtGui import QImage

from markbench.intake.tree import open_piece
from markbench.ui.portfolio.pictures import image_of

if TYPE_CHECKING:
    from markbench.evidence.showing import Opener

MOST_BYTES = 2_000_000_000


class Film:
    """``times_s`` holds each frame's time from the first. Build with :meth:`open`.

    The first frame is at ``start_s`` on the film's own clock, on which swings are measured.
    """

    def __init__(self, number: int, start_s: float, times_s: list[float]) -> None:
        self._number = number
        self.start_s, self.times_s = start_s, times_s

    @classmethod
    def open(cls, folder: Path, file: str, longest: int = 960) -> Film:
        """Open a piece. Raises ``ValueError`` with a sentence where it cannot be read."""
        return cls(*_opener().open_film(open_piece(folder, file, MOST_BYTES), longest))

    def __len__(self) -> int:
        return len(self.times_s)

    def __enter__(self) -> Self:
        return self

    def __exit__(self, *_: object) -> None:
        self.close()

    def close(self) -> None:
        """Let the file go."""
        _opener().close_film(self._number)

    def frame(self, number: int) -> QImage:
        """The frame of that number, upright."""
        number = min(max(number, 0), len(self) - 1)
        return image_of(_opener().frame(self._number, number))


@functools.cache
def _opener() -> Opener:
    """One for all films, beside that of the pictures: frames wait for no photo."""
    from markbench.evidence.showing import Opener

    return Opener()
