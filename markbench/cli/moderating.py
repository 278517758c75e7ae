"""Second marking and sign-off from the command line, over the same session as the window."""

from __future__ import annotations

import argparse
from collections.abc import Callable, Iterator, Mapping
from contextlib import contextmanager
from pathlib import Path

from rich.console import Console
from rich.table import Table

from markbench.cli.terminal import Terminal
from markbench.model import Decision
from markbench.session import Session
from markbench.session.agreeing import agreement_of, proposal_of
from markbench.session.endings import PACK_ENDING, REPLY_ENDING
from markbench.session.errors import RefusedError
from markbench.session.first_marker import make_first
from markbench.session.merging import Merge
from markbench.session.moderating import (
    decide_adjustment,
    merge_journal,
    reopen,
    settle_mark,
    sign_off,
    take_sample,
)
from markbench.session.pack_session import PackSession, open_pack
from markbench.session.packing import write_pack
from markbench.session.replies import merge_reply
from markbench.session.results import changed_since_sign_off, results


def run(parsed: argparse.Namespace) -> None:
    """Carry out one of these commands."""
    COMMANDS[parsed.command](parsed, Terminal())


@contextmanager
def _class(folder: Path, *, read_only: bool = False) -> Iterator[Session]:
    session = Session.open(folder, read_only=read_only)
    try:
        if session.notice and not read_only:
            raise RefusedError(session.notice)
        yield session
    finally:
        session.close()


def _sample(parsed: argparse.Namespace, console: Console) -> None:
    with _class(parsed.folder) as session:
        sample = take_sample(session, parsed.seed)
        names = {learner.id: learner.name for learner in session.learners}
        table = Table("Learner", "Why", box=None)
        for one in sample.learners:
            table.add_row(names[one.learner], "; ".join(one.reasons))
        console.print(table)
        console.print(str(sample))
        if sample.unmarked:
            told = ", ".join(names[learner] for learner in sample.unmarked)
            console.print(f"Not fully marked, so not drawn: {told}.")


def _pack(parsed: argparse.Namespace, console: Console) -> None:
    with _class(parsed.folder) as session:
        default = parsed.folder / "markbench-out" / f"moderation{PACK_ENDING}"
        packed = write_pack(session, parsed.to or default)
        for one in packed.left_out:
            console.print(str(one))
        for doubt in packed.doubtful:
            console.print(f"Left standing, in case it is a name: “{doubt}”")
        console.print(f"Written: {packed.path}\nCheck code: {packed.code}")


def _second_mark(parsed: argparse.Namespace, console: Console) -> None:
    session = open_pack(parsed.pack, parsed.who)
    try:
        for number, criterion, level in parsed.give:
            session.second_mark(number, criterion, level)
        for (number,) in parsed.first:
            _print_first(session, number, console)
        for number, criterion in parsed.agree:
            session.moderate(number, criterion, "agree")
        for number, criterion, level, why in parsed.adjust:
            session.moderate(number, criterion, "adjust", why, level)
        for number, criterion, words in parsed.ask:
            session.moderate(number, criterion, "ask", words)
        _print_progress(session, console)
        if parsed.reply is not None:
            session.write_reply(parsed.reply)
            console.print(f"Written: {parsed.reply}")
    finally:
        session.close()


def _print_first(session: PackSession, number: str, console: Console) -> None:
    table = Table("Criterion", "First mark", "Second mark", "Reason given", box=None)
    for criterion, first in session.first(number).items():
        second = session.second(number, criterion)
        table.add_row(
            criterion,
            f"{first.level} ({first.marks:g}), {first.by}",
            f"{second.level} ({second.marks:g})" if second is not None else "–",
            first.why,
        )
    console.print(f"Learner {number}")
    console.print(table)


def _print_progress(session: PackSession, console: Console) -> None:
    table = Table("Learner", "Second-marked", "Looked", "Agreed, adjusted, asked", box=None)
    for learner in session.learners:
        done, of = session.progress(learner.id)
        said = [session.moderated(learner.id, c.id) for c in session.rubric.criteria]
        table.add_row(
            learner.id,
            f"{done} of {of}",
            "yes" if session.has_looked(learner.id) else "no",
            " ".join(one.action for one in said if one is not None) or "–",
        )
    console.print(table)
    for criterion in session.rubric.criteria:
        levels = ", ".join(f"{level.name} ({level.marks:g})" for level in criterion.levels)
        console.print(f"{criterion.id}: {levels}")
    console.print(f"Check code: {session.code}")


def _merge(parsed: argparse.Namespace, console: Console) -> None:
    with _class(parsed.folder) as session:
        other = parsed.other
        merge: Merge
        if other.endswith(REPLY_ENDING):
            merge = merge_reply(session, Path(other))
        else:
            merge = merge_journal(session, other if "://" in other else Path(other))
        console.print(str(merge))
        for clash in (*merge.doubles, *merge.clashes):
            console.print(clash.sentence)


