"""A look into one file: the first rows of a table, a small picture of a photo or a film."""

from __future__ import annotations

import functools
from pathlib import Path

from PySide6.QtCore import QCoreApplication, QThreadPool
from PySide6.QtGui import QImage, QPixmap
from PySide6.QtWidgets import QGridLayout, QVBoxLayout, QWidget

from markbench.model import Piece
from markbench.ui.background import in_background
from markbench.ui.flow import FlowLayout
from markbench.ui.parts import button, label

Rows = tuple[tuple[str, ...], ...]
_ROWS, _COLUMNS, _LETTERS = 7, 5, 16
_MOST_BYTES = 30_000_000


@functools.cache
def _pool() -> QThreadPool:
    """One look at a time, and no other work waits for a large film."""
    pool = QThreadPool(QCoreApplication.instance())
    pool.setMaxThreadCount(1)
    return pool


class Peep(QWidget):
    """A button, after those it stands ``beside``, and under it what the file shows once pressed."""

    def __init__(self, folder: Path, piece: Piece, *beside: QWidget) -> None:
        super().__init__()
        self._folder, self._piece = folder, piece
        self.open = button(self.tr("Look inside"), "", self._look)
        self.open.setAccessibleName(f"{self.open.text()}: {piece.file}")
        self.open.setAccessibleDescription(piece.file)
        self.told = label(kind="small", wrap=True)
        self.picture = label()
        self.cells = QWidget()
        self._grid = QGridLayout(self.cells)
        self._grid.setContentsMargins(0, 0, 0, 0)
        self._grid.setHorizontalSpacing(10)
        self._grid.setVerticalSpacing(2)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(4)
        row = FlowLayout(spacing=8)
        for control in (*beside, self.open):
            row.addWidget(control)
        column.addLayout(row)
        for part in (self.told, self.picture, self.cells):
            part.hide()
            column.addWidget(part)

    def _look(self) -> None:
        self.open.setEnabled(False)
        folder, piece = self._folder, self._piece
        in_background(
            self,
            lambda _progress, _stop: look_inside(folder, piece),
            done=self._show,
            failed=lambda _error: self._tell(self.tr("It cannot be shown here.")),
            pool=_pool(),
        )

    def _show(self, found: QImage | Rows) -> None:
        if isinstance(found, QImage):
            self.picture.setPixmap(QPixmap.fromImage(found))
            self.picture.setAccessibleName(self._piece.file)
            self.picture.show()
        elif found:
            for r, row in enumerate(found):
                for c, text in enumerate(row):
                    self._grid.addWidget(label(text, "small"), r, c)
            self._grid.setColumnStretch(_COLUMNS, 1)
            self.cells.show()
        else:
            self._tell(self.tr("It is empty."))
        self.open.hide()

    def _tell(self, words: str) -> None:
        self.told.setText(words)
        self.told.show()
        self.open.hide()


def look_inside(folder: Path, piece: Piece) -> QImage | Rows:
    """What a file shows at a glance. May run on any thread; raises where it shows nothing."""
    from markbench.ui.portfolio.thumbnails import can_show, make_thumbnail

    if can_show(piece):
        return make_thumbnail(folder, piece.file, piece)
    from markbench.intake.folder import open_piece
    from markbench.intake.kinds import TABLES, ending
    from markbench.intake.tables.grid import text_of
    from markbench.intake.tables.reader import read_grids

    if piece.kind != "readings" and ending(piece.file) not in TABLES:
        raise ValueError("neither a table nor a picture")
    data = open_piece(folder, piece.file, _MOST_BYTES)
    filled = [
        tuple(_short(text_of(cell)) for cell in row[:_COLUMNS])
        for grid in read_grids(piece.file, data)
        for row in grid.rows
        if any(text_of(cell).strip() for cell in row)
    ]
    return tuple(filled[:_ROWS])


def _short(text: str) -> str:
    text = " ".join(text.split())
    return text if len(text) <= _LETTERS else text[: _LETTERS - 1] + "…"
