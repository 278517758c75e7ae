"""The whole job per learner, against the script a handy colleague would write.

    python tests/benchmarks/bench_pipeline.py [learners ...]

The colleague's script reads each learner's xlsx with pandas and openpyxl, fits a line with
scipy, asks half a dozen questions and drafts a sentence. Ours reads the class folder,
matches names, recomputes, puts every question and drafts against the rubric; "whole" also
weighs the explanations and compares all tables.
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


def colleague(folder: Path) -> pd.DataFrame:
    """Everybody's g, a few questions and a draft, as a handy colleague would script it."""
    found = []
    for home in sorted(p for p in folder.iterdir() if p.is_dir()):
        frame = pd.read_excel(home / "readings.xlsx", engine="openpyxl")
        frame.columns = ["length_cm", "t1", "t2"]
        frame["mean"] = frame[["t1", "t2"]].mean(axis=1)
        frame["spread"] = frame[["t1", "t2"]].std(axis=1)
        frame["T"] = frame["mean"] / 10
        frame["T2"] = frame["T"] ** 2
        line = linregress(frame["length_cm"] / 100, frame["T2"])
        g = 4 * np.pi**2 / line.slope
        u_g = g * line.stderr / line.slope
        residuals = frame["T2"] - line.intercept - line.slope * frame["length_cm"] / 100
        ratio = frame["length_cm"].max() / frame["length_cm"].min()
        questions = []
        if len(frame) < 5:
            questions.append("fewer than five lengths")
        if frame[["t1", "t2"]].isna().any(axis=None):
            questions.append("a timing is missing")
        if ratio < 2:
            questions.append("lengths too close together")
        if abs(g - 9.81) > 3 * u_g:
            questions.append("g is far off")
        if frame["spread"].max() > 0.3:
            questions.append("repeats differ")
        if residuals.abs().max() > 3 * residuals.std():
            questions.append("a point is off the line")
        marks = 5 - len(questions)
        text = f"Your g is {g:.2f} ± {u_g:.2f} m/s². " + "; ".join(questions)
        found.append({"name": home.name, "g": g, "u_g": u_g, "marks": marks, "text": text})
    return pd.DataFrame(found)


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
