"""The rubrics that come with Markbench: sound, complete, and nobody's copy of anybody."""

from __future__ import annotations

import random
import re
from collections import defaultdict

import pytest
from rubric_learners import KINDS, facts_from, pieces_of, table_of

from markbench.model import Brief, Diagnosis, Explanation
from markbench.physics.pendulum import period_s
from markbench.rubric import draft, find_rubric, load_rubric
from markbench.rubric.condition import condition
from markbench.rubric.facts import FACTS
from markbench.rubric.loading import SHIPPED
from markbench.rubric.phrasing import template

NAMES = sorted(path.stem for path in SHIPPED.glob("*.toml"))
RUBRICS = {name: load_rubric(SHIPPED / f"{name}.toml") for name in NAMES}
PHRASES = [
    pytest.param(row, phrase, id=f"{name}-{row.id}-{phrase.role}-{i}")
    for name, rubric in RUBRICS.items()
    for row in rubric.criteria
    for i, phrase in enumerate(row.phrases)
]
EVERY = pytest.mark.parametrize("name", NAMES)


def test_there_are_two_complete_rubrics():
    assert {"short", "full_report"} <= set(NAMES)
    assert 15 <= RUBRICS["short"].most <= 20
    assert not any(row.by_eye for row in RUBRICS["short"].criteria)
    asked = {"planning", "variables", "table", "graph", "analysis", "evaluation", "conclusion"}
    full = {row.id: row.by_eye for row in RUBRICS["full_report"].criteria}
    assert asked | {"evidence", "safety"} <= set(full)
    assert any(full.values())
    assert not all(full.values())


@pytest.fixture(scope="session")
def said(crowd) -> dict[str, set[str]]:
    """Everything that was said to anybody of the crowd, or shown to the teacher, by criterion."""
    found: dict[str, set[str]] = defaultdict(set)
    for rubric in RUBRICS.values():
        for facts in crowd:
            for drafted in draft(rubric, facts):
                found[drafted.criterion].update(drafted.sentences)
                found[drafted.criterion].update(reason.text for reason in drafted.reasons)
    return found


@pytest.mark.parametrize("row, phrase", PHRASES)
def test_every_phrase_reaches_somebody(row, phrase, crowd, said):
    form = template(phrase.text)
    assert any(form.fill(facts) in said[row.id] for facts in crowd), phrase


@EVERY
def test_every_level_reaches_somebody(name, crowd):
    reached = {(d.criterion, d.level) for facts in crowd for d in draft(RUBRICS[name], facts)}
    for row in RUBRICS[name].criteria:
        for level in row.levels:
            assert row.by_eye or (row.id, level.name) in reached, (row.id, level.name)


@EVERY
def test_everybody_is_told_something_and_never_more_than_three_things(name, crowd):
    for facts in crowd:
        for row, drafted in zip(RUBRICS[name].criteria, draft(RUBRICS[name], facts), strict=True):
            if row.by_eye:
                assert drafted.sentences == ()
            else:
                assert 1 <= len(drafted.sentences) <= 3, (facts.learner, row.id)
            assert drafted.reasons


@EVERY
def test_whoever_misses_the_best_level_is_told_a_problem_or_a_next_step(name, crowd):
    for facts in crowd:
        for row, drafted in zip(RUBRICS[name].criteria, draft(RUBRICS[name], facts), strict=True):
            if row.by_eye or drafted.level == row.levels[0].name:
                continue
            criticism = {
                template(p.text).fill(facts) for p in row.phrases if p.role in ("problem", "next")
            }
            assert criticism & set(drafted.sentences), (facts.learner, row.id)


@EVERY
def test_no_place_is_left_unfilled_and_nothing_unknown_is_said(name, crowd):
    for facts in crowd:
        for drafted in draft(RUBRICS[name], facts):
            for sentence in drafted.sentences:
                assert not re.search(r"[{}]|\bNone\b|\bnan\b|\binf\b|not known|  ", sentence)
                assert (
                    sentence[0].isupper()
                    or sentence[0] in "0123456789“"
                    or sentence.startswith("g ")
                )
                assert sentence.endswith((".", "?", "!"))


@pytest.mark.parametrize("row, phrase", [p for p in PHRASES if p.values[1].role == "praise"])
def test_no_empty_praise(row, phrase):
    """Praise rests on a fact of the learner's own work and names one; see also the loader."""

    def own(names) -> bool:
        return any(FACTS[name].group != "asked" for name in names)

    assert own(condition(phrase.when).names)
    assert own(template(phrase.text).names)
    assert "!" not in phrase.text


