"""What goes out after moderation: the marks that hold, in every file, read by other readers."""

from __future__ import annotations

import csv
import io
import json
import os
import zipfile
from collections.abc import Iterator
from datetime import datetime
from pathlib import Path
from typing import Any

import pypdf
import pytest
from python_calamine import CalamineWorkbook
from second_marked_class import BRIEF, HER, TEACHER, adjusted, answered, ids, open_marked

from markbench.export import RosterIds, write_json
from markbench.session import Session
from markbench.session.errors import RefusedError
from markbench.session.going_out import RECORD, Wanted, write_out
from markbench.session.moderating import decide_adjustment, reopen, settle_mark, sign_off
from markbench.session.report import class_report

# The late rule is read from files' times, so closing and handing in are set in local time.
LATE = BRIEF + "closes = 2026-03-02\n[late]\nmarks_per_day = 2\n"
IN_TIME, TWO_DAYS_LATE = datetime(2026, 3, 1, 12), datetime(2026, 3, 4, 12)


@pytest.fixture
def session(tmp_path: Path) -> Iterator[Session]:
    opened = open_marked(tmp_path / "Class 9Z")
    yield opened
    opened.close()


@pytest.fixture
def late_session(tmp_path: Path) -> Iterator[Session]:
    folder = tmp_path / "Class 9Z"
    opened = open_marked(folder, LATE)
    opened.close()
    for number, own in enumerate(sorted(folder.glob("*/readings.csv"))):
        at = (TWO_DAYS_LATE if number == 3 else IN_TIME).timestamp()
        os.utime(own, (at, at))
    again = Session.open(folder, TEACHER)
    yield again
    again.close()


def sheet(path: Path, title: str) -> list[dict[str, Any]]:
    """A sheet of the workbook by headings, read by another library than its writer."""
    head, *rows = CalamineWorkbook.from_path(path).get_sheet_by_name(title).to_python()
    return [dict(zip(head, row, strict=True)) for row in rows]


def page_text(path: Path) -> str:
    return " ".join(" ".join(p.extract_text() for p in pypdf.PdfReader(path).pages).split())


def test_before_moderation_nothing_is_added(session: Session) -> None:
    went = write_out(session)
    row = sheet(went.folder / "marks.xlsx", "Mark sheet")[0]
    assert not {"First mark", "Second mark", "Adjustment", "Late"} & set(row)
    assert row["Grade"] in ("A", "B", "")
    assert "First mark" not in sheet(went.folder / "marks.xlsx", "Levels and feedback")[0]


