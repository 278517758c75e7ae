"""A swing video as frames by number, decoded with PyAV; used from one worker thread.

Frames are found by their own times (phones drop and stretch frames). A step back seeks to
the key frame before and decodes forward; the last frames are kept, so that stepping to
and fro stays quick.
"""

from __future__ import annotations

import io
from bisect import bisect_left
from collections import OrderedDict
from pathlib import Path
from typing import Any, Self

from PySide6.QtCore import Qt
from PySide6.QtGui import QImage, QTransform

_KEPT = 64
MOST_BYTES = 2_000_000_000


class Film:
    """``times_s`` holds each frame's time from the first. Build with :meth:`open`."""

    def __init__(self, container: Any, longest: int) -> None:
        self._container, self._longest = container, longest
        self._stream = container.streams.video[0]
        self._stream.thread_type = "AUTO"
        base = self._stream.time_base
        self._stamps = sorted(
            {packet.pts for packet in container.demux(self._stream) if packet.pts is not None}
        )
        if not self._stamps:
            raise ValueError("This film shows no frames.")
        #: Time of the first frame on the film's own clock, on which swings are measured.
        self.start_s = float(self._stamps[0] * base)
        self.times_s = [float((stamp - self._stamps[0]) * base) for stamp in self._stamps]
        self._decoder: Any = None
        self._next = -1
        self._held: OrderedDict[int, QImage] = OrderedDict()

    @classmethod
    def open(cls, folder: Path, file: str, longest: int = 960) -> Film:
        """Open a piece. Raises ``ValueError`` with a sentence where it cannot be read."""
        import av

        from markbench.evidence.video.film import FOLLOWS_NOTHING
        from markbench.intake.tree import open_piece

        data = open_piece(folder, file, MOST_BYTES)
        try:
            return cls(av.open(io.BytesIO(data), options=FOLLOWS_NOTHING), longest)
        except (av.FFmpegError, IndexError, OSError, TypeError) as error:
            raise ValueError("This film cannot be opened.") from error

    def __len__(self) -> int:
        return len(self._stamps)

    def __enter__(self) -> Self:
        return self

    def __exit__(self, *_: object) -> None:
        self.close()

    def close(self) -> None:
        """Let the file go."""
        self._container.close()

    def frame(self, number: int) -> QImage:
        """The frame of that number, upright."""
        number = min(max(number, 0), len(self) - 1)
        held = self._held.get(number)
        if held is not None:
            self._held.move_to_end(number)
            return held
        if self._decoder is None or not self._next <= number < self._next + _KEPT:
            self._container.seek(self._stamps[number], stream=self._stream, backward=True)
            self._decoder = self._container.decode(self._stream)
        image = QImage()
        for decoded in self._decoder:
            if decoded.pts is None:
                continue
            at = bisect_left(self._stamps, decoded.pts)
            self._next = at + 1
            image = self._keep(at, decoded)
            if at >= number:
                return image
        self._decoder = None
        if image.isNull():
            raise ValueError("This film breaks off here.")
        return image

    def key_frame_near(self, number: int) -> QImage:
        """The last frame up to ``number`` that stands by itself, upright: quick to come by."""
        self._container.seek(self._stamps[number], stream=self._stream, backward=True)
        self._decoder = self._container.decode(self._stream)
        for decoded in self._decoder:
            if decoded.pts is not None:
                at = bisect_left(self._stamps, decoded.pts)
                self._next = at + 1
                return self._keep(at, decoded)
        raise ValueError("This film breaks off here.")

    def _keep(self, number: int, decoded: Any) -> QImage:
        part = min(1.0, self._longest / max(decoded.width, decoded.height))
        wide, high = max(int(decoded.width * part), 2), max(int(decoded.height * part), 2)
        picture = decoded.to_ndarray(format="rgb24", width=wide, height=high)
        image = QImage(picture.tobytes(), wide, high, 3 * wide, QImage.Format.Format_RGB888).copy()
        turn = int(getattr(decoded, "rotation", 0))
        if turn:
            image = image.transformed(
                QTransform().rotate(-turn), Qt.TransformationMode.SmoothTransformation
            )
        self._held[number] = image
        while len(self._held) > _KEPT:
            self._held.popitem(last=False)
        return image
