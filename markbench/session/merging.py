"""Putting two journals of one class together: nothing lost, nothing twice, nothing overwritten.

An entry is the same entry wherever it lies if what it says, who said it and when are the
same; its number is not part of it. What only one side decided is taken over. Where both
decided about the same thing since they parted:

- the same criterion marked by two people becomes a double mark. Who marked more of that
  learner is the first marker, on all criteria and on either machine; only where both
  marked as much does the clock decide, by each one's earliest mark of the learner. A clock
  can be wrong, so the sentence says what decided, and a person can turn it round
  (:func:`markbench.session.first_marker.make_first`);
- private notes are joined;
- of anything else the later decision holds, and the clash is shown. What one and the same
  person decided twice is no clash: her later decision holds and is counted. Marks and texts
  to learners are shown all the same, as a text written elsewhere would be missed.

The rules know no "mine" and "theirs", so both machines end with the same marks whichever
merged first. Every entry of the other side is kept in the journal; where the present must
not follow it, a further entry takes it back.
"""

from __future__ import annotations

import datetime as dt
import hashlib
import json
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace

from markbench.model import Decision, say
from markbench.moderation.records import subject_of
from markbench.session.class_files import KIND as FILE
from markbench.session.own_words import KIND as WORD
from markbench.session.phrases import FORGOTTEN
from markbench.session.steps import CLOSES, standing
from markbench.session.texts import words_of
from markbench.store import fold

MERGED = "merged"
Key = tuple[str, str, str]
_THEIRS = frozenset({FILE, WORD, FORGOTTEN, *CLOSES})
_WITH_TEXT = frozenset({"mark", "feedback"})
_NEVER = dt.datetime(1970, 1, 1, tzinfo=dt.UTC)


@dataclass(frozen=True, slots=True)
class Clash:
    """Two decisions about the same thing, the one that holds, and a sentence about it.

    ``basis`` says of a double mark what decided which of the two is the first.
    """

    kind: str
    learner: str
    subject: str
    mine: Decision
    theirs: Decision
    sentence: str
    basis: str = ""


@dataclass(frozen=True, slots=True)
class Merge:
    """What a merge adds to my journal: ``decisions`` in order, to be appended as one batch.

    ``doubles`` are criteria marked by two people; ``clashes`` everything else that both
    sides decided differently. ``known`` entries were there already. ``revised`` counts what
    one person decided anew herself.
    """

    decisions: tuple[Decision, ...]
    doubles: tuple[Clash, ...]
    clashes: tuple[Clash, ...]
    known: int
    revised: int = 0

    def __str__(self) -> str:
        return (
            f"{len(self.decisions)} entries added, {self.known} known already, "
            f"{len(self.doubles)} double marks, {self.revised} changed by the same person, "
            f"{len(self.clashes)} clashes"
        )


def identity(decision: Decision) -> str:
    """What makes an entry the same entry in another journal (SHA-256, hexadecimal)."""
    at = (decision.at or _NEVER).astimezone(dt.UTC).isoformat()
    content = [*decision.key, decision.value, decision.who, at, decision.why]
    return hashlib.sha256(json.dumps(content, sort_keys=True).encode("ascii")).hexdigest()


def merge_journals(mine: Sequence[Decision], theirs: Sequence[Decision]) -> Merge:
    """What to add to ``mine`` so that it holds both. Neither is changed.

    What was saved in the other folder's brief and rubrics stays with that folder, and what its
    teacher told her speller and her book with her. A merge that was taken back, on either side,
    counts as never made: it may be made again.
    """
    start = max((d.number for d in mine), default=0)
    last = {d.key: d.number for d in mine}
    mine = standing(mine)
    theirs = [d for d in standing(theirs) if d.kind not in _THEIRS]
    here = {identity(d): d.number for d in mine}
    there = {identity(d) for d in theirs}
    fresh = [d for d in theirs if identity(d) not in here]
    if not fresh:
        return Merge((), (), (), len(theirs))
    merging = _Merging(mine, theirs, fresh, {d.key for d in mine if identity(d) not in there})
    merging.settle()
    added = _imported(fresh, theirs, here, start)
    added += merging.extra(here | {identity(d): 0 for d in fresh})
    state = fold(added, fold(mine))
    last |= {d.key: start + place for place, d in enumerate(added, 1)}
    for key, target in merging.targets.items():
        held = state.get(key)
        if target is not None and (held is None or identity(held) != identity(target)):
            before = None if held is None else held.value
            added.append(replace(target, before=before, undoes=last.get(key), number=0))
        elif target is None and held is not None:
            by, at = merging.cleared_by.get(key, (held.who, held.at))
            added.append(
                Decision(*key, None, before=held.value, who=by, at=at, undoes=last.get(key))
            )
    known = len(theirs) - len(fresh)
    doubles, clashes = tuple(merging.doubles), tuple(merging.clashes)
    return Merge(tuple(added), doubles, clashes, known, merging.revised)


