"""Pieces of an invented class: tables, photos and a film that carry a place."""

import io
import math

import av
import numpy as np
from PIL import Image

NAMES = ("Ada Invented", "Ben Made-Up", "Cleo Fabricated", "Dov Imaginary")
IDS = ("S24101", "S24102", "S24103", "S24104")
SCATTER_S = ((0.06, -0.08), (-0.11, 0.05), (0.02, 0.09), (0.07, -0.04), (-0.06, 0.03))


def table(name, learner):
    """T = 2π√(L/g) at g = 9.81 with scatter written down by hand; the name stands in a cell."""
    turned = [SCATTER_S[(row + learner) % 5][:: 1 if learner % 2 else -1] for row in range(5)]
    lines = [f"Length / cm,t1 / s for 10 swings,t2 / s by {name}"]
    for cm, scatter in zip((20, 30, 40, 50, 60), turned, strict=True):
        law = 20 * math.pi * math.sqrt(cm / 981)
        lines.append(f"{cm}," + ",".join(f"{law + e * (1 + learner / 9):.2f}" for e in scatter))
    return "\n".join(lines) + "\n"


def photo(shade):
    """A JPEG with a GPS position and a camera's make in its Exif (tags 0x8825 and 0x010F)."""
    pixels = np.random.default_rng(shade).integers(0, 255, (300, 400, 3), dtype=np.uint8)
    exif = Image.Exif()
    exif[0x010F] = "InventedCamera"
    place = exif.get_ifd(0x8825)
    place[1], place[2] = "N", (51.0, 30.0, 0.0)
    held = io.BytesIO()
    Image.fromarray(pixels).save(held, "JPEG", exif=exif)
    return held.getvalue()


def film():
    """A short film with sound, a place in QuickTime's and Apple's keys, and a make."""
    held = io.BytesIO()
    with av.open(held, "w", format="mp4", options={"movflags": "use_metadata_tags"}) as out:
        out.metadata["location"] = "+51.5000-000.1000/"
        out.metadata["com.apple.quicktime.location.ISO6709"] = "+51.5000-000.1000/"
        out.metadata["make"] = "InventedCamera"
        picture, sound = out.add_stream("mpeg4", rate=25), out.add_stream("aac", rate=8000)
        picture.width = picture.height = 64
        picture.pix_fmt = "yuv420p"
        for shade in range(25):
            pixels = np.full((64, 64, 3), shade * 9, np.uint8)
            frame = av.VideoFrame.from_ndarray(pixels, format="rgb24")
            out.mux(picture.encode(frame))
        out.mux(picture.encode())
        silence = av.AudioFrame.from_ndarray(
            np.zeros((1, 8000), np.float32), format="fltp", layout="mono"
        )
        silence.sample_rate = 8000
        out.mux(sound.encode(silence))
        out.mux(sound.encode())
    return held.getvalue()


def mark_all(session, learners=IDS):
    """Mark as drafted, by eye the second level."""
    for learner in learners:
        session.accept(learner)
        for criterion in session.rubric.criteria:
            if session.mark(learner, criterion.id) is None:
                session.set_level(learner, criterion.id, criterion.levels[1].name)
