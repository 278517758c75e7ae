"""The journal as a listing: who decided what, when, what it was and became, and why."""

from __future__ import annotations

import csv
import datetime as dt
import json
from collections.abc import Iterator, Mapping, Sequence
from pathlib import Path
from textwrap import indent
from typing import Any

from markbench.export.marks import local
from markbench.export.plain_text import for_csv, printable
from markbench.export.report import ClassReport
from markbench.export.whole_file import whole_file
from markbench.model import Decision

HEADINGS = (
    "Number",
    "When",
    "Who",
    "Learner",
    "Name",
    "Decision",
    "About",
    "Was",
    "Became",
    "Why",
    "Takes back",
)
WITHHELD = "(a private note, which stays in the class's own file)"


def write_audit(
    path: Path, decisions: Sequence[Decision], report: ClassReport | None = None
) -> None:
    """Write every decision, oldest first: as csv, or as readable text where ``path`` ends in .txt.

    ``report`` gives the learners' names. The text of private notes is withheld; that one
    was written is not. Times are local, with their offset. Raises :class:`ExportError`.
    """
    names = (
        {one.portfolio.learner.id: one.portfolio.learner.name for one in report.learners}
        if report is not None
        else {}
    )
    rows = [_row(decision, names) for decision in decisions]
    with whole_file(path, report) as unfinished:
        if path.suffix.lower() == ".txt":
            unfinished.write_text("\n".join(_entries(rows)), "utf-8")
            return
        with unfinished.open("w", encoding="utf-8-sig", newline="") as file:
            writer = csv.writer(file, lineterminator="\r\n")
            writer.writerow(HEADINGS)
            writer.writerows([for_csv(field) for field in row] for row in rows)


def _row(decision: Decision, names: Mapping[str, str]) -> tuple[str, ...]:
    return (
        str(decision.number or ""),
        _when(decision.at),
        decision.who,
        decision.learner,
        names.get(decision.learner, ""),
        decision.kind.replace("_", " "),
        decision.subject,
        *_change(decision),
        decision.why,
        "" if decision.undoes is None else str(decision.undoes),
    )


def _entries(rows: Sequence[tuple[str, ...]]) -> Iterator[str]:
    """One paragraph per decision; lines within a text are set in, so that none poses as another."""
    yield f"{len(rows)} decisions, oldest first.\n"
    for number, when, who, learner, name, kind, about, was, became, why, undoes in rows:
        owner = " ".join(part for part in (learner, name) if part) or "the class"
        yield printable(f"{number}. {when}, {who or 'nobody named'}: {kind}, {owner}")
        for title, text in (("about", about), ("was", was or "–"), ("became", became or "–")):
            yield from _told(title, text)
        yield from _told("why", why)
        yield from _told("takes back", undoes)
        yield ""


def _told(title: str, text: str) -> Iterator[str]:
    if text:
        yield indent(f"{title}: " + indent(printable(text), "    ").lstrip(), "    ")


def _when(at: dt.datetime | None) -> str:
    return "" if at is None else f"{local(at):%Y-%m-%d %H:%M:%S}{at.astimezone():%z}"


def _change(decision: Decision) -> tuple[str, str]:
    """What it was and what it became; of a file, no more than how much of it is other."""
    was, became = decision.before, decision.value
    if decision.kind == "file":
        return _lines(was, became), _lines(became, was)
    return _value(decision.kind, was), _value(decision.kind, became)


def _lines(text: Any, other: Any) -> str:
    """A brief tells pairs of learners and the school's place: its text goes nowhere."""
    if not isinstance(text, str):
        return ""
    lines = text.splitlines()
    elsewhere = set(other.splitlines()) if isinstance(other, str) else set()
    only_here = sum(line not in elsewhere for line in lines)
    return f"{len(lines)} lines, {only_here} of them here only (the text stays in the class's file)"


def _value(kind: str, value: Any) -> str:
    if value is None:
        return ""
    if kind == "note":
        return WITHHELD
    if kind == "kept":
        return "what was known of files that were then removed"
    if kind == "work":
        return "the readings and pieces that a mark rests on"
    if kind == "mark" and isinstance(value, dict):
        level, marks = value.get("level"), value.get("marks")
        shown = f"{marks:g}" if isinstance(marks, int | float) else str(marks)
        text = value.get("feedback")
        return f"{level} ({shown})" + (f": {text}" if text else "")
    if isinstance(value, str):
        return value
    if kind == "feedback" and isinstance(value, dict) and isinstance(value.get("text"), str):
        return str(value["text"])
    return json.dumps(value, ensure_ascii=False)
