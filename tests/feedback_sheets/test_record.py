import dataclasses
import datetime as dt
import io

import pytest
from invented_sheets import read_back
from pypdf import PdfReader

from markbench.export import ExportError
from markbench.export.record import (
    AgreementRow,
    ModerationRecord,
    RecordedDecision,
    SampledLearner,
    SignOff,
    write_record,
)

WHEN = dt.datetime(2026, 3, 19, 16, 4, tzinfo=dt.UTC)
RECORD = ModerationRecord(
    title="Pendulum & home",
    class_name="7B",
    rubric="Short rubric",
    date=dt.date(2026, 3, 20),
    sample_rule="Every flagged portfolio and every sixth of the rest, seed 7.",
    sample=(SampledLearner("L01", "Łucja Żak", "flagged", "14", "13", "13.5"),),
    learners_in_class=30,
    agreement=(AgreementRow("Weighted kappa", "0.71", "0.44 to 0.88"),),
    notes=("So small a sample shows little.",),
    decisions=(RecordedDecision("M. Second", WHEN, "L01: Graph from 2 to 3", "The line holds."),),
    sign_offs=(SignOff("First marker", "T. Marker", WHEN), SignOff("Moderator")),
    journal_digest="0123456789abcdef" * 4,
    program_version="9.8.7",
)


def test_record_reads_back_whole(tmp_path):
    write_record(tmp_path / "record.pdf", RECORD)
    text = read_back((tmp_path / "record.pdf").read_bytes())
    for expected in (
        "Pendulum & home",
        "7B",
        "Short rubric",
        "Markbench 9.8.7",
        "1 of 30 learners second-marked. Every flagged portfolio",
        "L01 Łucja Żak flagged 14 13 13.5",
        "Weighted kappa 0.71 0.44 to 0.88",
        "So small a sample shows little.",
        f"{WHEN.astimezone():%Y-%m-%d %H:%M}",
        "M. Second",
        "L01: Graph from 2 to 3",
        "The line holds.",
        "T. Marker",
        "First marker: name",
        "Moderator: name",
        "signature",
        "01234567 89abcdef",
    ):
        assert expected in text


def test_an_empty_record_says_so(tmp_path):
    bare = ModerationRecord("Pendulum", "7B", "Short rubric", dt.date(2026, 3, 20))
    write_record(tmp_path / "record.pdf", bare)
    text = read_back((tmp_path / "record.pdf").read_bytes())
    assert "0 learners second-marked." in text
    assert "No statistics were worked out." in text
    assert "No decision is recorded." in text


def test_headings_of_a_long_sample_come_again_on_every_page(tmp_path):
    sample = tuple(SampledLearner(f"L{k:03}", f"Learner {k}", "spread") for k in range(150))
    write_record(tmp_path / "record.pdf", dataclasses.replace(RECORD, sample=sample))
    pages = PdfReader(io.BytesIO((tmp_path / "record.pdf").read_bytes())).pages
    with_rows = [text for page in pages if "spread" in (text := page.extract_text())]
    assert len(with_rows) > 2
    assert all("Why this one" in text for text in with_rows)


def test_a_folder_that_is_not_there_is_named(tmp_path):
    with pytest.raises(ExportError, match="There is no folder gone"):
        write_record(tmp_path / "gone" / "record.pdf", RECORD)
