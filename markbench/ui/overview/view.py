"""Shows a figure on its paper: pointing tells, choosing leads to the learners, saving saves."""

from __future__ import annotations

from collections.abc import Callable

from PySide6.QtCore import QEvent, QPointF, QRectF, QSize, Qt, Signal
from PySide6.QtGui import (
    QColor,
    QFocusEvent,
    QHelpEvent,
    QKeyEvent,
    QMouseEvent,
    QPainter,
    QPaintEvent,
    QPixmap,
)
from PySide6.QtWidgets import (
    QFrame,
    QHBoxLayout,
    QScrollArea,
    QSizePolicy,
    QToolTip,
    QVBoxLayout,
    QWidget,
)

from markbench.ui.look.marks import pen
from markbench.ui.look.theme import Theme
from markbench.ui.overview.figure import Figure, Look, Spot
from markbench.ui.parts import button, label, quiet_scroll

_MARGIN = 8  # px kept free above and below a spot that is scrolled into sight


class FigureView(QWidget):
    """Paints a figure once and keeps the picture. Arrows move, Enter chooses.

    ``chosen`` carries the spot; ``pointed`` its words, empty for none. ``reached`` carries the
    box that the keyboard came to, which is to be in sight.
    """

    chosen = Signal(object)
    pointed = Signal(str)
    reached = Signal(QRectF)

    def __init__(self, theme: Theme) -> None:
        super().__init__()
        self._theme = theme
        self.figure: Figure | None = None
        self.spots: list[Spot] = []
        self.current = -1
        self._picture = QPixmap()
        self.setProperty("kind", "inside")  # lies on its paper, in a scroll area or not
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setMouseTracking(True)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Expanding)
        theme.changed.connect(self._restyle)

    def show_figure(self, figure: Figure) -> None:
        """Show another figure."""
        self.figure = figure
        self.current = -1
        self.setAccessibleName(figure.title)
        self.setAccessibleDescription(figure.empty or figure.caption)
        self._restyle()

    def _restyle(self) -> None:
        self._picture = QPixmap()
        if self.figure is not None:
            self.setMinimumHeight(round(self.figure.height(Look.of(self._theme))))
        self.update()

    def sizeHint(self) -> QSize:
        """As wide as there is room for."""
        return QSize(200, self.minimumHeight())

    def paintEvent(self, _event: QPaintEvent) -> None:
        """The picture, and a frame around the current spot."""
        if self.figure is None:
            return
        ratio = self.devicePixelRatioF()
        if self._picture.size() != self.size() * ratio:
            self._picture = QPixmap(self.size() * ratio)
            self._picture.setDevicePixelRatio(ratio)
            self._picture.fill(Qt.GlobalColor.transparent)
            canvas = QPainter(self._picture)
            canvas.setRenderHint(QPainter.RenderHint.Antialiasing)
            box = QRectF(self.rect()).adjusted(3, 3, -3, -3)
            self.spots = self.figure.paint(canvas, box, Look.of(self._theme))
            canvas.end()
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        if 0 <= self.current < len(self.spots):
            spot = self.spots[self.current].box.adjusted(-2, -1, 2, 1)
            painter.setPen(pen(self._theme.palette.deed, 1.5))
            painter.setBrush(QColor(self._theme.palette.deed_soft))
            painter.drawRoundedRect(spot, 3, 3)
        painter.drawPixmap(0, 0, self._picture)
        if self.hasFocus():
            painter.setPen(pen(self._theme.palette.deed, 2.0))
            painter.setBrush(Qt.BrushStyle.NoBrush)
            # In a scroll area the frame is drawn round what is in sight of the figure.
            seen = QRectF(self.visibleRegion().boundingRect())
            painter.drawRoundedRect(seen.adjusted(1, 1, -1, -1), 3, 3)

    def spot_at(self, place: QPointF) -> int:
        """Number of the nearest spot under a place; −1 for none."""
        held = [i for i, spot in enumerate(self.spots) if spot.box.contains(place)]
        return min(
            held, key=lambda i: (self.spots[i].box.center() - place).manhattanLength(), default=-1
        )

    def _point(self, number: int) -> None:
        if number != self.current:
            self.current = number
            words = self.spots[number].words if 0 <= number < len(self.spots) else ""
            self.setAccessibleDescription(words or (self.figure.caption if self.figure else ""))
            self.pointed.emit(words)
            self.update()

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        """Point."""
        number = self.spot_at(event.position())
        self.setCursor(
            Qt.CursorShape.PointingHandCursor if number >= 0 else Qt.CursorShape.ArrowCursor
        )
        self._point(number)

    def leaveEvent(self, event: QEvent) -> None:
        """Point at nothing."""
        if not self.hasFocus():
            self._point(-1)
        super().leaveEvent(event)

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        """Choose."""
        self._point(self.spot_at(event.position()))
        self._choose()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Move among the spots and choose."""
        steps = {Qt.Key.Key_Down: 1, Qt.Key.Key_Right: 1, Qt.Key.Key_Up: -1, Qt.Key.Key_Left: -1}
        if event.key() in steps and self.spots:
            step = steps[Qt.Key(event.key())]
            self._point(min(max(self.current + step, 0), len(self.spots) - 1))
            self.show_current()
        elif event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter, Qt.Key.Key_Space):
            self._choose()
        else:
            super().keyPressEvent(event)

    def show_current(self) -> None:
        """Have the current spot in sight; the first with all above it, where there is none."""
        if self.current < 1 or self.current >= len(self.spots):
            self.reached.emit(QRectF(0, 0, 1, 1))
        else:
            self.reached.emit(self.spots[self.current].box)

    def focusInEvent(self, event: QFocusEvent) -> None:
        """Whoever comes by keyboard, or comes back, sees where they are."""
        super().focusInEvent(event)
        if event.reason() != Qt.FocusReason.MouseFocusReason:
            self.show_current()

    def event(self, event: QEvent) -> bool:
        """Words at the pointer."""
        if isinstance(event, QHelpEvent) and event.type() == QEvent.Type.ToolTip:
            number = self.spot_at(QPointF(event.pos()))
            if number >= 0:
                QToolTip.showText(event.globalPos(), self.spots[number].words, self)
            else:
                QToolTip.hideText()
            return True
        return super().event(event)

    def _choose(self) -> None:
        if 0 <= self.current < len(self.spots):
            self.chosen.emit(self.spots[self.current])


class FigurePaper(QFrame):
    """A figure with heading, caption and the button that saves it.

    ``turn``: words of a button that shows the figure another way; ``turned`` tells.
    """

    turned = Signal(bool)

    def __init__(
        self,
        theme: Theme,
        save: Callable[[Figure], object],
        *,
        scrolls: bool = False,
        turn: str = "",
    ) -> None:
        super().__init__()
        self.setProperty("kind", "paper")
        self.view = FigureView(theme)
        self._title = label(kind="heading")
        self._caption = label(kind="small", wrap=True)
        self._save = save
        self.save = button(self.tr("Save…"), "quiet", self._on_save)
        head = QHBoxLayout()
        head.addWidget(self._title, 1)
        self.turn = button(turn, "quiet")
        self.turn.setCheckable(True)
        self.turn.toggled.connect(lambda on: self.turn.setText(f"✓ {turn}" if on else turn))
        self.turn.toggled.connect(self.turned)
        if not turn:
            self.turn.hide()
        head.addWidget(self.turn)
        head.addWidget(self.save)
        column = QVBoxLayout(self)
        column.setContentsMargins(12, 4, 8, 8)
        column.setSpacing(2)
        column.addLayout(head)
        column.addWidget(self._scrolled() if scrolls else self.view, 1)
        column.addWidget(self._caption)

    def _scrolled(self) -> QScrollArea:
        scroll = quiet_scroll(self.view)
        scroll.verticalScrollBar().valueChanged.connect(lambda _at: self.view.update())

        def bring(box: QRectF) -> None:
            for y in (box.top(), box.bottom()):
                scroll.ensureVisible(0, round(y), 0, _MARGIN)

        self.view.reached.connect(bring)
        return scroll

    def show_figure(self, figure: Figure) -> None:
        """Show another figure."""
        self._title.setText(figure.title)
        self._caption.setText("" if figure.empty else figure.caption)
        self._caption.setVisible(not figure.empty)
        self.save.setEnabled(not figure.empty)
        self.save.setVisible(not figure.empty)
        self.save.setAccessibleName(self.tr("Save picture: {t}").format(t=figure.title))
        self.view.show_figure(figure)

    def _on_save(self) -> None:
        if self.view.figure is not None:
            self._save(self.view.figure)
