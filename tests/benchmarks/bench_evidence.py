"""Photos: how often different ones are taken for the same, and the same one found again.

    python tests/benchmarks/bench_evidence.py [PHOTOS [FIRST_SEED]]

Different pictures: drawn photographs (eight rooms, so that many share a wall) and the
abstract scenes of the tests, as many again. The same picture: halved, saved at quality 40,
cropped by up to 5 % a side, brighter or darker by 15 %, and all of it together. Beside
them the hardest honest case: one set-up photographed at another length. Last, the measure
of sharpness on drawn photographs blurred by known amounts.
"""

from __future__ import annotations

import io
import sys
import time
from collections.abc import Iterator
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parents[1]))
sys.path.insert(0, str(Path(__file__).parents[1] / "evidence"))
import numpy as np
from PIL import Image, ImageEnhance, ImageFilter
from test_photos import scene

from markbench.evidence.fingerprint import Fingerprint, fingerprint, repeated_pairs
from markbench.evidence.photos import BLURRED, sharpness_of
from simulation.pictures import Picture, photograph

_EDGE = 512  # as the program looks at photos
_LENGTHS_M = (0.2, 0.3, 0.4, 0.5, 0.6)
_SUPPORTS = ("door", "table", "shelf")


def drawn(seed: int, length_m: float, size: tuple[int, int] = (400, 300)) -> Image.Image:
    """A drawn photograph, set-ups and selfies in turn."""
    kind, support = ("selfie", "setup")[seed % 2], _SUPPORTS[seed % 3]
    picture = Picture(kind, length_m, seed, room=seed, support=support, size=size)
    return Image.open(io.BytesIO(photograph(picture))).convert("RGB")


def saved(image: Image.Image, quality: int) -> Image.Image:
    buffer = io.BytesIO()
    image.save(buffer, "JPEG", quality=quality)
    return Image.open(io.BytesIO(buffer.getvalue())).convert("RGB")


def printed(image: Image.Image) -> Fingerprint:
    image = image.copy()
    image.thumbnail((_EDGE, _EDGE), Image.Resampling.LANCZOS)
    return fingerprint(image)


def again(image: Image.Image, rng: np.random.Generator) -> Iterator[tuple[str, Image.Image]]:
    """The same picture in other clothes."""
    width, height = image.size
    left, top, right, bottom = rng.uniform(0, 0.05, 4) * (width, height, width, height)
    crop = image.crop((round(left), round(top), round(width - right), round(height - bottom)))
    light = ImageEnhance.Brightness(image).enhance(rng.uniform(0.85, 1.15))
    yield "half size", saved(image.resize((width // 2, height // 2)), 80)
    yield "quality 40", saved(image, 40)
    yield "cropped", saved(crop, 85)
    yield "brightness", saved(light, 80)
    both = ImageEnhance.Brightness(crop).enhance(rng.uniform(0.85, 1.15))
    yield "all of it", saved(both.resize((2 * width // 3, 2 * height // 3)), 40)


def main(photos: int, first: int) -> None:
    rng = np.random.default_rng(first)
    seeds = range(first, first + photos)
    pictures = [drawn(seed, _LENGTHS_M[seed % 5]) for seed in seeds]
    prints = [printed(picture) for picture in pictures]
    abstract = [printed(scene(10_000 + seed)) for seed in seeds]
    for name, some in (("drawn photos", prints), ("abstract scenes", abstract)):
        start = time.perf_counter()
        pairs = repeated_pairs(some)
        took, every = time.perf_counter() - start, len(some) * (len(some) - 1) // 2
        print(f"{name}: {len(pairs)} of {every} different pairs taken for the same, {took:.1f} s")
    found: dict[str, list[bool]] = {}
    for picture, known in zip(pictures[::7], prints[::7], strict=True):
        for how, other in again(picture, rng):
            found.setdefault(how, []).append(bool(repeated_pairs([known, printed(other)])))
    for how, hits in found.items():
        print(f"same picture, {how}: found {sum(hits)} of {len(hits)}")
    moved = [
        repeated_pairs([known, printed(drawn(seed, _LENGTHS_M[(seed + 1) % 5]))])
        for seed, known in list(zip(seeds, prints, strict=True))[::7]
    ]
    print(f"one set-up, another length: taken for the same {sum(map(bool, moved))} of {len(moved)}")
    sharp = [drawn(seed, 0.4, (960, 720)) for seed in seeds[:20]]
    for pixels in (0.0, 2.0, 3.0, 4.0, 5.0, 6.0, 8.0, 12.0):
        each = [sharpness_of(p.filter(ImageFilter.GaussianBlur(pixels))) for p in sharp]
        asked = np.mean([value < BLURRED for value in each])
        print(
            f"blur of {pixels:4.1f} px in 960: sharpness {np.median(each):.3f}, asked {asked:.0%}"
        )


if __name__ == "__main__":
    numbers = [int(text) for text in sys.argv[1:3]]
    main(*(numbers + [200, 0][len(numbers) :]))
