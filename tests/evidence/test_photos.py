"""Photos opened, turned, stripped, questioned and compared."""

import datetime as dt
import functools
import io
import struct
import zlib

import numpy as np
import pytest
from PIL import ExifTags, Image, ImageFilter

from markbench.evidence.cache import Cache
from markbench.evidence.fingerprint import fingerprint, repeated_pairs
from markbench.evidence.photos import (
    alike_photos,
    findings_of_photo,
    look_at_photo,
    repeated_photos,
)
from markbench.evidence.picture import (
    PictureError,
    open_upright,
    read_header,
    strip_metadata,
    thumbnail,
)
from markbench.evidence.showing import picture_pixels
from markbench.model import Brief

BRIEF = Brief(opens=dt.date(2031, 3, 3), closes=dt.date(2031, 3, 14))


@functools.cache
def scene(seed: int, size: tuple[int, int] = (640, 480)) -> Image.Image:
    """An invented room: soft light, boxes, a line."""
    rng = np.random.default_rng(seed)
    width, height = size
    light = rng.uniform(60, 200, (5, 7, 3)).astype(np.uint8)
    soft = Image.fromarray(light).resize(size, Image.Resampling.BICUBIC)
    picture = np.array(soft, dtype=float)
    for _ in range(9):
        x, y = rng.integers(0, width - 60), rng.integers(0, height - 60)
        w, h = rng.integers(20, 200, 2)
        picture[y : y + h, x : x + w] = rng.uniform(20, 235, 3)
    return Image.fromarray(np.clip(picture, 0, 255).astype(np.uint8))


def saved(image: Image.Image, form: str = "JPEG", **options: object) -> bytes:
    buffer = io.BytesIO()
    image.save(buffer, form, **options)
    return buffer.getvalue()


# Exif 2.32, tag 0x0112: where the stored row 0 and column 0 lie in the picture as seen.
# Each maps (row, column) stored to (y, x) seen, for a picture of H × W as seen.
EXIF_CASES = {
    1: lambda r, c, h, w: (r, c),  # row 0 top, column 0 left
    2: lambda r, c, h, w: (r, w - 1 - c),  # top, right
    3: lambda r, c, h, w: (h - 1 - r, w - 1 - c),  # bottom, right
    4: lambda r, c, h, w: (h - 1 - r, c),  # bottom, left
    5: lambda r, c, h, w: (c, r),  # left, top
    6: lambda r, c, h, w: (c, w - 1 - r),  # right, top
    7: lambda r, c, h, w: (h - 1 - c, w - 1 - r),  # right, bottom
    8: lambda r, c, h, w: (h - 1 - c, r),  # left, bottom
}


@pytest.mark.parametrize("case", EXIF_CASES)
@pytest.mark.parametrize("form", ["JPEG", "PNG", "WEBP", "HEIF"])
def test_the_eight_orientations_of_the_exif_standard(case, form):
    seen = np.zeros((48, 80, 3), dtype=np.uint8)
    seen[:24, :40], seen[:24, 40:], seen[24:, :40] = (250, 0, 0), (0, 250, 0), (0, 0, 250)
    rows, columns = (48, 80) if case < 5 else (80, 48)
    stored = np.zeros((rows, columns, 3), dtype=np.uint8)
    for r in range(rows):
        for c in range(columns):
            stored[r, c] = seen[EXIF_CASES[case](r, c, 48, 80)]
    exif = Image.Exif()
    exif[ExifTags.Base.Orientation] = case
    data = saved(Image.fromarray(stored), form, exif=exif.tobytes(), quality=95)
    header = read_header(data)
    assert (header.width, header.height) == (80, 48)
    upright = np.asarray(open_upright(data)).astype(int)
    assert upright.shape == seen.shape
    assert np.abs(upright - seen).mean() < 8
    again = np.asarray(Image.open(io.BytesIO(strip_metadata(data)))).astype(int)
    assert np.abs(again - seen).mean() < 12
    shown = picture_pixels(data)
    assert (shown.width, shown.height) == (80, 48)
    on_screen = np.frombuffer(shown.rgb, np.uint8).reshape(48, 80, 3).astype(int)
    assert np.abs(on_screen - seen).mean() < 8


@pytest.mark.parametrize("form", ["JPEG", "PNG", "WEBP", "HEIF"])
def test_every_kind_opens(form):
    look = look_at_photo(saved(scene(1), form))
    assert look.header is not None
    assert (look.header.width, look.header.height) == (640, 480)
    assert findings_of_photo(look, "a.jpg", "L1", BRIEF) == []


