"""What the graph shows, worked out from the analysis; no widget and no drawing here."""

from __future__ import annotations

import math
from collections.abc import Iterable
from dataclasses import dataclass

from PySide6.QtCore import QCoreApplication

from markbench.model import Analysis, Explanation
from markbench.physics.pendulum import FOUR_PI_SQUARED
from markbench.physics.reporting import with_uncertainty
from markbench.ui.look.said import figures, said

Points = tuple[list[float], list[float]]
# Of the largest T²: residuals below this are not blown up to the height of their panel.
_LEAST_RESIDUAL = 0.004


@dataclass(frozen=True, slots=True)
class Curves:
    """Points and lines as (lengths in m, squared periods in s²); words for the key."""

    points: Points
    questioned: tuple[int, ...]
    fitted: Points
    law: Points
    ghost: Points
    ghost_line: Points
    residuals: Points
    stems: Points
    longest_m: float
    largest_s2: float
    largest_residual: float
    line_words: str
    law_words: str
    ghost_words: str


def curves(
    analysis: Analysis, questioned: Iterable[int] = (), ghost: Explanation | None = None
) -> Curves:
    """Everything to draw for one learner."""
    lengths = [row.length_m for row in analysis.rows]
    squares = [row.period_squared_s2 for row in analysis.rows]
    slope = FOUR_PI_SQUARED / analysis.local.g
    mended = list(ghost.mended) if ghost is not None else []
    ghost_lengths = [length for length, _ in mended]
    ghost_squares = [period**2 for _, period in mended]
    longest = 1.08 * _largest([*lengths, *ghost_lengths], 0.6)
    largest = 1.08 * _largest([*squares, *ghost_squares], slope * longest)
    line = analysis.line
    fitted: Points = ([], [])
    residuals: Points = ([], [])
    if line is not None:
        fitted = (
            [0.0, longest],
            [line.intercept_s2, line.intercept_s2 + line.slope_s2_per_m * longest],
        )
        residuals = (lengths[: len(line.residuals_s2)], list(line.residuals_s2))
    stems_x = [x for x in residuals[0] for _ in (0, 1)]
    stems_y = [part for y in residuals[1] for part in (0.0, y)]
    return Curves(
        points=(lengths, squares),
        questioned=tuple(sorted(set(questioned))),
        fitted=fitted,
        law=([0.0, longest], [0.0, slope * longest]),
        ghost=(ghost_lengths, ghost_squares),
        ghost_line=(ghost_lengths, ghost_squares),
        residuals=residuals,
        stems=(stems_x, stems_y),
        longest_m=longest,
        largest_s2=largest,
        largest_residual=max(
            _largest((abs(y) for y in residuals[1]), 0.0), _LEAST_RESIDUAL * largest
        ),
        line_words=_line_words(analysis),
        law_words=figures(_tr("local g {g:.2f} m/s²").format(g=analysis.local.g)),
        ghost_words=_tr("without the slip") if mended else "",
    )


def _largest(values: Iterable[float], default: float) -> float:
    """The largest that can be drawn: a reading may lack its length or its times."""
    return max((value for value in values if math.isfinite(value)), default=default)


def _line_words(analysis: Analysis) -> str:
    if analysis.line is None:
        return _tr("no line: two different lengths are needed")
    if not math.isfinite(analysis.line.u_g):  # a line through two points fits them exactly
        words = _tr("line: g = {g:.2f} m/s², ± unknown")
        return figures(words.format(g=analysis.line.g))
    value = with_uncertainty(analysis.line.g, analysis.line.u_g, "m/s²")
    return _tr("line: g = {value}").format(value=said(value))


def _tr(text: str) -> str:
    return QCoreApplication.translate("Curves", text)
