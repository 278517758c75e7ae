"""How many copies are found, how many honest pairs are questioned, and what it costs.

Run from the project's folder: ``python tests/benchmarks/bench_copies.py``.
"""

from __future__ import annotations

import resource
import sys
import time
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parents[1]))

import numpy as np

from markbench.checks.copies import find_alike, log_threshold
from markbench.checks.copies.pairs import score
from markbench.checks.copies.tables import tables_of
from simulation.copied import COPIES, copies
from simulation.readings import SLIPS, join, simulate
from simulation.worlds import NOISES

HELD_OUT_SEED = 930_000
CLASSES = 500
CLASS = 30


def false_pairs(decimals: int, noise: str, slips: bool) -> float:
    """False pairs per hundred classes of 30; with ``slips``, a quarter has one each."""
    first, second = np.triu_indices(CLASS, 1)
    rng = np.random.default_rng(HELD_OUT_SEED)
    count = 0
    for c in range(CLASSES):
        seed = HELD_OUT_SEED + 100 * c
        group = simulate(CLASS, noise=noise, seed=seed, decimals=decimals)
        if slips:
            others = [
                simulate(1, "standard", str(slip), seed=seed + i, decimals=decimals)
                for i, slip in enumerate(rng.choice(SLIPS, 8), 1)
            ]
            group = join(group.take(slice(0, CLASS - 8)), *others)
        ratio = score(tables_of(group.stack()), first, second).log_ratio
        count += int((ratio > log_threshold(CLASS)).sum())
    return 100 * count / CLASSES


def found(how: str, decimals: int, slip: str | None = None) -> float:
    """Share of copied pairs beyond the threshold of a class of 30."""
    original = simulate(1000, "standard", slip, seed=HELD_OUT_SEED + 7, decimals=decimals)
    copied = copies(original, how, seed=HELD_OUT_SEED + 8)
    pair = np.arange(1000)
    ratio = score(tables_of(join(original, copied).stack()), pair, pair + 1000).log_ratio
    return float((ratio > log_threshold(CLASS)).mean())


def cost(n: int) -> None:
    """Time and peak memory for n tables, a hundred copies among them."""
    group = simulate(n - 100, "standard", seed=HELD_OUT_SEED + n)
    half = copies(group.take(slice(0, 100)), "identical", seed=1)
    stack = join(group, half).stack()
    start = time.process_time()
    pairs = find_alike(stack)
    seconds = time.process_time() - start
    right = sum(pair.second == pair.first + n - 100 for pair in pairs)
    memory = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024
    print(
        f"{n:7} tables: {seconds:6.2f} s, {1e6 * seconds / n:6.1f} µs each, peak {memory:5.0f} MB; "
        f"{right} of 100 copies found, {len(pairs) - right} other pairs"
    )


def main() -> None:
    """Print every table of the decision record."""
    for decimals in (2, 1):
        for noise in NOISES:
            rate = false_pairs(decimals, noise, slips=False)
            print(f"{decimals} decimals, {noise:9}: {rate:5.2f} false pairs per 100 classes")
        rate = false_pairs(decimals, "gaussian", slips=True)
        print(f"{decimals} decimals, quarter with slips: {rate:5.2f} false pairs per 100 classes")
        for how in COPIES:
            print(f"{decimals} decimals, {how:16}: {found(how, decimals):.3f} found")
        for slip in SLIPS:
            print(
                f"{decimals} decimals, altered + {slip:22}: {found('altered', decimals, slip):.3f}"
            )
    for n in (1_000, 10_000, 100_000):
        cost(n)


if __name__ == "__main__":
    main()
