"""Find learners by name in a text: order, accents, initials, run-together and misspelt parts.

The scores, and what they are for, stand in :mod:`.matching`.
"""

from __future__ import annotations

from collections import Counter, defaultdict
from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from rapidfuzz import process
from rapidfuzz.distance import OSA

from markbench.intake.names import PARTICLES, cut, cut_camel, fold, forms, is_known_word
from markbench.model import Learner, Match, say

CLEAR = 80.0  # a match below this is never taken without the teacher
SURE = 90.0  # evidence that can overrule a weaker clear match elsewhere in the path
LONE = 84.0  # one part of a name, and nothing else said
_LEAST_SHORT = 3  # letters of a name cut short
_MOST_CANDIDATES = 400  # bearers of one name part weighed for one file
_MOST_SHOWN = 5


@dataclass(slots=True)
class _Text:
    """A name cut up: tokens in order, and every run of up to three of them joined."""

    tokens: tuple[str, ...]
    spans: dict[str, tuple[int, int]]  # folded form → (start, end)


def _read(text: str) -> _Text:
    tokens = cut_camel(text)
    spans: dict[str, tuple[int, int]] = {}
    for size in (3, 2, 1):  # single tokens last, so that they win over equal joins
        for start in range(len(tokens) - size + 1):
            for form in forms("".join(tokens[start : start + size])):
                spans[form] = (start, start + size)
    return _Text(tokens, spans)


