"""Read a class folder: from uneven files to one portfolio for each learner.

One pass lists the files, one matches them, one reads each learner's tables; no more than
one file's bytes are held at a time. Whatever is broken becomes a finding on that learner
or on the class folder, and the rest goes on.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping, Sequence
from dataclasses import replace
from pathlib import Path

from markbench.intake.allocation import without_collecting
from markbench.intake.brief_file import BRIEF_NAME, is_brief, read_brief
from markbench.intake.class_list import (
    CLASS_LIST_ENDINGS,
    ClassList,
    find_class_list,
)
from markbench.intake.matching import Matcher
from markbench.intake.no_list import learners_without_list
from markbench.intake.owners import Assignment, assign, assign_rows, piece_of, row_file
from markbench.intake.portfolios import Desk, Progress, Stop, read_portfolio, read_portfolios
from markbench.intake.settled import Settled
from markbench.intake.tables import ClassRow, read_class_sheet
from markbench.intake.tree import (
    MOST_TABLE_BYTES,
    Found,
    PieceError,
    Shelf,
    Tree,
    open_piece,
    problem,
    walk,
)
from markbench.model import Brief, ClassWork, Learner, Match, Piece, say

__all__ = ["Settled", "open_piece", "read_again", "read_class"]


@without_collecting()
def read_class(
    folder: Path,
    settled: Settled = Settled(),  # noqa: B008 (frozen plain data)
    progress: Progress | None = None,
    stop: Stop | None = None,
) -> ClassWork:
    """Read a class folder. Raises ``OSError`` only if the folder itself cannot be opened.

    ``settled``: the teacher's earlier choices, which win. ``progress(done, total, text)`` is
    called after each learner; when ``stop()`` turns true the rest is left unread, and a
    finding says so.
    """
    tree = walk(folder, stop)
    name = _brief_name(tree)
    # A brief that is not among the files was refused there, as a link that leads outside.
    brief, odd = read_brief(folder / name) if name else (Brief(), ())
    problems = [*(item.as_finding() for item in odd), *tree.problems]
    # The brief and rubrics of the class's own lie beside the work; nobody handed them in.
    found = [one for one in tree.found if not _is_ours(folder, one.file)]
    with Shelf(folder) as shelf:
        there = frozenset(one.file for one in found)
        desk = Desk(folder, shelf, brief, settled, there=there, problems=problems)
        class_list, list_file = find_class_list(shelf, found, desk.problems)
        found = [one for one in found if one.file != list_file]
        sizes = Counter(one.size_bytes for one in found if one.size_bytes)
        desk.shared_sizes = frozenset(size for size, count in sizes.items() if count > 1)
        given: Mapping[str, Match] = {}
        if class_list is not None and class_list.learners:
            learners = class_list.learners
            desk.problems += class_list.problems
            desk.brief = _with_partners(desk, class_list)
        else:
            desk.problems += class_list.problems if class_list is not None else ()
            learners, given, found = _without_list(desk, found)
        assignment = assign(found, learners, settled, given)
        if class_list is not None and class_list.learners:
            _class_sheets(desk, assignment, learners)
        portfolios = read_portfolios(desk, learners, assignment, progress, stop)
    return ClassWork(
        brief=desk.brief,
        learners=tuple(learners),
        portfolios=portfolios,
        doubts=(*assignment.doubts, *desk.rows.doubts),
        unowned=(*assignment.unowned, *desk.rows.unowned),
        set_aside=(*assignment.set_aside, *desk.rows.set_aside),
        problems=(*desk.problems, *assignment.problems, *desk.rows.problems),
    )


def read_again(work: ClassWork, folder: Path, learner: str, settled: Settled) -> ClassWork:
    """The class as read before, with the work of one learner read again.

    Enough where ``settled`` differs from before in that learner's typed rows, corrections,
    hints or kinds of pieces. Whose files are whose, and everybody else's portfolio, stay
    as they were.
    """
    held = work.portfolios[learner]
    sizes = Counter(p.size_bytes for one in work.portfolios.values() for p in one.pieces)
    shared = frozenset(size for size, count in sizes.items() if size and count > 1)
    with Shelf(folder) as shelf:
        here = [piece for piece in (*held.pieces, *held.earlier) if not piece.gone]
        there = frozenset(piece.file for piece in here)
        desk = Desk(folder, shelf, work.brief, settled, shared, there)
        pieces = []
        for piece in sorted(here, key=lambda piece: piece.file):
            row = _row_again(desk, piece)
            if row is not None:
                row_piece = replace(piece, kind="readings", kind_from="content")
                desk.rows.owned[learner].append((row_piece, row))
                continue
            found = Found(piece.file, piece.size_bytes, piece.modified)
            fresh = piece_of(found, piece.match, held.learner.name, settled)
            pieces.append(replace(fresh, digest=piece.digest))
        portfolio = read_portfolio(desk, held.learner, pieces)
    return replace(work, portfolios={**work.portfolios, learner: portfolio})


def _row_again(desk: Desk, piece: Piece) -> ClassRow | None:
    """The row of a class sheet behind a piece; ``None`` where the piece is a file."""
    sheet, mark, _ = piece.file.rpartition("#")
    if not mark or piece.kind_from != "content":
        return None
    rows = _class_rows(desk, sheet)
    return next((row for row in rows if row_file(row, sheet) == piece.file), None)


def _is_ours(folder: Path, file: str) -> bool:
    if "/" in file or not file.casefold().endswith(".toml"):
        return False
    if is_brief(file):
        return True
    try:
        with (folder / file).open(encoding="utf-8") as text:
            return "[[criterion" in text.read(100_000)
    except (OSError, UnicodeDecodeError):
        return False


def _brief_name(tree: Tree) -> str:
    """The brief's name as the folder spells it; empty where there is none."""
    return next((one.file for one in tree.found if one.file.casefold() == BRIEF_NAME), "")


