"""The many ways in which learners lay out a table of readings, each as a file's bytes.

``LAYOUTS`` maps a layout's name to its ending and its writer. Every writer is free of the
clock, so that the same table gives the same bytes.
"""

from __future__ import annotations

import datetime as dt
import io
import zipfile
from collections.abc import Callable, Sequence
from dataclasses import dataclass

import xlsxwriter
from odf.opendocument import OpenDocumentSpreadsheet
from odf.table import Table, TableCell, TableRow
from odf.text import P

from simulation.readings import Simulated

Cell = str | float | None
Grid = list[list[Cell]]
_CREATED = dt.datetime(2026, 3, 1)


@dataclass(frozen=True, slots=True)
class Typed:
    """A learner's table as typed: texts of lengths (in the unit typed) and of times."""

    name: str
    swings: int
    lengths: tuple[str, ...]
    times: tuple[tuple[str, ...], ...]
    own: str = ""

    def means(self) -> list[float]:
        """The learner's own means, one of them wrong if ``own`` says so."""
        means = [round(sum(map(float, row)) / len(row), 2) for row in self.times]
        if self.own == "mean_wrong":
            means[2] = round(means[2] + 1.0, 2)  # a one carried that was not there
        return means

    def periods(self) -> list[float]:
        """T as the learner worked it out."""
        return [round(mean / self.swings, 3) for mean in self.means()]

    def squares(self) -> list[float]:
        """T², or 2T where the learner doubled instead of squaring."""
        if self.own == "squared_doubled":
            return [round(2 * period, 3) for period in self.periods()]
        return [round(period**2, 3) for period in self.periods()]


def typed(sim: Simulated, name: str, own: str) -> Typed:
    """The one learner of ``sim`` as a typed table."""
    rows = [j for j in range(sim.length_m.shape[1]) if sim.length_m[0, j] > 0]
    length_places, time_places = int(sim.length_decimals[0]), int(sim.time_decimals[0])
    return Typed(
        name,
        int(sim.swings[0, 0]),
        tuple(f"{sim.length_m[0, j] * 100:.{length_places}f}" for j in rows),
        tuple(tuple(f"{t:.{time_places}f}" for t in sim.times_s[0, j] if t > 0) for j in rows),
        own,
    )


def _numbers(table: Typed) -> Grid:
    return [
        [float(length), *map(float, times)]
        for length, times in zip(table.lengths, table.times, strict=True)
    ]


def _own(table: Typed, *columns: str) -> Grid:
    values = {"mean": table.means(), "T": table.periods(), "T2": table.squares()}
    if not table.own:
        return [[] for _ in table.lengths]
    return [list(row) for row in zip(*(values[c] for c in columns), strict=True)]


def _beside(left: Grid, right: Grid) -> Grid:
    return [a + b for a, b in zip(left, right, strict=True)]


def _texts(table: Typed, comma: bool = False) -> Grid:
    rows: Grid = [[a, *b] for a, b in zip(table.lengths, table.times, strict=True)]
    return _commas(rows) if comma else rows


def _commas(rows: Grid) -> Grid:
    return [[str(cell).replace(".", ",") for cell in row] for row in rows]


def _text(
    rows: Sequence[Sequence[Cell]], separator: str, encoding: str, newline: str = "\r\n"
) -> bytes:
    lines = (separator.join("" if c is None else str(c) for c in row) for row in rows)
    return (newline.join(lines) + newline).encode(encoding)


def _xlsx(
    sheets: dict[str, Grid], merge: Sequence[tuple[str, str]] = (), time_places: int | None = None
) -> bytes:
    """A workbook of one or more sheets; ``merge`` holds ranges of the first and their text."""
    buffer = io.BytesIO()
    book = xlsxwriter.Workbook(buffer, {"in_memory": True})
    book.set_properties({"created": _CREATED})
    bold = book.add_format({"bold": True, "align": "center"})
    plain = book.add_format({"num_format": "0." + "0" * time_places}) if time_places else None
    for number, (title, rows) in enumerate(sheets.items()):
        sheet = book.add_worksheet(title)
        sheet.set_column(0, 8, 14)
        for i, row in enumerate(rows):
            for j, cell in enumerate(row):
                if isinstance(cell, str):
                    sheet.write_string(i, j, cell)
                elif cell is not None:
                    sheet.write_number(i, j, cell, plain if j else None)
        if number == 0:
            for cells, text in merge:
                sheet.merge_range(cells, text, bold)
    book.close()
    return buffer.getvalue()


