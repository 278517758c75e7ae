"""What one heading says: quantity, unit, swings per timing, which repeat.

Headings recur through a whole class, so each distinct text is understood once.
"""

from __future__ import annotations

import re
import tomllib
import unicodedata
from dataclasses import dataclass, replace
from functools import cache, lru_cache
from importlib import resources
from typing import Literal

from markbench.intake.tables.units import SYMBOLS, UNITS, dimension

Quantity = Literal[
    "length",
    "time",
    "period",
    "period_squared",
    "g",
    "swings",
    "trial",
    "number",
    "other",
]


@dataclass(frozen=True, slots=True)
class Heading:
    """One heading understood; every part ``None`` or false where it does not say.

    ``worded`` is true where a word or symbol (and not only the unit) told the quantity.
    ``repeat`` counts from 1. ``whole``: for a length, 1 if it is called the pendulum's own,
    −1 if only a part of it, as the thread's.
    """

    quantity: Quantity | None = None
    unit: str | None = None
    swings: int | None = None
    mean: bool = False
    repeat: int | None = None
    worded: bool = False
    whole: int = 0
    has_unit: bool = False


NOTHING = Heading()

_LETTERS = str.maketrans(
    {"ł": "l", "Ł": "L", "ø": "o", "Ø": "O", "æ": "ae", "ð": "d", "đ": "d", "ı": "i", "ℓ": "l"}
    | {"٫": ".", "٬": "'", "،": ",", "؛": ";"}
    | {"−": "-", "–": "-", "—": "-", "⁄": "/", "∕": "/", "×": "x", "’": "'", "\u00a0": " "}
)


def plain(text: str) -> str:
    """Without accents and typographic variants; case is kept, powers become ``^2``."""
    if text.isascii():
        return text
    text = text.replace("⁻²", "^-2").replace("⁻", "^-").replace("²", "^2").replace("³", "^3")
    text = unicodedata.normalize("NFKD", text.replace("º", "°").translate(_LETTERS))
    return "".join(c for c in text if not unicodedata.combining(c)).translate(_LETTERS)


def _fold(text: str) -> str:
    return plain(text).casefold()


def _finder(stems: list[str]) -> re.Pattern[str] | None:
    parts = []
    for stem in sorted({_fold(s) for s in stems}, key=len, reverse=True):
        body = re.escape(stem.rstrip(".")).replace(r"\ ", r"\s+")
        if stem.endswith("."):
            parts.append(rf"(?<![^\W\d_]){body}(?![^\W\d_])")
        elif len(stem) >= 4:
            parts.append(body)
        elif len(stem) == 3:
            parts.append(rf"(?<![^\W\d_]){body}")
        else:
            parts.append(rf"(?<![^\W\d_]){body}(?![^\W\d_])")
    return re.compile("|".join(parts)) if parts else None


@dataclass(frozen=True, slots=True)
class _Words:
    find: dict[str, re.Pattern[str]]
    counted: re.Pattern[str]
    number_words: dict[str, int]
    units: tuple[tuple[str, re.Pattern[str]], ...]
    bracketed: re.Pattern[str]
    slashed: re.Pattern[str]
    after_in: re.Pattern[str]
    at_end: re.Pattern[str]
    names: re.Pattern[str]
    ids: re.Pattern[str]


@cache
def words() -> _Words:
    """The word list of the package, compiled once a process."""
    text = resources.files(__package__).joinpath("words.toml").read_text(encoding="utf-8")
    lists = tomllib.loads(text)
    stems = {
        meaning: [word for language in table.values() for word in language]
        for meaning, table in lists.items()
        if meaning not in ("numbers", "units", "in")
    }
    number_words = {
        _fold(word): int(number) for number, ws in lists["numbers"].items() for word in ws
    }
    spelled = {
        unit: [re.escape(_fold(word)) + "s?" for word in ws] for unit, ws in lists["units"].items()
    }
    # Symbols before words; a unit that has only words (inch) comes last.
    symbols = [(u, "|".join([p, *spelled.pop(u, [])])) for u, p in SYMBOLS]
    symbols += [(u, "|".join(ws)) for u, ws in spelled.items()]
    any_unit = "|".join(f"(?:{p})" for _, p in symbols)
    inside = "|".join(re.escape(_fold(w)) for w in lists["in"]["any"])
    spelled_counts = sorted(map(re.escape, number_words), key=len, reverse=True)
    count = rf"\d{{1,3}}|(?:{'|'.join(spelled_counts)})(?![^\W\d_])"
    # Up to two words may stand between the number and the swings: "10 complete swings".
    swing = _pattern(stems["swings"] + stems["period"])
    ends = r"(?![\w^/-])"
    return _Words(
        find={m: f for m, ws in stems.items() if (f := _finder(ws)) is not None},
        counted=re.compile(
            rf"(?<![\w.,])(?P<n>{count})\s*(?:x\s*)?(?:[^\W\d_]+\s+){{0,2}}?[^\W\d_]*?(?:{swing})"
        ),
        number_words=number_words,
        units=tuple((u, re.compile(p)) for u, p in symbols),
        bracketed=re.compile(rf"[(\[{{<]\s*(?:(?:{inside})\s+)?(?P<u>{any_unit})\s*[)\]}}>]"),
        slashed=re.compile(rf"/\s*[(\[]?(?P<u>{any_unit})[)\]]?{ends}"),
        after_in=re.compile(rf"(?<!\w)(?:{inside})\s+(?P<u>{any_unit}){ends}"),
        at_end=re.compile(rf"(?:^|(?<=[\s,;:_-]))(?P<u>{any_unit})\.?\s*$"),
        names=re.compile(_pattern(stems["learner_name"])),
        ids=re.compile(_pattern(stems["learner_id"])),
    )


