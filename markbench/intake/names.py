"""Names and ids as they turn up in files: folded, cut into tokens, freed of everything else.

Folding makes one spelling of many (case, accents, letters that no decomposition reaches);
a token keeps up to two forms, because an umlaut is written both ``Muller`` and ``Mueller``.
What describes the piece rather than the person (``readings``, ``photo``, ``final``) comes
from an editable word list, ``words.toml``.
"""

from __future__ import annotations

import re
import tomllib
import unicodedata
from functools import cache, lru_cache
from importlib import resources
from typing import Any

# Letters that NFKD leaves whole, first as they are commonly simplified, then as spelt out.
_SIMPLE = str.maketrans(
    {
        "ß": "ss", "ẞ": "ss", "ø": "o", "ł": "l", "đ": "d", "ð": "d", "þ": "th", "æ": "ae",
        "œ": "oe", "ħ": "h", "ı": "i", "ŋ": "n", "ŧ": "t", "ə": "e", "’": "'", "‘": "'",
        "ʼ": "'", "`": "'", "´": "'", "ʻ": "'",
    }
)  # fmt: skip
_SPELT = str.maketrans({"ä": "ae", "ö": "oe", "ü": "ue", "ø": "oe", "å": "aa"})

# What a camera or a messenger names a file: the number in it is no id.
_DEVICE = re.compile(
    r"(?i)(?<![^\W_])(?:img|image|dscn|dscf|dsc|pxl|vid|mvi|mov|gopr|dcim|wa|screen ?shot|scan"
    r"|whatsapp (?:image|video)|photo|video|foto|bilde?|imagen|immagine|imagem|gambar"
    r"|afbeelding|zdj[eę]cie|bildschirmfoto|fullsizerender|rpreplay[-_ ]final|signal|telegram)"
    r"[-_ ]*(?:\d[\d\-_. ]*\d|\d)(?:[-_ ]?wa\d+)?"
)
# When a picture was taken or sent, as telephones and messengers write it: a day, a time of day
# or both, in any language ("2026-11-20 at 19.03.11", "20.11.26, 19 03 11", "um 19.03 Uhr").
_DAY, _MONTH, _YEAR = r"(?:0?[1-9]|[12]\d|3[01])", r"(?:0?[1-9]|1[0-2])", r"(?:(?:19|20)\d\d)"
_MONTH_NAME = (
    r"(?:jan|ene|gen|sty|feb|f[eé]v|lut|m[aä]r|mac|a[pbv]r|kwi|ma[iyjg]|mei|ju[nlit]|giu|cze|lug|lip"
    r"|aug|ao[uû]|ago|ogo|sie|sep|set|wrz|o[ck]t|out|ott|pa[zź]|nov|lis|d[eé][csz]|di[cs]|gru)"
    r"[^\W\d_]{0,9}"
)
_DATE = (
    rf"(?:{_YEAR}(?P<a>[-_./ ]){_MONTH}(?P=a){_DAY}"
    rf"|{_DAY}(?P<b>[-_./]){_MONTH}(?P=b)(?:{_YEAR}|\d\d)"
    rf"|{_MONTH}(?P<c>[-_./]){_DAY}(?P=c)(?:{_YEAR}|\d\d)"
    rf"|{_DAY}(?:st|nd|rd|th|\.)?[-_ ](?:de |of )?{_MONTH_NAME}\.?[-_ ](?:de )?{_YEAR}"
    rf"|{_MONTH_NAME}[-_ ]{_DAY}(?:st|nd|rd|th)?,?[-_ ]{_YEAR}"
    rf"|{_YEAR}(?:0[1-9]|1[0-2])(?:0[1-9]|[12]\d|3[01])"
    r"|(?:0[1-9]|[12]\d|3[01])\.(?:0[1-9]|1[0-2])\.?)"
)
_HOUR, _SIXTY = r"(?:[01]?\d|2[0-3])", r"[0-5]\d"
_TIME = rf"{_HOUR}(?:[-_.:h ]{_SIXTY}[-_.:m ]{_SIXTY}|[-_.:h]{_SIXTY})(?:[-_.]\d{{1,3}})?(?!\d)"
_HALF_OF_DAY = r"(?:\s*[ap]\.?m\b\.?|\s*(?:uhr|h)\b)"
_WHEN = re.compile(
    rf"(?i)(?<!\d){_DATE}(?!\d)"
    rf"(?:[\s,_t-]+(?:[^\W\d_]{{1,5}}(?:\(s\))?\.?\s+){{0,2}}{_TIME}{_HALF_OF_DAY}?)?"
    rf"|(?<![^\W_])(?:at|um|à|a las|ore|alle|pukul|om|kl\.?)\s+{_TIME}{_HALF_OF_DAY}?"
    rf"|(?<!\d){_TIME}{_HALF_OF_DAY}"
)
# Numbers that count something: "10 swings", "20cm", "v2", "(1)".
_COUNTED = re.compile(
    r"(?i)\(\d{1,2}\)|\bv(?:er|ersion)?[ ._-]?\d{1,2}\b"
    r"|(?<![\w])\d+(?:[.,]\d+)? ?(?:swings?|oscillations?|osc|cm|mm|m|s|sec|kb|mb|deg)\b"
)
_CAMEL = re.compile(r"(?<=[^\W\d_])(?=\d)|(?<=\d)(?=[^\W\d_])|(?<=[a-zß-ÿ])(?=[A-ZÀ-Þ])")
# Words inside names that carry no evidence of their own.
PARTICLES = frozenset(
    {
        "de", "del", "della", "di", "da", "do", "dos", "das", "du", "la", "las", "le", "los",
        "el", "al", "van", "von", "der", "den", "ten", "ter", "te", "bin", "binti", "bt",
        "bte", "ibn", "bint", "abu", "ap", "y", "e", "i", "und", "and", "och", "og",
    }
)  # fmt: skip


