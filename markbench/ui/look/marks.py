"""Shapes that carry the meaning beside the colour: glyphs, pens and the graph's symbols."""

from __future__ import annotations

import functools

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QPainter, QPainterPath, QPen, QPolygonF

from markbench.model import Concern, PieceKind
from markbench.ui.look.tokens import Palette

# Line styles of the graph: fitted line solid, local law dashed, ghost dotted.
LINE_STYLES = {
    "data": Qt.PenStyle.SolidLine,
    "law": Qt.PenStyle.DashLine,
    "ghost": Qt.PenStyle.DotLine,
    "crowd": Qt.PenStyle.SolidLine,
}


@functools.lru_cache(maxsize=256)
def pen(colour: str, width: float = 1.0, style: Qt.PenStyle = Qt.PenStyle.SolidLine) -> QPen:
    """A round-capped pen; kept, as a page of cards asks for some hundreds: copy to change it."""
    made = QPen(QColor(colour), width, style)
    made.setCapStyle(Qt.PenCapStyle.RoundCap)
    made.setJoinStyle(Qt.PenJoinStyle.RoundJoin)
    return made


def concern_shape(concern: Concern, box: QRectF) -> QPainterPath:
    """Triangle: look before marking; ring-like diamond: ask; small dot: note."""
    path = QPainterPath()
    middle = box.center()
    if concern == Concern.LOOK:
        path.addPolygon(
            QPolygonF([QPointF(middle.x(), box.top()), box.bottomRight(), box.bottomLeft()])
        )
        path.closeSubpath()
    elif concern == Concern.ASK:
        path.addPolygon(
            QPolygonF(
                [
                    QPointF(middle.x(), box.top()),
                    QPointF(box.right(), middle.y()),
                    QPointF(middle.x(), box.bottom()),
                    QPointF(box.left(), middle.y()),
                ]
            )
        )
        path.closeSubpath()
    else:
        path.addEllipse(middle, box.width() * 0.28, box.height() * 0.28)
    return path


def concern_colour(concern: Concern, palette: Palette) -> str:
    """Colour that goes with the shape."""
    return {Concern.LOOK: palette.look, Concern.ASK: palette.ask}.get(concern, palette.pencil)


def paint_concern(painter: QPainter, concern: Concern, box: QRectF, palette: Palette) -> None:
    """Draw a finding's glyph: filled for LOOK, outlined for ASK, a dot for NOTE."""
    colour = concern_colour(concern, palette)
    painter.setPen(pen(colour, 1.4))
    painter.setBrush(Qt.BrushStyle.NoBrush if concern == Concern.ASK else QColor(colour))
    painter.drawPath(concern_shape(concern, box))


def paint_piece(
    painter: QPainter,
    kind: PieceKind,
    present: bool,
    box: QRectF,
    palette: Palette,
    *,
    untold: bool = False,
) -> None:
    """Draw a piece of evidence: inked where present, faint and struck out where missing.

    ``untold``: faint, with a question mark; a photo is there that could be it.
    """
    if untold:
        present = False
    painter.setPen(pen(palette.ink if present else palette.edge, 1.3))
    painter.setBrush(Qt.BrushStyle.NoBrush)
    painter.translate(box.topLeft())
    painter.drawPath(_piece_path(kind, box.width(), box.height()))
    painter.translate(-box.topLeft())
    if untold:
        painter.setPen(pen(palette.ink, 1.6))
        painter.drawPath(_question_path(box.width(), box.height()).translated(box.topLeft()))
    elif not present:
        painter.setPen(pen(palette.look, 2.0))
        painter.drawLine(box.bottomLeft(), box.topRight())


@functools.lru_cache(maxsize=32)
def _question_path(w: float, h: float) -> QPainterPath:
    path = QPainterPath(QPointF(w * 0.9, h * 0.34))
    path.cubicTo(w * 0.9, h * 0.06, w * 1.32, h * 0.06, w * 1.32, h * 0.36)
    path.cubicTo(w * 1.32, h * 0.54, w * 1.11, h * 0.52, w * 1.11, h * 0.7)
    path.moveTo(w * 1.11, h * 0.94)
    path.lineTo(w * 1.11, h * 0.97)
    return path


@functools.lru_cache(maxsize=128)
def _piece_path(kind: PieceKind, w: float, h: float) -> QPainterPath:
    path = QPainterPath()
    if kind == "readings":  # a ruled table
        path.addRoundedRect(QRectF(0, h * 0.08, w, h * 0.84), 1.5, 1.5)
        for part in (0.38, 0.66):
            path.moveTo(0, h * part)
            path.lineTo(w, h * part)
        path.moveTo(w * 0.42, h * 0.08)
        path.lineTo(w * 0.42, h * 0.92)
    elif kind in ("setup_photo", "photo"):  # a pendulum hung from a beam
        path.moveTo(w * 0.1, h * 0.08)
        path.lineTo(w * 0.9, h * 0.08)
        path.moveTo(w * 0.5, h * 0.08)
        path.lineTo(w * 0.72, h * 0.68)
        path.addEllipse(QPointF(w * 0.77, h * 0.8), w * 0.14, w * 0.14)
    elif kind == "selfie":  # a head and shoulders
        path.addEllipse(QPointF(w * 0.5, h * 0.3), w * 0.2, w * 0.2)
        path.moveTo(w * 0.12, h * 0.94)
        path.cubicTo(w * 0.14, h * 0.52, w * 0.86, h * 0.52, w * 0.88, h * 0.94)
    elif kind == "swing_video":  # an arc of a swing with a play mark
        path.moveTo(w * 0.34, h * 0.2)
        path.lineTo(w * 0.34, h * 0.64)
        path.lineTo(w * 0.7, h * 0.42)
        path.closeSubpath()
        path.moveTo(w * 0.06, h * 0.66)
        path.quadTo(w * 0.5, h * 1.14, w * 0.94, h * 0.66)
    else:  # a sheet with a folded corner
        path.moveTo(w * 0.2, h * 0.06)
        path.lineTo(w * 0.62, h * 0.06)
        path.lineTo(w * 0.84, h * 0.3)
        path.lineTo(w * 0.84, h * 0.94)
        path.lineTo(w * 0.2, h * 0.94)
        path.closeSubpath()
    return path
