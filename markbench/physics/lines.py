"""Straight lines by least squares, for whole classes at once."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

Floats = NDArray[np.float64]


@dataclass(frozen=True, slots=True, eq=False)
class Lines:
    """Lines y = intercept + slope·x, one per row of the input; each array (n,) or (n, R).

    Standard uncertainties from the residuals on m − 2 degrees of freedom (m points):
    ``nan`` for m = 2. ``studentised`` are externally studentised residuals. A row with
    fewer than two different x has ``nan`` throughout.

    References: JCGM 100:2008 (GUM), H.3; R. D. Cook & S. Weisberg, *Residuals and
    Influence in Regression* (1982), ch. 2 (studentised residuals; from memory).
    """

    slope: Floats
    intercept: Floats
    u_slope: Floats
    u_intercept: Floats
    covariance: Floats
    residual_sd: Floats
    residuals: Floats
    studentised: Floats
    points: NDArray[np.int64]


def fit_lines(x: Floats, y: Floats) -> Lines:
    """Unweighted least squares along the last axis of ``x``, ``y`` (n, R); nan pairs left out."""
    x = np.atleast_2d(np.asarray(x, dtype=float))
    y = np.atleast_2d(np.asarray(y, dtype=float))
    there = np.isfinite(x) & np.isfinite(y)
    count = there.sum(axis=1)
    with np.errstate(divide="ignore", invalid="ignore"):
        mean_x = np.where(there, x, 0.0).sum(axis=1) / count
        mean_y = np.where(there, y, 0.0).sum(axis=1) / count
        # Centring first keeps the digits (certified sets of NIST need it).
        dx = np.where(there, x - mean_x[:, None], 0.0)
        dy = np.where(there, y - mean_y[:, None], 0.0)
        sxx = (dx * dx).sum(axis=1)
        sxx = np.where(sxx > 1e-18 * (1.0 + mean_x**2), sxx, np.nan)
        slope = (dx * dy).sum(axis=1) / sxx
        intercept = mean_y - slope * mean_x
        residuals = np.where(there, dy - slope[:, None] * dx, np.nan)
        sum_squares = np.nansum(residuals**2, axis=1)
        freedom = count - 2
        variance = np.where(freedom > 0, sum_squares / freedom, np.nan)
        u_slope = np.sqrt(variance / sxx)
        u_intercept = np.sqrt(variance * (1.0 / count + mean_x**2 / sxx))
        covariance = -mean_x * variance / sxx
        leverage = 1.0 / count[:, None] + dx**2 / sxx[:, None]
        # Residual variance without the point itself.
        without = (sum_squares[:, None] - residuals**2 / (1.0 - leverage)) / (freedom - 1)[:, None]
        usable = (without > 0) & (leverage < 1.0 - 1e-12) & (freedom > 1)[:, None]
        studentised = np.where(usable, residuals / np.sqrt(without * (1.0 - leverage)), np.nan)
    return Lines(
        slope=slope,
        intercept=intercept,
        u_slope=u_slope,
        u_intercept=u_intercept,
        covariance=covariance,
        residual_sd=np.sqrt(variance),
        residuals=residuals,
        studentised=studentised,
        points=count,
    )
