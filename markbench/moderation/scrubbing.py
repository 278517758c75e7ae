"""Taking the learners' names out of texts, without tearing words apart that are no names.

A whole name goes wherever it stands, in any case, and so do the parts of it of three
letters or more and ids that have a letter or five characters (a shorter number names
nobody, and is a reading). But some names are words of the trade or of the language: Mark,
Will, Grace, and Bob, who is what swings. Such a part is taken for the name only where it is
written like one:

- with a capital within a sentence, or with ’s behind it, or in the name of a file;
- at the start of a sentence where a verb of telling follows (“Mark left two out”).

In lower case, or before another word at the start of a sentence (“Mark the axes”), it stays.
Those that stay with a capital are doubtful, and are named to whoever packs. A part is such a
word if it is on the list below or stands in lower case in the texts given as ``spoken``,
which are the program's and the rubric's own.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from typing import Any

from markbench.model import Learner

OTHER = "another learner"

# Given and family names that are English words; common knowledge, no source.
_WORD_LIST = """
    april art august bell best bill bishop black blue bob bond bridge bright brook brown bush
    case chance chase church clay cliff close cook cross dale dawn day dean drew earl early
    east faith field fields fisher ford forest fox frank frost gold good grace grant gray
    green grey guy hall hand hands hardy hazel heather hill holly hook hope hunt iris iron
    ivory ivy joy judge june just justice keen key king lake lamb lane large lark law leaf
    light line little long love low major mark marks mason max may mead mean mercy miles
    mill minor mint moon moss noble north oak olive page park patience pearl penny pepper
    pierce pike pink pitch place plumb point pole pope porter post price pride prince rain
    ray read reed rich ring river rivers rock rod rose ruby sage sand savage scarlet setting
    sharp shepherd short silver singer skip sky small smart snow south sparks spring star
    steel stone storm strange street string strong summer swan swift swing tab tailor temple
    thread tide tiger timber time true union vale van victory violet wade wall walls ward
    waters weight wells west white wild will willow wills winter wise wolf wood woods work
    worth young"""
_TELLING_LIST = """and asked did does found gave got had handed has is left measured said says seems
    sent showed shows told took tried used uses was went worked wrote"""
_WORDS, _TELLING = frozenset(_WORD_LIST.split()), frozenset(_TELLING_LIST.split())
_SENTENCE_ENDS = re.compile(r"(?:^|[.!?:;…]|[\n\r])[\s\"“”‘'(\[–—-]*$")
_NEXT_WORD = re.compile(r"\s+([^\W\d_]+)")
_POSSESSIVE = re.compile(r"['’]s\b")


@dataclass(frozen=True, slots=True)
class Scrubber:
    """Takes names and ids of learners out of texts. Build with :meth:`of`."""

    pattern: re.Pattern[str] | None
    stands_for: Mapping[str, str] = field(repr=False)
    words: frozenset[str] = frozenset()

    @classmethod
    def of(
        cls, learners: Iterable[Learner], numbers: Mapping[str, str], spoken: str = ""
    ) -> Scrubber:
        """A scrubber for a class; ``numbers``: learner id → number in the pack."""
        found: dict[str, set[str]] = {}
        parts_of_names: set[str] = set()
        for learner in learners:
            parts = re.findall(r"[^\W\d_]{3,}", learner.name)
            whole = learner.name.strip().casefold()
            parts_of_names |= {part.casefold() for part in parts}
            named = [learner.name, *parts]
            if len(learner.id) >= 5 or re.search(r"[^\W\d_]", learner.id):
                named.append(learner.id)
            for part in filter(None, (p.strip().casefold() for p in named)):
                found.setdefault(part, set()).add(numbers.get(learner.id, ""))
            if " " not in whole:
                parts_of_names.add(whole)
        stands_for = {
            part: f"learner {one}" if len(who) == 1 and (one := next(iter(who))) else OTHER
            for part, who in found.items()
        }
        if not stands_for:
            return cls(None, {})
        said = set(re.findall(r"(?<![^\W_])[^\W\d_A-Z][^\W\d_]*", spoken))
        words = frozenset(part for part in parts_of_names if part in _WORDS or part in said)
        longest_first = sorted(stands_for, key=len, reverse=True)
        together = "|".join(re.escape(part) for part in longest_first)
        # Letters and digits end a name; an underscore or a dot, as in file names, does not.
        pattern = re.compile(rf"(?<![^\W_])(?:{together})(?![^\W_])", re.IGNORECASE)
        return cls(pattern, stands_for, words)

    def text(self, text: str) -> str:
        """The text without names."""
        if self.pattern is None:
            return text
        return self.pattern.sub(
            lambda m: self.stands_for.get(m[0].casefold(), OTHER) if self._names(m) else m[0], text
        )

    def doubts(self, text: str) -> tuple[str, ...]:
        """Words with a capital that may be a name and were left, each with what follows it."""
        if self.pattern is None:
            return ()
        return tuple(
            text[m.start() : m.end() + 24].split("\n")[0].strip()
            for m in self.pattern.finditer(text)
            if m[0][0].isupper() and not self._names(m)
        )

    def finds(self, text: str) -> bool:
        """Whether a text names a learner."""
        return self.pattern is not None and any(map(self._names, self.pattern.finditer(text)))

    def tree(self, value: Any) -> Any:
        """Every text in a tree of plain JSON without names; keys stay."""
        if isinstance(value, str):
            return self.text(value)
        if isinstance(value, dict):
            return {key: self.tree(inner) for key, inner in value.items()}
        if isinstance(value, list):
            return [self.tree(inner) for inner in value]
        return value

    def _names(self, found: re.Match[str]) -> bool:
        """Whether what was found is meant as a name."""
        word, text = found[0], found.string
        if word.casefold() not in self.words:
            return True
        if not word[0].isupper():
            return False
        start, end = found.span()
        if "_" in (text[end : end + 1], text[start - 1 : start]):  # as in the name of a file
            return True
        if _POSSESSIVE.match(text, end) or not _SENTENCE_ENDS.search(text[:start]):
            return True
        after = _NEXT_WORD.match(text, end)
        follows = after[1] if after is not None else ""
        return follows in _TELLING or follows.endswith("ed")
