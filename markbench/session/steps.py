"""What can be taken back and done again, read from the journal.

Undo is a decision that takes another back, so the journal itself says which steps stand and
which were taken back: what can be undone is not forgotten when the class is closed, or made
anew on the screen. Decisions of one step carry the same time; that is what binds them.

Only what this person did here is taken back. At an entry by somebody else, or one whose
``before`` is not what stood there (it came from another journal), and at those that are
:data:`FOR_GOOD`, everything earlier is out of reach: it might not be the last word any more.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence, Set
from itertools import groupby
from typing import Any

from markbench.model import Decision
from markbench.session.class_files import KIND as FILE
from markbench.session.handed_in_work import WORK

Step = list[Decision]

FOR_GOOD = frozenset(
    {
        "sign_off", "reopen", "kept", "purge", "restored", "brought_home", "second_mark",
        "moderated", "first_seen", "salvaged", "lost",
    }
)  # fmt: skip
"""Kinds that no keystroke takes back, nor anything before them."""

LEFT_THE_HOUSE = frozenset({"pack"})
"""Kinds that record what happened outside the journal: passed over, as nothing unsends them."""


class Steps:
    """The steps of ``who``: ``past`` can be taken back, ``undone`` can be done again."""

    def __init__(
        self, who: str, decisions: Iterable[Decision], for_good: Set[str] = FOR_GOOD
    ) -> None:
        self._for_good = for_good
        self.past: list[Step] = []
        self.undone: list[Step] = []
        values: dict[tuple[str, str, str], Any] = {}
        for (by, _at), step in groupby(decisions, key=lambda d: (d.who, d.at)):
            written, fits = list(step), by == who
            for d in written:
                # A file stands in the folder, and is compared with it when it comes to that.
                fits = fits and (d.kind == FILE or values.get(d.key) == d.before)
                values[d.key] = d.value
            if fits:
                self.follow(written)
            else:
                self.forget()

    def follow(self, written: Sequence[Decision]) -> None:
        """Take in a step that was journalled; the work that a mark rests on is a fact and stays."""
        written = [d for d in written if d.kind != WORK]
        if not written:
            return
        kinds = {d.kind for d in written}
        numbers = {d.undoes for d in written}
        if numbers != {None}:
            if not self._moved(numbers, written):
                self.forget()
        elif kinds & self._for_good:
            self.forget()
        else:
            self.undone.clear()
            if not kinds <= LEFT_THE_HOUSE:
                self.past.append(written)

    def forget(self) -> None:
        """Nothing can be taken back or done again."""
        self.past.clear()
        self.undone.clear()

    def _moved(self, numbers: set[int | None], written: Step) -> bool:
        """Whether the step of these numbers was found and put on the other pile.

        Steps above it were passed over, as they could not be taken back.
        """
        for pile, other in ((self.past, self.undone), (self.undone, self.past)):
            for at in range(len(pile) - 1, -1, -1):
                if {d.number for d in pile[at]} == numbers:
                    del pile[at:]
                    other.append(written)
                    return True
        return False


def taking_back(step: Step, history: Sequence[Decision]) -> list[Decision]:
    """What takes a step back: to what stood before, with the reason that it had."""
    back = []
    for d in reversed(step):
        earlier = (one for one in reversed(history) if one.number < d.number and one.key == d.key)
        held = next(earlier, None) if d.before is not None else None
        why = "" if held is None else held.why
        back.append(Decision(*d.key, d.before, why=why, undoes=d.number))
    return back
