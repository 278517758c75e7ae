"""The brief's day for photos and films: read, checked, reminded of, never acted on."""

import datetime as dt

import pytest
from care_class import IDS, mark_all

from markbench import cli
from markbench.intake.brief_file import parse_brief
from markbench.session import Session
from markbench.session.moderating import sign_off
from markbench.session.purging import plan, purge
from markbench.session.retention import overdue

DAY = dt.date(2026, 3, 20)


@pytest.fixture
def keeping(folder):
    brief = folder / "brief.toml"
    brief.write_text(brief.read_text("utf-8") + "keep_evidence_until = 2026-03-20\n", "utf-8")
    session = Session.open(folder, "T. Teacher")
    yield session
    session.close()


def test_the_key_and_its_sentence():
    assert parse_brief("keep_evidence_until = 2026-03-20")[0].keep_evidence_until == DAY
    brief, (problem,) = parse_brief('keep_evidence_until = "after Easter"')
    assert brief.keep_evidence_until is None
    assert "keep_evidence_until" in problem.sentence
    assert "year-month-day" in problem.sentence
    _, (problem,) = parse_brief("closes = 2026-04-01\nkeep_evidence_until = 2026-03-20")
    assert "must not be earlier than closes" in problem.sentence


def test_reminded_from_the_day_after_until_it_is_gone(keeping):
    assert overdue(keeping, DAY) is None
    late = overdue(keeping, DAY + dt.timedelta(days=1))
    assert (late.count, late.until) == (8, DAY)
    assert "20 March 2026" in str(late)
    assert "8 of them" in str(late)
    mark_all(keeping)
    sign_off(keeping)
    assert overdue(keeping, DAY + dt.timedelta(days=1)).count == 8  # the date removes nothing
    purge(keeping, plan(keeping))
    assert overdue(keeping, DAY + dt.timedelta(days=1)) is None


def test_no_day_no_reminder(session):
    assert overdue(session, dt.date(2999, 1, 1)) is None


def test_check_says_so(keeping, capsys, monkeypatch):
    # Long past, whatever the day on which this test runs.
    brief = keeping.folder / "brief.toml"
    brief.write_text(brief.read_text("utf-8").replace("2026-03-20", "2020-03-20"), "utf-8")
    keeping.close()
    assert cli.main(["check", str(keeping.folder)], lambda _folder: 1) == 0
    told = " ".join(capsys.readouterr().out.split())
    assert "were to be kept until 20 March 2020" in told
    assert "markbench purge" in told
    assert (keeping.folder / "IMG_0001.jpg").exists()
    assert len(IDS) == 3
