"""Paints one learner's card: their own graph on the class's axes, and how things stand."""

from __future__ import annotations

import heapq

from PySide6.QtCore import (
    QCoreApplication,
    QLineF,
    QMargins,
    QModelIndex,
    QObject,
    QPersistentModelIndex,
    QPointF,
    QRect,
    QRectF,
    Qt,
)
from PySide6.QtGui import QColor, QFontMetricsF, QPainter, QPainterPath, QPolygonF
from PySide6.QtWidgets import QStyleOptionViewItem

from markbench.model import Concern
from markbench.ui.bench.kept import PictureDelegate
from markbench.ui.bench.model import ROW, ClassModel
from markbench.ui.bench.names import set_name
from markbench.ui.bench.rows import Axes, LearnerRow
from markbench.ui.look.marks import paint_concern, paint_piece, pen
from markbench.ui.look.said import figures, said
from markbench.ui.look.theme import Theme

_GAP = 4
_TALLY = 0.5  # lines that the boxes under the total take
_ROOMY = 3.4  # lines of room from which a card has a sentence, too
_TALL = 8.5  # lines of a card's words from which it is to have one
_MEASURED = 24  # names
_EAR = 14  # what the folded corner of a finished card takes of the name's first line


class CardDelegate(PictureDelegate):
    """Draws the cards of the class."""

    def __init__(self, theme: Theme, model: ClassModel, parent: QObject | None = None) -> None:
        super().__init__(theme, parent)
        self._model = model
        self._names: dict[tuple[int, int, float], float] = {}  # height of the tallest, by size
        model.axes_changed.connect(self.forget)
        model.modelReset.connect(self._names.clear)

    def draw(self, painter: QPainter, thing: object, box: QRectF) -> None:
        """One learner's card."""
        assert isinstance(thing, LearnerRow)
        names = self._room_for_names(box)
        paint_card(painter, thing, box, self._model.axes, self._theme, names)

    def _room_for_names(self, box: QRectF) -> float:
        """What the longest name of the class takes, so that all signs stand on one line."""
        key = (round(box.width()), round(box.height()), self._theme.scale)
        if key not in self._names:
            words = _words_box(box)
            room = room_for_name(words.height(), self._theme)
            # Among the longest: a class of a thousand is not set for a frame to be drawn.
            called = heapq.nlargest(_MEASURED, (row.called for row in self._model.rows), key=len)
            held = (set_name(one, words.width(), room, _EAR, self._theme).height for one in called)
            self._names[key] = max(held, default=0.0)
        return self._names[key]

    def same(self, before: object, now: object) -> bool:
        """Rows are gathered anew for everybody when photos and films have been looked at."""
        if before is now:
            return True
        assert isinstance(before, LearnerRow)
        assert isinstance(now, LearnerRow)
        return before == now and before.so_far == now.so_far

    def prepare(self, index: QModelIndex | QPersistentModelIndex, ratio: float) -> bool:
        """The card as it will be wanted."""
        row: LearnerRow = index.data(ROW)
        size = self.card_size.shrunkBy(QMargins(_GAP, _GAP, _GAP, _GAP))
        return self.draw_ahead(row.id, row, size, ratio)

    def paint(
        self,
        painter: QPainter,
        option: QStyleOptionViewItem,
        index: QModelIndex | QPersistentModelIndex,
    ) -> None:
        """The card; the frame tells chosen and pointed at."""
        row: LearnerRow = index.data(ROW)
        rect: QRect = option.rect
        box = QRectF(rect.adjusted(_GAP, _GAP, -_GAP, -_GAP))
        self.blit(painter, box, row.id, row)
        self.frame(painter, box, option.state)


def paint_card(
    painter: QPainter, row: LearnerRow, box: QRectF, axes: Axes, theme: Theme, names: float = 0.0
) -> None:
    """The whole card in ``box``; its name takes at least the height ``names``."""
    colours = theme.palette
    painter.setPen(pen(colours.rule, 1.0))
    painter.setBrush(QColor(colours.paper))
    painter.drawRoundedRect(box.adjusted(0.5, 0.5, -0.5, -0.5), 3, 3)
    paint_small_graph(painter, row, _graph_box(box), axes, theme)
    _paint_words(painter, row, _words_box(box), theme, names)
    if row.finished:
        _paint_ear(painter, box, theme)


def _graph_box(box: QRectF) -> QRectF:
    wide = min(box.width() * 0.45, box.height() * 1.15)
    return QRectF(box.left() + 7, box.top() + 7, wide - 7, box.height() - 14)


def _words_box(box: QRectF) -> QRectF:
    left = _graph_box(box).right()
    return QRectF(left + 9, box.top() + 6, box.right() - left - 15, box.height() - 12)


