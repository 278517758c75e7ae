"""A class before it is begun: what its folder holds, whose it is, what was asked, how it is marked.

Until :meth:`NewClass.begin` nothing is written; giving up leaves the folder as it was. What
the teacher settled on the way goes into the journal as decisions, like any later one. Until
then it is one :class:`Settled` after another, so that undoing goes back to the one before.
"""

from __future__ import annotations

import datetime as dt
import getpass
from collections import Counter
from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass, replace
from pathlib import Path

from markbench.checks.pieces import USELESS
from markbench.intake.brief_file import (
    BRIEF_NAME,
    is_brief,
    is_unreadable,
    name_aside,
    put_aside,
    read_brief,
)
from markbench.intake.folder import read_class
from markbench.intake.settled import Settled
from markbench.model import Brief, ClassWork, Decision, Learner, Rubric, say
from markbench.rubric import RubricError, load_rubric
from markbench.rubric.loading import SHIPPED
from markbench.session import class_files
from markbench.session.forms import usable
from markbench.session.keeping import STORE_NAME, store_of
from markbench.store import Journal, fold

Progress = Callable[[int, int, str], None]
Stop = Callable[[], bool]

_TITLES = {"en": Brief().title, "de": "Die Schwingungsdauer eines Pendels, zu Hause gemessen"}
"""What the practical is called in each language that learners can be spoken to in."""


@dataclass(frozen=True, slots=True)
class Counts:
    """What was found, in numbers. ``pieces``: kind → how many have an owner."""

    learners: int
    with_work: int
    pieces: Mapping[str, int]
    tables_understood: int
    doubts: int
    unowned: int
    set_aside: int

    @property
    def of_use(self) -> bool:
        """Whether there is anything that a mark could rest on."""
        seen = ("setup_photo", "selfie", "photo", "swing_video", "report")
        return self.tables_understood > 0 or any(self.pieces.get(kind, 0) for kind in seen)


@dataclass(frozen=True, slots=True)
class Damaged:
    """A file that could not be opened: why in a sentence, and whose it is (``""``: not known)."""

    file: str
    learner: str
    why: str


@dataclass(frozen=True, slots=True)
class RubricChoice:
    """A rubric one may mark by; ``rubric`` is ``None`` where ``trouble`` says what is wrong."""

    name: str
    own: bool
    rubric: Rubric | None
    trouble: str = ""


