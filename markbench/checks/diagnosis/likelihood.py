"""How probable readings are under a view of the table, for many learners and views at once."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from markbench.checks.diagnosis.tables import LengthView, TimeView
from markbench.model import LocalGravity
from markbench.physics.honest import (
    SCATTER_GRID_S,
    SCATTER_LOG_PRIOR,
    Array,
    Rows,
    Terms,
    boil_down,
    expected_time_s,
    length_reading_sd_m,
    log_marginal,
    row_terms,
)
from markbench.physics.stack import Stack


@dataclass(frozen=True, slots=True, eq=False)
class Fitted:
    """The rows of n learners under V views, ready for the closed form.

    (n, V, R): ``rows``, ``expected_s`` N·T; slopes ``d``, ``s`` of the time against offset
    and scale in units of their prior sd; ``extra_s2`` variance of reading the length.
    ``variance_s2`` (n, V, S) of one timing; ``each`` the terms (n, V, R, S); ``total``
    (n, V, S). ``log_weight`` (n, V) prior within the slip.
    """

    log_weight: Array
    rows: Rows
    expected_s: Array
    d: Array
    s: Array
    extra_s2: Array
    variance_s2: Array
    each: Terms
    total: Terms


def fit(
    stack: Stack,
    views: Sequence[tuple[TimeView, LengthView]],
    local: LocalGravity,
    scatter_s: Array = SCATTER_GRID_S,
) -> Fitted:
    """Every view of every learner against the law at local g."""
    boiled: dict[int, Rows] = {}
    for time, length in views:
        if id(time.times_s) not in boiled:
            boiled[id(time.times_s)] = boil_down(length.length_m, time.swings, time.times_s)

    def beside(arrays: Sequence[Array]) -> Array:
        return np.stack(arrays, axis=1)

    count = beside([boiled[id(t.times_s)].count for t, _ in views])
    present = count > 0
    rows = Rows(
        np.where(present, beside([length.length_m for _, length in views]), 1.0),
        np.where(present, beside([t.swings for t, _ in views]), 1.0),
        count,
        beside([boiled[id(t.times_s)].mean_s for t, _ in views]),
        beside([boiled[id(t.times_s)].within for t, _ in views]),
    )
    factor = np.array([t.factor for t, _ in views])
    scale_sd = np.hypot(
        np.array([t.factor_sd for t, _ in views]) / factor, local.u_g / (2 * local.g)
    )
    offset_sd = np.array([length.offset_sd_m for _, length in views])
    # A slip of the unit changes the reading error with the length; honest rows stay as they are.
    reading_sd = length_reading_sd_m(stack.length_m, stack.length_step_m)
    expected = expected_time_s(rows.length_m, rows.swings, local.g, 1.0) * factor[:, None]
    per_metre = expected / (2.0 * rows.length_m)
    d = per_metre * offset_sd[:, None]
    s = expected * scale_sd[:, None]
    extra = (per_metre * reading_sd[:, None, None]) ** 2
    step = beside([t.step_s for t, _ in views])
    variance = scatter_s**2 + step[..., None] ** 2 / 12.0
    each = row_terms(
        (rows.mean_s - expected)[..., None],
        d[..., None],
        s[..., None],
        rows.count[..., None],
        rows.within[..., None],
        variance[:, :, None, :],
        extra[..., None],
    )
    weight = beside([t.log_weight + length.log_weight for t, length in views])
    return Fitted(weight, rows, expected, d, s, extra, variance, each, each.total(2))


def log_evidence(terms: Terms, log_prior: Array = SCATTER_LOG_PRIOR) -> Array:
    """Log marginal over the grid of scatter on the last axis."""
    value = log_marginal(terms) + log_prior
    top = value.max(axis=-1)
    return np.asarray(top + np.log(np.exp(value - top[..., None]).sum(axis=-1)))
