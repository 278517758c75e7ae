"""How long a text is and how hard it reads.

The automated readability index counts characters, words and sentences and needs no guess at
syllables, so the same text always gives the same number. It was fitted to English prose; for
other languages only the length is told.

References: Smith, E. A., & Senter, R. J. (1967). Automated Readability Index. AMRL-TR-66-220,
Wright-Patterson Air Force Base.
"""

from __future__ import annotations

import re
from dataclasses import dataclass

FORMULA = "Automated readability index (Smith and Senter, 1967)"
"""What the level is called where it is shown."""

LEAST_WORDS = 12
"""Shorter texts give a number that jumps with every word (own choice)."""

_SENTENCE_END = re.compile(r"[.!?…]+(?=[\s”’\"')]|$)")
_WORD = re.compile(r"\S*[^\W_]\S*")  # whatever stands between spaces and holds a letter or digit


@dataclass(frozen=True, slots=True)
class ReadingLevel:
    """``grade``: school years a reader needs, counted from 1; ``None`` where it cannot be told."""

    characters: int
    words: int
    sentences: int
    grade: float | None

    @property
    def age(self) -> float | None:
        """About the age that goes with the grade: five years more (common practice)."""
        return None if self.grade is None else max(self.grade, 0.0) + 5.0


def reading_level(text: str, language: str = "en") -> ReadingLevel:
    """Length and reading level of a text."""
    words = _WORD.findall(text)
    strokes = sum(letter.isalnum() for letter in text)
    sentences = len(_SENTENCE_END.findall(text.strip()))
    if words and not _SENTENCE_END.search(text.strip()[-2:]):
        sentences += 1
    grade = None
    if len(words) >= LEAST_WORDS and language.split("-")[0].split("_")[0] == "en":
        grade = 4.71 * strokes / len(words) + 0.5 * len(words) / sentences - 21.43
    return ReadingLevel(len(text.strip()), len(words), sentences, grade)
