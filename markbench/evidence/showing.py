"""Pictures and films decoded for the eye, as plain pixels, in a process that may die.

Nothing of a learner's file is decoded in the window's own process: it sends bytes and is
handed pixels. Frames are found by their own times (phones drop and stretch frames). A step
back seeks to the key frame before and decodes forward; the last frames are kept, so that
stepping to and fro stays quick.
"""

from __future__ import annotations

import contextlib
import io
import itertools
import tempfile
import threading
import warnings
from bisect import bisect_left
from collections import OrderedDict
from pathlib import Path
from typing import Any, NamedTuple

import numpy as np
from numpy.typing import NDArray

from markbench.evidence.picture import MOST_PIXELS
from markbench.evidence.process import Answer, Process, WorkerError
from markbench.evidence.troubles import TROUBLES
from markbench.model import say
from markbench.model.sentence import known_again

_KEPT = 64
_KINDS = ("JPEG", "PNG", "WEBP", "HEIF", "AVIF", "GIF", "BMP", "TIFF")
_LIMIT_S = 60.0


class Pixels(NamedTuple):
    """``rgb`` holds 3 bytes a pixel, row by row, upright."""

    width: int
    height: int
    rgb: bytes


def picture_pixels(data: bytes, longest: int = 0) -> Pixels:
    """A photo of any usual kind; ``longest`` > 0 limits its longer side in pixels.

    Raises ``ValueError`` with a sentence where it cannot be read.
    """
    from PIL import Image, ImageOps

    try:
        with warnings.catch_warnings():
            warnings.simplefilter("ignore")  # Pillow warns of odd files; they open or they do not
            with Image.open(io.BytesIO(data), formats=_KINDS) as opened:
                if opened.width * opened.height > MOST_PIXELS:
                    raise ValueError("more pixels than can be opened")
                if longest:
                    # JPEG can be decoded at a half, quarter or eighth in a fraction of the time.
                    opened.draft("RGB", (2 * longest, 2 * longest))
                upright = ImageOps.exif_transpose(opened)
                if upright.has_transparency_data:
                    upright = upright.convert("RGBA")
                    ground = Image.new("RGBA", upright.size, "white")
                    upright = Image.alpha_composite(ground, upright)
                upright = upright.convert("RGB")
                if longest:
                    upright.thumbnail((longest, longest), Image.Resampling.BICUBIC)
                return Pixels(*upright.size, upright.tobytes())
    except Exception as error:  # decoders raise many kinds on broken data
        raise ValueError("This picture cannot be opened.") from error


class Frames:
    """A film's frames by number. ``times_s`` from the first, which is at ``start_s``.

    Raises ``ValueError`` with a sentence where it cannot be read.
    """

    def __init__(self, source: Path | bytes, longest: int) -> None:
        import av

        from markbench.evidence.video.film import FOLLOWS_NOTHING

        where = io.BytesIO(source) if isinstance(source, bytes) else str(source)
        try:
            self._container: Any = av.open(where, mode="r", options=FOLLOWS_NOTHING)
            self._stream = self._container.streams.video[0]
            self._stream.thread_type = "AUTO"
            base = self._stream.time_base
            stamps = {
                packet.pts
                for packet in self._container.demux(self._stream)
                if packet.pts is not None
            }
        except (av.FFmpegError, IndexError, OSError, TypeError, AttributeError) as error:
            raise ValueError("This video cannot be opened.") from error
        if not stamps or base is None:
            raise ValueError("This video shows no frames.")
        self._longest = longest
        self._stamps = sorted(stamps)
        self.start_s = float(self._stamps[0] * base)
        self.times_s = [float((stamp - self._stamps[0]) * base) for stamp in self._stamps]
        self._decoder: Any = None
        self._next = -1
        self._held: OrderedDict[int, Pixels] = OrderedDict()

    def frame(self, number: int) -> Pixels:
        """The frame of that number, upright."""
        import av

        number = min(max(number, 0), len(self._stamps) - 1)
        held = self._held.get(number)
        if held is not None:
            self._held.move_to_end(number)
            return held
        shown: Pixels | None = None
        try:
            if self._decoder is None or not self._next <= number < self._next + _KEPT:
                self._seek(number)
            for decoded in self._decoder:
                if decoded.pts is None:
                    continue
                at = bisect_left(self._stamps, decoded.pts)
                self._next = at + 1
                shown = self._keep(at, decoded)
                if at >= number:
                    return shown
        except (av.FFmpegError, OSError):
            pass  # it shows the last frame before the fault, if there was one
        self._decoder = None
        if shown is None:
            raise ValueError("This video breaks off here.")
        return shown

    def key_frame_near(self, number: int) -> Pixels:
        """The last frame up to ``number`` that stands by itself, upright: quick to come by."""
        import av

        try:
            self._seek(number)
            for decoded in self._decoder:
                if decoded.pts is not None:
                    at = bisect_left(self._stamps, decoded.pts)
                    self._next = at + 1
                    return self._keep(at, decoded)
        except (av.FFmpegError, OSError) as error:
            raise ValueError("This video breaks off here.") from error
        raise ValueError("This video breaks off here.")

    def close(self) -> None:
        """Let the file go."""
        self._container.close()

    def _seek(self, number: int) -> None:
        self._container.seek(self._stamps[number], stream=self._stream, backward=True)
        self._decoder = self._container.decode(self._stream)

    def _keep(self, number: int, decoded: Any) -> Pixels:
        part = min(1.0, self._longest / max(decoded.width, decoded.height))
        wide, high = max(int(decoded.width * part), 2), max(int(decoded.height * part), 2)
        picture: NDArray[np.uint8] = decoded.to_ndarray(format="rgb24", width=wide, height=high)
        picture = np.rot90(picture, round(int(getattr(decoded, "rotation", 0)) / 90) % 4)
        shown = Pixels(picture.shape[1], picture.shape[0], picture.tobytes())
        self._held[number] = shown
        while len(self._held) > _KEPT:
            self._held.popitem(last=False)
        return shown


