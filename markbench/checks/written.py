"""Is it written down as the trade writes it, and is the learner's own arithmetic right?"""

from __future__ import annotations

import math
from collections.abc import Iterator

from markbench.checks.question import Case
from markbench.checks.wording import cm, listed
from markbench.model import Concern, Finding, OwnQuantity, OwnValue, Timing, say
from markbench.physics.pendulum import FOUR_PI_SQUARED

# Spreadsheets drop a trailing zero: one reading in ten ends in one by chance.
_TRAILING_ZERO = 0.1
_TYPED_AS_TEXT = (".csv", ".tsv", ".txt")

_QUANTITY_WORDS: dict[OwnQuantity, tuple[str, str]] = {
    "mean_time_s": (say("mean time"), "s"),
    "period_s": ("T", "s"),
    "period_squared_s2": ("T²", "s²"),
    "g_m_s2": ("g", "m/s²"),
}


def own_arithmetic(case: Case) -> Iterator[Finding]:
    """The learner's own values against recomputation, allowing for their rounding."""
    table = case.portfolio.table
    if table is None:
        return
    wrong: list[tuple[OwnValue, float]] = []
    for own in table.own_values:
        candidates = _recomputed(case, own)
        if candidates and not any(_agrees(case, own, value) for value in candidates):
            wrong.append((own, candidates[0]))
    if not wrong:
        return
    parts = []
    for own, expected in wrong[:3]:
        word, unit = _QUANTITY_WORDS[own.quantity]
        what = word
        if own.reading is not None:
            what = say(
                "{word} at {length}", word=word, length=cm(case.readings[own.reading].length_m)
            )
        parts.append(
            say(
                "{what} is written as {own:g} {unit} and comes out as {expected:.4g} {unit} "
                "({source})",
                what=what,
                own=own.value,
                expected=expected,
                unit=unit,
                source=str(own.source),
            )
        )
    told = listed(parts)
    if len(wrong) > len(parts):
        told = say("{told}; {n} more like it", told=told, n=len(wrong) - len(parts))
    yield Finding(
        "own_arithmetic",
        case.learner,
        say("Worked out again from the raw readings, {told}.", told=told),
        Concern.ASK,
        {"wrong": len(wrong), "of": len(table.own_values)},
        sources=tuple(own.source for own, _ in wrong),
        ask=say("Show the working for one of these values."),
        cells=tuple(sorted({(own.reading, None) for own, _ in wrong if own.reading is not None})),
    )


def decimals_uneven(case: Case) -> Iterator[Finding]:
    """Raw times of one instrument written to different numbers of decimals."""
    timings = [t for reading in case.readings for t in reading.timings if t.decimals is not None]
    if len(timings) < 3:
        return
    most = max(t.decimals or 0 for t in timings)
    short = [t for t in timings if (t.decimals or 0) < most]
    typed = case.portfolio.table is not None and case.portfolio.table.source.file.lower().endswith(
        _TYPED_AS_TEXT
    )
    if not short or (not typed and _by_chance(timings, most) > case.brief.tolerances.false_alarm):
        return
    counts = sorted({t.decimals or 0 for t in timings})
    yield Finding(
        "decimals_uneven",
        case.learner,
        say(
            "Times are written to {counts} decimals in one table; {n} of {of} have fewer than "
            "{most}.",
            counts=listed([str(c) for c in counts]),
            n=len(short),
            of=len(timings),
            most=most,
        ),
        Concern.NOTE,
        {"short": len(short), "of": len(timings), "decimals": most},
        sources=tuple(t.source for t in short),
        ask=say("How finely did the stopwatch read?"),
    )


def heading_without_unit(case: Case) -> Iterator[Finding]:
    """Column headings that name a quantity and no unit."""
    table = case.portfolio.table
    if table is None:
        return
    bare = [
        heading
        for heading, has_unit in zip(table.headings, table.heading_has_unit, strict=True)
        if not has_unit
    ]
    if not bare:
        return
    yield Finding(
        "heading_without_unit",
        case.learner,
        say(
            "No unit in the heading {headings}."
            if len(bare) == 1
            else "No unit in the headings {headings}."
            if len(bare) <= 4
            else "No unit in the headings {headings} and others.",
            headings=listed(
                [say("“{text}” ({cell})", text=h.raw.strip(), cell=h.cell) for h in bare[:4]]
            ),
        ),
        Concern.NOTE,
        {"headings": len(bare)},
        sources=tuple(bare),
        ask=say("Write each heading as quantity / unit."),
    )


def _recomputed(case: Case, own: OwnValue) -> list[float]:
    """Values the learner may rightly have got: from raw readings, or from the column before."""
    if own.reading is None:
        return _whole_table_g(case) if own.quantity == "g_m_s2" else []
    row = case.analysis.rows[own.reading]
    if not math.isfinite(row.mean_time_s):
        return []
    if own.timing is not None:
        if own.timing >= len(row.timings_s):
            return []
        mean_s = row.timings_s[own.timing]
    else:
        mean_s = row.mean_time_s
    period = mean_s / row.swings
    written = {
        other.quantity: other.value
        for other in (case.portfolio.table.own_values if case.portfolio.table else ())
        if other.reading == own.reading and other.timing == own.timing and other is not own
    }
    own_mean = written.get("mean_time_s")
    periods = [period]
    if own_mean:
        periods.append(own_mean / row.swings)
    squares = [p**2 for p in periods]
    if own.quantity == "mean_time_s":
        return [mean_s]
    if own.quantity == "period_s":
        return periods
    if "period_s" in written:
        squares.append(written["period_s"] ** 2)
    if own.quantity == "period_squared_s2":
        return squares
    if written.get("period_squared_s2"):
        squares.append(written["period_squared_s2"])
    return [FOUR_PI_SQUARED * row.length_m / square for square in squares if square > 0]


def _whole_table_g(case: Case) -> list[float]:
    """A final g may come from the line, or from the mean of the single values."""
    values = [row.g for row in case.analysis.rows if math.isfinite(row.g)]
    found = [case.analysis.line.g] if case.analysis.line is not None else []
    if values:
        found.append(sum(values) / len(values))
    return found


def _agrees(case: Case, own: OwnValue, expected: float) -> bool:
    if not math.isfinite(own.value):
        return False
    places = own.decimals if own.decimals is not None else 3
    # One unit of the last figure: truncating is a habit, not a slip of arithmetic.
    rounding = 10.0**-places
    tolerance = case.brief.tolerances.own_arithmetic_fraction * abs(expected)
    return abs(own.value - expected) <= rounding * (1 + 1e-9) + tolerance


def _by_chance(timings: list[Timing], most: int) -> float:
    """Chance that a spreadsheet's dropped zeros alone look like this, or more so."""
    n = len(timings)
    fewer = sum((t.decimals or 0) < most for t in timings)
    worst = min(t.decimals or 0 for t in timings)
    tail = sum(
        math.comb(n, k) * _TRAILING_ZERO**k * (1 - _TRAILING_ZERO) ** (n - k)
        for k in range(fewer, n + 1)
    )
    return float(min(tail, n * _TRAILING_ZERO ** (most - worst)))
