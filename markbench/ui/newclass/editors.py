"""What a setting of the brief is filled in with: a line, a day, a choice, ticks.

Each holds what was typed (``text``), whether or not it can be used, and says what the file
would hold for it (``raw``).
"""

from __future__ import annotations

from collections.abc import Callable, Iterable
from typing import Any

from PySide6.QtCore import QCoreApplication, QDate, QPoint, Qt, Signal
from PySide6.QtGui import QColor, QTextCharFormat
from PySide6.QtWidgets import (
    QCalendarWidget,
    QCheckBox,
    QComboBox,
    QFrame,
    QHBoxLayout,
    QLineEdit,
    QVBoxLayout,
    QWidget,
)

from markbench.session.brief_form import as_raw, as_text, choices_of, way_of
from markbench.ui.look.dates import day, locale, read_day
from markbench.ui.look.said import said
from markbench.ui.look.theme import Theme
from markbench.ui.parts import IconButton


def _tr(words: str) -> str:
    return QCoreApplication.translate("Field", words)


class Editor(QWidget):
    """``changed`` is sent at every key."""

    changed = Signal()

    def __init__(self, key: str) -> None:
        super().__init__()
        self.key = key
        self.row = QHBoxLayout(self)
        self.row.setContentsMargins(0, 0, 0, 0)
        self.row.setSpacing(4)

    @property
    def parts(self) -> tuple[QWidget, ...]:
        """What takes the keyboard, the first one first."""
        raise NotImplementedError

    def text_of(self, value: Any) -> str:
        """A value of the brief as it is filled in."""
        return said(as_text(self.key, value))

    def text(self) -> str:
        """What is filled in."""
        raise NotImplementedError

    def fill(self, text: str) -> None:
        """Fill in a text as :meth:`text` gave it."""
        raise NotImplementedError

    def raw(self) -> Any:
        """The value as the file would hold it, ``None`` where it is left out."""
        return self.raw_of(self.text())

    def raw_of(self, text: str) -> Any:
        """What the file would hold for a text."""
        return as_raw(self.key, text)


class LineEditor(Editor):
    """One line."""

    def __init__(self, key: str, example: str) -> None:
        super().__init__(key)
        self.line = QLineEdit()
        self.line.setPlaceholderText(example)
        self.line.textChanged.connect(lambda _text: self.changed.emit())
        self.row.addWidget(self.line)

    @property
    def parts(self) -> tuple[QWidget, ...]:
        """The line."""
        return (self.line,)

    def text(self) -> str:
        """What was typed."""
        return self.line.text().strip()

    def fill(self, text: str) -> None:
        """Fill it in as by hand, so that the line's own undo takes it back."""
        self.line.selectAll()
        self.line.insert(text)
        self.line.setCursorPosition(0)


class DayEditor(LineEditor):
    """A day, typed or picked from a calendar; written as everywhere in the window."""

    def __init__(self, key: str, name: str, theme: Theme) -> None:
        super().__init__(key, _tr("no day"))
        self._theme = theme
        self.line.editingFinished.connect(self._write)
        words = _tr("{name}: pick a day").format(name=name)
        self.pick = IconButton(theme, "calendar", words, self.open_calendar)
        self.row.addWidget(self.pick)
        self.calendar: QCalendarWidget | None = None

    def text_of(self, value: Any) -> str:
        """The day with its month as a word."""
        return "" if value is None else day(value)

    def raw_of(self, text: str) -> Any:
        """Year, month and day."""
        read = read_day(text)
        return super().raw_of(text if read is None else read.isoformat())

    def open_calendar(self) -> None:
        """Show a calendar under the line; a day picked there is filled in."""
        box = QFrame(self, Qt.WindowType.Popup)
        box.setProperty("kind", "paper")
        box.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        self.calendar = calendar = QCalendarWidget()
        calendar.setLocale(locale())
        calendar.setVerticalHeaderFormat(QCalendarWidget.VerticalHeaderFormat.NoVerticalHeader)
        calendar.setFirstDayOfWeek(Qt.DayOfWeek.Monday)
        plain = QTextCharFormat()  # red on the dark sheet can hardly be read
        plain.setForeground(QColor(self._theme.palette.pencil))
        for weekend in (Qt.DayOfWeek.Saturday, Qt.DayOfWeek.Sunday):
            calendar.setWeekdayTextFormat(weekend, plain)
        read = read_day(self.line.text())
        if read is not None:
            calendar.setSelectedDate(QDate(read.year, read.month, read.day))

        def take(chosen: QDate) -> None:
            self.fill(self.text_of(chosen.toPython()))
            box.close()
            self.line.setFocus()

        calendar.clicked.connect(take)
        calendar.activated.connect(take)
        column = QVBoxLayout(box)
        column.setContentsMargins(4, 4, 4, 4)
        column.addWidget(calendar)
        box.move(self.mapToGlobal(QPoint(0, self.height())))
        box.show()
        calendar.setFocus()

    def _write(self) -> None:
        read = read_day(self.line.text())
        if read is not None and self.text_of(read) != self.line.text():
            self.fill(self.text_of(read))


class ChoiceEditor(Editor):
    """One of a few; one that is not among them (an editor wrote it) stays on offer."""

    def __init__(self, key: str, choices: Iterable[tuple[str, str]]) -> None:
        super().__init__(key)
        self.box = QComboBox()
        for value, words in choices:
            self.box.addItem(words, value)
        self.box.currentIndexChanged.connect(lambda _at: self.changed.emit())
        self.row.addWidget(self.box)

    @property
    def parts(self) -> tuple[QWidget, ...]:
        """The box."""
        return (self.box,)

    def text(self) -> str:
        """The value chosen."""
        return str(self.box.currentData())

    def fill(self, text: str) -> None:
        """Choose it."""
        at = self.box.findData(text)
        if at < 0:
            self.box.addItem(text, text)
            at = self.box.count() - 1
        self.box.setCurrentIndex(at)


class TicksEditor(Editor):
    """Any of a few, or one thing to say yes to."""

    def __init__(self, key: str, name: str, words_of: Callable[[str], str]) -> None:
        super().__init__(key)
        self._yes_no = way_of(key) == "yes_no"
        self.ticks: dict[str, QCheckBox] = {}
        column = QVBoxLayout()
        column.setSpacing(0)
        for kind in ("yes",) if self._yes_no else choices_of(key):
            tick = self.ticks[kind] = QCheckBox(words_of(kind))
            tick.setAccessibleName(f"{name}: {tick.text()}")
            tick.toggled.connect(lambda _on: self.changed.emit())
            column.addWidget(tick)
        self.row.addLayout(column)

    @property
    def parts(self) -> tuple[QWidget, ...]:
        """The ticks."""
        return tuple(self.ticks.values())

    def text_of(self, value: Any) -> str:
        """The kinds ticked."""
        if self._yes_no:
            return "yes" if value else ""
        return " ".join(kind for kind in self.ticks if kind in value)

    def text(self) -> str:
        """The kinds ticked."""
        return " ".join(kind for kind, tick in self.ticks.items() if tick.isChecked())

    def fill(self, text: str) -> None:
        """Tick them."""
        for kind, tick in self.ticks.items():
            tick.setChecked(kind in text.split())

    def raw_of(self, text: str) -> Any:
        """Yes or no; else the kinds."""
        return bool(text) if self._yes_no else text.split()
