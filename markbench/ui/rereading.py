"""The folder of the class that is open, read once more: what came in meanwhile is taken up."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QCoreApplication, QTimer

from markbench.ui.background import Progress, Stop
from markbench.ui.mishaps import plainly

if TYPE_CHECKING:
    from markbench.session.looked_again import News
    from markbench.ui.desk import Desk
    from markbench.ui.window import Window

_MOST_NAMES = 3


def read_again(window: Window) -> None:
    """Read the folder in the desk's turn; what is being typed stays, and is saved first."""
    desk = window.desk
    if desk is None:
        return
    window._settle()
    window._say_notice(_tr("Reading the folder again…"))

    def read(_progress: Progress, _stop: Stop) -> News:
        return desk.held.read_again()

    def done(found: News) -> None:
        # The pages may be made anew first.
        QTimer.singleShot(0, window, lambda: _tell(window, found))

    def failed(error: Exception) -> None:
        window._say_trouble(plainly(error))

    desk.do_long(window, read, done, failed)


def _tell(window: Window, found: News) -> None:
    if window.desk is None or window.bench is None:
        return
    window._say_notice(_in_words(window.desk, found))
    if not found.asked:  # a page made anew looks at the pictures by itself
        window.bench.looking.start()


def _in_words(desk: Desk, found: News) -> str:
    """“✓ read again: 2 new files, 1 changed (Aino Example)”."""
    if found.nothing:
        return _tr("✓ read again: nothing new")
    parts = [
        form.format(n=n)
        for n, form in (
            (found.new, _tr("1 new file") if found.new == 1 else _tr("{n} new files")),
            (found.changed, _tr("{n} changed")),
            (found.gone, _tr("{n} gone")),
        )
        if n
    ]
    if found.asked:
        parts.append(_tr("brief, rubric or class list changed"))
    words = _tr("✓ read again: {what}").format(what=", ".join(parts))
    here = {one.id for one in desk.session.learners}
    names = [
        desk.session.portfolio(one).learner.name or one for one in found.learners if one in here
    ]
    if names and len(names) < len(here):
        who = ", ".join(names[:_MOST_NAMES])
        if len(names) > _MOST_NAMES:
            who = _tr("{names} and {n} more").format(names=who, n=len(names) - _MOST_NAMES)
        words += f" ({who})"
    return words


def _tr(text: str) -> str:
    return QCoreApplication.translate("Rereading", text)
