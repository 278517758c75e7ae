"""The class page: search, filters, order, the cards, and what is still to settle."""

from __future__ import annotations

from PySide6.QtCore import QRectF, Qt, Signal
from PySide6.QtGui import QPainter
from PySide6.QtWidgets import QComboBox, QHBoxLayout, QLineEdit, QPushButton, QVBoxLayout, QWidget

from markbench.model import Concern, PieceKind
from markbench.ui.bench.card import CardDelegate
from markbench.ui.bench.grid import ClassGrid
from markbench.ui.bench.looking import EvidenceLook
from markbench.ui.bench.model import ClassModel, ClassOrder, Filters
from markbench.ui.bench.settle import SettlePanel
from markbench.ui.desk import Desk
from markbench.ui.flow import FlowLayout
from markbench.ui.look.marks import paint_concern, paint_piece
from markbench.ui.look.theme import Theme
from markbench.ui.parts import Glyph, Painter, button, label


class ClassPage(QWidget):
    """Everything about the class at a glance. ``opened`` carries a learner's id;
    ``folder_wanted`` asks for another class."""

    opened = Signal(str)
    folder_wanted = Signal()

    def __init__(self, desk: Desk, theme: Theme, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._desk, self._theme = desk, theme
        self.model = ClassModel(desk, self)
        self.order = ClassOrder(self.model, self)
        self.grid = ClassGrid(self.order, CardDelegate(theme, self.model, self), theme)
        self.grid.opened.connect(self.opened)
        self._words: dict[PieceKind, str] = {
            "readings": self.tr("readings"),
            "setup_photo": self.tr("set-up"),
            "selfie": self.tr("selfie"),
            "swing_video": self.tr("video"),
        }
        self.search = QLineEdit()
        self.search.setPlaceholderText(self.tr("Find a learner"))
        self.search.setAccessibleName(self.tr("Find a learner"))
        self.search.setMinimumWidth(theme.px(150))
        self.search.textChanged.connect(self._filter)
        self.search.returnPressed.connect(self.grid.setFocus)
        self.sorts = self._sorts()
        self.chips = {
            "unmarked": self._chip(self.tr("Not yet marked")),
            "questioned": self._chip(self.tr("To look at")),
            "missing": self._chip(self.tr("Something missing")),
            "late": self._chip(self.tr("Outside the dates")),
        }
        self.groups = self._groups()
        self.shown = label(kind="small")
        self.settle_button = QPushButton()
        self.settle_button.setCheckable(True)
        self.settle_button.toggled.connect(self._toggle_settle)
        self.looking = EvidenceLook(desk)
        self.settle = SettlePanel(desk, theme)
        self.settle.setVisible(False)
        self.settle.done.connect(self.show_first)
        another = self.tr("Choose another folder…")
        self.another = button(another, "deed", self.folder_wanted.emit)
        self.empty = self._say_empty()
        self._axes_note = label(kind="small")
        self._lay_out()
        desk.changed.connect(self._refresh)
        self._refresh()

    def _lay_out(self) -> None:
        tools = FlowLayout(spacing=8)
        for part in (self.search, self.sorts, *self.chips.values(), self.groups,
                     self.settle_button, self.shown, self.looking):  # fmt: skip
            tools.addWidget(part)
        middle = QHBoxLayout()
        middle.setSpacing(12)
        middle.addWidget(self.grid, 1)
        middle.addWidget(self.empty, 1)
        middle.addWidget(self.settle)
        column = QVBoxLayout(self)
        column.setContentsMargins(16, 8, 12, 6)
        column.setSpacing(6)
        column.addLayout(tools)
        column.addLayout(middle, 1)
        column.addLayout(self._legend())

    def _say_empty(self) -> QWidget:
        """What stands in place of the cards of a class without learners."""
        words = self.tr(
            "There is no learner in this folder. A class folder holds a folder for each "
            "learner, or files with their names, or one sheet for all; a class list may lie "
            "beside them."
        )
        said = QWidget()
        column = QVBoxLayout(said)
        column.setContentsMargins(0, 24, 0, 0)
        told = label(words, wrap=True)
        told.setMaximumWidth(self._theme.px(560))
        column.addWidget(told)
        column.addWidget(self.another, 0, Qt.AlignmentFlag.AlignLeft)
        column.addStretch(1)
        return said

    def reminders(self) -> str:
        """A line for each chosen learner (or each one shown): what is still missing."""
        wanted = self.grid.chosen() if len(self.grid.chosen()) > 1 else self.order.learners()
        rows = {row.id: row for row in self.model.rows}
        lines = []
        for row in (rows[learner] for learner in wanted):
            pieces = ", ".join(self._words.get(kind, kind) for kind in row.missing)
            if pieces:
                lines.append(f"{row.name}: {pieces}")
        return "\n".join(lines)

    def show_everybody(self) -> None:
        """Take search and filters off."""
        self.search.clear()
        self.groups.setCurrentIndex(0)
        for chip in self.chips.values():
            chip.setChecked(False)

    def show_first(self) -> None:
        """Give the keyboard to the cards, at the current learner or the first."""
        if not self.grid.currentIndex().isValid() and self.order.rowCount():
            self.grid.setCurrentIndex(self.order.index(0, 0))
        (self.grid if self.model.rowCount() else self.another).setFocus()

    def _sorts(self) -> QComboBox:
        box = QComboBox()
        box.setAccessibleName(self.tr("Order"))
        for key, words in (
            ("concern", self.tr("Most questions first")),
            ("name", self.tr("By name")),
            ("mark", self.tr("Highest mark first")),
            ("progress", self.tr("Least marked first")),
            ("handed_in", self.tr("By time of hand-in")),
            ("class_list", self.tr("As in the class list")),
        ):
            box.addItem(words, key)
        box.currentIndexChanged.connect(lambda _i: self.order.sort_by(box.currentData()))
        return box

    def _groups(self) -> QComboBox:
        box = QComboBox()
        box.setAccessibleName(self.tr("Group"))
        box.addItem(self.tr("All groups"), "")
        names = sorted({row.group for row in self.model.rows if row.group})
        for name in names:
            box.addItem(name, name)
        box.setVisible(len(names) > 1)
        box.currentIndexChanged.connect(self._filter)
        return box

    def _chip(self, words: str) -> QPushButton:
        chip = QPushButton(words)
        chip.setCheckable(True)
        chip.toggled.connect(lambda on: chip.setText(f"✓ {words}" if on else words))
        chip.toggled.connect(self._filter)
        return chip

    def _filter(self) -> None:
        on = {name: chip.isChecked() for name, chip in self.chips.items()}
        self.order.set_filters(
            Filters(text=self.search.text(), group=self.groups.currentData() or "", **on)
        )
        self.grid.fit()
        self._count()

    def _count(self) -> None:
        shown, of = self.order.rowCount(), self.model.rowCount()
        words = self.tr("{n} of {of} learners")
        if shown == of:
            words = self.tr("1 learner") if of == 1 else self.tr("{n} learners")
        done = sum(row.finished for row in self.model.rows)
        marked = self.tr("{n} marked").format(n=done)
        self.shown.setText(f"{words.format(n=shown, of=of)}  ·  {marked}")

    def _toggle_settle(self, on: bool) -> None:
        self.settle.setVisible(on)
        if on:
            self.settle.setFocus()

    def _refresh(self) -> None:
        open_ones = self.settle.count()
        aside = self.settle.aside()
        self.settle_button.setVisible(open_ones + aside > 0 or self.settle.isVisible())
        words = self.tr("Set aside: {n}") if aside and not open_ones else self.tr("To settle: {n}")
        self.settle_button.setText(words.format(n=open_ones or aside))
        nobody = self.model.rowCount() == 0
        self.grid.setHidden(nobody)
        self.empty.setVisible(nobody)
        axes = self.model.axes
        self._axes_note.setText(
            self.tr(
                "Graphs: T² to {t:.1f} s² against L to {l:.0f} cm; grey line: the class"
            ).format(t=axes.largest_s2, l=100 * axes.longest_m)
        )
        self._count()

    def _legend(self) -> FlowLayout:
        row = FlowLayout(spacing=14)
        row.addWidget(self._axes_note)
        concerns = (
            (Concern.LOOK, self.tr("look before marking")),
            (Concern.ASK, self.tr("ask the learner")),
            (Concern.NOTE, self.tr("worth knowing")),
        )
        for concern, words in concerns:
            row.addWidget(self._key(_concern_painter(concern), words))
        for kind, words in self._words.items():
            row.addWidget(self._key(_piece_painter(kind, True), words))
        row.addWidget(self._key(_piece_painter("report", False), self.tr("struck: missing")))
        return row

    def _key(self, paint: Painter, words: str) -> QWidget:
        part = QWidget()
        row = QHBoxLayout(part)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(5)
        row.addWidget(Glyph(self._theme, paint))
        row.addWidget(label(words, "small"))
        return part


def _concern_painter(concern: Concern) -> Painter:
    def paint(painter: QPainter, box: QRectF, theme: Theme) -> None:
        paint_concern(painter, concern, box, theme.palette)

    return paint


def _piece_painter(kind: PieceKind, present: bool) -> Painter:
    def paint(painter: QPainter, box: QRectF, theme: Theme) -> None:
        paint_piece(painter, kind, present, box, theme.palette)

    return paint
