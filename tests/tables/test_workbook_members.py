"""Members of a workbook are unpacked as the standard library unpacks them, or refused likewise."""

from __future__ import annotations

import io
import random
import struct
import zipfile

import pytest

from markbench.intake.tables.members import _ordinary, unpacked

SHEET = b"<worksheet><sheetData>" + b'<row r="1"/>' * 200 + b"</sheetData></worksheet>"


def packed(how: int = zipfile.ZIP_DEFLATED, name: str = "xl/worksheets/sheet1.xml") -> bytes:
    held = io.BytesIO()
    with zipfile.ZipFile(held, "w", how) as archive:
        archive.writestr(name, SHEET)
        archive.writestr("empty.xml", b"")
    return held.getvalue()


def read(data: bytes) -> list[bytes]:
    archive = zipfile.ZipFile(io.BytesIO(data))
    return [unpacked(archive, info, data) for info in archive.infolist()]


@pytest.mark.parametrize("how", [zipfile.ZIP_DEFLATED, zipfile.ZIP_STORED, zipfile.ZIP_BZIP2])
@pytest.mark.parametrize("before", [b"", b"something in front of the archive"])
@pytest.mark.parametrize("name", ["xl/a.xml", "xl/Längen.xml"])
def test_whole_members_are_unpacked(how: int, before: bytes, name: str) -> None:
    assert read(before + packed(how, name)) == [SHEET, b""]


def test_ordinary_members_take_the_short_way() -> None:
    data = packed()
    infos = zipfile.ZipFile(io.BytesIO(data)).infolist()
    assert [_ordinary(info, data) for info in infos] == [SHEET, b""]


@pytest.mark.parametrize(
    ("record", "at", "lie"),
    [
        (b"PK\x01\x02", 16, struct.pack("<I", 1)),  # the checksum
        (b"PK\x01\x02", 24, struct.pack("<I", 40)),  # the size
        (b"PK\x01\x02", 10, struct.pack("<H", 99)),  # how it is packed
        (b"PK\x01\x02", 8, struct.pack("<H", 1)),  # that it is locked
        (b"PK\x03\x04", 30, b"xl/worksheets/sheet2.xml"),  # its name
        (b"PK\x03\x04", 0, b"PX"),  # no header at all
    ],
)
def test_a_member_that_lies_about_itself_is_refused(record: bytes, at: int, lie: bytes) -> None:
    whole = packed()
    at += whole.index(record)
    data = whole[:at] + lie + whole[at + len(lie) :]
    with pytest.raises((zipfile.BadZipFile, NotImplementedError, RuntimeError)):
        read(data)


def test_any_damage_gives_what_the_library_gives() -> None:
    whole, rng = packed(), random.Random(5)
    for _ in range(400):
        data = bytearray(whole)
        for _ in range(rng.randint(1, 3)):
            data[rng.randrange(len(data))] = rng.randrange(256)
        try:
            archive = zipfile.ZipFile(io.BytesIO(data))
        except Exception:
            continue
        for info in archive.infolist():
            expected = outcome(lambda a=archive, i=info: a.read(i))
            assert outcome(lambda a=archive, i=info, d=data: unpacked(a, i, bytes(d))) == expected


def outcome(do) -> object:
    try:
        return do()
    except Exception as error:
        return type(error)
