"""No text goes out with a place unfilled; who and what is said in a sentence."""

import csv
import io
import shutil
from contextlib import redirect_stdout
from pathlib import Path
from zipfile import ZipFile

import openpyxl
import pytest

from markbench.cli import main
from markbench.session import Session
from markbench.session.texts import Text

SAMPLE = Path(__file__).parents[2] / "sample_class"
ONE, OTHER = "24106", "24107"


@pytest.fixture(scope="module")
def exported(tmp_path_factory):
    """Two learners marked, one of them with a place that names nothing; and what was said."""
    folder = tmp_path_factory.mktemp("machine") / "class"
    shutil.copytree(SAMPLE, folder)
    session = Session.open(folder, "T. Marker")
    session.accept(OTHER)
    session.set_text(ONE, session.rubric.criteria[0].id, Text(("Add {another_length} xylophone.",)))
    session.accept(ONE)
    name = session.portfolio(ONE).learner.name
    session.close()
    said = io.StringIO()
    with redirect_stdout(said):
        flags = ["--feedback", "--oneroster", "SCH1", "2026T1"]
        assert main(["export", str(folder), *flags], lambda _: 1) == 0
    return folder / "markbench-out", said.getvalue(), name


def test_no_sheet_and_the_reason_by_name(exported):
    out, said, name = exported
    assert not [path.name for path in (out / "feedback").iterdir() if ONE in path.name]
    assert [path.name for path in (out / "feedback").iterdir() if OTHER in path.name]
    assert f"No sheet: {ONE} {name}: “Raw readings”: {{another_length}} is still to be" in said
    assert f"Not sent: {ONE} {name}, “Raw readings”: {{another_length}} is still to be" in said


def test_the_workbook_says_so_in_place_of_the_text(exported):
    out, _, _ = exported
    sheet = openpyxl.load_workbook(out / "marks.xlsx")["Levels and feedback"]
    cells = [str(cell.value) for row in sheet.iter_rows() for cell in row if cell.value]
    assert "[Not to be sent: {another_length} is still to be filled in]" in cells
    assert not [cell for cell in cells if "xylophone" in cell]


def test_no_comment_goes_to_the_school_system(exported):
    out, _, _ = exported
    with ZipFile(out / "oneroster.zip") as made:
        rows = list(csv.DictReader(io.StringIO(made.read("results.csv").decode())))
    comment = next(row["comment"] for row in rows if row["studentSourcedId"] == ONE)
    assert "Raw readings" in comment
    assert "{" not in comment
    assert "xylophone" not in comment
