"""Grades from totals: what moving a boundary would do, and what lateness costs."""

from __future__ import annotations

import datetime as dt
from collections.abc import Mapping
from dataclasses import dataclass
from itertools import pairwise

from markbench.model import Late, say

Boundaries = tuple[tuple[str, float], ...]
"""(grade, least marks), in any order."""


@dataclass(frozen=True, slots=True)
class GradeChange:
    """One learner whose grade is not what it was; an empty grade is below the lowest."""

    learner: str
    total_before: float
    total_after: float
    before: str
    after: str


@dataclass(frozen=True, slots=True)
class BoundaryEffect:
    """What a set of boundaries does: learners at each grade, and who changes grade.

    ``counts`` runs from the highest grade down and ends with those below the lowest.
    """

    boundaries: Boundaries
    counts: tuple[tuple[str, int], ...]
    changes: tuple[GradeChange, ...]


def grade_of(total: float | None, boundaries: Boundaries) -> str:
    """The highest grade whose least marks the total reaches; empty below the lowest.

    Also empty without boundaries or total. Totals are sums of decimal marks, so a total
    within a billionth of a boundary is on it.
    """
    if total is None:
        return ""
    reached = [(least, grade) for grade, least in boundaries if total >= least - 1e-9]
    return max(reached)[1] if reached else ""


def shifted(total: float, shift: float, most: float) -> float:
    """A total moved by an adjustment, kept between 0 and the marks available."""
    return min(max(total + shift, 0.0), most)


def effect_of_shift(
    totals: Mapping[str, float],
    shift: float,
    most: float,
    boundaries: Boundaries,
    *,
    late: Mapping[str, float] | None = None,
    now: float = 0.0,
) -> tuple[GradeChange, ...]:
    """Every learner whose grade changes where ``totals`` move by ``shift``, not by ``now``.

    ``late``: learner → marks that lateness takes off afterwards.
    """
    changes = []
    for learner, total in totals.items():
        off = (late or {}).get(learner, 0.0)
        before = max(shifted(total, now, most) - off, 0.0)
        after = max(shifted(total, shift, most) - off, 0.0)
        was, would = grade_of(before, boundaries), grade_of(after, boundaries)
        if was != would:
            changes.append(GradeChange(learner, before, after, was, would))
    return tuple(changes)


def effect_of_moving(
    boundaries: Boundaries, totals: Mapping[str, float], moved: Boundaries | None = None
) -> BoundaryEffect:
    """Grades under ``moved`` boundaries against those under ``boundaries``; live enough to drag."""
    after = boundaries if moved is None else moved
    changes = []
    counts = {grade: 0 for grade, _ in sorted(after, key=lambda pair: -pair[1])} | {"": 0}
    for learner, total in totals.items():
        was, now = grade_of(total, boundaries), grade_of(total, after)
        counts[now] += 1
        if was != now:
            changes.append(GradeChange(learner, total, total, was, now))
    return BoundaryEffect(after, tuple(counts.items()), tuple(changes))


def move(boundaries: Boundaries, grade: str, least: float) -> Boundaries:
    """The boundaries with one moved. ``ValueError`` if it would pass its neighbour."""
    moved = tuple((name, least if name == grade else at) for name, at in boundaries)
    order = [name for name, _ in sorted(boundaries, key=lambda pair: -pair[1])]
    at = dict(moved)
    if grade not in at:
        raise ValueError(say("there is no grade {grade}", grade=grade))
    if any(at[upper] <= at[lower] for upper, lower in pairwise(order)):
        raise ValueError(
            say(
                "{grade} at {least:g} marks would pass a neighbouring grade",
                grade=grade,
                least=least,
            )
        )
    return moved


@dataclass(frozen=True, slots=True)
class LateDeduction:
    """What lateness takes off a total; the sheet's language says it in words.

    Handed in ``days`` after ``last_day``, of which ``counted`` cost ``marks_per_day`` each.
    """

    days: int
    counted: int
    marks_per_day: float
    last_day: dt.date

    @property
    def marks_off(self) -> float:
        """Marks taken off the total."""
        return self.counted * self.marks_per_day


def late_deduction(
    rule: Late, last_day: dt.date | None, handed_in: dt.datetime | None
) -> LateDeduction | None:
    """Marks off for work handed in after ``last_day``; ``None`` where the rule takes none."""
    if last_day is None or handed_in is None or rule.marks_per_day == 0:
        return None
    days = (handed_in.date() - last_day).days
    if days <= 0:
        return None
    counted = days if rule.most_days is None else min(days, rule.most_days)
    return LateDeduction(days, counted, rule.marks_per_day, last_day)
