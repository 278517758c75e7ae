"""What leaves in a moderation pack, and what must not."""

import dataclasses
import io
import json
import os
import re
import zipfile

import av
import pytest
from fpdf import FPDF
from hypothesis import given, settings
from hypothesis import strategies as st
from invented_class import IDS, NAMES, table
from PIL import Image

from markbench.intake.brief_writing import write_brief
from markbench.model import Brief, Decision, Finding, Learner, ReadingsTable, Source
from markbench.moderation.pack import LeftOut, numbers_for, summed_up
from markbench.moderation.plain import from_plain, to_plain
from markbench.moderation.records import second_marks
from markbench.moderation.sample import draw
from markbench.moderation.scrubbing import Scrubber
from markbench.session import Session
from markbench.session.errors import PackError
from markbench.session.moderating import take_sample
from markbench.session.pack_media import NotCleanError, clean_photo, clean_video, tags_of
from markbench.session.pack_reports import words_of
from markbench.session.pack_session import open_pack
from markbench.session.packing import write_pack
from markbench.session.replies import merge_reply


@pytest.fixture
def pack(marked, tmp_path):
    take_sample(marked, seed=4)
    return write_pack(marked, tmp_path / "out" / "class.markbench-pack")


def members(path):
    with zipfile.ZipFile(path) as archive:
        return {name: archive.read(name) for name in archive.namelist()}


def test_no_name_id_or_private_word_is_anywhere_in_the_pack(pack):
    found = members(pack.path)
    told = re.compile(
        r"\bada\b|invented|\bben\b|made-up|cleo|fabricated|\bdov\b|imaginary|S2410\d|private word",
        re.IGNORECASE,
    )
    assert any(name.endswith("portfolio.json") for name in found)
    for name, data in found.items():
        assert not told.search(name)
        if name.endswith(".json"):
            assert not told.search(data.decode()), (name, told.search(data.decode()))


def test_the_first_marks_travel_with_names_taken_out(pack, marked):
    number = pack.numbers[IDS[1]]
    first = json.loads(members(pack.path)[f"{number}/first.json"])
    ada = pack.numbers[IDS[0]]
    assert first[0]["feedback"] == f"Well timed, learner {number}, and better than learner {ada}."
    assert first[0]["by"] == "T. Teacher"
    assert len(first) == len(marked.rubric.criteria)
    assert first[0]["reasons"]


def test_photos_and_films_are_clean_and_selfies_stay_behind(pack):
    found = members(pack.path)
    photos = [data for name, data in found.items() if name.endswith(".jpg")]
    films = [data for name, data in found.items() if name.endswith(".mp4")]
    assert (len(photos), len(films)) == (4, 1)
    for data in photos:
        assert len(Image.open(io.BytesIO(data)).getexif()) == 0
        assert b"InventedCamera" not in data
    assert tags_of(films[0]) == set()
    assert b"InventedCamera" not in films[0]
    assert not any("selfie" in name for name in found)
    assert sum("photos of learners" in str(one) for one in pack.left_out) == 4


def test_selfies_go_where_the_brief_allows_them(marked, folder, tmp_path):
    marked.close()
    write_brief(folder / "brief.toml", dataclasses.replace(marked.brief, selfies_in_pack=True))
    again = Session.open(folder, "T. Teacher")
    take_sample(again, seed=4)
    found = members(write_pack(again, tmp_path / "a.markbench-pack").path)
    assert sum(name.endswith("selfie_1.jpg") for name in found) == 4
    again.close()


def test_a_film_keeps_every_picture_and_loses_sound_and_place(evidence):
    assert {"location", "com.apple.quicktime", "a track that is no picture"} <= tags_of(
        evidence["film"]
    )
    clean = clean_video(evidence["film"])
    with av.open(io.BytesIO(evidence["film"])) as a, av.open(io.BytesIO(clean)) as b:
        for one, other in zip(a.decode(video=0), b.decode(video=0), strict=True):
            assert one.pts * one.time_base == other.pts * other.time_base
            assert (one.to_ndarray() == other.to_ndarray()).all()


