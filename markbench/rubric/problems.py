"""What can be wrong with a rubric file, each with its place; all of it told at once."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Problem:
    """One thing wrong: in which file, criterion and key (empty where it has none)."""

    file: str
    criterion: str
    key: str
    message: str

    def __str__(self) -> str:
        place = [self.file]
        if self.criterion:
            place.append(f"criterion “{self.criterion}”")
        if self.key:
            place.append(self.key)
        return f"{', '.join(place)}: {self.message}"


class RubricError(ValueError):
    """A rubric that cannot be used; ``problems`` holds everything wrong with it."""

    def __init__(self, problems: list[Problem]) -> None:
        super().__init__("\n".join(str(problem) for problem in problems))
        self.problems = tuple(problems)
