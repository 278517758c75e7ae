"""The pipeline without a hand in it: from a class as read to drafts with their reasons."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterable, Mapping, Set
from dataclasses import dataclass, replace
from functools import cached_property

from markbench.checks import Case, honest_rates
from markbench.checks import run as run_checks
from markbench.checks.copies import alike_findings, told_together
from markbench.checks.diagnosis import slip_finding, weigh
from markbench.checks.diagnosis.answers import answered
from markbench.checks.diagnosis.film import with_film
from markbench.checks.pieces import asked_once
from markbench.intake.allocation import without_collecting
from markbench.model import (
    Analysis,
    ClassWork,
    Diagnosis,
    Draft,
    Finding,
    Portfolio,
    Reading,
    Rubric,
)
from markbench.physics.analyse import analyse
from markbench.physics.gravity import local_gravity
from markbench.physics.stack import stack_readings
from markbench.rubric import Facts, draft, facts_of


@dataclass(frozen=True)
class Judged:
    """All that was worked out for one learner."""

    analysis: Analysis
    diagnosis: Diagnosis | None
    findings: tuple[Finding, ...]
    facts: Facts
    rubric: Rubric

    @cached_property
    def drafts(self) -> tuple[Draft, ...]:
        """Drafted when first asked for: a class of a thousand is on the screen before that."""
        return draft(self.rubric, self.facts, self.findings)


@without_collecting()
def judge(
    work: ClassWork,
    rubric: Rubric,
    analyses: Mapping[str, Analysis],
    agreed: Mapping[str, str],
    extra: Mapping[str, tuple[Finding, ...]],
    extensions: Mapping[str, dt.date],
    films: Mapping[str, Mapping[str, float]],
) -> dict[str, Judged]:
    """Question and weigh for the learners of ``analyses``, ready to draft.

    ``agreed`` maps a learner to the slip the teacher agreed on; ``extra`` holds findings
    that come from elsewhere: the evidence, and :func:`compare` over the whole class;
    ``films`` what the swing films say of ways of counting.
    """
    diagnoses = _weigh(work, list(analyses))
    findings = run_checks(work, analyses, extensions)
    names = {i: one.learner.name or i for i, one in work.portfolios.items()}
    judged = {}
    for learner, analysis in analyses.items():
        portfolio = work.portfolios[learner]
        diagnosis = diagnoses.get(learner)
        if diagnosis is not None and learner in films:
            diagnosis = with_film(diagnosis, films[learner])
        slip = slip_finding(diagnosis, learner) if diagnosis is not None else None
        found = (
            *asked_once(portfolio, (*portfolio.findings, *findings.get(learner, ()))),
            *((slip,) if slip is not None else ()),
            *told_together(extra.get(learner, ()), names),
        )
        if diagnosis is not None and learner in agreed:
            case = Case(portfolio, analysis, work.brief, extensions.get(learner))
            found = _answered(case, found, diagnosis, agreed[learner])
        facts = facts_of(
            portfolio,
            analysis,
            found,
            diagnosis,
            work.brief,
            agreed_slip=agreed.get(learner),
            extended_to=extensions.get(learner),
        )
        judged[learner] = Judged(
            analysis=analysis,
            diagnosis=diagnosis,
            findings=tuple(sorted(found, key=lambda finding: -finding.concern)),
            facts=facts,
            rubric=rubric,
        )
    return judged


def _answered(
    case: Case, found: tuple[Finding, ...], diagnosis: Diagnosis, agreed: str
) -> tuple[Finding, ...]:
    """The findings, those explained that the explanation agreed with answers."""
    chosen = next((e for e in diagnosis.explanations if e.slip == agreed), None)
    return found if chosen is None else answered(case, found, chosen)


def recompute(work: ClassWork, learners: Iterable[str]) -> dict[str, Analysis]:
    """The readings of some learners worked out again, all at once."""
    ids = list(learners)
    stack = stack_readings([_readings(work.portfolios[learner]) for learner in ids])
    return dict(zip(ids, analyse(stack, local_gravity(work.brief.place)), strict=True))


def compare(work: ClassWork) -> Mapping[str, tuple[Finding, ...]]:
    """Questions that need the whole class: tables that agree beyond chance."""
    rate = honest_rates().get("copied")
    return alike_findings(list(work.portfolios.values()), work.brief.partners, rate)


def compare_again(
    work: ClassWork, learners: Set[str], before: Mapping[str, tuple[Finding, ...]]
) -> Mapping[str, tuple[Finding, ...]]:
    """:func:`compare` where only the tables of ``learners`` changed; ``before`` as it was.

    A pair is judged by its two tables and the number of tables, so nobody else's pairs move.
    """
    rate = honest_rates().get("copied")
    everyone = list(work.portfolios.values())
    fresh = alike_findings(everyone, work.brief.partners, rate, only=learners)
    kept = {
        learner: tuple(one for one in found if one.numbers.get("with") not in learners)
        for learner, found in before.items()
        if learner not in learners
    }
    merged = {i: (*kept.get(i, ()), *fresh.get(i, ())) for i in {*kept, *fresh}}
    return {learner: found for learner, found in merged.items() if found}


def tables(work: ClassWork) -> int:
    """How many learners have readings to compare."""
    return sum(bool(_readings(portfolio)) for portfolio in work.portfolios.values())


def _readings(portfolio: Portfolio) -> tuple[Reading, ...]:
    return portfolio.table.readings if portfolio.table is not None else ()


def _weigh(work: ClassWork, ids: list[str]) -> dict[str, Diagnosis]:
    """Diagnoses of those whose readings allow one: two lengths with a timing each."""
    timed = {
        i: [(j, row) for j, row in enumerate(_readings(work.portfolios[i])) if row.timings]
        for i in ids
    }
    able = [i for i in ids if len({row.length_m for _, row in timed[i]}) >= 2]
    if not able:
        return {}
    stack = stack_readings([[row for _, row in timed[i]] for i in able])
    weighed = weigh(stack, local_gravity(work.brief.place))
    return {
        i: _in_place(diagnosis, [j for j, _ in timed[i]])
        for i, diagnosis in zip(able, weighed, strict=True)
    }


def _in_place(diagnosis: Diagnosis, rows: list[int]) -> Diagnosis:
    """Cells numbered by the whole table: rows without a timing were left out of weighing."""
    if rows == list(range(len(rows))):
        return diagnosis
    return replace(
        diagnosis,
        explanations=tuple(
            replace(e, cells=tuple((rows[i], k) for i, k in e.cells))
            for e in diagnosis.explanations
        ),
    )
