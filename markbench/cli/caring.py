"""What the commands that look after a class do: its copies, and its photos and films."""

from __future__ import annotations

import argparse
import sys

from rich.console import Console

from markbench.checks.pieces import PIECE_WORDS
from markbench.cli.terminal import Terminal
from markbench.session import Session
from markbench.session.errors import RefusedError
from markbench.session.pseudonyms import STAYS, bring_home, make_copy
from markbench.session.purging import plan, purge
from markbench.session.restoring import WayBack, copies_of, rebuild, restore, way_back
from markbench.store import StoreDamagedError


def run(parsed: argparse.Namespace) -> None:
    """Carry out one of these commands."""
    commands = {
        "restore": _restore,
        "purge": _purge,
        "pseudonymise": _pseudonymise,
        "bring-home": _bring_home,
    }
    commands[parsed.command](parsed, Terminal())


def _restore(parsed: argparse.Namespace, console: Console) -> None:
    if parsed.rebuild:
        _ask(parsed, "Make the class's file anew? The present one is kept beside the copies.")
        console.print(str(rebuild(parsed.folder)), markup=False)
        return
    try:
        session = Session.open(parsed.folder, read_only=parsed.to is None)
    except StoreDamagedError as error:
        raise StoreDamagedError(f"{error} To do so: markbench restore FOLDER --rebuild") from error
    try:
        copies = copies_of(parsed.folder)
        if not copies:
            console.print("No copy of this class is kept here yet.")
        if parsed.to is None:
            for number, copy in enumerate(copies, 1):
                when = f"{copy.made.astimezone():%Y-%m-%d %H:%M}" if copy.made else copy.path.name
                told = copy.problem or (
                    f"{copy.decisions} decisions, {copy.marks} marks. "
                    f"{_words(way_back(session, copy))}"
                )
                console.print(f"{number:>3}  {when}  {told}", markup=False, soft_wrap=True)
            return
        if not 1 <= parsed.to <= len(copies):
            raise RefusedError(f"There is no copy {parsed.to}; there are {len(copies)}.")
        chosen = copies[parsed.to - 1]
        console.print(_words(way_back(session, chosen)), markup=False)
        _ask(parsed, "Go back to this copy?")
        way = restore(session, chosen)
        console.print(f"Restored: {len(way.decisions)} decisions as in {chosen.path.name}.")
    finally:
        session.close()


def _words(way: WayBack) -> str:
    if not way.decisions:
        return "The class stands as it stood then."
    counts = (
        (way.undone, "marks become drafts again"),
        (way.come_back, "marks come back"),
        (way.change, "marks take their earlier level"),
        (way.texts, "texts read as they did"),
        (way.others, "other choices are as they were"),
    )
    told = "; ".join(f"{count} {words}" for count, words in counts if count)
    return f"Going back: {told}. {way.later} later decisions stay in the journal."


def _purge(parsed: argparse.Namespace, console: Console) -> None:
    session = Session.open(parsed.folder)
    try:
        shown = plan(session, everything=parsed.everything)
        if shown.why_not:
            raise RefusedError(f"Nothing was removed. {shown.why_not}")
        for word, heaps in (("Goes", shown.goes), ("Stays", shown.stays)):
            for heap in heaps:
                name = PIECE_WORDS.get(heap.kind, heap.kind)
                console.print(
                    f"{word}: {heap.count:>5} {heap.size_bytes / 1e6:>8.1f} MB  {name}",
                    highlight=False,
                )
        console.print(
            "Stays: marks, readings, what was measured in photos and videos, feedback, journal."
        )
        size = f"{shown.count} files, {shown.size_bytes / 1e6:.1f} MB"
        console.print(f"To be removed for good: {size}.", highlight=False)
        _ask(parsed, f"Remove {size} for good?")
        done = purge(session, shown)
        console.print(f"Removed: {done.count} files, {done.size_bytes / 1e6:.1f} MB.")
        for file, why in done.left.items():
            console.print(f"Still there: {file}: {why}.", markup=False, soft_wrap=True)
    finally:
        session.close()


def _pseudonymise(parsed: argparse.Namespace, console: Console) -> None:
    session = Session.open(parsed.folder, read_only=True)
    try:
        made = make_copy(session, parsed.to, parsed.key)
    finally:
        session.close()
    lines = [
        f"{made.learners} learners, {made.files} files copied to {made.folder}.",
        f"The key is {made.key}: keep it elsewhere, and do not lose it.",
        *(f"Left out: {count}, because {why}." for why, count in made.left_out.items()),
        *(f"Perhaps a name, and left: {one}" for one in made.doubts),
        f"Not taken out, and not to be: {'; '.join(STAYS)}.",
    ]
    console.print("\n".join(lines), markup=False, highlight=False, soft_wrap=True)


def _bring_home(parsed: argparse.Namespace, console: Console) -> None:
    session = Session.open(parsed.folder)
    try:
        count = bring_home(session, parsed.copy, parsed.key)
    finally:
        session.close()
    console.print(f"{count} decisions brought home.")


def _ask(parsed: argparse.Namespace, question: str) -> None:
    """Go on only at a person's word."""
    if parsed.yes:
        return
    if not sys.stdin.isatty():
        raise RefusedError("Nothing was done: nobody is here to be asked. Say --yes to go on.")
    if input(f"{question} Type yes: ").strip().casefold() != "yes":
        raise RefusedError("Nothing was done.")
