"""What the learner is told of a slip that the teacher agreed on."""

from __future__ import annotations

from markbench.model import Explanation


def explained(slip: str, explanation: Explanation | None, language: str) -> str | None:
    """The agreed slip explained in the learner's own numbers; ``None`` where we have no words."""
    return None
