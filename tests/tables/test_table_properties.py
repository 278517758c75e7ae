"""Any honest table in any layout reads exactly; anything at all is answered, never raised."""

from __future__ import annotations

import csv
import datetime as dt
import io
import math
from dataclasses import dataclass
from pathlib import Path

import xlsxwriter
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from markbench.intake.tables import (
    Cell,
    ColumnHints,
    Grid,
    read_class_sheet,
    read_readings,
)
from markbench.intake.tables.reader import understand_grids
from markbench.model import Brief

# Headings as a learner of each language would write them, kept apart from the word list of
# the package: length, time for {n} swings, trial, mean.
LANGUAGES = {
    "en": ("Length", "Time for {n} oscillations", "Trial", "Mean time"),
    "ms": ("Panjang", "Masa untuk {n} ayunan", "Percubaan", "Purata masa"),
    "fr": ("Longueur", "Durée de {n} oscillations", "Essai", "Temps moyen"),
    "de": ("Länge", "Zeit für {n} Schwingungen", "Messung", "Mittlere Zeit"),
    "es": ("Longitud", "Tiempo de {n} oscilaciones", "Ensayo", "Tiempo medio"),
    "it": ("Lunghezza", "Tempo di {n} oscillazioni", "Prova", "Tempo medio"),
    "pt": ("Comprimento", "Tempo de {n} oscilações", "Tentativa", "Tempo médio"),
    "nl": ("Lengte", "Tijd voor {n} slingeringen", "Meting", "Gemiddelde tijd"),
    "pl": ("Długość", "Czas {n} wahnięć", "Próba", "Średni czas"),
    "no": ("Lengde", "Tid for {n} svingninger", "Forsøk", "Gjennomsnittstid"),
}
UNIT_FORMS = ("{q} / {u}", "{q} ({u})", "{q} [{u}]", "{q}, {u}", "{q}/{u}")
METRES = {"mm": 0.001, "cm": 0.01, "m": 1.0}


@dataclass(frozen=True)
class Table:
    """An honest table: lengths in mm, timings in hundredths of a second."""

    lengths_mm: tuple[int, ...]
    timings_cs: tuple[tuple[int, ...], ...]
    swings: int


@st.composite
def tables(draw: st.DrawFn) -> Table:
    lengths = draw(st.lists(st.integers(50, 1500), min_size=3, max_size=8, unique=True))
    swings = draw(st.sampled_from((5, 10, 20)))
    repeats = draw(st.integers(1, 4))
    timings = []
    for length in lengths:
        # T = 2π√(L/g), each timing off by up to 0.3 s (hand timing, common practice).
        exact = swings * 2 * math.pi * math.sqrt(length / 1000 / 9.81)
        timings.append(
            tuple(round(100 * exact) + draw(st.integers(-30, 30)) for _ in range(repeats))
        )
    return Table(tuple(lengths), tuple(timings), swings)


@dataclass(frozen=True)
class Style:
    language: str
    unit: str
    unit_form: str
    comma: bool
    delimiter: str
    encoding: str
    layout: str
    unit_in_cells: bool
    row_numbers: bool
    means: bool
    title: bool


@st.composite
def styles(draw: st.DrawFn) -> Style:
    comma = draw(st.booleans())
    return Style(
        language=draw(st.sampled_from(sorted(LANGUAGES))),
        unit=draw(st.sampled_from(sorted(METRES))),
        unit_form=draw(st.sampled_from(UNIT_FORMS)),
        comma=comma,
        delimiter=draw(st.sampled_from((";", "\t", "|") if comma else (";", "\t", "|", ","))),
        encoding=draw(st.sampled_from(("utf-8", "utf-8-sig", "utf-16", "utf-16-be"))),
        layout=draw(st.sampled_from(("wide", "long", "turned", "two rows"))),
        unit_in_cells=draw(st.booleans()),
        row_numbers=draw(st.booleans()),
        means=draw(st.booleans()),
        title=draw(st.booleans()),
    )


