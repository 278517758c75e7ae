"""Measure how often honest learners trip each check, and write the figures the findings quote.

Run from the project's folder: ``python tests/benchmarks/measure_honest_rates.py [--write]``.
Honest classes come from the simulator, in four designs; the written figure is the mean
over designs with gaussian hands, and the table printed beside it shows other noise shapes
(heavy tails, haste, scatter that differs by length), which the checks do not assume.
"""

from __future__ import annotations

import argparse
import sys
from pathlib import Path

ROOT = Path(__file__).parents[2]
sys.path.insert(0, str(ROOT / "tests"))

from markbench.checks import CHECKS, run  # noqa: E402
from markbench.checks.copies import find_alike  # noqa: E402
from markbench.model import (  # noqa: E402
    Brief,
    ClassWork,
    Learner,
    Piece,
    Portfolio,
    ReadingsTable,
    Source,
)
from markbench.physics.analyse import analyse  # noqa: E402
from markbench.physics.gravity import local_gravity  # noqa: E402
from simulation.readings import simulate  # noqa: E402
from simulation.worlds import NOISES  # noqa: E402

DESIGNS = ("standard", "low", "tall", "mixed")
HELD_OUT_SEED = 910_000
LEARNERS = 2000


def class_of(simulated) -> ClassWork:
    """A class whose portfolios hold nothing but the simulated readings."""
    brief = Brief(place=simulated.place, evidence=())
    learners = tuple(Learner(str(i), f"Learner {i}") for i in range(len(simulated)))
    portfolios = {
        learner.id: Portfolio(
            learner,
            pieces=(Piece("table.xlsx", "readings", size_bytes=1),),
            table=ReadingsTable(readings, (), Source("table.xlsx")),
        )
        for learner, readings in zip(learners, simulated.readings(), strict=True)
    }
    return ClassWork(brief, learners, portfolios)


def rates(design: str, noise: str, seed: int, place: bool = True) -> dict[str, float]:
    """Share of honest learners with at least one finding of each check."""
    simulated = simulate(LEARNERS, design, noise=noise, seed=seed, place=place)
    work = class_of(simulated)
    local = local_gravity(work.brief.place)
    analyses = dict(
        zip((x.id for x in work.learners), analyse(simulated.stack(), local), strict=True)
    )
    found = run(work, analyses)
    return {
        check: sum(any(f.check == check for f in fs) for fs in found.values()) / LEARNERS
        for check in judged()
    }


def alike(classes: int = 500, size: int = 30) -> float:
    """Share of honest learners, in classes with common lengths, in a pair beyond chance."""
    named = 0
    for c in range(classes):
        pairs = find_alike(simulate(size, "standard", seed=HELD_OUT_SEED + 1000 + c).stack())
        named += len({i for pair in pairs for i in (pair.first, pair.second)})
    return named / (classes * size)


def judged() -> list[str]:
    """Ids of the checks that honest scatter can trip."""
    return [check.id for check in CHECKS.values() if check.judges_numbers and check.ask]


def main() -> None:
    """Measure, print, and with ``--write`` keep the figures."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--write", action="store_true")
    arguments = parser.parse_args()
    print(f"{'design':10} {'noise':14}", *(f"{check:>16}" for check in judged()))
    table = {}
    for i, design in enumerate(DESIGNS):
        for j, noise in enumerate(NOISES):
            table[design, noise] = rates(design, noise, HELD_OUT_SEED + 10 * i + j)
            print(f"{design:10} {noise:14}", *(f"{r:16.4f}" for r in table[design, noise].values()))
        nowhere = rates(design, "gaussian", HELD_OUT_SEED + 10 * i + 9, place=False)
        print(f"{design:10} {'no place':14}", *(f"{r:16.4f}" for r in nowhere.values()))
    if arguments.write:
        path = ROOT / "markbench" / "checks" / "honest_rates.toml"
        lines = [
            "# Measured share of honest learners who trip each check that judges numbers:",
            f"# {LEARNERS} simulated learners in each of {len(DESIGNS)} designs, gaussian hands.",
            "# Written by tests/benchmarks/measure_honest_rates.py; not edited by hand.",
            "[rates]",
        ]
        for check in judged():
            mean = sum(table[design, "gaussian"][check] for design in DESIGNS) / len(DESIGNS)
            lines.append(f"{check} = {mean:.5f}")
        lines.append(f"copied = {alike():.5f}")
        path.write_text("\n".join(lines) + "\n", "utf-8")


if __name__ == "__main__":
    main()