def test_every_file_bears_the_marks_that_hold(session: Session, tmp_path: Path) -> None:
    answered(session, tmp_path)
    learner, row = adjusted(session), session.rubric.criteria[0]
    other = next(one for one in ids(session) if one != learner)
    settle_mark(session, other, row.id, row.levels[-1].name, "Looked again.")
    most = session.rubric.most
    second = sum(c.levels[1].marks for c in session.rubric.criteria)
    gained = row.levels[0].marks - row.levels[1].marks
    lost = row.levels[1].marks - row.levels[-1].marks
    assert gained > 0
    assert lost > 0
    holds = {learner: second + gained, other: second - lost}

    wanted = Wanted(feedback=True, oneroster=RosterIds("school-1", "term-1"), record=True)
    went = write_out(session, tmp_path / "out", wanted)
    assert {file.name for file in went.files} == {
        "marks.xlsx", "mark_sheet.csv", "oneroster.zip", RECORD,
    }  # fmt: skip

    total = f"Total /{most:g}"
    marks = {one["Id"]: one for one in sheet(tmp_path / "out" / "marks.xlsx", "Mark sheet")}
    for one in ids(session):
        found = marks[one]
        assert found["First mark"] == second
        assert found["Second mark"] == most
        assert found["After moderation"] == found[total] == holds.get(one, second)
        # Boundaries of the brief: A from 12, B from 8.
        assert found["Grade"] == ("A" if found[total] >= 12 else "B" if found[total] >= 8 else "")
    assert HER in marks[learner]["Marked by"]

    levels = sheet(tmp_path / "out" / "marks.xlsx", "Levels and feedback")
    one_row = next(r for r in levels if (r["Id"], r["Criterion"]) == (learner, row.title))
    assert (one_row["Level"], one_row["Marked by"]) == (row.levels[0].name, HER)
    assert one_row["First mark"] == f"{row.levels[1].name} ({row.levels[1].marks:g}), {TEACHER}"
    assert one_row["Second mark"] == f"{row.levels[0].name} ({row.levels[0].marks:g}), {HER}"

    read_me = sheet(tmp_path / "out" / "marks.xlsx", "Read me")
    explained = {r["Item"]: r["What it means"] for r in read_me if "Mark sheet" in r["About"]}
    for heading in ("First mark", "Second mark", "After moderation", "Grade"):
        assert explained[heading]
    assert {"About": "Brief", "Item": "Grades", "What it means": "A from 12, B from 8"} in read_me

    with (tmp_path / "out" / "mark_sheet.csv").open(encoding="utf-8-sig", newline="") as file:
        in_csv = {one["Id"]: one for one in csv.DictReader(file)}
    assert {i: float(one[total]) for i, one in in_csv.items()} == {
        i: one[total] for i, one in marks.items()
    }

    with zipfile.ZipFile(tmp_path / "out" / "oneroster.zip") as made:
        text = made.read("results.csv").decode()
    assert went.roster is not None
    scores = {r["studentSourcedId"]: r for r in csv.DictReader(io.StringIO(text))}
    for one in ids(session):
        roster_id = went.roster.replaced[one]  # ids of this class are names, with spaces
        assert float(scores[roster_id]["score"]) == marks[one][total]
        assert scores[roster_id]["textScore"] == marks[one]["Grade"]

    assert went.sheets is not None
    assert {one["Grade"] for one in marks.values()} == {"A", "B"}
    for made_sheet in went.sheets.sheets:
        found = marks[made_sheet.learner]
        for text in (page_text(made_sheet.pdf), made_sheet.html.read_text("utf-8")):
            assert f"{found[total]:g} of {most:g}" in text
            assert HER not in text
            assert "Looked again." not in text
        if found["Grade"]:
            assert f"Grade {found['Grade']}" in page_text(made_sheet.pdf)

    write_json(tmp_path / "class.json", class_report(session))
    told = {
        one["learner"]: one for one in json.loads((tmp_path / "class.json").read_text())["learners"]
    }
    result = told[learner]["result"]
    assert (result["first_total"], result["second_total"]) == (second, most)
    assert result["total"] == holds[learner]
    assert {m["by"] for m in result["second_marks"]} == {HER}


def test_text_to_the_learner_stays_the_first_markers(session: Session, tmp_path: Path) -> None:
    answered(session, tmp_path)
    learner, row = adjusted(session), session.rubric.criteria[0]
    session.set_feedback(learner, row.id, "Five lengths, well spread.")
    one = next(r for r in class_report(session).learners if r.portfolio.learner.id == learner)
    assert one.marks[row.id].feedback == "Five lengths, well spread."
    assert one.marks[row.id].level == row.levels[0].name


def test_a_text_that_speaks_of_another_level_is_pointed_out_until_it_is_edited(
    session: Session, tmp_path: Path
) -> None:
    answered(session, tmp_path)
    learner, row = adjusted(session), session.rubric.criteria[0]
    told = write_out(session, tmp_path / "out").behind
    assert len(told) == 1
    assert learner in told[0]
    assert f"written for “{row.levels[1].name}”, and “{row.levels[0].name}” holds" in told[0]
    session.set_feedback(learner, row.id, "Five lengths, well spread.")
    assert write_out(session, tmp_path / "out").behind == ()


