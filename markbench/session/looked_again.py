"""What is new in a class folder that was read again, in numbers and by learner."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from markbench.model import ClassWork, Piece


@dataclass(frozen=True, slots=True)
class News:
    """Files ``new``, ``changed`` and ``gone``; ``learners`` whose work that is, by id.

    ``asked``: the brief, the rubric or who is in the class is another.
    """

    new: int = 0
    changed: int = 0
    gone: int = 0
    learners: tuple[str, ...] = ()
    asked: bool = False

    @property
    def nothing(self) -> bool:
        """Whether all is as it was."""
        return not (self.new or self.changed or self.gone or self.asked)


def news(before: ClassWork, after: ClassWork) -> News:
    """Compare a class as it was read with the same class read later."""
    were, are = _files(before), _files(after)
    learners = tuple(
        one.id
        for one in after.learners
        if one.id not in before.portfolios or _own(before, one.id) != _own(after, one.id)
    )
    return News(
        new=len(are.keys() - were.keys()),
        changed=sum(are[file] != were[file] for file in are.keys() & were.keys()),
        gone=len(were.keys() - are.keys()),
        learners=learners,
        asked=before.brief != after.brief or before.learners != after.learners,
    )


def _state(piece: Piece) -> tuple[object, ...]:
    return (piece.size_bytes, piece.modified, piece.gone)


def _own(work: ClassWork, learner: str) -> Mapping[str, tuple[object, ...]]:
    held = work.portfolios[learner]
    return {piece.file: _state(piece) for piece in (*held.pieces, *held.earlier)}


def _files(work: ClassWork) -> dict[str, tuple[object, ...]]:
    """Every file of the class and how it stands, whoever it belongs to."""
    loose = (*work.unowned, *work.set_aside, *(doubt.piece for doubt in work.doubts))
    found = {piece.file: _state(piece) for piece in loose}
    for learner in work.portfolios:
        found |= _own(work, learner)
    return found
