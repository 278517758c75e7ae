"""A picture that turns, comes closer and is dragged about."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtGui import QColor, QImage, QKeyEvent, QPainter, QPixmap, QResizeEvent, QWheelEvent
from PySide6.QtWidgets import QFrame, QGraphicsScene, QGraphicsView, QVBoxLayout

from markbench.ui.look.theme import Theme
from markbench.ui.parts import label

_STEP, _CLOSEST = 1.25, 12.0


class PhotoView(QGraphicsView):
    """Shows one picture; fits it until somebody zooms."""

    def __init__(self, theme: Theme) -> None:
        super().__init__()
        self._theme = theme
        self._stage = QGraphicsScene(self)
        self._picture = self._stage.addPixmap(QPixmap())
        self._picture.setTransformationMode(Qt.TransformationMode.SmoothTransformation)
        self.setScene(self._stage)
        self.setRenderHint(QPainter.RenderHint.SmoothPixmapTransform)
        self.setDragMode(QGraphicsView.DragMode.ScrollHandDrag)
        self.setFrameShape(QFrame.Shape.NoFrame)
        self.setTransformationAnchor(QGraphicsView.ViewportAnchor.AnchorUnderMouse)
        self.setAccessibleName(self.tr("Picture"))
        self._zoom, self._turn = 1.0, 0
        self._words = label(kind="look", wrap=True)
        self._words.setAlignment(Qt.AlignmentFlag.AlignCenter)
        self._words.hide()
        row = QVBoxLayout(self)
        row.addWidget(self._words)
        self._restyle()
        theme.changed.connect(self._restyle)

    def _restyle(self) -> None:
        self._stage.setBackgroundBrush(QColor(self._theme.palette.shade))

    def show_image(self, image: QImage, *, keep: bool = False) -> None:
        """Show a picture; ``keep`` leaves zoom and turn as they are (the next frame)."""
        self.say("")
        same = self._picture.pixmap().size() == image.size()
        self._picture.setPixmap(QPixmap.fromImage(image))
        self._stage.setSceneRect(self._picture.boundingRect())
        if not (keep and same):
            self._zoom, self._turn = 1.0, 0 if not keep else self._turn
            self._apply()

    def say(self, words: str) -> None:
        """Words in the place of a picture: why there is none."""
        self._words.setText(words)
        self._words.setVisible(bool(words))

    def rotate_right(self) -> None:
        """A quarter turn."""
        self._turn = (self._turn + 90) % 360
        self._apply()

    def closer(self) -> None:
        """Zoom in."""
        self._zoom = min(self._zoom * _STEP, _CLOSEST)
        self._apply()

    def further(self) -> None:
        """Zoom out, to the whole picture at most."""
        self._zoom = max(self._zoom / _STEP, 1.0)
        self._apply()

    @property
    def turn(self) -> int:
        """Degrees turned to the right."""
        return self._turn

    @property
    def zoom(self) -> float:
        """1 where the whole picture is seen."""
        return self._zoom

    def wheelEvent(self, event: QWheelEvent) -> None:
        """The wheel zooms."""
        if event.angleDelta().y() > 0:
            self.closer()
        else:
            self.further()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Plus, minus and R, beside the arrows that move."""
        if event.key() in (Qt.Key.Key_Plus, Qt.Key.Key_Equal):
            self.closer()
        elif event.key() == Qt.Key.Key_Minus:
            self.further()
        elif event.key() == Qt.Key.Key_R:
            self.rotate_right()
        else:
            super().keyPressEvent(event)

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Fit again."""
        super().resizeEvent(event)
        self._apply()

    def _apply(self) -> None:
        box = self._picture.boundingRect()
        if box.isEmpty():
            return
        turned = box.size() if self._turn % 180 == 0 else box.size().transposed()
        room = self.viewport().size()
        fit = min(room.width() / turned.width(), room.height() / turned.height())
        self.resetTransform()
        self.rotate(self._turn)
        self.scale(fit * self._zoom, fit * self._zoom)
