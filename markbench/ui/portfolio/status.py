"""How a piece of evidence was judged: a word, a shape of its own, and a key."""

from __future__ import annotations

import math

from PySide6.QtCore import QCoreApplication, QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QFontMetricsF, QIcon, QPainter, QPainterPath, QPixmap

from markbench.ui.look.marks import pen
from markbench.ui.look.theme import Theme

STATUSES = ("accepted", "unreadable", "again")
STATUS_KEYS = {
    Qt.Key.Key_G: "accepted",
    Qt.Key.Key_U: "unreadable",
    Qt.Key.Key_A: "again",
}
KIND_KEYS = {Qt.Key.Key_S: "setup_photo", Qt.Key.Key_L: "selfie"}


def status_word(status: str) -> str:
    """The word for a status; empty for none."""
    return {
        "accepted": QCoreApplication.translate("PieceStatus", "Accepted"),
        "unreadable": QCoreApplication.translate("PieceStatus", "Unreadable"),
        "again": QCoreApplication.translate("PieceStatus", "Hand in again"),
    }.get(status, "")


def paint_status(painter: QPainter, status: str, box: QRectF, theme: Theme) -> None:
    """A disc with a tick, a square with a cross, or a ring that runs round to an arrow."""
    colours = theme.palette
    if status == "again":
        painter.setPen(pen(colours.ask, max(box.width() * 0.13, 1.6)))
        painter.setBrush(Qt.BrushStyle.NoBrush)
        inner = box.adjusted(1, 1, -1, -1)
        ring = QPainterPath()
        ring.arcMoveTo(inner, 80)
        ring.arcTo(inner, 80, 270)
        painter.drawPath(ring)
        tip, barb = ring.currentPosition(), box.width() * 0.36
        painter.drawPolyline(
            [QPointF(tip.x() - barb, tip.y() - barb * 0.1), tip,
             QPointF(tip.x() + barb * 0.3, tip.y() + barb)]
        )  # fmt: skip
        return
    good = status == "accepted"
    painter.setPen(Qt.PenStyle.NoPen)
    painter.setBrush(QColor(colours.deed if good else colours.look))
    if good:
        painter.drawEllipse(box)
    else:
        painter.drawRect(box)
    painter.setPen(pen(colours.on_deed if good else colours.paper, 1.7))
    inner = box.adjusted(*(box.width() * part for part in (0.26, 0.26, -0.26, -0.26)))
    if good:
        painter.drawPolyline(
            [
                QPointF(inner.left(), inner.center().y()),
                QPointF(inner.left() + inner.width() * 0.38, inner.bottom()),
                inner.topRight(),
            ]
        )
    else:
        painter.drawLine(inner.topLeft(), inner.bottomRight())
        painter.drawLine(inner.topRight(), inner.bottomLeft())


def status_icon(status: str, theme: Theme) -> QIcon:
    """The shape as an icon, as high as small text."""
    side = round(theme.line_height("small"))
    pixmap = QPixmap(side * 2, side * 2)
    pixmap.setDevicePixelRatio(2.0)
    pixmap.fill(Qt.GlobalColor.transparent)
    painter = QPainter(pixmap)
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    paint_status(painter, status, QRectF(2, 2, side - 4, side - 4), theme)
    painter.end()
    return QIcon(pixmap)


def paint_badge(
    painter: QPainter, status: str, corner: QPointF, theme: Theme, room: float = math.inf
) -> None:
    """Shape and word on a slip of paper, its top left at ``corner``; the word if there is room."""
    font = theme.font("small")
    metrics = QFontMetricsF(font)
    side, word = metrics.height() * 0.72, status_word(status)
    wide = side + metrics.horizontalAdvance(word) + 14
    if wide > room:
        word, wide = "", side + 8
    slip = QRectF(corner.x(), corner.y(), wide, metrics.height() + 4)
    painter.setPen(pen(theme.palette.rule, 1.0))
    painter.setBrush(QColor(theme.palette.paper))
    painter.drawRoundedRect(slip, 3, 3)
    paint_status(painter, status, QRectF(slip.left() + 4, slip.center().y() - side / 2, side, side),
                 theme)  # fmt: skip
    painter.setFont(font)
    painter.setPen(QColor(theme.palette.ink))
    painter.drawText(
        slip.adjusted(side + 9, 0, 0, 0),
        Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter,
        word,
    )