class Opener(Process):
    """Decodes pictures and films; may be asked from any thread.

    Whatever it raises is a ``ValueError`` with a sentence.
    """

    def __init__(self) -> None:
        super().__init__(_prepare, patient=False)
        self._one = threading.Lock()
        self._folders: dict[int, tempfile.TemporaryDirectory[str]] = {}
        self._numbers = itertools.count(1)

    def picture(self, data: bytes, longest: int) -> Pixels:
        """:func:`picture_pixels`."""
        return Pixels(*self._answer("picture", (data, longest)))

    def still(self, data: bytes, longest: int) -> Pixels:
        """A frame from the middle of a film, where the bob swings."""
        with tempfile.TemporaryDirectory(prefix="markbench-") as folder:
            path = Path(folder) / "film"
            path.write_bytes(data)
            return Pixels(*self._answer("still", (path, longest)))

    def open_film(self, data: bytes, longest: int) -> tuple[int, float, list[float]]:
        """Open a film; a number for it, its start and the times of its frames."""
        number = next(self._numbers)
        folder = self._folders[number] = tempfile.TemporaryDirectory(prefix="markbench-")
        path = Path(folder.name) / "film"
        try:
            path.write_bytes(data)
            start_s, times_s = self._answer("open", (number, path, longest))
        except (OSError, ValueError):
            self.close_film(number)
            raise
        return number, float(start_s), list(times_s)

    def frame(self, film: int, number: int) -> Pixels:
        """A frame of a film that is open."""
        return Pixels(*self._answer("frame", (film, number)))

    def close_film(self, number: int) -> None:
        """Let a film go."""
        with contextlib.suppress(ValueError):
            self._answer("close", number)
        if folder := self._folders.pop(number, None):
            folder.cleanup()

    def close(self) -> None:
        """End the process and let all films go."""
        super().close()
        while self._folders:
            self._folders.popitem()[1].cleanup()

    def _answer(self, task: str, argument: object) -> Any:
        with self._one:
            try:
                found = self.ask(task, argument, _LIMIT_S)
            except WorkerError as error:
                why = known_again(str(error), TROUBLES)
                raise ValueError(say("This cannot be shown: {why}.", why=why)) from error
        if isinstance(found, ValueError):
            raise found
        return found


def _prepare() -> Answer:
    films: dict[int, Frames] = {}

    def answer(task: str, argument: Any) -> object:
        try:
            if task == "picture":
                return tuple(picture_pixels(*argument))
            if task == "still":
                with contextlib.closing(Frames(*argument)) as still:
                    return tuple(still.key_frame_near(len(still.times_s) // 2))
            if task == "open":
                number, path, longest = argument
                film = films[number] = Frames(path, longest)
                return film.start_s, film.times_s
            if task == "close":
                if argument in films:
                    films.pop(argument).close()
                return None
            number, frame = argument
            if number not in films:  # the process that had it open died
                raise ValueError("This video breaks off here.")
            return tuple(films[number].frame(frame))
        except ValueError as error:
            return error

    return answer
