"""How long the window keeps a person waiting. Prints figures; run on a quiet machine.

    python tests/benchmarks/bench_window.py [CLASS_FOLDER | LEARNERS]

Without a folder a copy of the sample class is used; a number makes a class of so many
invented learners. Each figure is the best, the middle and the worst but one in twenty of
several, in milliseconds of the clock and of the processor: "CPU" is what the window's own
thread used, which a busy machine inflates less. "First window" runs a fresh process each
time. What is loaded ahead while nothing is open is loaded when the clock starts, as it is for
a teacher who looks for her folder. A class is open when its cards are on the screen: every
learner has been read and judged by then, and can be seen and marked.

Photos and films are looked at in a cache of the benchmark's own, so that they are measured
anew while the first learners are stepped through, and not while the last are.
"""

from __future__ import annotations

import os
import shutil
import statistics
import subprocess
import sys
import tempfile
import time
from collections.abc import Callable
from pathlib import Path

from bench_intake import make
from PySide6.QtCore import QEventLoop, QPoint, QPointF, QSettings, Qt, QTimer
from PySide6.QtGui import QWheelEvent
from PySide6.QtWidgets import QApplication, QWidget

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")
ROOT = Path(__file__).resolve().parents[2]

FIRST = """
import time; start = time.perf_counter()
from PySide6.QtCore import QSettings
from markbench.ui.app import application
from markbench.ui.look import Theme
from markbench.ui.window import Window
app = application()
settings = QSettings({ini!r}, QSettings.Format.IniFormat)
window = Window(Theme(app, settings), settings)
window.show()
app.processEvents()
print(time.perf_counter() - start)
"""


def tell(what: str, times_s: list[float], target_ms: float | None = None) -> None:
    times = sorted(1000 * one for one in times_s)
    best, middle, late = times[0], statistics.median(times), times[int(0.95 * (len(times) - 1))]
    wanted = "" if target_ms is None else f"   wanted: at most {target_ms:g}"
    print(f"{what:<50} best {best:7.1f}  middle {middle:7.1f}  late {late:7.1f} ms{wanted}")


class Watch:
    """Times of doing something several times, by the clock and by this thread's processor."""

    def __init__(
        self, do: Callable[[], object], times: int, between: Callable[[], object] = lambda: None
    ) -> None:
        self.clock: list[float] = []
        self.cpu: list[float] = []
        for _ in range(times):
            start = time.thread_time()
            self.clock.append(timed(do))
            self.cpu.append(time.thread_time() - start)
            between()

    def tell(self, what: str, target_ms: float | None = None) -> None:
        tell(what, self.clock, target_ms)
        tell(f"{what}, CPU", self.cpu)


def timed(do: Callable[[], object]) -> float:
    start = time.perf_counter()
    do()
    return time.perf_counter() - start


def turn_wheel(area: QWidget) -> None:
    """One notch towards the reader, in the middle of ``area``."""
    at = QPointF(area.rect().center())
    event = QWheelEvent(
        at, area.mapToGlobal(at), QPoint(), QPoint(0, -120), Qt.MouseButton.NoButton,
        Qt.KeyboardModifier.NoModifier, Qt.ScrollPhase.NoScrollPhase, False,
    )  # fmt: skip
    QApplication.sendEvent(area, event)


def first_window(ini: str) -> tuple[float, float]:
    """Seconds of the clock, process start included, and of the processor."""
    before = os.times()
    command = [sys.executable, "-c", FIRST.format(ini=ini)]
    clock = timed(lambda: subprocess.run(command, check=True, capture_output=True))
    after = os.times()
    user = after.children_user - before.children_user
    return clock, user + after.children_system - before.children_system


