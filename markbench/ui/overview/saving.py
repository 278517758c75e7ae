"""Saves any figure as a picture: PNG for slides, SVG for print. One way for all of them."""

from __future__ import annotations

import datetime as dt
from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtCore import QRectF, QSize, Qt
from PySide6.QtGui import QColor, QFont, QImage, QPainter
from PySide6.QtSvg import QSvgGenerator
from PySide6.QtWidgets import QFileDialog, QWidget

from markbench.ui.look.dates import day
from markbench.ui.look.tokens import SERIF, TYPE
from markbench.ui.overview.figure import Figure, Look, tr

if TYPE_CHECKING:
    from markbench.session import Session

ENDINGS = (".png", ".svg")
_WIDE, _LEAST_HIGH, _EDGE = 900, 420, 28
_PER_PIXEL = 2.5  # sharp on a projector and in print


def ask_and_save(owner: QWidget, session: Session, figure: Figure) -> str:
    """Ask for a place near the class's folder and save there; the file's name, or empty.

    Raises ``OSError`` where the file cannot be written.
    """
    out = session.folder / "markbench-out"
    start = (out if out.is_dir() else session.folder) / f"{figure.key}.png"
    kinds = tr("Picture for slides (*.png);;Drawing for print (*.svg)")
    chosen, kind = QFileDialog.getSaveFileName(owner, tr("Save picture"), str(start), kinds)
    if not chosen:
        return ""
    path = Path(chosen)
    if path.suffix.casefold() not in ENDINGS:
        path = path.with_name(path.name + (".svg" if "svg" in kind else ".png"))
    save_figure(figure, path, foot_of(session, dt.date.today()))
    return path.name


def foot_of(session: Session, today: dt.date) -> str:
    """Of which class a picture is, and from which day."""
    parts = (session.brief.title, session.folder.name, day(today))
    return "  ·  ".join(part for part in parts if part)


def save_figure(figure: Figure, path: Path, foot: str = "") -> None:
    """Write a figure with title, caption and ``foot``, on light paper whatever the window's look.

    Raises ``ValueError`` for another ending than PNG or SVG, ``OSError`` where the file
    cannot be written.
    """
    look = Look()
    size = QSize(_WIDE, round(max(figure.height(look), _LEAST_HIGH) + 170))
    ending = path.suffix.casefold()
    if ending == ".png":
        image = QImage(size * _PER_PIXEL, QImage.Format.Format_RGB32)
        image.setDevicePixelRatio(_PER_PIXEL)
        painter = QPainter(image)
        _draw(figure, painter, size, look, foot)
        painter.end()
        if not image.save(str(path)):
            raise OSError(f"{path} could not be written.")
    elif ending == ".svg":
        svg = QSvgGenerator()
        svg.setFileName(str(path))
        svg.setSize(size)
        svg.setViewBox(QRectF(0, 0, size.width(), size.height()))
        svg.setTitle(figure.title)
        svg.setDescription("\n".join((figure.caption, foot)).strip())
        painter = QPainter()
        if not painter.begin(svg):
            raise OSError(f"{path} could not be written.")
        _draw(figure, painter, size, look, foot)
        painter.end()
    else:
        raise ValueError(f"{path.name} ends neither in .png nor in .svg.")


def _draw(figure: Figure, painter: QPainter, size: QSize, look: Look, foot: str) -> None:
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    page = QRectF(0, 0, size.width(), size.height())
    painter.fillRect(page, QColor("#ffffff"))
    inner = page.adjusted(_EDGE, 20, -_EDGE, -16)
    title = QFont()
    title.setFamilies([name.strip(' "') for name in SERIF.split(",")])
    title.setPixelSize(round(TYPE["title"]))
    painter.setFont(title)
    painter.setPen(QColor(look.palette.ink))
    painter.drawText(QRectF(inner.left(), inner.top(), inner.width(), 32), 0, figure.title)
    line = look.line()
    caption = QRectF(inner.left(), inner.bottom() - 5.5 * line, inner.width(), 4 * line)
    figure.paint(painter, inner.adjusted(0, 44, 0, caption.top() - 10 - inner.bottom()), look)
    painter.setFont(look.font())
    painter.setPen(QColor(look.palette.pencil))
    painter.drawText(caption, Qt.TextFlag.TextWordWrap, figure.caption)
    last = QRectF(inner.left(), inner.bottom() - line, inner.width(), line)
    painter.drawText(last, Qt.AlignmentFlag.AlignRight, foot)
