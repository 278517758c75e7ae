"""A seeded renderer of small swing films whose period and count are known.

Nothing here is shared with the code that measures: the picture is drawn from the angle,
the angle from the law of the pendulum. All the troubles of home films can be combined.
Names, places and things shown are invented.
"""

from __future__ import annotations

import io
import struct
from dataclasses import dataclass, field, replace
from fractions import Fraction

import av
import numpy as np
from scipy import ndimage

CONTAINERS = {
    "mp4": ("mp4", "libx264"),
    "mov": ("mov", "libx264"),
    "hevc": ("mp4", "libx265"),
    "webm": ("webm", "libvpx-vp9"),
    "avi": ("avi", "mpeg4"),
    "3gp": ("3gp", "libx264"),
}
# The camera looks down on the swing by 17°: sin 17° of what lies behind shows as height.
DEPTH = 0.3
UNUSABLE = ("two bobs", "no swing", "few swings", "cut")


@dataclass(frozen=True)
class Clip:
    """What is shown. Lengths in fractions of the picture's height, angles in degrees.

    ``thread`` is its contrast as a share of the bob's; 0 cannot be seen. ``ellipse`` is the
    ratio of the path's axes in space, of which the picture shows the share ``DEPTH``.
    """

    seed: int
    kind: str = "mp4"
    size: tuple[int, int] = (256, 144)
    rate: Fraction = Fraction(30)
    variable: bool = False
    turned: int = 0
    small_period_s: float = 1.4
    swings: float = 10.6
    talk_s: float = 0.0
    hand: bool = False
    amplitude_deg: float = 12.0
    decrement: float = 0.02
    string: float = 0.6
    bob: float = 0.03
    contrast: float = 80.0
    light: float = 1.0
    noise: float = 2.0
    blur: float = 0.0
    shake: float = 0.0
    person: bool = False
    ellipse: float = 0.0
    trouble: str = ""
    drop: float = 0.0
    cut_swings: float = 0.0
    thread: float = 0.4
    other: dict[str, float] = field(default_factory=dict)


@dataclass(frozen=True)
class Truth:
    """What a perfect observer would say of a clip.

    ``angle_deg`` is the amplitude at ``release_s``; ``flattened`` the ratio of the path's
    axes as the picture shows it; ``string_px`` the support's distance from the bob in
    pixels of the upright film.
    """

    period_s: float
    swings: float
    release_s: float
    frame_times_s: np.ndarray
    angle_deg: float = float("nan")
    flattened: float = float("nan")
    string_px: float = float("nan")


def draw(seed: int, trouble: str = "") -> Clip:
    """A clip with its troubles drawn from ``seed``; ``trouble`` one of UNUSABLE or empty."""
    rng = np.random.default_rng([seed, 20])
    kind = str(rng.choice(list(CONTAINERS)))
    period = float(2 * np.pi * np.sqrt(rng.uniform(0.1, 1.0) / 9.8))
    swings = float(rng.uniform(10.05, 13.0) if rng.random() < 0.8 else rng.uniform(3.3, 10.0))
    rate = [Fraction(24), Fraction(25), Fraction(30000, 1001), Fraction(30), Fraction(60)][
        int(rng.choice(5, p=[0.1, 0.15, 0.35, 0.25, 0.15]))
    ]
    if rng.random() < 0.12:
        rate = Fraction(int(rng.choice([120, 240])))
        period, swings = float(rng.uniform(0.5, 0.8)), float(rng.uniform(3.3, 900 / rate / 0.8))
    elif rate == 60 and period * swings > 14:
        rate = Fraction(30)  # only to keep the clip small
    dim = rng.random() < 0.25
    bob = float(rng.uniform(0.018, 0.05))
    clip = Clip(
        seed=seed,
        kind=kind,
        size=(256, 144) if rng.random() < 0.6 else (144, 256),
        rate=rate,
        variable=rng.random() < 0.35 and kind not in ("avi",),
        drop=float(rng.choice([0.0, 0.05])),
        turned=int(rng.choice([0, 0, 90, 180, 270])) if kind in ("mp4", "mov", "hevc") else 0,
        small_period_s=period,
        swings=swings,
        talk_s=float(rng.choice([0.0, rng.uniform(1, 6)])),
        hand=rng.random() < 0.5,
        amplitude_deg=float(rng.uniform(5, 18)),
        decrement=float(10 ** rng.uniform(-2.5, -1.2)),
        string=float(rng.uniform(0.5, 0.75)),
        bob=bob,
        contrast=float(rng.choice([-1, 1]) * rng.uniform(45, 110)),
        light=0.35 if dim else 1.0,
        noise=float(rng.uniform(4, 8)) if dim else float(rng.uniform(0.5, 3)),
        blur=float(rng.choice([0.0, 0.0, rng.uniform(0.5, 2.0)])),
        shake=float(rng.choice([0.0, rng.uniform(0.002, 0.015)])),
        person=rng.random() < 0.35,
        ellipse=float(rng.choice([0.0, 0.0, rng.uniform(0.1, 0.4)])),
        trouble=trouble,
    )
    if trouble == "few swings":
        # Without a hand the talk would show it swinging too, and so more than a few swings.
        clip = replace(clip, swings=float(rng.uniform(0.8, 2.7)), hand=True)
    elif trouble == "cut":
        # A whole number of swings cannot be seen to be missing; people cut anywhere.
        missing = float(rng.integers(0, 3) + rng.uniform(0.12, 0.88))
        clip = replace(clip, swings=float(rng.uniform(7, 13)), cut_swings=missing)
    elif trouble == "two bobs":
        # Half have much the same length, half a clearly different one.
        ratio = float(rng.uniform(0.6, 0.85) if rng.random() < 0.6 else rng.uniform(0.97, 1.0))
        clip = replace(
            clip,
            other={
                "ratio": ratio,
                "phase": float(rng.uniform(0.5, 5.8)),
                "aside": float(rng.uniform(0.1, 0.35)),
            },
        )
    return clip


