"""Where a class's decisions are kept: a file beside the work, or a server that it names."""

from __future__ import annotations

from pathlib import Path

STORE_NAME = "class.markbench"
SERVER_NAME = "class.markbench-server"


def store_of(folder: Path) -> Path | str:
    """The class's file, or the address of the server that keeps it, if the folder names one."""
    named = folder / SERVER_NAME
    return named.read_text("utf-8").strip() if named.is_file() else folder / STORE_NAME
