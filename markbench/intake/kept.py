"""What is kept of files that were removed after sign-off, set beside what is still there."""

from __future__ import annotations

from collections.abc import Iterable, Set
from dataclasses import replace

from markbench.model import Learner, Piece, Portfolio


def still_kept(kept: Portfolio | None, learner: Learner, there: Set[str]) -> Portfolio:
    """The kept pieces whose files are not ``there`` (again), marked as gone; and the table."""
    if kept is None:
        return Portfolio(learner)

    def left(pieces: tuple[Piece, ...]) -> tuple[Piece, ...]:
        return tuple(
            replace(piece, gone=True)
            for piece in pieces
            if not {piece.file, piece.file.rpartition("#")[0]} & there
        )

    return replace(kept, learner=learner, pieces=left(kept.pieces), earlier=left(kept.earlier))


def in_order(there: Iterable[Piece], gone: Iterable[Piece]) -> tuple[Piece, ...]:
    """Pieces that are there and pieces that are gone in the order they had together."""
    there, gone = tuple(there), tuple(gone)
    if not gone:
        return there
    return tuple(sorted((*there, *gone), key=lambda one: (one.kind != "readings", one.file)))
