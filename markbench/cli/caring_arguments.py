"""The arguments of the commands that look after a class: its copies and its evidence.

Apart from what they do, so that the window need not load it before its first frame.
"""

from __future__ import annotations

import argparse
from pathlib import Path

COMMANDS = ("restore", "purge")


def add_commands(commands: argparse._SubParsersAction[argparse.ArgumentParser]) -> None:
    """Add the commands of this module to the parser."""
    restore = commands.add_parser(
        "restore",
        help="list the copies of a class's file, or go back to one",
        description="Without options, list the copies, newest first, and what going back to "
        "each would do. Nothing decided since is thrown away: the present is copied first, and "
        "the journal keeps all of it.",
    )
    restore.add_argument("folder", type=Path, metavar="FOLDER", help="the class folder")
    which = restore.add_mutually_exclusive_group()
    which.add_argument("--to", type=int, metavar="N", help="go back to copy N of the list")
    which.add_argument(
        "--rebuild",
        action="store_true",
        help="make a damaged or vanished file anew from whatever can be read",
    )
    _sure(restore)
    purge = commands.add_parser(
        "purge",
        help="remove a signed-off class's photos and films, with marks and results kept",
        description="Show what would go and what would stay, ask, and remove the photos and "
        "films from the class folder and from Markbench's own cache. Marks, readings, measured "
        "results and feedback are kept. Only after sign-off. What is removed cannot be brought "
        "back from here; copies elsewhere are yours to remove.",
    )
    purge.add_argument("folder", type=Path, metavar="FOLDER", help="the class folder")
    purge.add_argument(
        "--everything",
        action="store_true",
        help="also tables, reports and all else that was handed in",
    )
    _sure(purge)


def _sure(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("--yes", action="store_true", help="do not ask")
