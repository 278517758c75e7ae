"""What a long film at full size costs: decoding, measuring, memory.

    python tests/benchmarks/bench_film.py [SECONDS [MEGABITS_PER_SECOND [FOLDER]]]

A drawn film of 1920 × 1080 at 30 frames a second (H.264), with grain as a phone's, is made once
in FOLDER. Printed are processor seconds, best of three, each in a process of its own: plain
decoding on one thread and on as many as the library takes, and the measuring of the same file.
Memory is the most that process had resident. What asks for 1.5 times the plain decoding is to
be read with the machine otherwise at rest.
"""

from __future__ import annotations

import io
import subprocess
import sys
from fractions import Fraction
from pathlib import Path

import av
import numpy as np

sys.path.insert(0, str(Path(__file__).parents[1] / "evidence"))
import clips

_DECODE = """
import av
with av.open({path!r}) as container:
    stream = container.streams.video[0]
    stream.thread_type = "AUTO"
    print(sum(1 for _ in container.decode(stream)), "frames")
"""
_MEASURE = """
from pathlib import Path
from markbench.evidence.video.judge import measure_swing
found = measure_swing(Path({path!r}))
print(found.message, "of", found.frames, "frames")
"""
_ASKED = """
import resource, time
used = time.process_time()
{work}
peak = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024
print(time.process_time() - used, peak)
"""


def made(path: Path, seconds: float, megabits: float) -> None:
    """A film of one swing, drawn small and shown large, with fresh grain in every frame."""
    clip = clips.Clip(seed=1, size=(480, 270), small_period_s=1.4, swings=seconds / 1.4)
    small, _ = clips.render(clip)
    rng = np.random.default_rng(7)
    grain = rng.normal(0, 3, (2400, 4000)).astype(np.int8)
    with av.open(str(path), "w", format="mp4") as out, av.open(io.BytesIO(small)) as drawn:
        stream = out.add_stream("libx264", rate=Fraction(30))
        stream.width, stream.height, stream.pix_fmt = 1920, 1080, "yuv420p"
        stream.bit_rate = round(megabits * 1e6)
        stream.options = {"preset": "veryfast", "tune": "grain"}
        for frame in drawn.decode(video=0):
            large = frame.reformat(width=1920, height=1080, format="gray").to_ndarray()
            down, right = rng.integers(1320), rng.integers(2080)
            noisy = large.astype(np.int16) + grain[down : down + 1080, right : right + 1920]
            shown = av.VideoFrame.from_ndarray(
                np.clip(noisy, 0, 255).astype(np.uint8), format="gray"
            ).reformat(format="yuv420p")
            shown.pts, shown.time_base = frame.pts, frame.time_base
            out.mux(stream.encode(shown))
        out.mux(stream.encode(None))


def asked(work: str) -> tuple[str, float, float]:
    """What it says, processor seconds, and peak memory in MB of ``work`` in a new process."""
    done = subprocess.run(
        [sys.executable, "-c", _ASKED.format(work=work)], check=True, capture_output=True, text=True
    )
    said, figures = done.stdout.strip().rsplit("\n", 1)
    took, peak = figures.split()
    return said, float(took), float(peak)


def main(seconds: float, megabits: float, folder: Path) -> None:
    folder.mkdir(parents=True, exist_ok=True)
    path = folder / f"film-{seconds:g}s-{megabits:g}M.mp4"
    if not path.exists():
        made(path, seconds, megabits)
    print(f"{path.name}: {path.stat().st_size / 1e6:.1f} MB")
    plain = min((asked(_DECODE.format(path=str(path))) for _ in range(3)), key=lambda one: one[1])
    whole = min((asked(_MEASURE.format(path=str(path))) for _ in range(3)), key=lambda one: one[1])
    print(f"plain decoding: {plain[1]:6.2f} s, {plain[2]:4.0f} MB ({plain[0]})")
    print(f"measuring:      {whole[1]:6.2f} s, {whole[2]:4.0f} MB ({whole[0]})")
    print(f"measuring takes {whole[1] / plain[1]:.2f} times plain decoding (1.5 asked)")


if __name__ == "__main__":
    main(
        float(sys.argv[1]) if len(sys.argv) > 1 else 60.0,
        float(sys.argv[2]) if len(sys.argv) > 2 else 10.0,
        Path(sys.argv[3] if len(sys.argv) > 3 else ".clips"),
    )
