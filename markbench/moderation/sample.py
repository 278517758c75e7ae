"""Whom the moderator sees: every flagged outlier, and an ordinary sample over the range.

Size of the ordinary sample: the square root of the class, rounded up, at least ten; all
where there are no more. Common practice, no source; the steps of 10 up to 100 learners,
15 up to 200 and 20 above that awarding bodies publish lie close to it (from memory).

The highest and the lowest total and the nearest total on either side of each grade
boundary are taken first. What is left of the size is drawn evenly over the range: the
remaining learners in order of total are cut into as many equal runs as there are places,
and one is drawn from each. Drawing is by a digest of the seed and the learner's id, so that
the same seed gives the same sample on any machine, whatever the order of the class list.
Outliers come on top, so that they cannot crowd out the ordinary.
"""

from __future__ import annotations

import hashlib
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from math import ceil, sqrt
from typing import Any

from markbench.checks.wording import signed
from markbench.model import Draft, Figures, Finding, Mark, Rubric, say
from markbench.model.sentence import known_again
from markbench.moderation.grades import Boundaries

AT_LEAST = 10
# A quarter of the marks of the drafted criteria: common practice, no source.
FAR_FROM_DRAFTS = 0.25

# What the journal keeps as plain text, by its forms.
_KEPT = (
    "question for the moderator: {check}",
    "the numbers suggest a slip",
    "marked {apart} of {most} against the drafts",
    "drawn from run {run} of {runs} over the range of totals",
    "highest total",
    "lowest total",
    "nearest at or above grade {grade} ({least})",
    "nearest below grade {grade} ({least})",
    "Ordinary sample: square root of the class, at least {least}, all where there are no more: "
    "{n} of {of}; highest, lowest and either side of each grade boundary first, the rest "
    "spread over the range of totals. Flagged learners on top.",
)


@dataclass(frozen=True, slots=True)
class Sampled:
    """One learner of the sample, and every reason for being in it."""

    learner: str
    reasons: tuple[str, ...]
    outlier: bool = False


@dataclass(frozen=True, slots=True)
class Sample:
    """The sample in the order of the class list; ``unmarked`` could not be drawn."""

    learners: tuple[Sampled, ...]
    seed: int
    size: int
    class_size: int
    rule: str
    unmarked: tuple[str, ...] = ()

    @property
    def ids(self) -> tuple[str, ...]:
        """Ids of the learners in the sample."""
        return tuple(one.learner for one in self.learners)

    def __str__(self) -> str:
        outliers = sum(one.outlier for one in self.learners)
        return (
            f"{len(self.learners)} of {self.class_size} learners: {outliers} flagged, "
            f"{len(self.learners) - outliers} ordinary (seed {self.seed}). {self.rule}"
        )

    def to_json(self) -> dict[str, Any]:
        """The value of the ``sample`` decision."""
        return {
            "learners": {
                one.learner: {"reasons": list(one.reasons), "outlier": one.outlier}
                for one in self.learners
            },
            "order": list(self.ids),
            "seed": self.seed,
            "size": self.size,
            "class_size": self.class_size,
            "rule": self.rule,
            "unmarked": list(self.unmarked),
        }

    @classmethod
    def from_json(cls, value: Mapping[str, Any]) -> Sample:
        """The sample in a ``sample`` decision."""
        return cls(
            tuple(
                Sampled(
                    learner,
                    tuple(known_again(why, _KEPT) for why in value["learners"][learner]["reasons"]),
                    bool(value["learners"][learner]["outlier"]),
                )
                for learner in value["order"]
            ),
            value["seed"],
            value["size"],
            value["class_size"],
            known_again(value["rule"], _KEPT),
            tuple(value["unmarked"]),
        )


def sample_size(learners: int) -> int:
    """How many ordinary learners are second-marked in a class of this size."""
    return min(learners, max(AT_LEAST, ceil(sqrt(learners))))


