"""Swing films: a real pendulum's motion, drawn frame by frame and encoded as H.264.

The angle comes from the equation of motion, not from a sine, so that the period carries
its amplitude and its decay; the frames may come at uneven times, as a phone's do.
"""

from __future__ import annotations

import io
import math
from dataclasses import dataclass
from fractions import Fraction

import av
import numpy as np
from numpy.typing import NDArray
from PIL import Image, ImageDraw, ImageFont

from simulation.scenery import Colour, darker, hang, room, sphere

Array = NDArray[np.float64]
Pixels = NDArray[np.uint8]
# Ticks of a second in which frame times are kept: thousandths of 30 frames, and of 29.97.
TIME_BASE = Fraction(1, 30_000)


@dataclass(frozen=True, slots=True)
class Film:
    """What is filmed, and how. Lengths in metres, angles in degrees.

    ``swings`` complete swings after the release; ``held_s`` the time the bob is held
    before. ``uneven``: frame times scatter as a phone's do. ``rotated``: the frames lie on
    their side and the file says so. ``caption``: ``half_swings`` writes the learner's
    running count, one for every half swing. ``shake_px``: an unsteady hand.
    """

    length_m: float
    g: float = 9.81
    amplitude_deg: float = 10.0
    swings: float = 11.0
    held_s: float = 0.8
    decay_s: float = 90.0
    size: tuple[int, int] = (480, 360)
    frame_rate: Fraction = Fraction(30)
    uneven: bool = False
    rotated: bool = False
    caption: str = ""
    shake_px: float = 0.0
    support: str = "door"
    room: int = 0
    bob: Colour = (178, 62, 60)
    seed: int = 1


def angles(film: Film, times_s: Array) -> Array:
    """Angle in radians at each of ``times_s`` (s from the release; held before it).

    θ̈ = −(g/L)·sin θ − (2/τ)·θ̇, stepped by the classical fourth-order rule of Runge.
    """
    step = 1e-3
    count = int(np.ceil(max(float(times_s.max()), 0.0) / step)) + 2
    stiffness, damping = film.g / film.length_m, 2.0 / film.decay_s
    track = np.empty(count)
    angle, rate = math.radians(film.amplitude_deg), 0.0

    def force(a: float, r: float) -> float:
        return -stiffness * math.sin(a) - damping * r

    for i in range(count):
        track[i] = angle
        k1, l1 = rate, force(angle, rate)
        k2, l2 = rate + step / 2 * l1, force(angle + step / 2 * k1, rate + step / 2 * l1)
        k3, l3 = rate + step / 2 * l2, force(angle + step / 2 * k2, rate + step / 2 * l2)
        k4, l4 = rate + step * l3, force(angle + step * k3, rate + step * l3)
        angle += step / 6 * (k1 + 2 * k2 + 2 * k3 + k4)
        rate += step / 6 * (l1 + 2 * l2 + 2 * l3 + l4)
    return np.asarray(np.interp(times_s, step * np.arange(count), track))


def frame_times(film: Film) -> Array:
    """Times of the frames in seconds from the first, on the ticks of ``TIME_BASE``."""
    rng = np.random.default_rng(film.seed)
    period = 2 * np.pi * np.sqrt(film.length_m / film.g)
    seconds = film.held_s + film.swings * period + 0.2
    count = int(seconds * film.frame_rate)
    times = np.arange(count) / float(film.frame_rate)
    if film.uneven:  # a phone drops to slower frames now and then, and jitters
        gaps = np.where(rng.random(count) < 0.04, 2.0, 1.0) / float(film.frame_rate)
        times = np.cumsum(gaps * rng.uniform(0.93, 1.07, count))
        times = times[times <= seconds] - times[0]
    ticks = np.round(times / float(TIME_BASE))
    return np.asarray(ticks * float(TIME_BASE))


def record(film: Film) -> bytes:
    """The film as the bytes of an MP4 file."""
    times = frame_times(film)
    swing = angles(film, np.maximum(times - film.held_s, 0.0))
    stage = _Stage(film)
    buffer = io.BytesIO()
    options = {"fflags": "+bitexact"}
    with av.open(buffer, "w", format="mp4", options=options) as container:
        stream = container.add_stream("libx264", rate=film.frame_rate)
        stream.width, stream.height = film.size[::-1] if film.rotated else film.size
        stream.pix_fmt = "yuv420p"
        stream.time_base = stream.codec_context.time_base = TIME_BASE
        stream.thread_count = 1
        stream.options = {"crf": "25", "preset": "veryfast", "x264-params": "threads=1:keyint=250"}
        if film.rotated:
            stream.set_display_rotation(-90)
        for i, (at, angle) in enumerate(zip(times, swing, strict=True)):
            pixels = stage.frame(float(angle), _count(film, float(at)), i)
            if film.rotated:
                pixels = np.ascontiguousarray(np.rot90(pixels))
            frame = av.VideoFrame.from_ndarray(pixels, format="rgb24")
            frame.pts = round(at / float(TIME_BASE))
            frame.time_base = TIME_BASE
            container.mux(stream.encode(frame))
        container.mux(stream.encode())
    return buffer.getvalue()


def _count(film: Film, at_s: float) -> int:
    """What the learner says aloud: one more at every turning point, from the release."""
    if film.caption != "half_swings" or at_s < film.held_s:
        return -1
    half = np.pi * np.sqrt(film.length_m / film.g)
    return int((at_s - film.held_s) / half)


