"""One class folder at work: what is known, and every command a person can give.

No Qt here: the window and the command line are two faces over this one object. Commands
write decisions to the journal first and change the present only after that, so that what
is shown as saved is saved. Listeners are called after each change, on the thread that
gave the command.
"""

from __future__ import annotations

import datetime as dt
import getpass
from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from itertools import chain
from pathlib import Path
from typing import Any

from markbench.intake.brief_file import BRIEF_NAME, read_brief
from markbench.intake.folder import read_class
from markbench.model import Brief, ClassWork, Decision, Rubric, Source, say
from markbench.moderation.records import FROZEN, sign_off_of
from markbench.rubric import RubricError, find_rubric
from markbench.session import class_files, marking, present
from markbench.session.errors import GoneByError, SignatureError, SignedOffError
from markbench.session.evidence import Seen
from markbench.session.forms import refuse_odd, usable, with_odd
from markbench.session.judging import Judging
from markbench.session.keeping import store_of
from markbench.session.known import Known
from markbench.session.looked_again import News, news
from markbench.session.steps import Step, Steps, closed, is_signature, taking_back
from markbench.session.texts import Text
from markbench.store import Journal, StoreError, StoreInUseError, fold

Progress = Callable[[int, int, str], None]
Stop = Callable[[], bool]


@dataclass(frozen=True, slots=True)
class Change:
    """What a listener is told: ``learner`` is empty where the whole class changed."""

    learner: str = ""
    kinds: tuple[str, ...] = ()

    @property
    def decided(self) -> bool:
        """Whether a person decided something; else more was seen of what was handed in."""
        return self.kinds not in (("evidence",), ("folder",), (class_files.OTHER,))


