"""Pages made anew over the class that is open, where its brief or its rubric were written.

The session has read the class again by then. A page made for other criteria cannot follow, so
all go, and what was in sight is shown again. Rejected: opening the class once more, which loses
the place one stood at, and shows the start in between.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QCoreApplication

if TYPE_CHECKING:
    from markbench.ui.window import Window

_CLASS = "class"


def renew(window: Window) -> None:
    """Make every page anew and go back to the learner or the place that was in sight."""
    from markbench.session.class_files import put_back

    desk, sheet = window.desk, window.sheet
    if desk is None:
        return
    in_sight, back = window.pages.currentWidget(), window._back
    learner = sheet.learner if sheet is not None and in_sight is sheet else ""
    places = {id(page): name for name, page in window.further.items()}
    place = places.get(id(in_sight), _CLASS)
    window._leave_pages()
    window._show_desk(desk.successor())
    desk.deleteLater()
    if learner in {one.id for one in desk.held.learners}:
        window.open_learner(learner)
        window._back = back
    else:
        window.show_place(place)
    if desk.saved_at is not None:
        window._say_saved(f"{desk.saved_at:%H:%M}")
    files = put_back(desk.held.history())
    if files:  # after Undo or Redo nothing else may show it
        words = QCoreApplication.translate("Window", "✓ as before: {files}")
        window._say_notice(words.format(files=", ".join(files)))
