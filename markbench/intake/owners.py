"""Give every piece to its owner, to the teacher to settle, or to nobody.

A piece that fits nobody is open; one that the teacher called nobody's is settled and set aside.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Mapping, Sequence, Set
from dataclasses import dataclass, field, replace
from functools import reduce

from markbench.intake.kinds import kind_of, stem
from markbench.intake.matching import CLEAR, NOBODY, SURE, Judgement, Matcher, better_of
from markbench.intake.settled import Settled
from markbench.intake.tables import ClassRow
from markbench.intake.tree import ZIP, Found, problem
from markbench.model import Concern, Doubt, Finding, Learner, Match, Piece, joined, say


@dataclass(slots=True)
class Assignment:
    """Pieces by learner id, the doubtful ones, those that fit nobody, those set aside."""

    owned: dict[str, list[Piece]] = field(default_factory=lambda: defaultdict(list))
    doubts: list[Doubt] = field(default_factory=list)
    unowned: list[Piece] = field(default_factory=list)
    set_aside: list[Piece] = field(default_factory=list)
    problems: list[Finding] = field(default_factory=list)


def folders_of(found: Found) -> tuple[str, ...]:
    """Names of the folders and zip files round a piece, outermost first, zip endings off."""
    zipped = {part.rpartition("/")[2] for part in found.file.split(ZIP)[:-1]}
    return tuple(stem(part) if part in zipped else part for part in found.parts[:-1])


def piece_of(found: Found, match: Match | None, owner_name: str, settled: Settled) -> Piece:
    """The piece with its kind: the teacher's word, else type and name."""
    kind, told = kind_of(found.parts[-1], folders_of(found), owner_name)
    chosen = settled.kinds.get(found.file)
    if chosen is not None:
        kind, told = chosen, "teacher"
    return Piece(found.file, kind, told, found.size_bytes, found.modified, match)


def assign(
    found: Sequence[Found],
    learners: Sequence[Learner],
    settled: Settled,
    given: Mapping[str, Match],
) -> Assignment:
    """Match every piece; ``given`` are matches known beforehand (a class without a list)."""
    result = Assignment()
    names = {learner.id: learner.name for learner in learners}
    matcher = Matcher(learners)
    for one in found:
        if settled.owner(one.file) == "":
            result.set_aside.append(piece_of(one, None, "", settled))
            continue
        judgement = _settled(one.file, settled, names, result)
        if judgement is None:
            match = given.get(one.file)
            judgement = (
                Judgement((match,), True)
                if match is not None
                else owner_of(matcher, folders_of(one), stem(one.parts[-1]))
            )
            judgement = _without(judgement, settled.refused.get(one.file), names)
        _place(result, one, judgement, names, settled)
    return result


def _settled(
    file: str, settled: Settled, names: Mapping[str, str], result: Assignment
) -> Judgement | None:
    owner = settled.owner(file)
    if owner is None:
        return None
    if owner not in names:
        text = say(
            "{file} was given to {name}, who is not in the class list; it was matched anew.",
            file=file,
            name=owner,
        )
        result.problems.append(problem(file, text, Concern.NOTE))
        return None
    return Judgement((Match(owner, "teacher", 100.0, say("settled by the teacher")),), True)


def _without(judgement: Judgement, refused: Set[str] | None, names: Mapping[str, str]) -> Judgement:
    """The judgement without those whose the teacher said it is not; then she settles it."""
    if not refused or refused.isdisjoint(match.learner for match in judgement.candidates):
        return judgement
    left = tuple(match for match in judgement.candidates if match.learner not in refused)
    whose = reduce(_or, (names[learner] for learner in names if learner in refused))
    return Judgement(left, False, say("You said that it is not from {whose}.", whose=whose))


def _or(one: str, other: str) -> str:
    return say("{one} or {other}", one=one, other=other)


def _place(
    result: Assignment,
    found: Found,
    judgement: Judgement,
    names: Mapping[str, str],
    settled: Settled,
) -> None:
    if judgement.clear:
        match = judgement.best
        result.owned[match.learner].append(piece_of(found, match, names[match.learner], settled))
    elif judgement.candidates or judgement.why:
        owner_name = names[judgement.best.learner] if judgement.candidates else ""
        piece = piece_of(found, None, owner_name, settled)
        result.doubts.append(Doubt(piece, judgement.candidates, judgement.why))
    else:
        result.unowned.append(piece_of(found, None, "", settled))


