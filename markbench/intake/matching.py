"""Whose is this? Match file names, folder names and rows to the class list, with reasons.

A wrong match gives one learner another's marks, so a match is *clear* only when it is good
enough by itself and no other learner is near; everything else is left to the teacher with
the candidates ranked. Scores run from 0 to 100:

====  =======================================================================
 100  the whole id, or every part of the name in any order
  92  a name of three or more parts with at least two of them; a one-part name
  88  one part of the name and the initial of another (``J. Okafor``, ``jokafor``)
  84  one part only, that nobody else in the class bears, and nothing else said
  76  the beginning of a part, beside somebody whose whole part it is
  70  a number that equals an id but may count something else (``photo 7``)
  60  one part only, borne by several or beside an unknown name
  50  initials only
====  =======================================================================

A misspelt part costs 4 for each letter, a further name beside the match 3 to 10. The
figures order the cases and are common sense, no source; ``tests/intake/test_matching.py``
holds the cases they were chosen for.

Exact look-ups by id and by token settle nearly everything in constant time; only what they
leave is compared letter by letter (rapidfuzz) with the class's vocabulary.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Sequence
from dataclasses import dataclass, replace

from markbench.intake.name_index import CLEAR, SURE, NameIndex, better_of
from markbench.intake.names import cut, cut_camel, fold, without_devices
from markbench.model import Learner, Match, joined, say

__all__ = ["CLEAR", "MARGIN", "NOBODY", "SURE", "Judgement", "Matcher", "better_of"]

MARGIN = 9.0  # nor one with another candidate this near
_MOST_SHOWN = 5


@dataclass(frozen=True, slots=True)
class Judgement:
    """Candidates best first; ``clear`` if the first may be taken. No candidates: nobody."""

    candidates: tuple[Match, ...] = ()
    clear: bool = False
    why: str = ""

    @property
    def best(self) -> Match:
        """The first candidate."""
        return self.candidates[0]


NOBODY = Judgement()


def _id_form(text: str) -> str:
    return "".join(fold(piece) for piece in cut(text))


class Matcher:
    """Looks learners up by id and by name."""

    def __init__(self, learners: Sequence[Learner]) -> None:
        self._learners = tuple(learners)
        self._ids: dict[str, list[int]] = defaultdict(list)
        self._bare_ids: dict[str, list[int]] = defaultdict(list)
        self._seen: dict[str, Judgement] = {}
        self._folder: tuple[Judgement, Judgement] | None = None  # the last, and as passed on
        self._names = NameIndex(self._learners)
        for index, learner in enumerate(self._learners):
            self._add(index, learner)

    def _add(self, index: int, learner: Learner) -> None:
        form = _id_form(learner.id)
        same = form == _id_form(learner.name) and not any(map(str.isdigit, form))
        if form and not same:  # in a list without ids the name serves as one
            self._ids[form].append(index)
            if form.isdigit():
                self._bare_ids[form.lstrip("0") or "0"].append(index)

    # -- one text --------------------------------------------------------------------

    def judge(self, text: str) -> Judgement:
        """Whom a file or folder name (without its ending) speaks of."""
        known = self._seen.get(text)
        if known is None:
            known = self._seen[text] = self._judge(text)
        return known

    def by_folder(self, judgement: Judgement) -> Judgement:
        """The same judgement as a folder passes it on to the files in it."""
        last = self._folder
        if last is None or last[0] is not judgement:
            why = say("by its folder: {why}", why=judgement.best.why)
            best = replace(judgement.best, by="folder", why=why)
            passed = replace(judgement, candidates=(best, *judgement.candidates[1:]))
            last = self._folder = (judgement, passed)
        return last[1]

    def judge_row(self, id_text: str, name_text: str) -> Judgement:
        """Whom a row of a class sheet speaks of: its id, its name, or both agreeing."""
        by_id = self._whole_id(id_text)
        by_name = self._names.find(name_text) if name_text.strip() else []
        if not by_id and not by_name and id_text.strip():
            return self.judge(id_text)
        return self._settle(f"{id_text} {name_text}".strip(), by_id, by_name)

    def _judge(self, text: str) -> Judgement:
        whole = self._whole_id(text)
        if whole:
            return self._settle(text, whole, [])
        clean = without_devices(text)
        return self._settle(text, self._ids_within(clean), self._names.find(clean))

    def _settle(self, text: str, by_id: list[Match], by_name: list[Match]) -> Judgement:
        merged: dict[str, Match] = {}
        agreed: set[str] = set()  # id and name say the same: namesakes are no rivals then
        for match in [*by_id, *by_name]:
            other = merged.get(match.learner)
            if other is None:
                merged[match.learner] = match
            else:
                why = joined((other.why, match.why), "; ")
                score = min(100.0, max(other.score, match.score) + 10.0)
                if min(other.score, match.score) >= CLEAR:
                    agreed.add(match.learner)
                merged[match.learner] = replace(other, score=score, why=why)
        order = sorted(
            merged.values(), key=lambda m: (m.learner not in agreed, -m.score, m.learner)
        )
        ranked = tuple(order)[:_MOST_SHOWN]
        if not ranked:
            return NOBODY
        best = ranked[0]
        if best.score < CLEAR:
            why = say("“{text}” is too little to go by: {why}", text=text, why=best.why)
            return Judgement(ranked, False, why)
        near = [m for m in ranked[1:] if m.score > best.score - MARGIN]
        if best.learner in agreed:
            near = [m for m in near if m.learner in agreed or m.by == "id"]
        if near:
            why = say("“{text}” fits {n} learners about as well", text=text, n=len(near) + 1)
            return Judgement(ranked, False, why)
        return Judgement(ranked, True)

    # -- by id -----------------------------------------------------------------------

    def _match(self, index: int, score: float, why: str) -> Match:
        return Match(self._learners[index].id, "id", score, why)

    def _whole_id(self, text: str) -> list[Match]:
        form = _id_form(text)
        if not form:
            return []
        why = say("“{text}” is the id", text=text.strip())
        found = [self._match(i, 100.0, why) for i in self._ids.get(form, ())]
        if not found and form.isdigit():  # spreadsheets drop leading zeros
            found = [
                self._match(
                    i,
                    96.0,
                    say(
                        "“{text}” is the id {id} but for zeros",
                        text=text.strip(),
                        id=self._learners[i].id,
                    ),
                )
                for i in self._bare_ids.get(form.lstrip("0") or "0", ())
            ]
        return found

    def _ids_within(self, text: str) -> list[Match]:
        found: dict[int, Match] = {}
        for tokens, whole_runs in ((cut(text), True), (cut_camel(text), False)):
            folded = [fold(token) for token in tokens]
            for start in range(len(folded)):
                for end in range(start + 1, min(start + 4, len(folded)) + 1):
                    form = "".join(folded[start:end])
                    score = _id_score(form, folded, start, whole_runs)
                    bearers = self._ids.get(form, ())
                    if not bearers and form.isdigit() and len(form) > 1:
                        # Spreadsheets drop leading zeros: 12 for 0012, a little less sure.
                        bearers = self._bare_ids.get(form.lstrip("0") or "0", ())
                        score = min(score, 84.0) if start == 0 else 70.0
                    for index in bearers:
                        if index not in found or found[index].score < score:
                            raw = self._learners[index].id
                            why = say("the id “{id}” stands in “{text}”", id=raw, text=text.strip())
                            found[index] = self._match(index, score, why)
        return list(found.values())


def _id_score(form: str, tokens: list[str], start: int, whole_run: bool) -> float:
    """How far a number or code in a name can be trusted to be the id."""
    if not form.isdigit():
        return 98.0
    if not whole_run:  # "okafor12", "G12": letters run into it
        return 70.0
    if len(form) > 2:
        return 97.0
    before = tokens[start - 1] if start else ""
    if before in {
        "photo",
        "foto",
        "video",
        "image",
        "scan",
        "page",
        "part",
        "pic",
        "picture",
        "no",
    }:
        return 70.0
    if start == 0 or form.startswith("0"):
        return 90.0
    return 84.0 if len(form) == 2 else 70.0
