"""The hostile things a class folder may hold, one by one, each answered and each in bounds.

Others of the list are held elsewhere: paths climbing out of a zip, links within it, lying
sizes and plain bombs in ``tests/intake/test_tree.py``; what a spreadsheet would run, going
out, in ``tests/export``; file names going out in ``tests/feedback_sheets``.
"""

from __future__ import annotations

import contextlib
import io
import os
import struct
import time
import zlib

import av
import hostile_seeds as seeds
import numpy as np
import pytest
import xlsxwriter
from watching import watched

from markbench.cli import main
from markbench.evidence.picture import PictureError, read_header, strip_metadata
from markbench.evidence.video.judge import measure_swing
from markbench.intake.class_list import read_class_list
from markbench.intake.folder import read_class
from markbench.intake.tables import TableOutcome, read_readings
from markbench.intake.tree import walk
from markbench.model import Brief
from markbench.rubric import RubricError, find_rubric
from markbench.ui.portfolio.pictures import load_picture

SHEET, STRINGS = "xl/worksheets/sheet1.xml", "xl/sharedStrings.xml"
LIMIT_S = 10.0


def read(data: bytes, name: str = "t.xlsx") -> TableOutcome:
    """Read within the limit of time (of the processor: the machine may be busy)."""
    start = time.process_time()
    outcome = read_readings(name, data, Brief(), "A1")
    assert time.process_time() - start < LIMIT_S
    assert outcome.table is not None or outcome.findings
    return outcome


def messages(outcome: TableOutcome) -> str:
    return " ".join(finding.message for finding in outcome.findings)


# -- spreadsheets ------------------------------------------------------------------------


def million_rows() -> bytes:
    rows = b"".join(
        b'<row r="%d"><c r="A%d"><v>20</v></c><c r="B%d"><v>9</v></c></row>' % (n, n, n)
        for n in range(1, 1_000_001)
    )
    head, tail = seeds.part_of("xlsx", SHEET).split(b"<sheetData>")
    tail = tail[tail.index(b"</sheetData>") :]
    return seeds.zipped({**seeds._members("xlsx"), SHEET: head + b"<sheetData>" + rows + tail})


def test_a_spreadsheet_of_a_million_rows():
    data = million_rows()
    assert "far larger than a table" in messages(read(data))
    found = read_class_list("class_list.xlsx", data)
    assert found is not None
    assert "far larger" in found.problems[0].message


def test_a_text_file_of_a_million_rows():
    data = seeds.READINGS + b"25,10,10,1\n" * 1_000_000
    outcome = read(data, "t.csv")
    assert "only its first" in messages(outcome)
    start = time.process_time()
    found = read_class_list("class_list.csv", seeds.CLASS_LIST + b"Z,Zed,,\n" * 1_000_000)
    assert time.process_time() - start < LIMIT_S
    assert found is not None
    assert found.learners[0].name == "Ada Invented"


def test_a_stray_cell_at_the_far_corner_of_a_class_list():
    held = io.BytesIO()
    book = xlsxwriter.Workbook(held, {"in_memory": True})
    sheet = book.add_worksheet()
    sheet.write_row(0, 0, ["id", "name"])
    sheet.write(1048575, 16383, "x")
    book.close()
    found = read_class_list("class_list.xlsx", held.getvalue())
    assert found is not None
    assert "stray cell" in found.problems[0].message


