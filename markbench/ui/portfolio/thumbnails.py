"""Small pictures of pieces: made once off the main thread, kept on the disk and at hand.

What was asked for last comes first: it is what somebody is looking at.
"""

from __future__ import annotations

from collections import OrderedDict
from functools import partial
from pathlib import Path

from PySide6.QtCore import QBuffer, QByteArray, QIODevice, QObject, QThreadPool, Signal
from PySide6.QtGui import QImage

from markbench.model import Piece
from markbench.ui.background import in_background
from markbench.ui.desk import Desk
from markbench.ui.portfolio.pictures import load_film_still, load_picture

PICTURES = ("setup_photo", "selfie", "photo")
FILMS = ("swing_video",)
_LONGEST = 220
_KEPT = 600
_MOST_WAITING = 120


def can_show(piece: Piece) -> bool:
    """Whether a piece is (or was, where it is gone) a picture or a film."""
    return piece.kind in PICTURES or piece.kind in FILMS


class Thumbnails(QObject):
    """``arrived`` carries the file whose picture is there now."""

    arrived = Signal(str)

    def __init__(self, desk: Desk, parent: QObject) -> None:
        super().__init__(parent)
        self._desk = desk
        self._held: OrderedDict[str, QImage] = OrderedDict()
        self._waiting: OrderedDict[str, Piece] = OrderedDict()
        self._loading = ""
        self._pool = QThreadPool(self)
        self._pool.setMaxThreadCount(1)

    def image(self, piece: Piece) -> QImage:
        """The picture, empty until it has arrived (or where there is none)."""
        if not self._desk.may_open(piece.file):
            return QImage()
        return self._held.get(self._desk.true_file(piece.file), QImage())

    def ask(self, piece: Piece) -> None:
        """Have the picture made, before all that were asked for earlier."""
        true = self._desk.true_file(piece.file)
        if not can_show(piece) or piece.gone or not self._desk.may_open(piece.file):
            return
        if true in self._held or true == self._loading:
            return
        self._waiting.pop(true, None)
        self._waiting[true] = piece
        while len(self._waiting) > _MOST_WAITING:
            self._waiting.popitem(last=False)
        self._go_on()

    def _go_on(self) -> None:
        if self._loading or not self._waiting:
            return
        true, piece = self._waiting.popitem()
        self._loading = true
        folder = self._desk.held.folder
        in_background(
            self,
            lambda _progress, _stop: make_thumbnail(folder, true, piece),
            done=partial(self._arrived, true, piece.file),
            # The evidence checks say what is wrong; the plain glyph stays.
            failed=lambda _error: self._arrived(true, piece.file, QImage()),
            pool=self._pool,
        )

    def _arrived(self, true: str, file: str, image: QImage) -> None:
        self._loading = ""
        self._held[true] = image
        while len(self._held) > _KEPT:
            self._held.popitem(last=False)
        self.arrived.emit(file)
        self._go_on()


def make_thumbnail(folder: Path, file: str, piece: Piece) -> QImage:
    """The small picture from the cache, else made and kept. May run on any thread."""
    from markbench.evidence.cache import SMALL, Cache, digest_of

    # Name, size and time tell one file from its later self without reading the film.
    told = f"{folder.resolve()}|{file}|{piece.size_bytes}|{piece.modified}|{piece.digest}"
    still = "-still" if piece.kind in FILMS else ""
    cache, key = Cache(), f"{digest_of(told.encode())}{SMALL}{still}{_LONGEST}.jpg"
    known = cache.get(key)
    image = QImage.fromData(known) if known is not None else QImage()
    if image.isNull():
        load = load_film_still if piece.kind in FILMS else load_picture
        image = load(folder, file, _LONGEST)
        cache.put(key, _jpeg(image))
    return image


def _jpeg(image: QImage) -> bytes:
    held = QByteArray()
    buffer = QBuffer(held)
    buffer.open(QIODevice.OpenModeFlag.WriteOnly)
    image.save(buffer, "JPG", 85)  # type: ignore[call-overload]
    return bytes(held.data())
