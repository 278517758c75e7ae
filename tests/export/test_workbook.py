"""The workbook, read back by another reader than its writer (python-calamine)."""

import dataclasses
import datetime as dt
import os
import zipfile

import openpyxl
import pytest
from export_vectors import FORMULAS
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from python_calamine import CalamineWorkbook

from markbench.export import ExportError, LearnerReport
from markbench.export.plain_text import CELL_LIMIT, for_cell
from markbench.export.workbook import write_workbook
from markbench.model import Learner, Piece, Portfolio, Source
from markbench.physics.reporting import with_uncertainty

SHEETS = [
    "Mark sheet", "Levels and feedback", "Readings", "g recomputed", "Findings", "Evidence",
    "Read me",
]  # fmt: skip


@pytest.fixture
def path(tmp_path):
    return tmp_path / "marks.xlsx"


def read(path, title):
    return CalamineWorkbook.from_path(path).get_sheet_by_name(title).to_python()


def rows_by_heading(path, title):
    head, *rows = read(path, title)
    return [dict(zip(head, row, strict=True)) for row in rows]


def renamed(report, text):
    """The report with ``text`` wherever a learner or teacher may have typed it."""
    one = report.learners[0]
    portfolio = dataclasses.replace(one.portfolio, learner=Learner("L01", text, text))
    marks = {k: dataclasses.replace(m, feedback=text, by=text) for k, m in one.marks.items()}
    changed = dataclasses.replace(one, portfolio=portfolio, marks=marks)
    return dataclasses.replace(report, learners=(changed,))


def test_the_sheets_are_there_each_with_a_heading_and_its_rows(path, report):
    write_workbook(path, report)
    assert CalamineWorkbook.from_path(path).sheet_names == SHEETS
    counts = {title: len(read(path, title)) - 1 for title in SHEETS[:-1]}
    assert counts == {
        "Mark sheet": 3, "Levels and feedback": 9, "Readings": 6, "g recomputed": 3,
        "Findings": 3, "Evidence": 3,
    }  # fmt: skip


def test_marks_are_numbers_drafts_are_words_and_totals_wait(path, report):
    write_workbook(path, report)
    full, part, none = rows_by_heading(path, "Mark sheet")
    assert [full[k] for k in ("Raw data /4", "Graph /4", "Care /4", "Total /12")] == [4, 2, 4, 10]
    assert part["Raw data /4"] == 4
    assert part["Graph /4"] == "draft 2"
    assert part["Care /4"] == "to mark"
    assert part["Total /12"] == "1 of 3 marked"
    assert none["Total /12"] == "0 of 3 marked"
    assert full["Marked by"] == "A. Teacher"
    expected = dt.datetime(2026, 3, 4, 17, 30, tzinfo=dt.UTC).astimezone().replace(tzinfo=None)
    assert full["Last marked"] == expected


def test_a_draft_says_so_in_every_cell_and_its_look_is_not_colour_alone(path, report):
    write_workbook(path, report)
    sheet = openpyxl.load_workbook(path)["Levels and feedback"]
    drafts = [row for row in sheet.iter_rows(min_row=2) if row[6].value == "draft"]
    assert len(drafts) == 1
    for at in (3, 4, 6, 7):
        cell = drafts[0][at]
        assert "draft" in cell.value.lower()
        assert cell.font.italic
        assert cell.fill.fill_type == "solid"
    assert drafts[0][7].value == "[Draft] Your line misses 30 cm. Time it again."
    # An accepted mark replaces its draft altogether and looks like one.
    assert "Superseded" not in str([[c.value for c in row] for row in sheet.iter_rows()])
    assert not sheet["E2"].font.italic
    assert sheet["E2"].data_type == "n"


def test_numbers_are_the_ones_shown_everywhere(path, report):
    write_workbook(path, report)
    row = rows_by_heading(path, "g recomputed")[0]
    # 0.138 96 keeps two figures by the Particle Data Group's rule: 9.80 ± 0.14.
    assert row["g of the line / (m/s²)"] == "9.80 ± 0.14" == with_uncertainty(9.80017, 0.13896)
    assert row["Best g / (m/s²)"] == "9.79 ± 0.07"
    assert (row["Slope / (s²/m)"], row["u(slope) / (s²/m)"]) == (4.03, 0.06)
    assert (row["Intercept / s²"], row["u(intercept) / s²"]) == (-0.019, 0.021)
    assert row["Worth asking about"] == "The counts may be of half swings."
    empty = rows_by_heading(path, "g recomputed")[2]
    assert empty["g of the line / (m/s²)"] == ""


def test_readings_are_shown_as_typed_with_their_cell(path, report):
    write_workbook(path, report)
    row = rows_by_heading(path, "Readings")[2]
    assert (row["Length / m"], row["Length as typed"]) == (0.405, "40.5")
    assert row["Where"] == "L01/readings.xlsx, sheet Sheet1, cell A4"
    sheet = openpyxl.load_workbook(path)["Readings"]
    assert sheet["C4"].number_format == "0.000"  # 40.5 cm as typed is 0.405 m
    assert sheet["E4"].number_format == "0.00"  # stopwatch times to the hundredth


