"""Contrast of two colours.

References: W3C (2023), Web Content Accessibility Guidelines 2.2, "relative luminance" and
"contrast ratio".
"""

from __future__ import annotations


def luminance(colour: str) -> float:
    """Relative luminance of ``#rrggbb``, 0 (black) to 1 (white)."""
    channels = [int(colour[i : i + 2], 16) / 255 for i in (1, 3, 5)]
    linear = [c / 12.92 if c <= 0.04045 else ((c + 0.055) / 1.055) ** 2.4 for c in channels]
    return 0.2126 * linear[0] + 0.7152 * linear[1] + 0.0722 * linear[2]


def contrast(one: str, other: str) -> float:
    """Contrast ratio of two ``#rrggbb`` colours, 1 to 21, in either order."""
    darker, lighter = sorted((luminance(one), luminance(other)))
    return (lighter + 0.05) / (darker + 0.05)