@pytest.mark.parametrize("clean", [clean_photo, clean_video])
def test_what_cannot_be_cleaned_does_not_go(clean):
    with pytest.raises(NotCleanError):
        clean(b"this is neither a photo nor a film")


def test_no_pack_without_a_sample_or_with_someone_unmarked(session, tmp_path):
    with pytest.raises(PackError, match="draw one first"):
        write_pack(session, tmp_path / "a.markbench-pack")
    take_sample(session, seed=1)
    with pytest.raises(PackError, match="Nobody"):
        write_pack(session, tmp_path / "a.markbench-pack")
    asked = draw({IDS[0]: None, IDS[1]: None}, {IDS[1]: ["asked"]}, (), 1)
    session.decide(Decision("sample", "", "", asked.to_json()))
    with pytest.raises(PackError, match=f"Not fully marked yet: {NAMES[1]}"):
        write_pack(session, tmp_path / "a.markbench-pack")
    assert list(tmp_path.glob("*.markbench-pack*")) == []


def test_the_learners_files_are_untouched(marked, folder, tmp_path):
    before = {p: p.read_bytes() for name in NAMES for p in (folder / name).iterdir()}
    take_sample(marked, seed=4)
    write_pack(marked, tmp_path / "a.markbench-pack")
    assert {p: p.read_bytes() for name in NAMES for p in (folder / name).iterdir()} == before


def test_numbers_tell_nothing_of_the_order():
    ids = [f"{n:02}" for n in range(40)]
    numbers = numbers_for(ids, 3)
    assert sorted(numbers.values()) == [f"{n:02}" for n in range(1, 41)]
    assert [numbers[i] for i in ids] != sorted(numbers.values())
    assert numbers_for(reversed(ids), 3) == numbers


@pytest.mark.parametrize(
    ("text", "without"),
    [
        ("Ada Invented timed it", "learner 01 timed it"),
        ("ada_setup.jpg", "learner 01_setup.jpg"),
        ("like BEN's", "like another learner's"),
        ("Adamant benches", "Adamant benches"),
        ("S24101: 12.5", "learner 01: 12.5"),
        ("07 is 14.2 s", "07 is 14.2 s"),
    ],
)
def test_scrubbing(text, without):
    class_list = [Learner("S24101", "Ada Invented"), Learner("07", "Ben Made-Up")]
    scrubber = Scrubber.of(class_list, {"S24101": "01"})
    assert scrubber.text(text) == without
    assert scrubber.text(without) == without


@pytest.mark.parametrize(
    ("text", "without"),
    [
        ("Mark the axes and say what you will change.",) * 2,
        ("Will you say where the mark is?",) * 2,
        ("The bob hung from a steady hook.",) * 2,
        ("Full marks, and BOB was there.", "Full marks, and learner 02 was there."),
        ("Well done, Mark.", "Well done, learner 01."),
        ("Better than Will, who guessed.", "Better than learner 03, who guessed."),
        ("Mark's graph is neat.", "learner 01's graph is neat."),
        ("Neat. Mark left two out.", "Neat. learner 01 left two out."),
        ("Bob timed ten swings.", "learner 02 timed ten swings."),
        ("mark stone and BOB WOOD", "learner 01 and learner 02"),
        ("Bob_Wood.jpg", "learner 02_learner 02.jpg"),
        ("Willow and marking and unmarked",) * 2,
        ("Steady, from the rubric: steady hand. So said Steady.",
         "Steady, from the rubric: steady hand. So said learner 03."),
    ],
)  # fmt: skip
def test_names_that_are_words_are_taken_out_where_they_are_names(text, without):
    class_list = [Learner("1", "Mark Stone"), Learner("2", "Bob Wood"), Learner("3", "Will Steady")]
    numbers = {"1": "01", "2": "02", "3": "03"}
    scrubber = Scrubber.of(class_list, numbers, "A steady support.")
    assert scrubber.text(text) == without


