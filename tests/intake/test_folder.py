"""Whole class folders in every layout. Every name is invented."""

from __future__ import annotations

import datetime as dt
import hashlib
import os
from dataclasses import replace
from pathlib import Path

import pytest
from class_folders import (
    LATER_TABLE,
    TABLE,
    MakeClass,
    dated,
    zipped,
)

from markbench.intake.corrections import typed_rows
from markbench.intake.folder import Settled, read_class
from markbench.model import ClassWork

LIST = "id,name\n01,James Okafor\n02,Mary Okafor\n03,Li Wei\n"


def pieces(work: ClassWork, learner: str) -> dict[str, str]:
    return {piece.file: piece.kind for piece in work.portfolios[learner].pieces}


def checks(work: ClassWork, learner: str) -> list[str]:
    return [finding.check for finding in work.portfolios[learner].findings]


LAYOUTS = {
    "a folder per learner": {
        "James Okafor/readings.csv": TABLE,
        "James Okafor/setup.jpg": "a",
        "Okafor, Mary/me.jpg": "b",
        "03/video.mp4": "c",
    },
    "flat files": {
        "james_okafor_readings.csv": TABLE,
        "OkaforJ setup.jpg": "a",
        "M. Okafor selfie.jpg": "b",
        "03 clip.mp4": "c",
    },
    "a zip of folders": {
        "all.zip": zipped(
            {
                "10B/James Okafor/readings.csv": TABLE,
                "10B/James Okafor/apparatus.jpg": "a",
                "10B/Mary Okafor/selfie.jpg": "b",
                "10B/Li Wei/IMG_1.mov": "c",
            }
        )
    },
    "a zip of flat files": {
        "all.zip": zipped(
            {"james okafor.csv": TABLE, "j okafor setup.png": "a", "mary okafor me.png": "b",
             "li wei.mp4": "c"}
        )
    },
    "a zip per learner": {
        "James Okafor.zip": zipped({"data.csv": TABLE, "Set up.jpg": "a"}),
        "02.zip": zipped({"portrait.jpg": "b"}),
        "Wei Li.zip": zipped({"deep/er/swing.mp4": "c"}),
    },
    "a zip of zips": {
        "class.zip": zipped(
            {
                "James Okafor.zip": zipped({"data.csv": TABLE, "montage.jpg": "a"}),
                "Mary Okafor.zip": zipped({"selfie.jpg": "b"}),
                "Li Wei.zip": zipped({"v.mp4": "c"}),
            }
        )
    },
    "a mixture": {
        "James Okafor/data.csv": TABLE,
        "photos.zip": zipped({"setup okafor james.jpg": "a", "selfie okafor mary.jpg": "b"}),
        "videos/li_wei.mp4": "c",
    },
    "sorted by kind": {
        "tables/okafor j.csv": TABLE,
        "setup photos/okafor j.jpg": "a",
        "selfies/okafor m.jpg": "b",
        "videos/li wei.mp4": "c",
    },
}  # fmt: skip


@pytest.mark.parametrize("layout", LAYOUTS)
def test_every_layout_gives_the_same_class(make_class: MakeClass, layout: str) -> None:
    work = read_class(make_class({"class_list.csv": LIST, **LAYOUTS[layout]}))
    assert [learner.id for learner in work.learners] == ["01", "02", "03"]
    kinds = {key: sorted(p.kind for p in item.pieces) for key, item in work.portfolios.items()}
    assert kinds == {"01": ["readings", "setup_photo"], "02": ["selfie"], "03": ["swing_video"]}
    assert (work.doubts, work.unowned, work.problems) == ((), (), ())
    table = work.portfolios["01"].table
    assert table is not None
    assert [round(reading.length_m, 3) for reading in table.readings] == [0.2, 0.3, 0.4, 0.5, 0.6]
    assert all(p.match and p.match.why for item in work.portfolios.values() for p in item.pieces)


def test_what_is_not_hers_is_left_with_the_others_to_settle(make_class: MakeClass) -> None:
    folder = make_class({"class_list.csv": LIST, "James Okafor.csv": TABLE, "song.mp3": "x"})
    assert read_class(folder).portfolios["01"].table is not None
    refused = Settled(refused={"James Okafor.csv": frozenset({"01"})})
    work = read_class(folder, refused)
    assert work.portfolios["01"].pieces == ()
    (doubt,) = work.doubts
    assert "01" not in {match.learner for match in doubt.candidates}
    assert doubt.why == "You said that it is not from James Okafor."
    # Whose it is, said later, holds; and a refusal that fits nobody changes nothing.
    both = replace(refused, owners={"James Okafor.csv": "01"})
    assert read_class(folder, both).portfolios["01"].table is not None
    strange = Settled(refused={"James Okafor.csv": frozenset({"99"})})
    assert read_class(folder, strange).doubts == ()


