"""What lies in the folder, what is refused, and that nothing is ever written."""

from __future__ import annotations

import io
import os
import zipfile
from pathlib import Path

import pytest
from class_folders import MakeClass, zipped

from markbench.intake import tree as tree_module
from markbench.intake.tree import PieceError, open_piece, walk


def files(folder: Path) -> list[str]:
    return [found.file for found in walk(folder).found]


def test_hidden_and_system_files_are_passed_over(make_class: MakeClass) -> None:
    folder = make_class(
        {
            "a/table.csv": "x", "a/.DS_Store": "x", "a/Thumbs.db": "x", "a/~$table.xlsx": "x",
            "a/desktop.ini": "x", "__MACOSX/a/._table.csv": "x", ".git/config": "x",
            "class.markbench": "x", "class.markbench-wal": "x", "markbench-out/marks.xlsx": "x",
            "a/._table.csv": "x",
            "b.zip": zipped({"t.csv": "x", "__MACOSX/._t.csv": "x", ".DS_Store": "x"}),
        }
    )  # fmt: skip
    assert files(folder) == ["a/table.csv", "b.zip!/t.csv"]


def test_zip_within_zip_is_read_one_level_down(make_class: MakeClass) -> None:
    deep = zipped({"deepest.csv": "1"})
    folder = make_class(
        {"class.zip": zipped({"Ana.zip": zipped({"t.csv": "in", "more.zip": deep}), "x.csv": "2"})}
    )
    assert files(folder) == [
        "class.zip!/Ana.zip!/more.zip",
        "class.zip!/Ana.zip!/t.csv",
        "class.zip!/x.csv",
    ]
    assert open_piece(folder, "class.zip!/Ana.zip!/t.csv") == b"in"
    assert open_piece(folder, "class.zip!/x.csv#Sheet!A4") == b"2"


def test_what_climbs_out_is_refused(
    make_class: MakeClass, tmp_path_factory: pytest.TempPathFactory
) -> None:
    outside = tmp_path_factory.mktemp("outside")
    (outside / "secret.csv").write_text("secret")
    folder = make_class(
        {
            "evil.zip": zipped(
                {"../up.csv": "x", "/root.csv": "x", "C:\\w.csv": "x", "a\\..\\..\\b.csv": "x",
                 "fine.csv": "ok"}
            ),
        }
    )  # fmt: skip
    os.symlink(outside / "secret.csv", folder / "link.csv")
    os.symlink(outside, folder / "dir")
    os.symlink(folder / "nowhere", folder / "dangling.csv")
    os.symlink(folder, folder / "loop")
    tree = walk(folder)
    assert [found.file for found in tree.found] == ["evil.zip!/fine.csv"]
    said = " ".join(problem.message for problem in tree.problems)
    assert said.count("climbs out") == 4
    assert said.count("outside the class folder") == 2
    assert "link to nothing" in said
    for file in ("link.csv", "dir/secret.csv", "../outside0/secret.csv", "evil.zip!/../up.csv"):
        with pytest.raises(PieceError):
            open_piece(folder, file)


def test_links_within_a_zip_and_locked_members_are_refused(make_class: MakeClass) -> None:
    held = io.BytesIO()
    with zipfile.ZipFile(held, "w") as archive:
        link = zipfile.ZipInfo("link.csv")
        link.external_attr = 0o120777 << 16
        archive.writestr(link, "/etc/passwd")
        archive.writestr("ok.csv", "ok")
    data = bytearray(held.getvalue())
    folder = make_class({"a.zip": bytes(data)})
    tree = walk(folder)
    assert [found.file for found in tree.found] == ["a.zip!/ok.csv"]
    assert "link inside a zip" in tree.problems[0].message


