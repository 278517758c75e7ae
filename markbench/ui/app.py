"""Starts Qt with our look and shows the window."""

from __future__ import annotations

import sys
from pathlib import Path

from PySide6.QtCore import QSettings
from PySide6.QtWidgets import QApplication

from markbench.ui import languages
from markbench.ui.look.icons import app_icon
from markbench.ui.look.theme import Theme
from markbench.ui.window import Window


def application() -> QApplication:
    """The application, made once."""
    held = QApplication.instance()
    app = held if isinstance(held, QApplication) else QApplication(sys.argv[:1])
    app.setApplicationName("Markbench")
    app.setOrganizationName("Markbench")
    app.setDesktopFileName("markbench")
    app.setWindowIcon(app_icon())
    return app


def main(folder: Path | None) -> int:
    """Show the window, open ``folder`` if given, and run until it is closed."""
    app = application()
    settings = QSettings()
    languages.install(app, languages.chosen(settings))
    window = Window(Theme(app, settings), settings)
    window.show()
    if folder is not None:
        window.open_folder(folder)
    return app.exec()