def test_without_a_list_a_file_set_aside_names_no_learner(make_class: MakeClass) -> None:
    folder = make_class({"Amina Yusuf/readings.csv": TABLE, "tax.csv": TABLE})
    assert {learner.id for learner in read_class(folder).learners} == {"Amina Yusuf", "tax"}
    work = read_class(folder, Settled(owners={"tax.csv": ""}))
    assert {learner.id for learner in work.learners} == {"Amina Yusuf"}
    assert [piece.file for piece in work.set_aside] == ["tax.csv"]


def test_a_row_of_a_class_sheet_is_set_aside_or_refused(make_class: MakeClass) -> None:
    heads = "id,name," + ",".join(f"L={n}cm t1 / s,L={n}cm t2 / s" for n in (20, 30, 40))
    sheet = (
        f"{heads}\n01,James Okafor,8.97,9.05,10.99,11.02,12.69,12.75\n"
        "02,M Okafor,8.90,9.00,10.90,11.00,12.60,12.70\n"
    )
    folder = make_class({"class_list.csv": LIST, "results.csv": sheet})
    first, second = (read_class(folder).portfolios[i].pieces[0].file for i in ("01", "02"))
    work = read_class(folder, Settled({first: ""}, {second: frozenset({"02"})}))
    assert [piece.file for piece in work.set_aside] == [first]
    assert [doubt.piece.file for doubt in work.doubts] == [second]
    assert not work.portfolios["01"].pieces
    assert not work.portfolios["02"].pieces


def test_one_class_sheet_with_a_row_per_learner(make_class: MakeClass) -> None:
    heads = "id,name," + ",".join(f"L={n}cm t1 / s,L={n}cm t2 / s" for n in (20, 30, 40))
    sheet = (
        f"{heads}\n01,James Okafor,8.97,9.05,10.99,11.02,12.69,12.75\n"
        "02,M Okafor,8.90,9.00,10.90,11.00,12.60,12.70\n"
        ",Okafor,8.91,9.01,10.91,11.01,12.61,12.71\n"
        "77,Zed Quux,8.92,9.02,10.92,11.02,12.62,12.72\n"
    )
    work = read_class(make_class({"class_list.csv": LIST, "results.csv": sheet}))
    james = work.portfolios["01"]
    assert james.table is not None
    assert len(james.table.readings) == 3
    (piece,) = james.pieces
    assert piece.match is not None
    assert piece.match.by == "row"
    assert work.portfolios["02"].table is not None
    (doubt,) = work.doubts
    assert {match.learner for match in doubt.candidates} == {"01", "02"}
    assert [p.file for p in work.unowned] != ["results.csv"]
    assert len(work.unowned) == 1
    settled = read_class(piece_folder := make_class({}), Settled(owners={doubt.piece.file: "03"}))
    assert settled.portfolios["03"].table is not None
    assert settled.doubts == ()
    # Without a list the rows are the class.
    (piece_folder / "class_list.csv").unlink()
    alone = read_class(piece_folder)
    assert {"01", "02", "77"} <= {learner.id for learner in alone.learners}


def test_doubts_are_left_and_her_choice_is_kept(make_class: MakeClass) -> None:
    folder = make_class({"class_list.csv": LIST, "Okafor.csv": TABLE, "song.mp3": "x"})
    work = read_class(folder)
    (doubt,) = work.doubts
    assert [match.learner for match in doubt.candidates] == ["01", "02"]
    assert doubt.why
    assert [piece.file for piece in work.unowned] == ["song.mp3"]
    settled = read_class(folder, Settled(owners={"Okafor.csv": "02", "song.mp3": "01"}))
    assert settled.doubts == settled.unowned == ()
    (piece,) = settled.portfolios["02"].pieces
    assert piece.match is not None
    assert piece.match.by == "teacher"
    nobody = read_class(folder, Settled(owners={"Okafor.csv": ""}))
    assert [piece.file for piece in nobody.unowned] == ["song.mp3"]
    assert [piece.file for piece in nobody.set_aside] == ["Okafor.csv"]
    assert nobody.doubts == ()
    gone = read_class(folder, Settled(owners={"Okafor.csv": "99"}))
    assert len(gone.doubts) == 1
    assert "99" in gone.problems[0].message


