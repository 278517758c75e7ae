"""What the class view shows of one learner, gathered from the session once per change."""

from __future__ import annotations

import datetime as dt
import math
from collections.abc import Callable, Iterable
from dataclasses import dataclass, field
from functools import cached_property, partial
from statistics import median
from typing import TYPE_CHECKING, cast

from markbench.model import (
    Brief,
    Concern,
    Finding,
    PieceKind,
    PieceState,
    Portfolio,
    piece_states,
)

if TYPE_CHECKING:
    from markbench.session import Session
    from markbench.session.so_far import SoFar


@dataclass(frozen=True)
class LearnerRow:
    """One learner at a glance. ``points`` are (length in m, period squared in s²).

    ``called`` is what the card is headed with: the name, or the number where names are hidden.
    """

    id: str
    name: str
    called: str
    surname: str
    group: str
    order: int
    points: tuple[tuple[float, float], ...]
    line: tuple[float, float] | None
    pieces: tuple[tuple[PieceKind, PieceState], ...]
    look: int
    ask: int
    note: int
    checks: frozenset[str]
    summary: str
    marked: int
    criteria: int
    total: float | None
    most: float
    handed_in: dt.datetime | None
    late: bool
    changed: bool
    _add_up: Callable[[], SoFar] = field(compare=False)

    @cached_property
    def so_far(self) -> SoFar:
        """Marks and drafts together, added up when first shown or sorted by."""
        return self._add_up()

    @property
    def drafted(self) -> float | None:
        """Marks and drafts together; ``None`` where there is neither."""
        return self.so_far.marks if self.so_far.most else None

    @cached_property
    def by_name(self) -> tuple[str | int, ...]:
        """Sorts by name as people do: by the surname where it is told, 2 before 10."""
        from markbench.session.order import natural  # late, as the session is

        return natural(f"{self.surname} {self.name}".strip())

    @cached_property
    def sought(self) -> str:
        """What a search looks in: without accents, and with umlauts spelt out, too."""
        from markbench.intake.names import forms  # late, as the session is

        return " ".join(forms(f"{self.name} {self.group}"))

    @property
    def concern(self) -> tuple[int, int, int]:
        """Sorts by how much should be looked at."""
        return (self.look, self.ask, self.note)

    @property
    def missing(self) -> tuple[PieceKind, ...]:
        """Pieces asked for and not there."""
        return tuple(kind for kind, state in self.pieces if state == "missing")

    @property
    def untold(self) -> tuple[PieceKind, ...]:
        """Pieces that a photo which nobody has told apart yet could be."""
        return tuple(kind for kind, state in self.pieces if state == "untold")

    @property
    def finished(self) -> bool:
        """Every criterion bears a mark, and no mark is to be looked at again."""
        return self.criteria > 0 and self.marked == self.criteria


def learner_row(
    session: Session, learner_id: str, order: int, called: str | None = None
) -> LearnerRow:
    """Gather one learner, ``called`` by something else than the name."""
    from markbench.session.since_marked import since_marked  # late, as the session is
    from markbench.session.so_far import so_far

    portfolio = session.portfolio(learner_id)
    analysis = session.analysis(learner_id)
    findings = session.findings(learner_id)
    marks = session.marks(learner_id)
    marked, criteria = session.progress(learner_id)
    line, name = analysis.line, portfolio.learner.name or learner_id
    return LearnerRow(
        id=learner_id,
        name=name,
        called=name if called is None else called,
        surname=portfolio.learner.surname,
        group=portfolio.learner.group,
        order=order,
        points=tuple(
            (row.length_m, row.period_squared_s2)
            for row in analysis.rows
            if math.isfinite(row.length_m) and math.isfinite(row.period_squared_s2)
        ),
        line=None if line is None else (line.slope_s2_per_m, line.intercept_s2),
        pieces=_pieces(session.brief, portfolio),
        look=_count(findings, Concern.LOOK),
        ask=_count(findings, Concern.ASK),
        note=_count(findings, Concern.NOTE),
        checks=frozenset(finding.check for finding in findings),
        summary=findings[0].message if findings else "",
        marked=marked,
        criteria=criteria,
        total=session.total(learner_id),
        most=session.rubric.most,
        handed_in=portfolio.handed_in,
        late=any(finding.check == "outside_window" for finding in findings),
        changed=bool(marks) and since_marked(session, learner_id) is not None,
        _add_up=partial(so_far, session, learner_id),
    )


def _count(findings: Iterable[Finding], concern: Concern) -> int:
    return sum(finding.concern == concern for finding in findings)


def _pieces(brief: Brief, portfolio: Portfolio) -> tuple[tuple[PieceKind, PieceState], ...]:
    wanted = cast(tuple[PieceKind, ...], ("readings", *brief.evidence))
    return tuple(piece_states(portfolio, wanted).items())


@dataclass(frozen=True, slots=True)
class Axes:
    """Common axes of the small graphs, and the class's own line behind them.

    Wide enough for the longest honest lengths; a table in the wrong unit must not flatten
    everybody else's graph, so points beyond are drawn as arrows at the edge.
    """

    longest_m: float
    largest_s2: float
    slope: float

    @classmethod
    def of(cls, rows: Iterable[LearnerRow]) -> Axes:
        """Axes for a class: three times the median extent at the most."""
        extents = [max(x for x, _ in row.points) for row in rows if row.points]
        heights = [max(y for _, y in row.points) for row in rows if row.points]
        ratios = [y / x for row in rows for x, y in row.points if x > 0]
        return cls(
            _fitting(extents, 0.6), _fitting(heights, 2.4), median(ratios) if ratios else 4.03
        )


def _fitting(extents: list[float], default: float) -> float:
    if not extents:
        return default
    middle = median(extents)
    return 1.08 * max(extent for extent in extents if extent <= 2 * middle)