def _ods(rows: Grid) -> bytes:
    document = OpenDocumentSpreadsheet()
    table = Table(name="Tabelle1")
    for row in rows:
        line = TableRow()
        for cell in row:
            if isinstance(cell, float):
                box = TableCell(valuetype="float", value=cell)
                box.addElement(P(text=f"{cell:g}".replace(".", ",")))
            else:
                box = TableCell(valuetype="string")
                box.addElement(P(text=cell or ""))
            line.addElement(box)
        table.addElement(line)
    document.spreadsheet.addElement(table)
    made = io.BytesIO()
    document.write(made)
    return _without_clock(made.getvalue())


def _without_clock(data: bytes) -> bytes:
    """The same zip file with its members' times set to one date."""
    out = io.BytesIO()
    with zipfile.ZipFile(io.BytesIO(data)) as old, zipfile.ZipFile(out, "w") as new:
        for info in old.infolist():
            fresh = zipfile.ZipInfo(info.filename, _CREATED.timetuple()[:6])
            fresh.compress_type = info.compress_type
            new.writestr(fresh, old.read(info))
    return out.getvalue()


def _trials(table: Typed, form: str) -> list[Cell]:
    return [form.format(k + 1) for k in range(max(map(len, table.times)))]


def _headed(table: Typed, length: str, trial: str, *own: str) -> Grid:
    return [[length, *_trials(table, trial), *(own if table.own else ())]]


def titled_xlsx(table: Typed) -> bytes:
    """Title rows above, quantity / unit in the headings, own columns at the right."""
    top: Grid = [["Simple pendulum: finding g"], ["Name:", table.name], []]
    head = _headed(table, "Length, L / cm", "t{} / s", "mean t / s", "T / s", "T² / s²")
    body = _beside(_numbers(table), _own(table, "mean", "T", "T2"))
    return _xlsx({"Sheet1": top + head + body})


def wide_xlsx(table: Typed) -> bytes:
    """Plain wide table; the count of swings in the headings."""
    form = f"Time {{}} for {table.swings} oscillations (s)"
    head = _headed(table, "l (cm)", form, "T (s)", "T^2 (s^2)")
    body = _beside(_numbers(table), _own(table, "T", "T2"))
    return _xlsx({"Readings": head + body}, time_places=2)


def merged_xlsx(table: Typed) -> bytes:
    """A merged heading over the repeats."""
    last = "BCDE"[max(map(len, table.times)) - 1]
    head: Grid = [["Length of pendulum / cm"], ["", *_trials(table, "trial {}")]]
    if table.own:
        head[1] += ["Mean time / s", "Period T / s"]
    body = _beside(_numbers(table), _own(table, "mean", "T"))
    return _xlsx(
        {"Table 1": head + body}, merge=[(f"B1:{last}1", f"Time for {table.swings} swings, t / s")]
    )


def swings_column_xlsx(table: Typed) -> bytes:
    """The count of swings in a column of its own."""
    head: Grid = [["No. of swings", "L / cm", *_trials(table, "t{} / s")]]
    body: Grid = [[float(table.swings), *row] for row in _numbers(table)]
    head[0] += ["T / s"] if table.own else []
    return _xlsx({"data": head + _beside(body, _own(table, "T"))})


def stopwatch_xlsx(table: Typed) -> bytes:
    """Times as the stopwatch shows them: minutes, a colon, seconds."""
    head = _headed(table, "string length in cm", "stopwatch {}")
    rows: Grid = [
        [float(length), *(_minutes(t) for t in times)]
        for length, times in zip(table.lengths, table.times, strict=True)
    ]
    note: Grid = [[], [f"each time is for {table.swings} full swings"]]
    return _xlsx({"Sheet1": head + rows + note})


def _minutes(text: str) -> str:
    minutes, seconds = divmod(float(text), 60)
    return f"{int(minutes)}:{seconds:05.2f}"


def units_in_cells_xlsx(table: Typed) -> bytes:
    """Units behind every value."""
    head = _headed(table, "Length", f"{table.swings} swings, try {{}}")
    rows: Grid = [
        [f"{length} cm", *(f"{t} s" for t in times)]
        for length, times in zip(table.lengths, table.times, strict=True)
    ]
    return _xlsx({"Pendulum": head + rows})