def owner_of(matcher: Matcher, folders: Sequence[str], stem: str) -> Judgement:
    """Whose a piece is, from the folders and zip files it lies in (outermost first) and its name.

    A folder that clearly belongs to a learner owns what is in it; only a whole name or id
    of somebody else in the file's own name contradicts it, and then the teacher decides.
    """
    by_folder = [judgement for part in folders if (judgement := matcher.judge(part)).candidates]
    by_stem = matcher.judge(stem)
    if by_folder and stem.strip().isdigit() and len(stem.strip()) < 4:
        by_stem = NOBODY  # "2.jpg" in somebody's folder is her second picture, not learner 2
    clear = [matcher.by_folder(judgement) for judgement in by_folder if judgement.clear]
    if by_stem.clear and (not clear or by_stem.best.score > SURE):
        clear.append(by_stem)
    doubtful = [j for j in [*by_folder, by_stem] if j.candidates and not j.clear]
    owners = {judgement.best.learner for judgement in clear}
    if len(owners) > 1:
        sure = [judgement for judgement in clear if judgement.best.score > SURE]
        if len({judgement.best.learner for judgement in sure}) != 1:
            return _clash(clear)
        clear = sure
    if clear:
        best = max(clear, key=lambda judgement: judgement.best.score)
        # "Okafor" on the folder and a stranger's name on the file do not agree.
        contrary = [
            j
            for j in doubtful
            if j is not by_stem and best.best.learner not in {m.learner for m in j.candidates}
        ]
        return _clash([best, *contrary]) if contrary and best.best.score <= SURE else best
    if len(doubtful) > 1:
        common = set.intersection(*({m.learner for m in j.candidates} for j in doubtful))
        if len(common) == 1:
            (learner,) = common
            both = [m for j in doubtful for m in j.candidates if m.learner == learner]
            why = joined((match.why for match in both), "; ")
            return Judgement((replace(both[0], score=CLEAR, why=why),), True)
    if not doubtful:
        return NOBODY
    return max(doubtful, key=lambda judgement: judgement.best.score)


def _clash(judgements: Sequence[Judgement]) -> Judgement:
    best = better_of((j.best for j in judgements), ())
    ranked = tuple(sorted(best, key=lambda match: (-match.score, match.learner)))
    return Judgement(ranked, False, say("folder and file name point to different learners"))


@dataclass(slots=True)
class Rows:
    """Rows of a class sheet: whose they are, by learner id."""

    owned: dict[str, list[tuple[Piece, ClassRow]]] = field(
        default_factory=lambda: defaultdict(list)
    )
    doubts: list[Doubt] = field(default_factory=list)
    unowned: list[Piece] = field(default_factory=list)
    set_aside: list[Piece] = field(default_factory=list)
    problems: list[Finding] = field(default_factory=list)


def row_file(row: ClassRow, sheet_file: str) -> str:
    """The ``Piece.file`` of a row: the sheet's file and the row's first cell."""
    place = f"{row.source.sheet}!{row.source.cell}" if row.source.sheet else row.source.cell
    return f"{sheet_file}#{place}"


def assign_rows(
    sheet: Piece, rows: Sequence[ClassRow], matcher: Matcher, settled: Settled, result: Rows,
    names: Mapping[str, str],
) -> None:  # fmt: skip
    """Match the rows of one class sheet."""
    strays = Assignment()
    for row in rows:
        file = row_file(row, sheet.file)
        piece = Piece(file, "readings", "content", 0, sheet.modified, None, "")
        if settled.owner(file) == "":
            result.set_aside.append(piece)
            continue
        judgement = _settled(file, settled, names, strays)
        if judgement is None:
            judgement = matcher.judge_row(row.id_text, row.name_text)
            judgement = _without(judgement, settled.refused.get(file), names)
        if judgement.clear:
            best = judgement.best
            by = best.by if best.by == "teacher" else "row"
            why = best.why
            if by == "row":
                why = say("by its row in the class sheet: {why}", why=why)
            match = Match(best.learner, by, best.score, why)
            owned = Piece(file, "readings", "content", sheet.size_bytes, sheet.modified, match, "")
            result.owned[best.learner].append((owned, row))
        elif judgement.candidates or judgement.why:
            result.doubts.append(Doubt(piece, judgement.candidates, judgement.why))
        else:
            result.unowned.append(piece)
    result.problems += strays.problems
