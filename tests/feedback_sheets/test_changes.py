import dataclasses
import json

import pytest
from invented_sheets import FULLY, class_report, learner_report, mark

from markbench.export import changes_since, note_changes
from markbench.export.changes import LISTING_NAME, RECORD_NAME


def listing(folder):
    return (folder / LISTING_NAME).read_text("utf-8")


def test_first_export_has_nothing_to_compare_with(tmp_path, report):
    changes = note_changes(tmp_path, report)
    assert (changes.since, changes.found, changes.unreadable) == ("", (), "")
    assert "First export into this folder" in listing(tmp_path)


def test_unchanged_export_says_so(tmp_path, report):
    note_changes(tmp_path, report)
    changes = note_changes(tmp_path, report)
    assert changes.since == "2026-03-05"
    assert changes.found == ()
    assert "No mark, no grade and no feedback text is different." in listing(tmp_path)


def test_every_change_is_listed_from_and_to(tmp_path, report):
    note_changes(tmp_path, report)
    first, second, third = report.learners
    changed = class_report(
        learner_report("L01", "Nguyễn Thị Ánh", (FULLY[0], mark("graph", 4, "Now labelled."))),
        learner_report("L02", "Bea Otherwise"),
        learner_report("L04", "Dan New"),
    )
    found = note_changes(tmp_path, changed).found
    assert [(c.learner, c.criterion, c.what, c.was, c.now) for c in found] == [
        ("L01", "Graph", "level", "Part", "Full"),
        ("L01", "Graph", "marks", "2", "4"),
        ("L01", "Graph", "feedback", "the earlier text", "a new text"),
        ("L01", "", "total", "6", "8"),
        ("L02", "Raw data", "level", "Full", "not marked"),
        ("L02", "Raw data", "marks", "4", "not marked"),
        ("L03", "", "learner", "in the class", "not there"),
        ("L04", "", "learner", "not there", "in the class"),
    ]
    assert "L01 Nguyễn Thị Ánh: Graph · marks: 2 → 4" in listing(tmp_path)
    assert note_changes(tmp_path, changed).found == ()
    assert (first, second, third) == report.learners


def test_comparing_only_writes_nothing(tmp_path, report):
    changes_since(tmp_path, report)
    assert not list(tmp_path.iterdir())


def test_record_keeps_no_feedback_text(tmp_path, report):
    note_changes(tmp_path, report)
    assert "agree" not in (tmp_path / RECORD_NAME).read_text("utf-8")


@pytest.mark.parametrize(
    "content",
    [
        "",
        "[]",
        "{",
        json.dumps({"format": 99}),
        json.dumps({"format": 1, "learners": {"L01": None}}),
        json.dumps({"format": 1, "learners": {"L01": {"marks": {"Graph": 3}}}}),
        "[" * 100_000,
        "\udcff",
    ],
)
def test_a_damaged_record_is_said_and_replaced(tmp_path, report, content):
    (tmp_path / RECORD_NAME).write_bytes(content.encode("utf-8", "surrogateescape"))
    changes = note_changes(tmp_path, report)
    assert changes.found == ()
    assert "could not be read" in changes.unreadable
    assert "could not be read" in listing(tmp_path)
    assert note_changes(tmp_path, report).since == "2026-03-05"


def test_a_name_with_line_ends_stays_on_its_line(tmp_path, report):
    note_changes(tmp_path, report)
    one = learner_report("L09", "Ana\nL01 Bea: total: 2 → 9")
    note_changes(tmp_path, dataclasses.replace(report, learners=(*report.learners, one)))
    added = [line for line in listing(tmp_path).splitlines() if "in the class" in line]
    assert len(added) == 1
    assert added[0].startswith("L09 Ana L01 Bea")


def test_a_name_that_no_file_can_hold_is_no_obstacle(tmp_path, report):
    note_changes(tmp_path, report)
    one = learner_report("L\udcff", "Ana \udcff\x00")
    changed = dataclasses.replace(report, learners=(*report.learners, one))
    assert note_changes(tmp_path, changed).found
    assert "Ana \ufffd␀" in listing(tmp_path)
    assert note_changes(tmp_path, changed).found == ()
