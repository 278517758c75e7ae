"""``python -m markbench``: joins the two faces, the command line and the window."""

from __future__ import annotations

import multiprocessing
import sys
from pathlib import Path

from markbench import cli


def main() -> int:
    """Entry point of the ``markbench`` command."""
    # In a bundle, the processes that look at photos and films are this program again.
    multiprocessing.freeze_support()
    return cli.main(sys.argv[1:], _open_window)


def _open_window(folder: Path | None, *, close_when_open: bool = False) -> int:
    # Qt is loaded only when a window is wanted.
    from markbench.ui import run

    return run(folder, close_when_open=close_when_open)


if __name__ == "__main__":
    raise SystemExit(main())
