"""Can the numbers be right? Single values, repeats and the line, each against its scatter.

Every threshold is a quantile at the brief's ``false_alarm`` (a share of honest learners),
shared out over the values looked at (Bonferroni), so none is tuned to a class.
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from functools import lru_cache
from statistics import median

from scipy.special import ndtri, stdtrit

from markbench.checks.question import Case
from markbench.checks.wording import cm, signed
from markbench.model import Concern, Figures, Finding, Reading, Row, joined, say
from markbench.physics.pendulum import period_s
from markbench.physics.reporting import with_uncertainty

# Honest work reads a length to a few millimetres: 1.5 mm of reading and 3 mm of where the
# middle of the bob is taken to be. Common practice, no source.
U_LENGTH_M = math.hypot(0.0015, 0.003)
# Releases between about 3° and 15° lengthen the period by 0.02–0.43 %: the middle and
# half-width of that span (elliptic integral, Abramowitz & Stegun 17.3).
_AMPLITUDE_MEAN, _AMPLITUDE_HALF = 1.0020, 0.0020
# Weight of the brief's timing scatter against the learner's own repeats, in degrees of
# freedom: learners differ from 0.05 to 0.25 s, so the prior is a loose one.
PRIOR_FREEDOM = 4.0


def period_off_law(case: Case) -> Iterator[Finding]:
    """Timings that no honest scatter and length reading carries so far from the local law."""
    timed = case.timed
    total = sum(len(reading.timings) for _, reading, _ in timed)
    if not total:
        return
    limit = t_quantile(case.brief.tolerances.false_alarm / total, _freedom(case))
    scatter_s = _scatter_s(case)
    cells, worst, worst_words, sources = [], 0.0, {}, []
    local = case.analysis.local
    for i, reading, row in timed:
        if reading.length_m <= 0:
            continue
        law_s = row.swings * _law_period_s(reading.length_m, local.g)
        # dt/dL = t/2L, dt/dg = −t/2g, and the amplitude's spread over √3.
        u_law_s = law_s * math.hypot(
            U_LENGTH_M / (2 * reading.length_m),
            local.u_g / (2 * local.g),
            _AMPLITUDE_HALF / 3**0.5,
        )
        for k, timing in enumerate(reading.timings):
            departure = (timing.time_s - law_s) / math.hypot(scatter_s, u_law_s)
            if abs(departure) <= limit:
                continue
            cells.append((i, k))
            sources.append(timing.source)
            if abs(departure) > worst:
                worst = abs(departure)
                worst_words = {
                    "time": timing.time_s,
                    "swings": row.swings,
                    "length": cm(reading.length_m),
                    "law": law_s,
                }
    if cells:
        told: str = say(
            "{time:.2f} s for {swings} swings at {length}, where the local law gives {law:.2f} s: "
            "further than timing and length reading explain.",
            **worst_words,
        )
        if len(cells) > 1:
            many = say("{n} of {of} timings are that far off.", n=len(cells), of=total)
            told = joined((told, many))
        yield Finding(
            "period_off_law",
            case.learner,
            told,
            Concern.LOOK,
            {"timings": len(cells), "of": total, "worst_departure": worst},
            sources=tuple(sources),
            ask=say(
                "How were the swings counted, and from where to where was the length measured?"
            ),
            cells=tuple(cells),
        )


def g_implausible(case: Case) -> Iterator[Finding]:
    """g of the learner's own line against local g, given the line's uncertainty."""
    line, local = case.analysis.line, case.analysis.local
    if line is None or line.points < 3 or not math.isfinite(line.u_g):
        return
    limit = t_quantile(case.brief.tolerances.false_alarm, line.points - 2)
    # Compared as slopes, which scatter evenly; g = 4π²/slope does not.
    law_slope = 4 * math.pi**2 / local.g * _AMPLITUDE_MEAN**2
    u_law = law_slope * math.hypot(local.u_g / local.g, 2 * _AMPLITUDE_HALF / 3**0.5)
    departure = (line.slope_s2_per_m - law_slope) / math.hypot(line.u_slope, u_law)
    if abs(departure) <= limit:
        return
    yield Finding(
        "g_implausible",
        case.learner,
        say(
            "The line gives g = {g}; local g is {local:.2f} m/s². {how_far}",
            g=with_uncertainty(line.g, line.u_g, "m/s²"),
            local=local.g,
            how_far=_how_far(abs(departure)),
        ),
        Concern.LOOK,
        {"g": line.g, "u_g": line.u_g, "g_local": local.g, "departure": departure},
        ask=say("Which step between the readings and g could have gone another way?"),
    )


def _how_far(times: float) -> str:
    # Far off, slopes and their g differ by other multiples of their uncertainty, and neither
    # number says more than “far”.
    if times > 10:
        return say("The difference is more than ten times its uncertainty.")
    return say("The difference is {times:.1f} times its uncertainty.", times=times)


def timing_departs(case: Case) -> Iterator[Finding]:
    """A timing that departs from its repeat by more than the learner's own scatter explains."""
    timed = [item for item in case.timed if len(item[1].timings) > 1]
    if not timed:
        return
    squares = {i: sum_of_squares(row.timings_s) for i, _, row in timed}
    freedoms = {i: len(row.timings_s) - 1 for i, _, row in timed}
    prior_s = case.brief.tolerances.timing_scatter_s
    for i, reading, row in timed:
        others = sum(squares.values()) - squares[i]
        freedom = PRIOR_FREEDOM + sum(freedoms.values()) - freedoms[i]
        scatter_s = math.sqrt((PRIOR_FREEDOM * prior_s**2 + others) / freedom)
        middle = sorted(row.timings_s)[len(row.timings_s) // 2]
        n = len(row.timings_s)
        # With two timings nobody can say which departs: both cells are questioned.
        far = max(range(n), key=lambda k: abs(row.timings_s[k] - middle))
        rest = [t for k, t in enumerate(row.timings_s) if k != far]
        difference = row.timings_s[far] - sum(rest) / len(rest)
        limit = t_quantile(case.brief.tolerances.false_alarm / (len(timed) * n), freedom)
        if abs(difference) <= limit * scatter_s * math.sqrt(1 + 1 / len(rest)):
            continue
        chosen = _odd_first(timed, i, row) if n == 2 else (far,)
        yield Finding(
            "timing_departs",
            case.learner,
            say(
                "At {length} one timing is {difference:.2f} s from its repeat ({timings}); the "
                "usual scatter of these timings is about {scatter:.2f} s.",
                length=cm(reading.length_m),
                difference=abs(difference),
                timings=joined([Figures(f"{t:.2f} s") for t in row.timings_s], ", "),
                scatter=scatter_s,
            ),
            Concern.ASK,
            {"difference_s": difference, "scatter_s": scatter_s, "length_m": reading.length_m},
            sources=tuple(reading.timings[k].source for k in chosen),
            ask=say("Did both timings run over the same number of swings?"),
            cells=tuple((i, k) for k in chosen),
        )


def _odd_first(timed: list[tuple[int, Reading, Row]], i: int, row: Row) -> list[int]:
    """The two timings of a row, the one first that keeps less to the time of the other rows."""
    others = [
        (one, one.swings * math.sqrt(max(one.length_m, 0.0))) for j, _, one in timed if j != i
    ]
    each = [t / scale for one, scale in others if scale > 0 for t in one.timings_s]
    if not each or not row.length_m > 0:
        return [0, 1]
    usual_s = median(each) * row.swings * math.sqrt(row.length_m)
    return sorted((0, 1), key=lambda k: -abs(row.timings_s[k] - usual_s))


def off_the_line(case: Case) -> Iterator[Finding]:
    """The point whose externally studentised residual is beyond chance, if any."""
    line = case.analysis.line
    if line is None or line.points < 4:
        return
    known = [(abs(r), j) for j, r in enumerate(line.studentised) if math.isfinite(r)]
    if not known:
        return
    size, j = max(known)
    if size <= t_quantile(case.brief.tolerances.false_alarm / line.points, line.points - 3):
        return
    row, reading = case.analysis.rows[j], case.readings[j]
    yield Finding(
        "off_the_line",
        case.learner,
        say(
            "The point at {length} lies {away} s² off the line of the others in T² (studentised "
            "residual {studentised}).",
            length=cm(row.length_m),
            away=signed(line.residuals_s2[j], "+.3f"),
            studentised=signed(line.studentised[j], "+.1f"),
        ),
        Concern.ASK,
        {"length_m": row.length_m, "residual_s2": line.residuals_s2[j], "studentised": size},
        sources=(reading.source, *(t.source for t in reading.timings)),
        ask=say("Can this length be measured and timed once more?"),
        cells=((j, None), *((j, k) for k in range(len(reading.timings)))),
    )


def intercept(case: Case) -> Iterator[Finding]:
    """A line that misses the origin by more than its own scatter explains."""
    line = case.analysis.line
    if line is None or line.points < 3 or not line.u_intercept > 0:
        return
    size = abs(line.intercept_s2) / line.u_intercept
    if size <= t_quantile(case.brief.tolerances.false_alarm, line.points - 2):
        return
    shift_cm = 100 * line.intercept_s2 / line.slope_s2_per_m
    yield Finding(
        "intercept",
        case.learner,
        say(
            "The line of T² against L misses the origin by {intercept}, as if every length were "
            "{shift:.1f} cm too short."
            if shift_cm > 0
            else "The line of T² against L misses the origin by {intercept}, as if every length "
            "were {shift:.1f} cm too long.",
            intercept=with_uncertainty(line.intercept_s2, line.u_intercept, "s²"),
            shift=abs(shift_cm),
        ),
        Concern.ASK,
        {"intercept_s2": line.intercept_s2, "u": line.u_intercept, "shift_cm": shift_cm},
        ask=say("To which point of the bob was the length measured?"),
    )


def _scatter_s(case: Case) -> float:
    """Timing scatter: the brief's, weighed with the learner's own repeats (s)."""
    squares = sum(sum_of_squares(row.timings_s) for _, _, row in case.timed)
    prior = PRIOR_FREEDOM * case.brief.tolerances.timing_scatter_s**2
    return math.sqrt((prior + squares) / _freedom(case))


def _freedom(case: Case) -> float:
    return PRIOR_FREEDOM + sum(max(len(row.timings_s) - 1, 0) for _, _, row in case.timed)


def sum_of_squares(values: tuple[float, ...]) -> float:
    """Squares of the departures from the mean, added up."""
    mean = sum(values) / len(values)
    return sum((value - mean) ** 2 for value in values)


@lru_cache(maxsize=4096)
def t_quantile(two_sided: float, freedom: float) -> float:
    """Student's t exceeded in size with probability ``two_sided``."""
    if freedom > 1e6:
        return float(-ndtri(two_sided / 2))
    return float(-stdtrit(freedom, two_sided / 2))


@lru_cache(maxsize=4096)
def _law_period_s(length_m: float, g: float) -> float:
    return float(period_s(length_m, g)) * _AMPLITUDE_MEAN