def test_findings_come_weightiest_first_with_where_and_how_often(path, report):
    write_workbook(path, report)
    stray, first, second = rows_by_heading(path, "Findings")
    assert stray["Where"] == "stray.jpg"
    assert (first["Finding"], first["Concern"]) == ("No video.", "look before marking")
    assert second["Honest work"] == "about 1 in 200"
    assert second["Where"] == "L02/readings.xlsx, sheet Sheet1, cell B3"


def test_a_finding_on_many_cells_names_its_file_once(path, report):
    one = report.learners[1]
    sources = tuple(
        Source(*place)
        for place in (
            ("a.xlsx", "S", "B3"),
            ("a.xlsx", "S", "C3"),
            ("b.csv",),
            ("a.xlsx", "S", "B3"),
        )
    )
    finding = dataclasses.replace(one.findings[0], sources=sources)
    changed = dataclasses.replace(one, findings=(finding,))
    write_workbook(path, dataclasses.replace(report, learners=(changed,), unowned=()))
    assert rows_by_heading(path, "Findings")[0]["Where"] == "a.xlsx, sheet S, cells B3, C3\nb.csv"


def test_evidence_there_missing_or_not_told_apart(path, report):
    write_workbook(path, report)
    first, _, nothing = rows_by_heading(path, "Evidence")
    assert [first[k] for k in ("Readings", "Set-up photo", "Selfie", "Swing video")] == [
        "present", "a photo", "a photo", "missing",
    ]  # fmt: skip
    assert first["Handed in"] == dt.datetime(2026, 3, 1, 9, 5)
    assert first["Earlier"] == "L01/old.csv (readings)"
    assert nothing["Readings"] == "missing"


def test_a_file_of_no_bytes_is_not_called_present(path, report):
    one = report.learners[0]
    for size, said in ((0, "empty"), (12, "present")):
        piece = Piece("L01/swing.mp4", "swing_video", "name", size, dt.datetime(2026, 3, 1))
        portfolio = dataclasses.replace(one.portfolio, pieces=(*one.portfolio.pieces, piece))
        changed = dataclasses.replace(one, portfolio=portfolio)
        write_workbook(path, dataclasses.replace(report, learners=(changed,)))
        assert rows_by_heading(path, "Evidence")[0]["Swing video"] == said


def test_the_read_me_names_the_version_the_date_and_every_column(path, report):
    write_workbook(path, report)
    rows = read(path, "Read me")
    text = "\n".join(" ".join(map(str, row)) for row in rows)
    for expected in ("9.8.7", "2026-03-05", "Pendulum & home", "Short rubric", "2026-03-02"):
        assert expected in text
    explained = {(row[0], row[1]) for row in rows}
    assert "Sheet: Read me" not in {about for about, _ in explained}
    for title in SHEETS[:-1]:
        for heading in read(path, title)[0]:
            assert (f"Sheet: {title}", heading) in explained


def test_every_sheet_prints_on_a4_with_repeated_headings_and_filters(path, report):
    write_workbook(path, report)
    book = openpyxl.load_workbook(path)
    for sheet in book:
        assert sheet.page_setup.orientation == "landscape"
        assert int(sheet.page_setup.paperSize) == 9  # A4 in ECMA-376, part 1, 18.3.1.63
        assert sheet.sheet_properties.pageSetUpPr.fitToPage
        assert (sheet.page_setup.fitToWidth, sheet.page_setup.fitToHeight) == (1, 0)
        assert sheet.print_title_rows == "$1:$1"
        assert sheet.auto_filter.ref == sheet.dimensions
        assert sheet.freeze_panes == ("A2" if sheet.title == "Read me" else "C2")
        assert all(cell.alignment.wrap_text for row in sheet.iter_rows() for cell in row)
    assert "&&" in book["Mark sheet"].oddHeader.left.text  # a lone & would begin a code


@pytest.mark.parametrize("text", FORMULAS)
def test_what_could_run_stays_text_and_looks_the_same(path, report, text):
    write_workbook(path, renamed(report, text))
    shown = for_cell(text)
    row = rows_by_heading(path, "Mark sheet")[0]
    assert row["Name"] == row["Group"] == row["Marked by"] == shown
    assert rows_by_heading(path, "Levels and feedback")[0]["Feedback"] == shown
    book = openpyxl.load_workbook(path)
    for sheet, where in (("Mark sheet", "B2"), ("Levels and feedback", "H2")):
        cell = book[sheet][where]
        assert cell.data_type == "s"
        assert cell.quotePrefix  # typed over, it stays text


