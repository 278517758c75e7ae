"""The record of a moderation, to be signed and kept: as plain data, and as PDF."""

from __future__ import annotations

import datetime as dt
from dataclasses import dataclass
from pathlib import Path

from markbench.export.paper import BOX, QUIET, Paper
from markbench.export.whole_file import whole_file

_TEXT, _LINE_MM = 9.5, 4.8


@dataclass(frozen=True, slots=True)
class SampledLearner:
    """A learner who was second-marked, and why this one."""

    learner: str
    name: str
    why: str
    first: str = ""
    second: str = ""
    final: str = ""


@dataclass(frozen=True, slots=True)
class AgreementRow:
    """One statistic as it is to be read: ``value`` and ``interval`` are ready texts."""

    name: str
    value: str
    interval: str = ""


@dataclass(frozen=True, slots=True)
class RecordedDecision:
    """One decision of the moderation, as in the journal."""

    who: str
    when: dt.datetime
    what: str
    why: str = ""


@dataclass(frozen=True, slots=True)
class SignOff:
    """A line to sign on. Name and date stand in print where they are in the journal."""

    role: str
    name: str = ""
    when: dt.datetime | None = None


@dataclass(frozen=True, slots=True)
class ModerationRecord:
    """Everything the record says.

    ``sample_rule`` says in words how the sample was drawn (rule, size, seed);
    ``notes`` are sentences under the statistics, such as what so small a sample can show.
    ``journal_digest`` is the last digest of the journal's chain, in hexadecimal.
    """

    title: str
    class_name: str
    rubric: str
    date: dt.date
    sample_rule: str = ""
    sample: tuple[SampledLearner, ...] = ()
    learners_in_class: int = 0
    agreement: tuple[AgreementRow, ...] = ()
    notes: tuple[str, ...] = ()
    decisions: tuple[RecordedDecision, ...] = ()
    sign_offs: tuple[SignOff, ...] = (SignOff("First marker"), SignOff("Moderator"))
    journal_digest: str = ""
    program_version: str = ""


def write_record(path: Path, record: ModerationRecord) -> None:
    """Write the record as PDF. Raises :class:`ExportError`."""
    with whole_file(path) as unfinished:
        unfinished.write_bytes(_pdf(record))


def _pdf(record: ModerationRecord) -> bytes:
    foot = f"Moderation record · {record.title} · {record.class_name}"
    paper = Paper(f"Moderation record: {record.title}", foot, record.date)
    _head(paper, record)
    _sample(paper, record)
    _agreement(paper, record)
    _decisions(paper, record)
    _sign_offs(paper, record)
    if record.journal_digest:
        paper.ln(3)
        paper.pen(8, grey=QUIET)
        paper.say(
            "Digest of the journal this record was made from: " + _in_eights(record.journal_digest),
            4,
        )
    if paper.missing:
        paper.pen(8, grey=QUIET)
        paper.say(f"{BOX} stands for a letter this print has no type for.", 4)
    return paper.bytes()


def _head(paper: Paper, record: ModerationRecord) -> None:
    paper.pen(9, grey=QUIET)
    paper.say("Moderation record", 5)
    paper.pen(17, bold=True)
    paper.say(record.title, 7.5)
    paper.ln(2)
    made = f"{record.date:%Y-%m-%d}"
    if record.program_version:
        made += f", by Markbench {record.program_version}"
    for name, value in (("Class", record.class_name), ("Rubric", record.rubric), ("Made", made)):
        paper.pen(_TEXT, grey=QUIET)
        paper.cell(20, 5.2, name)
        paper.pen(_TEXT, bold=True)
        paper.say(value, 5.2, width=paper.epw - 20)


def _sample(paper: Paper, record: ModerationRecord) -> None:
    paper.heading("Sample")
    paper.pen(_TEXT)
    of = f" of {record.learners_in_class}" if record.learners_in_class else ""
    count = len(record.sample)
    learners = "learner" if count == 1 and not of else "learners"
    paper.say(f"{count}{of} {learners} second-marked. {record.sample_rule}".strip(), _LINE_MM)
    if record.sample:
        rows = [
            (one.learner, one.name, one.why, one.first, one.second, one.final)
            for one in record.sample
        ]
        paper.ln(2)
        headings = ("Number", "Name", "Why this one", "First", "Second", "Final")
        paper.rows([headings, *rows], (20, 46, 60, 16, 16, 16), "LLLRRR")


def _agreement(paper: Paper, record: ModerationRecord) -> None:
    paper.heading("Agreement")
    if record.agreement:
        rows = [(row.name, row.value, row.interval) for row in record.agreement]
        headings = ("Statistic", "Value", "Interval")
        paper.rows([headings, *rows], (94, 40, 40), "LRR")
    else:
        paper.pen(_TEXT)
        paper.say("No statistics were worked out.", _LINE_MM)
    for note in record.notes:
        paper.ln(1)
        paper.pen(8.5, grey=QUIET)
        paper.say(note, 4.2)


def _decisions(paper: Paper, record: ModerationRecord) -> None:
    paper.heading("Decisions")
    if not record.decisions:
        paper.pen(_TEXT)
        paper.say("No decision is recorded.", _LINE_MM)
        return
    rows = [(_time(one.when), one.who, one.what, one.why) for one in record.decisions]
    paper.rows([("When", "Who", "What", "Why"), *rows], (28, 30, 62, 54), "LLLL")


def _sign_offs(paper: Paper, record: ModerationRecord) -> None:
    paper.heading("Signatures", keep_mm=20 + 18 * min(len(record.sign_offs), 3))
    for line in record.sign_offs:
        if paper.will_page_break(18):
            paper.add_page()
        paper.ln(9)
        paper.pen(_TEXT)
        top = paper.get_y()
        when = "" if line.when is None else _time(line.when)
        for text, left, width in ((line.name, 0.0, 64.0), ("", 68.0, 66.0), (when, 138.0, 36.0)):
            paper.set_xy(paper.l_margin + left, top - 5)
            paper.say(text, 4.6, width=width)
            paper.set_draw_color(0)
            paper.set_line_width(0.2)
            paper.line(paper.l_margin + left, top, paper.l_margin + left + width, top)
        paper.pen(8, grey=QUIET)
        labels = (
            (f"{line.role}: name", 0.0, 64.0),
            ("signature", 68.0, 66.0),
            ("date", 138.0, 36.0),
        )
        for text, left, width in labels:
            paper.set_xy(paper.l_margin + left, top + 0.8)
            paper.say(text, 4, width=width)


def _time(at: dt.datetime) -> str:
    return f"{at.astimezone():%Y-%m-%d %H:%M}"


def _in_eights(digest: str) -> str:
    """In groups, so that two people can read it to each other."""
    return " ".join(digest[start : start + 8] for start in range(0, len(digest), 8))
