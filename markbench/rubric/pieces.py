"""A text to a learner in pieces: sentences whose places stay live until the text goes out.

A piece is a sentence with places in braces, like a phrase of a rubric, but it is read
kindly: what stands in braces and is no fact, or is not known for this learner, stays as it
is written, to be seen and to be named before anything is sent. Pieces run on as one
paragraph; an empty piece is the end of a line.

Rejected: filling a sentence once and keeping the words. A reading corrected later would then
leave the old number in a text that nobody looks at again.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator
from typing import NamedTuple

from markbench.model import say
from markbench.model.sentence import sentence_case
from markbench.rubric.facts import PLACEHOLDERS, Facts

_PLACE = re.compile(r"\{([A-Za-z0-9_]+)\}")
OPEN = re.compile(r"\{[^{}\s]*\}")


class Run(NamedTuple):
    """A stretch of a piece as it reads; ``place`` names what it quotes, "" for mere words."""

    text: str
    place: str = ""


def runs(piece: str, facts: Facts) -> tuple[Run, ...]:
    """A piece as this learner would read it, in stretches of words and of live numbers."""
    return tuple(_runs(piece, facts))


def _runs(piece: str, facts: Facts) -> Iterator[Run]:
    done = 0
    for found in _PLACE.finditer(piece):
        shown = shown_at(found.group(1), facts, first=not piece[: found.start()].strip())
        if shown is None:
            continue
        if found.start() > done:
            yield Run(piece[done : found.start()])
        yield Run(shown, found.group(1))
        done = found.end()
    if done < len(piece):
        yield Run(piece[done:])


def shown_at(place: str, facts: Facts, *, first: bool = False) -> str | None:
    """What a place reads for this learner, with a capital where it begins the sentence.

    ``None`` where it is no place or the fact is not known.
    """
    fact = PLACEHOLDERS.get(place)
    shown = None if fact is None else facts.show(fact.name)
    return sentence_case(shown) if first and shown is not None else shown


def said(pieces: Iterable[str], facts: Facts) -> str:
    """The whole text as the learner reads it."""
    return joined("".join(run.text for run in _runs(piece, facts)) for piece in pieces)


def joined(sentences: Iterable[str]) -> str:
    """Sentences as running text; an empty one ends the line."""
    lines: list[list[str]] = [[]]
    for sentence in sentences:
        if sentence:
            lines[-1].append(sentence)
        else:
            lines.append([])
    return "\n".join(" ".join(line) for line in lines)


def pieces_of(text: str) -> tuple[str, ...]:
    """Plain text as pieces, one to a line, such that :func:`joined` gives it back."""
    found: list[str] = []
    for number, line in enumerate(text.split("\n")):
        found += ([""] if number else []) + ([line] if line else [])
    return tuple(found)


def open_places(text: str) -> tuple[str, ...]:
    """The places still unfilled in a text as it would go out, each once."""
    return tuple(dict.fromkeys(OPEN.findall(text)))


def still_open(text: str) -> str:
    """A sentence that names the places unfilled in a text; empty for none.

    What goes out is held to this: nothing is sent with a place unfilled.
    """
    found = open_places(text)
    if not found:
        return ""
    return say(
        "{places} is still to be filled in"
        if len(found) == 1
        else "{places} are still to be filled in",
        places=", ".join(found),
    )
