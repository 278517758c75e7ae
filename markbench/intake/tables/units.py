"""Units as learners write them, and their size in metres, seconds, s² and m/s²."""

from __future__ import annotations

from typing import Literal

Dimension = Literal["length", "time", "time_squared", "acceleration", "other"]

# The inch and the foot are exact by international agreement (1959).
UNITS: dict[str, tuple[Dimension, float]] = {
    "mm": ("length", 0.001),
    "cm": ("length", 0.01),
    "dm": ("length", 0.1),
    "m": ("length", 1.0),
    "inch": ("length", 0.0254),
    "ft": ("length", 0.3048),
    "s": ("time", 1.0),
    "ms": ("time", 0.001),
    "min": ("time", 60.0),
    "s²": ("time_squared", 1.0),
    "ms²": ("time_squared", 1e-6),
    "m/s²": ("acceleration", 1.0),
    "cm/s²": ("acceleration", 0.01),
    "mm/s²": ("acceleration", 0.001),
    "N/kg": ("acceleration", 1.0),
    "g": ("other", 1.0),
    "kg": ("other", 1.0),
    "°": ("other", 1.0),
    "%": ("other", 1.0),
    "Hz": ("other", 1.0),
}


def dimension(unit: str | None) -> Dimension | None:
    """What a unit measures; ``None`` for no unit."""
    return UNITS[unit][0] if unit else None


def size(unit: str) -> float:
    """Size of a unit in metres, seconds, s² or m/s²."""
    return UNITS[unit][1]


_SECOND_SQUARED = (
    # "seconds (2)" and "sec 2" head a second timing; only a bare s is squared without a sign.
    r"(?:s(?:ec)?(?:onds?)?(?:\s*(?:\^|\*\*)\s*\(?2\)?|2)|s\s*2)"
)
_PER_SECOND_SQUARED = (
    r"(?:\s*/\s*\(?" + _SECOND_SQUARED + r"\)?"
    r"|\s*[·.*⋅]?\s*s(?:ec)?\s*(?:\^|\*\*)?\s*[({]?\s*-\s*2[)}]?"
    r"|\s*/\s*s(?:ec)?\s*/\s*s(?:ec)?)"
)

# Patterns for the unit alone, longest meaning first; spelled-out words come from words.toml.
SYMBOLS: tuple[tuple[str, str], ...] = (
    ("cm/s²", "cm" + _PER_SECOND_SQUARED),
    ("mm/s²", "mm" + _PER_SECOND_SQUARED),
    ("m/s²", "m(?:et(?:er|re)s?)?" + _PER_SECOND_SQUARED),
    ("N/kg", r"n\s*/\s*kg|n\s*kg\s*\^?\s*-\s*1"),
    ("ms²", r"ms\s*\^\s*2"),
    ("s²", _SECOND_SQUARED + "|" + r"sec\.?\s*(?:squared|sq)|s\s*[x*·]\s*s"),
    ("Hz", r"hz|s\s*\^?\s*-\s*1|1\s*/\s*s"),
    ("other", r"(?:cm|m|mm|s)\s*/\s*(?:cm|m|mm|s|osc|swing)|(?:s|m|cm)\s*\^?\s*[-23]\s*\d?"),
    ("mm", "mm"),
    ("cm", "cm"),
    ("dm", "dm"),
    ("ms", "ms"),
    # "mm:ss.00" is the form of a stopwatch; the cells themselves then say minutes and seconds.
    ("s", r"(?:mm?|min)\s*:\s*s{1,2}(?:ec)?(?:\s*[.:,]\s*(?:[a-z]{2}|\d{1,3}))?"),
    ("min", "min"),
    ("kg", "kg"),
    ("m", "m"),
    ("inch", "in"),
    ("s", "s"),
    ("g", "g|grams?|gramm|gramos?|grammes?"),
    ("°", r"°|º|deg(?:rees?)?|grad|graus?|degrés?|rad"),
    ("%", "%"),
)
