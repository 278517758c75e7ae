"""From a learner's pieces to a portfolio: tables read, hand-ins sorted, the teacher's word last."""

from __future__ import annotations

import hashlib
from collections import defaultdict
from collections.abc import Callable, Sequence
from dataclasses import dataclass, field, replace
from pathlib import Path

from markbench.intake.corrections import correct, holds, in_own_row, typed_table
from markbench.intake.hand_ins import sort_hand_ins, sort_tables
from markbench.intake.kept import in_order, still_kept
from markbench.intake.kinds import CLOSED_TABLES, ending
from markbench.intake.owners import Assignment, Rows
from markbench.intake.settled import Settled
from markbench.intake.tables import read_readings
from markbench.intake.tree import MOST_TABLE_BYTES, PieceError, Shelf, problem
from markbench.model import (
    Brief,
    Concern,
    Finding,
    Learner,
    Piece,
    Portfolio,
    ReadingsTable,
    Source,
    say,
)

Progress = Callable[[int, int, str], None]
Stop = Callable[[], bool]

# Findings about understanding a table; of no use once the teacher has typed the readings.
_ABOUT_THE_TABLE = frozenset(
    {
        "table_not_understood", "value_not_understood", "unit_guessed", "swings_guessed",
        "time_form_guessed", "several_tables",
    }
)  # fmt: skip


@dataclass(slots=True)
class Desk:
    """What every step of one reading needs."""

    folder: Path
    shelf: Shelf
    brief: Brief
    settled: Settled
    shared_sizes: frozenset[int] = frozenset()
    there: frozenset[str] = frozenset()
    problems: list[Finding] = field(default_factory=list)
    rows: Rows = field(default_factory=Rows)


def read_portfolios(
    desk: Desk,
    learners: Sequence[Learner],
    assignment: Assignment,
    progress: Progress | None,
    stop: Stop | None,
) -> dict[str, Portfolio]:
    """A portfolio for each learner; empty ones from where ``stop()`` turned true."""
    portfolios: dict[str, Portfolio] = {}
    stopped_at = None
    for number, learner in enumerate(learners):
        if stopped_at is None and stop is not None and stop():
            stopped_at = number
        if stopped_at is not None:
            portfolios[learner.id] = Portfolio(learner)
            continue
        pieces = assignment.owned.get(learner.id, [])
        portfolios[learner.id] = read_portfolio(desk, learner, pieces)
        if progress is not None:
            progress(number + 1, len(learners), learner.name)
    if stopped_at is not None:
        left = len(learners) - stopped_at
        text = say("Reading was stopped; the portfolios of {n} learners were not read.", n=left)
        desk.problems.append(problem("", text))
    return portfolios


def read_portfolio(desk: Desk, learner: Learner, pieces: Sequence[Piece]) -> Portfolio:
    """One learner's portfolio: ``pieces``, and the rows of class sheets that are the learner's."""
    findings: list[Finding] = []
    tables: list[tuple[Piece, ReadingsTable | None]] = []
    about: dict[str, tuple[Finding, ...]] = defaultdict(tuple)
    others: list[Piece] = []
    for piece in pieces:
        if piece.size_bytes == 0:
            text = say("{file} is empty (0 bytes).", file=piece.file)
            findings.append(_on_piece("empty_piece", learner, piece, text))
        if piece.kind != "readings":
            others.append(_with_digest(desk, learner, piece, findings))
        elif piece.size_bytes == 0:
            tables.append((piece, None))
        else:
            piece, table, about[piece.file] = _read_table(desk, learner, piece)
            tables.append((piece, table))
    for piece, row in desk.rows.owned.get(learner.id, []):
        tables.append((piece, row.table))
        about[piece.file] = tuple(replace(item, learner=learner.id) for item in row.findings)
    sorted_others = sort_hand_ins(learner.id, learner.name, others)
    sorted_tables, chosen = sort_tables(learner.id, learner.name, tables)
    table = next((table for piece, table in tables if piece is chosen), None)
    if chosen is not None:
        findings += about[chosen.file]
    current = []
    for piece in sorted_tables.current:
        if table is not None and piece is not chosen:
            findings += [replace(f, concern=Concern.NOTE) for f in about[piece.file]]
            piece = replace(piece, kind="unknown", kind_from="content")
        elif piece is not chosen:
            findings += about[piece.file]
        current.append(piece)
    findings += [*sorted_tables.findings, *sorted_others.findings]
    gone = still_kept(desk.settled.kept.get(learner.id), learner, desk.there)
    written = table or gone.as_written
    table = table or gone.table
    findings += [one for one in gone.findings if one not in findings]
    from_row = chosen is not None and any(
        chosen is piece for piece, _ in desk.rows.owned.get(learner.id, [])
    )
    table = _teachers_hand(desk, learner, table, findings, from_row=from_row)
    if table is not None and written is None:
        written = ReadingsTable((), (), Source(""))  # typed for whoever wrote nothing readable
    return Portfolio(
        learner=learner,
        pieces=in_order((*current, *sorted_others.current), gone.pieces),
        earlier=in_order((*sorted_tables.earlier, *sorted_others.earlier), gone.earlier),
        table=table,
        findings=tuple(findings),
        written=None if written is table else written,
    )


