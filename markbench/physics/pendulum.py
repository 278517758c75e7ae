"""Period of a simple pendulum, at small and at finite amplitude.

The one module, with its slips and words, that would be replaced for another practical
with a straight-line law.
"""

from __future__ import annotations

import numpy as np
from numpy.typing import ArrayLike, NDArray
from scipy.special import ellipk

FOUR_PI_SQUARED = 4.0 * np.pi**2


def amplitude_factor(amplitude_deg: ArrayLike) -> NDArray[np.float64]:
    """T/T₀ at release angle ``amplitude_deg`` (degrees, |angle| < 180), elementwise.

    T/T₀ = (2/π)·K(m) with m = sin²(θ/2), the complete elliptic integral of the first
    kind in its *parameter* form.

    References: Abramowitz & Stegun (1964), ch. 17, Table 17.1 for K(m).
    """
    half = np.radians(np.asarray(amplitude_deg, dtype=float)) / 2.0
    return np.asarray(2.0 / np.pi * ellipk(np.sin(half) ** 2))


def period_s(
    length_m: ArrayLike, g: ArrayLike, amplitude_deg: ArrayLike = 0.0
) -> NDArray[np.float64]:
    """Period in seconds of a simple pendulum of ``length_m`` under ``g`` (m/s²); broadcasts."""
    small = 2.0 * np.pi * np.sqrt(np.asarray(length_m, dtype=float) / np.asarray(g, dtype=float))
    return np.asarray(small * amplitude_factor(amplitude_deg))


def gravity_from(length_m: ArrayLike, period: ArrayLike) -> NDArray[np.float64]:
    """g = 4π²L/T² in m/s² (small swings); broadcasts. Zero periods give ``inf``."""
    with np.errstate(divide="ignore", invalid="ignore"):
        return np.asarray(
            FOUR_PI_SQUARED * np.asarray(length_m, dtype=float) / np.asarray(period, float) ** 2
        )
