"""Measure the diagnosis on simulated classes; write its thresholds and its figures.

    python tests/benchmarks/calibrate_diagnosis.py thresholds   # development seeds
    python tests/benchmarks/calibrate_diagnosis.py figures      # held-out seeds, once

``thresholds`` writes the margins of ``calibration.toml`` from honest classes of seeds below
900 000. ``figures`` then measures everything anew from seeds of three million and above, writes
the honest rates that the findings quote into ``calibration.toml`` and the whole table into
``CALIBRATION.md``.
"""

from __future__ import annotations

import sys
import time
from dataclasses import replace
from pathlib import Path

import numpy as np

sys.path.insert(0, str(Path(__file__).resolve().parents[1]))

import markbench.checks.diagnosis as diagnosis
from markbench.checks.diagnosis import weigh
from markbench.checks.diagnosis.flagging import KINDS, kind_of_table
from markbench.checks.diagnosis.posterior import weigh_singles
from markbench.model import Diagnosis
from markbench.physics.best import estimate_gravity
from markbench.physics.gravity import local_gravity
from simulation.readings import SLIPS, Simulated, simulate
from simulation.worlds import NOISES, Habits

PACKAGE = Path(diagnosis.__file__).parent
DESIGNS = ("standard", "low", "tall", "mixed")
DESIGN_NAMES = {
    "standard": "20–60 cm",
    "low": "5–25 cm",
    "tall": "30–150 cm",
    "mixed": "mixed",
}
PAIRS = (
    "half_swings+length_to_top",
    "half_swings+whole_thread",
    "count_short+length_unit",
    "count_short+rows_swapped",
    "half_swings+mistyped_cell",
    "length_unit+one_timing_miscounted",
)
HELD_OUT = 3_000_000
# A margin set at 1 % itself would let half of all measurements come out above it.
FALSE_ALARMS = 0.008
# The constant error of honest lengths, sd: "a few millimetres" may as well stand for 2 or
# 3 mm, so that the figures are given for both.
OFFSET_M = Habits().length_offset_m
OFFSETS_M = (0.002, 0.003)


def honest_odds(sim: Simulated) -> np.ndarray:
    """Log odds of the likeliest single slip, before any margin."""
    local, out = local_gravity(sim.place), []
    stack = sim.stack()
    for start in range(0, len(sim), 128):
        weighed = weigh_singles(stack.take(slice(start, start + 128)), local)
        out.append(weighed.single.max(axis=1) - weighed.honest)
    return np.concatenate(out)


def thresholds(learners: int = 4000, classes: int = 8) -> dict[str, float]:
    """The 99.2 % point of honest odds per kind of table.

    Ten swings, since twenty are asked about more rarely; half the classes know their place.
    """
    found: dict[str, list[np.ndarray]] = {kind: [] for kind in KINDS}
    seed = 10_000
    for timings in (2, 1):
        for decimals in (2, 1):
            for design in DESIGNS:
                for c in range(2 * classes):
                    seed += 1
                    sim = simulate(
                        learners // classes,
                        design,
                        seed=seed,
                        place=c % 2 == 0,
                        swings=10,
                        timings=timings,
                        decimals=decimals,
                    )
                    odds, kinds = honest_odds(sim), kind_of_table(sim.stack())
                    for k in np.unique(kinds):
                        found[KINDS[k]].append(odds[kinds == k])
    points = {}
    for kind, parts in found.items():
        points[kind] = float(np.quantile(np.concatenate(parts), 1 - FALSE_ALARMS))
        print(f"{kind:26} {points[kind]:6.2f}", flush=True)
    return points


