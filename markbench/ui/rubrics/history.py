"""What a rubric was while it is written: taken back and done again, a text at a time."""

from __future__ import annotations

from dataclasses import dataclass, field


@dataclass
class History:
    """The texts before ``now`` and after it."""

    now: str
    past: list[str] = field(default_factory=list)
    undone: list[str] = field(default_factory=list)

    def remember(self, text: str) -> None:
        """Take note of what is written now."""
        if text != self.now:
            self.past.append(self.now)
            self.undone.clear()
            self.now = text

    def back(self) -> str | None:
        """The text before, ``None`` where there is none."""
        return self._step(self.past, self.undone)

    def forward(self) -> str | None:
        """The text that was taken back last."""
        return self._step(self.undone, self.past)

    def _step(self, to: list[str], left: list[str]) -> str | None:
        if not to:
            return None
        left.append(self.now)
        self.now = to.pop()
        return self.now
