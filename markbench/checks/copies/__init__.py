"""Tables that agree more closely than independent hands give. Never an accusation."""

from __future__ import annotations

import datetime as dt
import math
from collections.abc import Collection, Mapping, Sequence
from dataclasses import dataclass, replace

import numpy as np
from numpy.typing import NDArray

from markbench.checks.copies.index import candidates
from markbench.checks.copies.pairs import score
from markbench.checks.copies.tables import tables_of
from markbench.checks.wording import listed, signed
from markbench.model import Concern, Finding, Portfolio, joined, say
from markbench.physics.stack import Stack, stack_readings

__all__ = ["Alike", "alike_findings", "find_alike", "log_threshold", "told_together"]

# The ratio's own bound would ask for 100 here, for one false pair in a hundred groups. It is
# a loose bound (the predictions are cautious on purpose); 10 keeps the same promise as
# measured on simulated honest classes, and the bound itself still promises one in ten.
_ODDS_PER_PAIR = 10.0
# Files copied or unpacked together have times a few seconds apart, in any order; a class copied
# as a whole, with its films, may take minutes. Common sense, no source.
_SAME_TIME = dt.timedelta(minutes=1)
_COPYING, _A_CLASS = dt.timedelta(hours=1), 3


@dataclass(frozen=True, slots=True)
class Alike:
    """Two tables (indices into the stack) that agree beyond chance.

    ``log_ratio``: log likelihood ratio of one source against two; chance gives as much
    in at most one pair of exp(log_ratio). ``equal`` of ``compared`` timings are the same
    to the last digit, ``near`` more within 0.05 s, after ``shift_s`` on all of them.
    """

    first: int
    second: int
    log_ratio: float
    compared: int
    equal: int
    near: int
    shift_s: float


def log_threshold(tables: int) -> float:
    """Log likelihood ratio beyond which a pair among so many tables is worth a question."""
    return math.log(_ODDS_PER_PAIR * tables * (tables - 1) / 2)


def find_alike(stack: Stack, only: Sequence[int] | None = None) -> list[Alike]:
    """Pairs of a group beyond the threshold that allows one false pair per hundred groups.

    ``only`` asks for the pairs in which one of these tables stands.
    """
    n = len(stack)
    if n < 2:
        return []
    tables = tables_of(stack)
    first, second = candidates(tables) if only is None else _with_everyone(n, only)
    scores = score(tables, first, second)
    threshold = log_threshold(n)
    beyond = np.flatnonzero(scores.log_ratio > threshold)
    found = [
        Alike(
            int(first[p]),
            int(second[p]),
            float(scores.log_ratio[p]),
            int(scores.compared[p]),
            int(scores.equal[p]),
            int(scores.near[p]),
            float(scores.shift_s[p]),
        )
        for p in beyond
    ]
    return sorted(found, key=lambda pair: -pair.log_ratio)


