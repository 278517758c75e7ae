"""What one cell says as a number: plain, with a unit, or in one of the stopwatch's forms."""

from __future__ import annotations

import datetime as dt
import re
from dataclasses import dataclass, replace
from functools import lru_cache
from typing import Literal

from markbench.intake.tables.grid import Cell
from markbench.intake.tables.headings import plain, unit_named
from markbench.model import say

# How a reading of a stopwatch was written. Where a cell allows several, the fit to the
# pendulum's law decides, and that is reported as a guess.
Form = Literal[
    "minutes:seconds",
    "minutes:seconds:hundredths",
    "hours:minutes:seconds",
    "seconds:hundredths",
    "month and year",
    "day and month",
]


@dataclass(frozen=True, slots=True)
class Value:
    """One cell understood.

    ``number`` is in ``unit`` where the cell names one, else in the column's. For a
    stopwatch form, ``forms`` holds what the cell could mean in seconds, likeliest first,
    and ``number`` the first of them. ``trouble`` says why a cell is no number; ``empty``
    marks a cell that stands for "no reading". ``decimals``: places as typed, ``None`` where
    the file keeps only the number. ``several``: the timings of a cell that holds more than
    one (``8.95, 9.02``); ``number`` is then the first of them.
    """

    number: float | None = None
    unit: str | None = None
    decimals: int | None = None
    forms: tuple[tuple[Form, float], ...] = ()
    trouble: str = ""
    empty: bool = False
    dash: bool = False
    several: tuple[Value, ...] = ()


EMPTY = Value(empty=True)
_DASH = Value(empty=True, dash=True)
_DASHES = frozenset(
    ("-", "--", "---", "–", "—", "−", "/", "n/a", "na", "n.a.", "nil", "none", "x", "...", "…", ".")
)

_PLAIN = re.compile(r"[+]?(\d+)(?:[.,](\d+))?")
_NUMBER = r"(?P<n>[+-]?(?:\d+(?:[ '\u202f]\d{3})+(?!\d)|\d+)?(?:[.,]\d+)?(?:\s*[eE][+-]?\d{1,3})?)"
_WITH_UNIT = re.compile(
    r"(?:≈|~|ca\.?|c\.|about|=)?\s*" + _NUMBER + r"\s*(?:(?:±|\+/-|\+-)\s*\d+(?:[.,]\d+)?)?"
    r"\s*(?P<u>[^\d\s±].{0,24})?"
)
_COLON = re.compile(
    r"(\d{1,3})(?:\s+:\s+|:)(\d{1,2})(?:\s*:\s*(\d{1,3}))?(?:\s*[.,]\s*(\d{1,3}))?(?:\s*s(?:ec)?)?"
)
_MARKS = re.compile(
    r"(?:(\d{1,2})\s*(?:'|′|m|min\.?|mins)\s*)?(\d{1,3})(?:[.,](\d{1,3}))?"
    r"\s*(?:''|\"|″|”|s|sec)\s*(\d{1,2})?\s*(?:cs)?"
)
_MINUTES = re.compile(
    r"(\d{1,2})\s*(?:min(?:ute)?s?\.?|m)\s*(?:and\s*)?(\d{1,2}(?:[.,]\d{1,3})?)\s*(?:s\w*\.?)?"
)


# 1l.05, 15.6O, 9..02, 14;13, l2.6: a number with a slip of the finger in it; a unit may follow.
_MISTYPED = re.compile(
    r"(?P<n>(?:[\dOo]|[Il|](?=\d*[.,]\d))[\d.,;:OoIl|]*[\dOoIl|][.,;:]?)(?P<u>\s*[^\W\d_]{0,12}\.?)"
)
_TENS = re.compile(r"\d[Oo]")  # 2O: twenty; 2l would be litres


def mistyped(text: str) -> bool:
    """Whether a text is a number but for letters or marks that got among its digits."""
    return _has_slip(text) and read_text(text).number is None


