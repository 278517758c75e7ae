"""Sound files from which hostile ones are bred, all of them invented and small."""

from __future__ import annotations

import functools
import hashlib
import io
import json
import zipfile
from collections.abc import Mapping
from pathlib import Path

import av
import numpy as np
import pillow_heif
import xlsxwriter
from PIL import Image

from markbench.intake.brief_writing import default_brief_text

ROOT = Path(__file__).parents[2]
SAMPLES = ROOT / "tests" / "tables" / "samples"
HEAD = "Length / cm,Time for 10 swings: trial 1 / s,trial 2 / s,T² / s²\n"
ROWS = "20,9.02,8.94,0.81\n30,10.95,11.04,1.21\n40,12.71,12.63,1.61\n50,14.15,14.23,2.01\n"
READINGS = (HEAD + ROWS).encode()
CLASS_LIST = (
    b"id,name,group,partner\nA1,Ada Invented,9Z,A2\nA2,Ben Made-Up,9Z,A1\nA3,Cleo False,,\n"
)
CLASS_SHEET = (
    b"Name,Length / cm,10T / s,10T / s\nAda Invented,20,9.02,8.94\nAda Invented,30,10.95,11.04\n"
    b"Ben Made-Up,20,9.1,8.99\nBen Made-Up,40,12.7,12.6\n"
)


def texts() -> list[bytes]:
    """Tables of readings as text files of all kinds."""
    found = [READINGS, READINGS.decode().encode("utf-16"), b"sep=;\n" + READINGS]
    for path in sorted(SAMPLES.iterdir()):
        if path.suffix in (".csv", ".tsv", ".txt") and path.stat().st_size < 3000:
            found.append(path.read_bytes())
    return found


def class_sheets() -> list[bytes]:
    """Tables with a row for each learner."""
    return [CLASS_SHEET, CLASS_SHEET.replace(b",", b";"), CLASS_LIST]


def class_lists() -> list[bytes]:
    """Class lists as text."""
    return [
        CLASS_LIST,
        CLASS_LIST.replace(b",", b"\t"),
        CLASS_LIST.decode().encode("utf-16"),
        b"Ada Invented\nBen Made-Up\n",
        b"Nachname;Vorname;Nr\nMuster;Ada;1\nBeispiel;Ben;2\n",
    ]


def workbooks() -> list[bytes]:
    """Whole spreadsheet files: xlsx, xls, ods."""
    found = [_workbook()]
    for ending in ("*.xls", "*.ods", "*.xlsx"):
        found += [path.read_bytes() for path in sorted(SAMPLES.glob(ending))[:3]]
    return found


def _workbook() -> bytes:
    held = io.BytesIO()
    book = xlsxwriter.Workbook(held, {"in_memory": True})
    sheet = book.add_worksheet("Readings")
    for at, line in enumerate((HEAD + ROWS).splitlines()):
        for column, cell in enumerate(line.split(",")):
            sheet.write(at, column, float(cell) if at else cell)
    sheet.merge_range(8, 0, 8, 2, "notes")
    sheet.write_formula(9, 0, "=A2*2", value="")
    book.close()
    return held.getvalue()


@functools.cache
def _members(kind: str) -> Mapping[str, bytes]:
    data = _workbook() if kind == "xlsx" else next(iter(SAMPLES.glob("*.ods"))).read_bytes()
    with zipfile.ZipFile(io.BytesIO(data)) as archive:
        return {name: archive.read(name) for name in archive.namelist()}


def part_of(kind: str, part: str) -> bytes:
    """One part of a sound xlsx or ods."""
    return _members(kind)[part]


def with_part(kind: str, part: str, data: bytes) -> bytes:
    """A sound xlsx or ods with one part replaced: past the checksums of the zip."""
    return zipped({**_members(kind), part: data}, zipfile.ZIP_STORED)


