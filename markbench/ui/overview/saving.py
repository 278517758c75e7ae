"""Saves any figure as a picture: PNG for slides, SVG for print. One way for all of them."""

from __future__ import annotations

from pathlib import Path

from PySide6.QtCore import QRectF, QSize, Qt
from PySide6.QtGui import QColor, QFont, QImage, QPainter
from PySide6.QtSvg import QSvgGenerator
from PySide6.QtWidgets import QFileDialog, QWidget

from markbench.ui.look.tokens import SERIF, TYPE
from markbench.ui.overview.figure import Figure, Look, tr

ENDINGS = (".png", ".svg")
_WIDE, _LEAST_HIGH, _EDGE = 900, 420, 28
_PER_PIXEL = 2.5  # sharp on a projector and in print


def ask_and_save(owner: QWidget, folder: Path, figure: Figure) -> str:
    """Ask for a place near a class's folder and save there; the file's name, or empty.

    Raises ``OSError`` where the file cannot be written.
    """
    out = folder / "markbench-out"
    start = (out if out.is_dir() else folder) / f"{figure.key}.png"
    kinds = tr("Picture for slides (*.png);;Drawing for print (*.svg)")
    chosen, kind = QFileDialog.getSaveFileName(owner, tr("Save picture"), str(start), kinds)
    if not chosen:
        return ""
    path = Path(chosen)
    if path.suffix.casefold() not in ENDINGS:
        path = path.with_name(path.name + (".svg" if "svg" in kind else ".png"))
    save_figure(figure, path)
    return path.name


def save_figure(figure: Figure, path: Path) -> None:
    """Write a figure with its title and caption, on light paper whatever the window's look.

    Raises ``ValueError`` for another ending than PNG or SVG, ``OSError`` where the file
    cannot be written.
    """
    look = Look()
    size = QSize(_WIDE, round(max(figure.height(look), _LEAST_HIGH) + 150))
    ending = path.suffix.casefold()
    if ending == ".png":
        image = QImage(size * _PER_PIXEL, QImage.Format.Format_RGB32)
        image.setDevicePixelRatio(_PER_PIXEL)
        painter = QPainter(image)
        _draw(figure, painter, size, look)
        painter.end()
        if not image.save(str(path)):
            raise OSError(f"{path} could not be written.")
    elif ending == ".svg":
        svg = QSvgGenerator()
        svg.setFileName(str(path))
        svg.setSize(size)
        svg.setViewBox(QRectF(0, 0, size.width(), size.height()))
        svg.setTitle(figure.title)
        svg.setDescription(figure.caption)
        painter = QPainter()
        if not painter.begin(svg):
            raise OSError(f"{path} could not be written.")
        _draw(figure, painter, size, look)
        painter.end()
    else:
        raise ValueError(f"{path.name} ends neither in .png nor in .svg.")


def _draw(figure: Figure, painter: QPainter, size: QSize, look: Look) -> None:
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
    caption_high = 4 * look.line()
    figure.paint(painter, inner.adjusted(0, 44, 0, -caption_high - 10), look)
    painter.setFont(look.font())
    painter.setPen(QColor(look.palette.pencil))
    foot = QRectF(inner.left(), inner.bottom() - caption_high, inner.width(), caption_high)
    painter.drawText(foot, Qt.TextFlag.TextWordWrap, figure.caption)
