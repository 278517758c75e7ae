"""How honest the intervals of agreement are in small samples, and what merging costs.

Run: python tests/benchmarks/bench_moderation.py
Two markers of n learners on four levels: each first level is drawn from fixed shares, the
second is the same with chance `same`, else a neighbouring level.
"""

import time

import numpy as np

from markbench.moderation.differences import limits_of_agreement
from markbench.moderation.intraclass import intraclass
from markbench.moderation.kappa import kappa_of_table
from markbench.moderation.severity import severity

SHARES = np.array([0.35, 0.35, 0.2, 0.1])
CLASSES = 500


def joint(same):
    table = np.diag(SHARES * same)
    for level, share in enumerate(SHARES):
        near = [n for n in (level - 1, level + 1) if 0 <= n < len(SHARES)]
        for n in near:
            table[level, n] += share * (1 - same) / len(near)
    return table


def markers():
    """Pairs of markers: neighbours confused, levels drawn at random now and then, few levels."""
    for same in (0.3, 0.5, 0.7, 0.9, 0.97):
        yield f"same {same:g}, else next", joint(same)
    by_chance = np.outer(SHARES, SHARES)
    yield "independent", by_chance
    for share in (0.6, 0.85):
        yield f"same {share:g}, else any", share * np.diag(SHARES) + (1 - share) * by_chance
    even, skew = np.array([0.5, 0.5]), np.array([0.85, 0.1, 0.05])
    yield "two levels", 0.8 * np.diag(even) + 0.2 * np.outer(even, even)
    yield "three, one rare", 0.7 * np.diag(skew) + 0.3 * np.outer(skew, skew)


def kappa_coverage(rng):
    print("kappa: share of intervals that hold the true value (asymptotic in brackets), width")
    print(
        f"{'markers':<22}{'weights':<11}true  " + "".join(f"n = {n:<19}" for n in (8, 10, 15, 30))
    )
    for name, shares in markers():
        for weights in ("none", "linear", "quadratic"):
            true = kappa_of_table(shares * 1e6, weights).value
            line = f"{name:<22}{weights:<11}{true:4.2f}  "
            for n in (8, 10, 15, 30):
                line += _coverage(rng, shares, weights, true, n)
            print(line, flush=True)


def _coverage(rng, shares, weights, true, n):
    ours = theirs = defined = 0
    width = []
    for _ in range(CLASSES):
        found = kappa_of_table(rng.multinomial(n, shares.ravel()).reshape(shares.shape), weights)
        if found.value is not None:
            defined += 1
            ours += found.low95 <= true <= found.high95
            theirs += found.asymptotic95[0] <= true <= found.asymptotic95[1]
            width.append(found.high95 - found.low95)
    return f"{ours / defined:4.0%} ({theirs / defined:4.0%}) {np.mean(width):4.2f}       "


def normal_coverage(rng):
    print("upper limit of agreement and ICC(2,1): share of intervals that hold the true value")
    print("  n  exact limit  approximate  ICC(2,1)")
    for n in (6, 10, 30):
        exact = rough = icc = 0
        for _ in range(2000):
            learners, markers = rng.normal(0, 3, n), rng.normal(0, 0.5, 2)
            marks = 10 + learners[:, None] + markers + rng.normal(0, 1, (n, 2))
            differences = rng.normal(0, 1, n)
            one = limits_of_agreement(np.zeros(n), differences)
            two = limits_of_agreement(np.zeros(n), differences, exact=False)
            exact += one.upper95[0] <= 1.96 <= one.upper95[1]
            rough += two.upper95[0] <= 1.96 <= two.upper95[1]
            found = intraclass(marks)["(2,1)"]
            icc += found.low95 <= 9 / (9 + 0.25 + 1) <= found.high95
        print(f"{n:>3}  {exact / 2000:11.1%}  {rough / 2000:11.1%}  {icc / 2000:8.1%}")


def false_alarms(rng):
    print("severity: share of classes with equally severe markers that show p < 0.05")
    for n in (6, 10, 20):
        alarms = 0
        for _ in range(2000):
            differences = rng.choice([-2, -1, 0, 1, 2], n, p=[0.05, 0.2, 0.5, 0.2, 0.05])
            alarms += severity(np.zeros(n), differences).beyond_chance
        print(f"{n:>3}  {alarms / 2000:.1%}")


def main():
    rng = np.random.default_rng(20260320)
    began = time.perf_counter()
    kappa_coverage(rng)
    normal_coverage(rng)
    false_alarms(rng)
    print(f"{time.perf_counter() - began:.0f} s in all")


if __name__ == "__main__":
    main()
