"""Small pieces of wording that every check shares, so that numbers read the same."""

from __future__ import annotations

from collections.abc import Sequence


def cm(length_m: float) -> str:
    """``20.0 cm``: millimetres are as fine as a school ruler reads."""
    return f"{length_m * 100:.1f} cm"


def listed(items: Sequence[str]) -> str:
    """``a``, ``a and b``, ``a, b and c``."""
    if len(items) < 2:
        return "".join(items)
    return f"{', '.join(items[:-1])} and {items[-1]}"


def one_in(rate: float | None) -> str:
    """How often honest work looks the same, as a teacher would say it; empty if unknown."""
    if rate is None:
        return ""
    if rate <= 0:
        return "not seen in any honest learner of the trial classes"
    if rate >= 0.5:
        return "most honest learners would look like this"
    if rate > 0.02:
        return f"about {round(100 * rate)} honest learners in 100 would look like this"
    return f"about 1 honest learner in {_round_number(1 / rate)} would look like this"


def _round_number(number: float) -> int:
    """Two leading figures are more than such a rate is known to."""
    digits = len(str(int(number)))
    step = 10 ** max(digits - 2, 0)
    return int(round(number / step) * step)
