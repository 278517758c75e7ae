"""Two slips at once: a slip of timing with one of measuring, or either with one bad cell.

Looked for only where a single slip already beats honest work, so that a class of honest
tables costs nothing here and no honest table is questioned for a pair alone.
"""

from __future__ import annotations

import numpy as np

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


def weigh_pairs(stack: Stack, learners: list[int], local: LocalGravity) -> list[list[Candidate]]:
    """The likeliest form of every pair for each of ``stack``'s learners.

    ``learners`` are their indices in the whole class, kept in the candidates.
    """
    n = len(stack)
    found: list[list[Candidate]] = [[] for _ in range(n)]
    timing = [view for view in time_views(stack) if view.slip in TIMING]
    measuring = list(length_views(stack))
    as_typed = honest_times(stack), honest_lengths(stack)
    views = [(t, length) for t in timing for length in measuring]
    fitted = fit(stack, views, local)
    evidence = log_evidence(fitted.total) + fitted.log_weight
    names = [(t.slip, length.slip) for t, length in views]
    for pair in dict.fromkeys(names):
        mine = [v for v, name in enumerate(names) if name == pair]
        total = np.logaddexp.reduce(evidence[:, mine], axis=1) + _log_rate(*pair)
        for i in np.flatnonzero(np.isfinite(total)):
            found[i].append(
                Candidate(learners[i], "+".join(pair), float(total[i]), fitted, int(i), views, mine)
            )
    alone = [(t, as_typed[1]) for t in timing] + [(as_typed[0], length) for length in measuring]
    fitted = fit(stack, alone, local)
    for v, (t, length) in enumerate(alone):
        table_slip = t.slip if length is as_typed[1] else length.slip
        cells = weigh_cells(
            t.times_s,
            length.length_m,
            stack.length_step_m,
            t.step_s,
            fitted,
            v,
            local,
            t.factor,
        )
        for slip, value in (
            ("one_timing_miscounted", cells.miscounted.reshape(n, -1)),
            (
                "mistyped_cell",
                np.concatenate(
                    [cells.mistyped_time.reshape(n, -1), cells.mistyped_length.reshape(n, -1)], 1
                ),
            ),
            ("rows_swapped", cells.swapped.reshape(n, -1)),
        ):
            total = np.logaddexp.reduce(value, axis=1) + fitted.log_weight[:, v]
            total = total + _log_rate(table_slip, slip)
            for i in np.flatnonzero(np.isfinite(total)):
                found[i].append(
                    Candidate(
                        learners[i],
                        f"{table_slip}+{slip}",
                        float(total[i]),
                        fitted,
                        int(i),
                        alone,
                        [v],
                        best_edit(cells, int(i), slip),
                    )
                )
    return [_merged(candidates) for candidates in found]


def _log_rate(one: str, other: str) -> float:
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