class _Stage:
    """The still room, onto which thread and bob are painted for each frame."""

    def __init__(self, film: Film) -> None:
        rng = np.random.default_rng([film.seed, film.room])
        self._rng = np.random.default_rng(film.seed)
        self._film = film
        width, height = film.size
        large = room(rng, (2 * width, 2 * height), film.room)
        px, py = hang(large, rng, film.support, (0.5, 0.12))
        self._back = np.asarray(large.resize(film.size, Image.Resampling.LANCZOS))
        self._pivot = (px / 2, py / 2)
        reach = height * 0.7
        sideways = width * 0.4 / max(np.sin(np.radians(film.amplitude_deg)), 0.05)
        self._thread = float(min(reach, sideways))
        # A bob of 3 cm, never too small to be seen, never larger than the set-up allows.
        self._radius = float(np.clip(0.015 * self._thread / film.length_m, 8.0, 22.0))
        ball = np.asarray(sphere(self._radius, film.bob), dtype=float)
        self._ball = ball
        self._font = ImageFont.load_default(size=height // 8)

    def frame(self, angle: float, count: int, number: int) -> Pixels:
        """One picture as (height, width, 3)."""
        film = self._film
        picture = self._back.copy()
        x0, y0 = self._pivot
        x, y = x0 + self._thread * np.sin(angle), y0 + self._thread * np.cos(angle)
        near = self._radius
        # A soft shadow on the wall behind, then thread, then bob.
        self._blot(picture, x + near * 0.9, y + near * 0.9, near * 1.3, 0.16)
        self._line(picture, (x0 + 5, y0 + 5), (x + near * 0.7, y + near * 0.7), 1.4, 0.12)
        self._line(picture, (x0, y0), (x, y), 0.9, 0.85)
        self._ball_at(picture, x, y)
        if film.shake_px:
            at = number / 14
            dx = round(film.shake_px * np.sin(at * 1.3 + film.seed))
            dy = round(film.shake_px * np.sin(at * 0.9 + 2 * film.seed))
            picture = np.roll(picture, (dy, dx), axis=(0, 1))
        pixels = picture
        if count >= 0:
            image = Image.fromarray(pixels, "RGB")
            ImageDraw.Draw(image).text(
                (film.size[0] * 0.05, film.size[1] * 0.8),
                str(count),
                font=self._font,
                fill=(255, 252, 240),
                stroke_width=3,
                stroke_fill=darker(film.bob, 0.5),
            )
            pixels = np.asarray(image)
        return pixels

    def _line(
        self,
        picture: Pixels,
        start: tuple[float, float],
        end: tuple[float, float],
        half: float,
        strength: float,
    ) -> None:
        """A dark line of half-width ``half`` pixels, its edges smooth; nearly upright."""
        top, bottom = int(np.ceil(start[1])), int(np.floor(end[1]))
        rows = np.arange(top, min(bottom, picture.shape[0] - 1) + 1)
        slope = (end[0] - start[0]) / (end[1] - start[1])
        centre = start[0] + (rows - start[1]) * slope
        columns = np.floor(centre).astype(int)[:, None] + np.arange(-3, 5)[None, :]
        across = np.abs(columns - centre[:, None]) / np.hypot(1, slope)
        alpha = strength * np.clip(half + 0.5 - across, 0, 1)[..., None]
        inside = (columns >= 0) & (columns < picture.shape[1])
        columns = np.clip(columns, 0, picture.shape[1] - 1)
        under = picture[rows[:, None], columns]
        over = under * (1 - alpha) + 45 * alpha
        picture[rows[:, None], columns] = np.where(inside[..., None], over, under) + 0.5

    def _blot(self, picture: Pixels, x: float, y: float, spread: float, strength: float) -> None:
        reach = int(2.2 * spread)
        rows = np.arange(max(int(y) - reach, 0), min(int(y) + reach, picture.shape[0]))
        columns = np.arange(max(int(x) - reach, 0), min(int(x) + reach, picture.shape[1]))
        if not rows.size or not columns.size:
            return
        squared = (rows[:, None] - y) ** 2 + (columns[None, :] - x) ** 2
        shade = 1 - strength * np.exp(-squared / spread**2)
        at = (slice(rows[0], rows[-1] + 1), slice(columns[0], columns[-1] + 1))
        picture[at] = picture[at] * shade[..., None] + 0.5

    def _ball_at(self, picture: Pixels, x: float, y: float) -> None:
        """The ball at a fraction of a pixel: between four neighbours, by bilinear weights."""
        size = self._ball.shape[0]
        left, top = x - (size - 1) / 2, y - (size - 1) / 2
        column, row = int(np.floor(left)), int(np.floor(top))
        fx, fy = left - column, top - row
        wide = np.zeros((size + 1, size + 1, 4))
        premultiplied = self._ball.copy()
        premultiplied[..., :3] *= premultiplied[..., 3:] / 255
        for dy, wy in ((0, 1 - fy), (1, fy)):
            for dx, wx in ((0, 1 - fx), (1, fx)):
                wide[dy : dy + size, dx : dx + size] += wy * wx * premultiplied
        t, b = max(row, 0), min(row + size + 1, picture.shape[0])
        le, r = max(column, 0), min(column + size + 1, picture.shape[1])
        if t >= b or le >= r:
            return
        patch = wide[t - row : b - row, le - column : r - column]
        over = picture[t:b, le:r] * (1 - patch[..., 3:] / 255) + patch[..., :3] + 0.5
        picture[t:b, le:r] = np.clip(over, 0, 255)
