"""What lies in the folder: counts, troubles, and what each learner handed in."""

from __future__ import annotations

from PySide6.QtWidgets import QGridLayout, QHBoxLayout, QVBoxLayout, QWidget

from markbench.session.newclass import Counts, NewClass
from markbench.ui.look.said import said
from markbench.ui.look.theme import Theme
from markbench.ui.newclass.roll import Roll
from markbench.ui.parts import frame, label, quiet_scroll


class FoundPage(QWidget):
    """Shows a folder that was looked at."""

    def __init__(self, theme: Theme) -> None:
        super().__init__()
        self.roll = Roll(theme)
        self.numbers = QWidget()
        self._grid = QGridLayout(self.numbers)
        self._grid.setContentsMargins(0, 0, 0, 0)
        self._grid.setHorizontalSpacing(10)
        self._grid.setVerticalSpacing(4)
        self.troubles = label(kind="look", wrap=True)
        side = QVBoxLayout()
        side.addWidget(self.numbers)
        side.addSpacing(8)
        side.addWidget(self.troubles)
        side.addStretch(1)
        inside = QWidget()
        inside.setProperty("kind", "inside")
        row = QHBoxLayout(inside)
        row.setContentsMargins(0, 0, 8, 0)
        row.setSpacing(32)
        row.addLayout(side, 3)
        who = QVBoxLayout()
        who.setSpacing(4)
        who.addWidget(
            label(self.tr("Table, set-up, learner, video; struck out: not there"), "small")
        )
        who.addWidget(frame("rule"))
        who.addWidget(self.roll)
        who.addStretch(100)
        row.addLayout(who, 7)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.addWidget(quiet_scroll(inside))

    def show_class(self, new: NewClass) -> None:
        """Fill the page."""
        while self._grid.count():
            item = self._grid.takeAt(0)
            if item is not None and (old := item.widget()) is not None:
                old.hide()
                old.deleteLater()
        for row, (number, words) in enumerate(self._lines(new.counts())):
            figure = label(str(number), "title")
            figure.setAccessibleName(f"{number} {words}")
            self._grid.addWidget(figure, row, 0)
            self._grid.addWidget(label(words, wrap=True), row, 1)
        self._grid.setColumnStretch(1, 1)
        self.troubles.setText("\n\n".join(said(one.message) for one in new.work.problems))
        self.troubles.setVisible(bool(new.work.problems))
        self.roll.show_work(new.work)

    def _lines(self, counts: Counts) -> list[tuple[int, str]]:
        pieces = counts.pieces
        photos = sum(pieces.get(kind, 0) for kind in ("setup_photo", "selfie", "photo"))
        handed_in = self.tr("of them handed something in")
        lines = [
            (counts.learners, self.tr("learner"), self.tr("learners")),
            (counts.with_work, handed_in, handed_in),
            (counts.tables_understood, self.tr("table of readings understood"),
             self.tr("tables of readings understood")),
            (photos, self.tr("photo"), self.tr("photos")),
            (pieces.get("swing_video", 0), self.tr("swing video"), self.tr("swing videos")),
            (pieces.get("report", 0), self.tr("report"), self.tr("reports")),
            (counts.doubts, self.tr("file whose owner is in doubt"),
             self.tr("files whose owner is in doubt")),
            (counts.unowned, self.tr("file that fits nobody"), self.tr("files that fit nobody")),
        ]  # fmt: skip
        return [
            (number, one if number == 1 else more)
            for at, (number, one, more) in enumerate(lines)
            if number or at == 0
        ]
