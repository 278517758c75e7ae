"""The brief as a form fills it in: each key's value as text, and text as the file holds it.

The form is judged by the reader of the file itself, so that nothing is allowed here that the
file could not hold; but it speaks of the setting, not of the file.
"""

from __future__ import annotations

import datetime as dt
import re
from collections.abc import Mapping
from typing import Any, Literal

import tomlkit

from markbench.intake.brief_file import parse_brief, value_of
from markbench.intake.brief_rules import ALLOWED, EVIDENCE
from markbench.model import Brief, Figures, say

Way = Literal[
    "text", "number", "numbers", "share", "one_in", "date", "pairs", "grades", "language",
    "choices", "yes_no",
]  # fmt: skip

_DATES = ("opens", "closes", "keep_evidence_until")
_WAYS: Mapping[str, Way] = {
    "evidence": "choices",
    "partners": "pairs",
    "feedback_language": "language",
    "tolerances.g_fraction": "share",
    "tolerances.own_arithmetic_fraction": "share",
    "tolerances.false_alarm": "one_in",
}
_NUMBER = re.compile(r"[-+]?\d*[.,]?\d+|[-+]?\d+[.,]")
_SHARE = re.compile(r"([\d.,]+)\s*%?")
# The word between the two numbers is a language's own.
_ONE_IN = re.compile(r"1(?:\s+[^\W\d]+\s+|\s*[:/]\s*)(\d+)")


def way_of(key: str) -> Way:
    """How a key is filled in."""
    default = value_of(Brief(), key)
    if key in _DATES:
        return "date"
    if key in _WAYS:
        return _WAYS[key]
    if isinstance(default, bool):
        return "yes_no"
    if isinstance(default, str):
        return "text"
    if isinstance(default, Mapping):
        return "grades"
    return "numbers" if isinstance(default, tuple) else "number"


def choices_of(key: str) -> tuple[str, ...]:
    """What may be ticked under a key of ``choices``."""
    return EVIDENCE if key == "evidence" else ()


def as_text(key: str, value: Any) -> str:
    """A value as one would type it; nothing where the brief does not say."""
    if value is None:
        return ""
    if isinstance(value, dt.date):
        return value.isoformat()
    if isinstance(value, Mapping):
        return ", ".join(f"{grade} = {least:g}" for grade, least in value.items())
    way = way_of(key)
    if way == "pairs":
        return ", ".join(" & ".join(pair) for pair in value)
    if way == "share":
        return _percent(value)
    if way == "one_in":
        many = round(1 / value)
        return say("1 in {n}", n=many) if abs(many * value - 1) < 1e-3 else _percent(value)
    if isinstance(value, tuple):
        return ", ".join(str(item) for item in value)
    return Figures(f"{value:.12g}") if isinstance(value, float) else str(value)


def as_raw(key: str, text: str) -> Any:
    """What the file would hold for a typed text; ``None`` leaves the key out.

    Nothing is refused here: what is no number stays text, and the reader of the file says
    what is wrong with it.
    """
    text, way = text.strip(), way_of(key)
    if way == "text":
        return text  # an empty one is no text
    if not text:
        return None
    if way in ("share", "one_in"):
        return _share(text, way)
    if way == "number":
        return _number(text)
    if way == "numbers":
        return [_number(item) for item in re.split(r"[,;\s]+", text) if item]
    if way == "pairs":
        return [
            [name.strip() for name in pair.split("&")]
            for pair in re.split(r"[,;]", text)
            if pair.strip()
        ]
    if way == "grades":
        return _grades(text)
    return text


def check(raws: Mapping[str, Any]) -> tuple[Brief, dict[str, str]]:
    """The brief that a form's raw values make, and a sentence for each key that is wrong.

    Settings that contradict each other are told at each of them, unless one is wrong by
    itself: it is then not known whether they do.
    """
    document: dict[str, Any] = {}
    for key, raw in raws.items():
        if raw is None or key not in ALLOWED:
            continue
        table, _, leaf = key.rpartition(".")
        (document.setdefault(table, {}) if table else document)[leaf] = raw
    brief, problems = parse_brief(tomlkit.dumps(document))
    told: dict[str, str] = {}
    for one in sorted(problems, key=lambda problem: len(problem.typed)):
        if not one.key:
            told[""] = one.sentence
        elif not told.keys() & one.typed.keys():
            told.update(one.typed)
    return brief, told


def _percent(value: float) -> Figures:
    return Figures(f"{100 * value:.10g} %")


def _share(text: str, way: Way) -> float | str:
    found = _ONE_IN.fullmatch(text) if way == "one_in" else None
    if found is not None:
        return round(1 / max(int(found[1]), 1), 9)
    found = _SHARE.fullmatch(text)
    if found is None or (way == "one_in" and not text.endswith("%")):
        return text
    value = _number(found[1])
    return round(value / 100, 12) if not isinstance(value, str) else text


def _number(text: str) -> int | float | str:
    if not _NUMBER.fullmatch(text):
        return text
    value = float(text.replace(",", "."))
    return int(value) if value.is_integer() else value


def _grades(text: str) -> dict[str, Any] | str:
    found: dict[str, Any] = {}
    for pair in re.split(r"[,;]", text):
        if not pair.strip():
            continue
        grade, sign, least = pair.rpartition("=")
        if not sign or not grade.strip() or grade.strip() in found:
            return text
        found[grade.strip()] = _number(least.strip())
    return found
