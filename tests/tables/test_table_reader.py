"""The reader's promises one by one: sources, hints, corrections, guesses, limits."""

from __future__ import annotations

import datetime as dt
import io
import json
import zipfile

import pytest
import xlsxwriter

from markbench.intake.tables import (
    ColumnHints,
    column_letters,
    column_number,
    read_class_sheet,
    read_grids,
    read_readings,
)
from markbench.intake.tables.headings import Heading, understand
from markbench.intake.tables.values import read_value
from markbench.model import Brief, Concern

CSV = b"Length / cm,t1 / s,t2 / s\n20.0,9.0,8.94\n30.0,10.95,11.04\nN = 10,,\n"


@pytest.mark.parametrize(
    ("text", "quantity", "unit", "swings", "mean", "repeat"),
    [
        ("Length, L / cm", "length", "cm", None, False, None),
        ("l (m)", "length", "m", None, False, None),
        ("length in mm", "length", "mm", None, False, None),
        ("Länge in cm", "length", "cm", None, False, None),
        ("time for 10 oscillations", "time", None, 10, False, None),
        ("Time for ten complete swings (s)", "time", "s", 10, False, None),
        ("10T/s", "time", "s", 10, False, None),
        ("t20", "time", None, 20, False, None),
        ("t₂ / s", "time", "s", None, False, 2),
        ("Repeat 3", "trial", None, None, False, 3),
        ("T / s", "period", "s", None, False, None),
        ("T² / s²", "period_squared", "s²", None, False, None),
        ("T^2 (s^2)", "period_squared", "s²", None, False, None),
        ("g / m s^-2", "g", "m/s²", None, False, None),
        ("g", "g", None, None, False, None),
        ("Gravity (g)", "g", None, None, False, None),
        ("mass / g", "other", "g", None, False, None),
        ("m / g", "other", "g", None, False, None),
        ("angle / °", "other", "°", None, False, None),
        ("t̄ / s", "time", "s", None, True, None),
        ("Masa untuk 10 ayunan (s)", "time", "s", 10, False, None),
        ("masa bandul / g", "other", "g", None, False, None),
        ("time for one oscillation / s", "period", "s", None, False, None),
        ("T²/L", "other", None, None, False, None),
        ("4π²L/T²", "other", None, None, False, None),
        ("bob diameter / cm", "other", "cm", None, False, None),
        ("Uncertainty in time / s", "other", "s", None, False, None),
        ("error in length / cm", "other", "cm", None, False, None),
        ("Length from pivot to centre of mass / cm", "length", "cm", None, False, None),
        ("masa (kg)", "other", "kg", None, False, None),
        ("No.", "number", None, None, False, None),
        ("number of swings", "swings", None, None, False, None),
        ("Swings timed", "swings", None, None, False, None),
        ("Oscillations counted", "swings", None, None, False, None),
        ("10 swings timed (s)", "time", "s", 10, False, None),
        ("10 swings #1 (mm:ss:hh)", "time", "s", 10, False, 1),
        ("10 swings no. 2", "time", None, 10, False, 2),
        ("No. 2 / s", "time", "s", None, False, 2),
        ("#", "number", None, None, False, None),
        ("10 Schw. (1)", "time", None, 10, False, 1),
        ("Zeit für 10 Schw. in s", "time", "s", 10, False, None),
        ("20 vib. / s", "time", "s", 20, False, None),
        ("10 drg. (s)", "time", "s", 10, False, None),
        ("10 heilahdusta (s)", "time", "s", 10, False, None),
        ("stopwatch 1", "time", None, None, False, 1),
        ("Stop watch 2 (s)", "time", "s", None, False, 2),
        ("stop / s", "other", "s", None, False, None),
        ("logged time (s)", "time", "s", None, False, None),
        ("log T", "other", None, None, False, None),
        ("Abstand zum Schwerpunkt (cm)", "length", "cm", None, False, None),
    ],
)
def test_headings(text, quantity, unit, swings, mean, repeat):
    heading = understand(text)
    assert (heading.quantity, heading.unit, heading.swings) == (quantity, unit, swings)
    assert (heading.mean, heading.repeat) == (mean, repeat)


@pytest.mark.parametrize("text", ["", "   ", "My pendulum = great", "Ada Quill", "x" * 500])
def test_texts_that_are_no_headings(text):
    assert understand(text) == Heading()


