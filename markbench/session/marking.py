"""The decisions that make a mark: its level, its text, and what it rested on when it was given."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace

from markbench.model import Decision, Draft
from markbench.session import texts
from markbench.session.handed_in_work import WORK, work_of
from markbench.session.known import Known
from markbench.session.moved import DRAFTED
from markbench.session.texts import Text


def of_level(
    known: Known,
    learner: str,
    criterion: str,
    level: str,
    marks: float,
    *,
    text: Text | None = None,
    why: str = "",
) -> list[Decision]:
    """A mark with its text, as it is unless ``text`` is given, less what is not true now."""
    text, struck = text or known.text(learner, criterion), known.struck(learner, criterion)
    kept = text.holding(struck).value(known.facts(learner))
    value = {
        "level": level,
        "marks": marks,
        DRAFTED: known.draft(learner, criterion).level,
        "feedback": kept["text"],
        "pieces": kept["pieces"],
        "out": kept["out"],
    }
    found = [Decision("mark", learner, criterion, value, why=why)]
    if struck and (texts.KIND, learner, criterion) in known.state:
        found.append(Decision(texts.KIND, learner, criterion, kept))
    return found


def of_draft(known: Known, learner: str, draft: Draft) -> list[Decision]:
    """A mark made of a draft, with the draft's text, or that which a person wrote instead."""
    if draft.level is None or draft.marks is None:
        return []
    edited = (texts.KIND, learner, draft.criterion) in known.state
    text = known.text(learner, draft.criterion) if edited else texts.drafted(draft)
    return of_level(known, learner, draft.criterion, draft.level, draft.marks, text=text)


def kept(known: Known, learner: str, criterion: str) -> list[Decision]:
    """The mark as it is, given once more beside the draft as it is now."""
    mark = known.mark(learner, criterion)
    if mark is None:
        return []
    return of_level(known, learner, criterion, mark.level, mark.marks)


def resting(known: Known, decisions: Iterable[Decision]) -> list[Decision]:
    """``decisions``, each mark among them resting on the learner's work as it is now."""
    found = list(decisions)
    marked = dict.fromkeys(d.learner for d in found if d.kind == "mark")
    work = {learner: work_of(known.portfolio(learner)) for learner in marked}
    return [
        *(Decision(WORK, learner, one.key, one.plain) for learner, one in work.items()),
        *(
            replace(d, value={**d.value, WORK: work[d.learner].key}) if d.kind == "mark" else d
            for d in found
        ),
    ]
