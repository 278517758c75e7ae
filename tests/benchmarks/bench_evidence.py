"""How often different photos are taken for the same, and how long a class takes.

python tests/benchmarks/bench_evidence.py [PHOTOS]
"""

from __future__ import annotations

import io
import sys
import time
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parents[1]))
from PIL import Image

from markbench.evidence.fingerprint import fingerprint, repeated_pairs
from simulation.pictures import Picture, photograph


def main(photos: int) -> None:
    prints = []
    for seed in range(photos):
        kind = "setup" if seed % 2 else "selfie"
        picture = Picture(kind, 0.2 + 0.1 * (seed % 5), seed, room=seed % 7, size=(320, 240))
        prints.append(fingerprint(Image.open(io.BytesIO(photograph(picture)))))
    start = time.perf_counter()
    pairs = repeated_pairs(prints)
    took = time.perf_counter() - start
    every = photos * (photos - 1) // 2
    print(f"{len(pairs)} of {every} pairs of different drawn photos taken for the same")
    start = time.perf_counter()
    repeated_pairs((prints * (1000 // photos + 1))[:1000])
    print(f"{photos} compared in {took:.2f} s, 1000 in {time.perf_counter() - start:.2f} s")


if __name__ == "__main__":
    main(int(sys.argv[1]) if len(sys.argv) > 1 else 200)
