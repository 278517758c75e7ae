"""How long the window keeps a person waiting. Prints figures; run on a quiet machine.

    python tests/benchmarks/bench_window.py [CLASS_FOLDER | LEARNERS]

Without a folder a copy of the sample class is used; a number makes a class of so many
invented learners. Each figure is the best and the middle of several, in milliseconds of the
clock; "CPU" is what this process used, which a busy machine inflates less. "First window"
runs a fresh process each time. What is loaded ahead while nothing is open is loaded when
the clock starts, as it is for a teacher who looks for her folder.
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
    best, middle = 1000 * min(times_s), 1000 * statistics.median(times_s)
    wanted = "" if target_ms is None else f"   wanted: at most {target_ms:g}"
    print(f"{what:<44} best {best:8.1f}   middle {middle:8.1f} ms{wanted}")


class Watch:
    """Times of doing something several times, by the clock and by the processor."""

    def __init__(self, do: Callable[[], object], times: int) -> None:
        self.clock, self.cpu = [], []
        for _ in range(times):
            start = time.process_time()
            self.clock.append(timed(do))
            self.cpu.append(time.process_time() - start)

    def tell(self, what: str, target_ms: float | None = None) -> None:
        tell(what, self.clock, target_ms)
        tell(f"{what}, CPU", self.cpu)


def timed(do: Callable[[], object]) -> float:
    start = time.perf_counter()
    do()
    return time.perf_counter() - start


def first_window(ini: str) -> float:
    """Process start included."""
    return timed(
        lambda: subprocess.run(
            [sys.executable, "-c", FIRST.format(ini=ini)], check=True, capture_output=True
        )
    )


def main() -> None:
    place = Path(tempfile.mkdtemp())
    folder = place / "class"
    asked = sys.argv[1] if len(sys.argv) > 1 else str(ROOT / "sample_class")
    if asked.isdigit():
        folder.mkdir()
        make(folder, int(asked), tables=int(asked))
    else:
        shutil.copytree(asked, folder)
    ini = str(place / "settings.ini")
    print(f"load average {os.getloadavg()[0]:.1f} on {os.cpu_count()} cores")
    tell("first window, from process start", [first_window(ini) for _ in range(5)], 1500)

    from PySide6.QtCore import QEventLoop, QSettings, QTimer
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

    Watch(show_class, 3).tell("open the class, to its cards on the screen", 3000)
    until(lambda: window.sheet is not None)
    assert window.bench is not None
    assert window.desk is not None
    order = window.bench.order.learners()
    print(f"{len(order)} learners")

    grid, bar = window.bench.grid, window.bench.grid.verticalScrollBar()

    def frame() -> None:
        grid.viewport().repaint()

    frame()
    tell("class view, one frame", [timed(frame) for _ in range(20)], 16)
    if bar.maximum() > 0:
        steps = iter(range(0, bar.maximum(), max(bar.maximum() // 40, 1)))
        scroll = [timed(lambda: (bar.setValue(next(steps)), frame())) for _ in range(40)]
        tell("class view, scrolled to new cards", scroll, 16)

    def pause(seconds: float) -> None:
        end = time.perf_counter() + seconds
        until(lambda: time.perf_counter() > end)

    window.open_learner(order[0])
    pause(1.0)
    clock, cpu = [], []
    for _ in order[1:25]:
        start = time.thread_time()
        clock.append(timed(lambda: (window.step(1), app.processEvents())))
        cpu.append(time.thread_time() - start)
        pause(0.25)
    tell("next learner, drawn", clock, 50)
    tell("next learner, drawn, CPU of the window's thread", cpu)

    assert window.sheet is not None
    card = window.sheet.margin.cards[0]
    card.text.setFocus()

    def key() -> None:
        QTest.keyClick(card.text, "a")
        app.processEvents()

    tell("a keystroke in the text", [timed(key) for _ in range(60)], 20)
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
