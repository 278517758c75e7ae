"""What is different from the last export, so that nobody has to compare two mark sheets.

Beside what goes out lies ``export-record.json``: the marks as they went out last, and of
each feedback text only its digest. It says nothing that the workbook beside it does not.
"""

from __future__ import annotations

import json
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from hashlib import sha256
from pathlib import Path
from typing import Any

from markbench.export.plain_text import printable
from markbench.export.report import ClassReport, LearnerReport
from markbench.export.whole_file import whole_file
from markbench.model import Figures, Rubric, joined, say

RECORD_NAME = "export-record.json"
LISTING_NAME = "what-changed.txt"
_FORMAT = 1


@dataclass(frozen=True, slots=True)
class Change:
    """One difference: ``what`` is level, marks, feedback, total, grade or learner."""

    learner: str
    name: str
    criterion: str
    what: str
    was: str
    now: str

    def __str__(self) -> str:
        return say(
            "{learner} {name}: {about}: {was} → {now}",
            learner=self.learner,
            name=self.name,
            about=joined((self.criterion, self.what), " · "),
            was=self.was,
            now=self.now,
        )


@dataclass(frozen=True, slots=True)
class Changes:
    """All differences. ``since`` is the day of the last export, empty for a first one.

    ``unreadable`` says why an existing record could not be compared with.
    """

    since: str
    found: tuple[Change, ...]
    unreadable: str = ""


def note_changes(folder: Path, report: ClassReport) -> Changes:
    """Compare with the record in ``folder``, write what changed, and renew the record.

    Call it once all else is written, so that the record is of what did go out. Raises
    :class:`ExportError`.
    """
    changes = changes_since(folder, report)
    with whole_file(folder / LISTING_NAME, report) as unfinished:
        unfinished.write_text("\n".join(_listing(changes, report)) + "\n", "utf-8")
    with whole_file(folder / RECORD_NAME, report) as unfinished:
        text = json.dumps(_record(report), indent=1)
        unfinished.write_text(text + "\n", "utf-8")
    return changes


def changes_since(folder: Path, report: ClassReport) -> Changes:
    """Compare only, writing nothing."""
    try:
        last = json.loads((folder / RECORD_NAME).read_text("utf-8"))
        since, learners = _checked(last)
    except FileNotFoundError:
        return Changes("", ())
    except (OSError, ValueError, RecursionError) as error:
        # An OSError's own text names the whole path, which has no place in what goes out.
        why = error.strerror if isinstance(error, OSError) else str(error)
        told = say("The record of the last export could not be read ({why}).", why=why)
        return Changes("", (), told)
    now = _record(report)["learners"]
    found = [
        change
        for learner in dict.fromkeys([*learners, *now])
        for change in _of_learner(learner, learners.get(learner), now.get(learner))
    ]
    return Changes(since, tuple(found))


def _record(report: ClassReport) -> dict[str, Any]:
    return {
        "format": _FORMAT,
        "date": report.date.isoformat(),
        "learners": {
            one.portfolio.learner.id: {
                "name": one.portfolio.learner.name,
                "total": one.total(report.rubric),
                "grade": one.grade,
                "marks": _marks(one, report.rubric),
            }
            for one in report.learners
        },
    }


def _marks(one: LearnerReport, rubric: Rubric) -> dict[str, dict[str, Any]]:
    return {
        criterion.title: {
            "level": mark.level,
            "marks": mark.marks,
            "feedback": sha256(mark.feedback.encode(errors="surrogatepass")).hexdigest(),
        }
        for criterion in rubric.criteria
        if (mark := one.marks.get(criterion.id)) is not None
    }


def _checked(last: Any) -> tuple[str, dict[str, Any]]:
    """The day and the learners of a record, or ValueError."""
    if not isinstance(last, dict) or last.get("format") != _FORMAT:
        raise ValueError(say("it is not of a form this version knows"))
    learners = last.get("learners")
    if not isinstance(learners, dict) or not all(_well_formed(one) for one in learners.values()):
        raise ValueError(say("its list of learners is damaged"))
    return str(last.get("date", "")), learners


def _well_formed(learner: Any) -> bool:
    marks = learner.get("marks") if isinstance(learner, dict) else None
    return isinstance(marks, dict) and all(isinstance(mark, dict) for mark in marks.values())


def _of_learner(
    learner: str, was: Mapping[str, Any] | None, now: Mapping[str, Any] | None
) -> Iterator[Change]:
    if was is None or now is None:
        name = str((now or was or {}).get("name", ""))
        texts = say("not there"), say("in the class")
        yield Change(learner, name, "", say("learner"), *(texts if was is None else texts[::-1]))
        return
    name = str(now["name"])
    for criterion in dict.fromkeys([*was["marks"], *now["marks"]]):
        before, after = was["marks"].get(criterion, {}), now["marks"].get(criterion, {})
        for what, told in (("level", say("level")), ("marks", say("marks"))):
            if before.get(what) != after.get(what):
                values = _shown(before.get(what)), _shown(after.get(what))
                yield Change(learner, name, criterion, told, *values)
        if before and after and before.get("feedback") != after.get("feedback"):
            texts = say("the earlier text"), say("a new text")
            yield Change(learner, name, criterion, say("feedback"), *texts)
    if was.get("total") != now.get("total"):
        values = _shown(was.get("total")), _shown(now.get("total"))
        yield Change(learner, name, "", say("total"), *values)
    # A record of before there were grades knows of none, which is no change.
    if "grade" in was and was["grade"] != now["grade"]:
        grades = _grade(was["grade"]), _grade(now["grade"])
        yield Change(learner, name, "", say("grade"), *grades)


def _shown(value: Any) -> str:
    if value is None:
        return say("not marked")
    return Figures(f"{value:g}") if isinstance(value, int | float) else str(value)


def _grade(value: Any) -> str:
    return str(value) or say("no grade")


def _listing(changes: Changes, report: ClassReport) -> Iterator[str]:
    yield f"{printable(report.brief.title)}: what changed"
    if changes.unreadable:
        yield f"{changes.unreadable} Nothing could be compared; from now on it can again."
    elif not changes.since:
        yield f"First export into this folder, {report.date:%Y-%m-%d}: nothing to compare with."
    else:
        yield f"From the export of {changes.since} to that of {report.date:%Y-%m-%d}:"
        yield ""
        yield from (" ".join(printable(str(change)).split()) for change in changes.found)
        if not changes.found:
            yield "No mark, no grade and no feedback text is different."