def _first_marker(parsed: argparse.Namespace, console: Console) -> None:
    with _class(parsed.folder) as session:
        make_first(session, parsed.learner, parsed.name, parsed.why)
        console.print(f"The marks of {parsed.name} are now the first.")


def _agreement(parsed: argparse.Namespace, console: Console) -> None:
    with _class(parsed.folder, read_only=True) as session:
        found = agreement_of(session)
        console.print(str(found))
        proposal = proposal_of(session, found)
        console.print(str(proposal or "No adjustment is proposed."))
        names = {learner.id: learner.name for learner in session.learners}
        for change in proposal.changes if proposal is not None else ():
            console.print(
                f"{names[change.learner]}: {change.total_before:g} to {change.total_after:g}, "
                f"{change.before or 'no grade'} to {change.after or 'no grade'}",
                markup=False,
            )


def _settle(parsed: argparse.Namespace, console: Console) -> None:
    with _class(parsed.folder) as session:
        if parsed.learner not in {learner.id for learner in session.learners}:
            raise RefusedError(f"{parsed.learner} is not in the class list.")
        settle_mark(session, parsed.learner, parsed.criterion, parsed.level, parsed.why)
        _print_open(session, console)


def _adjustment(parsed: argparse.Namespace, console: Console) -> None:
    with _class(parsed.folder) as session:
        before = results(session)
        decide_adjustment(session, parsed.choice, parsed.why, parsed.by)
        after = results(session)
        moved = {x: one for x, one in after.items() if one.total != before[x].total}
        names = {learner.id: learner.name for learner in session.learners}
        console.print(f"Recorded: {parsed.choice}; {len(moved)} totals moved.", markup=False)
        for learner, one in moved.items():
            if one.grade != before[learner].grade:
                was, now = (x.grade or "no grade" for x in (before[learner], one))
                console.print(f"{names[learner]}: {was} to {now}", markup=False)


def _print_open(session: Session, console: Console) -> None:
    names = {learner.id: learner.name for learner in session.learners}
    still = [(x, words) for x, one in results(session).items() for words in one.open]
    console.print(f"{len(still)} questions are open between the markers.")
    for learner, words in still:
        console.print(f"{names[learner]}, {words}", markup=False)


def _sign_off(parsed: argparse.Namespace, console: Console) -> None:
    with _class(parsed.folder) as session:
        sign_off(session, parsed.note, despite_open=parsed.despite_open)
        console.print(f"Signed off by {session.who}: {len(session.learners)} learners.")


def _reopen(parsed: argparse.Namespace, console: Console) -> None:
    with _class(parsed.folder) as session:
        changed = changed_since_sign_off(session)
        reopen(session, parsed.why)
        console.print(f"Reopened by {session.who}; {len(changed)} results had moved since.")


def _journal(parsed: argparse.Namespace, console: Console) -> None:
    with _class(parsed.folder, read_only=True) as session:
        names = {learner.id: learner.name for learner in session.learners}
        if parsed.learner is not None and parsed.learner not in names:
            raise RefusedError(f"{parsed.learner} is not in the class list.")
        for decision in session.history(parsed.learner):
            console.print(line_of(decision, names), soft_wrap=True)


def line_of(decision: Decision, names: Mapping[str, str]) -> str:
    """One entry of the audit listing."""
    when = f"{decision.at.astimezone():%Y-%m-%d %H:%M:%S}" if decision.at is not None else "–"
    about = " ".join(
        filter(None, (names.get(decision.learner, decision.learner), decision.subject))
    )
    text = f"{decision.number:>5}  {when}  {decision.who}  {decision.kind}"
    text += f" [{about}]" if about else ""
    text += f": {_short(decision.before)} → {_short(decision.value)}"
    text += f" because {decision.why}" if decision.why else ""
    return text + (f" (takes back {decision.undoes})" if decision.undoes else "")


def _short(value: object) -> str:
    if value is None:
        return "nothing"
    if isinstance(value, Mapping) and "level" in value and "marks" in value:
        told = value.get("action")
        graded = f"{value['level']} ({value['marks']})" if value["level"] is not None else ""
        return " ".join(str(word) for word in (told, graded) if word)
    text = str(value)
    return text if len(text) <= 60 else text[:57] + "..."


COMMANDS: Mapping[str, Callable[[argparse.Namespace, Console], None]] = {
    "sample": _sample,
    "pack": _pack,
    "second-mark": _second_mark,
    "merge": _merge,
    "first-marker": _first_marker,
    "agreement": _agreement,
    "settle": _settle,
    "adjustment": _adjustment,
    "sign-off": _sign_off,
    "reopen": _reopen,
    "journal": _journal,
}
