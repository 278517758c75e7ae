"""The sheet of one learner: readings, graph, questions, evidence, and the marking margin."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QRect, QTimer, Signal
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QApplication, QBoxLayout, QFrame, QHBoxLayout, QVBoxLayout, QWidget

from markbench.model import Explanation, Piece, Source
from markbench.ui.choosing import choose_only
from markbench.ui.desk import Desk
from markbench.ui.look.dates import short_day_and_time
from markbench.ui.look.said import said
from markbench.ui.look.theme import Theme
from markbench.ui.mishaps import plainly
from markbench.ui.parts import ElidedLabel, IconButton, button, frame, label, quiet_scroll, restyle
from markbench.ui.portfolio.cells import cells_of_finding
from markbench.ui.portfolio.changed_strip import ChangedStrip
from markbench.ui.portfolio.curves import curves
from markbench.ui.portfolio.evidence import EvidenceStrip
from markbench.ui.portfolio.explanations import ExplanationPanel
from markbench.ui.portfolio.findings import FindingsPanel
from markbench.ui.portfolio.graph import GraphPanel
from markbench.ui.portfolio.layers import Layers
from markbench.ui.portfolio.margin import MarkingMargin
from markbench.ui.portfolio.readings_model import ReadingsModel
from markbench.ui.portfolio.readings_view import ReadingsView
from markbench.ui.portfolio.tab_order import TabOrder
from markbench.ui.portfolio.way import Way

if TYPE_CHECKING:
    from markbench.session import Change

# Decisions that change nothing but the margin.
_MARKING = frozenset({"mark", "feedback", "note", "work", "mark_stands"})
_TABLE_SHARE = 0.63  # five timings at 1280 pixels
_LEAST_MARGIN = 0.42
_BESIDE_TABLE = 50  # what stands left and right of the table in one column, scroll bar and all
_TWO_COLUMNS = 640  # narrower than this (at 100 % text), the two columns stand in one


class _Columns(QBoxLayout):
    """Two columns share the height there is; one column takes what it needs and scrolls."""

    def hasHeightForWidth(self) -> bool:
        return self.direction() == QBoxLayout.Direction.TopToBottom


class PortfolioPage(QWidget):
    """``left`` asks for the class; ``moved`` for the learner so many places on.

    ``changes_wanted`` carries a learner whose work is to be compared with what was marked.
    """

    left = Signal()
    moved = Signal(int)
    said = Signal(str)
    changes_wanted = Signal(str)

    def __init__(self, desk: Desk, theme: Theme, margin: MarkingMargin | None = None) -> None:
        super().__init__()
        self._desk, self._theme = desk, theme
        self.learner = ""
        self._ghost: Explanation | None = None
        self.readings = ReadingsModel(desk, self)
        self.table = ReadingsView(self.readings, theme)
        self.graph = GraphPanel(theme)
        self.findings = FindingsPanel(desk, theme)
        self.evidence = EvidenceStrip(desk, theme)
        self.explanations = ExplanationPanel(desk, theme)
        self.margin = margin or MarkingMargin(desk, theme)
        self.changed = ChangedStrip(desk)
        self.layers = Layers(desk, theme, self)
        self._source = label(kind="small", wrap=True)
        self._whole = button(self.tr("Whole table"), "plain", self.open_table)
        self._name = ElidedLabel("title", most=False)
        self._about = ElidedLabel("small")
        self._place = label(kind="small")
        # From the table down the left, then down the right, then the margin.
        self._tab = TabOrder(
            self.changed, self.table, self._whole, self.findings, self.evidence, self.graph,
            self.explanations, self.margin,
        )  # fmt: skip
        self._lay_out()
        self.way = Way(self, desk)
        self._connect()
        self._restyle()

    def _lay_out(self) -> None:
        sheet = frame("paper")
        column = QVBoxLayout(sheet)
        column.setContentsMargins(1, 1, 1, 6)
        column.setSpacing(4)
        column.addWidget(self.table)
        note = QHBoxLayout()
        note.setContentsMargins(12, 2, 12, 2)
        note.addWidget(self._source, 1)
        note.addWidget(self._whole)
        column.addLayout(note)
        self.table.setFrameShape(QFrame.Shape.NoFrame)
        plot = frame("paper")
        QVBoxLayout(plot).addWidget(self.graph)
        plot.layout().setContentsMargins(0, 0, 4, 4)  # type: ignore[union-attr]
        self.explanations.setMinimumHeight(150)
        first, second = QVBoxLayout(), QVBoxLayout()
        for part, stretch in ((sheet, 0), (self.findings, 1), (self.evidence, 0)):
            first.addWidget(part, stretch)
        for part, stretch in ((plot, 3), (self.explanations, 2)):
            second.addWidget(part, stretch)
        second.addStretch(0)  # below, where there are no readings to draw or explain
        self._second = second
        inside = QWidget()
        inside.setProperty("kind", "inside")
        self._columns = _Columns(QBoxLayout.Direction.LeftToRight, inside)
        self._columns.setContentsMargins(0, 0, 0, 0)
        self._columns.addLayout(first, 1)
        self._columns.addLayout(second, 1)
        for layout in (first, second, self._columns):
            layout.setSpacing(8)
        self._desk_area = quiet_scroll(inside)
        left = QVBoxLayout()
        left.setContentsMargins(16, 8, 10, 12)
        left.setSpacing(8)
        left.addLayout(self._head())
        left.addWidget(self.changed)
        left.addWidget(self._desk_area, 1)
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(0)
        row.addLayout(left, 1)
        row.addWidget(self.margin)

    def _head(self) -> QBoxLayout:
        head = QHBoxLayout()
        head.setSpacing(6)
        head.addWidget(button(self.tr("The class"), "plain", self.left.emit))
        before = IconButton(self._theme, "back", self.tr("Learner before"),
                            lambda: self.moved.emit(-1))  # fmt: skip
        after = IconButton(self._theme, "next", self.tr("Next learner"),
                           lambda: self.moved.emit(1))  # fmt: skip
        head.addWidget(before)
        head.addWidget(after)
        head.addSpacing(6)
        head.addWidget(self._name)
        head.addSpacing(6)
        head.addWidget(self._about, 1)
        head.addStretch(0)  # the room, where that is hidden
        head.addWidget(self._place)
        return head

    def _connect(self) -> None:
        self.table.looked_at.connect(self.show_source)
        self.table.reading_chosen.connect(self.graph.choose)
        self.table.refused.connect(self.said)
        self.graph.save_wanted.connect(self.save_graph)
        self.graph.reading_clicked.connect(lambda reading: self.table.highlight([(reading, None)]))
        self.findings.chosen.connect(self.way.to_finding)
        self.evidence.opened.connect(self.open_piece)
        self.explanations.ghost_chosen.connect(self._show_ghost)
        self.margin.reason_chosen.connect(self.way.to_reason)
        self.margin.next_wanted.connect(lambda: self.moved.emit(1))
        self.changed.see_wanted.connect(lambda: self.changes_wanted.emit(self.learner))
        self.changed.settled.connect(self.table.setFocus)
        self.layers.closed.connect(self.table.setFocus)
        self._desk.told.connect(self._on_told)
        self._theme.changed.connect(self._restyle)

    # --- showing -------------------------------------------------------------------

    def show_learner(self, learner: str, place: str = "") -> None:
        """Show a learner; ``place`` says where in the order, as “7 of 30”."""
        self.margin.settle()
        if learner != self.learner:
            self.shut_layer()
        self.learner = learner
        self._ghost = None
        self.graph.choose(None)
        self._place.setText(place)
        self._refresh()
        self.show_source(None)

    def prepare(self, learner: str) -> None:
        """Have the pictures of the learner to come read in advance."""
        QTimer.singleShot(120, self, lambda: self.evidence.prepare(learner))

    def _on_told(self, change: Change) -> None:
        if not self.learner or change.learner not in ("", self.learner):
            return
        if change.learner and _MARKING.issuperset(change.kinds):
            self.changed.show_learner(self.learner)
            self.margin.show_learner(self.learner)
            return
        at = self.table.currentIndex()
        row, column = at.row(), at.column()
        self._ghost = None
        self._refresh()
        self.show_source(None)
        if row >= 0:  # whoever corrects one cell may go on to the next
            choose_only(self.table, self.readings.index(row, column))

    def _refresh(self) -> None:
        session = self._desk.session
        portfolio = session.portfolio(self.learner)
        self._name.setText(portfolio.learner.name or portfolio.learner.id)
        when = portfolio.handed_in
        handed_in = self.tr("handed in {t}").format(t=short_day_and_time(when)) if when else ""
        parts = [portfolio.learner.group, handed_in or self.tr("nothing handed in")]
        self._about.setText("  ·  ".join(part for part in parts if part))
        self.changed.show_learner(self.learner)
        self.margin.show_learner(self.learner)
        self.findings.show_learner(self.learner)
        self.explanations.show_learner(self.learner)
        self.evidence.show_learner(self.learner)
        self.layers.renew(self.learner, self.evidence.openable(self.learner))
        self.readings.show_learner(self.learner)
        self._make_room()
        self._draw()
        self._tab.renew()

    def save_graph(self) -> None:
        """Ask for a place and save the graph there, with the ghost if one is shown."""
        from markbench.ui.overview.saving import ask_and_save
        from markbench.ui.portfolio.graph_figure import GraphFigure

        learner = self._desk.session.portfolio(self.learner).learner
        shown = curves(self._desk.session.analysis(self.learner), (), self._ghost)
        figure = GraphFigure(learner.name or learner.id, shown)
        try:
            name = ask_and_save(self, self._desk.held, figure)
        except OSError as error:
            self._desk.trouble.emit(plainly(error))
            return
        if name:
            self.said.emit(self.tr("✓ saved {file}").format(file=name))

    def _draw(self) -> None:
        session = self._desk.session
        table = session.portfolio(self.learner).table
        asked = [
            reading
            for finding in session.findings(self.learner)
            if finding.concern > 0
            for reading, _ in cells_of_finding(finding, table)
        ]
        self.graph.show_curves(curves(session.analysis(self.learner), asked, self._ghost))
        for place, stretch in enumerate((0, 0, 1) if self.graph.empty else (3, 2, 0)):
            self._second.setStretch(place, stretch)
        self.explanations.setHidden(self.graph.empty)

    def _show_ghost(self, explanation: Explanation | None) -> None:
        self._ghost = explanation
        self.readings.show_explanation(explanation)
        self._draw()

    def show_source(self, source: Source | None) -> None:
        """Say in the line below the table where a value stands and how it was read."""
        if source is None:
            table = self._desk.session.portfolio(self.learner).table if self.learner else None
            words = (
                said(str(table.source)) if table is not None else self.tr("No readings were found.")
            )
            self._source.setText(words)
            return
        words = said(str(source))
        if source.raw:
            words += self.tr("  ·  written “{raw}”").format(raw=source.raw)
        if source.understood:
            words += f"  ·  {said(source.understood)}"
        self._source.setText(words)

    # --- what a hand asks for -------------------------------------------------------

    def open_table(self, source: Source | None = None) -> None:
        """The learner's own table as it stands, at a cell if one is meant."""
        self._place_layers()
        self.layers.open_table(self.learner, source)

    def open_piece(self, piece: Piece) -> None:
        """Show a piece of evidence large."""
        self._place_layers()
        self.layers.open_piece(self.learner, self.evidence.openable(self.learner), piece)

    def open_evidence(self) -> None:
        """Show the first piece of evidence."""
        pieces = self.evidence.openable(self.learner)
        if pieces:
            self.open_piece(pieces[0])

    def shut_layer(self) -> bool:
        """Close the viewer or the learner's own table; False where neither is open."""
        return self.layers.shut()

    def focusNextPrevChild(self, forward: bool) -> bool:
        """Tab passes over what lies behind an open layer: nobody could see where it is."""
        first = QApplication.focusWidget()
        while super().focusNextPrevChild(forward):
            here = QApplication.focusWidget()
            if here is None or here is first or not self._behind_layer(here):
                return True
        return False

    def _behind_layer(self, widget: QWidget) -> bool:
        if not self.layers.open:
            return False
        if self._wide():
            return self._desk_area.isAncestorOf(widget)
        return self.isAncestorOf(widget) and not self.layers.holds(widget)

    def leave_out_timing(self) -> None:
        """Read the current timing as not there; the original stays in the file."""
        if not self.readings.leave_out(self.table.currentIndex()):
            self.said.emit(self.tr("Choose a timing in the table first: it is then left out."))

    def show_ghost(self) -> None:
        """Show the likeliest explanation in the graph, or take it away."""
        if not self.explanations.show_first():
            self.said.emit(self.tr("No explanation here moves the readings: nothing to show."))

    def agree(self) -> None:
        """Agree with the likeliest explanation, or take it back."""
        if not self.explanations.agree_with_first():
            self.said.emit(self.tr("There is no explanation here to agree with."))

    def choose_level(self, number: int) -> None:
        """Mark the open criterion with a level by its number."""
        card = self.margin.current
        if not self.margin.choose_level(number) and card is not None:
            words = self.tr("“{criterion}” has {n} levels: there is no level {wanted}.")
            levels = len(card.levels)
            told = words.format(criterion=card.criterion.title, n=levels, wanted=number)
            self.said.emit(told)

    # --- size ----------------------------------------------------------------------

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Two columns where there is room, else one."""
        super().resizeEvent(event)
        self._arrange()

    def _restyle(self) -> None:
        self._arrange()

    def _arrange(self) -> None:
        self.margin.setFixedWidth(self._margin_width())
        wide = self._wide()
        self._columns.setDirection(
            QBoxLayout.Direction.LeftToRight if wide else QBoxLayout.Direction.TopToBottom
        )
        self._about.setVisible(wide)
        restyle(self._name, "kind", "title" if wide else "name")
        self.findings.setMinimumHeight(self._theme.px(110 if wide else 190))
        self._make_room()
        self._place_layers()

    def _margin_width(self) -> int:
        """Its share; in one column it leaves the table what that needs, as far as it can."""
        share = min(max(self._theme.px(390), int(self.width() * 0.3)), int(self.width() * 0.5))
        if self.width() - share >= self._theme.px(_TWO_COLUMNS):
            return share
        rest = self.width() - self.table.needed_width - _BESIDE_TABLE
        return min(share, max(rest, int(self.width() * _LEAST_MARGIN), self.margin.needed_width))

    def _make_room(self) -> None:
        """A table of many timings takes from the graph what it needs, and no more."""
        if not self._wide():
            self.margin.setFixedWidth(self._margin_width())
        most = int(_TABLE_SHARE * self._desk_area.width()) if self._wide() else 0
        self.table.setMinimumWidth(min(self.table.needed_width, most))

    def _wide(self) -> bool:
        return self.width() - self.margin.width() >= self._theme.px(_TWO_COLUMNS)

    def _place_layers(self) -> None:
        if not self._wide():  # beside the margin it would be too narrow to use
            self.layers.place(self.rect())
            return
        top, beside = self._desk_area.y(), self.margin.width() + 26
        self.layers.place(QRect(16, top, self.width() - beside, self.height() - top - 12))
