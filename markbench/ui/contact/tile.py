"""Paints one tile of the contact sheet: name, photo, film with its trace, and the verdict."""

from __future__ import annotations

import math
from typing import NamedTuple

from PySide6.QtCore import QModelIndex, QObject, QPersistentModelIndex, QPointF, QRectF, QSizeF, Qt
from PySide6.QtGui import QColor, QFontMetricsF, QImage, QPainter
from PySide6.QtWidgets import QStyleOptionViewItem

from markbench.ui.bench.kept import PictureDelegate
from markbench.ui.contact.model import TILE, Side, SideName, Tile
from markbench.ui.look.marks import paint_concern, paint_piece, pen
from markbench.ui.look.theme import Theme
from markbench.ui.portfolio.status import STATUSES, paint_badge, paint_status
from markbench.ui.portfolio.thumbnails import Thumbnails

GAP = 4
_PAD = 7.0
_TRACE = 15.0  # height of the drawn swing under a film, at 100 % text


class Places(NamedTuple):
    """Where things stand in a tile."""

    name: QRectF
    photo: QRectF
    film: QRectF
    trace: QRectF
    verdict: QRectF

    def side(self, name: SideName) -> QRectF:
        """The whole half, the trace with the film."""
        return self.photo if name == "photo" else self.film.united(self.trace)


def places(box: QRectF, theme: Theme) -> Places:
    """The parts of a tile in ``box``."""
    inner = box.adjusted(_PAD, _PAD - 3, -_PAD, -_PAD + 3)
    line = theme.line_height("small")
    name = QRectF(inner.left(), inner.top(), inner.width(), line)
    verdict = QRectF(inner.left(), inner.bottom() - line, inner.width(), line)
    top, high = name.bottom() + 3, verdict.top() - name.bottom() - 6
    wide = (inner.width() - 6) / 2
    trace_high = _TRACE * theme.scale
    film = QRectF(inner.left() + wide + 6, top, wide, high - trace_high)
    trace = QRectF(film.left(), film.bottom(), wide, trace_high)
    return Places(name, QRectF(inner.left(), top, wide, high), film, trace, verdict)


def judgement_boxes(side: QRectF, theme: Theme) -> dict[str, QRectF]:
    """Where the three judgements are offered, at the foot of a picture."""
    wide = min(theme.px(26), side.width() / 3 - 1)
    left = side.center().x() - 1.5 * wide
    return {
        status: QRectF(left + number * wide, side.bottom() - wide - 2, wide, wide)
        for number, status in enumerate(STATUSES)
    }


