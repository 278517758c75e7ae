"""What lies in a class folder: files, zip members, and their bytes, never written to.

Nothing is extracted to disk. Zip files are read member by member, in chunks that are
counted as they come (a directory entry can lie about sizes), and one level of zip within
zip is opened, because whole-class downloads hold one zip file per learner. Links and zip
members that lead outside the class folder are refused with a finding.
"""

from __future__ import annotations

import datetime as dt
import io
import lzma
import os
import stat
import zipfile
import zlib
from collections.abc import Callable, Iterator
from dataclasses import dataclass, field
from pathlib import Path
from typing import IO, Self

from markbench.model import Concern, Finding, Source, say

# Far above any honest portfolio; they only keep a hostile or broken zip file from filling
# memory. Common sense, no source.
MOST_MEMBERS = 20_000
MOST_MEMBER_BYTES = 2_000_000_000
MOST_ZIP_BYTES = 20_000_000_000
MOST_RATIO = 200  # unpacked over packed, once a member is larger than RATIO_FROM
RATIO_FROM = 20_000_000
MOST_INNER_ZIP_BYTES = 300_000_000  # a zip within a zip is held in memory
MOST_FILES = 500_000
MOST_TABLE_BYTES = 100_000_000
MOST_DEPTH = 30
_CHUNK = 1 << 20
ZIP = "!/"  # as in Source.file: work.zip!/table.xlsx

_IGNORED = {"thumbs.db", "desktop.ini", "__macosx", "ehthumbs.db", "icon\r", "$recycle.bin"}
_IGNORED_AT_TOP = ("class.markbench", "markbench-out")


class PieceError(ValueError):
    """A piece that could not be opened, in a sentence for the teacher."""


@dataclass(frozen=True, slots=True)
class Found:
    """One file or zip member: ``file`` as in Source; local time; size in bytes."""

    file: str
    size_bytes: int
    modified: dt.datetime | None

    @property
    def parts(self) -> tuple[str, ...]:
        """Folder, zip and file names from the class folder inwards, zip endings kept."""
        return tuple(self.file.replace(ZIP, "/").split("/"))


@dataclass(slots=True)
class Tree:
    """Everything found below a class folder, in a stable order, and what was refused."""

    found: list[Found] = field(default_factory=list)
    problems: list[Finding] = field(default_factory=list)


def is_ignored(name: str) -> bool:
    """Whether a file or folder is the system's, hidden, or a program's own lock file."""
    return name.startswith((".", "~$", "~")) or name.casefold() in _IGNORED


def problem(file: str, text: str, concern: Concern = Concern.LOOK) -> Finding:
    """A finding on the class folder."""
    return Finding("folder_problem", "", text, concern, sources=(Source(file),))


def _local_time(seconds: float) -> dt.datetime | None:
    try:
        return dt.datetime.fromtimestamp(seconds)
    except (OverflowError, ValueError, OSError):
        return None


def walk(folder: Path, stop: Callable[[], bool] | None = None) -> Tree:
    """List a class folder. Raises ``OSError`` only if the folder itself cannot be opened."""
    tree = Tree()
    root = os.path.realpath(folder)
    os.scandir(root).close()
    waiting = [("", 0)]
    with Shelf(folder) as shelf:
        while waiting:
            inside, depth = waiting.pop()
            if stop is not None and stop():
                break
            try:
                entries = sorted(os.scandir(os.path.join(root, inside)), key=lambda e: e.name)
            except OSError as error:
                text = say(
                    "The folder {file} could not be opened ({error}).",
                    file=inside,
                    error=error.strerror,
                )
                tree.problems.append(problem(inside, text))
                continue
            for entry in entries:
                if is_ignored(entry.name) or (not inside and _ours(entry.name)):
                    continue
                file = f"{inside}/{entry.name}" if inside else entry.name
                try:
                    _visit(tree, shelf, root, entry, file, depth, waiting)
                except OSError as error:
                    text = say(
                        "{file} could not be opened ({error}).",
                        file=file,
                        error=error.strerror or f"{error}",
                    )
                    tree.problems.append(problem(file, text))
                if len(tree.found) >= MOST_FILES:
                    text = say(
                        "The folder holds more than {n} files; the rest is left out.", n=MOST_FILES
                    )
                    tree.problems.append(problem(file, text))
                    waiting.clear()
                    break
    tree.found.sort(key=lambda found: found.file)
    return tree


def _ours(name: str) -> bool:
    return name.startswith(_IGNORED_AT_TOP)