class NewClass:
    """A class folder that is being looked at. Make one with :meth:`look`."""

    def __init__(self, folder: Path, work: ClassWork, brief: Brief, brief_trouble: str) -> None:
        self.folder = folder
        self.brief = brief
        #: Why the brief in the folder cannot be read, if it cannot.
        self.brief_trouble = brief_trouble
        #: Whether that brief is put aside, under :attr:`aside`, when the class is begun.
        self.puts_aside = False
        #: The folder as read, with what was settled here.
        self.work = work
        self.settled = Settled()
        self._undo: list[Settled] = []
        self._redo: list[Settled] = []

    @classmethod
    def look(
        cls,
        folder: Path,
        *,
        language: str = "en",
        progress: Progress | None = None,
        stop: Stop | None = None,
    ) -> NewClass:
        """Read a folder without writing to it. Raises ``OSError`` where it cannot be opened.

        ``language``: that of the feedback, and of the title, where no brief says otherwise.
        """
        if not folder.is_dir():
            raise FileNotFoundError(say("There is no folder at {folder}.", folder=folder))
        work = read_class(folder, progress=progress, stop=stop)
        brief, odd = read_brief(folder / BRIEF_NAME)
        trouble = odd[0].sentence if is_unreadable(odd) else ""
        if (trouble or not (folder / BRIEF_NAME).exists()) and language in _TITLES:
            brief = replace(brief, feedback_language=language, title=_TITLES[language])
        return cls(folder, work, brief, trouble)

    @property
    def begun(self) -> bool:
        """Whether marks have been kept in this folder before."""
        return (self.folder / STORE_NAME).exists()

    @property
    def aside(self) -> str:
        """The name under which a brief that cannot be read is kept."""
        return name_aside(self.folder)

    @property
    def learners(self) -> tuple[Learner, ...]:
        """Every learner, in the order of the class list."""
        return self.work.learners

    @property
    def changed(self) -> bool:
        """Whether anything was settled here that giving up would lose."""
        return self.settled != Settled() or self.puts_aside

    # --- whose it is -----------------------------------------------------------------

    def settle_owner(self, file: str, learner: str | None) -> None:
        """Say whose a piece is: ``""`` says nobody's, ``None`` leaves it to its name again."""
        owners = {key: who for key, who in self.settled.owners.items() if key != file}
        if learner is not None:
            owners[file] = learner
        self._decide(replace(self.settled, owners=owners))

    def refuse_owner(self, file: str, learner: str) -> None:
        """Say that a piece is not from a learner; whose it is is then a question."""
        owners = {key: who for key, who in self.settled.owners.items() if key != file}
        refused = {**self.settled.refused}
        refused[file] = refused.get(file, frozenset()) | {learner}
        self._decide(replace(self.settled, owners=owners, refused=refused))

    @property
    def can_undo(self) -> bool:
        """Whether something was settled that can be taken back."""
        return bool(self._undo)

    @property
    def can_redo(self) -> bool:
        """Whether something was taken back that can be settled again."""
        return bool(self._redo)

    def undo(self) -> None:
        """Take the last step back."""
        self._take_back(self._undo, self._redo)

    def redo(self) -> None:
        """Do the last undone step again."""
        self._take_back(self._redo, self._undo)

    def _decide(self, settled: Settled) -> None:
        before = self.settled
        if settled != before:
            self._read(settled)
            self._undo.append(before)
            self._redo.clear()

    def _take_back(self, steps: list[Settled], onto: list[Settled]) -> None:
        if steps:
            before = self.settled
            self._read(steps[-1])
            onto.append(before)
            steps.pop()

    def _read(self, settled: Settled) -> None:
        """Read the folder again; where that fails, nothing is settled."""
        self.work = read_class(self.folder, settled)
        self.settled = settled

    # --- what was found --------------------------------------------------------------

    def counts(self) -> Counts:
        """What was found, in numbers."""
        portfolios = self.work.portfolios.values()
        return Counts(
            learners=len(self.work.learners),
            with_work=sum(bool(one.pieces) or one.table is not None for one in portfolios),
            pieces=Counter(piece.kind for one in portfolios for piece in one.pieces),
            tables_understood=sum(one.table is not None for one in portfolios),
            doubts=len(self.work.doubts),
            unowned=len(self.work.unowned),
            set_aside=len(self.work.set_aside),
        )

    def damaged(self) -> tuple[Damaged, ...]:
        """Files that could not be opened, as far as that is known before they are looked at."""
        work = self.work
        owned = [
            (finding, learner)
            for learner, portfolio in work.portfolios.items()
            for finding in portfolio.findings
        ]
        found = {
            finding.sources[0].file: Damaged(finding.sources[0].file, learner, finding.message)
            for finding, learner in [*((finding, "") for finding in work.problems), *owned]
            if finding.check in USELESS and finding.sources
        }
        return tuple(found.values())

    def begin(self, who: str = "") -> None:
        """Write the brief and what was settled; the class is then opened like any other.

        Both are one step, which can be taken back in the class. Raises ``ValueError`` for a
        brief in place that is not readable, ``RubricError`` for a rubric that cannot be used,
        ``RefusedError`` or ``StoreError`` where the disk refuses.
        """
        who = who or getpass.getuser()
        now = dt.datetime.now(dt.UTC)
        if self.puts_aside:
            put_aside(self.folder)
            self.puts_aside, self.brief_trouble = False, ""
        brief = class_files.saved_brief(self.folder, self.brief)
        before = class_files.text_of(self.folder, brief.subject)
        with Journal.open(store_of(self.folder), who=who) as journal:
            held = fold(usable(journal.all()))
            step = [] if before == brief.value else [replace(brief, before=before)]
            for said in self._said():
                was = held.get(said.key)
                step.append(replace(said, before=None if was is None else was.value))
            step = [replace(d, who=who, at=now) for d in step]
            with class_files.written(self.folder, step):
                journal.append(step)

    def _said(self) -> Iterator[Decision]:
        for file, learner in self.settled.owners.items():
            yield Decision("owner", "", file, learner)
        for file, learners in self.settled.refused.items():
            for learner in sorted(learners):
                yield Decision("not_owner", learner, file, True)


def rubrics_for(folder: Path, language: str = "en") -> tuple[RubricChoice, ...]:
    """The class folder's own rubrics, then the shipped ones that they do not replace."""
    found: dict[str, RubricChoice] = {}
    for place, own in ((folder, True), (SHIPPED, False)):
        for path in sorted(place.glob("*.toml")):
            if path.stem in found or is_brief(path.name):
                continue
            try:
                found[path.stem] = RubricChoice(path.stem, own, load_rubric(path, language))
            except RubricError as error:
                found[path.stem] = RubricChoice(path.stem, own, None, str(error))
    return tuple(found.values())