@pytest.mark.parametrize(
    ("cell", "number", "unit", "decimals"),
    [
        ("14.20", 14.2, None, 2),
        ("14,23", 14.23, None, 2),
        ("0,2 m", 0.2, "m", 1),
        ("20 cm", 20.0, "cm", 0),
        ("14.2s", 14.2, "s", 1),
        ("0:14.23", 14.23, "s", 2),
        ("1:03.45", 63.45, "s", 2),
        ("14s23", 14.23, "s", 2),
        ("1'03\"45", 63.45, "s", 2),
        ("1 min 3.45 s", 63.45, "s", 2),
        ("14.2 ± 0.1 s", 14.2, "s", 1),
        (14.2, 14.2, None, None),
        (dt.time(0, 0, 14, 230000), 14.23, "s", None),
        (dt.timedelta(seconds=63, microseconds=450000), 63.45, "s", None),
    ],
)
def test_values(cell, number, unit, decimals):
    value = read_value(cell)
    assert value.number == pytest.approx(number)
    assert (value.unit, value.decimals, value.forms) == (unit, decimals, ())


@pytest.mark.parametrize(
    "cell",
    ["abc", "2O", "14.2.3", "nan", "inf", "#REF!", "1.2.2026", float("nan"), float("inf"), True,
     dt.datetime(2026, 2, 14), dt.date(2026, 2, 14), 1e300, "1e300", "14.2 bananas"],
)  # fmt: skip
def test_cells_that_are_no_numbers_say_why(cell):
    value = read_value(cell)
    assert value.number is None
    assert value.trouble


def test_every_value_remembers_where_it_stood():
    table = read_readings("ada/work.csv", CSV, Brief(), "A1").table
    assert table is not None
    reading = table.readings[1]
    assert (reading.source.file, reading.source.cell, reading.source.raw) == (
        "ada/work.csv", "A3", "30.0",
    )  # fmt: skip
    assert reading.source.understood == "length 30 cm"
    assert (reading.length_unit_m, reading.length_raw_decimals) == (0.01, 1)
    assert [t.decimals for t in table.readings[0].timings] == [1, 2]
    assert [t.source.cell for t in reading.timings] == ["B3", "C3"]
    assert reading.swings_source is not None
    assert reading.swings_source.cell == "A4"
    assert [(h.cell, h.raw) for h in table.headings] == [
        ("A1", "Length / cm"), ("B1", "t1 / s"), ("C1", "t2 / s"),
    ]  # fmt: skip
    assert table.heading_has_unit == (True, True, True)


def test_headings_without_units_are_told_apart():
    outcome = read_readings("a.csv", b"Length,10T / s,No.\n20,9.0,1\n30,11.0,2\n", Brief(), "x")
    assert outcome.table is not None
    assert outcome.table.heading_has_unit == (False, True, True)


def test_an_unreadable_cell_names_its_place_and_what_to_do():
    outcome = read_readings("w.csv", CSV.replace(b"10.95", b"oops"), Brief(), "A1")
    (finding,) = outcome.findings
    assert finding.check == "value_not_understood"
    assert "w.csv" in finding.message
    assert "B3" in finding.message
    assert "oops" in finding.message
    assert finding.ask
    assert (finding.sources[0].cell, finding.sources[0].raw) == ("B3", "oops")
    assert outcome.table is not None
    assert len(outcome.table.readings[1].timings) == 1


def test_the_brief_gives_a_missing_count_and_the_times_may_disagree():
    data = b"Length / cm,t / s\n25,20.05\n45,26.90\n65,32.31\n"  # 20 swings by the law
    outcome = read_readings("w.csv", data, Brief(), "x")
    (finding,) = outcome.findings
    assert outcome.table is not None
    assert [r.swings for r in outcome.table.readings] == [10, 10, 10]
    assert all(r.swings_source is None for r in outcome.table.readings)
    assert finding.check == "swings_guessed"
    assert finding.numbers["fits_better"] == 20
    assert finding.concern is Concern.LOOK


