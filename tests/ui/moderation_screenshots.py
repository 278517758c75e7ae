"""Draws the screens of second marking from the sample class, without a screen.

    python tests/ui/moderation_screenshots.py OUT_FOLDER

The teacher's page before and after a reply, and a pack blind and looked at, at 1280×800 and
1920×1080, light and dark. The class is copied first.
"""

from __future__ import annotations

import shutil
import sys
import tempfile
from collections.abc import Callable
from pathlib import Path

from PySide6.QtCore import QSettings
from screenshots import ROOT, Camera
from shiboken6 import delete

from markbench.session import Session
from markbench.session.moderating import take_sample
from markbench.session.pack_session import open_pack
from markbench.session.packing import write_pack
from markbench.session.replies import merge_reply
from markbench.ui.app import application
from markbench.ui.look import Theme
from markbench.ui.moderation.page import ModerationPage
from markbench.ui.window import Window

BRIEF = "\ngrades = { A = 12, B = 10, C = 7, D = 5 }\n"


def mark_all(session: Session) -> None:
    """As drafted; by eye the second level."""
    for learner in session.learners:
        session.accept(learner.id)
        for criterion in session.rubric.criteria:
            if session.mark(learner.id, criterion.id) is None:
                session.set_level(learner.id, criterion.id, criterion.levels[1].name)


def second_mark(pack: Path, reply: Path) -> None:
    """A moderator who mostly agrees, and is a level higher now and then."""
    hers = open_pack(pack, "M. Moderator")
    for number, learner in enumerate(hers.learners):
        for place, criterion in enumerate(hers.rubric.criteria):
            level = criterion.levels[(number + place) % 2]
            hers.second_mark(learner.id, criterion.id, level.name)
        if number:  # the first is left for the picture
            for criterion, first in hers.first(learner.id).items():
                row = next(c for c in hers.rubric.criteria if c.id == criterion)
                if number % 4 == 1:
                    hers.moderate(learner.id, criterion, "adjust", "So I see it.",
                                  row.levels[0].name)  # fmt: skip
                elif number % 5 == 2:
                    hers.moderate(learner.id, criterion, "ask", "Was a sheet lost?")
                else:
                    hers.moderate(learner.id, criterion, "agree")
                del first
    hers.write_reply(reply)
    hers.close()


def main() -> None:
    out = Path(sys.argv[1])
    out.mkdir(parents=True, exist_ok=True)
    place = Path(tempfile.mkdtemp())
    folder = place / "10A"
    shutil.copytree(ROOT / "sample_class", folder)
    brief = folder / "brief.toml"
    brief.write_text(BRIEF + brief.read_text("utf-8"), "utf-8")
    session = Session.open(folder, "A. Teacher")
    mark_all(session)
    session.close()
    app = application()
    settings = QSettings(str(place / "settings.ini"), QSettings.Format.IniFormat)
    theme = Theme(app, settings)
    window = Window(theme, settings, "A. Teacher")
    camera = Camera(out, window)
    window.show()

    def each(name: str, go: Callable[[], None] = lambda: None) -> None:
        for wide, high in ((1280, 800), (1920, 1080)):
            window.resize(wide, high)
            for dark in (False, True):
                theme.choose(dark)
                camera.rest(0.3)
                go()
                camera.take(f"{name}_{wide}_{'dark' if dark else 'light'}")

    window.open_folder(folder)
    camera.rest(until=lambda: window.sheet is not None)
    window.show_place("moderation")
    page = window.further["moderation"]
    assert isinstance(page, ModerationPage)
    camera.rest(until=lambda: page._now is not None and page._now.figures is not None)
    each("moderation_begun")
    window.close_class()

    session = Session.open(folder, "A. Teacher")
    take_sample(session, seed=4)
    pack = write_pack(session, place / "10A.markbench-pack").path
    second_mark(pack, place / "back.markbench-reply")
    merge_reply(session, place / "back.markbench-reply")
    session.close()
    window.open_folder(folder)
    camera.rest(until=lambda: window.sheet is not None)
    window.show_place("moderation")
    page = window.further["moderation"]
    assert isinstance(page, ModerationPage)
    camera.rest(until=lambda: page._now is not None and page._now.figures is not None)
    each("moderation", lambda: page.go_to("sample"))
    each("moderation_signing", lambda: page.go_to("out"))
    window.close_class()

    window._who = "M. Moderator"
    window.open_path(pack)
    camera.rest(until=lambda: window.pack_door.sheet is not None)
    sheet = window.pack_door.sheet
    assert sheet is not None
    each("pack_blind")
    sheet.show_number(sheet.numbers.itemData(1))
    each("pack_looked")
    window.close()
    delete(window)  # widgets that outlive the application take it down with them
    shutil.rmtree(place)


if __name__ == "__main__":
    main()
