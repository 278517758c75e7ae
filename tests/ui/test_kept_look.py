"""What the window keeps from one evening to the next: light or dark, text size, its place."""

from __future__ import annotations

from PySide6.QtCore import QRect, QSettings, Qt
from PySide6.QtGui import QGuiApplication
from PySide6.QtWidgets import QApplication
from pytestqt.qtbot import QtBot

from markbench.ui.look.theme import Theme
from markbench.ui.look.tokens import DARK, LIGHT
from markbench.ui.window import Window


def test_light_and_dark_follow_the_system_while_it_is_open(empty_window: Window) -> None:
    theme = empty_window._theme
    # The platform drawn into memory has no light and dark of its own: its news is sent by hand.
    system = QGuiApplication.styleHints().colorSchemeChanged
    theme.choose(None)
    system.emit(Qt.ColorScheme.Dark)
    assert theme.palette is DARK
    assert DARK.bench in QApplication.instance().styleSheet()
    system.emit(Qt.ColorScheme.Light)
    assert theme.palette is LIGHT
    theme.choose(True)  # a person's choice stands until she takes it back
    system.emit(Qt.ColorScheme.Light)
    assert theme.palette is DARK
    theme.choose(None)
    assert theme.palette is LIGHT


def test_a_choice_of_light_or_dark_is_kept(
    qapp: QApplication, settings: QSettings, theme: Theme
) -> None:
    try:
        Theme(qapp, settings).choose(True)
        assert Theme(qapp, settings).palette is DARK
        Theme(qapp, settings).choose(None)
        assert Theme(qapp, settings).palette is LIGHT
    finally:
        theme.choose(False)


def test_size_and_place_are_kept(qtbot: QtBot, theme: Theme, settings: QSettings) -> None:
    first = Window(theme, settings, "T. Teacher")
    qtbot.addWidget(first)
    first.setGeometry(QRect(20, 60, 761, 555))
    first.show()
    first.close()
    second = Window(theme, settings, "T. Teacher")
    qtbot.addWidget(second)
    assert second.geometry() == QRect(20, 60, 761, 555)


def test_a_window_kept_on_a_screen_that_is_gone_comes_back_in_sight(
    qtbot: QtBot, theme: Theme, settings: QSettings
) -> None:
    first = Window(theme, settings, "T. Teacher")
    qtbot.addWidget(first)
    first.show()
    first.setGeometry(QRect(9000, 7000, 777, 555))  # as on a second screen to the right
    first.close()
    second = Window(theme, settings, "T. Teacher")
    qtbot.addWidget(second)
    screen = QGuiApplication.primaryScreen().availableGeometry()
    assert screen.contains(second.geometry().topLeft())
    assert screen.intersected(second.geometry()).width() >= 400
