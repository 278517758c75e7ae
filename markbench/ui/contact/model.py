"""The set-up photo and the film of each learner, as one tile of the contact sheet."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from typing import TYPE_CHECKING, Any, Literal

from PySide6.QtCore import QObject, QSortFilterProxyModel, Qt

from markbench.model import Concern, Finding, Piece, PieceKind, Portfolio
from markbench.physics.reporting import with_uncertainty
from markbench.ui.bench.model import ROW, ClassOrder, Index
from markbench.ui.bench.rows import LearnerRow
from markbench.ui.desk import Desk
from markbench.ui.look.said import figures
from markbench.ui.portfolio.status import status_word
from markbench.ui.portfolio.swing_words import swing_words, why_not_measured

if TYPE_CHECKING:
    from markbench.evidence.video.judge import SwingMeasurement

TILE = ROW + 1
SideName = Literal["photo", "film"]
FILTERS = ("unjudged", "unmeasured", "missing")


_FINE_ENOUGH_S = 0.0005


@dataclass(frozen=True, slots=True)
class Side:
    """One half of a tile. ``concern`` is the gravest question its findings raise."""

    kind: PieceKind
    piece: Piece | None
    status: str = ""
    concern: Concern | None = None
    hidden: bool = False
    untold: str = ""  # that nobody has said which photo this is

    @property
    def empty(self) -> bool:
        """A file of no bytes."""
        return self.piece is not None and self.piece.size_bytes == 0


@dataclass(frozen=True, slots=True)
class Tile:
    """One learner. ``verdicts`` say what the film was measured to show, the longest first."""

    row: LearnerRow
    photo: Side
    film: Side
    measured: SwingMeasurement | None
    verdicts: tuple[str, ...]

    def side(self, name: SideName) -> Side:
        """One half."""
        return self.photo if name == "photo" else self.film


class ContactOrder(QSortFilterProxyModel):
    """The learners in the order and under the filters of the class page, and its own."""

    def __init__(self, desk: Desk, order: ClassOrder, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._desk = desk
        self._filters: frozenset[str] = frozenset()
        self._tiles: dict[str, Tile] = {}
        self.setSourceModel(order)

    def set_filters(self, names: Iterable[str]) -> None:
        """Show only tiles for which all of these hold."""
        self._filters = frozenset(names)
        self.invalidate()

    def filterAcceptsRow(self, number: int, parent: Index) -> bool:
        """Whether a learner is shown."""
        if not self._filters:
            return True
        tile = self._tile(self.sourceModel().index(number, 0, parent).data(ROW))
        sides = (tile.photo, tile.film)
        refused = tile.measured is None or not tile.measured.accepted
        holds = {
            "unjudged": any(one.piece is not None and not one.status for one in sides),
            "unmeasured": tile.film.piece is not None and refused,
            "missing": any(one.piece is None or one.empty for one in sides),
        }
        return all(holds[name] for name in self._filters)

    def data(self, index: Index, role: int = int(Qt.ItemDataRole.DisplayRole)) -> Any:
        """The tile under ``TILE``; words for screen readers under the usual roles."""
        if role in (TILE, Qt.ItemDataRole.AccessibleTextRole, Qt.ItemDataRole.ToolTipRole):
            row = super().data(index, ROW)
            if row is None:
                return None
            tile = self._tile(row)
            return tile if role == TILE else self._in_words(tile)
        return super().data(index, role)

    def number_of(self, learner: str) -> int:
        """Row number of a learner; −1 where not shown."""
        rows = range(self.rowCount())
        return next((i for i in rows if self.index(i, 0).data(ROW).id == learner), -1)

    # --- inside --------------------------------------------------------------------

    def _tile(self, row: LearnerRow) -> Tile:
        held = self._tiles.get(row.id)
        if held is None or held.row is not row:  # a row is made anew with every change
            held = self._tiles[row.id] = self._make(row)
        return held

    def _make(self, row: LearnerRow) -> Tile:
        session = self._desk.session
        portfolio = session.portfolio(row.id)
        findings = session.findings(row.id)
        photo = _first(portfolio, "setup_photo", "photo")
        film = _first(portfolio, "swing_video")
        measured = None
        if film is not None:
            measured = self._desk.held.film(self._desk.true_file(film.file))
        return Tile(
            row=row,
            photo=self._side(row.id, "setup_photo", photo, findings),
            film=self._side(row.id, "swing_video", film, findings),
            measured=measured,
            verdicts=self._verdicts(film, measured),
        )

    def _side(
        self, learner: str, kind: PieceKind, piece: Piece | None, findings: Iterable[Finding]
    ) -> Side:
        if piece is None:
            return Side(kind, None)
        status = self._desk.session.value("piece_status", learner, piece.file)
        about = (one for one in findings if any(s.file == piece.file for s in one.sources))
        concern = max((one.concern for one in about), default=None)
        hidden = not self._desk.may_open(piece.file)
        untold = ""
        if piece.kind == "photo":
            photos = len(self._desk.session.portfolio(learner).of_kind("photo"))
            untold = self.tr("Which is it?")
            if photos > 1:
                untold = self.tr("Which? 1 of {n}").format(n=photos)
        return Side(piece.kind, piece, str(status or ""), concern, hidden, untold)

    def _verdicts(self, film: Piece | None, measured: SwingMeasurement | None) -> tuple[str, ...]:
        if film is None:
            return (self.tr("No video"),)
        if film.size_bytes == 0:
            return (self.tr("An empty file"),)
        if measured is None:
            return (self.tr("Not yet measured"),)
        if not measured.accepted:
            return (self.tr("Not measured: {why}").format(why=why_not_measured(measured)),)
        # Beside what a thumb timed, more than half a millisecond is noise to read.
        uncertainty_s = max(measured.u_period_s, _FINE_ENOUGH_S)
        value = with_uncertainty(measured.period_s, uncertainty_s, "s")
        shorter = f"{value.partition(' ±')[0]} s"  # the same figures
        words, swings = self.tr("{n} swings  ·  T = {value}"), measured.complete_swings
        return tuple(words.format(n=swings, value=figures(one)) for one in (value, shorter))

    def _in_words(self, tile: Tile) -> str:
        words = [tile.row.name]
        names = {
            "setup_photo": self.tr("Set-up photo"),
            "photo": self.tr("A photo nobody has told apart"),
            "swing_video": self.tr("Video"),
        }
        for side in (tile.photo, tile.film):
            said = self.tr("empty file") if side.empty else status_word(side.status)
            if side.piece is None:
                said = self.tr("missing")
            told = " ".join(part for part in (said, side.untold) if part)
            words.append(f"{names[side.kind]}: {told}" if told else names[side.kind])
        words.append(tile.verdicts[0])
        if tile.measured is not None:
            rows = self._desk.session.analysis(tile.row.id).rows
            words += swing_words(tile.measured, rows, None)[1:]
        return "\n".join(words)


def _first(portfolio: Portfolio, *kinds: PieceKind) -> Piece | None:
    """The first piece of the first kind there is; one with something in it before an empty one."""
    for kind in kinds:
        pieces = portfolio.of_kind(kind)
        if pieces:
            return max(pieces, key=lambda piece: piece.size_bytes > 0)
    return None
