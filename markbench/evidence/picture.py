"""A photo opened safely: limits first, upright, and without a word about where or by whom.

The size in the header is looked at before any pixel is decoded. Orientation follows the
Exif standard (tag 0x0112, eight cases). What is written out holds pixels alone: it is made
from the decoded picture, never by editing the original file.
"""

from __future__ import annotations

import datetime as dt
import io
import warnings
from dataclasses import dataclass

import pillow_heif
from PIL import ExifTags, Image, ImageOps

from markbench.evidence.cache import Cache, digest_of

pillow_heif.register_heif_opener()

MOST_BYTES = 64 << 20
MOST_PIXELS = 120_000_000
# A phone's JPEG with a second picture inside (MPO) counts as JPEG.
FORMATS = ("JPEG", "PNG", "WEBP", "HEIF")
_QUALITY = 85


class PictureError(ValueError):
    """The photo cannot be used; the message says why in plain words."""


@dataclass(frozen=True, slots=True)
class Header:
    """What is known without decoding: upright ``width`` × ``height``, and the time taken."""

    width: int
    height: int
    taken: dt.datetime | None


def read_header(data: bytes) -> Header:
    """Size and time taken from the header alone. Raises :class:`PictureError`."""
    with _opened(data) as image:
        exif = image.getexif()
        turned = exif.get(ExifTags.Base.Orientation) in (5, 6, 7, 8)
        width, height = image.size[::-1] if turned else image.size
        return Header(width, height, _taken(exif))


def open_upright(data: bytes, *, most_edge: int | None = None) -> Image.Image:
    """The decoded picture, upright, RGB, without metadata; shrunk to fit ``most_edge``.

    Raises :class:`PictureError` for anything that is no sound photo within the limits.
    """
    with _opened(data) as image, _strict():
        try:
            if most_edge is not None:
                # JPEG can be decoded at a half, quarter or eighth at a fraction of the time.
                image.draft("RGB", (2 * most_edge, 2 * most_edge))
            upright = ImageOps.exif_transpose(image)
            if upright.mode in ("RGBA", "LA", "PA") or "transparency" in upright.info:
                upright = upright.convert("RGBA")
                ground = Image.new("RGBA", upright.size, "white")
                upright = Image.alpha_composite(ground, upright)
            if most_edge is not None:
                upright.thumbnail((most_edge, most_edge), Image.Resampling.LANCZOS)
            bare = Image.new("RGB", upright.size)
            bare.paste(upright.convert("RGB"))
        except PictureError:
            raise
        except Exception as error:  # decoders raise many kinds on broken data
            raise PictureError("the photo is broken or breaks off") from error
    return bare


def strip_metadata(data: bytes) -> bytes:
    """The photo as JPEG, upright, with pixels alone: no place, no device, no time."""
    return _encoded(open_upright(data))


def thumbnail(data: bytes, size: int, cache: Cache | None = None) -> bytes:
    """A JPEG no longer than ``size`` pixels either way, bare of metadata; kept in ``cache``."""
    key = f"{digest_of(data)}-thumb-{size}.jpg"
    if cache is not None and (kept := cache.get(key)) is not None:
        return kept
    made = _encoded(open_upright(data, most_edge=size))
    if cache is not None:
        cache.put(key, made)
    return made


def _encoded(image: Image.Image) -> bytes:
    buffer = io.BytesIO()
    image.save(buffer, "JPEG", quality=_QUALITY, optimize=True)
    return buffer.getvalue()


def _opened(data: bytes) -> Image.Image:
    if len(data) > MOST_BYTES:
        raise PictureError(f"the file is larger than {MOST_BYTES >> 20} MB")
    if not data:
        raise PictureError("the file is empty")
    with _strict():
        try:
            image = Image.open(io.BytesIO(data), formats=FORMATS)
        except Exception as error:  # any decoder may object in its own way
            raise PictureError("the file is not a JPEG, PNG, WebP or HEIC photo") from error
    width, height = image.size
    if width * height > MOST_PIXELS:
        image.close()
        raise PictureError(f"the photo has {width} × {height} pixels, more than can be opened")
    return image


class _strict(warnings.catch_warnings):  # noqa: N801 - reads as a word in a with statement
    """Pillow warns of odd files; here they are opened or refused, quietly."""

    def __enter__(self) -> None:
        super().__enter__()
        warnings.simplefilter("ignore")


def _taken(exif: Image.Exif) -> dt.datetime | None:
    """DateTimeOriginal, local time of the phone's clock (Exif 2.32, 4.6.5)."""
    try:
        text = exif.get_ifd(ExifTags.IFD.Exif).get(ExifTags.Base.DateTimeOriginal)
        return dt.datetime.strptime(str(text).strip("\0 "), "%Y:%m:%d %H:%M:%S") if text else None
    except (ValueError, KeyError, SyntaxError, OSError):
        return None