class Session(Known):
    """A class folder opened by ``who``. Build with :meth:`open`."""

    def __init__(
        self, folder: Path, who: str, journal: Journal, work: ClassWork, rubric: Rubric
    ) -> None:
        decisions = journal.all()
        state = dict(fold(usable(decisions)))
        super().__init__(Judging(folder, work, rubric, state), decisions, state)
        self.folder = folder
        self.who = who
        #: Why the session is read-only, if somebody else has the class open.
        self.notice = ""
        self._journal = journal
        self._steps = Steps(who, decisions)
        self._listeners: list[Callable[[Change], None]] = []
        self._rehearsed: list[Decision] | None = None

    @classmethod
    def open(
        cls,
        folder: Path,
        who: str = "",
        *,
        progress: Progress | None = None,
        stop: Stop | None = None,
        read_only: bool = False,
    ) -> Session:
        """Read a class folder and its journal.

        Raises ``FileNotFoundError`` for a missing folder, ``StoreError`` for a journal
        that cannot be used, ``RubricError`` for a rubric that does not validate.
        """
        folder = Path(folder)
        if not folder.is_dir():
            raise FileNotFoundError(say("There is no class folder at {folder}.", folder=folder))
        who = who or getpass.getuser()
        try:
            journal = Journal.open(store_of(folder), read_only=read_only, who=who)
        except StoreInUseError as in_use:
            # Somebody has the class open: look on, and say who has it.
            journal = Journal.open(store_of(folder), read_only=True, who=who)
            notice = str(in_use)
        else:
            notice = ""
        try:
            decisions = journal.all()
            settled = present.settled(fold(usable(decisions)))
            work = read_class(folder, settled, progress=progress, stop=stop)
            rubric = find_rubric(work.brief.rubric, folder, work.brief.feedback_language)
            session = cls(folder, who, journal, with_odd(work, journal.name, decisions), rubric)
        except BaseException:
            journal.close()  # or the next window would hear that this one has the class
            raise
        session.notice = notice
        return session

    def close(self) -> None:
        """Release the journal."""
        self._journal.close()

    def keep_copy(self) -> None:
        """Copy the class's file now, beside the copies made every hour."""
        self._journal.back_up()

    def keep_elsewhere(self, path: Path) -> None:
        """Go on in another file, which first gets all that was said so far.

        For a class folder that does not come back. The new file is a journal like any other
        and can be merged into the class later. Raises ``StoreError``.
        """
        if path.exists():
            raise StoreError(say("{file} is there already; choose another name.", file=path.name))
        fresh = Journal.open(path, who=self.who)
        try:
            fresh.append(self._decisions)
        except StoreError:
            fresh.close()
            raise
        self._journal.close()
        self._journal = fresh

    @property
    def read_only(self) -> bool:
        """Whether commands are refused because another window holds the class."""
        return self._journal.read_only

    # --- commands ------------------------------------------------------------------

    def accept(self, learner: str, *criteria: str) -> None:
        """Make marks of drafts: of ``criteria``, or of all not yet marked that have a level."""
        wanted = criteria or tuple(
            d.criterion for d in self.drafts(learner) if not self.mark(learner, d.criterion)
        )
        drafts = [self.draft(learner, criterion) for criterion in wanted]
        marks = chain.from_iterable(marking.of_draft(self, learner, draft) for draft in drafts)
        self.decide(*marking.resting(self, marks))

    def keep_mark(self, learner: str, criterion: str) -> None:
        """Let a mark stand whose draft has changed since it was given."""
        self.decide(*marking.resting(self, marking.kept(self, learner, criterion)))

    def set_level(self, learner: str, criterion: str, level: str, why: str = "") -> None:
        """Mark a criterion with a level of the person's own choice."""
        row = next(c for c in self.rubric.criteria if c.id == criterion)
        chosen = next((one for one in row.levels if one.name == level), None)
        if chosen is None:
            names = ", ".join(one.name for one in row.levels)
            raise ValueError(
                say(
                    "{title} has no level {level}; its levels are {names}.",
                    title=row.title,
                    level=repr(level),
                    names=names,
                )
            )
        marks = marking.of_level(self, learner, criterion, level, chosen.marks, why=why)
        self.decide(*marking.resting(self, marks))

    def clear_mark(self, learner: str, criterion: str) -> None:
        """Take a mark back to a draft."""
        self.decide(Decision("mark", learner, criterion, None))

    def set_feedback(self, learner: str, criterion: str, text: str) -> None:
        """Keep the text to the learner as edited."""
        if text != self.feedback(learner, criterion):
            self.decide(Decision("feedback", learner, criterion, text))

    def set_text(self, learner: str, criterion: str, text: Text) -> None:
        """Keep the pieces of the text to the learner, in their order."""
        if text != self.text(learner, criterion):
            value = text.value(self.facts(learner))
            self.decide(Decision("feedback", learner, criterion, value))

    def set_note(self, learner: str, text: str, criterion: str = "") -> None:
        """Keep a private note, which never goes out."""
        self.decide(Decision("note", learner, criterion, text or None))

    def settle_owner(self, file: str, learner: str | None) -> None:
        """Say whose a piece is: ``""`` says nobody's, ``None`` leaves it to its name again."""
        self.decide(Decision("owner", "", file, learner))

    def set_piece_kind(self, file: str, kind: str) -> None:
        """Say what a piece shows (``setup_photo``, ``selfie``, …)."""
        self.decide(Decision("piece_kind", "", file, kind))

    def set_piece_status(self, learner: str, file: str, status: str | None) -> None:
        """``accepted``, ``unreadable``, ``again`` or ``None``."""
        self.decide(Decision("piece_status", learner, file, status))

    def correct(self, learner: str, source: Source, text: str | None) -> None:
        """Read ``text`` where the cell of ``source`` stands; ``None`` restores the original."""
        self.decide(
            Decision("correction", learner, f"{source.file}|{source.sheet}|{source.cell}", text)
        )

    def type_readings(self, learner: str, rows: Sequence[Mapping[str, Any]] | None) -> None:
        """Readings typed by the teacher: ``{"length_m", "swings", "timings_s"}`` per row."""
        self.decide(Decision("typed", learner, "", None if rows is None else list(rows)))

    def point_at_columns(self, file: str, hints: Mapping[str, Any] | None) -> None:
        """Say which columns of a table hold what (``ColumnHints.to_json``)."""
        self.decide(Decision("hints", "", file, hints))

    def agree(self, learner: str, slip: str | None) -> None:
        """Agree with an explanation of the learner's numbers, or take it back."""
        self.decide(Decision("agreed_slip", learner, "", slip))

    def extend(self, learner: str, until: dt.date | None) -> None:
        """Give a learner until ``until`` (inclusive) to hand in."""
        self.decide(
            Decision("extension", learner, "", None if until is None else until.isoformat())
        )

    def save_brief(self, brief: Brief) -> None:
        """Save what the class was asked to do; all is read and drafted again.

        Raises ``ValueError`` where the brief in place is damaged, ``RubricError`` where the
        rubric that it names cannot be used, :class:`RefusedError` where the disk refuses.
        """
        self.decide(class_files.saved_brief(self.folder, brief))

    def save_rubric(self, name: str, text: str, *, use: bool = True) -> None:
        """Save a rubric of the class's own and, to ``use`` it, name it in the brief.

        Raises as :meth:`save_brief`, and ``ValueError`` for a name that will not do or a rubric
        that is not right.
        """
        from markbench.session.rubric_sheet import RubricSheet  # late: reading a class needs none

        right, told = RubricSheet(text, "").check()
        if right is None:
            raise ValueError(
                say("The rubric is not right yet: {message}.", message=told[0].message)
            )
        rubric = class_files.saved_rubric(self.folder, name, text)
        named = []
        if use:
            brief, _ = read_brief(self.folder / BRIEF_NAME)
            stem = rubric.subject.removesuffix(".toml")
            named = [class_files.saved_brief(self.folder, replace(brief, rubric=stem))]
        self.decide(rubric, *named)

    # --- deciding, undoing ---------------------------------------------------------

    def decide(self, *decisions: Decision) -> None:
        """Journal decisions as one step that can be undone; unchanged ones are dropped."""
        fresh = self._signed(d for d in decisions if self._stands(d) != d.value)
        if not fresh:
            return
        self._refuse_frozen(fresh)

        self._commit(fresh, self._steps.follow)

    def take_in(self, decisions: Sequence[Decision], end: Decision) -> None:
        """Journal decisions made elsewhere, with their own signatures and times, as one step.

        ``end`` says what they are; it closes the step, which can be taken back as a whole.
        """
        if decisions:
            self._refuse_frozen(decisions)

            self._commit([*decisions, *self._signed([closed(decisions, end)])], self._steps.follow)

    @property
    def can_undo(self) -> bool:
        """Whether there is a step of this person's to take back, of this evening or before."""
        return bool(self._steps.past) and not self.read_only

    @property
    def can_redo(self) -> bool:
        """Whether there is a step to do again."""
        return bool(self._steps.undone) and not self.read_only

    def undo(self, *, sure: bool = False) -> None:
        """Take the last step back, by a decision of its own.

        Raises :class:`RefusedError` where a file that it saved was changed by another hand, and
        :class:`SignatureError` where it signed the marks off or reopened them: a signature goes,
        or comes back, only where the person is ``sure``.
        """
        self._take_back(self._steps.past, sure)

    def redo(self, *, sure: bool = False) -> None:
        """Do the last undone step again, by a decision of its own. Raises as :meth:`undo`."""
        self._take_back(self._steps.undone, sure)

    def listen(self, listener: Callable[[Change], None]) -> Callable[[], None]:
        """Call ``listener`` after each change; returns a function that stops it."""
        self._listeners.append(listener)
        return lambda: self._listeners.remove(listener)

    def see(self, seen: Seen) -> None:
        """Take in what was seen in the photos and films, and draft again."""
        self._judging.see(seen, self._state)
        self.draft_all()  # here, where nobody waits, and not while cards are drawn
        self._tell(Change("", ("evidence",)))

    def read_again(self) -> News:
        """Read the folder again: files may have come, changed or gone. Nothing is decided.

        Raises ``FileNotFoundError`` where the folder is out of reach, ``RubricError`` where its
        rubric cannot be used; what was read before then holds.
        """
        if not self.folder.is_dir():
            raise FileNotFoundError(
                say("There is no class folder at {folder}.", folder=self.folder)
            )
        before, marked_by = self._judging.work, self._judging.rubric
        self._judging.read_folder(self._state)
        found = news(before, self._judging.work)
        self._judging.work = with_odd(self._judging.work, self._journal.name, self._decisions)
        if marked_by != self._judging.rubric:
            found = replace(found, asked=True)
        self._tell(Change("", (class_files.OTHER if found.asked else "folder",)))
        return found

    def rehearse(self, command: Callable[[], None]) -> tuple[Decision, ...]:
        """What a command would decide, which writes and changes nothing; empty if it fails."""
        found: list[Decision] = []
        self._rehearsed = found
        try:
            command()
        except Exception:  # it is told when it is carried out
            return ()
        finally:
            self._rehearsed = None
        return tuple(found)

    # --- inside --------------------------------------------------------------------

    def _signed(self, decisions: Iterable[Decision]) -> list[Decision]:
        """Decisions of one step: the time that they share, and no other step has, binds them.

        What comes back with a signature keeps it.
        """
        now = dt.datetime.now(dt.UTC)
        if self._decisions and self._decisions[-1].at == now:
            now += dt.timedelta(microseconds=1)
        return [
            replace(d, who=d.who or self.who, at=d.at or now, before=self._stands(d))
            for d in decisions
        ]

    def _stands(self, decision: Decision) -> Any:
        """What holds now of a decision's key: in the journal, or in the file itself."""
        if decision.kind == class_files.KIND:
            return class_files.text_of(self.folder, decision.subject)
        return self.value(*decision.key)

    def _refuse_frozen(self, decisions: Iterable[Decision]) -> None:
        signed = sign_off_of(self._state)
        if signed is not None and any(d.kind in FROZEN for d in decisions):
            raise SignedOffError(
                say(
                    "The marks were signed off by {by} on {day:%d %B %Y}; reopen the "
                    "class to change them.",
                    by=signed.by,
                    day=signed.at.astimezone().date(),
                )
            )

    def _take_back(self, steps: list[Step], sure: bool) -> None:
        if not steps:
            return
        if is_signature(steps[-1]) and not sure:
            raise SignatureError(
                say("The last step is a signature; it changes only when you say so.")
            )
        back = self._signed(taking_back(steps[-1], self._decisions, self.who))
        try:
            class_files.refuse_changed(self.folder, steps[-1])
            self._commit(back, self._steps.follow)
        except (GoneByError, RubricError):
            steps.pop()
            raise

    def _commit(self, decisions: list[Decision], keep: Callable[[list[Decision]], None]) -> None:
        """Journal, change the present, ``keep`` the step for undoing, and tell."""
        if self._rehearsed is not None:
            self._rehearsed += decisions
            return
        if self.read_only:
            raise StoreError(
                say("{name} is open for reading only; nothing was saved.", name=self._journal.name)
            )
        refuse_odd(decisions)
        with class_files.written(self.folder, decisions):
            written = self._journal.append(decisions)
        self._decisions.extend(written)
        self._state = dict(fold(written, self._state))
        concerned = self._judging.follow(written, self._state)
        keep(written)
        kinds = tuple(sorted({d.kind for d in written}))
        for learner in concerned:
            self._tell(Change(learner, kinds))

    def _tell(self, change: Change) -> None:
        for listener in list(self._listeners):
            listener(change)
