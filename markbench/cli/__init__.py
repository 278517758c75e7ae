"""The command line: check a class, moderate and export its marks, open the window."""

from __future__ import annotations

import argparse
import sys
from collections.abc import Callable, Sequence
from pathlib import Path

from markbench import __version__
from markbench.cli import caring_arguments
from markbench.cli.moderating_arguments import add_commands

OpenWindow = Callable[..., int]
"""Takes the folder, if any, and whether to close by itself once the class is open."""

_DONE, _FAILED = 0, 1

_EPILOG = """\
Exit codes: 0 done (findings are no failure); 1 it could not be done, the reason is
printed; 2 the command was not understood. Nothing leaves this machine, and the learners'
files are never written to, except where purge takes photos and videos out after sign-off.
"""


def main(arguments: Sequence[str], open_window: OpenWindow) -> int:
    """Run one command; ``open_window`` is the other face, handed in by ``__main__``."""
    parsed = _parser().parse_args(arguments)
    if parsed.command in (None, "open"):
        if getattr(parsed, "close_when_open", False):
            return open_window(parsed.folder, close_when_open=True)
        return open_window(getattr(parsed, "folder", None))
    # Imported late: the window's first frame should not wait for the command line's tools.
    from markbench.cli import commands
    from markbench.cli.terminal import plain

    try:
        if parsed.command == "check":
            commands.check(parsed.folder, parsed.json, quiet=parsed.quiet, evidence=parsed.evidence)
        elif parsed.command == "template":
            commands.template(parsed.folder, parsed.to)
        elif parsed.command == "task-sheet":
            commands.task_sheet(parsed.folder, parsed.to)
        elif parsed.command == "export":
            commands.export(
                parsed.folder,
                parsed.to,
                feedback=parsed.feedback,
                partly=parsed.partly,
                oneroster=parsed.oneroster,
                audit=parsed.audit,
                record=parsed.record,
            )
        elif parsed.command in caring_arguments.COMMANDS:
            from markbench.cli import caring

            caring.run(parsed)
        else:
            # Later still: agreement between markers needs statistics that load slowly.
            from markbench.cli import moderating

            moderating.run(parsed)
    except commands.EXPECTED as problem:
        print(f"markbench: {plain(str(problem))}", file=sys.stderr)
        return _FAILED
    except KeyboardInterrupt:
        print("markbench: stopped", file=sys.stderr)
        return 130
    return _DONE


def _parser() -> argparse.ArgumentParser:
    parser = argparse.ArgumentParser(
        prog="markbench",
        description="Mark a class's home practicals.",
        epilog=_EPILOG,
        formatter_class=argparse.RawDescriptionHelpFormatter,
    )
    parser.add_argument("--version", action="version", version=f"markbench {__version__}")
    commands = parser.add_subparsers(dest="command", metavar="COMMAND")
    window = commands.add_parser("open", help="open a class in the window (also without a command)")
    window.add_argument(
        "folder",
        type=Path,
        nargs="?",
        metavar="FOLDER",
        help="a class folder, or a moderation pack (.markbench-pack)",
    )
    window.add_argument(
        "--close-when-open",
        action="store_true",
        help="close by itself once the class and a learner are shown: to try an installation",
    )
    check = commands.add_parser(
        "check",
        help="read, recompute, question and draft a class without a window",
        description="Read a class folder and print what was found. Makes no marks and writes "
        "nothing into the folder.",
    )
    check.add_argument("folder", type=Path, metavar="FOLDER", help="the class folder")
    check.add_argument("--json", type=Path, metavar="FILE", help="also write everything as JSON")
    check.add_argument(
        "--evidence",
        action="store_true",
        help="also look at the photos and measure the videos (slow the first time)",
    )
    check.add_argument("--quiet", action="store_true", help="print problems only")
    export = commands.add_parser(
        "export",
        help="write the workbook, the mark sheet and what else goes out",
        description="Write the workbook (xlsx) and the mark sheet (csv) of a class, and what "
        "changed since the last export; after moderation with the marks that hold. Drafts that "
        "nobody has accepted are marked as drafts, and never stand on a feedback sheet.",
    )
    export.add_argument("folder", type=Path, metavar="FOLDER", help="the class folder")
    export.add_argument(
        "--to",
        type=Path,
        metavar="FOLDER",
        help="where to write (default: markbench-out in the class folder)",
    )
    export.add_argument(
        "--feedback",
        action="store_true",
        help="also write a feedback sheet (PDF and web page) for every fully marked learner",
    )
    export.add_argument(
        "--partly",
        action="store_true",
        help="with --feedback: also for learners of whom only some criteria are marked",
    )
    export.add_argument(
        "--oneroster",
        nargs=2,
        metavar=("SCHOOL", "TERM"),
        help="also write OneRoster 1.2 results; SCHOOL and TERM are the ids of the school and "
        "of the academic session in the school's own system",
    )
    export.add_argument(
        "--audit", action="store_true", help="also list every decision of the journal"
    )
    export.add_argument(
        "--record", action="store_true", help="also write the moderation record (PDF), to be signed"
    )
    for name, what, ending in (
        ("template", "an empty table of readings for learners", "xlsx"),
        ("task-sheet", "a printable sheet that tells learners what to do", "html"),
    ):
        handout = commands.add_parser(
            name,
            help=f"write {what}",
            description=f"Write {what}, made from the class's brief.",
        )
        handout.add_argument("folder", type=Path, metavar="FOLDER", help="the class folder")
        handout.add_argument(
            "--to", type=Path, metavar="FILE", required=True, help=f"file to write ({ending})"
        )
    add_commands(commands)
    caring_arguments.add_commands(commands)
    return parser
