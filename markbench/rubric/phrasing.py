"""Phrases with places for the learner's own numbers.

A phrase is used whole or not at all: where one of its places cannot be filled, it falls
away. Alternates are phrases of one role that stand next to each other under the same
condition; which of them a learner gets depends on that learner's data hash, so that a
class does not read like copies, and the same work always reads the same.
"""

from __future__ import annotations

import string
import zlib
from dataclasses import dataclass
from functools import lru_cache
from itertools import groupby

from markbench.model import Phrase, say
from markbench.model.sentence import sentence_case
from markbench.rubric.condition import Condition, condition, nearest
from markbench.rubric.facts import PLACEHOLDERS, Facts
from markbench.rubric.unreadable import why_sentence


class TemplateError(ValueError):
    """A phrase that cannot be used; ``problems`` holds a sentence for each reason."""

    def __init__(self, problems: list[str]) -> None:
        super().__init__("; ".join(problems))
        self.problems = tuple(problems)


@dataclass(frozen=True, slots=True)
class Template:
    """A phrase taken apart: text and fact by turns. ``names`` are the facts it quotes;
    ``piece`` is the sentence as it begins, its places still in braces."""

    parts: tuple[tuple[str, str], ...]
    names: tuple[str, ...]
    piece: str = ""

    def fill(self, facts: Facts) -> str | None:
        """The sentence with this learner's numbers; ``None`` where one is not known."""
        pieces: list[str] = []
        for text, name in self.parts:
            pieces.append(text)
            if name:
                shown = facts.show(name)
                if shown is None:
                    return None
                pieces.append(shown)
        return sentence_case("".join(pieces))


@lru_cache(maxsize=4096)
def template(text: str) -> Template:
    """Take a phrase apart, once for each text.

    Raises :class:`TemplateError` with everything that is wrong with it.
    """
    try:
        fields = list(string.Formatter().parse(text))
    except ValueError:
        raise TemplateError([why_sentence(text)]) from None
    parts, problems, piece = [], [], ""
    for words, field, spec, conversion in fields:
        piece += words if field is None else f"{words}{{{field}}}"
        if field is None:
            parts.append((words, ""))
        elif field not in PLACEHOLDERS:
            problems.append(
                nearest(
                    say("there is no placeholder “{name}”", name=f"{{{field}}}"),
                    field,
                    PLACEHOLDERS,
                )
            )
        elif spec or conversion:
            problems.append(
                say(
                    "“{name}” brings its own format; write it without “:” or “!”",
                    name=f"{{{field}}}",
                )
            )
        else:
            parts.append((words, PLACEHOLDERS[field].name))
    if problems:
        raise TemplateError(problems)
    names = tuple(name for _, name in parts if name)
    return Template(tuple(parts), names, sentence_case(piece))


@dataclass(frozen=True, slots=True)
class Alternates:
    """Ways of saying one thing under one condition. ``salt`` sets them apart from others."""

    when: Condition
    forms: tuple[Template, ...]
    salt: int

    def choose(self, facts: Facts) -> tuple[str, Template] | None:
        """The learner's own choice among those whose places can all be filled, filled."""
        # Salted, so that one learner is not given "the second" everywhere; the upper half of
        # the product depends on all bits of the hash.
        start = (facts.data_hash * self.salt >> 16) % len(self.forms)
        for form in (*self.forms[start:], *self.forms[:start]):
            sentence = form.fill(facts)
            if sentence is not None:
                return sentence, form
        return None


def alternates(phrases: tuple[Phrase, ...], role: str) -> tuple[Alternates, ...]:
    """Phrases of one role gathered by condition, in the rubric's order."""
    of_role = (phrase for phrase in phrases if phrase.role == role)
    found = []
    for when, group in groupby(of_role, key=lambda phrase: phrase.when):
        texts = [phrase.text for phrase in group]
        salt = zlib.crc32(texts[0].encode()) | 1
        found.append(Alternates(condition(when), tuple(map(template, texts)), salt))
    return tuple(found)
