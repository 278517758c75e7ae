"""What is odd in a brief can be said in another language, whole."""

from __future__ import annotations

from pathlib import Path

import pytest

from any_language import left_in_english
from markbench.intake.brief_file import parse_brief, read_brief
from markbench.intake.brief_rules import ALLOWED
from markbench.model import Sentence


@pytest.mark.parametrize(
    ("line", "kept"),
    [
        ("lengths = 500", ""),
        ("lenghts = 6", ""),
        ("latitude_deg = 3.1", ""),
        ("nothing_like_it_at_all = true", ""),
        ("closes = 1" + 80 * "0", ""),
        ('evidence = ["selfi"]', ""),
        ("opens = 2026-03-02\ncloses = 2026-03-01", ""),
        ("opens = 2026-03-02\ncloses = 2026-03-20\nkeep_evidence_until = 2026-03-10", ""),
        ("shortest_m = 0.9\nlongest_m = 0.5", ""),
        ("least_ratio = 15\nshortest_m = 0.2\nlongest_m = 0.6", ""),
        ("swings_per_timing = 15\nswings_allowed = [10, 20]", ""),
        ("this is no toml", "after a key"),
    ],
)
def test_what_is_odd_in_a_brief(line: str, kept: str) -> None:
    problems = parse_brief(line)[1]
    assert problems
    for problem in problems:
        assert left_in_english(problem.sentence, kept=kept) == []
        assert left_in_english(problem.as_finding().message, kept=kept) == []


def test_what_a_brief_may_hold() -> None:
    for key, rule in ALLOWED.items():
        assert isinstance(rule.allowed, Sentence), key
        assert left_in_english(rule.allowed) == [], key
        assert left_in_english(rule.typed) == [], key
    assert ALLOWED["grades"].allowed.endswith("as { A = 16, B = 13 }")


def test_a_brief_that_cannot_be_opened(tmp_path: Path) -> None:
    (tmp_path / "brief.toml").mkdir()
    (problem,) = read_brief(tmp_path / "brief.toml")[1]
    assert problem.sentence == "brief.toml could not be opened (it is no file of its own)."
    assert left_in_english(problem.sentence) == []
