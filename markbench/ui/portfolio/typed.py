"""Readings typed by the teacher, where a file cannot be read at all; recorded as hers."""

from __future__ import annotations

from typing import Any

from PySide6.QtWidgets import QTableWidget, QTableWidgetItem, QVBoxLayout, QWidget

from markbench.ui.desk import Desk
from markbench.ui.flow import FlowLayout
from markbench.ui.look.theme import Theme
from markbench.ui.mishaps import plainly
from markbench.ui.parts import button, label
from markbench.ui.portfolio.readings_model import length_text, time_text

_SPARE = 2  # empty rows below what there is


class TypedTable(QWidget):
    """Length in cm, swings, and the timings in s; what cannot be read is named, not guessed."""

    def __init__(self, desk: Desk, theme: Theme) -> None:
        super().__init__()
        self._desk, self._theme, self._learner = desk, theme, ""
        self.table = QTableWidget()
        self.table.setAccessibleName(self.tr("Readings to type"))
        self.table.verticalHeader().setVisible(False)
        self.table.setTabKeyNavigation(False)
        self._trouble = label(kind="look", wrap=True)
        self.take = button(self.tr("Use what is typed here"), "", self._take)
        self.drop = button(self.tr("Back to the learner's file"), "", self._drop)
        self.table.setMinimumHeight(180)
        head = FlowLayout(spacing=8)
        self._heading = label(kind="heading")
        self.come_first(False)
        head.addWidget(self._heading)
        head.addWidget(self.take)
        head.addWidget(self.drop)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(6)
        column.addLayout(head)
        column.addWidget(self._trouble)
        column.addWidget(self.table, 1)

    def come_first(self, first: bool) -> None:
        """Whether there is no file beside it to point at."""
        words = self.tr("Type the readings in") if first else self.tr("Or type the readings in")
        self._heading.setText(words)

    def take_keyboard(self) -> None:
        """Begin at the first cell."""
        self.table.setFocus()
        self.table.setCurrentCell(0, 0)

    def show_learner(self, learner: str) -> None:
        """Begin with the readings as they are understood now."""
        self._learner = learner
        self._trouble.hide()
        session = self._desk.session
        table = session.portfolio(learner).table
        readings = table.readings if table is not None else ()
        timings = max([session.brief.timings_per_length, *(len(r.timings) for r in readings)])
        self.table.clear()
        self.table.setColumnCount(2 + timings)
        self.table.setHorizontalHeaderLabels(
            ["L / cm", "N", *(f"t{i + 1} / s" for i in range(timings))]
        )
        rows = max(len(readings) + _SPARE, session.brief.lengths + 1)
        self.table.setRowCount(rows)
        for row, reading in enumerate(readings):
            texts = [length_text(reading), str(reading.swings)]
            texts += [time_text(timing) for timing in reading.timings]
            for column, text in enumerate(texts):
                self.table.setItem(row, column, QTableWidgetItem(text))
        self.drop.setEnabled(session.value("typed", learner) is not None)

    def rows(self) -> list[dict[str, Any]]:
        """What is typed; ``ValueError`` lists every cell that is no number."""
        wrong: list[str] = []
        rows: list[dict[str, Any]] = []
        for row in range(self.table.rowCount()):
            texts = [self._text(row, column) for column in range(self.table.columnCount())]
            if not any(texts):
                continue
            numbers = [self._number(text, row, column, wrong) for column, text in enumerate(texts)]
            length, swings, *timings = numbers
            times = [(t, x) for t, x in zip(timings, texts[2:], strict=True) if t is not None]
            if length is None:
                wrong.append(self.tr("Row {r} has no length.").format(r=row + 1))
                continue
            swung = self._desk.session.brief.swings_per_timing if swings is None else swings
            rows.append(
                {
                    "length_m": length / 100,
                    "swings": int(swung),
                    "timings_s": [time for time, _ in times],
                    "length_decimals": _decimals(texts[0]),
                    "decimals": [_decimals(text) for _, text in times],
                }
            )
        if wrong:
            raise ValueError(" ".join(wrong))
        return rows

    def _text(self, row: int, column: int) -> str:
        item = self.table.item(row, column)
        return item.text().strip() if item is not None else ""

    def _number(self, text: str, row: int, column: int, wrong: list[str]) -> float | None:
        if not text:
            return None
        try:
            return float(text.replace(",", "."))
        except ValueError:
            heading = self.table.horizontalHeaderItem(column)
            words = self.tr("Row {r}, {c}: “{t}” is not a number.")
            name = heading.text() if heading is not None else ""
            wrong.append(words.format(r=row + 1, c=name, t=text))
            return None

    def _take(self) -> None:
        try:
            rows = self.rows()
        except ValueError as error:
            self._say(plainly(error))
            return
        if not rows:
            self._say(self.tr("Nothing is typed yet: each row needs a length and a timing."))
            return
        learner = self._learner
        self._desk.do(lambda session: session.type_readings(learner, rows))

    def _say(self, words: str) -> None:
        self._trouble.setText(words)
        self._trouble.show()

    def _drop(self) -> None:
        learner = self._learner
        self._desk.do(lambda session: session.type_readings(learner, None))


def _decimals(text: str) -> int:
    """How many decimals a number was written with."""
    return min(len(text.replace(",", ".").partition(".")[2]), 9)
