"""A film file as a small stack of grey pictures, upright, each with its own time.

Why small: a bob that crosses a fifth of the picture crosses fifty of these pixels, and
its centre is found to a fraction of one; four fifths of the work of a large picture buys
nothing. Why frame times: phones drop and stretch frames, and 30000/1001 is not 30; the
container's own time of every frame is the only clock used, never a number of frames over
a rate.

Safety: the kind of container is told from the first bytes and named to the opener, so
that no playlist (which could point elsewhere) is ever followed.
"""

from __future__ import annotations

import io
import time
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

import av
import numpy as np
from numpy.typing import NDArray

LONGEST_S = 600.0
MOST_PIXELS = 8192 * 4608
MOST_BYTES = 4 << 30
LONG_EDGE = 240
SHORTEST_EDGE = 120
# Kept pictures may fill this much memory: 60 s of 240 × 136 at 30 a second take 59 MB.
BUDGET_BYTES = 64 << 20
KEPT_RATE = 30.0
# For openers that take more kinds than are measured: the containers that hold a film whole.
# A playlist is none of them, and is not followed elsewhere.
FOLLOWS_NOTHING = {"format_whitelist": "mov,matroska,webm,avi,mpegts,mpeg,asf,flv,ogg"}
# Formats whose first plane is brightness, one byte a pixel.
_PLANAR = ("yuv420p", "yuvj420p", "yuv422p", "yuvj422p", "yuv444p", "nv12", "gray")


class FilmError(ValueError):
    """The film cannot be used; the message says why in plain words."""


@dataclass(frozen=True, slots=True, eq=False)
class Film:
    """``frames`` (n, h, w) uint8 upright; ``times_s`` (n,) from the container.

    At high rates neighbouring frames are averaged, and their times with them: ``group``
    says how many. ``shown_s`` are the times of the first and last frame in the file,
    ``rate`` its mean number of frames a second and
    ``uneven`` the share of frame intervals more than a quarter off their median.
    ``size`` is the upright (width, height) in the file; ``decoded`` counts its frames.
    """

    frames: NDArray[np.uint8]
    times_s: NDArray[np.float64]
    group: int
    rate: float
    uneven: float
    size: tuple[int, int]
    decoded: int
    shown_s: tuple[float, float]
    duration_s: float

    @property
    def frame_s(self) -> float:
        """Mean interval between the frames in the file, in seconds."""
        return 1.0 / self.rate if self.rate > 0 else 0.0


def sniff(head: bytes) -> str:
    """The demuxer for a file that begins with ``head``, or ``""`` when it is no film."""
    if head[4:8] in (b"ftyp", b"moov", b"mdat", b"wide", b"free", b"skip"):
        return "mov"
    if head[:4] == b"\x1aE\xdf\xa3":
        return "matroska"
    if head[:4] == b"RIFF" and head[8:12] == b"AVI ":
        return "avi"
    return ""


def read_film(source: Path | bytes, *, time_limit_s: float = 300.0) -> Film:
    """Decode ``source`` once into a :class:`Film`. Raises :class:`FilmError`."""
    try:
        with _opened(source) as container:
            return _read(container, time_limit_s)
    except (av.FFmpegError, OSError, ValueError, MemoryError) as error:
        if isinstance(error, FilmError):
            raise
        raise FilmError("the video does not open or breaks off") from error


def _opened(source: Path | bytes) -> av.container.InputContainer:
    if isinstance(source, bytes):
        size, head = len(source), source[:16]
    else:
        size = source.stat().st_size
        with source.open("rb") as file:
            head = file.read(16)
    if size > MOST_BYTES:
        raise FilmError(f"the file is larger than {MOST_BYTES >> 30} GB")
    form = sniff(head)
    if not form:
        raise FilmError("the file is not an MP4, MOV, 3GP, WebM or AVI video")
    where = io.BytesIO(source) if isinstance(source, bytes) else str(source)
    return av.open(where, mode="r", format=form)