def _pattern(stems: list[str]) -> str:
    finder = _finder(stems)
    return finder.pattern if finder else r"(?!)"


def unit_named(text: str) -> str | None:
    """The unit a text consists of (``"cm"``, ``"metres"``, ``"m s^-2"``), else ``None``."""
    folded = _fold(text).strip().strip("()[]").strip().rstrip(".")
    for unit, pattern in words().units:
        if pattern.fullmatch(folded):
            return unit if unit in UNITS else None
    return None


def _take_unit(text: str) -> tuple[str | None, str]:
    """A heading's unit and what is left of its text."""
    w = words()
    folded = text.casefold()
    for pattern in (w.bracketed, w.slashed, w.after_in, w.at_end):
        for match in pattern.finditer(folded):
            found = match["u"]
            if len(folded) != len(text):  # casefolding changed the length (ß): give up case
                text = folded
            rest = text[: match.start()] + " " + text[match.end() :]
            weighed = w.find["mass"].search(folded) or rest.strip() == "m"
            if found == "g" and not weighed:
                continue  # "g" is the symbol of gravity unless something is weighed
            if found == "in" and (
                pattern in (w.after_in, w.at_end) or _LETTER.search(folded[match.end() :])
            ):
                continue  # the word, not the inch: "length in", "L / in cm"
            if found in ("m", "g", "min") and not rest.strip():
                continue  # alone, a letter is as likely a symbol
            if pattern is w.bracketed and _ORDINAL.fullmatch(found) and _other_unit(rest):
                continue  # "t / min (second)": the second of two
            if pattern is w.at_end and found == "min" and not w.find["time"].search(folded):
                continue  # Malay abbreviates the mean so
            for unit, form in w.units:
                if form.fullmatch(found):
                    return unit, rest
    return None, text


def _other_unit(rest: str) -> bool:
    w = words()
    return any(p.search(rest.casefold()) for p in (w.bracketed, w.slashed, w.after_in))


_TIMES_T = re.compile(r"(?<![\w.])(\d{1,3})\s*(?:x|\*|·|⋅)?\s*[Tt](?![A-Za-z])")
_T_INDEX = re.compile(r"(?<![A-Za-z])([Tt])\s*[_]?\s*[({]?\s*(\d{1,3})[)}]?(?![\d.])")
_RESULT = re.compile(r"\s*[\d.,]+\s*(?:[^\W\d_π]|$|\()")
# t/10, t/N: the time of one swing.
_PER_SWING = re.compile(r"(?<![A-Za-z])t\s*/\s*(?:\d{1,2}|[Nn])(?![\w^])")
_EQUALS_N = re.compile(r"(?<![A-Za-z])[Nn]\s*[=:]\s*(\d{1,3})(?![\d.])")
_INDEX = re.compile(r"(?<![\d.,^])(\d{1,2})(?:\s*(?:st|nd|rd|th|\.|º|°|ª|e))?(?![\d,^])")
_SQUARED = re.compile(r"(?<![A-Za-z])T\s*(?:_?\w{0,4})?(?:\^|\*\*)\s*\(?2\)?|T\s*[x*·]\s*T(?!\w)")
_MEAN_T = re.compile(
    r"([Tt])\s*_?\s*[({]?(?:av[ge]?|mean|m|bar|avg|sr|med|moy|prom|gem|mw)[)}]?(?![A-Za-z])|<\s*([Tt])\s*>"
)
_SYMBOL = re.compile(r"(?<![A-Za-z'])(T|t|L|l|g|N|n)(?![A-Za-z'])")
_FORMULA = re.compile(
    r"π|(?<![a-z])pi(?![a-z])|√|sqrt|Δ|δ|±|\+/-|(?<![a-z])d[tl](?![a-z])|1/t|(?<!\w)ln|σ"
)
# "± 0.1" in the heading of a reading states how well it was read.
_UNCERTAINTY = re.compile(r"(?:±|\+/-|\+-)\s*\d+(?:[.,]\d+)?")
# "length (string + radius)": the parts of which a length is the sum.
_SUMMED = re.compile(r"\([^()]*\+[^()]*\)")
# A round number that is all a heading says beside its unit.
_ROUND_COUNT = re.compile(r"\W*([1-9]\d?[05])\W*(?:first|second|third|\dst|\dnd|\drd)?\W*")
_ROUND = frozenset(("15", "20", "25", "30", "40", "50"))
# "swings timed", "oscillations counted": done with the swings, and no time of them.
_DONE = re.compile(r"(?<![^\W\d_])(?:timed|counted)(?![^\W\d_])", re.IGNORECASE)
# A stop watch is no reading at the stop.
_STOP_WATCH = re.compile(r"stop[\s-]+watch", re.IGNORECASE)
_LETTER = re.compile(r"[^\W\d_]")
_ORDINAL = re.compile(r"second[eoa]?|segund[oa]")
_ROMAN = {"i": 1, "ii": 2, "iii": 3, "iv": 4, "v": 5}
_MEANINGS = ("other", "g", "period", "time", "length", "mass", "swings", "trial")