# -- who is in the class ---------------------------------------------------------------


def _with_partners(desk: Desk, class_list: ClassList) -> Brief:
    known = {learner.id for learner in class_list.learners}
    for pair in desk.brief.partners:
        for identity in pair:
            if identity not in known:
                text = say(
                    "partners in the brief names {name}, who is not in the class list.",
                    name=identity,
                )
                desk.problems.append(problem(BRIEF_NAME, text))
    have = {frozenset(pair) for pair in desk.brief.partners}
    more = tuple(pair for pair in class_list.partners if frozenset(pair) not in have)
    return replace(desk.brief, partners=(*desk.brief.partners, *more))


def _without_list(
    desk: Desk, found: list[Found]
) -> tuple[tuple[Learner, ...], Mapping[str, Match], list[Found]]:
    """Rows of a class sheet at the top, else folders and tables, make the class."""
    sheets: list[tuple[Found, tuple[ClassRow, ...]]] = []
    # What the teacher set aside names no learner.
    told = [one for one in found if desk.settled.owner(one.file) != ""]
    for one in told:
        if len(one.parts) == 1 and _could_be_sheet(one.file, one.size_bytes):
            rows = _class_rows(desk, one.file)
            if rows:
                sheets.append((one, rows))
    taken = {one.file for one, _ in sheets}
    rest = [one for one in found if one.file not in taken]
    roll = learners_without_list(one for one in told if one.file not in taken)
    learners = list(roll.learners)
    # Whoever had handed in nothing but what was removed since.
    known = {learner.id for learner in learners}
    kept = desk.settled.kept.values()
    learners += [one.learner for one in kept if one.learner.id not in known]
    matcher = Matcher(learners)
    for _, rows in sheets:
        known = {learner.id for learner in learners}
        for row in rows:
            if matcher.judge_row(row.id_text, row.name_text).candidates:
                continue
            identity = row.id_text.strip() or row.name_text.strip()
            if identity and identity not in known:
                learners.append(Learner(identity, row.name_text.strip() or identity))
                known.add(identity)
    matcher = Matcher(learners)
    names = {learner.id: learner.name for learner in learners}
    for one, rows in sheets:
        sheet = Piece(one.file, "readings", "content", one.size_bytes, one.modified)
        assign_rows(sheet, rows, matcher, desk.settled, desk.rows, names)
    return tuple(learners), roll.matches, rest


def _could_be_sheet(file: str, size: int) -> bool:
    return 0 < size <= MOST_TABLE_BYTES and file.casefold().endswith(CLASS_LIST_ENDINGS)


def _class_rows(desk: Desk, file: str) -> tuple[ClassRow, ...]:
    """Rows of a class sheet; nothing where the file is none or cannot be read."""
    try:
        data = desk.shelf.read(file, MOST_TABLE_BYTES)
        rows = read_class_sheet(file, data, desk.brief)
    except PieceError:
        return ()
    except Exception:  # a file that breaks the reader is no class sheet
        return ()
    return rows if rows is not None and len(rows) > 1 else ()


def _class_sheets(desk: Desk, assignment: Assignment, learners: Sequence[Learner]) -> None:
    """Tables without a clear owner may hold a row for each learner."""
    loose = [*assignment.unowned, *(doubt.piece for doubt in assignment.doubts)]
    if not any(piece.kind == "readings" for piece in loose):
        return
    matcher = Matcher(learners)
    names = {learner.id: learner.name for learner in learners}
    for piece in loose:
        if piece.kind != "readings" or piece.kind_from == "teacher":
            continue
        if not _could_be_sheet(piece.file, piece.size_bytes):
            continue
        rows = _class_rows(desk, piece.file)
        if rows:
            assign_rows(piece, rows, matcher, desk.settled, desk.rows, names)
            assignment.unowned = [p for p in assignment.unowned if p is not piece]
            assignment.doubts = [d for d in assignment.doubts if d.piece is not piece]
