"""Everything that can be done, each with a key, and the list in which it is found by typing."""

from __future__ import annotations

import unicodedata
from collections.abc import Callable
from dataclasses import dataclass

from PySide6.QtCore import (
    QEvent,
    QModelIndex,
    QObject,
    QPersistentModelIndex,
    QRectF,
    QSize,
    Qt,
)
from PySide6.QtGui import (
    QAction,
    QColor,
    QFocusEvent,
    QKeyEvent,
    QKeySequence,
    QPainter,
    QTextDocument,
)
from PySide6.QtWidgets import (
    QAbstractButton,
    QAbstractSpinBox,
    QApplication,
    QFrame,
    QLineEdit,
    QListWidget,
    QListWidgetItem,
    QPlainTextEdit,
    QStyle,
    QStyledItemDelegate,
    QStyleOptionViewItem,
    QTextEdit,
    QVBoxLayout,
    QWidget,
)
from shiboken6 import isValid

from markbench.ui.look.theme import Theme
from markbench.ui.parts import label, press

_FIELDS = (QLineEdit, QTextEdit, QPlainTextEdit, QAbstractSpinBox)
Index = QModelIndex | QPersistentModelIndex


@dataclass(frozen=True, slots=True)
class Deed:
    """One thing that can be done.

    ``where`` says on which page it is offered ("" for all), ``also`` by which other words it
    is found, ``able`` whether it can be done just now; ``listed`` whether the list has it: its
    key says what is in the way.
    """

    action: QAction
    where: str
    also: str = ""
    able: Callable[[], bool] = lambda: True
    listed: Callable[[], bool] = lambda: True

    @property
    def sought(self) -> str:
        """What a search looks in."""
        return _plain(f"{self.action.text()} {self.also}")


class Deeds(QObject):
    """All actions of the window. An action may be done only where it is offered.

    What the buttons of the page in sight do is found too, by their words, so that nothing
    can be done on a page that is not in the list.
    """

    def __init__(self, window: QWidget) -> None:
        super().__init__(window)
        self._window = window
        self.all: list[Deed] = []
        self._place = ""
        self._page: QWidget | None = None

    def add(
        self,
        words: str,
        keys: str | QKeySequence.StandardKey | tuple[str, ...],
        do: Callable[[], object],
        where: str = "",
        also: str = "",
        able: Callable[[], bool] = lambda: True,
        listed: Callable[[], bool] = lambda: True,
    ) -> QAction:
        """Add an action with its keys (empty: none), found by the words ``also`` as well."""
        action = QAction(words, self._window)
        if isinstance(keys, tuple):
            action.setShortcuts([QKeySequence(key) for key in keys])
        elif keys:
            action.setShortcut(QKeySequence(keys))
        action.triggered.connect(lambda _checked=False: do() if able() else None)
        self._window.addAction(action)
        self.all.append(Deed(action, where, also, able, listed))
        return action

    def go_to(self, place: str, page: QWidget) -> None:
        """Offer what belongs to a place, and what the buttons of its page do."""
        self._place, self._page = place, page
        for deed in self.all:
            deed.action.setEnabled(deed.where in ("", place) or place in deed.where.split())

    def find(self, text: str) -> list[Deed]:
        """Actions on offer whose words contain all that was typed: those of this page first."""
        words = _plain(text).split()
        here = [deed for deed in self.all if deed.where == self._place]
        elsewhere = [deed for deed in self.all if deed.where != self._place]
        return [
            deed
            for deed in (*here, *self._on_page(), *elsewhere)
            if deed.action.isEnabled()
            and deed.able()
            and deed.listed()
            and all(word in deed.sought for word in words)
        ]

    def _on_page(self) -> list[Deed]:
        page, found = self._page, []
        named = [_words(deed.action.text()) for deed in self.all if deed.action.isEnabled()]
        for control in page.findChildren(QAbstractButton) if page is not None else ():
            words = " ".join((control.accessibleName() or control.text()).split())
            # “Not yet marked” is “Only those not yet marked”: once is enough.
            known = any(_words(words) <= name for name in named)
            if words and not known and control.isVisible() and control.isEnabled():
                action = QAction(words)
                action.triggered.connect(lambda _on=False, control=control: press(control))
                found.append(Deed(action, self._place))
        return found


class _DeedDelegate(QStyledItemDelegate):
    """Words on the left, the keys on the right."""

    def __init__(self, theme: Theme, parent: QWidget) -> None:
        super().__init__(parent)
        self._theme = theme

    def paint(self, painter: QPainter, option: QStyleOptionViewItem, index: Index) -> None:
        deed: Deed | None = index.data(Qt.ItemDataRole.UserRole)
        colours, box = self._theme.palette, QRectF(option.rect)
        if deed is None:
            super().paint(painter, option, index)
            return
        if option.state & QStyle.StateFlag.State_Selected:
            painter.fillRect(box, QColor(colours.deed_soft))
            painter.fillRect(QRectF(box.left(), box.top(), 3, box.height()), QColor(colours.deed))
        inner = box.adjusted(12, 0, -12, 0)
        painter.setFont(self._theme.font())
        painter.setPen(QColor(colours.ink))
        middle = Qt.AlignmentFlag.AlignVCenter
        painter.drawText(inner, Qt.AlignmentFlag.AlignLeft | middle, deed.action.text())
        keys = deed.action.shortcut().toString(QKeySequence.SequenceFormat.NativeText)
        painter.setFont(self._theme.font("small"))
        painter.setPen(QColor(colours.pencil))
        painter.drawText(inner, Qt.AlignmentFlag.AlignRight | middle, keys)

    def sizeHint(self, option: QStyleOptionViewItem, _index: Index) -> QSize:
        return QSize(option.rect.width(), round(self._theme.line_height() + 10))


