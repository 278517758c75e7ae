"""The arguments of the commands for second marking and sign-off.

Apart from what they do, so that the window need not load it before its first frame.
"""

from __future__ import annotations

import argparse
from pathlib import Path


def add_commands(commands: argparse._SubParsersAction[argparse.ArgumentParser]) -> None:
    """Add the commands of this module to the parser."""
    sample = _command(commands, "sample", "draw and record whom the moderator sees")
    sample.add_argument("--seed", type=int, help="draw with this seed (default: a new one)")
    pack = _command(commands, "pack", "write the moderation pack of the sample")
    pack.add_argument("--to", type=Path, metavar="FILE", help="default: in markbench-out")
    second = commands.add_parser(
        "second-mark",
        help="open a moderation pack: mark blind, look, agree, adjust or ask, send back",
        description="Without further options, show how far the second marking has come. Options "
        "are carried out in the order: give, first, agree, adjust, ask, reply.",
    )
    second.add_argument("pack", type=Path, metavar="PACK", help="a .markbench-pack file")
    second.add_argument("--as", dest="who", required=True, metavar="NAME", help="the moderator")
    for option, words, what in (
        ("--give", ("NUMBER", "CRITERION", "LEVEL"), "a blind second mark"),
        ("--first", ("NUMBER",), "show the first marks of a learner whose second are complete"),
        ("--agree", ("NUMBER", "CRITERION"), "agree with a first mark"),
        ("--adjust", ("NUMBER", "CRITERION", "LEVEL", "REASON"), "adjust a first mark"),
        ("--ask", ("NUMBER", "CRITERION", "WORDS"), "ask about a first mark"),
    ):
        second.add_argument(
            option, nargs=len(words), metavar=words, action="append", default=[], help=what
        )
    second.add_argument("--reply", type=Path, metavar="FILE", help="write what goes back")
    merge = _command(commands, "merge", "merge a moderator's reply or a colleague's journal")
    merge.add_argument(
        "other", metavar="OTHER", help="a .markbench-reply file, a class folder or its journal"
    )
    first = _command(commands, "first-marker", "say whose marks on a learner are the first")
    first.add_argument("learner", metavar="ID", help="id of the learner")
    first.add_argument("name", metavar="NAME", help="who gave the marks that shall be first")
    first.add_argument("--why", required=True, help="the reason, which is recorded")
    _command(commands, "agreement", "how far first and second marks agree")
    settle = _command(commands, "settle", "the last word where markers differ or one asks")
    for name in ("learner", "criterion", "level"):
        settle.add_argument(name, metavar=name.upper())
    settle.add_argument("--why", required=True, help="the reason, which is recorded")
    adjust = _command(commands, "adjustment", "decide about severity: adjust, remark or leave")
    adjust.add_argument("choice", choices=("adjust", "remark", "leave"))
    adjust.add_argument("--by", type=float, default=0.0, metavar="MARKS", help="with adjust")
    adjust.add_argument("--why", required=True, help="the reason, which is recorded")
    sign = _command(commands, "sign-off", "freeze the marks")
    sign.add_argument("--note", default="", help="words to stand beside the signature")
    sign.add_argument("--despite-open", action="store_true", help="with questions left open")
    again = _command(commands, "reopen", "lift the sign-off")
    again.add_argument("--why", required=True, help="the reason, which is recorded")
    journal = _command(commands, "journal", "list every decision, oldest first")
    journal.add_argument("--learner", metavar="ID", help="of one learner only")


def _command(
    commands: argparse._SubParsersAction[argparse.ArgumentParser], name: str, what: str
) -> argparse.ArgumentParser:
    parser = commands.add_parser(name, help=what, description=what[0].upper() + what[1:] + ".")
    parser.add_argument("folder", type=Path, metavar="FOLDER", help="the class folder")
    return parser
