"""Findings of the class: what to teach again, the spread of g, and how the marking went.

Pure functions of an open session; nothing here is a mark, and nothing here accuses: what
concerns single learners only (copies, dates, missing pieces) stays out of it.
"""

from __future__ import annotations

import datetime as dt
import math
from collections import defaultdict
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from statistics import fmean, median

from markbench.checks.diagnosis import SLIPS
from markbench.checks.registry import CHECKS
from markbench.model import Concern, Decision, LocalGravity, opening, say
from markbench.rubric.condition import condition
from markbench.rubric.facts import FACTS
from markbench.session.handed_in_work import WORK
from markbench.session.session import Session

# A longer break between two decisions is not marking (common sense, no source).
BREAK = dt.timedelta(minutes=10)
# Marks averaged for the line through the drift (common sense: one criterion of half a class).
RUN = 15

# Questions for one learner alone; nothing to teach the class.
_NOT_TAUGHT = frozenset({"missing_piece", "outside_window", "made_from_formula", "made_by_hand"})
_SLIPS = SLIPS.keys() - _NOT_TAUGHT


@dataclass(frozen=True, slots=True)
class Topic:
    """Something several learners may need again: a slip, a check that asked, working not done.

    ``learners`` are in the order of the class list; ``agreed`` are those of them whose slip
    the teacher has agreed.
    """

    id: str
    title: str
    explanation: str
    is_slip: bool
    learners: tuple[str, ...]
    agreed: tuple[str, ...] = ()


def teach_again(session: Session) -> tuple[Topic, ...]:
    """Slips, checks and working not done, those behind which most learners stand first."""
    slips: dict[str, list[str]] = defaultdict(list)
    agreed: dict[str, list[str]] = defaultdict(list)
    checks: dict[str, dict[str, None]] = defaultdict(dict)
    for learner in (one.id for one in session.learners):
        own = session.value("agreed_slip", learner)
        names = {own} if own else set()
        for finding in session.findings(learner):
            if finding.check == "slip" and not own:
                names.add(str(finding.numbers.get("slip", "")))
            elif finding.concern >= Concern.ASK and _taught(finding.check):
                checks[finding.check][learner] = None
        for slip in sorted({part for name in names for part in name.split("+") if part in _SLIPS}):
            slips[slip].append(learner)
            if own:
                agreed[slip].append(learner)
    topics = [
        Topic(
            f"slip:{slip}",
            opening(say(SLIPS[slip].title)),
            "",
            True,
            tuple(who),
            tuple(agreed[slip]),
        )
        for slip, who in slips.items()
    ]
    topics += [
        Topic(check, say(CHECKS[check].title), say(CHECKS[check].explanation), False, tuple(who))
        for check, who in checks.items()
        if who
    ]
    if unworked := _without_working(session):
        topics.append(
            Topic(
                "no_working",
                say("T² not worked out"),
                say(
                    "The table ends with the times or with T, and no report is there in which T² "
                    "could stand. It is T² against the length that lies on a straight line."
                ),
                False,
                unworked,
            )
        )
    return tuple(sorted(topics, key=lambda t: (-len(t.learners), not t.is_slip, t.title)))


def _without_working(session: Session) -> tuple[str, ...]:
    """Learners with readings and nothing worked out from them, where the rubric asks for it.

    No check asks about it: whether it is wanted is the rubric's to say.
    """
    levels = (level for row in session.rubric.criteria for level in row.levels)
    if not any(FACTS[n].group == "working" for lv in levels for n in condition(lv.when).names):
        return ()
    facts = {one.id: session.facts(one.id) for one in session.learners}
    return tuple(
        learner
        for learner, own in facts.items()
        if own["readings_given"]
        and own["own_period_squared_given"] is False
        and own["report"] is False
    )


def _taught(check: str) -> bool:
    return check in CHECKS and CHECKS[check].origin == "checks" and check not in _NOT_TAUGHT


@dataclass(frozen=True, slots=True)
class OneG:
    """One learner's best estimate of g and its 95 % interval, in m/s²."""

    learner: str
    g: float
    low95: float
    high95: float

    def holds(self, g: float) -> bool:
        """Whether the interval holds a value."""
        return self.low95 <= g <= self.high95


@dataclass(frozen=True, slots=True)
class SpreadOfG:
    """Every estimate of the class, smallest first; ``without`` have none."""

    estimates: tuple[OneG, ...]
    without: tuple[str, ...]
    local: LocalGravity | None

    @property
    def middle(self) -> float:
        """Median of the estimates; ``nan`` for none."""
        return median(one.g for one in self.estimates) if self.estimates else math.nan

    @property
    def holding(self) -> int:
        """How many intervals hold local g."""
        return sum(self.local is not None and e.holds(self.local.g) for e in self.estimates)