def test_what_may_be_a_name_and_stays_is_named():
    scrubber = Scrubber.of([Learner("1", "Mark Stone")], {"1": "01"})
    assert scrubber.doubts("Mark the axes of the graph. Good, Mark.") == (
        "Mark the axes of the graph.",
    )
    assert scrubber.doubts("A mark on the wall.") == ()


def docx(*paragraphs):
    """A word processor's document, with its author in the properties (ECMA-376)."""
    space = "http://schemas.openxmlformats.org/wordprocessingml/2006/main"
    body = "".join(f"<w:p><w:r><w:t>{text}</w:t></w:r></w:p>" for text in paragraphs)
    held = io.BytesIO()
    with zipfile.ZipFile(held, "w") as made:
        made.writestr("docProps/core.xml", "<author>Ada Invented</author>")
        document = f'<w:document xmlns:w="{space}"><w:body>{body}</w:body></w:document>'
        made.writestr("word/document.xml", document)
    return held.getvalue()


def pdf_of(text):
    made = FPDF()
    made.set_author("Ben Made-Up")
    made.add_page()
    made.set_font("Helvetica", size=11)
    made.multi_cell(0, 6, text)
    return bytes(made.output())


REPORTS = {
    "Ada Invented/report.docx": docx("By Ada Invented.", "I timed ten swings &amp; more."),
    "Ben Made-Up/report.pdf": pdf_of("Ben Made-Up helped Cleo. The thread was 40 cm."),
    "Cleo Fabricated/report.doc": b"\xd0\xcf\x11\xe0 an old document",
    "Dov Imaginary/my report.txt": "Dov says: the bob swung.".encode("utf-16-le"),
}


@pytest.fixture
def with_reports(marked, folder):
    marked.close()
    for name, data in REPORTS.items():
        (folder / name).write_bytes(data)
    again = Session.open(folder, "T. Teacher")
    yield again
    again.close()


def test_reports_stay_behind_unless_the_brief_allows_them(with_reports, folder, tmp_path):
    take_sample(with_reports, seed=4)
    packed = write_pack(with_reports, tmp_path / "a.markbench-pack")
    assert not any("report" in name for name in members(packed.path))
    assert sum("written reports" in str(one) for one in packed.left_out) == 4
    with_reports.close()
    brief = dataclasses.replace(with_reports.brief, reports_in_pack=True)
    write_brief(folder / "brief.toml", brief)
    again = Session.open(folder, "T. Teacher")
    packed = write_pack(again, tmp_path / "b.markbench-pack")
    again.close()
    found = members(packed.path)
    ada, ben, cleo = (packed.numbers[i] for i in IDS[:3])
    assert found[f"{ada}/report_1.txt"].decode() == (
        f"By learner {ada}.\nI timed ten swings & more.\n"
    )
    words = found[f"{ben}/report_1.txt"].decode()
    assert words.split() == (f"learner {ben} helped learner {cleo}. The thread was 40 cm.".split())
    assert f"{cleo}/report_1.txt" not in found
    assert any(one.number == cleo and "this kind" in one.why for one in packed.left_out)
    hers = open_pack(packed.path, "M. Moderator")
    assert hers.data(hers.portfolio(ada).of_kind("report")[0]).startswith(b"By learner")
    hers.close()


@pytest.mark.parametrize(
    ("name", "data"),
    [("a.docx", b""), ("a.docx", b"PK"), ("a.odt", docx("x")), ("a.pdf", b"%PDF-1.7"),
     ("a.txt", b" "), ("a.docx", docx("")), ("a.rtf", b"{}"), ("a", b"words")],
)  # fmt: skip
def test_a_report_without_words_that_can_be_read_stays(name, data):
    with pytest.raises(NotCleanError):
        words_of(name, data)


def test_model_objects_survive_the_journey(marked):
    for value, kind in (
        (marked.brief, Brief),
        (marked.portfolio(IDS[0]).table, ReadingsTable),
        (marked.findings(IDS[0]), tuple[Finding, ...]),
        (marked.rubric, type(marked.rubric)),
    ):
        assert from_plain(kind, json.loads(json.dumps(to_plain(value)))) == value


