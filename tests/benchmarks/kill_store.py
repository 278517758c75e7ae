"""Kill a process that is appending, at random instants, and see what is left.

    python tests/benchmarks/kill_store.py --kills 500

A child opens the class, appends decisions (one to three at a time, some of them long) and
acknowledges each append once it has returned. The parent kills it outright, opens the
file, and looks for every acknowledged decision. A kill counts as *in mid-write* when it
left SQLite's rollback journal behind.
"""

from __future__ import annotations

import argparse
import multiprocessing as mp
import random
import sys
import tempfile
import time
from dataclasses import dataclass, field
from multiprocessing.connection import Connection
from pathlib import Path

from markbench.model import Decision
from markbench.store import Journal


@dataclass
class Outcome:
    kills: int = 0
    acknowledged: int = 0
    in_mid_write: int = 0
    unacknowledged_kept: int = 0
    faults: list[str] = field(default_factory=list)


def append_for_ever(path: Path, round_number: int, tell: Connection) -> None:
    rng = random.Random(round_number)
    with Journal.open(path, who=f"round {round_number}") as journal:
        count = 0
        while True:
            texts = []
            for _ in range(rng.randint(1, 3)):
                count += 1
                texts.append(f"{round_number}/{count} " + "é" * rng.choice((5, 200, 6000)))
            journal.append(
                Decision("note", "L01", text.split()[0], text, who="teacher") for text in texts
            )
            tell.send(texts)


def kill_rounds(path: Path, kills: int, seed: int) -> Outcome:
    """Kill ``kills`` children one after another on the same file."""
    # A forked child is at work in milliseconds; a new interpreter takes half a second.
    context = mp.get_context("fork" if "fork" in mp.get_all_start_methods() else "spawn")
    rng = random.Random(seed)
    outcome = Outcome()
    said: list[str] = []
    for round_number in range(kills):
        listen, tell = context.Pipe(duplex=False)
        child = context.Process(target=append_for_ever, args=(path, round_number, tell))
        child.start()
        tell.close()
        if not listen.poll(30):
            outcome.faults.append(f"round {round_number}: the child could not append")
        time.sleep(rng.uniform(0.0, 0.06))
        child.kill()
        child.join()
        outcome.kills += 1
        outcome.in_mid_write += path.with_name(path.name + "-journal").exists()
        try:
            while True:
                said.extend(listen.recv())
        except (EOFError, OSError):
            pass
        listen.close()
        check(path, said, outcome, round_number)
    outcome.acknowledged = len(said)
    return outcome


def check(path: Path, said: list[str], outcome: Outcome, round_number: int) -> None:
    with Journal.open(path) as journal:
        if (broken := journal.verify()) is not None:
            outcome.faults.append(f"round {round_number}: {broken.message}")
        kept = [decision.value for decision in journal.all()]
    missing = set(said) - set(kept)
    if missing:
        outcome.faults.append(f"round {round_number}: {len(missing)} acknowledged and gone")
    if len(kept) != len(set(kept)):
        outcome.faults.append(f"round {round_number}: a decision is there twice")
    outcome.unacknowledged_kept = len(set(kept) - set(said))


def main() -> int:
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("--kills", type=int, default=500)
    parser.add_argument("--seed", type=int, default=1)
    options = parser.parse_args()
    started = time.perf_counter()
    with tempfile.TemporaryDirectory() as folder:
        outcome = kill_rounds(Path(folder) / "class.markbench", options.kills, options.seed)
    for fault in outcome.faults:
        print(fault)
    print(
        f"{outcome.kills} kills ({outcome.in_mid_write} in mid-write), "
        f"{outcome.acknowledged} decisions acknowledged, {len(outcome.faults)} faults, "
        f"{outcome.unacknowledged_kept} saved but killed before they could be acknowledged, "
        f"{time.perf_counter() - started:.0f} s"
    )
    return 1 if outcome.faults else 0


if __name__ == "__main__":
    sys.exit(main())