@pytest.mark.parametrize("kind", ["laughs", "outside"])
@pytest.mark.parametrize("part", [("xlsx", STRINGS), ("xlsx", SHEET), ("ods", "content.xml")])
def test_entity_tricks_are_neither_unfolded_nor_followed(kind, part, tmp_path):
    secret = tmp_path / "secret.txt"
    secret.write_text("a secret of the machine")
    if kind == "laughs":
        levels = "".join(f'<!ENTITY a{n} "{f"&a{n - 1};" * 10}">' for n in range(1, 12))
        declared = f'<!DOCTYPE x [<!ENTITY a0 "ha">{levels}]>'
    else:
        declared = f'<!DOCTYPE x [<!ENTITY a11 SYSTEM "{secret.as_uri()}">]>'
    sound = seeds.part_of(*part)
    head, end, rest = sound.partition(b"?>")
    for place in (b"<t>", b"<v>", b"<text:p>"):
        rest = rest.replace(place, place + b"&a11;", 3)
    data = seeds.with_part(*part, head + end + declared.encode() + rest)
    with watched(tmp_path / "nothing") as touched:
        outcome = read(data, f"t.{part[0]}")
    assert touched == []
    cells = [str(cell) for grid in outcome.grids for row in grid.rows for cell in row]
    assert sum(map(len, cells)) < 10_000
    assert "secret of the machine" not in " ".join(cells)


def test_a_cell_of_ten_megabytes():
    long = b"9" * 10_000_000
    text = read(seeds.HEAD.encode() + long + b",9.0,9.1,1\n" + seeds.ROWS.encode(), "t.csv")
    assert text.table is None or len(text.table.readings) == 4
    strings = seeds.part_of("xlsx", STRINGS)
    held = seeds.zipped(
        {**seeds._members("xlsx"), STRINGS: strings.replace(b"<t>", b"<t>" + long, 1)}
    )
    book = read(held)
    assert max(len(str(c)) for grid in book.grids for row in grid.rows for c in row) <= 10_000
    found = read_class_list("class_list.csv", b"id,name\n1,Ada " + long + b"\n2,Ben\n")
    assert found is not None
    assert [len(learner.name) < 2000 for learner in found.learners] == [True, True]


def workbook(*cells: tuple[int, int, object]) -> bytes:
    held = io.BytesIO()
    book = xlsxwriter.Workbook(held, {"in_memory": True, "nan_inf_to_errors": True})
    sheet = book.add_worksheet()
    day = book.add_format({"num_format": "yyyy-mm-dd"})
    sheet.write_row(0, 0, ["Length / cm", "Time for 10 swings / s"])
    for row, (length_cm, time_s) in enumerate(((20, 8.97), (40, 12.69), (60, 15.54)), 1):
        sheet.write_row(row, 0, [length_cm, time_s])
    for row, column, what in cells:
        if what == "date":
            sheet.write_number(row, column, 46000, day)
        elif isinstance(what, str):
            sheet.write_formula(row, column, what, value="")
        else:
            sheet.write(row, column, what)
    book.close()
    return held.getvalue()


@pytest.mark.parametrize("what", ["=B2*1", "=1/0", '=HYPERLINK("http://x")', "date"])
def test_a_formula_without_its_value_or_a_date_is_asked_about(what):
    outcome = read(workbook((2, 1, what)))
    assert outcome.table is not None
    assert [r.length_m for r in outcome.table.readings] == [0.2, 0.6]
    assert "value_not_understood" in [finding.check for finding in outcome.findings]


@pytest.mark.parametrize("what", [float("nan"), float("inf"), float("-inf")])
def test_what_is_no_number_in_a_workbook_is_asked_about(what):
    outcome = read(workbook((2, 1, what)))
    assert outcome.table is not None
    assert [r.length_m for r in outcome.table.readings] == [0.2, 0.6]
    assert outcome.findings


@pytest.mark.parametrize("what", ["nan", "inf", "-inf", "1e999", "9e99", "∞", "-9.1", "0", "1e-30"])
def test_what_is_no_time_in_a_text_is_asked_about(what):
    outcome = read(f"Length / cm,10T / s\n20,8.97\n40,{what}\n60,15.54\n".encode(), "t.csv")
    assert outcome.table is not None
    assert [r.length_m for r in outcome.table.readings] == [0.2, 0.6]
    assert "value_not_understood" in [finding.check for finding in outcome.findings]


