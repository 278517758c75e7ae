"""The sheets about marks: the mark sheet, and level and feedback criterion by criterion."""

from __future__ import annotations

import datetime as dt
from collections.abc import Sequence

from markbench.export.moderated import (
    BESIDE,
    Told,
    beside,
    grades,
    on_the_way_to_the_total,
    was_moderated,
)
from markbench.export.report import ClassReport, LearnerReport
from markbench.export.sheet import ID, NAME, Cell, Column, DraftText, Number, Sheet
from markbench.model import Criterion
from markbench.rubric.pieces import still_open

TO_MARK = "to mark"


def mark_sheet(report: ClassReport) -> Sheet:
    """One row per learner: a mark per criterion, and the total once all are marked."""
    rubric = report.rubric
    on_the_way, grade = on_the_way_to_the_total(report), grades(report)
    columns = (
        ID,
        NAME,
        Column("Group", 9, "The learner's group in the class list."),
        *(
            Column(
                f"{criterion.title} /{criterion.most:g}",
                13,
                f"Marks out of {criterion.most:g}. A number is a person's mark, after "
                "moderation the one that holds; “draft 3” is the program's proposal, not "
                "accepted by anyone; “to mark” has neither.",
                "right",
            )
            for criterion in rubric.criteria
        ),
        *(one.column for one in on_the_way),
        Column(
            f"Total /{rubric.most:g}",
            15,
            "The sum of the marks, only when every criterion has one; else how many have. "
            "After adjustment and lateness, where there are such columns.",
            "right",
        ),
        *(one.column for one in grade),
        Column("Marked by", 18, "Who gave the marks."),
        Column("Last marked", 16, "When the latest of them was given, local time."),
    )
    return Sheet(
        "Mark sheet",
        "One row per learner.",
        columns,
        (_mark_row(report, one, on_the_way, grade) for one in report.learners),
    )


def levels(report: ClassReport) -> Sheet:
    """One row per learner and criterion: level, marks and the sentences to the learner."""
    moderated = was_moderated(report)
    columns = (
        ID,
        NAME,
        Column("Criterion", 20, "The criterion of the rubric."),
        Column("Level", 16, "The level reached; “draft: …” is the program's proposal."),
        Column("Marks", 9, "Marks; “draft 3” is the program's proposal.", "right"),
        Column("Out of", 7, "Most marks this criterion can bring.", "right"),
        *(BESIDE if moderated else ()),
        Column("Status", 9, "marked: by a person; draft: not accepted yet; to mark: neither."),
        Column(
            "Feedback",
            64,
            "The sentences to the learner. A draft says so at its start, "
            "as does a text with a place unfilled.",
        ),
        Column("Marked by", 16, "Who gave the mark."),
        Column("On", 16, "When, local time."),
    )
    rows = (
        _level_row(one, criterion, moderated)
        for one in report.learners
        for criterion in report.rubric.criteria
    )
    return Sheet("Levels and feedback", "One row per learner and criterion.", columns, rows)


def _mark_row(
    report: ClassReport,
    one: LearnerReport,
    on_the_way: Sequence[Told],
    grade: Sequence[Told],
) -> tuple[Cell, ...]:
    learner = one.portfolio.learner
    rubric = report.rubric
    total = one.total(rubric)
    marks = [one.marks[c.id] for c in rubric.criteria if c.id in one.marks]
    progress = f"{one.marked(rubric)} of {len(rubric.criteria)} marked"
    return (
        learner.id,
        learner.name,
        learner.group,
        *(_marks(one, criterion) for criterion in rubric.criteria),
        *(told.cell(one) for told in on_the_way),
        Number(total) if total is not None else progress,
        *(told.cell(one) for told in grade),
        ", ".join(dict.fromkeys(mark.by for mark in marks)),
        max((local(mark.at) for mark in marks), default=None),
    )


def _level_row(one: LearnerReport, criterion: Criterion, moderated: bool) -> tuple[Cell, ...]:
    learner = one.portfolio.learner
    start: tuple[Cell, ...] = (learner.id, learner.name, criterion.title)
    out_of: tuple[Cell, ...] = (Number(criterion.most),)
    if moderated:
        out_of += beside(one, criterion.id)
    mark = one.marks.get(criterion.id)
    if mark is not None:
        when = local(mark.at)
        marks = Number(mark.marks)
        unfilled = still_open(mark.feedback)
        text = DraftText(f"[Not to be sent: {unfilled}]") if unfilled else mark.feedback
        return (*start, mark.level, marks, *out_of, "marked", text, mark.by, when)
    draft = one.draft_for(criterion.id)
    if draft is None or (draft.level is None and not draft.feedback):
        return (*start, None, TO_MARK, *out_of, TO_MARK, None, None, None)
    return (
        *start,
        DraftText(f"draft: {draft.level or 'for the teacher to judge'}"),
        _marks(one, criterion),
        *out_of,
        DraftText("draft"),
        DraftText(f"[Draft] {draft.feedback}") if draft.feedback else None,
        None,
        None,
    )


def _marks(one: LearnerReport, criterion: Criterion) -> Cell:
    """A number only for a person's mark, so that no sum can take a draft for one."""
    mark = one.marks.get(criterion.id)
    if mark is not None:
        return Number(mark.marks)
    draft = one.draft_for(criterion.id)
    if draft is not None and draft.marks is not None:
        return DraftText(f"draft {draft.marks:g}")
    return TO_MARK


def local(at: dt.datetime) -> dt.datetime:
    """The local time, as a spreadsheet keeps it: without a zone or parts of a second."""
    return at.astimezone().replace(tzinfo=None, microsecond=0)
