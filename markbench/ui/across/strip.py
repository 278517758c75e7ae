"""Paints one learner's strip, and the heading of the level columns above all strips."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from PySide6.QtCore import (
    QAbstractItemModel,
    QCoreApplication,
    QEvent,
    QModelIndex,
    QObject,
    QPersistentModelIndex,
    QRectF,
    QSize,
    Qt,
    Signal,
)
from PySide6.QtGui import QColor, QFontMetricsF, QMouseEvent, QPainter, QPaintEvent, QResizeEvent
from PySide6.QtWidgets import QStyle, QStyledItemDelegate, QStyleOptionViewItem, QWidget

from markbench.model import Concern, Criterion
from markbench.ui.across.model import STRIP, Strip, StripModel
from markbench.ui.bench.card import paint_small_graph
from markbench.ui.look.marks import paint_concern, paint_piece, pen
from markbench.ui.look.said import figures
from markbench.ui.look.theme import Theme
from markbench.ui.look.words import fitted

Index = QModelIndex | QPersistentModelIndex
_PAD = 12
# px at 100 % text: what the words should have, and must have, before more readings are shown.
_WORDS, _LEAST_WORDS = 186, 140


def name_width(theme: Theme, criterion: Criterion) -> float:
    """What a column needs for the longest word among the names of its levels."""
    metrics = theme.metrics("small")
    words = (word for level in criterion.levels for word in level.name.split())
    return max((metrics.horizontalAdvance(word) for word in words), default=0) + 6.0


@dataclass(frozen=True, slots=True)
class Columns:
    """Left edges and widths, in pixels, of what a strip shows; width 0: not shown."""

    graph: tuple[float, float]
    readings: tuple[float, float]
    words: tuple[float, float]
    levels: tuple[tuple[float, float], ...]


def columns(
    width: float, theme: Theme, levels: int, timings: int = 2, name_px: float = 0
) -> Columns:
    """Share out a strip: the levels first, then the words, the graph, the readings.

    A level has room for ``name_px`` of its name, and the readings for ``timings`` of each
    length, if the words leave it.
    """
    share = width / max(levels, 1)
    each = min(max(share * 0.4, theme.px(40)), theme.px(84), share * 0.62)
    if width - 3 * _PAD - levels * name_px >= theme.px(_LEAST_WORDS):
        each = max(each, name_px)
    start = width - _PAD - levels * each
    left, room = float(_PAD), start - 2 * _PAD
    graph = theme.px(112) if room > theme.px(112 + 170) else 0
    room -= graph + _PAD if graph else 0
    wanted, two = (
        theme.metrics("small").horizontalAdvance("88.8" + "  88.88" * n) + 4 for n in (timings, 2)
    )
    there = room >= two + theme.px(_LEAST_WORDS)
    readings = min(wanted, max(room - theme.px(_WORDS), two)) if there else 0
    after_graph = left + (graph + _PAD if graph else 0)
    after_readings = after_graph + (readings + _PAD if readings else 0)
    return Columns(
        graph=(left, graph),
        readings=(after_graph, readings),
        words=(after_readings, max(start - _PAD - after_readings, 20)),
        levels=tuple((start + i * each, each) for i in range(levels)),
    )


class LevelHeading(QWidget):
    """Names of the levels over their columns, each with the digit that chooses it."""

    def __init__(self, theme: Theme) -> None:
        super().__init__()
        self._theme = theme
        self._criterion: Criterion | None = None
        self._timings = 2
        self.inset = 0
        theme.changed.connect(self._restyle)
        self._restyle()

    def show_criterion(self, criterion: Criterion, timings: int) -> None:
        """Head the columns for a criterion, with room for ``timings`` of each length."""
        self._criterion, self._timings = criterion, timings
        self.setAccessibleName(
            "; ".join(f"{i}: {one.name}" for i, one in enumerate(criterion.levels, 1))
        )
        self.setToolTip(self.accessibleName())
        self._restyle()
        self.update()

    def resizeEvent(self, event: QResizeEvent) -> None:
        """No room is kept for names where there is none for them."""
        super().resizeEvent(event)
        self._restyle()

    def _restyle(self) -> None:
        lines = 1 + max((len(name) for name in self._names()), default=2) + len(self._legend())
        self.setFixedHeight(round((lines + 0.3) * self._theme.line_height("small")))

    def _columns(self) -> Columns:
        assert self._criterion is not None
        need = name_width(self._theme, self._criterion)
        levels = len(self._criterion.levels)
        return columns(self.width() - self.inset, self._theme, levels, self._timings, need)

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Paint digit, name and marks."""
        if self._criterion is None:
            return
        painter, colours = QPainter(self), self._theme.palette
        place = self._columns()
        line = self._theme.line_height("small")
        foot = QRectF(0, self.height() - line - 2, 0, line)
        painter.setPen(QColor(colours.pencil))
        painter.setFont(self._theme.font("small"))
        left, middle = Qt.AlignmentFlag.AlignLeft, Qt.AlignmentFlag.AlignHCenter
        if place.graph[1]:
            words = QCoreApplication.translate("Strips", "T² against L")
            painter.drawText(foot.adjusted(place.graph[0], 0, place.graph[0] + 200, 0), left, words)
        if place.readings[1]:
            words = QCoreApplication.translate("Strips", "L / cm, times / s")
            x = place.readings[0]
            painter.drawText(foot.adjusted(x, 0, x + place.readings[1], 0), left, words)
        painter.setPen(QColor(colours.ink))
        for down, text in enumerate(self._legend()):
            painter.drawText(QRectF(_PAD, down * line, self.width() - _PAD, line), left, text)
        names = self._names()
        key = QCoreApplication.translate("Strips", "key {n}")
        key_wide = painter.fontMetrics().horizontalAdvance(key.format(n=8))
        key = key if all(key_wide + 6 <= each for _, each in place.levels) else "{n}"
        for number, (x, wide) in enumerate(place.levels, 1):
            box = QRectF(x + 2, 0, wide - 4, self.height() - 2)
            painter.setPen(QColor(colours.ink))
            for up, text in enumerate(reversed(names[number - 1]), 1):
                top = box.bottom() - (up + 1) * line
                painter.drawText(QRectF(box.left(), top, box.width(), line), middle, text)
            painter.setPen(QColor(colours.pencil))
            painter.drawText(
                QRectF(box.left(), box.bottom() - line, box.width(), line),
                middle,
                key.format(n=number),
            )

    def _names(self) -> list[list[str]]:
        """Each level's name on up to two lines; none where one would be cut."""
        if self._criterion is None or not self._criterion.levels:
            return []
        levels = self._criterion.levels
        wide = self._columns().levels[0][1] - 4
        metrics = QFontMetricsF(self._theme.font("small"))
        names = [fitted(one.name, metrics, wide, 2) for one in levels]
        whole = all(metrics.horizontalAdvance(line) <= wide for name in names for line in name)
        told = [" ".join(name) for name in names] == [one.name for one in levels]
        return names if whole and told else [[] for _ in names]

    def _legend(self) -> list[str]:
        """The names in a row, each after its digit, where the columns have no room for them."""
        if self._criterion is None or any(self._names()):
            return []
        metrics, lines = self._theme.metrics("small"), [""]
        for number, level in enumerate(self._criterion.levels, 1):
            told = f"{number} {level.name}"
            longer = f"{lines[-1]}  ·  {told}" if lines[-1] else told
            if metrics.horizontalAdvance(longer) <= self.width() - _PAD:
                lines[-1] = longer
            else:
                lines.append(told)
        return lines


