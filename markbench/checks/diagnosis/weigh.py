"""A whole class weighed: explanations ranked, mended and told, one result per learner."""

from __future__ import annotations

import warnings

import numpy as np

from markbench.checks.diagnosis import priors, sentences
from markbench.checks.diagnosis.flagging import margin
from markbench.checks.diagnosis.mending import Candidate, Mended, best_edit, mend
from markbench.checks.diagnosis.pairs import log_rate, weigh_pairs
from markbench.checks.diagnosis.posterior import SINGLE, Weighed, weigh_singles
from markbench.checks.diagnosis.sentences import honest_sentence, indistinct, places
from markbench.model import (
    Diagnosis,
    Estimate,
    Explanation,
    Gravity,
    Indistinct,
    LocalGravity,
    joined,
    say,
)
from markbench.physics.best import best_gravity, estimate_gravity
from markbench.physics.honest import Array, expected_time_s
from markbench.physics.stack import Stack

# So many learners at a time keep the arrays inside the processor's cache.
CHUNK = 128
# Explanations less probable than this are not told, nor two as far apart called alike.
LEAST = 0.02
ALIKE = 0.15
MOST = 4
# Log density of a timing that scatters by 0.2 s, twice the usual: a worse fit is bad.
TYPICAL_AT_WORST = -np.log(0.2) - 0.5
# Log density of a timing that scatters by a second: no hand does, and what fits worse than that
# explains nothing, however much worse all the others fit.
HOPELESS = -np.log(1.0) - 0.5
MADE = ("made_from_formula", "made_by_hand")


def weigh(stack: Stack, local: LocalGravity) -> list[Diagnosis]:
    """Explanations of each learner's readings, likeliest first (honest work among them).

    A table is ``flagged`` where a slip beats honest work by the calibrated margin; only
    then are two slips at once considered, and the likeliest slip leads the ranking. Where
    neither honest work nor any slip comes near the readings, none is told: the least bad of
    them would take all the probability.
    """
    out: list[Diagnosis] = []
    for start in range(0, len(stack), CHUNK):
        out += _weigh_chunk(stack.take(slice(start, start + CHUNK)), local)
    return out


def _weigh_chunk(stack: Stack, local: LocalGravity) -> list[Diagnosis]:
    n = len(stack)
    if stack.times_s.size == 0:
        return [Diagnosis((), None, limits=NOTHING) for _ in range(n)]
    best = best_gravity(stack, local)
    weighed = weigh_singles(stack, local)
    usable = (weighed.fitted.rows.count[:, 0] > 0).sum(axis=1) >= 2
    to_beat = weighed.honest + margin(stack)
    asked = (weighed.single.max(axis=1) > to_beat) & usable
    which = [int(i) for i in np.flatnonzero(asked)]
    pairs: dict[int, list[Candidate]] = {}
    timings = weighed.fitted.rows.count[:, 0].sum(axis=1)
    rates = np.log([priors.SLIP_RATE[slip] for slip in SINGLE])
    fit = (weighed.single - rates).max(axis=1)
    if which:
        bad = fit[which] < timings[which] * TYPICAL_AT_WORST
        found = weigh_pairs(stack.take(which), which, bad, local)
        pairs = dict(zip(which, found, strict=True))
    fit = np.maximum(fit, weighed.honest)
    for i, candidates in pairs.items():
        fit[i] = max(fit[i], *(c.log_weight - log_rate(*c.slip.split("+")) for c in candidates))
    told = usable & (fit >= timings * HOPELESS)
    ranked = [_ranked(weighed, i, pairs.get(i, []), float(to_beat[i])) for i in range(n)]
    told_of = [candidate for i in np.flatnonzero(told) for candidate, _ in ranked[i][0]]
    mended = [mend(stack, candidate) for candidate in told_of]
    g, u_g = _mended_gravity(mended, stack, told_of)
    explanations: list[list[Explanation]] = [[] for _ in range(n)]
    settles: list[dict[str, str]] = [{} for _ in range(n)]
    probability = {id(c): p for i in range(n) for c, p in ranked[i][0]}
    for m, candidate in enumerate(told_of):
        i = candidate.learner
        explanation, settle = _explanation(
            stack, candidate, mended[m], best[i], g[m], u_g[m], probability[id(candidate)]
        )
        explanations[i].append(explanation)
        settles[i][candidate.slip] = settle
    return [
        _diagnosis(stack, i, explanations[i], settles[i], ranked[i][1], best[i], bool(asked[i]))
        if told[i]
        else Diagnosis((), best[i], limits=NONE_FITS if usable[i] else NOTHING)
        for i in range(n)
    ]


NONE_FITS = say(
    "Neither ordinary scatter nor any explanation tried comes near these readings: a single number "
    "may be wrong in a way of its own."
)
NOTHING = say("Two lengths with a time each are the least that explanations can be weighed on.")

Ranked = tuple[list[tuple[Candidate, float]], float]


def _ranked(weighed: Weighed, i: int, pairs: list[Candidate], to_beat: float) -> Ranked:
    """Slips of learner ``i`` with their probabilities, and that of honest work."""
    logs = np.concatenate([[to_beat], weighed.single[i], [c.log_weight for c in pairs]])
    weight = np.exp(logs - logs.max())
    weight /= weight.sum()
    out: list[tuple[Candidate, float]] = []
    for at in (int(a) for a in np.argsort(-weight[1:])[:MOST]):
        p = float(weight[1 + at])
        if p < LEAST:
            break
        out.append((pairs[at - len(SINGLE)] if at >= len(SINGLE) else _single(weighed, i, at), p))
    return out, float(weight[0])