def test_no_cell_of_the_whole_file_is_a_formula(path, report):
    write_workbook(path, renamed(report, "=1+1"))
    with zipfile.ZipFile(path) as parts:
        for name in parts.namelist():
            if name.startswith("xl/worksheets/"):
                assert b"<f>" not in parts.read(name)
                assert b"<f " not in parts.read(name)


def test_what_xml_cannot_hold_is_made_visible(path, report):
    write_workbook(path, renamed(report, "a\x00b\x1fc\ud800d\ufffee\r\nf _x0041_"))
    row = rows_by_heading(path, "Mark sheet")[0]
    assert row["Name"] == "a␀b␟c\ufffdd\ufffde\nf _x0041_"


@pytest.mark.parametrize("text", ["x" * 40_000, "🧭" * 20_000, "é" * CELL_LIMIT])
def test_a_cell_never_holds_more_than_it_can(path, report, text):
    write_workbook(path, renamed(report, text))
    name = rows_by_heading(path, "Mark sheet")[0]["Name"]
    assert len(name.encode("utf-16-le")) // 2 <= 32_767
    assert name == text or name.endswith("the cell is full)")
    assert name[:16_000] == text[:16_000]


# A cell of nothing but spaces looks empty, and the other reader takes it for empty.
some_text = st.text(
    st.characters(exclude_categories=["Cs"], exclude_characters="\r"), min_size=1
).filter(str.strip)


@settings(
    deadline=None, max_examples=6, suppress_health_check=[HealthCheck.function_scoped_fixture]
)
@given(texts=st.lists(some_text, min_size=1, max_size=60))
def test_any_text_reads_back_as_it_looks(path, report, texts):
    learners = tuple(LearnerReport(Portfolio(Learner("L", text))) for text in texts)
    write_workbook(path, dataclasses.replace(report, learners=learners))
    pictures = {code: 0x2400 + code for code in range(32) if chr(code) not in "\t\n"}
    expected = [text.translate(pictures | {0xFFFE: 0xFFFD, 0xFFFF: 0xFFFD}) for text in texts]
    assert [row["Name"] for row in rows_by_heading(path, "Mark sheet")] == expected


def test_numbers_that_are_not_known_break_nothing(path, report):
    one = report.learners[0]
    row = dataclasses.replace(one.analysis.rows[0], spread_s=float("nan"), g=float("inf"))
    line = dataclasses.replace(
        one.analysis.line, u_slope=float("nan"), u_intercept=float("nan"), u_g=float("nan")
    )
    changed = dataclasses.replace(
        one,
        analysis=dataclasses.replace(one.analysis, rows=(row, *one.analysis.rows[1:]), line=line),
    )
    write_workbook(path, dataclasses.replace(report, learners=(changed,)))
    assert rows_by_heading(path, "Readings")[0]["Spread / s"] == ""
    assert rows_by_heading(path, "g recomputed")[0]["g of the line / (m/s²)"] == "9.8"


def test_rows_are_tall_enough_for_what_is_in_them(path, report):
    """About 64 characters fit on a line of the feedback column, so 400 need seven or so."""
    write_workbook(path, renamed(report, "word " * 80 + "\n" + "word " * 80))
    sheet = openpyxl.load_workbook(path)["Levels and feedback"]
    assert 12 * 15 <= sheet.row_dimensions[2].height <= 409
    files = openpyxl.load_workbook(path)["Evidence"]
    assert files["H2"].value == "L01/readings.xlsx (readings)\nL01/me.jpg (photo)"
    assert files.row_dimensions[2].height >= 2 * 15


def test_an_empty_class_still_makes_a_workbook(path, report):
    write_workbook(path, dataclasses.replace(report, learners=(), unowned=()))
    assert len(read(path, "Mark sheet")) == 1


def test_a_failed_export_leaves_the_old_file_and_nothing_else(path, report, monkeypatch):
    path.write_bytes(b"the old one")
    monkeypatch.setattr(
        os, "replace", lambda *_: (_ for _ in ()).throw(PermissionError(13, "in use"))
    )
    with pytest.raises(ExportError, match="open in another program"):
        write_workbook(path, report)
    assert path.read_bytes() == b"the old one"
    assert [file.name for file in path.parent.iterdir()] == ["marks.xlsx"]


def test_a_missing_folder_is_said_plainly(tmp_path, report):
    with pytest.raises(ExportError, match="no folder nowhere"):
        write_workbook(tmp_path / "nowhere" / "marks.xlsx", report)


@pytest.mark.parametrize("piece", ["marks.xlsx", "marks.xlsx!/inner.csv"])
def test_a_handed_in_file_is_never_written_over(path, report, piece):
    path.write_bytes(b"a learner's own")
    one = LearnerReport(Portfolio(Learner("L01", "A"), earlier=(Piece(piece, "readings"),)))
    own = dataclasses.replace(report, learners=(one,), folder=path.parent)
    with pytest.raises(ExportError, match="handed in"):
        write_workbook(path, own)
    assert path.read_bytes() == b"a learner's own"
