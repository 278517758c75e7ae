"""A moderation pack opened by its moderator: blind second mark first.

What she decides is kept in a journal beside the pack, so that she may stop and go on, and
goes back as a small file. A first mark is not read out of the pack before every criterion
of that learner is second-marked; looking is itself recorded, and freezes the second marks
of that learner: a blind mark that could be changed after looking would not be one.
"""

from __future__ import annotations

import datetime as dt
import json
import os
from collections.abc import Callable
from dataclasses import replace
from pathlib import Path
from typing import Any

from markbench.model import (
    Analysis,
    ClassWork,
    Decision,
    Diagnosis,
    Finding,
    Learner,
    Mark,
    Piece,
    Portfolio,
    say,
)
from markbench.moderation.pack import (
    REPLY_FORMAT,
    VERSION,
    FirstMark,
    canonical,
    check_code,
    digest_of,
)
from markbench.moderation.plain import to_plain
from markbench.moderation.records import (
    ACTIONS,
    Action,
    Moderated,
    moderations,
    second_mark_of,
    subject_of,
)
from markbench.session.errors import BlindError, PackError, RefusedError
from markbench.session.forms import usable
from markbench.session.judge import judge, recompute
from markbench.session.pack_content import Content, json_in, member, read_content, typed
from markbench.session.steps import Step, Steps, taking_back
from markbench.store import Journal, fold

_RETURNED = ("second_mark", "moderated", "first_seen")


def journal_beside(pack: Path) -> Path:
    """Where a moderator's decisions on a pack are kept."""
    return pack.with_name(pack.name + ".second")


def open_pack(path: Path, who: str) -> PackSession:
    """Open a pack as moderator ``who``.

    Raises :class:`PackError` for a pack that is damaged, changed or none; ``StoreError``
    where her own journal beside it cannot be used.
    """
    if not who.strip():
        raise PackError(say("A second mark needs a name: say who is moderating."))
    content = read_content(path)
    journal = Journal.open(journal_beside(path), who=who)
    try:
        begun = fold(usable(journal.all()))
        others = {subject for kind, _, subject in begun if kind == "pack"} - {content.digest}
        if others:
            raise PackError(
                say(
                    "{file} belongs to another pack; move it away to begin anew.", file=journal.name
                )
            )
        if not begun:
            journal.append([Decision("pack", "", content.digest, True, who=who)])
        return PackSession(path, who.strip(), content, journal)
    except BaseException:
        journal.close()
        raise


