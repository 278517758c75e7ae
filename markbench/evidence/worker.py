"""Photos and films looked at in a process that may die."""

from __future__ import annotations

import tempfile
from pathlib import Path
from typing import Any

from markbench.evidence.photos import PhotoLook, look_at_photo
from markbench.evidence.picture import PictureError, thumbnail
from markbench.evidence.process import MOST_MEMORY_BYTES, Answer, Process, WorkerError
from markbench.evidence.video.judge import SwingMeasurement, measure_swing


class Worker(Process):
    """A process that looks at photos and films; one is kept for a whole class."""

    def __init__(
        self,
        *,
        photo_limit_s: float = 30.0,
        film_limit_s: float = 300.0,
        memory_bytes: int = MOST_MEMORY_BYTES,
    ) -> None:
        super().__init__(_prepare, patient=True, memory_bytes=memory_bytes)
        self.photo_limit_s, self.film_limit_s = photo_limit_s, film_limit_s

    def photo(self, data: bytes) -> PhotoLook:
        """:func:`look_at_photo`. Raises :class:`WorkerError`."""
        looked: PhotoLook = self.ask("photo", data, self.photo_limit_s)
        return looked

    def thumbnail(self, data: bytes, size: int) -> bytes:
        """:func:`thumbnail` without cache. Raises :class:`PictureError`."""
        try:
            made = self.ask("thumbnail", (data, size), self.photo_limit_s)
        except WorkerError as error:
            raise PictureError(str(error)) from error
        if isinstance(made, PictureError):
            raise made
        return bytes(made)

    def swing(self, data: bytes) -> SwingMeasurement:
        """:func:`measure_swing`. Raises :class:`WorkerError`."""
        with tempfile.TemporaryDirectory(prefix="markbench-") as folder:
            path = Path(folder) / "film"
            path.write_bytes(data)
            found: SwingMeasurement = self.ask("swing", path, self.film_limit_s)
            if not found.accepted and not path.exists():
                # A program that ends sweeps its files away under whoever is still reading.
                raise WorkerError("the video was taken away while it was measured")
        return found


def _prepare() -> Answer:
    return _answer


def _answer(task: str, argument: Any) -> object:
    if task == "swing":
        return measure_swing(argument)
    if task == "photo":
        return look_at_photo(argument)
    try:
        return thumbnail(*argument)
    except PictureError as error:
        return error
