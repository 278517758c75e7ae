import dataclasses
import datetime as dt
import io
import re
import unicodedata

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from invented_sheets import (
    COPIED,
    DRAFTED,
    EXPLAINED,
    FULLY,
    class_report,
    learner_report,
    mark,
    named,
    read_back,
)
from pypdf import PdfReader

from markbench.export.feedback import feedback_sheet
from markbench.export.feedback.pdf import pdf


def test_everything_a_learner_should_read_can_be_read_back(sheet):
    text = read_back(pdf(sheet)[0])
    for expected in (
        "Pendulum & home",
        "Nguyễn Thị Ánh",
        "L01",
        "7B",
        "2026-03-05",
        "6 of 8",
        "Full: 4 of 4",
        "Part: 2 of 4",
        "Your 9.11 s and 9.2 s at 20.5 cm agree.",
        "“Full” (4 marks) asks for: All of it, and right.",
        "9.11, 9.2",
        "0.205",
        "1.2233",
        # Rounded by hand by the Particle Data Group's rule: 571 keeps one figure, 213, 139
        # and (of 0.0712) 712 keep two, two and one.
        "4.03 ± 0.06 s²/m",
        "0.119 ± 0.021 s²",
        "9.80 ± 0.14 m/s²",
        "9.79 ± 0.07 m/s²",
        "T² / s²",
        "glass",
        "chairs",
        "rules of your school",
        "page 2 of 2",
    ):
        assert expected in text


def test_what_is_not_the_learners_to_read_is_not_there(sheet):
    text = read_back(pdf(sheet)[0])
    for absent in (COPIED, DRAFTED, EXPLAINED, "T. Marker", "hand-ins", "Bea", "half swings"):
        assert absent not in text


def test_page_is_a4_in_english_with_its_type_embedded(sheet):
    document = PdfReader(io.BytesIO(pdf(sheet)[0]))
    assert document.root_object["/Lang"] == "en"
    assert document.metadata.title == "Pendulum & home: Nguyễn Thị Ánh"
    for page in document.pages:
        # ISO 216: 210 mm × 297 mm.
        assert float(page.mediabox.width) == pytest.approx(210 / 25.4 * 72, abs=0.01)
        assert float(page.mediabox.height) == pytest.approx(297 / 25.4 * 72, abs=0.01)
        for font in page["/Resources"]["/Font"].values():
            inner = font.get_object()["/DescendantFonts"][0].get_object()
            assert "/FontFile2" in inner["/FontDescriptor"]


def test_nothing_is_coloured_and_the_graph_is_no_picture(sheet):
    for page in PdfReader(io.BytesIO(pdf(sheet)[0])).pages:
        drawn = page.get_contents().get_data().decode("latin-1")
        for red, green, blue in re.findall(r"([\d.]+) ([\d.]+) ([\d.]+) (?:rg|RG)\b", drawn):
            assert red == green == blue
        assert not re.search(r"\b[kK]\n", drawn)
        assert not page.images


def test_the_same_sheet_has_the_same_bytes(sheet):
    data, _ = pdf(sheet)
    assert pdf(sheet)[0] == data
    made = PdfReader(io.BytesIO(data)).metadata.creation_date
    assert made == dt.datetime(2026, 3, 5, tzinfo=dt.UTC)


@pytest.mark.parametrize(
    "name",
    [
        "Nguyễn Thị Ánh Tuyết",
        "Łukasz Żółć-Wąsik",
        "Ελένη Παπαδοπούλου",
        "Дмитрий Щукин",
        "Türkân Işık",
    ],
)
def test_names_read_back_as_they_were(report, name):
    data, boxes = pdf(named(report, unicodedata.normalize("NFD", name)))
    assert not boxes
    assert unicodedata.normalize("NFC", name) in read_back(data)


@pytest.mark.parametrize("name", ["فاطمة الزهراء", "יעל כהן"])
def test_names_from_the_right_keep_their_letters(report, name):
    data, boxes = pdf(named(report, name))
    assert not boxes
    # Readers differ in the order of words; joined forms count as their letters.
    words = set(unicodedata.normalize("NFKC", read_back(data)).split())
    assert set(name.split()) <= words


def test_letters_without_type_are_boxes_and_the_sheet_says_so(report):
    data, boxes = pdf(named(report, "李小龍 Bruce"))
    assert boxes == set("李小龍")
    text = read_back(data)
    assert "□□□ Bruce" in text
    assert "□ stands for a letter" in text
    assert "L01" in text


def test_no_note_about_boxes_without_boxes(sheet):
    assert "□" not in read_back(pdf(sheet)[0])


# Each example writes a whole document.
@settings(
    max_examples=8,
    derandomize=True,
    deadline=None,
    suppress_health_check=[HealthCheck.function_scoped_fixture],
)
@given(name=st.text(max_size=60), said=st.text(max_size=300))
def test_no_text_at_all_stops_a_sheet(report, name, said):
    sheet = named(report, name)
    first = dataclasses.replace(sheet.criteria[0], feedback=said)
    data, _ = pdf(dataclasses.replace(sheet, criteria=(first, *sheet.criteria[1:])))
    assert "Pendulum & home" in read_back(data)


def test_long_feedback_runs_over_pages_that_find_each_other():
    words = " ".join(f"word{k}" for k in range(1500))
    one = learner_report("L01", "Ana Long", (mark("raw", 4, words), mark("graph", 4)))
    data, _ = pdf(feedback_sheet(class_report(one), one))
    pages = PdfReader(io.BytesIO(data)).pages
    assert len(pages) > 3
    for number, page in enumerate(pages, start=1):
        assert f"page {number} of {len(pages)}" in page.extract_text()
        assert "Ana Long · L01" in page.extract_text()
    assert all(f"word{k}" in read_back(data) for k in (0, 700, 1499))


def test_without_readings_the_sheet_says_so():
    one = learner_report("L01", "Ana Empty", FULLY, readings=False)
    text = read_back(pdf(feedback_sheet(class_report(one), one))[0])
    assert "No readings could be recomputed" in text
    assert "±" not in text


def test_everything_at_its_best_offers_a_way_on():
    one = learner_report("L01", "Ana Best", (mark("raw", 4), mark("graph", 4)))
    assert "To go further" in read_back(pdf(feedback_sheet(class_report(one), one))[0])
