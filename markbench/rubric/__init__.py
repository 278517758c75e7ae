"""From findings and numbers to a drafted level and sentences per criterion, with reasons."""

from markbench.rubric.drafting import draft, no_longer_true
from markbench.rubric.facts import Facts, facts_of, facts_table_markdown
from markbench.rubric.loading import find_rubric, load_rubric
from markbench.rubric.problems import Problem, RubricError

__all__ = [
    "Facts",
    "Problem",
    "RubricError",
    "draft",
    "facts_of",
    "facts_table_markdown",
    "find_rubric",
    "load_rubric",
    "no_longer_true",
]
