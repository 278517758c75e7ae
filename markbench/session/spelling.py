"""Which words of a text to a learner are worth a second look, and what may have been meant.

Words come from pyspellchecker's lists (MIT), for English with the British words of SCOWL
beside them, since the list alone knows only “color”. Nearness is rapidfuzz's, over the whole
list. German builds words from words, so one made of two or three known ones is no mistake.
The lists hold small letters: a German noun begun small is not noticed.

Rejected: Hunspell dictionaries. The German one may not be shipped with a program like this
one, and what a system has differs from machine to machine.
"""

from __future__ import annotations

import contextlib
import gzip
import re
from collections.abc import Iterator
from pathlib import Path

from platformdirs import user_data_path
from rapidfuzz import process
from rapidfuzz.distance import OSA

_WORDS = Path(__file__).with_name("words")
_WORD = re.compile(r"[^\W\d_]+(?:['’][^\W\d_]+)*")
_SHORTEST = 3  # shorter ones are symbols as often as words (own choice)
_SHORTEST_PART = 4  # of a compound: with shorter parts nearly anything can be put together
_JOINTS = ("", "s", "n", "en", "es")  # what German puts between the parts
_FURTHEST = 2  # letters by which a suggestion may differ (own choice)


def words_in(text: str) -> Iterator[tuple[int, str]]:
    """Words of a text with their places; symbols, numbers and units are none."""
    for found in _WORD.finditer(text):
        start, word = found.start(), found.group()
        before = text[start - 1 : start]
        if len(word) >= _SHORTEST and not word.isupper() and before not in ("{", "_", "@"):
            if before.isdigit():
                continue
            yield start, word


class OwnWords:
    """The teacher's own words in one language, a line each in a file of her own.

    It lies in the user's data folder and holds nothing but the words she added.
    """

    def __init__(self, language: str) -> None:
        self.language = language
        self.path = user_data_path("markbench", appauthor=False) / f"words-{language}.txt"
        self.words = self._read()

    def add(self, word: str) -> None:
        """Know a word from now on; a file that cannot be written only forgets it again."""
        self._keep(self._read() | {_plain(word)})

    def drop(self, word: str) -> None:
        """Know it no more."""
        self._keep(self._read() - {_plain(word)})

    def _read(self) -> frozenset[str]:
        """Read anew before each change: another window may have written."""
        try:
            lines = self.path.read_text("utf-8").splitlines()
        except FileNotFoundError:
            return frozenset()
        except (OSError, UnicodeDecodeError):
            return getattr(self, "words", frozenset())
        return frozenset(line.strip().lower() for line in lines if line.strip())

    def _keep(self, words: frozenset[str]) -> None:
        self.words = words
        with contextlib.suppress(OSError):
            self.path.parent.mkdir(parents=True, exist_ok=True)
            self.path.write_text("".join(f"{word}\n" for word in sorted(words)), "utf-8")


class Spelling:
    """The words of one language. Build with :meth:`load`; that takes about a second."""

    def __init__(self, language: str, words: frozenset[str], own: OwnWords) -> None:
        self.language = language
        self._words, self._own = words, own
        self._list: list[str] = []
        self._listed: frozenset[str] | None = None

    @classmethod
    def load(cls, language: str, own: OwnWords) -> Spelling | None:
        """Read the lists of a language; ``None`` where there is none."""
        # Imported late: nobody waits for it while the window comes up.
        from spellchecker import SpellChecker

        try:
            found = set(SpellChecker(language=language).word_frequency.dictionary)
        except ValueError:
            return None
        if language == "en":
            british = gzip.decompress((_WORDS / "british.txt.gz").read_bytes())
            found.update(british.decode().split())
        physics = _WORDS / f"physics_{language}.txt"
        if physics.is_file():
            found.update(physics.read_text("utf-8").split())
        return cls(language, frozenset(found), own)

    def knows(self, word: str) -> bool:
        """Whether a word is a word of the language, or one of her own."""
        plain = _plain(word)
        return self._is_word(plain) or (self.language == "de" and self._is_built(plain))

    def wrong(self, text: str, known: frozenset[str] = frozenset()) -> frozenset[str]:
        """The words of a text that are not known; ``known`` are names and other small words."""
        return frozenset(
            word
            for _, word in words_in(text)
            if not (parts := set(_plain(word).split("'"))) <= known
            and not self.knows(word)
            and not (len(parts) == 2 and "s" in parts and parts - {"s"} <= known)  # Aino's
        )

    def suggest(self, word: str, most: int = 5) -> tuple[str, ...]:
        """Words that may have been meant, nearest first, begun as the word is."""
        if self._listed is not self._own.words:
            self._listed = self._own.words
            self._list = sorted(self._words | self._listed)
        plain = _plain(word)
        near = process.extract(
            plain, self._list, scorer=OSA.distance, score_cutoff=_FURTHEST, limit=40
        )
        # Of equals, those that begin alike and keep the letters: hands swap and drop letters.
        near.sort(key=lambda one: (
            one[1], one[0][:1] != plain[:1], set(one[0]) != set(plain), len(one[0]), one[0]
        ))  # fmt: skip
        begun = word[:1].isupper()
        words = (one[0] for one in near if not one[0].endswith("'s"))
        return tuple((w[:1].upper() + w[1:]) if begun else w for w in words)[:most]

    def _is_word(self, plain: str) -> bool:
        return plain in self._words or plain in self._own.words or (
            plain.endswith("'s") and plain[:-2] in self._words
        )  # fmt: skip

    def _is_built(self, plain: str, parts: int = 3) -> bool:
        for cut in range(_SHORTEST_PART, len(plain) - _SHORTEST_PART + 1):
            head, tail = plain[:cut], plain[cut:]
            if not any(head.removesuffix(j) in self._words for j in _JOINTS if head.endswith(j)):
                continue
            if tail in self._words or (parts > 2 and self._is_built(tail, parts - 1)):
                return True
        return False


def _plain(word: str) -> str:
    return word.replace("’", "'").lower()