def test_adjustment_and_lateness_stand_beside_the_marks(
    late_session: Session, tmp_path: Path
) -> None:
    session = late_session
    plain = sum(c.levels[1].marks for c in session.rubric.criteria)
    decide_adjustment(session, "adjust", "Every second mark was higher.", 1)
    went = write_out(session, tmp_path / "out", Wanted(feedback=True))
    rows = sheet(tmp_path / "out" / "marks.xlsx", "Mark sheet")
    total = f"Total /{session.rubric.most:g}"
    assert [r[total] for r in rows] == [plain + 1] * 3 + [plain + 1 - 4]
    assert [r["Adjustment"] for r in rows] == [1] * 4
    assert [r["Late"] for r in rows] == ["", "", "", -4]
    assert "Second mark" not in rows[0]
    assert went.sheets is not None
    last = page_text(went.sheets.sheets[3].pdf)
    assert "moved by +1 mark, as for the whole class" in last
    assert "2 days after 2 March 2026: 4 marks off" in last
    assert "marks off" not in page_text(went.sheets.sheets[0].pdf)
    # What is said to the learner stands in the web page as well.
    assert "4 marks off" in went.sheets.sheets[3].html.read_text("utf-8")


def test_writing_again_says_what_changed(session: Session, tmp_path: Path) -> None:
    first = write_out(session)
    assert (first.changes.since, first.changes.found) == ("", ())
    assert write_out(session).changes.found == ()
    answered(session, tmp_path)
    learner, row = adjusted(session), session.rubric.criteria[0]
    changes = write_out(session).changes
    about = {(c.learner, c.criterion, c.what): (c.was, c.now) for c in changes.found}
    assert about[learner, row.title, "level"] == (row.levels[1].name, row.levels[0].name)
    assert (learner, "", "total") in about
    assert {key[0] for key in about} == {learner}
    settle_mark(session, learner, row.id, row.levels[-1].name, "None of it holds.")
    moved = write_out(session).changes.found
    grade = next(c for c in moved if c.what == "grade")
    assert (grade.learner, grade.was, grade.now) == (learner, "A", "B")
    listing = (session.folder / "markbench-out" / "what-changed.txt").read_text("utf-8")
    assert "grade: A → B" in listing


def test_what_is_no_longer_as_signed_does_not_go_out(session: Session) -> None:
    sign_off(session)
    went = write_out(session)
    read_me = sheet(went.folder / "marks.xlsx", "Read me")
    signed = next(r["What it means"] for r in read_me if r["Item"] == "Signed off")
    assert TEACHER in signed
    folder = session.folder
    session.close()
    (folder / "brief.toml").write_text(BRIEF.replace("A = 12", "A = 14.5"), "utf-8")
    again = Session.open(folder, TEACHER)
    try:
        before = (went.folder / "marks.xlsx").read_bytes()
        with pytest.raises(RefusedError, match="not what was signed"):
            write_out(again)
        assert (went.folder / "marks.xlsx").read_bytes() == before
        reopen(again, "The boundary was set too high.")
        sign_off(again)
        assert any(c.what == "grade" for c in write_out(again).changes.found)
    finally:
        again.close()


def test_lateness_and_adjustment_are_told_in_the_language_of_the_sheet(
    late_session: Session, tmp_path: Path
) -> None:
    folder = late_session.folder
    decide_adjustment(late_session, "adjust", "Jede zweite Zweitnote war höher.", 1)
    late_session.close()
    brief = folder / "brief.toml"
    brief.write_text('feedback_language = "de"\n' + brief.read_text("utf-8"), "utf-8")
    session = Session.open(folder, TEACHER)
    went = write_out(session, tmp_path / "out", Wanted(feedback=True))
    session.close()
    assert went.sheets is not None
    last = went.sheets.sheets[3].html.read_text("utf-8")
    assert "Die Summe wurde um +1 Punkt verschoben" in last
    assert "2 Tage nach dem 2. März 2026 abgegeben: 4 Punkte Abzug, 2 für jeden Tag." in last
    assert "marks off" not in last