@lru_cache(maxsize=4096)
def understand(text: str) -> Heading:
    """What a heading says; :data:`NOTHING` for a text that says nothing known."""
    text = text.strip()
    if not text or len(text) > 120:
        return NOTHING
    if "=" in text and not _EQUALS_N.search(text):
        return _defined(text)
    if "̄" in text:  # a bar above a symbol: a mean
        text += " mean"
    text = _STOP_WATCH.sub("stopwatch", _DONE.sub(" ", plain(text)))
    stated = _UNCERTAINTY.sub(" ", text)
    if any(letter.isalpha() for letter in stated) and unit_named(stated) is None:
        text = stated
    if _FORMULA.search(text.casefold()):
        return Heading("other", worded=True)
    if match := _PER_SWING.search(text):
        text = text[: match.start()] + " T " + text[match.end() :]
    unit, rest = _take_unit(text)
    has_unit = unit is not None
    if unit is not None and unit not in UNITS:
        return Heading("other", worded=True, has_unit=True)
    heading = _quantity(rest, unit)
    if dimension(unit) == "other" and heading.quantity not in ("g", "other"):
        heading = replace(heading, quantity="other")
    if (
        unit is not None
        and heading.quantity in ("swings", "number", "trial")
        and not heading.repeat
    ):
        unit = None
    heading = replace(heading, unit=unit, has_unit=has_unit)
    return NOTHING if heading == NOTHING else heading


def _defined(text: str) -> Heading:
    """``T = t/10 (s)``: the quantity before the sign, the unit wherever it stands.

    ``g = 9.8 m/s²`` is no heading but a result.
    """
    left, _, right = text.partition("=")
    if _RESULT.match(right):
        return NOTHING
    heading = understand(left)
    if heading.quantity is None or heading.unit is not None:
        return heading
    unit, _ = _take_unit(plain(right))
    if unit is None or unit not in UNITS:
        return heading
    return replace(heading, unit=unit, has_unit=True)


