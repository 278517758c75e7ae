"""What lies in the folder: counts, what is wrong, and what each learner handed in, and why."""

from __future__ import annotations

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import (
    QGridLayout,
    QHBoxLayout,
    QLayout,
    QStackedWidget,
    QVBoxLayout,
    QWidget,
)

from markbench.session.newclass import Counts, NewClass
from markbench.ui.flow import FlowLayout
from markbench.ui.look.said import said
from markbench.ui.look.theme import Theme
from markbench.ui.newclass.files import LearnerFiles
from markbench.ui.newclass.notices import BriefNotice, NoWorkNotice
from markbench.ui.newclass.roll import KINDS, Roll
from markbench.ui.parts import button, frame, key_to, label, piece_painter, quiet_scroll

_MOST_LISTED = 12
_LEAST_SIDE, _WIDEST = 205, 1240


class FoundPage(QWidget):
    """Shows a folder that was looked at. ``settle_wanted`` leads to the files still open."""

    settle_wanted = Signal()

    def __init__(self, theme: Theme) -> None:
        super().__init__()
        self._theme = theme
        self._new: NewClass | None = None
        self.brief = BriefNotice()
        self.no_work = NoWorkNotice()
        self.roll = Roll(theme)
        self.roll.chosen.connect(self._show_chosen)
        self.files = LearnerFiles(theme)
        self.files.left.connect(self._show_all)
        self.numbers = QWidget()
        self._grid = QGridLayout(self.numbers)
        self._grid.setContentsMargins(0, 0, 0, 0)
        self._grid.setHorizontalSpacing(10)
        self._grid.setVerticalSpacing(4)
        self.troubles = label(kind="look", wrap=True)
        self.damaged = QVBoxLayout()
        self.loose = QVBoxLayout()
        for part in (self.damaged, self.loose):
            part.setSpacing(2)
        inside = QWidget()
        inside.setProperty("kind", "inside")
        column = QVBoxLayout(inside)
        column.setContentsMargins(0, 0, 8, 0)
        column.setSpacing(12)
        for notice in (self.brief, self.no_work, self.numbers, self.troubles):
            column.addWidget(notice)
        column.addLayout(self.damaged)
        column.addLayout(self.loose)
        column.addStretch(1)
        self._side = QStackedWidget()
        self._side.addWidget(quiet_scroll(inside))
        self._side.addWidget(self.files)
        self._who = self._lay_out_roll()
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(28)
        row.addWidget(self._side, 4)
        row.addWidget(self._who, 7)
        theme.changed.connect(self._size)
        self._size()

    def _size(self) -> None:
        self._side.setMinimumWidth(self._theme.px(_LEAST_SIDE))
        self.setMaximumWidth(self._theme.px(_WIDEST))

    def _lay_out_roll(self) -> QWidget:
        who = QWidget()
        column = QVBoxLayout(who)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(6)
        hint = self.tr("Choose a learner to see the files, and why they are taken for theirs.")
        column.addWidget(label(hint, "small", wrap=True))
        legend = FlowLayout(spacing=14)
        for kind in KINDS:
            legend.addWidget(
                key_to(self._theme, piece_painter(kind, True), self.roll.words_for(kind))
            )
        legend.addWidget(
            key_to(self._theme, piece_painter("report", False), self.tr("struck: not there"))
        )
        asks = piece_painter("report", False, untold=True)
        legend.addWidget(key_to(self._theme, asks, self.tr("to be told apart")))
        column.addLayout(legend)
        column.addWidget(frame("rule"))
        column.addWidget(self.roll, 1)
        return who

    def show_class(self, new: NewClass) -> None:
        """Fill the page; whoever was chosen stays chosen."""
        other = self._new is not new
        self._new = new
        work, counts, damaged = new.work, new.counts(), new.damaged()
        self.brief.show_class(new)
        self.no_work.show_class(new)
        self._who.setVisible(bool(work.learners))
        _empty(self._grid)
        for row, (number, words) in enumerate(self._lines(counts)):
            figure = label(str(number), "title")
            figure.setAccessibleName(f"{number} {words}")
            self._grid.addWidget(figure, row, 0)
            self._grid.addWidget(label(words, wrap=True), row, 1)
        self._grid.setColumnStretch(1, 1)
        told_apart = {one.why for one in damaged} | {new.brief_trouble}
        troubles = [one.message for one in work.problems if one.message not in told_apart]
        self.troubles.setText("\n\n".join(said(one) for one in troubles))
        self.troubles.setVisible(bool(troubles))
        names = {learner.id: learner.name for learner in work.learners}
        self._list(
            self.damaged,
            self.tr("Could not be opened"),
            [f"{one.file}  ({names[one.learner]})" if one.learner else one.file for one in damaged],
        )
        self._list(
            self.loose, self.tr("Fits nobody"), [piece.file for piece in work.unowned], settle=True
        )
        if other:
            self.roll.choose("")
        self.roll.show_work(work, (one.file for one in damaged))
        self._show_chosen(self.roll.learner)

    def _list(
        self, into: QVBoxLayout, heading: str, files: list[str], *, settle: bool = False
    ) -> None:
        _empty(into)
        if not files:
            return
        into.addWidget(label(heading, "heading"))
        for file in files[:_MOST_LISTED]:
            into.addWidget(label(file, wrap=True))
        if len(files) > _MOST_LISTED:
            words = self.tr("and {n} more").format(n=len(files) - _MOST_LISTED)
            into.addWidget(label(words, "quiet"))
        if settle:
            words = self.tr("Say whose it is") if len(files) == 1 else self.tr("Say whose they are")
            say = button(words, "", self.settle_wanted.emit)
            into.addWidget(say, 0, Qt.AlignmentFlag.AlignLeft)

    # --- one learner -----------------------------------------------------------------

    def _show_chosen(self, learner: str) -> None:
        new = self._new
        one = next((one for one in new.learners if one.id == learner), None) if new else None
        if new is None or one is None:
            self._side.setCurrentIndex(0)
            return
        self.files.show_learner(new, one)
        self._side.setCurrentIndex(1)

    def _show_all(self) -> None:
        self.roll.choose("")
        self.roll.setFocus()

    # --- counts ----------------------------------------------------------------------

    def _lines(self, counts: Counts) -> list[tuple[int, str]]:
        pieces = counts.pieces
        photos = sum(pieces.get(kind, 0) for kind in ("setup_photo", "selfie", "photo"))
        handed_in = self.tr("of them handed something in")
        tables = pieces.get("readings", 0)
        one_table = self.tr("table of readings understood")
        more_tables = self.tr("tables of readings understood")
        if tables > counts.tables_understood:
            one_table = more_tables = (
                self.tr("of {n} tables of readings understood").format(n=tables)
                if tables > 1
                else self.tr("of 1 table of readings understood")
            )
        lines = [
            (counts.learners, self.tr("learner"), self.tr("learners")),
            (counts.with_work, handed_in, handed_in),
            (counts.tables_understood, one_table, more_tables),
            (photos, self.tr("photo"), self.tr("photos")),
            (pieces.get("swing_video", 0), self.tr("swing video"), self.tr("swing videos")),
            (pieces.get("report", 0), self.tr("report"), self.tr("reports")),
            (counts.doubts, self.tr("file whose owner is in doubt"),
             self.tr("files whose owner is in doubt")),
            (counts.unowned, self.tr("file that fits nobody"), self.tr("files that fit nobody")),
            (counts.set_aside, self.tr("file set aside as nobody's"),
             self.tr("files set aside as nobody's")),
        ]  # fmt: skip
        # Nothing handed in, or nothing understood, is news; no report is not.
        told = (False, counts.learners > 0, tables > 0)
        return [
            (number, one if number == 1 else more)
            for at, (number, one, more) in enumerate(lines)
            if number or (at < len(told) and told[at])
        ]


def _empty(layout: QLayout) -> None:
    while layout.count():
        item = layout.takeAt(0)
        if item is not None and (old := item.widget()) is not None:
            old.hide()
            old.deleteLater()
