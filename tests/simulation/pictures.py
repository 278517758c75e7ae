"""Drawn photographs: the set-up with its ruler, and a cartoon learner beside it.

Nobody in them is real. A ``Picture`` says what is drawn and what is wrong with it.
"""

from __future__ import annotations

import datetime as dt
import io
from dataclasses import dataclass

import numpy as np
from PIL import Image, ImageDraw, ImageEnhance, ImageFilter, ImageFont
from PIL.TiffImagePlugin import IFDRational

from simulation.scenery import Colour, blend, darker, hang, lighter, paste_soft, room, sphere

SKINS: tuple[Colour, ...] = (
    (250, 222, 200),
    (238, 196, 164),
    (214, 164, 124),
    (176, 122, 86),
    (132, 88, 62),
    (98, 66, 50),
)
HAIRS: tuple[Colour, ...] = (
    (38, 30, 30),
    (74, 48, 34),
    (132, 82, 46),
    (206, 164, 96),
    (168, 78, 44),
)
STYLES = ("short", "long", "bun", "curls", "scarf", "fringe")


@dataclass(frozen=True, slots=True)
class Look:
    """How a cartoon learner looks: places in ``SKINS``, ``HAIRS`` and one of ``STYLES``."""

    skin: int = 2
    hair: int = 1
    style: str = "short"
    glasses: bool = False


@dataclass(frozen=True, slots=True)
class Picture:
    """One photograph. ``kind``: setup or selfie; ``length_m`` the pendulum's.

    ``trouble``: ``""``, ``dark``, ``blurred``, ``blank`` or ``small``. ``orientation`` 6
    stores the picture on its side with the Exif tag that turns it. ``gps`` is a latitude
    and longitude in degrees.
    """

    kind: str
    length_m: float
    seed: int
    room: int = 0
    support: str = "door"
    bob: Colour = (178, 62, 60)
    size: tuple[int, int] = (960, 720)
    taken: dt.datetime | None = None
    trouble: str = ""
    orientation: int = 1
    gps: tuple[float, float] | None = None
    look: Look = Look()


def photograph(picture: Picture) -> bytes:
    """The picture as the bytes of a JPEG file."""
    width, height = picture.size
    rng = np.random.default_rng([picture.seed, picture.room])
    image = room(rng, (2 * width, 2 * height), picture.room)
    if picture.kind == "selfie":
        right = bool(rng.integers(2))
        pivot = hang(image, rng, picture.support, (0.74 if right else 0.3, 0.13))
        _pendulum(image, pivot, picture, 0.5, rng)
        _figure(image, rng, picture.look, 0.34 if right else 0.68)
    else:
        pivot = hang(image, rng, picture.support, (0.52, 0.12))
        _ruler(image, pivot, picture)
        _pendulum(image, pivot, picture, 0.62, rng)
    image = image.resize(picture.size, Image.Resampling.LANCZOS)
    image = _trouble(image, picture.trouble)
    grain = np.random.default_rng(picture.seed).normal(0, 1.2, (height, width, 1))
    if picture.trouble != "blank":
        pixels = np.clip(np.asarray(image, dtype=float) + grain, 0, 255)
        image = Image.fromarray(pixels.round().astype(np.uint8), "RGB")
    if picture.trouble == "small":
        image = image.resize((160, 120), Image.Resampling.LANCZOS)
    if picture.orientation == 6:  # shown upright by a quarter turn clockwise
        image = image.transpose(Image.Transpose.ROTATE_90)
    buffer = io.BytesIO()
    image.save(buffer, "JPEG", quality=80, exif=_exif(picture))
    return buffer.getvalue()