def write(table: Table, style: Style) -> list[list[str]]:
    """The table as rows of text, as a learner with this style would type it."""
    length_word, time_word, trial_word, mean_word = LANGUAGES[style.language]
    time_word = time_word.format(n=table.swings)
    places = {"mm": 0, "cm": 1, "m": 3}[style.unit]

    def number(value: float, decimals: int) -> str:
        text = f"{value:.{decimals}f}"
        return text.replace(".", ",") if style.comma else text

    def headed(quantity: str, unit: str) -> str:
        return quantity if style.unit_in_cells else style.unit_form.format(q=quantity, u=unit)

    lengths = [
        number(mm / 1000 / METRES[style.unit], places) + f" {style.unit}" * style.unit_in_cells
        for mm in table.lengths_mm
    ]
    times = [
        [number(cs / 100, 2) + " s" * style.unit_in_cells for cs in row] for row in table.timings_cs
    ]
    means = [number(sum(row) / len(row) / 100, 2) for row in table.timings_cs]
    repeats = range(1, len(times[0]) + 1)
    length_head = headed(length_word, style.unit)
    if style.layout == "long":
        rows = [[length_head, trial_word, headed(time_word, "s")]]
        for length, row in zip(lengths, times, strict=True):
            rows += [[length, str(k), time] for k, time in enumerate(row, 1)]
    else:
        if style.layout == "two rows":
            blank = [""] * (len(times[0]) - 1)
            rows = [
                [length_head, headed(time_word, "s"), *blank],
                ["", *(f"{trial_word} {k}" for k in repeats)],
            ]
        else:
            heads = [headed(f"{time_word}, {trial_word} {k}", "s") for k in repeats]
            rows = [[length_head, *heads]]
        rows += [[length, *row] for length, row in zip(lengths, times, strict=True)]
        if style.means:
            for i, row in enumerate(rows):
                first = len(rows) - len(means)
                row.append(
                    means[i - first]
                    if i >= first
                    else style.unit_form.format(q=mean_word, u="s")
                    if i == 0
                    else ""
                )
        if style.row_numbers:
            first = len(rows) - len(lengths)
            for i, row in enumerate(rows):
                row.insert(0, str(i - first + 1) if i >= first else "No." if i == 0 else "")
        if style.layout == "turned":
            rows = [list(row) for row in zip(*rows, strict=True)]
    if style.title:
        width = len(rows[0])
        rows = [["My work", *[""] * (width - 1)], [""] * width, *rows]
    return rows


@given(tables(), styles())
@settings(max_examples=150, deadline=None, derandomize=True)
def test_an_honest_table_reads_exactly(table: Table, style: Style):
    buffer = io.StringIO()
    csv.writer(buffer, delimiter=style.delimiter, lineterminator="\n").writerows(
        write(table, style)
    )
    text = buffer.getvalue()
    data = text.encode(style.encoding)
    outcome = read_readings("t.csv", data, Brief(), "x")
    assert outcome.table is not None, (text, outcome.findings)
    got = [
        (r.length_m, r.swings, tuple(t.time_s for t in r.timings)) for r in outcome.table.readings
    ]
    want = [
        (mm / 1000, table.swings, tuple(cs / 100 for cs in row))
        for mm, row in zip(table.lengths_mm, table.timings_cs, strict=True)
    ]
    assert len(got) == len(want), text
    for (length, swings, times), (length_m, count, times_s) in zip(got, want, strict=True):
        assert math.isclose(length, length_m, rel_tol=1e-9), text
        assert swings == count, text
        assert len(times) == len(times_s), text
        assert all(math.isclose(a, b, rel_tol=1e-9) for a, b in zip(times, times_s, strict=True))
    # Nothing was left to guess but, in cells with units, nothing either.
    assert not [f for f in outcome.findings if f.check == "value_not_understood"], text


@given(tables(), st.sampled_from(sorted(METRES)), st.booleans())
@settings(max_examples=40, deadline=None, derandomize=True)
def test_an_honest_workbook_reads_exactly(table: Table, unit: str, merged: bool):
    buffer = io.BytesIO()
    book = xlsxwriter.Workbook(buffer, {"in_memory": True})
    sheet = book.add_worksheet("My data")
    repeats = len(table.timings_cs[0])
    if merged and repeats > 1:
        sheet.merge_range(0, 0, 1, 0, f"Length / {unit}")
        sheet.merge_range(0, 1, 0, repeats, f"Time for {table.swings} swings / s")
        sheet.write_row(1, 1, range(1, repeats + 1))
        start = 2
    else:
        sheet.write_row(0, 0, [f"Length / {unit}", *[f"{table.swings}T / s"] * repeats])
        start = 1
    for i, (mm, row) in enumerate(zip(table.lengths_mm, table.timings_cs, strict=True), start):
        sheet.write_row(i, 0, [mm / 1000 / METRES[unit], *(cs / 100 for cs in row)])
    book.close()
    outcome = read_readings("t.xlsx", buffer.getvalue(), Brief(), "x")
    assert outcome.table is not None
    assert outcome.findings == ()
    assert [r.swings for r in outcome.table.readings] == [table.swings] * len(table.lengths_mm)
    for reading, mm, row in zip(
        outcome.table.readings, table.lengths_mm, table.timings_cs, strict=True
    ):
        assert math.isclose(reading.length_m, mm / 1000, rel_tol=1e-9)
        assert [t.time_s for t in reading.timings] == [cs / 100 for cs in row]


