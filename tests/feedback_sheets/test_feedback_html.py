import dataclasses
import re
from html.parser import HTMLParser
from itertools import pairwise

import pytest
from invented_sheets import (
    COPIED,
    DRAFTED,
    EXPLAINED,
    FULLY,
    LINE,
    POINTS,
    class_report,
    learner_report,
    named,
    read_back,
)

from markbench.export.feedback import feedback_sheet
from markbench.export.feedback.graph import graph
from markbench.export.feedback.html import page
from markbench.export.feedback.pdf import pdf
from markbench.export.feedback.wording import DE, EN
from markbench.model import Analysis, Gravity

# HTML Living Standard, 13.1.2, "Void elements".
VOID = {"area", "base", "br", "col", "embed", "hr", "img", "input", "link", "meta", "source"}


class Parsed(HTMLParser):
    """Elements in order with their attributes and text; notes what is not closed in order."""

    def __init__(self, text):
        super().__init__()
        self.elements, self.open, self.faults = [], [], []
        self.feed(text)
        self.close()

    def handle_starttag(self, tag, attrs):
        self.elements.append({"tag": tag, "text": "", **dict(attrs)})
        if tag not in VOID:
            self.open.append((tag, self.elements[-1]))

    def handle_endtag(self, tag):
        if tag in VOID:
            return
        if not self.open or self.open.pop()[0] != tag:
            self.faults.append(tag)

    def handle_data(self, data):
        for _, element in self.open:
            element["text"] += data

    def all(self, tag):
        return [element for element in self.elements if element["tag"] == tag]


@pytest.fixture
def parsed(sheet):
    return Parsed(page(sheet))


def test_page_is_well_formed(parsed):
    assert not parsed.faults
    assert not parsed.open
    assert parsed.all("html")[0]["lang"] == "en"
    assert len(parsed.all("h1")) == 1
    levels = [int(e["tag"][1]) for e in parsed.elements if re.fullmatch("h[1-6]", e["tag"])]
    assert all(after - before <= 1 for before, after in pairwise(levels))


def test_page_holds_what_the_learner_should_read(parsed):
    text = " ".join(parsed.all("body")[0]["text"].replace("\u00a0", " ").split())
    for expected in (
        "Nguyễn Thị Ánh",
        "6 of 8",
        "Part: 2 of 4",
        "Your 9.11 s and 9.2 s at 20.5 cm agree.",
        "9.80 ± 0.14 m/s²",
        "chairs",
    ):
        assert expected in text
    for absent in (COPIED, DRAFTED, EXPLAINED, "T. Marker", "hand-ins", "Bea"):
        assert absent not in page_text(parsed)


def page_text(parsed):
    values = (str(value) for element in parsed.elements for value in element.values())
    return " ".join(values)


def test_page_fetches_nothing_and_runs_nothing(sheet, parsed):
    assert not {"script", "link", "img", "iframe", "object", "form", "a"} & {
        element["tag"] for element in parsed.elements
    }
    assert not re.search(r"https?:|//|url\(|@import|\bon\w+=", page(sheet))
    policy = next(e for e in parsed.all("meta") if "http-equiv" in e)
    assert "default-src 'none'" in policy["content"]


HOSTILE = '</p></title></style><script>alert(1)</script><b onload="x">\'&amp;'


def test_text_is_never_markup(report):
    sheet = named(report, HOSTILE)
    step = dataclasses.replace(sheet.criteria[0], title=HOSTILE, level=HOSTILE, feedback=HOSTILE)
    sheet = dataclasses.replace(
        sheet, title=HOSTILE, group=HOSTILE, learner_id=HOSTILE, criteria=(step,)
    )
    parsed = Parsed(page(sheet))
    assert not parsed.faults
    assert not parsed.all("script")
    assert not parsed.all("b")
    assert parsed.all("h1")[0]["text"] == HOSTILE
    assert HOSTILE in parsed.all("dd")[0]["text"]


def test_feedback_carries_its_language_and_nothing_else_gets_in(report):
    one = learner_report("L01", "Ana", FULLY)
    for tag, expected in (("pl", "pl"), ("pt-BR", "pt-BR"), ('x" onload="y', "en")):
        sheet = feedback_sheet(class_report(one, feedback_language=tag), one)
        said = [e for e in Parsed(page(sheet)).all("p") if e.get("class") == "feedback"]
        assert {element["lang"] for element in said} == {expected}


def contrast_with_white(colour):
    """WCAG 2.2, relative luminance and contrast ratio."""
    parts = [int(colour[k : k + 2], 16) / 255 for k in (1, 3, 5)]
    linear = [c / 12.92 if c <= 0.04045 else ((c + 0.055) / 1.055) ** 2.4 for c in parts]
    return 1.05 / (0.2126 * linear[0] + 0.7152 * linear[1] + 0.0722 * linear[2] + 0.05)


