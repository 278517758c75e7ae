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

FOUND, WHOSE, BRIEF, RUBRIC = range(4)


class NewClassPage(QWidget):
    """``begun`` carries the folder of a class that may now be opened; ``left``: given up."""

    begun = Signal(object)
    left = Signal()

    def __init__(self, theme: Theme, who: str = "") -> None:
        super().__init__()
        self._theme, self._who = theme, who
        self.new: NewClass | None = None
        self._looking: Task | None = None
        self._title = label(kind="title")
        self._lead = label(kind="quiet", wrap=True)
        self.trouble = label(kind="look", wrap=True)
        self.trouble.setTextInteractionFlags(Qt.TextInteractionFlag.TextSelectableByMouse)
        self.bar = QProgressBar()
        self.bar.setTextVisible(False)
        self.bar.setAccessibleName(self.tr("Progress"))
        self.found = FoundPage(theme)
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
        self.give_up = button(self.tr("Give up"), "step", self._leave)
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
        self.new = None
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
        desk = LooseDesk(new, self._whose)
        if self.whose is not None:
            self.whose.deleteLater()
        self.whose = WhosePanel(desk, self._theme)
        desk.changed.connect(lambda _learner: self.found.show_class(new))
        desk.changed.connect(lambda _learner: self._say_where())
        desk.trouble.connect(self.trouble.setText)
        inside = self._whose.layout()
        assert inside is not None
        inside.addWidget(self.whose)
        self.form.show_brief(new.brief, new.work)
        self.rubrics.offer(new.folder, new.brief.rubric, new.brief.feedback_language)
        self.go(FOUND)

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
        else:
            self.next.setFocus()
        self._say_where()

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
        leads = (
            self.tr("This folder has been marked in before; its marks are kept.")
            if new.begun
            else self.tr("Nothing was changed. Here is what the folder holds."),
            self.tr(
                "Files still open: {n}. What you leave open can be settled later, in the class."
            ).format(n=open_questions)
            if open_questions
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
        self._say_form()

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
        new.brief = replace(self.form.brief, rubric=self.rubrics.name)
        try:
            new.begin(self._who)
        except Exception as error:  # the disk, the journal or the brief in place: all are told
            self.trouble.setText(plainly(error))
            return
        self.begun.emit(new.folder)

    def _leave(self) -> None:
        if self._looking is not None:
            self._looking.stop()
        self.left.emit()
