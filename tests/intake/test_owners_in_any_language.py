"""Why a file is thought to be somebody's can be said in another language, whole."""

from __future__ import annotations

import pytest

from any_language import left_in_english
from markbench.intake.matching import Matcher
from markbench.model import Learner

LEARNERS = [
    Learner("0012", "Ada Invented"),
    Learner("0013", "Ben Made-Up"),
    Learner("0014", "Ada Inventedson"),
    Learner("0015", "Cleo Sample"),
]


@pytest.mark.parametrize(
    ("text", "why"),
    [
        ("0013", "“0013” is the id"),
        ("13", "“13” is the id 0013 but for zeros"),
        ("0015 readings", "the id “0015” stands in “0015 readings”"),
        ("cleos", "“cleos” is Cleo Sample: a name and an initial written together"),
        ("CS", "only the initials “CS” of Cleo Sample"),
    ],
)
def test_why_a_name_is_somebodys(text: str, why: str) -> None:
    matcher = Matcher(LEARNERS)
    judgement = matcher.judge(text)
    assert judgement.candidates[0].why == why
    assert left_in_english(judgement.candidates[0].why) == []
    passed = matcher.by_folder(judgement).candidates[0].why
    assert passed == f"by its folder: {why}"
    assert left_in_english(passed) == []


def test_why_nobody_is_sure() -> None:
    judgement = Matcher(LEARNERS).judge("0012 0013")
    assert judgement.why == "“0012 0013” fits 2 learners about as well"
    assert left_in_english(judgement.why) == []
    few = Matcher(LEARNERS).judge("CS")
    assert few.why.startswith("“CS” is too little to go by: only the initials")
    assert left_in_english(few.why) == []