def _quantity(text: str, unit: str | None) -> Heading:
    w = words()
    folded = text.casefold()
    swings: int | None = None
    if match := w.counted.search(folded):
        number = match["n"]
        swings = int(number) if number.isdigit() else w.number_words[number]
        folded = folded[: match.start()] + " " + folded[match.end() :]
        text = text[: match.start()] + " " + text[match.end() :]
    if match := _EQUALS_N.search(text):
        swings = int(match[1])
        text = text[: match.start()] + " " + text[match.end() :]
    repeat: int | None = None
    symbol: str | None = None
    squared = bool(_SQUARED.search(text)) or bool(w.find["squared"].search(folded))
    mean = bool(w.find["mean"].search(folded)) and not re.search(r"meaning", folded)
    if not squared:
        if match := _TIMES_T.search(text):
            swings, symbol = int(match[1]), "t"
        elif match := _T_INDEX.search(text):
            symbol, number_after = match[1], int(match[2])
            # t10 and t20 name ten and twenty swings; t5 is the fifth of t1, t2, …
            if number_after >= 10 and number_after % 5 == 0:
                swings, symbol = number_after, "t"
            else:
                repeat = number_after
        elif match := _MEAN_T.search(text):
            symbol, mean = match[1] or match[2], True
    if swings == 0:
        swings = None  # nobody times no swing: the count is still to be found
    quantity: Quantity | None = None
    named = _SUMMED.sub(" ", folded)
    found = [m for m in _MEANINGS if w.find[m].search(named)]
    if found:
        quantity = "other" if found[0] == "mass" else found[0]  # type: ignore[assignment]
        if quantity == "length" and "time" in found and dimension(unit) == "time":
            quantity = "time"
    letters = set(_SYMBOL.findall(text))
    if quantity in (None, "trial", "swings") or (quantity == "swings" and symbol):
        if {"T", "L"} <= letters or {"t", "l"} <= letters:
            return Heading("other", worded=True)
        if symbol is None and quantity is None:
            symbol = next((s for s in ("T", "t", "L", "l", "g", "N", "n") if s in letters), None)
        if symbol is not None:
            quantity = (
                {"T": "period", "t": "time", "L": "length", "l": "length", "g": "g"}.get(symbol)  # type: ignore[assignment]
                or "swings"
            )
    worded = quantity is not None
    trial = bool(w.find["trial"].search(folded))
    if dimension(unit) == "time" and quantity in (None, "trial") and swings is None:
        match = _ROUND_COUNT.fullmatch(folded)
        swings = int(match[1]) if match else None  # "20 / s"
    if repeat is None and (quantity in ("trial", "time", "period", None)):
        match = _INDEX.search(folded)
        if match and 1 <= int(match[1]) <= 12 and int(match[1]) != swings:
            timed = quantity == "time" or (quantity is None and dimension(unit) == "time")
            if timed and swings is None and match[1] == "10":
                swings = 10  # "time for 10": nobody times ten repeats
            else:
                repeat = int(match[1])
        elif match and quantity == "time" and swings is None and match[1] in _ROUND:
            swings = int(match[1])
        elif trial and (roman := re.search(r"\b(i{1,3}|iv|v)\b", folded)):
            repeat = _ROMAN[roman[1]]
        elif re.search(r"\bfirst\b", folded):
            repeat = 1
    if quantity is None and swings is None and unit is None and w.find["number"].search(folded):
        return Heading("number", worded=True)
    if quantity is None or quantity == "trial" or (quantity == "swings" and unit is not None):
        told = {
            "length": "length",
            "time": "time",
            "time_squared": "period_squared",
            "acceleration": "g",
        }.get(dimension(unit) or "")
        if told and not (quantity == "trial" and told == "length"):
            quantity = told  # type: ignore[assignment]
    if swings is not None and quantity in (None, "period", "swings", "trial", "length"):
        quantity = "time"  # "10 T", "time for 10 periods", "10 oscillations"
        worded = True
    if quantity == "time" and swings == 1:
        quantity, swings = "period", None  # the time of one swing is worked out
    squared_unit = dimension(unit) == "time_squared"
    if (quantity in ("period", "time") and (squared or squared_unit)) or (
        quantity is None and squared
    ):
        quantity = "period_squared"
    elif squared and quantity == "length":
        quantity = "other"
    if quantity == "trial" and mean:
        quantity = None
    whole = 0
    if quantity == "length":
        whole = (1 if w.find["whole_length"].search(folded) else 0) - (
            1 if w.find["part_length"].search(folded) else 0
        )
    return Heading(quantity, None, swings, mean, repeat, worded, whole)


def join(parent: Heading, child: Heading) -> Heading:
    """A heading under a heading that spans it (``Time for 10 swings / s`` over ``Trial 1``)."""
    if parent is NOTHING:
        return child
    if child is NOTHING:
        return parent
    quantity = child.quantity
    same = quantity is None or quantity == "trial" or quantity == parent.quantity
    if quantity in (None, "trial", "number") and parent.quantity is not None:
        quantity, same = parent.quantity, True
        if quantity == "trial":
            quantity = child.quantity or "trial"
    elif parent.quantity is not None and not child.worded:
        # Only a unit below: it tells no more than the name above, except that of a square.
        if not (child.quantity == "period_squared" and parent.quantity in ("time", "period")):
            quantity = parent.quantity
        same = True
    return Heading(
        quantity=quantity,
        unit=child.unit or (parent.unit if same else None),
        swings=child.swings if child.swings is not None else (parent.swings if same else None),
        mean=child.mean or (parent.mean and same),
        repeat=child.repeat if child.repeat is not None else parent.repeat,
        worded=parent.worded or child.worded,
        whole=child.whole or parent.whole,
        has_unit=child.has_unit or (parent.has_unit and same),
    )