class TileDelegate(PictureDelegate):
    """``at`` is the half that has the keyboard, ``under`` the one under the mouse."""

    def __init__(self, theme: Theme, pictures: Thumbnails, parent: QObject | None = None) -> None:
        super().__init__(theme, parent)
        self._images = pictures
        self._asked: dict[str, str] = {}
        self.at: tuple[int, SideName] | None = None
        self.under: tuple[int, SideName] | None = None

    def draw(self, painter: QPainter, thing: object, box: QRectF) -> None:
        """The tile itself."""
        assert isinstance(thing, Tile)
        colours, parts = self._theme.palette, places(box, self._theme)
        painter.setPen(pen(colours.rule, 1.0))
        painter.setBrush(QColor(colours.paper))
        painter.drawRoundedRect(box.adjusted(0.5, 0.5, -0.5, -0.5), 3, 3)
        self._words(painter, parts.name, thing.row.name, bold=True)
        film = parts.film if thing.measured is not None and thing.measured.accepted else None
        self._side(painter, thing.photo, parts.photo)
        self._side(painter, thing.film, film or parts.side("film"))
        if film is not None:
            self._trace(painter, thing, parts.trace)
        self._verdict(painter, thing, parts.verdict)

    def paint(
        self,
        painter: QPainter,
        option: QStyleOptionViewItem,
        index: QModelIndex | QPersistentModelIndex,
    ) -> None:
        """The tile; frames tell chosen, and which half the keys speak to."""
        tile: Tile = index.data(TILE)
        for side in (tile.film, tile.photo):  # the last one asked for is made first
            if side.piece is not None:
                self._images.ask(side.piece)
                self._asked[side.piece.file] = tile.row.id
        box = QRectF(option.rect.adjusted(GAP, GAP, -GAP, -GAP))
        self.blit(painter, box, tile.row.id, tile)
        self.frame(painter, box, option.state)
        parts = places(box, self._theme)
        for spot in {self.at, self.under} - {None}:
            assert spot is not None
            number, name = spot
            if number == index.row():
                self._pointed(painter, tile.side(name), parts.side(name), spot == self.at)

    def arrived(self, file: str) -> None:
        """A small picture is there now: its tile is drawn afresh."""
        self.forget_one(self._asked.get(file, ""))

    # --- parts ---------------------------------------------------------------------

    def _words(
        self, painter: QPainter, box: QRectF, words: str, *, bold: bool = False, look: bool = False
    ) -> None:
        colours = self._theme.palette
        font = self._theme.font("small", bold=bold)
        painter.setFont(font)
        painter.setPen(QColor(colours.look if look else colours.ink if bold else colours.pencil))
        shown = QFontMetricsF(font).elidedText(words, Qt.TextElideMode.ElideRight, box.width())
        painter.drawText(box, Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter, shown)

    def _side(self, painter: QPainter, side: Side, box: QRectF) -> None:
        colours = self._theme.palette
        image = QImage()
        if side.piece is not None and not side.hidden:
            image = self._images.image(side.piece)
        present = side.piece is not None and not side.empty
        painter.setPen(pen(colours.rule if present else colours.edge, 1.0,
                           Qt.PenStyle.SolidLine if present else Qt.PenStyle.DashLine))  # fmt: skip
        painter.setBrush(QColor(colours.shade if present else colours.paper))
        painter.drawRect(box)
        if image.isNull():
            glyph = QRectF(0, 0, 24, 24)
            glyph.moveCenter(box.center())
            paint_piece(painter, side.kind, present, glyph, colours)
        else:
            _fit(painter, image, box)
        if side.untold:
            high = self._theme.line_height("small") + 4
            slip = QRectF(box.left(), box.top(), box.width(), high)
            if side.status:
                slip.translate(0, high + 4)
            painter.setPen(Qt.PenStyle.NoPen)
            painter.setBrush(QColor(colours.paper))
            painter.drawRect(slip.adjusted(1, 1, -1, 0))
            self._words(painter, slip.adjusted(5, 0, -18, 0), side.untold, look=True)
        if side.status:
            corner, room = box.topLeft() + QPointF(3, 3), box.width() - 24
            paint_badge(painter, side.status, corner, self._theme, room)
        if side.concern is not None and side.kind != "swing_video":
            spot = QRectF(box.right() - 17, box.top() + 3, 14, 14)
            painter.setPen(Qt.PenStyle.NoPen)
            painter.setBrush(QColor(colours.paper))
            painter.drawRect(spot)
            paint_concern(painter, side.concern, spot.adjusted(2.5, 2.5, -2.5, -2.5), colours)

    def _trace(self, painter: QPainter, tile: Tile, box: QRectF) -> None:
        """The displacement over the stretch that swings, as in the film's own player."""
        assert tile.measured is not None
        run = [
            (t, d)
            for t, d in zip(tile.measured.times_s, tile.measured.displacement_px, strict=True)
            if math.isfinite(d)
        ]
        if len(run) < 2:
            return
        run = run[:: max(len(run) // 240, 1)]  # more points than pixels tell no more
        first, last = run[0][0], run[-1][0]
        most = max(abs(d) for _, d in run) or 1.0
        half = box.height() / 2 - 1.5
        painter.setPen(pen(self._theme.palette.data, 1.0))
        painter.drawPolyline(
            [
                QPointF(
                    box.left() + box.width() * (t - first) / (last - first),
                    box.center().y() - half * d / most,
                )
                for t, d in run
            ]
        )

    def _verdict(self, painter: QPainter, tile: Tile, box: QRectF) -> None:
        concern = tile.film.concern
        if concern is not None:
            side = box.height() * 0.6
            mark = QRectF(box.left() + 1, box.center().y() - side / 2, side, side)
            paint_concern(painter, concern, mark, self._theme.palette)
            box = box.adjusted(side + 6, 0, 0, 0)
        lacking = tile.film.piece is None or tile.film.empty
        metrics = QFontMetricsF(self._theme.font("small"))
        fits = (one for one in tile.verdicts if metrics.horizontalAdvance(one) <= box.width())
        self._words(painter, box, next(fits, tile.verdicts[-1]), look=lacking)

    def _pointed(self, painter: QPainter, side: Side, box: QRectF, at: bool) -> None:
        """The half that is spoken to, and what can be said of it."""
        colours = self._theme.palette
        painter.save()
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        if at:
            painter.setPen(pen(colours.deed, 2.5))
            painter.setBrush(Qt.BrushStyle.NoBrush)
            painter.drawRect(box.adjusted(-1, -1, 1, 1))
        if side.piece is not None:
            for status, spot in judgement_boxes(box, self._theme).items():
                on = status == side.status
                painter.setPen(pen(colours.deed if on else colours.edge, 2.0 if on else 1.0))
                painter.setBrush(QColor(colours.deed_soft if on else colours.paper))
                painter.drawRect(spot.adjusted(1, 1, -1, -1))
                inset = spot.width() * 0.26
                paint_status(painter, status, spot.adjusted(inset, inset, -inset, -inset),
                             self._theme)  # fmt: skip
        painter.restore()


def _fit(painter: QPainter, image: QImage, box: QRectF) -> None:
    """The whole picture, nothing cut off: what stands at the edge may be what matters."""
    size = QSizeF(image.size()).scaled(box.size(), Qt.AspectRatioMode.KeepAspectRatio)
    target = QRectF(QPointF(0, 0), size)
    target.moveCenter(box.center())
    painter.save()
    painter.setRenderHint(QPainter.RenderHint.SmoothPixmapTransform)
    painter.drawImage(target, image)
    painter.restore()
