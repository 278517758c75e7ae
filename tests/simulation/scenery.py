"""Drawn rooms with a pendulum hung in them, the background of photographs and films.

Everything is drawn at twice its size and scaled down, with soft light, so that the
sample class is pleasant to look at. Positions are fractions of width and height.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from PIL import Image, ImageDraw, ImageFilter

Colour = tuple[int, int, int]

# Wall, floor and accent of each room.
ROOMS: tuple[tuple[Colour, Colour, Colour], ...] = (
    ((226, 215, 197), (158, 116, 78), (122, 158, 126)),
    ((203, 216, 222), (140, 118, 98), (214, 150, 92)),
    ((232, 208, 196), (120, 92, 74), (96, 132, 150)),
    ((206, 219, 203), (170, 134, 96), (196, 112, 96)),
    ((222, 214, 226), (132, 108, 92), (118, 120, 170)),
    ((240, 226, 190), (146, 104, 66), (92, 140, 132)),
    ((196, 208, 214), (104, 96, 92), (222, 178, 96)),
    ((236, 222, 214), (176, 140, 108), (156, 104, 128)),
)
SUPPORTS = ("door", "table", "shelf")


@dataclass(frozen=True, slots=True)
class Scene:
    """A room with its support: the picture, the pivot in pixels, and the bob's colour."""

    picture: Image.Image
    pivot: tuple[float, float]
    bob: Colour
    support: str


def blend(a: Colour, b: Colour, share: float) -> Colour:
    """The colour ``share`` of the way from ``a`` to ``b``."""
    return tuple(round(x + (y - x) * share) for x, y in zip(a, b, strict=True))  # type: ignore[return-value]


def darker(colour: Colour, share: float) -> Colour:
    """``colour`` with ``share`` of its light taken away."""
    return blend(colour, (20, 18, 24), share)


def lighter(colour: Colour, share: float) -> Colour:
    """``colour`` nearer to white by ``share``."""
    return blend(colour, (255, 252, 244), share)


def gradient(size: tuple[int, int], top: Colour, bottom: Colour, bend: float = 1.0) -> Image.Image:
    """A vertical gradient."""
    width, height = size
    along = np.linspace(0, 1, height)[:, None, None] ** bend
    column = np.array(top) + (np.array(bottom) - np.array(top)) * along
    return Image.fromarray(np.repeat(column, width, axis=1).round().astype(np.uint8), "RGB")


def sphere(radius: float, colour: Colour) -> Image.Image:
    """A shaded ball with a soft highlight, lit from the upper left, on transparency."""
    size = int(np.ceil(radius)) * 2 + 3
    y, x = np.mgrid[:size, :size] - (size - 1) / 2
    distance = np.hypot(x, y) / radius
    height = np.sqrt(np.clip(1 - distance**2, 0, 1))
    light = np.clip((-0.45 * x - 0.6 * y) / radius + 0.66 * height, 0, 1)
    shine = np.clip((-0.35 * x - 0.5 * y) / radius + 0.79 * height, 0, 1) ** 24
    base = np.array(colour)[None, None] * (0.38 + 0.72 * light[..., None])
    shaded = np.clip(base + 190 * shine[..., None], 0, 255)
    alpha = np.clip((radius - np.hypot(x, y)) + 0.5, 0, 1) * 255
    return Image.fromarray(np.dstack([shaded, alpha]).round().astype(np.uint8), "RGBA")


def paste_soft(
    picture: Image.Image, shape: Image.Image, colour: Colour, strength: float, blur: float
) -> None:
    """Paint ``colour`` through a blurred mask, as light or as shadow."""
    mask = shape.filter(ImageFilter.GaussianBlur(blur)).point(lambda v: int(v * strength))
    picture.paste(colour, (0, 0), mask)


