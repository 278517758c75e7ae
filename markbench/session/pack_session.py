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
import zipfile
import zlib
from collections.abc import Callable
from dataclasses import dataclass, replace
from pathlib import Path
from typing import Any

from markbench.model import (
    Analysis,
    Brief,
    ClassWork,
    Decision,
    Diagnosis,
    Finding,
    Learner,
    Mark,
    Piece,
    Portfolio,
    ReadingsTable,
    Rubric,
)
from markbench.moderation.pack import (
    MANIFEST,
    PACK_FORMAT,
    REPLY_FORMAT,
    VERSION,
    FirstMark,
    Manifest,
    canonical,
    check_code,
    digest_of,
)
from markbench.moderation.plain import from_plain, to_plain
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
from markbench.store import Journal, fold

_MOST_BYTES = 1_000_000_000
_RETURNED = ("second_mark", "moderated", "first_seen")


@dataclass(frozen=True, slots=True)
class _Content:
    """A pack as read: every text in it has been checked against the manifest."""

    digest: str
    manifest: Manifest
    brief: Brief
    rubric: Rubric
    portfolios: dict[str, Portfolio]
    kept_back: dict[str, frozenset[str]]


def open_pack(path: Path, who: str) -> PackSession:
    """Open a pack as moderator ``who``.

    Raises :class:`PackError` for a pack that is damaged, changed or none; ``StoreError``
    where her own journal beside it cannot be used.
    """
    if not who.strip():
        raise PackError("A second mark needs a name: say who is moderating.")
    content = _read(path)
    journal = Journal.open(path.with_name(path.name + ".second"), who=who)
    try:
        begun = fold(usable(journal.all()))
        others = {subject for kind, _, subject in begun if kind == "pack"} - {content.digest}
        if others:
            raise PackError(f"{journal.name} belongs to another pack; move it away to begin anew.")
        if not begun:
            journal.append([Decision("pack", "", content.digest, True, who=who)])
        return PackSession(path, who.strip(), content, journal)
    except BaseException:
        journal.close()
        raise


class PackSession:
    """A pack at work; learners go by number. Build with :func:`open_pack`."""

    def __init__(self, path: Path, who: str, content: _Content, journal: Journal) -> None:
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
        return _member(self.path, piece.file, self.manifest)

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
                f"The first marks of learner {number} were shown; the second mark stands. "
                "Agree, adjust or ask instead."
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
                f"The first marks of learner {number} are shown once all {of} criteria are "
                f"second-marked; {done} are."
            )
        marks = _json(self.path, f"{number}/first.json", self.manifest)
        found = _typed(tuple[FirstMark, ...], marks, "first marks")
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
            raise BlindError(f"Look at the first marks of learner {number} first.")
        if action not in ACTIONS:
            raise RefusedError(f"A moderator may agree, adjust or ask, not {action!r}.")
        if action != "agree" and not why.strip():
            raise RefusedError("An adjustment needs its reason, and a question its words.")
        if (action == "adjust") != (level is not None):
            raise RefusedError("An adjustment names its level; agreeing and asking do not.")
        first = self.first(number)[criterion]
        value = {
            "action": action,
            "level": level,
            "marks": None if level is None else self._marks(criterion, level),
            "first_seen": first.marks,
        }
        subject = subject_of(criterion, self.who)
        self._decide(Decision("moderated", number, subject, value, why=why.strip()))

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
            raise PackError("Nothing was second-marked yet; there is nothing to send back.")
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
            raise PackError(f"{path.name} could not be written: {told}.") from error
        finally:
            part.unlink(missing_ok=True)
        return digest

    # --- inside --------------------------------------------------------------------

    def _marks(self, criterion: str, level: str) -> float:
        row = next((c for c in self.rubric.criteria if c.id == criterion), None)
        chosen = next((one for one in row.levels if one.name == level), None) if row else None
        if chosen is None:
            raise RefusedError(f"{criterion} has no level {level!r}.")
        return chosen.marks

    def _decide(self, decision: Decision) -> None:
        if decision.learner not in self._portfolios:
            raise RefusedError(f"There is no learner {decision.learner} in this pack.")
        held = self._state.get(decision.key)
        if held is not None and (held.value, held.why) == (decision.value, decision.why):
            return
        before = None if held is None else held.value
        signed = replace(decision, who=self.who, at=dt.datetime.now(dt.UTC), before=before)
        written = self._journal.append([signed])
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


# --- reading ---------------------------------------------------------------------------


