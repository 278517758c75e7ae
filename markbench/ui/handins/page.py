"""The page of hand-ins: a table of all learners, reminders, more time, what changed."""

from __future__ import annotations

import datetime as dt

from PySide6.QtCore import (
    QDate,
    QItemSelection,
    QModelIndex,
    QPersistentModelIndex,
    Signal,
)
from PySide6.QtGui import QGuiApplication, QResizeEvent
from PySide6.QtWidgets import (
    QBoxLayout,
    QComboBox,
    QDateEdit,
    QFrame,
    QPlainTextEdit,
    QPushButton,
    QVBoxLayout,
    QWidget,
)

from markbench.model import Decision
from markbench.session.hand_ins import HandIn, day_to_offer
from markbench.ui.choosing import ROW as WHOLE_ROW
from markbench.ui.choosing import choose_only
from markbench.ui.desk import Desk
from markbench.ui.flow import FlowLayout
from markbench.ui.handins.changes import ChangesPanel
from markbench.ui.handins.model import (
    ROW,
    HandInModel,
    HandInOrder,
)
from markbench.ui.handins.reminders import AGAIN, EVERYTHING, NAMES, reminders
from markbench.ui.handins.roll import HandInRoll
from markbench.ui.look.dates import locale, pattern
from markbench.ui.look.theme import Theme
from markbench.ui.parts import button, label, quiet_scroll
from markbench.ui.signed import SignedLine, allow

Index = QModelIndex | QPersistentModelIndex
_BESIDE = 940  # narrower than this (at 100 % text), the margin stands below the table
_LEAST = 130  # the table's height: a heading and some learners


