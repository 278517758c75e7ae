"""The shipped rubrics speak German as completely as English, with numbers as German writes them."""

import re
import tomllib
from string import Formatter

import pytest
from rubric_learners import facts_from, table_of

from markbench.checks.diagnosis.sentences import in_language
from markbench.checks.diagnosis.slips import SLIPS
from markbench.checks.diagnosis.slips_de import GERMAN
from markbench.model import Brief, Explanation
from markbench.rubric import draft
from markbench.rubric.facts import FACTS, PLACEHOLDERS
from markbench.rubric.loading import SHIPPED, find_rubric

NAMES = ("short", "full_report")
FILES = {name: tomllib.loads((SHIPPED / f"{name}.toml").read_text("utf-8")) for name in NAMES}
PHRASES = [
    (f"{name}: {row['id']}", phrase)
    for name, file in FILES.items()
    for row in file["criterion"]
    for phrase in row["phrase"]
]


def texts(given):
    return [given] if isinstance(given, str) else given


def quoted(text):
    return {field for _, field, _, _ in Formatter().parse(text) if field}


@pytest.mark.parametrize(("row", "phrase"), PHRASES)
def test_every_phrase_has_as_many_german_forms_with_known_places(row, phrase):
    assert len(texts(phrase["text"])) == len(texts(phrase["text_de"]))
    for words in texts(phrase["text_de"]):
        assert quoted(words) <= set(PLACEHOLDERS)
    # What decides between the forms is the same data: both languages rest on the same facts.
    either = [set().union(*map(quoted, texts(phrase[key]))) for key in ("text", "text_de")]
    assert len(either[0] ^ either[1]) <= 1, "one fact more or less is a turn of speech"


@pytest.mark.parametrize("name", NAMES)
def test_titles_levels_and_descriptors_are_there_and_the_journal_keeps_one_name(name):
    german, english = (find_rubric(name, None, language) for language in ("de", "en"))
    assert german.title != english.title
    for told, row in zip(german.criteria, english.criteria, strict=True):
        assert told.title != row.title
        for one, other in zip(told.levels, row.levels, strict=True):
            assert (one.name, one.marks, one.when) == (other.name, other.marks, other.when)
            assert one.shown != other.shown
            assert one.descriptor != other.descriptor
        assert len({one.shown for one in told.levels}) == len(told.levels)


def test_every_slip_is_told_in_german_with_the_places_it_can_fill():
    assert set(GERMAN) == set(SLIPS)
    for name, words in GERMAN.items():
        slip = SLIPS[name]
        english = quoted(slip.learner) | quoted(slip.ask) | quoted(slip.sentence)
        english |= {"g_mended"}
        for text in words:
            assert quoted(text) <= english, name
            assert not re.search(r"\b(betrogen|geschummelt|gefälscht|abgeschrieben)\b", text)


NEARLY_RIGHT = table_of([(x, [round(20.0607 * x**0.5, 3)]) for x in (0.2, 0.4, 0.6)])
FOUR_TIMES = table_of([(x, [round(10.03 * x**0.5, 3)]) for x in (0.2, 0.4, 0.6)])


@pytest.mark.parametrize(
    ("language", "expected", "bound"),
    [("en", "about 9.8 m/s²", "less than 0.1 %"), ("de", "etwa 9,8 m/s²", "weniger als 0,1 %")],
)
def test_without_a_place_the_expected_value_is_hedged_once_and_in_one_language(
    language, expected, bound
):
    # T = 2.00607 s × √(L/m) is g = 4π²/2.00607² = 9.810 m/s², where 9.795 m/s² is expected; half
    # the time is four times the g.
    rubric = find_rubric("short", None, language)
    brief = Brief(feedback_language=language)
    facts = facts_from(NEARLY_RIGHT, brief=brief)
    assert facts.show("g_local") == expected
    assert FACTS["g_difference_fraction"].show(0.0004, facts._work) == bound.replace(",", ".")
    for table in (NEARLY_RIGHT, FOUR_TIMES):
        for number in range(12):  # the learner's id chooses among the forms
            facts = facts_from(table, brief=brief, learner=f"L{number}")
            told = next(d for d in draft(rubric, facts) if d.criterion == "result").feedback
            assert expected in told
            assert not re.search(r"(about|etwa) (about|etwa)", told)


PLACES = {
    "length_to_top": {"size": "1.0 cm", "g_mended": "9.8 m/s²"},
    "half_swings": {"really": "5", "swings": "10", "g_mended": "9.8 m/s²"},
}


def test_two_slips_are_told_one_after_the_other_with_one_g():
    both = Explanation("length_to_top+half_swings", 0.9, "", {}, places=PLACES)
    ask, tell = in_language("de", both, both.slip)
    assert ask.startswith("Zeig mir am Pendel")
    assert "1.0 cm" in tell
    assert tell.count("9.8 m/s²") == 1
    assert tell.endswith("Beides richtiggestellt ergeben deine Messwerte g = 9.8 m/s².")
    _, alone = in_language("de", both, "length_to_top")
    assert "9.8" not in alone  # another slip beside it would alter that g


def test_nothing_is_told_without_its_places_or_in_a_language_without_words():
    bare = Explanation("half_swings", 0.9, "", {}, places={})
    assert in_language("de", bare, "half_swings") == ("", "")
    held = Explanation("half_swings", 0.9, "", {}, places=PLACES)
    assert in_language("fr", held, "half_swings") == ("", "")