def test_contrast_formula_against_published_values():
    # Well-known WCAG pairs on white; given to four places.
    for colour, ratio in (("#767676", 4.5422), ("#777777", 4.4781), ("#959595", 2.9953)):
        assert contrast_with_white(colour) == pytest.approx(ratio, abs=1e-4)


def test_text_and_lines_stand_out_from_white(sheet):
    style = re.search(r"<style>(.*?)</style>", page(sheet), re.S).group(1)
    assert "background: #ffffff" in style
    texts = re.findall(r"(?<![\w-])color: (#[0-9a-f]{6})", style)
    lines = re.findall(r"border-bottom: [^;]*(#[0-9a-f]{6})", style)
    assert texts
    assert lines
    assert all(contrast_with_white(colour) >= 4.5 for colour in texts)
    assert all(contrast_with_white(colour) >= 3 for colour in lines)


def test_page_prints_on_a4(sheet):
    assert "@page { size: A4;" in page(sheet)


def quantities(parsed):
    """From places in the drawing back to L and T², by the tick labels alone."""
    labels = [e for e in parsed.all("text") if re.fullmatch(r"-?[\d.]+", e["text"])]
    below = [(float(e["x"]), float(e["text"])) for e in labels if e["text-anchor"] == "middle"]
    beside = [(float(e["y"]) - 3, float(e["text"])) for e in labels if e["text-anchor"] == "end"]

    def along(ticks):
        (a, at_a), (b, at_b) = ticks[0], ticks[-1]
        return lambda place: at_a + (place - a) * (at_b - at_a) / (b - a)

    return along(below), along(beside)


def test_points_of_the_graph_lie_at_the_learners_values(parsed):
    length, squared = quantities(parsed)
    drawn = [(length(float(e["cx"])), squared(float(e["cy"]))) for e in parsed.all("circle")]
    # Places are written to a hundredth of a point, which is 1.3e-4 s² on this axis.
    assert drawn == [pytest.approx(point, abs=2e-4) for point in POINTS]


def test_line_of_the_graph_is_the_learners_own(parsed):
    length, squared = quantities(parsed)
    black = [e for e in parsed.all("line") if e["stroke"] == "#404040"]
    assert len(black) == 2
    for element in black:
        for end in "12":
            at_m = length(float(element[f"x{end}"]))
            expected = LINE.intercept_s2 + LINE.slope_s2_per_m * at_m
            assert squared(float(element[f"y{end}"])) == pytest.approx(expected, abs=3e-4)
    # Dashed from L = 0 to the shortest length, whole from there to the longest.
    dashed = next(e for e in black if "stroke-dasharray" in e)
    whole = next(e for e in black if "stroke-dasharray" not in e)
    assert length(float(dashed["x1"])) == pytest.approx(0, abs=1e-3)
    assert length(float(whole["x1"])) == pytest.approx(POINTS[0][0], abs=1e-3)
    assert length(float(whole["x2"])) == pytest.approx(POINTS[-1][0], abs=1e-3)


def test_graph_is_told_in_words(parsed):
    told = parsed.all("svg")[0]["aria-label"]
    assert "0.205 m, 0.827 s²" in told


def test_graph_without_a_line_or_without_points(report):
    analysis = report.learners[0].analysis
    alone = graph(dataclasses.replace(analysis, rows=analysis.rows[:1], line=None))
    assert alone is not None
    assert not alone.has_line
    assert graph(Analysis((), None, analysis.local)) is None
    assert graph(None) is None


@pytest.mark.parametrize("language, told", [("en", EN), ("de", DE)])
def test_two_values_of_g_that_disagree_are_not_left_without_a_word(language, told):
    """A line of 9.80 ± 0.14 m/s²; a best estimate of 8.99 ± 0.11 lies 4.6 uncertainties off."""
    one = learner_report("07", "Ada Sample", FULLY)
    off = dataclasses.replace(one.diagnosis, best=Gravity(8.99, 0.11, 8.77, 9.21, "best"))
    apart = dataclasses.replace(one, diagnosis=off)
    report = class_report(one, apart, feedback_language=language)
    alike, apart = (feedback_sheet(report, each) for each in report.learners)
    assert told.two_g in page(apart)
    assert told.two_g in read_back(pdf(apart)[0])
    # 9.79 ± 0.07 agrees, and a line through two points has no uncertainty to compare.
    assert told.two_g not in page(alike)
    two = dataclasses.replace(LINE, u_g=float("nan"), points=2)
    nobody_knows = dataclasses.replace(
        report.learners[1], analysis=dataclasses.replace(one.analysis, line=two)
    )
    assert told.two_g not in page(feedback_sheet(report, nobody_knows))
