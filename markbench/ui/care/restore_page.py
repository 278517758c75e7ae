"""The copies of a class: when they were made, what going back would mean, and going back."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import Signal

from markbench.moderation.records import FROZEN
from markbench.ui.background import in_background
from markbench.ui.care.sheet import CareSheet
from markbench.ui.desk import Desk
from markbench.ui.look.dates import day_and_time
from markbench.ui.look.said import said
from markbench.ui.look.theme import Theme
from markbench.ui.mishaps import plainly
from markbench.ui.moderation.paper import Roll
from markbench.ui.parts import button, label

if TYPE_CHECKING:
    from markbench.session.restoring import Copy, WayBack


class RestorePage(CareSheet):
    """``left``: back to the class."""

    left = Signal()

    def __init__(self, desk: Desk, theme: Theme) -> None:
        super().__init__(
            theme,
            self.tr("Copies of this class"),
            self.tr(
                "Markbench copies the class's file by itself, at most once an hour, and keeps the "
                "ten fullest. Going back decides again what differs; nothing decided since is "
                "thrown away, and the present is copied first. The learners' files are not "
                "touched."
            ),
        )
        self._desk = desk
        self.copies: tuple[Copy, ...] = ()
        self.way: WayBack | None = None
        headings = (self.tr("Made"), self.tr("Decisions"), self.tr("Marks"), self.tr("Kept as"))
        self.roll = Roll(headings, self.tr("Copies, newest first"))
        self.roll.currentCellChanged.connect(lambda row, *_: self._weigh(row))
        self.told = label(wrap=True)
        self.done = label(kind="ink", wrap=True)
        for part in (self.roll, self.told, self.done):
            self.column.addWidget(part)
        self.column.addStretch(1)
        self.go = button(self.tr("Go back to this copy"), "deed", self.restore)
        self.go.setEnabled(False)
        self.foot.addStretch(1)
        self.foot.addWidget(button(self.tr("Leave it as it is"), "", self.left.emit))
        self.foot.addWidget(self.go)
        desk.changed.connect(self.refresh)
        desk.turned.connect(self._say_no_more)  # a method: it ends with the page
        self.roll.setFocus()
        self.refresh()

    def refresh(self) -> None:
        """Read the list of copies, off the main thread."""
        folder = self._desk.held.folder

        def work(_progress: object, _stop: object) -> tuple[Copy, ...]:
            from markbench.session.restoring import copies_of

            return copies_of(folder)

        in_background(self, work, done=self._show, failed=self._refuse)

    def restore(self) -> None:
        """Go back to the chosen copy."""
        from markbench.session.restoring import restore

        way, held = self.way, self._desk.held
        moves_marks = way is not None and any(d.kind in FROZEN for d in way.decisions)
        if way is None or (moves_marks and self._desk.refuse_signed()):
            return
        self.go.setEnabled(False)
        when = _when(way.copy)

        def command(_session: object) -> None:
            restore(held, way.copy)

        self._desk.do(command)
        words = self.tr("✓ The class stands as it did {when}. The copy made just now holds what "
                        "was there before.")  # fmt: skip
        self.done.setText(words.format(when=when))

    def _say_no_more(self) -> None:
        """What was done here was taken back, or something else was."""
        self.done.clear()

    def _show(self, copies: tuple[Copy, ...]) -> None:
        self.copies = copies
        rows = []
        for copy in copies:
            counts = ("–", "–") if copy.problem else (str(copy.decisions), str(copy.marks))
            rows.append(("", (_when(copy), *counts, said(copy.problem) or copy.path.name)))
        self.roll.blockSignals(True)
        self.roll.fill(rows)
        self.roll.blockSignals(False)
        self.roll.setVisible(bool(rows))
        if not rows:
            self.told.setText(self.tr(
                "There is no copy yet. The first is made when the class is next opened after "
                "something was decided."
            ))  # fmt: skip
            self.go.setEnabled(False)
            return
        self._weigh(self.roll.currentRow())

    def _weigh(self, row: int) -> None:
        self.way = None
        self.go.setEnabled(False)
        if not 0 <= row < len(self.copies):
            return
        copy, held = self.copies[row], self._desk.held

        def work(_progress: object, _stop: object) -> WayBack:
            from markbench.session.restoring import way_back

            return way_back(held, copy)

        in_background(self, work, done=self._tell, failed=self._refuse)

    def _tell(self, way: WayBack) -> None:
        row = self.roll.currentRow()
        if not 0 <= row < len(self.copies) or self.copies[row] != way.copy:
            return  # another copy was chosen meanwhile
        self.way = way
        self.told.setText(self._words(way))
        self.go.setEnabled(bool(way.decisions) and not self._desk.held.read_only)

    def _words(self, way: WayBack) -> str:
        if not way.decisions:
            return self.tr("The class stands as it stood in this copy: there is nothing to go "
                           "back to.")  # fmt: skip
        parts = [
            (way.undone, self.tr("1 mark made since becomes a draft again"),
             self.tr("{n} marks made since become drafts again")),
            (way.come_back, self.tr("1 mark taken away since comes back"),
             self.tr("{n} marks taken away since come back")),
            (way.change, self.tr("1 mark takes its earlier level"),
             self.tr("{n} marks take their earlier level")),
            (way.texts, self.tr("1 text reads as it did"), self.tr("{n} texts read as they did")),
            (way.others, self.tr("1 other choice is as it was"),
             self.tr("{n} other choices are as they were")),
        ]  # fmt: skip
        told = "; ".join(
            (one if count == 1 else many).format(n=count) for count, one, many in parts if count
        )
        since = self.tr("{n} decisions were made since; they stay in the journal.")
        if way.later == 1:
            since = self.tr("1 decision was made since; it stays in the journal.")
        return f"{told}. {since.format(n=way.later)}"

    def _refuse(self, error: Exception) -> None:
        self.told.setText(plainly(error))


def _when(copy: Copy) -> str:
    return day_and_time(copy.made.astimezone()) if copy.made is not None else "–"
