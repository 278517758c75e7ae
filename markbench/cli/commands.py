"""What each command does, over the same session as the window."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from contextlib import contextmanager
from pathlib import Path

from rich.console import Console
from rich.progress import BarColumn, MofNCompleteColumn, Progress, TextColumn
from rich.table import Table
from rich.text import Text

from markbench.checks.pieces import certainly_missing
from markbench.checks.wording import listed
from markbench.cli.terminal import Terminal, plain
from markbench.export import (
    Changes,
    ExportError,
    RosterIds,
    write_json,
)
from markbench.export.changes import LISTING_NAME
from markbench.intake.brief_file import BriefProblem
from markbench.model import Concern
from markbench.physics.reporting import with_uncertainty
from markbench.rubric import RubricError
from markbench.session import Session
from markbench.session.errors import RefusedError
from markbench.session.evidence import look
from markbench.session.going_out import SHEETS, Wanted, WentOut, write_out
from markbench.session.report import class_report
from markbench.session.retention import overdue
from markbench.store import StoreError

EXPECTED = (OSError, StoreError, RubricError, ExportError, RefusedError)

_CHANGES_SHOWN = 12
_CONCERN_SIGNS = {Concern.LOOK: "!", Concern.ASK: "?", Concern.NOTE: "·"}
_SHORT_KINDS = {"setup_photo": "set-up", "selfie": "selfie", "swing_video": "video"}


def check(
    folder: Path, json_file: Path | None, *, quiet: bool = False, evidence: bool = False
) -> None:
    """Print a readable table of the class, and write the JSON file if asked."""
    console = Terminal()
    session = _open(folder, console, read_only=True)
    try:
        if evidence:
            with _progress(console, "Looking at photos and videos") as tell:
                session.see(look(session.work, folder, tell))
        if not quiet:
            console.print(_table(session))
        _print_open_questions(session, console)
        if json_file is not None:
            write_json(json_file, class_report(session))
            console.print(f"Written: {json_file}")
    finally:
        session.close()


def export(
    folder: Path,
    to: Path | None,
    *,
    feedback: bool = False,
    partly: bool = False,
    oneroster: tuple[str, str] | None = None,
    audit: bool = False,
    record: bool = False,
) -> None:
    """Write the workbook and the mark sheet, and what else is asked for.

    ``oneroster`` holds the school system's ids of the school and the academic session.
    """
    console = Terminal()
    session = _open(folder, console, read_only=True)
    wanted = Wanted(
        feedback, partly, None if oneroster is None else RosterIds(*oneroster), audit, record
    )
    try:
        with _progress(console, "Writing") as tell:
            went = write_out(session, to, wanted, tell)
        complete = went.learners - went.unfinished
        lines = [
            f"{went.learners} learners, {complete} of them fully marked; the rest carries "
            "drafts, marked as drafts."
        ]
        lines += [f"Written: {file}" for file in went.files]
        lines += _feedback(went) + _oneroster(went) + _changes(went.changes)
        lines += [f"Not sent: {words}" for words in went.not_sent]
        lines += [f"Look at the text: {words}" for words in went.behind]
        console.print("\n".join(lines), soft_wrap=True)
    finally:
        session.close()


def template(folder: Path, to: Path) -> None:
    """Write the empty table of readings."""
    from markbench.session.handouts import template_for

    _say_handout(template_for(folder, to), to)


def task_sheet(folder: Path, to: Path) -> None:
    """Write the task sheet."""
    from markbench.session.handouts import task_sheet_for

    _say_handout(task_sheet_for(folder, to), to)


def _say_handout(problems: tuple[BriefProblem, ...], to: Path) -> None:
    console = Terminal()
    for problem in problems:
        console.print(f"Class folder: {problem.sentence}")
    console.print(f"Written: {to}")


def _feedback(went: WentOut) -> list[str]:
    written = went.sheets
    if written is None:
        return []
    lines = [f"Written: {len(written.sheets)} feedback sheets in {went.folder / SHEETS}"]
    lines += [f"No sheet: {one.learner} {one.name}: {one.why}." for one in written.left_out]
    lines += [f"Taken back, since it no longer belongs there: {p.name}" for p in written.taken_back]
    lines += [
        f"Printed with empty boxes for letters the print has no type for: {sheet.pdf.name}; its "
        "web page shows them all."
        for sheet in written.sheets
        if sheet.boxes
    ]
    return lines


def _oneroster(went: WentOut) -> list[str]:
    written = went.roster
    if written is None:
        return []
    lines = [f"OneRoster: {written.results} results"]
    lines += [
        f"The id {was} has signs OneRoster does not allow; it stands as {now}."
        for was, now in written.replaced.items()
    ]
    return lines


def _changes(changes: Changes) -> list[str]:
    if changes.unreadable:
        return [changes.unreadable]
    if not changes.since:
        return []
    count = len(changes.found)
    told = [f"Since the export of {changes.since}: {count} changes, listed in {LISTING_NAME}."]
    told += [f"  {change}" for change in changes.found[:_CHANGES_SHOWN]]
    return told + (["  …"] if count > _CHANGES_SHOWN else [])


def _open(folder: Path, console: Console, *, read_only: bool) -> Session:
    with _progress(console, "Reading the class folder") as tell:
        return Session.open(folder, progress=tell, read_only=read_only)


@contextmanager
def _progress(console: Console, title: str) -> Iterator[Callable[[int, int, str], None]]:
    columns = (TextColumn("{task.description}", markup=False), BarColumn(), MofNCompleteColumn())
    with Progress(*columns, console=console, transient=True) as bar:
        task = bar.add_task(title, total=None)

        def tell(done: int, total: int, text: str) -> None:
            bar.update(task, completed=done, total=total, description=plain(text or title))

        yield tell


def _table(session: Session) -> Table:
    title = f"{session.brief.title}: {len(session.learners)} learners"
    table = Table(title=title, box=None, padding=(0, 1, 0, 0))
    # Only names give way on a narrow terminal: one line to a learner, whatever its width.
    table.add_column("Learner")
    for heading in ("Rows", "g of line", "Best g"):
        table.add_column(heading, justify="right", no_wrap=True)
    for heading in ("Missing", "Findings", f"Of {session.rubric.most:g}"):
        table.add_column(heading, no_wrap=True)
    for learner in session.learners:
        line = session.analysis(learner.id).line
        diagnosis = session.diagnosis(learner.id)
        best = diagnosis.best if diagnosis is not None else None
        findings = session.findings(learner.id)
        missing = [_SHORT_KINDS.get(kind, kind) for kind in certainly_missing(findings)]
        drafts = [d for d in session.drafts(learner.id) if d.marks is not None]
        table.add_row(
            Text(learner.name, no_wrap=True, overflow="ellipsis"),
            str(len(session.analysis(learner.id).rows)),
            with_uncertainty(line.g, line.u_g) if line is not None else "–",
            with_uncertainty(best.g, best.u_g) if best is not None else "–",
            (missing[0] + f" +{len(missing) - 1}" * (len(missing) > 1)) if missing else "–",
            " ".join(
                f"{count}{sign}"
                for concern, sign in _CONCERN_SIGNS.items()
                if (count := sum(f.concern is concern for f in findings))
            ),
            f"{sum(d.marks or 0 for d in drafts):g}",
        )
    table.caption = "g in m/s²   Findings: ! look before marking, ? ask, · note   Last: drafts"
    table.caption_justify = "left"
    return table


def _print_open_questions(session: Session, console: Console) -> None:
    for problem in session.work.problems:
        console.print(f"Class folder: {problem.message}")
    late = overdue(session)
    if late is not None:
        text = f"{late} After sign-off, markbench purge removes them."
        console.print(text)
    for doubt in session.work.doubts:
        names = [
            learner.name
            for match in doubt.candidates
            for learner in session.learners
            if learner.id == match.learner
        ]
        text = f"To settle: {doubt.piece.file}: {doubt.why} Candidates: {listed(names) or 'none'}."
        console.print(text)
    for piece in session.work.unowned:
        console.print(f"To settle: {piece.file}: no learner of the class list fits.")
    for piece in session.work.set_aside:
        console.print(f"Set aside as nobody's: {piece.file}")
