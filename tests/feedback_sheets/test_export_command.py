"""The command line writes what is asked for, and the whole folder gives nothing private away."""

import io
import shutil
from contextlib import redirect_stdout
from pathlib import Path
from zipfile import ZipFile, is_zipfile

import pytest
from invented_sheets import read_back

from markbench.cli import main
from markbench.session import Session

SAMPLE = Path(__file__).parents[2] / "sample_class"


def export(folder, *flags):
    said = io.StringIO()
    with redirect_stdout(said):
        assert main(["export", str(folder), *flags], lambda _: 1) == 0
    return said.getvalue()


@pytest.fixture(scope="module")
def exported(tmp_path_factory):
    """The sample class with one learner marked, exported whole; and what was said."""
    folder = tmp_path_factory.mktemp("machine") / "class"
    shutil.copytree(SAMPLE, folder)
    session = Session.open(folder, "T. Marker")
    session.accept("24106")
    session.set_note("24106", "Private: ask the tutor.")
    session.close()
    return folder, export(folder, "--feedback", "--oneroster", "SCH1", "2026T1", "--audit")


def insides(name, data):
    """Every piece of a file: its bytes, its members where it is an archive, its text as PDF."""
    yield name, data
    if name.endswith(".pdf"):
        yield name, read_back(data).encode()
    if is_zipfile(io.BytesIO(data)):
        with ZipFile(io.BytesIO(data)) as made:
            for member in made.namelist():
                yield from insides(f"{name}!/{member}", made.read(member))


def test_everything_asked_for_is_written(exported):
    folder, said = exported
    out = folder / "markbench-out"
    assert {path.name for path in out.iterdir()} == {
        "marks.xlsx",
        "mark_sheet.csv",
        "feedback",
        "oneroster.zip",
        "audit.csv",
        "audit.txt",
        "what-changed.txt",
        "export-record.json",
    }
    assert sorted(path.suffix for path in (out / "feedback").iterdir()) == [".html", ".pdf", ".zip"]
    assert "Written: 1 feedback sheets" in said
    assert "No sheet: 24101 Amara Okonjo-Vale: not marked yet." in said


def test_no_note_no_path_and_no_place_in_any_byte_of_it(exported):
    folder, _ = exported
    searched = [
        piece
        for path in (folder / "markbench-out").rglob("*")
        if path.is_file()
        for piece in insides(path.name, path.read_bytes())
    ]
    assert any(name == "marks.xlsx!/xl/worksheets/sheet1.xml" for name, _ in searched)
    for name, data in searched:
        for absent in (b"ask the tutor", str(folder.parent).encode(), b"GPS", b"Exif\0"):
            assert absent not in data, name


def test_second_export_says_what_changed(exported):
    folder, _ = exported
    session = Session.open(folder, "T. Marker")
    criterion = session.rubric.criteria[0]
    session.set_level("24106", criterion.id, criterion.levels[0].name)
    session.close()
    assert "changes, listed in what-changed.txt" in export(folder)
    text = (folder / "markbench-out" / "what-changed.txt").read_text("utf-8")
    change = f"24106 Farid Al-Hazimi: {criterion.title} · level: Partial → Complete"
    assert change in text
