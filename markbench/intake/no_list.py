"""Who is in the class when there is no class list: the sub-folders, or the tables themselves.

A folder or zip file is either one learner's or a wrapper round several ("submissions",
"10B.zip"). It is a wrapper when several things inside it have tables of their own, or are
called like different people; otherwise it is a learner, called as the folder is.
"""

from __future__ import annotations

import re
from collections import defaultdict
from collections.abc import Iterable
from dataclasses import dataclass, field
from typing import Literal

from markbench.intake.kinds import TABLES, ending, stem
from markbench.intake.names import PARTICLES, cut, cut_camel, fold, is_known_word, without_devices
from markbench.intake.tree import Found
from markbench.model import Learner, Match, say

_NATURAL = re.compile(r"(\d+)")


@dataclass(slots=True)
class _Box:
    """A folder or zip file with what lies directly in it."""

    name: str
    boxes: dict[str, _Box] = field(default_factory=dict)
    files: list[Found] = field(default_factory=list)

    def all_files(self) -> Iterable[Found]:
        yield from self.files
        for box in self.boxes.values():
            yield from box.all_files()

    def has_table(self) -> bool:
        return any(_is_table(found) for found in self.all_files())


@dataclass(slots=True)
class Roll:
    """Learners found, in natural order, and the pieces that are theirs beyond question."""

    learners: tuple[Learner, ...]
    matches: dict[str, Match]


def _is_table(found: Found) -> bool:
    return ending(found.parts[-1]) in TABLES


def _person(text: str) -> tuple[str, ...]:
    """What is left of a name once everything that describes the piece is taken away."""
    tokens = [token for piece in cut(without_devices(text)) for token in _split(piece)]
    return tuple(t for t in tokens if not is_known_word(fold(t)))


def _split(piece: str) -> tuple[str, ...]:
    return (
        cut_camel(piece) if not piece.isupper() and not any(map(str.isdigit, piece)) else (piece,)
    )


def _key(text: str) -> tuple[str, ...]:
    return tuple(sorted(f for t in _person(text) if (f := fold(t)) not in PARTICLES))


def _only_numbers(key: tuple[str, ...]) -> bool:
    return all(not any(letter.isalpha() for letter in part) for part in key)


def _is_wrapper(box: _Box) -> bool:
    names_nobody = _only_numbers(_key(box.name))
    with_tables = [inner for inner in box.boxes.values() if inner.has_table()]
    people = {_key(inner.name) for inner in with_tables} - {()}
    if len(people) > 1:
        return True
    if not names_nobody:
        # "Amina/data/readings.xlsx" is Amina's, however many tables there are.
        return False
    if len(box.boxes) == 1 and not box.files:
        return True
    tables = {_key(stem(f.parts[-1])) for f in box.files if _is_table(f)} - {()}
    others = {key for inner in box.boxes.values() if (key := _key(inner.name))}
    return len(tables) > 1 or bool(others and not box.files) or not box.has_table()


def learners_without_list(found: Iterable[Found]) -> Roll:
    """Make learners of the folders and tables found."""
    top = _Box("")
    for piece in found:
        box = top
        for part in piece.parts[:-1]:
            box = box.boxes.setdefault(part, _Box(stem(part) if ".zip" in part.lower() else part))
        box.files.append(piece)
    members: dict[tuple[str, ...], list[tuple[Found, Literal["folder", "name"], str]]] = (
        defaultdict(list)
    )
    names: dict[tuple[str, ...], str] = {}
    waiting = [top]
    while waiting:
        wrapper = waiting.pop()
        for box in wrapper.boxes.values():
            if _is_wrapper(box):
                waiting.append(box)
                continue
            key = _key(box.name) or (box.name,)
            names[key] = box.name  # a folder's own name is the better one
            lies = say("it lies in “{folder}”", folder=box.name)
            members[key] += [(piece, "folder", lies) for piece in box.all_files()]
        for piece in wrapper.files:
            if not _is_table(piece):
                continue
            name = stem(piece.parts[-1])
            key = _key(name) or (name,)
            names.setdefault(key, " ".join(_person(name)) or name)
            called = say("the file is called “{name}”", name=piece.parts[-1])
            members[key].append((piece, "name", called))
    matches: dict[str, Match] = {}
    learners = []
    taken: set[str] = set()
    for key in sorted(members, key=lambda key: _natural(names[key])):
        identity, number = names[key], 2
        while identity.casefold() in taken:
            identity, number = f"{names[key]}-{number}", number + 1
        taken.add(identity.casefold())
        learners.append(Learner(identity, names[key]))
        for piece, by, why in members[key]:
            matches[piece.file] = Match(identity, by, 100.0, why)
    return Roll(tuple(learners), matches)


def _natural(text: str) -> list[tuple[int, str]]:
    """Learner 2 before learner 10."""
    return [
        (int(part), "") if part.isdecimal() and len(part) < 19 else (-1, fold(part))
        for part in _NATURAL.split(text)
        if part
    ]
