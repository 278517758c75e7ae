"""Time and memory of writing a class out.

python tests/benchmarks/bench_export.py [LEARNERS ...]

Each learner has three lengths (five are usual), three criteria, two findings; each size
runs in a process of its own, so that the peak is its own.
"""

from __future__ import annotations

import dataclasses
import multiprocessing as mp
import resource
import sys
import tempfile
import time
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parents[1] / "export"))


def one_size(learners: int) -> None:
    from class_in_every_state import make_report

    from markbench.export import write_mark_sheet_csv
    from markbench.export.workbook import write_workbook

    report = make_report()
    one = report.learners[1]
    big = dataclasses.replace(report, learners=(one,) * learners)
    before = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss
    with tempfile.TemporaryDirectory() as folder:
        started, cpu = time.perf_counter(), time.process_time()
        write_workbook(Path(folder) / "marks.xlsx", big)
        wall, cpu = time.perf_counter() - started, time.process_time() - cpu
        size = (Path(folder) / "marks.xlsx").stat().st_size
        started = time.perf_counter()
        write_mark_sheet_csv(Path(folder) / "marks.csv", big)
        csv_wall = time.perf_counter() - started
    grown = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss - before
    print(
        f"{learners} learners: workbook {wall:.2f} s ({cpu:.2f} s of CPU), {size / 1e6:.2f} MB; "
        f"csv {csv_wall:.3f} s; memory grew by {grown / 1024:.1f} MB",
        flush=True,
    )


def main() -> None:
    for learners in map(int, sys.argv[1:] or ("30", "1000", "10000")):
        process = mp.get_context("spawn").Process(target=one_size, args=(learners,))
        process.start()
        process.join()


if __name__ == "__main__":
    main()
