"""How many learners a second are weighed, on one core.

    OMP_NUM_THREADS=1 python tests/benchmarks/bench_diagnosis.py

Processor time, so that other work on the machine counts as little as it can.
"""

from __future__ import annotations

import sys
import time
from collections.abc import Callable
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parents[1]))

from markbench.checks.diagnosis import weigh
from markbench.checks.diagnosis.posterior import weigh_singles
from markbench.checks.diagnosis.weigh import CHUNK
from markbench.model import LocalGravity
from markbench.physics.best import estimate_gravity
from markbench.physics.gravity import local_gravity
from markbench.physics.stack import Stack
from simulation.readings import SLIPS, join, simulate


def all_single_slips(stack: Stack, local: LocalGravity) -> None:
    """Evidence for every single slip, without words."""
    for start in range(0, len(stack), CHUNK):
        weigh_singles(stack.take(slice(start, start + CHUNK)), local)


def rate(task: Callable[[], object], learners: int) -> float:
    """Learners a second, the best of three."""
    best = 0.0
    for _ in range(3):
        start = time.process_time()
        task()
        best = max(best, learners / (time.process_time() - start))
    return best


def main() -> None:
    """Print the rates for an honest class and for one in which half have slipped."""
    honest = simulate(2560, seed=1)
    mixed = join(simulate(640, seed=2), *[simulate(40, slip=s, seed=3) for s in SLIPS])
    local = local_gravity(honest.place)
    for name, sim in (("honest", honest), ("half of them slipped", mixed)):
        stack, n = sim.stack(), len(sim)
        single = rate(lambda s=stack: all_single_slips(s, local), n)  # type: ignore[misc]
        best = rate(lambda s=stack: estimate_gravity(s), n)  # type: ignore[misc]
        whole = rate(lambda s=stack: weigh(s, local), n)  # type: ignore[misc]
        print(
            f"{name}: all single slips {single:.0f}/s, best g {best:.0f}/s, in words {whole:.0f}/s"
        )


if __name__ == "__main__":
    main()
