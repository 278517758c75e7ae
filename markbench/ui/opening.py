"""What is slow about opening a class: done off the main thread, as early as may be.

Numpy, scipy and the store take longer to load than a class of thirty to read. The window is
up before any of them; while the teacher looks for her folder they are loaded ahead.
"""

from __future__ import annotations

import gc
from collections.abc import Callable
from pathlib import Path
from typing import TYPE_CHECKING

from markbench.ui.background import Progress, Stop

if TYPE_CHECKING:
    from markbench.session import Session


def open_session(folder: Path, who: str = "") -> Callable[[Progress, Stop], Session]:
    """Work that reads a class folder."""

    def work(progress: Progress, stop: Stop) -> Session:
        from markbench.intake.allocation import without_collecting
        from markbench.session import Session

        with without_collecting():
            session = Session.open(folder, who, progress=progress, stop=stop)
        if stop():
            session.close()
        return session

    return work


def set_apart() -> None:
    """Take what lives as long as the class out of the cycle collector's visits.

    A visit to all that is known of a thousand learners stops every thread for a quarter of a
    second, at any moment, and could free none of it. Only while the class is open: what is
    set apart later is never let go.
    """
    gc.freeze()


def let_class_go() -> None:
    """Have the collector see again what was set apart, once nobody needs it."""
    gc.unfreeze()
    gc.collect()


def load_libraries(_progress: Progress, _stop: Stop) -> None:
    """Work that loads what reading a class needs: no Qt in it, so any thread may."""
    import markbench.session  # noqa: F401


def load_pages() -> None:
    """Load what the pages bring along, on the window's own thread.

    Importing Qt's modules on another thread while this one draws has crashed.
    """
    import markbench.ui.across.page
    import markbench.ui.contact.page
    import markbench.ui.handins.page
    import markbench.ui.overview.page
    import markbench.ui.portfolio.page  # noqa: F401


def draft_all(session: Session) -> Callable[[Progress, Stop], None]:
    """Work for when the class is on the screen: everybody's drafts, before they are asked for."""
    return lambda _progress, stop: session.draft_all(stop)