def _single(weighed: Weighed, i: int, at: int) -> Candidate:
    slip = SINGLE[at]
    mine = weighed.views_of(slip) or [0]
    edit = None
    if slip in ("one_timing_miscounted", "mistyped_cell", "rows_swapped"):
        edit = best_edit(weighed.cells, i, slip)
    return Candidate(
        i, slip, float(weighed.single[i, at]), weighed.fitted, i, weighed.views, mine, edit
    )


def _mended_gravity(
    mended: list[Mended], stack: Stack, candidates: list[Candidate]
) -> tuple[list[float | None], list[float | None]]:
    """g ± u from each mended table, all in one call; ``None`` where nothing was timed."""
    if not mended:
        return [], []
    g, u_g, _, _ = estimate_gravity(
        Stack(
            np.stack([m.length_m for m in mended]),
            np.stack([m.swings for m in mended]),
            np.stack([m.times_s for m in mended]),
            np.array([m.step_s for m in mended]),
            stack.length_step_m[[c.learner for c in candidates]],
        ),
        np.array([m.offset_sd_m for m in mended]),
        np.array([m.factor for m in mended]),
        np.array([m.factor_sd for m in mended]),
    )
    made = [c.slip in MADE for c in candidates]

    def kept(values: Array) -> list[float | None]:
        return [
            None if without or not np.isfinite(v) else float(v)
            for v, without in zip(values, made, strict=True)
        ]

    return kept(g), kept(u_g)


def _explanation(
    stack: Stack,
    candidate: Candidate,
    mended: Mended,
    best: Gravity | None,
    g: float | None,
    u_g: float | None,
    probability: float,
) -> tuple[Explanation, str]:
    """One explanation told with the learner's numbers, and what would settle it."""
    i, slip = candidate.learner, candidate.slip
    parameters = dict(mended.parameters)
    if slip in MADE:
        parameters.update(_misfit(stack, i, slip))
    filled = places(stack, i, slip, mended, parameters, best, g, u_g)
    with np.errstate(invalid="ignore"), warnings.catch_warnings():
        warnings.simplefilter("ignore", RuntimeWarning)  # rows without a time stay nan
        period = np.nanmean(mended.times_s, axis=1) / mended.swings / mended.ghost_factor
    ghost = tuple(
        (float(length), float(t))
        for length, t in zip(mended.ghost_length_m, period, strict=True)
        if np.isfinite(length) and np.isfinite(t)
    )
    explanation = Explanation(
        slip,
        probability,
        sentences.sentence(slip, filled),
        parameters,
        g,
        u_g,
        mended.cells,
        () if slip in MADE else ghost,
        to_learner=sentences.to_learner(slip, filled),
        ask=sentences.ask(slip, filled),
        parts_to_learner={part: sentences.part_to_learner(part, filled) for part in slip.split("+")}
        if "+" in slip
        else {},
        places=sentences.to_say(slip, filled),
    )
    return explanation, sentences.settle(slip, filled)


def _misfit(stack: Stack, i: int, slip: str) -> dict[str, Estimate]:
    """How near the times lie to the formula (root mean square), or repeats to each other."""
    times = stack.times_s[i]
    if slip == "made_by_hand":
        there = np.isfinite(times)
        repeated = there.sum(axis=1) > 1
        spread = [
            np.var(row[ok], ddof=1) for row, ok in zip(times, there, strict=True) if ok.sum() > 1
        ]
        freedom = int((there.sum(axis=1) - 1)[repeated].sum())
        misfit = float(np.mean(spread)) ** 0.5
        return {"misfit_s": Estimate(misfit, misfit / (2 * freedom) ** 0.5, "s")}
    away = {}
    for g in priors.FORMULA_G:
        made = expected_time_s(stack.length_m[i], stack.swings[i], g, 1.0)
        away[g] = float(np.sqrt(np.nanmean((times - made[:, None]) ** 2)))
    g = min(away, key=lambda value: away[value])
    count = int(np.isfinite(times).sum())
    return {
        "misfit_s": Estimate(away[g], away[g] / (2 * count) ** 0.5, "s"),
        "formula_g": Estimate(g, 0.0, "m/s²"),
    }


def _diagnosis(
    stack: Stack,
    i: int,
    slips: list[Explanation],
    settles: dict[str, str],
    honest: float,
    best: Gravity | None,
    asked: bool,
) -> Diagnosis:
    ordinary = Explanation(
        priors.HONEST,
        honest,
        honest_sentence(best),
        {},
        None if best is None else best.g,
        None if best is None else best.u_g,
    )
    ranked = sorted([ordinary, *slips], key=lambda e: -e.probability)
    alike = tuple(
        Indistinct(
            (one.slip, other.slip),
            indistinct(one.slip, other.slip),
            _settling(one.slip, other.slip, settles),
        )
        for a, one in enumerate(ranked)
        for other in ranked[a + 1 :]
        if other.probability > ALIKE * one.probability and other.probability > ALIKE / 2
    )
    return Diagnosis(tuple(ranked), best, asked, alike, limits(stack, i))


def _settling(one: str, other: str, settles: dict[str, str]) -> str:
    ways = dict.fromkeys(settles[slip] for slip in (one, other) if slip in settles)
    return joined(ways)


def limits(stack: Stack, i: int) -> str:
    """What these readings cannot show, in a sentence or two."""
    out = []
    if not (np.isfinite(stack.times_s[i]).sum(axis=1) > 1).any():
        out.append(say("With one timing to a length, repeats cannot be compared."))
    if stack.time_step_s[i] > 0.03:
        out.append(
            say(
                "Times to a tenth of a second hide whether repeats are closer than a hand can "
                "repeat."
            )
        )
    out.append(say("Inventions rougher than 0.05 s cannot be told from careful hands."))
    return joined(out)
