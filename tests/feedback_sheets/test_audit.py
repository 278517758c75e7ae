import csv
import dataclasses
import datetime as dt

import pytest

from markbench.export import write_audit
from markbench.export.audit import HEADINGS
from markbench.model import Decision

AT = dt.datetime(2026, 3, 4, 12, 0, tzinfo=dt.UTC)
SECRET = "Private: ask the tutor."
DECISIONS = [
    Decision(
        "mark",
        "L01",
        "raw",
        {"level": "Full", "marks": 4.0, "feedback": "Well set out.\n1. A line that poses."},
        {"level": "Part", "marks": 2.5, "feedback": "Once more."},
        "T. Marker",
        AT,
        "Second look",
        number=1,
    ),
    Decision("note", "L01", "", SECRET, "Earlier " + SECRET, "T. Marker", AT, number=2),
    Decision("owner", "", "=stray.jpg", "L01", None, "T. Marker", AT, number=3),
    Decision("owner", "", "=stray.jpg", None, "L01", "T. Marker", AT, undoes=3, number=4),
    Decision("typed", "L02", "", [{"length_m": 0.2}], None, "", None, number=5),
]


@pytest.fixture
def rows(tmp_path, report):
    write_audit(tmp_path / "audit.csv", DECISIONS, report)
    data = (tmp_path / "audit.csv").read_bytes()
    assert data.startswith(b"\xef\xbb\xbf")
    return list(csv.DictReader(data.decode("utf-8-sig").splitlines(keepends=True)))


def test_listing_says_who_when_what_was_and_became_and_why(rows):
    assert tuple(rows[0]) == HEADINGS
    first = rows[0]
    assert first["Number"] == "1"
    assert dt.datetime.strptime(first["When"], "%Y-%m-%d %H:%M:%S%z") == AT
    assert (first["Who"], first["Learner"], first["Name"]) == ("T. Marker", "L01", "Nguyễn Thị Ánh")
    assert (first["Decision"], first["About"], first["Why"]) == ("mark", "raw", "Second look")
    assert first["Was"] == "Part (2.5): Once more."
    assert first["Became"].startswith("Full (4): Well set out.")
    assert rows[3]["Takes back"] == "3"
    assert rows[4]["Became"] == '[{"length_m": 0.2}]'
    assert [row["Number"] for row in rows] == ["1", "2", "3", "4", "5"]


def test_what_a_spreadsheet_would_run_is_neutralised(rows):
    assert rows[2]["About"] == "'=stray.jpg"


@pytest.mark.parametrize("name", ["audit.csv", "audit.txt"])
def test_private_notes_stay_private_but_are_counted(tmp_path, report, name):
    write_audit(tmp_path / name, DECISIONS, report)
    text = (tmp_path / name).read_text("utf-8-sig")
    assert "tutor" not in text
    assert text.count("a private note") == 2


def test_text_listing_can_be_read_and_no_line_poses_as_an_entry(tmp_path, report):
    write_audit(tmp_path / "audit.txt", DECISIONS, report)
    text = (tmp_path / "audit.txt").read_text("utf-8")
    assert "5 decisions, oldest first." in text
    starts = [line for line in text.splitlines() if line[:1].isdigit()][1:]
    assert [line.split(".")[0] for line in starts] == ["1", "2", "3", "4", "5"]
    assert "mark, L01 Nguyễn Thị Ánh" in starts[0]
    assert "owner, the class" in starts[2]


def test_listing_without_names(tmp_path):
    write_audit(tmp_path / "audit.csv", [dataclasses.replace(DECISIONS[0])])
    assert ",L01,," in (tmp_path / "audit.csv").read_text("utf-8-sig")