def main() -> None:
    place = Path(tempfile.mkdtemp())
    os.environ["XDG_CACHE_HOME"] = str(place / "cache")
    folder = place / "class"
    asked = sys.argv[1] if len(sys.argv) > 1 else str(ROOT / "sample_class")
    if asked.isdigit():
        folder.mkdir()
        make(folder, int(asked), tables=int(asked))
    else:
        shutil.copytree(asked, folder)
    ini = str(place / "settings.ini")
    print(f"load average {os.getloadavg()[0]:.1f} on {os.cpu_count()} cores")
    clock, cpu = zip(*(first_window(ini) for _ in range(5)), strict=True)
    tell("first window, from process start", list(clock), 1500)
    tell("first window, from process start, CPU", list(cpu))

    from PySide6.QtTest import QTest

    from markbench.ui.app import application
    from markbench.ui.look import Theme
    from markbench.ui.opening import load_libraries, load_pages
    from markbench.ui.window import Window

    app = application()
    settings = QSettings(ini, QSettings.Format.IniFormat)
    window = Window(Theme(app, settings), settings, "A. Teacher")
    window.resize(1280, 800)
    window.show()

    def until(ready: Callable[[], bool]) -> None:
        """Wait as the program's own loop does: asleep, or it would slow what it waits for."""
        alarm = QTimer(interval=5)
        alarm.start()
        while not ready():
            app.processEvents(QEventLoop.ProcessEventsFlag.WaitForMoreEvents)

    load_libraries(lambda *_: None, lambda: False)
    load_pages()

    def show_class() -> None:
        window.open_folder(folder)
        until(lambda: window.bench is not None)
        app.processEvents()

    opened, used = [], []
    for _ in range(3):
        start = time.process_time()
        opened.append(timed(show_class))
        used.append(time.process_time() - start)
        until(lambda: window.sheet is not None)
    tell("open the class, to its cards on the screen", opened, 3000)
    print(f"{'  in their order':<50} {', '.join(f'{1000 * one:.0f}' for one in opened)}")
    tell("open the class, CPU of all threads", used)
    assert window.bench is not None
    assert window.desk is not None
    order = window.bench.order.learners()
    print(f"{len(order)} learners")

    def pause(seconds: float) -> None:
        end = time.perf_counter() + seconds
        until(lambda: time.perf_counter() > end)

    def breath() -> None:
        pause(0.04)

    def then_draw(do: Callable[[], object]) -> Callable[[], object]:
        return lambda: (do(), app.processEvents())

    grid, bar = window.bench.grid, window.bench.grid.verticalScrollBar()
    places = iter(range(0, 10**9, max(bar.maximum() // 43, 1)))
    grid.setFocus()
    for what, do, times in (
        ("drawn again", grid.viewport().update, 20),
        ("one notch of the wheel", lambda: turn_wheel(grid.viewport()), 60),
        ("one row by key", lambda: QTest.keyClick(grid, Qt.Key.Key_Down), 40),
        ("one page by key", lambda: QTest.keyClick(grid, Qt.Key.Key_PageUp), 20),
        ("dragged to new cards", lambda: bar.setValue(next(places)), 40),
    ):
        Watch(then_draw(do), times, breath).tell(f"class view, a frame: {what}", 16)
    keys = iter("abcdefgh")
    search = Watch(then_draw(lambda: QTest.keyClick(window.bench.search, next(keys))), 3, breath)
    search.tell("class view, a letter of a search", 50)
    window.bench.search.clear()

    def step() -> None:
        window.step(1)
        app.processEvents()

    looking = window.bench.looking
    window.open_learner(order[0])
    pause(1.0)
    state = "nothing else at work" if looking.isHidden() else "films being measured"
    Watch(step, 12, lambda: pause(0.25)).tell(f"next learner, drawn, {state}", 50)
    if not looking.isHidden():
        looking.stop()
        pause(6.0)
        Watch(step, 12, lambda: pause(0.25)).tell("next learner, drawn, afterwards", 50)

    assert window.sheet is not None
    card = window.sheet.margin.cards[0]
    card.text.setFocus()

    def key() -> None:
        QTest.keyClick(card.text, "a")
        app.processEvents()

    Watch(key, 60, breath).tell("a keystroke in the text", 20)
    session = window.desk.session
    learner, criterion = window.sheet.learner, card.criterion.id
    texts = iter(f"text {i}" for i in range(100))
    saved = [
        timed(lambda: session.set_feedback(learner, criterion, next(texts))) for _ in range(20)
    ]
    tell("text on the disk (off the typing path)", saved)
    window.close()
    shutil.rmtree(place)


if __name__ == "__main__":
    main()
