"""The rubric being written, with its criteria at the left and the class at the right."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtCore import QTimer, Signal
from PySide6.QtGui import QKeySequence, QResizeEvent, QShortcut
from PySide6.QtWidgets import (
    QCheckBox,
    QHBoxLayout,
    QLineEdit,
    QScrollArea,
    QVBoxLayout,
    QWidget,
)

from markbench.model import Rubric
from markbench.model.sentence import opening
from markbench.rubric.loading import SHIPPED
from markbench.session.rubric_preview import Preview, preview
from markbench.session.rubric_sheet import RubricSheet, Told
from markbench.ui.background import Task, in_background
from markbench.ui.desk import Desk
from markbench.ui.flow import FlowLayout
from markbench.ui.look.said import said
from markbench.ui.look.theme import Theme
from markbench.ui.mishaps import plainly
from markbench.ui.parts import IconButton, button, frame, label, quiet_scroll
from markbench.ui.rubrics.criteria_list import CriteriaList
from markbench.ui.rubrics.criterion_form import CriterionForm
from markbench.ui.rubrics.entry import Entry
from markbench.ui.rubrics.history import History
from markbench.ui.rubrics.preview import PreviewPanel
from markbench.ui.unfinished import Pending

if TYPE_CHECKING:
    from markbench.session import Session

_PAUSE_MS = 200
_ROOM = 1000  # form and class side by side need at least this


def rubric_file(session: Session) -> Path:
    """Where the rubric in use was read from."""
    name = f"{session.rubric.id}.toml"
    own = session.folder / name
    return own if own.is_file() else SHIPPED / name


@dataclass(frozen=True, slots=True)
class Typed:
    """A rubric as it was left: its text, what can be taken back, and where one stood."""

    history: History
    row: int
    name: str
    use: bool


class RubricPage(QWidget):
    """``left``: away from here; what is written is kept. Where it is saved, the desk tells that
    the page is outdated.
    """

    NAME = "rubric"
    left = Signal()

    def __init__(self, desk: Desk, theme: Theme, pending: Pending) -> None:
        super().__init__()
        self._desk, self._theme, self._pending = desk, theme, pending
        path = rubric_file(desk.held)
        self.sheet = RubricSheet.open(path)
        self._saved = self.sheet.text
        own = path.parent == desk.held.folder
        self._own_name = self.sheet.name if own else ""
        self.form: CriterionForm | None = None
        self.rubric: Rubric | None = None
        self.told: tuple[Told, ...] = ()
        self._history = History(self.sheet.text)
        self._found: tuple[Rubric, Preview] | None = None
        self._task: Task | None = None
        self.title = Entry(self.tr("Title of the rubric"), self.sheet.title, theme)
        self.title.edited.connect(self._set_title)
        self.list = CriteriaList(theme)
        self.list.currentRowChanged.connect(self._show_row)
        self.preview = PreviewPanel(theme)
        self.name = QLineEdit(self.sheet.name if own else f"our_{self.sheet.name}")
        self.name.setAccessibleName(self.tr("Name to save the rubric under"))
        self.name.textChanged.connect(lambda _text: self._tell_name())
        self.name_told = label(kind="small", wrap=True)
        self.use = QCheckBox(self.tr("use it for this class"))
        self.use.setChecked(True)
        self.save = button(self.tr("Save"), "deed", self._save)
        self.trouble = label(kind="look", wrap=True)
        self.turn = button(self.tr("What this class would get"), "", self._place)
        self.turn.setCheckable(True)
        self._area = QScrollArea()
        self._narrow = False
        self._later = QTimer(self)
        self._later.setSingleShot(True)
        self._later.setInterval(_PAUSE_MS)
        self._later.timeout.connect(self.judge)
        self._lay_out()
        self._tell_name()
        typed = pending.of(self.NAME)
        self._take_up(typed) if isinstance(typed, Typed) else self._fill(0)
        theme.changed.connect(self._size)
        self._size()

    def show_first(self) -> None:
        """Give the keyboard to the first field."""
        self.title.field.setFocus()

    def _lay_out(self) -> None:
        side = QVBoxLayout()
        side.setSpacing(6)
        side.addWidget(label(self.tr("Criteria"), "name"))
        side.addWidget(self.list, 1)
        tools = QHBoxLayout()
        tools.setSpacing(2)
        for icon, words, do in (
            ("add", self.tr("Add a criterion"), self._add),
            ("up", self.tr("Move the criterion up"), lambda: self._move(-1)),
            ("down", self.tr("Move the criterion down"), lambda: self._move(1)),
            ("cross", self.tr("Take the criterion away"), self._remove),
        ):
            tools.addWidget(IconButton(self._theme, icon, words, do))
        tools.addStretch(1)
        self.undo = IconButton(self._theme, "undo", self.tr("Undo"), self._undo)
        self.redo = IconButton(self._theme, "redo", self.tr("Redo"), self._redo)
        tools.addWidget(self.undo)
        tools.addWidget(self.redo)
        # Within a field the keys take back what was typed there.
        QShortcut(QKeySequence.StandardKey.Undo, self, self._undo)
        QShortcut(QKeySequence("Ctrl+Shift+Z"), self, self._redo)
        QShortcut(QKeySequence("Ctrl+Y"), self, self._redo)
        side.addLayout(tools)
        self._side = QWidget()
        self._side.setLayout(side)
        side.setContentsMargins(0, 0, 0, 12)
        sheet = frame("margin")
        inner = QVBoxLayout(sheet)
        inner.setContentsMargins(24, 12, 16, 12)
        inner.setSpacing(8)
        inner.addWidget(self.title)
        inner.addWidget(self.turn)
        middle = QHBoxLayout()
        middle.setSpacing(16)
        self._area = quiet_scroll(QWidget())
        middle.addWidget(self._area, 1)
        middle.addWidget(self.preview)
        self._middle = middle
        inner.addLayout(middle, 1)
        inner.addLayout(self._foot())
        row = QHBoxLayout(self)
        row.setContentsMargins(16, 8, 0, 0)
        row.setSpacing(14)
        row.addWidget(self._side)
        row.addWidget(sheet, 1)

    def _foot(self) -> QVBoxLayout:
        foot = QVBoxLayout()
        foot.setSpacing(4)
        foot.addWidget(self.trouble)
        foot.addWidget(self.name_told)
        deeds = FlowLayout(spacing=8)
        self.discard = button(self.tr("Discard the changes"), "", self._discard)
        self.discard.setToolTip(self.tr("Undo brings them back."))
        back = button(self.tr("Back to the class"), "", self.left.emit)
        name = QWidget()
        line = QHBoxLayout(name)
        line.setContentsMargins(0, 0, 0, 0)
        line.addWidget(label(self.tr("Save as"), "quiet"))
        line.addWidget(self.name)
        for part in (name, self.use, self.save, self.discard, back):
            deeds.addWidget(part)
        foot.addLayout(deeds)
        return foot

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Where there is no room for both, the form and the class are shown by turns."""
        super().resizeEvent(event)
        self._measure()

    def _measure(self) -> None:
        narrow = self.width() < self._theme.px(_ROOM)
        if narrow != self._narrow:
            self._narrow = narrow
            self._show_row(self.list.currentRow())
        self._place()

    def _place(self) -> None:
        self.turn.setVisible(self._narrow)
        turned = self._narrow and self.turn.isChecked()
        self._area.setVisible(not turned)
        self.preview.setVisible(turned or not self._narrow)
        self.preview.set_wide(turned)

    # --- the criteria -----------------------------------------------------------------

    def _fill(self, row: int) -> None:
        """List the criteria anew, show one, and judge."""
        rows = self.sheet.rows()
        self.list.blockSignals(True)
        self.list.show_titles([str(table.get("title", "")) for table in rows])
        self.list.setCurrentRow(min(row, len(rows) - 1))
        self.list.blockSignals(False)
        self._show_row(self.list.currentRow())
        self.judge()

    def _show_row(self, row: int) -> None:
        at = self._area.verticalScrollBar().value() if self.form is not None else 0
        same = self.form is not None and self.form.property("row") == row
        if row < 0:
            self.form = None
            self._area.setWidget(QWidget())
            return
        self.form = CriterionForm(self.sheet, row, self._theme, narrow=self._narrow)
        self.form.setProperty("row", row)
        self.form.edited.connect(self._later.start)
        self.form.reshaped.connect(lambda: QTimer.singleShot(0, self, lambda: self._fill(row)))
        self._area.setWidget(self.form)
        self._tell()
        self._show_preview()
        if same:
            QTimer.singleShot(0, self, lambda: self._area.verticalScrollBar().setValue(at))

    def _add(self) -> None:
        self._fill(self.sheet.add_row(self.tr("New criterion")))
        if self.form is not None:
            self.form.entries["title"].field.setFocus()
            self.form.entries["title"].field.selectAll()

    def _move(self, by: int) -> None:
        if self.list.currentRow() >= 0:
            self._fill(self.sheet.move(self.list.currentRow(), by))

    def _remove(self) -> None:
        row = self.list.currentRow()
        if row >= 0:
            self.sheet.remove(row)
            self._fill(max(row - 1, 0))

    # --- left in the middle -----------------------------------------------------------

    def typed(self) -> Typed | None:
        """What was changed and is not saved."""
        self._history.remember(self.sheet.text)
        if self.sheet.text == self._saved:
            return None
        return Typed(
            self._history,
            self.list.currentRow(),
            self.name.text(),
            self.use.isChecked(),
        )

    def _take_up(self, typed: Typed) -> None:
        self._history = typed.history
        self.name.setText(typed.name)
        self.use.setChecked(typed.use)
        self._show_text(typed.history.now, typed.row)

    def save_now(self) -> bool:
        """Save before this returns; what is in the way is said."""
        self.judge()
        if self.rubric is None:
            return False
        self._desk.finish()
        try:
            self._desk.held.save_rubric(self.name.text(), self.sheet.text, use=self.use.isChecked())
        except Exception as error:  # a name that will not do, the disk, the journal: all are told
            self._failed(error)
            return False
        self._saved = self.sheet.text
        return True

    def _discard(self) -> None:
        """Back to what is saved, as a step that Undo takes back."""
        self._history.remember(self.sheet.text)
        self._history.remember(self._saved)
        self._show_text(self._saved)

    # --- taken back, done again -------------------------------------------------------

    def _undo(self) -> None:
        self._history.remember(self.sheet.text)  # what was typed a moment ago, too
        self._show_text(self._history.back())

    def _redo(self) -> None:
        self._show_text(self._history.forward())

    def _show_text(self, text: str | None, row: int | None = None) -> None:
        if text is None:
            return
        self.sheet.restore(text)
        if isinstance(self.title.field, QLineEdit):
            self.title.field.setText(self.sheet.title)
        self._fill(max(self.list.currentRow() if row is None else row, 0))

    def _set_title(self, text: str) -> None:
        self.sheet.title = text
        self._later.start()

    # --- judging ----------------------------------------------------------------------

    def judge(self) -> None:
        """Judge what is written now; what the class would get follows behind the window."""
        self._later.stop()
        self._history.remember(self.sheet.text)
        self.undo.setEnabled(bool(self._history.past))
        self.redo.setEnabled(bool(self._history.undone))
        self.discard.setEnabled(self.sheet.text != self._saved)
        session = self._desk.session
        self.rubric, self.told = self.sheet.check(session.brief.feedback_language)
        self._tell()
        if self._task is not None:
            self._task.stop()
            self._task = None
        rubric = self.rubric
        if rubric is None:
            self._show_preview()
            return
        self._task = in_background(
            self,
            lambda _progress, _stop: preview(session, rubric),
            done=lambda found: self._keep(rubric, found),
            failed=lambda error: self.trouble.setText(plainly(error)),
        )

    def _keep(self, rubric: Rubric, found: Preview) -> None:
        self._found = rubric, found
        self._show_preview()

    def _show_preview(self) -> None:
        """What was found last; while something is wrong, it is shown as what it was."""
        row, rows = self.list.currentRow(), self.sheet.rows()
        name = str(rows[row].get("id", "")) if 0 <= row < len(rows) else ""
        rubric, found = self._found or (None, None)
        criteria = {one.id: one for one in rubric.criteria} if rubric is not None else {}
        self.preview.show_preview(found, criteria.get(name), stale=self.rubric is None)

    def _tell(self) -> None:
        bad = {one.criterion for one in self.told}
        for row, table in enumerate(self.sheet.rows()):
            self.list.show_title(row, str(table.get("title", "")), wrong=row in bad)
        whole = [said(opening(one.message)) for one in self.told if one.criterion is None]
        self.title.tell("\n".join(whole))
        if self.form is not None:
            row = self.list.currentRow()
            self.form.tell([one for one in self.told if one.criterion == row])
        count = len(self.told)
        one_wrong = self.tr("One thing is not right yet (▲).")
        more = self.tr("{n} things are not right yet (▲).").format(n=count)
        self.trouble.setText("" if not count else one_wrong if count == 1 else more)
        self.trouble.setVisible(bool(count))
        self.save.setEnabled(not count and not self._desk.held.read_only)

    def _tell_name(self) -> None:
        """Whose place the file will take."""
        name = self.name.text().strip().removesuffix(".toml")
        words = ""
        if name == self._own_name:
            pass
        elif (self._desk.held.folder / f"{name}.toml").is_file():
            words = self.tr("The class folder has a rubric “{name}”: yours takes its place.")
        elif (SHIPPED / f"{name}.toml").is_file():
            words = self.tr(
                "“{name}” is the name of a rubric that comes along: for this class, yours takes "
                "its place."
            )
        self.name_told.setText(words.format(name=name))
        self.name_told.setVisible(bool(words))

    def _save(self) -> None:
        self.judge()
        if self.rubric is None:
            return
        held, text, name = self._desk.held, self.sheet.text, self.name.text()
        use = self.use.isChecked()
        self.save.setEnabled(False)
        self._pending.save(
            self,
            self._desk,
            lambda _progress, _stop: held.save_rubric(name, text, use=use),
            done=lambda: self._leave_saved(text),
            failed=self._failed,
        )

    def _leave_saved(self, text: str) -> None:
        self._saved = text
        self.left.emit()

    def _failed(self, error: Exception) -> None:
        self.save.setEnabled(True)
        self.trouble.setText(plainly(error))
        self.trouble.show()

    def _size(self) -> None:
        self._side.setFixedWidth(min(self._theme.px(190), 300))
        self.name.setFixedWidth(self._theme.px(150))
        self._measure()