@pytest.mark.parametrize("row, phrase", PHRASES)
def test_wording_is_neutral(row, phrase):
    said = phrase.text.lower()
    for word in ("cheat", "copied", "fake", "invent", "dishonest", "honest", "lie about", "guilty"):
        assert word not in said, word


def drafted_of(name: str, facts, criterion: str):
    return next(d for d in draft(RUBRICS[name], facts) if d.criterion == criterion)


def test_close_needs_points_that_lie_on_a_line():
    """One timing of 11 swings: g is close by chance, and the point is half a second off."""
    times = {0.2: [8.97, 9.05], 0.3: [11.01, 10.93], 0.4: [12.70, 12.74], 0.6: [15.55, 15.49]}
    off = facts_from(table_of([*times.items(), (0.5, [14.20, 15.64])]))
    assert off["g_within_tolerance"]
    assert drafted_of("short", off, "result").level == "Fair"
    on = facts_from(table_of([*times.items(), (0.5, [14.20, 14.22])]))
    assert drafted_of("short", on, "result").level == "Close"


HALF = [(0.2, [4.50, 4.47]), (0.3, [5.48, 5.52]), (0.4, [6.33, 6.37]), (0.5, [7.06, 7.12]),
        (0.6, [7.77, 7.73])]  # fmt: skip
GOOD = [(0.2, [8.97, 9.05]), (0.3, [11.01, 10.93]), (0.4, [12.70, 12.74]), (0.5, [14.22, 14.12]),
        (0.6, [15.55, 15.49])]  # fmt: skip


def everything_said(name: str, language: str, times, **about) -> str:
    """All that learners with these times are told, whichever form their id chooses."""
    rubric = find_rubric(name, None, language)
    brief = Brief(feedback_language=language)
    each = (facts_from(table_of(times), brief=brief, learner=f"L{i}", **about) for i in range(25))
    return "\n".join(d.feedback for facts in each for d in draft(rubric, facts))


def suspected(slip: str) -> Diagnosis:
    odd = Explanation(slip, 0.97, "It may be.", {}, 9.81, 0.08)
    return Diagnosis((odd, Explanation("honest", 0.03, "Honest.", {})), None, flagged=True)


PRAISE_OF_COUNTS = r"wise|firm ground|plenty|matter little|costs your|slip of a thumb"
PRAISE_OF_COUNTS_DE = r"klug|festem Grund|genug, um|zählt eine Zehntel|sehr wenig|Zucken"


@EVERY
@pytest.mark.parametrize(
    "language, praise", [("en", PRAISE_OF_COUNTS), ("de", PRAISE_OF_COUNTS_DE)]
)
@pytest.mark.parametrize("slip", ["half_swings", "count_short", "period_as_total"])
def test_a_count_in_doubt_is_not_praised_before_or_after_it_is_agreed(name, language, praise, slip):
    # The sentences that lean on the count are there without the doubt.
    single = [(length, times[:1]) for length, times in GOOD]
    sound = everything_said(name, language, GOOD) + everything_said(name, language, single)
    assert re.search(praise, sound)
    for agreed in (None, slip):
        about = {"diagnosis": suspected(slip), "agreed_slip": agreed}
        for times in (HALF, [(length, one[:1]) for length, one in HALF]):
            assert not re.search(praise, everything_said(name, language, times, **about))


@EVERY
def test_praise_that_quotes_a_count_asks_whether_it_is_in_doubt(name):
    for row in RUBRICS[name].criteria:
        for phrase in row.phrases:
            quoted = template(phrase.text).names
            if phrase.role == "praise" and "swings_fewest" in quoted:
                assert "swings_in_doubt" in condition(phrase.when).names, phrase.text


@EVERY
@pytest.mark.parametrize("language", ["en", "de"])
@pytest.mark.parametrize("slip", ["made_from_formula", "made_by_hand"])
def test_times_in_doubt_are_not_praised_for_being_close(name, language, slip):
    told = everything_said(name, language, GOOD, diagnosis=suspected(slip))
    assert not re.search(
        r"careful work|did their job|steady hands|were steady|proper piece|stay together", told
    )
    assert not re.search(r"sorgfältig|ihre Arbeit getan|ruhig|ordentliches Stück", told)


def test_swings_counted_again_after_agreeing_decide_the_level():
    before = facts_from(table_of(HALF), diagnosis=suspected("half_swings"))
    assert drafted_of("short", before, "readings").level == "Complete"
    after = facts_from(
        table_of(HALF), diagnosis=suspected("half_swings"), agreed_slip="half_swings"
    )
    drafted = drafted_of("short", after, "readings")
    assert drafted.level == "Nearly complete"
    assert drafted.reasons[0].text == (
        "For “Complete”: needs at least 10 swings in the shortest count; 5 found."
    )


