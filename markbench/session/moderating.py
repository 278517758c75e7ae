"""Commands of moderation on a session: sample, merge, adjust, sign off, reopen.

Plain functions over a :class:`~markbench.session.Session`, so that the session itself
stays as small as one class's present.
"""

from __future__ import annotations

import secrets
from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path

from markbench.model import Decision, joined, say
from markbench.moderation.outcome import Outcome
from markbench.moderation.records import class_adjustment, sign_off_of
from markbench.moderation.sample import Sample, draw, outlier_reasons
from markbench.session.errors import MergeError, RefusedError
from markbench.session.forms import trouble_with
from markbench.session.keeping import store_of
from markbench.session.merging import MERGED, Merge, merge_journals
from markbench.session.results import results
from markbench.session.session import Session
from markbench.session.since_marked import since_marked
from markbench.store import Journal


def take_sample(session: Session, seed: int | None = None) -> Sample:
    """Draw the moderator's sample and record it; a new seed unless one is given."""
    totals = {learner.id: session.total(learner.id) for learner in session.learners}
    outliers = {}
    for learner in totals:
        diagnosis = session.diagnosis(learner)
        outliers[learner] = outlier_reasons(
            session.findings(learner),
            diagnosis is not None and diagnosis.flagged,
            session.drafts(learner),
            session.marks(learner),
            session.rubric,
        )
    chosen = secrets.randbelow(2**31) if seed is None else seed
    sample = draw(totals, outliers, session.brief.grade_boundaries, chosen)
    session.decide(Decision("sample", "", "", sample.to_json()))
    return sample


def sample_of(session: Session) -> Sample | None:
    """The sample in force, if one was drawn."""
    value = session.value("sample")
    return None if value is None else Sample.from_json(value)


def decide_adjustment(session: Session, choice: str, why: str, shift: float = 0.0) -> None:
    """Record what is done about severity: ``adjust`` (by ``shift``), ``remark``, ``leave``."""
    if choice not in ("adjust", "remark", "leave"):
        raise RefusedError(
            say("An adjustment is adjust, remark or leave, not {choice}.", choice=repr(choice))
        )
    if not why.strip():
        raise RefusedError(say("An adjustment needs its reason."))
    if choice == "adjust" and shift == 0:
        raise RefusedError(say("An adjustment by 0 marks is to leave the marks: choose leave."))
    value = {"choice": choice, "shift": shift if choice == "adjust" else 0.0}
    session.decide(Decision("adjustment", "", "", value, why=why.strip()))


def settle_mark(session: Session, learner: str, criterion: str, level: str, why: str) -> None:
    """The teacher's final word on one criterion, where markers differ or one asks."""
    row = next((c for c in session.rubric.criteria if c.id == criterion), None)
    chosen = next((one for one in row.levels if one.name == level), None) if row else None
    if chosen is None:
        raise RefusedError(
            say("{criterion} has no level {level}.", criterion=criterion, level=repr(level))
        )
    if not why.strip():
        raise RefusedError(say("A final word needs its reason."))
    value = {"level": level, "marks": chosen.marks}
    session.decide(Decision("adjustment", learner, criterion, value, why=why.strip()))


@dataclass(frozen=True, slots=True)
class BeforeSigning:
    """Learners to be looked at before the marks are frozen, each once.

    ``unmarked`` lack a mark and keep the marks from being signed. The others may be signed as
    they stand: of ``moved`` a draft, of ``changed`` the work is another than when it was marked.
    """

    unmarked: tuple[str, ...] = ()
    moved: tuple[str, ...] = ()
    changed: tuple[str, ...] = ()


def before_signing(session: Session, found: Mapping[str, Outcome]) -> BeforeSigning:
    """Who is to be looked at before the marks ``found`` are signed; nobody once they are."""
    if sign_off_of(session.state) is not None:
        return BeforeSigning()
    unmarked = tuple(x for x, one in found.items() if one.first_total is None)
    marked = [x for x in found if x not in unmarked]
    moved = tuple(x for x in marked if session.has_moved(x))
    changed = (x for x in marked if x not in moved and since_marked(session, x) is not None)
    return BeforeSigning(unmarked, moved, tuple(changed))


