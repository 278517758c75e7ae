"""Two slips at once: a slip of timing with one of measuring, or either with one bad cell.

Looked for only where a single slip already beats honest work, so that a class of honest
tables costs nothing here and no honest table is questioned for a pair alone.
"""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from markbench.checks.diagnosis import priors
from markbench.checks.diagnosis.cells import weigh_cells
from markbench.checks.diagnosis.likelihood import fit, log_evidence
from markbench.checks.diagnosis.mending import Candidate, best_edit
from markbench.checks.diagnosis.tables import (
    honest_lengths,
    honest_times,
    length_views,
    time_views,
)
from markbench.model import LocalGravity
from markbench.physics.stack import Stack

# Strong enough to be seen beside another slip; a wide swing is not.
TIMING = ("half_swings", "count_short", "count_over", "period_as_total", "clock_misread")


def weigh_pairs(
    stack: Stack, learners: list[int], fits_badly: NDArray[np.bool_], local: LocalGravity
) -> list[list[Candidate]]:
    """The likeliest form of every pair for each of ``stack``'s learners.

    ``learners`` are their indices in the whole class, kept in the candidates. A bad cell
    beside another slip leaves any single slip with a bad fit: it is looked for there only.
    """
    found = _timing_and_measuring(stack, learners, local)
    bad = [int(i) for i in np.flatnonzero(fits_badly)]
    if bad:
        beside = _beside_one_cell(stack.take(bad), [learners[i] for i in bad], local)
        for i, candidates in zip(bad, beside, strict=True):
            found[i] += candidates
    return [_merged(candidates) for candidates in found]


def _timing_and_measuring(
    stack: Stack, learners: list[int], local: LocalGravity
) -> list[list[Candidate]]:
    """Every slip of timing with every slip of measuring."""
    found: list[list[Candidate]] = [[] for _ in learners]
    views = [
        (t, length) for t in time_views(stack) if t.slip in TIMING for length in length_views(stack)
    ]
    fitted = fit(stack, views, local)
    evidence = log_evidence(fitted.total) + fitted.log_weight
    names = [(t.slip, length.slip) for t, length in views]
    for pair in dict.fromkeys(names):
        mine = [v for v, name in enumerate(names) if name == pair]
        total = np.logaddexp.reduce(evidence[:, mine], axis=1) + log_rate(*pair)
        for i in np.flatnonzero(np.isfinite(total)):
            found[i].append(
                Candidate(learners[i], "+".join(pair), float(total[i]), fitted, int(i), views, mine)
            )
    return found


def _beside_one_cell(
    stack: Stack, learners: list[int], local: LocalGravity
) -> list[list[Candidate]]:
    """Every slip of a whole table with every slip of one cell or two rows."""
    n = len(stack)
    found: list[list[Candidate]] = [[] for _ in learners]
    times, lengths = honest_times(stack), honest_lengths(stack)
    views = [(t, lengths) for t in time_views(stack) if t.slip in TIMING]
    views += [(times, length) for length in length_views(stack)]
    fitted = fit(stack, views, local)
    for v, (t, length) in enumerate(views):
        table_slip = t.slip if length is lengths else length.slip
        cells = weigh_cells(
            t.times_s, length.length_m, stack.length_step_m, t.step_s, fitted, v, local, t.factor
        )
        mistyped = [cells.mistyped_time.reshape(n, -1), cells.mistyped_length.reshape(n, -1)]
        for slip, value in (
            ("one_timing_miscounted", cells.miscounted.reshape(n, -1)),
            ("mistyped_cell", np.concatenate(mistyped, axis=1)),
            ("rows_swapped", cells.swapped.reshape(n, -1)),
        ):
            total = np.logaddexp.reduce(value, axis=1) + fitted.log_weight[:, v]
            total = total + log_rate(table_slip, slip)
            for i in np.flatnonzero(np.isfinite(total)):
                edit = best_edit(cells, int(i), slip)
                name = f"{table_slip}+{slip}"
                found[i].append(
                    Candidate(learners[i], name, float(total[i]), fitted, int(i), views, [v], edit)
                )
    return found


def log_rate(one: str, other: str) -> float:
    """How rare two slips at once are, as a logarithm."""
    rate = priors.SLIP_RATE[one] * priors.SLIP_RATE[other] * priors.PAIR_FACTOR
    return float(np.log(rate))


def _merged(candidates: list[Candidate]) -> list[Candidate]:
    """The likeliest form of each pair stands for all its forms."""
    best: dict[str, Candidate] = {}
    for candidate in candidates:
        kept = best.get(candidate.slip)
        if kept is None or candidate.log_weight > kept.log_weight:
            best[candidate.slip] = candidate
    return sorted(best.values(), key=lambda c: -c.log_weight)