def test_a_unit_that_some_cells_name_is_not_called_missing():
    text = "Faden (cm);10 Schw. (1);10 Schw. (2)\n20;8,95 s;9,02 s\n30;ca. 11;10,97 s\n"
    (finding,) = read_readings("w.csv", text.encode(), Brief(), "x").findings
    assert finding.message == (
        "w.csv: one time names no unit (B3); it was taken in seconds, as others are."
    )
    text = "Länge;t1 (10 Schw.)\n20;8,95 s\n30 cm;10,97 s\n40;12,7 s\n"
    (finding,) = read_readings("w.csv", text.encode(), Brief(), "x").findings
    assert "2 of 3 lengths name no unit (A2, A4)" in finding.message
    assert "taken in centimetres, as others are" in finding.message


def test_columns_guessed_together_are_listed_as_a_sentence():
    text = "Pituus (cm),Mittaus A,Mittaus B\n25,10.10,9.98\n45,13.51,13.42\n65,16.22,16.13\n"
    guessed, *_ = read_readings("w.csv", text.encode(), Brief(), "x").findings
    assert guessed.message == (
        "w.csv: the columns headed “Mittaus A” (B1) and “Mittaus B” (C1) were taken as timings."
    )
    bare = "\n".join(text.splitlines()[1:])
    guessed = read_readings("w.csv", bare.encode(), Brief(), "x").findings[1]
    assert "the columns from B1 and C1 (no heading) were taken as timings" in guessed.message


def test_a_stated_count_is_never_changed():
    data = b"Length / cm,Time for 10 swings / s\n25,20.05\n45,26.90\n65,32.31\n"
    outcome = read_readings("w.csv", data, Brief(), "x")
    assert outcome.findings == ()
    assert outcome.table is not None
    assert [r.swings for r in outcome.table.readings] == [10, 10, 10]


SCRAMBLED = b"a;b;c;d\nfoo;900;31;0.25\nbar;1210;33;0.45\nbaz;1455;35;0.65\n"


def test_a_table_not_understood_keeps_its_cells_for_pointing():
    outcome = read_readings("w.csv", SCRAMBLED, Brief(), "x")
    assert outcome.table is None
    assert [f.check for f in outcome.findings] == ["table_not_understood"]
    assert outcome.grids[0].rows[1] == ("foo", "900", "31", "0.25")
    hints = ColumnHints("D", ("B",), swings=10, length_unit="m", time_unit="ms")
    pointed = read_readings("w.csv", SCRAMBLED, Brief(), "x", hints)
    assert pointed.table is not None
    assert [r.length_m for r in pointed.table.readings] == [0.25, 0.45, 0.65]
    assert [r.timings[0].time_s for r in pointed.table.readings] == pytest.approx(
        [0.9, 1.21, 1.455]
    )
    assert [r.swings for r in pointed.table.readings] == [10, 10, 10]


def test_headings_over_columns_pointed_at_need_a_unit_like_any_other():
    """Whoever says what a column holds says with it that its heading lacks a unit."""
    hints = ColumnHints("D", ("B",), swings=10, length_unit="m", time_unit="ms")
    pointed = read_readings("w.csv", SCRAMBLED, Brief(), "x", hints).table
    assert pointed is not None
    told = dict(zip((h.raw for h in pointed.headings), pointed.heading_has_unit, strict=True))
    assert told == {"b": False, "d": False}


def test_pointing_along_rows_with_bounds():
    data = b"x,0.25,0.45,0.65,9\nn,10,10,20,9\ny,10.1,13.5,32.3,9\n"
    hints = ColumnHints(
        "1", ("3",), along="rows", swings="2", first="B", last="D", length_unit="m", time_unit="s"
    )
    outcome = read_readings("w.csv", data, Brief(), "x", hints)
    assert outcome.table is not None
    assert [(r.length_m, r.swings) for r in outcome.table.readings] == [
        (0.25, 10), (0.45, 10), (0.65, 20),
    ]  # fmt: skip


@pytest.mark.parametrize(
    "hints",
    [ColumnHints("Q", ("B",)), ColumnHints("?", ("B",)), ColumnHints("A", ("B",), sheet="none"),
     ColumnHints("A", ("B",), length_unit="ell"), ColumnHints("A", ())],
)  # fmt: skip
def test_pointing_in_vain_is_a_finding(hints):
    outcome = read_readings("w.csv", SCRAMBLED, Brief(), "x", hints)
    assert outcome.table is None
    assert [f.check for f in outcome.findings] == ["table_not_understood"]