PROGRAMS = {
    "linux": b"\x7fELF\x02\x01\x01" + bytes(range(256)) * 40,
    "windows": b"MZ\x90\0\x03\0\0\0\x04\0\0\0\xff\xff" + bytes(range(256)) * 40,
    "shell": b"#!/bin/sh\ntouch ran-by-markbench\n",
    "python": b"import os\nos.system('touch ran-by-markbench')\n",
}


@pytest.mark.parametrize("kind", PROGRAMS)
def test_a_csv_that_is_a_program_is_read_as_text_at_most(kind, tmp_path):
    with watched(tmp_path) as touched:
        outcome = read(PROGRAMS[kind], "readings.csv")
        read_class_list("class_list.csv", PROGRAMS[kind])
    assert outcome.table is None
    assert touched == []


# -- zip files, links and names ----------------------------------------------------------


def test_zips_within_zips_within_zips_are_opened_once_and_no_deeper(tmp_path):
    data = b"Length,T\n" * 10
    for depth in range(60):
        data = seeds.zipped({f"{depth}.zip" if depth else "t.csv": data})
    (tmp_path / "deep.zip").write_bytes(data)
    tree = walk(tmp_path)
    assert [one.file for one in tree.found] == ["deep.zip!/59.zip!/58.zip"]
    assert read_class(tmp_path).problems is not None


def test_many_small_bombs_side_by_side(tmp_path):
    bomb = seeds.zipped({"a.csv": b"0" * 25_000_000})
    (tmp_path / "many.zip").write_bytes(seeds.zipped({f"{n}.zip": bomb for n in range(40)}))
    start = time.process_time()
    tree = walk(tmp_path)
    assert time.process_time() - start < LIMIT_S
    assert len(tree.problems) == 40
    assert all("times its size" in problem.message for problem in tree.problems)


@pytest.mark.skipif(os.name == "nt", reason="links need rights on Windows")
def test_links_that_point_outside_are_not_read(tmp_path):
    outside = tmp_path / "outside"
    folder = tmp_path / "class"
    outside.mkdir()
    folder.mkdir()
    (outside / "brief.toml").write_text('title = "Somebody else\'s"')
    (outside / "own.toml").write_bytes(seeds.rubrics()[0])
    (outside / "class_list.csv").write_bytes(seeds.CLASS_LIST)
    for name in ("brief.toml", "own.toml", "class_list.csv"):
        os.symlink(outside / name, folder / name)
    with watched(folder) as touched:
        work = read_class(folder)
    assert touched == []
    assert work.brief == Brief()
    assert work.learners == ()
    told = [problem.message for problem in work.problems]
    assert sum("outside the class folder" in message for message in told) == 3
    with pytest.raises(RubricError, match="outside the class folder"):
        find_rubric("own", folder)


@pytest.mark.skipif(not hasattr(os, "mkfifo"), reason="there are no pipes of this kind here")
def test_pipes_that_never_end_are_not_waited_for(tmp_path):
    for name in ("brief.toml", "class_list.csv", "Ada readings.xlsx"):
        os.mkfifo(tmp_path / name)
    assert read_class(tmp_path).brief == Brief()


ODD_NAMES = (
    "Ada\x1b[2J\x1b]0;owned\x07 readings.csv",
    "Ada \u202evsc.sgnidaer\u202c.csv",
    "Ada \u200f\u2066readings\u2069.csv",
    "Ada\nreadings\r.csv",
    "CON.csv",
    "Ada readings. .csv ",
    'Ada <b>"readings"|?*.csv',
    "Ada\udce9 readings.csv",
)


