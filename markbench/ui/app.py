"""Starts Qt with our look and shows the window."""

from __future__ import annotations

import locale
import sys
import time
from pathlib import Path

from PySide6.QtCore import QSettings, QTimer
from PySide6.QtWidgets import QApplication

from markbench.ui import languages
from markbench.ui.look.icons import app_icon
from markbench.ui.look.theme import Theme
from markbench.ui.window import Window

# Python lets one thread run at a time, and one that works in the background need not give
# way for this long: at the usual 5 ms it would cost the window several frames at a stroke.
_GIVE_WAY_S = 0.0005
_LONGEST_OPENING_S = 600.0  # a busy machine that loads everything for the first time


def application() -> QApplication:
    """The application, made once."""
    held = QApplication.instance()
    app = held if isinstance(held, QApplication) else QApplication(sys.argv[:1])
    sys.setswitchinterval(_GIVE_WAY_S)
    # Qt takes over the system's language for the C library too; ours are the only words here.
    locale.setlocale(locale.LC_TIME, "C")
    app.setApplicationName("Markbench")
    app.setOrganizationName("Markbench")
    app.setDesktopFileName("markbench")
    app.setWindowIcon(app_icon())
    return app


def main(folder: Path | None, *, close_when_open: bool = False) -> int:
    """Show the window, open a class folder or a moderation pack if given, and run.

    With ``close_when_open`` it closes by itself once the class and a learner's sheet have
    been shown; the exit code is then 1 where they were not.
    """
    app = application()
    settings = QSettings()
    languages.install(app, languages.chosen(settings))
    window = Window(Theme(app, settings), settings)
    window.show()
    if folder is not None:
        window.open_path(folder)
    if close_when_open:
        _close_when_open(app, window)
    return app.exec()


def _close_when_open(app: QApplication, window: Window) -> None:
    started = time.monotonic()
    watch = QTimer(window, interval=100)

    def look() -> None:
        if window.sheet is not None and window.bench is not None:
            first = window.bench.order.learners()[:1]
            if first and not window.sheet.isVisible():
                window.open_learner(first[0])
                return
            watch.stop()
            window.close()
            app.exit(0)
        elif window.start.again.isVisible() or time.monotonic() - started > _LONGEST_OPENING_S:
            print(window.start.trouble() or "The class did not open.", file=sys.stderr)
            app.exit(1)

    watch.timeout.connect(look)
    watch.start()
