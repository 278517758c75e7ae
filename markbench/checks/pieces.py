"""Is everything there, and did it come in time?"""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterable, Iterator
from dataclasses import replace
from typing import cast

from markbench.checks.question import Case
from markbench.checks.wording import listed
from markbench.model import Concern, Finding, PieceKind, Portfolio, Source, piece_states, say

PIECE_WORDS = {
    "setup_photo": say("photo of the set-up"),
    "selfie": say("photo of the learner with the set-up"),
    "swing_video": say("video of the swings"),
    "readings": say("table of readings"),
    "report": say("written report"),
}

# What a learner is asked for; ``PIECE_WORDS`` speak of the learner to somebody else.
_ASKED_FOR = {
    "setup_photo": say("Please hand in the photo of the set-up."),
    "selfie": say("Please hand in the photo of you with the set-up."),
    "swing_video": say("Please hand in the video of the swings."),
    "readings": say("Please hand in the table of readings."),
    "report": say("Please hand in the written report."),
}

# A piece with one of these findings might as well not be there.
USELESS = ("empty_piece", "unreadable_file", "photo_unreadable", "video_unreadable")


def missing_piece(case: Case) -> Iterator[Finding]:
    """Each piece of evidence the brief wants and the portfolio lacks."""
    evidence = cast(tuple[PieceKind, ...], case.brief.evidence)
    states = piece_states(case.portfolio, evidence)
    if not case.readings:
        states["readings"] = "missing"
    untold = [kind for kind, state in states.items() if state == "untold"]
    if untold:
        yield _to_be_told_apart(case, untold)
    for kind, state in states.items():
        if state != "missing":
            continue
        name = PIECE_WORDS.get(kind, kind.replace("_", " "))
        yield Finding(
            "missing_piece",
            case.learner,
            say("The {name} is missing.", name=name)
            if kind != "readings"
            else say("No table of readings could be read, or none was handed in."),
            Concern.LOOK if kind == "readings" else Concern.ASK,
            {"piece": kind},
            ask=_ASKED_FOR.get(kind) or say("Please hand in the {name}.", name=name),
            who="office" if not case.portfolio.pieces else "teacher",
        )


def _to_be_told_apart(case: Case, untold: list[PieceKind]) -> Finding:
    """Photos that no name tells apart, and what may be among them: one question for all."""
    photos = [piece for piece in case.portfolio.of_kind("photo") if piece.size_bytes > 0]
    name = PIECE_WORDS[untold[0]]
    return Finding(
        "missing_piece",
        case.learner,
        say("The name of one photo does not say what it shows; it could be the {name}.", name=name)
        if len(photos) == 1
        else say(
            "The names of {n} photos do not say what they show; the {name} could be among them.",
            n=len(photos),
            name=name,
        )
        if len(untold) == 1
        else say(
            "The names of {n} photos do not say what they show; the photo of the set-up and that "
            "of the learner with it could be among them.",
            n=len(photos),
        ),
        Concern.NOTE,
        {"piece": untold[0] if len(untold) == 1 else "photo", "could_be": "photo"},
        sources=tuple(Source(photo.file) for photo in photos),
        ask=say("What does your photo show: the set-up alone, or you with it?")
        if len(photos) == 1
        else say("Which of your photos shows the set-up, and which shows you with it?"),
    )


_WHY_NO_READINGS = ("table_not_understood", "unreadable_file", "empty_piece")


def asked_once(portfolio: Portfolio, findings: Iterable[Finding]) -> tuple[Finding, ...]:
    """``findings`` with one question for a table that was handed in and gave no readings.

    Why it gave none is the question; that it is missing would be another, and untrue.
    """
    found, files = list(findings), {piece.file for piece in portfolio.of_kind("readings")}
    missing = next((f for f in found if f.check == "missing_piece" and _is_table(f)), None)
    why = next((f for f in found if f.check in _WHY_NO_READINGS and f.concern is Concern.LOOK
                and files.intersection(source.file for source in f.sources)), None)  # fmt: skip
    if missing is not None and why is not None:
        found.remove(missing)
        found[found.index(why)] = replace(why, numbers={**why.numbers, **missing.numbers})
    return tuple(found)


def _is_table(finding: Finding) -> bool:
    return finding.numbers.get("piece") == "readings"


def certainly_missing(findings: Iterable[Finding]) -> list[str]:
    """Kinds of the pieces that are missing for certain, among a learner's findings.

    A photo that nobody has told apart yet may be the missing one.
    """
    return [
        str(finding.numbers["piece"])
        for finding in findings
        if "could_be" not in finding.numbers
        and (
            finding.check == "missing_piece"
            or (finding.check in _WHY_NO_READINGS and _is_table(finding))
        )
    ]


def unopened(findings: Iterable[Finding]) -> frozenset[str]:
    """Files that could not be opened, or hold nothing, among a learner's findings."""
    found = (finding for finding in findings if finding.check in USELESS)
    return frozenset(source.file for finding in found for source in finding.sources)


def outside_window(case: Case) -> Iterator[Finding]:
    """Handed in before the window of dates opened or after it closed (or was extended to)."""
    handed_in = case.portfolio.handed_in
    if handed_in is None:
        return
    day = handed_in.date()
    opens, closes = case.brief.opens, case.extended_to or case.brief.closes
    sources = listed([piece.file for piece in case.portfolio.pieces if piece.modified == handed_in])
    if closes is not None and day > closes:
        late = (day - closes) // dt.timedelta(days=1)
        yield Finding(
            "outside_window",
            case.learner,
            say(
                "Handed in on {day:%d %B %Y}, {late} after the last day, {closes:%d %B %Y} "
                "(latest: {sources}).",
                day=day,
                late=_days(late),
                closes=closes,
                sources=sources,
            ),
            Concern.ASK,
            {"days_late": late},
            ask=say("Was there a reason for the later hand-in? Copying can change a file's date."),
            who="office",
        )
    elif opens is not None and day < opens:
        early = (opens - day) // dt.timedelta(days=1)
        yield Finding(
            "outside_window",
            case.learner,
            say(
                "The latest file carries the date {day:%d %B %Y}, {early} before the first day, "
                "{opens:%d %B %Y} ({sources}).",
                day=day,
                early=_days(early),
                opens=opens,
                sources=sources,
            ),
            Concern.NOTE,
            {"days_early": early},
            ask=say("Is the clock of the phone or computer set right?"),
        )


def _days(count: int) -> str:
    return say("{n} day", n=count) if count == 1 else say("{n} days", n=count)
