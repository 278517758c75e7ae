"""How first and second marks of a session agree, and what the figures say.

Apart from the commands of moderation: the statistics under it load slowly, and a page that
only draws a sample or signs need not wait for them.
"""

from __future__ import annotations

from collections.abc import Mapping

from markbench.checks.wording import true_minus
from markbench.model import joined, say
from markbench.moderation.agreement import ClassAgreement, CriterionAgreement, agreement
from markbench.moderation.kappa import Weights
from markbench.moderation.outcome import Outcome
from markbench.moderation.severity import Proposal, propose_adjustment
from markbench.session.results import results
from markbench.session.session import Session

_FEW = 20  # common practice, no source: below it an interval is too wide to lean on


def agreement_of(
    session: Session, *, marker: str | None = None, weights: Weights = "quadratic"
) -> ClassAgreement:
    """How first and second marks agree."""
    return agreement(session.rubric, results(session), marker=marker, weights=weights)


def proposal_of(
    session: Session,
    agreed: ClassAgreement | None = None,
    found: Mapping[str, Outcome] | None = None,
) -> Proposal | None:
    """An adjustment to think about, where severity is beyond chance. Applies nothing.

    Whoever has the agreement and the results at hand may give them, and saves their cost.
    """
    found = results(session) if found is None else found
    agreed = agreement(session.rubric, found) if agreed is None else agreed
    return propose_adjustment(
        agreed.severity,
        {x: one.moderated_total for x, one in found.items() if one.moderated_total is not None},
        session.brief.grade_boundaries,
        session.rubric.most,
        settled={x for x, one in found.items() if one.looked_at},
        late={x: one.late.marks_off for x, one in found.items() if one.late is not None},
    )


def sentence_of(one: CriterionAgreement) -> str:
    """What the figures of one criterion say, in plain words and without a verdict."""
    share = one.exact
    if not share.of or share.low95 is None or share.high95 is None:
        return say("Nobody has a first and a second mark here yet.")
    told = say(
        "The same level for {n} of {of} learners; among many such learners it might be {low:.0f} "
        "to {high:.0f} %.",
        n=share.count,
        of=share.of,
        low=100 * share.low95,
        high=100 * share.high95,
    )
    return joined((told, say("Too few to say more."))) if share.of < _FEW else told


def cautions(agreed: ClassAgreement) -> tuple[str, ...]:
    """What must be read with the figures."""
    count = len(agreed.learners)
    found = [agreed.caution]
    if count < _FEW:
        found.append(
            say(
                "{n} learner was marked in full by both. So few fix no figure closely: read the "
                "intervals, not the values."
                if count == 1
                else "{n} learners were marked in full by both. So few fix no figure closely: read "
                "the intervals, not the values.",
                n=count,
            )
        )
    return tuple(found)


def notes(agreed: ClassAgreement) -> tuple[str, ...]:
    """What must be read with the figures, and severity, for a record that has no page for it."""
    if agreed.severity.mean is None:
        return cautions(agreed)
    return (*cautions(agreed), true_minus(f"Severity, {agreed.severity}."))
