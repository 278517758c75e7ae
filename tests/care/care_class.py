"""An invented class with everything in a zip, in folders, and in a zip within a zip."""

import io
import math
import zipfile

import av
import numpy as np
from PIL import Image

NAMES = ("Ada Invented", "Ben Made-Up", "Cleo Fabricated")
IDS = ("S24101", "S24102", "S24103")


def table(name, shift):
    """T = 2π√(L/g) at g = 9.81, shifted a little; the name stands in a cell."""
    lines = [f"Length / cm,t1 / s for 10 swings,t2 / s by {name}"]
    for cm in (20, 30, 40, 50, 60):
        law = 20 * math.pi * math.sqrt(cm / 981)
        lines.append(f"{cm},{law + 0.03 + shift:.2f},{law - 0.04 + shift:.2f}")
    return "\n".join(lines) + "\n"


def photo(shade):
    pixels = np.random.default_rng(shade).integers(0, 255, (300, 400, 3), dtype=np.uint8)
    held = io.BytesIO()
    Image.fromarray(pixels).save(held, "JPEG")
    return held.getvalue()


def film():
    held = io.BytesIO()
    with av.open(held, "w", format="mp4") as out:
        stream = out.add_stream("mpeg4", rate=25)
        stream.width = stream.height = 64
        stream.pix_fmt = "yuv420p"
        for shade in range(30):
            pixels = np.full((64, 64, 3), shade * 8, np.uint8)
            out.mux(stream.encode(av.VideoFrame.from_ndarray(pixels, format="rgb24")))
        out.mux(stream.encode())
    return held.getvalue()


def zipped(members):
    held = io.BytesIO()
    with zipfile.ZipFile(held, "w", zipfile.ZIP_DEFLATED) as archive:
        for name, data in members.items():
            archive.writestr(name, data)
    return held.getvalue()


def write_class(root, film_bytes):
    """Ada in a folder, Ben in a zip, Cleo in a zip within a zip; a photo nobody claims."""
    ada, ben, cleo = NAMES
    own = root / ada
    own.mkdir(parents=True)
    (own / "readings.csv").write_text(table(ada, 0.0), "utf-8")
    (own / "setup.jpg").write_bytes(photo(1))
    (own / "selfie.jpg").write_bytes(photo(2))
    (own / "swing video.mp4").write_bytes(film_bytes)
    of_ben = {
        f"{ben}/readings.csv": table(ben, 0.01),
        f"{ben}/setup.jpg": photo(3),
        f"{ben}/selfie.jpg": photo(1),  # the same picture as Ada's set-up
        f"{ben}/notes.txt": "nothing to see",
    }
    (root / "ben.zip").write_bytes(zipped(of_ben))
    of_cleo = {"readings.csv": table(cleo, -0.02), "setup.jpg": photo(5), "selfie.jpg": photo(6)}
    (root / "all.zip").write_bytes(zipped({f"{cleo}.zip": zipped(of_cleo)}))
    (root / "IMG_0001.jpg").write_bytes(photo(7))
    rows = "\n".join(f"{i},{n}" for i, n in zip(IDS, NAMES, strict=True))
    (root / "class_list.csv").write_text(f"id,name\n{rows}\n", "utf-8")
    (root / "brief.toml").write_text('evidence = ["setup_photo", "selfie"]\n', "utf-8")
    return root


def mark_all(session):
    """Mark as drafted, by eye the second level."""
    for learner in IDS:
        session.accept(learner)
        for criterion in session.rubric.criteria:
            if session.mark(learner, criterion.id) is None:
                session.set_level(learner, criterion.id, criterion.levels[1].name)
