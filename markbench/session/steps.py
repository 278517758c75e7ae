"""What can be taken back and done again, read from the journal.

Undo is a decision that takes another back, so the journal itself says which steps stand and
which were taken back: what can be undone is not forgotten when the class is closed, or made
anew on the screen. Decisions of one step carry the same time; that is what binds them.

A step that bears other people's signatures (a merge, a copy gone back to, and taking back what
stood above another's decision) is bound otherwise: an entry at its end, of a kind in
:data:`CLOSES`, counts the entries before it that belong to it.

Only what this person did here is taken back. At an entry by somebody else, or one whose
``before`` is not what stood there (it came from another journal), and at those that are
:data:`FOR_GOOD`, everything earlier is out of reach: it might not be the last word any more.
"""

from __future__ import annotations

from collections.abc import Sequence, Set
from dataclasses import replace
from typing import Any

from markbench.model import Decision
from markbench.session.class_files import KIND as FILE
from markbench.session.handed_in_work import WORK

Step = list[Decision]
Held = dict[tuple[str, str, str], Decision]

FOR_GOOD = frozenset(
    {
        "kept", "purge", "restored", "brought_home", "second_mark", "moderated", "first_seen",
        "salvaged", "lost",
    }
)  # fmt: skip
"""Kinds that no keystroke takes back, nor anything before them, unless they stand in a step
that is closed by an entry of its own."""

SIGNED = frozenset({"sign_off", "reopen"})
"""Kinds of a signature: taken back, or done again, only where the person is sure of it."""

LEFT_THE_HOUSE = frozenset({"pack"})
"""Kinds that record what happened outside the journal: passed over, as nothing unsends them."""

TAKEN_BACK = "taken_back"
CLOSES = frozenset({"merged", "restored", "brought_home", "first_marker", TAKEN_BACK})
"""Kinds that close a step of entries with signatures of their own; of no use to another journal."""

_COUNT = "taken_in"
_REOPEN = ("reopen", "", "")


def closed(entries: Sequence[Decision], end: Decision) -> Decision:
    """The entry ``end``, made to close a step of ``entries``."""
    return replace(end, value={**(end.value or {}), _COUNT: len(entries)})


def closing(step: Sequence[Decision]) -> Decision | None:
    """The entry that closes a step; ``None`` for a step that its time binds."""
    end = step[-1]
    held = end.value if end.kind in CLOSES else None
    count = held.get(_COUNT) if isinstance(held, dict) else None
    return end if type(count) is int and count >= 0 else None


def steps_of(decisions: Sequence[Decision]) -> list[Step]:
    """The decisions of a journal, put together as they were decided."""
    steps: list[Step] = []
    after = len(decisions)
    while after:  # from the end: what a step took in may hold ends of another journal's steps
        last = decisions[after - 1]
        first = after - 1
        end = closing([last])
        if end is not None:
            first = max(first - end.value[_COUNT], 0)
        else:
            while first and _bound(decisions[first - 1], last):
                first -= 1
        steps.append(list(decisions[first:after]))
        after = first
    return steps[::-1]


def _bound(one: Decision, other: Decision) -> bool:
    return (one.who, one.at) == (other.who, other.at) and closing([one]) is None


def standing(decisions: Sequence[Decision]) -> list[Decision]:
    """The decisions without what was taken in at once and taken back again.

    For whoever puts journals together: a merge that was taken back is no opinion on what the
    other journal says.
    """
    steps = steps_of(decisions)
    taken_in = {end.number for step in steps if (end := closing(step)) is not None}
    gone: set[int] = set()
    for step in reversed(steps):
        end = closing(step)
        if end is not None and end.undoes in taken_in and end.number not in gone:
            gone |= {end.number, end.undoes}
    return [d for step in steps if closing(step) is None or step[-1].number not in gone
            for d in step]  # fmt: skip


