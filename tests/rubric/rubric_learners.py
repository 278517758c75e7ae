"""Invented learners of many kinds, from complete work to nothing at all, for the rubric."""

from __future__ import annotations

import datetime as dt
import random
from dataclasses import replace

from markbench.model import (
    Brief,
    Concern,
    Diagnosis,
    Estimate,
    Explanation,
    Finding,
    Gravity,
    Learner,
    OwnValue,
    Piece,
    Portfolio,
    Reading,
    ReadingsTable,
    Source,
    Timing,
)
from markbench.physics.analyse import analyse
from markbench.physics.gravity import local_gravity
from markbench.physics.pendulum import period_s
from markbench.physics.stack import stack_readings
from markbench.rubric import Facts, facts_of

KINDS = ("setup_photo", "selfie", "swing_video")


def table_of(
    pairs: list[tuple[float, list[float]]],
    swings: int = 10,
    own: tuple[OwnValue, ...] = (),
    headings: tuple[str, ...] = ("Length / cm", "t1 / s", "t2 / s"),
    decimals: int | None = 2,
) -> ReadingsTable:
    """A table as a learner would type it: length in metres and times of ``swings`` swings.

    ``decimals`` is ``None`` for a spreadsheet's number cells, which keep none.
    """
    readings = tuple(
        Reading(
            length_m,
            swings,
            tuple(
                Timing(t, Source("table.csv", cell=f"{'BCD'[k]}{i}", raw=f"{t:.2f}"), decimals)
                for k, t in enumerate(times)
            ),
            Source("table.csv", cell=f"A{i}", raw=f"{length_m * 100:.1f}"),
        )
        for i, (length_m, times) in enumerate(pairs, 2)
    )
    heads = tuple(
        Source("table.csv", cell=f"{'ABCDEFG'[i]}1", raw=h) for i, h in enumerate(headings)
    )
    return ReadingsTable(
        readings, own, Source("table.csv"), heads, tuple("/" in h for h in headings)
    )


def pieces_of(*kinds: str) -> tuple[Piece, ...]:
    return tuple(
        Piece(f"{kind}.bin", kind, size_bytes=1000, modified=dt.datetime(2026, 3, 4, 18, 0))
        for kind in kinds
    )


def facts_from(
    table: ReadingsTable | None = None,
    pieces: tuple[Piece, ...] = (),
    findings: tuple[Finding, ...] = (),
    diagnosis: Diagnosis | None = None,
    brief: Brief | None = None,
    learner: str = "L1",
    **more: object,
) -> Facts:
    brief = brief or Brief()
    portfolio = Portfolio(Learner(learner, "Invented Learner"), pieces, (), table, findings)
    readings = table.readings if table is not None else ()
    analysis = analyse(stack_readings([readings]), local_gravity(brief.place))[0]
    return facts_of(portfolio, analysis, findings, diagnosis, brief, **more)


