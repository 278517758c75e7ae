"""Open, mark, next, over thousands of portfolios in the real window: does anything pile up?

    python tests/benchmarks/soak_window.py [--learners 1000] [--rounds 5] [--samples 10]

An invented class (a workbook and a photo each) is opened offscreen; each learner's sheet is
opened, its drafts accepted, a text typed, and the next one opened; after the last learner
the first one again, with another text. At even steps: resident
memory, open files, threads, Qt objects under the window, Python objects. The first tenth is
warming up (caches of pictures and words fill); growth is counted from there. What the
journal itself grows by is told apart: every decision stays in memory for undo and history.
"""

from __future__ import annotations

import argparse
import gc
import io
import os
import shutil
import sys
import tempfile
import threading
import time
from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")


@dataclass(frozen=True)
class Sample:
    """What is held after so many portfolios."""

    done: int
    memory_mb: float
    files: int
    threads: int
    qt_objects: int
    python_objects: int
    decisions: int

    def __str__(self) -> str:
        return (
            f"{self.done:6} {self.memory_mb:8.1f} MB {self.files:6} {self.threads:8} "
            f"{self.qt_objects:8} {self.python_objects:10} {self.decisions:10}"
        )


def memory_mb() -> float:
    """Resident memory of this process."""
    pages = int(Path("/proc/self/statm").read_text().split()[1])
    return pages * os.sysconf("SC_PAGE_SIZE") / 1e6


def make_class(folder: Path, learners: int) -> None:
    """Invented learners with readings and a photo that can be opened."""
    import numpy as np
    from bench_intake import make
    from PIL import Image

    make(folder, learners, tables=learners)
    # A picture of their own for each: a photo that many share is asked about at each of them.
    for seed, photo in enumerate(sorted(folder.glob("*/setup.jpg"))):
        light = np.random.default_rng(seed).integers(0, 255, (6, 8, 3), dtype=np.uint8)
        held = io.BytesIO()
        Image.fromarray(light).resize((640, 480)).save(held, "JPEG")
        photo.write_bytes(held.getvalue())
    for film in folder.glob("*/swing.mp4"):
        film.unlink()


def main() -> int:
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("--learners", type=int, default=1000)
    parser.add_argument("--rounds", type=int, default=5)
    parser.add_argument("--samples", type=int, default=10)
    options = parser.parse_args()
    place = Path(tempfile.mkdtemp())
    os.environ["XDG_CACHE_HOME"] = str(place / "cache")
    folder = place / "class"
    folder.mkdir()
    make_class(folder, options.learners)

    from PySide6.QtCore import QCoreApplication, QEvent, QObject, QSettings

    from markbench.ui.app import application
    from markbench.ui.look import Theme
    from markbench.ui.window import Window

    app = application()
    settings = QSettings(str(place / "settings.ini"), QSettings.Format.IniFormat)
    window = Window(Theme(app, settings), settings, "A. Teacher")
    window.resize(1280, 800)
    window.show()

    def until(ready: Callable[[], bool]) -> None:
        end = time.monotonic() + 3600
        while not ready():
            app.processEvents()
            if time.monotonic() > end:
                raise TimeoutError("the window did not come to rest")

    def sample(done: int) -> Sample:
        QCoreApplication.sendPostedEvents(None, QEvent.Type.DeferredDelete)
        gc.collect()
        assert window.desk is not None
        return Sample(
            done,
            memory_mb(),
            len(os.listdir("/proc/self/fd")),
            threading.active_count(),
            len(window.findChildren(QObject)),
            len(gc.get_objects()),
            len(window.desk.held.history()),
        )

    started, cpu = time.perf_counter(), time.process_time()
    window.open_folder(folder)
    until(lambda: window.bench is not None and window.sheet is not None)
    assert window.bench is not None
    assert window.desk is not None
    order = window.bench.order.learners()
    busy = [False]
    window.desk.waiting.connect(lambda on: busy.__setitem__(0, on))
    print(f"{len(order)} learners open after {time.perf_counter() - started:.0f} s", flush=True)
    print(f"{'done':>6} {'memory':>11} {'files':>6} {'threads':>8} {'Qt':>8} {'Python':>10} "
          f"{'decisions':>10}")  # fmt: skip
    order = order * options.rounds
    every = max(1, len(order) // options.samples)
    samples = []
    window.open_learner(order[0])
    for at, learner in enumerate(order):
        sheet = window.sheet
        assert sheet is not None
        assert sheet.learner == learner, (sheet.learner, learner)
        sheet.margin.accept_all.click()
        card = sheet.margin.cards[0]
        card.text.setPlainText(f"Well timed, portfolio {at}.")
        until(lambda: not busy[0])
        if at + 1 < len(order):
            # By name: the order of the page moves as photos are looked at meanwhile.
            window.open_learner(order[at + 1])
        app.processEvents()
        if (at + 1) % every == 0:
            until(lambda: not busy[0])
            samples.append(sample(at + 1))
            print(samples[-1], flush=True)
    until(lambda: not busy[0])
    wall, cpu = time.perf_counter() - started, time.process_time() - cpu
    first, last = samples[0], samples[-1]
    steps = last.done - first.done
    said = last.decisions - first.decisions
    print(
        f"from {first.done} to {last.done}: {last.memory_mb - first.memory_mb:+.1f} MB, "
        f"{1000 * (last.memory_mb - first.memory_mb) / max(steps, 1):+.2f} kB a portfolio "
        f"({said / max(steps, 1):.1f} decisions each), files {last.files - first.files:+}, "
        f"threads {last.threads - first.threads:+}, "
        f"Qt objects {last.qt_objects - first.qt_objects:+}"
    )
    print(f"{wall:.0f} s on the clock, {cpu:.0f} s of CPU")
    window.close()
    QCoreApplication.sendPostedEvents(None, QEvent.Type.DeferredDelete)
    shutil.rmtree(place)
    leaks = last.files > first.files + 2 or last.qt_objects > first.qt_objects + 50
    return 1 if leaks else 0


if __name__ == "__main__":
    sys.exit(main())
