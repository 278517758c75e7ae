"""Was the experiment planned as the brief asks: lengths, timings, swings?"""

from __future__ import annotations

import itertools
from collections.abc import Iterator

from markbench.checks.question import Case
from markbench.checks.wording import cm, listed
from markbench.model import Concern, Finding, say

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
        say(
            "{n} different length timed ({lengths}); the brief asks for {wanted}."
            if len(lengths) == 1
            else "{n} different lengths timed ({lengths}); the brief asks for {wanted}.",
            n=len(lengths),
            lengths=listed([cm(x) for x in lengths]) or say("none"),
            wanted=case.brief.lengths,
        ),
        Concern.ASK,
        {"lengths": len(lengths), "wanted": case.brief.lengths},
        ask=say("Are there more readings that were not copied into the table?"),
    )


def too_few_timings(case: Case) -> Iterator[Finding]:
    """Lengths timed fewer times than the brief asks."""
    wanted = case.brief.timings_per_length
    short = [(i, r) for i, r in enumerate(case.readings) if len(r.timings) < wanted]
    if not short:
        return
    lengths = listed(
        [say("{length} ({n})", length=cm(r.length_m), n=len(r.timings)) for _, r in short]
    )
    yield Finding(
        "too_few_timings",
        case.learner,
        say(
            "Timings per length below the {wanted} asked for at {lengths}.",
            wanted=wanted,
            lengths=lengths,
        ),
        Concern.ASK,
        {"rows": len(short), "wanted": wanted},
        sources=tuple(r.source for _, r in short),
        ask=say("Was each timing repeated, and only the mean written down?"),
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
        say(
            "The longest length ({longest}) is {ratio:.2f} times the shortest ({shortest}); the "
            "brief asks for at least {wanted:g} times.",
            longest=cm(lengths[-1]),
            ratio=ratio,
            shortest=cm(lengths[0]),
            wanted=case.brief.least_ratio,
        ),
        Concern.NOTE,
        {"range_ratio": ratio, "wanted": case.brief.least_ratio},
        ask=say("What kept the lengths from being spread further?"),
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
        say(
            "The gap from {low} to {high} takes {share:.0%} of the whole range of lengths.",
            low=cm(lengths[widest]),
            high=cm(lengths[widest + 1]),
            share=share,
        ),
        Concern.NOTE,
        {"share": share},
        ask=say("How were the lengths chosen?"),
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
            say(
                "{lengths}: outside the range {shortest} to {longest} that the brief calls "
                "sensible.",
                lengths=listed([cm(r.length_m) for _, r in outside]),
                shortest=cm(brief.shortest_m),
                longest=cm(brief.longest_m),
            ),
            Concern.ASK,
            {"rows": len(outside)},
            sources=tuple(r.source for _, r in outside),
            ask=say("In which unit were the lengths measured, and from where to where?"),
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
            say(
                "{lengths}: longer than the support is high ({height}).",
                lengths=listed([cm(r.length_m) for _, r in above]),
                height=cm(height),
            ),
            Concern.ASK,
            {"rows": len(above), "support_height_m": height},
            sources=tuple(r.source for _, r in above),
            ask=say("Which support was used for these lengths?"),
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
        say(
            "{counts} swing to a timing at {n} of {of} lengths; the brief asks for {least}."
            if counts == "1"
            else "{counts} swings to a timing at {n} of {of} lengths; the brief asks for {least}.",
            counts=counts,
            n=len(short),
            of=len(case.readings),
            least=least,
        ),
        Concern.ASK,
        {"swings": min(r.swings for _, r in short), "wanted": least},
        sources=tuple(dict.fromkeys(where)),
        ask=say("How many complete swings, there and back, were in one timing?"),
        cells=tuple((i, None) for i, _ in short),
    )


def _lengths(case: Case) -> list[float]:
    """Different lengths that have a timing, in order."""
    return sorted({round(reading.length_m, 4) for _, reading, _ in case.timed})
