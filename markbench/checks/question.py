"""What a check is, and what it is given to look at."""

from __future__ import annotations

import datetime as dt
from collections.abc import Callable, Iterable
from dataclasses import dataclass
from functools import cached_property
from typing import Literal

from markbench.model import Analysis, Brief, Finding, Portfolio, Reading, Row


@dataclass(frozen=True)
class Case:
    """One portfolio before a check: what was handed in, recomputed, and asked for."""

    portfolio: Portfolio
    analysis: Analysis
    brief: Brief
    extended_to: dt.date | None = None

    @property
    def learner(self) -> str:
        """Id of the learner."""
        return self.portfolio.learner.id

    @cached_property
    def readings(self) -> tuple[Reading, ...]:
        """Readings as understood; empty where no table was."""
        return self.portfolio.table.readings if self.portfolio.table is not None else ()

    @cached_property
    def timed(self) -> list[tuple[int, Reading, Row]]:
        """Index, reading and recomputed row of every length that has a timing."""
        return [
            (i, reading, row)
            for i, (reading, row) in enumerate(zip(self.readings, self.analysis.rows, strict=True))
            if reading.timings
        ]


Origin = Literal["checks", "intake", "evidence", "diagnosis", "class"]


@dataclass(frozen=True, slots=True)
class Check:
    """One question of the registry.

    ``explanation`` is for teachers; ``rests_on`` names the numbers the answer rests on.
    ``ask`` is ``None`` for questions that are put elsewhere (while reading files, while
    looking at the evidence, by the diagnosis) and listed here so that no finding is
    without an explanation. ``judges_numbers``: honest scatter alone can trip it, so a
    measured false-alarm rate is due.
    """

    id: str
    title: str
    explanation: str
    rests_on: str
    ask: Callable[[Case], Iterable[Finding]] | None = None
    origin: Origin = "checks"
    judges_numbers: bool = False