def _has_slip(text: str) -> bool:
    match = _MISTYPED.fullmatch(text.strip())
    if match is None or (match["u"].strip() and unit_named(match["u"]) is None):
        return False
    return sum(map(str.isdigit, match["n"])) >= 2 or _TENS.fullmatch(match["n"]) is not None


# Between timings in one cell; a comma alone only after those that can be no decimal comma.
_PARTINGS = tuple(
    re.compile(parting)
    for parting in (
        r"\s*[;|\n]\s*",
        r"\s*&\s*|\s+(?:and|und|et|y|e|en|dan|og|i)\s+",
        r"\s*/\s*",
        r",\s+",
        r",",
        r"\s+-\s+",
    )
)
_MOST_REPEATS = 12
_LIKE_REPEATS = 1.3  # repeats of one timing agree better; a date or a fraction seldom does


def _sensible(number: float) -> bool:
    """Within what any reading or result could be, so that later arithmetic stays finite."""
    return number == 0 or 1e-6 <= abs(number) < 1e9


def _bad(why: str) -> Value:
    return Value(trouble=why)


def read_value(cell: Cell) -> Value:
    """Understand one cell; never raises."""
    if type(cell) is str:
        return read_text(cell) if len(cell) <= 80 else _bad(say("it is a long text"))
    if type(cell) is float or type(cell) is int:
        return (
            Value(float(cell))
            if _sensible(cell)
            else _bad(say("it is not a finite number of any sensible size"))
        )
    if isinstance(cell, bool):
        return _bad(say("it is a true/false value"))
    if isinstance(cell, dt.time):
        return _clock_cell(cell.hour, cell.minute, cell.second, cell.microsecond)
    if isinstance(cell, dt.timedelta):
        if not dt.timedelta(0) <= cell < dt.timedelta(days=1):
            return _bad(say("it is a span of time longer than a day"))
        minutes, seconds = divmod(cell.seconds, 60)
        return _clock_cell(minutes // 60, minutes % 60, seconds, cell.microseconds)
    if isinstance(cell, dt.date):
        return _date_cell(cell)
    return _bad(say("it is not a number"))


def _clock_cell(hours: int, minutes: int, seconds: int, microseconds: int) -> Value:
    """A spreadsheet's time cell: it may be what 14:23 or 0:14.23 turned into."""
    forms: list[tuple[Form, float]] = [
        ("hours:minutes:seconds", hours * 3600 + minutes * 60 + seconds + microseconds / 1e6)
    ]
    if not microseconds:
        forms.append(("minutes:seconds:hundredths", hours * 60 + minutes + seconds / 100))
        if not seconds:
            forms.append(("minutes:seconds", hours * 60.0 + minutes))
            forms.append(("seconds:hundredths", hours + minutes / 100))
        return Value(forms[0][1], "s", None, tuple(forms))
    return Value(forms[0][1], "s")


def _date_cell(date: dt.date) -> Value:
    """What a spreadsheet made of a number typed with a point: 8.93 → August 1993.

    A month of an earlier year can only have been month and hundredths; whether 14 February
    was 14.2, 14.02 or 2.14 nobody can know, so that is left to be asked.
    """
    if date.day == 1 and 1930 <= date.year <= 2029:
        number = date.month + date.year % 100 / 100
        day_first = 1 + date.month / (10 if date.month < 10 else 100)
        return Value(number, "s", 2, (("month and year", number), ("day and month", day_first)))
    number, month = date.day, date.month
    typed = list(dict.fromkeys((f"{number}.{month}", f"{number}.{month:02d}", f"{month}.{number}")))
    some = say("{some} or {last}", some=", ".join(typed[:-1]), last=typed[-1])
    return _bad(
        say(
            "the spreadsheet holds the date {date:%d %B %Y} here, perhaps made from {typed} as it "
            "was typed",
            date=date,
            typed=some,
        )
    )


@lru_cache(maxsize=8192)
def read_text(text: str) -> Value:
    """Understand a typed number."""
    if match := _PLAIN.fullmatch(text):
        whole, part = match.groups()
        if len(whole) <= 8 and len(part or "") <= 6:
            return Value(float(f"{whole}.{part or 0}"), None, len(part or ""))
    text = plain(text).strip().lstrip("'").strip()
    if not text:
        return EMPTY
    folded = text.casefold()
    if folded in _DASHES:
        return _DASH
    if match := _COLON.fullmatch(folded):
        return _colons(*match.groups())
    if (match := _WITH_UNIT.fullmatch(text)) and any(c.isdigit() for c in match["n"]):
        value = _number_and_unit(match["n"], match["u"])
        if value is not None:
            return value
    if (match := _MARKS.fullmatch(folded)) and not (match[3] and match[4]):
        part = match[3] or match[4] or ""
        return Value(int(match[1] or 0) * 60 + float(f"{match[2]}.{part or 0}"), "s", len(part))
    if match := _MINUTES.fullmatch(folded):
        seconds = float(match[2].replace(",", "."))
        return Value(
            int(match[1]) * 60 + seconds, "s", len(match[2].replace(",", ".").partition(".")[2])
        )
    if _has_slip(text):
        return _bad(say("a letter or a doubled mark stands among its digits"))
    if folded.startswith("#"):
        return _bad(say("the spreadsheet shows the error {shown}", shown=text))
    if parts := _several(text):
        return replace(parts[0], several=parts)
    if folded in ("nan", "inf", "-inf", "infinity", "∞"):
        return _bad(say("it is not a finite number"))
    return _bad(say("it is not a number"))


def _several(text: str) -> tuple[Value, ...]:
    """Repeats of one timing typed into one cell; nothing unless they are as like as repeats."""
    for parting in _PARTINGS:
        texts = parting.split(text.strip(" ;,/"))
        if not 2 <= len(texts) <= _MOST_REPEATS:
            continue
        parts = tuple(read_text(part) for part in texts)
        numbers = [part.number for part in parts if part.number and not part.forms]
        if (
            len(numbers) == len(parts)
            and all(part.decimals and not part.several for part in parts)
            and 0 < max(numbers) <= _LIKE_REPEATS * min(numbers)
        ):
            return parts
    return ()


def _number_and_unit(number: str, unit_text: str | None) -> Value | None:
    digits = number.replace(" ", "").replace("'", "").replace("\u202f", "").replace(",", ".")
    try:
        value = float(digits)
    except ValueError:
        return None
    if not _sensible(value):
        return _bad(say("it is not a finite number of any sensible size"))
    mantissa, _, exponent = digits.lower().partition("e")
    places = max(0, len(mantissa.partition(".")[2]) - int(exponent or 0))
    unit = None
    unit_text = (unit_text or "").strip().strip("*?!").strip()
    if unit_text and unit_text not in (".", ","):
        if unit_text in ('"', "''", "″", "”", "'"):
            return None
        unit = unit_named(unit_text)
        if unit is None:
            return None
    return Value(value, unit, places)


def _colons(first: str, second: str, third: str | None, fraction: str | None) -> Value:
    a, b, part = int(first), int(second), float(f"0.{fraction}") if fraction else 0.0
    places = len(fraction or "")
    if third is None and fraction:
        return Value(a * 60 + b + part, "s", places)
    if third is None:
        return Value(
            a + b / 100 if len(second) == 2 else a + b / 10,
            "s",
            len(second),
            (
                ("seconds:hundredths", a + b / 10 ** len(second)),
                ("minutes:seconds", a * 60.0 + b),
            ),
        )
    c = int(third)
    if fraction:
        return Value(a * 3600 + b * 60 + c + part, "s", places)
    small = a * 60 + b + c / 10 ** len(third)
    return Value(
        small,
        "s",
        len(third),
        (("minutes:seconds:hundredths", small), ("hours:minutes:seconds", a * 3600.0 + b * 60 + c)),
    )
