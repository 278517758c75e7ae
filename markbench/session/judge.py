"""The pipeline without a hand in it: from a class as read to drafts with their reasons."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from markbench.checks import honest_rates
from markbench.checks import run as run_checks
from markbench.checks.copies import alike_findings
from markbench.checks.diagnosis import slip_finding, weigh
from markbench.model import (
    Analysis,
    ClassWork,
    Diagnosis,
    Draft,
    Finding,
    LocalGravity,
    Portfolio,
    Reading,
    Rubric,
)
from markbench.physics.analyse import analyse
from markbench.physics.gravity import local_gravity
from markbench.physics.stack import stack_readings
from markbench.rubric import Facts, draft, facts_of


@dataclass(frozen=True, slots=True)
class Judged:
    """All that was worked out for one learner."""

    analysis: Analysis
    diagnosis: Diagnosis | None
    findings: tuple[Finding, ...]
    facts: Facts
    drafts: tuple[Draft, ...]


def judge(
    work: ClassWork,
    rubric: Rubric,
    agreed: Mapping[str, str],
    extra: Mapping[str, tuple[Finding, ...]],
    extensions: Mapping[str, dt.date],
    only: Iterable[str] | None = None,
) -> dict[str, Judged]:
    """Recompute, question, weigh and draft for every learner, or for those of ``only``.

    ``agreed`` maps a learner to the slip the teacher agreed on; ``extra`` holds findings
    that come from elsewhere: the evidence, and :func:`compare` over the whole class.
    """
    ids = list(work.portfolios if only is None else only)
    portfolios = [work.portfolios[learner] for learner in ids]
    local = local_gravity(work.brief.place)
    readings = [_readings(portfolio) for portfolio in portfolios]
    stack = stack_readings(readings)
    analyses = dict(zip(ids, analyse(stack, local), strict=True))
    diagnoses = _weigh(ids, readings, local)
    findings = run_checks(work, analyses, extensions)
    judged = {}
    for learner, portfolio in zip(ids, portfolios, strict=True):
        diagnosis = diagnoses.get(learner)
        slip = slip_finding(diagnosis, learner) if diagnosis is not None else None
        found = (
            *portfolio.findings,
            *findings.get(learner, ()),
            *((slip,) if slip is not None else ()),
            *extra.get(learner, ()),
        )
        facts = facts_of(
            portfolio,
            analyses[learner],
            found,
            diagnosis,
            work.brief,
            agreed_slip=agreed.get(learner),
            extended_to=extensions.get(learner),
        )
        judged[learner] = Judged(
            analysis=analyses[learner],
            diagnosis=diagnosis,
            findings=tuple(sorted(found, key=lambda finding: -finding.concern)),
            facts=facts,
            drafts=draft(rubric, facts, found),
        )
    return judged


def compare(work: ClassWork) -> Mapping[str, tuple[Finding, ...]]:
    """Questions that need the whole class: tables that agree beyond chance."""
    rate = honest_rates().get("copied")
    return alike_findings(list(work.portfolios.values()), work.brief.partners, rate)


def _readings(portfolio: Portfolio) -> tuple[Reading, ...]:
    return portfolio.table.readings if portfolio.table is not None else ()


def _weigh(
    ids: list[str], readings: list[tuple[Reading, ...]], local: LocalGravity
) -> dict[str, Diagnosis]:
    """Diagnoses of those whose readings allow one: two lengths with a timing each."""
    able = [
        i
        for i, rows in enumerate(readings)
        if len({row.length_m for row in rows if row.timings}) >= 2
    ]
    if not able:
        return {}
    stack = stack_readings([[row for row in readings[i] if row.timings] for i in able])
    return {ids[i]: d for i, d in zip(able, weigh(stack, local), strict=True)}
