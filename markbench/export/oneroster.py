"""Results as OneRoster 1.2 csv files in a zip, for a school's own systems.

Written in bulk mode: ``status`` and ``dateLastModified`` stay blank. Files without rows
are left out, as the binding wants it; the manifest then says they are absent.

References
----------
1EdTech, OneRoster 1.2 CSV binding: column lists, file rules, identifiers, score status.
"""

from __future__ import annotations

import csv
import datetime as dt
import io
import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from hashlib import sha256
from pathlib import Path
from zipfile import ZIP_DEFLATED, ZipFile, ZipInfo

from markbench.export.marks import local
from markbench.export.moderated import steps_to_total
from markbench.export.plain_text import for_csv
from markbench.export.report import ClassReport, LearnerReport
from markbench.export.whole_file import whole_file
from markbench.rubric.pieces import open_places

COLUMNS: Mapping[str, tuple[str, ...]] = {
    "categories": ("sourcedId", "status", "dateLastModified", "title", "weight"),
    "lineItems": (
        "sourcedId",
        "status",
        "dateLastModified",
        "title",
        "description",
        "assignDate",
        "dueDate",
        "classSourcedId",
        "categorySourcedId",
        "academicSessionSourcedId",
        "resultValueMin",
        "resultValueMax",
        "schoolSourcedId",
    ),
    "results": (
        "sourcedId",
        "status",
        "dateLastModified",
        "lineItemSourcedId",
        "studentSourcedId",
        "scoreStatus",
        "score",
        "scoreDate",
        "comment",
        "textScore",
        "classSourcedId",
        "inProgress",
        "incomplete",
        "late",
        "missing",
    ),
}

# Every file the binding knows; the manifest names each, there or absent.
FILES = (
    "academicSessions",
    "categories",
    "classes",
    "classResources",
    "courses",
    "courseResources",
    "demographics",
    "enrollments",
    "lineItemLearningObjectiveIds",
    "lineItems",
    "lineItemScoreScales",
    "orgs",
    "resources",
    "resultLearningObjectiveIds",
    "results",
    "resultScoreScales",
    "roles",
    "scoreScales",
    "userProfiles",
    "userResources",
    "users",
)

_GUID = re.compile(r"[A-Za-z0-9.\-_/@]{1,255}")
_CATEGORY = "markbench-practicals"


@dataclass(frozen=True, slots=True)
class RosterIds:
    """The school system's own identifiers, which only the school knows.

    ``classes`` maps a group of the class list to the system's class; a group that is not
    in it stands for itself.
    """

    school: str
    academic_session: str
    classes: Mapping[str, str] = field(default_factory=dict)


@dataclass(frozen=True, slots=True)
class RosterWritten:
    """``replaced`` holds identifiers the binding does not allow, with what stands instead."""

    results: int
    replaced: Mapping[str, str]


def write_oneroster(path: Path, report: ClassReport, ids: RosterIds) -> RosterWritten:
    """Write the totals as one line item per group, with a result for every learner in it.

    A score stands only where every criterion has a person's mark; its ``textScore`` is the
    grade, where the brief names grades. Identifiers outside the
    binding's alphabet are replaced by a digest and reported. Raises :class:`ExportError`.
    """
    guids = _Guids()
    groups: dict[str, list[LearnerReport]] = {}
    for one in report.learners:
        groups.setdefault(one.portfolio.learner.group, []).append(one)
    rows: dict[str, list[Sequence[str]]] = {"categories": [], "lineItems": [], "results": []}
    for group, learners in groups.items():
        class_id = guids.of(ids.classes.get(group, group) or "class")
        item = _line_item_id(report, class_id)
        rows["lineItems"].append(_line_item(report, ids, guids, item, class_id))
        rows["results"] += [_result(report, guids, item, class_id, one) for one in learners]
    if groups:
        rows["categories"].append((_CATEGORY, "", "", "Practicals", ""))
    _write(path, report, rows)
    return RosterWritten(len(rows["results"]), guids.replaced)


class _Guids:
    """Identifiers as the binding allows them, and a note of each that had to be replaced."""

    def __init__(self) -> None:
        self.replaced: dict[str, str] = {}

    def of(self, text: str) -> str:
        if _GUID.fullmatch(text):
            return text
        made = f"markbench-{_digest(text)}"
        self.replaced[text] = made
        return made


