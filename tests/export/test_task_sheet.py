"""The sheet says what the brief says, stands alone, and warns."""

import dataclasses
import datetime as dt
import re
from html.parser import HTMLParser
from itertools import pairwise
from pathlib import Path

import pytest
from openpyxl import load_workbook

from markbench.export.task_sheet import example_lengths_cm, task_sheet_html, write_task_sheet
from markbench.export.template import template_headings, write_template
from markbench.model import Brief, Late, Words


class Page(HTMLParser):
    """Text of a page, and whether every element was closed in turn."""

    VOID = ("meta", "br", "path", "circle")

    def __init__(self, html: str) -> None:
        super().__init__()
        self.words: list[str] = []
        self.open: list[str] = []
        self.headings: list[str] = []
        self.cells = 0
        self.feed(html)

    def handle_starttag(self, tag: str, attrs: object) -> None:
        self.cells += tag == "td"
        if tag not in self.VOID:
            self.open.append(tag)

    def handle_startendtag(self, tag: str, attrs: object) -> None:
        pass

    def handle_endtag(self, tag: str) -> None:
        assert self.open.pop() == tag

    def handle_data(self, data: str) -> None:
        if self.open and self.open[-1] == "h2":
            self.headings.append(data)
        if "style" not in self.open:
            self.words.append(data)

    @property
    def text(self) -> str:
        return re.sub(r"\s+", " ", "".join(self.words))


def page(brief: Brief) -> Page:
    made = Page(task_sheet_html(brief))
    assert made.open == []
    return made


def test_what_the_brief_asks_is_on_the_sheet() -> None:
    brief = Brief(
        title="Swing & <time>",
        opens=dt.date(2026, 3, 2),
        closes=dt.date(2026, 3, 16),
        lengths=7,
        timings_per_length=3,
        swings_per_timing=20,
        swings_allowed=(20, 10),
        shortest_m=0.1,
        longest_m=0.9,
        least_ratio=3,
        words=Words("manipulated variable", "responding variable", "fixed variable"),
        late=Late(2.0),
    )
    text = page(brief).text
    # Weekdays from a wall calendar: 2 and 16 March 2026 are Mondays.
    for words in (
        "Swing & <time>", "From Monday 2 March 2026 to Monday 16 March 2026",
        "seven different lengths", "between 10 cm and 90 cm", "at least 3 times the shortest",
        "three times", "stop at 20 (10 will do too", "manipulated variable",
        "responding variable", "fixed variable", "2 marks are taken off",
        *template_headings(brief),
    ):  # fmt: skip
        assert words in text, words
    assert page(brief).cells == 7 * 5  # a length, how many swings, three timings


def test_only_the_evidence_asked_for_is_named() -> None:
    every = page(Brief()).text
    assert "A photo of you with your set-up" in every
    assert "A video of 10 complete swings" in every
    assert "parent or carer" in every
    none = page(Brief(evidence=()))
    assert "video" not in none.text
    assert "photo" not in none.text.replace("family photos", "")
    assert "Your pictures" not in none.headings


def test_cautions_come_before_the_work_and_give_way_to_the_schools_rules() -> None:
    made = page(Brief())
    assert made.headings.index("Take care") < made.headings.index("Set it up")
    text = made.text
    for hazard in ("swinging weight", "glass", "stand on chairs", "Tape can lift"):
        assert hazard in text
    assert "Your school’s own rules" in text
    assert "middle of the bob" in text
    assert "“nought”" in text


def test_the_page_needs_nothing_beside_it_and_prints_on_a4(tmp_path: Path) -> None:
    path = tmp_path / "sheet.html"
    write_task_sheet(path, Brief())
    html = path.read_text("utf-8")
    assert not re.search(r"(src|href)\s*=|url\(|@import|http", html)
    assert "size: A4" in html
    assert [p.name for p in tmp_path.iterdir()] == ["sheet.html"]


@pytest.mark.parametrize(
    "brief",
    [
        Brief(),
        Brief(shortest_m=0.05, longest_m=0.25),
        Brief(lengths=8, support_height_m=0.75),
        Brief(lengths=6, shortest_m=0.2, longest_m=1, least_ratio=4),
        Brief(lengths=2),
        Brief(lengths=3, shortest_m=0.3, longest_m=0.7, least_ratio=2),
    ],
)
def test_example_lengths_do_what_the_brief_asks(brief: Brief) -> None:
    found = example_lengths_cm(brief)
    assert len(found) == brief.lengths
    assert len({b - a for a, b in pairwise(found)}) == 1
    assert found[0] >= 100 * brief.shortest_m
    assert found[-1] <= 100 * brief.longest_m
    assert found[-1] >= brief.least_ratio * found[0]


def test_the_usual_set_is_the_trades(tmp_path: Path) -> None:
    # Common practice, no source: 20 to 60 cm by 10 where five lengths are asked for.
    assert example_lengths_cm(Brief()) == (20, 30, 40, 50, 60)


def test_no_example_where_there_is_no_room() -> None:
    assert example_lengths_cm(Brief(lengths=50, shortest_m=0.1, longest_m=0.3)) == ()


# Common English words that no German sentence has.
ENGLISH = re.compile(
    r"\b(the|and|your|with|of|length|time|swings?|photo of|take|from|each)\b", re.I
)


def test_a_class_that_is_written_to_in_german_gets_its_sheet_in_german() -> None:
    brief = Brief(
        title="Pendel",
        opens=dt.date(2026, 3, 2),
        closes=dt.date(2026, 3, 16),
        late=Late(2.0),
        support_height_m=1.2,
        feedback_language="de",
        evidence=("setup_photo", "selfie", "photo", "swing_video", "report"),
    )
    html, text = task_sheet_html(brief), page(brief).text
    assert 'lang="de"' in html
    assert ENGLISH.findall(re.sub(r"<style>.*?</style>|<[^>]+>", " ", html, flags=re.S)) == []
    assert "Von Montag, 2. März 2026 bis Montag, 16. März 2026." in text
    assert "werden für jeden Tag 2 Punkte abgezogen" in text
    assert "Die Regeln deiner Schule" in text
    assert "frag deine Eltern" in text
    english = page(dataclasses.replace(brief, feedback_language="en"))
    assert len(page(brief).headings) == len(english.headings)
    assert len(ENGLISH.findall(english.text)) > 50  # the words do tell the languages apart


def test_german_numbers_have_a_comma(tmp_path: Path) -> None:
    brief = Brief(shortest_m=0.075, least_ratio=2.5, closes=dt.date(2026, 3, 16), late=Late(0.5))
    german = dataclasses.replace(brief, feedback_language="de")
    path = tmp_path / "werte.xlsx"
    write_template(path, german)
    rules = load_workbook(path).active.data_validations.dataValidation
    told = page(german).text + " ".join(rule.error for rule in rules)
    assert "zwischen 7,5 cm und 150 cm" in told
    assert "2,5-mal" in told
    assert "0,5 Punkte abgezogen" in told
    assert re.findall(r"\d\.\d", told) == []
    assert {"7.5", "2.5", "0.5"} <= set(re.findall(r"\d\.\d", page(brief).text))