def _frame_times(clip: Clip, duration: float, rng: np.random.Generator) -> np.ndarray:
    step = float(1 / clip.rate)
    times = np.arange(int(duration / step)) * step
    if clip.variable:
        # Phones drop the rate in dim light and stretch single frames.
        slow = 1 + 0.25 * (np.sin(2 * np.pi * times / rng.uniform(3, 8)) > 0.3)
        steps = step * slow * (1 + rng.uniform(-0.15, 0.15, times.size))
        times = np.concatenate([[0.0], np.cumsum(steps)])[: times.size]
        times = times[times < duration]
    if clip.drop:
        keep = rng.random(times.size) > clip.drop
        keep[0] = True
        times = times[keep]
    return times


def _phase(clip: Clip, seconds: np.ndarray, period: float) -> tuple[np.ndarray, np.ndarray]:
    """Phase (rad) and amplitude (rad) of a pendulum let go at 0 s; before, it is held.

    T/T₀ = 1 + θ²/16 (first term of the series, Abramowitz & Stegun ch. 17).
    """
    grid = np.arange(0, max(float(seconds.max()), 0.0) + 0.01, 0.001)
    size = np.radians(clip.amplitude_deg) * np.exp(-clip.decrement * grid / period)
    rate = 2 * np.pi / period / (1 + size**2 / 16)
    phase = np.concatenate([[0.0], np.cumsum(rate[:-1]) * 0.001])
    return np.interp(seconds, grid, phase), np.interp(seconds, grid, size)