def _with_everyone(n: int, only: Sequence[int]) -> tuple[NDArray[np.int64], NDArray[np.int64]]:
    """Every pair (first < second) of a table of ``only`` and any other."""
    chosen = np.asarray(only, dtype=np.int64)
    one, other = np.repeat(chosen, n), np.tile(np.arange(n, dtype=np.int64), len(chosen))
    codes = np.unique(np.minimum(one, other) * n + np.maximum(one, other))
    codes = codes[codes // n != codes % n]
    return codes // n, codes % n


def alike_findings(
    portfolios: Sequence[Portfolio],
    partners: Sequence[tuple[str, str]] = (),
    honest_rate: float | None = None,
    only: Collection[str] | None = None,
) -> Mapping[str, tuple[Finding, ...]]:
    """Findings for both learners of every pair; declared partners are named as explained.

    ``only``: pairs in which one of these learners stands.
    """
    ordered = not _all_at_once(portfolios)
    able = [p for p in portfolios if p.table is not None and p.table.readings]
    stack = stack_readings([p.table.readings for p in able if p.table is not None])
    ids = {key: p.learner.id for p in able for key in (p.learner.name, p.learner.id)}
    declared = {frozenset((ids.get(a, a), ids.get(b, b))) for a, b in partners}
    declared |= {
        frozenset((p.learner.id, ids.get(p.learner.partner, ""))) for p in able if p.learner.partner
    }
    found: dict[str, list[Finding]] = {}
    wanted = None if only is None else [i for i, p in enumerate(able) if p.learner.id in only]
    for pair in find_alike(stack, wanted):
        one, other = able[pair.first], able[pair.second]
        partnered = frozenset((one.learner.id, other.learner.id)) in declared
        for mine, theirs in ((one, other), (other, one)):
            found.setdefault(mine.learner.id, []).append(
                _finding(mine, theirs, pair, partnered, honest_rate, ordered)
            )
    return {learner: tuple(findings) for learner, findings in found.items()}


def _finding(
    mine: Portfolio,
    theirs: Portfolio,
    pair: Alike,
    partnered: bool,
    honest_rate: float | None,
    ordered: bool,
) -> Finding:
    when = _hand_in_order(mine, theirs) if ordered else ""
    explained = say("They are declared as partners, which explains it.") if partnered else ""
    table = mine.table
    return Finding(
        "copied",
        mine.learner.id,
        joined((*_agreement(pair, say("{name}'s", name=theirs.learner.name)), when, explained)),
        Concern.NOTE if partnered else Concern.LOOK,
        {"with": theirs.learner.id, **_numbers(pair)},
        sources=(table.source,) if table is not None else (),
        ask="" if partnered else say("Did you two share a set-up or a table of readings?"),
        who="teacher" if partnered else "moderator",
        honest_rate=honest_rate,
    )


def told_together(findings: Sequence[Finding], names: Mapping[str, str]) -> tuple[Finding, ...]:
    """One learner's findings of :func:`alike_findings`, a table that went round told once.

    Where three or more share a table, each would otherwise be asked once for every other.
    ``names``: by learner id.
    """
    rounds: dict[tuple[object, ...], list[Finding]] = {}
    for place, finding in enumerate(findings):
        numbers = finding.numbers
        alone = finding.check != "copied" or finding.concern is not Concern.LOOK
        key = (
            (place,)
            if alone
            else tuple(numbers[name] for name in ("equal", "near", "compared", "shift_s"))
        )
        rounds.setdefault(key, []).append(finding)
    return tuple(
        one if not more else _of_several(one, more, names) for one, *more in rounds.values()
    )


def _of_several(one: Finding, more: Sequence[Finding], names: Mapping[str, str]) -> Finding:
    weakest = min((one, *more), key=lambda finding: finding.numbers["log_ratio"])
    with_ids = [str(finding.numbers["with"]) for finding in (one, *more)]
    whom = listed([names.get(learner, learner) for learner in with_ids])
    return replace(
        one,
        message=joined(_agreement(weakest.numbers, say("those of {whom}", whom=whom))),
        numbers={**weakest.numbers, "with": ", ".join(with_ids)},
        ask=say("Did you share a set-up or a table of readings?"),
    )


def _agreement(pair: Alike | Mapping[str, float | str], whose: str) -> tuple[str, str]:
    """How closely two tables agree, and how seldom that is."""
    numbers = pair if isinstance(pair, Mapping) else _numbers(pair)
    shift_s = float(numbers["shift_s"])
    if shift_s:
        whose = say("{whose} after {shift} s on all of them", whose=whose, shift=signed(shift_s))
    chance = _round_down(math.exp(min(float(numbers["log_ratio"]), math.log(1e12))))
    same = say(
        "{equal} of {compared} timings are the same to the last digit as {whose}, {near} more lie "
        "within 0.05 s."
        if numbers["near"]
        else "{equal} of {compared} timings are the same to the last digit as {whose}.",
        equal=numbers["equal"],
        compared=numbers["compared"],
        near=numbers["near"],
        whose=whose,
    )
    seldom = say("Independent hands agree as closely in at most 1 pair of {n:,}.", n=chance)
    return same, seldom


def _numbers(pair: Alike) -> dict[str, float]:
    return {
        "equal": pair.equal,
        "near": pair.near,
        "compared": pair.compared,
        "log_ratio": pair.log_ratio,
        "shift_s": pair.shift_s,
    }


def _all_at_once(portfolios: Sequence[Portfolio]) -> bool:
    """Whether the times of all files are those of copying the class's folder."""
    times = [p.handed_in for p in portfolios if p.handed_in is not None]
    return len(times) >= _A_CLASS and max(times) - min(times) < _COPYING


def _hand_in_order(mine: Portfolio, theirs: Portfolio) -> str:
    """Shown, because a teacher will ask; not used, because it proves nothing."""
    a, b = mine.handed_in, theirs.handed_in
    if a is None or b is None or abs(a - b) <= _SAME_TIME:
        return ""
    if a < b:
        return say("This one was handed in before the other.")
    return say("This one was handed in after the other.")


def _round_down(number: float) -> int:
    """One leading figure: the bound is no finer than that."""
    step = 10 ** max(len(str(int(number))) - 1, 0)
    return int(number // step * step)
