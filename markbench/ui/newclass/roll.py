"""Who is in the class and what each handed in, as small drawn signs in ruled columns."""

from __future__ import annotations

from PySide6.QtCore import QRectF, QSize, Qt
from PySide6.QtGui import QColor, QPainter, QPaintEvent, QResizeEvent
from PySide6.QtWidgets import QSizePolicy, QWidget

from markbench.model import ClassWork, PieceKind
from markbench.ui.look.marks import paint_piece
from markbench.ui.look.theme import Theme

_KINDS: tuple[PieceKind, ...] = ("readings", "setup_photo", "selfie", "swing_video")
_LEAST_COLUMN = 310


class Roll(QWidget):
    """One line for each learner; only what is in sight is painted."""

    def __init__(self, theme: Theme) -> None:
        super().__init__()
        self._theme = theme
        self._lines: list[tuple[str, tuple[bool, ...]]] = []
        policy = QSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        policy.setHeightForWidth(True)
        self.setSizePolicy(policy)
        self.setAccessibleName(self.tr("What each learner handed in"))
        theme.changed.connect(self.updateGeometry)

    def show_work(self, work: ClassWork) -> None:
        """Show a class."""
        self._lines = []
        for learner in work.learners:
            one = work.portfolios[learner.id]
            kinds = {piece.kind for piece in one.pieces}
            # A picture not yet told apart stands for the set-up.
            has = [kind in kinds or (kind == "setup_photo" and "photo" in kinds) for kind in _KINDS]
            has[0] = has[0] or one.table is not None
            self._lines.append((learner.name, tuple(has)))
        whole = sum(all(has) for _, has in self._lines)
        self.setAccessibleDescription(
            self.tr("{n} of {of} learners have all four pieces").format(
                n=whole, of=len(self._lines)
            )
        )
        self.updateGeometry()
        self.update()

    def _line(self) -> float:
        return round(self._theme.line_height() + 6)

    def _columns(self, width: int) -> int:
        return max(1, width // self._theme.px(_LEAST_COLUMN))

    def hasHeightForWidth(self) -> bool:
        """It wraps into columns."""
        return True

    def heightForWidth(self, width: int) -> int:
        """Lines in the longest column."""
        columns = self._columns(width)
        return round(-(-len(self._lines) // columns) * self._line()) + 2

    def sizeHint(self) -> QSize:
        """As wide as there is room for."""
        width = max(self.width(), self._theme.px(_LEAST_COLUMN))
        return QSize(width, self.heightForWidth(width))

    def minimumSizeHint(self) -> QSize:
        """One column, as high as it must be at the present width."""
        return QSize(self._theme.px(_LEAST_COLUMN) // 2, self.heightForWidth(max(self.width(), 1)))

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Other columns, another height."""
        super().resizeEvent(event)
        self.updateGeometry()

    def paintEvent(self, event: QPaintEvent) -> None:
        """Paint the lines in sight."""
        if not self._lines:
            return
        painter, colours = QPainter(self), self._theme.palette
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.setFont(self._theme.font())
        high, columns = self._line(), self._columns(self.width())
        rows = -(-len(self._lines) // columns)
        wide = self.width() / columns
        side = self._theme.line_height("small")
        seen = QRectF(event.rect())
        for i, (name, has) in enumerate(self._lines):
            box = QRectF(i // rows * wide, i % rows * high, wide - 24, high)
            if not box.intersects(seen):
                continue
            painter.setPen(QColor(colours.rule))
            painter.drawLine(box.bottomLeft(), box.bottomRight())
            step = side + 8
            room = box.adjusted(0, 0, -step * len(_KINDS) - 8, 0)
            painter.setPen(QColor(colours.ink if any(has) else colours.pencil))
            metrics = painter.fontMetrics()
            shown = metrics.elidedText(name, Qt.TextElideMode.ElideRight, int(room.width()))
            painter.drawText(room, Qt.AlignmentFlag.AlignVCenter, shown)
            for k, (kind, present) in enumerate(zip(_KINDS, has, strict=True)):
                left = box.right() - step * (len(_KINDS) - k)
                sign = QRectF(left, box.center().y() - side * 0.4, side * 0.8, side * 0.8)
                paint_piece(painter, kind, present, sign, colours)
