"""A moderator's reply, checked and merged into the class's journal.

A reply is merged like a colleague's journal, so that the same reply twice, an older one
after a newer one, or two moderators' replies in any order come to the same marks.
"""

from __future__ import annotations

import datetime as dt
import json
from collections.abc import Mapping
from dataclasses import dataclass, replace
from pathlib import Path
from typing import Any

from markbench.model import Decision, joined, say
from markbench.moderation.pack import REPLY_FORMAT, VERSION, canonical, digest_of
from markbench.moderation.records import ACTIONS
from markbench.session.errors import MergeError
from markbench.session.merging import Clash, Merge
from markbench.session.moderating import take_in
from markbench.session.session import Session


@dataclass(frozen=True, slots=True)
class Reply:
    """A moderator's decisions with the class's own learner ids."""

    who: str
    decisions: tuple[Decision, ...]


def merge_reply(session: Session, path: Path) -> Merge:
    """Merge a reply. Raises :class:`MergeError` for a tampered or foreign one.

    ``clashes`` also names decisions on a first mark that has changed since the pack was made.
    """
    reply = read_reply(session, path)
    merge = take_in(session, list(reply.decisions))
    return replace(merge, clashes=(*merge.clashes, *_stale(session, reply)))


def read_reply(session: Session, path: Path) -> Reply:
    """Read and check a reply against the packs that the journal remembers."""
    try:
        body = json.loads(path.read_bytes())
    except OSError as error:
        raise MergeError(
            say("{file} cannot be opened: {strerror}.", file=path.name, strerror=error.strerror)
        ) from error
    except (ValueError, RecursionError) as error:
        raise MergeError(
            say("{file} is no moderator's reply, or it is damaged.", file=path.name)
        ) from error
    if not isinstance(body, dict) or body.get("format") != REPLY_FORMAT:
        raise MergeError(say("{file} is no moderator's reply.", file=path.name))
    if body.get("version") != VERSION:
        raise MergeError(say("{file} was made by another version of Markbench.", file=path.name))
    claimed = body.pop("digest", None)
    try:
        found = digest_of(canonical(body))
    except (ValueError, TypeError) as error:
        raise MergeError(
            say("{file} is damaged: {why}.", file=path.name, why=str(error))
        ) from error
    if claimed != found:
        raise MergeError(
            say(
                "{file} was changed or damaged on its way: its digest is not its own.",
                file=path.name,
            )
        )
    pack = session.value("pack", "", str(body.get("pack")))
    if pack is None:
        raise MergeError(
            say(
                "{file} answers a pack that this class did not send out, or one that "
                "was changed on its way. Nothing was merged.",
                file=path.name,
            )
        )
    who = body.get("who")
    entries = body.get("decisions")
    if not isinstance(who, str) or not who.strip() or not isinstance(entries, list):
        raise MergeError(say("{file} does not say who decided what.", file=path.name))
    wrong: list[str] = []
    decisions = []
    for place, entry in enumerate(entries, 1):
        try:
            decisions.append(_decision(session, entry, who, pack["numbers"]))
        except (ValueError, KeyError, TypeError, AttributeError) as error:
            wrong.append(say("entry {n}: {why}", n=place, why=str(error)))
    if wrong:
        raise MergeError(
            say("{file} cannot be merged: {wrong}.", file=path.name, wrong=joined(wrong, "; "))
        )
    return Reply(who, tuple(decisions))


def _decision(
    session: Session, entry: Mapping[str, Any], who: str, numbers: Mapping[str, str]
) -> Decision:
    kind, number, subject = entry["kind"], entry["learner"], entry["subject"]
    value, why = entry["value"], entry["why"]
    if number not in numbers:
        raise ValueError(say("learner {number} was not in the pack", number=number))
    at = dt.datetime.fromisoformat(entry["at"])
    if at.tzinfo is None or not isinstance(why, str):
        raise ValueError(say("it is not dated or explained as it should be"))
    if kind == "first_seen":
        _must(subject == who and value is True, say("it is signed by somebody else"))
    elif kind in ("second_mark", "moderated"):
        criterion, _, marker = subject.partition("|")
        _must(marker == who, say("it is signed by somebody else"))
        if value is None:  # she took it back
            return Decision(kind, numbers[number], subject, None, who=who, at=at, why=why)
        levels = {
            level.name: level.marks
            for row in session.rubric.criteria
            if row.id == criterion
            for level in row.levels
        }
        _must(bool(levels), say("there is no criterion {criterion}", criterion=criterion))
        graded = kind == "second_mark" or value["action"] == "adjust"
        if graded:
            fits = levels.get(value["level"]) == value["marks"]
            _must(fits, say("no such level of {criterion}", criterion=criterion))
        else:
            _must(value["level"] is None and value["marks"] is None, say("marks where none belong"))
        if kind == "moderated":
            _must(value["action"] in ACTIONS, say("a moderator may agree, adjust or ask"))
            _must(value["action"] == "agree" or bool(why.strip()), say("its reason is missing"))
    else:
        raise ValueError(say("a reply holds no {kind}", kind=repr(kind)))
    return Decision(kind, numbers[number], subject, value, who=who, at=at, why=why)


def _must(holds: bool, otherwise: str) -> None:
    if not holds:
        raise ValueError(otherwise)


def _stale(session: Session, reply: Reply) -> list[Clash]:
    """Decisions of hers in force on a first mark that is no longer the one she saw."""
    found = []
    for d in reply.decisions:
        held = session.state.get(d.key)
        if d.kind != "moderated" or held is None or held.at != d.at:
            continue
        criterion = d.subject.partition("|")[0]
        first = session.state.get(("mark", d.learner, criterion))
        marks = None if first is None else first.value["marks"]
        if first is None or marks != d.value["first_seen"]:
            now = "gone" if first is None else f"{marks:g}"
            sentence = (
                f"{criterion} of {d.learner}: {reply.who} decided on a first mark of "
                f"{d.value['first_seen']:g}, which is now {now}."
            )
            found.append(Clash("moderated", d.learner, d.subject, first or d, d, sentence))
    return found
