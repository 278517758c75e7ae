"""Shows one piece of evidence large, over the left of the sheet; the marking stays in view."""

from __future__ import annotations

from PySide6.QtCore import QSize, Qt, Signal
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
from markbench.ui.background import Task, in_background
from markbench.ui.desk import Desk
from markbench.ui.flow import FlowLayout
from markbench.ui.look.dates import day_and_time
from markbench.ui.look.theme import Theme
from markbench.ui.mishaps import plainly
from markbench.ui.parts import ElidedLabel, IconButton, label
from markbench.ui.portfolio.film_view import FilmView
from markbench.ui.portfolio.photo_view import PhotoView
from markbench.ui.portfolio.pictures import load_picture
from markbench.ui.portfolio.status import KIND_KEYS, STATUS_KEYS, STATUSES, status_icon, status_word
from markbench.ui.portfolio.swing_words import swing_words
from markbench.ui.portfolio.thumbnails import FILMS

_LONGEST = 2600


class EvidenceViewer(QFrame):
    """Pictures turn and zoom; films play; each piece can be judged. Escape closes."""

    closed = Signal()
    _told_apart = ("photo", *KIND_KEYS.values())

    def __init__(self, desk: Desk, theme: Theme) -> None:
        super().__init__()
        self.setProperty("kind", "paper")
        self._desk = desk
        self._learner = ""
        self._pieces: list[Piece] = []
        self._true = ""
        self._at = 0
        self._judges = True
        self._task: Task | None = None
        self.photo = PhotoView(theme)
        self.film = FilmView(theme)
        self._stack = QStackedWidget()
        self._stack.addWidget(self.photo)
        self._stack.addWidget(self.film)
        self._caption = ElidedLabel("")
        self._asks = label(self.tr("What does it show?"), "look")
        self.kinds = {
            "setup_photo": self._choice(self.tr("Set-up"), self.tr("Shows the set-up (S)")),
            "selfie": self._choice(self.tr("Selfie"), self.tr("Shows the learner with it (L)")),
        }
        for kind, control in self.kinds.items():
            control.clicked.connect(lambda _on, kind=kind: self.tell_kind(kind))
        keys = {status: chr(Qt.Key(key).value) for key, status in STATUS_KEYS.items()}
        self.judgements = {
            status: self._choice(status_word(status), f"{status_word(status)} ({keys[status]})")
            for status in STATUSES
        }
        for status, control in self.judgements.items():
            control.clicked.connect(lambda on, status=status: self._judge(status, on))
        self._theme = theme
        theme.changed.connect(self._draw_icons)
        self._draw_icons()
        self.count = QLineEdit()
        self.count.setValidator(QIntValidator(0, 200, self.count))
        self.count.setPlaceholderText(self.tr("Swings you count"))
        self.count.setAccessibleName(self.tr("Swings you count in the video"))
        self.count.setToolTip(self.tr("Your own count stands in place of the measured one"))
        self.count.editingFinished.connect(self._keep_count)
        bar = QHBoxLayout()
        bar.addWidget(self._caption, 1)
        below = FlowLayout(spacing=6)
        self._gap = QFrame()
        self._gap.setFixedWidth(10)
        # The judgements first: they stand in one place whatever is shown.
        for part in (*self.judgements.values(), self._gap, self._asks, *self.kinds.values(),
                     self.count):  # fmt: skip
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
        self._refresh()

    def renew(self, pieces: list[Piece]) -> None:
        """The learner's pieces were read again: stay with the one shown, if it is there."""
        if self.piece is None:
            return
        true = [self._desk.true_file(piece.file) for piece in pieces]
        if self._true in true:
            self._pieces, self._at = pieces, true.index(self._true)
            self._refresh()
        else:
            self.shut()

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
        """Escape closes; N and B go on and back; one key judges or tells what is shown."""
        if event.key() == Qt.Key.Key_Escape:
            self.shut()
        elif event.key() == Qt.Key.Key_N:
            self.go(1)
        elif event.key() == Qt.Key.Key_B:
            self.go(-1)
        elif self._judges and (status := STATUS_KEYS.get(Qt.Key(event.key()))) is not None:
            self.judgements[status].click()
        elif (kind := KIND_KEYS.get(Qt.Key(event.key()))) is not None:
            self.tell_kind(kind)
        else:
            super().keyPressEvent(event)

    def tell_kind(self, kind: str) -> None:
        """Say what the picture shows."""
        piece = self._pieces[self._at]
        if self._may_tell(piece):
            self._desk.tell_kind(piece.file, kind)
        self._refresh()

    def _may_tell(self, piece: Piece) -> bool:
        told_apart = piece.kind in self._told_apart and self._desk.may_open(piece.file)
        return told_apart and self._judges

    def _choice(self, words: str, tip: str) -> QPushButton:
        made = QPushButton(words)
        made.setCheckable(True)
        made.setToolTip(tip)
        return made

    def _draw_icons(self) -> None:
        side = round(self._theme.line_height("small"))
        for status, control in self.judgements.items():
            control.setIcon(status_icon(status, self._theme))
            control.setIconSize(QSize(side, side))

    def _show(self) -> None:
        piece = self._pieces[self._at]
        self._true = self._desk.true_file(piece.file)
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
            self.photo.say(self.tr("This picture is hidden while names are."))
            return
        self._task = in_background(
            self,
            lambda _progress, _stop: load_picture(folder, file, _LONGEST),
            done=self.photo.show_image,
            failed=lambda error: self.photo.say(self._desk.hidden(plainly(error))),
        )

    def _refresh(self, _learner: str = "") -> None:
        if self.isHidden() or not self._pieces:
            return
        piece = self._pieces[self._at]
        when = f"  ·  {day_and_time(piece.modified)}" if piece.modified is not None else ""
        self._caption.setText(f"{piece.file}{when}")
        self._tell_measured(piece)
        held = self._desk.session.value("piece_status", self._learner, piece.file)
        for status, control in self.judgements.items():
            control.setChecked(held == status)
        tells = self._may_tell(piece)
        self._asks.setVisible(tells and piece.kind == "photo")
        self._gap.setVisible(tells)
        for kind, control in self.kinds.items():
            control.setVisible(tells)
            control.setChecked(piece.kind == kind)

    def _tell_measured(self, piece: Piece) -> None:
        is_film = piece.kind in FILMS
        self.count.setVisible(is_film and self._judges)
        measured = self._desk.held.film(self._desk.true_file(piece.file)) if is_film else None
        held = self._desk.session.value("swing_count", self._learner, piece.file)
        if measured is not None:
            rows = self._desk.session.analysis(self._learner).rows
            self.film.show_measured(measured, swing_words(measured, rows, held))
        elif is_film:
            self.film.show_measured(None, [self.tr("Not yet measured.")])
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
