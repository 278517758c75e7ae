"""Opens pictures of any usual kind, upright and no larger than needed, on any thread.

Qt opens what phones send most, told from the first bytes; it never guesses. Its other
readers are not let near a learner's file: one crashes the window over a sound TIFF, one
draws SVG, which may point elsewhere. Pillow opens the rest, of named kinds only.
"""

from __future__ import annotations

import io
import warnings
from pathlib import Path

from PySide6.QtCore import QBuffer, QByteArray, QIODevice, QSize, Qt
from PySide6.QtGui import QImage, QImageReader

MOST_BYTES = 120_000_000  # far above any phone's photo
_BY_QT = {b"\xff\xd8\xff": b"jpeg", b"\x89PNG\r\n\x1a\n": b"png"}
_BY_PILLOW = ("JPEG", "PNG", "WEBP", "HEIF", "AVIF", "GIF", "BMP", "TIFF")


def load_picture(folder: Path, file: str, longest: int = 0) -> QImage:
    """The picture of a piece; ``longest`` > 0 limits its longer side in pixels.

    Raises ``ValueError`` with a sentence where it cannot be read.
    """
    from markbench.intake.tree import open_piece

    data = open_piece(folder, file, MOST_BYTES)
    image = _by_qt(data, longest)
    if image.isNull():
        image = _by_pillow(data)
    if longest and max(image.width(), image.height()) > longest:
        image = image.scaled(
            longest,
            longest,
            Qt.AspectRatioMode.KeepAspectRatio,
            Qt.TransformationMode.SmoothTransformation,
        )
    return image


def _by_qt(data: bytes, longest: int) -> QImage:
    kind = next((kind for start, kind in _BY_QT.items() if data.startswith(start)), None)
    if kind is None:
        return QImage()
    held = QByteArray(data)
    buffer = QBuffer(held)
    buffer.open(QIODevice.OpenModeFlag.ReadOnly)
    reader = QImageReader(buffer, QByteArray(kind))
    reader.setAutoDetectImageFormat(False)
    reader.setAutoTransform(True)
    size = reader.size()
    if longest and size.isValid() and max(size.width(), size.height()) > 2 * longest:
        reader.setScaledSize(
            size.scaled(QSize(2 * longest, 2 * longest), Qt.AspectRatioMode.KeepAspectRatio)
        )
    return reader.read()


def _by_pillow(data: bytes) -> QImage:
    """What Qt is not asked to read, such as the phones' HEIC."""
    from PIL import Image, ImageOps

    # Registers HEIC, and holds how many pixels may be opened.
    from markbench.evidence.picture import MOST_PIXELS

    try:
        with warnings.catch_warnings():
            warnings.simplefilter("ignore")  # Pillow warns of odd files; they open or they do not
            with Image.open(io.BytesIO(data), formats=_BY_PILLOW) as opened:
                if opened.width * opened.height > MOST_PIXELS:
                    raise ValueError("more pixels than can be opened")
                upright = ImageOps.exif_transpose(opened).convert("RGBA")
                raw = upright.tobytes()
    except Exception as error:  # decoders raise many kinds on broken data
        raise ValueError("This picture cannot be opened.") from error
    wide, high = upright.size
    return QImage(raw, wide, high, 4 * wide, QImage.Format.Format_RGBA8888).copy()


def load_film_still(folder: Path, file: str, longest: int) -> QImage:
    """A frame from the middle of a film, where the bob swings, for its thumbnail."""
    from markbench.ui.portfolio.film import Film

    with Film.open(folder, file, longest) as film:
        return film.key_frame_near(len(film) // 2)
