"""``python -m markbench``: hands the command line over to the command-line face."""

from __future__ import annotations


def main() -> int:
    """Entry point of the ``markbench`` command."""
    return 0


if __name__ == "__main__":
    raise SystemExit(main())
