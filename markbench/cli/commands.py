"""What each command does, over the same session as the window."""

from __future__ import annotations

from pathlib import Path

from rich.console import Console
from rich.progress import BarColumn, MofNCompleteColumn, Progress, TextColumn
from rich.table import Table

from markbench.checks.wording import listed
from markbench.export import ExportError, write_json, write_mark_sheet_csv, write_workbook
from markbench.intake.brief_file import BriefProblem
from markbench.model import Concern
from markbench.physics.reporting import with_uncertainty
from markbench.rubric import RubricError
from markbench.session import Session
from markbench.session.handouts import task_sheet_for, template_for
from markbench.session.report import class_report
from markbench.store import StoreError

EXPECTED = (OSError, StoreError, RubricError, ExportError)

_CONCERN_SIGNS = {Concern.LOOK: "!", Concern.ASK: "?", Concern.NOTE: "·"}
_SHORT_KINDS = {"setup_photo": "set-up", "selfie": "selfie", "swing_video": "video"}


def check(folder: Path, json_file: Path | None, *, quiet: bool = False) -> None:
    """Print a readable table of the class, and write the JSON file if asked."""
    console = Console()
    session = _open(folder, console, read_only=True)
    try:
        if not quiet:
            console.print(_table(session))
        _print_open_questions(session, console)
        if json_file is not None:
            write_json(json_file, class_report(session))
            console.print(f"Written: {json_file}", highlight=False)
    finally:
        session.close()


def export(folder: Path, to: Path | None) -> None:
    """Write the workbook and the mark sheet."""
    console = Console()
    session = _open(folder, console, read_only=True)
    try:
        report = class_report(session)
        target = to if to is not None else folder / "markbench-out"
        target.mkdir(parents=True, exist_ok=True)
        workbook, sheet = target / "marks.xlsx", target / "mark_sheet.csv"
        write_workbook(workbook, report)
        write_mark_sheet_csv(sheet, report)
        complete = sum(session.total(learner.id) is not None for learner in session.learners)
        console.print(
            f"{len(session.learners)} learners, {complete} of them fully marked; the rest "
            f"carries drafts, marked as drafts.\nWritten: {workbook}\nWritten: {sheet}",
            highlight=False,
        )
    finally:
        session.close()


def template(folder: Path, to: Path) -> None:
    """Write the empty table of readings."""
    _say_handout(template_for(folder, to), to)


def task_sheet(folder: Path, to: Path) -> None:
    """Write the task sheet."""
    _say_handout(task_sheet_for(folder, to), to)


def _say_handout(problems: tuple[BriefProblem, ...], to: Path) -> None:
    console = Console()
    for problem in problems:
        console.print(f"Class folder: {problem.sentence}", highlight=False, markup=False)
    console.print(f"Written: {to}", highlight=False, markup=False)


def _open(folder: Path, console: Console, *, read_only: bool) -> Session:
    columns = (TextColumn("{task.description}"), BarColumn(), MofNCompleteColumn())
    with Progress(*columns, console=console, transient=True) as bar:
        task = bar.add_task("Reading the class folder", total=None)

        def tell(done: int, total: int, text: str) -> None:
            bar.update(task, completed=done, total=total, description=text)

        return Session.open(folder, progress=tell, read_only=read_only)


def _table(session: Session) -> Table:
    table = Table(title=f"{session.brief.title}: {len(session.learners)} learners", box=None)
    for heading in ("Learner", "Lengths", "g of the line / (m/s²)", "Best g / (m/s²)"):
        table.add_column(heading, justify="left" if heading == "Learner" else "right")
    for heading in ("Missing", "Findings", "Draft"):
        table.add_column(heading)
    for learner in session.learners:
        line = session.analysis(learner.id).line
        diagnosis = session.diagnosis(learner.id)
        best = diagnosis.best if diagnosis is not None else None
        findings = session.findings(learner.id)
        missing = [
            _SHORT_KINDS.get(kind, kind)
            for f in findings
            if f.check == "missing_piece" and "could_be" not in f.numbers
            for kind in [str(f.numbers["piece"])]
        ]
        drafts = [d for d in session.drafts(learner.id) if d.marks is not None]
        table.add_row(
            learner.name,
            str(len(session.analysis(learner.id).rows)),
            with_uncertainty(line.g, line.u_g) if line is not None else "–",
            with_uncertainty(best.g, best.u_g) if best is not None else "–",
            listed(missing) or "–",
            " ".join(
                f"{count}{sign}"
                for concern, sign in _CONCERN_SIGNS.items()
                if (count := sum(f.concern is concern for f in findings))
            ),
            f"{sum(d.marks or 0 for d in drafts):g} of {session.rubric.most:g}",
        )
    table.caption = "Findings: ! look before marking   ? ask the learner   · note"
    return table


def _print_open_questions(session: Session, console: Console) -> None:
    for problem in session.work.problems:
        console.print(f"Class folder: {problem.message}", highlight=False, markup=False)
    for doubt in session.work.doubts:
        names = [
            learner.name
            for match in doubt.candidates
            for learner in session.learners
            if learner.id == match.learner
        ]
        text = f"To settle: {doubt.piece.file}: {doubt.why} Candidates: {listed(names) or 'none'}."
        console.print(text, highlight=False, markup=False)
    for piece in session.work.unowned:
        console.print(f"Nobody's: {piece.file}", highlight=False, markup=False)
