"""Taking pieces out of a class folder for good: the one place that writes to what came in.

Called after sign-off, at a person's word, and never otherwise (DECISION-removal.md). A file
is unlinked; a zip file is written anew without the pieces, beside the old one, read through
once, and only then put in its place, so that a crash or a full disk leaves the old one.
What cannot be done to the end for one file is said of that file, and the rest goes on.
"""

from __future__ import annotations

import copy
import io
import os
import shutil
import tempfile
import zipfile
from collections import defaultdict
from collections.abc import Iterable
from pathlib import Path
from typing import IO

from markbench.intake.tree import ZIP, PieceError, Shelf, name_in_zip


def remove(folder: Path, files: Iterable[str]) -> dict[str, str]:
    """Remove pieces, named as ``Piece.file``; returns why, for those that could not be."""
    troubles: dict[str, str] = {}
    inside: dict[str, list[str]] = defaultdict(list)
    with Shelf(folder) as shelf:
        for file in dict.fromkeys(files):
            outer = shelf.outermost(file)
            if outer != file:
                inside[outer].append(file)
                continue
            try:
                os.unlink(_own(folder, file))
            except (OSError, PieceError) as error:
                troubles[file] = _words(error)
    for outer, members in inside.items():
        try:
            with Shelf(folder) as shelf:
                _rewrite(
                    Path(shelf.place(outer)), [file[len(outer) + len(ZIP) :] for file in members]
                )
        except (OSError, PieceError, zipfile.BadZipFile, NotImplementedError, RuntimeError,
                ValueError, EOFError) as error:  # fmt: skip
            troubles |= dict.fromkeys(members, _words(error))
    return troubles


def _own(folder: Path, file: str) -> str:
    """The path of the file itself: of a link it is the link that goes."""
    root = os.path.realpath(folder)
    within, _, name = file.rpartition("/")
    place = os.path.realpath(os.path.join(root, within))
    if os.path.commonpath([root, place]) != root or name in ("", ".", ".."):
        raise PieceError(f"{file} leads outside the class folder")
    return os.path.join(place, name)


def _words(error: Exception) -> str:
    reason = error.strerror if isinstance(error, OSError) and error.strerror else str(error)
    return reason.rstrip(".")


def _rewrite(path: Path, gone: list[str]) -> None:
    before = path.stat()
    handle, name = tempfile.mkstemp(dir=path.parent, prefix=".markbench-")
    part = Path(name)
    try:
        with os.fdopen(handle, "w+b") as target:
            with open(path, "rb") as source:
                left = _copied(source, target, gone)
            target.flush()
            os.fsync(target.fileno())
        if not left:
            path.unlink()
            return
        with zipfile.ZipFile(part) as written:
            broken = written.testzip()
        if broken is not None:
            raise PieceError(f"{broken} could not be written again")
        shutil.copymode(path, part)
        # The date of the zip file may stand for the date of a hand-in.
        os.utime(part, ns=(before.st_atime_ns, before.st_mtime_ns))
        os.replace(part, path)
    finally:
        part.unlink(missing_ok=True)


def _copied(source: IO[bytes], target: IO[bytes], gone: list[str]) -> int:
    """Copy a zip file without some members; returns how many members are left.

    A name may lead on into a zip within the zip.
    """
    here = {name for name in gone if ZIP not in name}
    deeper: dict[str, list[str]] = defaultdict(list)
    for name in gone:
        inner, sign, rest = name.partition(ZIP)
        if sign:
            deeper[inner].append(rest)
    left = 0
    with zipfile.ZipFile(source) as old, zipfile.ZipFile(target, "w") as new:
        for info in old.infolist():
            name = name_in_zip(info)
            if name in here:
                continue
            entry = copy.copy(info)  # what it is called, its date and how it is packed
            if info.is_dir():
                new.writestr(entry, b"")
                continue
            if name in deeper:
                held = io.BytesIO()
                if not _copied(io.BytesIO(old.read(info)), held, deeper[name]):
                    continue
                new.writestr(entry, held.getvalue())
            else:
                with old.open(info) as member, new.open(entry, "w", force_zip64=True) as out:
                    shutil.copyfileobj(member, out, 1 << 20)
            left += 1
        new.comment = old.comment
    return left
