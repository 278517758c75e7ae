"""The class page: search, filters, order, the cards, and what is still to settle."""

from __future__ import annotations

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QGuiApplication, QShowEvent
from PySide6.QtWidgets import (
    QComboBox,
    QHBoxLayout,
    QLineEdit,
    QPushButton,
    QStackedWidget,
    QVBoxLayout,
    QWidget,
)

from markbench.model import PieceKind
from markbench.ui.bench.brief_strip import BriefStrip
from markbench.ui.bench.card import CardDelegate
from markbench.ui.bench.foot import Foot
from markbench.ui.bench.grid import ClassGrid
from markbench.ui.bench.looking import EvidenceLook
from markbench.ui.bench.model import ClassModel, ClassOrder, Filters
from markbench.ui.bench.settle import SettlePanel
from markbench.ui.choosing import choose_only
from markbench.ui.desk import Desk
from markbench.ui.flow import FlowLayout
from markbench.ui.look.said import figures
from markbench.ui.look.theme import Theme
from markbench.ui.parts import button, label


class ClassPage(QWidget):
    """Everything about the class at a glance.

    ``opened`` carries a learner's id; ``folder_wanted`` asks for another class;
    ``ask_wanted`` carries those to be asked for pieces again; ``said`` what was done;
    ``brief_wanted`` asks for the brief, in which something cannot be used.
    """

    opened = Signal(str)
    folder_wanted = Signal()
    ask_wanted = Signal(list)
    brief_wanted = Signal()
    said = Signal(str)

    def __init__(self, desk: Desk, theme: Theme, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._desk, self._theme = desk, theme
        self.model = ClassModel(desk, self)
        self.order = ClassOrder(self.model, self)
        self.grid = ClassGrid(self.order, CardDelegate(theme, self.model, self), theme)
        self.grid.opened.connect(self.opened)
        self.grid.selectionModel().selectionChanged.connect(lambda *_: self._chosen_changed())
        self._words: dict[PieceKind, str] = {
            "readings": self.tr("readings"),
            "setup_photo": self.tr("set-up"),
            "selfie": self.tr("selfie"),
            "swing_video": self.tr("video"),
        }
        self.search = QLineEdit()
        self.search.setPlaceholderText(self.tr("Find a learner"))
        self.search.setAccessibleName(self.tr("Find a learner"))
        self.search.setMinimumWidth(theme.px(150))
        self.search.textChanged.connect(self._filter)
        self.search.returnPressed.connect(self._enter_search)
        self.sorts = self._sorts()
        self.chips = {
            "unmarked": self._chip(self.tr("Not yet marked")),
            "questioned": self._chip(self.tr("To look at")),
            "missing": self._chip(self.tr("Something missing")),
            "late": self._chip(self.tr("Outside the dates")),
            "changed": self._chip(self.tr("≠ Changed")),
        }
        self.chips["changed"].setAccessibleName(self.tr("Changed since marked"))
        self.groups = self._groups()
        self.shown = label(kind="small")
        reach = self.tr("also in Pictures and for the next learner")
        self.reach = label(f"·  {reach}", "small")
        self.everybody = button(self.tr("Show everybody"), "", self.show_everybody)
        self.again = button(self.tr("Sort again"), "", self.sort_again)
        self.again.setToolTip(self.tr("The cards keep their places until you ask."))
        self.settle_button = QPushButton()
        self.settle_button.setCheckable(True)
        self.settle_button.toggled.connect(self._toggle_settle)
        self.looking = EvidenceLook(desk)
        self.settle = SettlePanel(desk, theme)
        self.settle.done.connect(self._settled)
        self.nobody = label("", "quiet", wrap=True)
        another = self.tr("Choose another folder…")
        self.another = button(another, "deed", self.folder_wanted.emit)
        self.empty = self._say_empty()
        self.brief = BriefStrip(desk)
        self.brief.wanted.connect(self.brief_wanted)
        self.foot = Foot(theme, self._words)
        self.foot.chosen.ask.connect(self.ask_again)
        self.foot.chosen.copy.connect(self.copy_list)
        self.foot.chosen.none.connect(self.choose_none)
        self._lay_out()
        desk.changed.connect(self._refresh)
        theme.changed.connect(self._restyle)
        self._restyle()
        self._refresh()

    def _lay_out(self) -> None:
        tools = FlowLayout(spacing=8)
        for part in (self.search, self.sorts, *self.chips.values(), self.groups,
                     self.settle_button):  # fmt: skip
            tools.addWidget(part)
        # As high as a button from the start: one that comes or goes moves no card.
        self._strut = QWidget()
        state = FlowLayout(spacing=8)
        for part in (self.shown, self.reach, self.everybody, self.again, self.looking,
                     self._strut):  # fmt: skip
            state.addWidget(part)
        self._middle = QStackedWidget()
        self._middle.addWidget(self.grid)
        self._found_nobody = self._nobody_page()
        self._middle.addWidget(self._found_nobody)
        self._middle.addWidget(self.empty)
        middle = QHBoxLayout()
        middle.setSpacing(12)
        middle.addWidget(self._middle, 1)
        middle.addWidget(self._settle_side())
        column = QVBoxLayout(self)
        column.setContentsMargins(16, 8, 12, 6)
        column.setSpacing(4)
        column.addLayout(tools)
        column.addLayout(state)
        column.addWidget(self.brief)
        column.addLayout(middle, 1)
        column.addWidget(self.foot)

    def _nobody_page(self) -> QWidget:
        page = QWidget()
        column = QVBoxLayout(page)
        column.addStretch(2)
        self.nobody.setAlignment(Qt.AlignmentFlag.AlignCenter)
        column.addWidget(self.nobody)
        column.addSpacing(8)
        self.everybody_again = button(self.tr("Show everybody"), "deed", self.show_everybody)
        column.addWidget(self.everybody_again, 0, Qt.AlignmentFlag.AlignCenter)
        column.addStretch(3)
        return page

    def _say_empty(self) -> QWidget:
        """What stands in place of the cards of a class without learners."""
        words = self.tr(
            "There is no learner in this folder. A class folder holds a folder for each "
            "learner, or files with their names, or one sheet for all; a class list may lie "
            "beside them."
        )
        said = QWidget()
        column = QVBoxLayout(said)
        column.setContentsMargins(0, 24, 0, 0)
        told = label(words, wrap=True)
        told.setMaximumWidth(self._theme.px(560))
        column.addWidget(told)
        column.addWidget(self.another, 0, Qt.AlignmentFlag.AlignLeft)
        column.addStretch(1)
        return said

    def _settle_side(self) -> QWidget:
        self._side = QWidget()
        column = QVBoxLayout(self._side)
        column.setContentsMargins(0, 0, 0, 0)
        head = QHBoxLayout()
        head.addWidget(label(self.tr("To settle"), "heading"), 1)
        self.shut_settle = button(
            self.tr("Close"), "plain", lambda: self.settle_button.setChecked(False)
        )
        self.shut_settle.setAccessibleName(self.tr("Close what is to settle"))
        head.addWidget(self.shut_settle)
        column.addLayout(head)
        column.addWidget(self.settle, 1)
        self._side.hide()
        return self._side

    # --- what can be done ----------------------------------------------------------

    def reminders(self) -> str:
        """A line for each chosen learner (or each one shown): what is still missing."""
        wanted = self.grid.chosen() if len(self.grid.chosen()) > 1 else self.order.learners()
        rows = {row.id: row for row in self.model.rows}
        lines = []
        for row in (rows[learner] for learner in wanted):
            pieces = ", ".join(self._words.get(kind, kind) for kind in row.missing)
            if pieces:
                lines.append(f"{row.name}: {pieces}")
        return "\n".join(lines)

    def copy_list(self) -> None:
        """Put on the clipboard what is missing, and from whom."""
        text = self.reminders()
        if text:
            QGuiApplication.clipboard().setText(text)
            words = self.tr("✓ list copied: {n} with something missing")
            self.said.emit(words.format(n=text.count("\n") + 1))
        else:
            self.said.emit(self.tr("Nothing to copy: nothing is missing."))

    def ask_again(self) -> None:
        """Have letters written to the chosen learners."""
        self.ask_wanted.emit(self.grid.chosen())

    def choose_none(self) -> None:
        """Leave only the current card chosen."""
        choose_only(self.grid, self.grid.currentIndex())
        self.grid.setFocus()

    def show_everybody(self) -> None:
        """Take search and filters off."""
        self.search.clear()
        self.groups.setCurrentIndex(0)
        for chip in self.chips.values():
            chip.setChecked(False)

    def sort_again(self) -> None:
        """Bring order and filters up to date; until then no card leaves its place."""
        self.order.sort_again()
        self._show_order()
        self.grid.setFocus()

    def step_back(self) -> None:
        """One step out: of the search, of what is to settle, of several chosen."""
        if self.search.text():
            self.search.clear()
            return
        if self.settle_button.isChecked():
            self.settle_button.setChecked(False)
        elif len(self.grid.selectedIndexes()) > 1:
            self.choose_none()
        self.show_first()

    def show_first(self) -> None:
        """Give the keyboard to the cards, at the current learner or the first."""
        self.grid.keep_current()
        (self.grid if self.model.rowCount() else self.another).setFocus()

    def may_settle(self) -> bool:
        """Whether it may be settled now whose files are whose."""
        return not self._desk.blind

    def _enter_search(self) -> None:
        """Open the one learner found; to the cards where there are more."""
        found = self.order.learners()
        if len(found) == 1:
            self.opened.emit(found[0])
        elif found:
            self.show_first()

    # --- parts ---------------------------------------------------------------------

    def _sorts(self) -> QComboBox:
        box = QComboBox()
        box.setAccessibleName(self.tr("Order"))
        for key, words in (
            ("concern", self.tr("Most questions first")),
            ("name", self.tr("By name")),
            ("mark", self.tr("Highest mark first")),
            ("progress", self.tr("Least marked first")),
            ("handed_in", self.tr("By time of hand-in")),
            ("class_list", self.tr("As in the class list")),
        ):
            box.addItem(words, key)
        box.currentIndexChanged.connect(lambda _i: self._sort())
        box.activated.connect(lambda _i: self._sort())  # the same again sorts again
        return box

    def _groups(self) -> QComboBox:
        box = QComboBox()
        box.setAccessibleName(self.tr("Group"))
        box.addItem(self.tr("All groups"), "")
        names = sorted({row.group for row in self.model.rows if row.group})
        for name in names:
            box.addItem(name, name)
        box.setVisible(len(names) > 1)
        box.currentIndexChanged.connect(self._filter)
        return box

    def _chip(self, words: str) -> QPushButton:
        chip = QPushButton(words)
        chip.setCheckable(True)
        chip.toggled.connect(lambda on: chip.setText(f"✓ {words}" if on else words))
        chip.toggled.connect(self._filter)
        return chip

    # --- showing -------------------------------------------------------------------

    def _sort(self) -> None:
        self.order.sort_by(self.sorts.currentData())
        self._show_order()

    def _filter(self) -> None:
        on = {name: chip.isChecked() for name, chip in self.chips.items()}
        self.order.set_filters(
            Filters(text=self.search.text(), group=self.groups.currentData() or "", **on)
        )
        self.grid.fit()
        self._show_order()

    def _show_order(self) -> None:
        """Say how many are shown, and keep a card current where there is one."""
        shown, of = self.order.rowCount(), self.model.rowCount()
        words = self.tr("{n} of {of} learners")
        if shown == of:
            words = self.tr("1 learner") if of == 1 else self.tr("{n} learners")
        done = sum(row.finished for row in self.model.rows)
        marked = self.tr("{n} marked").format(n=done)
        self.shown.setText(f"{words.format(n=shown, of=of)}  ·  {marked}")
        filtered = self.order.filters != Filters()
        self.reach.setVisible(filtered and shown > 0)
        self.everybody.setVisible(filtered and shown > 0)
        self.again.setVisible(self.order.differs())
        self.nobody.setText(self._why_nobody())
        self._middle.setCurrentWidget(
            self.grid if shown else self._found_nobody if of else self.empty
        )
        self.grid.keep_current()
        self._chosen_changed()  # cards that go are no longer chosen, and nobody says so

    def _why_nobody(self) -> str:
        filters = self.order.filters
        if filters == Filters(text=filters.text):
            return self.tr("Nobody is found by “{text}”.").format(text=filters.text)
        return self.tr("The search and the filters together leave nobody.")

    def _chosen_changed(self) -> None:
        self.foot.show_chosen(len(self.grid.selectedIndexes()))

    def _toggle_settle(self, on: bool) -> None:
        self._side.setVisible(on)
        self._show_settle()
        (self.settle if on else self.grid).setFocus()

    def _settled(self) -> None:
        """The last file found its place: back to the cards."""
        if not self.settle.aside():
            self.settle_button.setChecked(False)
        self.show_first()

    def _show_settle(self) -> None:
        open_ones, aside = self.settle.count(), self.settle.aside()
        wanted = open_ones + aside > 0 or self.settle_button.isChecked()
        self.settle_button.setVisible(wanted and self.may_settle())
        words = self.tr("Set aside: {n}") if aside and not open_ones else self.tr("To settle: {n}")
        self.settle_button.setText(words.format(n=open_ones or aside))

    def _refresh(self) -> None:
        self._show_settle()
        changed = any(row.changed for row in self.model.rows)
        self.foot.legend.changed.setVisible(changed)
        self.foot.legend.untold.setVisible(any(row.untold for row in self.model.rows))
        self.chips["changed"].setVisible(changed or self.chips["changed"].isChecked())
        axes = self.model.axes
        words = self.tr("Graphs: T² to {t:.1f} s² against L to {l:.0f} cm; grey line: the class")
        extent = words.format(t=axes.largest_s2, l=100 * axes.longest_m)
        self.foot.legend.axes.setText(figures(extent))
        if self.isVisible():
            self._show_order()

    def showEvent(self, event: QShowEvent) -> None:
        """Whatever changed on other pages."""
        super().showEvent(event)
        self._show_order()

    def _restyle(self) -> None:
        self._strut.setFixedSize(0, self.everybody.sizeHint().height())