def notes_below_xlsx(table: Typed) -> bytes:
    """Bare trial headings; what was done stands in notes below."""
    head = _headed(table, "Length (cm)", "Trial {} (s)", "Average (s)")
    notes: Grid = [
        [],
        [f"Each timing is {table.swings} complete oscillations."],
        ["Small angle. Bob: a lump of clay."],
    ]
    return _xlsx({"Sheet1": head + _beside(_numbers(table), _own(table, "mean")) + notes})


def two_sheets_xlsx(table: Typed) -> bytes:
    """A cover sheet, the readings, and a sheet of values to plot."""
    cover: Grid = [["Pendulum at home"], [table.name], ["See the next sheet for my readings."]]
    head = _headed(table, "L / cm", f"time for {table.swings} swings {{}} / s", "T / s")
    readings = head + _beside(_numbers(table), _own(table, "T"))
    graph: Grid = [["L / m", "T² / s²"]]
    graph += [[float(a) / 100, b] for a, b in zip(table.lengths, table.squares(), strict=True)]
    return _xlsx({"Cover": cover, "Readings": readings, "Graph": graph})


def gaps_xlsx(table: Typed) -> bytes:
    """Begun in the middle of the sheet, with blank rows between."""
    rows: Grid = [[], [None, None, *_headed(table, "length / cm", "t{} (s)")[0]]]
    for row in _numbers(table):
        rows += [[], [None, None, *row]]
    return _xlsx({"Sheet1": rows})


def malay_xlsx(table: Typed) -> bytes:
    """Malay headings."""
    form = f"Masa {table.swings} ayunan, t{{}} / s"
    head = _headed(table, "Panjang, l / cm", form, "Tempoh, T / s")
    title: Grid = [["Jadual 1: bandul ringkas"], []]
    return _xlsx({"Jadual": title + head + _beside(_numbers(table), _own(table, "T"))})


def millimetres_xlsx(table: Typed) -> bytes:
    """Lengths in millimetres."""
    head = _headed(table, "Length in mm", f"time for {table.swings} in s, no. {{}}", "T in s")
    body: Grid = [[float(row[0] or 0) * 10, *row[1:]] for row in _numbers(table)]
    return _xlsx({"Sheet1": head + _beside(body, _own(table, "T"))})


