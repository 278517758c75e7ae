"""A sheet as plain rows, before anyone decides how it is written."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterable
from dataclasses import dataclass, field
from typing import Literal


@dataclass(frozen=True, slots=True)
class Number:
    """A number and the decimals it is shown with (``None``: as many as it has)."""

    value: float
    decimals: int | None = None


@dataclass(frozen=True, slots=True)
class DraftText:
    """Something the program proposes and nobody has accepted; always says so in words."""

    text: str


Cell = str | Number | DraftText | dt.date | dt.datetime | None


@dataclass(frozen=True, slots=True)
class Column:
    """A heading, its width in characters, and what it means (for the read-me sheet)."""

    heading: str
    width: float
    meaning: str
    align: Literal["left", "right"] = "left"


@dataclass(frozen=True, slots=True)
class Sheet:
    """One sheet. ``held`` columns stay in view and repeat on every printed page."""

    title: str
    about: str
    columns: tuple[Column, ...]
    rows: Iterable[tuple[Cell, ...]] = field(repr=False)
    held: int = 2


ID = Column("Id", 9, "The learner's id in the class list.")
NAME = Column("Name", 23, "The learner's name in the class list.")
