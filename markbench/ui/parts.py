"""Small widgets used all over: a labelled heading, a paper frame, a glyph, a button."""

from __future__ import annotations

from collections.abc import Callable

from PySide6.QtCore import QEvent, QRectF, QSize, Qt, Signal
from PySide6.QtGui import QHelpEvent, QKeyEvent, QMouseEvent, QPainter, QPaintEvent
from PySide6.QtWidgets import (
    QAbstractButton,
    QFrame,
    QHBoxLayout,
    QLabel,
    QPushButton,
    QScrollArea,
    QSizePolicy,
    QToolButton,
    QToolTip,
    QWidget,
)

from markbench.model import PieceKind
from markbench.ui.look.icons import icon
from markbench.ui.look.marks import paint_piece
from markbench.ui.look.theme import Theme
from markbench.ui.look.words import unbroken

Painter = Callable[[QPainter, QRectF, Theme], None]


class Words(QLabel):
    """A label that never parts a number from its unit; what it says is as it was given."""

    def __init__(self, text: str = "") -> None:
        super().__init__()
        self._said = ""
        self.setText(text)

    def setText(self, text: str) -> None:
        """Show ``text``."""
        self._said = text
        super().setText(unbroken(text))

    def text(self) -> str:
        """What was given."""
        return self._said

    def clear(self) -> None:
        """Show nothing."""
        self.setText("")


def label(text: str = "", kind: str = "", *, wrap: bool = False) -> QLabel:
    """A label of one of the sheet's kinds (``quiet``, ``small``, ``heading``, ``title``…)."""
    made = Words(text)
    made.setTextFormat(Qt.TextFormat.PlainText)
    if kind:
        made.setProperty("kind", kind)
    made.setWordWrap(wrap)
    return made


class ElidedLabel(QLabel):
    """One line that ends in … where there is no room, and never asks for more."""

    def __init__(self, kind: str = "", most: bool = True) -> None:
        super().__init__()
        self.setProperty("kind", kind)
        self.setTextFormat(Qt.TextFormat.PlainText)
        across = QSizePolicy.Policy.Ignored if most else QSizePolicy.Policy.Maximum
        self.setSizePolicy(across, QSizePolicy.Policy.Fixed)

    def minimumSizeHint(self) -> QSize:
        """A few letters."""
        return QSize(self.fontMetrics().horizontalAdvance("MMM…"), super().sizeHint().height())

    def event(self, event: QEvent) -> bool:
        """All of it stands in the tool tip, where it is cut and has no other."""
        if (
            event.type() == QEvent.Type.ToolTip
            and not self.toolTip()
            and isinstance(event, QHelpEvent)
            and self.fontMetrics().horizontalAdvance(self.text()) > self.width()
        ):
            QToolTip.showText(event.globalPos(), self.text(), self)
            return True
        return super().event(event)

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Paint what fits."""
        painter = QPainter(self)
        metrics = self.fontMetrics()
        words = self.text().replace("\n", " ")
        shown = metrics.elidedText(words, Qt.TextElideMode.ElideRight, self.width())
        painter.setPen(self.palette().color(self.foregroundRole()))
        painter.drawText(self.rect(), self.alignment() | Qt.AlignmentFlag.AlignVCenter, shown)


class LinkLabel(Words):
    """Words that wrap and lead somewhere, by mouse or keyboard, while ``leads`` holds."""

    clicked = Signal()

    def __init__(self) -> None:
        super().__init__()
        self.setTextFormat(Qt.TextFormat.PlainText)
        self.setWordWrap(True)

    def show_link(self, words: str, leads: bool) -> None:
        """Show other words."""
        self.setText(words)
        self.setAccessibleName(words)
        self.setEnabled(leads)
        policy = Qt.FocusPolicy.StrongFocus if leads else Qt.FocusPolicy.NoFocus
        self.setFocusPolicy(policy)
        self.setCursor(Qt.CursorShape.PointingHandCursor if leads else Qt.CursorShape.ArrowCursor)
        restyle(self, "kind", "link" if leads else "reason")

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        """Follow."""
        if event.button() == Qt.MouseButton.LeftButton and self.isEnabled():
            self.clicked.emit()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Follow with Enter or Space."""
        if event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter, Qt.Key.Key_Space):
            self.clicked.emit()
        else:
            super().keyPressEvent(event)


