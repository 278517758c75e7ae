"""A moderation pack as the sheet of a learner sees it.

The sheet's widgets ask a session; a pack is not one, and holds less. This view answers what
they ask from the pack, and turns the gestures of marking into second marks.

Before her own marks are complete she sees the learner's work: readings, what is recomputed
from them, photos and films, and the questions that numbers and files put. She sees neither
drafts nor the explanations weighed, with the finding that names the likeliest: they would
lead her as much as the first mark would. Both come with the first marks.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import replace
from pathlib import Path
from typing import TYPE_CHECKING, Any, cast

from PySide6.QtCore import QObject

from markbench.model import Decision, Diagnosis, Draft, Finding, Learner, Mark
from markbench.session.errors import RefusedError
from markbench.session.pack_session import PackSession
from markbench.session.session import Change
from markbench.ui.desk import Command, Desk

if TYPE_CHECKING:
    from markbench.session import Session


class PackView:
    """What it does not know itself, the pack answers."""

    read_only = False
    #: The class's decisions stay with the class.
    state: Mapping[tuple[str, str, str], Decision] = {}

    def __init__(self, pack: PackSession) -> None:
        self.pack = pack

    def __getattr__(self, name: str) -> Any:
        return getattr(self.pack, name)

    @property
    def folder(self) -> Path:
        """Where the pack lies; its members are named through it."""
        return self.pack.path.parent

    def value(self, kind: str, learner: str = "", subject: str = "") -> Any:
        """The class's decisions stay with the class."""
        return None

    def diagnosis(self, learner: str) -> Diagnosis | None:
        """Explanations of the numbers, once she has looked at the first marks."""
        return self.pack.diagnosis(learner) if self.pack.has_looked(learner) else None

    def findings(self, learner: str) -> tuple[Finding, ...]:
        """Questions put by the work; the likeliest slip once she has looked."""
        found = self.pack.findings(learner)
        if self.pack.has_looked(learner):
            return found
        return tuple(replace(one, explained_by="") for one in found if one.check != "slip")

    def film(self, file: str) -> None:
        """Measurements of films stay with the class."""
        return None

    def draft(self, learner: str, criterion: str) -> Draft:
        """No draft."""
        return Draft(criterion, None, None, ())

    def drafts(self, learner: str) -> tuple[Draft, ...]:
        """No draft for any criterion."""
        return tuple(self.draft(learner, one.id) for one in self.pack.rubric.criteria)

    def mark(self, learner: str, criterion: str) -> Mark | None:
        """Her own, second mark."""
        return self.pack.second(learner, criterion)

    def marks(self, learner: str) -> dict[str, Mark]:
        """Her own marks by criterion."""
        found = {c.id: self.mark(learner, c.id) for c in self.pack.rubric.criteria}
        return {criterion: mark for criterion, mark in found.items() if mark is not None}

    def moved_draft(self, learner: str, criterion: str) -> None:
        """There is no draft that could change."""
        return None

    def is_settled(self, learner: str, criterion: str) -> bool:
        """Whether she marked it."""
        return self.mark(learner, criterion) is not None

    def total(self, learner: str) -> float | None:
        """Sum of her marks, ``None`` until every criterion has one."""
        marks = self.marks(learner)
        if len(marks) < len(self.pack.rubric.criteria):
            return None
        return sum(mark.marks for mark in marks.values())

    def feedback(self, learner: str, criterion: str) -> str:
        """Text to the learner is the first marker's; a second mark has none."""
        return ""

    def set_level(self, learner: str, criterion: str, level: str) -> None:
        """Mark a criterion."""
        self.pack.second_mark(learner, criterion, level)

    def only_look(self, *_what: object) -> None:
        """What is decided about the learners' work is decided in the class."""
        raise RefusedError("In a pack there is nothing to decide but marks.")

    agree = correct = decide = set_piece_status = set_piece_kind = only_look

    def listen(self, listener: Callable[[Change], None]) -> Callable[[], None]:
        """Changes as the window knows them: to look changes more than the margin.

        What was taken back is called ``undone``, so that it can be shown to whoever is elsewhere.
        """
        looked = {one.id for one in self.pack.learners if self.pack.has_looked(one.id)}

        def tell(number: str) -> None:
            is_first_look = self.pack.has_looked(number) and number not in looked
            if is_first_look:
                looked.add(number)
            is_undone = self.pack.history()[-1].undoes is not None
            kind = "first_seen" if is_first_look else "undone" if is_undone else "mark"
            listener(Change(number, (kind,)))

        return self.pack.listen(tell)


class PackDesk(Desk):
    """A desk with a pack on it."""

    def __init__(self, pack: PackSession, parent: QObject | None = None) -> None:
        super().__init__(cast("Session", PackView(pack)), parent)
        self.pack = pack

    def true_file(self, file: str) -> str:
        """A member of the pack, as a file within a zip file is named."""
        return f"{self.pack.path.name}!/{file}"

    def kept_back(self, learner: str) -> frozenset[str]:
        """What stayed with the first marker, and is not missing."""
        return self.pack.kept_back(learner)

    def _foresee(self, _command: Command) -> tuple[Decision, ...]:
        """A pack shows what is saved; what waits is told by its number."""
        return ()

    @property
    def signed(self) -> None:
        """A pack is signed by nobody; it is the class that is."""

    @property
    def learners(self) -> tuple[Learner, ...]:
        """Whom she second-marks."""
        return self.pack.learners
