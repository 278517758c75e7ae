"""Films as arrays, without a codec between: discs that swing before a wall, nothing else."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from markbench.evidence.video.film import Film

HEIGHT, WIDTH, RATE = 96, 160, 30.0


@dataclass(frozen=True)
class Bob:
    """A disc in pixels; ``lag`` radians behind the phase 2πt/T."""

    x: float
    y: float = 60.0
    reach: float = 14.0
    radius: float = 5.0
    period_s: float = 0.9
    lag: float = 0.0
    level: float = 40.0

    def centre(self, times_s: np.ndarray) -> tuple[np.ndarray, np.ndarray]:
        u = np.cos(2 * np.pi * times_s / self.period_s - self.lag)
        return self.x + self.reach * u, self.y - 0.1 * self.reach * u**2


def wall(level: float = 150.0) -> np.ndarray:
    """A wall with some texture."""
    yy, xx = np.mgrid[:HEIGHT, :WIDTH].astype(float)
    return level + 8 * np.sin(xx / 7) * np.cos(yy / 9)


def put(picture: np.ndarray, x: float, y: float, radius: float, level: float) -> None:
    """Paint a disc with a soft edge."""
    yy, xx = np.mgrid[:HEIGHT, :WIDTH].astype(float)
    cover = np.clip(radius + 0.5 - np.hypot(xx - x, yy - y), 0, 1)
    picture += cover * (level - picture)


def film_of(pictures: list[np.ndarray], seed: int = 1) -> Film:
    """Pictures, a grain of one grey level added, as a decoded film of 30 frames a second."""
    rng = np.random.default_rng(seed)
    frames = np.stack([picture + rng.normal(0, 1, picture.shape) for picture in pictures])
    times = np.arange(len(frames)) / RATE
    return Film(
        frames=np.clip(frames, 0, 255).astype(np.uint8),
        times_s=times,
        group=1,
        rate=RATE,
        uneven=0.0,
        size=(WIDTH, HEIGHT),
        decoded=len(frames),
        shown_s=(0.0, float(times[-1])),
        duration_s=float(times[-1]) + 1 / RATE,
    )


def swinging(*bobs: Bob, seconds: float = 7.0, level: float = 150.0) -> Film:
    """The bobs before the wall, those named later in front."""
    times = np.arange(round(seconds * RATE)) / RATE
    ways = [bob.centre(times) for bob in bobs]
    pictures = []
    for n in range(times.size):
        picture = wall(level)
        for bob, (x, y) in zip(bobs, ways, strict=True):
            put(picture, x[n], y[n], bob.radius, bob.level)
        pictures.append(picture)
    return film_of(pictures)


@dataclass(frozen=True)
class Hung:
    """A pendulum in the picture: pixels, and degrees. ``thread``: its share of the contrast."""

    string: float = 62.0
    amplitude_deg: float = 12.0
    top: float = 8.0
    x: float = 80.0
    askew_deg: float = 0.0
    thread: float = 0.5
    radius: float = 5.0
    level: float = 40.0
    decrement: float = 0.02
    period_s: float = 0.9


def hanging(pendulum: Hung, seconds: float = 5.0) -> Film:
    """A pendulum with its thread, a pixel wide, let go at the first frame."""
    times = np.arange(round(seconds * RATE)) / RATE
    turns = times / pendulum.period_s
    sizes = np.radians(pendulum.amplitude_deg) * np.exp(-pendulum.decrement * turns)
    pictures = []
    for angle in sizes * np.cos(2 * np.pi * turns) + np.radians(pendulum.askew_deg):
        picture = wall()
        x = pendulum.x + pendulum.string * np.sin(angle)
        y = pendulum.top + pendulum.string * np.cos(angle)
        _line(picture, (pendulum.x, pendulum.top), (x, y), pendulum.thread, pendulum.level)
        put(picture, x, y, pendulum.radius, pendulum.level)
        pictures.append(picture)
    return film_of(pictures)


def _line(
    picture: np.ndarray,
    start: tuple[float, float],
    end: tuple[float, float],
    strength: float,
    level: float,
) -> None:
    yy, xx = np.mgrid[:HEIGHT, :WIDTH].astype(float)
    (x0, y0), (dx, dy) = start, (end[0] - start[0], end[1] - start[1])
    along = np.clip(((xx - x0) * dx + (yy - y0) * dy) / (dx**2 + dy**2), 0, 1)
    off = np.hypot(xx - x0 - along * dx, yy - y0 - along * dy)
    picture += strength * np.clip(1 - off, 0, 1) * (level - picture)
