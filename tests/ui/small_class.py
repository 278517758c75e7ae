"""The small class of the window's tests: three invented learners, and what they hand in."""

from __future__ import annotations

from pathlib import Path

import av
import numpy as np
from PySide6.QtGui import QColor, QImage

# Invented learners. Times are 2π√(L/9.81) for ten swings, rounded; Bodil's last timing is
# a whole swing too long on purpose, and Cato's selfie is missing.
LEARNERS = (("s1", "Aino Example"), ("s2", "Bodil Sample"), ("s3", "Cato Instance"))
PLAIN = {20: ("8.95", "9.01"), 30: ("11.02", "10.95"), 40: ("12.72", "12.66"),
         50: ("14.21", "14.15"), 60: ("15.52", "15.58")}  # fmt: skip
ODD = {**PLAIN, 60: ("15.52", "17.09")}


def table(rows: dict[int, tuple[str, str]]) -> str:
    lines = ["Length (cm),Time 1 for 10 swings (s),Time 2 for 10 swings (s)"]
    lines += [f"{length}.0,{one},{two}" for length, (one, two) in rows.items()]
    return "\n".join(lines) + "\n"


def photo(path: Path, colour: str) -> None:
    image = QImage(480, 320, QImage.Format.Format_RGB32)
    image.fill(QColor(colour))
    for x in range(120, 360):  # something to see, so that no check calls it blank
        image.setPixelColor(x, (x * 7) % 320, QColor("black"))
    image.save(str(path))


def film(path: Path, frames: int = 30) -> None:
    with av.open(str(path), "w") as container:
        stream = container.add_stream("mpeg4", rate=30)
        stream.width, stream.height, stream.pix_fmt = 160, 120, "yuv420p"
        for i in range(frames):
            picture = np.full((120, 160, 3), 230, dtype=np.uint8)
            picture[50:70, 20 + 4 * i % 120 : 36 + 4 * i % 120] = 20
            frame = av.VideoFrame.from_ndarray(picture, format="rgb24")
            for packet in stream.encode(frame):
                container.mux(packet)
        for packet in stream.encode():
            container.mux(packet)
