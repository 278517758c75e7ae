"""The whole job per learner, against the script a handy colleague would write.

    python tests/benchmarks/bench_pipeline.py [learners ...]

The colleague's script reads each learner's xlsx with pandas and openpyxl and fits a line
with scipy; it checks and drafts nothing. Ours reads the class folder, matches names,
recomputes, puts every question, weighs the explanations and drafts against the rubric.
Both on one core, CPU seconds of this process, best of two for up to 1,000 learners.
"""

from __future__ import annotations

import resource
import sys
import tempfile
import time
from collections.abc import Callable
from pathlib import Path

import numpy as np
import pandas as pd
from bench_intake import make
from scipy.stats import linregress

from markbench.checks import run
from markbench.intake.folder import read_class
from markbench.rubric import draft, facts_of, find_rubric
from markbench.session.judge import compare, judge, recompute


def colleague(folder: Path) -> list[float]:
    """g of every learner, as a handy colleague would script it."""
    found = []
    for home in sorted(p for p in folder.iterdir() if p.is_dir()):
        frame = pd.read_excel(home / "readings.xlsx", engine="openpyxl")
        length_m = frame.iloc[:, 0] / 100
        period_s = frame.iloc[:, 1:].mean(axis=1) / 10
        line = linregress(length_m, period_s**2)
        found.append(4 * np.pi**2 / line.slope)
    return found


def spine(folder: Path) -> None:
    """Reading, computing, checking, drafting."""
    work = read_class(folder)
    rubric = find_rubric("short", folder)
    analyses = recompute(work, work.portfolios)
    findings = run(work, analyses)
    for learner, portfolio in work.portfolios.items():
        found = (*portfolio.findings, *findings[learner])
        facts = facts_of(portfolio, analyses[learner], found, None, work.brief)
        draft(rubric, facts, found)


def whole(folder: Path) -> None:
    """The same with every slip weighed and all tables compared."""
    work = read_class(folder)
    analyses = recompute(work, work.portfolios)
    judge(work, find_rubric("short", folder), analyses, {}, compare(work), {}, {})


def seconds(job: Callable[[Path], object], folder: Path, times: int) -> float:
    """Least CPU time of some runs."""
    spent = []
    for _ in range(times):
        start = time.process_time()
        job(folder)
        spent.append(time.process_time() - start)
    return min(spent)


def main(sizes: list[int]) -> None:
    """Print a line per size and job."""
    for learners in sizes:
        with tempfile.TemporaryDirectory() as held:
            folder = Path(held)
            make(folder, learners)
            times = 2 if learners <= 1000 else 1
            theirs = seconds(colleague, folder, times) if learners <= 1000 else float("nan")
            for name, job in (("spine", spine), ("whole", whole)):
                ours = seconds(job, folder, times)
                peak = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024
                print(
                    f"{learners:6} learners, {name}: {1e3 * ours / learners:6.2f} ms each; "
                    f"colleague {1e3 * theirs / learners:6.2f} ms each; "
                    f"ratio {theirs / ours:5.1f}; peak {peak:.0f} MB",
                    flush=True,
                )


if __name__ == "__main__":
    main([int(a) for a in sys.argv[1:]] or [100, 1000, 10_000])
