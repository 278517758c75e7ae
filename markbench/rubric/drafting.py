"""From a rubric and a learner's facts to drafts with their reasons. A draft is not a mark."""

from __future__ import annotations

import zlib
from collections.abc import Iterator

from markbench.model import Criterion, Draft, Finding, Phrase, Reason, Rubric
from markbench.rubric.condition import condition
from markbench.rubric.facts import FACTS, Facts
from markbench.rubric.phrasing import alternates, template
from markbench.rubric.reasons import lacking, supporting, with_findings

_SENTENCES = 3


def draft(rubric: Rubric, facts: Facts, findings: tuple[Finding, ...] = ()) -> tuple[Draft, ...]:
    """One draft per criterion, in the rubric's order.

    The first level, highest first, whose condition holds is drafted; its reasons say what
    decided it and why the next higher level was not reached. No level is drafted for a
    criterion of the teacher's eye, nor for one that rests on readings which were handed in
    but could not be understood. ``findings`` are the learner's.
    """
    unread = facts["readings_unread"] is True
    drafts = []
    for row in rubric.criteria:
        if row.by_eye:
            drafts.append(_for_the_eye(row, facts))
        elif unread and _rests_on_readings(row):
            drafts.append(_not_judged(row, findings))
        else:
            drafts.append(_judged(row, facts))
    return tuple(drafts)


def _judged(row: Criterion, facts: Facts) -> Draft:
    values = facts.values_by_name
    for i, level in enumerate(row.levels):
        if condition(level.when).holds(values):
            return Draft(
                criterion=row.id,
                level=level.name,
                marks=level.marks,
                sentences=tuple(_sentences(row, facts)),
                reasons=tuple(_reasons(row, i, facts)),
            )
    raise ValueError(f"no level of the criterion {row.id} holds: the last must have no condition")


def _reasons(row: Criterion, reached: int, facts: Facts) -> Iterator[Reason]:
    level = row.levels[reached]
    if reached > 0:
        above = row.levels[reached - 1]
        for told in lacking(condition(above.when), facts):
            yield from with_findings(told, facts, f"for “{above.name}”: ")
    for told in supporting(condition(level.when), facts):
        yield from with_findings(told, facts)
    if not level.when:
        yield Reason(f"“{level.name}” asks for nothing more.")


def _rests_on_readings(row: Criterion) -> bool:
    return any(
        FACTS[name].rests_on_readings
        for level in row.levels
        for name in condition(level.when).names
    )


def _not_judged(row: Criterion, findings: tuple[Finding, ...]) -> Draft:
    told = Reason("The table of readings could not be understood, so no level is drafted.")
    why = [
        Reason(f.message, "readings_unread", f.check, f.sources)
        for f in findings
        if f.check in ("table_not_understood", "unreadable_file")
    ]
    return Draft(row.id, None, None, (), (told, *why))


def _for_the_eye(row: Criterion, facts: Facts) -> Draft:
    best = row.levels[0]
    prompt = Reason(f"For your eye: {row.title}. “{best.name}” asks: {best.descriptor}")
    looks = [
        Reason(
            said,
            names[0] if names else "",
            sources=tuple(dict.fromkeys(s for name in names for s in facts.sources(name))),
        )
        for said, names in _first_of_each(row, "look", facts)
    ]
    return Draft(row.id, None, None, (), (prompt, *looks))


def _sentences(row: Criterion, facts: Facts) -> list[str]:
    """What went well, what went wrong, what comes next: at most three phrases in all.

    One of each where there is one; room that is left goes to a second problem first and
    then to a second word of praise.
    """
    said = {
        role: [words for words, _ in _first_of_each(row, role, facts)]
        for role in ("praise", "problem", "next")
    }
    praise, problem, step = said["praise"], said["problem"], said["next"][:1]
    problems = problem[:1]
    room = _SENTENCES - len(praise[:1]) - len(problems) - len(step)
    if room > 0 and len(problem) > 1:
        problems = problem[:2]
        room -= 1
    return [*praise[: 1 + max(room, 0)], *problems, *step]


def _first_of_each(
    row: Criterion, role: str, facts: Facts
) -> Iterator[tuple[str, tuple[str, ...]]]:
    """Each group of alternates that holds: the learner's own choice among those that fill."""
    values = facts.values_by_name
    for when, phrases in alternates(row.phrases, role):
        if condition(when).holds(values):
            chosen = _chosen(phrases, facts)
            if chosen is not None:
                yield chosen


def _chosen(phrases: list[Phrase], facts: Facts) -> tuple[str, tuple[str, ...]] | None:
    # Salted with the phrase, so that one learner is not given "the second" everywhere.
    start = zlib.crc32(phrases[0].text.encode(), facts.data_hash) % len(phrases)
    for phrase in (*phrases[start:], *phrases[:start]):
        form = template(phrase.text)
        sentence = form.fill(facts)
        if sentence is not None:
            return sentence, form.names
    return None
