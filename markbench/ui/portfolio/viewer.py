"""Shows one piece of evidence large, over the left of the sheet; the marking stays in view."""

from __future__ import annotations

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QImage, QIntValidator, QKeyEvent
from PySide6.QtWidgets import (
    QFrame,
    QHBoxLayout,
    QLineEdit,
    QPushButton,
    QStackedWidget,
    QVBoxLayout,
)

from markbench.model import Decision, Piece
from markbench.physics.reporting import with_uncertainty
from markbench.ui.background import Task, in_background
from markbench.ui.desk import Desk
from markbench.ui.flow import FlowLayout
from markbench.ui.look.theme import Theme
from markbench.ui.parts import ElidedLabel, IconButton, label
from markbench.ui.portfolio.evidence import FILMS
from markbench.ui.portfolio.film_view import FilmView
from markbench.ui.portfolio.photo_view import PhotoView
from markbench.ui.portfolio.pictures import load_picture

_LONGEST = 2600


class EvidenceViewer(QFrame):
    """Pictures turn and zoom; films play; each piece can be judged. Escape closes."""

    closed = Signal()

    def __init__(self, desk: Desk, theme: Theme) -> None:
        super().__init__()
        self.setProperty("kind", "paper")
        self._desk = desk
        self._learner = ""
        self._pieces: list[Piece] = []
        self._at = 0
        self._judges = True
        self._task: Task | None = None
        self.photo = PhotoView(theme)
        self.film = FilmView(theme)
        self._stack = QStackedWidget()
        self._stack.addWidget(self.photo)
        self._stack.addWidget(self.film)
        self._caption = ElidedLabel("")
        self.judgements = {
            "accepted": self._judgement(self.tr("Good")),
            "unreadable": self._judgement(self.tr("Unreadable")),
            "again": self._judgement(self.tr("Ask again")),
        }
        for status, control in self.judgements.items():
            control.clicked.connect(lambda on, status=status: self._judge(status, on))
        self._measured = label(kind="small")
        self.count = QLineEdit()
        self.count.setValidator(QIntValidator(0, 200, self.count))
        self.count.setPlaceholderText(self.tr("Swings you count"))
        self.count.setAccessibleName(self.tr("Swings you count in the film"))
        self.count.setToolTip(self.tr("Your own count stands in place of the measured one"))
        self.count.editingFinished.connect(self._keep_count)
        bar = QHBoxLayout()
        bar.addWidget(self._caption, 1)
        below = FlowLayout(spacing=6)
        for part in (*self.judgements.values(), self.count, self._measured):
            below.addWidget(part)
        turn = IconButton(theme, "turn", self.tr("Turn (R)"), self._view_turn)
        closer = IconButton(theme, "closer", self.tr("Closer (+)"), self._view_closer)
        further = IconButton(theme, "further", self.tr("Further (−)"), self._view_further)
        before = IconButton(theme, "back", self.tr("Piece before (B)"), lambda: self.go(-1))
        after = IconButton(theme, "next", self.tr("Next piece (N)"), lambda: self.go(1))
        shut = IconButton(theme, "cross", self.tr("Close (Esc)"), self.shut)
        for tool in (turn, closer, further, before, after, shut):
            bar.addWidget(tool)
        column = QVBoxLayout(self)
        column.setContentsMargins(12, 8, 12, 12)
        column.addLayout(bar)
        column.addLayout(below)
        column.addWidget(self._stack, 1)
        desk.changed.connect(self._refresh)

    def open_piece(self, learner: str, pieces: list[Piece], piece: Piece) -> None:
        """Show ``piece``, one of the learner's ``pieces``."""
        self._learner, self._pieces = learner, pieces
        self._at = pieces.index(piece)
        self.show()
        self.raise_()
        self._show()

    def look_only(self) -> None:
        """Offer nothing to judge or count: who looks may not decide here."""
        self._judges = False
        for control in self.judgements.values():
            control.hide()

    def go(self, by: int) -> None:
        """The next piece of this learner, round and round."""
        self._at = (self._at + by) % len(self._pieces)
        self._show()

    def shut(self) -> None:
        """Close."""
        self.film.leave()
        self.hide()
        self.closed.emit()

    @property
    def piece(self) -> Piece | None:
        """What is shown."""
        return self._pieces[self._at] if self._pieces and not self.isHidden() else None

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Escape closes; N and B go on and back."""
        if event.key() == Qt.Key.Key_Escape:
            self.shut()
        elif event.key() == Qt.Key.Key_N:
            self.go(1)
        elif event.key() == Qt.Key.Key_B:
            self.go(-1)
        else:
            super().keyPressEvent(event)

    def _judgement(self, words: str) -> QPushButton:
        made = QPushButton(words)
        made.setCheckable(True)
        return made

    def _show(self) -> None:
        piece = self._pieces[self._at]
        self._refresh()
        if self._task is not None:
            self._task.stop()
        self.film.leave()
        folder, file = self._desk.session.folder, self._desk.true_file(piece.file)
        if piece.kind in FILMS:
            self._stack.setCurrentWidget(self.film)
            self.film.open_film(folder, file)
            self.film.setFocus()
            return
        self._stack.setCurrentWidget(self.photo)
        self.photo.show_image(QImage())
        self.photo.setFocus()
        if not self._desk.may_open(piece.file):
            self._caption.setText(self.tr("This picture is hidden while names are."))
            return
        self._task = in_background(
            self,
            lambda _progress, _stop: load_picture(folder, file, _LONGEST),
            done=self.photo.show_image,
            failed=lambda error: self._caption.setText(self._desk.hidden(f"{piece.file}: {error}")),
        )

    def _refresh(self, _learner: str = "") -> None:
        if self.isHidden() or not self._pieces:
            return
        piece = self._pieces[self._at]
        when = f"  ·  {piece.modified:%d.%m.%Y %H:%M}" if piece.modified is not None else ""
        self._caption.setText(f"{piece.file}{when}")
        self._tell_measured(piece)
        held = self._desk.session.value("piece_status", self._learner, piece.file)
        for status, control in self.judgements.items():
            control.setChecked(held == status)

    def _tell_measured(self, piece: Piece) -> None:
        is_film = piece.kind in FILMS
        self.count.setVisible(is_film and self._judges)
        measured = self._desk.held.film(self._desk.true_file(piece.file)) if is_film else None
        self._measured.setVisible(measured is not None)
        self.film.show_swings(measured.swing_marks_s if measured is not None else ())
        if measured is not None and measured.accepted:
            value = with_uncertainty(measured.period_s, measured.u_period_s, "s")
            words = self.tr("seen in the film: {n} complete swings, T = {value}")
            self._measured.setText(words.format(n=measured.complete_swings, value=value))
        elif measured is not None:
            self._measured.setText(self.tr("not measured: {why}").format(why=measured.message))
        held = self._desk.session.value("swing_count", self._learner, piece.file)
        self.count.setText("" if held is None else str(held))

    def _keep_count(self) -> None:
        learner, file, swings = self._learner, self._pieces[self._at].file, self.count.text()
        decision = Decision("swing_count", learner, file, int(swings) if swings else None)
        self._desk.do(lambda session: session.decide(decision))

    def _judge(self, status: str, on: bool) -> None:
        learner, file = self._learner, self._pieces[self._at].file
        self._desk.do(
            lambda session: session.set_piece_status(learner, file, status if on else None)
        )

    def _view(self) -> PhotoView:
        film = self._stack.currentWidget() is self.film
        return self.film.picture if film else self.photo

    def _view_turn(self) -> None:
        self._view().rotate_right()

    def _view_closer(self) -> None:
        self._view().closer()

    def _view_further(self) -> None:
        self._view().further()