def _visit(
    tree: Tree,
    shelf: Shelf,
    root: str,
    entry: os.DirEntry[str],
    file: str,
    depth: int,
    waiting: list[tuple[str, int]],
) -> None:
    if entry.is_symlink():
        target = os.path.realpath(entry.path)
        if os.path.commonpath([root, target]) != root:
            text = say(
                "{file} is a link that leads outside the class folder; it was not followed.",
                file=file,
            )
            tree.problems.append(problem(file, text))
            return
        if entry.is_dir():
            text = say("{file} is a link to a folder that is read in its own place.", file=file)
            tree.problems.append(problem(file, text, Concern.NOTE))
            return
    if entry.is_dir():
        if depth >= MOST_DEPTH:
            text = say(
                "{file} lies more than {n} folders deep and was left out.", file=file, n=MOST_DEPTH
            )
            tree.problems.append(problem(file, text))
        else:
            waiting.append((file, depth + 1))
        return
    if not entry.is_file():
        if not os.path.exists(entry.path):
            tree.problems.append(problem(file, say("{file} is a link to nothing.", file=file)))
        return
    about = entry.stat()
    modified = _local_time(about.st_mtime)
    if file.lower().endswith(".zip") and about.st_size:
        _list_zip(tree, shelf, Found(file, about.st_size, modified), level=1)
    else:
        tree.found.append(Found(file, about.st_size, modified))


def _list_zip(tree: Tree, shelf: Shelf, outer: Found, level: int) -> None:
    try:
        archive = shelf.archive(outer.file)
    except PieceError as error:
        # The file itself stays in the list, so that its owner is known.
        tree.found.append(outer)
        tree.problems.append(Finding("unreadable_file", "", str(error), Concern.LOOK,
                                     sources=(Source(outer.file),)))  # fmt: skip
        return
    infos = archive.members
    if len(infos) > MOST_MEMBERS:
        text = say(
            "{file} holds {n} files, more than {most}; it was left out.",
            file=outer.file,
            n=len(infos),
            most=MOST_MEMBERS,
        )
        tree.problems.append(problem(outer.file, text))
        tree.found.append(outer)
        return
    total = 0
    for name, info in infos.items():
        file = f"{outer.file}{ZIP}{name}"
        reason = _refused(name, info)
        if reason:
            tree.problems.append(
                problem(file, say("{file} {reason}; it was left out.", file=file, reason=reason))
            )
            continue
        if any(is_ignored(part) for part in name.split("/")):
            continue
        total += info.file_size
        if total > MOST_ZIP_BYTES:
            text = say(
                "{file} unpacks to more than {n:.0f} GB; the rest is left out.",
                file=outer.file,
                n=MOST_ZIP_BYTES / 1e9,
            )
            tree.problems.append(problem(outer.file, text))
            return
        try:
            modified: dt.datetime | None = dt.datetime(*info.date_time)
        except ValueError:
            modified = outer.modified
        if info.date_time[0] <= 1980:  # the zip format's "no time given"
            modified = outer.modified
        inner = Found(file, info.file_size, modified)
        if name.lower().endswith(".zip") and level < 2 and info.file_size:
            _list_zip(tree, shelf, inner, level + 1)
        else:
            tree.found.append(inner)


