"""From a rubric and a learner's facts to drafts with their reasons. A draft is not a mark."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from itertools import chain, islice

from markbench.model import Criterion, Draft, Finding, Reason, Rubric, say
from markbench.rubric.condition import Condition, condition
from markbench.rubric.facts import FACTS, Facts
from markbench.rubric.phrasing import Alternates, Template, alternates
from markbench.rubric.reasons import lacking, supporting, tell

_SENTENCES = 3


def draft(rubric: Rubric, facts: Facts, findings: tuple[Finding, ...] = ()) -> tuple[Draft, ...]:
    """One draft per criterion, in the rubric's order.

    The first level, highest first, whose condition holds is drafted; its reasons say what
    decided it and why the next higher level was not reached. No level is drafted for a
    criterion of the teacher's eye, nor for one that rests on readings which were handed in
    but could not be understood, nor for one that a photo not yet told apart, a piece that
    will not open here, or a written report that nobody has read, could raise.
    ``findings`` are the learner's.
    """
    unread = facts["readings_unread"] is True
    drafts = []
    for row in _ready(rubric):
        if row.criterion.by_eye:
            drafts.append(_for_the_eye(row, facts))
        elif unread and row.rests_on_readings:
            drafts.append(_not_judged(row.criterion, findings))
        elif waiting := (*_waiting(row, facts), *_in_the_report(row, facts)):
            drafts.append(Draft(row.criterion.id, None, None, (), waiting))
        else:
            drafts.append(_judged(row, facts))
    return tuple(drafts)


@dataclass(frozen=True, slots=True)
class _Row:
    """A criterion with its conditions and phrases ready for use."""

    criterion: Criterion
    levels: tuple[Condition, ...]
    praise: tuple[Alternates, ...]
    problem: tuple[Alternates, ...]
    step: tuple[Alternates, ...]
    look: tuple[Alternates, ...]
    said: Mapping[str, tuple[tuple[Condition, Template], ...]]
    rests_on_readings: bool
    rests_on_working: bool
    rests_on_photos: bool
    rests_on_pieces: bool


_ON_PHOTOS = ("setup_photo", "selfie", "pieces_present", "pieces_missing")
_ON_PIECES = (*_ON_PHOTOS, "swing_video", "report")

# By identity, each beside the rubric it was made from: hashing a whole rubric for every
# learner would cost more than drafting. A run uses one rubric, or a few.
_kept: dict[int, tuple[Rubric, tuple[_Row, ...]]] = {}


def _ready(rubric: Rubric) -> tuple[_Row, ...]:
    kept = _kept.get(id(rubric))
    if kept is None:
        if len(_kept) >= 8:
            _kept.clear()
        kept = _kept[id(rubric)] = (rubric, tuple(map(_row, rubric.criteria)))
    return kept[1]


def _row(row: Criterion) -> _Row:
    levels = tuple(condition(level.when) for level in row.levels)
    groups = {role: alternates(row.phrases, role) for role in ("praise", "problem", "next")}
    said: dict[str, tuple[tuple[Condition, Template], ...]] = {}
    for group in chain.from_iterable(groups.values()):
        for form in group.forms:
            said[form.piece] = (*said.get(form.piece, ()), (group.when, form))
    return _Row(
        criterion=row,
        levels=levels,
        praise=groups["praise"],
        problem=groups["problem"],
        step=groups["next"],
        look=alternates(row.phrases, "look"),
        said=said,
        rests_on_readings=any(FACTS[n].rests_on_readings for level in levels for n in level.names),
        rests_on_working=any(FACTS[n].group == "working" for level in levels for n in level.names),
        rests_on_photos=any(n in _ON_PHOTOS for level in levels for n in level.names),
        rests_on_pieces=any(n in _ON_PIECES for level in levels for n in level.names),
    )


def no_longer_true(
    rubric: Rubric, criterion: str, pieces: Iterable[str], facts: Facts
) -> frozenset[str]:
    """Those of ``pieces`` that are the rubric's own sentences and not true of this learner now.

    A sentence that a person wrote, or altered by a letter, is hers to judge.
    """
    row = next(one for one in _ready(rubric) if one.criterion.id == criterion)
    return frozenset(
        piece for piece in pieces if piece in row.said and not _true(row, piece, facts)
    )


def _true(row: _Row, piece: str, facts: Facts) -> bool:
    return any(
        when.holds(facts.values_by_name) and form.fill(facts) is not None
        for when, form in row.said[piece]
    )


def _judged(row: _Row, facts: Facts) -> Draft:
    for i, asked in enumerate(row.levels):
        if asked.holds(facts.values_by_name):
            level = row.criterion.levels[i]
            sentences = _sentences(row, facts)
            return Draft(
                criterion=row.criterion.id,
                level=level.name,
                marks=level.marks,
                sentences=tuple(words for words, _ in sentences),
                reasons=_reasons(row, i, facts),
                pieces=tuple(form.piece for _, form in sentences),
            )
    raise ValueError(
        f"no level of the criterion {row.criterion.id} holds: the last must have no condition"
    )


def _reasons(row: _Row, reached: int, facts: Facts) -> tuple[Reason, ...]:
    levels = row.criterion.levels
    reasons: dict[str, Reason] = {}
    if reached > 0:
        above = levels[reached - 1]
        for part in lacking(row.levels[reached - 1], facts):
            tell(part, facts, reasons, above.name)
    for part in supporting(row.levels[reached], facts):
        tell(part, facts, reasons)
    if levels[reached].when:
        return tuple(reasons.values())
    return (
        *reasons.values(),
        Reason(say("“{level}” asks for nothing more.", level=levels[reached].name)),
    )


def _not_judged(row: Criterion, findings: tuple[Finding, ...]) -> Draft:
    told = Reason(say("The table of readings could not be understood, so no level is drafted."))
    why = [
        Reason(f.message, "readings_unread", f.check, f.sources)
        for f in findings
        if f.check in ("table_not_understood", "unreadable_file")
    ]
    return Draft(row.id, None, None, (), (told, *why))


def _waiting(row: _Row, facts: Facts) -> tuple[Reason, ...]:
    """Why a level must wait: pieces that nobody has told apart or opened could still raise it."""
    if not row.rests_on_pieces or row.levels[0].holds(facts.values_by_name):
        return ()
    told = []
    if row.rests_on_photos and facts["pieces_untold"]:
        text = say("A photo is here and nobody has said what it shows, so no level is drafted.")
        told.append(Reason(text, "pieces_untold"))
    if facts["pieces_unopened"]:
        text = say("A piece was handed in that will not open here, so no level is drafted.")
        told.append(Reason(text, "pieces_unopened"))
    return tuple(told)


def _in_the_report(row: _Row, facts: Facts) -> tuple[Reason, ...]:
    """Why a level must wait: what the table lacks may stand in a report, which is not read."""
    sought = row.rests_on_working or (row.rests_on_readings and not facts["readings_given"])
    if not sought or facts["report"] is False or row.levels[0].holds(facts.values_by_name):
        return ()
    text: str = say(
        "A written report is here, and the working may stand in it. Reports are not read by the "
        "program, so no level is drafted."
    )
    if not facts["readings_given"]:
        text = say(
            "A written report is here, and the readings may stand in it. Reports are not read by "
            "the program, so no level is drafted."
        )
    return (Reason(text, "report", sources=facts.sources("report")),)


def _for_the_eye(row: _Row, facts: Facts) -> Draft:
    best = row.criterion.levels[0]
    prompt = Reason(
        say(
            "For your eye: {title}. “{best}” asks: {what}",
            title=row.criterion.title,
            best=best.name,
            what=best.descriptor,
        )
    )
    looks = [
        Reason(
            said,
            form.names[0] if form.names else "",
            sources=facts.sources(form.names[0]) if form.names else (),
        )
        for said, form in _holding(row.look, facts)
    ]
    return Draft(row.criterion.id, None, None, (), (prompt, *looks))


def _sentences(row: _Row, facts: Facts) -> tuple[tuple[str, Template], ...]:
    """What went well, what went wrong, what comes next: at most three phrases in all.

    One of each where there is one; room that is left goes to a second problem first and
    then to a second word of praise.
    """

    def said(phrases: Iterator[tuple[str, Template]], most: int) -> list[tuple[str, Template]]:
        return list(islice(phrases, most))

    well, wrong = _holding(row.praise, facts), _holding(row.problem, facts)
    praise = said(well, 1)
    step = said(_holding(row.step, facts), 1)
    problems = said(wrong, _SENTENCES - len(praise) - len(step))
    if praise and len(problems) + len(step) + 1 < _SENTENCES:
        praise += said(well, 1)
    return (*praise, *problems[:2], *step)


def _holding(groups: tuple[Alternates, ...], facts: Facts) -> Iterator[tuple[str, Template]]:
    """Each group of alternates that holds, as this learner is told it."""
    for group in groups:
        if group.when.holds(facts.values_by_name):
            chosen = group.choose(facts)
            if chosen is not None:
                yield chosen
