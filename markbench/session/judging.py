"""What is worked out of a class, kept in step with what people decide.

Most decisions (a mark, a note, a text) change nothing here; some concern one learner, a few
the whole class. Only what a decision can have changed is read and judged again, so that a
keystroke does not wait for thirty portfolios.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence, Set
from pathlib import Path

from markbench.intake.folder import read_again, read_class
from markbench.model import ClassWork, Decision, Finding, Rubric, State
from markbench.rubric import find_rubric
from markbench.session import present
from markbench.session.class_files import KIND as FILE
from markbench.session.evidence import Seen, counted, film_weights, findings_of, repeats
from markbench.session.judge import Judged, compare, compare_again, judge, recompute, tables
from markbench.session.kept import with_kept

_REJUDGES = {"agreed_slip", "extension", "swing_count"}


class Judging:
    """A class as read, as seen and as judged, under the decisions of ``state``."""

    def __init__(self, folder: Path, work: ClassWork, rubric: Rubric, state: State) -> None:
        self.folder = folder
        #: The class folder as read.
        self.work = work
        #: What was seen in the photos and films.
        self.seen = with_kept(Seen(), state)
        #: Everything worked out, by learner.
        self.judged: dict[str, Judged] = {}
        #: What the class is marked by.
        self.rubric = rubric
        self._alike: Mapping[str, tuple[Finding, ...]] = {}
        #: Questions about each learner's photos beside everybody's.
        self.repeats: Mapping[str, tuple[Finding, ...]] = {}
        self._judge_again(state)

    def see(self, seen: Seen, state: State) -> None:
        """Take in what was seen in the photos and films, and judge everybody again."""
        self.seen = with_kept(seen, state)
        self._judge_again(state)

    def read_folder(self, state: State) -> None:
        """Read the whole folder again, with its brief and its rubric, and judge everybody."""
        work = read_class(self.folder, present.settled(state))
        rubric = find_rubric(work.brief.rubric, self.folder, work.brief.feedback_language)
        self.work, self.rubric = work, rubric
        self.seen = with_kept(self.seen, state)
        self._judge_again(state)

    def follow(self, written: Sequence[Decision], state: State) -> Set[str]:
        """Read and judge again what fresh decisions ask for; returns whom they concern.

        ``state`` is the present with ``written`` in it. The empty id stands for everybody.
        """
        concerned = present.rereads(self.work, written)
        if concerned is None:
            self.work = read_class(self.folder, present.settled(state))
            if any(d.kind == FILE for d in written):
                brief = self.work.brief
                self.rubric = find_rubric(brief.rubric, self.folder, brief.feedback_language)
            self.seen = with_kept(self.seen, state)
            self._judge_again(state)
            return {""}
        if concerned:
            concerned = self._read_again(concerned, state)
        judged = {d.learner for d in written if d.kind in _REJUDGES} | concerned
        if judged:
            self._judge_again(state, judged)
        return judged | {d.learner for d in written if d.learner or not concerned}

    def _read_again(self, learners: frozenset[str], state: State) -> frozenset[str]:
        """Read some learners' tables again; returns whoever is to be judged for it."""
        before, tables_before = self._alike, tables(self.work)
        settled = present.settled(state)
        for learner in learners:
            self.work = read_again(self.work, self.folder, learner, settled)
        if tables(self.work) == tables_before:
            self._alike = compare_again(self.work, learners, before)
        else:  # how much agreement is beyond chance depends on the number of tables
            self._alike = compare(self.work)
        moved = {i for i in {*before, *self._alike} if before.get(i) != self._alike.get(i)}
        return learners | moved

    def _judge_again(self, state: State, only: Iterable[str] | None = None) -> None:
        ids = list(self.work.portfolios if only is None else only)
        agreed = present.agreed_slips(state)
        until = present.extensions(state)
        if only is None:
            self._alike = compare(self.work)
            self.repeats = repeats(self.work, self.seen)
        analyses = recompute(self.work, ids)
        seen = counted(self.seen, state)
        looked = findings_of(self.work, analyses, seen)
        films = film_weights(self.work, analyses, seen)
        everyones = (self._alike, looked, self.repeats)
        extra = {i: tuple(f for one in everyones for f in one.get(i, ())) for i in ids}
        fresh = judge(self.work, self.rubric, analyses, agreed, extra, until, films)
        self.judged = {**self.judged, **fresh} if only is not None else fresh
