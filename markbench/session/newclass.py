"""A class before it is begun: what its folder holds, whose it is, what was asked, how it is marked.

Until :meth:`NewClass.begin` nothing is written; giving up leaves the folder as it was. What
the teacher settled on the way goes into the journal as decisions, like any later one.
"""

from __future__ import annotations

import datetime as dt
import getpass
from collections import Counter
from collections.abc import Callable, Mapping
from dataclasses import dataclass, replace
from pathlib import Path

from markbench.intake.brief_file import BRIEF_NAME, read_brief
from markbench.intake.folder import read_class
from markbench.intake.settled import Settled
from markbench.model import Brief, ClassWork, Decision, Learner, Rubric
from markbench.rubric import RubricError, load_rubric
from markbench.rubric.loading import SHIPPED
from markbench.session import class_files
from markbench.session.forms import usable
from markbench.session.keeping import STORE_NAME, store_of
from markbench.store import Journal, fold

Progress = Callable[[int, int, str], None]
Stop = Callable[[], bool]


@dataclass(frozen=True, slots=True)
class Counts:
    """What was found, in numbers. ``pieces``: kind → how many have an owner."""

    learners: int
    with_work: int
    pieces: Mapping[str, int]
    tables_understood: int
    doubts: int
    unowned: int


@dataclass(frozen=True, slots=True)
class RubricChoice:
    """A rubric one may mark by; ``rubric`` is ``None`` where ``trouble`` says what is wrong."""

    name: str
    own: bool
    rubric: Rubric | None
    trouble: str = ""


class NewClass:
    """A class folder that is being looked at. Make one with :meth:`look`."""

    def __init__(self, folder: Path, work: ClassWork, brief: Brief) -> None:
        self.folder = folder
        self.brief = brief
        self.owners: dict[str, str] = {}
        self._work = work

    @classmethod
    def look(
        cls, folder: Path, *, progress: Progress | None = None, stop: Stop | None = None
    ) -> NewClass:
        """Read a folder without writing to it. Raises ``OSError`` where it cannot be opened."""
        if not folder.is_dir():
            raise FileNotFoundError(f"There is no folder at {folder}.")
        work = read_class(folder, progress=progress, stop=stop)
        brief, _ = read_brief(folder / BRIEF_NAME)
        return cls(folder, work, brief)

    @property
    def begun(self) -> bool:
        """Whether marks have been kept in this folder before."""
        return (self.folder / STORE_NAME).exists()

    @property
    def work(self) -> ClassWork:
        """The folder as read, without the questions that were answered here."""
        set_aside = {file for file, owner in self.owners.items() if owner == ""}
        left = tuple(piece for piece in self._work.unowned if piece.file not in set_aside)
        return replace(self._work, unowned=left)

    @property
    def learners(self) -> tuple[Learner, ...]:
        """Every learner, in the order of the class list."""
        return self._work.learners

    def settle_owner(self, file: str, learner: str) -> None:
        """Say whose a piece is (``""``: nobody's); the folder is read again with it."""
        owners = {**self.owners, file: learner}
        self._work = read_class(self.folder, Settled(owners=owners))
        self.owners = owners

    def counts(self) -> Counts:
        """What was found, in numbers."""
        portfolios = self._work.portfolios.values()
        return Counts(
            learners=len(self._work.learners),
            with_work=sum(bool(one.pieces) or one.table is not None for one in portfolios),
            pieces=Counter(piece.kind for one in portfolios for piece in one.pieces),
            tables_understood=sum(one.table is not None for one in portfolios),
            doubts=len(self._work.doubts),
            unowned=len(self.work.unowned),
        )

    def begin(self, who: str = "") -> None:
        """Write the brief and what was settled; the class is then opened like any other.

        Both are one step, which can be taken back in the class. Raises ``ValueError`` for a
        brief in place that is not readable, ``RubricError`` for a rubric that cannot be used,
        ``RefusedError`` or ``StoreError`` where the disk refuses.
        """
        who = who or getpass.getuser()
        now = dt.datetime.now(dt.UTC)
        brief = class_files.saved_brief(self.folder, self.brief)
        before = class_files.text_of(self.folder, brief.subject)
        with Journal.open(store_of(self.folder), who=who) as journal:
            held = fold(usable(journal.all()))
            step = [] if before == brief.value else [replace(brief, before=before)]
            for file, learner in self.owners.items():
                was = held.get(("owner", "", file))
                step.append(
                    Decision("owner", "", file, learner, before=None if was is None else was.value)
                )
            step = [replace(d, who=who, at=now) for d in step]
            with class_files.written(self.folder, step):
                journal.append(step)


def rubrics_for(folder: Path, language: str = "en") -> tuple[RubricChoice, ...]:
    """The class folder's own rubrics, then the shipped ones that they do not replace."""
    found: dict[str, RubricChoice] = {}
    for place, own in ((folder, True), (SHIPPED, False)):
        for path in sorted(place.glob("*.toml")):
            if path.stem in found or path.name.casefold() == BRIEF_NAME:
                continue
            try:
                found[path.stem] = RubricChoice(path.stem, own, load_rubric(path, language))
            except RubricError as error:
                found[path.stem] = RubricChoice(path.stem, own, None, str(error))
    return tuple(found.values())
