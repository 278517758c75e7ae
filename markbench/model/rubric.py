"""A rubric as data: criteria, their levels, the conditions and the phrases."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Phrase:
    """A sentence offered when ``when`` holds. ``role``: praise, problem, next, or look (a prompt
    to the teacher, for a criterion judged by eye)."""

    text: str
    when: str = ""
    role: str = "praise"


@dataclass(frozen=True, slots=True)
class Level:
    """One level of a criterion; the first level (highest first) whose ``when`` holds is drafted.

    ``to_learner`` is its name in the language of the feedback, where that is another.
    """

    name: str
    marks: float
    descriptor: str
    when: str = ""
    to_learner: str = ""

    @property
    def shown(self) -> str:
        """The name as the learner reads it."""
        return self.to_learner or self.name


@dataclass(frozen=True, slots=True)
class Criterion:
    """One row of the rubric. ``by_eye``: drafted by nobody, for the teacher's eye alone."""

    id: str
    title: str
    levels: tuple[Level, ...]
    phrases: tuple[Phrase, ...] = ()
    by_eye: bool = False

    @property
    def most(self) -> float:
        """The marks of the best level."""
        return max(level.marks for level in self.levels)


@dataclass(frozen=True, slots=True)
class Rubric:
    """A complete rubric."""

    id: str
    title: str
    criteria: tuple[Criterion, ...]

    @property
    def most(self) -> float:
        """Marks available."""
        return sum(criterion.most for criterion in self.criteria)