@pytest.mark.skipif(os.name == "nt", reason="Windows refuses such names itself")
def test_names_with_control_bidirectional_and_reserved_characters(tmp_path):
    folder = tmp_path / "class"
    folder.mkdir()
    (folder / "class_list.csv").write_bytes(seeds.CLASS_LIST)
    for name in ODD_NAMES:
        (folder / name).write_bytes(seeds.READINGS)
    (folder / "zipped.zip").write_bytes(
        seeds.zipped({name: seeds.READINGS for name in ODD_NAMES if "\udce9" not in name})
    )
    said = io.StringIO()
    with contextlib.redirect_stdout(said):
        assert main(["check", str(folder)], lambda _: 1) == 0
        assert main(["export", str(folder)], lambda _: 1) == 0
    text = said.getvalue()
    assert "Ada<1B>[2J<1B>]0;owned<07> readings" in " ".join(text.split())
    for character in ("\x1b", "\x07", "\r", "\u202e", "\u2066", "\u200f"):
        assert character not in text, ascii(character)


def test_a_name_in_brackets_is_a_name_on_the_terminal(tmp_path):
    (tmp_path / "class_list.csv").write_text("id,name\n1,[/red] Ada\n2,[b]Ben :ok:\n")
    said = io.StringIO()
    with contextlib.redirect_stdout(said):
        assert main(["check", str(tmp_path)], lambda _: 1) == 0
    assert "[/red] Ada" in said.getvalue()
    assert "[b]Ben :ok:" in said.getvalue()


# -- photos and films --------------------------------------------------------------------


def png(width: int, height: int) -> bytes:
    def chunk(kind: bytes, data: bytes) -> bytes:
        return (
            struct.pack(">I", len(data)) + kind + data + struct.pack(">I", zlib.crc32(kind + data))
        )

    head = struct.pack(">IIBBBBB", width, height, 8, 2, 0, 0, 0)
    rows = chunk(b"IDAT", zlib.compress(bytes(1000)))
    return b"\x89PNG\r\n\x1a\n" + chunk(b"IHDR", head) + rows + chunk(b"IEND", b"")


def jpeg(width: int, height: int) -> bytes:
    data = seeds.photos()[0]
    at = data.index(b"\xff\xc0") + 5
    return data[:at] + struct.pack(">HH", height, width) + data[at + 4 :]


@pytest.mark.parametrize("data", [png(32_000, 32_000), png(1, 2**31 - 1), jpeg(65_000, 65_000)])
def test_a_picture_of_a_billion_pixels(data, tmp_path):
    start = time.process_time()
    with pytest.raises(PictureError, match=r"more than can be opened|not a JPEG"):
        read_header(data)
    with pytest.raises(PictureError):
        strip_metadata(data)
    (tmp_path / "setup.png").write_bytes(data)
    with pytest.raises(ValueError, match="cannot be opened"):
        load_picture(tmp_path, "setup.png")
    assert time.process_time() - start < LIMIT_S


def film(step: int, frames: int = 30) -> bytes:
    held = io.BytesIO()
    with av.open(held, "w", format="mp4") as out:
        stream = out.add_stream("mpeg4", rate=30)
        stream.width, stream.height, stream.pix_fmt = 64, 48, "yuv420p"
        for n in range(frames):
            frame = av.VideoFrame.from_ndarray(np.full((48, 64, 3), n, np.uint8), format="rgb24")
            frame.pts = n * step
            out.mux(stream.encode(frame))
        out.mux(stream.encode())
    return held.getvalue()


@pytest.mark.parametrize("step", [30 * 3600, 30 * 60])
def test_a_film_that_claims_to_last_for_days(step, tmp_path):
    (tmp_path / "film").write_bytes(film(step))
    start = time.process_time()
    found = measure_swing(tmp_path / "film")
    assert time.process_time() - start < LIMIT_S
    assert not found.accepted
    assert found.message


@pytest.mark.parametrize("share", [0.1, 0.5, 0.9, 0.99])
@pytest.mark.parametrize("number", range(4))
def test_a_truncated_film(share, number, tmp_path):
    whole = seeds.films()[number]
    (tmp_path / "film").write_bytes(whole[: int(share * len(whole))])
    found = measure_swing(tmp_path / "film")
    assert not found.accepted
    assert found.message
