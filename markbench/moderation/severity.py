"""Is one marker more severe than the other beyond chance, and what would follow from it.

The test is Fisher's randomisation test on paired differences, worked out exactly: were
both markers alike, each difference would be as likely to have the other sign. It needs no
normal distribution, copes with whole marks and ties, and its smallest p-value is honest in
small samples (five pairs can never show p below 0.06). The interval beside it is Student's.

Reference: Fisher (1935) The Design of Experiments, section 21.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Collection, Mapping, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction
from math import lcm

from markbench.model import Figures, say
from markbench.moderation.differences import Interval, limits_of_agreement
from markbench.moderation.grades import Boundaries, GradeChange, effect_of_shift, shifted


@dataclass(frozen=True, slots=True)
class Severity:
    """Mean of second − first for one criterion, or for the total (``what`` empty).

    Below nought the second marker is the more severe. ``p`` is two-sided and exact;
    ``p_adjusted`` allows for the number of criteria looked at (Holm).
    """

    what: str
    differences: tuple[float, ...]
    mean: float | None
    mean95: Interval | None
    p: float | None
    p_adjusted: float | None = None

    @property
    def beyond_chance(self) -> bool:
        """Whether the adjusted p-value is below 0.05 (a convention, no verdict)."""
        p = self.p_adjusted if self.p_adjusted is not None else self.p
        return p is not None and p < 0.05

    def __str__(self) -> str:
        if self.mean is None:
            return say("{what}: nobody was marked twice", what=self.what or say("total"))
        p = self.p_adjusted if self.p_adjusted is not None else self.p
        low, high = self.mean95 or (None, None)
        return say(
            "{what}: second − first {mean:+.2f} marks on average, exact {p}, n = {n}"
            if low is None
            else "{what}: second − first {mean:+.2f} marks on average (95 % interval {low:+.2f} "
            "to {high:+.2f}), exact {p}, n = {n}",
            what=self.what or say("total"),
            mean=self.mean,
            low=low,
            high=high,
            p=p_words(p),
            n=len(self.differences),
        )


def p_words(p: float | None) -> str:
    """A p-value as it is read: nobody needs to know how small a small one is."""
    if p is None:
        return say("p undefined")
    told = "p < 0.001" if p < 0.001 else f"p = {p:.2g}"
    return Figures(told.replace(" ", "\u00a0"))  # on one line


def severity(first: Sequence[float], second: Sequence[float], what: str = "") -> Severity:
    """Paired comparison of two markers of the same learners."""
    limits = limits_of_agreement(first, second)
    differences = tuple(difference for _, difference in limits.points)
    p = sign_flip_p(differences) if differences else None
    return Severity(what, differences, limits.mean, limits.mean95, p)


def by_criterion(
    pairs: Mapping[str, tuple[Sequence[float], Sequence[float]]],
) -> dict[str, Severity]:
    """Severity of each criterion, with p-values adjusted by Holm's method (Holm 1979)."""
    found = {name: severity(one, two, name) for name, (one, two) in pairs.items()}
    tested = sorted((one.p, name) for name, one in found.items() if one.p is not None)
    at_least = 0.0
    for rank, (p, name) in enumerate(tested):
        at_least = max(at_least, min(1.0, (len(tested) - rank) * p))
        found[name] = replace(found[name], p_adjusted=at_least)
    return found


def sign_flip_p(differences: Sequence[float]) -> float:
    """Exact two-sided p-value: share of sign patterns with a sum as far from nought."""
    exact = [Fraction(difference).limit_denominator(10**6) for difference in differences]
    # Whole multiples of the smallest step: sums of floats would miss ties.
    unit = lcm(*(step.denominator for step in exact))
    steps = [int(step * unit) for step in exact]
    ways = {0: 1}
    for step in steps:
        following: dict[int, int] = defaultdict(int)
        for total, count in ways.items():
            following[total + step] += count
            following[total - step] += count
        ways = following
    far = abs(sum(steps))
    as_far = sum(count for total, count in ways.items() if abs(total) >= far)
    return float(Fraction(as_far, 2 ** len(steps)))


@dataclass(frozen=True, slots=True)
class Proposal:
    """An adjustment a person may decide on; nothing applies it by itself.

    ``shift`` is added to the total of every learner named in ``totals``, kept between 0
    and ``most``. ``changes`` lists every learner whose grade would change.
    """

    shift: float
    basis: Severity
    totals: Mapping[str, tuple[float, float]]
    changes: tuple[GradeChange, ...]
    most: float

    def __str__(self) -> str:
        return (
            f"Proposed, not applied: {self.shift:+g} marks on {len(self.totals)} totals; "
            f"{len(self.changes)} grades would change. Basis: {self.basis}"
        )


def propose_adjustment(
    found: Severity,
    totals: Mapping[str, float],
    boundaries: Boundaries,
    most: float,
    *,
    settled: Collection[str] = (),
    late: Mapping[str, float] | None = None,
    step: float = 1.0,
) -> Proposal | None:
    """What shifting first marks by the mean difference would do; ``None`` if within chance.

    ``totals`` are the first marker's; ``settled`` are learners whose marks the moderator
    has already settled one by one, and who are left alone; ``late``: what lateness takes
    off a total afterwards, before its grade is read. The shift is rounded to
    ``step`` marks; ``None`` also where it rounds to nought.
    """
    if found.mean is None or not found.beyond_chance:
        return None
    shift = round(found.mean / step) * step
    if shift == 0:
        return None
    moved = {
        learner: (total, shifted(total, shift, most))
        for learner, total in totals.items()
        if learner not in settled
    }
    free = {learner: before for learner, (before, _) in moved.items()}
    changes = effect_of_shift(free, shift, most, boundaries, late=late)
    return Proposal(shift, found, moved, changes, most)