def room_for_name(height: float, theme: Theme) -> float:
    """What a name may take of the words' height: the signs and the total keep theirs.

    Two lines; three small ones where a card has no room for the question anyway.
    """
    line, body = theme.line_height("small"), theme.line_height()
    if height > _TALL * line:
        return 2 * body
    rest = height - (1 + _TALLY) * line - max(12.0, line * 0.85) - 7 - line
    return min(max(2 * body, 3 * line), max(rest, body))


def paint_small_graph(
    painter: QPainter, row: LearnerRow, area: QRectF, axes: Axes, theme: Theme
) -> None:
    """T² against L on the class's axes: readings, their line, the class's behind."""
    colours = theme.palette
    painter.save()
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    painter.setPen(pen(colours.graph, 1.0))
    squares = []
    for i in range(1, 6):
        x = round(area.left() + area.width() * i / 5) + 0.5
        y = round(area.bottom() - area.height() * i / 5) + 0.5
        squares.append(QLineF(x, area.top(), x, area.bottom()))
        squares.append(QLineF(area.left(), y, area.right(), y))
    painter.drawLines(squares)
    painter.setPen(pen(colours.edge, 1.0))
    painter.drawPolyline([area.topLeft(), area.bottomLeft(), area.bottomRight()])
    if not row.points:
        painter.setPen(QColor(colours.pencil))
        painter.setFont(theme.font("small"))
        words = QCoreApplication.translate("CardDelegate", "no readings")
        painter.drawText(area, Qt.AlignmentFlag.AlignCenter | Qt.TextFlag.TextWordWrap, words)
        painter.restore()
        return

    def place(x: float, y: float) -> QPointF:
        return QPointF(
            area.left() + area.width() * x / axes.longest_m,
            area.bottom() - area.height() * y / axes.largest_s2,
        )

    painter.setClipRect(area.adjusted(-4, -4, 4, 4))
    painter.setPen(pen(colours.crowd, 1.0))
    painter.drawLine(place(0, 0), place(axes.longest_m, axes.slope * axes.longest_m))
    if row.line is not None:
        slope, intercept = row.line
        lengths = [x for x, _ in row.points]
        low, high = min(lengths), min(max(lengths), 2 * axes.longest_m)
        painter.setPen(pen(colours.data, 1.3))
        painter.drawLine(place(low, intercept + slope * low), place(high, intercept + slope * high))
    painter.setPen(pen(colours.paper, 0.8))
    painter.setBrush(QColor(colours.data))
    for x, y in row.points:
        spot = place(x, y)
        if area.adjusted(-1, -1, 1, 1).contains(spot):
            painter.drawEllipse(spot, 2.9, 2.9)
        else:
            painter.drawPolygon(_arrow(spot, area))
    painter.restore()


def paint_changed(painter: QPainter, box: QRectF, theme: Theme) -> None:
    """≠: the work is no longer what was marked."""
    painter.setPen(pen(theme.palette.look, 1.8))
    for part in (0.34, 0.66):
        y = box.top() + box.height() * part
        painter.drawLine(QPointF(box.left(), y), QPointF(box.right(), y))
    inner = box.adjusted(box.width() * 0.24, 0, -box.width() * 0.24, 0)
    painter.drawLine(inner.bottomLeft(), inner.topRight())


def _arrow(spot: QPointF, area: QRectF) -> QPolygonF:
    """A wedge at the edge, pointing to where a reading lies beyond the axes."""
    x = min(max(spot.x(), area.left() + 4), area.right() - 4)
    y = min(max(spot.y(), area.top() + 4), area.bottom() - 4)
    if spot.y() < area.top():
        return QPolygonF([QPointF(x - 4, y + 3), QPointF(x + 4, y + 3), QPointF(x, y - 4)])
    return QPolygonF([QPointF(x - 3, y - 4), QPointF(x - 3, y + 4), QPointF(x + 4, y)])


