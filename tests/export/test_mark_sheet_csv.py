"""The mark sheet as csv, read back by the csv module and by pandas."""

import csv
import dataclasses
import io

import pandas as pd
import pytest
from export_vectors import FORMULAS

from markbench.export import ExportError, write_mark_sheet_csv
from markbench.model import Learner


@pytest.fixture
def path(tmp_path):
    return tmp_path / "mark_sheet.csv"


def named(report, name):
    one = report.learners[0]
    portfolio = dataclasses.replace(one.portfolio, learner=Learner("L01", name))
    return dataclasses.replace(
        report, learners=(dataclasses.replace(one, portfolio=portfolio), *report.learners[1:])
    )


def test_it_is_rfc_4180_with_a_byte_order_mark(path, report):
    write_mark_sheet_csv(path, named(report, 'Ann "Q", Invented\nsecond line'))
    raw = path.read_bytes()
    assert raw.startswith(b"\xef\xbb\xbfId,Name,Group,Raw data /4,")
    # RFC 4180, section 2: 2. CRLF at the end of each record; 6. and 7. quoting.
    assert raw.endswith(b"\r\n")
    assert b'L01,"Ann ""Q"", Invented\nsecond line",7B' not in raw
    assert b'L01,"Ann ""Q"", Invented\nsecond line",,4,2,4,10,' in raw
    rows = list(csv.reader(io.StringIO(raw.decode("utf-8-sig"), newline=""), strict=True))
    assert {len(row) for row in rows} == {9}
    assert rows[1][1] == 'Ann "Q", Invented\nsecond line'


def test_pandas_reads_marks_as_numbers_and_drafts_as_words(path, report):
    write_mark_sheet_csv(path, report)
    frame = pd.read_csv(path)
    assert list(frame["Name"]) == ["Ödön Ñandú", "Bea Invented", "Cy Empty"]
    assert list(frame["Graph /4"]) == ["2", "draft 2", "to mark"]
    assert list(frame["Total /12"]) == ["10", "1 of 3 marked", "0 of 3 marked"]


@pytest.mark.parametrize("text", FORMULAS)
def test_what_could_run_is_led_by_a_single_quote(path, report, text):
    write_mark_sheet_csv(path, named(report, text))
    rows = list(csv.reader(io.StringIO(path.read_bytes().decode("utf-8-sig"), newline="")))
    name = rows[1][1]
    assert name[0] == "'"
    assert name[1:] == text.replace("\r", "\n").replace("\x00", "␀")


def test_a_genuine_negative_number_stays_a_number(path, report):
    one = report.learners[0]
    marks = {**one.marks, "raw": dataclasses.replace(one.marks["raw"], marks=-0.5)}
    changed = dataclasses.replace(one, marks=marks)
    write_mark_sheet_csv(path, dataclasses.replace(report, learners=(changed,)))
    assert pd.read_csv(path)["Raw data /4"][0] == -0.5


def test_a_folder_in_the_way_is_said_plainly(path, report):
    path.mkdir()
    with pytest.raises(ExportError, match="could not be written"):
        write_mark_sheet_csv(path, report)
    assert list(path.parent.iterdir()) == [path]
