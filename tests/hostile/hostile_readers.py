"""Every reader of files, in a form that any bytes can be thrown at.

``read`` gets the bytes and an empty class folder, and raises where the reader's promise is
broken: it answers with what it read, with findings that say why not, or with its declared
error, whose text is a sentence.
"""

from __future__ import annotations

import json
from collections.abc import Callable
from dataclasses import dataclass
from typing import Any

import hostile_files as files
import hostile_records as records
import hostile_seeds as seeds

from markbench.intake.tables import ColumnHints


@dataclass(frozen=True)
class Reader:
    """``cost``: how many inputs of the cheapest reader one of this takes the time of."""

    name: str
    read: files.Read
    seeds: Callable[[], list[bytes]]
    words: tuple[bytes, ...] = ()
    cost: int = 1


def _json_of(*values: Any) -> Callable[[], list[bytes]]:
    return lambda: [json.dumps(value).encode() for value in values]


_NUMBERS = (b"1e308", b"-1", b"NaN", b"Infinity", b"1" + b"0" * 400, b"0x1F", b"-0.0", b"1_0")
_XML = (b'<c r="A1"', b't="e"', b't="s"', b"<f>", b"</f>", b"<v>", b'r="XFD1048576"', b"&#0;",
        b'<!DOCTYPE x [<!ENTITY a "b">]>', b"&a;", b"<row ", b't="inlineStr"', b"<is><t>",
        b'number-columns-repeated="16384"', b'number-rows-repeated="1048576"')  # fmt: skip
_CELLS = (b"Length / cm", b"Time for 10 swings / s", b"10T", b"T / s", b";", b"\t", b'"', b"\n",
          b"0:14.23", b"14,2 s", b"2026-01-05", b"=SUM(A1)", b"\xff\xfe", b"\0", b"N = 10",
          b"g = 9.8", b"Name", b"mean", b"1/2", b"\xe2\x88\x9e")  # fmt: skip
_TOML = (b"[[criterion]]", b"[[criterion.level]]", b"[place]", b"= 1979-05-27", b"'''", b'"""',
         b"{ a = 1 }", b"[", b"]", b"level", b"when", b"marks", b"inf", b"nan", b"a.b.c",
         b"[[", b"\\u0000", b"0x" + b"F" * 5000, b"a" + b".a" * 3000 + b" = 1",
         b"title_ms = 5", b"not", b"and", b">=", b"{g}")  # fmt: skip
_JSON = (b"null", b"[]", b"{}", b'"\\ud800"', b"true", b"[[[[", b'"level"', b'"marks"')
_ZIP = (b"PK\x01\x02", b"PK\x05\x06", b"PK\x06\x06", b"../", b"C:\\", b"!/", b"\0")

READERS: dict[str, Reader] = {
    reader.name: reader
    for reader in (
        Reader("readings.csv", files.read_table("t.csv"), seeds.texts, _CELLS + _NUMBERS),
        Reader("readings.xlsx", files.read_table("t.xlsx"), seeds.workbooks, _XML),
        Reader(
            "xlsx-sheet",
            files.read_table("t.xlsx", files.in_part("xlsx", "xl/worksheets/sheet1.xml")),
            lambda: [seeds.part_of("xlsx", "xl/worksheets/sheet1.xml")],
            _XML + _NUMBERS,
        ),
        Reader(
            "xlsx-strings",
            files.read_table("t.xlsx", files.in_part("xlsx", "xl/sharedStrings.xml")),
            lambda: [seeds.part_of("xlsx", "xl/sharedStrings.xml")],
            _XML + _CELLS,
        ),
        Reader(
            "xlsx-book",
            files.read_table("t.xlsx", files.in_part("xlsx", "xl/workbook.xml")),
            lambda: [seeds.part_of("xlsx", "xl/workbook.xml")],
            _XML,
        ),
        Reader(
            "ods-content",
            files.read_table("t.ods", files.in_part("ods", "content.xml")),
            lambda: [seeds.part_of("ods", "content.xml")],
            _XML + _NUMBERS,
        ),
        Reader("class-sheet", files.read_table("c.csv"), seeds.class_sheets, _CELLS),
        Reader("class-list.csv", files.read_list("class_list.csv"), seeds.class_lists, _CELLS),
        Reader(
            "class-list.xlsx",
            files.read_list("class_list.xlsx", files.in_part("xlsx", "xl/worksheets/sheet1.xml")),
            lambda: [seeds.part_of("xlsx", "xl/worksheets/sheet1.xml")],
            _XML,
        ),
        Reader("brief", files.read_a_brief, seeds.briefs, _TOML + _NUMBERS),
        Reader("rubric", files.read_a_rubric, seeds.rubrics, _TOML + _NUMBERS, cost=2),
        Reader("zip", files.read_zip, seeds.zips, _ZIP, cost=3),
        Reader("photo", files.read_photo, seeds.photos, cost=3),
        Reader("shown-picture", files.show_picture, seeds.photos, (b"<svg", b"xlink:href"), cost=2),
        Reader("film", files.read_a_film, lambda: seeds.films() + seeds.playlists(), cost=10),
        Reader("shown-film", files.show_film, lambda: seeds.films() + seeds.playlists(), cost=5),
        Reader("sent-film", files.send_film, lambda: seeds.films() + seeds.playlists(), cost=5),
        Reader("cache", files.read_cached, lambda: [b"{}", *files.sound_cache()]),
        Reader("journal", records.read_journal, lambda: [records.sound_journal()], cost=10),
        Reader("entry", records.read_entry, lambda: [records.sound_entry()], _JSON, cost=20),
        Reader("decisions", records.open_over_decisions, records.sound_decisions, _JSON, cost=8),
        Reader("pack", records.read_pack, lambda: [records.sound_pack()], _ZIP, cost=10),
        Reader(
            "pack-part",
            records.read_pack_part,
            lambda: records.sound_parts(),
            _JSON + _NUMBERS,
            cost=10,
        ),
        Reader("reply", records.read_a_reply, lambda: [records.sound_reply()], _JSON + _NUMBERS),
        Reader(
            "hints",
            files.read_hints,
            _json_of(
                ColumnHints("A", ("B", "C")).to_json(),
                ColumnHints("1", ("2",), along="rows", swings=3, first="A").to_json(),
            ),
            _JSON,
        ),
        Reader(
            "typed",
            files.read_typed,
            _json_of([{"length_m": 0.2, "swings": 10, "timings_s": [9.0]}], []),
            _JSON + _NUMBERS,
        ),
        Reader(
            "correction",
            files.read_correction,
            lambda: [b"9.1", b"20 cm", b"0:14.2"],
            _CELLS + _NUMBERS,
        ),
    )
}
