"""Walks every page of the window as a hand, an eye and a screen reader do."""

from __future__ import annotations

from pathlib import Path

import numpy as np
import pytest
from everywhere import OF_A_CLASS, controls, each_page, go_to, settle_layout, words_in
from PySide6.QtCore import QRect, Qt
from PySide6.QtGui import QColor, QImage
from PySide6.QtWidgets import (
    QAbstractButton,
    QAbstractItemView,
    QApplication,
    QComboBox,
    QLabel,
    QLineEdit,
    QWidget,
)
from pytestqt.qtbot import QtBot

from markbench.ui.look.contrast import contrast
from markbench.ui.look.sheet import style_sheet
from markbench.ui.look.theme import Theme
from markbench.ui.look.tokens import DARK, LIGHT
from markbench.ui.parts import ElidedLabel
from markbench.ui.window import Window

# What has a tab order of its own: the drawer and the list keep the keyboard while open.
KEEPS_THE_KEYBOARD = ("phrases", "actions")
MOST_STOPS = 300
SEEN = 40  # a difference of a colour channel that an eye can see, of 255


def said(control: QWidget) -> str:
    """What a screen reader says of it."""
    text = getattr(control, "text", None)
    return (control.accessibleName() or (text() if callable(text) else "")).strip()


def picture(image: QImage) -> np.ndarray:
    image = image.convertToFormat(QImage.Format.Format_RGB32)
    held = np.frombuffer(image.constBits(), np.uint8)
    return held.reshape(image.height(), image.width(), 4)[:, :, :3].astype(int)


def stops(qtbot: QtBot, window: Window) -> list[QWidget]:
    """Where the Tab key leads on the page shown, once round."""
    window.focusNextChild()
    found, stays = [QApplication.focusWidget()], 0
    while len(found) < MOST_STOPS and stays < 4:  # a date has three parts; more is a trap
        qtbot.keyClick(found[-1], Qt.Key.Key_Tab)
        here = QApplication.focusWidget()
        stays = stays + 1 if here is found[-1] else 0
        if here in found[:-1]:
            break
        if not stays:
            found.append(here)
    return found


def in_sight(control: QWidget) -> bool:
    """Whether its middle is shown, and nothing lies over it."""
    top = control.window()
    middle = control.visibleRegion().boundingRect().center()
    hit = top.childAt(control.mapTo(top, middle))
    shown = not control.visibleRegion().isEmpty()
    return shown and hit is not None and (hit is control or control.isAncestorOf(hit))


def test_every_control_has_a_name_and_is_reached_by_tab(
    qtbot: QtBot, empty_window: Window, class_folder: Path
) -> None:
    window, faults, count = empty_window, [], 0
    window.activateWindow()
    for page in each_page(qtbot, window, class_folder):
        faults += [
            f"{page}: {type(c).__name__} has no name" for c in controls(window) if not said(c)
        ]
        if page in KEEPS_THE_KEYBOARD:
            continue
        led = stops(qtbot, window)
        count += len(led)
        faults += [
            f"{page}: Tab stops at a nameless {type(c).__name__}" for c in led if not said(c)
        ]
        for control in controls(window):
            group = isinstance(control, QAbstractButton) and control.group() is not None
            of_its_kind = group and any(c in led for c in control.group().buttons())
            inside = any(control.isAncestorOf(c) for c in led)
            here = control.isEnabled() and in_sight(control)
            if here and control not in led and not of_its_kind and not inside:
                faults.append(f"{page}: Tab never comes to “{said(control)}”")
    assert count > 200
    assert faults == []


def test_the_keyboard_is_seen_wherever_it_is(
    qtbot: QtBot, empty_window: Window, class_folder: Path
) -> None:
    window, faults, tried = empty_window, [], set()
    window.activateWindow()
    for page in each_page(qtbot, window, class_folder):
        for control in stops(qtbot, window) if page not in KEEPS_THE_KEYBOARD else ():
            checked = isinstance(control, QAbstractButton) and control.isChecked()
            alike = (page, type(control), control.property("kind"), checked)
            if alike in tried or not in_sight(control):
                continue
            tried.add(alike)
            control.setFocus(Qt.FocusReason.TabFocusReason)
            QApplication.processEvents()
            room = QRect(control.mapTo(window, control.rect().topLeft()), control.size())
            having = picture(window.grab(room).toImage())
            control.clearFocus()
            QApplication.processEvents()
            without = picture(window.grab(room).toImage())
            changed = int((np.abs(having - without).max(axis=2) > SEEN).sum())
            if changed < 2 * min(having.shape[:2]):  # two edges of the shorter side
                faults.append(f"{page}: {type(control).__name__} “{said(control)[:40]}”")
    assert len(tried) > 60
    assert faults == []


def test_nothing_is_cut_at_twice_the_text(
    qtbot: QtBot, empty_window: Window, class_folder: Path
) -> None:
    window, faults = empty_window, []
    window._theme.set_scale(2.0)
    try:
        for page in each_page(qtbot, window, class_folder):
            window.resize(1280, 800)
            settle_layout()
            if window.width() > 1280:
                faults.append(f"{page}: the window grows to {window.width()}")
            faults += [f"{page}: {words}" for words in cut(window)]
    finally:
        window._theme.set_scale(1.0)
    assert faults == []


