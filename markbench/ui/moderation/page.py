"""The page of moderation: from the sample to the signature, in the order of the evening."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import replace
from functools import partial

from PySide6.QtCore import QPoint, Signal
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QBoxLayout, QVBoxLayout, QWidget

from markbench.moderation.outcome import Outcome
from markbench.ui.background import Task, in_background
from markbench.ui.desk import Desk
from markbench.ui.fresh import Fresh
from markbench.ui.look.theme import Theme
from markbench.ui.mishaps import plainly
from markbench.ui.moderation.adjustment import AdjustmentPaper
from markbench.ui.moderation.agreement import AgreementPaper
from markbench.ui.moderation.boundaries import BoundariesPaper
from markbench.ui.moderation.difference import DifferenceFigure
from markbench.ui.moderation.going_out import OutPaper
from markbench.ui.moderation.open_questions import OpenPaper
from markbench.ui.moderation.sample import SamplePaper
from markbench.ui.moderation.signing import SigningPaper
from markbench.ui.moderation.standing import Figures, Standing
from markbench.ui.moderation.steps import StepBar
from markbench.ui.overview.figure import Figure, Spot
from markbench.ui.overview.saving import ask_and_save
from markbench.ui.overview.view import FigurePaper
from markbench.ui.parts import press, quiet_scroll

_SIDE_BY_SIDE = 900  # narrower than this (at 100 % text), everything stands in one column


class ModerationPage(QWidget):
    """``opened`` carries a learner."""

    opened = Signal(str)
    said = Signal(str)
    trouble = Signal(str)

    def __init__(self, desk: Desk, theme: Theme) -> None:
        super().__init__()
        self._desk, self._theme = desk, theme
        self.sample = SamplePaper(desk)
        self.open = OpenPaper(desk)
        self.agreement = AgreementPaper()
        self.difference = FigurePaper(theme, self.ask_and_save)
        self.adjustment = AdjustmentPaper(desk)
        self.boundaries = BoundariesPaper(desk)
        self.signing = SigningPaper(desk)
        self.out = OutPaper(desk)
        self.steps = StepBar()
        self._now: Standing | None = None
        self._figured: tuple[Mapping[str, Outcome], Figures] | None = None
        self._task: Task | None = None
        self._connect()
        self._lay_out()
        self._fresh = Fresh(self, desk, self._refresh)
        theme.changed.connect(self._restyle)

    def _connect(self) -> None:
        self.sample.opened.connect(self.opened)
        self.open.opened.connect(self.opened)
        self.signing.opened.connect(self.opened)
        self.sample.said.connect(self.said)
        self.signing.said.connect(self.said)
        self.signing.trouble.connect(self.trouble)
        self.out.said.connect(self.said)
        self.out.trouble.connect(self.trouble)
        self.steps.wanted.connect(self.go_to)
        self.boundaries.trouble.connect(self.trouble)
        self.sample.merged.connect(self.open.show_merge)
        self.difference.view.chosen.connect(self._open_first)

    def _lay_out(self) -> None:
        inside = QWidget()
        inside.setProperty("kind", "inside")
        self._columns = QBoxLayout(QBoxLayout.Direction.LeftToRight, inside)
        self._columns.setContentsMargins(0, 0, 4, 0)
        left, right = QVBoxLayout(), QVBoxLayout()
        for paper in (self.sample, self.open, self.boundaries, self.signing, self.out):
            left.addWidget(paper)
        for figures in (self.agreement, self.difference, self.adjustment):
            right.addWidget(figures)
        for column in (left, right):
            column.addStretch(1)
            column.setSpacing(8)
            self._columns.addLayout(column, 1)
        self._columns.setSpacing(8)
        column = QVBoxLayout(self)
        column.setContentsMargins(16, 6, 12, 12)
        column.setSpacing(4)
        column.addWidget(self.steps)
        self.area = quiet_scroll(inside)
        column.addWidget(self.area)
        self._arrange()

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Two columns where there is room, else one."""
        super().resizeEvent(event)
        self._arrange()

    def _arrange(self) -> None:
        wide = self.width() >= self._theme.px(_SIDE_BY_SIDE)
        ways = QBoxLayout.Direction
        self._columns.setDirection(ways.LeftToRight if wide else ways.TopToBottom)

    def _restyle(self) -> None:
        self._arrange()
        for paper in (self.sample, self.agreement, self.adjustment, self.boundaries):
            paper.roll.fit()

    def show_page(self) -> None:
        """Bring the papers up to date and give the keyboard to the first deed."""
        self._fresh.make()
        (self.sample.draw if self._desk.signed is None else self.sample.roll).setFocus()

    def settle(self) -> None:
        """What is typed here is passed on by its button only."""

    def do(self, what: str) -> None:
        """One of the deeds of the page, by its name."""
        deeds: dict[str, Callable[[], None]] = {
            "draw": lambda: press(self.sample.draw),
            "pack": lambda: press(self.sample.pack),
            "merge": lambda: press(self.sample.merge),
            "out": lambda: press(self.out.write),
            "record": lambda: press(self.signing.record),
        }
        if what in ("draw", "merge") and self._desk.refuse_signed():
            return
        if what in deeds:
            deeds[what]()
        else:
            self.go_to(what)

    def go_to(self, station: str) -> None:
        """Bring one paper into view, and give the keyboard to what is done there."""
        signing = self.signing
        paper, part = {
            "sample": (self.sample, self.sample.draw),
            "open": (self.open, next((row.levels for row in self.open.rows.values()), None)),
            "agreement": (self.agreement, self.agreement.roll),
            "adjustment": (self.adjustment, self.adjustment.reason),
            "boundaries": (self.boundaries, next(iter(self.boundaries.fields.values()), None)),
            "signing": (signing, signing.why if signing.note.isHidden() else signing.note),
            "out": (self.out, self.out.write),
        }[station]
        self.area.ensureWidgetVisible(paper)
        # A paper higher than the page is to be seen from its top.
        bar = self.area.verticalScrollBar()
        inside = self.area.widget()
        if inside is not None:
            bar.setValue(min(bar.value(), paper.mapTo(inside, QPoint(0, 0)).y()))
        if part is not None:
            part.setFocus()

    def _refresh(self) -> None:
        """Show at once what the journal says; the figures follow when they are worked out."""
        session = self._desk.session
        now = Standing.of(session)
        if self._figured is not None and self._figured[0] == now.found:
            self._show(replace(now, figures=self._figured[1]))
            return
        self._show(now)
        if self._task is not None:
            self._task.stop()
        self._task = in_background(
            self,
            lambda _progress, _stop: Figures.of(session, now.found),
            done=partial(self._take_figures, now),
            failed=lambda error: self.trouble.emit(plainly(error)),
        )

    def _take_figures(self, now: Standing, figures: Figures) -> None:
        self._figured = (now.found, figures)
        self._show(replace(now, figures=figures))

    def _show(self, now: Standing) -> None:
        self._now = now
        for paper in (self.steps, self.sample, self.open, self.agreement, self.adjustment,
                      self.boundaries, self.signing, self.out):  # fmt: skip
            paper.show_standing(now)
        agreed = None if now.figures is None else now.figures.agreed
        self.difference.show_figure(
            DifferenceFigure(
                None if agreed is None else agreed.totals,
                () if agreed is None else agreed.learners,
                now.names,
            )
        )

    def _open_first(self, spot: Spot) -> None:
        if spot.learners:
            self.opened.emit(spot.learners[0])

    def ask_and_save(self, figure: Figure) -> None:
        """Ask for a place and save the figure there."""
        try:
            name = ask_and_save(self, self._desk.held, figure)
        except OSError as error:
            self.trouble.emit(plainly(error))
        else:
            if name:
                self.said.emit(self.tr("✓ saved {file}").format(file=name))