def render(clip: Clip) -> tuple[bytes, Truth]:
    """The film's bytes and the truth about it."""
    rng = np.random.default_rng([clip.seed, 21])
    width, height = clip.size
    hand = clip.hand and clip.trouble != "no swing"
    release = clip.talk_s
    end = release + clip.swings * clip.small_period_s
    shown = _frame_times(clip, end, rng)
    # With a cut, the pendulum is further on than the film's clock says.
    world = shown.copy()
    if clip.trouble == "cut":
        at = release + (end - release) * rng.uniform(0.35, 0.65)
        world[shown >= at] += clip.cut_swings * clip.small_period_s
    # Without a hand the film opens mid-swing: any phase, and the talk shows it swinging too.
    lead = 0.0 if hand else rng.uniform(0, 1)
    since = world - release if hand else world + lead * clip.small_period_s
    phase, amplitude = _phase(clip, since, clip.small_period_s)
    first = release if hand else 0.0
    of_first, _ = _phase(clip, since[[0, -1]], clip.small_period_s)
    swings = float(of_first[1] - max(of_first[0], 0.0)) / (2 * np.pi)
    period = (shown[-1] - first) / swings if swings > 0 else np.nan
    angle = amplitude * np.cos(phase)
    across = clip.ellipse * amplitude * np.sin(phase)
    if clip.trouble == "no swing":
        angle = across = np.zeros_like(angle)

    pivot_x, pivot_y = width * rng.uniform(0.4, 0.6), height * rng.uniform(0.06, 0.15)
    string = clip.string * height
    if width < height:
        string = min(string, 0.42 * width / np.sin(np.radians(max(clip.amplitude_deg, 14))))
    radius = clip.bob * max(width, height)
    margin = 24
    scene = _scene(rng, width + 2 * margin, height + 2 * margin)
    ground = float(np.median(scene))
    level = float(np.clip(ground + clip.contrast, 15, 240))
    if abs(level - ground) < 40:
        level = float(np.clip(ground - clip.contrast, 15, 240))
    person = _person(rng, clip, shown, width, pivot_x, string)
    shakes = _shakes(rng, clip, shown, width)
    if clip.trouble == "cut" and clip.shake:
        shakes[shown >= at] += rng.normal(0, clip.shake * width, 3) * [1, 1, 0]
    yy, xx = np.mgrid[: height + 2 * margin, : width + 2 * margin].astype(np.float32)
    xx -= margin
    yy -= margin

    pendulums = [(pivot_x, string, angle, across, radius)]
    if clip.other:
        ratio = clip.other["ratio"]
        other_phase, size = _phase(clip, np.maximum(since, 0.0), clip.small_period_s * ratio**0.5)
        side = 1 if pivot_x < width / 2 else -1
        pendulums.append(
            (
                pivot_x + side * clip.other["aside"] * width,
                string * ratio,
                size * np.cos(other_phase + clip.other["phase"]),
                np.zeros_like(angle),
                radius * rng.uniform(0.8, 1.2),
            )
        )
    after, before = np.append(world[1:], world[-1]), np.insert(world[:-1], 0, world[0])
    gap = np.maximum(after - before, 1e-3)
    speckle = rng.normal(0, clip.noise, (2 * height, 2 * width)).astype(np.float32)
    frames = []
    for n in range(shown.size):
        picture = scene.copy()
        if person is not None:
            _ellipse(picture, xx, yy, person[n], height * 0.62, width * 0.09, height * 0.4, 60.0)
            _ellipse(picture, xx, yy, person[n], height * 0.18, width * 0.05, width * 0.06, 150.0)
        exposure = min(0.02, 0.6 / float(clip.rate)) / clip.light**0.5
        for x0, length, theta, out, r in pendulums:
            speed = (theta[min(n + 1, theta.size - 1)] - theta[max(n - 1, 0)]) / gap[n]
            blurred = theta[n] + speed * exposure * np.array([-0.33, 0.0, 0.33])
            shape = (x0, pivot_y, length, r, clip.thread)
            _pendulum(picture, xx, yy, shape, blurred, out[n], level)
        if hand:
            gone = (world[n] - release) / 0.5
            if gone < 1:
                away = max(gone, 0.0) ** 2 * width * 0.5 * np.sign(angle[0])
                bx = pivot_x + string * np.sin(angle[0]) + np.sign(angle[0]) * radius * 1.5
                by = pivot_y + string * np.cos(angle[0])
                _ellipse(picture, xx, yy, bx + away, by, width * 0.05, width * 0.035, 170.0)
        if clip.shake:
            dx, dy, roll = shakes[n]
            turn = np.array([[np.cos(roll), -np.sin(roll)], [np.sin(roll), np.cos(roll)]])
            middle = np.array(picture.shape) / 2
            picture = ndimage.affine_transform(
                picture, turn, middle - turn @ middle + [dy, dx], order=1, mode="nearest"
            )
        if clip.blur:
            picture = ndimage.gaussian_filter(picture, clip.blur)
        picture = picture[margin:-margin, margin:-margin] * clip.light
        down, right = rng.integers(height), rng.integers(width)
        picture = picture + speckle[down : down + height, right : right + width]
        frames.append(np.clip(picture, 0, 255).astype(np.uint8))
    data = encode(frames, shown, clip.kind, clip.turned, clip.rate)
    at_first = float(np.degrees(np.interp(first, shown, amplitude)))
    flattened = DEPTH * clip.ellipse
    return data, Truth(float(period), swings, first, shown, at_first, flattened, string)


def _scene(rng: np.random.Generator, width: int, height: int) -> np.ndarray:
    scene = np.full((height, width), rng.uniform(90, 180))
    for blur, size in ((20, 300.0), (3, 25.0)):
        scene += size * ndimage.gaussian_filter(rng.normal(0, 1, scene.shape), blur)
    for _ in range(int(rng.integers(1, 7))):
        x, y = int(rng.uniform(0, width)), int(rng.uniform(0, height))
        w, h = int(rng.uniform(10, 70)), int(rng.uniform(10, 50))
        scene[y : y + h, x : x + w] += rng.uniform(-35, 35)
    scene[24 : 24 + 6, :] = 50.0
    return np.clip(scene, 10, 240).astype(np.float32)


