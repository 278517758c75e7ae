"""Going back to how a class stood when one of its copies was made.

The journal only grows, here too: what differs between now and then is decided again, with
the signatures it had, and one decision says which copy it came from. So nothing that was
done since is thrown away, every later copy still holds all of the earlier ones, and the
present can be restored in its turn: it is copied first. Rejected: putting the old file in
the new one's place, which loses whatever came after and leaves copies that no longer follow
from each other.

A file that is damaged or gone is another matter: :func:`rebuild` gathers it from all copies.
"""

from __future__ import annotations

import datetime as dt
from collections.abc import Mapping
from dataclasses import dataclass, replace
from pathlib import Path

from markbench.model import Decision, State, say
from markbench.session.class_files import KIND as FILE
from markbench.session.errors import RefusedError
from markbench.session.handed_in_work import WORK
from markbench.session.keeping import store_of
from markbench.session.own_words import KIND as WORD
from markbench.session.pack_session import journal_beside
from markbench.session.phrases import FORGOTTEN
from markbench.session.session import Session
from markbench.session.steps import CLOSES
from markbench.store import Journal, Salvaged, StoreError, backups_of, fold, made_at, salvage

KIND = "restored"
# What happened outside the journal stays as it is: a file that is gone, a pack that was sent,
# the brief and the rubric as they lie in the folder, what the speller and the book were told.
_HAPPENED = frozenset(
    {"sign_off", "reopen", "pack", "purge", "kept", "salvaged", "lost", FILE, WORK, WORD,
     FORGOTTEN, *CLOSES}
)  # fmt: skip
_TEXTS = ("feedback", "note")


@dataclass(frozen=True, slots=True)
class Copy:
    """One copy of a class's file: when it was made, how many decisions and marks it holds.

    ``problem`` says why it cannot be used; then the counts are 0.
    """

    path: Path
    made: dt.datetime | None
    decisions: int = 0
    marks: int = 0
    problem: str = ""


@dataclass(frozen=True, slots=True)
class WayBack:
    """What going back to a copy would do.

    ``later`` counts the decisions made since, of which none is thrown away. Marks: how many
    would ``change``, be ``undone`` to a draft, or ``come_back``; ``texts`` counts feedback
    and notes that would change, ``others`` everything else.
    """

    copy: Copy
    decisions: tuple[Decision, ...]
    later: int
    change: int
    undone: int
    come_back: int
    texts: int
    others: int


def copies_of(folder: Path) -> tuple[Copy, ...]:
    """The copies kept of a class's file, newest first; none where a server keeps the class."""
    store = store_of(folder)
    return tuple(_look_at(path) for path in backups_of(store)) if isinstance(store, Path) else ()


def way_back(session: Session, copy: Copy) -> WayBack:
    """What would differ. Raises :class:`RefusedError` for a copy that cannot be used."""
    then = _decisions_of(copy)
    back = _differences(session.state, fold(then))
    marks = [(d.before, d.value) for d in back if d.kind == "mark"]
    texts = sum(d.kind in _TEXTS for d in back)
    return WayBack(
        copy=copy,
        decisions=tuple(back),
        later=max(len(session.history()) - len(then), 0),
        change=sum(before is not None and value is not None for before, value in marks),
        undone=sum(value is None for _, value in marks),
        come_back=sum(before is None for before, _ in marks),
        texts=texts,
        others=len(back) - len(marks) - texts,
    )


def restore(session: Session, copy: Copy) -> WayBack:
    """Go back to a copy, after copying the present.

    Raises :class:`RefusedError` for a copy that cannot be used or differs in nothing, and
    where the marks that would change are signed off.
    """
    way = way_back(session, copy)
    if not way.decisions:
        raise RefusedError(say("The class stands as it stood in this copy; nothing was changed."))
    now = dt.datetime.now(dt.UTC)
    signed = [
        d if d.value is not None else replace(d, who=session.who, at=now) for d in way.decisions
    ]
    note = {"copy": copy.path.name, "entries": copy.decisions}
    session.keep_copy()
    session.take_in(signed, Decision(KIND, "", "", note))
    return way


def rebuild(folder: Path, who: str = "") -> Salvaged:
    """Make the class's file anew from whatever can be read of it and of its copies.

    Raises :class:`StoreError` where nothing can be read; then nothing is changed.
    """
    store = store_of(folder)
    if not isinstance(store, Path):
        raise StoreError(say("A server keeps this class and the copies of it."))
    return salvage(store, who=who)


def rebuild_second_marks(pack: Path, who: str = "") -> Salvaged:
    """Make a moderator's file beside a pack anew, as :func:`rebuild` does a class's."""
    return salvage(journal_beside(pack), who=who)


def _look_at(path: Path) -> Copy:
    blank = Copy(path, made_at(path))
    try:
        decisions = _decisions_of(blank)
    except RefusedError as problem:
        return replace(blank, problem=str(problem))
    marks = sum(kind == "mark" for kind, _, _ in fold(decisions))
    return replace(blank, decisions=len(decisions), marks=marks)


def _decisions_of(copy: Copy) -> list[Decision]:
    try:
        with Journal.open(copy.path, read_only=True) as journal:
            broken = journal.verify()
            if broken is None:
                return journal.all()
    except (StoreError, ValueError) as error:
        raise RefusedError(say("This copy cannot be used: {why}", why=str(error))) from error
    raise RefusedError(say("This copy is not as it was written: {why}", why=broken.message))


def _differences(now: State, then: State) -> list[Decision]:
    """Decisions that lead from one state to the other; of the old, with their signatures."""

    def value(state: Mapping[tuple[str, str, str], Decision], key: tuple[str, str, str]) -> object:
        held = state.get(key)
        return None if held is None else held.value

    back = []
    for key in [*now, *(key for key in then if key not in now)]:
        was, held = value(then, key), value(now, key)
        if key[0] in _HAPPENED or was == held:
            continue
        decided = then.get(key) or Decision(*key, None)
        back.append(replace(decided, before=held, undoes=None, number=0))
    return back
