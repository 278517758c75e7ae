"""Icons drawn by us on a 24-unit square; stroke colour comes from the palette."""

from __future__ import annotations

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QIcon, QLinearGradient, QPainter, QPainterPath, QPixmap

from markbench.ui.look.marks import pen

# One string per icon: M x y, L x y, Q cx cy x y, C …, O cx cy r (a circle), Z.
_PATHS = {
    "back": "M 15 5 L 8 12 L 15 19",
    "next": "M 9 5 L 16 12 L 9 19",
    "up": "M 5 15 L 12 8 L 19 15",
    "down": "M 5 9 L 12 16 L 19 9",
    "add": "M 12 5 L 12 19 M 5 12 L 19 12",
    "undo": "M 9 6 L 4 10.5 L 9 15 M 4 10.5 L 14 10.5 Q 20 10.5 20 15.5 Q 20 19 16 19",
    "redo": "M 15 6 L 20 10.5 L 15 15 M 20 10.5 L 10 10.5 Q 4 10.5 4 15.5 Q 4 19 8 19",
    "folder": "M 3 19 L 3 6 L 9 6 L 11 8.5 L 21 8.5 L 21 19 Z M 3 12 L 21 12",
    "tick": "M 5 12.5 L 10 17.5 L 19.5 6.5",
    "cross": "M 6 6 L 18 18 M 18 6 L 6 18",
    "list": "M 9 6 L 20 6 M 9 12 L 20 12 M 9 18 L 20 18 O 5 6 1 O 5 12 1 O 5 18 1",
    "turn": "M 19 12 C 19 3 5 3 5 12 C 5 19 13 21 17 17 M 19 12 L 16 9.4 M 19 12 L 22 9.4",
    "closer": "O 11 11 6.5 M 15.8 15.8 L 20.5 20.5 M 8 11 L 14 11 M 11 8 L 11 14",
    "further": "O 11 11 6.5 M 15.8 15.8 L 20.5 20.5 M 8 11 L 14 11",
    "play": "M 7 5 L 19 12 L 7 19 Z",
    "pause": "M 8 5 L 8 19 M 16 5 L 16 19",
    "step_on": "M 6 6 L 13 12 L 6 18 Z M 17 6 L 17 18",
    "step_back": "M 18 6 L 11 12 L 18 18 Z M 7 6 L 7 18",
    "pencil": "M 4 20 L 5.2 15 L 16 4.5 L 19.6 8 L 8.8 18.6 Z M 13.6 6.8 L 17.2 10.4",
    "light": "O 12 12 4 M 12 3 L 12 5 M 12 19 L 12 21 M 3 12 L 5 12 M 19 12 L 21 12 "
    "M 5.6 5.6 L 7 7 M 17 17 L 18.4 18.4 M 5.6 18.4 L 7 17 M 17 7 L 18.4 5.6",
    "calendar": "M 4 6 L 20 6 L 20 20 L 4 20 Z M 4 10 L 20 10 M 8 3 L 8 7 M 16 3 L 16 7",
    "settle": "M 5 7 L 13 12 L 5 17 M 13 12 L 20 12 O 4 6 1.6 O 4 18 1.6",
}


def icon(name: str, colour: str, size: int = 24, idle: str = "") -> QIcon:
    """An icon of ``size`` logical pixels; in ``idle``'s colour where it can do nothing."""
    made = QIcon(_drawn(name, colour, size))
    if idle:
        made.addPixmap(_drawn(name, idle, size), QIcon.Mode.Disabled)
    return made


def _drawn(name: str, colour: str, size: int) -> QPixmap:
    """At twice the size, for sharp screens."""
    pixmap = QPixmap(size * 2, size * 2)
    pixmap.setDevicePixelRatio(2.0)
    pixmap.fill(Qt.GlobalColor.transparent)
    painter = QPainter(pixmap)
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    painter.scale(size / 24, size / 24)
    painter.setPen(pen(colour, 1.7))
    painter.drawPath(_path(_PATHS[name]))
    painter.end()
    return pixmap


def _path(steps: str) -> QPainterPath:
    path, words = QPainterPath(), steps.split()
    counts = {"M": 2, "L": 2, "Q": 4, "C": 6, "O": 3, "Z": 0}
    i = 0
    while i < len(words):
        step = words[i]
        n = [float(w) for w in words[i + 1 : i + 1 + counts[step]]]
        i += 1 + counts[step]
        if step == "M":
            path.moveTo(n[0], n[1])
        elif step == "L":
            path.lineTo(n[0], n[1])
        elif step == "Q":
            path.quadTo(n[0], n[1], n[2], n[3])
        elif step == "C":
            path.cubicTo(*n)
        elif step == "O":
            path.addEllipse(QPointF(n[0], n[1]), n[2], n[2])
        else:
            path.closeSubpath()
    return path


def app_icon() -> QIcon:
    """A bob at the end of its arc over ruled paper with a margin line."""
    made = QIcon()
    for size in (16, 32, 64, 128, 256):
        pixmap = QPixmap(size, size)
        pixmap.fill(Qt.GlobalColor.transparent)
        painter = QPainter(pixmap)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.scale(size / 64, size / 64)
        _paint_app_icon(painter, fine=size >= 64)
        painter.end()
        made.addPixmap(pixmap)
    return made


def _paint_app_icon(painter: QPainter, fine: bool) -> None:
    sheet = QPainterPath()
    sheet.addRoundedRect(QRectF(6, 3, 52, 58), 5, 5)
    ground = QLinearGradient(0, 3, 0, 61)
    ground.setColorAt(0, QColor("#fffaf0"))
    ground.setColorAt(1, QColor("#efe2c9"))
    painter.fillPath(sheet, ground)
    painter.setPen(pen("#8a7a5e", 1.5))
    painter.drawPath(sheet)
    painter.setClipPath(sheet)
    if fine:
        painter.setPen(pen("#ddcfb2", 1.0))
        for y in range(13, 60, 8):
            painter.drawLine(6, y, 58, y)
    painter.setPen(pen("#cf7f72", 2.0))
    painter.drawLine(47, 3, 47, 61)
    painter.setPen(pen("#1f5a4c", 3.0))
    arc = QPainterPath(QPointF(12, 42))
    arc.quadTo(24, 55, 37, 46)
    painter.setPen(pen("#1f5a4c", 2.2, Qt.PenStyle.DotLine))
    painter.drawPath(arc)
    painter.setPen(pen("#1f5a4c", 3.2))
    painter.drawLine(QPointF(24, 9), QPointF(38, 43))
    painter.setBrush(QColor("#1f5a4c"))
    painter.drawEllipse(QPointF(39, 45), 6.4, 6.4)
    painter.setPen(pen("#1f5a4c", 4.0))
    painter.drawLine(QPointF(14, 9), QPointF(34, 9))