class _Merging:
    """The judgement of one merge: for each key that came in, what shall hold (``targets``)."""

    def __init__(
        self,
        mine: Sequence[Decision],
        theirs: Sequence[Decision],
        fresh: Sequence[Decision],
        mine_alone: set[Key],
    ) -> None:
        self.mine, self.theirs = fold(mine), fold(theirs)
        self.last_mine, self.last_theirs = _last(mine), _last(theirs)
        self.keys = list(dict.fromkeys(d.key for d in fresh))
        self.both = [key for key in self.keys if key in mine_alone]
        self.changed_mine = mine_alone
        self.targets: dict[Key, Decision | None] = {}
        self.cleared_by: dict[Key, tuple[str, dt.datetime | None]] = {}
        self.doubles: list[Clash] = []
        self.clashes: list[Clash] = []
        self.revised = 0
        self._seconds: list[Decision] = []

    def settle(self) -> None:
        for key in self.keys:
            if key not in self.changed_mine:
                self.targets[key] = self.theirs.get(key)
        for key in sorted(self.both, key=lambda key: key[0] != "mark"):  # marks first
            if key not in self.targets:
                self._settle_both(key)

    def extra(self, known: dict[str, int]) -> list[Decision]:
        """Second marks that came of double marking and are not in either journal yet."""
        return [d for d in self._seconds if identity(d) not in known]

    def _settle_both(self, key: Key) -> None:
        a, b = self.mine.get(key), self.theirs.get(key)
        kind = key[0]
        if a is not None and b is not None:
            if kind == "mark" and a.who != b.who:
                self._double(key, a, b)
                return
            if a.value == b.value:
                self.targets[key] = min(a, b, key=_when)
                return
            if kind == "note":
                self.targets[key] = _joined(a, b)
                return
        last_a, last_b = self.last_mine[key], self.last_theirs[key]
        later = max(last_a, last_b, key=_when)
        self.targets[key] = None if later.value is None else later
        self.cleared_by[key] = (later.who, later.at)
        if last_a.value == last_b.value:
            return
        if last_a.who == last_b.who and kind not in _WITH_TEXT:
            self.revised += 1
        else:
            sentence = (
                f"{_about(key)}: {last_a.who} and {last_b.who} decided differently; the later "
                f"decision, by {later.who}, holds."
            )
            self.clashes.append(Clash(*key, last_a, last_b, sentence))

    def _double(self, key: Key, a: Decision, b: Decision) -> None:
        _, learner, criterion = key
        (first, second), basis = self._in_turn(a, b)
        own, other = (self.mine, self.theirs) if first is a else (self.theirs, self.mine)
        text_key = ("feedback", learner, criterion)
        text = other.get(text_key)
        value = {
            "level": second.value["level"],
            "marks": second.value["marks"],
            "feedback": words_of(second.value if text is None else text.value),
        }
        self._seconds.append(
            Decision(
                "second_mark",
                learner,
                subject_of(criterion, second.who),
                value,
                who=second.who,
                at=second.at,
                why=second.why,
            )
        )
        self.targets[key] = first
        # The text goes with the mark it was written for.
        self.targets[text_key] = own.get(text_key)
        self.cleared_by[text_key] = (first.who, first.at)
        sentence = (
            f"{_about(key)}: marked by {first.who} ({first.value['marks']:g}) and by "
            f"{second.who} ({second.value['marks']:g}); kept as first and second mark, {basis}."
        )
        self.doubles.append(Clash(*key, a, b, sentence, basis))

    def _in_turn(self, a: Decision, b: Decision) -> tuple[list[Decision], str]:
        """First and second mark of a learner, and what decided."""
        count = dict.fromkeys((a.who, b.who), 0)
        earliest: dict[str, Decision] = {a.who: a, b.who: b}
        held = {
            (d.subject, d.who): d
            for state in (self.mine, self.theirs)
            for d in state.values()
            if d.kind == "mark" and d.learner == a.learner and d.who in count
        }
        for (_, who), d in held.items():
            count[who] += 1
            earliest[who] = min(earliest[who], d, key=_when)
        turn = sorted((a, b), key=lambda d: (-count[d.who], _when(earliest[d.who])))
        first, second = (d.who for d in turn)
        if count[first] > count[second]:
            return turn, say("as {who} marked more of this learner", who=first)
        return turn, say("as {who} was earlier by the clocks of the two machines", who=first)


def _imported(
    fresh: Sequence[Decision], theirs: Sequence[Decision], here: dict[str, int], start: int
) -> list[Decision]:
    """Their entries for my journal: an undoing entry points at the undone one's new number."""
    numbers = {identity(d): start + place for place, d in enumerate(fresh, 1)} | here
    moved = {d.number: numbers[identity(d)] for d in theirs if d.number}
    return [
        replace(d, number=0, undoes=None if d.undoes is None else moved.get(d.undoes))
        for d in fresh
    ]


def _joined(a: Decision, b: Decision) -> Decision:
    """Two private notes as one; the later writer's, as a note is never only one's own."""
    first, second = sorted((a, b), key=_when)
    texts = [str(first.value)]
    if str(second.value) not in texts[0]:
        texts = [str(second.value)] if texts[0] in str(second.value) else [*texts, second.value]
    joined = "\n".join(texts)
    return second if joined == second.value else replace(second, value=joined, number=0)


def _when(decision: Decision) -> tuple[dt.datetime, str, str]:
    """Order of time, the same on every machine even where times are equal."""
    return (decision.at or _NEVER, decision.who, identity(decision))


def _last(decisions: Iterable[Decision]) -> dict[Key, Decision]:
    return {d.key: d for d in decisions}


def _about(key: Key) -> str:
    kind, learner, subject = key
    words = [word for word in (learner, subject) if word]
    return f"{kind.replace('_', ' ')} ({', '.join(words)})" if words else kind.replace("_", " ")
