"""Every byte that goes out is searched: no place, no machine, nobody else's data.

A class of invented learners whose photos and film carry a position and a camera is marked,
second-marked and written out whole: workbook, mark sheet, feedback sheets and their zip,
results for a school system, audit listing, record of moderation, moderation pack. Zip files
are searched by their members, PDFs by their text and by every stream unpacked.
"""

from __future__ import annotations

import getpass
import hashlib
import io
import platform
import re
import zlib
from collections.abc import Iterator
from pathlib import Path
from zipfile import ZipFile, is_zipfile

import pytest
from pypdf import PdfReader

from markbench.export import RosterIds
from markbench.session import Session
from markbench.session.going_out import Wanted, write_out
from markbench.session.moderating import take_sample
from markbench.session.packing import write_pack
from moderation.invented_class import IDS, NAMES, film, mark_all, photo, table

STREAM = re.compile(rb"stream\r?\n(.*?)\r?\nendstream", re.DOTALL)
# Tags of places and devices: Exif and its GPS part, QuickTime's and Apple's keys, XMP; the
# position and the camera that the photos and the film themselves carry.
TAGS = (b"Exif\0", b"GPS", b"\xa9xyz", b"ISO6709", b"loci", b"com.apple", b"InventedCamera",
        b"+51.5", b"xmpmeta", b"http://ns.adobe.com/xap")  # fmt: skip


def insides(name: str, data: bytes) -> Iterator[tuple[str, bytes]]:
    """A file's bytes, and those of everything packed within it."""
    yield name, data
    if data.startswith(b"%PDF"):
        yield (
            f"{name} (text)",
            " ".join(page.extract_text() for page in PdfReader(io.BytesIO(data)).pages).encode(),
        )
        for packed in STREAM.findall(data):
            unpacked = zlib.decompressobj()
            try:
                yield f"{name} (stream)", unpacked.decompress(packed)
            except zlib.error:
                continue
    elif is_zipfile(io.BytesIO(data)):
        with ZipFile(io.BytesIO(data)) as archive:
            for member in archive.namelist():
                yield from insides(f"{name}!/{member}", archive.read(member))


@pytest.fixture(scope="module")
def out(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The folder that everything was written to, and a pack in it."""
    place = tmp_path_factory.mktemp("someones-machine")
    folder = place / "Class 9Z"
    for at, name in enumerate(NAMES):
        own = folder / name
        own.mkdir(parents=True)
        (own / f"{name} readings.csv").write_text(table(name, at), "utf-8")
        (own / f"{name} setup.jpg").write_bytes(photo(at))
        (own / f"{name} video.mp4").write_bytes(film())
    rows = "\n".join(f"{i},{n}" for i, n in zip(IDS, NAMES, strict=True))
    (folder / "class_list.csv").write_text(f"id,name\n{rows}\n", "utf-8")
    (folder / "brief.toml").write_text("[place]\nlatitude_deg = 50.123456\n", "utf-8")
    session = Session.open(folder, "T. Teacher")
    try:
        mark_all(session)
        session.set_note(IDS[1], "A private word.")
        take_sample(session, seed=4)
        wanted = Wanted(feedback=True, oneroster=RosterIds("SCH1", "T1"), audit=True, record=True)
        write_out(session, place / "out", wanted)
        write_pack(session, place / "out" / "class.markbench-pack")
    finally:
        session.close()
    return place / "out"


@pytest.fixture(scope="module")
def pieces(out: Path) -> list[tuple[str, bytes]]:
    return [
        piece
        for path in sorted(out.rglob("*"))
        if path.is_file()
        for piece in insides(path.relative_to(out).as_posix(), path.read_bytes())
    ]


def test_the_search_reaches_into_everything(pieces):
    names = [name for name, _ in pieces]
    for wanted in (
        "marks.xlsx!/xl/worksheets/sheet1.xml",
        "oneroster.zip!/",
        ".pdf (text)",
        ".pdf (stream)",
        "class.markbench-pack!/manifest.json",
        ".html",
        "record",
    ):
        assert any(wanted in name for name in names), wanted
    # What is to be there is found in this way, so that what is not would be.
    assert any(b"Ada Invented" in data for name, data in pieces if name.endswith("(text)"))
    assert any(b"BT" in data and b"ET" in data for name, data in pieces if "(stream)" in name)
    assert any(tag in photo(0) for tag in TAGS)
    assert any(tag in film() for tag in TAGS)


def test_no_place_and_no_device_is_anywhere(pieces):
    for name, data in pieces:
        for tag in TAGS:
            assert tag not in data, (name, tag)
        # The class's place stands in the brief, and the moderator's g rests on it.
        if "brief.json" not in name and not name.endswith("-pack"):
            assert b"50.123456" not in data, name


def test_nothing_of_the_machine_is_anywhere(pieces, out):
    machine = [str(out.parent), "someones-machine", str(Path.home())]
    if len(getpass.getuser()) > 4:
        machine.append(getpass.getuser())
    if len(platform.node()) > 3:
        machine.append(platform.node())
    for name, data in pieces:
        for word in machine:
            assert word.encode() not in data, (name, word)


def test_private_notes_stay(pieces):
    for name, data in pieces:
        assert b"private word" not in data, name


def test_what_a_mark_rests_on_stays_in_the_journal(pieces, out):
    """Of each handed-in file the journal keeps a digest: whoever has the file could find it."""
    own = [one for one in (out.parent / "Class 9Z").rglob("*.csv") if one.parent.name in NAMES]
    assert len(own) == len(NAMES)
    digests = [hashlib.sha256(one.read_bytes()).hexdigest().encode() for one in own]
    journal = (out.parent / "Class 9Z" / "class.markbench").read_bytes()
    assert all(digest in journal for digest in digests)
    for name, data in pieces:
        for digest in digests:
            assert digest not in data, name


def test_a_feedback_sheet_names_nobody_else(pieces):
    sheets = [piece for piece in pieces if "feedback" in piece[0] and not piece[0].endswith(".zip")]
    assert len(sheets) >= 3 * len(NAMES)
    for name, data in sheets:
        (owner,) = [one for one in NAMES if one.split()[0].casefold() in name.casefold()]
        for other, identity in zip(NAMES, IDS, strict=True):
            if other != owner:
                for word in (*other.split(), identity):
                    assert word.encode() not in data, (name, word)


def test_a_pack_names_nobody(pieces):
    for name, data in pieces:
        if "markbench-pack!/" in name:
            for word in (*IDS, *(part for one in NAMES for part in one.split())):
                assert not re.search(rb"\b%b\b" % word.encode(), data, re.IGNORECASE), (name, word)
