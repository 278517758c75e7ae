"""The class's own files that the window writes: the brief, and rubrics of the class's own.

They stay plain files, which an editor may change at any time: the file says what holds, and
the journal says what was saved from here, with the whole text before and after. So saving is a
decision like any other (kind ``file``, the name for its subject), and taking it back writes the
former text, byte for byte. Rejected: keeping the brief in the journal, where no editor reaches
it; and copies of former files beside the present ones, which litter the folder.

A file changed by another hand since is left alone: its text stands nowhere else.
"""

from __future__ import annotations

import os
import re
from collections.abc import Iterable, Iterator, Sequence
from contextlib import ExitStack, contextmanager, suppress
from itertools import takewhile
from pathlib import Path

from markbench.checks.wording import listed
from markbench.intake.brief_file import BRIEF_NAME, read_brief
from markbench.intake.brief_writing import brief_text
from markbench.model import Brief, Decision, say
from markbench.rubric import find_rubric
from markbench.rubric.loading import SHIPPED
from markbench.session.errors import GoneByError, RefusedError
from markbench.store import StoreAwayError

KIND = "file"
OTHER = "other files"
"""Told where brief, rubric or class list were found changed; nobody decided it here."""
_NAME = re.compile(r"[A-Za-z0-9][A-Za-z0-9_-]{0,60}")


def place_of(folder: Path, name: str) -> Path:
    """Where a class's file lies; ``ValueError`` for a name that none of them has."""
    return folder / BRIEF_NAME if name == BRIEF_NAME else own_path(folder, name)


def own_path(folder: Path, name: str) -> Path:
    """Where a rubric of the class's own is saved; ``ValueError`` for a name that will not do."""
    stem = name.strip().removesuffix(".toml")
    if not _NAME.fullmatch(stem):
        raise ValueError(say("A rubric's name is made of letters, digits, _ and -."))
    if f"{stem}.toml".casefold() == BRIEF_NAME:
        raise ValueError(say("brief.toml is the brief; choose another name for the rubric."))
    if folder.resolve() == SHIPPED.resolve():
        raise ValueError(
            say("The rubrics that come along stay as they are; choose a class folder.")
        )
    return folder / f"{stem}.toml"


def text_of(folder: Path, name: str) -> str | None:
    """What stands in a class's file, every byte of it; ``None`` where there is none.

    Raises :class:`StoreAwayError` where the folder is out of reach, :class:`RefusedError` where
    the file cannot be read.
    """
    path = place_of(folder, name)
    try:
        # A file of another encoding comes back as it was, too.
        return path.read_bytes().decode("utf-8", "surrogateescape")
    except FileNotFoundError:
        if folder.is_dir():
            return None
        raise StoreAwayError(
            say("{file} is out of reach; nothing was saved.", file=folder.name)
        ) from None
    except OSError as error:
        raise RefusedError(
            say("{file} could not be read: {strerror}.", file=name, strerror=error.strerror)
        ) from error


def saved_brief(folder: Path, brief: Brief) -> Decision:
    """The decision that saves a brief. Raises ``ValueError`` where the one in place is damaged."""
    return Decision(KIND, "", BRIEF_NAME, brief_text(folder / BRIEF_NAME, brief))


def saved_rubric(folder: Path, name: str, text: str) -> Decision:
    """The decision that saves a rubric. Raises ``ValueError`` for a name that will not do."""
    return Decision(KIND, "", own_path(folder, name).name, text)


@contextmanager
def written(folder: Path, decisions: Iterable[Decision]) -> Iterator[None]:
    """Write the files that ``decisions`` are about; within, the decisions are journalled.

    Whatever fails within, the files are put back: neither half stands without the other.
    Raises ``RubricError`` where the class could not be opened with what was written.
    """
    with ExitStack() as putting_back:
        mine = [d for d in decisions if d.kind == KIND]
        for d in mine:
            _put(folder, d.subject, d.value)
            putting_back.callback(_put, folder, d.subject, d.before)
        if mine:
            brief, _ = read_brief(folder / BRIEF_NAME)
            find_rubric(brief.rubric, folder, brief.feedback_language)
        yield
        putting_back.pop_all()


def refuse_changed(folder: Path, step: Iterable[Decision]) -> None:
    """Raise :class:`GoneByError` where a file of a step is not as the step left it."""
    changed = [d.subject for d in step if d.kind == KIND and text_of(folder, d.subject) != d.value]
    if changed:
        raise GoneByError(
            say(
                "{files} changed outside Markbench since, and nothing of that may be "
                "lost: this step is not taken back. The next Undo or Redo goes on to "
                "the step beyond.",
                files=listed(changed),
            )
        )


def put_back(history: Sequence[Decision]) -> tuple[str, ...]:
    """The files that the last step of a journal wrote, if it was an Undo or a Redo."""
    step = takewhile(lambda d: d.at == history[-1].at, reversed(history))
    return tuple(d.subject for d in step if d.kind == KIND and d.undoes is not None)


def _put(folder: Path, name: str, text: str | None) -> None:
    """Write a file whole or not at all; without a text, take it away."""
    path = place_of(folder, name)
    part = path.with_name(f"{path.name}.part")
    try:
        if text is None:
            path.unlink(missing_ok=True)
        else:
            part.write_bytes(text.encode("utf-8", "surrogateescape"))
            os.replace(part, path)
    except OSError as error:
        with suppress(OSError):
            part.unlink(missing_ok=True)
        raise RefusedError(
            say("{file} could not be written: {strerror}.", file=name, strerror=error.strerror)
        ) from error
