"""Writing what goes back: one way for window and command line, so that both write the same.

Signed marks go out as they were signed, or not at all: where an edited brief or a later
piece has moved a result since, it takes a reopening (and a reason) to send out another.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING

from markbench.export import (
    Changes,
    RosterIds,
    RosterWritten,
    note_changes,
    write_audit,
    write_mark_sheet_csv,
    write_oneroster,
)
from markbench.model import Figures, joined, say
from markbench.session.errors import RefusedError
from markbench.session.report import class_report
from markbench.session.results import changed_since_sign_off
from markbench.session.session import Session

if TYPE_CHECKING:
    from markbench.export.feedback.write import SheetsWritten
    from markbench.export.report import ClassReport

OUT = "markbench-out"
WORKBOOK, MARK_SHEET, SHEETS = "marks.xlsx", "mark_sheet.csv", "feedback"
ROSTER, AUDIT, RECORD = "oneroster.zip", "audit", "moderation-record.pdf"

Progress = Callable[[int, int, str], None]


@dataclass(frozen=True, slots=True)
class Wanted:
    """What is written beside the workbook and the mark sheet.

    ``feedback``: a sheet for every fully marked learner, with ``partly`` also for the
    others; ``oneroster``: the school system's ids; ``audit``: every decision; ``record``:
    the moderation record.
    """

    feedback: bool = False
    partly: bool = False
    oneroster: RosterIds | None = None
    audit: bool = False
    record: bool = False


@dataclass(frozen=True, slots=True)
class WentOut:
    """``files`` in the order they were written; ``unmarked`` learners lack a mark, and
    ``moved`` carry one whose draft has changed since.

    ``changes`` compares with what went out last into the same folder; ``not_sent`` names
    each text that was kept back for a place unfilled, ``behind`` each that was written for
    a level which moderation changed.
    """

    folder: Path
    files: tuple[Path, ...]
    learners: int
    unmarked: int
    moved: int
    changes: Changes
    sheets: SheetsWritten | None = None
    roster: RosterWritten | None = None
    not_sent: tuple[str, ...] = ()
    behind: tuple[str, ...] = ()

    @property
    def unfinished(self) -> int:
        """Learners to whom something is still to be done."""
        return self.unmarked + self.moved


def write_out(
    session: Session,
    folder: Path | None = None,
    wanted: Wanted = Wanted(),
    progress: Progress | None = None,
) -> WentOut:
    """Write a class's results into ``folder`` (default: ``markbench-out`` beside the work).

    Raises :class:`RefusedError` where results are no longer what was signed, ``ExportError``
    or ``OSError`` where a file cannot be written.
    """
    # Imported late: the libraries that write xlsx and PDF take long to load.
    from markbench.export.workbook import write_workbook

    _refuse_moved(session)
    target = folder if folder is not None else session.folder / OUT
    target.mkdir(parents=True, exist_ok=True)
    report = class_report(session)
    files = [target / WORKBOOK, target / MARK_SHEET]
    write_workbook(files[0], report)
    write_mark_sheet_csv(files[1], report)
    sheets, roster = None, None
    if wanted.feedback:
        from markbench.export.feedback import write_feedback_sheets

        sheets = write_feedback_sheets(
            target / SHEETS, report, include_partly=wanted.partly, progress=progress
        )
    if wanted.oneroster is not None:
        roster = write_oneroster(target / ROSTER, report, wanted.oneroster)
        files.append(target / ROSTER)
    if wanted.audit:
        for ending in (".csv", ".txt"):
            write_audit((target / AUDIT).with_suffix(ending), session.history(), report)
            files.append((target / AUDIT).with_suffix(ending))
    if wanted.record:
        from markbench.export.record import write_record
        from markbench.session.record_of import moderation_record

        write_record(target / RECORD, moderation_record(session))
        files.append(target / RECORD)
    marked = [one for one in report.learners if one.total(report.rubric) is not None]
    moved = sum(session.has_moved(one.portfolio.learner.id) for one in marked)
    changes = note_changes(target, report)  # last, so that the record is of what did go out
    return WentOut(
        target,
        tuple(files),
        len(report.learners),
        len(report.learners) - len(marked),
        moved,
        changes,
        sheets,
        roster,
        report.not_sent(),
        texts_behind(session, report),
    )


def texts_behind(session: Session, report: ClassReport) -> tuple[str, ...]:
    """Each text to a learner that speaks of the first marker's level where another holds.

    A text that was edited after the level was changed is taken to know of it.
    """
    titles = {criterion.id: criterion.title for criterion in report.rubric.criteria}
    found = []
    for one in report.learners:
        learner = one.portfolio.learner
        for row in one.outcome.criteria if one.outcome is not None else ():
            first, held = row.first, row.held
            if first is None or held is None or first.level == held.level:
                continue
            edited = session.state.get(("feedback", learner.id, row.criterion))
            at = None if edited is None else edited.at
            if not held.feedback.strip() or (at is not None and at > held.at):
                continue
            found.append(
                say(
                    "{id} {name}, {criterion}: the text was written for “{first}”, and “{held}” "
                    "holds.",
                    id=learner.id,
                    name=learner.name,
                    criterion=titles[row.criterion],
                    first=first.level,
                    held=held.level,
                )
            )
    return tuple(found)


def _refuse_moved(session: Session) -> None:
    moved = changed_since_sign_off(session)
    if not moved:
        return
    names = {learner.id: learner.name for learner in session.learners}
    listed = joined(
        (
            say(
                "{name}, {was} signed, now {now}",
                name=names.get(learner, learner),
                was=_told(was),
                now=_told(now),
            )
            for learner, (was, now) in moved.items()
        ),
        "; ",
    )
    raise RefusedError(
        say(
            "Nothing was written: {n} results are not what was signed "
            "({listed}). Reopen the marks and sign again, or put the brief back as "
            "it was.",
            n=len(moved),
            listed=listed,
        )
    )


def _told(result: tuple[float | None, str]) -> str:
    total, grade = result
    marks = say("no total") if total is None else Figures(f"{total:g}")
    return say("{marks} ({grade})", marks=marks, grade=grade) if grade else marks