def room(rng: np.random.Generator, size: tuple[int, int], choice: int | None = None) -> Image.Image:
    """A wall, a floor, a piece or two of furniture, and light from a window."""
    width, height = size
    index = int(rng.integers(len(ROOMS))) if choice is None else choice % len(ROOMS)
    wall, floor, accent = ROOMS[index]
    picture = gradient(size, lighter(wall, 0.25), darker(wall, 0.12), 0.8)
    draw = ImageDraw.Draw(picture)
    base = round(height * 0.84)
    if rng.random() < 0.4:  # a striped paper
        for x in range(0, width, max(width // 18, 2)):
            draw.rectangle([x, 0, x + width // 60, base], fill=darker(wall, 0.035))
    if rng.random() < 0.35:  # a panelled lower wall
        top = round(height * 0.56)
        panel = gradient((width, base - top), lighter(accent, 0.45), lighter(accent, 0.25))
        picture.paste(panel, (0, top))
        draw.rectangle([0, top, width, top + height // 90], fill=lighter(accent, 0.7))
    _floor(picture, floor, base)
    for place in rng.permutation([0.06, 0.72])[: int(rng.integers(1, 3))]:
        kind = int(rng.integers(4))
        (_plant, _books, _frame, _lamp)[kind](picture, rng, float(place), base, accent, floor)
    picture = picture.filter(ImageFilter.GaussianBlur(width / 560))
    window = Image.new("L", size, 0)
    pane = ImageDraw.Draw(window)
    left = width * (0.1 + 0.5 * rng.random())
    for column in range(2):
        for line in range(2):
            x, y = left + column * width * 0.13, height * (0.12 + line * 0.24)
            lean = width * 0.05
            pane.polygon(
                [
                    (x, y),
                    (x + width * 0.11, y - height * 0.03),
                    (x + width * 0.11 + lean, y + height * 0.18),
                    (x + lean, y + height * 0.21),
                ],
                fill=255,
            )
    paste_soft(picture, window, (255, 247, 222), 0.32, width / 90)
    corner = Image.new("L", size, 255)
    ImageDraw.Draw(corner).ellipse(
        [-width * 0.15, -height * 0.25, width * 1.15, height * 1.2], fill=0
    )
    paste_soft(picture, corner, (40, 30, 40), 0.3, width / 9)
    return picture


def hang(
    picture: Image.Image,
    rng: np.random.Generator,
    support: str,
    at: tuple[float, float] = (0.5, 0.12),
) -> tuple[float, float]:
    """Draw a support with a pencil that the thread hangs from; returns the pivot in pixels."""
    width, height = picture.size
    x, y = at[0] * width, at[1] * height
    wood: Colour = ((176, 128, 82), (206, 176, 136), (122, 84, 60))[int(rng.integers(3))]
    shadow = Image.new("L", picture.size, 0)
    shade = ImageDraw.Draw(shadow)
    draw = ImageDraw.Draw(picture)
    thick = height * 0.055
    if support == "door":
        white = (244, 240, 232)
        shade.rectangle([0, y - thick, width, y + thick * 0.5], fill=255)
        paste_soft(picture, shadow, (50, 40, 40), 0.35, height / 60)
        picture.paste(
            gradient((width, round(thick)), white, darker(white, 0.16)), (0, round(y - thick))
        )
        draw.rectangle([0, 0, width, y - thick], fill=darker(white, 0.06))
        draw.line([0, y - thick, width, y - thick], fill=darker(white, 0.3), width=2)
        for side in (0.04, 0.9):
            post = gradient((round(width * 0.06), height), white, darker(white, 0.2))
            picture.paste(post, (round(side * width), round(y)))
    elif support == "table":
        shade.rectangle([0, y - thick, x + width * 0.12, y + thick * 0.8], fill=255)
        paste_soft(picture, shadow, (40, 30, 30), 0.4, height / 50)
        top = gradient((round(x + width * 0.1), round(thick)), lighter(wood, 0.25), wood)
        picture.paste(top, (0, round(y - thick)))
        leg = gradient((round(width * 0.05), height), wood, darker(wood, 0.35))
        picture.paste(leg, (round(width * 0.07), round(y)))
        _stack_of_books(draw, rng, x - width * 0.06, y - thick, width, height)
    else:
        shade.rectangle([x - width * 0.22, y, x + width * 0.22, y + thick * 1.4], fill=255)
        paste_soft(picture, shadow, (40, 30, 30), 0.35, height / 40)
        left = round(x - width * 0.22)
        board = gradient((round(width * 0.44), round(thick * 0.6)), lighter(wood, 0.2), wood)
        picture.paste(board, (left, round(y - thick * 0.6)))
        _stack_of_books(draw, rng, x - width * 0.05, y - thick * 0.6, width, height)
    _pencil(draw, x, y, height)
    tape = Image.new("L", picture.size, 0)
    ImageDraw.Draw(tape).rectangle(
        [x - height * 0.075, y - thick * 0.5, x - height * 0.035, y + height * 0.012], fill=255
    )
    paste_soft(picture, tape, (236, 226, 190), 0.8, 1.5)
    return x, y


def _pencil(draw: ImageDraw.ImageDraw, x: float, y: float, height: int) -> None:
    r, long = height * 0.009, height * 0.1
    yellow: Colour = (238, 184, 64)
    draw.rectangle([x - long, y - r, x + long * 0.35, y + r], fill=yellow)
    draw.rectangle([x - long, y - r, x + long * 0.35, y - r * 0.3], fill=lighter(yellow, 0.4))
    draw.rectangle([x - long, y + r * 0.5, x + long * 0.35, y + r], fill=darker(yellow, 0.2))
    tip = x + long * 0.35
    draw.polygon([(tip, y - r), (tip + 2.4 * r, y), (tip, y + r)], fill=(228, 196, 152))
    draw.polygon(
        [(tip + 1.6 * r, y - r * 0.3), (tip + 2.4 * r, y), (tip + 1.6 * r, y + r * 0.3)],
        fill=(60, 56, 60),
    )
    draw.rectangle([x - long - 2 * r, y - r, x - long, y + r], fill=(222, 138, 134))


def _floor(picture: Image.Image, floor: Colour, base: int) -> None:
    width, height = picture.size
    boards = gradient((width, height - base), darker(floor, 0.15), lighter(floor, 0.12))
    picture.paste(boards, (0, base))
    draw = ImageDraw.Draw(picture)
    for i in range(-6, 18):
        start = width * (0.2 + 0.6 * i / 11)
        end = width * (-0.5 + 2.0 * i / 11)
        draw.line([start, base, end, height], fill=darker(floor, 0.3), width=max(width // 500, 1))
    draw.rectangle([0, base - height * 0.022, width, base], fill=(242, 238, 230))
    draw.line([0, base, width, base], fill=darker(floor, 0.5), width=max(width // 400, 1))


def _plant(
    picture: Image.Image,
    rng: np.random.Generator,
    at: float,
    base: int,
    accent: Colour,
    floor: Colour,
) -> None:
    width, height = picture.size
    draw = ImageDraw.Draw(picture)
    x, y, s = (at + 0.1) * width, base + height * 0.05, height * 0.14
    for _ in range(16):
        angle, long = rng.normal(0, 0.65), s * rng.uniform(1.2, 2.2)
        tip = (x + long * np.sin(angle), y - s - long * np.cos(angle))
        side = (0.16 * long * np.cos(angle), 0.16 * long * np.sin(angle))
        middle = ((x + tip[0]) / 2, (y - s + tip[1]) / 2)
        green = blend((70, 112, 76), (138, 170, 104), float(rng.random()))
        draw.polygon(
            [
                (x, y - s),
                (middle[0] - side[0], middle[1] - side[1]),
                tip,
                (middle[0] + side[0], middle[1] + side[1]),
            ],
            fill=green,
        )
    draw.polygon(
        [(x - s * 0.5, y - s), (x + s * 0.5, y - s), (x + s * 0.36, y), (x - s * 0.36, y)],
        fill=lighter(accent, 0.1),
    )
    draw.polygon(
        [(x + s * 0.12, y - s), (x + s * 0.5, y - s), (x + s * 0.36, y), (x + s * 0.1, y)],
        fill=darker(accent, 0.15),
    )


def _books(
    picture: Image.Image,
    rng: np.random.Generator,
    at: float,
    base: int,
    accent: Colour,
    floor: Colour,
) -> None:
    width, height = picture.size
    draw = ImageDraw.Draw(picture)
    left, right, top = at * width, (at + 0.22) * width, height * 0.3
    draw.rectangle([left, top, right, base + height * 0.02], fill=darker(floor, 0.1))
    step = (base - top) / 4
    for line in range(4):
        y = top + line * step
        draw.rectangle([left + 6, y + 6, right - 6, y + step - 6], fill=darker(floor, 0.5))
        x = left + 10
        while x < right - 24:
            wide = float(rng.uniform(0.008, 0.02)) * width
            tall = step * float(rng.uniform(0.55, 0.85))
            tone = blend(accent, ROOMS[int(rng.integers(len(ROOMS)))][2], float(rng.random()))
            if rng.random() < 0.85:
                draw.rectangle(
                    [x, y + step - 8 - tall, min(x + wide, right - 10), y + step - 8],
                    fill=darker(tone, 0.1 + 0.25 * float(rng.random())),
                )
            x += wide + 2


def _frame(
    picture: Image.Image,
    rng: np.random.Generator,
    at: float,
    base: int,
    accent: Colour,
    floor: Colour,
) -> None:
    width, height = picture.size
    draw = ImageDraw.Draw(picture)
    box = [at * width, height * 0.3, (at + 0.2) * width, height * 0.58]
    draw.rectangle(box, fill=darker(floor, 0.2))
    inner = [box[0] + 10, box[1] + 10, box[2] - 10, box[3] - 10]
    draw.rectangle(inner, fill=(240, 236, 224))
    middle, low = (inner[0] + inner[2]) / 2, inner[3] - 6
    wide, tall = inner[2] - inner[0], inner[3] - inner[1]
    draw.ellipse(
        [middle, inner[1] + 0.15 * tall, middle + 0.2 * wide, inner[1] + 0.15 * tall + 0.2 * wide],
        fill=(238, 196, 120),
    )
    draw.polygon(
        [
            (inner[0] + 6, low),
            (middle - 0.1 * wide, inner[1] + 0.4 * tall),
            (middle + 0.2 * wide, low),
        ],
        fill=lighter(accent, 0.2),
    )
    draw.polygon(
        [
            (middle - 0.1 * wide, low),
            (middle + 0.25 * wide, inner[1] + 0.5 * tall),
            (inner[2] - 6, low),
        ],
        fill=accent,
    )


def _lamp(
    picture: Image.Image,
    rng: np.random.Generator,
    at: float,
    base: int,
    accent: Colour,
    floor: Colour,
) -> None:
    width, height = picture.size
    draw = ImageDraw.Draw(picture)
    x, top = (at + 0.1) * width, height * 0.3
    draw.line([x, top, x, base + height * 0.03], fill=(90, 84, 84), width=max(width // 160, 2))
    draw.ellipse(
        [x - width * 0.05, base + height * 0.02, x + width * 0.05, base + height * 0.05],
        fill=(90, 84, 84),
    )
    draw.polygon(
        [
            (x - width * 0.035, top),
            (x + width * 0.035, top),
            (x + width * 0.075, top + height * 0.13),
            (x - width * 0.075, top + height * 0.13),
        ],
        fill=lighter(accent, 0.5),
    )
    glow = Image.new("L", picture.size, 0)
    ImageDraw.Draw(glow).ellipse(
        [x - width * 0.16, top - height * 0.1, x + width * 0.16, top + height * 0.34], fill=255
    )
    paste_soft(picture, glow, (255, 232, 170), 0.45, width / 18)


def _stack_of_books(
    draw: ImageDraw.ImageDraw,
    rng: np.random.Generator,
    x: float,
    y: float,
    width: int,
    height: int,
) -> None:
    """Books that hold the pencil down."""
    for _ in range(int(rng.integers(2, 4))):
        tall = height * float(rng.uniform(0.02, 0.032))
        half = width * float(rng.uniform(0.07, 0.1))
        tone = darker(ROOMS[int(rng.integers(len(ROOMS)))][2], 0.1)
        if y - tall < 0:
            return
        draw.rectangle([x - half, y - tall, x + half, y - 1], fill=tone)
        draw.rectangle([x - half, y - tall, x + half, y - tall * 0.75], fill=lighter(tone, 0.25))
        draw.rectangle([x + half * 0.7, y - tall, x + half * 0.78, y - 1], fill=lighter(tone, 0.5))
        y -= tall