def test_her_choice_wins_over_a_clear_match_and_may_settle_a_folder(make_class: MakeClass) -> None:
    folder = make_class(
        {"class_list.csv": LIST, "James Okafor/t.csv": TABLE, "James Okafor/p.jpg": "x"}
    )
    work = read_class(folder, Settled(owners={"James Okafor/": "03", "James Okafor/p.jpg": "02"}))
    assert pieces(work, "03") == {"James Okafor/t.csv": "readings"}
    assert pieces(work, "02") == {"James Okafor/p.jpg": "photo"}


def test_a_clash_of_folder_and_file(make_class: MakeClass) -> None:
    work = read_class(make_class({"class_list.csv": LIST, "James Okafor/Li Wei table.csv": TABLE}))
    (doubt,) = work.doubts
    assert {match.learner for match in doubt.candidates} == {"01", "03"}


def test_a_picture_that_no_word_settles_stays_a_photo(make_class: MakeClass) -> None:
    folder = make_class(
        {
            "class_list.csv": LIST,
            "01/IMG_4821.jpg": "a",
            "01/graph.png": "b",
            "01/notes.txt": "c",
            "01/report.pdf": "d",
            "01/thing.xyz": "e",
            "02/Versuchsaufbau.jpeg": "f",
            "02/swafoto saya.heic": "g",
            "03/selfie with setup.jpg": "h",
            "03/setup/IMG_1.jpg": "i",
        }
    )
    work = read_class(folder)
    assert set(pieces(work, "01").values()) == {"photo", "report", "unknown"}
    assert pieces(work, "01")["01/IMG_4821.jpg"] == "photo"
    assert pieces(work, "02") == {
        "02/Versuchsaufbau.jpeg": "setup_photo",
        "02/swafoto saya.heic": "selfie",
    }
    assert set(pieces(work, "03").values()) == {"selfie", "setup_photo"}
    mended = read_class(folder, Settled(kinds={"01/IMG_4821.jpg": "selfie"}))
    (piece,) = mended.portfolios["01"].of_kind("selfie")
    assert piece.kind_from == "teacher"


@pytest.mark.parametrize(
    ("first", "second"),
    [
        ("01/readings.csv", "01/readings v2.csv"),
        ("01/readings.csv", "01/readings (1).csv"),
        ("01/readings v2.csv", "01/readings v3.csv"),
        ("01/readings v3.csv", "01/readings final.csv"),
        ("01/readings.csv", "01/resubmitted/readings.csv"),
        ("01/readings.csv", "01/readings_corrected.csv"),
        ("01/readings draft.csv", "01/readings.csv"),
        ("01/mesures.csv", "01/mesures corrigé.csv"),
        ("01 readings.csv", "resubmissions/01 readings.csv"),
        ("01.zip", "01 resubmission.zip"),
    ],
)
def test_a_later_hand_in_by_name(make_class: MakeClass, first: str, second: str) -> None:
    def packed(file: str, text: str) -> str | bytes:
        return zipped({"t.csv": text}) if file.endswith(".zip") else text

    folder = make_class(
        {"class_list.csv": LIST, first: packed(first, TABLE), second: packed(second, LATER_TABLE)}
    )
    work = read_class(folder)
    portfolio = work.portfolios["01"]
    (current,) = portfolio.pieces
    (earlier,) = portfolio.earlier
    assert current.file.startswith(second)
    assert earlier.file.startswith(first)
    assert "later_hand_in" in checks(work, "01")
    assert portfolio.table is not None
    assert portfolio.table.source.file == current.file
    assert portfolio.table.readings[0].timings[0].time_s == pytest.approx(8.99)


def test_pictures_and_videos_are_handed_in_again_by_name(make_class: MakeClass) -> None:
    folder = make_class(
        {
            "class_list.csv": LIST, "01/setup.jpg": "a", "01/setup v2.jpg": "bb",
            "01/IMG_1.jpg": "c", "01/IMG_1 (1).jpg": "dd", "01/IMG_2.jpg": "eee",
            "02/clip.mp4": "a", "02/final/clip.mp4": "bb", "02/me old.png": "c",
            "02/me.png": "dd",
        }
    )  # fmt: skip
    work = read_class(folder)
    assert {piece.file for piece in work.portfolios["01"].earlier} == {
        "01/setup.jpg",
        "01/IMG_1.jpg",  # IMG_2 is another picture, not a later one
    }
    assert set(pieces(work, "02")) == {"02/final/clip.mp4", "02/me.png"}
    assert checks(work, "02").count("later_hand_in") == 2


