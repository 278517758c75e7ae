"""What a learner changed after the work was marked, by content; and letting the mark stand."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import zip_longest

from markbench.model import Decision, Portfolio, Reading
from markbench.session.handed_in_work import WORK, PieceChange, Work, changes, read_work, work_of
from markbench.session.moved import STANDS
from markbench.session.session import Session

# Lengths nearer than this are the same length written twice (half a millimetre).
_SAME_LENGTH_M = 0.0005


@dataclass(frozen=True, slots=True)
class RowChange:
    """One length in both tables; ``None`` where it stands in one of them only."""

    earlier: Reading | None
    now: Reading | None

    @property
    def changed(self) -> bool:
        """Whether anything differs, as numbers."""
        if self.earlier is None or self.now is None:
            return True
        return (
            self.earlier.swings != self.now.swings
            or abs(self.earlier.length_m - self.now.length_m) > 1e-9
            or [t.time_s for t in self.earlier.timings] != [t.time_s for t in self.now.timings]
        )


@dataclass(frozen=True, slots=True)
class SinceMarked:
    """What changed since ``at``, when the marks of ``criteria`` were given (or left to stand).

    ``rows`` are the readings then and now, shortest first, as the learner wrote them; empty
    where no table changed. ``by_date``: what was marked is not known, as the mark is older
    than such a record, and only the time of a file is later than the mark's.
    """

    criteria: tuple[str, ...]
    at: dt.datetime
    pieces: tuple[PieceChange, ...] = ()
    rows: tuple[RowChange, ...] = ()
    by_date: bool = False

    @property
    def differing(self) -> int:
        """How many lengths differ."""
        return sum(row.changed for row in self.rows)


def since_marked(session: Session, learner: str) -> SinceMarked | None:
    """What changed under the marks of a learner; ``None`` where nothing did."""
    given = [d for c in session.rubric.criteria if (d := _mark(session, learner, c.id)) is not None]
    if not given:
        return None
    portfolio = session.portfolio(learner)
    now = work_of(portfolio)
    key = now.key
    given = [mark for mark in given if mark.value.get(WORK) != key]
    stale: list[tuple[Decision, Decision, Work]] = []
    unknown: list[Decision] = []
    for mark in given:
        bases = list(_bases(session, learner, mark))
        if not bases:
            unknown.append(mark)
        elif all(changes(then, now) for _, then in bases):
            stale.append((mark, *max(bases, key=lambda base: base[0].number)))
    if stale:
        _, base, then = min(stale, key=lambda one: one[1].number)
        criteria = tuple(mark.subject for mark, _, _ in stale)
        pieces = changes(then, now)
        table = any(piece.kind == "readings" for piece in pieces)
        rows = side_by_side(then, now) if table else ()
        return SinceMarked(criteria, _at(base), pieces, rows)
    late = tuple(mark for mark in unknown if _is_later(portfolio, mark))
    if not late:
        return None
    return SinceMarked(tuple(m.subject for m in late), max(map(_at, late)), by_date=True)


def let_stand(session: Session, learner: str) -> None:
    """Leave the marks as they are though the work changed: asked no more for this work."""
    work = work_of(session.portfolio(learner))
    session.decide(
        Decision(WORK, learner, work.key, work.plain), Decision(STANDS, learner, "", work.key)
    )


def mark_again(session: Session, learner: str) -> None:
    """Take the marks that rest on other work back to drafts, in one step."""
    changed = since_marked(session, learner)
    if changed is not None:
        session.decide(*(Decision("mark", learner, one, None) for one in changed.criteria))


def side_by_side(then: Work, now: Work) -> tuple[RowChange, ...]:
    """The readings of both, matched by length."""
    return row_changes([row.reading for row in then.rows], [row.reading for row in now.rows])


def row_changes(earlier: Sequence[Reading], now: Sequence[Reading]) -> tuple[RowChange, ...]:
    """Both tables side by side, matched by length, shortest first.

    Two lengths of the same table that agree are matched in the order written. Of those without
    a match, what lies between the same two matches is paired in order: a length written anew.
    """
    left = sorted(earlier, key=lambda one: one.length_m)
    right = sorted(now, key=lambda one: one.length_m)
    rows: list[RowChange] = []
    gone: list[Reading] = []
    fresh: list[Reading] = []

    def pair_those_left() -> None:
        rows.extend(RowChange(one, other) for one, other in zip_longest(gone, fresh))
        gone.clear()
        fresh.clear()

    while left or right:
        if left and right and abs(left[0].length_m - right[0].length_m) <= _SAME_LENGTH_M:
            pair_those_left()
            rows.append(RowChange(left.pop(0), right.pop(0)))
        elif not right or (left and left[0].length_m < right[0].length_m):
            gone.append(left.pop(0))
        else:
            fresh.append(right.pop(0))
    pair_those_left()
    return tuple(rows)


def _mark(session: Session, learner: str, criterion: str) -> Decision | None:
    return session.state.get(("mark", learner, criterion))


def _bases(session: Session, learner: str, mark: Decision) -> Iterator[tuple[Decision, Work]]:
    """The decisions a mark stands on, each with the work that was looked at then."""
    stands = session.state.get((STANDS, learner, ""))
    for decision, key in (
        (mark, mark.value.get(WORK)),
        *(() if stands is None else ((stands, stands.value),)),
    ):
        plain = session.value(WORK, learner, key) if isinstance(key, str) else None
        if plain is not None:
            yield decision, read_work(plain)


def _is_later(portfolio: Portfolio, mark: Decision) -> bool:
    # The times of files are local and carry no zone.
    when = portfolio.handed_in
    return when is not None and when.replace(tzinfo=None) > _at(mark).astimezone().replace(
        tzinfo=None
    )


def _at(decision: Decision) -> dt.datetime:
    return decision.at or dt.datetime(1970, 1, 1, tzinfo=dt.UTC)
