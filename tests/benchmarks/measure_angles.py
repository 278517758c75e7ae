"""How well the angle and the ellipse are read from rendered films, and when they are given.

    python tests/benchmarks/measure_angles.py FIRST_SEED FILMS [FOLDER]

Each film is one of ``clips.draw``, all its troubles kept, with a thread of a contrast between
none and two thirds of the bob's and a path opened to an ellipse of 0 to 0.3 (one in four:
none). The truth comes from the drawing. Films are kept in FOLDER, as drawing takes long.
"""

from __future__ import annotations

import pickle
import sys
from dataclasses import replace
from pathlib import Path

import numpy as np

sys.path.insert(0, str(Path(__file__).parents[1] / "evidence"))
import clips

from markbench.evidence.video.judge import measure_swing
from markbench.evidence.video.support import U_ANGLE

# Contrast of the thread as a share of the bob's; 0 cannot be seen.
THREADS = (0.0, 0.12, 0.25, 0.4, 0.7)


def drawn(seed: int) -> clips.Clip:
    rng = np.random.default_rng([seed, 22])
    ellipse = float(rng.uniform(0, 0.3)) if rng.random() < 0.75 else 0.0
    return replace(clips.draw(seed), thread=THREADS[seed % len(THREADS)], ellipse=ellipse)


def rendered(seed: int, folder: Path) -> tuple[clips.Clip, bytes, clips.Truth]:
    kept = folder / f"angle-{seed}.pkl"
    if not kept.exists():
        clip = drawn(seed)
        folder.mkdir(parents=True, exist_ok=True)
        kept.write_bytes(pickle.dumps((clip, *clips.render(clip))))
    return pickle.loads(kept.read_bytes())


def spread(errors: list[float], form: str) -> str:
    if not errors:
        return "none"
    size = np.abs(errors)
    middle, most = np.percentile(size, 50), np.percentile(size, 95)
    return f"median {middle:{form}}, 95 % {most:{form}}, largest {size.max():{form}}"


def main(first: int, films: int, folder: Path) -> None:
    asked, given = dict.fromkeys(THREADS, 0), {thread: [] for thread in THREADS}
    ratios, opened = [], []
    for seed in range(first, first + films):
        clip, data, truth = rendered(seed, folder)
        found = measure_swing(data)
        if not found.accepted:
            print(f"{seed} refused: {found.reason}", flush=True)
            continue
        asked[clip.thread] += 1
        line = f"{seed} thread {clip.thread:4.2f} angle {truth.angle_deg:5.2f}°"
        if found.amplitude_deg is not None:
            error = found.amplitude_deg - truth.angle_deg
            given[clip.thread].append(error)
            ratios.append(error / (U_ANGLE * found.amplitude_deg))
            line += f" {error:+.2f}°"
        opened.append(found.ellipse - truth.flattened)
        print(f"{line}; ellipse {truth.flattened:.3f} {opened[-1]:+.3f}", flush=True)
    for thread, errors in given.items():
        print(
            f"thread {thread:4.2f}: angle given in {len(errors)} of {asked[thread]}; "
            f"error in degrees: {spread(errors, '.2f')}"
        )
    print(f"all angles: {spread([e for some in given.values() for e in some], '.2f')}")
    print(f"error within twice its uncertainty: {np.mean(np.abs(ratios) < 2):.0%}")
    print(f"ratio of the axes in the picture, {len(opened)} films: {spread(opened, '.3f')}")


if __name__ == "__main__":
    where = Path(sys.argv[3] if len(sys.argv) > 3 else ".clips")
    main(int(sys.argv[1]), int(sys.argv[2]), where)
