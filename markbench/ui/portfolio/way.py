"""From a mark to its rule, to the finding it rests on, to the very cell."""

from __future__ import annotations

from typing import TYPE_CHECKING

from markbench.model import Analysis, Finding, ReadingsTable, Reason, Source
from markbench.ui.desk import Desk
from markbench.ui.portfolio.cells import (
    OF_THE_LINE,
    Cell,
    cells_of,
    cells_of_finding,
    farthest_rows,
)

if TYPE_CHECKING:
    from markbench.ui.portfolio.page import PortfolioPage


class Way:
    """Leads over the parts of ``page`` for the learner it shows."""

    def __init__(self, page: PortfolioPage, desk: Desk) -> None:
        self._page, self._desk = page, desk

    @property
    def _table(self) -> ReadingsTable | None:
        return self._desk.session.portfolio(self._page.learner).table

    @property
    def _analysis(self) -> Analysis:
        return self._desk.session.analysis(self._page.learner)

    def to_finding(self, finding: Finding) -> None:
        """Show the cells a finding speaks of, or the picture, or name its place.

        What is said of the line leads to the lengths farthest from it, and a slip to its
        explanation.
        """
        cells = cells_of_finding(finding, self._table)
        if finding.check in OF_THE_LINE:
            cells = farthest_rows(self._analysis)
        if finding.check == "slip":
            self._page.explanations.point_out()
        self._to(cells, finding.sources)

    def to_reason(self, reason: Reason) -> None:
        """From the rule that drafted a level to its finding and on to the cell."""
        finding = self._page.findings.reveal(reason.check) if reason.check else None
        if finding is not None:
            self.to_finding(finding)
            return
        cells = cells_of(reason.sources, self._table)
        if not cells and reason.check in OF_THE_LINE:
            cells = farthest_rows(self._analysis)
        self._to(cells, reason.sources)

    def _to(self, cells: list[Cell], sources: tuple[Source, ...]) -> None:
        page = self._page
        if page.table.highlight(cells):
            page.graph.choose(cells[0][0])
            return
        files = {source.file for source in sources}
        wanted = [p for p in page.evidence.openable(page.learner) if p.file in files]
        tables = {piece.file for piece in page.layers.tables(page.learner)}
        cell = next((s for s in sources if s.cell and s.file in tables), None)
        if wanted:
            page.open_piece(wanted[0])
        elif cell is not None:
            page.show_source(cell)
            page.open_table(cell)
        elif sources:
            page.show_source(sources[0])