def test_a_bomb_is_refused(make_class: MakeClass, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(tree_module, "RATIO_FROM", 100_000)
    bomb = zipped({"bomb.csv": b"0" * 50_000_000, "ok.csv": "1,2"})
    tree = walk(make_class({"bomb.zip": bomb}))
    assert [found.file for found in tree.found] == ["bomb.zip!/ok.csv"]
    assert "times its size" in tree.problems[0].message


def test_sizes_are_counted_while_reading(
    make_class: MakeClass, monkeypatch: pytest.MonkeyPatch
) -> None:
    folder = make_class({"a.zip": zipped({"t.csv": b"0" * 5_000_000}), "b.csv": b"1" * 3_000})
    with pytest.raises(PieceError, match="larger than"):
        open_piece(folder, "a.zip!/t.csv", limit_bytes=1000)
    with pytest.raises(PieceError, match="larger than"):
        open_piece(folder, "b.csv", limit_bytes=1000)
    monkeypatch.setattr(tree_module, "MOST_MEMBER_BYTES", 10_000_000)
    assert len(open_piece(folder, "a.zip!/t.csv")) == 5_000_000
    # The directory entry passes, the counting does not.
    monkeypatch.setattr(tree_module, "_refused", lambda name, info: "")
    monkeypatch.setattr(tree_module, "MOST_MEMBER_BYTES", 2_000_000)
    with pytest.raises(PieceError, match="far more"):
        open_piece(folder, "a.zip!/t.csv")


def test_too_many_members(make_class: MakeClass, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(tree_module, "MOST_MEMBERS", 3)
    tree = walk(make_class({"a.zip": zipped({f"{n}.csv": "x" for n in range(5)})}))
    assert "more than 3" in tree.problems[0].message
    assert [found.file for found in tree.found] == ["a.zip"]


def test_broken_zip_files_stay_listed(make_class: MakeClass) -> None:
    good = zipped({"t.csv": "1,2,3\n" * 1000})
    tree = walk(make_class({"Ana.zip": b"PK not a zip", "Bo.zip": good[: len(good) // 2]}))
    assert {found.file for found in tree.found} == {"Ana.zip", "Bo.zip"}
    assert {problem.check for problem in tree.problems} == {"unreadable_file"}


def test_damaged_member_is_a_piece_error(make_class: MakeClass) -> None:
    data = bytearray(zipped({"t.csv": os.urandom(2000)}))
    data[200] ^= 0xFF
    folder = make_class({"a.zip": bytes(data)})
    with pytest.raises(PieceError, match="could not be read"):
        open_piece(folder, "a.zip!/t.csv")


def test_names_stored_as_unmarked_utf8_are_read(make_class: MakeClass) -> None:
    data = zipped({"Zoë Ångström/t.csv": "x"})
    # Clear the mark "names are UTF-8" (bit 11) in the local and the central header.
    raw = bytearray(data)
    for start, offset in ((b"PK\x03\x04", 7), (b"PK\x01\x02", 9)):
        raw[raw.index(start) + offset] &= ~0x08
    folder = make_class({"a.zip": bytes(raw)})
    assert files(folder) == ["a.zip!/Zoë Ångström/t.csv"]
    assert open_piece(folder, "a.zip!/Zoë Ångström/t.csv") == b"x"


def test_missing_piece_and_odd_folder_names(make_class: MakeClass) -> None:
    folder = make_class({"wow!/t.csv": "x", "a#b.csv": "y"})
    assert open_piece(folder, "wow!/t.csv") == b"x"
    assert open_piece(folder, "a#b.csv") == b"y"
    with pytest.raises(PieceError):
        open_piece(folder, "gone.csv")
    with pytest.raises(PieceError):
        open_piece(folder, "gone.zip!/t.csv")


@pytest.mark.parametrize("file", ["t.csv", "a.zip!/t.csv", "a.zip!/b.zip!/t.csv"])
def test_what_went_away_is_not_called_damaged(make_class: MakeClass, file: str) -> None:
    folder = make_class(
        {"t.csv": "x", "a.zip": zipped({"t.csv": "x", "b.zip": zipped({"t.csv": "x"})})}
    )
    assert open_piece(folder, file) == b"x"
    held = folder.rename(folder.with_name("elsewhere"))
    with pytest.raises(PieceError, match="the class folder is out of reach"):
        open_piece(folder, file)
    held.rename(folder)
    (folder / file.partition("!")[0]).unlink()
    with pytest.raises(PieceError, match="is not there any more"):
        open_piece(folder, file)
    (folder / "a.zip").write_bytes(b"PK no zip")
    with pytest.raises(PieceError, match="not a zip file that can be opened"):
        open_piece(folder, "a.zip!/t.csv")


def test_a_missing_class_folder_is_an_error(tmp_path: Path) -> None:
    with pytest.raises(OSError, match="nowhere"):
        walk(tmp_path / "nowhere")
