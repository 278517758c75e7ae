"""How long facts and drafts take for one learner: ``python tests/benchmarks/bench_rubric.py``.

Budget of the design: 0.4 ms a learner. Learners are made beforehand; timed is what happens
to each of them when a class is opened, from a portfolio with its analysis and findings to
drafts with their reasons and sentences. CPU time, best of several rounds.
"""

from __future__ import annotations

import sys
import time
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parents[1] / "rubric"))

from rubric_learners import random_learner

from markbench.rubric import draft, facts_of, find_rubric
from markbench.rubric.facts import Work

LEARNERS, ROUNDS = 1000, 5


def main() -> None:
    crowd = [random_learner(number) for number in range(LEARNERS)]
    works: list[Work] = [facts._work for facts in crowd]
    start = time.process_time()
    rubrics = {name: find_rubric(name) for name in ("short", "full_report")}
    print(f"reading both rubrics: {1e3 * (time.process_time() - start):.1f} ms")
    for name, rubric in rubrics.items():
        best = float("inf")
        for _ in range(ROUNDS):
            start = time.process_time()
            for work in works:
                facts = facts_of(
                    work.portfolio,
                    work.analysis,
                    work.findings,
                    work.diagnosis,
                    work.brief,
                    agreed_slip=work.agreed_slip,
                )
                draft(rubric, facts, work.findings)
            best = min(best, time.process_time() - start)
        phrases = sum(len(row.phrases) for row in rubric.criteria)
        print(
            f"{name}: {1e3 * best / LEARNERS:.3f} ms a learner "
            f"({len(rubric.criteria)} criteria, {phrases} phrases)"
        )


if __name__ == "__main__":
    main()
