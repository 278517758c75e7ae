"""How far first and second markers agree, criterion by criterion and in total.

Small samples get wide intervals and no verdict: nothing here says "good" or "poor". The
sample contains every flagged outlier, so agreement in it is, if anything, lower than in
the whole class; the report says so beside the numbers.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from scipy.stats import binomtest

from markbench.model import Criterion, Mark, Rubric, say
from markbench.moderation.differences import (
    Concordance,
    Limits,
    concordance,
    limits_of_agreement,
)
from markbench.moderation.intraclass import Intraclasses, intraclass
from markbench.moderation.kappa import Kappa, Weights, kappa_of
from markbench.moderation.outcome import Outcome
from markbench.moderation.severity import Severity, by_criterion, severity

CAUTION = say(
    "The sample holds every flagged outlier on purpose, so these numbers describe the sample, "
    "not the class as a whole."
)


@dataclass(frozen=True, slots=True)
class Share:
    """``count`` of ``of``, with the exact interval of Clopper and Pearson (1934)."""

    count: int
    of: int
    low95: float | None
    high95: float | None

    @property
    def value(self) -> float | None:
        """The share; ``None`` of nobody."""
        return self.count / self.of if self.of else None

    def __str__(self) -> str:
        if self.low95 is None or self.high95 is None:
            return "undefined, nobody was marked twice"
        return (
            f"{self.count} of {self.of} (95 % interval {100 * self.low95:.0f} to "
            f"{100 * self.high95:.0f} %)"
        )


@dataclass(frozen=True, slots=True)
class CriterionAgreement:
    """Agreement on one criterion. ``learners``, ``first`` and ``second`` run side by side."""

    criterion: str
    title: str
    learners: tuple[str, ...]
    first: tuple[Mark, ...]
    second: tuple[Mark, ...]
    exact: Share
    within_one: Share
    kappa: Kappa
    severity: Severity


@dataclass(frozen=True, slots=True)
class ClassAgreement:
    """Agreement on a class. ``learners`` are those whose totals both markers gave."""

    criteria: tuple[CriterionAgreement, ...]
    learners: tuple[str, ...]
    totals: Limits
    concordance: Concordance
    intraclass: Intraclasses
    severity: Severity
    caution: str = CAUTION

    def __str__(self) -> str:
        lines = [
            f"{one.title}: same level {one.exact}; within one level {one.within_one}; {one.kappa}"
            for one in self.criteria
        ]
        lines += [f"Total: {self.totals}", str(self.intraclass["(2,1)"]), str(self.severity)]
        return "\n".join([*lines, self.caution])


def agreement(
    rubric: Rubric,
    outcomes: Mapping[str, Outcome],
    *,
    marker: str | None = None,
    weights: Weights | Sequence[Sequence[float]] = "quadratic",
) -> ClassAgreement:
    """Agreement of first marks with the second marks of ``marker`` (default: the earliest).

    A matrix for ``weights`` must fit every criterion's number of levels.
    """
    pairs: dict[str, dict[str, tuple[Mark, Mark]]] = {c.id: {} for c in rubric.criteria}
    for learner, outcome in outcomes.items():
        for row in outcome.criteria:
            given = next((m for m in row.seconds if marker in (None, m.by)), None)
            if row.first is not None and given is not None:
                pairs[row.criterion][learner] = (row.first, given)
    harsh = by_criterion(
        {
            criterion: ([a.marks for a, _ in found.values()], [b.marks for _, b in found.values()])
            for criterion, found in pairs.items()
        }
    )
    criteria = tuple(
        _criterion(criterion, pairs[criterion.id], harsh[criterion.id], weights)
        for criterion in rubric.criteria
    )
    whole = tuple(
        learner for learner in outcomes if all(learner in found for found in pairs.values())
    )
    first = [sum(found[learner][0].marks for found in pairs.values()) for learner in whole]
    second = [sum(found[learner][1].marks for found in pairs.values()) for learner in whole]
    return ClassAgreement(
        criteria,
        whole,
        limits_of_agreement(first, second),
        concordance(first, second),
        intraclass(list(zip(first, second, strict=True))),
        severity(first, second),
    )


def level_index(criterion: Criterion, mark: Mark) -> int:
    """Place of a mark among the levels, highest first; by its marks if the name is unknown.

    A rubric edited after marking may have lost a level's name.
    """
    names = [level.name for level in criterion.levels]
    if mark.level in names:
        return names.index(mark.level)
    apart = [abs(level.marks - mark.marks) for level in criterion.levels]
    return apart.index(min(apart))


def share(count: int, of: int) -> Share:
    """A share with its exact interval."""
    if of == 0:
        return Share(0, 0, None, None)
    span = binomtest(count, of).proportion_ci(0.95, method="exact")
    return Share(count, of, float(span.low), float(span.high))


def _criterion(
    criterion: Criterion,
    pairs: Mapping[str, tuple[Mark, Mark]],
    harsh: Severity,
    weights: Weights | Sequence[Sequence[float]],
) -> CriterionAgreement:
    first = tuple(one for one, _ in pairs.values())
    second = tuple(other for _, other in pairs.values())
    places = [(level_index(criterion, a), level_index(criterion, b)) for a, b in pairs.values()]
    return CriterionAgreement(
        criterion.id,
        criterion.title,
        tuple(pairs),
        first,
        second,
        share(sum(a == b for a, b in places), len(places)),
        share(sum(abs(a - b) <= 1 for a, b in places), len(places)),
        kappa_of(
            [a for a, _ in places],
            [b for _, b in places],
            range(len(criterion.levels)),
            weights,
        ),
        harsh,
    )
