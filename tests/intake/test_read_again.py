"""Reading one learner again must come to the same as reading the whole class again."""

from __future__ import annotations

from pathlib import Path

import pytest
from class_folders import LATER_TABLE, TABLE, MakeClass, zipped

from markbench.intake.corrections import TypedRow, correction_key
from markbench.intake.folder import Settled, read_again, read_class
from markbench.model import ClassWork

SHEET = (
    "id,Length 1 / cm,Time 1 / s,Length 2 / cm,Time 2 / s,Length 3 / cm,Time 3 / s\n"
    "a1,20,8.97,40,12.69,60,15.54\nb2,20,9.01,40,12.75,60,15.60\n"
)
FILES: dict[str, str | bytes] = {
    "class_list.csv": "id,name\na1,Ada Invented\nb2,Ben Made-Up\nc3,Cleo Fabricated\n",
    "Ada Invented/readings.csv": TABLE,
    "Ada Invented/readings v2.csv": LATER_TABLE,
    "Ada Invented/notes.csv": "nothing,to,read\n",
    "Ada Invented/setup.jpg": b"same size",
    "Ada Invented/selfie.jpg": b"same size",
    "Ben Made-Up.zip": zipped({"readings.csv": TABLE, "swing.mp4": b"film"}),
}


def both(folder: Path, work: ClassWork, learner: str, settled: Settled) -> None:
    again = read_again(work, folder, learner, settled)
    assert again == read_class(folder, settled)
    assert again != work


def a_cell(work: ClassWork, learner: str) -> str:
    table = work.portfolios[learner].table
    assert table is not None
    return correction_key(table.readings[2].timings[0].source)


@pytest.mark.parametrize("learner", ["a1", "b2"])
def test_a_correction(make_class: MakeClass, learner: str) -> None:
    folder = make_class(FILES)
    work = read_class(folder)
    for text in ("13.07", "not a time", ""):
        both(folder, work, learner, Settled(corrections={a_cell(work, learner): text}))


def test_typed_rows_and_back(make_class: MakeClass) -> None:
    folder = make_class(FILES)
    work = read_class(folder)
    typed = Settled(typed={"a1": (TypedRow(0.3, 10, (11.0, 11.1)),)})
    both(folder, work, "a1", typed)
    with_typed = read_again(work, folder, "a1", typed)
    assert read_again(with_typed, folder, "a1", Settled()) == work


def test_a_row_of_a_class_sheet(make_class: MakeClass) -> None:
    folder = make_class({"class_list.csv": FILES["class_list.csv"], "all results.csv": SHEET})
    work = read_class(folder)
    both(folder, work, "b2", Settled(corrections={a_cell(work, "b2"): "15.99"}))


def test_what_a_picture_shows(make_class: MakeClass) -> None:
    folder = make_class(FILES)
    work = read_class(folder)
    both(folder, work, "a1", Settled(kinds={"Ada Invented/setup.jpg": "selfie"}))


def test_a_correction_that_cannot_be_read_names_its_cell(make_class: MakeClass) -> None:
    folder = make_class(FILES)
    key = a_cell(read_class(folder), "b2")
    work = read_class(folder, Settled(corrections={key: "1o.4"}))
    (finding,) = [f for f in work.portfolios["b2"].findings if "correction" in f.numbers]
    assert finding.check == "value_not_understood"
    assert finding.numbers["correction"] == "1o.4"
    assert [correction_key(source) for source in finding.sources] == [key]