def test_hints_survive_json():
    hints = ColumnHints("D", ("B", "C"), "Sheet 1", "rows", 10, "2", "9", "cm", "s")
    assert ColumnHints.from_json(json.loads(json.dumps(hints.to_json()))) == hints
    with pytest.raises(ValueError, match="along"):
        ColumnHints.from_json({"length": "A", "timings": ["B"], "along": "diagonals"})


def test_the_teachers_correction_of_a_cell_is_read_instead():
    data = CSV.replace(b"10.95", b"oops")
    outcome = read_readings(
        "w.csv", data, Brief(), "x", corrections={"w.csv||B3": "10,95", "other.csv||B2": "1"}
    )
    assert outcome.findings == ()
    assert outcome.table is not None
    assert [t.time_s for t in outcome.table.readings[1].timings] == [10.95, 11.04]
    assert outcome.table.readings[0].timings[0].time_s == 9.0


def test_large_and_hostile_files_are_refused_with_a_finding():
    for data in (b"x" * 20_000_001, _bomb()):
        outcome = read_readings("big.xlsx", data, Brief(), "x")
        assert outcome.table is None
        assert [f.check for f in outcome.findings] == ["unreadable_file"]


def _bomb() -> bytes:
    buffer = io.BytesIO()
    with zipfile.ZipFile(buffer, "w", zipfile.ZIP_DEFLATED) as archive:
        archive.writestr("[Content_Types].xml", "<x/>")
        archive.writestr("xl/worksheets/sheet1.xml", b" " * 201_000_000)
    return buffer.getvalue()


def test_a_very_long_sheet_is_read_in_part():
    data = b"Length / cm,10T / s\n" + b"".join(b"%d,10.1\n" % (20 + i) for i in range(30_000))
    outcome = read_readings("long.csv", data, Brief(), "x")
    assert outcome.findings[0].check == "table_not_understood"
    assert "first" in outcome.findings[0].message
    assert len(outcome.grids[0].rows) <= 2000


def test_a_flood_of_bad_cells_becomes_few_findings():
    data = b"Length / cm,10T / s,10T / s\n" + b"25,oops,10.1\n" * 500
    outcome = read_readings("w.csv", data, Brief(), "x")
    assert len(outcome.findings) < 40
    assert max(float(f.numbers.get("cells", 0)) for f in outcome.findings) > 400


def test_long_cells_are_cut():
    grids = read_grids("w.csv", b"a;" + b"x" * 50_000 + b"\n1;2\n")
    assert len(str(grids[0].rows[0][1])) == 10_000


def test_a_chart_sheet_does_not_disturb():
    buffer = io.BytesIO()
    book = xlsxwriter.Workbook(buffer, {"in_memory": True})
    sheet = book.add_worksheet("Data")
    for row, cells in enumerate([["L / cm", "10T / s"], [25, 10.1], [45, 13.5]]):
        sheet.write_row(row, 0, cells)
    chart = book.add_chart({"type": "line"})
    chart.add_series({"values": "=Data!$B$2:$B$3"})
    book.add_chartsheet("Graph").set_chart(chart)
    book.close()
    outcome = read_readings("w.xlsx", buffer.getvalue(), Brief(), "x")
    assert outcome.findings == ()
    assert outcome.table is not None
    assert [r.length_m for r in outcome.table.readings] == [0.25, 0.45]


def test_a_class_list_is_no_class_sheet():
    assert read_class_sheet("c.csv", b"Name,ID,Class\nAda,1,7B\nBen,2,7B\n", Brief()) is None
    assert read_class_sheet("w.csv", CSV, Brief()) is None
    assert read_class_sheet("w.xlsx", b"junk\0", Brief()) is None


def test_column_names():
    # Spreadsheet columns: Z is the 26th, AA the 27th, XFD the 16,384th and last.
    assert [column_letters(n) for n in (0, 25, 26, 16383)] == ["A", "Z", "AA", "XFD"]
    assert [column_number(n) for n in ("A", "z", "AA", "XFD")] == [0, 25, 26, 16383]
    with pytest.raises(ValueError, match="column"):
        column_number("A1")


