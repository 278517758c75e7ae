"""The arguments of the commands that look after a class: its copies and its evidence.

Apart from what they do, so that the window need not load it before its first frame.
"""

from __future__ import annotations

import argparse
from pathlib import Path

COMMANDS = ("restore", "purge", "pseudonymise", "bring-home")


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
        help="remove a signed-off class's photos and videos, with marks and results kept",
        description="Show what would go and what would stay, ask, and remove the photos and "
        "videos from the class folder and from Markbench's own cache. Marks, readings, measured "
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
    hide = commands.add_parser(
        "pseudonymise",
        help="copy a class under numbers, with the key in a file of its own",
        description="Copy the class into a new folder with numbers for names, to be marked "
        "there; the key is written apart and is to be kept elsewhere.",
    )
    hide.add_argument("folder", type=Path, metavar="FOLDER", help="the class folder")
    hide.add_argument("--to", type=Path, metavar="COPY", required=True, help="a new folder")
    hide.add_argument("--key", type=Path, metavar="FILE", required=True, help="the key to write")
    home = commands.add_parser(
        "bring-home",
        help="take the marks of a copy under numbers into the class it was made of",
        description="Take what was decided in a copy under numbers into the class itself, with "
        "the signatures and times it was decided with.",
    )
    home.add_argument("folder", type=Path, metavar="FOLDER", help="the class folder")
    home.add_argument("--from", dest="copy", type=Path, metavar="COPY", required=True)
    home.add_argument("--key", type=Path, metavar="FILE", required=True)


def _sure(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("--yes", action="store_true", help="do not ask")