def outlier_reasons(
    findings: Sequence[Finding],
    slip_flagged: bool,
    drafts: Sequence[Draft],
    marks: Mapping[str, Mark],
    rubric: Rubric,
) -> tuple[str, ...]:
    """Why the moderator should see this learner, whatever the draw; empty for most."""
    reasons = [
        say("question for the moderator: {check}", check=finding.check.replace("_", " "))
        for finding in findings
        if finding.who == "moderator"
    ]
    if slip_flagged or any(finding.check == "slip" for finding in findings):
        reasons.append(say("the numbers suggest a slip"))
    drafted = {d.criterion: d.marks for d in drafts if d.marks is not None and d.criterion in marks}
    most = sum(criterion.most for criterion in rubric.criteria if criterion.id in drafted)
    apart = sum(marks[criterion].marks - (given or 0.0) for criterion, given in drafted.items())
    if most and abs(apart) >= FAR_FROM_DRAFTS * most:
        reasons.append(
            say(
                "marked {apart} of {most} against the drafts",
                apart=signed(apart, "+g"),
                most=Figures(f"{most:g}"),
            )
        )
    return tuple(dict.fromkeys(reasons))


def draw(
    totals: Mapping[str, float | None],
    outliers: Mapping[str, Sequence[str]],
    boundaries: Boundaries,
    seed: int,
) -> Sample:
    """Draw a sample. ``totals`` holds every learner in class order, ``None`` if unmarked.

    ``outliers``: learner → reasons; those without reasons are ordinary. An outlier is
    taken even while unmarked.
    """
    reasons: dict[str, list[str]] = {
        learner: list(why) for learner, why in outliers.items() if why and learner in totals
    }
    flagged = set(reasons)
    ordinary = {
        learner: total
        for learner, total in totals.items()
        if total is not None and learner not in flagged
    }
    size = min(sample_size(len(totals)), len(ordinary))
    for learner, why in _coverage(ordinary, boundaries, seed).items():
        reasons.setdefault(learner, []).extend(why)
    covered = len(reasons) - len(flagged)
    left = [learner for learner in _by_total(ordinary, seed) if learner not in reasons]
    places = size - covered
    for run in range(max(places, 0)):
        members = left[run * len(left) // places : (run + 1) * len(left) // places]
        chosen = min(members, key=lambda learner: _lot(seed, learner))
        reasons[chosen] = [
            say("drawn from run {run} of {runs} over the range of totals", run=run + 1, runs=places)
        ]
    return Sample(
        tuple(
            Sampled(learner, tuple(reasons[learner]), learner in flagged)
            for learner in totals
            if learner in reasons
        ),
        seed,
        size,
        len(totals),
        _rule(len(totals)),
        tuple(learner for learner, total in totals.items() if total is None),
    )


def _rule(class_size: int) -> str:
    return say(
        "Ordinary sample: square root of the class, at least {least}, all where there are no more: "
        "{n} of {of}; highest, lowest and either side of each grade boundary first, the rest "
        "spread over the range of totals. Flagged learners on top.",
        least=AT_LEAST,
        n=sample_size(class_size),
        of=class_size,
    )


def _lot(seed: int, learner: str) -> str:
    """A learner's lot under a seed; a digest is the same for every machine and version."""
    return hashlib.sha256(f"{seed}:{learner}".encode("utf-8", "surrogatepass")).hexdigest()


def _by_total(totals: Mapping[str, float], seed: int) -> list[str]:
    return sorted(totals, key=lambda learner: (totals[learner], _lot(seed, learner)))


def _coverage(
    totals: Mapping[str, float], boundaries: Boundaries, seed: int
) -> dict[str, list[str]]:
    order = _by_total(totals, seed)
    found: dict[str, list[str]] = {}
    if not order:
        return found
    found.setdefault(order[-1], []).append(say("highest total"))
    found.setdefault(order[0], []).append(say("lowest total"))
    for grade, least in sorted(boundaries, key=lambda pair: -pair[1]):
        above = next((one for one in order if totals[one] >= least), None)
        below = next((one for one in reversed(order) if totals[one] < least), None)
        bound = {"grade": grade, "least": Figures(f"{least:g}")}
        if above is not None:
            why = say("nearest at or above grade {grade} ({least})", **bound)
            found.setdefault(above, []).append(why)
        if below is not None:
            found.setdefault(below, []).append(
                say("nearest below grade {grade} ({least})", **bound)
            )
    return found
