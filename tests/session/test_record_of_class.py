"""The record of a moderation, and the report with the marks that hold."""

from __future__ import annotations

import math
from collections.abc import Iterator
from pathlib import Path

import pypdf
import pytest

from markbench.export.record import write_record
from markbench.session import Session
from markbench.session.moderating import (
    agreement_of,
    decide_adjustment,
    reopen,
    settle_mark,
    sign_off,
    take_sample,
)
from markbench.session.pack_session import open_pack
from markbench.session.packing import write_pack
from markbench.session.record_of import moderated_report, moderation_record, sentence_of
from markbench.session.replies import merge_reply

TEACHER, HER = "T. Teacher", "M. Moderator"
# Invented learners; times are ten swings of 2π√(L/9.81) with a scatter written by hand.
NAMES = ("Ada Invented", "Ben Made-Up", "Cleo Fabricated", "Dov Imaginary")
SCATTER_S = (0.05, -0.06, 0.03, -0.02, 0.04)


def table(number: int) -> str:
    lines = ["Length (cm),Time 1 for 10 swings (s),Time 2 for 10 swings (s)"]
    for place, cm in enumerate((20, 30, 40, 50, 60)):
        law = 20 * math.pi * math.sqrt(cm / 981)
        scatter = SCATTER_S[(place + number) % 5]
        lines.append(f"{cm},{law + scatter:.2f},{law - scatter / 2 + number / 90:.2f}")
    return "\n".join(lines) + "\n"


@pytest.fixture
def session(tmp_path: Path) -> Iterator[Session]:
    folder = tmp_path / "Class 9Z"
    for number, name in enumerate(NAMES):
        own = folder / name
        own.mkdir(parents=True)
        (own / "readings.csv").write_text(table(number), "utf-8")
    (folder / "brief.toml").write_text(
        'evidence = []\nrubric = "short"\ngrades = { A = 12, B = 8 }\n', "utf-8"
    )
    opened = Session.open(folder, TEACHER)
    for learner in opened.learners:
        opened.accept(learner.id)
        for criterion in opened.rubric.criteria:
            opened.set_level(learner.id, criterion.id, criterion.levels[1].name)
    yield opened
    opened.close()


def ids(session: Session) -> list[str]:
    return [learner.id for learner in session.learners]


def answered(session: Session, tmp_path: Path) -> None:
    """A moderator marks everything with the best level and adjusts one criterion of 01."""
    take_sample(session, seed=4)
    pack = write_pack(session, tmp_path / "class.markbench-pack")
    hers = open_pack(pack.path, HER)
    for learner in hers.learners:
        for criterion in hers.rubric.criteria:
            hers.second_mark(learner.id, criterion.id, criterion.levels[0].name)
        hers.first(learner.id)
        for criterion in hers.rubric.criteria:
            hers.moderate(learner.id, criterion.id, "agree")
    row = hers.rubric.criteria[0]
    hers.moderate("01", row.id, "adjust", "All lengths are there.", row.levels[0].name)
    hers.write_reply(tmp_path / "back.markbench-reply")
    hers.close()
    merge_reply(session, tmp_path / "back.markbench-reply")


def adjusted(session: Session) -> str:
    """Whose number was 01."""
    return next(d.value["numbers"]["01"] for d in session.history() if d.kind == "pack")


def test_before_moderation_the_record_says_that_nothing_was_done(session: Session) -> None:
    record = moderation_record(session)
    assert record.sample == ()
    assert record.decisions == ()
    assert [line.name for line in record.sign_offs] == [TEACHER, "", ""]
    assert "Nobody" in sentence_of(agreement_of(session).criteria[0])


def test_the_record_tells_sample_figures_decisions_and_signature(
    session: Session, tmp_path: Path
) -> None:
    answered(session, tmp_path)
    decide_adjustment(session, "leave", "Four are too few.")
    sign_off(session, "Agreed on the telephone.")
    record = moderation_record(session)
    assert [one.name for one in record.sample] == list(NAMES)
    assert "Seed 4" in record.sample_rule
    first, second = record.sample[1].first, record.sample[1].second
    levels = [c.levels for c in session.rubric.criteria]
    assert float(first) == sum(level[1].marks for level in levels)
    assert float(second) == sum(level[0].marks for level in levels)
    rows = {row.name: row for row in record.agreement}
    title = session.rubric.criteria[0].title
    # Never the same level in 4: Clopper and Pearson's upper end is 1 − 0.025^(1/4) = 60.2 %.
    same = rows[f"{title}: same level"]
    assert (same.value, same.interval) == ("0 of 4", "0 to 60 %")
    shift = rows["Total: mean of second − first, marks"].value
    assert float(shift) == pytest.approx(float(second) - float(first))
    assert any("4 learners" in note for note in record.notes)
    said = [one.what for one in record.decisions]
    assert "Sample drawn: 4 learners, seed 4" in said
    assert any(one.startswith(f"{NAMES[ids(session).index(adjusted(session))]}, {title}: adjusted")
               for one in said)  # fmt: skip
    assert said[-1] == "Signed off"
    assert record.sign_offs[-1].name == TEACHER
    assert record.sign_offs[-1].when is not None
    assert {line.name for line in record.sign_offs} == {TEACHER, HER}
    assert len(record.journal_digest) == 64

    write_record(tmp_path / "record.pdf", record)
    text = "\n".join(page.extract_text() for page in pypdf.PdfReader(tmp_path / "record.pdf").pages)
    for words in (HER, "Ada Invented", "Four are too few.", "0 of 4"):
        assert words in text


def test_reopening_stands_in_the_record_and_frees_the_line(session: Session) -> None:
    sign_off(session)
    reopen(session, "A piece was found.")
    record = moderation_record(session)
    assert [(one.what, one.why) for one in record.decisions] == [
        ("Signed off", ""),
        ("Reopened", "A piece was found."),
    ]
    assert record.sign_offs[-1].name == ""


def test_the_report_bears_the_marks_that_hold(session: Session, tmp_path: Path) -> None:
    answered(session, tmp_path)
    learner, row = adjusted(session), session.rubric.criteria[0]
    other = next(one for one in ids(session) if one != learner)
    settle_mark(session, other, row.id, row.levels[-1].name, "Looked again.")
    reports = {one.portfolio.learner.id: one for one in moderated_report(session).learners}
    mark = reports[learner].marks[row.id]
    assert (mark.level, mark.marks, mark.by) == (row.levels[0].name, row.levels[0].marks, HER)
    assert mark.feedback == session.marks(learner)[row.id].feedback
    settled = reports[other].marks[row.id]
    assert (settled.level, settled.by) == (row.levels[-1].name, TEACHER)
    untouched = session.rubric.criteria[1].id
    assert reports[learner].marks[untouched] == session.marks(learner)[untouched]
