"""How long the pages of one criterion, findings and hand-ins take to open and to answer.

    python tests/benchmarks/bench_pages.py [learners]

Prints the processor's time of the main thread (what the program costs) and the clock's (what
one waits on this machine now). The class is invented: readings by the law with scatter.
"""

from __future__ import annotations

import math
import os
import random
import sys
import tempfile
import time
from collections.abc import Callable
from pathlib import Path

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")

from PySide6.QtCore import QSettings, Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication

from markbench.ui.look.theme import Theme
from markbench.ui.opening import open_session
from markbench.ui.window import Window


def make_class(root: Path, learners: int) -> None:
    """One learner in ten counts half swings."""
    chance = random.Random(1)
    rows = ["id,name"]
    for number in range(learners):
        name = f"Learner{number:04d} Invented"
        rows.append(f"9{number:04d},{name}")
        (root / name).mkdir()
        share = 0.5 if number % 10 == 0 else 1.0
        lines = ["Length / cm,t1 / s for 10 swings,t2 / s"]
        for cm in (20, 30, 40, 50, 60):
            law = share * 20 * math.pi * math.sqrt(cm / 981)
            times = (law + chance.gauss(0, 0.1) for _ in range(2))
            lines.append(f"{cm}," + ",".join(f"{t:.2f}" for t in times))
        (root / name / "readings.csv").write_text("\n".join(lines) + "\n", "utf-8")
    (root / "class_list.csv").write_text("\n".join(rows) + "\n", "utf-8")
    (root / "brief.toml").write_text('rubric = "short"\n[place]\nlatitude_deg = 50\n', "utf-8")


def main(learners: int) -> None:
    """Open, move, mark, shuffle, hide names."""
    app = QApplication([])
    with tempfile.TemporaryDirectory() as folder:
        root = Path(folder)
        make_class(root, learners)
        settings = QSettings(str(root / "s.ini"), QSettings.Format.IniFormat)
        window = Window(Theme(app, settings), settings, who="Bench")
        window.resize(1280, 800)
        window.show()
        window.show_session(open_session(root)(lambda *_: None, lambda: False))

        def rest() -> None:
            for _ in range(20):
                app.processEvents()
                time.sleep(0.02)

        def timed(words: str, do: Callable[[], object]) -> None:
            cpu, clock = time.thread_time(), time.perf_counter()
            do()
            app.processEvents()
            cpu, clock = time.thread_time() - cpu, time.perf_counter() - clock
            print(f"{words:28s} {1000 * cpu:8.1f} ms   clock {1000 * clock:8.1f} ms")
            rest()

        rest()
        print(f"{learners} learners")
        for place in ("across", "overview", "handins"):
            timed(f"{place}, first time", lambda place=place: window.show_place(place))
            window.show_place("class")
            rest()
            timed(f"{place}, again", lambda place=place: window.show_place(place))
        window.show_place("across")
        page = window.further["across"]
        timed("next learner", lambda: QTest.keyClick(page.view, Qt.Key.Key_Down))
        timed("next criterion", lambda: QTest.keyClick(page.view, Qt.Key.Key_Right))
        timed("a level by its digit", lambda: QTest.keyClick(page.view, Qt.Key.Key_2))
        timed("scroll to the middle", lambda: page.view.scrollTo(page.model.index(learners // 2)))
        timed("shuffle", lambda: (page.shuffle(), window.desk.finish()))
        timed("hide names", lambda: (window.hide_names(True), window.desk.finish()))
        window.close()


if __name__ == "__main__":
    main(int(sys.argv[1]) if len(sys.argv) > 1 else 30)
