"""What can be wrong with a rubric file, each with its place; all of it told at once."""

from __future__ import annotations

from dataclasses import dataclass

from markbench.model import joined, say


@dataclass(frozen=True, slots=True)
class Problem:
    """One thing wrong: in which file, criterion and key (empty where it has none)."""

    file: str
    criterion: str
    key: str
    message: str

    def __str__(self) -> str:
        row = say("criterion “{id}”", id=self.criterion) if self.criterion else ""
        place = joined((self.file, row, self.key), ", ")
        return say("{place}: {why}", place=place, why=self.message)


class RubricError(ValueError):
    """A rubric that cannot be used; ``problems`` holds everything wrong with it."""

    def __init__(self, problems: list[Problem]) -> None:
        super().__init__(joined(map(str, problems), "\n"))
        self.problems = tuple(problems)
