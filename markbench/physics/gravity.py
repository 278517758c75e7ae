"""Local gravity from latitude and height."""

from __future__ import annotations

import numpy as np
from numpy.typing import ArrayLike, NDArray

from markbench.model import Figures, LocalGravity, Place, say

# WGS 84 normal gravity (Somigliana's closed formula): NIMA TR8350.2, 3rd ed.
_G_EQUATOR = 9.7803253359
_K = 0.00193185265241
_E_SQUARED = 0.00669437999014
# Free-air change per metre of height, s⁻²: standard value, also in the NPL formula.
_FREE_AIR = -3.086e-6
# The NPL's statement for latitude-and-height formulas: within 5 parts in 10⁵.
_FORMULA_FRACTION = 5e-5
# Gravity where people live runs from the high tropics to the far north.
_INHABITED = (9.76, 9.83)


def normal_gravity(latitude_deg: ArrayLike, height_m: ArrayLike = 0.0) -> NDArray[np.float64]:
    """Normal gravity in m/s² at geodetic ``latitude_deg`` and ``height_m``; broadcasts."""
    sine_squared = np.sin(np.radians(np.asarray(latitude_deg, dtype=float))) ** 2
    on_ellipsoid = _G_EQUATOR * (1 + _K * sine_squared) / np.sqrt(1 - _E_SQUARED * sine_squared)
    return np.asarray(on_ellipsoid + _FREE_AIR * np.asarray(height_m, dtype=float))


def local_gravity(place: Place) -> LocalGravity:
    """Local g with its uncertainty; without a latitude, the inhabited range 9.76–9.83 m/s².

    The uncertainty of a rectangular range is its half-width over √3 (JCGM 100:2008, 4.3.7).
    An unknown height is taken as 0–500 m.
    """
    if place.latitude_deg is None:
        low, high = _INHABITED
        return LocalGravity(
            g=(low + high) / 2,
            u_g=(high - low) / 2 / 3**0.5,
            basis=say(
                "no place in the brief: anywhere people live, {range} m/s²",
                range=Figures("9.76–9.83"),
            ),
        )
    if place.height_m is None:
        g = float(normal_gravity(place.latitude_deg, 250.0))
        u_height = abs(_FREE_AIR) * 250.0 / 3**0.5
        where = say(
            "latitude {latitude:g}°, height not given (0–500 m)", latitude=place.latitude_deg
        )
    else:
        g = float(normal_gravity(place.latitude_deg, place.height_m))
        u_height = 0.0
        where = say(
            "latitude {latitude:g}°, height {height:g} m",
            latitude=place.latitude_deg,
            height=place.height_m,
        )
    u_formula = _FORMULA_FRACTION * g
    return LocalGravity(g=g, u_g=float(np.hypot(u_formula, u_height)), basis=where)