def _teachers_hand(
    desk: Desk,
    learner: Learner,
    table: ReadingsTable | None,
    findings: list[Finding],
    *,
    from_row: bool,
) -> ReadingsTable | None:
    """Rows the teacher typed stand in place of the table; her corrections in its cells."""
    typed = desk.settled.typed.get(learner.id)
    if typed:
        findings[:] = [f for f in findings if f.check not in _ABOUT_THE_TABLE]
        return typed_table(typed, desk.brief)
    if table is None:
        return None
    for key, text in desk.settled.corrections.items():
        if not key.startswith(f"{table.source.file}|"):
            continue
        if from_row and not (holds(table, key) or in_own_row(table, key)):
            continue  # a class sheet holds everybody's cells
        try:
            table = correct(table, {key: text})
        except ValueError as error:
            file, _, rest = key.partition("|")
            sheet, _, cell = rest.rpartition("|")
            findings.append(
                Finding("value_not_understood", learner.id,
                        say("A correction was not used: {why}", why=str(error)),
                        Concern.LOOK, {"correction": text}, sources=(Source(file, sheet, cell),))
            )  # fmt: skip
            continue
        findings[:] = [
            f
            for f in findings
            if f.check != "value_not_understood"
            or not any(f"{s.file}|{s.sheet}|{s.cell}" == key for s in f.sources)
        ]
    return table


def _on_piece(check: str, learner: Learner, piece: Piece, text: str) -> Finding:
    return Finding(
        check,
        learner.id,
        text,
        Concern.LOOK,
        numbers={"piece": piece.kind},
        sources=(Source(piece.file),),
        ask=say("Could you hand this file in again?"),
    )


def _with_digest(desk: Desk, learner: Learner, piece: Piece, findings: list[Finding]) -> Piece:
    """Fingerprint a file that has the size of another one: only these can be the same."""
    if piece.digest or piece.size_bytes not in desk.shared_sizes:
        return piece
    digest = hashlib.sha256()
    try:
        for chunk in desk.shelf.chunks(piece.file):
            digest.update(chunk)
    except PieceError as error:
        findings.append(_on_piece("unreadable_file", learner, piece, str(error)))
        return piece
    return replace(piece, digest=digest.hexdigest())


def _read_table(
    desk: Desk, learner: Learner, piece: Piece
) -> tuple[Piece, ReadingsTable | None, tuple[Finding, ...]]:
    if ending(piece.file) in CLOSED_TABLES:
        text = say(
            "{file} opens only in the program that made it; a copy saved as .xlsx or .csv can be "
            "read.",
            file=piece.file,
        )
        return piece, None, (_on_piece("unreadable_file", learner, piece, text),)
    try:
        data = desk.shelf.read(piece.file, MOST_TABLE_BYTES)
    except PieceError as error:
        return piece, None, (_on_piece("unreadable_file", learner, piece, str(error)),)
    piece = replace(piece, digest=hashlib.sha256(data).hexdigest())
    hints = desk.settled.hints.get(piece.file)
    try:
        outcome = read_readings(piece.file, data, desk.brief, learner.id, hints)
    except Exception as error:  # one broken file must not stop the class
        text = say(
            "{file} could not be read ({error}).",
            file=piece.file,
            error=f"{type(error).__name__}: {error}",
        )
        return piece, None, (_on_piece("unreadable_file", learner, piece, text),)
    return piece, outcome.table, outcome.findings
