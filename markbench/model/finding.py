"""A finding: a question the numbers put, as data. It never accuses."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from enum import IntEnum
from typing import Literal

from markbench.model.source import Source


class Concern(IntEnum):
    """How much a finding should weigh on the order of looking, from least to most."""

    NOTE = 0  # worth knowing; nothing to do
    ASK = 1  # a question for the learner
    LOOK = 2  # look before marking: the marks could turn on it


Who = Literal["teacher", "moderator", "office"]


@dataclass(frozen=True, slots=True)
class Finding:
    """One question put to a portfolio or, with an empty ``learner``, to the class.

    ``message`` is one plain sentence with numbers and units; ``ask`` what to ask the
    learner; ``who`` who should look. ``honest_rate`` is the measured or computed share of
    honest learners who would trip this check (``None`` where honesty has no bearing, as
    with a missing photo). ``cells`` lists questioned readings as (reading, timing)
    indices, timing ``None`` for the length itself. ``explained_by`` names the slip that the
    teacher agreed on and that answers the question; empty while it is open.
    """

    check: str
    learner: str
    message: str
    concern: Concern = Concern.ASK
    numbers: Mapping[str, float | str] = field(default_factory=dict)
    sources: tuple[Source, ...] = ()
    ask: str = ""
    who: Who = "teacher"
    honest_rate: float | None = None
    cells: tuple[tuple[int, int | None], ...] = ()
    explained_by: str = ""
