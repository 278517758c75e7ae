"""Every page of the window, and how a hand comes to it: for tests that walk them all."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from pathlib import Path

from PySide6.QtCore import QAbstractItemModel, QAbstractListModel, QModelIndex, Qt
from PySide6.QtWidgets import (
    QAbstractButton,
    QAbstractItemView,
    QAbstractSpinBox,
    QApplication,
    QComboBox,
    QHeaderView,
    QLineEdit,
    QPlainTextEdit,
    QSlider,
    QTextEdit,
    QWidget,
)
from pytestqt.qtbot import QtBot

from markbench.ui.newclass.page import BRIEF, FOUND, RUBRIC, WHOSE
from markbench.ui.places import FURTHER
from markbench.ui.window import Window

CONTROLS = (
    QAbstractButton, QAbstractItemView, QAbstractSpinBox, QComboBox, QLineEdit, QPlainTextEdit,
    QSlider, QTextEdit,
)  # fmt: skip

NEW = {"what was found": FOUND, "whose it is": WHOSE, "what was asked": BRIEF, "how marked": RUBRIC}
OF_A_CLASS = (
    "class", "to settle", "sheet", "photo", "film", "own table", "phrases", "actions", *FURTHER,
    "brief", "rubric", "copies", "purge", "pseudonyms", "about",
)  # fmt: skip
"""Pages while a class is open; those of a new class and the start come before."""


def settle_layout() -> None:
    """Let Qt lay out and draw what was changed."""
    for _ in range(6):
        QApplication.processEvents()


def go_to(window: Window, page: str) -> None:
    """To a page of an open class, as its deed goes there."""
    assert window.bench is not None
    window.bench.settle_button.setChecked(page == "to settle")
    if page in ("class", "to settle"):
        while window.pages.currentWidget() is not window.bench:
            window.show_class()
    elif page in FURTHER:
        window.show_place(page)
    elif page in ("brief", "rubric"):
        {"brief": window.doors.open_brief, "rubric": window.doors.open_rubric}[page]()
    elif page in ("copies", "purge", "pseudonyms", "about"):
        care = window.care
        {"copies": care.open_copies, "purge": care.open_purge,
         "pseudonyms": care.open_pseudonyms, "about": care.open_about}[page]()  # fmt: skip
    else:
        window.open_learner("s2")
        sheet = window.sheet
        assert sheet is not None
        sheet.shut_layer()
        if page == "photo":
            sheet.open_evidence()
        elif page == "film":
            films = [p for p in sheet.evidence.openable("s2") if p.kind == "swing_video"]
            sheet.open_piece(films[0])
        elif page == "own table":
            sheet.open_table()
        elif page == "phrases":
            window.doors.open_phrases()
        elif page == "actions":
            window.deed_list.open_list()
    settle_layout()


def each_page(
    qtbot: QtBot, window: Window, folder: Path, pages: tuple[str, ...] = OF_A_CLASS
) -> Iterator[str]:
    """Walk from the empty start through a new class and every page of it."""
    settle_layout()
    yield "start"
    window.start.show_trouble(folder, "It cannot be read.")
    settle_layout()
    yield "trouble"
    window.doors.look_at(folder)
    new = window.doors.page
    qtbot.waitUntil(lambda: new.new is not None, timeout=10_000)
    for words, number in NEW.items():
        new.go(number)
        settle_layout()
        yield words
    window.open_folder(folder)
    qtbot.waitUntil(lambda: window.sheet is not None, timeout=10_000)
    for page in pages:
        go_to(window, page)
        yield page


def controls(page: QWidget) -> list[QWidget]:
    """Whatever can be pressed, chosen or filled in, and is in sight; parts of one are not."""
    found = [w for kind in CONTROLS for w in page.findChildren(kind) if w.isVisible()]
    return [w for w in found if not w.objectName().startswith("qt_") and not _is_part(w)]


def _is_part(widget: QWidget) -> bool:
    if isinstance(widget, QHeaderView):
        return True
    above = widget.parentWidget()
    while above is not None:
        if isinstance(above, (QComboBox, QAbstractSpinBox)):
            return True
        above = above.parentWidget()
    return False


def words_in(window: QWidget) -> Iterator[tuple[str, str]]:
    """Every word a hand or a screen reader may come upon, with where it stands."""
    yield "title", window.windowTitle()
    for widget in (window, *window.findChildren(QWidget)):
        if not widget.isVisible():
            continue
        kind = type(widget).__name__
        for place in ("text", "toolTip", "accessibleName", "accessibleDescription",
                      "placeholderText", "toPlainText", "title", "statusTip", "whatsThis",
                      "windowTitle", "currentText"):  # fmt: skip
            say = getattr(widget, place, None)
            if callable(say):
                yield f"{kind}.{place}", str(_called(say))
        if isinstance(widget, (QAbstractItemView, QComboBox)) and widget.model() is not None:
            for words in _in_model(widget.model()):
                yield f"{kind} item", words


def _called(say: Callable[[], object]) -> object:
    try:
        return say()
    except TypeError:  # wants an argument: not a word of its own
        return ""


def _in_model(model: QAbstractItemModel) -> Iterator[str]:
    roles = (
        Qt.ItemDataRole.DisplayRole, Qt.ItemDataRole.ToolTipRole,
        Qt.ItemDataRole.AccessibleTextRole, Qt.ItemDataRole.AccessibleDescriptionRole,
    )  # fmt: skip
    for row in range(model.rowCount(QModelIndex())):
        for column in range(_columns(model)):
            for role in roles:
                yield str(model.index(row, column).data(role) or "")


def _columns(model: QAbstractItemModel) -> int:
    return 1 if isinstance(model, QAbstractListModel) else model.columnCount(QModelIndex())
