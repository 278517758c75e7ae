"""How a value and its uncertainty are written, the same wherever they are shown.

The number of figures follows the Particle Data Group's rule (Review of Particle Physics,
introduction, "Rounding"): of the first three figures of the uncertainty, 100–354 keep
two, 355–949 keep one, 950–999 round up to 1000 and keep two. This stays within the one or
two figures of JCGM 100:2008, 7.2.6.
"""

from __future__ import annotations

import math

from markbench.model import Figures, say


def round_pair(value: float, uncertainty: float) -> tuple[float, float, int]:
    """Value and uncertainty rounded to match, and the number of decimals kept.

    Decimals are negative where whole tens or more are rounded. A zero or non-finite
    uncertainty leaves both untouched, with 6 decimals.
    """
    if not (math.isfinite(value) and math.isfinite(uncertainty)) or uncertainty <= 0:
        return value, uncertainty, 6
    decimals = _decimals_for(uncertainty)
    return round(value, decimals), round(uncertainty, decimals), decimals


def with_uncertainty(value: float, uncertainty: float, unit: str = "") -> str:
    """``9.80 ± 0.14 m/s²``; just the value with four figures where ``uncertainty`` is unknown."""
    suffix = f" {unit}" if unit else ""
    if not math.isfinite(value):
        return say("not known")
    if not math.isfinite(uncertainty) or uncertainty <= 0:
        return Figures(true_minus(f"{value:.4g}{suffix}"))
    rounded, u_rounded, decimals = round_pair(value, uncertainty)
    shown = max(decimals, 0)
    return Figures(true_minus(f"{rounded:.{shown}f} ± {u_rounded:.{shown}f}{suffix}"))


def true_minus(number: str) -> str:
    """A written number with the sign of a negative one as print has it, and no nought below it."""
    if not number.startswith("-"):
        return number
    digits = number[1:].partition(" ")[0]
    return number[1:] if float(digits) == 0 else f"−{number[1:]}"


def _decimals_for(uncertainty: float) -> int:
    exponent = math.floor(math.log10(uncertainty))
    first_three = round(uncertainty * 10.0 ** (2 - exponent))
    figures = 2 if first_three < 355 or first_three >= 950 else 1
    # 950–999 round up to the next power of ten, which keeps two figures there.
    lead = exponent + 1 if first_three >= 950 else exponent
    return figures - 1 - lead
