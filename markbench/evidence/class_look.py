"""A whole class's photos and films looked at once, in the background, results kept by file."""

from __future__ import annotations

import dataclasses
import datetime as dt
import io
import json
from collections.abc import Callable, Iterable, Iterator
from typing import Any

import numpy as np

from markbench.evidence.cache import Cache, digest_of
from markbench.evidence.fingerprint import Fingerprint
from markbench.evidence.photos import PhotoLook
from markbench.evidence.picture import Header
from markbench.evidence.process import SlowWorkerError, WorkerError
from markbench.evidence.video.judge import METHOD, SwingMeasurement
from markbench.evidence.worker import Worker
from markbench.model import Piece

PHOTO_KINDS = ("setup_photo", "selfie", "photo")
Progress = Callable[[int, int, str], None]
_PHOTO_METHOD = "photo-3"


def look_at_class(
    pieces: Iterable[Piece],
    open_piece: Callable[[Piece], bytes],
    *,
    cache: Cache | None = None,
    progress: Progress | None = None,
    stop: Callable[[], bool] = lambda: False,
) -> Iterator[tuple[Piece, PhotoLook | SwingMeasurement]]:
    """Look at every photo and film among ``pieces``, one after the other.

    ``open_piece`` gives a piece's bytes and may raise OSError or ValueError, which becomes
    a result. ``progress`` is told (done, of how many, file); ``stop`` is asked between
    pieces. Photos come first: they are quick. A process that ends over a file is asked once
    more, and what comes of that is not kept: it may be this machine's trouble, not the file's.
    """
    kept = cache if cache is not None else Cache()
    media = [p for p in pieces if p.kind in PHOTO_KINDS or p.kind == "swing_video"]
    media.sort(key=lambda piece: piece.kind == "swing_video")
    with Worker() as worker:
        for done, piece in enumerate(media):
            if stop():
                return
            if progress is not None:
                progress(done, len(media), piece.file)
            found = _look(piece, open_piece, kept, worker, stop)
            if found is None:
                return
            yield piece, found
    if progress is not None:
        progress(len(media), len(media), "")


def _look(
    piece: Piece,
    open_piece: Callable[[Piece], bytes],
    cache: Cache,
    worker: Worker,
    stop: Callable[[], bool] = lambda: False,
) -> PhotoLook | SwingMeasurement | None:
    """What is seen; ``None`` where it was stopped meanwhile, which may be why the process died."""
    film = piece.kind == "swing_video"
    try:
        data = open_piece(piece)
    except (OSError, ValueError) as error:
        return _unseen(film, "unreadable", str(error))
    digest = digest_of(data)
    key = f"{digest}-{METHOD}.json" if film else f"{digest}-{_PHOTO_METHOD}.npz"
    if (known := cache.get(key)) is not None:
        try:
            return swing_from_bytes(known) if film else photo_from_bytes(known)
        except Exception:  # a damaged entry, whose readers raise many kinds, is made again
            pass
    for last in (False, True):
        try:
            if film:
                found = worker.swing(data)
                cache.put(key, swing_to_bytes(found))
                return found
            looked = worker.photo(data)
            cache.put(key, photo_to_bytes(looked))
            return looked
        except WorkerError as error:
            if stop():
                return None
            if isinstance(error, SlowWorkerError):
                return _unseen(film, "slow", str(error))
            if last:
                return _unseen(film, "unreadable", str(error))
    return None


def _unseen(film: bool, reason: str, message: str) -> PhotoLook | SwingMeasurement:
    if film:
        return SwingMeasurement(accepted=False, reason=reason, message=message)
    return PhotoLook(None, 0.0, 0.0, None, message)


def swing_to_bytes(found: SwingMeasurement) -> bytes:
    """JSON of a measurement."""
    return json.dumps(dataclasses.asdict(found)).encode()


def swing_from_bytes(data: bytes) -> SwingMeasurement:
    """The measurement of :func:`swing_to_bytes`; any exception for other bytes."""
    fields: dict[str, Any] = json.loads(data)
    for name, value in fields.items():
        if isinstance(value, list):
            fields[name] = tuple(value)
    return SwingMeasurement(**fields)


def photo_to_bytes(look: PhotoLook) -> bytes:
    """A photo's look as an ``npz`` archive."""
    header = look.header
    text = json.dumps(
        {
            "size": [header.width, header.height] if header else None,
            "taken": header.taken.isoformat() if header and header.taken else None,
            "spread": look.spread,
            "sharpness": look.sharpness,
            "problem": look.problem,
        }
    )
    arrays: dict[str, np.ndarray[Any, Any]] = {"text": np.frombuffer(text.encode(), dtype=np.uint8)}
    if look.print is not None:
        arrays |= {"bits": look.print.bits, "small": look.print.small}
    buffer = io.BytesIO()
    np.savez_compressed(buffer, allow_pickle=False, **arrays)
    return buffer.getvalue()


def photo_from_bytes(data: bytes) -> PhotoLook:
    """The look of :func:`photo_to_bytes`; any exception for other bytes."""
    with np.load(io.BytesIO(data), allow_pickle=False) as arrays:
        text = json.loads(arrays["text"].tobytes())
        known = Fingerprint(arrays["bits"], arrays["small"]) if "bits" in arrays else None
    taken = dt.datetime.fromisoformat(text["taken"]) if text["taken"] else None
    header = Header(text["size"][0], text["size"][1], taken) if text["size"] else None
    return PhotoLook(header, text["spread"], text["sharpness"], known, text["problem"])