def test_an_empty_file_replaces_nothing(make_class: MakeClass) -> None:
    work = read_class(make_class({"class_list.csv": LIST, "01/me.jpg": "a", "01/me v2.jpg": ""}))
    assert set(pieces(work, "01")) == {"01/me.jpg", "01/me v2.jpg"}
    assert checks(work, "01") == ["empty_piece"]


def test_a_later_hand_in_by_clock(make_class: MakeClass) -> None:
    folder = make_class(
        {
            "class_list.csv": LIST, "01/table.csv": TABLE, "01/my data.csv": LATER_TABLE,
            "01/swing.mp4": "a", "01/other.mp4": "bb",
            "01/setup front.jpg": "c", "01/setup side.jpg": "dd",
        }
    )  # fmt: skip
    later = dt.datetime(2026, 3, 5, 12)
    dated(folder / "01/my data.csv", later)
    dated(folder / "01/other.mp4", later)
    dated(folder / "01/setup side.jpg", dt.datetime(2026, 3, 2, 10, 1))
    work = read_class(folder)
    assert pieces(work, "01") == {
        "01/my data.csv": "readings",
        "01/other.mp4": "swing_video",
        # A minute apart: two views of one set-up.
        "01/setup front.jpg": "setup_photo",
        "01/setup side.jpg": "setup_photo",
    }
    assert {p.file for p in work.portfolios["01"].earlier} == {"01/table.csv", "01/swing.mp4"}
    assert checks(work, "01").count("later_hand_in") == 2
    assert work.portfolios["01"].handed_in == later


def test_the_same_file_twice_is_a_duplicate(make_class: MakeClass) -> None:
    folder = make_class(
        {"class_list.csv": LIST, "01/a.csv": TABLE, "01/b.csv": TABLE,
         "01/c.jpg": "same", "01/d.jpg": "same", "01/e.jpg": "diff"}
    )  # fmt: skip
    work = read_class(folder)
    assert len(work.portfolios["01"].of_kind("readings")) == 1
    assert len(work.portfolios["01"].of_kind("photo")) == 2
    said = [f.message for f in work.portfolios["01"].findings if f.check == "later_hand_in"]
    assert len(said) == 2
    assert all("twice" in text for text in said)


def test_two_tables_that_nothing_tells_apart(make_class: MakeClass) -> None:
    short = "\n".join(LATER_TABLE.splitlines()[:4])
    work = read_class(make_class({"class_list.csv": LIST, "01/a.csv": TABLE, "01/b.csv": short}))
    assert "several_tables" in checks(work, "01")
    assert pieces(work, "01") == {"01/a.csv": "readings"}  # the fuller one


def test_times_within_a_minute_decide_nothing(make_class: MakeClass) -> None:
    short = "\n".join(LATER_TABLE.splitlines()[:4])
    folder = make_class(
        {"class_list.csv": LIST, "01/a.csv": TABLE, "01/b.csv": short,
         "02/t.csv": TABLE, "02/t final.csv": LATER_TABLE}
    )  # fmt: skip
    for file, second in (
        ("01/a.csv", 0),
        ("01/b.csv", 41),
        ("02/t.csv", 30),
        ("02/t final.csv", 0),
    ):
        dated(folder / file, dt.datetime(2026, 3, 5, 12, 0, second))
    work = read_class(folder)
    assert pieces(work, "01") == {"01/a.csv": "readings"}  # the fuller one, not the later by 41 s
    assert "several_tables" in checks(work, "01")
    (said,) = (f.message for f in work.portfolios["02"].findings if f.check == "later_hand_in")
    assert said == (
        "A later readings table was handed in: 02/t final.csv is used in place of 02/t.csv, which "
        "is kept."
    )
    dated(folder / "02/t.csv", dt.datetime(2026, 3, 4, 18, 5))
    findings = read_class(folder).portfolios["02"].findings
    (said,) = (f.message for f in findings if f.check == "later_hand_in")
    assert "05 March 2026, 12:00" in said
    assert "04 March 2026, 18:05" in said