class NameIndex:
    """Learners by the parts of their names, the parts run together, and the initials."""

    def __init__(self, learners: Sequence[Learner]) -> None:
        self._learners = learners
        self._parts: list[tuple[str, ...]] = []
        self._weighty: list[frozenset[int]] = []
        self._by_part: dict[str, list[tuple[int, int, int]]] = defaultdict(list)
        self._by_joined: dict[str, list[tuple[int, float, str]]] = defaultdict(list)
        self._by_initials: dict[str, list[int]] = defaultdict(list)
        self._near: dict[str, tuple[tuple[str, int], ...]] = {}
        for index, learner in enumerate(learners):
            self._add(index, learner)
        self._starts: dict[tuple[str, int], set[str]] = defaultdict(set)
        self._ends: dict[tuple[str, int], set[str]] = defaultdict(set)
        whole = [key for key, found in self._by_joined.items() if any(f[1] > SURE for f in found)]
        self._begins: dict[str, list[str]] = defaultdict(list)
        for word in self._by_part:
            if len(word) > _LEAST_SHORT:
                self._begins[word[:_LEAST_SHORT]].append(word)
        for word in [*self._by_part, *whole]:
            if len(word) > 3:
                self._starts[word[:2], len(word)].add(word)
                self._ends[word[-2:], len(word)].add(word)

    def _add(self, index: int, learner: Learner) -> None:
        parts = cut(learner.name)
        folded = tuple(fold(part) for part in parts)
        self._parts.append(folded)
        weighty = [i for i, part in enumerate(folded) if part not in PARTICLES and len(part) > 1]
        self._weighty.append(frozenset(weighty or range(len(folded))))
        for size in (1, 2, 3):
            for start in range(len(parts) - size + 1):
                for form in forms("".join(parts[start : start + size])):
                    self._by_part[form].append((index, start, start + size))
        if len(weighty) < 2:
            return
        first, last = folded[weighty[0]], folded[weighty[-1]]
        rest = "".join(folded[i] for i in weighty[:-1])
        for form in {last + rest, last + first, first + last, "".join(folded)}:
            self._by_joined[form].append((index, 98.0, say("the names written as one word")))
        for form in {first[0] + last, last + first[0], first + last[0], last[0] + first}:
            self._by_joined[form].append(
                (index, 88.0, say("a name and an initial written together"))
            )
        self._by_initials["".join(sorted(folded[i][0] for i in weighty))].append(index)
        if len(weighty) > 2:
            self._by_initials["".join(sorted(first[0] + last[0]))].append(index)

    def _match(self, index: int, score: float, why: str) -> Match:
        return Match(self._learners[index].id, "name", score, why)

    def find(self, text: str) -> list[Match]:
        """Matches by name, none for a text that names nobody."""
        read = _read(text)
        found = self._exact(read)
        if not found or max(match.score for match in found) < CLEAR:
            fuzzy = self._fuzzy(read)
            found = better_of(found, fuzzy)
        elif max(match.score for match in found) <= LONE:
            found = better_of(found, self._shortened(read))
        if not found:
            found = self._initials_only(read)
        return found

    def _exact(self, read: _Text) -> list[Match]:
        hits: dict[int, list[tuple[int, int, int, int, int]]] = defaultdict(list)
        crowd: Counter[int] = Counter()
        listed = [
            (span, self._by_part[form])
            for form, span in read.spans.items()
            if form in self._by_part
        ]
        for _, bearers in listed:
            crowd.update(index for index, _, _ in bearers)
        taken = {index for index, _ in crowd.most_common(_MOST_CANDIDATES)}
        for (start, end), bearers in listed:
            for index, first, last in bearers:
                if index in taken:
                    hits[index].append((start, end, first, last, 0))
        found = [self._weigh(read, index, spans) for index, spans in hits.items()]
        return better_of([m for m in found if m], self._one_word(read))

    def _shortened(self, read: _Text) -> list[Match]:
        """Whose name may have been cut short: “brandt” is Brandt's, and may be Brandtner's."""
        found = []
        for form in read.spans:
            if form not in self._by_part:
                continue
            for longer in self._begins.get(form[:_LEAST_SHORT], ()):
                if longer == form or not longer.startswith(form):
                    continue
                for index, _, _ in self._by_part[longer]:
                    name = self._learners[index].name
                    why = say(
                        "“{form}” may be short for “{longer}” ({name})",
                        form=form,
                        longer=longer,
                        name=name,
                    )
                    found.append(self._match(index, LONE - 8.0, why))
        return found

    def _one_word(self, read: _Text) -> list[Match]:
        """``jamesokafor``, ``okaforj``: names run together."""
        found = []
        for form, (start, end) in read.spans.items():
            for index, score, why in self._by_joined.get(form, ()):
                if len(form) < 4:
                    continue
                beside = [t for i, t in enumerate(read.tokens) if not start <= i < end]
                score = score - self._beside(beside, full=score > 90)
                name = self._learners[index].name
                told = say("“{form}” is {name}: {why}", form=form, name=name, why=why)
                found.append(self._match(index, score, told))
        return found

    def _fuzzy(self, read: _Text) -> list[Match]:
        hits: dict[int, list[tuple[int, int, int, int, int]]] = defaultdict(list)
        joined: list[Match] = []
        for form, (start, end) in read.spans.items():
            exact = self._by_part.get(form, ())
            for index, first, last in exact:
                hits[index].append((start, end, first, last, 0))
            if exact or len(form) < 4 or form.isdigit() or is_known_word(form):
                continue
            for near, edits in self._nearest(form):
                for index, first, last in self._by_part.get(near, ()):
                    hits[index].append((start, end, first, last, edits))
                if near in self._by_joined and len(near) > 6:
                    for index, score, _ in self._by_joined[near]:
                        if score < SURE:
                            continue
                        beside = [t for i, t in enumerate(read.tokens) if not start <= i < end]
                        score = score - 4.0 * edits - self._beside(beside, full=score > 90)
                        name = self._learners[index].name
                        why = say(
                            "“{form}” is nearly “{near}” ({name})", form=form, near=near, name=name
                        )
                        joined.append(self._match(index, score, why))
        crowd = Counter({index: len(spans) for index, spans in hits.items()})
        found = [self._weigh(read, i, hits[i]) for i, _ in crowd.most_common(_MOST_CANDIDATES)]
        return better_of([m for m in found if m], joined)

    def _nearest(self, form: str) -> tuple[tuple[str, int], ...]:
        """Parts of names within one misplaced letter, two for parts of seven letters or more."""
        known = self._near.get(form)
        if known is None:
            most = 2 if len(form) > 6 else 1
            # One wrong letter spares the first two or the last two, so that only words that
            # share them are compared: the cost stays far below class size times files. (Of
            # two wrong letters, one at either end goes unseen and is left to the teacher.)
            # Nor can words be near whose lengths differ by more letters than may be wrong.
            words: set[str] = set()
            for size in range(len(form) - most, len(form) + most + 1):
                words |= self._starts.get((form[:2], size), set())
                words |= self._ends.get((form[-2:], size), set())
            near = process.extract(form, words, scorer=OSA.distance, score_cutoff=most, limit=None)
            pairs = {(word, int(edits)) for word, edits, _ in near}
            known = tuple(sorted(p for p in pairs if p[1] < 2 or len(p[0]) > 6))
            self._near[form] = known
        return known

    def _weigh(
        self, read: _Text, index: int, hits: list[tuple[int, int, int, int, int]]
    ) -> Match | None:
        """Score one learner: which parts of the name stand in the text, and what else does."""
        used: set[int] = set()
        covered: set[int] = set()
        seen: list[str] = []
        edits = 0
        # Fewest misspellings first, then the longest stretch of the name.
        for start, end, first, last, wrong in sorted(
            hits, key=lambda h: (h[4], h[2] - h[3], h[1] - h[0], h[0], h[2])
        ):
            places, part = set(range(start, end)), set(range(first, last))
            if places & used or part & covered:
                continue
            used |= places
            covered |= part
            edits += wrong
            seen.append(" ".join(read.tokens[start:end]))
        weighty = self._weighty[index]
        got = len(covered & weighty)
        if not got:
            return None
        parts = self._parts[index]
        # "Edeltraud O", where the list itself gives no more than an initial.
        named = {i for i, p in enumerate(parts) if p not in PARTICLES or i == len(parts) - 1}
        whole = len(named) > 1 and named <= covered
        initials = []
        for place, token in enumerate(read.tokens):
            if place in used or len(token) != 1:
                continue
            for open_part in sorted(weighty - covered):
                if parts[open_part][0] == fold(token)[:1]:
                    initials.append(token.upper())
                    covered.add(open_part)
                    used.add(place)
                    break
        missing = len(weighty) - got - len(initials)
        beside = [token for place, token in enumerate(read.tokens) if place not in used]
        full = got + len(initials) == len(weighty) or got >= 2
        cost = 4.0 * edits + self._beside(beside, full=whole or (full and len(weighty) > 1))
        if whole:
            score = 100.0
        elif got == len(weighty):
            score = 100.0 if got > 1 else 92.0
            if got == 1 and all(is_known_word(fold(word)) for word in seen):
                score = 60.0  # a learner called Bob, and a photo of the bob
            if got == 1 and len(self._bearers(parts, covered)) > 1:
                score = 60.0
        elif got >= 2:
            score = 94.0 - 2.0 * missing if missing < 3 else 88.0
            score = 95.0 if not missing else score
        elif initials:
            score = 88.0
        else:
            shared = len(self._bearers(parts, covered))
            said_more = any(
                not is_known_word(fold(t)) and len(t) > 1 for t in beside if t.isalpha()
            )
            vague = all(is_known_word(fold(word)) or len(word) < 3 for word in seen)
            score = 60.0 if shared > 1 or said_more or vague else LONE
            cost = min(cost, 20.0)
        why = _reason(self._learners[index].name, seen, initials, edits, missing)
        return self._match(index, max(score - cost, 0.0), why)

    def _bearers(self, parts: tuple[str, ...], covered: Iterable[int]) -> set[int]:
        bearers: set[int] = set()
        for place in covered:
            bearers |= {index for index, _, _ in self._by_part.get(parts[place], ())}
        return bearers

    def _beside(self, tokens: Sequence[str], *, full: bool) -> float:
        """The cost of names beside the match: another learner's weigh more than a stranger's."""
        cost = 0.0
        for token in tokens:
            form = fold(token)
            if len(form) < 3 or form.isdigit() or form in PARTICLES or is_known_word(form):
                continue
            cost += (10.0 if form in self._by_part else 3.0) if full else 6.0
        return min(cost, 18.0)

    def _initials_only(self, read: _Text) -> list[Match]:
        """Initials stand alone or beside words of the work: “notes to self” is nobody's."""
        strange = [t for t in read.tokens if len(t) > 4 or (len(t) > 3 and t.islower())]
        if any(not is_known_word(fold(t)) and not t.isdigit() for t in strange):
            return []
        for token in read.tokens:
            if 2 <= len(token) <= 4 and not is_known_word(fold(token)):
                bearers = self._by_initials.get("".join(sorted(fold(token))), [])
                if bearers:
                    return [
                        self._match(
                            index, 50.0, say(
                                "only the initials “{token}” of {name}",
                                token=token, name=self._learners[index].name,
                            ),
                        )
                        for index in bearers[:_MOST_SHOWN]
                    ]  # fmt: skip
        return []


def _reason(name: str, seen: list[str], initials: list[str], edits: int, missing: int) -> str:
    words = " and ".join(f"“{word}”" for word in seen)
    text = f"{words} as in {name}"
    if initials:
        text += f", with the initial{'s' if len(initials) > 1 else ''} {', '.join(initials)}"
    if edits:
        text += f", {edits} letter{'s' if edits > 1 else ''} different"
    if missing:
        text += f", {missing} part{'s' if missing > 1 else ''} of the name not written"
    return text


def better_of(first: Iterable[Match], second: Iterable[Match]) -> list[Match]:
    """For each learner the better of two matches."""
    best: dict[str, Match] = {}
    for match in [*first, *second]:
        if match.learner not in best or best[match.learner].score < match.score:
            best[match.learner] = match
    return list(best.values())