def broken_xlsx(table: Typed) -> bytes:
    """A workbook whose sending broke off: no program can open it."""
    whole = wide_xlsx(table)
    return whole[: len(whole) * 2 // 5]


def plain_csv(table: Typed) -> bytes:
    """Comma, points, UTF-8."""
    head = _headed(
        table, "length (cm)", f"time {{}} for {table.swings} swings (s)", "T (s)", "T squared (s^2)"
    )
    return _text(head + _beside(_texts(table), _own(table, "T", "T2")), ",", "utf-8", "\n")


def bare_csv(table: Typed) -> bytes:
    """Headings without units, and no word about the count."""
    return _text(_headed(table, "L", "t{}") + _texts(table), ",", "utf-8")


def hundredths_csv(table: Typed) -> bytes:
    """Times as a phone shows them, minutes:seconds:hundredths."""
    rows: Grid = [
        [length, *("00:" + t.zfill(5).replace(".", ":") for t in times)]
        for length, times in zip(table.lengths, table.times, strict=True)
    ]
    head = _headed(table, "Length/cm", f"{table.swings} swings #{{}} (mm:ss:hh)")
    return _text(head + rows, ",", "utf-8-sig")


def long_txt(table: Typed) -> bytes:
    """A row for every timing, between tabs."""
    rows: Grid = [["length / cm", "trial", f"time for {table.swings} swings / s"]]
    for length, times in zip(table.lengths, table.times, strict=True):
        rows += [[length, str(k + 1), t] for k, t in enumerate(times)]
    return _text(rows, "\t", "utf-8", "\n")


def utf16_txt(table: Typed) -> bytes:
    """What a spreadsheet calls Unicode text."""
    form = f"t{{}} for {table.swings} swings (s)"
    return _text(_headed(table, "Length (cm)", form) + _texts(table), "\t", "utf-16")


def _european(table: Typed, length: str, trial: str, period: str, encoding: str) -> bytes:
    """Semicolons and decimal commas, T at the right."""
    rows = _beside(_texts(table, comma=True), _commas(_own(table, "T")))
    return _text(_headed(table, length, trial, period) + rows, ";", encoding)


def french_csv(table: Typed) -> bytes:
    """French, a Windows code page."""
    form = f"durée de {table.swings} oscillations n° {{}} (s)"
    return _european(table, "longueur (cm)", form, "période T (s)", "cp1252")


def spanish_csv(table: Typed) -> bytes:
    """Spanish, a Windows code page."""
    form = f"tiempo {{}} de {table.swings} oscilaciones (s)"
    return _european(table, "longitud (cm)", form, "período (s)", "cp1252")


def italian_csv(table: Typed) -> bytes:
    """Italian, UTF-8."""
    form = f"tempo {{}} per {table.swings} oscillazioni (s)"
    return _european(table, "lunghezza (cm)", form, "periodo (s)", "utf-8")


def portuguese_csv(table: Typed) -> bytes:
    """Portuguese, UTF-8."""
    form = f"tempo {{}} de {table.swings} oscilações (s)"
    return _european(table, "comprimento (cm)", form, "período (s)", "utf-8")


def polish_csv(table: Typed) -> bytes:
    """Polish, UTF-8 with its mark."""
    form = f"czas {{}} dla {table.swings} wahnięć [s]"
    return _european(table, "długość [cm]", form, "okres T [s]", "utf-8-sig")


def norwegian_csv(table: Typed) -> bytes:
    """Norwegian, a Windows code page."""
    form = f"tid {{}} for {table.swings} svingninger (s)"
    return _european(table, "snorlengde (cm)", form, "periode (s)", "cp1252")


def dutch_csv(table: Typed) -> bytes:
    """Dutch, lengths in metres."""
    rows: Grid = [
        [f"{float(length) / 100:.3f}", *times]
        for length, times in zip(table.lengths, table.times, strict=True)
    ]
    form = f"tijd {{}} voor {table.swings} slingeringen (s)"
    body = _beside(_commas(rows), _commas(_own(table, "T")))
    return _text(_headed(table, "lengte (m)", form, "slingertijd (s)") + body, ";", "utf-8")


def german_ods(table: Typed) -> bytes:
    """German, an open spreadsheet."""
    form = f"Zeit für {table.swings} Schwingungen t{{}} / s"
    head = _headed(table, "Pendellänge l / cm", form, "Schwingungsdauer T / s")
    return _ods([["Fadenpendel"], [], *head, *_beside(_numbers(table), _own(table, "T"))])


def transposed_ods(table: Typed) -> bytes:
    """Lengths along the top, timings below."""
    rows: Grid = [["Length / cm", *map(float, table.lengths)]]
    for k in range(max(map(len, table.times))):
        label = f"time {k + 1} for {table.swings} swings / s"
        rows.append([label, *(float(times[k]) for times in table.times)])
    if table.own:
        rows.append(["T / s", *table.periods()])
    return _ods(rows)


def class_sheet(tables: Sequence[tuple[str, Typed]]) -> bytes:
    """One row for each learner (id, table): all lengths and times along the row."""
    first = tables[0][1]
    head: list[Cell] = ["ID", "Name"]
    for j in range(len(first.lengths)):
        head.append(f"L{j + 1} / cm")
        head += [f"t{j + 1}{'ab'[k]} / s" for k in range(len(first.times[j]))]
    rows: Grid = [[f"Pendulum: time for {first.swings} swings"], head]
    for learner, table in tables:
        row: list[Cell] = [learner, table.name]
        for values in _numbers(table):
            row += values
        rows.append(row)
    return _xlsx({"10C": rows})


LAYOUTS: dict[str, tuple[str, Callable[[Typed], bytes]]] = {
    writer.__name__: ("." + writer.__name__.rsplit("_", 1)[1], writer)
    for writer in (
        titled_xlsx, wide_xlsx, merged_xlsx, swings_column_xlsx, stopwatch_xlsx,
        units_in_cells_xlsx, notes_below_xlsx, two_sheets_xlsx, gaps_xlsx, malay_xlsx,
        millimetres_xlsx, broken_xlsx, plain_csv, bare_csv, hundredths_csv, long_txt, utf16_txt,
        french_csv, spanish_csv, italian_csv, portuguese_csv, polish_csv, norwegian_csv,
        dutch_csv, german_ods, transposed_ods,
    )
}  # fmt: skip