def test_a_later_table_without_readings_does_not_hide_the_good_one(make_class: MakeClass) -> None:
    folder = make_class(
        {"class_list.csv": LIST, "01/a.csv": TABLE, "01/final.csv": "nothing,here\nat,all\n",
         "01/v9.xlsx": ""}
    )  # fmt: skip
    work = read_class(folder)
    portfolio = work.portfolios["01"]
    assert portfolio.table is not None
    assert portfolio.table.source.file == "01/a.csv"
    assert pieces(work, "01")["01/final.csv"] == "unknown"
    assert "empty_piece" in checks(work, "01")


def test_broken_pieces_stay_with_their_learner(make_class: MakeClass) -> None:
    folder = make_class(
        {
            "class_list.csv": LIST, "01/readings.xlsx": b"PK\x03\x04 broken", "02/setup.jpg": "",
            "03/table.numbers": "x", "Li Wei.zip": b"no zip",
        }
    )  # fmt: skip
    work = read_class(folder)
    assert work.portfolios["01"].table is None
    assert set(checks(work, "01")) & {"unreadable_file", "table_not_understood"}
    assert checks(work, "02") == ["empty_piece"]
    assert "unreadable_file" in checks(work, "03")
    assert [problem.check for problem in work.problems] == ["unreadable_file"]
    assert "Li Wei.zip" in pieces(work, "03")


def test_no_list_no_brief(make_class: MakeClass) -> None:
    folder = make_class(
        {
            "Amina Yusuf/readings.csv": TABLE, "Amina Yusuf/photos/IMG_1.jpg": "p",
            "Amina Yusuf/old/readings.csv": LATER_TABLE,
            "Bo Lin readings.csv": TABLE, "bo_lin setup.jpg": "q",
            "subs.zip": zipped({f"Learner {n}/t.csv": TABLE for n in (1, 2, 10)}),
            "Cy Dar.zip": zipped({"data/t.csv": TABLE}),
            "song.mp3": "k", "table.csv": TABLE,
        }
    )  # fmt: skip
    work = read_class(folder)
    assert [learner.id for learner in work.learners] == [
        "Amina Yusuf", "Bo Lin", "Cy Dar", "Learner 1", "Learner 2", "Learner 10", "table",
    ]  # fmt: skip
    assert pieces(work, "Bo Lin") == {
        "Bo Lin readings.csv": "readings",
        "bo_lin setup.jpg": "setup_photo",
    }
    assert len(work.portfolios["Amina Yusuf"].earlier) == 1
    assert [piece.file for piece in work.unowned] == ["song.mp3"]
    assert all(item.table for item in work.portfolios.values())


def test_brief_and_list_problems_reach_the_class(make_class: MakeClass) -> None:
    folder = make_class(
        {
            "brief.toml": 'lenghts = 4\ntimings_per_length = 3\npartners = [["01", "99"]]\n',
            "class_list.csv": "id,name,partner\n01,Ana Silva,02\n02,Bo Lin,\n02,Cy Dar,\n",
            "01/t.csv": TABLE,
        }
    )
    work = read_class(folder)
    assert work.brief.timings_per_length == 3
    assert ("01", "02") in work.brief.partners
    said = " ".join(problem.message for problem in work.problems)
    assert "lenghts" in said
    assert "have the id 02" in said
    assert "99" in said


def test_an_unnamed_list_and_a_second_one(make_class: MakeClass) -> None:
    rows = "id,name,class\n01,James Okafor,B\n02,Mary Okafor,B\n"
    folder = make_class({"10B.csv": rows, "James Okafor/t.csv": TABLE})
    assert [learner.id for learner in read_class(folder).learners] == ["01", "02"]
    (folder / "more.csv").write_text(rows + "03,Li Wei,B\n")
    work = read_class(folder)
    assert len(work.learners) == 3
    assert "Several files look like a class list" in work.problems[0].message


@pytest.mark.parametrize("headings", ["Ref,Who,Set", "Kürzel,Wer,Kurs"])
def test_a_list_called_one_is_nobody_s_table_whatever_its_headings(
    make_class: MakeClass, headings: str
) -> None:
    odd = f"{headings}\n01,James Okafor,10Q\n02,Mary Okafor,10Q\n"
    work = read_class(make_class({"Class list 10Q.csv": odd, "James Okafor/a.csv": TABLE}))
    assert [learner.name for learner in work.learners] == ["James Okafor"]
    assert any("Class list 10Q.csv" in finding.message for finding in work.problems)


