"""Before a class is open: what to do, how far the opening is, or why it failed."""

from __future__ import annotations

from pathlib import Path

from PySide6.QtCore import QPointF, QRectF, Qt, Signal
from PySide6.QtGui import QColor, QPainter, QPaintEvent
from PySide6.QtWidgets import QHBoxLayout, QProgressBar, QStackedWidget, QVBoxLayout, QWidget

from markbench.ui.flow import FlowLayout
from markbench.ui.look.marks import pen
from markbench.ui.look.theme import Theme
from markbench.ui.parts import button, frame, label, restyle


class _Drawing(QWidget):
    """A sheet of graph paper with a pendulum's line on it and a margin."""

    def __init__(self, theme: Theme) -> None:
        super().__init__()
        self._theme = theme
        self.setFixedSize(230, 190)
        theme.changed.connect(self.update)

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Draw it."""
        colours, painter = self._theme.palette, QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        box = QRectF(1, 1, 228, 188)
        painter.setPen(pen(colours.rule, 1))
        painter.setBrush(QColor(colours.paper))
        painter.drawRoundedRect(box, 3, 3)
        painter.setPen(pen(colours.graph, 1))
        for i in range(1, 12):
            painter.drawLine(QPointF(1 + 19 * i, 2), QPointF(1 + 19 * i, 188))
            if i < 10:
                painter.drawLine(QPointF(2, 1 + 19 * i), QPointF(228, 1 + 19 * i))
        painter.setPen(pen(colours.margin, 1.6))
        painter.drawLine(QPointF(191, 2), QPointF(191, 188))
        painter.setPen(pen(colours.data, 2))
        painter.drawLine(QPointF(20, 169), QPointF(172, 30))
        painter.setPen(pen(colours.paper, 1))
        painter.setBrush(QColor(colours.data))
        for x, lift in ((58, 3), (83, -4), (108, 2), (133, 3), (158, -3)):
            painter.drawEllipse(QPointF(x, 169 - (x - 20) * 139 / 152 + lift), 5, 5)
        painter.setPen(pen(colours.deed, 2.4))
        painter.drawPolyline([QPointF(200, 98), QPointF(206, 105), QPointF(219, 86)])


class StartPage(QWidget):
    """``folder_wanted`` asks for a class to be opened, ``new_wanted`` for one to be begun,
    ``pack_wanted`` for a moderation pack; ``chosen`` names a folder, ``rebuild_wanted`` one
    whose damaged file is to be made anew."""

    folder_wanted = Signal()
    new_wanted = Signal()
    pack_wanted = Signal()
    chosen = Signal(object)
    rebuild_wanted = Signal(object)
    stopped = Signal()

    def __init__(self, theme: Theme) -> None:
        super().__init__()
        self._theme = theme
        self._last: Path | None = None
        self._title = label(self.tr("Choose a class"), "title")
        self._words = label(
            self.tr(
                "Choose the folder that holds what the class handed in: a folder for each "
                "learner, single files, zip files, or one sheet for all. A class list and a "
                "brief may lie in it too; without them, each sub-folder is a learner.\n\n"
                "Nothing in the folder is changed. Marks and notes are kept in a file of "
                "their own, class.markbench, beside the work."
            ),
            "quiet",
            wrap=True,
        )
        self._trouble = label(kind="look", wrap=True)
        self._trouble.setTextInteractionFlags(Qt.TextInteractionFlag.TextSelectableByMouse)
        self.choose = button(self.tr("Choose a folder…"), "deed", self.folder_wanted.emit)
        self.again = button("", "", self._again)
        words = self.tr("Rebuild it from its copies")
        self.rebuild = button(words, "deed", lambda: self.rebuild_wanted.emit(self._last))
        self.new = button(self.tr("Begin a new class…"), "", self.new_wanted.emit)
        self.pack = button(self.tr("Open a moderation pack…"), "", self.pack_wanted.emit)
        self.bar = QProgressBar()
        self.bar.setTextVisible(False)
        self.bar.setAccessibleName(self.tr("Progress"))
        self._step = label(kind="quiet", wrap=True)
        self.stop = button(self.tr("Stop"), "", self.stopped.emit)
        self._deeds = QStackedWidget()
        self._deeds.addWidget(self._choosing())
        self._deeds.addWidget(self._waiting())
        self._lay_out()
        theme.changed.connect(self._restyle)
        self._restyle()
        self.show_empty(None)

    def _choosing(self) -> QWidget:
        part = QWidget()
        row = FlowLayout(part)
        for control in (self.rebuild, self.choose, self.new, self.again, self.pack):
            row.addWidget(control)
        return part

    def _waiting(self) -> QWidget:
        part = QWidget()
        column = QVBoxLayout(part)
        column.setContentsMargins(0, 0, 0, 0)
        column.addWidget(self.bar)
        row = QHBoxLayout()
        row.addWidget(self._step, 1)
        row.addWidget(self.stop)
        column.addLayout(row)
        return part

    def _lay_out(self) -> None:
        words = QVBoxLayout()
        words.setSpacing(12)
        for part in (self._title, self._words, self._trouble, self._deeds):
            words.addWidget(part)
        words.addStretch(1)
        self._card = frame("paper")
        row = QHBoxLayout(self._card)
        row.setContentsMargins(32, 32, 32, 28)
        row.setSpacing(32)
        row.addWidget(_Drawing(self._theme), 0, Qt.AlignmentFlag.AlignTop)
        row.addLayout(words, 1)
        across = QHBoxLayout()
        across.addStretch(1)
        across.addWidget(self._card, 8)
        across.addStretch(1)
        down = QVBoxLayout(self)
        down.setContentsMargins(16, 16, 16, 16)
        down.addStretch(2)
        down.addLayout(across)
        down.addStretch(3)

    def show_empty(self, last: Path | None) -> None:
        """Nothing is open; ``last`` may be opened again."""
        self._last = last
        self._title.setText(self.tr("Choose a class"))
        self._trouble.hide()
        self._words.show()
        self._deeds.setCurrentIndex(0)
        self.rebuild.hide()
        restyle(self.choose, "kind", "deed")
        self.again.setVisible(last is not None)
        self.again.setText(self.tr("Open {name} again").format(name=last.name) if last else "")
        self.choose.setText(self.tr("Choose a folder…"))

    def show_opening(self, folder: Path) -> None:
        """A folder is being read."""
        self._title.setText(self.tr("Reading {name}").format(name=folder.name))
        self._trouble.hide()
        self._words.hide()
        self._deeds.setCurrentIndex(1)
        self.show_progress(0, 0, self.tr("Looking through the folder"))

    def show_progress(self, at: int, of: int, text: str) -> None:
        """How far the reading is."""
        self.bar.setRange(0, of)
        self.bar.setValue(at)
        self._step.setText(text)

    def show_trouble(
        self, folder: Path, words: str, *, can_rebuild: bool = False, is_pack: bool = False
    ) -> None:
        """A class or a pack could not be opened; perhaps its file can be made anew from copies."""
        self.show_empty(folder)
        self.rebuild.setVisible(can_rebuild)
        restyle(self.choose, "kind", "" if can_rebuild else "deed")
        self._title.setText(
            self.tr("This moderation pack could not be opened")
            if is_pack
            else self.tr("This class could not be opened")
        )
        self._words.hide()
        self._trouble.setText(words if str(folder) in words else f"{words}\n\n{folder}")
        self._trouble.show()
        self.again.setText(self.tr("Try again"))
        self.choose.setText(self.tr("Choose another folder…"))
        (self.rebuild if can_rebuild else self.again).setFocus()  # what helps first

    def trouble(self) -> str:
        """Why a folder could not be opened, if it could not."""
        return self._trouble.text() if self._trouble.isVisible() else ""

    def _again(self) -> None:
        if self._last is not None:
            self.chosen.emit(self._last)

    def _restyle(self) -> None:
        self._card.setMaximumWidth(self._theme.px(940))
