"""Questions put to a portfolio or a class; each answers with findings."""

from __future__ import annotations

import datetime as dt
import tomllib
from collections.abc import Mapping
from dataclasses import replace
from functools import lru_cache
from importlib.resources import files

from markbench.checks.question import Case, Check
from markbench.checks.registry import CHECKS
from markbench.model import Analysis, ClassWork, Finding

__all__ = ["CHECKS", "Case", "Check", "honest_rates", "run"]


def run(
    work: ClassWork,
    analyses: Mapping[str, Analysis],
    extensions: Mapping[str, dt.date] | None = None,
) -> dict[str, tuple[Finding, ...]]:
    """Put every question of the registry to the learners of ``analyses``."""
    extensions = extensions or {}
    rates = honest_rates()
    asked = [check for check in CHECKS.values() if check.ask is not None]
    found: dict[str, tuple[Finding, ...]] = {}
    for learner, analysis in analyses.items():
        case = Case(work.portfolios[learner], analysis, work.brief, extensions.get(learner))
        answers: list[Finding] = []
        for check in asked:
            for finding in check.ask(case) if check.ask is not None else ():
                rate = rates.get(finding.check)
                answers.append(finding if rate is None else replace(finding, honest_rate=rate))
        found[learner] = tuple(answers)
    return found


@lru_cache(maxsize=1)
def honest_rates() -> Mapping[str, float]:
    """Measured share of honest learners who trip each check (``honest_rates.toml``)."""
    text = files(__package__).joinpath("honest_rates.toml").read_text("utf-8")
    rates: Mapping[str, float] = tomllib.loads(text)["rates"]
    return rates