class PackSession:
    """A pack at work; learners go by number. Build with :func:`open_pack`."""

    def __init__(self, path: Path, who: str, content: Content, journal: Journal) -> None:
        self.path = path
        self.who = who
        self.manifest = content.manifest
        self.digest = content.digest
        self.brief = content.brief
        self.rubric = content.rubric
        self._portfolios = content.portfolios
        self._kept_back = content.kept_back
        self._journal = journal
        self._decisions = journal.all()
        self._state = dict(fold(usable(self._decisions)))
        # Having looked, she cannot unlook: a blind mark stays as it was given.
        self._steps = Steps(who, self._decisions, frozenset({"first_seen"}))
        self._listeners: list[Callable[[str], None]] = []
        learners = tuple(one.learner for one in self._portfolios.values())
        work = ClassWork(self.brief, learners, self._portfolios)
        analyses = recompute(work, self._portfolios)
        self._judged = judge(work, self.rubric, analyses, {}, {}, {}, {})

    def close(self) -> None:
        """Let go of her journal."""
        self._journal.close()

    # --- what is known -------------------------------------------------------------

    @property
    def code(self) -> str:
        """Digits to compare with the sender's, by telephone if in doubt."""
        return check_code(self.digest)

    @property
    def learners(self) -> tuple[Learner, ...]:
        """The learners of the pack, by number."""
        return tuple(one.learner for one in self._portfolios.values())

    def portfolio(self, number: str) -> Portfolio:
        """What the pack holds of one learner."""
        return self._portfolios[number]

    def analysis(self, number: str) -> Analysis:
        """The readings recomputed."""
        return self._judged[number].analysis

    def diagnosis(self, number: str) -> Diagnosis | None:
        """Explanations weighed; ``None`` where the readings do not allow it."""
        return self._judged[number].diagnosis

    def findings(self, number: str) -> tuple[Finding, ...]:
        """Findings as the first marker saw them, names replaced."""
        return self._portfolios[number].findings

    def kept_back(self, number: str) -> frozenset[str]:
        """Kinds of piece that were handed in and are not in the pack."""
        return self._kept_back[number]

    def data(self, piece: Piece) -> bytes:
        """The bytes of a photo or film, checked against the manifest."""
        return member(self.path, piece.file, self.manifest)

    def second(self, number: str, criterion: str) -> Mark | None:
        """Her own mark."""
        decision = self._state.get(("second_mark", number, subject_of(criterion, self.who)))
        return None if decision is None else second_mark_of(decision)

    def progress(self, number: str) -> tuple[int, int]:
        """Criteria second-marked, criteria in all."""
        done = sum(self.second(number, c.id) is not None for c in self.rubric.criteria)
        return done, len(self.rubric.criteria)

    def has_looked(self, number: str) -> bool:
        """Whether the first marks of this learner were shown."""
        return ("first_seen", number, self.who) in self._state

    def moderated(self, number: str, criterion: str) -> Moderated | None:
        """What she decided after looking."""
        found = moderations(self._state).get(number, {}).get(criterion, ())
        return next((one for one in found if one.by == self.who), None)

    def history(self) -> list[Decision]:
        """Everything she decided, oldest first."""
        return list(self._decisions)

    # --- commands ------------------------------------------------------------------

    def second_mark(self, number: str, criterion: str, level: str, why: str = "") -> None:
        """Mark one criterion blind. Raises :class:`BlindError` once the first was shown."""
        if self.has_looked(number):
            raise BlindError(
                say(
                    "The first marks of learner {number} were shown; the second mark "
                    "stands. Agree, adjust or ask instead.",
                    number=number,
                )
            )
        value = {"level": level, "marks": self._marks(criterion, level), "feedback": ""}
        self._decide(
            Decision("second_mark", number, subject_of(criterion, self.who), value, why=why)
        )

    def first(self, number: str) -> dict[str, FirstMark]:
        """The first marks, with their reasons; from now on the second marks stand.

        Raises :class:`BlindError` until every criterion is second-marked.
        """
        done, of = self.progress(number)
        if done < of:
            raise BlindError(
                say(
                    "The first marks of learner {number} are shown once all {of} criteria "
                    "are second-marked; {done} are.",
                    number=number,
                    of=of,
                    done=done,
                )
            )
        marks = json_in(self.path, f"{number}/first.json", self.manifest)
        found = typed(tuple[FirstMark, ...], marks, "first marks")
        if not self.has_looked(number):
            self._decide(Decision("first_seen", number, self.who, True))
        return {mark.criterion: mark for mark in found}

    def moderate(
        self, number: str, criterion: str, action: Action, why: str = "", level: str | None = None
    ) -> None:
        """Agree with the first mark, adjust it to a level, or ask.

        Adjusting and asking need words. Raises :class:`BlindError` before looking.
        """
        if not self.has_looked(number):
            raise BlindError(
                say("Look at the first marks of learner {number} first.", number=number)
            )
        if action not in ACTIONS:
            raise RefusedError(
                say("A moderator may agree, adjust or ask, not {action}.", action=repr(action))
            )
        if action != "agree" and not why.strip():
            raise RefusedError(say("An adjustment needs its reason, and a question its words."))
        if (action == "adjust") != (level is not None):
            raise RefusedError(say("An adjustment names its level; agreeing and asking do not."))
        first = self.first(number)[criterion]
        value = {
            "action": action,
            "level": level,
            "marks": None if level is None else self._marks(criterion, level),
            "first_seen": first.marks,
        }
        subject = subject_of(criterion, self.who)
        self._decide(Decision("moderated", number, subject, value, why=why.strip()))

    @property
    def can_undo(self) -> bool:
        """Whether there is a decision to take back."""
        return bool(self._steps.past)

    @property
    def can_redo(self) -> bool:
        """Whether there is one to do again."""
        return bool(self._steps.undone)

    def undo(self) -> None:
        """Take the last decision back; what was given before looking stays."""
        self._take_back(self._steps.past)

    def redo(self) -> None:
        """Do the last one taken back again."""
        self._take_back(self._steps.undone)

    def listen(self, listener: Callable[[str], None]) -> Callable[[], None]:
        """Call ``listener(number)`` after each change; returns a function that stops it."""
        self._listeners.append(listener)
        return lambda: self._listeners.remove(listener)

    def write_reply(self, path: Path) -> str:
        """Write what she decided so far as a small file; returns its digest.

        Raises :class:`PackError` where nothing was decided or the file cannot be written.
        """
        back = [d for d in self._decisions if d.kind in _RETURNED and d.who == self.who]
        if not back:
            raise PackError(say("Nothing was second-marked yet; there is nothing to send back."))
        body = {
            "format": REPLY_FORMAT,
            "version": VERSION,
            "pack": self.digest,
            "who": self.who,
            "decisions": [_returned(d) for d in back],
        }
        digest = digest_of(canonical(body))
        part = path.with_name(path.name + ".part")
        try:
            path.parent.mkdir(parents=True, exist_ok=True)
            part.write_text(json.dumps({**body, "digest": digest}, indent=1), "utf-8")
            os.replace(part, path)
        except OSError as error:
            told = error.strerror or error
            raise PackError(
                say("{file} could not be written: {told}.", file=path.name, told=told)
            ) from error
        finally:
            part.unlink(missing_ok=True)
        return digest

    # --- inside --------------------------------------------------------------------

    def _marks(self, criterion: str, level: str) -> float:
        row = next((c for c in self.rubric.criteria if c.id == criterion), None)
        chosen = next((one for one in row.levels if one.name == level), None) if row else None
        if chosen is None:
            raise RefusedError(
                say("{criterion} has no level {level}.", criterion=criterion, level=repr(level))
            )
        return chosen.marks

    def _take_back(self, steps: list[Step]) -> None:
        for decision in taking_back(steps[-1], self._decisions, self.who) if steps else ():
            self._decide(decision)

    def _decide(self, decision: Decision) -> None:
        if decision.learner not in self._portfolios:
            raise RefusedError(
                say("There is no learner {learner} in this pack.", learner=decision.learner)
            )
        held = self._state.get(decision.key)
        if held is not None and (held.value, held.why) == (decision.value, decision.why):
            return
        before = None if held is None else held.value
        signed = replace(decision, who=self.who, at=dt.datetime.now(dt.UTC), before=before)
        written = self._journal.append([signed])
        self._steps.follow(written)
        self._decisions += written
        self._state = dict(fold(written, self._state))
        for listener in list(self._listeners):
            listener(decision.learner)


def _returned(decision: Decision) -> dict[str, Any]:
    assert decision.at is not None  # the journal dates every entry
    return {
        "kind": decision.kind,
        "learner": decision.learner,
        "subject": decision.subject,
        "value": to_plain(decision.value),
        "at": decision.at.isoformat(),
        "why": decision.why,
    }
