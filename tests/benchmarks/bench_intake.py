"""What reading a class folder costs per learner, at two sizes, and whether memory stays flat.

    python tests/benchmarks/bench_intake.py [learners ...]

Makes a class folder of invented learners in a temporary folder (a folder for each, with one
xlsx of five lengths and two timings, a small picture and a clip's worth of bytes), with a
class list, and reads it. The folder names are spelt unevenly: one in ten has a letter wrong.
Memory: the growth of the process's peak (``ru_maxrss``) and the Python peak per learner
beyond what the result itself keeps (``tracemalloc``, on a smaller class, since it slows
everything down).
"""

from __future__ import annotations

import io
import random
import resource
import sys
import tempfile
import time
import tracemalloc
from pathlib import Path

import xlsxwriter

from markbench.intake.class_list import read_class_list
from markbench.intake.folder import read_class
from markbench.intake.matching import Matcher
from markbench.intake.tables import read_readings
from markbench.intake.tree import walk
from markbench.model import Brief

_START = ["Ba", "Ke", "Lo", "Mi", "Su", "Ta", "Ze", "Ro", "Ny", "Fe", "Gu", "Ha", "Jo", "Vi"]
_MIDDLE = ["la", "ri", "no", "mbe", "sha", "ku", "tte", "lin", "dra", "go", "wi", "pe"]
_END = ["na", "k", "s", "mi", "ra", "n", "la", "ko", "ski", "tu", "d", "yo"]


def _word(rng: random.Random) -> str:
    return rng.choice(_START) + "".join(rng.choices(_MIDDLE, k=2)) + rng.choice(_END)


def _workbook(rng: random.Random) -> bytes:
    held = io.BytesIO()
    book = xlsxwriter.Workbook(held, {"in_memory": True})
    sheet = book.add_worksheet("Readings")
    sheet.write_row(0, 0, ["Length / cm", "Time for 10 swings, 1 / s", "Time for 10 swings, 2 / s"])
    for row, length in enumerate((20, 30, 40, 50, 60), 1):
        period_s = 2 * 3.14159 * (length / 981) ** 0.5
        times = [round(10 * period_s + rng.gauss(0, 0.1), 2) for _ in range(2)]
        sheet.write_row(row, 0, [length, *times])
    book.close()
    return held.getvalue()


def make(folder: Path, learners: int, tables: int = 50) -> None:
    """A class folder of so many invented learners, with so many different tables."""
    rng = random.Random(2026)
    rows = ["id,name"]
    books = [_workbook(rng) for _ in range(tables)]
    for number in range(learners):
        name = f"{_word(rng)} {_word(rng)}"
        rows.append(f"{number:06d},{name}")
        spelt = name
        if number % 10 == 0:  # a letter wrong
            place = rng.randrange(1, len(name) - 1)
            spelt = name[:place] + rng.choice("aeiou") + name[place + 1 :]
        elif number % 3 == 0:
            spelt = " ".join(reversed(name.split())).lower()
        elif number % 7 == 0:
            spelt = f"{number:06d}"
        home = folder / spelt.replace("/", "")
        home.mkdir(exist_ok=True)
        (home / "readings.xlsx").write_bytes(books[number % tables])
        (home / "setup.jpg").write_bytes(rng.randbytes(2000 + number % 997))
        (home / "swing.mp4").write_bytes(rng.randbytes(5000 + number % 991))
    (folder / "class_list.csv").write_text("\n".join(rows), "utf-8")


def _peak_mb() -> float:
    return resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024


def _milliseconds(start: float, learners: int) -> str:
    return f"{(time.process_time() - start) / learners * 1e3:7.3f} ms"


def bench(learners: int) -> None:
    """Print the cost of each step at one size of class."""
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name)
        make(folder, learners)
        before = _peak_mb()
        start = time.process_time()
        work = read_class(folder)
        whole = _milliseconds(start, learners)
        grown = _peak_mb() - before
        start = time.process_time()
        tree = walk(folder)
        listing = _milliseconds(start, learners)
        start = time.process_time()
        listed = read_class_list("class_list.csv", (folder / "class_list.csv").read_bytes())
        assert listed is not None
        matcher = Matcher(listed.learners)
        for found in tree.found:
            matcher.judge(found.parts[0])
        matching = _milliseconds(start, learners)
        tables = [found.file for found in tree.found if found.file.endswith(".xlsx")]
        start = time.process_time()
        for file in tables:
            read_readings(file, (folder / file).read_bytes(), Brief(), "x")
        reading = _milliseconds(start, learners)
    with_table = sum(item.table is not None for item in work.portfolios.values())
    print(
        f"{learners:6d} learners: {whole} of CPU each (listing {listing}, class list and names "
        f"{matching}, tables {reading}); peak grew by {grown:.0f} MB "
        f"({grown * 1024 / learners:.1f} kB each); {with_table} with readings, "
        f"{len(work.doubts)} pieces in doubt, {len(work.unowned)} unowned",
        flush=True,
    )


def bench_memory(learners: int) -> None:
    """Print what is held at most beyond the result."""
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name)
        make(folder, learners)
        tracemalloc.start()
        work = read_class(folder)
        kept, peak = tracemalloc.get_traced_memory()
        tracemalloc.stop()
    print(
        f"{learners:6d} learners: result keeps {kept / learners / 1024:.1f} kB each, "
        f"peak beyond it {(peak - kept) / 1e6:.1f} MB in all ({len(work.portfolios)} portfolios)"
    )


if __name__ == "__main__":
    for size in [int(text) for text in sys.argv[1:]] or [1_000, 10_000]:
        bench(size)
    for size in (250, 1_000):
        bench_memory(size)
