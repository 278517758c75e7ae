"""The record of a moderation."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pypdf
import pytest
from second_marked_class import HER, NAMES, TEACHER, adjusted, answered, ids, open_marked

from markbench.export.record import write_record
from markbench.session import Session
from markbench.session.agreeing import agreement_of, sentence_of
from markbench.session.moderating import decide_adjustment, reopen, sign_off
from markbench.session.record_of import moderation_record


@pytest.fixture
def session(tmp_path: Path) -> Iterator[Session]:
    opened = open_marked(tmp_path / "Class 9Z")
    yield opened
    opened.close()


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
