"""Was the experiment planned as the brief asks: lengths, timings, swings?"""

from __future__ import annotations

import itertools
from collections.abc import Iterator

from markbench.checks.question import Case
from markbench.checks.wording import cm, listed
from markbench.model import Concern, Finding

# One gap of more than half of the whole range leaves the line resting on two clusters;
# even spacing of n lengths gives 1/(n − 1) of it. Common practice, no source.
_WIDEST_GAP = 0.5
# A length at a limit is not beyond it by less than a ruler's reading.
_RULER_M = 0.002


def too_few_lengths(case: Case) -> Iterator[Finding]:
    """Fewer different lengths than the brief asks."""
    lengths = _lengths(case)
    if not case.readings or len(lengths) >= case.brief.lengths:
        return
    yield Finding(
        "too_few_lengths",
        case.learner,
        f"{len(lengths)} different length{'s' * (len(lengths) != 1)} timed "
        f"({listed([cm(x) for x in lengths]) or 'none'}); the brief asks for {case.brief.lengths}.",
        Concern.ASK,
        {"lengths": len(lengths), "wanted": case.brief.lengths},
        ask="Are there more readings that were not copied into the table?",
    )


def too_few_timings(case: Case) -> Iterator[Finding]:
    """Lengths timed fewer times than the brief asks."""
    wanted = case.brief.timings_per_length
    short = [(i, r) for i, r in enumerate(case.readings) if len(r.timings) < wanted]
    if not short:
        return
    lengths = listed([f"{cm(r.length_m)} ({len(r.timings)})" for _, r in short])
    yield Finding(
        "too_few_timings",
        case.learner,
        f"Timings per length below the {wanted} asked for at {lengths}.",
        Concern.ASK,
        {"rows": len(short), "wanted": wanted},
        sources=tuple(r.source for _, r in short),
        ask="Was each timing repeated, and only the mean written down?",
        cells=tuple((i, None) for i, _ in short),
    )


def short_range(case: Case) -> Iterator[Finding]:
    """Longest length over shortest below the brief's ratio."""
    lengths = _lengths(case)
    if len(lengths) < 2 or lengths[0] <= 0:
        return
    ratio = lengths[-1] / lengths[0]
    if ratio >= case.brief.least_ratio * (1 - 1e-9):
        return
    yield Finding(
        "short_range",
        case.learner,
        f"The longest length ({cm(lengths[-1])}) is {ratio:.2f} times the shortest "
        f"({cm(lengths[0])}); the brief asks for at least {case.brief.least_ratio:g} times.",
        Concern.NOTE,
        {"range_ratio": ratio, "wanted": case.brief.least_ratio},
        ask="What kept the lengths from being spread further?",
    )


def uneven_lengths(case: Case) -> Iterator[Finding]:
    """One gap between neighbouring lengths takes more than half of the whole range."""
    lengths = _lengths(case)
    if len(lengths) < 4:
        return
    gaps = [b - a for a, b in itertools.pairwise(lengths)]
    widest = max(range(len(gaps)), key=gaps.__getitem__)
    share = gaps[widest] / (lengths[-1] - lengths[0])
    if share <= _WIDEST_GAP:
        return
    yield Finding(
        "uneven_lengths",
        case.learner,
        f"The gap from {cm(lengths[widest])} to {cm(lengths[widest + 1])} takes "
        f"{share:.0%} of the whole range of lengths.",
        Concern.NOTE,
        {"share": share},
        ask="How were the lengths chosen?",
    )


def length_out_of_range(case: Case) -> Iterator[Finding]:
    """Lengths outside the sensible range, or longer than the support is high."""
    brief = case.brief
    outside = [
        (i, r)
        for i, r in enumerate(case.readings)
        if not brief.shortest_m - _RULER_M <= r.length_m <= brief.longest_m + _RULER_M
    ]
    if outside:
        yield Finding(
            "length_out_of_range",
            case.learner,
            f"{listed([cm(r.length_m) for _, r in outside])}: outside the range "
            f"{cm(brief.shortest_m)} to {cm(brief.longest_m)} that the brief calls sensible.",
            Concern.ASK,
            {"rows": len(outside)},
            sources=tuple(r.source for _, r in outside),
            ask="In which unit were the lengths measured, and from where to where?",
            cells=tuple((i, None) for i, _ in outside),
        )
    height = brief.support_height_m
    above = [
        (i, r) for i, r in enumerate(case.readings) if height and r.length_m > height + _RULER_M
    ]
    if height and above:
        yield Finding(
            "length_out_of_range",
            case.learner,
            f"{listed([cm(r.length_m) for _, r in above])}: longer than the support is high "
            f"({cm(height)}).",
            Concern.ASK,
            {"rows": len(above), "support_height_m": height},
            sources=tuple(r.source for _, r in above),
            ask="Which support was used for these lengths?",
            cells=tuple((i, None) for i, _ in above),
        )


def too_few_swings(case: Case) -> Iterator[Finding]:
    """Timings over fewer complete swings than the brief asks."""
    least = min((case.brief.swings_per_timing, *case.brief.swings_allowed))
    short = [(i, r) for i, r in enumerate(case.readings) if r.swings < least]
    if not short:
        return
    counts = listed(sorted({str(r.swings) for _, r in short}))
    where = [r.swings_source or r.source for _, r in short]
    yield Finding(
        "too_few_swings",
        case.learner,
        f"{counts} swing{'s' * (counts != '1')} to a timing at {len(short)} of "
        f"{len(case.readings)} lengths; the brief asks for {least}.",
        Concern.ASK,
        {"swings": min(r.swings for _, r in short), "wanted": least},
        sources=tuple(dict.fromkeys(where)),
        ask="How many complete swings, there and back, were in one timing?",
        cells=tuple((i, None) for i, _ in short),
    )


def _lengths(case: Case) -> list[float]:
    """Different lengths that have a timing, in order."""
    return sorted({round(reading.length_m, 4) for _, reading, _ in case.timed})
