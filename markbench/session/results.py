"""Every learner's result as it stands: the marks that hold, adjustment, lateness, grade.

Apart from the statistics of moderation, which load slowly and which an export needs not.
"""

from __future__ import annotations

from collections.abc import Mapping

from markbench.moderation.outcome import Outcome, outcomes
from markbench.moderation.records import sign_off_of
from markbench.session import present
from markbench.session.session import Session


def results(session: Session) -> dict[str, Outcome]:
    """The result of every learner, in the order of the class list."""
    ids = [learner.id for learner in session.learners]
    return outcomes(
        session.state,
        session.rubric,
        session.brief,
        {learner: session.marks(learner) for learner in ids},
        {learner: session.portfolio(learner).handed_in for learner in ids},
        present.extensions(session.state),
    )


def changed_since_sign_off(
    session: Session, found: Mapping[str, Outcome] | None = None
) -> dict[str, tuple[tuple[float | None, str], ...]]:
    """Learners whose total or grade is not what was signed: signed, present.

    The marks are frozen, yet an edited brief (boundaries, late rule) or a later piece can
    still move a result; nobody should find that out from a parent.
    """
    signed = sign_off_of(session.state)
    if signed is None:
        return {}
    found = results(session) if found is None else found
    now = {x: (one.total, one.grade) for x, one in found.items()}
    return {
        x: (signed.results.get(x, (None, "")), now.get(x, (None, "")))
        for x in {**signed.results, **now}
        if signed.results.get(x) != now.get(x)
    }
