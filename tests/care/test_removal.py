"""Pieces are taken out of folders and zip files, and nothing else is changed."""

import hashlib
import os
import zipfile

import pytest
from care_class import zipped

from markbench.intake.removal import remove
from markbench.intake.tree import walk


def listing(folder):
    return {one.file for one in walk(folder).found}


def test_files_members_and_members_of_members(folder):
    before = listing(folder)
    gone = {
        "IMG_0001.jpg",
        "ben.zip!/Ben Made-Up/setup.jpg",
        "ben.zip!/Ben Made-Up/selfie.jpg",
        "all.zip!/Cleo Fabricated.zip!/selfie.jpg",
    }
    assert gone < before
    with zipfile.ZipFile(folder / "ben.zip") as archive:
        kept = {i.filename: (archive.read(i), i.date_time) for i in archive.infolist()}
    old = folder / "ben.zip"
    os.utime(old, ns=(1_700_000_000_000_000_000, 1_700_000_000_000_000_000))
    assert remove(folder, sorted(gone)) == {}
    assert listing(folder) == before - gone
    with zipfile.ZipFile(folder / "ben.zip") as archive:
        assert archive.testzip() is None
        left = {i.filename: (archive.read(i), i.date_time) for i in archive.infolist()}
    assert left == {name: kept[name] for name in left}
    assert set(left) == {"Ben Made-Up/readings.csv", "Ben Made-Up/notes.txt"}
    assert old.stat().st_mtime_ns == 1_700_000_000_000_000_000
    assert not list(folder.rglob(".markbench-*"))


def test_the_bytes_are_no_longer_in_the_zip(folder):
    (folder / "plain.zip").write_bytes(b"")
    secret = b"a face that must go" * 20
    with zipfile.ZipFile(folder / "plain.zip", "w") as archive:  # stored, so findable
        archive.writestr("selfie.jpg", secret)
        archive.writestr("readings.csv", "20,9.0")
    assert secret in (folder / "plain.zip").read_bytes()
    assert remove(folder, ["plain.zip!/selfie.jpg"]) == {}
    assert secret not in (folder / "plain.zip").read_bytes()


def test_an_emptied_zip_goes_and_so_does_one_within(folder):
    (folder / "only.zip").write_bytes(zipped({"a.zip": zipped({"selfie.jpg": b"x" * 50})}))
    assert remove(folder, ["only.zip!/a.zip!/selfie.jpg"]) == {}
    assert not (folder / "only.zip").exists()


def test_names_in_other_alphabets(folder):
    (folder / "z.zip").write_bytes(zipped({"Zoë/Bild ünten.jpg": b"1", "Zoë/werte.csv": b"2"}))
    assert remove(folder, ["z.zip!/Zoë/Bild ünten.jpg"]) == {}
    assert {f for f in listing(folder) if f.startswith("z.zip")} == {"z.zip!/Zoë/werte.csv"}


def test_what_cannot_be_done_is_said_and_changes_nothing(folder):
    broken = bytearray(zipped({"selfie.jpg": b"x" * 400, "readings.csv": b"20,9.0\n" * 40}))
    at = broken.find(b"readings.csv") + 20
    broken[at : at + 8] = b"\xff" * 8  # the member that is to stay can no longer be read
    (folder / "broken.zip").write_bytes(bytes(broken))
    digest = hashlib.sha256(broken).hexdigest()
    troubles = remove(folder, ["broken.zip!/selfie.jpg", "not there.jpg", "IMG_0001.jpg"])
    assert set(troubles) == {"broken.zip!/selfie.jpg", "not there.jpg"}
    assert hashlib.sha256((folder / "broken.zip").read_bytes()).hexdigest() == digest
    assert not (folder / "IMG_0001.jpg").exists()


@pytest.mark.parametrize("file", ["../outside.jpg", "link/outside.jpg", ".."])
def test_nothing_outside_the_class_folder_is_touched(folder, file):
    outside = folder.parent / "elsewhere"
    outside.mkdir()
    (outside / "outside.jpg").write_bytes(b"not ours")
    (folder.parent / "outside.jpg").write_bytes(b"not ours")
    (folder / "link").symlink_to(outside)
    assert set(remove(folder, [file])) == {file}
    assert (outside / "outside.jpg").exists()
    assert (folder.parent / "outside.jpg").exists()


def test_of_a_link_it_is_the_link_that_goes(folder):
    (folder / "photo.jpg").symlink_to(folder / "IMG_0001.jpg")
    assert remove(folder, ["photo.jpg"]) == {}
    assert not (folder / "photo.jpg").is_symlink()
    assert (folder / "IMG_0001.jpg").exists()