def sign_off(session: Session, note: str = "", *, despite_open: bool = False) -> None:
    """Freeze the marks, with the totals and grades that are signed for.

    Raises :class:`RefusedError` for unmarked learners or, unless ``despite_open``, open
    questions between markers; the message lists them.
    """
    if sign_off_of(session.state) is not None:
        raise RefusedError(say("The marks are signed off already."))
    found = results(session)
    names = {learner.id: learner.name for learner in session.learners}
    unmarked = [names[x] for x, one in found.items() if one.first_total is None]
    if unmarked:
        raise RefusedError(
            say(
                "{n} of {of} learners are not fully marked: {names}.",
                n=len(unmarked),
                of=len(found),
                names=", ".join(unmarked),
            )
        )
    still_open = [
        say("{name}, {words}", name=names[x], words=words)
        for x, one in found.items()
        for words in one.open
    ]
    if still_open and not despite_open:
        raise RefusedError(
            say("Still open between markers: {listed}.", listed=joined(still_open, "; "))
        )
    signed = {x: {"total": one.total, "grade": one.grade} for x, one in found.items()}
    adjusted = class_adjustment(session.state)
    value = {
        "results": signed,
        "grade_boundaries": [list(pair) for pair in session.brief.grade_boundaries],
        "adjustment": None if adjusted is None else [adjusted.choice, adjusted.shift],
        "open": still_open,
    }
    session.decide(Decision("sign_off", "", "", value, why=note.strip()))


def reopen(session: Session, why: str) -> None:
    """Lift the sign-off, by a decision with its reason."""
    signed = sign_off_of(session.state)
    if signed is None:
        raise RefusedError(say("The marks are not signed off; there is nothing to reopen."))
    if not why.strip():
        raise RefusedError(say("Reopening needs its reason."))
    session.decide(
        Decision("reopen", "", "", {"sign_off": signed.number}, why=why.strip()),
        Decision("sign_off", "", "", None, why=why.strip()),
    )


def merge_journal(session: Session, other: Path | str) -> Merge:
    """Merge a colleague's journal of the same class: its folder, its file or an address.

    Raises :class:`MergeError` with everything that speaks against it; then nothing is merged.
    """
    if isinstance(other, Path) and other.is_dir():
        other = store_of(other)
    if isinstance(other, Path) and not other.is_file():
        raise MergeError(say("There is no journal at {other}.", other=other))
    with Journal.open(other, read_only=True) as journal:
        broken = journal.verify()
        if broken is not None:
            raise MergeError(
                say(
                    "{file} is not as it was written: {why}",
                    file=journal.name,
                    why=broken.message,
                )
            )
        theirs = journal.all()
    return take_in(session, theirs)


def take_in(session: Session, theirs: list[Decision]) -> Merge:
    """Merge decisions of another journal into the session's own."""
    merge = merge_journals(session.history(), theirs)
    _refuse_foreign(session, merge)
    session.take_in(merge.decisions, Decision(MERGED, "", "", {}))
    return merge


def _refuse_foreign(session: Session, merge: Merge) -> None:
    learners = {learner.id for learner in session.learners} | {""}
    criteria = {criterion.id for criterion in session.rubric.criteria}
    wrong = []
    for d in merge.decisions:
        if d.learner not in learners:
            wrong.append(say("{kind}: {who} is not in this class list", kind=d.kind, who=d.learner))
        elif trouble := trouble_with(d):
            whose = d.learner or say("the class")
            wrong.append(say("{kind} of {whose}: {why}", kind=d.kind, whose=whose, why=trouble))
        elif d.kind == "mark" and d.subject not in criteria:
            wrong.append(
                say("a mark for {criterion}, which this rubric does not have", criterion=d.subject)
            )
        elif d.kind == "sign_off" and d.value is not None:
            wrong.append(
                say("the other journal was signed off by {who}; reopen it there first", who=d.who)
            )
    if wrong:
        raise MergeError(
            say(
                "Nothing was merged. This is another class, or another state: {listed}.",
                listed=joined(dict.fromkeys(wrong), "; "),
            )
        )
