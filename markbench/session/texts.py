"""The text to a learner as decided: its pieces in order, and those left out of it.

A ``feedback`` decision holds either words, as typed by hand or written by an earlier
version, or ``{"text", "pieces", "out"}``: the words as they read when it was made, the pieces
with their places, and the pieces left out. A ``mark`` carries ``pieces`` and ``out`` beside its
words in the same way. Read back, the places are filled with the numbers of today.
"""

from __future__ import annotations

from collections.abc import Mapping, Set
from dataclasses import dataclass
from typing import Any

from markbench.model import Draft, State
from markbench.rubric import Facts
from markbench.rubric.pieces import pieces_of, said

KIND = "feedback"
_MOST_OUT = 12  # sentences kept to be brought back (own choice)


@dataclass(frozen=True, slots=True)
class Text:
    """``pieces`` in order, places in braces; ``out`` the pieces left out, the latest last."""

    pieces: tuple[str, ...]
    out: tuple[str, ...] = ()

    def moved(self, at: int, to: int) -> Text:
        """The piece at ``at`` stands at ``to`` afterwards; both are kept within the text."""
        if not 0 <= at < len(self.pieces):
            return self
        rest = [*self.pieces[:at], *self.pieces[at + 1 :]]
        to = min(max(to, 0), len(rest))
        return Text((*rest[:to], self.pieces[at], *rest[to:]), self.out)

    def without(self, at: int) -> Text:
        """The piece at ``at`` left out, to be brought back when wanted."""
        if not 0 <= at < len(self.pieces):
            return self
        gone = self.pieces[at]
        out = tuple(one for one in self.out if one != gone) + ((gone,) if gone else ())
        return Text((*self.pieces[:at], *self.pieces[at + 1 :]), out[-_MOST_OUT:])

    def with_piece(self, piece: str, at: int) -> Text:
        """A piece put in at ``at``: one left out before, or a new one."""
        at = min(max(at, 0), len(self.pieces))
        out = tuple(one for one in self.out if one != piece)
        return Text((*self.pieces[:at], piece, *self.pieces[at:]), out)

    def holding(self, struck: Set[str]) -> Text:
        """The text without the pieces in ``struck``; nothing is left to bring back of them."""
        out = tuple(one for one in self.out if one not in struck)
        return Text(tuple(one for one in self.pieces if one not in struck), out)

    def value(self, facts: Facts) -> dict[str, Any]:
        """What the journal keeps of it."""
        return {
            "text": said(self.pieces, facts),
            "pieces": list(self.pieces),
            "out": list(self.out),
        }


def drafted(draft: Draft) -> Text:
    """The draft's sentences, none left out."""
    return Text(draft.pieces or draft.sentences)


def read(value: Any) -> Text:
    """What the journal kept; words alone become a piece to a line."""
    if isinstance(value, Mapping):
        pieces, out = value.get("pieces"), value.get("out")
        if isinstance(pieces, list | tuple):
            kept = out if isinstance(out, list | tuple) else ()
            return Text(tuple(map(str, pieces)), tuple(map(str, kept)))
    return Text(pieces_of(words_of(value)))


def words_of(value: Any) -> str:
    """The words of a kept text as they read when it was decided."""
    if isinstance(value, Mapping):
        return str(value.get("text", value.get("feedback", "")))
    return "" if value is None else str(value)


def kept(state: State, learner: str, criterion: str) -> Any:
    """The value in force for a text: as edited, else as marked; ``None`` for the draft's."""
    for kind in (KIND, "mark"):
        decision = state.get((kind, learner, criterion))
        if decision is not None:
            return decision.value
    return None


def to_bring_back(text: Text, draft: Draft, struck: Set[str] = frozenset()) -> tuple[str, ...]:
    """Sentences that could stand in the text again: of the draft, then those left out.

    ``struck`` are those that are no longer true of the learner.
    """
    of_draft = [one for one in drafted(draft).pieces if one not in text.pieces]
    found = dict.fromkeys((*of_draft, *reversed(text.out)))
    return tuple(one for one in found if one not in struck)
