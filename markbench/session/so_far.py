"""What a learner has so far, marks and drafts together, of what can be had for just these."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from markbench.session.session import Session


@dataclass(frozen=True, slots=True)
class SoFar:
    """``marks`` of ``most``; ``for_your_eye`` criteria have neither a mark nor a draft."""

    marks: float
    most: float
    for_your_eye: int

    @property
    def share(self) -> float:
        """The part of what can be had; 0 where nothing can."""
        return self.marks / self.most if self.most else 0.0


def so_far(session: Session, learner: str) -> SoFar:
    """A criterion left to the teacher's eye counts neither for the learner nor against."""
    known = {d.criterion: d.marks for d in session.drafts(learner) if d.marks is not None}
    known |= {criterion: mark.marks for criterion, mark in session.marks(learner).items()}
    criteria = session.rubric.criteria
    return SoFar(
        marks=math.fsum(known.values()),
        most=math.fsum(one.most for one in criteria if one.id in known),
        for_your_eye=sum(one.id not in known for one in criteria),
    )
