"""The whole pipeline on thousands of portfolios: finishes, stops where asked, ends the same.

    python tests/benchmarks/soak_pipeline.py [--learners 10000] [--stops 2] [--seed 1]

Reads an invented class of so many learners stopped at random points, then to the end, then
once more to the end: the last two must come to the same drafts. Between them marks are
said, which must all be there. CPU seconds, peak of memory.
"""

from __future__ import annotations

import argparse
import hashlib
import random
import resource
import sys
import tempfile
import time
from pathlib import Path

from bench_intake import make

from markbench.session import Session


def peak_mb() -> float:
    return resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024


def digest(session: Session) -> str:
    """A fingerprint of every draft and finding."""
    seen = hashlib.sha256()
    for learner in session.learners:
        seen.update(repr((session.drafts(learner.id), session.findings(learner.id))).encode())
    return seen.hexdigest()


def main() -> int:
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("--learners", type=int, default=10_000)
    parser.add_argument("--stops", type=int, default=2)
    parser.add_argument("--seed", type=int, default=1)
    options = parser.parse_args()
    rng = random.Random(options.seed)
    faults = 0
    with tempfile.TemporaryDirectory() as held:
        folder = Path(held)
        # A table of their own for each: copies would be asked about at every twin.
        make(folder, options.learners, tables=options.learners)
        for number in range(options.stops):
            # Asked once for each folder while listing, then once for each learner.
            left = [rng.randrange(2 * options.learners)]

            def stop(left: list[int] = left) -> bool:
                left[0] -= 1
                return left[0] < 0

            start = time.process_time()
            session = Session.open(folder, "A. Teacher", stop=stop)
            told = [p.message for p in session.work.problems if "stopped" in p.message]
            if session.learners:
                session.set_note(session.learners[0].id, f"said at stop {number}")
            session.close()
            faults += not told
            print(f"stopped after {time.process_time() - start:.0f} s of CPU: {told}", flush=True)
        digests = []
        for _ in range(2):
            start = time.process_time()
            session = Session.open(folder, "A. Teacher")
            opened = time.process_time() - start
            digests.append(digest(session))
            said = [d.value for d in session.history()]
            session.close()
            spent = time.process_time() - start
            print(
                f"{len(session.learners)} learners: open after {opened:.0f} s, all drafted after "
                f"{spent:.0f} s of CPU, peak {peak_mb():.0f} MB, {len(said)} decisions kept",
                flush=True,
            )
    same = len(set(digests)) == 1
    print("the same drafts and findings" if same else "DIFFERENT drafts or findings")
    return 0 if same and not faults else 1


if __name__ == "__main__":
    sys.exit(main())
