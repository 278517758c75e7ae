"""The session as the window sees it: commands in order off the main thread, news as signals.

A command ends in a write that must reach the disk, and may read the folder again; neither
may be felt while typing. So every command goes to one worker, in order, and the change
comes back as a signal on the main thread.

Where the class's file is out of reach (a share that went away, a full disk), commands are
kept in their order and tried again, every few seconds and before each new one.
"""

from __future__ import annotations

import datetime as dt
import secrets
from collections import deque
from collections.abc import Callable, Iterable
from functools import partial
from pathlib import Path
from typing import TYPE_CHECKING, Any, cast

from PySide6.QtCore import QCoreApplication, QObject, QThread, QThreadPool, QTimer, Signal
from shiboken6 import isValid

from markbench.ui.background import Progress, Work, in_background
from markbench.ui.look.dates import short_day_and_time
from markbench.ui.mishaps import plainly

if TYPE_CHECKING:
    from markbench.model import Decision
    from markbench.moderation.records import SignOff
    from markbench.session import Change, Session
    from markbench.session.blind import Veiled

Command = Callable[["Session"], None]
AGAIN_MS = 4000  # between tries to save what waits


class Desk(QObject):
    """Holds one open :class:`Session`.

    ``changed`` carries a learner's id, empty for all; ``told`` the session's own Change;
    ``turned`` the step that was taken back, or done again (then with True), as it was decided
    at first; ``unsure``: that is a signature, and waits for the person to say that she means it.
    ``kept``: what waits to be saved is another.
    ``renewed`` comes in their stead where brief or rubric were written: a page made for other
    criteria cannot show what holds now, and all are made anew over the desk's successor.
    """

    changed = Signal(str)
    told = Signal(object)
    closing = Signal()
    saved = Signal(object)
    turned = Signal(tuple, bool)
    unsure = Signal(bool)
    renewed = Signal()
    trouble = Signal(str)
    reopening_wanted = Signal()
    waiting = Signal(bool)
    kept = Signal()

    def __init__(self, session: Session, parent: QObject | None = None) -> None:
        super().__init__(parent)
        #: The session itself, with names: for what is written out.
        self.held = session
        self._veil: Veiled | None = None
        self._draw_veil()
        self.saved_at: dt.datetime | None = None
        self._pool = QThreadPool(self)
        self._pool.setMaxThreadCount(1)
        self._pending = 0
        self.open = True
        self._news: list[Change] = []
        self._outdated = False  # the pages over this desk are to be made anew
        self._unsaved: deque[Command] = deque()
        #: What each of them would decide, to be shown as said and not saved.
        self._said: dict[Command, tuple[Decision, ...]] = {}
        self._again = QTimer(self)
        self._again.timeout.connect(self.try_again)
        self._forget = session.listen(self._on_told)

    @property
    def session(self) -> Session:
        """The session as it may be seen: without names while marking is blind."""
        return self.held if self._veil is None else cast("Session", self._veil)

    @property
    def blind(self) -> bool:
        """Whether names, selfies and file names are hidden."""
        return self._veil is not None

    def hide_names(self, on: bool) -> None:
        """Hide names everywhere, or show them again; recorded like any decision."""
        from markbench.session.blind import set_blind

        seed = secrets.randbelow(1_000_000)
        self.do(lambda _session: set_blind(self.held, on, seed))

    def true_file(self, file: str) -> str:
        """The file to open for a piece as shown."""
        return file if self._veil is None else self._veil.true_file(file)

    def may_open(self, file: str) -> bool:
        """Whether a piece may be looked at now."""
        return self._veil is None or self._veil.may_open(file)

    def kept_back(self, learner: str) -> frozenset[str]:
        """Kinds of piece that were handed in and cannot be looked at here."""
        return frozenset()

    def hidden(self, text: str, learner: str = "") -> str:
        """A text from a learner's file as it may be seen."""
        return text if self._veil is None else self._veil.hide(text, learner)

    def _draw_veil(self) -> None:
        # Imported late, as the session is: the window is up before numpy and scipy are.
        from markbench.session.blind import Veiled, is_blind

        def name_of(number: int) -> str:
            return QCoreApplication.translate("Desk", "Portfolio {n}").format(n=number)

        self._veil = Veiled(self.held, name_of) if is_blind(self.held) else None

    def do(self, command: Command) -> None:
        """Give a command; it runs after those given before it."""
        self._carry_out(command)

    def try_again(self) -> None:
        """Carry out what could not be saved before."""
        self._carry_out()

    @property
    def unsaved(self) -> int:
        """Commands that wait for the class's file to be within reach."""
        return len(self._unsaved)

    def not_saved(self, kind: str, learner: str, subject: str = "") -> Decision | None:
        """What was said last of a key, while it waits to be saved."""
        said = (one for command in tuple(self._unsaved) for one in self._said.get(command, ()))
        return next((d for d in reversed(list(said)) if d.key == (kind, learner, subject)), None)

    def note(self, learner: str, criterion: str = "") -> str:
        """A private note as it was said last, saved or not."""
        waits = self.not_saved("note", learner, criterion)
        held = self.session.value("note", learner, criterion) if waits is None else waits.value
        return "" if held is None else str(held)

    def keep_elsewhere(self, path: Path) -> None:
        """Save what waits, and all said before, in another file, and go on there."""

        def keep(_session: Session) -> None:
            from markbench.store import StoreAwayError, StoreError

            try:
                self.held.keep_elsewhere(path)
            except StoreAwayError as error:
                raise StoreError(plainly(error)) from error  # that place is not waited for

        self.finish()
        self._unsaved.appendleft(keep)
        self._carry_out()

    def _carry_out(self, *commands: Command) -> None:
        self._pending += 1
        if self._pending == 1:
            self.waiting.emit(True)
        in_background(
            self,
            lambda _progress, _stop: self._in_order(commands),
            done=self._on_done,
            failed=self._on_failed,
            pool=self._pool,
        )

    def _in_order(self, commands: Iterable[Command]) -> bool:
        """On the worker's thread: what waits first. Whether something that waited was saved."""
        from markbench.store import StoreAwayError

        waited = len(self._unsaved)
        self._unsaved.extend(commands)
        refused: Exception | None = None
        while self._unsaved:
            try:
                self._unsaved[0](self.session)
            except StoreAwayError:
                # It stays the first in line, and nothing overtakes it.
                self._said = {
                    one: self._said.get(one) or self._foresee(one) for one in self._unsaved
                }
                raise
            except Exception as error:  # refused for good: told, and out of the way
                refused = refused or error
            self._unsaved.popleft()
        if refused is not None:
            raise refused
        return waited > 0

    def _foresee(self, command: Command) -> tuple[Decision, ...]:
        return self.held.rehearse(partial(command, self.session))

    def do_long(
        self,
        owner: QObject,
        work: Work,
        done: Callable[[Any], None],
        failed: Callable[[Exception], None],
        progress: Progress | None = None,
    ) -> None:
        """A command that takes a while, in its turn like any other; ``owner`` is told."""
        self._pending += 1
        if self._pending == 1:
            self.waiting.emit(True)

        def then(tell: Callable[[Any], None]) -> Callable[[Any], None]:
            def ended(result: Any) -> None:
                self._settle()
                if isValid(owner):
                    tell(result)

            return ended

        in_background(self, work, then(done), then(failed), progress, self._pool)

    def judge_piece(self, learner: str, file: str, status: str) -> None:
        """Say how a piece of evidence is; an empty ``status`` takes it back."""
        self.do(lambda session: session.set_piece_status(learner, file, status or None))

    def tell_kind(self, file: str, kind: str) -> None:
        """Say what a picture shows."""
        self.do(lambda session: session.set_piece_kind(file, kind))

    @property
    def signed(self) -> SignOff | None:
        """The sign-off in force: what a result depends on stands until it is lifted."""
        from markbench.moderation.records import sign_off_of

        return sign_off_of(self.held.state)

    def refuse_signed(self) -> bool:
        """Whether the marks are signed off; then that is said, and where to reopen them."""
        words = self.signed_words
        if words:
            self.trouble.emit(words)
        return bool(words)

    @property
    def signed_words(self) -> str:
        """That the marks are signed off, and where they are reopened; empty where they are not."""
        signed = self.signed
        if signed is None:
            return ""
        # No longer than the bar has room for.
        words = self.tr("Signed off {when}. Reopen: Moderation")
        return words.format(when=short_day_and_time(signed.at.astimezone()))

    def undo(self, *, sure: bool = False) -> None:
        """Take the last step back; a signature only where the person is sure of it."""
        self._turn(again=False, sure=sure)

    def redo(self, *, sure: bool = False) -> None:
        """Do it again."""
        self._turn(again=True, sure=sure)

    def _turn(self, *, again: bool, sure: bool) -> None:
        def turn(session: Session) -> None:
            from markbench.session.errors import SignatureError
            from markbench.session.steps import decided_in

            known = len(self.held.history())
            move = session.redo if again else session.undo
            try:
                if sure:
                    move(sure=True)
                else:
                    move()
            except SignatureError:
                self.unsure.emit(again)
            history = self.held.history()
            if len(history) > known:
                self.turned.emit(tuple(decided_in(history[known:], history)), again)

        self.do(turn)

    def finish(self) -> None:
        """Wait until everything given is written."""
        self._pool.waitForDone()

    def close(self) -> None:
        """Wait until everything given is written, then let the class go."""
        self._put_down()
        self.held.close()

    def successor(self) -> Desk:
        """Another desk with the same class on it, and all that waits to be saved."""
        self._put_down()
        desk = Desk(self.held, self.parent())
        desk._unsaved, desk._said = self._unsaved, self._said
        desk.saved_at = self.saved_at
        return desk

    def _put_down(self) -> None:
        self.open = False
        self._again.stop()
        self.closing.emit()
        self.finish()
        self._forget()

    def _on_told(self, change: Change) -> None:
        """Called by the session in the middle of a command: pass it on when that is done."""
        self._news.append(change)
        if QThread.currentThread() is self.thread():
            self._pass_on()

    def _pass_on(self) -> None:
        from markbench.session.class_files import KIND as WRITES_FILES
        from markbench.session.class_files import OTHER

        news, self._news = self._news, []
        written = any(WRITES_FILES in change.kinds for change in news)
        other = any(OTHER in change.kinds for change in news)
        if (written or other) and not self._outdated:
            self._outdated = True
            if written:
                self.saved_at = dt.datetime.now()
            self.renewed.emit()
        if self._outdated:
            return
        if any(not change.learner for change in news):
            self._draw_veil()
        for change in news:
            if change.decided:
                self.saved_at = dt.datetime.now()
                self.saved.emit(self.saved_at)
            self.told.emit(change)
            self.changed.emit(change.learner)

    def _on_done(self, waited: object) -> None:
        self._again.stop()
        self._settle()
        if waited:
            self.trouble.emit("")
            self.kept.emit()

    def _on_failed(self, error: Exception) -> None:
        from markbench.session import Change
        from markbench.session.errors import SignedOffError

        self._settle()
        words = plainly(error)
        if self._unsaved:
            self._again.start(AGAIN_MS)
            kept = self.tr("Changes kept here until they can be saved: {n}.")
            words = f"{words} {kept.format(n=len(self._unsaved))}"
            self.kept.emit()
        else:
            self._again.stop()
            if not self._outdated:
                # Whatever was shown as chosen was not: every page shows again what holds.
                self.told.emit(Change())
                self.changed.emit("")
        if not (isinstance(error, SignedOffError) and self.refuse_signed()):
            self.trouble.emit(words)

    def _settle(self) -> None:
        self._pass_on()
        self._pending -= 1
        if self._pending == 0:
            self.waiting.emit(False)
