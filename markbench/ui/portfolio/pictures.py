"""Opens pictures of any usual kind, upright and no larger than needed, on any thread."""

from __future__ import annotations

import io
from pathlib import Path

from PySide6.QtCore import QBuffer, QByteArray, QIODevice, QSize, Qt
from PySide6.QtGui import QImage, QImageReader

MOST_BYTES = 120_000_000  # far above any phone's photo


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
    held = QByteArray(data)
    buffer = QBuffer(held)
    buffer.open(QIODevice.OpenModeFlag.ReadOnly)
    reader = QImageReader(buffer)
    reader.setAutoTransform(True)
    size = reader.size()
    if longest and size.isValid() and max(size.width(), size.height()) > 2 * longest:
        reader.setScaledSize(
            size.scaled(QSize(2 * longest, 2 * longest), Qt.AspectRatioMode.KeepAspectRatio)
        )
    return reader.read()


def _by_pillow(data: bytes) -> QImage:
    """What Qt cannot read, such as the phones' HEIC."""
    import pillow_heif
    from PIL import Image, ImageOps

    pillow_heif.register_heif_opener()
    try:
        with Image.open(io.BytesIO(data)) as opened:
            upright = ImageOps.exif_transpose(opened).convert("RGBA")
    except (OSError, ValueError, SyntaxError, Image.DecompressionBombError) as error:
        raise ValueError("This picture cannot be opened.") from error
    raw = upright.tobytes()
    wide, high = upright.size
    return QImage(raw, wide, high, 4 * wide, QImage.Format.Format_RGBA8888).copy()


def load_film_still(folder: Path, file: str, longest: int) -> QImage:
    """A frame from the middle of a film, where the bob swings, for its thumbnail."""
    from markbench.ui.portfolio.film import Film

    with Film.open(folder, file, longest) as film:
        return film.key_frame_near(len(film) // 2)
