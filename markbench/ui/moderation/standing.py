"""How a class's moderation stands, taken together once for every paper of the page.

What the journal says is there at once; the figures take statistics that load slowly, and
are worked out off the main thread.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import TYPE_CHECKING

from markbench.moderation.outcome import Outcome
from markbench.moderation.records import ClassAdjustment, SignOff, class_adjustment, sign_off_of
from markbench.moderation.sample import Sample
from markbench.session.moderating import BeforeSigning, before_signing, sample_of
from markbench.session.results import changed_since_sign_off, results

if TYPE_CHECKING:
    from markbench.moderation.agreement import ClassAgreement
    from markbench.moderation.severity import Proposal
    from markbench.session import Session


@dataclass(frozen=True, slots=True)
class Figures:
    """How the markers agree, and the adjustment that may be thought about."""

    agreed: ClassAgreement
    proposal: Proposal | None

    @classmethod
    def of(cls, session: Session, found: Mapping[str, Outcome]) -> Figures:
        """Work them out; takes a moment, and reads nothing that a command changes."""
        from markbench.moderation.agreement import agreement
        from markbench.session.agreeing import proposal_of

        agreed = agreement(session.rubric, found)
        return cls(agreed, proposal_of(session, agreed, found))


@dataclass(frozen=True, slots=True)
class Standing:
    """``names`` as they may be seen; ``titles`` of criteria; ``moved`` since the sign-off;
    ``ahead`` are those to be looked at before it.

    ``figures`` is ``None`` while they are being worked out.
    """

    names: Mapping[str, str]
    titles: Mapping[str, str]
    found: Mapping[str, Outcome]
    sample: Sample | None
    adjusted: ClassAdjustment | None
    signed: SignOff | None
    moved: Mapping[str, tuple[tuple[float | None, str], ...]]
    ahead: BeforeSigning
    figures: Figures | None = None

    @classmethod
    def of(cls, session: Session) -> Standing:
        """As it is now, without the figures."""
        found = results(session)
        return cls(
            {one.id: one.name or one.id for one in session.learners},
            {one.id: one.title for one in session.rubric.criteria},
            found,
            sample_of(session),
            class_adjustment(session.state),
            sign_off_of(session.state),
            changed_since_sign_off(session, found),
            before_signing(session, found),
        )

    @property
    def totals(self) -> dict[str, float]:
        """Totals as they stand, of those fully marked."""
        return {x: one.total for x, one in self.found.items() if one.total is not None}

    @property
    def open(self) -> list[tuple[str, str, str]]:
        """(learner, criterion, sentence) of all that is open between markers."""
        return [
            (learner, row.criterion, row.open)
            for learner, one in self.found.items()
            for row in one.criteria
            if row.open
        ]