def _paint_words(
    painter: QPainter, row: LearnerRow, box: QRectF, theme: Theme, names: float
) -> None:
    colours = theme.palette
    small = theme.font("small")
    line = QFontMetricsF(small).height()
    glyph = max(12.0, line * 0.85)
    foot = box.bottom() - line - _TALLY * line
    ear = _EAR if row.finished else 0
    name = set_name(row.called, box.width(), room_for_name(box.height(), theme), ear, theme)
    painter.setPen(QColor(colours.ink))
    painter.setFont(name.font)
    base = box.top() + name.metrics.ascent()
    for text in name.lines:
        painter.drawText(QPointF(box.left(), base), text)
        base += name.metrics.height()
    at_x, at_y = box.left() + 1, box.top() + max(name.height, names) + 5
    for kind, state in row.pieces:
        sign = QRectF(at_x, at_y, glyph, glyph)
        paint_piece(painter, kind, state == "there", sign, theme.palette, untold=state == "untold")
        at_x += glyph * 1.55
    at_x = box.left() + 1
    room = foot - (at_y + glyph)
    at_y = at_y + glyph + (5 if room > _ROOMY * line else room / 2 - line / 2)
    painter.setFont(small)
    counts = ((Concern.LOOK, row.look), (Concern.ASK, row.ask), (Concern.NOTE, row.note))
    for concern, count in counts:
        if count:
            mark = QRectF(at_x, at_y + line * 0.22, line * 0.58, line * 0.58)
            paint_concern(painter, concern, mark, colours)
            painter.setPen(QColor(colours.ink))
            number = str(count)
            width = QFontMetricsF(small).horizontalAdvance(number)
            painter.drawText(QPointF(at_x + line * 0.82, at_y + line * 0.78), number)
            at_x += line * 1.3 + width
    if row.changed:
        paint_changed(painter, QRectF(at_x, at_y + line * 0.14, line * 0.72, line * 0.72), theme)
    if room > _ROOMY * line:
        top = at_y + line + 4
        left = QRectF(box.left() + 1, top, box.width() - 2, foot - top - 7)
        _paint_summary(painter, said(row.summary), left, theme)
    _paint_total(painter, row, QRectF(box.left(), foot, box.width(), line), theme)
    tally = QRectF(box.left() + 1, box.bottom() - (_TALLY - 0.1) * line, box.width() - 2,
                   (_TALLY - 0.1) * line)  # fmt: skip
    _paint_tally(painter, row, tally, theme)


def _paint_summary(painter: QPainter, words: str, box: QRectF, theme: Theme) -> None:
    """The most concerning finding, where a large card has room; as many lines as fit."""
    font = theme.font("small")
    metrics = QFontMetricsF(font)
    lines, line = [], ""
    for word in words.split():
        longer = f"{line} {word}".strip()
        if line and metrics.horizontalAdvance(longer) > box.width():
            lines.append(line)
            longer = word
        line = longer
    lines.append(line)
    fit = max(int(box.height() // metrics.height()), 0)
    if len(lines) > fit and fit:
        rest = " ".join(lines[fit - 1 :])
        last = metrics.elidedText(rest, Qt.TextElideMode.ElideRight, box.width())
        lines = [*lines[: fit - 1], last]
    painter.setFont(font)
    painter.setPen(QColor(theme.palette.pencil))
    for number, text in enumerate(lines[:fit]):
        y = box.top() + metrics.ascent() + number * metrics.height()
        shown = metrics.elidedText(text, Qt.TextElideMode.ElideRight, box.width())
        painter.drawText(QPointF(box.left(), y), shown)


def _paint_total(painter: QPainter, row: LearnerRow, box: QRectF, theme: Theme) -> None:
    """The total of the most there is: in ink, or the draft in pencil."""
    colours = theme.palette
    if row.finished and row.total is not None:
        font, colour = theme.font("small", bold=True), colours.deed
        text = figures(f"{row.total:g} / {row.most:g}")
    elif row.drafted is not None:
        font, colour = theme.font("small"), colours.pencil
        font.setItalic(True)
        words = QCoreApplication.translate("CardDelegate", "draft {marks:g} / {most:g}")
        text = figures(words.format(marks=row.drafted, most=row.so_far.most))
    else:
        return
    painter.setFont(font)
    painter.setPen(QColor(colour))
    painter.drawText(box, Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter, text)


def _paint_tally(painter: QPainter, row: LearnerRow, box: QRectF, theme: Theme) -> None:
    """A box per criterion, inked where marked: of one size on all cards of a class."""
    colours = theme.palette
    if row.criteria == 0:
        return
    gap = 2.5
    wide = min((box.width() + gap) / row.criteria - gap, box.height() * 2.4)
    boxes = [
        QRectF(box.left() + i * (wide + gap), box.top(), wide, box.height())
        for i in range(row.criteria)
    ]
    for colour, cells in ((colours.edge, boxes[row.marked :]), (colours.deed, boxes[: row.marked])):
        painter.setPen(pen(colour, 1.0))
        painter.setBrush(QColor(colour) if colour == colours.deed else Qt.BrushStyle.NoBrush)
        painter.drawRects(cells)


def _paint_ear(painter: QPainter, box: QRectF, theme: Theme) -> None:
    """A folded corner with a tick: this learner is done."""
    side = 22.0
    right, top = box.right() - 0.5, box.top() + 0.5
    ear = QPainterPath(QPointF(right - side, top))
    ear.lineTo(right, top)
    ear.lineTo(right, top + side)
    ear.closeSubpath()
    painter.fillPath(ear, QColor(theme.palette.deed))
    painter.setPen(pen(theme.palette.on_deed, 1.8))
    painter.drawPolyline(
        [
            QPointF(right - 10.5, top + 6.5),
            QPointF(right - 7.5, top + 9.5),
            QPointF(right - 3, top + 4),
        ]
    )