def _read(container: av.container.InputContainer, time_limit_s: float) -> Film:
    if not container.streams.video:
        raise FilmError("the file holds no picture track")
    stream = container.streams.video[0]
    if stream.codec_context is None:
        raise FilmError("the video's pictures are of a kind that cannot be shown here")
    if not 0 < stream.width * stream.height <= MOST_PIXELS:
        raise FilmError("the picture is too large")
    stream.thread_type = "AUTO"
    # Edges of blocks are smoothed only in frames that others are drawn from: at an eighth of
    # the size nothing of it is seen, and it is a fifth of the decoding.
    stream.codec_context.options = {"skip_loop_filter": "noref"}
    guess = float(stream.average_rate or stream.guessed_rate or 30)
    group = max(1, round(guess / KEPT_RATE))
    about_s = float(container.duration or 0) / av.time_base or 60.0
    width, height = _small(stream.width, stream.height, min(about_s, LONGEST_S) * guess / group)
    most = BUDGET_BYTES // (width * height)

    kept = _Grouper(group, most, (height, width))
    rotation, last = 0, -np.inf
    times: list[float] = []
    deadline = time.monotonic() + time_limit_s
    for frame in _good_frames(container, stream):
        if frame.time is None:
            raise FilmError("the video's frames carry no times")
        if frame.time <= last:
            continue
        if not times:
            rotation = int(getattr(frame, "rotation", 0))
        last = float(frame.time)
        times.append(last)
        kept.add(_grey(frame, width, height), last)
        if kept.full or last - times[0] > LONGEST_S:
            break
        if time.monotonic() > deadline:
            raise FilmError(f"decoding took longer than {time_limit_s:.0f} s")
    if len(times) < 2:
        raise FilmError("the video shows no moving picture")
    steps = np.diff(times)
    middle = float(np.median(steps))
    frames, mean_times = kept.done()
    turns = round(rotation / 90) % 4
    size = (stream.width, stream.height)
    return Film(
        frames=np.rot90(frames, turns, axes=(1, 2)),
        times_s=mean_times,
        group=group,
        rate=(len(times) - 1) / (times[-1] - times[0]),
        uneven=float(np.mean(np.abs(steps - middle) > 0.25 * middle)),
        size=size[::-1] if turns % 2 else size,
        decoded=len(times),
        shown_s=(times[0], times[-1]),
        duration_s=float(times[-1] - times[0]) + middle,
    )


def _good_frames(
    container: av.container.InputContainer, stream: av.VideoStream
) -> Iterator[av.VideoFrame]:
    """Frames as they come; a film that breaks off is used as far as it goes."""
    count = 0
    try:
        for frame in container.decode(stream):
            count += 1
            yield frame
    except av.FFmpegError:
        if count < 2:
            raise


def _grey(frame: av.VideoFrame, width: int, height: int) -> NDArray[np.uint8]:
    """The frame shrunk to grey; by plain means over blocks, where that is exact."""
    by = frame.width // width
    if frame.format.name not in _PLANAR or by < 3 or by * width > frame.width:
        small = frame.reformat(width=width, height=height, format="gray", interpolation="AREA")
        return small.to_ndarray().astype(np.uint8, copy=False)
    plane = frame.planes[0]
    rows = np.frombuffer(memoryview(plane), np.uint8).reshape(-1, plane.line_size)
    return block_means(rows[: height * by, : width * by], by)


def block_means(plane: NDArray[np.uint8], by: int) -> NDArray[np.uint8]:
    """Means over blocks of ``by`` × ``by`` pixels that fill ``plane``; over two rows of each.

    The bob moves along the rows; of a block of eight, sixteen pixels go into the mean.
    """
    blocks = plane.reshape(plane.shape[0] // by, by, -1)
    columns = np.add(blocks[:, by // 4], blocks[:, by // 4 + by // 2], dtype=np.uint16)
    # Column by column: a sum along so short an axis would take thrice the time.
    sums = columns[:, ::by].copy()
    for k in range(1, by):
        sums += columns[:, k::by]
    sums //= np.uint16(2 * by)
    return sums.astype(np.uint8)


def _small(width: int, height: int, frames: float) -> tuple[int, int]:
    """Size of the kept pictures: never enlarged, smaller for a long film."""
    edge = min(LONG_EDGE, max(width, height))
    shape = width * height / max(width, height) ** 2
    room = (BUDGET_BYTES / max(frames, 1.0) / shape) ** 0.5
    scale = max(width, height) / max(min(edge, room), min(SHORTEST_EDGE, edge))
    if scale >= 3:  # whole blocks of pixels can be averaged quickly
        by = int(np.ceil(scale))
        return max(8, width // by), max(8, height // by)
    return max(8, round(width / scale)), max(8, round(height / scale))


class _Grouper:
    """Averages every ``group`` frames into one kept picture; grows as the film goes on."""

    def __init__(self, group: int, most: int, shape: tuple[int, int]) -> None:
        self.group, self.most = group, most
        self.pictures: list[NDArray[np.uint8]] = []
        self.times: list[float] = []
        self.sum = np.zeros(shape, dtype=np.uint16)
        self.moments: list[float] = []

    @property
    def full(self) -> bool:
        return len(self.pictures) >= self.most

    def add(self, picture: NDArray[np.uint8], time_s: float) -> None:
        if self.group == 1:
            self.pictures.append(picture)
            self.times.append(time_s)
            return
        self.sum += picture
        self.moments.append(time_s)
        if len(self.moments) == self.group:
            self.pictures.append((self.sum // self.group).astype(np.uint8))
            self.times.append(sum(self.moments) / self.group)
            self.sum[:] = 0
            self.moments.clear()

    def done(self) -> tuple[NDArray[np.uint8], NDArray[np.float64]]:
        if self.moments:
            self.pictures.append((self.sum // len(self.moments)).astype(np.uint8))
            self.times.append(sum(self.moments) / len(self.moments))
        times = np.array(self.times)
        frames = np.empty((len(times), *self.pictures[0].shape), dtype=np.uint8)
        # Emptied as it is copied, so that the film is never held twice.
        for n in range(len(times)):
            frames[n] = self.pictures[n]
            self.pictures[n] = frames[n]
        return frames, times
