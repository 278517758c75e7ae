"""Whose mark is the first, where two people marked the same learner: a person may decide.

A merge orders two marks by what each marked, and by the clocks; neither knows what was
agreed in the staff room. Turning them round is a decision with its reason. The marks keep
who gave them and when; only which of them counts is changed.
"""

from __future__ import annotations

import datetime as dt
from dataclasses import replace

from markbench.model import Decision, say
from markbench.moderation.records import second_marks, subject_of
from markbench.session.errors import RefusedError
from markbench.session.session import Session


def make_first(session: Session, learner: str, who: str, why: str) -> None:
    """Let the second marks of ``who`` on a learner be the first, and the first the second."""
    if not why.strip():
        raise RefusedError(say("To turn first and second mark round needs its reason."))
    reason = f"first marker by decision of {session.who}: {why.strip()}"
    now = dt.datetime.now(dt.UTC)
    found: list[Decision] = []
    for criterion, given in second_marks(session.state).get(learner, {}).items():
        mine = next((mark for mark in given if mark.by == who), None)
        first = session.state.get(("mark", learner, criterion))
        if mine is None or first is None or first.who == who:
            continue
        second = session.state["second_mark", learner, subject_of(criterion, who)]
        text = session.state.get(("feedback", learner, criterion))
        if text is not None:  # the text goes with the mark it was written for
            found.append(_cleared(text, session.who, now, reason))
        value = {**first.value, "feedback": session.feedback(learner, criterion)}
        found += [
            replace(
                second,
                kind="mark",
                subject=criterion,
                before=first.value,
                why="; ".join(filter(None, (second.why, reason))),
                undoes=None,
                number=0,
            ),
            replace(
                first,
                kind="second_mark",
                subject=subject_of(criterion, first.who),
                value=value,
                before=None,
                why="; ".join(filter(None, (first.why, reason))),
                undoes=None,
                number=0,
            ),
            _cleared(second, session.who, now, reason),
        ]
    if not found:
        raise RefusedError(
            say("{who} has no second mark on this learner to make the first.", who=who)
        )
    session.take_in(found, Decision("first_marker", learner, "", {}, why=why.strip()))


def _cleared(held: Decision, who: str, at: dt.datetime, why: str) -> Decision:
    return Decision(*held.key, None, before=held.value, who=who, at=at, why=why)
