"""A new class in four steps. What needs no answer can be passed over: each has a sound default."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QKeySequence, QShortcut
from PySide6.QtWidgets import (
    QButtonGroup,
    QHBoxLayout,
    QProgressBar,
    QPushButton,
    QStackedWidget,
    QVBoxLayout,
    QWidget,
)

from markbench.model import Brief
from markbench.session.newclass import NewClass
from markbench.ui.background import Task, in_background
from markbench.ui.look.dates import language
from markbench.ui.look.theme import Theme
from markbench.ui.mishaps import plainly
from markbench.ui.newclass.brief_form import BriefForm
from markbench.ui.newclass.found import FoundPage
from markbench.ui.newclass.rubric_choice import RubricChooser
from markbench.ui.newclass.whose import LooseDesk, WhosePanel
from markbench.ui.parts import button, frame, label
from markbench.ui.unsaved import may_lose

FOUND, WHOSE, BRIEF, RUBRIC = range(4)


class NewClassPage(QWidget):
    """``begun`` carries the folder of a class that may now be opened; ``left``: given up.

    ``folder_wanted`` asks for another folder; ``settled`` tells that undoing may be offered anew.
    """

    begun = Signal(object)
    left = Signal()
    folder_wanted = Signal()
    settled = Signal()

    def __init__(self, theme: Theme, who: str = "") -> None:
        super().__init__()
        self._theme, self._who = theme, who
        self.new: NewClass | None = None
        self.desk: LooseDesk | None = None
        self._looking: Task | None = None
        self._as_found: tuple[Brief, str] | None = None
        self._gone = False
        self._title = label(kind="title")
        self._lead = label(kind="quiet", wrap=True)
        self.trouble = label(kind="look", wrap=True)
        self.trouble.setTextInteractionFlags(Qt.TextInteractionFlag.TextSelectableByMouse)
        self.bar = QProgressBar()
        self.bar.setTextVisible(False)
        self.bar.setAccessibleName(self.tr("Progress"))
        self.found = FoundPage(theme)
        self.found.settle_wanted.connect(lambda: self.go(WHOSE))
        self.found.files.refused.connect(self._refuse)
        self.found.brief.decided.connect(self._say_where)
        self.found.no_work.folder_wanted.connect(self.folder_wanted)
        self.found.no_work.again.connect(self._look_again)
        self.form = BriefForm(theme)
        self.form.changed.connect(self._say_form)
        self.rubrics = RubricChooser(theme)
        self.rubrics.chosen.connect(lambda _name: self.form.show_most(self.rubrics.most))
        self._whose = QWidget()
        QVBoxLayout(self._whose).setContentsMargins(0, 0, 0, 0)
        self.whose: WhosePanel | None = None
        self.steps = QStackedWidget()
        for page in (self.found, self._whose, self.form, self.rubrics):
            self.steps.addWidget(page)
        self.back = button(self.tr("Back"), "", self._step_back)
        self.next = button(self.tr("Next"), "deed", self._step_on)
        keys = QKeySequence("Ctrl+Return")
        QShortcut(keys, self, self.next.click)
        self.next.setToolTip(keys.toString(QKeySequence.SequenceFormat.NativeText))
        self.give_up = button(self.tr("Give up"), "step", self.left.emit)
        self.names = self._step_buttons()
        self._lay_out()

    def _step_buttons(self) -> list[QPushButton]:
        words = (
            self.tr("1  What was found"), self.tr("2  Whose it is"),
            self.tr("3  What was asked"), self.tr("4  How it is marked"),
        )  # fmt: skip
        group = QButtonGroup(self)
        made = []
        for number, text in enumerate(words):
            one = button(text, "step", lambda number=number: self.go(number))  # type: ignore[misc]
            one.setCheckable(True)
            group.addButton(one)
            made.append(one)
        return made

    def _lay_out(self) -> None:
        margin = QVBoxLayout()
        margin.setSpacing(6)
        for one in self.names:
            margin.addWidget(one)
        margin.addStretch(1)
        margin.addWidget(self.give_up)
        sheet = frame("margin")
        inner = QVBoxLayout(sheet)
        inner.setContentsMargins(28, 18, 20, 16)
        inner.setSpacing(8)
        for part in (self._title, self._lead, self.bar):
            inner.addWidget(part)
        inner.addSpacing(8)
        inner.addWidget(self.steps, 1)
        foot = QHBoxLayout()
        foot.addWidget(self.trouble, 1)
        foot.addWidget(self.back)
        foot.addWidget(self.next)
        inner.addLayout(foot)
        row = QHBoxLayout(self)
        row.setContentsMargins(16, 12, 0, 0)
        row.setSpacing(16)
        row.addLayout(margin)
        row.addWidget(sheet, 1)

    # --- looking at a folder ---------------------------------------------------------

    def look_at(self, folder: Path) -> None:
        """Read a folder behind the window and show what is in it."""
        self.new = self.desk = None
        self._title.setText(self.tr("Looking through {name}").format(name=folder.name))
        self._lead.setText(self.tr("Nothing in it is changed."))
        self.trouble.clear()
        self.steps.hide()
        self.bar.setRange(0, 0)
        self.bar.show()
        self._allow(False)
        spoken = language()
        self._looking = in_background(
            self,
            lambda progress, stop: NewClass.look(
                folder, language=spoken, progress=progress, stop=stop
            ),
            done=self._show,
            failed=lambda error: self._say_failed(plainly(error)),
            progress=self._say_progress,
        )

    def _show(self, new: NewClass) -> None:
        self.new = new
        self.bar.hide()
        self.steps.show()
        self._allow(True)
        self.found.show_class(new)
        desk = self.desk = LooseDesk(new, self._whose)
        if self.whose is not None:
            self.whose.deleteLater()
        self.whose = WhosePanel(desk, self._theme)
        self.whose.done.connect(self._focus_next)
        desk.changed.connect(lambda _learner: self._show_settled(new))
        desk.trouble.connect(self.trouble.setText)
        self.settled.emit()
        inside = self._whose.layout()
        assert inside is not None
        inside.addWidget(self.whose)
        self.form.show_brief(new.brief, new.work)
        self.rubrics.offer(new.folder, new.brief.rubric, new.brief.feedback_language)
        self._as_found = (new.brief, self.rubrics.name)
        self.go(FOUND)

    def _show_settled(self, new: NewClass) -> None:
        self.found.show_class(new)
        self.form.show_class(new.work)
        if self.steps.currentIndex() in (BRIEF, RUBRIC):  # undone from there: show what
            self.go(WHOSE)
        self._say_where()
        self.settled.emit()

    def _refuse(self, file: str, learner: str) -> None:
        if self.desk is not None:
            self.desk.refuse(file, learner)
        self.next.setFocus()

    def _look_again(self) -> None:
        if self.new is not None:
            self.look_at(self.new.folder)

    def _say_failed(self, words: str) -> None:
        self.bar.hide()
        self._title.setText(self.tr("This folder could not be read"))
        self._lead.setText(words)
        self.give_up.setFocus()

    def _say_progress(self, at: int, of: int, text: str) -> None:
        self.bar.setRange(0, of)
        self.bar.setValue(at)
        self._lead.setText(text)

    def _allow(self, yes: bool) -> None:
        for one in (*self.names, self.back, self.next):
            one.setEnabled(yes)

    # --- the steps -------------------------------------------------------------------

    def go(self, number: int) -> None:
        """Go to a step."""
        if self.new is None:
            return
        self.steps.setCurrentIndex(number)
        self.names[number].setChecked(True)
        if number == RUBRIC:
            self.rubrics.focus_choice()
        elif number == BRIEF:
            self.form.fields["title"].set_focus()
        self._say_where()
        if number in (FOUND, WHOSE):
            self._focus_next()

    def _focus_next(self) -> None:
        at_start = self.steps.currentIndex() == FOUND
        other = self.found.no_work.another if at_start else self.back
        (self.next if self.next.isEnabled() else other).setFocus()

    def _say_where(self) -> None:
        new, number = self.new, self.steps.currentIndex()
        if new is None:
            return
        open_questions = self.whose.count() if self.whose is not None else 0
        titles = (
            self.tr("Found in {name}").format(name=new.folder.name),
            self.tr("Whose is it?"),
            self.tr("What was the class asked to do?"),
            self.tr("How is it marked?"),
        )
        aside = new.counts().set_aside
        leads = (
            self.tr("This folder has been marked in before; its marks are kept.")
            if new.begun
            else self.tr("Nothing was changed. Here is what the folder holds."),
            self.tr(
                "Files still open: {n}. What you leave open can be settled later, in the class."
            ).format(n=open_questions)
            if open_questions
            else self.tr("Nothing is left to settle; set aside as nobody's: {n}.").format(n=aside)
            if aside
            else self.tr("Every file has its owner."),
            self.tr(
                "Each setting may stay as it is. To the right stands what it means for this class."
            ),
            self.tr("The rubric drafts; you mark. It can be changed later."),
        )
        self._title.setText(titles[number])
        self._lead.setText(leads[number])
        self.back.setVisible(number > FOUND)
        self.next.setText(self.tr("Begin marking") if number == RUBRIC else self.tr("Next"))
        for step, name in enumerate(self.names):
            name.setEnabled(self._able(new, step))
        self.next.setEnabled(self._able(new, min(number + 1, RUBRIC)))
        self._say_form()

    def _able(self, new: NewClass, step: int) -> bool:
        """Whether a step makes sense: without a learner there is nothing to ask or to mark."""
        counts = new.counts()
        loose = counts.doubts + counts.unowned + counts.set_aside
        return step == FOUND or counts.learners > 0 or (step == WHOSE and loose > 0)

    def _say_form(self) -> None:
        at_form = self.steps.currentIndex() in (BRIEF, RUBRIC)
        self.trouble.setText(self.form.wrong() if at_form else "")

    def _step_back(self) -> None:
        self.go(max(self.steps.currentIndex() - 1, FOUND))

    def _step_on(self) -> None:
        number = self.steps.currentIndex()
        self.form.judge()
        if number in (BRIEF, RUBRIC) and self.form.troubles:
            self.go(BRIEF)
            self.form.show_trouble()
        elif number < RUBRIC:
            self.go(number + 1)
        else:
            self._begin()

    def _begin(self) -> None:
        new = self.new
        if new is None or not self.rubrics.name:
            return
        if new.brief_trouble and not new.puts_aside:
            self.go(FOUND)
            self.found.brief.aside.setFocus()
            self.trouble.setText(self.tr("First say what is to become of brief.toml."))
            return
        new.brief = replace(self.form.brief, rubric=self.rubrics.name)
        try:
            new.begin(self._who)
        except Exception as error:  # the disk, the journal or the brief in place: all are told
            self.trouble.setText(plainly(error))
            return
        self._gone = True
        self.begun.emit(new.folder)

    # --- leaving ---------------------------------------------------------------------

    def unsaved(self) -> bool:
        """Whether something was settled or typed that giving up would lose."""
        if self.new is None or self._as_found is None:
            return False
        self.form.judge()
        now = (replace(self.form.brief, rubric=self.new.brief.rubric), self.rubrics.name)
        return self.new.changed or bool(self.form.troubles) or now != self._as_found

    def may_leave(self) -> bool:
        """Whether the page may go; asks where something would be lost."""
        if not self._gone and self.unsaved():
            self._gone = may_lose(
                self,
                self.tr("Give up this new class?"),
                self.tr("What you settled and filled in is not kept. The folder is as it was."),
                lose=self.tr("Give up"),
                keep=self.tr("Go on"),
            )
            if not self._gone:
                return False
        if self._looking is not None:
            self._looking.stop()
        return True