@settings(max_examples=40, deadline=None, derandomize=True)
@given(st.recursive(st.none() | st.booleans() | st.integers() | st.text(), lambda inner:
       st.lists(inner) | st.dictionaries(st.text(), inner)))  # fmt: skip
def test_anything_else_is_a_value_error(plain):
    try:
        made = from_plain(Source, plain)
    except ValueError:
        return
    assert isinstance(made, Source)


def test_undo_does_not_forget_a_pack_that_was_sent(pack, marked):
    marked.set_note(IDS[0], "after the pack")
    marked.undo()
    marked.undo()  # not the pack, but what was decided before it
    assert marked.value("sample") is None
    assert marked.value("pack", "", pack.digest) is not None


def test_what_the_moderator_took_back_is_taken_back_in_the_class_too(pack, marked, tmp_path):
    hers = open_pack(pack.path, "M. Moderator")
    number, criterion = hers.learners[0].id, marked.rubric.criteria[0]
    learner = next(i for i, n in pack.numbers.items() if n == number)
    hers.second_mark(number, criterion.id, criterion.levels[0].name)
    hers.write_reply(tmp_path / "first.markbench-reply")
    hers.undo()
    hers.write_reply(tmp_path / "later.markbench-reply")
    hers.close()
    merge_reply(marked, tmp_path / "first.markbench-reply")
    assert len(second_marks(marked.state)[learner][criterion.id]) == 1
    merge_reply(marked, tmp_path / "later.markbench-reply")
    assert not second_marks(marked.state).get(learner)


# --- what stayed behind, told ---------------------------------------------------------------


def test_many_pieces_left_out_for_one_reason_are_counted_and_a_few_are_named():
    selfies = [LeftOut(f"{n:02}", "selfie", "not allowed") for n in range(1, 6)]
    films = [LeftOut("07", "swing video", "damaged"), LeftOut("09", "swing video", "damaged")]
    report = LeftOut("03", "report", "not allowed")
    assert summed_up([films[0], *selfies, report, films[1]]) == (
        "5 × selfie; report of learner 03: not allowed.",
        "swing video of learners 07, 09: damaged.",
    )
    assert summed_up([]) == ()


def test_a_film_that_cannot_be_cleaned_says_so_without_the_numbers_of_the_system(marked, folder):
    with pytest.raises(NotCleanError) as told:
        clean_video(b"\x00\x00\x00\x18ftypmp42" + b"no film" * 50)
    assert str(told.value) == (
        "the video is damaged or of a kind that cannot be copied without its tags"
    )


def test_findings_speak_of_no_file_by_its_path_and_of_none_as_if_it_could_be_opened(
    marked, folder, tmp_path
):
    own = folder / NAMES[0]
    later = own / "table again.csv"
    later.write_text(table(NAMES[0], 1), "utf-8")
    stamp = (own / f"{NAMES[0]} readings.csv").stat().st_mtime
    os.utime(later, (stamp + 90_000, stamp + 90_000))
    os.utime(own / f"{NAMES[0]} selfie.jpg", (stamp + 90_000, stamp + 90_000))
    brief = folder / "brief.toml"
    brief.write_text("closes = 2020-03-01\n" + brief.read_text("utf-8"), "utf-8")
    marked.close()
    again = Session.open(folder, "T. Teacher")
    take_sample(again, seed=4)
    packed = write_pack(again, tmp_path / "class.markbench-pack")
    again.close()
    number = packed.numbers[IDS[0]]
    found = json.loads(members(packed.path)[f"{number}/portfolio.json"])["findings"]
    (replaced,) = (one["message"] for one in found if "in place of" in one["message"])
    assert f"in place of {number}/earlier_readings_1 (not in the pack)" in replaced
    (late,) = (one["message"] for one in found if one["check"] == "outside_window")
    assert f"{number}/selfie (not in the pack)" in late
    assert "left out" not in late
    assert "latest: " in late
