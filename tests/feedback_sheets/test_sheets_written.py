import dataclasses
import re
import shutil
from pathlib import Path
from zipfile import ZipFile

import pytest
from invented_sheets import (
    COPIED,
    DRAFTED,
    EXPLAINED,
    FULLY,
    class_report,
    learner_report,
    mark,
    read_back,
)

from markbench.export import ExportError
from markbench.export.feedback import write_feedback_sheets
from markbench.session import Session
from markbench.session.report import class_report as session_report

SAMPLE = Path(__file__).parents[2] / "sample_class"


def contents(path):
    """Every text in a file: as bytes, and, for a PDF, as read back too."""
    data = path.read_bytes()
    text = data.decode("utf-8", "replace")
    return f"{text}\n{read_back(data)}" if path.suffix == ".pdf" else text


def test_only_the_fully_marked_get_a_sheet(tmp_path, report):
    written = write_feedback_sheets(tmp_path, report)
    assert [sheet.learner for sheet in written.sheets] == ["L01"]
    assert [(one.learner, one.why) for one in written.left_out] == [
        ("L02", "not yet marked: Graph"),
        ("L03", "not marked yet"),
    ]
    assert {path.name for path in tmp_path.iterdir()} == {
        "L01 Nguyễn Thị Ánh.pdf",
        "L01 Nguyễn Thị Ánh.html",
        "all-feedback-sheets.zip",
    }


def test_partly_marked_on_request_say_what_is_missing(tmp_path, report):
    written = write_feedback_sheets(tmp_path, report, include_partly=True)
    assert [sheet.learner for sheet in written.sheets] == ["L01", "L02"]
    assert [one.learner for one in written.left_out] == ["L03"]
    for file in (written.sheets[1].pdf, written.sheets[1].html):
        text = contents(file)
        assert "not yet marked" in text
        assert "1 of 2 criteria marked so far" in text
        assert DRAFTED not in text


def test_zip_holds_every_sheet_as_written(tmp_path, report):
    written = write_feedback_sheets(tmp_path, report, include_partly=True)
    with ZipFile(written.zip) as made:
        assert made.testzip() is None
        held = {name: made.read(name) for name in made.namelist()}
    files = [file for sheet in written.sheets for file in (sheet.pdf, sheet.html)]
    assert held == {file.name: file.read_bytes() for file in files}


def test_a_sheet_that_no_longer_belongs_is_taken_back(tmp_path, report):
    first = write_feedback_sheets(tmp_path, report, include_partly=True)
    touched, theirs = first.sheets[1].html, tmp_path / "my own notes.pdf"
    touched.write_text("changed by hand", "utf-8")
    theirs.write_bytes(b"mine")
    again = write_feedback_sheets(tmp_path, report)
    assert again.taken_back == (first.sheets[1].pdf,)
    assert not first.sheets[1].pdf.exists()
    assert touched.exists()
    assert theirs.exists()
    nobody = write_feedback_sheets(tmp_path, class_report(report.learners[2]))
    assert nobody.zip is None
    assert not (tmp_path / "all-feedback-sheets.zip").exists()


def test_a_zip_of_somebody_else_removes_nothing(tmp_path, report):
    outside = tmp_path / "outside.txt"
    outside.write_text("keep", "utf-8")
    folder = tmp_path / "feedback"
    folder.mkdir()
    with ZipFile(folder / "all-feedback-sheets.zip", "w") as made:
        made.writestr("../outside.txt", "keep")
    assert write_feedback_sheets(folder, report).taken_back == ()
    assert outside.exists()
    (folder / "all-feedback-sheets.zip").write_bytes(b"damaged")
    assert write_feedback_sheets(folder, report).taken_back == ()


def test_same_names_get_files_of_their_own(tmp_path):
    twins = [learner_report(id_, "Ana Twin", FULLY) for id_ in ("l1", "L1")]
    written = write_feedback_sheets(tmp_path, class_report(*twins))
    assert [s.pdf.name for s in written.sheets] == ["l1 Ana Twin.pdf", "L1 Ana Twin (2).pdf"]


def test_a_file_that_was_handed_in_is_never_written_over(tmp_path, report):
    one = report.learners[0]
    piece = dataclasses.replace(one.portfolio.pieces[0], file="L01 Nguyễn Thị Ánh.pdf")
    one = dataclasses.replace(one, portfolio=dataclasses.replace(one.portfolio, pieces=(piece,)))
    (tmp_path / piece.file).write_bytes(b"handed in")
    with pytest.raises(ExportError, match="handed in"):
        write_feedback_sheets(
            tmp_path, dataclasses.replace(report, learners=(one,), folder=tmp_path)
        )
    assert (tmp_path / piece.file).read_bytes() == b"handed in"


def test_progress_is_told(tmp_path, report):
    told = []
    write_feedback_sheets(tmp_path, report, progress=lambda *step: told.append(step))
    assert told == [(0, 1, "Nguyễn Thị Ánh")]


def test_sheets_hold_nothing_of_others_nor_of_the_machine(tmp_path):
    learners = [
        learner_report("L01", "Ana First", FULLY),
        learner_report("L02", "Bea Otherwise", (mark("raw", 2), mark("graph", 4))),
    ]
    report = dataclasses.replace(class_report(*learners), folder=tmp_path / "secret folder")
    written = write_feedback_sheets(tmp_path / "out", report)
    for sheet, other in zip(written.sheets, reversed(learners), strict=True):
        for file in (sheet.pdf, sheet.html):
            text = contents(file)
            for absent in (
                other.portfolio.learner.id,
                *other.portfolio.learner.name.split(),
                COPIED,
                DRAFTED,
                EXPLAINED,
                "T. Marker",
                "hand-ins",
                "latitude",
                "secret folder",
                str(tmp_path),
            ):
                assert absent not in text, absent


def test_a_real_class_gives_nothing_away(tmp_path):
    """The sample class through the real session, with a private note and a copied table."""
    folder = tmp_path / "class of one teacher"
    shutil.copytree(SAMPLE, folder)
    session = Session.open(folder, "T. Marker")
    try:
        copied = [
            learner.id
            for learner in session.learners
            if any(finding.check == "copied" for finding in session.findings(learner.id))
        ]
        chosen = [*copied, "24106"]
        for learner in chosen:
            session.accept(learner)
            for row in session.rubric.criteria:  # one handed in a report: what is left to the eye
                if session.mark(learner, row.id) is None:
                    session.set_level(learner, row.id, row.levels[-1].name)
            session.set_note(learner, "Private: ask the tutor.")
        report = session_report(session)
    finally:
        session.close()
    assert copied
    written = write_feedback_sheets(tmp_path / "out", report)
    assert {sheet.learner for sheet in written.sheets} == set(chosen)
    sentences = [
        finding.message
        for one in report.learners
        for finding in one.findings
        if finding.check == "copied"
    ]
    for sheet in written.sheets:
        others = [one for one in report.learners if one.portfolio.learner.id != sheet.learner]
        for file in (sheet.pdf, sheet.html):
            text = contents(file)
            for one in others:
                assert one.portfolio.learner.name not in text
                assert not re.search(rf"(?<![\w.]){one.portfolio.learner.id}(?![\w.])", text)
            for absent in (*sentences, "Private", str(tmp_path), "class of one", "Exif", ".zip"):
                assert absent not in text
            assert "GPS" not in text