def _with_one_more_cell(row: int, column: int) -> bytes:
    held = io.BytesIO()
    book = xlsxwriter.Workbook(held, {"in_memory": True})
    sheet = book.add_worksheet()
    sheet.write_row(0, 0, ["Length / cm", "Time for 10 swings / s"])
    for at, (length_cm, time_s) in enumerate(((20, 8.97), (40, 12.69), (60, 15.54)), 1):
        sheet.write_row(at, 0, [length_cm, time_s])
    sheet.write(row, column, "x")
    book.close()
    return held.getvalue()


@pytest.mark.parametrize(
    ("row", "column", "refused"),
    # The sheet's far corner is XFD1048576; laid out, it would hold 17 thousand million cells.
    [(1048575, 16383, True), (1048575, 30, True), (9998, 30, False), (3, 700, False)],
)
def test_a_stray_cell_too_far_away_is_refused(row: int, column: int, refused: bool) -> None:
    outcome = read_readings("far.xlsx", _with_one_more_cell(row, column), Brief(), "x")
    told = [f.message for f in outcome.findings if f.check == "unreadable_file"]
    assert (outcome.table is None) is refused
    assert any("stray cell" in message for message in told) is refused


def test_a_label_one_space_before_its_value_shifts_no_column():
    text = (
        b"length 20cm   30cm   40cm   50cm   60cm\n"
        b"try 1    9.12s   10.92s   12.70s   14.22s   15.40s\n"
        b"try 2    9.06s   10.98s   12.74s   14.32s   15.60s\n"
    )
    table = read_readings("pasted.txt", text, Brief(), "x").table
    assert table is not None
    assert [round(r.length_m, 3) for r in table.readings] == [0.2, 0.3, 0.4, 0.5, 0.6]
    assert [t.time_s for t in table.readings[0].timings] == [9.12, 9.06]
    assert [t.time_s for t in table.readings[-1].timings] == [15.4, 15.6]


@pytest.mark.parametrize(
    ("number", "angle"),
    [("#", "Angle"), ("Nº", "Ángulo"), ("N°", "Angolo"), ("Lp.", "Kąt"), ("Bil.", "Sudut"),
     ("Nr.", "Hoek"), ("Nr", "Vinkel"), ("Num.", "θ"), ("No", "Mass / g"), ("", "")],
)  # fmt: skip
def test_row_numbers_and_angles_are_never_timings(number, angle):
    rows = [f"{number},Go A,Go B,Cord,{angle}", "1,9.04,9.01,20,10", "2,10.85,10.94,30,10"]
    rows += ["3,12.75,12.56,40,10", "4,14.17,14.26,50,10", "5,15.45,15.65,60,10"]
    table = read_readings("w.csv", "\n".join(rows).encode(), Brief(), "x").table
    assert table is not None
    assert [[t.time_s for t in r.timings] for r in table.readings] == [
        [9.04, 9.01], [10.85, 10.94], [12.75, 12.56], [14.17, 14.26], [15.45, 15.65],
    ]  # fmt: skip


@pytest.mark.parametrize("slip", ["top of bob", "one time mistyped", "whole seconds"])
def test_a_slip_of_the_learners_does_not_hide_a_column_of_times(slip):
    rows = {  # 2π√(L/9.81), ten swings, worked out apart
        "top of bob": ((18, 8.97), (28, 10.99), (38, 12.69), (48, 14.18), (58, 15.54)),
        "one time mistyped": ((20, 8.97), (30, 10.99), (40, 21.69), (50, 14.18), (60, 15.54)),
        "whole seconds": ((20, 9), (30, 11), (40, 13), (50, 14), (60, 16)),
    }[slip]
    text = "Pituus (cm),Mittaus\n" + "\n".join(f"{length},{time}" for length, time in rows)
    table = read_readings("w.csv", text.encode(), Brief(), "x").table
    assert table is not None
    assert [r.timings[0].time_s for r in table.readings] == [time for _, time in rows]


def test_what_is_the_same_at_every_length_is_no_timing_however_near():
    text = "Length (cm),t1 (s),t2 (s),Paino\n40,12.69,12.75,13\n42,13.0,12.96,13\n"
    text += "44,13.31,13.35,13\n46,13.61,13.55,13\n"
    table = read_readings("w.csv", text.encode(), Brief(), "x").table
    assert table is not None
    assert [len(r.timings) for r in table.readings] == [2, 2, 2, 2]
