"""The window. Qt is imported in this package alone."""

from __future__ import annotations

from pathlib import Path


def run(folder: Path | None = None, *, close_when_open: bool = False) -> int:
    """Open the window on a class folder, or empty; returns the process's exit code."""
    # Imported late: whoever only asks for help should not wait for Qt.
    from markbench.ui.app import main

    return main(folder, close_when_open=close_when_open)