@EVERY
@pytest.mark.parametrize("language", ["en", "de"])
def test_a_second_timing_is_asked_for_where_there_is_one_only(name, language):
    """20 cm and 50 cm were timed once; the longest, and the others, twice."""
    some = [(x, times[:1] if x in (0.2, 0.5) else times) for x, times in GOOD]
    told = everything_said(name, language, some)
    of_repeats = re.compile(
        r"second time|timed twice|timed only once|only one time|half known|were repeated"
        r"|zweite Zeit|zweimal|nur einmal|nur eine Zeit|halb bekannt|wurden wiederholt"
    )
    asked = [s for s in re.split(r"(?<=[.?!]) |\n", told) if of_repeats.search(s)]
    lengths = {x for s in asked for x in re.findall(r"\d+[.,]0 cm", s)}
    assert lengths == ({"20.0 cm", "50.0 cm"} if language == "en" else {"20,0 cm", "50,0 cm"})


@EVERY
@pytest.mark.parametrize("language", ["en", "de"])
def test_a_single_length_is_not_set_beside_itself(name, language):
    """“In your 9.03 s at 20.0 cm as in your 9.03 s at 20.0 cm” compares nothing."""
    for times in ([9.06, 9.00], [9.03]):
        told = everything_said(name, language, [(0.2, times)])
        for sentence in re.split(r"(?<=[.?!]) |\n", told):
            for number in ("9.03 s", "20.0 cm"):
                number = number.replace(".", ",") if language == "de" else number
                assert sentence.count(number) <= 1, sentence


@EVERY
@pytest.mark.parametrize("language", ["en", "de"])
def test_repeats_that_are_alike_are_not_set_against_each_other(name, language):
    alike = [(length, [times[0], times[0]]) for length, times in GOOD]
    told = everything_said(name, language, alike)
    assert not re.search(r"\b0[.,]00 s", told)
    against = "to|from|against|and at most" if language == "en" else "bis|gegen|oder zu"
    assert not re.search(rf"\b([\d.,]+ s),? ({against}) \1", told)


def honest_class(seed: int, size: int) -> list:
    """Everyone with the same five lengths, all evidence, hundredths: only the times differ."""
    crowd = []
    for i in range(size):
        rng = random.Random(f"{seed}/{i}")
        scatter_s = rng.uniform(0.05, 0.25)
        pairs = []
        for length_cm in range(20, 70, 10):
            true_s = 10 * float(period_s(length_cm / 100, 9.81))
            times = [round(true_s + rng.gauss(0, scatter_s), 2) for _ in range(2)]
            pairs.append((length_cm / 100, times))
        crowd.append(facts_from(table_of(pairs), pieces_of("readings", *KINDS), learner=f"L{i}"))
    return crowd


@EVERY
def test_no_two_of_two_hundred_read_the_same(name):
    """The hardest class to tell apart: same lengths, same quality, same evidence."""
    heard: dict[tuple[str, str], list[str]] = defaultdict(list)
    for facts in honest_class(seed=0, size=200):
        for drafted in draft(RUBRICS[name], facts):
            if drafted.sentences:
                heard[drafted.criterion, drafted.feedback].append(facts.learner)
    alike = {paragraph: who for paragraph, who in heard.items() if len(who) > 1}
    # 200 learners make 19,900 pairs for each criterion, and numbers can meet by chance: one
    # pair in all is allowed. In a class of thirty that is one meeting in about fifty classes.
    assert sum(len(who) - 1 for who in alike.values()) <= 1, alike


@EVERY
def test_whole_feedback_is_never_the_same(name):
    whole = [
        " ".join(d.feedback for d in draft(RUBRICS[name], facts))
        for seed in (1, 2)
        for facts in honest_class(seed, 100)
    ]
    assert len(set(whole)) == len(whole)


@EVERY
def test_a_class_does_not_read_like_copies(name):
    """With the numbers taken out, no wording of a criterion goes to more than half the class."""
    wordings: dict[str, list[str]] = defaultdict(list)
    for facts in honest_class(seed=3, size=100):
        for drafted in draft(RUBRICS[name], facts):
            if drafted.sentences:
                wordings[drafted.criterion].append(re.sub(r"[\d.]+", "#", drafted.feedback))
    for criterion, heard in wordings.items():
        commonest = max(heard.count(wording) for wording in set(heard))
        assert commonest <= 50, (criterion, commonest)


@EVERY
def test_safety_defers_to_the_school(name):
    words = (SHIPPED / f"{name}.toml").read_text(encoding="utf-8")
    assert "school's" in words
    for caution in ("people", "glass", "furniture"):
        assert caution in words
