"""Sentences that can still be said in another language.

What the core says is English text, and stays a ``str`` to whoever exports, prints, compares
or keeps it. A :class:`Sentence` remembers besides which form it was made from and with what
values, so that a window in another language can say the same anew. Only the window knows
languages; ``python -m markbench.ui.languages.refresh`` collects the forms.

Keys into a table of wordings were the other way: then no place in the code could be read
without the table, and a text that reached a file would first have to be looked up.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable, Mapping
from typing import Any, Self


class Figures(str):
    """A number as it is written, with its unit: its decimal mark is the language's to choose."""

    __slots__ = ()

    def __str__(self) -> Self:
        return self


class Sentence(str):
    """``form`` with its places filled by ``values``.

    Values are numbers, dates, names as they stand, or further sentences and figures.
    ``capital``: begins with a capital letter, whatever the first value is.
    """

    __slots__ = ("capital", "form", "values")
    form: str
    values: Mapping[str, Any]
    capital: bool

    def __new__(cls, form: str, values: Mapping[str, Any], capital: bool = False) -> Self:
        """The sentence in English."""
        text = form.format(**values)
        made = super().__new__(cls, sentence_case(text) if capital else text)
        made.form, made.values, made.capital = form, values, capital
        return made

    def __str__(self) -> Self:
        return self

    def __reduce__(self) -> tuple[Any, ...]:
        return Sentence, (self.form, self.values, self.capital)


def say(form: str, /, **values: Any) -> Sentence:
    """A sentence, or a part of one. ``form`` stands in the call itself, to be found there;
    one that comes out of a table is found by ``refresh`` because the table is listed there.
    """
    return Sentence(form, values)


def joined(parts: Iterable[str], between: str = " ") -> str:
    """Parts in a row, each still to be said in another language; empty ones fall away."""
    kept = [part for part in parts if part]
    if len(kept) < 2:
        return kept[0] if kept else ""
    places = {f"part{number}": part for number, part in enumerate(kept)}
    return Sentence(between.join(f"{{{place}}}" for place in places), places)


def opening(text: str) -> str:
    """``text`` as the beginning of a sentence, with a capital letter."""
    if isinstance(text, Sentence):
        return Sentence(text.form, text.values, capital=True)
    return sentence_case(text)


def sentence_case(words: str) -> str:
    """A capital to begin with, unless it begins with the symbol g, which is never one."""
    return words if words.startswith("g ") else words[:1].upper() + words[1:]


def known_again(text: str, forms: Iterable[str]) -> str:
    """A sentence that a file has kept as plain text, by its form; ``text`` where it has none.

    Each place of these forms stands by itself, without a format.
    """
    for form in forms:
        pattern = re.sub(r"\\{(\w+)\\}", r"(?P<\1>.+)", re.escape(form))
        if kept := re.fullmatch(pattern, text):
            return Sentence(
                form, {name: Figures(value) for name, value in kept.groupdict().items()}
            )
    return text


def reworded(text: str, change: Callable[[str], str]) -> str:
    """``text`` with ``change`` made to every name in it, its own words left as they are."""
    if isinstance(text, Figures):
        return text
    if not isinstance(text, Sentence):
        return change(text)
    values = {
        name: reworded(value, change) if isinstance(value, str) else value
        for name, value in text.values.items()
    }
    return Sentence(text.form, values, text.capital)
