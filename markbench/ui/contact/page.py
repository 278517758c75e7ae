"""The page of the contact sheet. Opening a picture leads to the learner's sheet and back."""

from __future__ import annotations

from PySide6.QtCore import QSize, Qt, Signal
from PySide6.QtWidgets import QPushButton, QVBoxLayout, QWidget

from markbench.model import Decision
from markbench.ui.bench.model import ClassOrder, Filters
from markbench.ui.contact.model import TILE, ContactOrder, SideName, Tile
from markbench.ui.contact.sheet import ContactGrid
from markbench.ui.contact.tile import TileDelegate
from markbench.ui.desk import Desk
from markbench.ui.flow import FlowLayout
from markbench.ui.look.theme import Theme
from markbench.ui.parts import button, label
from markbench.ui.portfolio.status import STATUS_KEYS, STATUSES, status_icon, status_word
from markbench.ui.portfolio.thumbnails import Thumbnails


class ContactPage(QWidget):
    """``led`` carries a learner and the piece to open; ``unfiltered`` asks for everybody."""

    led = Signal(str, object)
    opened = Signal(str)
    unfiltered = Signal()

    def __init__(self, desk: Desk, theme: Theme, order: ClassOrder) -> None:
        super().__init__()
        self._desk, self._theme, self._class = desk, theme, order
        self.order = ContactOrder(desk, order, self)
        self.pictures = Thumbnails(desk, self)
        self._tiles = TileDelegate(theme, self.pictures, self)
        self.grid = ContactGrid(self.order, self._tiles, theme)
        self.chips = {
            "unjudged": self._chip(self.tr("Not yet judged")),
            "unmeasured": self._chip(self.tr("Video not measured")),
            "missing": self._chip(self.tr("Photo or video missing")),
        }
        self.everybody = button(self.tr("Show everybody"), "", self.unfiltered.emit)
        self.everybody.setToolTip(
            self.tr("The search and filters of the class page hold here too; this takes them off")
        )
        self.shown = label(kind="small")
        self.judgements = {status: self._judgement(status) for status in STATUSES}
        self.whose = label(kind="small")
        self._lay_out()
        self._connect()
        self._draw_icons()
        self._count()

    def _lay_out(self) -> None:
        tools = FlowLayout(spacing=8)
        for part in (*self.chips.values(), self.everybody, self.shown):
            tools.addWidget(part)
        foot = FlowLayout(spacing=8)
        foot.addWidget(self.whose)
        for control in self.judgements.values():
            foot.addWidget(control)
        words = self.tr("← → picture  ·  ↑ ↓ row  ·  Enter: open  ·  Shift or Ctrl: several")
        foot.addWidget(label(words, "small", wrap=False))
        column = QVBoxLayout(self)
        column.setContentsMargins(16, 8, 12, 6)
        column.setSpacing(6)
        column.addLayout(tools)
        column.addWidget(self.grid, 1)
        column.addLayout(foot)

    def _connect(self) -> None:
        self.pictures.arrived.connect(self._arrived)
        self.grid.judged.connect(self._judge_one)
        self.grid.told.connect(self._tell)
        self.grid.wanted.connect(self._open)
        self.grid.moved.connect(self._refresh)
        self.grid.selectionModel().selectionChanged.connect(self._refresh)
        self._theme.changed.connect(self._draw_icons)
        self._desk.changed.connect(self._refresh)
        for changed in (self.order.modelReset, self.order.layoutChanged,
                        self.order.rowsInserted, self.order.rowsRemoved):  # fmt: skip
            changed.connect(self._count)

    # --- as a place of the window --------------------------------------------------

    def show_page(self) -> None:
        """Give the keyboard to the sheet, at the current tile or the first."""
        if not self.grid.currentIndex().isValid() and self.order.rowCount():
            self.grid.setCurrentIndex(self.order.index(0, 0))
        self._count()
        self.grid.setFocus()

    def settle(self) -> None:
        """Nothing is typed here."""

    def judge(self, status: str) -> None:
        """Say how the chosen pictures are; said of all of them already, it is taken back."""
        self._judge(status, self.grid.chosen(), self.grid.side)

    def show_side(self, side: SideName) -> None:
        """Speak to the photos, or to the films."""
        self.grid.show_side(side)
        self.grid.setFocus()

    def open_current(self) -> None:
        """The current picture, large."""
        tile = self._current()
        if tile is not None:
            self._open(tile.row.id, self.grid.side)

    # --- inside --------------------------------------------------------------------

    def _chip(self, words: str) -> QPushButton:
        chip = QPushButton(words)
        chip.setCheckable(True)
        chip.toggled.connect(lambda on: chip.setText(f"✓ {words}" if on else words))
        chip.toggled.connect(self._filter)
        return chip

    def _judgement(self, status: str) -> QPushButton:
        keys = {status: chr(Qt.Key(key).value) for key, status in STATUS_KEYS.items()}
        control = button(f"{status_word(status)} ({keys[status]})", "", lambda: self.judge(status))
        control.setCheckable(True)
        control.setFocusPolicy(Qt.FocusPolicy.TabFocus)  # a click leaves the keys to the sheet
        return control

    def _draw_icons(self) -> None:
        side = round(self._theme.line_height("small"))
        for status, control in self.judgements.items():
            control.setIcon(status_icon(status, self._theme))
            control.setIconSize(QSize(side, side))

    def _filter(self) -> None:
        self.order.set_filters(name for name, chip in self.chips.items() if chip.isChecked())
        self.grid.fit()
        self._count()

    def _count(self) -> None:
        shown, of = self.order.rowCount(), self._class.sourceModel().rowCount()
        words = self.tr("{n} learners") if shown == of else self.tr("{n} of {of} learners")
        said, filtered = words.format(n=shown, of=of), self._class.filters != Filters()
        reach = self.tr("as on the class page")
        self.shown.setText(f"{said}  ·  {reach}" if filtered else said)
        self.everybody.setVisible(filtered)
        self._refresh()

    def _current(self) -> Tile | None:
        index = self.grid.currentIndex()
        return index.data(TILE) if index.isValid() else None

    def _tile_of(self, learner: str) -> Tile | None:
        number = self.order.number_of(learner)
        return None if number < 0 else self.order.index(number, 0).data(TILE)

    def _refresh(self, *_: object) -> None:
        tile, chosen = self._current(), self.grid.chosen()
        side = self.grid.side
        what = self.tr("set-up photo") if side == "photo" else self.tr("video")
        if len(chosen) > 1:
            many = self.tr("{n} set-up photos") if side == "photo" else self.tr("{n} videos")
            self.whose.setText(many.format(n=len(chosen)))
        else:
            self.whose.setText("" if tile is None else f"{tile.row.name}: {what}")
        for status, control in self.judgements.items():
            control.setEnabled(tile is not None and tile.side(side).piece is not None)
            control.setChecked(tile is not None and tile.side(side).status == status)

    def _judge_one(self, status: str, learner: str, side: SideName) -> None:
        self._judge(status, [learner], side)

    def _judge(self, status: str, learners: list[str], side: SideName) -> None:
        said = [
            (tile.row.id, tile.side(side))
            for tile in map(self._tile_of, learners)
            if tile is not None and tile.side(side).piece is not None
        ]
        back = all(one.status == status for _, one in said)
        decisions = [
            Decision("piece_status", learner, one.piece.file, None if back else status)
            for learner, one in said
            if one.piece is not None
        ]
        self._desk.do(lambda session: session.decide(*decisions))
        self._refresh()

    def _tell(self, kind: str) -> None:
        tile = self._current()
        piece = tile.photo.piece if tile is not None else None
        if self.grid.side == "photo" and piece is not None and self._desk.may_open(piece.file):
            self._desk.tell_kind(piece.file, kind)

    def _open(self, learner: str, side: SideName) -> None:
        tile = self._tile_of(learner)
        piece = tile.side(side).piece if tile is not None else None
        if piece is not None:
            self.led.emit(learner, piece)
        else:
            self.opened.emit(learner)

    def _arrived(self, file: str) -> None:
        self._tiles.arrived(file)
        self.grid.viewport().update()
