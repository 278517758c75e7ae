"""Sees every file that Python opens, makes, moves or removes, and every socket.

Built on the interpreter's audit events (PEP 578), so that nothing under test has to be
patched. A hook cannot be taken away again: it is put in once and asked only while watching.
"""

from __future__ import annotations

import os
import sys
import sysconfig
import tempfile
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

ROOT = Path(__file__).parents[2]
# What any program reads of itself: the interpreter, its packages, this project.
_OWN = tuple(
    os.path.realpath(place)
    for place in (
        *sysconfig.get_paths().values(),
        sys.prefix,
        sys.base_prefix,
        ROOT,
        "/usr/share/zoneinfo",
        "/etc/localtime",
        "/dev/null",
        "/proc/self",
        "/sys",
    )
)
_MAKING = {
    "os.remove", "os.rename", "os.mkdir", "os.rmdir", "os.link", "os.symlink", "os.truncate",
    "os.chmod", "os.utime", "shutil.rmtree", "shutil.move", "shutil.copyfile",
}  # fmt: skip
_WITHIN = {"os.remove", "os.rmdir"}
_GOING_OUT = ("socket.", "urllib.", "http.", "ftplib.", "smtplib.", "subprocess.", "os.system",
              "os.exec", "os.posix_spawn", "os.spawn", "ctypes.dlopen")  # fmt: skip
_seen: list[str] | None = None
_allowed: tuple[str, ...] = ()
_hooked = False


def _hook(event: str, arguments: tuple[object, ...]) -> None:
    if _seen is None:
        return
    if event == "open":
        path, mode, flags = arguments[:3]
        if not isinstance(path, str | bytes | os.PathLike):
            return  # a descriptor that was opened, and seen, before
        writes = isinstance(flags, int) and flags & (os.O_WRONLY | os.O_RDWR | os.O_CREAT)
        _judge("written" if writes or (mode and set(str(mode)) & set("wax+")) else "read", path)
    elif event in _MAKING:
        if any(type(one) is int and one >= 0 for one in arguments[1:]) and event in _WITHIN:
            return  # named from within a folder that was opened, and seen, before
        for path in arguments[:2]:
            if isinstance(path, str | bytes | os.PathLike):
                _judge(event, path)
    elif event == "sqlite3.connect":
        _judge("written", arguments[0])
    elif event.startswith(_GOING_OUT) and not event.startswith("ctypes"):
        _seen.append(f"{event} {arguments!r}"[:200])


def _judge(what: str, path: object) -> None:
    assert _seen is not None
    if path == ":memory:":
        return
    real = os.path.realpath(os.fsdecode(path))  # type: ignore[arg-type]
    if any(real == place or real.startswith(place + os.sep) for place in _allowed):
        return
    if what == "read" and real.startswith(_OWN):
        return
    if what == "written" and "__pycache__" in real:
        return
    _seen.append(f"{what} {real}")


@contextmanager
def watched(*places: Path) -> Iterator[list[str]]:
    """Within, whatever is touched outside ``places`` and the program itself is listed."""
    global _seen, _allowed, _hooked
    if not _hooked:
        sys.addaudithook(_hook)
        _hooked = True
    held, seen = (_seen, _allowed), list[str]()
    _allowed = tuple(os.path.realpath(place) for place in places)
    _seen = seen
    try:
        yield seen
    finally:
        _seen, _allowed = held


def temporary_place() -> Path:
    """A folder for short-lived files, in memory where the system has such a place."""
    memory = Path("/dev/shm")
    return Path(tempfile.mkdtemp(dir=memory if os.access(memory, os.W_OK) else None))
