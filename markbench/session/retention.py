"""The day until which photos and films are kept, and what is said once it has passed.

Nothing is ever removed by a date: the date reminds, a person removes.
"""

from __future__ import annotations

import datetime as dt
from dataclasses import dataclass

from markbench.session.evidence import is_media
from markbench.session.session import Session


@dataclass(frozen=True, slots=True)
class Overdue:
    """Photos and films that are still there after their day: how many, and their bytes."""

    until: dt.date
    count: int
    size_bytes: int

    def __str__(self) -> str:
        return (
            f"Photos and videos were to be kept until {self.until:%d %B %Y} "
            f"(keep_evidence_until in the brief); {self.count} of them "
            f"({self.size_bytes / 1e6:.1f} MB) are still here."
        )


def overdue(session: Session, today: dt.date | None = None) -> Overdue | None:
    """What is kept past its day; ``None`` where the brief names no day or nothing is left."""
    until = session.brief.keep_evidence_until
    if until is None or (today or dt.date.today()) <= until:
        return None
    work = session.work
    pieces = [p for one in work.portfolios.values() for p in (*one.pieces, *one.earlier)]
    pieces += [*work.unowned, *work.set_aside, *(doubt.piece for doubt in work.doubts)]
    left = {p.file: p.size_bytes for p in pieces if is_media(p) and not p.gone}
    return Overdue(until, len(left), sum(left.values())) if left else None