def random_learner(number: int, seed: int = 0) -> Facts:
    """One of a crowd: every mixture of good and unfinished work that a class may hold."""
    rng = random.Random(f"{seed}-{number}")
    brief = rng.choice([Brief(), Brief(), Brief(timings_per_length=3)])
    if rng.random() < 0.1:
        brief = replace(brief, evidence=("setup_photo", "selfie"))
    if rng.random() < 0.5:
        brief = replace(brief, closes=dt.date(2026, 3, rng.choice([2, 9])))
    count = rng.choice([0, 1, 2, 3, 4, 4, 5, 5, 5, 5, 6])
    step, start = rng.choice([(0.1, 0.2), (0.05, 0.05), (0.04, 0.4), (0.3, 0.2)])
    repeats = rng.choice([1, 2, 2, 2, 3])
    swings = rng.choice([1, 5, 10, 10, 10, 20])
    pull = rng.choice([1.0, 1.0, 1.0, 0.95, 1.06, 1.4])
    scatter = rng.choice([0.02, 0.1, 0.1, 0.4])
    pairs = []
    for i in range(count):
        length_m = start + step * i
        true_s = swings * float(period_s(length_m, 9.81)) * pull
        taken = 1 if repeats > 1 and rng.random() < 0.05 else repeats
        pairs.append((length_m, [round(true_s + rng.gauss(0, scatter), 2) for _ in range(taken)]))
    if count >= 5 and random.Random(f"{seed}-{number}-swapped").random() < 0.1:
        (one, early), (other, late) = pairs[1], pairs[3]
        pairs[1], pairs[3] = (one, late), (other, early)
    findings: list[Finding] = []
    headings = ("Length / cm", "t1 / s", "t2 / s")
    if rng.random() < 0.3:
        headings = ("Length", "t1 / s", "t2 / s")
    if rng.random() < 0.1:
        headings = ()
    own: list[OwnValue] = []
    columns = rng.choice([(), ("period_s",), ("mean_time_s", "period_s", "period_squared_s2")])
    for i, (_, times) in enumerate(pairs):
        mean = sum(times) / len(times)
        right = {
            "mean_time_s": mean,
            "period_s": mean / swings,
            "period_squared_s2": (mean / swings) ** 2,
        }
        for k, quantity in enumerate(columns):
            source = Source("table.csv", cell=f"{'EFG'[k]}{i + 2}", raw=f"{right[quantity]:.3f}")
            own.append(OwnValue(quantity, right[quantity], source, i))
    if len(columns) == 3 and rng.random() < 0.5:
        own.append(OwnValue("g_m_s2", 9.81 / pull**2, Source("table.csv", cell="H9", raw="9.8")))
    if own and rng.random() < 0.4:
        wrong = rng.sample(own, rng.choice([1, min(4, len(own))]))
        # The last two figures the wrong way round, as fingers do.
        swapped = {
            v.source: replace(v.source, raw=v.source.raw[:-2] + v.source.raw[:-3:-1]) for v in wrong
        }
        own = [replace(v, source=swapped.get(v.source, v.source)) for v in own]
        wrong = [v for v in own if v.source in swapped.values()]
        findings.append(
            Finding("own_arithmetic", "", "Differs.", sources=tuple(v.source for v in wrong))
        )
    decimals = None if random.Random(f"{seed}-{number}-kept").random() < 0.3 else 2
    table = table_of(pairs, swings, tuple(own), headings, decimals) if count else None
    if table is not None and headings and "/" not in headings[0]:
        findings.append(
            Finding("heading_without_unit", "", "No unit.", sources=(table.headings[0],))
        )
    if table is not None and not headings and random.Random(f"{seed}-{number}-bare").random() < 0.5:
        findings.append(
            Finding("unit_guessed", "", "No unit.", Concern.ASK, {"quantity": "length"})
        )
    for check, share in (
        ("decimals_uneven", 0.3),
        ("intercept", 0.2),
        ("off_the_line", 0.2),
        ("timing_departs", 0.1),
    ):
        if count > 2 and rng.random() < share and (decimals or check != "decimals_uneven"):
            findings.append(Finding(check, "", "A question.", Concern.NOTE))
    if rng.random() < 0.1:
        findings.append(Finding("video_few_swings", "", "Six swings.", Concern.ASK))
    kinds = [kind for kind in KINDS if rng.random() < 0.8]
    pieces = pieces_of(*(["readings"] if count else []), *kinds)
    diagnosis, agreed = None, None
    if count >= 3:
        best = Gravity(9.8 + rng.gauss(0, 0.05), 0.07, 9.66, 9.94, "invented")
        honest = Explanation("honest", 0.9, "Honest work.", {})
        of_units = random.Random(f"{seed}-{number}-units").random() < 0.3
        slip = "length_unit" if of_units else "half_swings"
        odd = Explanation(
            slip,
            0.95,
            "Half.",
            {"scatter_s": Estimate(0.1, 0.02, "s")},
            9.81,
            0.08,
            to_learner=f"Your {pairs[0][1][0]:.2f} s fits half the swings you counted.",
        )
        if rng.random() < 0.3:
            diagnosis = Diagnosis((odd, replace(honest, probability=0.05)), best, flagged=True)
            findings.append(
                Finding("slip", "", "A question.", ask="How did you count the ten swings?")
            )
            agreed = slip if rng.random() < 0.5 else None
        else:
            diagnosis = Diagnosis((honest,), best)
    return facts_from(
        table,
        pieces,
        tuple(findings),
        diagnosis,
        brief,
        learner=f"L{number}",
        agreed_slip=agreed,
    )
