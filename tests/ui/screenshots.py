"""Draws the window's screenshots from the sample class, without a screen.

    python tests/ui/screenshots.py OUT_FOLDER [CLASS_FOLDER]
    python tests/ui/screenshots.py --readme

Each page at 1280×800 and 1920×1080, light and dark; empty, failed, and at 200 % text. The
class is copied first, so that nothing is written beside the sample. Some learners are
marked, as they would be in the middle of an evening. ``--readme`` draws the README's own
pictures and nothing else.
"""

from __future__ import annotations

import os
import shutil
import sys
import tempfile
import time
from collections.abc import Callable
from pathlib import Path

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")

from PySide6.QtCore import QSettings
from shiboken6 import delete

from markbench.session import Session
from markbench.ui.app import application
from markbench.ui.look import Theme
from markbench.ui.newclass.page import NewClassPage
from markbench.ui.window import Window

ROOT = Path(__file__).resolve().parents[2]
PICTURES = ROOT / "markbench" / "ui" / "pictures"


class Camera:
    """Takes pictures of the window once it has come to rest."""

    def __init__(self, out: Path, window: Window) -> None:
        self.out, self.window = out, window

    def rest(self, seconds: float = 0.5, until: Callable[[], bool] = lambda: True) -> None:
        end = time.monotonic() + seconds
        while time.monotonic() < end or not until():
            application().processEvents()
            time.sleep(0.005)

    def take(self, name: str) -> None:
        self.rest()
        self.window.grab()  # one frame draws the cards it has time for; the next has the rest
        self.rest()
        self.window.grab().save(str(self.out / f"{name}.png"))
        print(name)


def mark_some(session: Session) -> None:
    """A third of the class is done, two more are begun."""
    ids = [learner.id for learner in session.learners]
    for learner in ids[::3]:
        session.accept(learner)
    for learner in ids[1:8:3]:
        session.accept(learner, session.rubric.criteria[0].id)


def pages(camera: Camera, window: Window, slip: str) -> list[tuple[str, Callable[[], None]]]:
    """Name of each page, and how to come to it."""
    sheet = window.sheet
    assert sheet is not None

    def class_page() -> None:
        while window.pages.currentWidget() is not window.bench:
            window.show_class()

    def sheet_page() -> None:
        class_page()
        window.open_learner(slip)
        sheet.shut_layer()
        camera.rest(0.8)
        sheet.explanations.show_first()
        finding = next((r for r in sheet.findings.rows if not r.isHidden()), None)
        if finding is not None:
            finding.chosen.emit(finding.finding)

    def photo() -> None:
        sheet_page()
        sheet.open_evidence()
        camera.rest(0.8)

    def film() -> None:
        sheet_page()
        films = [p for p in sheet.evidence.openable(slip) if p.kind == "swing_video"]
        if films:
            sheet.open_piece(films[0])
            camera.rest(1.0)
            sheet.layers.viewer.film.step(12)

    def own_table() -> None:
        sheet_page()
        sheet.open_table()

    def actions() -> None:
        sheet_page()
        window.deed_list.open_list()

    def contact() -> None:
        window.show_place("contact")
        camera.rest(2.0)  # the small pictures arrive

    def settle() -> None:
        class_page()
        assert window.bench is not None
        window.bench.settle_button.setChecked(True)

    def place(name: str) -> Callable[[], None]:
        def go() -> None:
            class_page()
            window.show_place(name)
            camera.rest(1.0)

        return go

    def rubric() -> None:
        window.doors.open_rubric()
        camera.rest(1.5)  # what the class would get is worked out

    return [
        ("class", class_page),
        ("sheet", sheet_page),
        ("photo", photo),
        ("film", film),
        ("own_table", own_table),
        ("contact", contact),
        *((name, place(name)) for name in ("across", "overview", "handins", "moderation")),
        ("actions", actions),
        ("brief", window.doors.open_brief),
        ("rubric", rubric),
        ("settle", settle),
    ]


def new_class(camera: Camera, window: Window, folder: Path, look: str) -> None:
    """The four steps of beginning a class."""
    window.doors.look_at(folder)
    page = window.doors.page
    assert isinstance(page, NewClassPage)
    camera.rest(until=lambda: page.new is not None)
    for number in range(page.steps.count()):
        page.go(number)
        camera.take(f"new{number + 1}_{look}")
    window.doors.leave()


def slipped(session: Session) -> str:
    """A learner whose likeliest explanation is a slip that can be shown, else the first."""
    for learner in session.learners:
        diagnosis = session.diagnosis(learner.id)
        if diagnosis is not None and diagnosis.flagged and diagnosis.explanations[0].mended:
            return learner.id
    return session.learners[0].id


def main() -> None:
    given = sys.argv[1:]
    readme = given == ["--readme"]
    out = PICTURES if readme else Path(given[0])
    out.mkdir(parents=True, exist_ok=True)
    source = Path(given[1]) if len(given) > 1 else ROOT / "sample_class"
    with tempfile.TemporaryDirectory() as place:
        folder = Path(place) / source.name
        shutil.copytree(source, folder)
        app = application()
        settings = QSettings(str(Path(place) / "settings.ini"), QSettings.Format.IniFormat)
        window = Window(Theme(app, settings), settings, "A. Teacher")
        try:
            window.resize(1280, 800)
            window.show()
            (draw_readme if readme else draw)(Camera(out, window), window, folder)
        finally:
            window.close()
            # Before Python ends: widgets that outlive the application take it down with them.
            delete(window)


def draw_readme(camera: Camera, window: Window, folder: Path) -> None:
    """The two pictures of the README."""
    slip = open_marked(camera, window, folder)

    def all_seen() -> bool:
        thumbs = window.sheet.evidence.thumbs if window.sheet is not None else []
        return not any(t.isVisible() and t.piece and t.image.isNull() for t in thumbs)

    for name, go in pages(camera, window, slip)[:2]:
        go()
        camera.rest(until=all_seen)
        camera.take(name)


def draw(camera: Camera, window: Window, folder: Path) -> None:
    """All of them."""
    theme = window._theme
    for dark in (False, True):
        theme.choose(dark)
        look = "dark" if dark else "light"
        window.start.show_empty(None)
        camera.take(f"empty_{look}")
        window.start.show_trouble(Path("/home/teacher/10A"), "The folder cannot be read.")
        camera.take(f"error_{look}")
        new_class(camera, window, folder, look)
    slip = open_marked(camera, window, folder)
    for wide, high in ((1280, 800), (1920, 1080)):
        window.resize(wide, high)
        for dark in (False, True):
            theme.choose(dark)
            for name, go in pages(camera, window, slip):
                go()
                camera.take(f"{name}_{wide}_{'dark' if dark else 'light'}")
                window.deed_list.hide()
            assert window.bench is not None
            window.bench.settle_button.setChecked(False)
    theme.choose(False)
    theme.set_scale(2.0)
    window.resize(1280, 800)
    for name, go in pages(camera, window, slip):
        go()
        camera.take(f"{name}_1280_text200")
        window.deed_list.hide()


def open_marked(camera: Camera, window: Window, folder: Path) -> str:
    """Open the class with some of it marked; returns a learner whose slip can be shown."""
    session = Session.open(folder, "A. Teacher")
    mark_some(session)
    window.show_session(session)
    camera.rest(until=lambda: window.sheet is not None)
    return slipped(session)


if __name__ == "__main__":
    main()
