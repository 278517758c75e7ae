"""Measure a seeded set of rendered swing films and print how far the method reaches.

    python tests/benchmarks/measure_clips.py FIRST_SEED USABLE UNUSABLE [FOLDER]

Clips are rendered into FOLDER once (they take longer to draw than to measure).
"""

from __future__ import annotations

import pickle
import sys
import time
from pathlib import Path

import numpy as np

sys.path.insert(0, str(Path(__file__).parents[1] / "evidence"))
import clips

from markbench.evidence.video.judge import measure_swing


def rendered(seed: int, trouble: str, folder: Path) -> tuple[clips.Clip, bytes, clips.Truth]:
    kept = folder / f"{seed}.pkl"
    if not kept.exists():
        clip = clips.draw(seed, trouble)
        folder.mkdir(parents=True, exist_ok=True)
        kept.write_bytes(pickle.dumps((clip, *clips.render(clip))))
    return pickle.loads(kept.read_bytes())


def main(first: int, usable: int, unusable: int, folder: Path) -> None:
    seeds = [(first + i, "") for i in range(usable)]
    for i in range(unusable):
        seed = first + 5000 + i
        seeds.append((seed, clips.UNUSABLE[seed % 4]))
    errors, ratios, counts, accepted, wrongly, spent = [], [], 0, 0, [], 0.0
    for seed, trouble in seeds:
        clip, data, truth = rendered(seed, trouble, folder)
        start = time.perf_counter()
        found = measure_swing(data)
        took = time.perf_counter() - start
        spent += took
        line = f"{seed:5d} {clip.kind:5s} {trouble or '-':11s}"
        if trouble:
            if found.accepted:
                wrongly.append(seed)
            print(line, "ACCEPTED" if found.accepted else "refused", found.reason, flush=True)
            continue
        if not found.accepted:
            print(line, "REFUSED", found.reason, flush=True)
            continue
        accepted += 1
        errors.append(found.period_s / truth.period_s - 1)
        ratios.append((found.period_s - truth.period_s) / found.u_period_s)
        # Within a fiftieth of a swing of a whole one, nobody could say which.
        right = found.complete_swings in {
            int(np.floor(truth.swings + slack)) for slack in (-0.02, 0.02)
        }
        counts += right
        line += f" period {errors[-1]:+.4%} swings {truth.swings:6.2f} {found.swings_shown:6.2f}"
        print(line, "" if right else "COUNT", f"{took:.1f} s", flush=True)
    size = np.abs(errors)
    print(f"accepted {accepted}/{usable}; unusable accepted: {wrongly or 'none'}")
    if accepted:
        print(f"period within 0.5 %: {np.mean(size < 0.005):.1%}; median {np.median(size):.3%}")
        print(f"largest {size.max():.2%}; |error| < 2u: {np.mean(np.abs(ratios) < 2):.0%}")
        print(f"count exact: {counts / accepted:.1%}; mean time {spent / len(seeds):.1f} s")


if __name__ == "__main__":
    numbers = [int(text) for text in sys.argv[1:4]]
    main(*numbers, Path(sys.argv[4] if len(sys.argv) > 4 else ".clips"))
