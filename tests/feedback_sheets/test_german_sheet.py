"""A sheet in German from title to page number, while what is kept stays as it is."""

import re
import shutil
from pathlib import Path

import pytest
from invented_sheets import read_back

from markbench.export.feedback import write_feedback_sheets
from markbench.export.feedback.wording import DE, EN, sheet_words
from markbench.session import Session
from markbench.session.report import class_report

SAMPLE = Path(__file__).parents[2] / "sample_class"
ENGLISH = re.compile(r"\b(the|your|and|with|marks|of|page|length|next)\b", re.IGNORECASE)


@pytest.fixture(scope="module")
def sheet(tmp_path_factory):
    """One learner of the sample class, a slip agreed on, marked in German: (page, print)."""
    folder = tmp_path_factory.mktemp("machine") / "class"
    shutil.copytree(SAMPLE, folder)
    brief = folder / "brief.toml"
    brief.write_text('feedback_language = "de"\n' + brief.read_text("utf-8"), "utf-8")
    session = Session.open(folder, "T. Marker")
    learner = next(
        one.id
        for one in session.learners
        if (told := session.diagnosis(one.id)) is not None
        and told.flagged
        and told.explanations[0].slip == "half_swings"
    )
    session.agree(learner, "half_swings")
    session.accept(learner)
    kept = session.value("mark", learner, "readings")
    written = write_feedback_sheets(folder / "out", class_report(session)).sheets[0]
    session.close()
    page = re.sub(r"<style.*?</style>", "", written.html.read_text("utf-8"), flags=re.DOTALL)
    return page, read_back(written.pdf.read_bytes()), kept


def test_page_and_print_speak_german_throughout(sheet):
    page, printed, _ = sheet
    title = "Timing a pendulum at home"  # the class's own, from its brief
    said = re.sub(r"<[^>]+>", " ", page).replace(title, "")
    assert not ENGLISH.findall(said)
    assert not ENGLISH.findall(printed.replace(title, ""))
    for words in (DE.kind, DE.numbers, DE.cautions_title):
        assert words in said
        assert words in printed
    assert 'lang="de"' in page
    assert "Seite 1 von" in printed
    assert "Fast vollständig" in said  # a level's name as the learner reads it


def test_numbers_have_a_comma_and_the_slip_is_told_in_german(sheet):
    page, _, _ = sheet
    said = re.sub(r"<[^>]+>", " ", page)
    assert "Eine Schwingung geht hin und wieder zurück" in said
    assert re.search(r"g = \d+,\d+\s±", said)
    assert not re.search(r"\d\.\d", said)


def test_the_journal_keeps_the_rubrics_own_level(sheet):
    assert sheet[2]["level"] == "Nearly complete"  # ten half swings are five


def test_both_languages_have_all_words():
    for name in EN.__dataclass_fields__:
        one, other = getattr(EN, name), getattr(DE, name)
        assert type(one) is type(other)
        if isinstance(one, str):
            assert other
            assert sorted(re.findall(r"\{\w+", one)) == sorted(re.findall(r"\{\w+", other)), name
        elif isinstance(one, tuple):
            assert len(one) == len(other)
    assert sheet_words("de-AT") is DE
    assert sheet_words("xx") is EN