def _refused(name: str, info: zipfile.ZipInfo) -> str:
    parts = name.split("/")
    if name.startswith("/") or ".." in parts or (len(name) > 1 and name[1] == ":"):
        return say("has a name that climbs out of its zip file")
    if ZIP in name or "\0" in name:
        return say("has a name that cannot be used")
    if stat.S_ISLNK(info.external_attr >> 16):
        return say("is a link inside a zip file")
    if info.flag_bits & 1:
        return say("is locked with a password")
    if info.file_size > MOST_MEMBER_BYTES:
        return say("unpacks to {n:.1f} GB", n=info.file_size / 1e9)
    if info.file_size > RATIO_FROM and info.file_size > MOST_RATIO * max(info.compress_size, 1):
        return say("unpacks to {n} times its size", n=info.file_size // max(info.compress_size, 1))
    return ""


@dataclass(slots=True)
class _Archive:
    file: zipfile.ZipFile
    members: dict[str, zipfile.ZipInfo]


def name_in_zip(info: zipfile.ZipInfo) -> str:
    """A member's name; one with no mark of its encoding is often UTF-8 all the same."""
    name = info.filename
    if not info.flag_bits & 0x800:
        try:
            name = name.encode("cp437").decode("utf-8")
        except UnicodeError:
            name = info.filename
    name = name.replace("\\", "/")
    while name.startswith("./"):
        name = name[2:]
    return name


def _names(archive: zipfile.ZipFile) -> dict[str, zipfile.ZipInfo]:
    return {name_in_zip(info): info for info in archive.infolist() if not info.is_dir()}


def _unreadable(file: str) -> str:
    return say(
        "{file} could not be read: it is damaged, locked by a password, or out of reach.",
        file=file,
    )


class Shelf:
    """Opens pieces by their ``file``; keeps the last zip file of each level open.

    Use as a context manager. Holds no more than one zip within a zip in memory.
    """

    def __init__(self, folder: Path) -> None:
        self._root = os.path.realpath(folder)
        self._outer: tuple[str, _Archive] | None = None
        self._inner: tuple[str, _Archive] | None = None
        self._real: tuple[str, str] = ("", self._root)  # the last folder and its real path

    def __enter__(self) -> Self:
        return self

    def __exit__(self, *_: object) -> None:
        for held in (self._inner, self._outer):
            if held is not None:
                held[1].file.close()
        self._inner = self._outer = None

    def archive(self, file: str) -> _Archive:
        """The open zip file of that name (itself possibly within a zip file)."""
        within, name = self._split(file)
        held = self._inner if within else self._outer
        if held is not None and held[0] == file:
            return held[1]
        source: str | IO[bytes] = (
            io.BytesIO(self.read(file, MOST_INNER_ZIP_BYTES)) if within else self.place(name)
        )
        try:
            opened = zipfile.ZipFile(source)
            archive = _Archive(opened, _names(opened))
        except OSError as error:
            raise self._out_of_reach(file) from error
        except (zipfile.BadZipFile, ValueError, NotImplementedError, RuntimeError) as error:
            raise PieceError(
                say("{file} is not a zip file that can be opened.", file=file)
            ) from error
        if held is not None:
            held[1].file.close()
        if within:
            self._inner = (file, archive)
        else:
            self._outer = (file, archive)
        return archive

    def _split(self, file: str) -> tuple[str, str]:
        """The zip file a piece lies in (empty: none) and its name there."""
        within, _, name = file.rpartition(ZIP)
        if within and os.path.isfile(os.path.join(self._root, file)):
            return "", file  # a plain folder whose name ends in "!"
        return within, name

    def outermost(self, file: str) -> str:
        """The file on the disk that a piece is or lies in."""
        within, name = self._split(file)
        while within:
            within, name = self._split(within)
        return name

    def place(self, file: str) -> str:
        """The path of a file on the disk; ``PieceError`` where it leads outside the folder."""
        folder, _, name = file.rpartition("/")
        if folder != self._real[0]:
            self._real = (folder, os.path.realpath(os.path.join(self._root, folder)))
        path = os.path.join(self._real[1], name)
        if os.path.islink(path) or os.path.normpath(path) != path:
            path = os.path.realpath(path)
        if os.path.commonpath([self._root, path]) != self._root:
            raise PieceError(say("{file} leads outside the class folder.", file=file))
        return path

    def _out_of_reach(self, file: str) -> PieceError:
        """Why a file could not even be opened: it, or the whole class folder, is gone."""
        if not os.path.isdir(self._root):
            return PieceError(say("{file}: the class folder is out of reach.", file=file))
        if not os.path.exists(self.place(self.outermost(file))):
            return PieceError(say("{file} is not there any more.", file=file))
        return PieceError(_unreadable(file))

    def chunks(self, file: str) -> Iterator[bytes]:
        """The bytes of a piece, a megabyte at a time; ``PieceError`` where it cannot be read."""
        within, name = self._split(file)
        try:
            if not within:
                with open(self.place(name), "rb") as stream:
                    while chunk := stream.read(_CHUNK):
                        yield chunk
                return
            archive = self.archive(within)
            info = archive.members.get(name)
            if info is None:
                raise PieceError(say("{file} is not there any more.", file=file))
            reason = _refused(name, info)
            if reason:
                raise PieceError(say("{file} {reason}.", file=file, reason=reason))
            done = 0
            with archive.file.open(info) as member:
                while chunk := member.read(_CHUNK):
                    done += len(chunk)
                    # Counted, not believed: the directory entry may lie.
                    if done > MOST_MEMBER_BYTES or (
                        done > RATIO_FROM and done > MOST_RATIO * max(info.compress_size, 1)
                    ):
                        raise PieceError(
                            say("{file} unpacks to far more than its size.", file=file)
                        )
                    yield chunk
        except PieceError:
            raise
        except FileNotFoundError as error:
            raise self._out_of_reach(file) from error
        except (OSError, zipfile.BadZipFile, zlib.error, EOFError, ValueError,
                NotImplementedError, RuntimeError, lzma.LZMAError) as error:  # fmt: skip
            raise PieceError(_unreadable(file)) from error

    def read(self, file: str, limit_bytes: int) -> bytes:
        """All bytes of a piece; ``PieceError`` if there are more than the limit."""
        held = bytearray()
        for chunk in self.chunks(file):
            held += chunk
            if len(held) > limit_bytes:
                raise PieceError(
                    say("{file} is larger than {n:.0f} MB.", file=file, n=limit_bytes / 1e6)
                )
        return bytes(held)


def open_piece(folder: Path, file: str, limit_bytes: int = 1_000_000_000) -> bytes:
    """The bytes of a piece as ``Piece.file`` names it, also from within a zip file.

    A row of a class sheet (``class.xlsx#Sheet1!A4``) gives the sheet's file. Raises
    :class:`PieceError` with a sentence when it cannot be read or exceeds the limit.
    """
    with Shelf(folder) as shelf:
        try:
            return shelf.read(file, limit_bytes)
        except PieceError:
            whole, mark, _ = file.rpartition("#")
            if not mark:
                raise
            return shelf.read(whole, limit_bytes)