class DeedList(QFrame):
    """The searchable list: type, arrows, Enter. Escape closes."""

    def __init__(self, deeds: Deeds, theme: Theme, window: QWidget) -> None:
        super().__init__(window)
        self.setProperty("kind", "paper")
        self._deeds, self._theme, self._window = deeds, theme, window
        self._before: QWidget | None = None
        self.search = QLineEdit()
        self.search.setPlaceholderText(self.tr("What would you like to do?"))
        self.search.setAccessibleName(self.tr("Search the actions"))
        self.search.textChanged.connect(self._fill)
        self.search.installEventFilter(self)
        self.list = QListWidget()
        self.list.setAccessibleName(self.tr("Actions"))
        self.list.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.list.setItemDelegate(_DeedDelegate(theme, self.list))
        self.list.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self.list.itemClicked.connect(self._do)
        column = QVBoxLayout(self)
        column.setContentsMargins(16, 12, 16, 16)
        column.addWidget(label(self.tr("Everything that can be done here"), "heading"))
        column.addWidget(self.search)
        column.addWidget(self.list, 1)
        self.hide()

    def open_list(self) -> None:
        """Show it, empty, over the middle of the window."""
        window = self._window
        wide = min(self._theme.px(560), window.width() - 40)
        high = min(self._theme.px(460), window.height() - 60)
        self.setGeometry((window.width() - wide) // 2, 44, wide, high)
        self._before = QApplication.focusWidget()
        self.search.clear()
        self._fill()
        self.show()
        self.raise_()
        self.search.setFocus()

    def eventFilter(self, _watched: QObject, event: QEvent) -> bool:
        """Keys that move in the list while the text keeps the keyboard."""
        if isinstance(event, QFocusEvent) and event.lostFocus() and self.isVisible():
            if event.reason() == Qt.FocusReason.ActiveWindowFocusReason:
                return False  # another program was looked at; the list waits
            self._before = None  # the keyboard went elsewhere by a hand
            self._shut()
        if event.type() == QEvent.Type.ShortcutOverride:
            event.accept()
            return False
        if isinstance(event, QKeyEvent) and event.type() == QEvent.Type.KeyPress:
            if event.key() in (Qt.Key.Key_Down, Qt.Key.Key_Up):
                step = 1 if event.key() == Qt.Key.Key_Down else -1
                row = min(max(self.list.currentRow() + step, 0), self.list.count() - 1)
                self.list.setCurrentRow(row)
                return True
            if event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
                self._do(self.list.currentItem())
                return True
            if event.key() == Qt.Key.Key_Escape:
                self._shut()
                return True
        return False

    def _fill(self) -> None:
        self.list.clear()
        for deed in self._deeds.find(self.search.text()):
            item = QListWidgetItem(deed.action.text())
            item.setData(Qt.ItemDataRole.UserRole, deed)
            self.list.addItem(item)
        if not self.list.count():
            nothing = QListWidgetItem(self.tr("Nothing here by these words; fewer may find it."))
            nothing.setFlags(Qt.ItemFlag.NoItemFlags)
            self.list.addItem(nothing)
        self.list.setCurrentRow(0)

    def _do(self, item: QListWidgetItem | None) -> None:
        deed: Deed | None = None if item is None else item.data(Qt.ItemDataRole.UserRole)
        if deed is None:
            return
        self._shut()
        deed.action.trigger()

    def _shut(self) -> None:
        before, self._before = self._before, None
        self.hide()
        if before is not None and isValid(before):  # its page may have been made anew
            before.setFocus(Qt.FocusReason.PopupFocusReason)


class UndoThroughFields(QObject):
    """Lets Undo and Redo through a field in which there is nothing typed to take back.

    Qt's fields keep these keys to themselves; whoever decided something with the caret in one
    would press them in vain.
    """

    def __init__(self, parent: QObject) -> None:
        super().__init__(parent)
        app = QApplication.instance()
        assert isinstance(app, QApplication)
        app.focusChanged.connect(self._follow)

    def _follow(self, old: QWidget | None, now: QWidget | None) -> None:
        if old is not None and isValid(old):
            old.removeEventFilter(self)
        if isinstance(now, _FIELDS) and not isinstance(now.parent(), DeedList):
            now.installEventFilter(self)

    def eventFilter(self, field: QObject, event: QEvent) -> bool:
        """Refuse the key on the field's behalf."""
        if event.type() != QEvent.Type.ShortcutOverride or not isinstance(event, QKeyEvent):
            return False
        keys = QKeySequence.StandardKey
        undo, redo = event.matches(keys.Undo), event.matches(keys.Redo)
        if not (undo or redo):
            return False
        typed = field.lineEdit() if isinstance(field, QAbstractSpinBox) else field
        if isinstance(typed, QTextEdit | QPlainTextEdit):
            typed = typed.document()
        assert isinstance(typed, QLineEdit | QTextDocument)
        held = typed.isUndoAvailable() if undo else typed.isRedoAvailable()
        if not held:
            event.ignore()
        return not held


def _words(text: str) -> set[str]:
    return {word.strip(".,:;…()") for word in _plain(text).split()}


def _plain(text: str) -> str:
    apart = unicodedata.normalize("NFKD", text.casefold())
    return "".join(c for c in apart if not unicodedata.combining(c))