def zipped(members: Mapping[str, bytes], how: int = zipfile.ZIP_DEFLATED) -> bytes:
    """A zip file of some members, the same bytes every time."""
    held = io.BytesIO()
    with zipfile.ZipFile(held, "w", how) as archive:
        for name, data in members.items():
            info = zipfile.ZipInfo(name, (2026, 1, 5, 10, 0, 0))
            info.compress_type = how
            archive.writestr(info, data)
    return held.getvalue()


def zips() -> list[bytes]:
    """Hand-ins as zip files, stored and packed, one within another."""
    inner = zipped({"readings.csv": READINGS})
    members = {"Ada Invented/readings.csv": READINGS, "Ben Made-Up.zip": inner}
    return [
        zipped({**members, "Ada Invented/setup.jpg": photos()[0]}),
        zipped(members, zipfile.ZIP_STORED),
        zipped({"class_list.csv": CLASS_LIST, "brief.toml": b'practical = "x"'}, zipfile.ZIP_LZMA),
        inner,
    ]


def briefs() -> list[bytes]:
    """Briefs, the whole default one among them."""
    return [
        default_brief_text().encode(),
        b'opens = 2026-01-12\nevidence = ["selfie"]\ngrades = { A = 12 }\n[place]\n'
        b"latitude_deg = 50.0\n[late]\npenalty = 1.0\n",
        (ROOT / "sample_class" / "brief.toml").read_bytes(),
    ]


def rubrics() -> list[bytes]:
    """The shipped rubrics."""
    return [path.read_bytes() for path in sorted((ROOT / "rubrics").glob("*.toml"))]


@functools.cache
def photos() -> list[bytes]:
    """One small picture in each format that is accepted, with Exif; and one that is not."""
    pixels = np.random.default_rng(1).integers(0, 255, (24, 32, 3), dtype=np.uint8)
    image = Image.fromarray(pixels)
    exif = Image.Exif()
    exif[0x0112], exif[0x010F] = 6, "InventedCamera"
    exif.get_ifd(0x8769)[0x9003] = "2026:01:05 10:00:00"
    exif.get_ifd(0x8825)[2] = (51.0, 30.0, 0.0)
    found = []
    for form in ("JPEG", "PNG", "WEBP", "GIF", "TIFF", "BMP"):
        held = io.BytesIO()
        image.save(held, form, exif=exif)
        found.append(held.getvalue())
    held = io.BytesIO()
    pillow_heif.from_pillow(image).save(held, quality=50)
    return [*found, held.getvalue()]


@functools.cache
def films() -> list[bytes]:
    """A dot that swings for two seconds, in the containers that are accepted."""
    found = []
    for form, codec in (("mp4", "mpeg4"), ("matroska", "mpeg4"), ("avi", "mpeg4"), ("mov", "h264")):
        held = io.BytesIO()
        with av.open(held, "w", format=form) as out:
            stream = out.add_stream("libx264" if codec == "h264" else codec, rate=15)
            stream.width, stream.height, stream.pix_fmt = 64, 48, "yuv420p"
            for n in range(30):
                pixels = np.full((48, 64, 3), 90, np.uint8)
                x = round(32 + 20 * np.sin(2 * np.pi * n / 15))
                pixels[30:36, x - 3 : x + 3] = 255
                out.mux(stream.encode(av.VideoFrame.from_ndarray(pixels, format="rgb24")))
            out.mux(stream.encode())
        found.append(held.getvalue())
    return found


def playlists() -> list[bytes]:
    """Texts that a film opener might follow elsewhere."""
    return [
        b"#EXTM3U\n#EXT-X-TARGETDURATION:5\n#EXTINF:5,\nhttp://127.0.0.1:9/a.ts\n#EXT-X-ENDLIST\n",
        b"ffconcat version 1.0\nfile /etc/passwd\n",
    ]


def sealed(body: Mapping[str, object]) -> dict[str, object]:
    """A reply's body with its digest, as if nobody had touched it."""
    text = json.dumps(body, sort_keys=True, separators=(",", ":")).encode("ascii")
    return {**body, "digest": hashlib.sha256(text).hexdigest()}