def spread_of_g(session: Session) -> SpreadOfG:
    """Best estimates as the portfolio page shows them."""
    found: list[OneG] = []
    without: list[str] = []
    local: LocalGravity | None = None
    for learner in (one.id for one in session.learners):
        local = session.analysis(learner).local
        diagnosis = session.diagnosis(learner)
        best = diagnosis.best if diagnosis is not None else None
        if best is None or not all(map(math.isfinite, (best.g, best.low95, best.high95))):
            without.append(learner)
        else:
            found.append(OneG(learner, best.g, best.low95, best.high95))
    found.sort(key=lambda one: (one.g, one.learner))
    return SpreadOfG(tuple(found), tuple(without), local)


@dataclass(frozen=True, slots=True)
class LevelCount:
    """How many learners stand at a level: by a mark, or so far by a draft only."""

    level: str
    marks: float
    marked: tuple[str, ...]
    drafted: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class CriterionCount:
    """One criterion over the class; ``neither`` have no mark and no draft."""

    criterion: str
    title: str
    levels: tuple[LevelCount, ...]
    neither: tuple[str, ...]


def marks_by_criterion(session: Session) -> tuple[CriterionCount, ...]:
    """Levels of every criterion, best first, with the learners at each."""
    result = []
    for criterion in session.rubric.criteria:
        marked: dict[str, list[str]] = defaultdict(list)
        drafted: dict[str, list[str]] = defaultdict(list)
        neither: list[str] = []
        for learner in (one.id for one in session.learners):
            mark = session.mark(learner, criterion.id)
            level = None if mark is not None else session.draft(learner, criterion.id).level
            if mark is not None:
                marked[mark.level].append(learner)
            elif level is not None:
                drafted[level].append(learner)
            else:
                neither.append(learner)
        levels = tuple(
            LevelCount(one.name, one.marks, tuple(marked[one.name]), tuple(drafted[one.name]))
            for one in criterion.levels
        )
        result.append(CriterionCount(criterion.id, criterion.title, levels, tuple(neither)))
    return tuple(result)


@dataclass(frozen=True, slots=True)
class OneMark:
    """A mark in force in the order of marking, and by how much it departs from its draft.

    ``sitting`` counts from 0; a new one begins after a break longer than :data:`BREAK`.
    """

    learner: str
    criterion: str
    at: dt.datetime
    difference: float
    sitting: int


def drift(session: Session) -> tuple[OneMark, ...]:
    """Marks in force against the drafts, in the order in which they were given."""
    in_force: dict[tuple[str, str], Decision] = {}
    for decision in session.history():
        if decision.kind == "mark":
            in_force.pop((decision.learner, decision.subject), None)
            if decision.value is not None and decision.at is not None:
                in_force[(decision.learner, decision.subject)] = decision
    known = {one.id for one in session.learners}
    criteria = {one.id for one in session.rubric.criteria}
    found: list[OneMark] = []
    for (learner, criterion), decision in in_force.items():
        if learner not in known or criterion not in criteria or decision.at is None:
            continue
        draft = session.draft(learner, criterion)
        if draft.marks is None:
            continue
        fresh = bool(found) and decision.at - found[-1].at > BREAK
        sitting = found[-1].sitting + fresh if found else 0
        difference = float(decision.value["marks"]) - draft.marks
        found.append(OneMark(learner, criterion, decision.at, difference, sitting))
    return tuple(found)


def running_mean(values: Sequence[float], run: int = RUN) -> list[tuple[float, float]]:
    """(place of the middle from 1, mean) of every ``run`` neighbours; empty if there are fewer."""
    if len(values) < run:
        return []
    return [
        (start + (run + 1) / 2, fmean(values[start : start + run]))
        for start in range(len(values) - run + 1)
    ]


@dataclass(frozen=True, slots=True)
class Pace:
    """Time a portfolio took, as far as the journal can tell; first and last decision on it."""

    learner: str
    seconds: float
    decisions: int
    began: dt.datetime
    ended: dt.datetime


def time_per_portfolio(session: Session) -> tuple[Pace, ...]:
    """Seconds by learner, longest first.

    The time between two decisions of the same person counts for the learner of the later
    one; breaks longer than :data:`BREAK` count for nobody. So the first decision after a
    break takes no time, and looking without deciding counts for whoever is decided on next.
    """
    return pace_of(session.history(), {one.id for one in session.learners})


def pace_of(decisions: Iterable[Decision], learners: set[str]) -> tuple[Pace, ...]:
    """As :func:`time_per_portfolio`, from decisions in the order of the journal."""
    last: dict[str, dt.datetime] = {}
    seconds: dict[str, float] = defaultdict(float)
    own: dict[str, list[dt.datetime]] = defaultdict(list)
    for decision in decisions:
        if decision.at is None or decision.kind == WORK:
            continue
        before = last.get(decision.who)
        last[decision.who] = decision.at
        if decision.learner not in learners:
            continue
        own[decision.learner].append(decision.at)
        gap = decision.at - before if before is not None else None
        if gap is not None and dt.timedelta(0) <= gap <= BREAK:
            seconds[decision.learner] += gap.total_seconds()
    paces = [
        Pace(learner, seconds[learner], len(times), min(times), max(times))
        for learner, times in own.items()
    ]
    return tuple(sorted(paces, key=lambda one: (-one.seconds, one.learner)))