class HandInsPage(QWidget):
    """``opened`` carries a learner; ``said`` what was done."""

    opened = Signal(str)
    said = Signal(str)

    def __init__(self, desk: Desk, theme: Theme) -> None:
        super().__init__()
        self._desk, self._theme = desk, theme
        self.model = HandInModel(desk, self)
        self.order = HandInOrder(self.model, self)
        self.table = HandInRoll(self.model, self.order, theme)
        self.table.setAccessibleName(self.tr("Hand-ins"))
        self.table.activated.connect(self._open)
        self.table.selectionModel().selectionChanged.connect(lambda *_: self._chosen_changed())
        self.chips = {
            "late": self._chip(self.tr("Late")),
            "missing": self._chip(self.tr("Something missing")),
            "nothing": self._chip(self.tr("Nothing yet")),
            "again": self._chip(self.tr("Handed in again")),
            "wanted": self._chip(self.tr("Wanted again")),
            "extended": self._chip(self.tr("Extended")),
            "changed": self._chip(self.tr("Changed since marked")),
        }
        self.shown = label(kind="small")
        self.changes = ChangesPanel(desk, theme)
        self.about = QComboBox()
        self.about.setAccessibleName(self.tr("What to ask for"))
        self.about.setSizeAdjustPolicy(
            QComboBox.SizeAdjustPolicy.AdjustToMinimumContentsLengthWithIcon
        )
        self.about.setMinimumContentsLength(12)
        self._fill_about()
        self.about.currentIndexChanged.connect(self._write)
        self.letters = QPlainTextEdit()
        self.letters.setReadOnly(True)
        self.letters.setTabChangesFocus(True)
        self.letters.setAccessibleName(self.tr("The reminder as it will be copied"))
        self.copy = button(self.tr("Copy"), "deed", self.copy_letters)
        self.until = QDateEdit()
        self.until.setCalendarPopup(True)
        self.until.setLocale(locale())
        self.until.setDisplayFormat(pattern())
        self.until.setAccessibleName(self.tr("Last day for the chosen learners"))
        self.extend = button(self.tr("Give them until then"), "", self.give_time)
        self.take_back = button(self.tr("Take the extension back"), "plain", self.take_time_back)
        self._offered = QDate()
        self._chosen_words = label(kind="small", wrap=True)
        self._note = label(kind="small", wrap=True)
        self._lay_out()
        self.changes.strip.settled.connect(self.table.setFocus)
        desk.changed.connect(self._on_changed)
        theme.changed.connect(self._restyle)
        self._restyle()

    def _chip(self, words: str) -> QPushButton:
        chip = QPushButton(words)
        chip.setCheckable(True)
        chip.toggled.connect(lambda on: chip.setText(f"✓ {words}" if on else words))
        chip.toggled.connect(self._filter)
        return chip

    def _fill_about(self) -> None:
        for about, words in (
            (EVERYTHING, self.tr("Ask for everything missing")),
            ("readings", self.tr("Ask for the readings")),
            ("setup_photo", self.tr("Ask for the photo of the set-up")),
            ("selfie", self.tr("Ask for the photo with the set-up")),
            ("swing_video", self.tr("Ask for the video")),
            (AGAIN, self.tr("Ask again for what could not be used")),
            (NAMES, self.tr("A list of names")),
        ):
            if about in (EVERYTHING, AGAIN, NAMES, "readings", *self._desk.session.brief.evidence):
                self.about.addItem(words, about)

    def _lay_out(self) -> None:
        tools = FlowLayout(spacing=8)
        for part in (*self.chips.values(), self.shown):
            tools.addWidget(part)
        left = QVBoxLayout()
        left.setContentsMargins(16, 8, 10, 12)
        left.setSpacing(8)
        left.addLayout(tools)
        left.addWidget(self.table, 1)
        left.addWidget(self.changes)
        self._margin = QFrame()
        self._margin.setProperty("kind", "margin")
        column = QVBoxLayout(self._margin)
        column.setContentsMargins(14, 12, 14, 12)
        column.setSpacing(8)
        column.addWidget(self._chosen_words)
        column.addSpacing(4)
        column.addWidget(label(self.tr("Reminder"), "heading"))
        column.addWidget(self.about)
        column.addWidget(self.letters, 1)
        column.addWidget(self.copy)
        column.addWidget(self._note)
        column.addSpacing(8)
        column.addWidget(label(self.tr("More time"), "heading"))
        column.addWidget(SignedLine(self._desk))
        column.addWidget(self.until)
        times = FlowLayout(spacing=8)
        times.addWidget(self.extend)
        times.addWidget(self.take_back)
        column.addLayout(times)
        inside = QWidget()
        inside.setProperty("kind", "inside")
        self._halves = QBoxLayout(QBoxLayout.Direction.LeftToRight, inside)
        self._halves.addLayout(left, 1)
        self._halves.addWidget(self._margin)
        whole = QVBoxLayout(self)
        whole.addWidget(quiet_scroll(inside))
        for layout in (self._halves, whole):
            layout.setContentsMargins(0, 0, 0, 0)
            layout.setSpacing(0)

    # --- showing -------------------------------------------------------------------

    def show_page(self) -> None:
        """Read the hand-ins if that was not done, and give the keyboard to the table."""
        if not self.model.rows:
            self.model.read()
        self._offer_day()
        if not self.table.currentIndex().isValid() and self.order.rowCount():
            choose_only(self.table, self.order.index(0, 0), WHOLE_ROW)
        self._filter()
        self.table.setFocus()

    def _offer_day(self) -> None:
        """Offer a new last day, unless one was chosen."""
        if self.until.date() == self._offered or not self._offered.isValid():
            day = day_to_offer(self._desk.session.brief.closes, dt.date.today())
            self._offered = QDate(day.year, day.month, day.day)
            self.until.setDate(self._offered)

    def show_changes(self, learner: str) -> None:
        """What one learner changed, whatever was filtered before."""
        for chip in self.chips.values():
            chip.setChecked(False)
        for row in range(self.order.rowCount()):
            index = self.order.index(row, 0)
            if index.data(ROW).learner == learner:
                choose_only(self.table, index, WHOLE_ROW)
                self.table.scrollTo(index)

    def settle(self) -> None:
        """Nothing is typed here that could be lost."""

    def chosen(self) -> list[HandIn]:
        """The chosen hand-ins in the order shown."""
        rows = sorted({index.row() for index in self.table.selectionModel().selectedRows()})
        return [self.order.index(row, 0).data(ROW) for row in rows]

    def choose(self, learners: set[str]) -> None:
        """Choose learners, among those shown."""
        model = self.table.selectionModel()
        chosen = QItemSelection()
        for index in (self.order.index(row, 0) for row in range(self.order.rowCount())):
            if index.data(ROW).learner in learners:
                chosen.select(index, index)
        model.select(chosen, model.SelectionFlag.ClearAndSelect | model.SelectionFlag.Rows)
        if chosen.indexes():
            current = chosen.indexes()[0]
            model.setCurrentIndex(current, model.SelectionFlag.NoUpdate)
            self.table.scrollTo(current)

    def ask(self, learners: set[str]) -> None:
        """Have a letter to each of these ready to be copied."""
        for chip in self.chips.values():
            chip.setChecked(False)
        self.about.setCurrentIndex(self.about.findData(EVERYTHING))
        self.choose(learners)
        (self.copy if self.copy.isEnabled() else self.table).setFocus()

    def choose_all(self) -> None:
        """Choose everybody shown."""
        self.table.selectAll()

    def _open(self, index: Index) -> None:
        self.opened.emit(index.data(ROW).learner)

    def _filter(self) -> None:
        on = frozenset(name for name, chip in self.chips.items() if chip.isChecked())
        if on != self.order.filters:
            self.order.set_filters(on)
        shown, of = self.order.rowCount(), self.model.rowCount()
        words = self.tr("{n} of {of} learners")
        if shown == of:
            words = self.tr("1 learner") if of == 1 else self.tr("{n} learners")
        if not of:
            words = self.tr("Nobody is in the class list.")
        elif not shown:
            words = self.tr("Nobody: the filters leave none of {of} learners")
        self.shown.setText(words.format(n=shown, of=of))
        self.table.rule_columns()
        self._chosen_changed()

    def _on_changed(self, _learner: str) -> None:
        if self.isVisible():
            self._filter()

    def _chosen_changed(self) -> None:
        rows = self.chosen()
        words = self.tr("{n} learners chosen") if len(rows) != 1 else self.tr("1 learner chosen")
        hint = self.tr("Hold Shift or Ctrl to choose several; Ctrl+A for all that are shown.")
        self._chosen_words.setText(f"{words.format(n=len(rows))}. {hint}")
        allow(self._desk, bool(rows), self.extend)
        allow(self._desk, any(row.extended_to for row in rows), self.take_back)
        self._write()
        self.changes.show_learner(rows[0].learner if len(rows) == 1 else "")

    # --- reminders -----------------------------------------------------------------

    def _write(self) -> None:
        blind = self._desk.blind
        rows = [] if blind else [(self.model.names[row.learner], row) for row in self.chosen()]
        brief, about = self._desk.session.brief, self.about.currentData()
        language = brief.feedback_language
        text = reminders(rows, about, brief.title, dt.date.today(), language)
        self.letters.setPlainText(text)
        self.letters.setPlaceholderText(
            self.tr("Nothing of this is wanted from the chosen learners.")
            if rows or blind
            else self.tr("Choose learners in the table: a letter to each stands here then.")
        )
        self.copy.setEnabled(bool(text))
        if blind:
            words = self.tr("Reminders bear names: they wait until names are shown.")
        elif not text:
            words = ""
        else:
            words = self.tr("Nothing is sent; you paste it where you write to them.")
        self._note.setText(words)

    def copy_letters(self) -> None:
        """Put the reminder on the clipboard."""
        text = self.letters.toPlainText()
        if text:
            QGuiApplication.clipboard().setText(text)
            self.said.emit(self.tr("✓ reminder copied"))

    # --- more time -----------------------------------------------------------------

    def give_time(self) -> None:
        """Extend the chosen learners' time to the day chosen, as one step."""
        day = self.until.date()
        self._extend(dt.date(day.year(), day.month(), day.day()))

    def take_time_back(self) -> None:
        """Let the brief's last day hold again for the chosen learners."""
        self._extend(None)

    def _extend(self, until: dt.date | None) -> None:
        value = None if until is None else until.isoformat()
        wanted = [Decision("extension", row.learner, "", value) for row in self.chosen()]
        if wanted and not self._desk.refuse_signed():
            self._desk.do(lambda session: session.decide(*wanted))

    # --- size ----------------------------------------------------------------------

    def resizeEvent(self, event: QResizeEvent) -> None:
        """The margin keeps the share it has on the sheet; with large text it stands below."""
        super().resizeEvent(event)
        self._restyle()

    def _restyle(self) -> None:
        px = self._theme.px
        beside = self.width() >= px(_BESIDE)
        way = QBoxLayout.Direction.LeftToRight if beside else QBoxLayout.Direction.TopToBottom
        self._halves.setDirection(way)
        wide = max(px(340), int(self.width() * 0.27)) if beside else self.width()
        self._margin.setFixedWidth(wide)
        self.table.setMinimumHeight(px(_LEAST if beside else 2 * _LEAST))
        self.table.rule_columns()
        self.letters.setMinimumHeight(px(160))