def _digest(text: str) -> str:
    return sha256(text.encode(errors="surrogatepass")).hexdigest()[:24]


def _line_item_id(report: ClassReport, class_id: str) -> str:
    """The same for every export of this practical to this class, so that it is updated."""
    brief = report.brief
    return f"markbench-{_digest(f'{brief.title}|{brief.opens}|{report.rubric.id}|{class_id}')}"


def _line_item(
    report: ClassReport, ids: RosterIds, guids: _Guids, item: str, class_id: str
) -> Sequence[str]:
    brief = report.brief
    opens = brief.opens or brief.closes or report.date
    return (
        item,
        "",
        "",
        _text(brief.title),
        _text(report.rubric.title),
        opens.isoformat(),
        (brief.closes or report.date).isoformat(),
        class_id,
        _CATEGORY,
        guids.of(ids.academic_session),
        "0",
        f"{report.rubric.most:g}",
        guids.of(ids.school),
    )


def _result(
    report: ClassReport, guids: _Guids, item: str, class_id: str, one: LearnerReport
) -> Sequence[str]:
    learner = guids.of(one.portfolio.learner.id)
    total = one.total(report.rubric)
    return (
        f"markbench-{_digest(f'{item}|{learner}')}",
        "",
        "",
        item,
        learner,
        score_status(report, one),
        "" if total is None else f"{total:g}",
        _score_date(report, one).isoformat(),
        _comment(report, one) if total is not None else "",
        _text(one.grade),
        class_id,
        *[""] * 4,
    )


def score_status(report: ClassReport, one: LearnerReport) -> str:
    """One of the binding's words. ``exempt`` is the school's to say, never ours."""
    marked = one.marked(report.rubric)
    if marked == len(report.rubric.criteria):
        return "fully graded"
    if marked:
        return "partially graded"
    return "submitted" if one.portfolio.pieces else "not submitted"


def _score_date(report: ClassReport, one: LearnerReport) -> dt.date:
    """The day of the last mark; the day of the export where there is none."""
    return max((local(mark.at).date() for mark in one.marks.values()), default=report.date)


def _comment(report: ClassReport, one: LearnerReport) -> str:
    marks = [(criterion, one.marks[criterion.id]) for criterion in report.rubric.criteria]
    told = [
        (f"{c.title} ({m.marks:g} of {c.most:g})", "" if open_places(m.feedback) else m.feedback)
        for c, m in marks
    ]
    parts = [f"{head}: {text}" if text else head for head, text in told]
    return _text(" ".join([*parts, *steps_to_total(one)]))


def _text(text: str) -> str:
    """On one line, since no field may hold a line end; and no formula for a spreadsheet."""
    return for_csv(" ".join(text.split()))


def _write(path: Path, report: ClassReport, rows: Mapping[str, list[Sequence[str]]]) -> None:
    manifest: list[Sequence[str]] = [
        ("manifest.version", "1.0"),
        ("oneroster.version", "1.2"),
        *((f"file.{name}", "bulk" if rows.get(name) else "absent") for name in FILES),
        ("source.systemName", "Markbench"),
        ("source.systemCode", "markbench"),
    ]
    files = {"manifest": _csv(("propertyName", "value"), manifest)}
    files |= {name: _csv(COLUMNS[name], rows[name]) for name in COLUMNS if rows[name]}
    # The earliest day a zip can hold is 1 January 1980.
    day = max(report.date, dt.date(1980, 1, 1)).timetuple()[:6]
    with whole_file(path, report) as unfinished, ZipFile(unfinished, "w") as made:
        for name, content in files.items():
            entry = ZipInfo(f"{name}.csv", day)
            entry.compress_type = ZIP_DEFLATED
            entry.external_attr = 0o644 << 16
            made.writestr(entry, content)


def _csv(headings: Sequence[str], rows: Sequence[Sequence[str]]) -> bytes:
    out = io.StringIO()
    writer = csv.writer(out, lineterminator="\r\n")
    writer.writerow(headings)
    writer.writerows(rows)
    return out.getvalue().encode()
