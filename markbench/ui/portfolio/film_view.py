"""Plays a swing video: play, pause, frame by frame, slower, and a time from a chosen frame."""

from __future__ import annotations

import time
from bisect import bisect_left
from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtCore import Qt, QThreadPool, QTimer
from PySide6.QtGui import QImage, QKeyEvent
from PySide6.QtWidgets import QHBoxLayout, QPushButton, QSlider, QVBoxLayout, QWidget

from markbench.ui.background import in_background
from markbench.ui.look.said import figures
from markbench.ui.look.theme import Theme
from markbench.ui.mishaps import plainly
from markbench.ui.parts import IconButton, button, label
from markbench.ui.portfolio.film import Film
from markbench.ui.portfolio.photo_view import PhotoView
from markbench.ui.portfolio.swing_trace import SwingTrace

if TYPE_CHECKING:
    from markbench.evidence.video.judge import SwingMeasurement

_SPEEDS = (1.0, 0.5, 0.25, 0.125)


class FilmView(QWidget):
    """The film's own worker hands over one frame at a time."""

    def __init__(self, theme: Theme) -> None:
        super().__init__()
        self.setAccessibleName(self.tr("Swing video"))
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setProperty("kind", "stop")
        self.setAttribute(Qt.WidgetAttribute.WA_StyledBackground)
        self._pool = QThreadPool(self)
        self._pool.setMaxThreadCount(1)
        self._film: Film | None = None
        self._marks_s: tuple[float, ...] = ()
        self._at, self._zero = 0, 0
        self._asked: int | None = None
        self._fetching = False
        self._playing = False
        self._due = 0.0
        self._speed = 1.0
        self.picture = PhotoView(theme)
        self.trace = SwingTrace(theme)
        self.trace.wanted.connect(self.go_to)
        self.told = label(wrap=True)
        self.words = label()
        self.slider = QSlider(Qt.Orientation.Horizontal)
        self.slider.setAccessibleName(self.tr("Place in the video"))
        self.slider.valueChanged.connect(self._slid)
        self.play = IconButton(theme, "play", self.tr("Play (Space)"), self.toggle)
        back = IconButton(theme, "step_back", self.tr("One frame back (,)"), lambda: self.step(-1))
        on = IconButton(theme, "step_on", self.tr("One frame on (.)"), lambda: self.step(1))
        self.speed = QPushButton("1 ×")
        self.speed.setToolTip(self.tr("Slow motion"))
        self.speed.setAccessibleName(self.tr("Speed"))
        self.speed.clicked.connect(self.next_speed)
        self.zero = button(
            self.tr("Time from here"), clicked=self.set_zero, tip=self.tr("Set the clock to zero")
        )
        self._timer = QTimer(self, singleShot=True)
        self._timer.setTimerType(Qt.TimerType.PreciseTimer)
        self._timer.timeout.connect(self._play_on)
        controls = QHBoxLayout()
        for control in (back, self.play, on, self.speed):
            controls.addWidget(control)
        controls.addWidget(self.slider, 1)
        controls.addWidget(self.words)
        controls.addWidget(self.zero)
        column = QVBoxLayout(self)
        column.setContentsMargins(3, 3, 3, 3)
        column.setSpacing(4)
        column.addWidget(self.picture, 1)
        column.addWidget(self.trace)
        column.addLayout(controls)
        column.addWidget(self.told)

    def open_film(self, folder: Path, file: str) -> None:
        """Open a piece off the main thread and show its first frame."""
        self.leave()
        self.words.setText(self.tr("Opening the video…"))
        in_background(
            self,
            lambda _progress, _stop: Film.open(folder, file),
            done=self._opened,
            failed=self._say_failed,
            pool=self._pool,
        )

    def show_measured(self, measured: SwingMeasurement | None, sentences: Sequence[str]) -> None:
        """What was measured in the film, and what it says in words."""
        self._marks_s = measured.swing_marks_s if measured is not None else ()
        self.trace.show_swing(measured)
        if self._film is None and measured is not None and measured.accepted:
            self.trace.show_span(min(measured.start_s, 0.0), measured.end_s)
        self.told.setText("\n".join(sentences))
        self.told.setVisible(bool(sentences))
        self._say()

    def go_to(self, time_s: float) -> None:
        """Pause at the frame next to a time on the film's own clock."""
        if self._film is None:
            return
        self.pause()
        times, wanted = self._film.times_s, time_s - self._film.start_s
        after = min(bisect_left(times, wanted), len(times) - 1)
        before = max(after - 1, 0)
        self._ask(before if wanted - times[before] < times[after] - wanted else after)

    def go_to_swing(self, by: int) -> None:
        """To where the next swing ends, or the one before."""
        if self._film is None or not self._marks_s:
            return
        now, slack = self._now_s(), 0.6 / max(len(self._film.times_s), 1)
        slack = max(slack, 0.02)
        further = [m for m in self._marks_s if (m > now + slack if by > 0 else m < now - slack)]
        if further:
            self.go_to(further[0] if by > 0 else further[-1])

    def _now_s(self) -> float:
        return self._film.start_s + self._film.times_s[self._at] if self._film else 0.0

    def leave(self) -> None:
        """Stop and let the film go."""
        self.pause()
        film, self._film = self._film, None
        if film is not None:
            self._pool.start(film.close)
        self.picture.show_image(QImage())
        self.words.clear()
        self.slider.blockSignals(True)
        self.slider.setRange(0, 0)  # not where the film before was left
        self.slider.blockSignals(False)

    @property
    def at(self) -> int:
        """Number of the frame shown."""
        return self._at

    @property
    def playing(self) -> bool:
        """Whether it plays."""
        return self._playing

    def toggle(self) -> None:
        """Play or pause."""
        if self._playing:
            self.pause()
        elif self._film is not None:
            self._playing = True
            self.play.show_icon("pause", self.tr("Pause (Space)"))
            self._due = time.monotonic()
            self._ask(0 if self._at >= len(self._film) - 1 else self._at + 1)

    def pause(self) -> None:
        """Stop on the frame shown."""
        self._playing = False
        self._timer.stop()
        self.play.show_icon("play", self.tr("Play (Space)"))

    def step(self, frames: int) -> None:
        """Pause and go some frames on or back."""
        self.pause()
        self._ask(self._at + frames)

    def next_speed(self) -> None:
        """Slower, and after the slowest as filmed."""
        number = (_SPEEDS.index(self._speed) + 1) % len(_SPEEDS)
        self._speed = _SPEEDS[number]
        self.speed.setText(("1 ×", "½ ×", "¼ ×", "⅛ ×")[number])

    def set_zero(self) -> None:
        """Count time from the frame shown."""
        self._zero = self._at
        self._say()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Space, comma, full stop; M for where a swing ends."""
        if event.key() == Qt.Key.Key_Space:
            self.toggle()
        elif event.key() == Qt.Key.Key_Comma:
            self.step(-1)
        elif event.key() == Qt.Key.Key_Period:
            self.step(1)
        elif event.key() == Qt.Key.Key_M:
            shift = event.modifiers() & Qt.KeyboardModifier.ShiftModifier
            self.go_to_swing(-1 if shift else 1)
        else:
            super().keyPressEvent(event)

    def _opened(self, film: Film) -> None:
        self._film, self._at, self._zero = film, 0, 0
        self.slider.setRange(0, len(film) - 1)
        self.trace.show_span(film.start_s, film.start_s + film.times_s[-1])
        self._ask(0)

    def _slid(self, number: int) -> None:
        if number != self._at:
            self.pause()
            self._ask(number)

    def _ask(self, number: int) -> None:
        film = self._film
        if film is None:
            return
        number = min(max(number, 0), len(film) - 1)
        if self._fetching:
            self._asked = number  # only the latest wish counts
            return
        self._fetching = True
        in_background(
            self,
            lambda _progress, _stop: (film, number, film.frame(number)),
            done=self._show,
            failed=self._failed,
            pool=self._pool,
        )

    def _show(self, fetched: tuple[Film, int, QImage]) -> None:
        film, number, image = fetched
        self._fetching = False
        if film is not self._film:
            return
        self._at = number
        self.picture.show_image(image, keep=True)
        self.slider.blockSignals(True)
        self.slider.setValue(number)
        self.slider.blockSignals(False)
        self._say()
        if self._asked is not None:
            asked, self._asked = self._asked, None
            self._ask(asked)
        elif self._playing:
            if number + 1 >= len(film):
                self.pause()
                return
            self._due += (film.times_s[number + 1] - film.times_s[number]) / self._speed
            wait = self._due - time.monotonic()
            if wait < -0.25:  # a slow machine shows every frame later rather than none
                self._due = time.monotonic()
            self._timer.start(max(round(1000 * wait), 0))

    def _play_on(self) -> None:
        if self._playing:
            self._ask(self._at + 1)

    def _failed(self, error: Exception) -> None:
        self._fetching = False
        self.pause()
        self._say_failed(error)

    def _say_failed(self, error: Exception) -> None:
        """In the place of the picture, where a sentence has room."""
        self.words.clear()
        self.picture.say(plainly(error))

    def _say(self) -> None:
        if self._film is not None:
            seconds = self._film.times_s[self._at] - self._film.times_s[self._zero]
            words = figures(self.tr("{s:.2f} s · frame {n}").format(s=seconds, n=self._at + 1))
            if self._marks_s:
                done = sum(mark <= self._now_s() for mark in self._marks_s)
                words += self.tr(" · swing {n} of {of}").format(n=done, of=len(self._marks_s))
            self.words.setText(words)
            self.trace.show_now(self._now_s())