def _read(path: Path) -> _Content:
    try:
        with zipfile.ZipFile(path) as archive:
            names = archive.namelist()
    except FileNotFoundError as error:
        raise PackError(f"There is no pack at {path}.") from error
    except (OSError, zipfile.BadZipFile) as error:
        raise PackError(f"{path.name} is no moderation pack, or it is damaged.") from error
    if MANIFEST not in names:
        raise PackError(f"{path.name} is no moderation pack: it has no manifest.")
    raw = _bytes(path, MANIFEST)
    plain = _parsed(raw, MANIFEST)
    if not isinstance(plain, dict) or plain.get("format") != PACK_FORMAT:
        raise PackError(f"{path.name} is no moderation pack.")
    if plain.get("version") != VERSION:
        raise PackError(
            f"{path.name} was made by another version of Markbench (pack version "
            f"{plain.get('version')}; this one reads {VERSION})."
        )
    manifest: Manifest = _typed(Manifest, plain, "manifest")
    _refuse_changed(path, names, manifest)
    portfolios = {number: _portfolio(path, number, manifest) for number in manifest.learners}
    return _Content(
        digest_of(raw),
        manifest,
        _typed(Brief, _json(path, "brief.json", manifest), "brief"),
        _typed(Rubric, _json(path, "rubric.json", manifest), "rubric"),
        portfolios,
        {number: _kept_back(path, number, manifest) for number in manifest.learners},
    )


def _refuse_changed(path: Path, names: list[str], manifest: Manifest) -> None:
    """Every member is as the manifest says, none is missing, and none was slipped in."""
    wrong = [f"{name} stands in it twice" for name in sorted(set(names)) if names.count(name) > 1]
    wrong += [
        f"{name} was slipped in" for name in names if name not in (*manifest.members, MANIFEST)
    ]
    wrong += [f"{name} is missing" for name in manifest.members if name not in names]
    if not wrong:
        for name, digest in manifest.members.items():
            if digest_of(_bytes(path, name)) != digest:
                wrong.append(f"{name} is not as it was packed")
    if wrong:
        raise PackError(f"{path.name} was changed or damaged on its way: {'; '.join(wrong)}.")


def _portfolio(path: Path, number: str, manifest: Manifest) -> Portfolio:
    body = _json(path, f"{number}/portfolio.json", manifest)
    if not isinstance(body, dict):
        raise PackError(f"The portfolio of learner {number} cannot be read.")
    return Portfolio(
        Learner(number, f"Learner {number}"),
        pieces=_typed(tuple[Piece, ...], body.get("pieces"), f"pieces of learner {number}"),
        table=_typed(ReadingsTable | None, body.get("table"), f"table of learner {number}"),
        findings=_typed(tuple[Finding, ...], body.get("findings"), f"findings of learner {number}"),
    )


def _kept_back(path: Path, number: str, manifest: Manifest) -> frozenset[str]:
    body = _json(path, f"{number}/portfolio.json", manifest)
    return frozenset(_typed(tuple[str, ...], body.get("kept_back"), f"pieces of learner {number}"))


def _json(path: Path, name: str, manifest: Manifest) -> Any:
    return _parsed(_member(path, name, manifest), name)


def _member(path: Path, name: str, manifest: Manifest) -> bytes:
    """A member, checked again at every reading: the file may change under an open window."""
    data = _bytes(path, name)
    if digest_of(data) != manifest.members.get(name):
        raise PackError(f"{name} in {path.name} is not as it was packed.")
    return data


def _bytes(path: Path, name: str) -> bytes:
    try:
        with zipfile.ZipFile(path) as archive, archive.open(name) as member:
            data = member.read(_MOST_BYTES + 1)
    except (KeyError, OSError, zipfile.BadZipFile, zlib.error, EOFError, NotImplementedError,
            RuntimeError) as error:  # fmt: skip
        raise PackError(f"{name} in {path.name} is missing or damaged.") from error
    if len(data) > _MOST_BYTES:
        raise PackError(f"{name} in {path.name} is larger than any piece may be.")
    return data


def _parsed(data: bytes, name: str) -> Any:
    try:
        return json.loads(data)
    except (ValueError, RecursionError) as error:
        raise PackError(f"{name} in the pack cannot be read.") from error


def _typed(kind: Any, plain: Any, what: str) -> Any:
    try:
        return from_plain(kind, plain)
    except (ValueError, TypeError, AttributeError) as error:
        raise PackError(f"The {what} in the pack cannot be read: {error}.") from error