def _pendulum(
    whole: np.ndarray,
    all_x: np.ndarray,
    all_y: np.ndarray,
    shape: tuple[float, float, float, float, float],
    angles: np.ndarray,
    out: float,
    level: float,
) -> None:
    """Thread and bob, blurred over the ``angles`` passed during the exposure."""
    x0, y0, length, r, strength = shape
    bobs_x = x0 + length * np.sin(angles)
    bobs_y = y0 + length * np.cos(angles) + DEPTH * length * np.sin(out)
    left, right = min(x0, bobs_x.min()) - r - 3, max(x0, bobs_x.max()) + r + 3
    columns = (all_x[0] >= left) & (all_x[0] <= right)
    rows = (all_y[:, 0] >= y0 - 2) & (all_y[:, 0] <= bobs_y.max() + r + 3)
    box = np.ix_(rows, columns)
    picture, xx, yy = whole[box], all_x[box], all_y[box]
    alpha, thread = np.zeros_like(picture), np.zeros_like(picture)
    for bx, by in zip(bobs_x, bobs_y, strict=True):
        alpha += np.clip(r + 0.5 - np.hypot(xx - bx, yy - by), 0, 1) / angles.size
        along = ((xx - x0) * (bx - x0) + (yy - y0) * (by - y0)) / length**2
        along = np.clip(along, 0, 1)
        off = np.hypot(xx - x0 - along * (bx - x0), yy - y0 - along * (by - y0))
        thread += np.clip(1.0 - off, 0, 1) / angles.size
    picture = picture + strength * thread * (level - picture)
    whole[box] = picture + alpha * (level - picture)


def _ellipse(
    picture: np.ndarray,
    xx: np.ndarray,
    yy: np.ndarray,
    x: float,
    y: float,
    a: float,
    b: float,
    level: float,
) -> None:
    distance = np.sqrt(((xx - x) / a) ** 2 + ((yy - y) / b) ** 2)
    alpha = np.clip((1 - distance) * min(a, b) + 0.5, 0, 1)
    picture += alpha * (level - picture)


def _person(
    rng: np.random.Generator, clip: Clip, shown: np.ndarray, width: int, x0: float, string: float
) -> np.ndarray | None:
    if not clip.person:
        return None
    reach = string * np.sin(np.radians(clip.amplitude_deg)) + width * 0.14
    side = 1 if x0 < width / 2 else -1
    walk = ndimage.gaussian_filter1d(rng.normal(0, 1, shown.size), float(clip.rate) * 0.4)
    walk *= width * 0.06 / max(walk.std(), 1e-9)
    return np.asarray(x0 + side * (reach + np.abs(walk)))


def _shakes(rng: np.random.Generator, clip: Clip, shown: np.ndarray, width: int) -> np.ndarray:
    shakes = np.zeros((shown.size, 3))
    for axis, scale in ((0, width), (1, width), (2, 0.7)):
        for _ in range(6):
            frequency = 10 ** rng.uniform(-0.8, 0.8)
            size = clip.shake * scale / max(frequency, 0.5) ** 0.7 / 2
            shakes[:, axis] += size * np.sin(2 * np.pi * (frequency * shown + rng.uniform()))
    return shakes


def encode(
    frames: list[np.ndarray], times: np.ndarray, kind: str, turned: int, rate: Fraction
) -> bytes:
    """Frames (upright, grey uint8) shown at ``times`` as a film file of ``kind``.

    ``turned``: the film is stored turned and carries the tag that sets it right.
    """
    form, codec = CONTAINERS[kind]
    if turned:
        frames = [np.ascontiguousarray(np.rot90(frame, turned // 90)) for frame in frames]
    buffer = io.BytesIO()
    with av.open(buffer, "w", format=form) as container:
        stream = container.add_stream(codec, rate=rate)
        stream.height, stream.width = frames[0].shape
        stream.pix_fmt = "yuv420p"
        base = Fraction(1, 90000) if kind != "avi" else 1 / rate
        stream.codec_context.time_base = base
        stream.time_base = base
        stream.options = {
            "libx264": {"preset": "veryfast", "crf": "27"},
            "libx265": {"preset": "ultrafast", "crf": "28", "x265-params": "log-level=none"},
            "libvpx-vp9": {"deadline": "realtime", "cpu-used": "8", "crf": "34", "b": "0"},
            "mpeg4": {"qscale": "5", "b": "1000000"},
        }[codec]
        for picture, time in zip(frames, times, strict=True):
            frame = av.VideoFrame.from_ndarray(picture, format="gray").reformat(format="yuv420p")
            frame.pts = round(time / base)
            frame.time_base = base
            container.mux(stream.encode(frame))
        container.mux(stream.encode(None))
    data = buffer.getvalue()
    return with_rotation(data, turned) if turned else data


def with_rotation(data: bytes, degrees: int) -> bytes:
    """The same MP4/MOV with the track header's matrix set (ISO/IEC 14496-12, 8.3.2)."""
    cosine, sine = {90: (0, 1), 180: (-1, 0), 270: (0, -1)}[degrees]
    matrix = (cosine, sine, 0, -sine, cosine, 0, 0, 0, 1)
    scale = (65536, 65536, 1 << 30) * 3
    packed = struct.pack(">9i", *(m * s for m, s in zip(matrix, scale, strict=True)))
    at = data.index(b"tkhd") + 4
    at += 40 if data[at] == 0 else 52
    return data[:at] + packed + data[at + 36 :]
