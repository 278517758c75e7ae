"""The sheets about questions: findings, and which evidence was handed in."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from markbench.checks.wording import MOST_DO, NEVER_SEEN, OF_HUNDRED, ONE_OF, how_often
from markbench.export.report import ClassReport, LearnerReport
from markbench.export.sheet import ID, NAME, Cell, Column, Sheet
from markbench.model import Concern, Finding, Piece, PieceKind, Source

_CONCERNS = {
    Concern.LOOK: "look before marking",
    Concern.ASK: "ask the learner",
    Concern.NOTE: "note",
}
_KINDS: dict[PieceKind, str] = {
    "readings": "Readings",
    "setup_photo": "Set-up photo",
    "selfie": "Selfie",
    "photo": "Photo",
    "swing_video": "Swing video",
    "report": "Report",
    "unknown": "Other",
}


def findings(report: ClassReport) -> Sheet:
    """One row per finding, the weightiest of each learner first; the class's own on top."""
    columns = (
        ID,
        NAME,
        Column("Concern", 12, "How much it should weigh on what to look at first."),
        Column("Finding", 60, "What the numbers or files show. A question, not a verdict."),
        Column("What to ask", 36, "What to ask the learner."),
        Column("Who", 10, "Who should look."),
        Column(
            "Honest work",
            15,
            "How often honest work would look the same; empty where it has no bearing.",
        ),
        Column("Where", 30, "Files, sheets and cells it rests on."),
        Column("Check", 16, "The name of the check."),
    )
    return Sheet("Findings", "One row per finding.", columns, _finding_rows(report))


def evidence(report: ClassReport) -> Sheet:
    """One row per learner: what the brief wants, there or not, and every file."""
    wanted: list[PieceKind] = ["readings"]
    wanted += [kind for kind in _KINDS if kind in report.brief.evidence and kind not in wanted]
    columns = (
        ID,
        NAME,
        *(
            Column(
                _KINDS[kind],
                13,
                "present, empty (a file of no bytes) or missing; “a photo”: not yet told apart.",
            )
            for kind in wanted
        ),
        Column("Handed in", 16, "Local time of the latest file."),
        Column("Files", 60, "Every current file, and what it was taken for."),
        Column("Earlier", 36, "Files that a later hand-in replaced; kept."),
    )
    rows = (_evidence_row(one, wanted) for one in report.learners)
    return Sheet("Evidence", "One row per learner.", columns, rows)


def _finding_rows(report: ClassReport) -> Iterator[tuple[Cell, ...]]:
    for finding in report.problems:
        yield "", "(the class)", *_finding_cells(finding)
    for piece in report.unowned:
        text = "Nobody in the class list could be matched to this file."
        yield "", "(nobody)", _CONCERNS[Concern.LOOK], text, "", "teacher", "", piece.file, ""
    for one in report.learners:
        learner = one.portfolio.learner
        for finding in sorted(one.findings, key=lambda found: -found.concern):
            yield learner.id, learner.name, *_finding_cells(finding)


def _finding_cells(finding: Finding) -> tuple[Cell, ...]:
    return (
        _CONCERNS[finding.concern],
        finding.message,
        "" if finding.explained_by else finding.ask,
        finding.who,
        _rate(finding.honest_rate),
        _places(finding.sources),
        finding.check.replace("_", " "),
    )


def _places(sources: tuple[Source, ...]) -> str:
    """Each file and sheet once, with its cells after it."""
    cells: dict[str, dict[str, None]] = {}
    for source in sources:
        place = str(replace(source, cell=""))
        cells.setdefault(place, {}).update({source.cell: None} if source.cell else {})
    return "\n".join(
        f"{place}, cell{'s' * (len(found) > 1)} {', '.join(found)}" if found else place
        for place, found in cells.items()
    )


_SHORT_RATES = {
    NEVER_SEEN: "hardly ever",
    MOST_DO: "about as often",
    OF_HUNDRED: "about {n} in 100",
    ONE_OF: "about 1 in {n}",
}


def _rate(rate: float | None) -> str:
    """``about 1 in 200``: the number that the window shows, in fewer words."""
    if rate is None:
        return ""
    way, number = how_often(rate)
    return _SHORT_RATES[way].format(n=number)


def _evidence_row(one: LearnerReport, wanted: list[PieceKind]) -> tuple[Cell, ...]:
    portfolio = one.portfolio
    handed_in = portfolio.handed_in
    return (
        portfolio.learner.id,
        portfolio.learner.name,
        *(_presence(one, kind) for kind in wanted),
        None if handed_in is None else handed_in.replace(tzinfo=None, microsecond=0),
        _listed(portfolio.pieces),
        _listed(portfolio.earlier),
    )


def _presence(one: LearnerReport, kind: PieceKind) -> str:
    portfolio = one.portfolio
    if kind == "readings":
        if portfolio.table is not None:
            return "present"
        return "not understood" if portfolio.of_kind("readings") else "missing"
    if pieces := portfolio.of_kind(kind):
        return "present" if any(piece.size_bytes for piece in pieces) else "empty"
    photo = kind in ("setup_photo", "selfie") and portfolio.of_kind("photo")
    return "a photo" if photo else "missing"


def _listed(pieces: tuple[Piece, ...]) -> str:
    return "\n".join(f"{piece.file} ({_KINDS[piece.kind].lower()})" for piece in pieces)
