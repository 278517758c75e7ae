"""Every learner's readings recomputed: T = t/N, T², the straight line, g."""

from __future__ import annotations

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
        # Empty rows are padding, not trouble.
        warnings.simplefilter("ignore", RuntimeWarning)
        mean_time_s = np.nanmean(stack.times_s, axis=2) if stack.times_s.size else periods[:, :, :0]
        period_s = np.nanmean(periods, axis=2) if periods.size else mean_time_s
        spread_s = np.nanstd(stack.times_s, axis=2, ddof=1) if stack.times_s.size else mean_time_s
    period_squared = period_s**2
    g_rows = gravity_from(stack.length_m, period_s)
    lines = fit_lines(stack.length_m, period_squared) if period_squared.size else None
    there = np.isfinite(stack.swings)  # a row without a length keeps its place
    results: list[Analysis] = []
    for i in range(len(stack)):
        rows = tuple(
            Row(
                length_m=float(stack.length_m[i, j]),
                swings=int(stack.swings[i, j]),
                timings_s=tuple(stack.times_s[i, j][np.isfinite(stack.times_s[i, j])].tolist()),
                mean_time_s=float(mean_time_s[i, j]),
                spread_s=float(spread_s[i, j]),
                period_s=float(period_s[i, j]),
                period_squared_s2=float(period_squared[i, j]),
                g=float(g_rows[i, j]),
            )
            for j in np.flatnonzero(there[i])
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