def test_place_and_device_are_gone_from_what_is_written():
    exif = Image.Exif()
    exif[ExifTags.Base.Make] = "Inventaphone"
    exif[ExifTags.Base.Model] = "Mark Nought"
    exif.get_ifd(ExifTags.IFD.GPSInfo)[1] = "N"
    exif.get_ifd(ExifTags.IFD.GPSInfo)[2] = (51.0, 2.0, 3.5)
    exif.get_ifd(ExifTags.IFD.Exif)[ExifTags.Base.DateTimeOriginal] = "2031:03:05 16:20:00"
    comment = b"lat=51.034"
    data = saved(scene(2), exif=exif.tobytes(), comment=comment, xmp=b"<x:xmpmeta>Inventaphone")
    assert b"Inventaphone" in data
    assert b"2031:03:05" in data
    for bare in (strip_metadata(data), thumbnail(data, 160)):
        for word in (b"Exif", b"Inventaphone", b"Mark Nought", b"2031", b"xmp", comment):
            assert word not in bare
        # Exif IFD 0x8825 holds the place (JEITA CP-3451).
        assert 0x8825 not in Image.open(io.BytesIO(bare)).getexif()


def test_a_thumbnail_is_made_once(tmp_path, monkeypatch):
    cache = Cache(tmp_path)
    data = saved(scene(3))
    first = thumbnail(data, 200, cache)
    assert max(Image.open(io.BytesIO(first)).size) == 200
    monkeypatch.setattr("markbench.evidence.picture.open_upright", None)
    assert thumbnail(data, 200, cache) == first


def huge_png() -> bytes:
    """A PNG whose header claims 60000 × 60000 pixels."""
    body = b"IHDR" + struct.pack(">IIBBBBB", 60000, 60000, 8, 2, 0, 0, 0)
    chunk = struct.pack(">I", 13) + body + struct.pack(">I", zlib.crc32(body))
    return b"\x89PNG\r\n\x1a\n" + chunk + struct.pack(">I", 0) + b"IDAT" + bytes(4)


@pytest.mark.parametrize(
    "data",
    [b"", b"hello", huge_png(), saved(scene(4))[:3000], b"GIF89a" + bytes(50)],
    ids=["empty", "text", "huge", "broken off", "another kind"],
)
def test_what_is_no_sound_photo_is_a_finding(data):
    look = look_at_photo(data)
    (finding,) = findings_of_photo(look, "a.jpg", "L1", BRIEF)
    assert finding.check == "photo_unreadable"
    with pytest.raises(PictureError):
        open_upright(data)


def test_small_blank_and_blurred():
    def checks(image):
        look = look_at_photo(saved(image))
        return [finding.check for finding in findings_of_photo(look, "a.jpg", "L1", BRIEF)]

    assert checks(scene(5)) == []
    assert checks(scene(5, (200, 150))) == ["photo_small"]
    assert checks(Image.new("RGB", (640, 480), (8, 8, 8))) == ["photo_blank"]
    assert checks(scene(5).filter(ImageFilter.GaussianBlur(9))) == ["photo_blurred"]


def test_how_even_a_blank_photo_is():
    def told(image):
        (finding,) = findings_of_photo(look_at_photo(saved(image)), "a.jpg", "L1", BRIEF)
        return finding.message

    even = Image.new("RGB", (640, 480), (8, 8, 8))
    assert told(even) == "The photo shows an even surface: one shade of grey all over."
    nearly = even.copy()
    nearly.paste((11, 11, 11), (0, 0, 320, 480))
    assert told(nearly).endswith("all of it lies within 3 of 255 grey levels.")


@pytest.mark.parametrize(
    ("taken", "asked"),
    [
        ("2031:03:03 00:00:01", False),
        ("2031:03:14 23:59:59", False),
        ("2031:03:15 00:00:00", True),
        ("2029:01:01 12:00:00", True),
        ("0000:00:00 00:00:00", False),
    ],
)
def test_the_date_of_taking(taken, asked):
    exif = Image.Exif()
    exif.get_ifd(ExifTags.IFD.Exif)[ExifTags.Base.DateTimeOriginal] = taken
    look = look_at_photo(saved(scene(6), exif=exif.tobytes()))
    found = findings_of_photo(look, "a.jpg", "L1", BRIEF)
    assert [finding.check for finding in found] == (["photo_date"] if asked else [])


def test_the_same_picture_is_known_again():
    one = scene(7, (800, 600))
    again = {
        "half": saved(one.resize((400, 300))),
        "saved badly": saved(one, quality=25),
        "cropped": saved(one.crop((32, 20, 790, 580))),
        "png": saved(one, "PNG"),
    }
    others = {f"other {n}": saved(scene(100 + n)) for n in range(12)}
    looks = {name: look_at_photo(data) for name, data in (again | others).items()}
    owners = {name: f"L{n}" for n, name in enumerate(looks)}
    found = repeated_photos(alike_photos(looks), owners)
    assert set(found) == {owners[name] for name in again}
    finding = found[owners["half"]][0]
    assert finding.check == "photo_repeated"
    assert finding.honest_rate is not None


def test_a_class_of_a_thousand_photos_is_compared_whole():
    rng = np.random.default_rng(9)
    prints = [
        fingerprint(
            Image.fromarray(rng.integers(0, 255, (12, 16), dtype=np.uint8)).resize((64, 48))
        )
        for _ in range(60)
    ]
    assert repeated_pairs(prints * 2) == [(n, n + 60, pytest.approx(1.0)) for n in range(60)]