class Steps:
    """The steps of ``who``: ``past`` can be taken back, ``undone`` can be done again."""

    def __init__(
        self, who: str, decisions: Sequence[Decision], for_good: Set[str] = FOR_GOOD
    ) -> None:
        self._for_good = for_good
        self.past: list[Step] = []
        self.undone: list[Step] = []
        values: dict[tuple[str, str, str], Any] = {}
        for step in steps_of(decisions):
            fits, end = step[-1].who == who, closing(step)
            for d in step:
                # A file stands in the folder, and is compared with it when it comes to that.
                fits = fits and (end is not None or d.kind == FILE or values.get(d.key) == d.before)
                values[d.key] = d.value
            if fits:
                self.follow(step)
            else:
                self.forget()

    def follow(self, written: Sequence[Decision]) -> None:
        """Take in a step that was journalled; the work that a mark rests on is a fact and stays."""
        end = closing(written) if written else None
        step = [d for d in written if end is not None or d.kind != WORK]
        if not step:
            return
        undoes = {d.undoes for d in step} if end is None else {end.undoes}
        kinds = {d.kind for d in step}
        if undoes != {None}:
            if not self._moved(max(number or 0 for number in undoes), step):
                self.forget()
        elif end is None and kinds & self._for_good:
            self.forget()
        else:
            self.undone.clear()
            if not kinds <= LEFT_THE_HOUSE:
                self.past.append(step)

    def forget(self) -> None:
        """Nothing can be taken back or done again."""
        self.past.clear()
        self.undone.clear()

    def _moved(self, number: int, written: Step) -> bool:
        """Whether the step that ends with this entry was found and put on the other pile.

        Steps above it were passed over, as they could not be taken back.
        """
        for pile, other in ((self.past, self.undone), (self.undone, self.past)):
            for at in range(len(pile) - 1, -1, -1):
                if pile[at][-1].number == number:
                    del pile[at:]
                    other.append(written)
                    return True
        return False


def is_signature(step: Step) -> bool:
    """Whether a step gives a signature or lifts one."""
    return not SIGNED.isdisjoint(d.kind for d in step)


def taking_back(step: Step, history: Sequence[Decision], who: str) -> list[Decision]:
    """What takes a step of ``who`` back: to what stood before, with the reason that it had.

    What somebody else had decided keeps that signature.
    """
    held = _held_before(step, history)
    if closing(step) is None and all(
        d.kind == FILE or d.key not in held or held[d.key].who == who for d in step
    ):
        return _unsaid(step, held)
    back: Held = {}
    for d in step:
        if d.kind in CLOSES or d.kind == WORK:
            continue
        was = held.get(d.key)
        back[d.key] = Decision(*d.key, None) if was is None else replace(was, undoes=None, number=0)
    entries = list(back.values())
    return [*entries, closed(entries, Decision(TAKEN_BACK, "", "", {}, undoes=step[-1].number))]


def _unsaid(step: Step, held: Held) -> list[Decision]:
    back = []
    for d in reversed(step):
        why = held[d.key].why if d.before is not None and d.key in held else ""
        back.append(Decision(*d.key, d.before, why=why, undoes=d.number))
    signed = next((d for d in step if d.kind == "sign_off" and d.before is None), None)
    if signed is None:
        return back
    # A signature is lifted by a decision that says so, with its reason.
    again = any(d.kind == "reopen" for d in step)
    why = held[_REOPEN].why if again and _REOPEN in held else "undone"
    return [
        Decision(*_REOPEN, {"sign_off": signed.number}, why=why, undoes=step[-1].number),
        Decision(*signed.key, None, why=why, undoes=signed.number),
    ]


def _held_before(step: Step, history: Sequence[Decision]) -> Held:
    """What stood before a step, of all that it is about."""
    keys = {d.key for d in step}
    held: Held = {}
    for d in history:
        if d.number >= step[0].number:
            break
        if d.key in keys:
            held[d.key] = d
    return {key: d for key, d in held.items() if d.value is not None}


def decided_in(written: Sequence[Decision], history: Sequence[Decision]) -> Step:
    """The step that ``written`` took back or did again, as it was decided at first.

    Of one that was taken in at once, the entry that says what was taken in.
    """
    steps = {step[-1].number: step for step in steps_of(history)}
    step = list(written)
    while step:
        end = closing(step)
        numbers = {d.undoes for d in step} if end is None else {end.undoes}
        undone = max(number or 0 for number in numbers)
        if not undone:
            return [d for d in step if d.kind != WORK] if end is None else [end]
        step = steps.get(undone, [])
    return step
