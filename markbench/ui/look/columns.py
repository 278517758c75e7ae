"""Widths of a table's columns, as a careful hand would rule them."""

from __future__ import annotations

from collections.abc import Sequence


def fair_widths(
    least: Sequence[int], wanted: Sequence[int], room: int, spare: int
) -> tuple[int, ...]:
    """Widths for columns that hold their texts on one line at ``wanted``, wrapped at ``least``.

    Where there is room for all, column number ``spare`` takes what is over. Where there is
    not, each gives up the same part of what it could. Below ``least`` none goes: the table
    then scrolls.
    """
    over = room - sum(wanted)
    if over >= 0:
        return tuple(w + over * (i == spare) for i, w in enumerate(wanted))
    could = sum(wanted) - sum(least)
    part = min(-over / could, 1.0) if could else 1.0
    return tuple(int(w - part * (w - s)) for s, w in zip(least, wanted, strict=True))
