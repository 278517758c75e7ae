"""What keeps a class from being begun: a brief that cannot be read, a folder without work."""

from __future__ import annotations

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QFrame, QVBoxLayout

from markbench.session.newclass import NewClass
from markbench.ui.flow import FlowLayout
from markbench.ui.look.said import said
from markbench.ui.parts import button, frame, label


class BriefNotice(QFrame):
    """A brief that cannot be read; ``decided`` when it is to be put aside, or left after all."""

    decided = Signal()

    def __init__(self) -> None:
        super().__init__()
        self.setProperty("kind", "paper")
        self._new: NewClass | None = None
        self._words = label(kind="look", wrap=True)
        self.aside = button("", "", self._turn)
        column = QVBoxLayout(self)
        column.setContentsMargins(12, 10, 12, 10)
        column.setSpacing(6)
        column.addWidget(label(self.tr("brief.toml cannot be read"), "name", wrap=True))
        column.addWidget(self._words)
        row = FlowLayout(spacing=8)
        row.addWidget(self.aside)
        column.addLayout(row)

    def show_class(self, new: NewClass) -> None:
        """Show how it stands with the brief; nothing where it can be read."""
        self._new = new
        self.setVisible(bool(new.brief_trouble))
        if new.puts_aside:
            words = self.tr(
                "It will be kept as “{name}” when you begin. Here, the settings start from "
                "their defaults."
            )
            self._words.setText(words.format(name=new.aside))
            self.aside.setText(self.tr("Leave it in its place"))
        else:
            self._words.setText(said(new.brief_trouble))
            self.aside.setText(self.tr("Put it aside and go on"))

    def _turn(self) -> None:
        if self._new is not None:
            self._new.puts_aside = not self._new.puts_aside
            self.show_class(self._new)
            self.decided.emit()


class NoWorkNotice(QFrame):
    """A folder without work. ``folder_wanted`` asks for another, ``again`` to look once more."""

    folder_wanted = Signal()
    again = Signal()

    def __init__(self) -> None:
        super().__init__()
        self.setProperty("kind", "paper")
        self._title = label(kind="name", wrap=True)
        self.another = button(self.tr("Choose another folder…"), "", self.folder_wanted.emit)
        self.look = button(self.tr("Look again"), "", self.again.emit)
        column = QVBoxLayout(self)
        column.setContentsMargins(12, 10, 12, 10)
        column.setSpacing(6)
        column.addWidget(self._title)
        looks = frame("inside")
        lines = QVBoxLayout(looks)
        lines.setContentsMargins(0, 0, 0, 0)
        for words in (
            self.tr("A class folder holds what the class handed in:"),
            self.tr("–  a folder or a zip file for each learner, with the name on it,"),
            self.tr("–  or files with the learners' names,"),
            self.tr("–  or one sheet with a row for each learner."),
            self.tr("A class list (id, name) may lie beside them."),
        ):
            lines.addWidget(label(words, wrap=True))
        column.addWidget(looks)
        row = FlowLayout(spacing=8)
        row.addWidget(self.another)
        row.addWidget(self.look)
        column.addLayout(row)

    def show_class(self, new: NewClass) -> None:
        """Show it where no work was found; whether the class may be begun is another question."""
        work, counts = new.work, new.counts()
        nothing = not work.learners
        useless = counts.with_work > 0 and not counts.of_use
        self.setVisible(nothing or useless)
        loose = counts.unowned + counts.doubts + counts.set_aside
        self._title.setText(
            self.tr("No work was found here.")
            if nothing and not loose
            else self.tr("Files were found, but no learner.")
            if nothing
            else self.tr("No table, photo, video or report was found that is of use.")
        )