def cut(window: Window) -> list[str]:
    """Words that have no room."""
    found = []
    for words in window.findChildren(QLabel):
        if not words.isVisible() or not words.text() or isinstance(words, ElidedLabel):
            continue
        if words.wordWrap():
            needs = words.width(), words.heightForWidth(words.width())
        else:
            needs = words.sizeHint().toTuple()
        if words.width() < needs[0] or words.height() < needs[1]:
            found.append(words.text()[:60])
    for control in controls(window):
        metrics, words = control.fontMetrics(), ""
        if isinstance(control, QAbstractButton):
            words = control.text()
        elif isinstance(control, QComboBox):
            words = control.currentText()
        elif isinstance(control, QLineEdit) and not control.text():
            words = control.placeholderText()
        needs = metrics.size(0, words)
        if words and (control.width() < needs.width() or control.height() < needs.height()):
            found.append(words)
        right = control.mapTo(window, control.rect().topRight()).x()
        if in_sight(control) and right > window.width():
            found.append(f"{said(control)} reaches beyond the window")
    return found


def test_a_change_of_light_reaches_every_open_page(
    qtbot: QtBot, empty_window: Window, class_folder: Path
) -> None:
    """Nothing of a page drawn in the light is left when it is seen in the dark."""
    window, theme = empty_window, empty_window._theme
    kept = tuple(p for p in OF_A_CLASS if p not in ("rubric", "brief"))
    for _ in each_page(qtbot, window, class_folder, kept):
        pass
    theme.choose(True)
    left = {}
    for page in kept:
        go_to(window, page)
        seen = picture(window.grab().toImage())
        for name in ("bench", "paper", "field", "shade", "deed_soft"):
            light = QColor(getattr(LIGHT, name))
            colour = (light.blue(), light.green(), light.red())
            share = float((seen == colour).all(axis=2).mean())
            if share > 0.0005:  # a picture of a learner may hold some such points
                left[page, name] = f"{share:.2%}"
    theme.choose(False)
    assert left == {}


def test_no_name_is_left_anywhere_while_names_are_hidden(
    qtbot: QtBot, window: Window, class_folder: Path
) -> None:
    """Words, tooltips, names for screen readers, items, titles: on pages open before and after."""
    names = ("Aino", "Bodil", "Cato", "Example", "Instance", "IMG_0001", class_folder.name + "/")
    pages = tuple(page for page in OF_A_CLASS if page not in ("pseudonyms", "actions"))
    for page in pages:
        go_to(window, page)
    shown = [words for _, words in words_in(window)]
    go_to(window, "class")
    shown += [words for _, words in words_in(window)]
    assert any("Bodil" in words for words in shown)  # the walk does find them
    with qtbot.waitSignal(window.desk.changed, timeout=5000):
        window.turn_blind()
    left = []
    for page in pages:
        go_to(window, page)
        qtbot.wait(40)
        left += [
            f"{page}: {place} “{words[:80]}”"
            for place, words in words_in(window)
            if any(name in words for name in names)
        ]
    assert left == []


def test_what_is_asked_for_in_a_field_can_be_read(qtbot: QtBot, theme: Theme) -> None:
    """Qt draws a placeholder at half its strength unless told otherwise."""
    for palette in (LIGHT, DARK):
        field = QLineEdit()
        field.setStyleSheet(style_sheet(palette, 1.0))
        field.setPlaceholderText("█████")
        qtbot.addWidget(field)
        field.resize(200, 40)
        field.show()
        settle_layout()
        image = field.grab().toImage()
        ground = image.pixelColor(190, 20).name()
        ink = image.pixelColor(16, 20).name()
        assert ground == palette.field
        assert contrast(ink, ground) >= 4.5


@pytest.mark.parametrize(
    ("page", "words"),
    [
        ("brief", "Table of readings…"),
        ("rubric", "Add a level"),
        ("rubric", "Take the criterion away"),
        ("sheet", "Evidence: All there, 3 marks"),
        ("moderation", "Merge a colleague's marks…"),
    ],
)
def test_what_a_button_does_is_found_in_the_list_of_actions(
    qtbot: QtBot, empty_window: Window, class_folder: Path, page: str, words: str
) -> None:
    window = empty_window
    window.open_folder(class_folder)
    qtbot.waitUntil(lambda: window.sheet is not None, timeout=10_000)
    go_to(window, page)
    pressed = []
    for control in window.pages.currentWidget().findChildren(QAbstractButton):
        if said(control) == words:
            control.clicked.disconnect()
            control.clicked.connect(lambda: pressed.append(words))
    qtbot.keyClick(window, Qt.Key.Key_F1)
    window.deed_list.search.insert(words)
    texts = [window.deed_list.list.item(i).text() for i in range(window.deed_list.list.count())]
    assert words in texts
    qtbot.keyClick(window.deed_list.search, Qt.Key.Key_Return)
    assert pressed == [words]


def test_views_show_where_the_keyboard_is_among_several_chosen(
    qtbot: QtBot, window: Window
) -> None:
    grid = window.bench.grid
    assert isinstance(grid, QAbstractItemView)
    window.activateWindow()
    grid.setFocus()
    grid.selectAll()
    grid.setCurrentIndex(grid.model().index(0, 0))
    grid.selectAll()
    settle_layout()
    rooms = [grid.visualRect(grid.model().index(i, 0)).adjusted(0, 0, -1, -1) for i in (0, 1)]
    first, second = (picture(grid.viewport().grab(room).toImage()) for room in rooms)
    grid.selectionModel().setCurrentIndex(
        grid.model().index(1, 0), grid.selectionModel().SelectionFlag.NoUpdate
    )
    settle_layout()
    moved = picture(grid.viewport().grab(rooms[1]).toImage())
    assert (np.abs(moved - second).max(axis=2) > SEEN).sum() > 200
    left = picture(grid.viewport().grab(rooms[0]).toImage())
    assert (np.abs(left - first).max(axis=2) > SEEN).sum() > 200