def test_readings_called_a_list_are_readings(make_class: MakeClass) -> None:
    work = read_class(make_class({"Mary's class list.csv": TABLE, "James Okafor/a.csv": TABLE}))
    assert len(work.learners) == 2


def test_typed_rows_and_corrections(make_class: MakeClass) -> None:
    folder = make_class({"class_list.csv": LIST, "01/t.csv": TABLE, "02/t.csv": "no table"})
    typed = typed_rows([{"length_m": 0.2, "swings": 10, "timings_s": [9.0, 9.1]}])
    work = read_class(
        folder,
        Settled(
            typed={"02": typed},
            corrections={"01/t.csv||B2": "8,79", "01/t.csv||B3": "soon", "gone.csv||A1": "1"},
        ),
    )
    table = work.portfolios["02"].table
    assert table is not None
    assert table.source.file == "typed by the teacher"
    assert "table_not_understood" not in checks(work, "02")
    mended = work.portfolios["01"].table
    assert mended is not None
    assert mended.readings[0].timings[0].time_s == pytest.approx(8.79)
    assert mended.readings[0].timings[0].source.raw == "8.97"
    said = [f.message for f in work.portfolios["01"].findings]
    assert any("soon" in text for text in said)


def test_a_correction_in_a_class_sheet_is_one_learner_s(make_class: MakeClass) -> None:
    sheet = (
        "id,name,L=20cm t1 / s,L=20cm t2 / s,L=30cm t1 / s,L=30cm t2 / s\n"
        "01,James Okafor,8.97,9.05,10.99,11.02\n02,Mary Okafor,8.90,9.00,10.90,11.00\n"
    )
    folder = make_class({"class_list.csv": LIST, "results.csv": sheet})
    before = read_class(folder)
    after = read_class(folder, Settled(corrections={"results.csv||C2": "8.77"}))
    table = after.portfolios["01"].table
    assert table is not None
    assert table.readings[0].timings[0].time_s == pytest.approx(8.77)
    assert after.portfolios["02"] == before.portfolios["02"]


def test_progress_and_stop(make_class: MakeClass) -> None:
    folder = make_class({"class_list.csv": LIST, **{f"0{n}/t.csv": TABLE for n in (1, 2, 3)}})
    seen: list[tuple[int, int, str]] = []
    read_class(folder, progress=lambda *step: seen.append(step))
    assert seen == [(1, 3, "James Okafor"), (2, 3, "Mary Okafor"), (3, 3, "Li Wei")]
    seen.clear()
    work = read_class(folder, progress=lambda *step: seen.append(step), stop=lambda: bool(seen))
    assert len(seen) == 1
    assert len(work.portfolios) == 3
    assert any("stopped" in problem.message for problem in work.problems)


def test_nothing_in_the_folder_is_touched(make_class: MakeClass) -> None:
    folder = make_class(
        {"class_list.csv": LIST, "brief.toml": "lengths = 5\n", **LAYOUTS["a mixture"],
         "class.zip": zipped({"Li Wei.zip": zipped({"t.csv": TABLE})})}
    )  # fmt: skip

    def state(root: Path) -> dict[str, tuple[str, int, int]]:
        return {
            os.path.join(base, name): (
                hashlib.sha256((Path(base) / name).read_bytes()).hexdigest(),
                (Path(base) / name).stat().st_mtime_ns,
                (Path(base) / name).stat().st_mode,
            )
            for base, _, names in os.walk(root)
            for name in names
        }

    before = state(folder)
    for path in [folder, *folder.rglob("*")]:
        path.chmod(0o555 if path.is_dir() else 0o444)
    try:
        frozen = state(folder)
        read_class(folder)
        assert state(folder) == frozen
    finally:
        for path in [folder, *folder.rglob("*")]:
            path.chmod(0o755 if path.is_dir() else 0o644)
    assert {key: value[:2] for key, value in state(folder).items()} == {
        key: value[:2] for key, value in before.items()
    }


def test_a_rubric_of_the_class_s_own_is_nobody_s_work(make_class):
    folder = make_class(
        {"class_list.csv": "id,name\n1,Ada Quill\n", "our rubric.toml": "[[criterion]]\n"}
    )
    work = read_class(folder)
    assert work.unowned == ()
    assert work.doubts == ()