def frame(kind: str) -> QFrame:
    """A frame of one of the sheet's kinds (``paper``, ``margin``, ``rule``…)."""
    made = QFrame()
    made.setProperty("kind", kind)
    return made


def button(
    text: str, kind: str = "", clicked: Callable[[], object] | None = None, *, tip: str = ""
) -> QPushButton:
    """A push button."""
    made = QPushButton(text)
    made.setAutoDefault(True)  # Enter presses it, as Space does
    if kind:
        made.setProperty("kind", kind)
    if tip:
        made.setToolTip(tip)
    if clicked is not None:
        made.clicked.connect(lambda _checked=False: clicked())
    return made


class IconButton(QToolButton):
    """A plain button with one of our icons, recoloured with the theme; always with words."""

    def __init__(
        self, theme: Theme, name: str, words: str, clicked: Callable[[], object] | None = None
    ) -> None:
        super().__init__()
        self._theme, self._name = theme, name
        self.setProperty("kind", "plain")
        self.setToolTip(words)
        self.setAccessibleName(words)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        if clicked is not None:
            self.clicked.connect(lambda _checked=False: clicked())
        theme.changed.connect(self._draw)
        self._draw()

    def show_icon(self, name: str, words: str) -> None:
        """Change what the button stands for."""
        self._name = name
        self.setToolTip(words)
        self.setAccessibleName(words)
        self._draw()

    def _draw(self) -> None:
        size = self._theme.px(18)
        colours = self._theme.palette
        self.setIcon(icon(self._name, colours.ink, size, idle=colours.idle))
        self.setIconSize(QSize(size, size))


class Glyph(QWidget):
    """One painted mark in a layout, as high as a line of small text."""

    def __init__(self, theme: Theme, paint: Painter) -> None:
        super().__init__()
        self._theme, self._paint = theme, paint
        self.setSizePolicy(QSizePolicy.Policy.Fixed, QSizePolicy.Policy.Fixed)
        theme.changed.connect(self._restyle)
        self._restyle()

    def _restyle(self) -> None:
        side = round(self._theme.line_height("small"))
        self.setFixedSize(side, side)
        self.update()

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Paint the mark in the middle."""
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        inset = self.width() * 0.16
        self._paint(painter, QRectF(self.rect()).adjusted(inset, inset, -inset, -inset),
                    self._theme)  # fmt: skip


def quiet_scroll(inside: QWidget) -> QScrollArea:
    """A frameless scroll area, up and down only, that is no stop for the keyboard."""
    scroll = QScrollArea()
    scroll.setWidget(inside)
    scroll.setWidgetResizable(True)
    scroll.setFrameShape(QFrame.Shape.NoFrame)
    scroll.setFocusPolicy(Qt.FocusPolicy.NoFocus)
    scroll.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
    return scroll


def restyle(widget: QWidget, name: str, value: object) -> None:
    """Set a property the style sheet looks at, and have it looked at."""
    if widget.property(name) != value:
        widget.setProperty(name, value)
        widget.style().unpolish(widget)
        widget.style().polish(widget)


def press(control: QAbstractButton) -> None:
    """Press a control as a hand would, if it may be pressed."""
    if control.isEnabled() and control.isVisible():
        control.click()


def first_stop(page: QWidget) -> QWidget | None:
    """Where Tab goes first on a page in sight."""
    here = page.nextInFocusChain()
    while here is not None and here is not page:
        stops = here.focusPolicy() & Qt.FocusPolicy.TabFocus and here.isEnabled()
        if stops and page.isAncestorOf(here) and here.isVisible():
            return here
        here = here.nextInFocusChain()
    return None


def key_to(theme: Theme, paint: Painter, words: str) -> QWidget:
    """One entry of a legend: a mark and what it means."""
    part = QWidget()
    row = QHBoxLayout(part)
    row.setContentsMargins(0, 0, 0, 0)
    row.setSpacing(5)
    row.addWidget(Glyph(theme, paint))
    row.addWidget(label(words, "small"))
    return part


def piece_painter(kind: PieceKind, present: bool, *, untold: bool = False) -> Painter:
    """Paints a piece of evidence for a :class:`Glyph`."""

    def paint(painter: QPainter, box: QRectF, theme: Theme) -> None:
        paint_piece(painter, kind, present, box, theme.palette, untold=untold)

    return paint
