"""Who is in the class and what each handed in, as small drawn signs in columns to choose from."""

from __future__ import annotations

from collections.abc import Iterable

from PySide6.QtCore import QModelIndex, QPersistentModelIndex, QRectF, QSize, Qt, Signal
from PySide6.QtGui import QColor, QPainter, QResizeEvent, QStandardItem, QStandardItemModel
from PySide6.QtWidgets import QListView, QStyle, QStyledItemDelegate, QStyleOptionViewItem

from markbench.model import ClassWork, PieceKind, PieceState, piece_states
from markbench.ui.look.marks import paint_piece, pen
from markbench.ui.look.theme import Theme

KINDS: tuple[PieceKind, ...] = ("readings", "setup_photo", "selfie", "swing_video")
_LEAST_COLUMN, _WIDEST_COLUMN = 300, 420
_LEAST_ROWS = 8  # a short class stands in one column or two, not in a line across the page
_LEARNER = int(Qt.ItemDataRole.UserRole)
_HAS = _LEARNER + 1
Index = QModelIndex | QPersistentModelIndex


class _Line(QStyledItemDelegate):
    """A name, and the signs of the pieces at the end of the line."""

    def __init__(self, theme: Theme, view: QListView) -> None:
        super().__init__(view)
        self._theme, self._view = theme, view

    def paint(self, painter: QPainter, option: QStyleOptionViewItem, index: Index) -> None:
        """Paint one learner."""
        colours = self._theme.palette
        box = QRectF(option.rect).adjusted(0, 0, -16, 0)
        has: tuple[PieceState, ...] = index.data(_HAS)
        painter.save()
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        if option.state & QStyle.StateFlag.State_Selected:
            painter.fillRect(box, QColor(colours.deed_soft))
            painter.fillRect(QRectF(box.left(), box.top(), 3, box.height()), QColor(colours.deed))
        if option.state & QStyle.StateFlag.State_HasFocus:
            painter.setPen(pen(colours.deed, 1.4))
            painter.drawRect(box.adjusted(1, 1, -1, -1))
        painter.setPen(QColor(colours.rule))
        painter.drawLine(box.bottomLeft(), box.bottomRight())
        side = self._theme.line_height("small")
        step = side + 8
        room = box.adjusted(8, 0, -step * len(KINDS) - 8, 0)
        painter.setFont(self._theme.font())
        painter.setPen(
            QColor(colours.ink if any(one != "missing" for one in has) else colours.pencil)
        )
        words = str(index.data(Qt.ItemDataRole.DisplayRole))
        shown = painter.fontMetrics().elidedText(
            words, Qt.TextElideMode.ElideRight, int(room.width())
        )
        painter.drawText(room, Qt.AlignmentFlag.AlignVCenter, shown)
        for k, (kind, state) in enumerate(zip(KINDS, has, strict=True)):
            left = box.right() - step * (len(KINDS) - k)
            sign = QRectF(left, box.center().y() - side * 0.4, side * 0.8, side * 0.8)
            paint_piece(painter, kind, state == "there", sign, colours, untold=state == "untold")
        painter.restore()

    def sizeHint(self, _option: QStyleOptionViewItem, _index: Index) -> QSize:
        """A line of its column."""
        return self._view.gridSize()


def line_height(theme: Theme) -> int:
    """Height of a line, in pixels."""
    return round(theme.line_height() + 8)


class Roll(QListView):
    """One line for each learner; ``chosen`` carries the id of the one that was chosen."""

    chosen = Signal(str)

    def __init__(self, theme: Theme) -> None:
        super().__init__()
        self._theme = theme
        self._lines = QStandardItemModel(self)
        self.setModel(self._lines)
        self.setItemDelegate(_Line(theme, self))
        self.setProperty("kind", "stop")
        self.setFlow(QListView.Flow.LeftToRight)
        self.setWrapping(True)
        self.setResizeMode(QListView.ResizeMode.Adjust)
        self.setUniformItemSizes(True)
        self.setVerticalScrollMode(QListView.ScrollMode.ScrollPerPixel)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setEditTriggers(QListView.EditTrigger.NoEditTriggers)
        self.setMinimumSize(theme.px(_LEAST_COLUMN) // 2, 4 * line_height(theme))
        self.setAccessibleName(self.tr("What each learner handed in"))
        # Not when the current one changes: Tab, passing by, chooses nobody.
        self.selectionModel().selectionChanged.connect(lambda *_: self.chosen.emit(self.learner))
        theme.changed.connect(self._fit)

    def show_work(self, work: ClassWork, damaged: Iterable[str]) -> None:
        """Show a class; files that are ``damaged`` are as good as not there."""
        held, bad = self.learner, frozenset(damaged)
        self.blockSignals(True)
        self._lines.clear()
        whole = 0
        for learner in work.learners:
            has = tuple(piece_states(work.portfolios[learner.id], KINDS, bad).values())
            whole += all(state == "there" for state in has)
            item = QStandardItem(learner.name)
            item.setData(learner.id, _LEARNER)
            item.setData(has, _HAS)
            item.setAccessibleText(self._in_words(learner.name, has))
            self._lines.appendRow(item)
            if learner.id == held:
                self.setCurrentIndex(item.index())
        self.blockSignals(False)
        words = self.tr("{n} of {of} learners have all four pieces")
        self.setAccessibleDescription(words.format(n=whole, of=len(work.learners)))
        self._fit()

    @property
    def learner(self) -> str:
        """Who is chosen; empty where nobody is."""
        return next((str(one.data(_LEARNER)) for one in self.selectedIndexes()), "")

    def choose(self, learner: str) -> None:
        """Choose a learner as a hand would; nobody where ``learner`` is empty."""
        for row in range(self._lines.rowCount()):
            if self._lines.item(row).data(_LEARNER) == learner:
                self.setCurrentIndex(self._lines.index(row, 0))
                return
        self.clearSelection()

    def words_for(self, kind: PieceKind) -> str:
        """A sign in a word."""
        return {
            "readings": self.tr("table"),
            "setup_photo": self.tr("set-up"),
            "selfie": self.tr("selfie"),
            "swing_video": self.tr("video"),
        }.get(kind, self.tr("file"))

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Other columns."""
        super().resizeEvent(event)
        self._fit()

    def _fit(self) -> None:
        # The list keeps room for a scroll bar whether it is there or not.
        bar = self.style().pixelMetric(QStyle.PixelMetric.PM_ScrollBarExtent, None, self)
        room = self.maximumViewportSize().width() - bar - 2
        able = max(1, room // self._theme.px(_LEAST_COLUMN))
        columns = min(able, max(1, -(-self._lines.rowCount() // _LEAST_ROWS)))
        wide = min(room // columns, self._theme.px(_WIDEST_COLUMN))
        size = QSize(max(wide, 1), line_height(self._theme))
        if size != self.gridSize():
            self.setGridSize(size)

    def _in_words(self, name: str, has: tuple[PieceState, ...]) -> str:
        parts = [name]
        for state, form in (
            ("missing", self.tr("not there: {pieces}")),
            ("untold", self.tr("to be told apart among the photos: {pieces}")),
        ):
            of_it = [self.words_for(k) for k, held in zip(KINDS, has, strict=True) if held == state]
            if of_it:
                parts.append(form.format(pieces=", ".join(of_it)))
        if len(parts) == 1:
            return self.tr("{name}: all four pieces").format(name=name)
        return "; ".join(parts)