def diagnose(
    n: int, seed: int, classes: int = 5, **how: object
) -> list[tuple[Diagnosis, str, Simulated, int]]:
    """``n`` learners in several classes, each with its own place, diagnosed."""
    out = []
    for c in range(classes):
        sim = simulate(n // classes, seed=seed + c, **how)  # type: ignore[arg-type]
        for i, d in enumerate(weigh(sim.stack(), local_gravity(sim.place))):
            out.append((d, str(sim.slip[i]), sim, i))
    return out


def honest_table(n: int, seed: int) -> tuple[list[str], dict[str, float]]:
    """Honest learners asked about anything, per design and circumstances."""
    circumstances: list[tuple[str, dict[str, object]]] = [
        ("as it comes", {}),
        ("no place in the brief", {"place": False}),
        ("20 swings", {"swings": 20}),
        ("times to 0.1 s", {"decimals": 1}),
        ("times to 0.01 s", {"decimals": 2}),
        ("one timing a length", {"timings": 1}),
        ("three timings a length", {"timings": 3}),
        *((f"scatter: {noise}", {"noise": noise}) for noise in NOISES if noise != "gaussian"),
        *(
            (f"offset sd {1000 * sd:g} mm", {"habits": Habits(length_offset_m=sd)})
            for sd in OFFSETS_M
        ),
    ]
    rates: dict[str, float] = dict.fromkeys(SLIPS, 0.0)
    lines = ["| honest learners asked, % | " + " | ".join(DESIGN_NAMES.values()) + " |"]
    lines.append("|---" * (1 + len(DESIGNS)) + "|")
    for label, how in circumstances:
        row = []
        how = {"habits": Habits(length_offset_m=OFFSET_M), **how}
        for design in DESIGNS:
            seed += 100
            got = diagnose(n, seed, design=design, **how)
            asked = [d.explanations[0].slip for d, *_ in got if d.flagged]
            row.append(f"{100 * len(asked) / len(got):.2f}")
            if label == "as it comes":
                for slip in SLIPS:
                    share = sum(slip in a.split("+") for a in asked) / len(got)
                    rates[slip] = max(rates[slip], share)
        lines.append(f"| {label} | " + " | ".join(row) + " |")
        print(lines[-1], flush=True)
    return lines, rates


def slip_table(n: int, seed: int, offset_m: float, designs: tuple[str, ...] = DESIGNS) -> list[str]:
    """Each slip in each design: asked about, named first, named second."""
    habits = Habits(length_offset_m=offset_m)
    heads = " | ".join(DESIGN_NAMES[d] for d in designs)
    lines = [f"| found / first / second, % | {heads} |", "|---" * (1 + len(designs)) + "|"]
    for slip in (*SLIPS, *PAIRS):
        row = []
        for design in designs:
            seed += 100
            got = diagnose(n, seed, design=design, slip=slip, habits=habits)
            row.append(_found(got, slip))
        lines.append(f"| `{slip}` | " + " | ".join(row) + " |")
        print(lines[-1], flush=True)
    return lines


def _found(got: list[tuple[Diagnosis, str, Simulated, int]], slip: str) -> str:
    def named(d: Diagnosis, rank: int) -> bool:
        slips = [e.slip for e in d.explanations if e.slip != "honest"]
        return (
            d.flagged and len(slips) > rank and set(slips[rank].split("+")) == set(slip.split("+"))
        )

    shares = [
        np.mean([d.flagged for d, *_ in got]),
        np.mean([named(d, 0) for d, *_ in got]),
        np.mean([named(d, 1) for d, *_ in got]),
    ]
    return " / ".join(f"{100 * share:.1f}" for share in shares)


def detail_table(n: int, seed: int, offset_m: float) -> list[str]:
    """Slips that depend on how times are written, on the standard design."""
    habits = Habits(length_offset_m=offset_m)
    lines = ["| 20–60 cm, first, % | times to 0.01 s | times to 0.1 s |", "|---|---|---|"]
    for slip in ("one_timing_miscounted", "mistyped_cell", "made_from_formula", "made_by_hand"):
        row = []
        for decimals in (2, 1):
            seed += 100
            got = diagnose(n, seed, slip=slip, decimals=decimals, habits=habits)
            row.append(_found(got, slip).split(" / ")[1])
        lines.append(f"| `{slip}` | " + " | ".join(row) + " |")
        print(lines[-1], flush=True)
    return lines


def coverage_table(n: int, seed: int) -> list[str]:
    """How often the 95 % interval of best g holds the truth, and its median half-width."""
    worlds: list[tuple[str, dict[str, object]]] = [
        *((f"offset sd {1000 * sd:g} mm", {"length_offset_m": sd}) for sd in OFFSETS_M)
    ]
    lines = [
        "| interval holds g, % (half-width, m/s²) | " + " | ".join(DESIGN_NAMES.values()) + " |",
        "|---" * (1 + len(DESIGNS)) + "|",
    ]
    rows: list[tuple[str, dict[str, object]]] = [
        *((label, {"habits": replace(Habits(), **habit)}) for label, habit in worlds),  # type: ignore[arg-type]
        *((f"scatter: {noise}", {"noise": noise}) for noise in NOISES if noise != "gaussian"),
        ("one timing out by a swing", {"slip": "one_timing_miscounted"}),
        (
            "scatter 0.1 s for all",
            {"habits": Habits(scatter_s=(0.1, 0.1, 0.1), length_offset_m=OFFSET_M)},
        ),
    ]
    for label, how in rows:
        how = {"habits": Habits(length_offset_m=OFFSET_M), **how}
        row = []
        for design in DESIGNS:
            seed += 100
            held, width = [], []
            for c in range(5):
                sim = simulate(n // 5, design, seed=seed + c, **how)  # type: ignore[arg-type]
                _, _, low, high = estimate_gravity(sim.stack())
                held.append((low <= sim.g) & (sim.g <= high))
                width.append((high - low) / 2)
            share, half = np.mean(held), np.median(np.concatenate(width))
            row.append(f"{100 * share:.1f} ({half:.3f})")
        lines.append(f"| {label} | " + " | ".join(row) + " |")
        print(lines[-1], flush=True)
    return lines


def write_toml(margins: dict[str, float], rates: dict[str, float]) -> None:
    """The data the package reads."""
    lines = [
        "# Written by tests/benchmarks/calibrate_diagnosis.py; see CALIBRATION.md.",
        "[thresholds]",
        *(f"{kind} = {value:.2f}" for kind, value in margins.items()),
        "",
        "[honest_rate]",
        *(f"{slip} = {rate:.4f}" for slip, rate in rates.items()),
        "",
    ]
    (PACKAGE / "calibration.toml").write_text("\n".join(lines), "utf-8")


def figures(n: int) -> None:
    """Measure everything; each section is written as soon as it is known."""
    from markbench.checks.diagnosis.flagging import calibration

    text = [
        "# How the diagnosis does",
        "",
        "Written by `tests/benchmarks/calibrate_diagnosis.py figures` from seeds that took no",
        f"part in building it (from {HELD_OUT} on). The simulated classes are those of",
        "`tests/simulation`: written from physics, apart from the code that judges them.",
        f"Every cell stands on {n} learners (honest ones: {2 * n}), so that a share of 1 % is",
        f"known to about {100 * (0.0099 / 2 / n) ** 0.5:.1f} %, one of 90 % to about "
        f"{100 * (0.09 / n) ** 0.5:.1f} % (one sd).",
        "",
        f"Honest lengths share an error of sd {1000 * OFFSET_M:g} mm where nothing else",
        "is said; “a few millimetres” may as well mean 2 or 3 mm, so that both are shown.",
    ]

    def add(title: str, lines: list[str]) -> None:
        text.extend(["", f"## {title}", "", *lines])
        (PACKAGE / "CALIBRATION.md").write_text("\n".join(text) + "\n", "utf-8")

    honest, rates = honest_table(2 * n, HELD_OUT)
    write_toml(dict(calibration()["thresholds"]), rates)
    add("Honest learners asked about any slip", honest)
    add("The best g", coverage_table(2 * n, HELD_OUT + 150_000))
    for sd in OFFSETS_M:
        designs = DESIGNS if sd == OFFSETS_M[0] else DESIGNS[:2]
        seed = HELD_OUT + 20_000 + int(1e7 * sd)
        what = f"offset of honest lengths sd {1000 * sd:g} mm"
        add(f"Slips found and named, {what}", slip_table(n, seed, sd, designs))
        add(f"By the decimals of the times, {what}", detail_table(n, seed + 50_000, sd))


def main() -> None:
    """Run one of the two parts."""
    from markbench.checks.diagnosis.flagging import calibration

    start = time.perf_counter()
    if sys.argv[1] == "thresholds":
        write_toml(thresholds(), dict(calibration()["honest_rate"]))
    else:
        figures(int(sys.argv[2]) if len(sys.argv) > 2 else 1000)
    print(f"{time.perf_counter() - start:.0f} s")


if __name__ == "__main__":
    main()
