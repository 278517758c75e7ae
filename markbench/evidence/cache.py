"""What took long to make, kept by the fingerprint of the file it was made from.

Everything here can be made again, so the cache may be deleted at any time. Files are
written beside their place and moved into it, so that a half-written one is never read;
the least lately used go first when the whole grows past its limit.
"""

from __future__ import annotations

import contextlib
import hashlib
import os
import tempfile
from collections.abc import Collection
from pathlib import Path

from platformdirs import user_cache_path

MOST_BYTES = 500 << 20
SMALL = "-small"  # in the keys of small pictures


def digest_of(data: bytes) -> str:
    """SHA-256 of ``data`` in hexadecimal."""
    return hashlib.sha256(data).hexdigest()


class Cache:
    """Bytes by key in one folder; keys are file names made of a digest and a purpose."""

    def __init__(self, folder: Path | None = None, most_bytes: int = MOST_BYTES) -> None:
        self.folder = folder or user_cache_path("markbench", appauthor=False) / "evidence"
        self.most_bytes = most_bytes

    def get(self, key: str) -> bytes | None:
        """The bytes kept under ``key``, or ``None``; a cache that cannot be read is empty."""
        path = self.folder / key
        try:
            data = path.read_bytes()
            os.utime(path)
        except OSError:
            return None
        return data

    def put(self, key: str, data: bytes) -> None:
        """Keep ``data``; a cache that cannot be written to is no error."""
        with contextlib.suppress(OSError):
            self.folder.mkdir(parents=True, exist_ok=True)
            handle, name = tempfile.mkstemp(dir=self.folder, prefix=".new-")
            try:
                with os.fdopen(handle, "wb") as file:
                    file.write(data)
                os.replace(name, self.folder / key)
            except OSError:
                Path(name).unlink(missing_ok=True)
                raise
            self._make_room()

    def forget(self, digests: Collection[str]) -> None:
        """Drop what was made of files with these digests, and the small pictures of all files.

        A small picture's key is made of its file's name and date, which may have changed
        since; so all of them go, and are made again when they are next looked at.
        """
        with contextlib.suppress(OSError):
            for path in list(self.folder.iterdir()):
                if SMALL in path.name or path.name.partition("-")[0] in digests:
                    path.unlink(missing_ok=True)

    def _make_room(self) -> None:
        kept = [(path, path.stat()) for path in self.folder.iterdir() if path.is_file()]
        total = sum(status.st_size for _, status in kept)
        for path, status in sorted(kept, key=lambda item: item[1].st_mtime_ns):
            if total <= self.most_bytes:
                break
            path.unlink(missing_ok=True)
            total -= status.st_size
