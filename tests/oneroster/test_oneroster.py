"""Against the OneRoster 1.2 CSV binding; column lists as published by 1EdTech."""

import csv
import dataclasses
import datetime as dt
import io
import re
from zipfile import ZipFile

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from markbench.export import ClassReport, LearnerReport, RosterIds, write_oneroster
from markbench.model import (
    Brief,
    Criterion,
    Draft,
    Learner,
    Level,
    Mark,
    Piece,
    Portfolio,
    Rubric,
)

# Header lines byte for byte, from the binding.
CATEGORIES = b"sourcedId,status,dateLastModified,title,weight\r\n"
LINE_ITEMS = (
    b"sourcedId,status,dateLastModified,title,description,assignDate,dueDate,classSourcedId,"
    b"categorySourcedId,academicSessionSourcedId,resultValueMin,resultValueMax,schoolSourcedId\r\n"
)
RESULTS = (
    b"sourcedId,status,dateLastModified,lineItemSourcedId,studentSourcedId,scoreStatus,score,"
    b"scoreDate,comment,textScore,classSourcedId,inProgress,incomplete,late,missing\r\n"
)
STATUSES = {"exempt", "fully graded", "not submitted", "partially graded", "submitted"}
GUID = re.compile(r"[A-Za-z0-9.\-_/@]{1,255}")
IDS = RosterIds("SCH/1", "2026.T1", {"7B": "class-7b"})
# Noon, so that the local day is the same in every zone but the outermost.
AT = dt.datetime(2026, 3, 4, 12, 0, tzinfo=dt.UTC)
LEVELS = (Level("Full", 4, "All."), Level("Part", 2.5, "Some."))
RUBRIC = Rubric(
    "short", "Short rubric", (Criterion("raw", "Raw", LEVELS), Criterion("g", "g", LEVELS))
)


def learner(id_, *marks, group="7B", pieces=True):
    portfolio = Portfolio(
        Learner(id_, f"Name of {id_}", group), (Piece("a.xlsx", "readings"),) if pieces else ()
    )
    drafts = (Draft("raw", "Full", 4, ("Nobody accepted this.",)),)
    return LearnerReport(portfolio, drafts=drafts, marks={m.criterion: m for m in marks})


def mark(criterion, marks, feedback="Well set out."):
    return Mark(criterion, "Full", marks, feedback, "T. Marker", AT)


def report(*learners, **brief):
    return ClassReport(
        Brief("Pendulum, at home", dt.date(2026, 2, 2), dt.date(2026, 2, 16), **brief),
        RUBRIC,
        "9.8.7",
        dt.date(2026, 3, 5),
        learners,
    )


CLASS = report(
    learner("L01", mark("raw", 4, "First line.\r\nSecond line."), mark("g", 2.5)),
    learner("L02", mark("raw", 4)),
    learner("L03"),
    learner("L04", pieces=False),
)


@pytest.fixture
def written(tmp_path):
    write_oneroster(tmp_path / "oneroster.zip", CLASS, IDS)
    return files(tmp_path / "oneroster.zip")


def files(path):
    with ZipFile(path) as made:
        assert made.testzip() is None
        return {name: made.read(name) for name in made.namelist()}


def rows(data):
    return list(csv.DictReader(io.StringIO(data.decode("utf-8"), newline="")))


def test_headers_are_those_of_the_binding(written):
    assert set(written) == {"manifest.csv", "categories.csv", "lineItems.csv", "results.csv"}
    assert written["categories.csv"].startswith(CATEGORIES)
    assert written["lineItems.csv"].startswith(LINE_ITEMS)
    assert written["results.csv"].startswith(RESULTS)
    assert written["manifest.csv"].startswith(b"propertyName,value\r\n")


def test_manifest_names_every_file_of_the_binding(written):
    told = {row["propertyName"]: row["value"] for row in rows(written["manifest.csv"])}
    # All files of the binding, from its manifest table.
    every = """academicSessions categories classes classResources courses courseResources
        demographics enrollments lineItemLearningObjectiveIds lineItems lineItemScoreScales orgs
        resources resultLearningObjectiveIds results resultScoreScales roles scoreScales
        userProfiles userResources users""".split()
    assert told["manifest.version"] == "1.0"
    assert told["oneroster.version"] == "1.2"
    assert {name[5:] for name in told if name.startswith("file.")} == set(every)
    there = {name for name in every if told[f"file.{name}"] == "bulk"}
    assert there == {"categories", "lineItems", "results"}
    assert all(told[f"file.{name}"] == "absent" for name in every if name not in there)


def test_required_fields_are_filled_and_bulk_fields_blank(written):
    line_item = "title assignDate dueDate classSourcedId categorySourcedId schoolSourcedId"
    required = {
        "categories.csv": "sourcedId title",
        "lineItems.csv": f"sourcedId {line_item} academicSessionSourcedId",
        "results.csv": "sourcedId lineItemSourcedId studentSourcedId scoreStatus scoreDate",
    }
    for name, fields in required.items():
        for row in rows(written[name]):
            assert row["status"] == row["dateLastModified"] == ""
            assert all(row[field] for field in fields.split())


