"""Every learner's readings recomputed: T = t/N, T², the straight line, g."""

from __future__ import annotations

import math
import warnings

import numpy as np

from markbench.model import Analysis, LocalGravity, Row, StraightLine
from markbench.physics.lines import Lines, fit_lines
from markbench.physics.pendulum import FOUR_PI_SQUARED, gravity_from
from markbench.physics.stack import Stack


def analyse(stack: Stack, local: LocalGravity) -> list[Analysis]:
    """Recompute a whole class. Rows without a length or a timing are left out of the line."""
    periods = stack.times_s / stack.swings[:, :, None]
    with warnings.catch_warnings():
        # Empty rows are padding, not trouble; nor is a class in which nobody timed anything.
        warnings.simplefilter("ignore", RuntimeWarning)
        mean_time_s = np.nanmean(stack.times_s, axis=2)
        period_s = np.nanmean(periods, axis=2)
        spread_s = np.nanstd(stack.times_s, axis=2, ddof=1)
    period_squared = period_s**2
    g_rows = gravity_from(stack.length_m, period_s)
    lines = fit_lines(stack.length_m, period_squared) if period_squared.size else None
    there = np.isfinite(stack.swings)  # a row without a length keeps its place
    # As Python's numbers once for the class: an array's items are slow to take one by one.
    lengths_m, swings, times_s, means, spreads, periods_s, squares, gs = (
        array.tolist()
        for array in (
            stack.length_m, stack.swings, stack.times_s, mean_time_s, spread_s, period_s,
            period_squared, g_rows,
        )
    )  # fmt: skip
    results: list[Analysis] = []
    for i, present in enumerate(there.tolist()):
        rows = tuple(
            Row(
                length_m=lengths_m[i][j],
                swings=int(swings[i][j]),
                timings_s=tuple(t for t in times_s[i][j] if math.isfinite(t)),
                mean_time_s=means[i][j],
                spread_s=spreads[i][j],
                period_s=periods_s[i][j],
                period_squared_s2=squares[i][j],
                g=gs[i][j],
            )
            for j, is_there in enumerate(present)
            if is_there
        )
        results.append(Analysis(rows=rows, line=_line(lines, i, there[i]), local=local))
    return results


def _line(lines: Lines | None, i: int, there: np.ndarray) -> StraightLine | None:
    if lines is None or not np.isfinite(lines.slope[i]) or lines.slope[i] == 0:
        return None
    slope = float(lines.slope[i])
    g = FOUR_PI_SQUARED / slope
    return StraightLine(
        slope_s2_per_m=slope,
        u_slope=float(lines.u_slope[i]),
        intercept_s2=float(lines.intercept[i]),
        u_intercept=float(lines.u_intercept[i]),
        covariance=float(lines.covariance[i]),
        residual_sd_s2=float(lines.residual_sd[i]),
        residuals_s2=tuple(lines.residuals[i][there].tolist()),
        studentised=tuple(lines.studentised[i][there].tolist()),
        g=float(g),
        # u(g)/g = u(slope)/slope, since g = 4π²/slope.
        u_g=float(g * lines.u_slope[i] / abs(slope)),
        points=int(lines.points[i]),
    )
