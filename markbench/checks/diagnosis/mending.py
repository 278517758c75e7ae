"""The readings as they would be without a slip, and how large the slip was."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field

import numpy as np

from markbench.checks.diagnosis import priors
from markbench.checks.diagnosis.cells import CellEvidence
from markbench.checks.diagnosis.likelihood import Fitted
from markbench.checks.diagnosis.tables import LengthView, TimeView
from markbench.model import Estimate
from markbench.physics.honest import (
    AMPLITUDE_FACTOR,
    AMPLITUDE_FACTOR_SD,
    OFFSET_SD_M,
    SCATTER_LOG_PRIOR,
    Array,
    log_marginal,
    posterior,
)
from markbench.physics.pendulum import amplitude_factor
from markbench.physics.stack import Stack

Cell = tuple[int, int | None]
_DEGREES = np.linspace(20.0, 100.0, 161)
_FACTORS = amplitude_factor(_DEGREES)


@dataclass(frozen=True, slots=True)
class Edit:
    """One cell or two rows put right: ``kind`` is count, time, length or rows."""

    kind: str
    row: int
    timing: int = -1
    other: int = -1
    value: float = 0.0


@dataclass(frozen=True, slots=True, eq=False)
class Candidate:
    """One explanation of learner ``learner`` (index in the stack) and its log weight.

    ``views`` index the forms a table-wide slip may take in ``fitted``; ``best`` the
    likeliest of them.
    """

    learner: int
    slip: str
    log_weight: float
    fitted: Fitted
    at: int
    views: Sequence[tuple[TimeView, LengthView]]
    mine: Sequence[int]
    edit: Edit | None = None
    facts: Mapping[str, float | str] = field(default_factory=dict)


@dataclass(frozen=True, slots=True, eq=False)
class Mended:
    """The mended table of one learner and what is known of the slip's size.

    ``length_m``, ``swings`` (R,), ``times_s`` (R, K), ``step_s``; ``ghost_length_m`` (R,)
    and ``ghost_factor`` draw the graph; the rest is what ``estimate_gravity`` needs.
    """

    length_m: Array
    swings: Array
    times_s: Array
    step_s: float
    offset_sd_m: float
    factor: float
    factor_sd: float
    ghost_length_m: Array
    ghost_factor: float
    parameters: Mapping[str, Estimate]
    cells: tuple[Cell, ...]
    facts: Mapping[str, float | str]


def best_edit(cells: CellEvidence, i: int, slip: str) -> Edit:
    """The likeliest cell or pair of rows for learner ``i``."""
    if slip == "one_timing_miscounted":
        row, timing, form = np.unravel_index(
            cells.miscounted[i].argmax(), cells.miscounted[i].shape
        )
        return Edit("count", int(row), int(timing), value=(-1.0, 1.0)[form])
    if slip == "rows_swapped":
        row, other = np.unravel_index(cells.swapped[i].argmax(), cells.swapped[i].shape)
        return Edit("rows", int(row), other=int(other))
    times, lengths = cells.mistyped_time[i], cells.mistyped_length[i]
    if times.max() >= lengths.max():
        row, timing, form = np.unravel_index(times.argmax(), times.shape)
        meant = cells.meant_time_s[i, row, timing, form]
        return Edit("time", int(row), int(timing), value=float(meant))
    row, form = np.unravel_index(lengths.argmax(), lengths.shape)
    return Edit("length", int(row), value=float(cells.meant_length_m[i, row, form]))


def mend(stack: Stack, candidate: Candidate) -> Mended:
    """Undo the slip of ``candidate``."""
    i, at = candidate.learner, candidate.at
    view_log = _view_log(candidate)
    weight = np.exp(view_log - view_log.max())
    weight /= weight.sum()
    best = candidate.mine[int(weight.argmax())]
    times_view, lengths_view = candidate.views[best]
    length, swings = lengths_view.length_m[at].copy(), times_view.swings[at].copy()
    times = times_view.times_s[at].copy()
    typed_length, typed_times = stack.length_m[i], stack.times_s[i]
    typed_swings = stack.swings[i]
    parameters: dict[str, Estimate] = {}
    facts: dict[str, float | str] = dict(candidate.facts)
    cells: list[Cell] = []
    offset_sd, ghost_length = OFFSET_SD_M, length.copy()
    factor, factor_sd, ghost_factor = AMPLITUDE_FACTOR, AMPLITUDE_FACTOR_SD, 1.0
    # The first cell of the table is the example, unless the slip has a place of its own.
    timed = np.isfinite(typed_times) & (typed_times > 0) & np.isfinite(typed_length)[:, None]
    first, timing = (int(index) for index in np.argwhere(timed)[0])
    facts["row"], facts["timing_index"] = first, timing
    if lengths_view.slip in ("length_to_top", "length_to_bottom", "whole_thread"):
        size, u_size = _offset(candidate, weight)
        sign = 1.0 if lengths_view.slip == "length_to_top" else -1.0
        ghost_length = typed_length + size
        parameters["length_error_m"] = Estimate(abs(size), u_size, "m")
        # g is measured with the offset left as free as the slip's own prior leaves it.
        spread = _PRIOR_SIZE[lengths_view.slip]
        middle = size if lengths_view.slip == "whole_thread" else sign * spread[0]
        length, offset_sd = typed_length + middle, float(np.hypot(spread[1], OFFSET_SD_M))
    elif lengths_view.slip == "length_unit":
        facts["unit"] = lengths_view.variant
        parameters["length_factor"] = Estimate(lengths_view.size, 0.0)
    if times_view.slip in ("half_swings", "count_short", "count_over"):
        parameters["swings"] = Estimate(float(swings[first]), 0.0)
    elif times_view.slip == "clock_misread":
        facts["form"] = times_view.variant
        changed = np.argwhere(timed & (np.abs(times - typed_times) > 1e-6))
        cells += [(int(j), int(k)) for j, k in changed]
        row, timing = (int(index) for index in changed[0]) if len(changed) else (first, timing)
        facts["clock_row"], facts["clock_timing"] = row, timing
        facts["clock_meant_s"] = float(times[row, timing])
    elif times_view.slip == "wide_swing":
        parameters["amplitude_deg"] = _amplitude(candidate, weight)
        ghost_factor = float(amplitude_factor(parameters["amplitude_deg"].value))
        share = priors.WIDE_WEIGHT
        factor = float((share * priors.WIDE_FACTOR).sum())
        factor_sd = float(np.sqrt((share * (priors.WIDE_FACTOR - factor) ** 2).sum()))
    step = float(times_view.step_s[at])
    if candidate.edit is not None:
        edit = candidate.edit
        facts["row"] = edit.row
        if edit.timing >= 0:
            facts["timing_index"] = edit.timing
        elif edit.kind != "length":
            facts["timing_index"] = int(np.isfinite(times[edit.row]).argmax())
        if edit.kind == "count":
            once = times[edit.row, edit.timing] / (swings[edit.row] + edit.value)
            times[edit.row, edit.timing] = once * swings[edit.row]
            parameters["swings"] = Estimate(float(swings[edit.row] + edit.value), 0.0)
            cells.append((edit.row, edit.timing))
        elif edit.kind == "time":
            times[edit.row, edit.timing] = edit.value
            parameters["time_meant_s"] = Estimate(edit.value, 0.0, "s")
            cells.append((edit.row, edit.timing))
        elif edit.kind == "length":
            scale = edit.value / typed_length[edit.row]
            length[edit.row] *= scale
            ghost_length[edit.row] *= scale
            parameters["length_meant_m"] = Estimate(edit.value, 0.0, "m")
            cells.append((edit.row, None))
        else:
            both = [edit.row, edit.other]
            times[both] = times[both[::-1]]
            swings[both] = swings[both[::-1]]
            facts["other_row"] = edit.other
            cells += [
                (row, int(k)) for row in both for k in np.flatnonzero(np.isfinite(times[row]))
            ]
    facts["swings"] = float(typed_swings[int(facts["row"])])
    return Mended(
        length,
        swings,
        times,
        step,
        offset_sd,
        factor,
        factor_sd,
        ghost_length,
        ghost_factor,
        parameters,
        tuple(cells),
        facts,
    )


def _uniform(low: float, high: float) -> tuple[float, float]:
    return (low + high) / 2, (high - low) / 12**0.5


_PRIOR_SIZE = {
    "length_to_top": _uniform(0.008, 0.025),
    "length_to_bottom": _uniform(0.008, 0.025),
    "whole_thread": _uniform(0.03, 0.12),
}


def _view_log(candidate: Candidate) -> Array:
    """Log weight of each form of a table-wide slip; one form where a cell was touched."""
    mine = list(candidate.mine)
    if len(mine) == 1:
        return np.zeros(1)
    terms = candidate.fitted.total.take((candidate.at, mine))
    value = log_marginal(terms) + SCATTER_LOG_PRIOR
    weight = np.logaddexp.reduce(value, axis=-1)
    return np.asarray(weight + candidate.fitted.log_weight[candidate.at, mine])


def _nuisances(candidate: Candidate) -> tuple[Array, Array, Array, Array]:
    """Mean and variance of offset and of scale for each form, over the scatter; (V,)."""
    terms = candidate.fitted.total.take((candidate.at, list(candidate.mine)))
    value = log_marginal(terms) + SCATTER_LOG_PRIOR
    weight = np.exp(value - value.max(axis=-1, keepdims=True))
    weight /= weight.sum(axis=-1, keepdims=True)
    offset, offset_var, scale, scale_var = posterior(terms)

    def mixed(mean: Array, var: Array) -> tuple[Array, Array]:
        middle = (weight * mean).sum(axis=-1)
        return middle, (weight * (var + mean**2)).sum(axis=-1) - middle**2

    return (*mixed(offset, offset_var), *mixed(scale, scale_var))


def _offset(candidate: Candidate, weight: Array) -> tuple[float, float]:
    """True length less typed length, with its uncertainty, over the forms of the slip."""
    mean, var, _, _ = _nuisances(candidate)
    lengths = [candidate.views[v][1] for v in candidate.mine]
    signs = [1.0 if view.slip == "length_to_top" else -1.0 for view in lengths]
    sd = np.array([view.offset_sd_m for view in lengths])
    size = np.array([sign * view.size for sign, view in zip(signs, lengths, strict=True)])
    size = size + mean * sd
    middle = float((weight * size).sum())
    spread = float((weight * (var * sd**2 + (size - middle) ** 2)).sum())
    return middle, spread**0.5


def _amplitude(candidate: Candidate, weight: Array) -> Estimate:
    """The angle of release whose T/T₀ the periods show against local g."""
    _, _, mean, var = _nuisances(candidate)
    times = [candidate.views[v][0] for v in candidate.mine]
    factor = np.array([view.factor for view in times]) + mean * np.array(
        [view.factor_sd for view in times]
    )
    sd = np.sqrt(var) * np.array([view.factor_sd for view in times])
    middle = float((weight * factor).sum())
    spread = float(np.sqrt((weight * (sd**2 + (factor - middle) ** 2)).sum()))
    degrees, low, high = np.interp([middle, middle - spread, middle + spread], _FACTORS, _DEGREES)
    return Estimate(float(degrees), float(high - low) / 2, "°")
