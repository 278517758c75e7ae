"""What the journal's decisions amount to now: marks, notes, choices. Pure functions of state."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterable, Mapping
from typing import cast

from markbench.intake.corrections import holds, typed_rows
from markbench.intake.folder import Settled
from markbench.intake.tables import ColumnHints
from markbench.model import ClassWork, Decision, Mark, PieceKind, State
from markbench.session.class_files import KIND as FILE
from markbench.session.kept import kept_portfolios
from markbench.session.texts import kept, words_of

_NEVER = dt.datetime(1970, 1, 1, tzinfo=dt.UTC)


def of_kind(state: State, kind: str) -> dict[tuple[str, str], Decision]:
    """Decisions of one kind, keyed by (learner, subject)."""
    return {(learner, subject): d for (k, learner, subject), d in state.items() if k == kind}


def settled(state: State) -> Settled:
    """The teacher's earlier choices in the form the intake takes them."""
    return Settled(
        owners={subject: d.value for (_, subject), d in of_kind(state, "owner").items()},
        refused=_refused(state),
        kinds={
            subject: cast(PieceKind, d.value)
            for (_, subject), d in of_kind(state, "piece_kind").items()
        },
        hints={
            subject: ColumnHints.from_json(d.value)
            for (_, subject), d in of_kind(state, "hints").items()
        },
        typed={learner: typed_rows(d.value) for (learner, _), d in of_kind(state, "typed").items()},
        corrections={subject: d.value for (_, subject), d in of_kind(state, "correction").items()},
        kept=kept_portfolios(state),
    )


def _refused(state: State) -> Mapping[str, frozenset[str]]:
    refused: dict[str, frozenset[str]] = {}
    for learner, file in of_kind(state, "not_owner"):
        refused[file] = refused.get(file, frozenset()) | {learner}
    return refused


def rereads(work: ClassWork, decisions: Iterable[Decision]) -> frozenset[str] | None:
    """Learners whose work ``decisions`` have read anew; ``None``: the whole class."""
    concerned: set[str] = set()
    for decision in decisions:
        if decision.kind in ("owner", "not_owner", "purge", FILE):
            return None
        if decision.kind == "typed":
            concerned.add(decision.learner)
        elif decision.kind in ("hints", "correction", "piece_kind"):
            found = _readers_of(work, decision)
            if not found:
                return None
            concerned |= found
    return frozenset(concerned) if concerned <= set(work.portfolios) else None


def _readers_of(work: ClassWork, decision: Decision) -> set[str]:
    """Whose readings stand in the file, or in the very cell, that a decision speaks of."""
    file = decision.subject.partition("|")[0]
    found = {decision.learner} if decision.learner else set()
    for learner, portfolio in work.portfolios.items():
        table = portfolio.table
        if any(piece.file == file for piece in (*portfolio.pieces, *portfolio.earlier)) or (
            decision.kind == "correction"  # a cell that many rows of a class sheet rest on
            and table is not None
            and table.source.file == file
            and holds(table, decision.subject)
        ):
            found.add(learner)
    return found


def mark_of(state: State, learner: str, criterion: str) -> Mark | None:
    """The mark in force, with the text as last edited, in the words of that time."""
    decision = state.get(("mark", learner, criterion))
    if decision is None:
        return None
    return Mark(
        criterion=criterion,
        level=decision.value["level"],
        marks=decision.value["marks"],
        feedback=words_of(kept(state, learner, criterion)),
        by=decision.who,
        at=decision.at or _NEVER,
    )


def agreed_slips(state: State) -> Mapping[str, str]:
    """Learner id → slip the teacher agreed on."""
    return {learner: d.value for (learner, _), d in of_kind(state, "agreed_slip").items()}


def extensions(state: State) -> Mapping[str, dt.date]:
    """Learner id → last day to hand in."""
    return {
        learner: dt.date.fromisoformat(d.value)
        for (learner, _), d in of_kind(state, "extension").items()
    }
