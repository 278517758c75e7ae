"""Cost of saving a decision, of opening and of verifying.

python tests/benchmarks/bench_store.py [FOLDER]   (FOLDER: on the disk to be measured)
"""

from __future__ import annotations

import statistics
import sys
import tempfile
import time
from pathlib import Path

from markbench.model import Decision
from markbench.store import Journal, fold


def main() -> None:
    home = sys.argv[1] if len(sys.argv) > 1 else None
    with tempfile.TemporaryDirectory(dir=home) as folder:
        path = Path(folder) / "class.markbench"
        journal = Journal.open(path)
        costs_ms = []
        for i in range(1000):
            decision = Decision("mark", f"L{i % 30}", "graph", {"level": "Good", "marks": 3})
            started = time.perf_counter()
            journal.append([decision])
            costs_ms.append((time.perf_counter() - started) * 1e3)
        costs_ms.sort()
        print(
            f"one append: median {statistics.median(costs_ms):.1f} ms, "
            f"99th percentile {costs_ms[989]:.1f} ms, worst {costs_ms[-1]:.1f} ms"
        )
        journal.append(Decision("mark", f"L{i % 5000}", "graph", i) for i in range(99_000))
        journal.close()
        for label in ("with the hourly copy", "again"):
            started = time.perf_counter()
            journal = Journal.open(path)
            print(f"open 100,000 entries, {label}: {time.perf_counter() - started:.2f} s")
            journal.close()
        with Journal.open(path, read_only=True) as journal:
            started = time.perf_counter()
            fold(journal.all())
            print(f"read and fold: {time.perf_counter() - started:.2f} s")
            started = time.perf_counter()
            journal.verify()
            print(f"verify: {time.perf_counter() - started:.2f} s")
        print(f"file: {path.stat().st_size / 1e6:.1f} MB")


if __name__ == "__main__":
    main()