@lru_cache(maxsize=200_000)
def fold(text: str) -> str:
    """One plain spelling: case folded, accents off, apostrophes out, other letters simplified."""
    low = unicodedata.normalize("NFC", text).casefold().translate(_SIMPLE)
    plain = unicodedata.normalize("NFKD", low)
    bare = "".join(letter for letter in plain if not unicodedata.combining(letter))
    return bare.replace("'", "")


@lru_cache(maxsize=200_000)
def forms(token: str) -> tuple[str, ...]:
    """The folded token, and where it differs the form with umlauts spelt out."""
    plain = fold(token)
    spelt = fold(unicodedata.normalize("NFC", token).casefold().translate(_SPELT))
    return (plain,) if spelt == plain else (plain, spelt)


def cut(text: str) -> tuple[str, ...]:
    """Runs of letters or digits, in order, apostrophes kept inside, unfolded."""
    text = unicodedata.normalize("NFC", text)
    return tuple(re.findall(r"[^\W_]+(?:['’‘ʼ`´ʻ][^\W_]+)*", text))


def cut_camel(text: str) -> tuple[str, ...]:
    """As :func:`cut`, and cut where a small letter meets a capital or a digit."""
    text = unicodedata.normalize("NFC", text)
    return tuple(piece for run in cut(text) for piece in _CAMEL.split(run) if piece)


def without_devices(text: str) -> str:
    """The text without dates, times of day, camera numbers, counted things, version marks."""
    if sum(map(str.isdigit, text)) > 2:  # no day and no time of day has fewer
        text = _WHEN.sub(" ", text)
    return _COUNTED.sub(" ", _DEVICE.sub(" ", text))


@cache
def word_list() -> dict[str, Any]:
    """``words.toml`` as read."""
    return tomllib.loads(
        resources.files("markbench.intake").joinpath("words.toml").read_text("utf-8")
    )


@cache
def piece_words() -> dict[str, frozenset[str]]:
    """Folded words by what they tell: kinds of pieces, versions, plain noise."""
    return {
        group: frozenset(fold(word).replace(" ", "") for word in words)
        for group, words in word_list()["pieces"].items()
    }


@cache
def known_words() -> frozenset[str]:
    """Every folded word that describes a piece and so names nobody."""
    return frozenset(word for words in piece_words().values() for word in words)


@cache
def _long_words(group: str) -> re.Pattern[str]:
    """Words long enough to be told within a compound, as "aufbau" in "versuchsaufbau"."""
    words = piece_words()[group] if group else known_words()
    return re.compile("|".join(sorted(word for word in words if len(word) >= 6)))


@lru_cache(maxsize=100_000)
def is_known_word(folded: str) -> bool:
    """Whether a token describes the piece, alone or as part of a long compound."""
    if folded in known_words():
        return True
    return len(folded) > 8 and _long_words("").search(folded) is not None


@lru_cache(maxsize=20_000)
def _folded_runs(text: str) -> tuple[tuple[str, ...], ...]:
    return tuple(tuple(fold(piece) for piece in pieces) for pieces in {cut(text), cut_camel(text)})


@lru_cache(maxsize=20_000)
def _groups(text: str, without: frozenset[str]) -> frozenset[str]:
    found: set[str] = set()
    for run in _folded_runs(text):
        folded = [form for form in run if form not in without]
        for size in (1, 2, 3):
            found |= {"".join(folded[i : i + size]) for i in range(len(folded) - size + 1)}
    line = " ".join(found)
    return frozenset(
        group
        for group, words in piece_words().items()
        if found & words or _long_words(group).search(line)
    )


@lru_cache(maxsize=20_000)
def name_parts(name: str) -> frozenset[str]:
    """The folded parts of a person's name."""
    return frozenset(fold(part) for part in cut(name))


def groups_said(text: str, owner_name: str = "") -> frozenset[str]:
    """Which groups of the word list a name speaks of, the owner's own name left out.

    So that nobody called "Data" hands in nothing but tables.
    """
    own = name_parts(owner_name)
    if own:
        own = own & {form for run in _folded_runs(text) for form in run}
    return _groups(text, own)
