"""Small pieces of wording that every check shares, so that numbers read the same."""

from __future__ import annotations

import re
from collections.abc import Sequence

from markbench.model import Figures, joined, say


def cm(length_m: float) -> Figures:
    """``20.0 cm``: millimetres are as fine as a school ruler reads."""
    return Figures(f"{length_m * 100:.1f} cm")


def signed(value: float, form: str = "+.2f") -> Figures:
    """A number with its sign, a true minus; ``form`` as for :func:`format`."""
    return Figures(format(value, form).replace("-", "\u2212"))


def true_minus(text: str) -> str:
    """A text whose negative numbers bear a true minus, whoever wrote it."""
    return re.sub(r"(?<![\w.-])-(?=\d)", "\u2212", text)


def listed(items: Sequence[str], end: str = "") -> str:
    """``a``, ``a and b``, ``a, b and c``; ``end`` says it to a learner in another language."""
    if len(items) < 2:
        return items[0] if items else ""
    if end:
        return end.format(most=", ".join(items[:-1]), last=items[-1])
    return say("{most} and {last}", most=joined(items[:-1], ", "), last=items[-1])


NEVER_SEEN = "not seen in any honest learner of the trial classes"
MOST_DO = "most honest learners are asked this"
OF_HUNDRED = "about {n} honest learners in 100 are asked this"
ONE_OF = "about 1 honest learner in {n} is asked this"
HOW_OFTEN = (NEVER_SEEN, MOST_DO, OF_HUNDRED, ONE_OF)
"""The ways to say how often honest work looks the same; ``{n}`` is the number."""


def how_often(rate: float) -> tuple[str, str]:
    """The way of ``HOW_OFTEN`` that suits a rate, and its number as text.

    Apart, so that a table may say it shorter and a window in another language, each with
    the same number.
    """
    if rate <= 0:
        return NEVER_SEEN, ""
    if rate >= 0.5:
        return MOST_DO, ""
    if rate > 0.02:
        return OF_HUNDRED, f"{round(100 * rate)}"
    return ONE_OF, f"{_round_number(1 / rate):,}"


def one_in(rate: float | None) -> str:
    """How often honest work looks the same, as a teacher would say it; empty if unknown."""
    if rate is None:
        return ""
    way, number = how_often(rate)
    return way.format(n=number)


def _round_number(number: float) -> int:
    """Two leading figures are more than such a rate is known to."""
    digits = len(str(int(number)))
    step = 10 ** max(digits - 2, 0)
    return int(round(number / step) * step)