@given(tables(), st.sampled_from(("mm", "cm", "m")))
@settings(max_examples=150, deadline=None, derandomize=True)
def test_a_missing_unit_is_found_by_the_law(table: Table, unit: str):
    rows = [["Length", *[f"{table.swings}T / s"] * len(table.timings_cs[0])]]
    for mm, times in zip(table.lengths_mm, table.timings_cs, strict=True):
        rows.append([f"{mm / 1000 / METRES[unit]:g}", *(f"{cs / 100:.2f}" for cs in times)])
    data = "\n".join(";".join(row) for row in rows).encode()
    outcome = read_readings("t.csv", data, Brief(), "x")
    assert outcome.table is not None
    assert [f.check for f in outcome.findings] == ["unit_guessed"]
    assert outcome.findings[0].numbers["unit"] == unit
    assert [round(r.length_m * 1000) for r in outcome.table.readings] == list(table.lengths_mm)


TEXTS = st.sampled_from(
    (
        "Length / cm", "l (m)", "t1 / s", "t2", "Trial 1", "T", "T²", "g", "mean", "20 cm", "14.2",
        "Time for 10 swings", "abc", "-", "0:14.23", "14:23", "00:14:23", "N = 10", "g = 9.8 m/s²",
        "#DIV/0!", "Length = 20 cm", "1", "2", "nan", "Name", "Student ID", "No.", "14,2 s", '"',
    )
)  # fmt: skip
CELLS: st.SearchStrategy[Cell] = st.one_of(
    st.just(""),
    TEXTS,
    st.floats(),
    st.floats(0.1, 100),
    st.integers(-5, 10**30),
    st.booleans(),
    st.text(max_size=30),
    st.times(),
    st.timedeltas(),
    st.datetimes(),
    st.dates(dt.date(1900, 1, 1)),
)


@st.composite
def grids(draw: st.DrawFn) -> Grid:
    width = draw(st.integers(1, 7))
    rows = draw(
        st.lists(st.lists(CELLS, min_size=width, max_size=width).map(tuple), min_size=0, max_size=9)
    )
    corners = st.tuples(st.integers(0, 12), st.integers(0, 12))
    merged = draw(st.lists(st.tuples(corners, corners), max_size=3))
    missing = draw(
        st.lists(st.tuples(st.integers(0, 9), st.integers(0, 7), st.just("=A1")), max_size=3)
    )
    return Grid("f", "s", tuple(rows), tuple(merged), tuple(missing))


@given(grids())
@settings(max_examples=150, deadline=None, derandomize=True)
def test_any_grid_gives_a_table_or_a_finding(grid: Grid):
    for hints in (
        None,
        ColumnHints("A", ("B", "C")),
        ColumnHints("1", ("2",), along="rows", swings="3"),
        ColumnHints("ZZ", ("?",), sheet="none"),
    ):
        table, findings = understand_grids("f", (grid,), Brief(), "x", hints)
        assert table is not None or findings
        if table is not None:
            assert all(
                math.isfinite(r.length_m) and r.length_m > 0 and r.swings >= 1 and r.timings
                for r in table.readings
            )
            assert all(
                math.isfinite(t.time_s) and t.time_s > 0 for r in table.readings for t in r.timings
            )
            count = len(table.readings)
            assert all(o.reading is None or o.reading < count for o in table.own_values)


@given(st.one_of(st.binary(max_size=300), st.text(max_size=300).map(str.encode)))
@settings(max_examples=150, deadline=None, derandomize=True)
def test_any_bytes_give_a_table_or_a_finding(data: bytes):
    outcome = read_readings("f.xlsx", data, Brief(), "x")
    assert outcome.table is not None or outcome.findings
    read_class_sheet("f.xlsx", data, Brief())


SAMPLES = sorted(
    path
    for path in (Path(__file__).parent / "samples").iterdir()
    if path.suffix in (".xlsx", ".xls", ".ods", ".csv")
)


@given(
    st.sampled_from(SAMPLES),
    st.lists(st.tuples(st.floats(0, 1), st.integers(0, 255)), min_size=1, max_size=8),
)
@settings(
    max_examples=200, deadline=None, derandomize=True,
    suppress_health_check=[HealthCheck.too_slow],
)  # fmt: skip
def test_damaged_files_are_answered(path: Path, damage: list[tuple[float, int]]):
    data = bytearray(path.read_bytes())
    for where, byte in damage:
        data[int(where * (len(data) - 1))] = byte
    outcome = read_readings(path.name, bytes(data), Brief(), "x")
    assert outcome.table is not None or outcome.findings
