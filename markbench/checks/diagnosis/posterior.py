"""Every explanation of every learner's table weighed against honest work, as arrays."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from markbench.checks.diagnosis import priors
from markbench.checks.diagnosis.cells import CellEvidence, weigh_cells
from markbench.checks.diagnosis.inventions import by_hand_log_evidence, formula_log_evidence
from markbench.checks.diagnosis.likelihood import Fitted, fit, log_evidence
from markbench.checks.diagnosis.tables import (
    LengthView,
    TimeView,
    honest_lengths,
    honest_times,
    length_views,
    time_views,
)
from markbench.model import LocalGravity
from markbench.physics.honest import AMPLITUDE_FACTOR, Array
from markbench.physics.stack import Stack

SINGLE = tuple(priors.SLIP_RATE)


@dataclass(frozen=True, slots=True, eq=False)
class Weighed:
    """Log of (rate × evidence) of honest work (n,) and of each slip of ``SINGLE`` (n, 15).

    ``views`` and ``view_log`` (n, V) keep the forms a slip may take, ``formula_log``
    (n, G) likewise; ``cells`` the single cells.
    """

    stack: Stack
    honest: Array
    single: Array
    views: tuple[tuple[TimeView, LengthView], ...]
    view_log: Array
    formula_log: Array
    cells: CellEvidence
    fitted: Fitted

    def views_of(self, slip: str) -> list[int]:
        """Indices of the forms of a slip that touches the whole table."""
        return [v for v, (t, length) in enumerate(self.views) if slip in (t.slip, length.slip)]


def weigh_singles(stack: Stack, local: LocalGravity) -> Weighed:
    """All single slips of all learners."""
    times, lengths = honest_times(stack), honest_lengths(stack)
    views = (
        (times, lengths),
        *((view, lengths) for view in time_views(stack)),
        *((times, view) for view in length_views(stack)),
    )
    fitted = fit(stack, views, local)
    view_log = log_evidence(fitted.total) + fitted.log_weight
    cells = weigh_cells(
        stack.times_s,
        stack.length_m,
        stack.length_step_m,
        stack.time_step_s,
        fitted,
        0,
        local,
        AMPLITUDE_FACTOR,
    )
    formula = formula_log_evidence(stack)
    n = len(stack)
    slip_of = [t.slip if t.slip != priors.HONEST else length.slip for t, length in views]
    single = np.full((n, len(SINGLE)), -np.inf)
    for i, slip in enumerate(SINGLE):
        mine = [v for v, name in enumerate(slip_of) if name == slip]
        if mine:
            single[:, i] = _sum(view_log[:, mine])

    def over_all(array: Array) -> Array:
        return _sum(array.reshape(n, -1))

    for slip, evidence in (
        ("one_timing_miscounted", over_all(cells.miscounted)),
        (
            "mistyped_cell",
            np.logaddexp(over_all(cells.mistyped_time), over_all(cells.mistyped_length)),
        ),
        ("rows_swapped", over_all(cells.swapped)),
        ("made_from_formula", over_all(formula)),
        ("made_by_hand", by_hand_log_evidence(stack, fitted)),
    ):
        single[:, SINGLE.index(slip)] = evidence
    rates = np.tile([priors.SLIP_RATE[slip] for slip in SINGLE], (len(stack), 1))
    # Repeats are invented as a stopwatch would show them, to hundredths.
    fine = stack.time_step_s < priors.HAND_FINE_STEP_S
    rates[fine, SINGLE.index("made_by_hand")] = priors.HAND_RATE_HUNDREDTHS
    honest = np.logaddexp(view_log[:, 0], over_all(cells.bad)) + np.log1p(-rates.sum(axis=1))
    return Weighed(stack, honest, single + np.log(rates), views, view_log, formula, cells, fitted)


def _sum(logs: Array) -> Array:
    """Log of the sum of what ``logs`` (n, k) are logarithms of; few numbers, and many calls."""
    return np.asarray(np.logaddexp.reduce(logs, axis=1))