def test_results_say_how_far_the_marking_is(written):
    found = {row["studentSourcedId"]: row for row in rows(written["results.csv"])}
    assert [row["scoreStatus"] for row in found.values()] == [
        "fully graded",
        "partially graded",
        "submitted",
        "not submitted",
    ]
    # 4 + 2.5; nobody else has a complete mark, and a draft is none.
    assert [row["score"] for row in found.values()] == ["6.5", "", "", ""]
    assert found["L01"]["scoreDate"] == "2026-03-04"
    assert found["L03"]["scoreDate"] == "2026-03-05"
    assert "Nobody accepted" not in written["results.csv"].decode()


def test_line_item_says_what_and_for_whom(written):
    (item,) = rows(written["lineItems.csv"])
    assert item["title"] == "Pendulum, at home"
    assert (item["assignDate"], item["dueDate"]) == ("2026-02-02", "2026-02-16")
    assert (item["resultValueMin"], item["resultValueMax"]) == ("0", "8")
    assert item["classSourcedId"] == "class-7b"
    assert item["schoolSourcedId"] == "SCH/1"
    assert item["academicSessionSourcedId"] == "2026.T1"
    assert item["categorySourcedId"] == rows(written["categories.csv"])[0]["sourcedId"]
    assert {row["lineItemSourcedId"] for row in rows(written["results.csv"])} == {item["sourcedId"]}


def test_line_ends_within_a_comment_are_flattened(written):
    comment = rows(written["results.csv"])[0]["comment"]
    assert "First line. Second line." in comment
    for data in written.values():
        # RFC 4180: CRLF ends records; nothing else may hold either sign.
        assert b"\r" not in data.replace(b"\r\n", b"")
        assert b"\n" not in data.replace(b"\r\n", b"")
    assert len(written["results.csv"].splitlines()) == 5


def test_a_class_without_learners_leaves_the_files_out(tmp_path):
    write_oneroster(tmp_path / "o.zip", report(), IDS)
    written = files(tmp_path / "o.zip")
    assert set(written) == {"manifest.csv"}
    assert b"file.results,absent\r\n" in written["manifest.csv"]
    assert b"file.lineItems,absent\r\n" in written["manifest.csv"]


def test_each_group_is_a_class_of_its_own(tmp_path):
    two = report(learner("L01", group="7B"), learner("L02", group="7C"), learner("L03", group=""))
    write_oneroster(tmp_path / "o.zip", two, IDS)
    written = files(tmp_path / "o.zip")
    items = {row["sourcedId"]: row["classSourcedId"] for row in rows(written["lineItems.csv"])}
    assert list(items.values()) == ["class-7b", "7C", "class"]
    for row in rows(written["results.csv"]):
        assert items[row["lineItemSourcedId"]] == row["classSourcedId"]


def test_identifiers_stay_the_same_when_marks_change(tmp_path):
    marked = report(learner("L01", mark("raw", 4), mark("g", 4)))
    for name, one in (("before.zip", report(learner("L01"))), ("after.zip", marked)):
        write_oneroster(tmp_path / name, one, IDS)
    before, after = (
        rows(files(tmp_path / name)["results.csv"])[0] for name in ("before.zip", "after.zip")
    )
    for field in ("sourcedId", "lineItemSourcedId", "studentSourcedId"):
        assert before[field] == after[field]


def test_what_a_spreadsheet_would_run_is_neutralised(tmp_path):
    one = dataclasses.replace(
        report(learner("L01")), rubric=dataclasses.replace(RUBRIC, title="+1")
    )
    one = dataclasses.replace(one, brief=dataclasses.replace(one.brief, title=" =1+1"))
    write_oneroster(tmp_path / "o.zip", one, IDS)
    (item,) = rows(files(tmp_path / "o.zip")["lineItems.csv"])
    assert (item["title"], item["description"]) == ("'=1+1", "'+1")


@settings(
    max_examples=100,
    derandomize=True,
    deadline=None,
    suppress_health_check=[HealthCheck.function_scoped_fixture],
)
@given(
    learners=st.lists(st.text(min_size=1, max_size=300), min_size=1, max_size=5, unique=True),
    group=st.text(max_size=300),
    school=st.text(min_size=1),
    said=st.text(),
)
def test_any_text_gives_files_the_binding_allows(tmp_path, learners, group, school, said):
    marks = (mark("raw", 4, said), mark("g", 4, said))
    one = report(*(learner(id_, *marks, group=group) for id_ in learners))
    told = write_oneroster(tmp_path / "o.zip", one, RosterIds(school, "T1"))
    written = files(tmp_path / "o.zip")
    results = rows(written["results.csv"])
    students = [row["studentSourcedId"] for row in results]
    assert told.results == len(learners) == len(set(students))
    for row in (*results, *rows(written["lineItems.csv"])):
        for field, value in row.items():
            assert "\r" not in value
            assert "\n" not in value
            if field.lower().endswith("sourcedid"):
                assert GUID.fullmatch(value)
    assert {row["scoreStatus"] for row in results} <= STATUSES
    for id_, student in zip(learners, students, strict=True):
        assert student == told.replaced.get(id_, id_)