def _exif(picture: Picture) -> Image.Exif:
    exif = Image.Exif()
    exif[0x010F] = "Invented"
    exif[0x0110] = "Drawn for the sample class"
    exif[0x0112] = picture.orientation
    if picture.taken is not None:
        stamp = picture.taken.strftime("%Y:%m:%d %H:%M:%S")
        exif[0x0132] = stamp
        exif.get_ifd(0x8769)[0x9003] = stamp
    if picture.gps is not None:
        latitude, longitude = picture.gps
        ifd = exif.get_ifd(0x8825)
        ifd[1] = "N" if latitude >= 0 else "S"
        ifd[2] = _degrees(latitude)
        ifd[3] = "E" if longitude >= 0 else "W"
        ifd[4] = _degrees(longitude)
    return exif


def _degrees(value: float) -> tuple[IFDRational, IFDRational, IFDRational]:
    minutes, seconds = divmod(round(abs(value) * 3600), 60)
    return IFDRational(minutes // 60), IFDRational(minutes % 60), IFDRational(seconds)


def _trouble(image: Image.Image, trouble: str) -> Image.Image:
    if trouble == "dark":
        return ImageEnhance.Color(ImageEnhance.Brightness(image).enhance(0.09)).enhance(0.7)
    if trouble == "blurred":
        return image.filter(ImageFilter.GaussianBlur(image.width / 70))
    if trouble == "blank":  # a thumb over the lens
        return Image.new("RGB", image.size, (34, 18, 16))
    return image


def _reach(image: Image.Image, length_m: float, share: float) -> float:
    """Pixels from pivot to the bob's middle: longer pendulums hang lower."""
    return float(image.height * share * np.clip(0.45 + 0.55 * length_m / 0.6, 0.5, 1.0))


def _pendulum(
    image: Image.Image,
    pivot: tuple[float, float],
    picture: Picture,
    share: float,
    rng: np.random.Generator,
) -> None:
    reach = _reach(image, picture.length_m, share)
    radius = float(np.clip(0.015 * reach / picture.length_m, 16, 56))
    lean = float(rng.normal(0, 0.03))
    x, y = pivot[0] + reach * np.sin(lean), pivot[1] + reach * np.cos(lean)
    shadow = Image.new("L", image.size, 0)
    draw = ImageDraw.Draw(shadow)
    off = radius * 0.8
    draw.line([pivot[0] + 10, pivot[1] + 10, x + off, y + off], fill=200, width=5)
    draw.ellipse([x + off - radius, y + off - radius, x + off + radius, y + off + radius], fill=255)
    paste_soft(image, shadow, (50, 40, 44), 0.4, radius * 0.35)
    draw = ImageDraw.Draw(image)
    draw.line([pivot[0], pivot[1] - 12, x, y], fill=(70, 62, 60), width=4)
    ball = sphere(radius, picture.bob)
    image.paste(ball, (round(x - ball.width / 2), round(y - ball.height / 2)), ball)


def _ruler(image: Image.Image, pivot: tuple[float, float], picture: Picture) -> None:
    """A ruler leaning by the thread, ticked in centimetres at the pendulum's own scale."""
    per_cm = _reach(image, picture.length_m, 0.62) / (picture.length_m * 100)
    marks = min(round(picture.length_m * 100) + 6, int((image.height * 0.84 - pivot[1]) / per_cm))
    wide, tall = image.width // 26, round(per_cm * marks)
    plate = Image.new("RGB", (wide, tall), (236, 208, 150))
    plate.paste(
        Image.fromarray(np.linspace(0, 60, wide)[None].repeat(tall, 0).astype(np.uint8), "L")
        .point(lambda v: v)
        .convert("RGB"),
        mask=Image.new("L", plate.size, 28),
    )
    draw = ImageDraw.Draw(plate)
    font = ImageFont.load_default(size=max(wide // 3, 10))
    every = 1 if per_cm > 12 else 2
    for mark in range(0, marks, every):
        y = round(mark * per_cm)
        long = wide * (0.55 if mark % 10 == 0 else 0.4 if mark % 5 == 0 else 0.24)
        draw.line([0, y, long, y], fill=(70, 50, 36), width=3 if mark % 5 == 0 else 2)
        if mark % 10 == 0 and mark:
            draw.text((wide * 0.55, y), str(mark), font=font, fill=(70, 50, 36), anchor="lm")
    x, y = round(pivot[0] + image.width * 0.07), round(pivot[1])
    shadow = Image.new("L", image.size, 0)
    ImageDraw.Draw(shadow).rectangle([x + 12, y + 8, x + wide + 12, y + tall + 8], fill=255)
    paste_soft(image, shadow, (50, 40, 40), 0.35, 10)
    image.paste(plate, (x, y))


def _figure(image: Image.Image, rng: np.random.Generator, look: Look, at: float) -> None:
    """A plain cartoon learner, head and shoulders, smiling."""
    width, height = image.size
    skin, hair, style = SKINS[look.skin], HAIRS[look.hair], look.style
    cloth = blend(
        ((92, 120, 160), (170, 92, 92), (96, 140, 116), (214, 168, 88))[int(rng.integers(4))],
        (255, 255, 255),
        float(rng.uniform(0, 0.25)),
    )
    x, y, r = at * width, height * 0.52, height * 0.155
    shadow = Image.new("L", image.size, 0)
    shade = ImageDraw.Draw(shadow)
    shade.ellipse([x - r, y - 1.1 * r, x + 1.4 * r, y + 1.4 * r], fill=255)
    shade.rounded_rectangle([x - 1.6 * r, y + 1.3 * r, x + 2.2 * r, height * 1.3], r, fill=255)
    paste_soft(image, shadow, (40, 32, 44), 0.4, r * 0.35)
    draw = ImageDraw.Draw(image)
    if style == "long":
        draw.rounded_rectangle([x - 1.08 * r, y - 0.8 * r, x + 1.08 * r, y + 1.7 * r], r, fill=hair)
    if style == "bun":
        draw.ellipse([x - 0.5 * r, y - 1.85 * r, x + 0.5 * r, y - 0.95 * r], fill=hair)
    if style == "curls":
        for angle in np.linspace(-0.3, np.pi + 0.3, 11):
            cx, cy = x + 0.98 * r * np.cos(angle), y - 0.25 * r - 0.95 * r * np.sin(angle)
            draw.ellipse([cx - 0.4 * r, cy - 0.4 * r, cx + 0.4 * r, cy + 0.4 * r], fill=hair)
    draw.rounded_rectangle(
        [x - 1.7 * r, y + 1.42 * r, x + 1.7 * r, height * 1.3], r * 0.9, fill=cloth
    )
    draw.rectangle([x - 0.36 * r, y + 0.7 * r, x + 0.36 * r, y + 1.5 * r], fill=darker(skin, 0.14))
    draw.ellipse([x - 0.62 * r, y + 1.14 * r, x + 0.62 * r, y + 1.86 * r], fill=darker(skin, 0.06))
    if style != "scarf":
        for side in (-1, 1):
            ear = x + side * 0.94 * r
            draw.ellipse([ear - 0.17 * r, y - 0.2 * r, ear + 0.17 * r, y + 0.3 * r], fill=skin)
    draw.ellipse([x - 0.92 * r, y - 1.1 * r, x + 0.92 * r, y + 1.15 * r], fill=skin)
    _hair(draw, style, x, y, r, hair, skin, cloth)
    cheek = Image.new("L", image.size, 0)
    blush = ImageDraw.Draw(cheek)
    for side in (-1, 1):
        cx = x + side * 0.52 * r
        blush.ellipse([cx - 0.2 * r, y + 0.24 * r, cx + 0.2 * r, y + 0.56 * r], fill=255)
    paste_soft(image, cheek, (222, 110, 96), 0.35, r * 0.1)
    _face(draw, rng.random() < 0.5, look.glasses, x, y, r, darker(skin, 0.25), darker(hair, 0.2))
    # The arm that holds the camera.
    side = 1 if at > 0.5 else -1
    shoulder = x + side * 1.35 * r
    hand = x + side * 2.5 * r
    draw.line(
        [shoulder, y + 2.2 * r, hand, height * 1.02], fill=darker(cloth, 0.12), width=round(r)
    )
    light = Image.new("L", image.size, 0)
    ImageDraw.Draw(light).ellipse([x - 0.8 * r, y - 1.0 * r, x + 0.1 * r, y + 0.5 * r], fill=255)
    paste_soft(image, light, (255, 244, 224), 0.22, r * 0.4)


def _face(
    draw: ImageDraw.ImageDraw,
    laughs: bool,
    glasses: bool,
    x: float,
    y: float,
    r: float,
    line: Colour,
    brow: Colour,
) -> None:
    for side in (-1, 1):
        cx, cy = x + side * 0.36 * r, y + 0.02 * r
        draw.ellipse([cx - 0.1 * r, cy - 0.13 * r, cx + 0.1 * r, cy + 0.13 * r], fill=(48, 40, 44))
        draw.ellipse(
            [cx - 0.06 * r, cy - 0.09 * r, cx + 0.01 * r, cy - 0.02 * r], fill=(255, 255, 255)
        )
        draw.arc(
            [cx - 0.22 * r, cy - 0.38 * r, cx + 0.22 * r, cy],
            205,
            335,
            fill=brow,
            width=round(0.07 * r),
        )
        if glasses:
            draw.ellipse(
                [cx - 0.3 * r, cy - 0.28 * r, cx + 0.3 * r, cy + 0.28 * r],
                outline=(70, 62, 74),
                width=round(0.05 * r),
            )
    if glasses:
        draw.line([x - 0.07 * r, y, x + 0.07 * r, y], fill=(70, 62, 74), width=round(0.05 * r))
    draw.arc(
        [x - 0.12 * r, y + 0.14 * r, x + 0.12 * r, y + 0.38 * r],
        20,
        160,
        fill=line,
        width=round(0.05 * r),
    )
    mouth = [x - 0.36 * r, y + 0.3 * r, x + 0.36 * r, y + 0.84 * r]
    if laughs:
        draw.chord(mouth, 15, 165, fill=(250, 246, 240), outline=line, width=round(0.04 * r))
    else:
        draw.arc(mouth, 20, 160, fill=line, width=round(0.07 * r))


def _hair(
    draw: ImageDraw.ImageDraw,
    style: str,
    x: float,
    y: float,
    r: float,
    hair: Colour,
    skin: Colour,
    cloth: Colour,
) -> None:
    top = [x - 1.0 * r, y - 1.22 * r, x + 1.0 * r, y + 0.8 * r]
    if style == "scarf":
        scarf = lighter(cloth, 0.35)
        draw.arc(
            [x - 1.12 * r, y - 1.3 * r, x + 1.12 * r, y + 1.4 * r],
            0,
            360,
            fill=scarf,
            width=round(0.34 * r),
        )
        draw.chord([x - 1.1 * r, y - 1.3 * r, x + 1.1 * r, y + 0.6 * r], 198, 342, fill=scarf)
        shawl = [
            (-1.05, 0.5),
            (-0.6, 1.08),
            (0, 1.22),
            (0.6, 1.08),
            (1.05, 0.5),
            (1.4, 1.9),
            (-1.4, 1.9),
        ]
        draw.polygon([(x + dx * r, y + dy * r) for dx, dy in shawl], fill=darker(scarf, 0.06))
        return
    draw.chord(top, 186, 354, fill=hair)
    # The hairline is the edge of the face laid over the hair.
    parting = {"fringe": (-0.9, 0.72, -0.42), "long": (-0.55, 0.95, -0.7)}
    left, right, line = parting.get(style, (-0.82, 0.82, -0.68))
    draw.ellipse([x + left * r, y + line * r, x + right * r, y + 0.9 * r], fill=skin)
    draw.arc(
        [x - 0.7 * r, y - 1.12 * r, x + 0.5 * r, y - 0.2 * r],
        215,
        290,
        fill=lighter(hair, 0.25),
        width=round(0.07 * r),
    )
