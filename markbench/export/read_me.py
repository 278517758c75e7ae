"""The sheet that explains the others, made from their own columns."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from markbench.export.marks import local
from markbench.export.report import ClassReport
from markbench.export.sheet import Cell, Column, Sheet
from markbench.physics.reporting import with_uncertainty

TITLE = "Read me"


def read_me(report: ClassReport, others: Sequence[Sheet]) -> Sheet:
    """What was asked, by which rubric, made when and by what; then every column."""
    columns = (
        Column("About", 20, ""),
        Column("Item", 26, ""),
        Column("What it means", 92, ""),
    )
    return Sheet(TITLE, "What everything here means.", columns, _rows(report, others), held=0)


def _rows(report: ClassReport, others: Sequence[Sheet]) -> Iterator[tuple[Cell, ...]]:
    marked = sum(one.total(report.rubric) is not None for one in report.learners)
    yield "This file", "Made by", f"Markbench {report.program_version}"
    yield "This file", "Date", f"{report.date:%Y-%m-%d}"
    yield "This file", "Fully marked", f"{marked} of {len(report.learners)} learners"
    yield "This file", "Signed off", _signed(report)
    yield (
        "This file",
        "Drafts",
        "Whatever says “draft” (also in italics on a tint) is a proposal of the program that "
        "no person has accepted. A draft is not a mark and is in no total.",
    )
    yield (
        "This file",
        "Findings",
        "Findings are questions that numbers or files put. They accuse nobody; honest work "
        "trips some of them, as often as the sheet says.",
    )
    yield (
        "This file",
        "Uncertainties",
        "Standard uncertainties, rounded to one or two figures and the value to match. "
        "“±” stands before a standard uncertainty.",
    )
    yield from _brief_rows(report)
    for criterion in report.rubric.criteria:
        levels = "\n".join(f"{lv.name} ({lv.marks:g}): {lv.descriptor}" for lv in criterion.levels)
        yield f"Rubric: {report.rubric.title}", f"{criterion.title} /{criterion.most:g}", levels
    for sheet in others:
        yield f"Sheet: {sheet.title}", "(all of it)", sheet.about
        for column in sheet.columns:
            yield f"Sheet: {sheet.title}", column.heading, column.meaning


def _signed(report: ClassReport) -> str:
    signed = report.signed
    if signed is None:
        return "Not signed off: marks may still change."
    return f"By {signed.by}, {local(signed.at):%Y-%m-%d %H:%M}; the marks are frozen."


def _brief_rows(report: ClassReport) -> Iterator[tuple[Cell, ...]]:
    brief = report.brief
    window = " to ".join(f"{day:%Y-%m-%d}" for day in (brief.opens, brief.closes) if day)
    yield "Brief", "Title", brief.title
    yield "Brief", "Handing in", window or "no dates set"
    yield (
        "Brief",
        "Readings asked for",
        f"{brief.lengths} lengths between {brief.shortest_m:g} m and {brief.longest_m:g} m, the "
        f"longest at least {brief.least_ratio:g} times the shortest; "
        f"{brief.timings_per_length} timings each of {brief.swings_per_timing} complete swings.",
    )
    if brief.grade_boundaries:
        order = sorted(brief.grade_boundaries, key=lambda pair: -pair[1])
        yield "Brief", "Grades", ", ".join(f"{grade} from {least:g}" for grade, least in order)
    if brief.late.marks_per_day:
        most = brief.late.most_days
        at_most = "" if most is None else f", {most} days at most"
        yield "Brief", "Late", f"{brief.late.marks_per_day:g} marks off a day{at_most}"
    yield "Brief", "Evidence", ", ".join(kind.replace("_", " ") for kind in brief.evidence)
    local = next((one.analysis.local for one in report.learners if one.analysis), None)
    if local is not None:
        yield "Brief", "Place", local.basis
        yield "Brief", "Local g", with_uncertainty(local.g, local.u_g, "m/s²")