class StripDelegate(QStyledItemDelegate):
    """Paints strips; a click on a level box is ``level_clicked`` (learner, level)."""

    level_clicked = Signal(str, str)

    def __init__(self, theme: Theme, model: StripModel, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._theme, self._model = theme, model

    def sizeHint(self, option: QStyleOptionViewItem, _index: Index) -> QSize:
        """One height for all: six lines of small text."""
        return QSize(option.rect.width(), round(5.6 * self._theme.line_height("small") + 14))

    def _columns(self, width: float) -> Columns:
        criterion = self._model.criterion
        need = name_width(self._theme, criterion)
        return columns(width, self._theme, len(criterion.levels), self._model.timings, need)

    def paint(self, painter: QPainter, option: QStyleOptionViewItem, index: Index) -> None:
        """The paper, and on it graph, readings, words and levels."""
        strip: Strip = index.data(STRIP)
        colours, state = self._theme.palette, option.state
        box = QRectF(option.rect).adjusted(0.5, 2.5, -0.5, -2.5)
        chosen = bool(state & QStyle.StateFlag.State_Selected)
        painter.save()
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        focused = bool(state & QStyle.StateFlag.State_HasFocus)
        wide = 2.6 if focused else 1.4 if chosen else 1.0
        painter.setPen(pen(colours.deed if chosen else colours.rule, wide))
        painter.setBrush(QColor(colours.field if chosen else colours.paper))
        painter.drawRoundedRect(box.adjusted(0.5, 0.5, -0.5, -0.5), 3, 3)
        levels = self._model.criterion.levels
        place = self._columns(box.width())
        if place.graph[1]:
            area = QRectF(box.left() + place.graph[0], box.top() + 7, place.graph[1], 0)
            area.setBottom(box.bottom() - 7)
            paint_small_graph(painter, strip.row, area, self._model.axes, self._theme)
        if place.readings[1]:
            self._paint_readings(painter, strip, _column(box, place.readings))
        self._paint_words(painter, strip, _column(box, place.words))
        for level, (x, wide) in zip(levels, place.levels, strict=True):
            cell = QRectF(box.left() + x, box.top(), wide, box.height())
            self._paint_level(painter, strip, level.name, figures(f"{level.marks:g}"), cell)
        painter.restore()

    def _paint_readings(self, painter: QPainter, strip: Strip, box: QRectF) -> None:
        painter.setFont(self._theme.font("small"))
        painter.setPen(QColor(self._theme.palette.ink))
        line = self._theme.line_height("small")
        fits = max(int(box.height() // line), 1)
        shown = list(strip.readings[:fits])
        if len(strip.readings) > fits:
            more = QCoreApplication.translate("Strips", "and {n} more")
            shown[-1] = (more.format(n=len(strip.readings) - fits + 1),)
        metrics = QFontMetricsF(painter.font())
        for number, written in enumerate(shown):
            text = whole_numbers(written, metrics, box.width())
            painter.drawText(
                QRectF(box.left(), box.top() + number * line, box.width(), line), 0, text
            )

    def _paint_words(self, painter: QPainter, strip: Strip, box: QRectF) -> None:
        colours, theme = self._theme.palette, self._theme
        line = theme.line_height("small")
        painter.setFont(theme.font("body", bold=True))
        painter.setPen(QColor(colours.ink))
        metrics = QFontMetricsF(painter.font())
        top = box.top()
        for name in fitted(strip.row.name, metrics, box.width(), 2):
            shown = metrics.elidedText(name, Qt.TextElideMode.ElideRight, box.width())
            painter.drawText(QRectF(box.left(), top, box.width(), metrics.height()), 0, shown)
            top += metrics.height()
        top += 1
        if self._paint_signs(painter, strip, QRectF(box.left(), top, box.width(), line)):
            top += line + 1
        foot = box.bottom()
        if strip.own:
            foot -= line
            painter.setFont(theme.font("small"))
            painter.setPen(QColor(colours.ink))
            text = f"“{strip.feedback}”".replace("\n", " ")
            text = theme.metrics("small").elidedText(text, Qt.TextElideMode.ElideRight, box.width())
            painter.drawText(QRectF(box.left(), foot, box.width(), line), 0, text)
        left = QRectF(box.left(), top, box.width(), max(foot - top, line))
        if strip.values:
            self._paint_values(painter, strip, left)
        else:
            self._paint_reasons(painter, strip, left)

    def _paint_signs(self, painter: QPainter, strip: Strip, box: QRectF) -> bool:
        """Questions with their numbers, and what is missing; whether there is any of it."""
        colours, theme = self._theme.palette, self._theme
        glyph = box.height() * 0.72
        x, y = box.left() + 1, box.top() + box.height() * 0.14
        painter.setFont(theme.font("small"))
        counts = ((Concern.LOOK, strip.row.look), (Concern.ASK, strip.row.ask))
        for concern, count in counts:
            if count:
                mark = QRectF(x, y + glyph * 0.1, glyph * 0.8, glyph * 0.8)
                paint_concern(painter, concern, mark, colours)
                painter.setPen(QColor(colours.ink))
                x += glyph * 1.15
                painter.drawText(QRectF(x, box.top(), box.width(), box.height()), 0, str(count))
                x += theme.metrics("small").horizontalAdvance(str(count)) + glyph * 0.6
        for kind in strip.row.missing:
            paint_piece(painter, kind, False, QRectF(x, y, glyph, glyph), colours)
            x += glyph * 1.5
        for kind in strip.row.untold:
            paint_piece(painter, kind, False, QRectF(x, y, glyph, glyph), colours, untold=True)
            x += glyph * 1.5
        return x > box.left() + 1

    def _paint_values(self, painter: QPainter, strip: Strip, box: QRectF) -> None:
        """Value after value, what falls short in ink and bold; … where there is more."""
        colours, theme = self._theme.palette, self._theme
        line, between = theme.line_height("small"), "  ·  "
        gap = theme.metrics("small").horizontalAdvance(between)
        x, y = box.left(), box.top()
        for value in strip.values:
            font = theme.font("small", bold=value.lacks)
            metrics = QFontMetricsF(font)
            wide = metrics.horizontalAdvance(value.words)
            painter.setPen(QColor(colours.pencil))
            if x > box.left():
                painter.setFont(theme.font("small"))
                if x + gap + wide <= box.right():
                    painter.drawText(QRectF(x, y, gap, line), 0, between)
                    x += gap
                elif y + 2 * line > box.bottom() + 0.4 * line:
                    painter.drawText(QRectF(x, y, gap, line), 0, " …")
                    return
                else:
                    x, y = box.left(), y + line
            painter.setFont(font)
            painter.setPen(QColor(colours.ink if value.lacks else colours.pencil))
            words = metrics.elidedText(value.words, Qt.TextElideMode.ElideRight, box.width())
            painter.drawText(QRectF(x, y, box.width(), line), 0, words)
            x += min(wide, box.width())

    def _paint_reasons(self, painter: QPainter, strip: Strip, box: QRectF) -> None:
        """In words, as many as there is room for."""
        line = self._theme.line_height("small")
        painter.setFont(self._theme.font("small"))
        painter.setPen(QColor(self._theme.palette.pencil))
        most = max(int((box.height() + 1) // line), 1)
        reasons = fitted("  ·  ".join(strip.reasons), self._theme.metrics("small"),
                         box.width(), most)  # fmt: skip
        for number, text in enumerate(reasons):
            painter.drawText(
                QRectF(box.left(), box.top() + number * line, box.width(), line), 0, text
            )

    def _paint_level(
        self, painter: QPainter, strip: Strip, level: str, marks: str, cell: QRectF
    ) -> None:
        colours = self._theme.palette
        box = level_box(cell, self._theme)
        inked = strip.level == level
        drafted = strip.drafted == level
        painter.setBrush(QColor(colours.deed) if inked else Qt.BrushStyle.NoBrush)
        if inked:
            painter.setPen(pen(colours.deed, 1.2))
        elif drafted:
            painter.setPen(pen(colours.ink, 1.4, Qt.PenStyle.DashLine))
        elif self._model.signed:  # nothing to press any more
            painter.setPen(Qt.PenStyle.NoPen)
        else:
            painter.setPen(pen(colours.edge, 1.0))
        painter.drawRoundedRect(box, 3, 3)
        painter.setFont(self._theme.font("body", bold=inked))
        painter.setPen(QColor(colours.on_deed if inked else colours.ink if drafted
                              else colours.pencil))  # fmt: skip
        words = f"✓ {marks}" if inked else f"✎ {marks}" if drafted else marks
        painter.drawText(box, Qt.AlignmentFlag.AlignCenter, words)

    def editorEvent(
        self,
        event: QEvent,
        _model: QAbstractItemModel,
        option: QStyleOptionViewItem,
        index: Index,
    ) -> bool:
        """A click on a level box."""
        released = event.type() == QEvent.Type.MouseButtonRelease
        if not released or not isinstance(event, QMouseEvent):
            return False
        box = QRectF(option.rect).adjusted(0.5, 2.5, -0.5, -2.5)
        levels = self._model.criterion.levels
        place = self._columns(box.width())
        for level, (x, wide) in zip(levels, place.levels, strict=True):
            cell = QRectF(box.left() + x, box.top(), wide, box.height())
            if level_box(cell, self._theme).contains(event.position()):
                self.level_clicked.emit(index.data(STRIP).row.id, level.name)
                return True
        return False


def whole_numbers(written: Sequence[str], metrics: QFontMetricsF, width: float) -> str:
    """As many of the numbers as there is room for, none cut, and how many more there are."""
    for shown in range(len(written), 1, -1):
        rest = len(written) - shown
        text = "  ".join((*written[:shown], *((f"+{rest}",) if rest else ())))
        if metrics.horizontalAdvance(text) <= width:
            return text
    return written[0] if len(written) == 1 else f"{written[0]}  +{len(written) - 1}"


def level_box(cell: QRectF, theme: Theme) -> QRectF:
    """Where a level's box stands in its column: never smaller than a finger's target."""
    box = QRectF(0, 0, min(cell.width() - 6, theme.px(54)), max(theme.px(30), 26))
    box.moveCenter(cell.center())
    return box


def _column(box: QRectF, place: tuple[float, float]) -> QRectF:
    x, wide = place
    return QRectF(box.left() + x, box.top() + 7, wide, box.height() - 14)
