"""Facts of the brief: what the class was asked to do. They say nothing about a learner."""

from __future__ import annotations

from markbench.rubric.facts.registry import (
    Work,
    count,
    number,
    one_decimal,
    percent,
    text,
    yes_no,
)


@count("asked", "different lengths asked for")
def asked_lengths(work: Work) -> int:
    """How many different lengths the brief asks for."""
    return work.brief.lengths


@count("asked", "timings asked for at each length")
def asked_timings(work: Work) -> int:
    """How many timings of each length the brief asks for."""
    return work.brief.timings_per_length


@count("asked", "swings asked for in each timing")
def asked_swings(work: Work) -> int:
    """The fewest complete swings to a timing that the brief allows."""
    return min((work.brief.swings_per_timing, *work.brief.swings_allowed))


@number("asked", "least ratio of longest to shortest length", one_decimal)
def asked_ratio(work: Work) -> float:
    """The least ratio of longest to shortest length that the brief asks for."""
    return work.brief.least_ratio


@count("asked", "pieces of evidence asked for")
def asked_pieces(work: Work) -> int:
    """How many pieces of evidence the brief asks for."""
    return len(work.brief.evidence)


@number("asked", "tolerance on g", percent)
def g_tolerance(work: Work) -> float:
    """How far g may lie from local g, as a fraction of it, and still be called close."""
    return work.brief.tolerances.g_fraction


@yes_no("asked", "the place in the brief")
def place_known(work: Work) -> bool:
    """Whether the brief says where the class measured."""
    return work.brief.place.latitude_deg is not None


@text("asked", "the syllabus's word for the variable that is set")
def independent(work: Work) -> str:
    """The syllabus's word for the variable that is set."""
    return work.brief.words.independent


@text("asked", "the syllabus's word for the variable that is measured")
def dependent(work: Work) -> str:
    """The syllabus's word for the variable that is measured."""
    return work.brief.words.dependent


@text("asked", "the syllabus's word for a variable that is kept the same")
def controlled(work: Work) -> str:
    """The syllabus's word for a variable that is kept the same."""
    return work.brief.words.controlled
