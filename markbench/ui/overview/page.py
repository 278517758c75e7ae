"""The page of the class's findings: what to teach again, g, marks, drift, time."""

from __future__ import annotations

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import (
    QFrame,
    QGridLayout,
    QHBoxLayout,
    QListView,
    QListWidget,
    QListWidgetItem,
    QVBoxLayout,
    QWidget,
)

from markbench.session.overview import (
    drift,
    marks_by_criterion,
    spread_of_g,
    teach_again,
    time_per_portfolio,
)
from markbench.ui.desk import Desk
from markbench.ui.fresh import Fresh
from markbench.ui.look.theme import Theme
from markbench.ui.mishaps import plainly
from markbench.ui.overview.evening import DriftFigure, PaceFigure
from markbench.ui.overview.figure import Figure, Spot
from markbench.ui.overview.levels import LevelsFigure
from markbench.ui.overview.saving import ask_and_save
from markbench.ui.overview.spread import SpreadFigure
from markbench.ui.overview.topics import TopicsFigure
from markbench.ui.overview.view import FigurePaper
from markbench.ui.parts import frame, label, quiet_scroll

# At 100 % text: from these widths on, two columns of papers and three.
_TWO, _THREE = 700, 1100
_LEARNER = int(Qt.ItemDataRole.UserRole)


class OverviewPage(QWidget):
    """``opened`` carries a learner; ``trouble`` what went wrong in saving."""

    opened = Signal(str)
    said = Signal(str)
    trouble = Signal(str)

    def __init__(self, desk: Desk, theme: Theme) -> None:
        super().__init__()
        self._desk, self._theme = desk, theme
        self.topics = FigurePaper(theme, self.ask_and_save, scrolls=True)
        self.spread = FigurePaper(theme, self.ask_and_save)
        self.levels = FigurePaper(theme, self.ask_and_save)
        self.drift = FigurePaper(theme, self.ask_and_save)
        self.pace = FigurePaper(theme, self.ask_and_save, turn=self.tr("In order of marking"))
        self.pace.turned.connect(lambda _on: self._show_pace())
        self.papers = (self.topics, self.spread, self.levels, self.drift, self.pace)
        self._names: dict[str, str] = {}
        self.about = label(wrap=True)
        self.behind = self._make_behind()
        for paper in self.papers:
            paper.view.chosen.connect(self.show_behind)
        self._lay_out()
        self._fresh = Fresh(self, desk, self._refresh)
        theme.changed.connect(self._arrange)

    def _make_behind(self) -> QListWidget:
        made = QListWidget()
        made.setProperty("kind", "open")
        made.setAccessibleName(self.tr("Learners behind it; Enter opens"))
        made.setFlow(QListView.Flow.LeftToRight)
        made.setWrapping(True)
        made.setResizeMode(QListView.ResizeMode.Adjust)
        made.setSpacing(3)
        made.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        made.setFrameShape(QFrame.Shape.NoFrame)
        made.itemActivated.connect(self._open)
        made.itemClicked.connect(self._open)
        return made

    def _lay_out(self) -> None:
        self._who = frame("paper")
        column = QVBoxLayout(self._who)
        column.setContentsMargins(12, 8, 8, 6)
        column.setSpacing(4)
        column.addWidget(self.about)
        column.addWidget(self.behind, 1)
        inside = QWidget()
        inside.setProperty("kind", "inside")
        self._grid = QGridLayout(inside)
        self._grid.setContentsMargins(0, 0, 4, 0)
        self._grid.setSpacing(8)
        row = QHBoxLayout(self)
        row.setContentsMargins(16, 8, 12, 12)
        row.addWidget(quiet_scroll(inside))
        self._arrange()
        self._say_none()

    def _arrange(self) -> None:
        """Three columns of papers where there is room, or two, else one."""
        grid, px = self._grid, self._theme.px
        columns = 1 + (self.width() >= px(_TWO)) + (self.width() >= px(_THREE))
        places = {
            3: ((self.topics, 0, 0, 2), (self._who, 2, 0, 1), (self.spread, 0, 1, 1),
                (self.levels, 0, 2, 1), (self.drift, 1, 1, 2), (self.pace, 1, 2, 2)),
            2: ((self.topics, 0, 0, 1), (self._who, 0, 1, 1), (self.spread, 1, 0, 1),
                (self.levels, 1, 1, 1), (self.drift, 2, 0, 1), (self.pace, 2, 1, 1)),
        }.get(columns, tuple((part, i, 0, 1) for i, part in enumerate(
            (self.topics, self._who, *self.papers[1:]))))  # fmt: skip
        for part, *_ in places:
            grid.removeWidget(part)
        for part, at_row, at_column, high in places:
            grid.addWidget(part, at_row, at_column, high, 1)
        for at in range(3):
            grid.setColumnStretch(at, 1 if at < columns else 0)
        for at in range(6):
            grid.setRowStretch(at, (3, 2, 1)[at] if columns == 3 and at < 3 else 0)
        self._who.setMinimumHeight(self._theme.px(120))
        self.topics.setMinimumHeight(self._theme.px(260))

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Arrange again."""
        super().resizeEvent(event)
        self._arrange()

    # --- showing -------------------------------------------------------------------

    def show_page(self) -> None:
        """Bring the figures up to date and give the keyboard to the first."""
        self._fresh.make()
        self.topics.view.setFocus()

    def settle(self) -> None:
        """Nothing is typed here."""

    def _refresh(self) -> None:
        session = self._desk.session
        names = {one.id: one.name or one.id for one in session.learners}
        titles = {one.id: one.title for one in session.rubric.criteria}
        self._names = names
        self.topics.show_figure(TopicsFigure(teach_again(session), len(names)))
        self.spread.show_figure(SpreadFigure(spread_of_g(session), names))
        self.levels.show_figure(LevelsFigure(marks_by_criterion(session), len(names)))
        self.drift.show_figure(DriftFigure(drift(session), names, titles))
        self._show_pace()
        self._say_none()

    def _show_pace(self) -> None:
        session, in_order = self._desk.session, self.pace.turn.isChecked()
        self.pace.show_figure(PaceFigure(time_per_portfolio(session), self._names, in_order))

    def _say_none(self) -> None:
        self.about.setText(self.tr("Choose a bar or a point to see the learners behind it."))
        self.behind.clear()

    def show_behind(self, spot: Spot) -> None:
        """The learners behind a spot; a single one is opened at once."""
        if len(spot.learners) == 1 and self.sender() is not self.topics.view:
            self.opened.emit(spot.learners[0])
            return
        self.about.setText(spot.words)
        self.behind.clear()
        for learner in spot.learners:
            item = QListWidgetItem(self._names.get(learner, learner))
            item.setData(_LEARNER, learner)
            self.behind.addItem(item)
        self.behind.setCurrentRow(0)
        self.behind.setFocus()

    def _open(self, item: QListWidgetItem) -> None:
        self.opened.emit(item.data(_LEARNER))

    # --- saving --------------------------------------------------------------------

    def ask_and_save(self, figure: Figure) -> None:
        """Ask for a place and save a figure there."""
        try:
            name = ask_and_save(self, self._desk.held, figure)
        except OSError as error:
            self.trouble.emit(plainly(error))
        else:
            if name:
                self.said.emit(self.tr("✓ saved {file}").format(file=name))
