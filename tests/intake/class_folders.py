"""Class folders made on the spot. Every name is invented."""

from __future__ import annotations

import datetime as dt
import io
import os
import zipfile
from collections.abc import Callable, Mapping
from pathlib import Path

MakeClass = Callable[[Mapping[str, str | bytes]], Path]

# Times near 2π√(L/g) for ten swings; only their place in the folder matters here.
TABLE = (
    "Length / cm,Time for 10 swings (1) / s,Time for 10 swings (2) / s\n"
    "20,8.97,9.05\n30,10.99,11.02\n40,12.69,12.75\n50,14.19,14.11\n60,15.54,15.60\n"
)
LATER_TABLE = TABLE.replace("8.97", "8.99")


def zipped(files: Mapping[str, str | bytes]) -> bytes:
    held = io.BytesIO()
    with zipfile.ZipFile(held, "w", zipfile.ZIP_DEFLATED) as archive:
        for name, data in files.items():
            info = zipfile.ZipInfo(name, (2026, 3, 2, 10, 0, 0))
            archive.writestr(info, data, zipfile.ZIP_DEFLATED)
    return held.getvalue()


def fill(folder: Path, files: Mapping[str, str | bytes]) -> Path:
    for name, data in files.items():
        path = folder / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_bytes(data.encode() if isinstance(data, str) else data)
        dated(path, dt.datetime(2026, 3, 2, 10))
    return folder


def dated(path: Path, when: dt.datetime) -> None:
    os.utime(path, (when.timestamp(), when.timestamp()))
